package form

import "math"

// Fields reads a form's fields by their IDs, so that the compiler knows each name;
// keys fill the stars and the place of a row's pattern in turn, as ID.Name has it.
type Fields struct{ *Reader }

// ReadFields starts reading a form.
func ReadFields(f Form) Fields { return Fields{Read(f)} }

// Number reads a quantity in its base unit. It returns false for a blank, and for
// text that is wrong, which it keeps as a problem.
func (f Fields) Number(id ID, keys ...string) (float64, bool) {
	return f.number(Job.field(id), id.Name(keys...))
}

// Or reads a quantity; where the field is blank or wrong, standIn counts, and is
// kept as one. A NaN takes the table's default.
func (f Fields) Or(standIn float64, id ID, keys ...string) float64 {
	return f.or(Job.field(id), id.Name(keys...), standIn)
}

// Default reads a quantity, the table's default standing in.
func (f Fields) Default(id ID, keys ...string) float64 { return f.Or(math.NaN(), id, keys...) }

// Numbers reads a list in its base unit: nil for a blank or a wrong one, or
// one of more entries than most.
func (f Fields) Numbers(most int, id ID, keys ...string) []float64 {
	return f.numbers(Job.field(id), id.Name(keys...), most)
}

// Word reads a choice: what was chosen, or its default.
func (f Fields) Word(id ID, keys ...string) string {
	return f.word(Job.field(id), id.Name(keys...))
}

// Text is what stands in a field, as typed.
func (f Fields) Text(id ID, keys ...string) string { return f.Form[id.Name(keys...)] }

// Blank says whether nothing stands in a field.
func (f Fields) Blank(id ID, keys ...string) bool { return f.Reader.Blank(id.Name(keys...)) }

// Wrong says whether a problem with a field has been told.
func (f Fields) Wrong(id ID, keys ...string) bool { return f.Reader.Wrong(id.Name(keys...)) }

// Complain keeps a problem with a field; the first one told of a field stands.
func (f Fields) Complain(text string, id ID, keys ...string) {
	f.Reader.Complain(id.Name(keys...), text)
}
