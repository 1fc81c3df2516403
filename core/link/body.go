package link

import (
	"cmp"
	"slices"
	"strings"

	"pintwelve/core/form"
)

// The body of version 1 is a string of bits, filled up with noughts:
//
//	keys   how many, then each as its step from the one before
//	rows   how many, then each as
//	       depth     how many keys its names hold
//	       places    of those keys, as steps from the row before
//	       shape     1: the fields of the last row of this depth; else (0, or
//	                 nothing where there was none) how many fields, and each
//	                 one's number as the step from the one before
//	       texts     one a field
//
// A row is the names that hold the same keys; rows stand in the order of their
// keys' places. Counts and steps are in γ code, counts that may be nil plus 1.

// entry is one name of the form, taken apart.
type entry struct {
	field  *form.Field
	places []int
	text   string
}

func writeBody(t table, f form.Form) ([]byte, *Error) {
	keys, entries, fault := takeApart(t, f)
	if fault != nil {
		return nil, fault
	}
	var w bitWriter
	keys.write(&w)
	rows := rowsOf(entries)
	w.gamma(uint64(len(rows)) + 1)
	var before []int
	shapes := map[int][]int{}
	for _, row := range rows {
		places := row[0].places
		writePlaces(&w, before, places)
		writeShape(&w, shapes, row)
		for _, e := range row {
			writeText(&w, e.field, e.text)
		}
		before = places
	}
	return w.bytes, nil
}

// takeApart looks every name up, and sorts by row and number.
func takeApart(t table, f form.Form) (keys keyList, entries []entry, fault *Error) {
	if len(f) > form.MaxNames {
		return nil, nil, &Error{Kind: TooBig}
	}
	for _, name := range f.Names() {
		field, rowKeys, ok := t.Lookup(name)
		if !ok {
			return nil, nil, &Error{Kind: Unknown, Name: name}
		}
		if len(f[name]) > field.Long || !clean(f[name]) {
			return nil, nil, &Error{Kind: Unfit, Name: name}
		}
		keys.add(rowKeys)
	}
	keys.settle()
	for name, text := range f {
		field, rowKeys, _ := t.Lookup(name)
		entries = append(entries, entry{field, keys.places(rowKeys), text})
	}
	slices.SortFunc(entries, func(a, b entry) int {
		return cmp.Or(slices.Compare(a.places, b.places), cmp.Compare(a.field.Number, b.field.Number))
	})
	return keys, entries, nil
}

// rowsOf cuts sorted entries into rows.
func rowsOf(entries []entry) (rows [][]entry) {
	from := 0
	for i := range entries {
		if i+1 == len(entries) || !slices.Equal(entries[i].places, entries[i+1].places) {
			rows = append(rows, entries[from:i+1])
			from = i + 1
		}
	}
	return rows
}

// writePlaces writes a row's keys: while they are those of the row before, as
// steps from them.
func writePlaces(w *bitWriter, before, places []int) {
	w.gamma(uint64(len(places)) + 1)
	for i, p := range places {
		base := 0
		if i < len(before) && slices.Equal(before[:i], places[:i]) {
			base = before[i]
		}
		w.gamma(uint64(p-base) + 1)
	}
}

func writeShape(w *bitWriter, shapes map[int][]int, row []entry) {
	numbers := make([]int, len(row))
	for i, e := range row {
		numbers[i] = e.field.Number
	}
	depth := len(row[0].places)
	last, ok := shapes[depth]
	shapes[depth] = numbers
	if ok {
		if slices.Equal(last, numbers) {
			w.put(1, 1)
			return
		}
		w.put(0, 1)
	}
	w.gamma(uint64(len(numbers)))
	before := 0
	for _, n := range numbers {
		w.gamma(uint64(n - before))
		before = n
	}
}

// stars is how many keys a field's names hold.
func stars(f *form.Field) int { return strings.Count(f.Pattern, "*") }
