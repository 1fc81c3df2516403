package unit

import "math"

// Coarsest returns how coarsely a list of lengths was read, in mm: the last decimal
// of the entry that has the fewest, 30.00 mm to 0.01 mm. One that has fewer than a
// micrometer shows, hundredths of a millimetre or thousandths of an inch, dropped
// its noughts. It is 0 for a text that is no list of lengths, and for fractions.
func Coarsest(text string, def Unit, max int) float64 {
	entries, fault := split(text, max)
	if fault != nil {
		return 0
	}
	coarsest := 0.0
	of := unitOf(entries, def)
	for _, entry := range entries {
		s, fault := clean(entry)
		if fault != nil {
			return 0
		}
		a, _, fault := number(s)
		if fault != nil {
			return 0
		}
		step := 1 / float64(a.d)
		switch of {
		case MM:
			step = math.Min(step, 0.01)
		case Inch:
			step = math.Min(step, 0.001)
		}
		if p := math.Log10(float64(a.d)); p == math.Trunc(p) {
			coarsest = math.Max(coarsest, step*float64(units[of].num)/float64(units[of].den))
		}
	}
	return coarsest
}
