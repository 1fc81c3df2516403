package crank

import (
	"math"

	"pintwelve/core/clock"
)

// stops tells whether to look for a cause before going on: moves went the other
// way twice, did nothing twice, left the crank clearly worse than found, or bring
// it no nearer (MODEL §7).
func (n *Next) stops(j *judge, g []*pooled) bool {
	strike, bend := n.record(Strike), n.record(Squeeze)
	w := worsts(g)
	return strike.opposite >= 2 || bend.opposite >= 2 || n.doubted >= 2 ||
		strike.dead() || bend.dead() || n.worse(j, g, w) || n.nowhere(g, w)
}

// dead tells whether harder blows are no answer any more.
func (r *record) dead() bool {
	return !r.beside && (r.idle >= 2 && r.idleDose >= 1.7*trial || r.idle >= 4)
}

// worse tells whether the crank is so much worse than found, and no better for the
// last move, though that didn't go too far the way it was meant.
func (n *Next) worse(j *judge, g []*pooled, w []float64) bool {
	const clearly = 3
	return len(w) > 1 && !n.overshot(g) && n.Worst.Value-n.Worst.HalfWidth95 > clearly*math.Max(w[0], j.tol.RunOut) && w[len(w)-1] >= w[len(w)-2]
}

// overshot tells whether what was done last went the way it was meant.
func (n *Next) overshot(g []*pooled) (any bool) {
	for i := range n.Tries {
		if t := &n.Tries[i]; t.Pass == g[len(g)-2].last {
			if t.Outcome != AsMeant && t.Outcome != Unshown {
				return false
			}
			any = any || t.Outcome == AsMeant
		}
	}
	return any
}

const (
	// patience is how many passes may bring the crank no nearer, less than nearer of
	// what it had come to being that; longest how many it may take.
	patience = 3
	nearer   = 0.85
	longest  = 8
	// mostRounds is how many rounds may be read alike: enough, and what the centres
	// and the tailstock ask for.
	mostRounds = 2 * enough
)

// nowhere tells whether the last passes brought the crank no nearer.
func (n *Next) nowhere(g []*pooled, w []float64) bool {
	if len(w) > longest || n.silent(g) && g[len(g)-1].last-n.since >= longest || n.mute(g) {
		return true
	}
	return noNearer(w, patience)
}

// noNearer tells whether so many latest run-outs came no nearer than those before.
func noNearer(w []float64, patience int) bool {
	return len(w) > patience+1 && least2(w[len(w)-patience:]) > nearer*least2(w[:len(w)-patience])
}

// mute tells whether round upon round is read alike, more than were asked for, and
// nobody says what was done between: what was advised is done and not logged.
func (n *Next) mute(g []*pooled) bool { return n.Rounds > mostRounds && g[len(g)-1].Since == Unsaid }

func least2(w []float64) float64 {
	out := w[0]
	for _, x := range w {
		out = math.Min(out, x)
	}
	return out
}

// began is the worst run-out as first read [mm], since the user last said that
// something else was changed.
func (n *Next) began(g []*pooled) float64 {
	if w := worsts(g); len(w) > 0 {
		return w[0]
	}
	return 0
}

// worsts are the worst run-outs [mm] of the pooled readings since the user last said that
// something else was changed.
func worsts(g []*pooled) (w []float64) {
	for i := range g {
		if g[i].said {
			w = nil
		}
		if len(g[i].Stations) > 0 {
			w = append(w, g[i].judged)
		}
	}
	return w
}

// worst is the worst run-out [mm] that is judged.
func (g *pooled) worst() (worst float64) {
	a := Advice{}
	for h := range a.Shaft {
		a.Shaft[h] = g.Pose.Shaft(g.Stations, clock.End(h))
	}
	j := g.Pose.judge(g.Stations, Tolerance{}, &a)
	for i := range g.Stations {
		gauge := j.gauge(i)
		worst = math.Max(worst, gauge.Value)
	}
	return worst
}
