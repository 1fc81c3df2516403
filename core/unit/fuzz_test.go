package unit

import (
	"errors"
	"math"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

// FuzzParse holds, for any text in any unit: no panic; a finite value, or an
// error whose parts are filled, valid and short; a value written to a step and
// read again lies within half a step; and a converted text keeps its value.
func FuzzParse(f *testing.F) {
	for i, text := range []string{
		"", "2 thou", "1 5/8 in", "3 5/8\"", "0,05 mm", "1,234", "2 lb 3 oz", "4:30", "½", "−40 °F", "1:30.5", "1e999", "NaN", "0x1p3", "1_000",
		"2\x00", "\u202e2", "5 ton", "40 N·m", "999999999999.999999", "0 .5 1 thou", "1;2;3", "1, 2, 3",
	} {
		f.Add(text, uint8(i), float64(i)/8)
	}
	f.Fuzz(func(t *testing.T, text string, unit uint8, step float64) {
		u := allUnits()[int(unit)%len(allUnits())]
		value, err := Parse(text, u)
		checkError(t, err)
		if err == nil {
			checkValue(t, text, value, u, step)
		}
		values, err := ParseList(text, u, 5)
		checkError(t, err)
		require.LessOrEqual(t, len(values), 5)
		_, ok := ConvertList(text, u, MM, 5, step)
		require.False(t, ok && err != nil)
	})
}

func checkError(t *testing.T, err error) {
	if err == nil {
		return
	}
	var e *Error
	require.True(t, errors.As(err, &e))
	require.NotEmpty(t, e.Given)
	require.NotEmpty(t, e.Problem)
	require.NotEmpty(t, e.Example)
	require.Less(t, utf8.RuneCountInString(e.Error()), 160)
	require.True(t, utf8.ValidString(e.Error()))
}

func checkValue(t *testing.T, text string, value float64, u Unit, step float64) {
	require.False(t, math.IsNaN(value) || math.IsInf(value, 0) || value == 0 && math.Signbit(value))
	if u.Kind() == Hour {
		require.True(t, 0 <= value && value < 12)
		return
	}
	if step > 0 && u.span(step) >= 1e-9 && math.Abs(u.reading(value)) < mostShown-u.span(step) {
		written := Format(value, u, step)
		again, err := Parse(written, u)
		require.NoError(t, err, written)
		require.InDelta(t, value, again, step/2*(1+1e-8)+1e-15*(math.Abs(value)+300), written)
	}
	for _, to := range allUnits() {
		if s, ok := Convert(text, u, to, 0); ok && to.Kind() == u.Kind() && to != u {
			again, err := Parse(s, to)
			require.NoError(t, err, s)
			require.Equal(t, value, again, s)
			if s, ok = Convert(text, u, to, step); ok && step > 0 {
				again, err = Parse(s, to)
				require.NoError(t, err, s)
				require.InDelta(t, value, again, step/2*(1+1e-8)+1e-15*(math.Abs(value)+300), s)
			}
		}
	}
}
