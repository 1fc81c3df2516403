package limits

import (
	"slices"
	"strconv"
)

// Class is a tolerance class: the letters of the fundamental deviation, capitals
// for a hole, and the grade. H7 is {"H", 7}.
type Class struct {
	Letters string
	Grade   int
}

var (
	holeLetters  = [...]string{"F", "G", "H", "JS", "J", "K", "M", "N", "P", "R"}
	shaftLetters = [...]string{"f", "g", "h", "js", "j", "k", "m", "n", "p", "r", "s"}
)

func isHole(letters string) bool  { return slices.Contains(holeLetters[:], letters) }
func isShaft(letters string) bool { return slices.Contains(shaftLetters[:], letters) }

// IsHole says whether the class is a hole's that this package covers.
func (c Class) IsHole() bool { return isHole(c.Letters) }

// String writes the class as the standard does.
func (c Class) String() string { return c.Letters + strconv.Itoa(c.Grade) }

// Parse reads a class as the standard writes it: one or two letters and one or
// two figures, nothing else. It reads classes this package doesn't cover, as far
// as they are written so, and leaves it to Limits to say so. An error is an
// *Error with Problem NotAClass.
func Parse(s string) (Class, error) {
	n := 0
	for n < len(s) && n < 2 && isLetter(s[n]) {
		n++
	}
	figures := s[n:]
	sameCase := n < 2 || (s[0] <= 'Z') == (s[1] <= 'Z')
	if n == 0 || !sameCase || len(figures) == 0 || len(figures) > 2 {
		return Class{}, &Error{Problem: NotAClass}
	}
	grade := 0
	for _, f := range []byte(figures) {
		if f < '0' || f > '9' {
			return Class{}, &Error{Problem: NotAClass}
		}
		grade = 10*grade + int(f-'0')
	}
	return Class{s[:n], grade}, nil
}

func isLetter(b byte) bool { return 'a' <= b && b <= 'z' || 'A' <= b && b <= 'Z' }
