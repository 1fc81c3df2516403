package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// pooled is one or more rounds of readings with nothing done between them,
// taken together as one.
type pooled struct {
	Pass
	pooling
	assumed bool    // what is down as done is what was advised, nobody having said
	came    *change // between the round before and this one; nil where that can't be worked out
	judged  float64 // the worst run-out that is judged [mm]
}

// apart is how many times its 95 % radius two rounds must stand apart to count as
// two: as far as one pair in a thousand does by scatter alone where that is known.
const apart = 1.5

// differs tells whether a round reads otherwise than this one by more than both
// doubts together let it, place by place where both shafts were read at a place
// again; else by how the halves sit. By is the greatest difference of a needle.
func (g *pooled) differs(p *Pass) (differ bool, by Figure) {
	if len(g.Stations) == 0 || len(p.Stations) == 0 {
		return false, Figure{}
	}
	differ, by = unlike(g.Stations, p.Stations)
	if again(g.Stations, p.Stations, 0) && again(g.Stations, p.Stations, 1) || p.Since == Nothing {
		return differ, by
	}
	d := lsq.Uncertainty{Cov: g.Pose.UncertaintyOfD(g.Stations).Cov.Add(p.Pose.UncertaintyOfD(p.Stations).Cov)}
	slope := lsq.Uncertainty{Cov: g.Pose.UncertaintyOfG(g.Stations).Cov.Add(p.Pose.UncertaintyOfG(p.Stations).Cov)}
	return differ || clearly(d, p.Pose.D.Sub(g.Pose.D)) || clearly(slope, p.Pose.G.Sub(g.Pose.G)), by
}

// unlike tells whether a place that was read in both rounds reads otherwise by more than
// both doubts together let it. By is the greatest difference of a needle.
func unlike(was, now []Station) (differ bool, by Figure) {
	for i := range was {
		for k := range now {
			if !was[i].samePlace(&now[k]) {
				continue
			}
			clear, off := was[i].unlike(&now[k])
			if differ = differ || clear; off.Value > by.Value {
				by = off
			}
		}
	}
	return differ, by
}

// again tells whether a place of a piece was read in both rounds.
func again(was, now []Station, piece int) bool {
	for i := range was {
		if was[i].Piece == piece && was[i].among(now) >= 0 {
			return true
		}
	}
	return false
}

// unlike tells whether two readings of a place differ by more than both doubts together
// let them, and by how much of a needle [mm].
func (p *Station) unlike(q *Station) (clear bool, by Figure) {
	sure := lsq.Uncertainty{Cov: p.Cov.Add(q.Cov), Nu: lsq.PooledNu(p.uncertainty(), q.uncertainty())}
	off := q.E.Sub(p.E)
	return clearly(sure, off), Figure{2 * off.Len(), 2 * sure.HalfWidth95(off)}
}

// clearly tells whether a difference stands apart times its radius from 0; less
// than a micron or a microradian never does.
func clearly(s lsq.Uncertainty, v clock.Vec) bool {
	s.Cov = s.Cov.Scale(apart * apart).Add(lsq.Round(blur))
	return s.Significant(v)
}

func (p *Station) uncertainty() lsq.Uncertainty { return lsq.Uncertainty{Cov: p.Cov, Nu: p.Nu} }

// join takes another round of readings of the same crank in. Where the two can't
// be solved together, the later one stands.
func (g *pooled) join(p *Pass) {
	if len(p.Stations) == 0 {
		g.Done = p.Done
		return
	}
	st := joined(g.Stations, p.Stations)
	pose, err := p.Pose.Crank.Solve(st)
	if len(g.Stations) == 0 || err != nil {
		g.Pass, g.rounds = *p, 1
		return
	}
	g.Pose, g.Stations, g.Done = pose, st, p.Done
	g.rounds++
}

// joined are two rounds of readings as one: of the same place their mean, else beside
// each other.
func joined(was, now []Station) []Station {
	st := append([]Station(nil), was...)
	for i := range now {
		if k := now[i].among(st); k >= 0 {
			st[k].mean(&now[i])
		} else {
			st = append(st, now[i])
		}
	}
	return st
}

// mean takes another reading of the same place in, each counting by how sure it is. One that is
// the same to the figure brings nothing: what was rounded is rounded as before, or it was copied.
func (p *Station) mean(q *Station) {
	if p.E == q.E && p.Cov == q.Cov && p.Nu == q.Nu {
		return
	}
	w, v := p.weight(), q.weight()
	cov, ok := w.Add(v).Inverse()
	if !ok {
		*p = *q
		return
	}
	p.E = cov.Apply(w.Apply(p.E).Add(v.Apply(q.E)))
	a, b := p.sigma(), q.sigma()
	p.RunOut = (p.runOut().Value*b*b + q.runOut().Value*a*a) / (a*a + b*b)
	p.Sigma = a * b / math.Hypot(a, b)
	p.Nu = freedom(cov, p.Nu, q.Nu, w, v)
	p.Cov, p.Unsure = cov, p.Unsure || q.Unsure
}

// freedom returns the degrees of freedom behind the mean of two readings, of
// covariance cov and with the weights w and v, by Welch and Satterthwaite. They
// are of one dial, so that what scatter was found in both is one.
func freedom(cov lsq.Cov, nu1, nu2 float64, w, v lsq.Cov) float64 {
	all, found, nu := 0.0, 0.0, math.Inf(1)
	for i, weight := range [...]lsq.Cov{w, v} {
		put := trace(square(cov), weight)
		all += put
		if n := [...]float64{nu1, nu2}[i]; n > 0 {
			found, nu = found+put, math.Min(nu, n)
		}
	}
	if found == 0 {
		return 0
	}
	return nu * all * all / (found * found)
}

// sigma is the standard error of a reading's run-out [mm].
func (p *Station) sigma() float64 {
	if p.RunOut == 0 && p.Sigma == 0 {
		return math.Max(2*math.Sqrt(p.Cov.Var(p.E)), blur)
	}
	return math.Max(p.Sigma, blur)
}
