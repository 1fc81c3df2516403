package link

import (
	"slices"

	"pintwelve/core/form"
)

// bodyReader reads a body back.
type bodyReader struct {
	bitReader
	fields []form.Field // the table's
	keys   []string
	used   []bool
	before []int // places of the row before
	last   shapes
	form   form.Form
}

func readBody(t table, body []byte) (form.Form, *Error) {
	r := bodyReader{bitReader: bitReader{bytes: body}, fields: t.Fields(), form: form.Form{}}
	if wrong := r.read(); wrong != 0 {
		return nil, &Error{Kind: wrong}
	}
	return r.form, nil
}

// read returns 0, or what is wrong with the body.
func (r *bodyReader) read() (wrong Kind) {
	var ok bool
	if r.keys, ok = readKeys(&r.bitReader); !ok {
		return Damaged
	}
	r.used = make([]bool, len(r.keys))
	for i := range r.gamma() - 1 {
		if wrong := r.row(i == 0); wrong != 0 {
			return wrong
		}
	}
	if slices.Contains(r.used, false) || !r.ended() {
		return Damaged
	}
	return 0
}

func (r *bodyReader) row(first bool) (wrong Kind) {
	places, wrong := r.places()
	if wrong != 0 {
		return wrong
	}
	if !first && slices.Compare(r.before, places) >= 0 {
		return Damaged
	}
	r.before = places
	shape, wrong := r.shape(len(places))
	if wrong != 0 {
		return wrong
	}
	var keys []string
	for _, p := range places {
		keys = append(keys, r.keys[p])
		r.used[p] = true
	}
	return r.texts(shape, keys)
}

func (r *bodyReader) places() (places []int, wrong Kind) {
	depth := r.gamma() - 1
	if depth > maxDepth {
		return nil, Newer
	}
	for i := range int(depth) {
		base := 0
		if i < len(r.before) && slices.Equal(r.before[:i], places) {
			base = r.before[i]
		}
		p := uint64(base) + r.gamma() - 1
		if p >= uint64(len(r.keys)) {
			return nil, Damaged
		}
		places = append(places, int(p))
	}
	return places, 0
}

// shape returns the fields of a row.
func (r *bodyReader) shape(depth int) (shape []*form.Field, wrong Kind) {
	old := r.last[depth]
	if old != nil && r.bit() == 1 {
		return old, 0
	}
	number := uint64(0)
	for range r.gamma() {
		number += r.gamma()
		if r.short {
			return nil, Damaged
		}
		field := r.field(number)
		if field == nil {
			return nil, Newer
		}
		if stars(field) != depth {
			return nil, Damaged
		}
		shape = append(shape, field)
	}
	if slices.Equal(old, shape) {
		return nil, Damaged
	}
	r.last[depth] = shape
	return shape, 0
}

// field finds a field by its number; nil: the table has none.
func (r *bodyReader) field(number uint64) *form.Field {
	for i := range r.fields {
		if uint64(r.fields[i].Number) == number {
			return &r.fields[i]
		}
	}
	return nil
}

func (r *bodyReader) texts(shape []*form.Field, keys []string) (wrong Kind) {
	for _, field := range shape {
		text, wrong := readText(&r.bitReader, field)
		if wrong != 0 {
			return wrong
		}
		if len(r.form) == form.MaxNames {
			return TooBig
		}
		r.form[form.Fill(field.Pattern, keys)] = text
	}
	return 0
}
