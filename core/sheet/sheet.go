// Package sheet answers a form: it puts the steps of the work in their order.
package sheet

import (
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/step/balance"
	"pintwelve/core/step/fitting"
	"pintwelve/core/step/jobsheet"
	"pintwelve/core/step/lighten"
	"pintwelve/core/step/truing"
	"pintwelve/core/unit"
)

// Answer answers a part of a form, or with part "" the whole of it but for the
// sheet, which says the same again, and for how to measure.
func Answer(f form.Form, part string) *bench.Answers {
	return answer(form.Read(f), part, &bench.Kept{})
}

// Desk is where a form lies that is changed and answered, part after part: of it nothing is
// solved twice, and after a change only what that touches is read. The zero value has a
// blank form on it.
type Desk struct {
	form   form.Form
	groups form.Groups // of the form; nil where they aren't known
	kept   bench.Kept
}

// Form is what lies on the desk, not to be changed but by Change.
func (d *Desk) Form() form.Form { return d.form }

// Change puts texts into the form, and takes others out of it by their names.
func (d *Desk) Change(texts form.Form, gone []string) {
	if d.form == nil {
		d.form = form.Form{}
	}
	for name, text := range texts {
		if was, there := d.form[name]; !there || was != text {
			d.form[name] = text
			d.changed(name, there)
		}
	}
	for _, name := range gone {
		if _, there := d.form[name]; there {
			delete(d.form, name)
			d.changed(name, false)
		}
	}
}

// changed lets go of what a change touches; the rows stay where a name stands as it did, with
// another text that is none's order.
func (d *Desk) changed(name string, stands bool) {
	d.kept.Changed(name)
	if !stands || strings.HasSuffix(name, ".order") {
		d.groups = nil
	}
}

// Answer answers a part of the form as it does any form.
func (d *Desk) Answer(part string) *bench.Answers {
	if d.groups == nil {
		d.groups = d.form.Groups()
	}
	return answer(form.ReadBy(d.form, d.groups), part, &d.kept)
}

func answer(r *form.Reader, part string, kept *bench.Kept) *bench.Answers {
	a := &bench.Answers{Kept: kept}
	blocks(a, r)
	for i := range steps {
		s := &steps[i]
		if part == s.Name || part == "" && s.Name != jobsheet.Name && s.Name != truing.HowTo.Name && s.Name != truing.State.Name {
			s.Fill(a, r)
		}
	}
	problems(a, r)
	doubts(a, r)
	return a
}

// counting is a step that takes what is found of the cuts under Lighten for given: it
// knows the wheels as they will be.
func counting(s bench.Step) bench.Step {
	answer := s.Answer
	s.Answer = func(a *bench.Answers, r *form.Reader) {
		job := r.Form
		if found := lighten.Found(job); len(found) > 0 {
			r.Form = job.With(found)
		}
		answer(a, r)
		r.Form = job
	}
	return s
}

// balancing and measuring are the steps that ask for the wheels as they will be.
var balancing, measuring = counting(balance.Step), counting(fitting.Measure)

// Plan works out the holes that a form asks for, as balance.Plan does.
func Plan(f form.Form, key string) *bench.Answers { return balance.Plan(f.With(lighten.Found(f)), key) }

// steps are the parts that the page asks for.
var steps = [...]bench.Step{
	truing.First, truing.More, truing.Values, truing.State,
	lighten.Step, balancing,
	fitting.Order(work[:]), fitting.Found, measuring, fitting.PressUp, fitting.Cases,
	jobsheet.Of(onSheet[:]), truing.HowTo,
}

// work is the order of work, as he takes it.
var work = [...]fitting.Task{
	{Tick: form.OrderFound, Words: lookItOver, Done: fitting.Found.Done},
	{Tick: form.OrderSplit, Words: splitIt, Done: fitting.Split},
	{Tick: form.OrderMeasure, Words: measureIt, Done: fitting.Measure.Done},
	{Tick: form.OrderLighten, Words: lightenIt, Done: lighten.Step.Done},
	{Tick: form.OrderBalance, Words: balanceIt, Done: balance.Step.Done},
	{Tick: form.OrderPress, Words: pressItUp, Done: fitting.PressUp.Done},
	{Tick: form.OrderTrue, Words: trueIt, Done: truing.Trued, Begun: beingTrued},
	{Tick: form.OrderNuts, Words: nutsAndLocks, Done: truing.NutsDrawn},
	{Tick: form.OrderAgain, Words: trueItAgain, Done: truing.TruedAgain},
	{Tick: form.OrderCases, Words: intoTheCases, Done: inItsCases},
}

// inItsCases tells whether it was read in its cases, and not out of true there.
func inItsCases(k *bench.Kept, f form.Form) bool {
	if !fitting.Cases.Done(k, f) {
		return false
	}
	a := &bench.Answers{Kept: k}
	fitting.Cases.Fill(a, form.Read(f))
	return !a.OutInCases()
}

// beingTrued tells whether he is at the truing. The readings of a crank that was
// looked over to be split are how it came, until it is read again.
func beingTrued(k *bench.Kept, f form.Form) bool {
	return truing.ReadAgain(k, f) || truing.Begun(k, f) && !fitting.Apart(k, f)
}

// onSheet are the steps that the job's sheet sums up, in the order of the work.
var onSheet = [...]*bench.Step{
	&truing.First, &fitting.Found, &lighten.Step, &balancing, &measuring, &fitting.PressUp, &fitting.Cases,
}

// blocks fills the title block and the units in the fields, whatever the part.
func blocks(a *bench.Answers, r *form.Reader) {
	fine := bench.FineUnit(r)
	name := title
	if number := r.Text(form.Number); number != "" {
		name = number
	}
	a.Say("block.name", name)
	a.Say("block.seen", seenFrom(bench.ReadEnds(r).SeenFrom()))
	a.Say("block.tolerance", allowed(unit.Format(r.Default(form.Tolerance), fine, 0)))
	a.Text("unit.fine", fine.Name())
}

// problems tells what is wrong with fields, and what stands in for blank ones.
func problems(a *bench.Answers, r *form.Reader) {
	for _, p := range r.Problems {
		a.Text("error."+p.Name, p.Text)
	}
	for _, s := range r.StandIns {
		a.Text("assumed."+s.Name, s.Text)
	}
}

// doubts tell, field by field, what a text in doubt may mean: in turn what to
// show, and what to write in the field.
func doubts(a *bench.Answers, r *form.Reader) {
	for _, d := range r.Doubts {
		var parts []string
		for _, m := range d.Meanings {
			parts = append(parts, m.Label, m.Text)
		}
		a.Text("doubt."+d.Name, strings.Join(parts, "\n"))
	}
}
