package form

import (
	"math"

	"pintwelve/core/unit"
)

// A step reads fields by their IDs, so that the compiler knows each name; keys fill
// the stars and the place of a row's pattern in turn, as ID.Name has it.

// Name is the name of the field that is read for an ID: of what is on the knife-edges that
// of the reader's pin.
func (r *Reader) Name(id ID, keys ...string) string {
	if r.Pin != "" && id >= KnifeCame && id <= KnifeRadius {
		return (id - KnifeCame + PinCame).Name(append([]string{r.Pin}, keys...)...)
	}
	return id.Name(keys...)
}

// Number reads a quantity in its base unit. It returns false for a blank, and for
// text that is wrong, which it keeps as a problem.
func (r *Reader) Number(id ID, keys ...string) (float64, bool) {
	return r.number(Job.field(id), r.Name(id, keys...))
}

// Or reads a quantity; where the field is blank or wrong, standIn counts, and is
// kept as one. A NaN takes the table's default.
func (r *Reader) Or(standIn float64, id ID, keys ...string) float64 {
	return r.or(Job.field(id), r.Name(id, keys...), standIn)
}

// Default reads a quantity, the table's default standing in.
func (r *Reader) Default(id ID, keys ...string) float64 { return r.Or(math.NaN(), id, keys...) }

// Numbers reads a list in its base unit: nil for a blank or a wrong one, or
// one of more entries than most.
func (r *Reader) Numbers(most int, id ID, keys ...string) []float64 {
	return r.numbers(Job.field(id), r.Name(id, keys...), most)
}

// Coarsest is how coarsely the lengths of a list were read, by the decimals typed, mm;
// 0 where they don't tell.
func (r *Reader) Coarsest(most int, id ID, keys ...string) float64 {
	if r.Blank(id, keys...) {
		return 0
	}
	return unit.Coarsest(r.Text(id, keys...), Job.field(id).UnitIn(r.Form), most)
}

// UnitOf is the unit in which a quantity or a list was typed: the field's own where
// none stands behind it.
func (r *Reader) UnitOf(most int, id ID, keys ...string) unit.Unit {
	return unit.UnitOf(r.Text(id, keys...), Job.field(id).UnitIn(r.Form), most)
}

// Word reads a choice: what was chosen, or its default.
func (r *Reader) Word(id ID, keys ...string) string {
	return r.word(Job.field(id), r.Name(id, keys...))
}

// Text is what stands in a field, as typed.
func (r *Reader) Text(id ID, keys ...string) string { return r.Form[r.Name(id, keys...)] }

// Blank says whether nothing stands in a field.
func (r *Reader) Blank(id ID, keys ...string) bool { return r.typed(r.Name(id, keys...)) == "" }

// Wrong says whether a problem with a field has been told.
func (r *Reader) Wrong(id ID, keys ...string) bool { return r.told.has(r.Name(id, keys...)) }

// Complain keeps a problem with a field; the first one told of a field stands.
func (r *Reader) Complain(text string, id ID, keys ...string) {
	r.complain(r.Name(id, keys...), text)
}
