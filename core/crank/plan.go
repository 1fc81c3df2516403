package crank

import (
	"math"

	"pintwelve/core/clock"
)

// Step is one move to make now.
type Step struct {
	Move            // Amount is the whole of what it could take out
	Other   Move    // the move that does the same from elsewhere
	Aim     float64 // mm, as Amount: what to go for now
	Dose    float64 // how hard, 1 being a usual one
	Learned bool    // this crank has shown what a dose of the kind does
	Trial   bool    // a light one, to be followed by reading: the first of its kind, or after one that went the other way
	// The latest earlier thing of the kind done, to liken this to: the pass it was
	// done after, and how many times its dose this is. Pass is −1 where there is none,
	// and the step is a cautious first one.
	Pass  int
	Times float64
	D, G  clock.Vec // how the halves should sit after it and the steps before it
}

// Why says why a plan is as it is.
type Why uint8

// The reasons. With Work there are steps; with Unclear there may be, for one who
// goes on all the same.
const (
	Unread     Why = iota // there is no pass, or the latest wasn't solved
	Work                  // it reads outside, and the steps will bring it nearer
	Leave                 // it reads inside
	Unmendable            // no bumping brings it inside: look to the pin and its seats
	Unclear               // read again, with more points: see below
	Stop                  // what was done has not done what it should: look for the cause first
)

// With Unclear it is not surely inside, but nothing that a move takes out stands
// clear of the noise, or the crank has not been touched yet and is too close to
// call: a true one must not be hit.

// Next is what to do after the latest readings.
type Next struct {
	Advice // Strike and Close as in Steps
	Lesson
	Why    Why
	Rounds int     // of readings taken together since the last move
	Steps  []Step  // with two, both before the next readings
	Asks   []Ask   // the likeliest to settle something first
	Causes []Cause // with Stop and Unmendable, the likeliest first
	// Witness tells those of Stop apart; its Shows, Mirrored and Exchanged are nil
	// where no test can.
	Witness Witness
	Axes              // how the shafts should then lie, the crank hung as before
	D, G    clock.Vec // how the halves should then sit
}

// Manner is how the advice goes about it. The zero value leaves a crank that
// reads inside its limits.
type Manner struct {
	// Margin is by how much of its doubt at 95 % a reading must lie inside its
	// limit before the crank is left: at 1 it is inside for sure (ISO 14253-1).
	Margin float64
}

// Surely is a margin at which 99 of 100 made-up cranks are truly inside when they
// are left, their dials read by 8 points, by 4, or by half-way hours, and no blow
// more than two fifths off what was meant; for 8 points 0.35 is enough.
const Surely = 0.5

// Plan says what to do after the latest of the passes (model, section 7).
func Plan(passes []Pass, tol Tolerance) Next { return Manner{}.Plan(passes, tol) }

// Plan says what to do after the latest of the passes (model, section 7).
func (m Manner) Plan(passes []Pass, tol Tolerance) Next {
	g := sittings(passes)
	if len(g) == 0 || len(g[len(g)-1].Stations) == 0 {
		return Next{Lesson: learn(g)}
	}
	last := &g[len(g)-1]
	s := &last.Seat
	n := Next{
		Advice: s.Advise(last.Stations, tol), Lesson: learn(g),
		Rounds: last.rounds, Axes: s.Axes, D: s.D, G: s.G,
	}
	j := s.judge(last.Stations, tol, &n.Advice)
	n.Why = m.why(&j, &n.Advice, g)
	n.Strike, n.Close = false, false
	if n.Why == Work || n.Why == Unclear {
		n.work(&j)
	}
	return n
}

// why judges whether to work on. A crank that no bumping trues is not begun on; one
// that has been made worse is first brought back.
func (m Manner) why(j *judge, a *Advice, g []sitting) Why {
	back := a.Worst.Value > began(g) && a.Worst.Value >= a.Floor.Value+j.tol.RunOut
	switch {
	case j.inside(m.Margin):
		return Leave
	case a.Verdict == NotMendable && !back:
		return Unmendable
	case len(g) == 1 && (a.Verdict == TooClose || a.Verdict == Fit):
		return Unclear
	}
	return Work
}

// began is the worst run-out as first read [mm].
func began(g []sitting) float64 {
	worst := 0.0
	for i := range g[0].Stations {
		worst = math.Max(worst, g[0].Stations[i].runOut().Value)
	}
	return worst
}

// inside tells whether every gauge stands inside its limit, its doubt counted k
// times; what stands at half its limit is inside whatever the doubt, since a
// blow would do it more harm.
func (j *judge) inside(k float64) bool {
	for i := range j.gauges() {
		g := j.gauge(i)
		if (i < len(j.st) || g.limit > 0) && !(g.Value+math.Min(k*g.Plus, g.limit/2) <= g.limit) {
			return false
		}
	}
	return true
}

// work adds the moves that stand clear of the noise, the strike first, since it
// can be made without a clamp or wedge in the way. Common practice, no source.
func (n *Next) work(j *judge) {
	if n.Strike, n.Close = j.pick(&n.Advice, 1); !n.Strike && !n.Close {
		n.Why = Unclear
		return
	}
	if n.Strike {
		move, other := j.Seat.Strike()
		aim := n.step(move, other, move.Amount)
		n.D.N -= math.Copysign(aim, n.D.N)
		n.sit()
	}
	if n.Close {
		move, other := j.Seat.Close()
		aim := n.step(move, other, move.Amount/move.Arm)
		n.G = n.G.Scale(1 - aim/n.G.Len())
		n.sit()
	}
	n.Axes = j.After(n.D, n.G)
}

const (
	// aimed is the part of a component that a step goes for, short of the whole
	// since a blow that takes it past nil is no better than one that falls short
	// (model, section 7).
	aimed = 0.9
	// harder is how many times harder than the last to work where that showed no
	// effect: a press fit gives only above some blow. Common practice, no source.
	harder = 1.5
)

// step adds a move against a component of an amount [mm, or slope] and returns
// how much of that it goes for.
func (n *Next) step(move, other Move, amount float64) (aim float64) {
	g := n.Gain[move.Kind]
	if g.Votes == 0 && move.Kind != Strike {
		// A crank that gave more than usual one way may give more the other way too.
		g.PerDose = math.Max(g.PerDose, n.Gain[Squeeze+Spread-move.Kind].PerDose)
	}
	s := Step{
		Move: move, Other: other, Aim: aimed * move.Amount, Pass: -1,
		Dose: aimed * amount / g.PerDose, Learned: g.Votes > 0,
	}
	if t, idle := n.latest(move.Kind); t != nil {
		if idle {
			s.Dose = math.Max(s.Dose, harder*t.Dose)
		}
		s.Pass, s.Times = t.Pass, s.Dose/t.Dose
	}
	n.Steps = append(n.Steps, s)
	return aimed * amount
}

// sit notes in the latest step how the halves should sit after it.
func (n *Next) sit() { s := &n.Steps[len(n.Steps)-1]; s.D, s.G = n.D, n.G }

// latest returns the latest try of a kind that went as meant or, being idle, showed
// no effect; nil where there is none.
func (l *Lesson) latest(k Kind) (latest *Try, idle bool) {
	for i := range l.Tries {
		if t := &l.Tries[i]; t.Kind == k && (t.Weight > 0 || t.Outcome == NoEffect) {
			latest, idle = t, t.Outcome == NoEffect
		}
	}
	return latest, idle
}
