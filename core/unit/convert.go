package unit

import (
	"math"
	"strconv"
	"strings"
)

// Convert rewrites a bare number, typed where from was the field's unit, for a
// field in to. With step 0, Parse then gives the very same value: with the
// fewest decimals that do, or, where no decimal does, as typed with from's name
// behind it. With a step, in the base unit, the decimal with the fewest places
// that lies within half a step does, but never 0 for what isn't. Text that has
// its own unit, that Parse refuses, or that can't be told in to comes back as it
// is, with false.
func Convert(text string, from, to Unit, step float64) (string, bool) {
	q, fault := parse(text, from)
	if fault != nil || q.typed || from.Kind() != to.Kind() || strings.Contains(text, ":") {
		return text, false
	}
	if from == to {
		return text, true
	}
	if s, ok := decimal(q.value, to, step/2); ok {
		return s, true
	}
	return strings.Trim(text, " ") + " " + from.Name(), true
}

// ConvertList is Convert for a list that ParseList reads.
func ConvertList(text string, from, to Unit, max int, step float64) (string, bool) {
	entries, fault := split(text, max)
	if fault != nil || from.Kind() != to.Kind() || strings.Contains(text, ":") {
		return text, false
	}
	values, typed, fault := list(entries, from)
	if fault != nil || typed {
		return text, false
	}
	for i, value := range values {
		s, ok := decimal(value, to, step/2)
		if !ok {
			return strings.Trim(text, " ") + " " + from.Name(), true
		}
		entries[i] = s
	}
	return strings.Join(entries, " "), true
}

// decimal finds the decimal with the fewest places that u reads as value, or as
// near to it as within, in the base unit. From 1e15 the last figures of a
// reading are rounding, so that its neighbours are tried too.
func decimal(value float64, u Unit, within float64) (string, bool) {
	x := u.reading(value)
	a := amount{neg: x < 0, d: 1}
	for n := 0; n <= maxPlaces && math.Abs(x) < mostShown; n++ {
		k := math.Round(math.Abs(x) * float64(a.d))
		if k >= maxDigits {
			break
		}
		a.n = uint64(k)
		if near := math.Abs(a.in(u)-value) <= within && (k > 0 || value == 0); near || k > 1e15 && a.nudge(value, u) {
			return a.text(n), true
		}
		a.d *= 10
	}
	return "", false
}

// nudge looks beside a for what u reads as exactly value.
func (a *amount) nudge(value float64, u Unit) bool {
	for n := a.n - 40; n <= a.n+40; n++ {
		if (amount{a.neg, n, a.d}).in(u) == value {
			a.n = n
			return true
		}
	}
	return false
}

// text writes a number of n decimal places, d being 10 to the n.
func (a amount) text(n int) string {
	s := strconv.FormatUint(a.n, 10)
	for len(s) <= n {
		s = "0" + s
	}
	if n > 0 {
		s = s[:len(s)-n] + "." + s[len(s)-n:]
	}
	if a.neg && a.n > 0 {
		return "-" + s
	}
	return s
}
