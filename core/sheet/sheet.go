// Package sheet answers a form: it reads the fields, runs the trade rooms, and
// words and draws what they find, one file a trade room. It is the only place
// where figures become sentences, and where the ends of the crank, which the
// rooms know as left and right, get the names drive side and timing side.
package sheet

import "pintwelve/core/form"

// Parts of the bench, each with its own answers; the page asks for the one that
// it shows.
const (
	True    = "true"
	Lighten = "lighten"
)

// Answer answers a part of a form, or with part "" the whole of it.
func Answer(f form.Form, part string) *Answers {
	a := &Answers{}
	r := form.Read(f)
	for _, p := range parts {
		if part == p.name || part == "" {
			p.answer(a, r)
		}
	}
	a.problems(r)
	return a
}

var parts = [...]struct {
	name   string
	answer func(*Answers, *form.Reader)
}{
	{True, truing},
	{Lighten, lighten},
}

// problems tells what is wrong with fields, and what stands in for blank ones.
func (a *Answers) problems(r *form.Reader) {
	for _, p := range r.Problems {
		a.text("error."+p.Name, p.Text)
	}
	for _, s := range r.StandIns {
		a.text("assumed."+s.Name, s.Text)
	}
}
