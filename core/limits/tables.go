package limits

// step is one range of nominal sizes, above the one before and up to and
// including upTo, in mm; all else in micrometres.
type step struct {
	upTo float64
	it   [5]Micron // IT4 to IT8, ISO 286-1 table 1
	f, g Micron    // −es, ISO 286-1 table 4
	j56  Micron    // −ei of j5 and j6
	j7   Micron    // −ei of j7
	k    Micron    // ei of k4 to k7, ISO 286-1 table 5
	m    Micron    // ei
	n    Micron    // ei
	p    Micron    // ei
	j    [3]Micron // ES of J6, J7, J8, ISO 286-1 table 2
}

// The range up to 3 mm serves 3 mm itself.
var steps = [...]step{
	{3, [5]Micron{3, 4, 6, 10, 14}, 6, 2, 2, 4, 0, 2, 4, 6, [3]Micron{2, 4, 6}},
	{6, [5]Micron{4, 5, 8, 12, 18}, 10, 4, 2, 4, 1, 4, 8, 12, [3]Micron{5, 6, 10}},
	{10, [5]Micron{4, 6, 9, 15, 22}, 13, 5, 2, 5, 1, 6, 10, 15, [3]Micron{5, 8, 12}},
	{18, [5]Micron{5, 8, 11, 18, 27}, 16, 6, 3, 6, 1, 7, 12, 18, [3]Micron{6, 10, 15}},
	{30, [5]Micron{6, 9, 13, 21, 33}, 20, 7, 4, 8, 2, 8, 15, 22, [3]Micron{8, 12, 20}},
	{50, [5]Micron{7, 11, 16, 25, 39}, 25, 9, 5, 10, 2, 9, 17, 26, [3]Micron{10, 14, 24}},
	{80, [5]Micron{8, 13, 19, 30, 46}, 30, 10, 7, 12, 2, 11, 20, 32, [3]Micron{13, 18, 28}},
	{120, [5]Micron{10, 15, 22, 35, 54}, 36, 12, 9, 15, 3, 13, 23, 37, [3]Micron{16, 22, 34}},
	{180, [5]Micron{12, 18, 25, 40, 63}, 43, 14, 11, 18, 3, 15, 27, 43, [3]Micron{18, 26, 41}},
}

// rs holds r and s, which use the standard's intermediate ranges above 50 mm.
var rs = [...]struct {
	upTo float64
	r, s Micron // ei, ISO 286-1 table 5
}{
	{3, 10, 14}, {6, 15, 19}, {10, 19, 23}, {18, 23, 28}, {30, 28, 35}, {50, 34, 43}, {65, 41, 53}, {80, 43, 59},
	{100, 51, 71}, {120, 54, 79}, {140, 63, 92}, {160, 65, 100}, {180, 68, 108},
}

// grade returns the standard tolerance of grades 4 to 8.
func (s *step) grade(n int) Micron { return s.it[n-4] }

// shaft returns the fundamental deviation of a shaft, and whether it is the
// upper one, es; ok is false where the standard has none.
func (s *step) shaft(c Class, nominal float64) (d Micron, upper, ok bool) {
	switch c.Letters {
	case "f":
		return -s.f, true, true
	case "g":
		return -s.g, true, true
	case "h":
		return 0, true, true
	case "j":
		return s.shaftJ(c.Grade)
	case "k":
		if c.Grade > 7 { // ISO 286-1 table 5: 0 above IT7
			return 0, false, true
		}
	}
	return s.above(c.Letters[0], nominal), false, true
}

// shaftJ returns the lower deviation of j, which has no rule; j8 is for up to
// 3 mm alone.
func (s *step) shaftJ(grade int) (d Micron, upper, ok bool) {
	switch {
	case grade <= 6:
		return -s.j56, false, true
	case grade == 7:
		return -s.j7, false, true
	}
	return -6, false, s.upTo == 3
}

// above returns the lower deviation of the shafts k to s.
func (s *step) above(letter byte, nominal float64) Micron {
	switch letter {
	case 'k':
		return s.k
	case 'm':
		return s.m
	case 'n':
		return s.n
	case 'p':
		return s.p
	}
	i := 0
	for rs[i].upTo < nominal {
		i++
	}
	if letter == 'r' {
		return rs[i].r
	}
	return rs[i].s
}

// hole returns the fundamental deviation of a hole, and whether it is the upper
// one, ES; ok is false where the standard has none. F to H are the shafts' with
// the sign changed, K to R as well with Δ added (ISO 286-1 table 3).
func (s *step) hole(c Class, nominal float64) (d Micron, upper, ok bool) {
	switch c.Letters {
	case "F":
		return s.f, false, true
	case "G":
		return s.g, false, true
	case "H":
		return 0, false, true
	case "J":
		if c.Grade < 6 {
			return 0, true, false
		}
		return s.j[c.Grade-6], true, true
	case "K", "M", "N":
		return -s.above(c.Letters[0]|' ', nominal) + s.delta(c.Grade, 8), true, true
	}
	return -s.above(c.Letters[0]|' ', nominal) + s.delta(c.Grade, 7), true, true
}

// delta returns Δ = ITn − IT(n−1), up to the last grade that has it. Up to 3 mm
// there is none.
func (s *step) delta(n, last int) Micron {
	if n > last || s.upTo == 3 {
		return 0
	}
	return s.grade(n) - s.grade(n-1)
}
