package form

import (
	"math"
	"strings"

	"pintwelve/core/unit"
)

// Problem is what is wrong with the text of one field: what was given, and
// what would do.
type Problem struct{ Name, Text string }

// StandIn is a value that the answers use for a field left blank.
type StandIn struct {
	Name  string
	Value float64 // in the base unit
	Text  string  // as it would be typed
}

// Reader reads a form's fields and keeps what is wrong and what was assumed.
type Reader struct {
	Form     Form
	Pin      string // key of the further pin whose throw is read on the knife-edges, "" for the first's
	Problems []Problem
	StandIns []StandIn
	Doubts   []Doubt // texts that may mean more than one thing
	told     marks   // names whose problem has been told
	stood    marks   // names whose stand-in has been kept
	doubted  marks   // names whose doubt has been kept
	sure     bool    // keeps no doubts
	groups   Groups  // once the rows of one are asked for
}

// Read starts reading a form.
func Read(f Form) *Reader { return &Reader{Form: f} }

// ReadBy starts reading a form whose groups are known.
func ReadBy(f Form, known Groups) *Reader {
	r := Read(f)
	r.groups = known
	return r
}

// complain keeps a problem with a field; the first one told of a field stands.
func (r *Reader) complain(name, text string) {
	if r.told.put(name) {
		r.Problems = append(r.Problems, Problem{name, text})
	}
}

// Apart starts reading the same form anew, with nothing told yet.
func (r *Reader) Apart() *Reader {
	return ReadBy(r.Form, r.Groups())
}

// Rows returns the keys of a group as Form.Rows does, of all groups by one walk
// through the form; the list is not to be changed.
func (r *Reader) Rows(group string) []string { return r.Groups()[group] }

// Groups are those of the form, which are not to be changed.
func (r *Reader) Groups() Groups {
	if r.groups == nil {
		r.groups = r.Form.Groups()
	}
	return r.groups
}

// Take tells what another reader of the same form told, who tells no more.
func (r *Reader) Take(from *Reader) {
	for _, p := range from.Problems {
		if r.told.takes(&from.told, p.Name) {
			r.Problems = append(r.Problems, p)
		}
	}
	for _, s := range from.StandIns {
		if r.stood.takes(&from.stood, s.Name) {
			r.StandIns = append(r.StandIns, s)
		}
	}
	for _, d := range from.Doubts {
		if r.doubted.takes(&from.doubted, d.Name) {
			r.Doubts = append(r.Doubts, d)
		}
	}
	r.told.join(&from.told)
	r.stood.join(&from.stood)
	r.doubted.join(&from.doubted)
}

// Told are the problems, stand-ins and doubts of a reader alone, without the form.
func (r *Reader) Told() *Reader {
	return &Reader{Problems: r.Problems, StandIns: r.StandIns, Doubts: r.Doubts}
}

// standIn keeps a stand-in; the first one of a field stands.
func (r *Reader) standIn(s StandIn) {
	if r.stood.put(s.Name) {
		r.StandIns = append(r.StandIns, s)
	}
}

// typed is a field's text without the blanks around it.
func (r *Reader) typed(name string) string { return strings.TrimFunc(r.Form[name], unit.IsSpace) }

func (r *Reader) number(f *Field, name string) (float64, bool) {
	text := r.Form[name]
	if r.typed(name) == "" {
		return 0, false
	}
	def := f.UnitIn(r.Form)
	v, err := unit.Parse(text, def)
	switch {
	case err != nil:
		r.complain(name, err.Error())
		return 0, false
	case v < f.Min || v > f.Max:
		r.doubt(name, f, false)
		r.complain(name, f.outOfRange(text, unit.UnitOf(text, def, 1)))
		return 0, false
	case f.tooLight(r.typed(name), v):
		r.complain(name, kilogramsOrGrams(clip(r.typed(name))))
		return 0, false
	}
	switch def {
	case unit.OClock:
		r.doubtHour(name)
	case unit.PerCent:
		r.doubtFactor(name, f, v)
	default:
		r.doubt(name, f, true)
	}
	return v, true
}

func (r *Reader) or(f *Field, name string, standIn float64) float64 {
	if v, ok := r.number(f, name); ok {
		return v
	}
	def := f.UnitIn(r.Form)
	if math.IsNaN(standIn) {
		v, err := unit.Parse(f.Default, f.Unit)
		if err != nil {
			panic("form: default of " + name + ": " + err.Error())
		}
		standIn = v
	}
	if !r.stood.has(name) {
		r.standIn(StandIn{name, standIn, unit.Format(standIn, def, 0)})
	}
	return standIn
}

func (r *Reader) numbers(f *Field, name string, most int) []float64 {
	if r.typed(name) == "" {
		return nil
	}
	list, err := unit.ParseList(r.Form[name], f.UnitIn(r.Form), most)
	if err != nil {
		r.complain(name, err.Error())
		return nil
	}
	for i, v := range list {
		if v < f.Min || v > f.Max {
			in := unit.UnitOf(r.Form[name], f.UnitIn(r.Form), most)
			r.complain(name, inEntry(i+1, f.outOfRange(unit.Format(v, in, 0), in)))
			return nil
		}
	}
	r.doubt(name, f, true)
	return list
}

func (r *Reader) word(f *Field, name string) string {
	text := r.typed(name)
	if text == "" {
		return f.Choices[0]
	}
	for _, c := range f.Choices {
		if c == text {
			return c
		}
	}
	r.complain(name, notOneOf(clip(text), f.Choices))
	return f.Choices[0]
}

// outOfRange says that a quantity lies outside what its field takes, in a unit.
func (f *Field) outOfRange(given string, in unit.Unit) string {
	return outOfRange(clip(given), unit.Format(f.Min, in, 0), unit.Format(f.Max, in, 0))
}

// clip cuts a text for a message; what a browser or a terminal might obey is
// replaced.
func clip(text string) string {
	const most = 24
	out := make([]rune, 0, most)
	for _, c := range text {
		if len(out) == most {
			return string(out) + "…"
		}
		if unit.Unseen(c) {
			c = '·'
		}
		out = append(out, c)
	}
	return string(out)
}

// Check returns what is wrong with a form from outside, whoever wrote it: what
// Unfit finds, and wrong quantities. It reads every field, so that its list is
// whole.
func Check(f Form) []Problem {
	r := Read(f)
	if len(f) > MaxNames {
		r.complain("", tooManyFields)
		return r.Problems
	}
	if crowds := Crowds(f); crowds != nil {
		r.complain("", crowds[0].String())
		return r.Problems
	}
	for _, name := range f.Names() {
		if field := r.fits(name); field != nil && field.Kind == Quantity {
			r.number(field, name)
		} else if field != nil && field.Kind == List {
			r.numbers(field, name, field.Long)
		}
	}
	return r.Problems
}

// Unfit returns what in a form from outside no control could have made: names
// that the table lacks, text that is too long, words that a choice hasn't, rows
// over the most that a group has. A wrong quantity is not among it: that is kept
// as it was typed.
func Unfit(f Form) []Problem {
	r := Read(f)
	for _, crowd := range Crowds(f) {
		r.leaveOut(crowd)
	}
	for _, name := range f.Names() {
		r.fits(name)
	}
	return r.Problems
}

// leaveOut complains of every name in the rows of a crowd that are over its most.
func (r *Reader) leaveOut(crowd Crowd) {
	over := map[string]bool{}
	for _, key := range r.Form.Rows(crowd.Group)[crowd.Most:] {
		over[key] = true
	}
	for _, name := range r.Form.Names() {
		rest, within := strings.CutPrefix(name, crowd.Group+".")
		if key, _, _ := strings.Cut(rest, "."); within && over[key] {
			r.complain(name, crowd.String())
		}
	}
}

// fits complains of what no control could have made, and returns the field
// otherwise.
func (r *Reader) fits(name string) *Field {
	field, _, ok := Job.Lookup(name)
	switch text := r.Form[name]; {
	case !ok:
		r.complain(name, noSuchField)
	case len(text) > field.Long:
		r.complain(name, longerThan(field.Long))
	case field.Kind == Choice:
		r.word(field, name)
	case field.Kind == Tick && text != "" && text != "yes":
		r.complain(name, tickWords)
	case field.Kind == Order && (text == "" || !isOrder(text) || len(text) > 1 && text[0] == '0'):
		r.complain(name, orderWords)
	}
	if r.told.has(name) {
		return nil
	}
	return field
}
