package bench

import (
	"strings"

	"pintwelve/core/form"
)

// Step is a part of the work that answers a form.
type Step struct {
	Name   string // by which the page asks for it
	Answer func(*Answers, *form.Reader)
	Fields string // how its fields' names begin, each before a blank: where a job holds any the sheet takes the answer in
	// Done tells of a job whether its figures show the step done; nil where no figure can.
	Done func(*Kept, form.Form) bool
	// OnSheet answers what the sheet says of it instead, whatever the job holds.
	OnSheet func(*Answers, *form.Reader)
}

// Fill answers a form by the step; what was answered of the same form before is taken
// as it is.
func (s *Step) Fill(a *Answers, r *form.Reader) {
	entries, told := Once(a.Kept, "step "+s.Name, r, func(r *form.Reader) []Entry {
		own := Answers{Kept: a.Kept}
		s.Answer(&own, r)
		return own.Entries
	})
	a.Entries = append(a.Entries, entries...)
	r.Take(told)
}

// Holds tells whether a job holds any field of the step's.
func (s *Step) Holds(f form.Form) bool {
	for name, text := range f {
		first, _, _ := strings.Cut(name, ".")
		if text != "" && strings.Contains(" "+s.Fields, " "+first+". ") {
			return true
		}
	}
	return false
}

// MendIt is said where a figure is wrong that a step can't do without.
const MendIt = "Mend the figure marked Wrong below."

// MostReadings is how many readings one list takes.
const MostReadings = 60
