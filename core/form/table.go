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

// Row is a row of the table: a field in each of its places, which are alike but
// for the number that a link has for them.
type Row struct {
	Pattern  string    // the name, a star for each row's key, and "@" for the place
	Places   []string  // what may stand at "@", with a star for a row's key
	Numbers  numbers   // by place, or the one; never used for another field
	Kind     Kind      //
	Unit     unit.Unit // what a bare number is in; thou are mm where the dials are metric
	Min, Max float64   // the range that is let pass, in the base unit; ends included
	Default  string    // what stands in for a blank quantity, a bare number in Unit; "": nothing does
	Choices  []string  // of a choice: the words, the first being the default
	Long     int       // of a list or words: the bytes of text that it takes
}

// numbers are those of a row's places.
type numbers [4]uint16

// Places that have fields alike.
var (
	sides    = [...]string{"drive", "timing"} // the fixed words for the two ends
	halves   = [...]string{"drive", "timing", "alone.*.drive", "alone.*.timing"}
	readings = [...]string{"drive", "timing", "dial.*"}
	ofWhat   = [...]string{"", "1", "2", "3", "4", "5", "6"} // the whole crank, or a pin
	knives   = [...]string{"whole", "drive", "timing"}
	parts    = [...]string{Weighed, New, cylinder + Weighed, cylinder + New}
	cuts     = [...]string{"made", "cut"}
)

// The places of a part: as weighed, and the new one in its stead.
const (
	Weighed  = "weight"
	New      = "new"
	cylinder = "cylinder.*."
)

// Renewed returns the name of the part that a new one takes the place of; false
// for any field but a new part's.
func Renewed(name string) (weighed string, ok bool) {
	f, keys, ok := Job.Lookup(name)
	if !ok || f.Place != New && f.Place != cylinder+New {
		return "", false
	}
	return Fill(strings.Replace(f.Pattern, New, Weighed, 1), keys), true
}

// Name returns a field's name, the stars and the place of its pattern filled in
// turn: ReadingTIR.Name("k3y", "drive") is "pass.k3y.drive.tir". Too few keys, or
// too many, are a fault in the caller.
func (id ID) Name(keys ...string) string {
	pattern := table[id].Pattern
	if len(keys) == 0 && !strings.ContainsAny(pattern, "*@") {
		return pattern
	}
	var name strings.Builder
	for _, key := range keys {
		i := strings.IndexAny(pattern, "*@")
		if i < 0 {
			panic("form: too many keys for " + table[id].Pattern)
		}
		name.WriteString(pattern[:i])
		name.WriteString(key)
		pattern = pattern[i+1:]
	}
	if strings.ContainsAny(pattern, "*@") {
		panic("form: too few keys for " + table[id].Pattern)
	}
	name.WriteString(pattern)
	return name.String()
}

// Within brings a value [base unit] into the range that a field takes.
func (id ID) Within(v float64) float64 { return min(max(v, table[id].Min), table[id].Max) }

// Range narrows the ends of a range [base unit] that a room lets pass to what a field
// takes, so that neither is told that no control would let through.
func (id ID) Range(least, most float64) (float64, float64) {
	return max(least, id.Within(least)), min(most, id.Within(most))
}

// Field is a field in one of its places.
type Field struct {
	ID       ID        // the row
	Place    string    // which of its places, "" where it has one
	Pattern  string    // the name, a star for each row's key
	Number   int       // its number in a link
	Kind     Kind      //
	Unit     unit.Unit // what a bare number is in
	Metric   unit.Unit // the same where the dials are metric
	Min, Max float64   // as the row has them
	Default  string
	Choices  []string
	Long     int // bytes of text that the field takes
}

// field is the row at its n-th place.
func (row *Row) field(id ID, n int) Field {
	f := Field{
		ID: id, Pattern: row.Pattern, Number: int(row.Numbers[n]), Kind: row.Kind, Unit: row.Unit, Metric: row.Unit,
		Min: row.Min, Max: row.Max, Default: row.Default, Choices: row.Choices, Long: row.Long,
	}
	if before, after, ok := strings.Cut(row.Pattern, "@"); ok {
		f.Place = row.Places[n]
		f.Pattern = before + f.Place + after
	}
	if row.Unit == unit.Thou {
		f.Metric = unit.MM
	}
	if row.Long == 0 {
		f.Long = 20
		if row.Kind == Quantity {
			f.Long = 40
		}
	}
	return f
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
	first  [rows]uint16    // of each row, its field in the first of its places
	index  map[string]int  // pattern → field
	groups map[string]bool // the words that a row's key follows
}

// newTable lays a table's rows out, each in each of its places.
func newTable(table *[rows]Row) *Table {
	t := &Table{fields: make([]Field, 0, 2*rows), index: make(map[string]int, 2*rows), groups: map[string]bool{}}
	for id := range table {
		row := &table[id]
		t.first[id] = uint16(len(t.fields))
		for n := range max(1, len(row.Places)) {
			if row.Numbers[n] == 0 { // the last places of parts lack what the pin carries once
				break
			}
			f := row.field(ID(id), n)
			t.index[f.Pattern] = len(t.fields)
			t.fields = append(t.fields, f)
			t.groupsOf(f.Pattern)
		}
	}
	return t
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

// field returns a row's field in the first of its places, to which the others are
// alike but for name and number.
func (t *Table) field(id ID) *Field { return &t.fields[t.first[id]] }

// pattern finds a field by its pattern.
func (t *Table) pattern(pattern string) (*Field, bool) {
	i, ok := t.index[pattern]
	if !ok {
		return nil, false
	}
	return &t.fields[i], true
}

// Fields returns the fields of the table, in each of their places.
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
var Job = newTable(&table)
