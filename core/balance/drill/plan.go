package drill

import (
	"sort"

	"pintwelve/core/clock"
	"pintwelve/core/wheel"
)

// plan turns a pick into holes on the wheel.
func (s *space) plan(p pick) Plan {
	plan := Plan{Kind: p.kind}
	for _, part := range p.parts {
		for _, place := range part.places {
			plan.Holes = append(plan.Holes, s.hole(part, place))
		}
	}
	sort.SliceStable(plan.Holes, func(i, j int) bool { return plan.Holes[i].OffRad < plan.Holes[j].OffRad })
	for _, h := range plan.Holes {
		plan.MassG += h.MassG
		plan.SwarfG += h.MassG + h.PlugG
		plan.MomentGMM = plan.MomentGMM.Add(h.At.Scale(h.MassG))
	}
	plan.LeftGMM = s.t.Remove.Sub(plan.MomentGMM)
	return plan
}

func (s *space) hole(p part, place int) Hole {
	b := p.row.bore
	side := 0
	if place < 0 {
		side = 1
	}
	hour := s.hourAt(max(place, -place), side)
	h := Hole{
		Hole: wheel.Hole{
			At:         clock.Polar(p.row.rMM, hour),
			DiameterMM: b.dMM,
			DepthMM:    b.depths[p.depth],
			PointDeg:   s.t.PointDeg,
			Through:    b.through && p.depth == len(b.depths)-1,
		},
		RadiusMM: p.row.rMM,
		Hour:     hour,
		OffRad:   clock.Radians(float64(place) * s.t.AngleStepDeg / 30),
	}
	h.MassG, h.PlugG = s.t.netG(h.Hole), s.t.plugG(h.Hole)
	return h
}

// KeepOuts returns the holes as keep-outs, for a second plan beside this one.
func (p Plan) KeepOuts() []Circle {
	all := make([]Circle, len(p.Holes))
	for i, h := range p.Holes {
		all[i] = Circle{h.At, h.DiameterMM}
	}
	return all
}
