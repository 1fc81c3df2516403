package limits

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseReadsTheStandardsNotation(t *testing.T) {
	for s, want := range map[string]Class{"H7": {"H", 7}, "m6": {"m", 6}, "js6": {"js", 6}, "JS7": {"JS", 7}, "s5": {"s", 5}, "za11": {"za", 11}, "h18": {"h", 18}} {
		c, err := Parse(s)
		require.NoError(t, err, s)
		assert.Equal(t, want, c)
		assert.Equal(t, s, c.String())
	}
}

func TestParseRefusesTheRest(t *testing.T) {
	for _, s := range []string{"", "H", "7", "H 7", " H7", "H7 ", "Js6", "jS6", "H7/m6", "H-7", "H+7", "H7.0", "H100", "abc6", "é6", "H٧", "H\x00", "\xff6", strings.Repeat("H7", 1e5)} {
		_, err := Parse(s)
		var e *Error
		require.ErrorAs(t, err, &e, "%q", s)
		assert.Equal(t, NotAClass, e.Problem)
	}
}

func TestClassesThatHaveNoLimits(t *testing.T) {
	for _, row := range []struct {
		class    Class
		size     float64
		problem  Problem
		from, to int
	}{
		{Class{"j", 8}, 30, NotDefined, 5, 7}, // ISO 286-1 has j8 up to 3 mm alone: from memory
		{Class{"j", 8}, 3.001, NotDefined, 5, 7},
		{Class{"J", 5}, 30, NotDefined, 6, 8},
		{Class{"J", 5}, 3, NotDefined, 6, 8},
		{Class{"S", 7}, 30, UnknownLetter, 0, 0},
		{Class{"x", 7}, 30, UnknownLetter, 0, 0},
		{Class{"", 7}, 30, UnknownLetter, 0, 0},
		{Class{"H", 4}, 30, GradeNotCovered, 0, 0},
		{Class{"H", 9}, 30, GradeNotCovered, 0, 0},
		{Class{"H", -1 << 62}, 30, GradeNotCovered, 0, 0},
		{Class{"m", 6}, 0, NotASize, 0, 0},
		{Class{"m", 6}, -30, NotASize, 0, 0},
		{Class{"m", 6}, math.NaN(), NotASize, 0, 0},
		{Class{"m", 6}, math.Inf(-1), NotASize, 0, 0},
		{Class{"m", 6}, math.Inf(1), SizeNotCovered, 0, 0},
		{Class{"m", 6}, 2.999, SizeNotCovered, 0, 0},
		{Class{"m", 6}, 180.001, SizeNotCovered, 0, 0},
		{Class{"m", 6}, 1e308, SizeNotCovered, 0, 0},
		{Class{"m", 6}, 5e-324, SizeNotCovered, 0, 0},
	} {
		lo, hi, err := row.class.Limits(row.size)
		var e *Error
		require.ErrorAs(t, err, &e, "%v at %g", row.class, row.size)
		assert.Equal(t, row.problem, e.Problem, "%v at %g", row.class, row.size)
		assert.Equal(t, [2]int{row.from, row.to}, [2]int{e.FromGrade, e.ToGrade})
		assert.Equal(t, [2]Micron{}, [2]Micron{lo, hi})
		assert.Equal(t, row.class, e.Class)
	}
}

func TestHoleAndShaftTakeOnlyTheirOwnLetters(t *testing.T) {
	var e *Error
	_, _, err := Hole("h", 7, 30)
	require.ErrorAs(t, err, &e)
	assert.Equal(t, UnknownLetter, e.Problem)
	_, _, err = Shaft("H", 7, 30)
	require.ErrorAs(t, err, &e)
	assert.Equal(t, UnknownLetter, e.Problem)
	_, _, err = Shaft("", 7, 30)
	require.ErrorAs(t, err, &e)
	_, _, err = Hole("H", 9, 30)
	require.ErrorAs(t, err, &e)
	assert.Equal(t, GradeNotCovered, e.Problem)
}

func FuzzParse(f *testing.F) {
	f.Add("H7", 62.0)
	f.Add("js6", 3.0)
	f.Fuzz(func(t *testing.T, s string, size float64) {
		c, err := Parse(s)
		if err != nil {
			return
		}
		assert.LessOrEqual(t, len(s), 4)
		if lo, hi, err := c.Limits(size); err == nil {
			assert.Less(t, lo, hi)
			assert.True(t, size >= SmallestMM && size <= LargestMM)
		} else {
			assert.NotEmpty(t, err.Error())
		}
	})
}
