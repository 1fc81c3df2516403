package truing

import (
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// crossChecks works out the rim gaps and the straight-edge's steps of a pass
// beside what the dials say, and tells whether these say otherwise.
func (a answers) crossChecks(p *pass, r *form.Reader) (differ bool) {
	step := r.Default(form.Feeler)
	if v, ok := numbers(r, p.key, form.PassGap12, form.PassGap3, form.PassGap6, form.PassGap9); ok {
		gaps := crank.RimGaps{From: p.Seen, At12: v[0], At3: v[1], At6: v[2], At9: v[3], Step: step}
		check, closure, askew, err := p.pose.Gaps(p.counted, gaps)
		if err == nil {
			a.gapCheck(p, check, closure, askew)
			differ = check.Differ
		}
	}
	if v, ok := numbers(r, p.key, form.PassEdge3, form.PassEdge9, form.PassEdge12); ok {
		edge := crank.StraightEdge{From: p.Seen, At3: v[0], At9: v[1], At12: v[2], Step: step}
		check, radii, err := p.pose.Edge(p.counted, edge)
		if err == nil {
			a.edgeCheck(p, check, radii)
			differ = differ || check.Differ
		}
	}
	return differ
}

// numbers reads fields of which each is wanted before any counts.
func numbers(r *form.Reader, pass string, of ...form.ID) (values []float64, all bool) {
	all = true
	for _, id := range of {
		v, ok := r.Number(id, pass)
		all = all && ok
		values = append(values, v)
	}
	return values, all
}

func (a answers) gapCheck(p *pass, c crank.Check, closure float64, askew bool) {
	across := 2 * p.crank.Rim * c.Value.Len()
	a.Say("check.gaps", openByGaps(p.at(c.Value.Hour()),
		p.Within(across, 2*p.crank.Rim*c.Sure.HalfWidth95(c.Value))))
	a.Number("gaps.across_rim_mm", across)
	a.Number("gaps.widest_hour", p.Hour(c.Value.Hour()))
	a.agree("check.gaps.agree", c.Differ)
	if askew {
		a.Say("check.gaps.askew", gapsAskew(p.Amount(abs(closure))))
	}
}

func (a answers) edgeCheck(p *pass, c crank.Check, radii float64) {
	larger := clock.Right
	if radii < 0 {
		larger = clock.Left
	}
	a.Say("check.edge", byStraightEdge(p.towards(clock.Vec{N: c.Value.N}, 0), p.towards(clock.Vec{T: c.Value.T}, 0), p.SideOf[larger], p.Amount(abs(radii))))
	d := c.Value.From(p.Seen)
	a.Number("edge.towards12_mm", d.T)
	a.Number("edge.towards3_mm", d.N)
	a.agree("check.edge.agree", c.Differ)
}

func (a answers) agree(name string, differ bool) {
	if differ {
		a.Say(name, dialsDiffer)
	} else {
		a.Say(name, dialsAgree)
	}
}
