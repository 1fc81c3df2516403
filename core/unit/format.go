package unit

import (
	"math"
	"strconv"
	"strings"
)

const (
	minus      = "−"  // as a person reads it; Parse takes it back
	unknown    = "?"  // for a value that is no number
	mostPlaces = 9    // decimal places that Format writes at most
	mostShown  = 1e12 // and the largest number, as Parse reads it
)

// Format writes a value, in the base unit of u's kind, with u's name: "2 thou",
// "0.05 mm", "4.5°", "52%". It is Figures with the name, but for hours, which
// stand alone.
func Format(value float64, u Unit, step float64) string {
	text := Figures(value, u, step)
	switch {
	case u.Name() == "" || u.Kind() == Hour || text == unknown:
		return text
	case u.Name() == "°" || u.Name() == "%":
		return text + u.Name()
	}
	return text + " " + u.Name()
}

// Figures writes what u reads at a value in the base unit, without u's name. It
// has no more digits than a scale with divisions of step, in the base unit, can
// show, and lies within half a step of the value while a step is 1e-9 u or
// more; with step 0 it has the decimals that make four significant digits.
// There is never a "-0" or an exponent. Hours are as FormatHour writes them. A
// value that is not finite, or 1e12 u and over, is "?".
func Figures(value float64, u Unit, step float64) string {
	if u.Kind() == Hour {
		return FormatHour(value, int(math.Round(min(max(step, 0), 12)*60)))
	}
	x := u.reading(value)
	if !(math.Abs(x) < mostShown) {
		return unknown
	}
	return places(x, decimalsFor(x, u.span(step)))
}

// decimalsFor returns how many decimal places a scale with divisions of step
// shows, negative where it shows no units, tens, ...; without a step, those
// that make four significant digits of x.
func decimalsFor(x, step float64) int {
	if step > 0 {
		return int(min(mostPlaces, max(-12, math.Ceil(-math.Log10(step)-1e-9))))
	}
	if x == 0 {
		return 0
	}
	return int(min(mostPlaces, max(0, 3-math.Floor(math.Log10(math.Abs(x))))))
}

// places writes x with n decimal places, which may be negative, less the zeros
// that say nothing.
func places(x float64, n int) string {
	if n < 0 {
		ten := math.Pow10(-n)
		x, n = math.Round(x/ten)*ten, 0
	}
	s := strconv.FormatFloat(math.Abs(x), 'f', n, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if x < 0 && s != "0" {
		return minus + s
	}
	return s
}

// FormatHour writes an hour of the clock face to the nearest multiple of so
// many minutes: "3", "4:30", "12". Fewer than one minute counts as one. An hour
// that is not finite is "?".
func FormatHour(hour float64, minutes int) string {
	if math.IsNaN(hour) || math.IsInf(hour, 0) {
		return unknown
	}
	step := float64(min(max(minutes, 1), 12*60))
	m := math.Round(math.Mod(hour, 12)*60/step) * step
	all := ((int(m) % 720) + 720) % 720
	h, rest := all/60, all%60
	if h == 0 {
		h = 12
	}
	s := strconv.Itoa(h)
	if rest == 0 {
		return s
	}
	if rest < 10 {
		return s + ":0" + strconv.Itoa(rest)
	}
	return s + ":" + strconv.Itoa(rest)
}
