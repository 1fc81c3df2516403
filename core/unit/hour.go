package unit

import "strings"

// pointed reads "5.30" as a clock is read in Britain: two figures after a point
// are minutes, where minutes are what people would write there. The rest stays
// as it is: a decimal.
func pointed(s string) string {
	if hour, minutes, rest := pointParts(s); hour != "" && asMinutes(minutes) == minutesSure {
		return hour + ":" + minutes + rest
	}
	return s
}

// pointParts cuts an hour with two figures after a point or comma; hour is ""
// for any other text.
func pointParts(s string) (hour, minutes, rest string) {
	hour, rest = digits(s)
	if hour == "" || !startsDecimal(rest) {
		return "", "", s
	}
	minutes, rest = digits(rest[1:])
	name := strings.Trim(rest, " ")
	if _, ok := lookup(Hour, name); len(minutes) != 2 || name != "" && (!ok || strings.HasPrefix(name, "deg")) {
		return "", "", s
	}
	return hour, minutes, rest
}

// How surely two figures after a point are minutes.
const (
	minutesNever = iota // no clock shows them: 5.75
	minutesMaybe        // a decimal as likely: 5.50, 5.25, 5.37
	minutesSure         // 5.30
)

// asMinutes judges two figures: people tell a place on the clock to five
// minutes, and a quarter or a half may be a decimal.
func asMinutes(figures string) int {
	switch n := value(figures); {
	case n >= 60 || n == 0:
		return minutesNever
	case n == 25 || n == 50 || n%5 != 0:
		return minutesMaybe
	}
	return minutesSure
}

// Hours returns what an hour may mean that is written so that it could be
// either minutes or a decimal, the decimal first, as Parse reads it: "5.50" is
// "5:30" or "5:50". It returns nil for any other text.
func Hours(text string) []string {
	s, fault := clean(text)
	if fault != nil {
		return nil
	}
	hour, minutes, _ := pointParts(s)
	if hour == "" || asMinutes(minutes) != minutesMaybe {
		return nil
	}
	v, err := Parse(text, OClock)
	clock := hour + ":" + minutes
	if _, wrong := Parse(clock, OClock); err != nil || wrong != nil {
		return nil
	}
	return []string{FormatHour(v, 1), clock}
}
