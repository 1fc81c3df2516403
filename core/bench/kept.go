package bench

import "pintwelve/core/form"

// Kept is what the steps worked out of one form, so that another part of it solves
// nothing again. The zero value has nothing yet.
type Kept struct{ held map[string]kept }

type kept struct {
	result any
	told   *form.Reader // what reading the form for it told
}

// Once returns what was worked out of a form under a name, and what its reading
// told: the first time by work, from then on as kept. What is kept is not changed
// any more; nil keeps nothing.
func Once[T any](k *Kept, name string, f form.Form, work func(*form.Reader) T) (T, *form.Reader) {
	if k == nil {
		k = &Kept{}
	}
	if was, ok := k.held[name]; ok {
		return was.result.(T), was.told
	}
	told := form.Read(f)
	result := work(told)
	if k.held == nil {
		k.held = map[string]kept{}
	}
	k.held[name] = kept{result, told}
	return result, told
}
