package link

import (
	"slices"

	"pintwelve/core/form"
)

// bodyReader reads a body back.
type bodyReader struct {
	bitReader
	fields map[int]*form.Field
	keys   []string
	used   []bool
	before []int         // places of the row before
	shapes map[int][]int // the fields of the last row of each depth
	form   form.Form
}

func readBody(t table, body []byte) (form.Form, *Error) {
	r := bodyReader{
		bitReader: bitReader{bytes: body},
		fields:    map[int]*form.Field{},
		shapes:    map[int][]int{},
		form:      form.Form{},
	}
	fields := t.Fields()
	for i := range fields {
		r.fields[fields[i].Number] = &fields[i]
	}
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
	places, ok := r.places()
	if !ok || !first && slices.Compare(r.before, places) >= 0 {
		return Damaged
	}
	r.before = places
	numbers, wrong := r.shape(len(places))
	if wrong != 0 {
		return wrong
	}
	keys := make([]string, len(places))
	for i, p := range places {
		keys[i], r.used[p] = r.keys[p], true
	}
	for _, n := range numbers {
		text, wrong := readText(&r.bitReader, r.fields[n])
		if wrong != 0 {
			return wrong
		}
		if len(r.form) == form.MaxNames {
			return TooBig
		}
		r.form[form.Fill(r.fields[n].Pattern, keys)] = text
	}
	return 0
}

func (r *bodyReader) places() (places []int, ok bool) {
	for i := range int(r.gamma() - 1) {
		base := 0
		if i < len(r.before) && slices.Equal(r.before[:i], places) {
			base = r.before[i]
		}
		p := uint64(base) + r.gamma() - 1
		if r.short || p >= uint64(len(r.keys)) {
			return nil, false
		}
		places = append(places, int(p))
	}
	return places, !r.short
}

// shape returns the numbers of a row's fields.
func (r *bodyReader) shape(depth int) (numbers []int, wrong Kind) {
	last, ok := r.shapes[depth]
	if ok && r.bit() == 1 {
		return last, 0
	}
	n := 0
	for range r.gamma() {
		n += int(r.gamma())
		if r.short {
			return nil, Damaged
		}
		field, ok := r.fields[n]
		if !ok {
			return nil, Newer
		}
		if stars(field) != depth {
			return nil, Damaged
		}
		numbers = append(numbers, n)
	}
	if slices.Equal(last, numbers) {
		return nil, Damaged
	}
	r.shapes[depth] = numbers
	return numbers, 0
}
