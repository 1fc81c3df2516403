package crank

import (
	"math"

	"pintwelve/core/lsq"
)

// sitting is one or more rounds of readings with nothing done between them,
// taken together as one.
type sitting struct {
	Pass
	last   int // index of the last of its passes
	rounds int
}

// sittings gathers the passes.
func sittings(passes []Pass) []sitting {
	var out []sitting
	for i := range passes {
		p := &passes[i]
		if n := len(out); n > 0 && len(out[n-1].Done) == 0 {
			out[n-1].join(p)
			out[n-1].last = i
			continue
		}
		out = append(out, sitting{Pass: *p, last: i, rounds: 1})
	}
	return out
}

// join takes another round of readings of the same crank in. Where the two can't
// be solved together, the later one stands.
func (g *sitting) join(p *Pass) {
	if len(p.Stations) == 0 {
		g.Done = p.Done
		return
	}
	st := append([]Station(nil), g.Stations...)
	for i := range p.Stations {
		st = joined(st, p.Stations[i])
	}
	seat, err := p.Seat.Crank.Solve(st)
	if len(g.Stations) == 0 || err != nil {
		*g = sitting{Pass: *p, rounds: 1}
		return
	}
	g.Seat, g.Stations, g.Done = seat, st, p.Done
	g.rounds++
}

// joined adds a reading to those of the same place, each counting by how sure it
// is, or else beside them.
func joined(st []Station, p Station) []Station {
	for i := range st {
		q := &st[i]
		if q.Half != p.Half || math.Abs(q.At-p.At) >= least {
			continue
		}
		w, v := q.weight(), p.weight()
		cov, ok := w.Add(v).Inverse()
		if !ok {
			*q = p
			return st
		}
		q.E = cov.Apply(w.Apply(q.E).Add(v.Apply(p.E)))
		a, b := q.sigma(), p.sigma()
		q.RunOut = (q.runOut().Value*b*b + p.runOut().Value*a*a) / (a*a + b*b)
		q.Sigma = a * b / math.Hypot(a, b)
		q.Nu = freedom(cov, q.Nu, p.Nu, w, v)
		q.Cov, q.Unsure = cov, q.Unsure || p.Unsure
		return st
	}
	return append(st, p)
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
