package form

import (
	"strings"

	"pintwelve/core/unit"
)

// Kind says how the text of a field is read.
type Kind uint8

// The kinds of field.
const (
	Quantity Kind = iota // a number with a unit
	List                 // several numbers, one unit
	Choice               // one of a few words
	Words                // free text
	Tick                 // "yes" or blank
	Order                // a whole number, made by the page
)

// Field is one row of the table.
type Field struct {
	Pattern  string    // the name, a star for each row's key
	Number   int       // its number in a link; never used for another field
	Kind     Kind      //
	Unit     unit.Unit // what a bare number is in
	Metric   unit.Unit // the same where the dials are metric
	Min, Max float64   // the range that is let pass, in the base unit; ends included
	Default  string    // what stands in for a blank quantity; "": nothing does
	Choices  []string  // of a choice: the words, the first being the default
	Long     int       // bytes of text that the field takes
}

// UnitIn returns the unit that a bare number of the field is in.
func (f *Field) UnitIn(form Form) unit.Unit {
	if form["units"] == "metric" {
		return f.Metric
	}
	return f.Unit
}

// Table is every field of a job.
type Table struct {
	fields []Field
	index  map[string]int  // pattern → field
	groups map[string]bool // the words that a row's key follows
}

// newTable reads tables as text, a field a line, in the columns
//
//	number  pattern  kind and what goes with it
//
// The kinds are: "choice" with its words, "-" for a blank one; "words" with the
// bytes it takes; "tick"; "order"; "list" with bytes, unit and range; and
// else a unit's name with a range in the base unit and, where there is one, the
// stand-in, a bare number in the unit. The unit "fine" is that of the dials, and
// "plain" none.
//
// It panics on a line that can't be read: that is a fault in the source, not in
// a form. No name or number may stand twice. The page waits for all of this at
// each start, so that nothing is read in a roundabout way.
func newTable(texts ...string) *Table {
	lines := strings.Split(strings.Join(texts, "\n"), "\n")
	t := &Table{fields: make([]Field, 0, len(lines)), index: make(map[string]int, len(lines)), groups: map[string]bool{}}
	named := map[string][2]unit.Unit{}
	for _, line := range lines {
		words := strings.Fields(line)
		if len(words) == 0 {
			continue
		}
		f := readField(words, named)
		t.index[f.Pattern] = len(t.fields)
		t.fields = append(t.fields, f)
		t.groupsOf(f.Pattern)
	}
	return t
}

// readField reads a line's words. The units that were named so far are kept in
// named: the same few go with most fields.
func readField(words []string, named map[string][2]unit.Unit) Field {
	f := Field{Number: whole(words[0]), Pattern: words[1], Long: 20}
	switch rest := words[3:]; words[2] {
	case "choice":
		f.Kind, f.Choices = Choice, rest
		if rest[0] == "-" {
			rest[0] = ""
		}
	case "words":
		f.Kind, f.Long = Words, whole(rest[0])
	case "tick":
		f.Kind = Tick
	case "order":
		f.Kind = Order
	case "list":
		f.Kind, f.Long = List, whole(rest[0])
		f.quantity(rest[1:], named)
	default:
		f.Long = 40
		f.quantity(words[2:], named)
	}
	return f
}

// quantity reads a unit, a range, and a stand-in.
func (f *Field) quantity(words []string, named map[string][2]unit.Unit) {
	units, known := named[words[0]]
	if !known {
		units = unitNamed(words[0])
		named[words[0]] = units
	}
	f.Unit, f.Metric = units[0], units[1]
	low, high, _ := strings.Cut(words[1], "..")
	f.Min, f.Max = decimal(low), decimal(high)
	if len(words) > 2 {
		f.Default = words[2]
	}
}

// unitNamed finds a unit by its name, in inch and in metric figures.
func unitNamed(name string) [2]unit.Unit {
	switch name {
	case "fine":
		return [2]unit.Unit{unit.Thou, unit.MM}
	case "plain":
		return [2]unit.Unit{unit.Plain, unit.Plain}
	}
	for kind := unit.Number; kind <= unit.Expansion; kind++ {
		if u, ok := unit.Named(kind, name); ok {
			return [2]unit.Unit{u, u}
		}
	}
	panic("form: no unit " + name)
}

func (t *Table) groupsOf(pattern string) {
	for {
		before, after, more := strings.Cut(pattern, ".*")
		if !more {
			return
		}
		t.groups[before[strings.LastIndexByte(before, '.')+1:]] = true
		pattern = after
	}
}

func whole(text string) int { return int(decimal(text)) }

// decimal reads a plain decimal figure: "-0.254".
func decimal(text string) float64 {
	digits, negative := strings.CutPrefix(text, "-")
	before, after, _ := strings.Cut(digits, ".")
	v, tens := 0.0, 1.0
	for _, c := range before + after {
		if c < '0' || c > '9' {
			panic("form: no number: " + text)
		}
		v = 10*v + float64(c-'0')
	}
	for range after {
		tens *= 10
	}
	if negative {
		v = -v
	}
	return v / tens
}

// pattern finds a field by its pattern.
func (t *Table) pattern(pattern string) (*Field, bool) {
	i, ok := t.index[pattern]
	if !ok {
		return nil, false
	}
	return &t.fields[i], true
}

// Fields returns the rows of the table.
func (t *Table) Fields() []Field { return t.fields }

// Lookup finds the field that a name is one of, and the keys that fill its
// stars.
func (t *Table) Lookup(name string) (f *Field, keys []string, ok bool) {
	if strings.Contains(name, "*") {
		return nil, nil, false
	}
	if f, ok = t.pattern(name); ok {
		return f, nil, true
	}
	segments := strings.Split(name, ".")
	for i := 1; i < len(segments); i++ {
		if t.groups[segments[i-1]] {
			if !ValidKey(segments[i]) {
				return nil, nil, false
			}
			keys = append(keys, segments[i])
			segments[i] = "*"
		}
	}
	f, ok = t.pattern(strings.Join(segments, "."))
	return f, keys, ok
}

// Fill puts keys in the place of a pattern's stars.
func Fill(pattern string, keys []string) string {
	for _, key := range keys {
		if before, after, ok := strings.Cut(pattern, "*"); ok {
			pattern = before + key + after
		}
	}
	return pattern
}

// Job is the table of the whole job.
var Job = newTable(truingFields, lightenFields, balanceFields, fittingFields, jobFields)
