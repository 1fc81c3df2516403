package limits

import "strconv"

// Problem says why there are no limits.
type Problem uint8

// The problems.
const (
	NotAClass       Problem = iota + 1 // not letters and a grade
	UnknownLetter                      // letters not covered, or a hole's where a shaft's are meant
	GradeNotCovered                    // grade below LowestGrade or above HighestGrade
	NotASize                           // nominal size zero, negative or not a number
	SizeNotCovered                     // nominal size outside SmallestMM to LargestMM
	NotDefined                         // the standard gives these letters no such grade at this size
)

// Error is the one error of this package.
type Error struct {
	Problem   Problem
	Class     Class
	NominalMM float64
	// Grades that the standard gives these letters at this size, with NotDefined.
	FromGrade, ToGrade int
}

// Error returns a line for a developer; the words for the user are elsewhere.
func (e *Error) Error() string {
	why := [...]string{"", "not a tolerance class", "letters not covered", "grade not covered",
		"not a size", "size not covered", "not defined by ISO 286 at this size"}
	return "limits: " + e.Class.String() + " at " + strconv.FormatFloat(e.NominalMM, 'f', -1, 64) + " mm: " + why[e.Problem]
}

// wrong builds the error, with the grades that would do where the letters have
// fewer than the others: only j and J do.
func (c Class) wrong(p Problem, nominal float64) error {
	e := &Error{Problem: p, Class: c, NominalMM: nominal}
	if p == NotDefined {
		e.FromGrade, e.ToGrade = 5, 7
		if c.IsHole() {
			e.FromGrade, e.ToGrade = 6, 8
		}
	}
	return e
}
