package unit

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// ParseList reads up to max quantities: "0 .5 1 1.5 thou". Spaces, tabs, new
// lines and semicolons separate, and so does a comma with no figure right after
// it; a comma between figures is a decimal sign. A unit behind the last entry
// is that of the whole list, or else each entry has that unit. Values are as
// from Parse. The error is an *Error that says which entry.
func ParseList(text string, def Unit, max int) ([]float64, error) {
	entries, fault := split(text, max)
	if fault != nil {
		return nil, fault.complete(fault.Given, def)
	}
	values, _, fault := list(entries, def)
	if fault != nil {
		return nil, fault.complete(entries[fault.Entry-1], def)
	}
	return values, nil
}

// list reads entries, at least one, and tells whether a unit was typed.
func list(entries []string, def Unit) (values []float64, typed bool, fault *Error) {
	last, _ := parse(entries[len(entries)-1], def)
	if last.typed {
		def = last.unit
	}
	withUnit := 0
	for i, entry := range entries {
		q, wrong := parse(entry, def)
		if wrong == nil && q.typed {
			withUnit++
			if !last.typed || q.unit != def {
				wrong = &Error{Problem: "has a unit of its own", Example: oneUnit}
			}
		}
		if wrong != nil {
			wrong.Entry = i + 1
			return nil, false, wrong
		}
		values = append(values, q.value)
	}
	if withUnit > 1 && withUnit < len(entries) {
		fault = &Error{Entry: len(entries), Problem: "has a unit, but not every number before it has", Example: oneUnit}
	}
	return values, last.typed, fault
}

// UnitOf is the unit that a list was typed in, which stands behind its last entry; def
// where none was typed, or the last entry is none.
func UnitOf(text string, def Unit, max int) Unit {
	entries, fault := split(text, max)
	if fault != nil {
		return def
	}
	return unitOf(entries, def)
}

// unitOf is UnitOf entries, at least one.
func unitOf(entries []string, def Unit) Unit {
	if last, fault := parse(entries[len(entries)-1], def); fault == nil && last.typed {
		return last.unit
	}
	return def
}

const (
	oneUnit  = "one unit, behind the last number"
	someList = "0 .5 1 .5"
)

// split cuts a list into its entries, at least one. A fault has the raw entry
// as Given.
func split(text string, max int) (entries []string, fault *Error) {
	if len(text) > max*maxText {
		return nil, &Error{Given: text, Problem: "is too long", Example: atMost(max)}
	}
	parts := cut(text)
	for k, words := range parts {
		if len(words) == 0 && k < len(parts)-1 {
			return nil, &Error{Entry: len(entries) + 1, Problem: "stands between two separators", Example: someList}
		}
		for i, word := range words {
			switch {
			case i > 0 && isWhole(words[i-1].text) && isFraction(word.text):
				both := words[i-1].text + " " + word.text
				return nil, &Error{Entry: len(entries), Given: both, Problem: "could be one number or two", Example: "decimals"}
			case i > 0 && !startsNumber(word.text):
				entries[len(entries)-1] += " " + word.text
			case len(entries) == max:
				return nil, &Error{Entry: max + 1, Given: word.text, Problem: "is one too many", Example: atMost(max)}
			default:
				entries = append(entries, word.text)
			}
		}
	}
	if len(entries) == 0 {
		return nil, &Error{Problem: "is not a list of numbers", Example: someList}
	}
	return entries, nil
}

func atMost(max int) string { return strconv.Itoa(max) + " numbers at most" }

// word is a part of a list without blanks in it, and where it begins.
type word struct {
	text string
	from int
}

// cut cuts a list at semicolons, and at commas that can't be decimal signs, and
// what lies between into words.
func cut(text string) (parts [][]word) {
	var words []word
	begun := -1
	end := func(at int) {
		if begun >= 0 {
			words = append(words, word{text[begun:at], begun})
		}
		begun = -1
	}
	for i, r := range text {
		switch {
		case r == ';' || r == ',' && (i+1 == len(text) || !isDigit(text[i+1])):
			end(i)
			parts, words = append(parts, words), nil
		case IsSpace(r):
			end(i)
		case begun < 0:
			begun = i
		}
	}
	end(len(text))
	return append(parts, words)
}

// Tail is the end of a list as it is typed on: the text up to the last number,
// that number, what parts it from the unit or from the end of the text, and the
// unit. Of a list without a number all is Before.
type Tail struct{ Before, Number, Gap, Unit string }

// TailOf finds the end of a list that ParseList reads.
func TailOf(text string) Tail {
	t := Tail{Before: text}
	for _, words := range cut(text) {
		for _, w := range words {
			if !startsNumber(w.text) {
				continue
			}
			number := strings.TrimRightFunc(w.text, inUnit)
			end := w.from + len(number)
			t = Tail{Before: text[:w.from], Number: number}
			t.Unit = strings.TrimLeftFunc(text[end:], separates)
			t.Gap = text[end : len(text)-len(t.Unit)]
		}
	}
	return t
}

// Open tells whether the next number is awaited: after a separator, or with a
// blank of its own before the unit.
func (t Tail) Open() bool {
	if t.Unit == "" {
		return t.Gap != "" || t.Number == ""
	}
	return len(t.Gap) > 1
}

// Sign is what parts the numbers of the list: semicolons where it has some, else
// a blank.
func (t Tail) Sign() string {
	if strings.Contains(t.Before, ";") || strings.Contains(t.Gap, ";") {
		return ";"
	}
	return " "
}

// inUnit takes what may stand in the name of a unit behind a number.
func inUnit(r rune) bool {
	return !strings.ContainsRune("0123456789.,+-−½¼¾⅓⅔⅛⅜⅝⅞", r)
}

func separates(r rune) bool { return IsSpace(r) || r == ';' || r == ',' }

// startsNumber tells a number from the words of a unit.
func startsNumber(word string) bool {
	r, _ := utf8.DecodeRuneInString(word)
	s, _ := fold(r)
	s = strings.TrimLeft(s, " ")
	return s != "" && strings.IndexByte("0123456789+-.,", s[0]) >= 0
}

// isWhole tells whether a word is figures alone, with or without a sign.
func isWhole(word string) bool {
	s, _ := clean(word)
	lead, rest := digits(strings.TrimLeft(s, "+-"))
	return lead != "" && rest == ""
}

// isFraction tells whether a word begins with a fraction alone.
func isFraction(word string) bool {
	s, _ := clean(word)
	lead, rest := digits(s)
	return lead != "" && strings.HasPrefix(rest, "/")
}
