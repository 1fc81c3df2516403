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
	// The earlier thing done that this is best likened to: the pass it was
	// done after, and how many times its dose this is. Pass is −1 where there is none,
	// and the step is a cautious first one.
	Pass  int
	Times float64
}

// Next is what to do after the latest readings.
type Next struct {
	Advice
	Lesson
	Steps []Step    // nil: nothing is to be done; with two, both before the next readings
	Axes            // how the shafts should then lie, the crank hung as before
	D, G  clock.Vec // how the halves should then sit
}

// Plan says what to do after the latest of the passes, which must not be empty and
// whose last must have been solved (model, section 7).
func Plan(passes []Pass, tol Tolerance) Next {
	return practised.plan(passes, tol)
}

// manner is how the advice goes about it.
type manner struct {
	aim   [3]float64 // part of a component to go for with no, one, two or more votes
	worth float64    // part of the tolerance that a second move must be worth on a dial
	sure  float64    // how many standard errors a component must stand out by
}

// practised is the manner that trues the made-up cranks in the fewest rounds.
var practised = manner{aim: [3]float64{0.9, 0.9, 0.9}, worth: 0.5, sure: 1.96}

func (m *manner) plan(passes []Pass, tol Tolerance) Next {
	last := &passes[len(passes)-1]
	s := &last.Seat
	n := Next{Advice: s.Advise(last.Stations, tol), Lesson: Learn(passes), D: s.D, G: s.G}
	if n.Verdict != Fit && n.Plain != Fit && n.Verdict != NotMendable {
		strike, gap := m.pick(s, last.Stations, tol, &n.Advice)
		if strike {
			move, other := s.Strike()
			n.step(m, passes, move, other)
			n.D.N -= math.Copysign(n.Steps[len(n.Steps)-1].Aim, s.D.N)
		}
		if gap {
			move, other := s.Close()
			n.step(m, passes, move, other)
			n.G = n.G.Scale(1 - n.Steps[len(n.Steps)-1].Aim/move.Amount)
		}
	}
	n.Axes = s.After(n.D, n.G)
	return n
}

// pick chooses the moves.
func (m *manner) pick(s *Seat, st []Station, tol Tolerance, a *Advice) (strike, gap bool) {
	j := judge{Seat: s, st: st, tol: tol, trusted: a.Shaft[0].Trusted() && a.Shaft[1].Trusted()}
	d, g := s.SureOfD(st), s.SureOfG(st)
	strike = math.Abs(s.D.N) > m.sure*math.Sqrt(d.Cov.Var(clock.Vec{N: 1}))
	gap = s.G.Len() > m.sure*math.Sqrt(g.Cov.Var(s.G))
	if !strike || !gap || (a.StrikeWorth > m.worth*tol.RunOut && a.CloseWorth > m.worth*tol.RunOut) {
		return strike, gap
	}
	struck, closed := j.badness(clock.Vec{T: s.D.T}, s.G), j.badness(s.D, clock.Vec{})
	return struck <= closed, struck > closed
}

// step adds a move.
func (n *Next) step(m *manner, passes []Pass, move, other Move) {
	g := n.Gain[move.Kind]
	aim := m.aim[min(int(math.Round(g.Votes)), len(m.aim)-1)]
	s := Step{Move: move, Other: other, Aim: aim * move.Amount, Learned: g.Votes > 0, Pass: -1}
	per := g.PerDose
	if move.Kind != Strike {
		per *= move.Arm
	}
	s.Dose = s.Aim / per
	for _, t := range n.Tries {
		if t.Kind == move.Kind && t.Weight > 0 {
			s.Pass, s.Times = t.Pass, s.Dose/t.Dose
		}
	}
	n.Steps = append(n.Steps, s)
}
