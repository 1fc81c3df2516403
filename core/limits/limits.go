// Package limits gives the limits of size of a hole or a shaft from its
// tolerance class, such as H7 or m6, by ISO 286-1 (the rules) and ISO 286-2 (the
// tables); both by value from memory (core/MODEL.md §10).
//
//	published limits by value                 TestPublishedLimits
//	IT5 to IT8 = 7, 10, 16, 25 i, i = 0.45 ∛D + 0.001 D, D the geometric mean
//	    of the range, in mm and µm            TestStandardTolerancesFollowTheirRule
//	fundamental deviations by their formulas  TestFundamentalDeviationsFollowTheirRules,
//	                                          TestPRAndSFollowTheirRules
//	hole of the same letter: ES = −ei + Δ, Δ = ITn − IT(n−1)
//	                                          TestHoleBasisAndShaftBasisBiteAlike
//
// It covers shafts f g h js j k m n p r s and holes F G H JS J K M N P R in
// grades 5 to 8, for nominal sizes from 3 to 180 mm. Deviations are micrometres
// from the nominal size, positive when bigger. The limits belong to the nominal
// size on the drawing, not to the size measured.
package limits

// Micron is a length in micrometres. JS and js give halves.
type Micron float64

// Smallest and largest nominal sizes covered, mm, both included.
const (
	SmallestMM = 3
	LargestMM  = 180
)

// Lowest and highest standard tolerance grades covered.
const (
	LowestGrade  = 5
	HighestGrade = 8
)

// Hole returns the lower and upper deviations EI and ES of a hole. Letters are
// those of the standard in capitals; nominal is in mm. An error is an *Error.
func Hole(letters string, grade int, nominal float64) (lo, hi Micron, err error) {
	c := Class{letters, grade}
	if !isHole(letters) {
		return 0, 0, &Error{Problem: UnknownLetter, Class: c, NominalMM: nominal}
	}
	return c.Limits(nominal)
}

// Shaft returns the lower and upper deviations ei and es of a shaft. Letters are
// those of the standard in lower case; nominal is in mm. An error is an *Error.
func Shaft(letters string, grade int, nominal float64) (lo, hi Micron, err error) {
	c := Class{letters, grade}
	if !isShaft(letters) {
		return 0, 0, &Error{Problem: UnknownLetter, Class: c, NominalMM: nominal}
	}
	return c.Limits(nominal)
}

// Limits returns the lower and upper deviations of the class at a nominal size
// in mm. An error is an *Error.
func (c Class) Limits(nominal float64) (lo, hi Micron, err error) {
	s, problem := c.step(nominal)
	if problem != 0 {
		return 0, 0, c.wrong(problem, nominal)
	}
	t := s.grade(c.Grade)
	if c.Letters == "js" || c.Letters == "JS" { // ISO 286-1: symmetrical about the nominal size
		return -t / 2, t / 2, nil
	}
	deviation := s.shaft
	if c.IsHole() {
		deviation = s.hole
	}
	d, upper, ok := deviation(c, nominal)
	switch {
	case !ok:
		return 0, 0, c.wrong(NotDefined, nominal)
	case upper:
		return d - t, d, nil
	}
	return d, d + t, nil
}

// step finds the row of the tables, or what keeps the class from having one.
func (c Class) step(nominal float64) (*step, Problem) {
	switch {
	case !isHole(c.Letters) && !isShaft(c.Letters):
		return nil, UnknownLetter
	case c.Grade < LowestGrade || c.Grade > HighestGrade:
		return nil, GradeNotCovered
	case !(nominal > 0): // not a number falls here too
		return nil, NotASize
	case nominal < SmallestMM || nominal > LargestMM:
		return nil, SizeNotCovered
	}
	for i := range steps {
		if nominal <= steps[i].upTo {
			return &steps[i], 0
		}
	}
	return nil, SizeNotCovered
}
