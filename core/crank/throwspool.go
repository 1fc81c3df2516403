package crank

import (
	"math"

	"pintwelve/core/lsq"
)

// pooledThrows is pooled of an assembly.
type pooledThrows struct {
	ThrowsPass
	pooling
	came []jointShift // at each joint since the round before
}

// differs tells whether a place read again reads otherwise by more than both doubts
// together let it. By is the greatest difference of a needle.
func (g *pooledThrows) differs(p *ThrowsPass) (differ bool, by Figure) {
	if g.Stand == nil || p.Stand == nil {
		return false, Figure{}
	}
	return unlike(g.Stand.dials, p.Stand.dials)
}

// join takes another round of readings of the same crank in. Where the two can't be
// solved together, the later one stands.
func (g *pooledThrows) join(p *ThrowsPass) {
	if p.Stand == nil {
		g.Done = p.Done
		return
	}
	if g.Stand == nil {
		g.ThrowsPass, g.rounds = *p, 1
		return
	}
	a := &p.Stand.Assembly
	s, err := a.Solve(joined(g.Stand.dials, p.Stand.dials), append(append([]RimGap(nil), g.Stand.gaps...), p.Stand.gaps...))
	if err != nil {
		g.ThrowsPass, g.rounds = *p, 1
		return
	}
	g.Stand, g.Done = s, p.Done
	g.rounds++
}

// jointShift is the shift at a joint between two pooled rounds; told where the readings
// of both tell it.
type jointShift struct {
	shift
	told bool
}

// shifts are what came about at each joint.
func (g *pooledThrows) shifts(to *pooledThrows) (all []jointShift) {
	for j := range MostThrows {
		all = append(all, g.shift(to, j))
	}
	return all
}

func (g *pooledThrows) shift(to *pooledThrows, joint int) jointShift {
	s := jointShift{shift: shift{after: g.last}}
	a, b := g.Stand, to.Stand
	if a == nil || b == nil || joint >= len(a.Bends) || joint >= len(b.Bends) || !a.TwistTold(joint) || !b.TwistTold(joint) {
		return s
	}
	pose := a.joint(joint)
	s.told = true
	s.shift = shift{
		crank: &pose.Crank, after: g.last,
		d: b.Bends[joint].D.Sub(a.Bends[joint].D), g: b.Bends[joint].G.Sub(a.Bends[joint].G),
		covD:  a.UncertaintyOfD(joint).Cov.Add(b.UncertaintyOfD(joint).Cov),
		covG:  lsq.Round(untold),
		dials: a.leverages(joint),
	}
	if a.GTold(joint) && b.GTold(joint) {
		s.covG = a.UncertaintyOfG(joint).Cov.Add(b.UncertaintyOfG(joint).Cov)
	}
	for _, d := range g.Done {
		if d.Joint == joint {
			s.done = append(s.done, d.Done)
		}
	}
	return s
}

// untold [mm per mm] stands for the doubt of a gap that the readings don't tell.
const untold = 1.0

// throwsWorsts are the worst run-outs [mm] of the pooled readings since the user last
// said that something else was changed.
func throwsWorsts(g []*pooledThrows) (w []float64) {
	for i := range g {
		if g[i].said {
			w = nil
		}
		if s := g[i].Stand; s != nil {
			worst := 0.0
			for k := range s.dials {
				worst = math.Max(worst, s.dials[k].runOut().Value)
			}
			w = append(w, worst)
		}
	}
	return w
}
