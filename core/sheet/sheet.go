// Package sheet answers a form: it puts the steps of the work in their order. The
// truing and the job's sheet stand here too: what the dials say is read, worked
// out by the trade rooms, worded and drawn.
package sheet

import (
	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/step/balance"
	"pintwelve/core/step/fitting"
	"pintwelve/core/step/lighten"
	"pintwelve/core/unit"
)

// True is the part that trues: its first screen, with ".more" what stands below that,
// with ".values" what is for others than the page.
const True = "true"

// Answer answers a part of a form, or with part "" the whole of it but for the
// sheet, which says the same again, and for how to measure.
func Answer(f form.Form, part string) *Answers {
	a := &Answers{}
	r := form.Read(f)
	a.blocks(r)
	for _, p := range parts {
		if part == p.name || part == "" && p.name != Sheet && p.name != HowTo {
			p.answer(a, r)
		}
	}
	a.problems(r)
	a.doubts(r)
	return a
}

var parts = [...]struct {
	name   string
	answer func(*Answers, *form.Reader)
}{
	{True, truing},
	{True + ".more", truingMore},
	{True + ".values", truingValues},
	{lighten.Step.Name, apart(&lighten.Step)},
	{balance.Step.Name, apart(&balance.Step)},
	{fitting.Order.Name, apart(&fitting.Order)},
	{fitting.Found.Name, apart(&fitting.Found)},
	{fitting.Measure.Name, apart(&fitting.Measure)},
	{fitting.PressUp.Name, apart(&fitting.PressUp)},
	{fitting.Cases.Name, apart(&fitting.Cases)},
	{Sheet, jobSheet},
	{HowTo, howTo},
}

// apart answers by a step that stands in a room of its own.
func apart(step *bench.Step) func(*Answers, *form.Reader) {
	return func(a *Answers, r *form.Reader) { step.Answer(&a.Answers, r) }
}

// blocks fills the title block and the units in the fields, whatever the part.
func (a *Answers) blocks(r *form.Reader) {
	fine := fineUnit(r)
	name := "Pintwelve"
	if number := r.Text(form.Number); number != "" {
		name = number
	}
	a.say("block.name", "%", name)
	a.say("block.seen", "seen from % side", readEnds(r).seenFrom())
	a.say("block.tolerance", "% allowed", unit.Format(r.Default(form.Tolerance), fine, 0))
	a.text("unit.fine", fine.Name())
}

// fineUnit is what is read off a dial in.
func fineUnit(r *form.Reader) unit.Unit { return bench.FineUnit(r) }

// problems tells what is wrong with fields, and what stands in for blank ones.
func (a *Answers) problems(r *form.Reader) {
	for _, p := range r.Problems {
		a.text("error."+p.Name, p.Text)
	}
	for _, s := range r.StandIns {
		a.text("assumed."+s.Name, s.Text)
	}
}
