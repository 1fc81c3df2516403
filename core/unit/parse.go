package unit

import (
	"strings"
	"unicode/utf8"
)

const maxText = 64 // bytes of a single quantity

// Parse reads one quantity, bare numbers being in def. The value is in the
// base unit of def's kind; hours are in [0, 12). The error is an *Error.
func Parse(text string, def Unit) (float64, error) {
	q, fault := parse(text, def)
	if fault != nil {
		return 0, fault.complete(text, def)
	}
	return q.value, nil
}

// quantity is a text that was read.
type quantity struct {
	value float64
	unit  Unit // the last one typed, or the field's own
	typed bool // whether a unit was typed
}

// parse is Parse without the completed error.
func parse(text string, def Unit) (q quantity, fault *Error) {
	s, fault := clean(text)
	if fault == nil {
		q, fault = terms(s, def)
	}
	if fault != nil && fault.Problem == "" {
		fault.Problem = "is not " + def.Kind().noun()
	}
	return q, fault
}

// terms reads a sign and then number and unit, once or, as in "2 lb 3 oz",
// more often.
func terms(s string, def Unit) (q quantity, fault *Error) {
	if def.Kind() == Taper {
		return taper(s, def)
	}
	neg := false
	if s != "" && (s[0] == '-' || s[0] == '+') {
		neg = s[0] == '-'
		s = strings.TrimLeft(s[1:], " ")
	}
	if def.Kind() == Hour {
		s = pointed(s)
	}
	if strings.Contains(s, ":") {
		return colon(neg, s, def)
	}
	for first := true; first || s != ""; first = false {
		a, rest, fault := number(s)
		if fault != nil {
			return q, fault
		}
		a.neg = neg
		u, typed, rest, fault := unitAfter(rest, def)
		if fault != nil {
			return q, fault
		}
		if !first && !follows(u, typed, q) {
			return q, &Error{}
		}
		q = quantity{q.value + a.in(u), u, typed}
		s = rest
	}
	return face(q, def)
}

// taper reads "1:8", "1 in 8", "1/8", "0.125", all the same, and "8" for 1 in 8.
func taper(s string, def Unit) (q quantity, fault *Error) {
	ratio := false
	if rest, ok := strings.CutPrefix(s, "1"); ok {
		rest = strings.TrimLeft(rest, " ")
		for _, mark := range [...]string{":", "in", "/"} {
			if after, ok := strings.CutPrefix(rest, mark); ok {
				s, ratio = strings.TrimLeft(after, " "), true
				break
			}
		}
	}
	a, rest, fault := number(s)
	if fault != nil || rest != "" || a.n == 0 {
		return q, &Error{}
	}
	if !ratio && a.n < a.d {
		a.n, a.d = a.d, a.n
	}
	return quantity{value: a.in(def), unit: def}, nil
}

// unitAfter reads the unit behind a number: the whole rest, or as far as the
// next figure. An empty rest leaves the field's own.
func unitAfter(s string, def Unit) (u Unit, typed bool, rest string, fault *Error) {
	s = strings.TrimLeft(s, " ")
	if s == "" {
		return def, false, "", nil
	}
	if isDigit(s[0]) {
		return u, false, s, &Error{Problem: "has a space inside the number", Example: "the number without the space"}
	}
	if u, ok := lookup(def.Kind(), s); ok {
		return u, true, "", nil
	}
	if end := strings.IndexAny(s, "0123456789"); end > 0 {
		if u, ok := lookup(def.Kind(), s[:end]); ok {
			return u, true, s[end:], nil
		}
	}
	if key := unitKey(s); def.Kind() == Force && (key == "ton" || key == "tons") {
		return u, false, s, &Error{Problem: "could be any of three tons", Example: "5 tonne, 5 UK ton or 5 US ton"}
	}
	if k, ok := kindOf(s); ok {
		return u, false, s, &Error{Problem: "is " + k.noun() + ", not " + def.Kind().noun()}
	}
	return u, false, s, &Error{}
}

// follows tells whether a term in u may come behind what was read so far: both
// with their units, the smaller one last.
func follows(u Unit, typed bool, q quantity) bool {
	switch u.Kind() {
	case Length, Mass, Angle, Time:
		return typed && q.typed && u.span(1) > q.unit.span(1)
	}
	return false
}

// colon reads "4:30" on the clock face and "1:30" in minutes and seconds.
func colon(neg bool, s string, def Unit) (q quantity, fault *Error) {
	big, rest := digits(s)
	if big == "" || len(big) > 3 || len(rest) < 3 || rest[0] != ':' || !isDigit(rest[1]) || !isDigit(rest[2]) {
		return q, &Error{}
	}
	a, _, _ := number(big)
	b, rest, fault := number(rest[1:])
	if fault != nil {
		return q, fault
	}
	if b.d > 1e6 {
		return q, &Error{Problem: "has too many decimals"}
	}
	if b.n >= 60*b.d {
		return q, &Error{Problem: "has more than 59 after the colon"}
	}
	sixty := amount{neg: neg, n: 60*a.n*b.d + b.n, d: b.d}
	switch {
	case def.Kind() == Hour && b.d == 1:
		u, typed, rest, fault := unitAfter(rest, OClock)
		if fault != nil || rest != "" || u != OClock {
			return q, &Error{}
		}
		sixty.d = 60
		return face(quantity{sixty.in(OClock), OClock, typed}, def)
	case def.Kind() == Time && strings.Trim(rest, " ") == "":
		return quantity{value: sixty.in(Second), unit: Second}, nil
	}
	return q, &Error{}
}

// face brings hours onto the clock face; other kinds pass.
func face(q quantity, def Unit) (quantity, *Error) {
	if def.Kind() != Hour {
		return q, nil
	}
	if q.value < 0 || q.value >= 13 || q.unit == hourDegree && q.value > 12 {
		return q, &Error{Problem: "is not on the clock face"}
	}
	if q.value >= 12 {
		q.value -= 12
	}
	return q, nil
}

// clean folds the many ways of writing one thing into lower-case ASCII, and
// refuses what no quantity has in it.
func clean(text string) (string, *Error) {
	if len(text) > maxText {
		return "", &Error{Problem: "is too long"}
	}
	out := make([]byte, 0, maxText)
	for _, r := range text {
		s, ok := fold(r)
		if !ok {
			return "", &Error{Problem: "has a character in it that can't be read"}
		}
		out = append(out, s...)
	}
	return strings.Trim(string(out), " "), nil
}

const plainSigns = "0123456789abcdefghijklmnopqrstuvwxyz+-.,/:%\"'*^() "

// folds has what stands outside ASCII and what it is read as.
var folds = []struct {
	from rune
	to   string
}{
	{'−', "-"}, {'–', "-"}, {'⁄', "/"}, {'·', "*"}, {'⋅', "*"},
	{'µ', "u"}, {'μ', "u"}, {'²', "2"}, {'³', "3"},
	{'°', "deg"}, {'º', "deg"}, {'℃', "degc"}, {'℉', "degf"},
	{'″', `"`}, {'”', `"`}, {'“', `"`}, {'′', "'"}, {'’', "'"},
	{'½', " 1/2 "}, {'¼', " 1/4 "}, {'¾', " 3/4 "}, {'⅓', " 1/3 "}, {'⅔', " 2/3 "},
	{'⅛', " 1/8 "}, {'⅜', " 3/8 "}, {'⅝', " 5/8 "}, {'⅞', " 7/8 "},
}

// fold returns the ASCII that a character is read as.
func fold(r rune) (string, bool) {
	if IsSpace(r) {
		return " ", true
	}
	if 'A' <= r && r <= 'Z' {
		r += 'a' - 'A'
	}
	if r < utf8.RuneSelf {
		i := strings.IndexByte(plainSigns, byte(r))
		if i < 0 {
			return "", false
		}
		return plainSigns[i : i+1], true
	}
	for _, f := range folds {
		if f.from == r {
			return f.to, true
		}
	}
	return "", false
}

// IsSpace takes the blanks that keyboards and copied text put between a number
// and its unit, no-break and thin spaces among them: all that Unicode calls
// White_Space.
func IsSpace(r rune) bool {
	return r == ' ' || '\t' <= r && r <= '\r' || r == '\u0085' || r == '\u00A0' || r == '\u1680' ||
		'\u2000' <= r && r <= '\u200A' || r == '\u2028' || r == '\u2029' || r == '\u202F' || r == '\u205F' || r == '\u3000'
}
