package bench

import "pintwelve/core/form"

// Step is a part of the work that answers a form.
type Step struct {
	Name   string // by which the page asks for it
	Answer func(*Answers, *form.Reader)
	Fields string // how its fields' names begin, each before a blank, by which the job's sheet takes it in
}

// MendIt is said where a figure is wrong that a step can't do without.
const MendIt = "Mend the figure marked Wrong below."

// MostReadings is how many readings one list takes.
const MostReadings = 60
