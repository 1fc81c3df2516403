package truing

import (
	"strconv"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// before says, while a later pass wants its readings, how the needles stood in
// the pass before and what was hoped of what was done since.
func (a answers) before(p *pass, r *form.Reader) {
	if p.bench == 0 {
		a.Say("truing.new", yes(untouched(p)))
		return
	}
	last := &p.rounds[p.bench-1]
	words := beforeIt(p.roundWords(last))
	if done := p.done(r, last.key); len(done) > 0 {
		if hope := passOf(a.Kept, r, last.key).hopeOf(done); hope != nil {
			words += "\n" + hopedFor(p.hopeWords(hope, last.used))
		}
	} else if p.rounds[p.bench].since == "" {
		words += "\n" + nothingLogged
	}
	a.Say("truing.before", words)
}

func yes(so bool) string {
	if so {
		return "yes"
	}
	return ""
}

// untouched tells whether no figure of a pass is there yet.
func untouched(p *pass) bool {
	for i := range p.reading {
		if got := &p.reading[i]; got.lack != runOut && (got.lack != points || got.taken > 0) {
			return false
		}
	}
	return true
}

// hopeOf returns what each counted dial should show [mm] after the moves done;
// nil where one of them isn't as it was advised, or in another order, since nobody
// knows then what was hoped of it.
func (p *pass) hopeOf(done []crank.JointDone) []float64 {
	if len(done) > len(p.moves) {
		return nil
	}
	for i := range done {
		if !asAdvised(&p.moves[i], &done[i]) {
			return nil
		}
	}
	return p.moves[len(done)-1].then
}

// A move counts as the one advised within half an hour and a quarter of its dose,
// or what writing the dose to a tenth loses.
const (
	sameHour = 0.5
	sameDose = 0.25
	oneTenth = 0.1
)

func asAdvised(m *move, d *crank.JointDone) bool {
	if m.joint != d.Joint {
		return false
	}
	for _, way := range [...]crank.Move{m.Move, m.Other} {
		sameWheel := d.Kind != crank.Strike || d.Wheel == way.Wheel
		if d.Kind == way.Kind && sameWheel && clock.Apart(d.Hour, way.Hour) <= sameHour {
			return abs(d.Dose-m.Dose) <= max(sameDose*m.Dose, oneTenth)
		}
	}
	return false
}

// wayOn says what the buttons below the sentence do: what is done is logged and
// read again, and what is true goes on. What was done after an earlier pass is
// logged already.
func (a answers) wayOn(p *pass, r *form.Reader) {
	_, asked := p.asksSince() // is answered first
	keys, on := passKeys(r)
	switch {
	case on < len(keys)-1:
		name := passName(on + 1)
		if p.staged {
			next := passOf(a.Kept, r, keys[on+1])
			name = next.passName(next.bench)
		}
		a.Say("truing.next", onToPass(lowerFirst(name)))
	case asked:
		return
	case p.advice.Verdict == crank.Fit && p.pin == 0:
		a.Say("truing.on", "yes")
	case len(p.done(r, p.key)) > 0:
		a.Say("truing.logged", asLogged)
	case p.pin > 0 && p.left():
		a.join(p)
	case len(p.moves) > 0:
		a.Say("truing.did", doneReadAgain(didWords[p.moves[0].Kind]))
		switch n := len(p.moves); {
		case n == 2:
			a.Say("truing.both", bothDone)
		case n > 2:
			a.Say("truing.both", allDone(strconv.Itoa(n)))
		}
	}
}
