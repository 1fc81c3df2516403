package sheet

import "pintwelve/core/bench"

// Answers is what a form is answered with.
type Answers struct{ bench.Answers }

func (a *Answers) text(name, text string) { a.Text(name, text) }

func (a *Answers) say(name, template string, figures ...string) {
	a.Say(name, template, figures...)
}

func fill(template string, figures ...string) string { return bench.Fill(template, figures...) }

func counted(n int, one, more string) string { return bench.Counted(n, one, more) }

func (a *Answers) number(name string, v float64) { a.Number(name, v) }

func (a *Answers) null(name string) { a.Null(name) }

func (a *Answers) hourOrNull(name string, told bool, hour float64) { a.HourOrNull(name, told, hour) }

func (a *Answers) emptyList(name string) { a.EmptyList(name) }
