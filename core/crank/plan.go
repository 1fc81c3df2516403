package crank

import (
	"math"

	"pintwelve/core/clock"
)

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
	since       int // tries after earlier passes than this don't count against going on
	doubted     int // of the latest changes in a row, that a mistake explains far better than what was logged
	Why         Why
	Rounds      int           // of readings taken together since the last move
	Discrepancy Figure        // mm of a needle, by which this round differs from the one before with nothing done between: the dials'
	Steps       []PlannedMove // with two, both before the next readings
	Asks        []Ask         // the likeliest to settle something first
	Causes      []Cause       // with Stop and Unmendable, the likeliest first
	// Witness tells those of Stop apart; its Shows, Mirrored and Exchanged are 0
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

// Plan says what to do after the latest of the passes (MODEL §7).
func Plan(passes []Pass, tol Tolerance) Next { return Manner{}.Plan(passes, tol) }

// Plan says what to do after the latest of the passes (MODEL §7).
func (m Manner) Plan(passes []Pass, tol Tolerance) Next {
	return (&Past{manner: m}).Plan(passes, tol)
}

// Plan says what to do after the latest of the passes (MODEL §7).
func (p *Past) Plan(passes []Pass, tol Tolerance) (n Next) {
	g := p.one.by(&tol).pool(passes)
	l := learn(g, p.at(0), func(before int, l *Lesson) []Done {
		if came := g[before].came; !came.asked {
			came.advised, came.asked = p.manner.advised(g[:before], l, tol), true
		}
		return g[before].came.advised
	})
	if j := p.manner.steps(&n, g, &l, tol); j != nil {
		n.name(j, g)
		n.ask(j, g)
	}
	return n
}

// advised are the steps after pooled readings as if logged as done.
func (m Manner) advised(g []*pooled, l *Lesson, tol Tolerance) (done []Done) {
	var n Next
	if m.steps(&n, g, l, tol); n.Why == Work {
		for _, s := range n.Steps {
			done = append(done, Done{Kind: s.Kind, Wheel: s.Wheel, Hour: s.Hour, Dose: s.Dose})
		}
	}
	return done
}

// steps says what to do after the latest of the pooled readings, by what they taught, and
// how it judged; nil where there is nothing to judge.
func (m Manner) steps(n *Next, g []*pooled, l *Lesson, tol Tolerance) *judge {
	n.Lesson = *l
	if len(g) == 0 || len(g[len(g)-1].Stations) == 0 {
		return nil
	}
	last := g[len(g)-1]
	s := &last.Pose
	n.Advice = s.Advise(last.Stations, tol)
	n.Rounds, n.Discrepancy, n.Axes, n.D, n.G = last.rounds, last.discrepancy, s.Axes, s.D, s.G
	for i := range g {
		if g[i].said {
			n.since = g[i].first
		}
	}
	n.doubted = n.doubts(g)
	n.reserve(g, tol)
	j := s.judge(last.Stations, tol, &n.Advice)
	n.Why = m.why(&j, n, g)
	n.Strike, n.Close = false, false
	if n.Why == Work || n.Why == Unclear {
		n.work(&j)
	}
	return &j
}

// margin is the Margin, and for a crank worked on and read often enough since a part of
// its doubt: what then still stands at its limit is as likely beyond it.
func (m Manner) margin(rounds int, first bool) float64 {
	if rounds >= enough && !first {
		return math.Max(m.Margin, atLast)
	}
	return m.Margin
}

const atLast = 0.2

// why judges whether to work on. A crank that no bumping trues is not begun on; one
// that has been made worse is first brought back.
func (m Manner) why(j *judge, n *Next, g []*pooled) Why {
	back := n.Worst.Value > n.began(g) && n.Worst.Value >= n.Floor.Value+j.tol.RunOut
	first := len(g) == 1
	return whether(j.inside(m.margin(n.Rounds, first)), func() bool { return n.stops(j, g) }, n.Verdict, back, first)
}

// whether judges whether to work on a crank that stands inside or not, has been made
// worse and is to be brought back, or is first read.
func whether(inside bool, stops func() bool, v Verdict, back, first bool) Why {
	switch {
	case inside:
		return Leave
	case stops():
		return Stop
	case v == NotMendable && !back:
		return Unmendable
	case first && (v == TooClose || v == Fit || v == FitAsHung):
		return Unclear
	}
	return Work
}

// inside tells whether every gauge stands inside its limit, its doubt counted k
// times; what stands at half its limit is inside whatever the doubt, since a
// blow would do it more harm.
func (j *judge) inside(k float64) bool {
	for i := range j.gauges() {
		g := j.gauge(i)
		if (i < len(j.st) || g.limit > 0) && !(g.Value+math.Min(k*g.HalfWidth95, g.limit/2) <= g.limit) {
			return false
		}
	}
	return true
}
