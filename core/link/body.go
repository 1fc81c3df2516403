package link

import (
	"cmp"
	"slices"
	"sort"
	"strings"

	"pintwelve/core/form"
)

// The body of version 1 is a string of bits, filled up with noughts:
//
//	keys   how many, then each as its step from the one before
//	rows   how many, then each as
//	       depth     how many keys its names hold, maxDepth at most
//	       places    of those keys, as steps from the row before
//	       shape     1: the fields of the last row of this depth; else (0, or
//	                 nothing where there was none) how many fields, and each
//	                 one's number as the step from the one before
//	       texts     one a field
//
// A row is the names that hold the same keys; rows stand in the order of their
// keys' places. Counts and steps are in γ code, counts that may be 0 plus 1.

// maxDepth bounds the keys in one name.
const maxDepth = 4

// shapes are the fields of the last row of each depth.
type shapes [maxDepth + 1][]*form.Field

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
	writeKeys(&w, keys)
	rows := rowsOf(entries)
	w.gamma(uint64(len(rows)) + 1)
	var before []int
	var last shapes
	for _, row := range rows {
		places := row[0].places
		writePlaces(&w, before, places)
		writeShape(&w, &last, row)
		for _, e := range row {
			writeText(&w, e.field, e.text)
		}
		before = places
	}
	return w.bytes, nil
}

// takeApart looks every name up, and sorts by row and number.
func takeApart(t table, f form.Form) (keys []string, entries []entry, fault *Error) {
	if len(f) > form.MaxNames {
		return nil, nil, &Error{Kind: TooBig}
	}
	names := f.Names()
	for _, name := range names {
		field, rowKeys, ok := t.Lookup(name)
		if !ok {
			return nil, nil, &Error{Kind: Unknown, Name: name}
		}
		if len(f[name]) > field.Long || !clean(f[name]) {
			return nil, nil, &Error{Kind: Unfit, Name: name}
		}
		keys = append(keys, rowKeys...)
	}
	keys = settle(keys)
	return keys, inOrder(t, f, names, keys), nil
}

// inOrder gives the entries of names in the order of a link.
func inOrder(t table, f form.Form, names, keys []string) []entry {
	place := map[string]int{}
	for i, key := range keys {
		place[key] = i
	}
	entries := make([]entry, len(names))
	for i, name := range names {
		field, rowKeys, _ := t.Lookup(name)
		e := entry{field: field, text: f[name]}
		for _, key := range rowKeys {
			e.places = append(e.places, place[key])
		}
		entries[i] = e
	}
	sort.SliceStable(entries, func(i, j int) bool {
		p, q := entries[i], entries[j]
		return cmp.Or(slices.Compare(p.places, q.places), p.field.Number-q.field.Number) < 0
	})
	return entries
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

func writeShape(w *bitWriter, last *shapes, row []entry) {
	var shape []*form.Field
	for _, e := range row {
		shape = append(shape, e.field)
	}
	old := &last[len(row[0].places)]
	if *old != nil {
		if slices.Equal(*old, shape) {
			w.put(1, 1)
			return
		}
		w.put(0, 1)
	}
	*old = shape
	w.gamma(uint64(len(shape)))
	before := 0
	for _, f := range shape {
		w.gamma(uint64(f.Number - before))
		before = f.Number
	}
}

// stars is how many keys a field's names hold.
func stars(f *form.Field) int { return strings.Count(f.Pattern, "*") }
