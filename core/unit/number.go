package unit

import "strings"

// amount is a number as typed, exactly: n/d, or its negative.
type amount struct {
	neg  bool
	n, d uint64
}

// in turns an amount read in u into the base unit, correctly rounded.
func (a amount) in(u Unit) float64 {
	of := &units[u]
	p, z, neg := times(a.n, 100*of.num), times(a.d, of.zero*of.num), a.neg
	switch {
	case neg:
		p = p.plus(z)
	case p.less(z):
		p, neg = z.minus(p), true
	default:
		p = p.minus(z)
	}
	x := p.over(times(a.d, 100*of.den))
	if neg && x != 0 {
		return -x
	}
	return x
}

const (
	maxPlaces  = 18      // decimal places beyond this are below a float64's reach
	maxDigits  = 1e17    // and so is one more digit after this
	mostStroke = 1 << 16 // over and under a fraction's stroke
)

// number reads a number without a sign from the front of cleaned text: "12",
// "0.5", ",5", "5/8", "1 5/8", "1-5/8". It returns what follows.
func number(s string) (a amount, rest string, fault *Error) {
	whole, rest := digits(s)
	if whole == "" && !startsDecimal(rest) {
		return a, s, &Error{}
	}
	if len(strings.TrimLeft(whole, "0")) > 12 {
		return a, s, &Error{Problem: "is too large"}
	}
	a.n, a.d = value(whole), 1
	if rest == "" {
		return a, rest, nil
	}
	switch rest[0] {
	case '.', ',':
		return decimals(a, whole, rest)
	case '/':
		return over(amount{d: 1}, whole, rest)
	case ' ', '-':
		if top, after := digits(strings.TrimLeft(rest[1:], " ")); top != "" && strings.HasPrefix(after, "/") {
			return over(a, top, after)
		}
	}
	return a, rest, nil
}

// decimals reads the decimal sign at the front of rest and what follows it,
// after the whole part.
func decimals(a amount, whole, rest string) (amount, string, *Error) {
	frac, after := digits(rest[1:])
	if startsDecimal(after) {
		return a, rest, &Error{
			Problem: "has more than one comma or point",
			Example: "the number without thousands marks",
		}
	}
	if rest[0] == ',' && len(frac) == 3 && len(whole) <= 3 && strings.TrimLeft(whole, "0") == whole && whole != "" {
		return a, rest, &Error{
			Problem: "could be " + whole + "." + frac + " or " + whole + frac,
			Example: whole + "." + frac + " (or " + whole + "," + frac + "0) or " + whole + frac,
		}
	}
	for i := 0; i < len(frac) && i < maxPlaces && a.n < maxDigits; i++ {
		a.n = a.n*10 + uint64(frac[i]-'0')
		a.d *= 10
	}
	return a, after, nil
}

// over reads the stroke at the front of rest and the figure under it, and adds
// the fraction to the whole number a.
func over(a amount, top, rest string) (amount, string, *Error) {
	bottom, after := digits(rest[1:])
	n, d := value(top), value(bottom)
	if n > mostStroke || d > mostStroke || d == 0 || startsDecimal(after) {
		return a, rest, &Error{Problem: "is not a fraction", Example: "5/8 or 0.625"}
	}
	if a.n > 0 && n >= d {
		return a, rest, &Error{Problem: "has a fraction larger than 1 after a whole number", Example: "1 5/8 or 1.625"}
	}
	return amount{n: a.n*d + n, d: d}, after, nil
}

// value is that of figures, as far as maxDigits.
func value(figures string) (n uint64) {
	for i := range len(figures) {
		n = min(n*10+uint64(figures[i]-'0'), maxDigits)
	}
	return n
}

// digits splits the leading figures 0 to 9 off s.
func digits(s string) (lead, rest string) {
	i := 0
	for i < len(s) && isDigit(s[i]) {
		i++
	}
	return s[:i], s[i:]
}

// startsDecimal tells whether s goes on with a decimal sign and a figure.
func startsDecimal(s string) bool {
	return len(s) > 1 && (s[0] == '.' || s[0] == ',') && isDigit(s[1])
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
