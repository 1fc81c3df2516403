package bench

import (
	"strings"

	"pintwelve/core/form"
)

// Kept is what the steps worked out of one form, so that another part of it solves
// nothing again, and what they read of its rows, so that the next form reads only
// those that were changed. The zero value has nothing yet.
type Kept struct {
	held  held
	rows  map[string]map[string]held // by group and key
	lasts map[string]any
}

type held map[string]kept

type kept struct {
	result any
	told   *form.Reader // what reading the form for it told
}

// Once returns what was worked out of a form under a name, and what its reading
// told: the first time by work, from then on as kept. What is kept is not changed
// any more; nil keeps nothing.
func Once[T any](k *Kept, name string, r *form.Reader, work func(*form.Reader) T) (T, *form.Reader) {
	all := k.once(name, r, func(r *form.Reader) any { return work(r) })
	return all.result.(T), all.told
}

// once is Once of any type: its code stands but once so.
func (k *Kept) once(name string, r *form.Reader, work func(*form.Reader) any) kept {
	if k == nil {
		k = &Kept{}
	}
	if was, ok := k.held[name]; ok {
		return was
	}
	told := r.Apart()
	result := work(told)
	if k.held == nil {
		k.held = held{}
	}
	k.held[name] = kept{result, told}
	return k.held[name]
}

// OfRow returns what was read of a row under a name, and has r tell what that told:
// the first time by read, from then on as kept, from form to form too. It may
// depend on the row and on what stands outside its group, on no other row of it;
// what is kept is not changed any more. Nil keeps nothing.
func OfRow[T any](k *Kept, r *form.Reader, group, key, name string, read func(*form.Reader) T) T {
	if k == nil {
		return read(r)
	}
	return k.ofRow(r, group, key, name, func(r *form.Reader) any { return read(r) }).(T)
}

func (k *Kept) ofRow(r *form.Reader, group, key, name string, read func(*form.Reader) any) any {
	row := k.row(group, key)
	was, ok := row[name]
	if !ok {
		told := r.Apart()
		was = kept{result: read(told)}
		// Without its form, which would stay for as long as the row stays as it is.
		was.told = told.Told()
		row[name] = was
	}
	r.Take(was.told)
	return was.result
}

func (k *Kept) row(group, key string) held {
	if k.rows == nil {
		k.rows = map[string]map[string]held{}
	}
	if k.rows[group] == nil {
		k.rows[group] = map[string]held{}
	}
	if k.rows[group][key] == nil {
		k.rows[group][key] = held{}
	}
	return k.rows[group][key]
}

// Lasting returns what is kept under a name whatever is changed, and knows by itself what of
// it still holds: what was first given for it. Nil keeps nothing.
func (k *Kept) Lasting(name string, first any) any {
	if k == nil {
		return first
	}
	if k.lasts == nil {
		k.lasts = map[string]any{}
	}
	if _, ok := k.lasts[name]; !ok {
		k.lasts[name] = first
	}
	return k.lasts[name]
}

// Changed lets go of what was worked out of a form that is changed in the field
// named, but for the rows that it doesn't touch.
func (k *Kept) Changed(name string) {
	k.held = nil
	group, rest, _ := strings.Cut(name, ".")
	key, _, _ := strings.Cut(rest, ".")
	delete(k.rows[group], key)
	for other := range k.rows {
		if other != group {
			delete(k.rows, other)
		}
	}
}
