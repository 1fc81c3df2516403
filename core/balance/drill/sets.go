package drill

// Metric returns drills from one diameter to another, mm, both included, by a
// step. Twist drills come by 0.5 mm over 10 mm and by 0.1 mm under it: common
// practice, no source. Nothing for figures that make no set.
func Metric(fromMM, toMM, stepMM float64) []float64 {
	if !(fromMM > 0) || !(stepMM > 0) || !((toMM-fromMM)/stepMM < MostDrills) {
		return nil
	}
	var set []float64
	for i := 0; fromMM+float64(i)*stepMM <= toMM+1e-9; i++ {
		set = append(set, fromMM+float64(i)*stepMM)
	}
	return set
}

// Inch returns drills from one number of sixty-fourths of an inch to another,
// both included, every so many sixty-fourths, in mm. Nothing for figures that
// make no set.
func Inch(from, to, every int) []float64 {
	if from < 1 || every < 1 || (to-from)/every >= MostDrills {
		return nil
	}
	var set []float64
	for n := from; n <= to; n += every {
		set = append(set, 25.4*float64(n)/64)
	}
	return set
}
