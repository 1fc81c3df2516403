package wheel

import (
	"math"

	"pintwelve/core/clock"
)

// Crossing tells of a hole that stands on no flat: its metal is integrated over
// its circle, and the drill will want to wander.
type Crossing struct {
	Hole int
	Step bool // crosses an edge or a slope of the section
	Boss bool // crosses the edge of a boss, which is then not counted under it
	Out  bool // a blind hole's point comes out at the other face
}

// Section is a wheel's section: what metal stands, and where.
type Section struct {
	InMM, OutMM float64   // radii of the bore and of the rim as it is now
	WidthMM     float64   // over all, as made
	Faces       [2][]Span // how deep each face's metal begins, from bore to rim
	Holes       []Drilling
	Crossings   []Crossing

	rimless    bool // turned down to within a ring that stood inside the rim
	bosses     []Boss
	bossFaces  []profile // of each boss, as if it went all round
	boss, hole []solid
}

// Section works the wheel out. A figure no wheel could have, or a wall with
// nothing left in it, is a Fault.
func (w Wheel) Section() (*Section, error) {
	if err := w.check(); err != nil {
		return nil, err
	}
	s := &Section{InMM: w.BoreMM / 2, OutMM: w.DiameterMM / 2, WidthMM: w.WidthMM, bosses: w.Bosses, Holes: w.Holes}
	if w.TurnedToMM > 0 {
		s.OutMM = w.TurnedToMM / 2
	}
	s.rimless = w.rimless(s.OutMM)
	var made, turned [2]profile
	for side := range made {
		made[side] = s.rings(Side(side), w.Rings)
		turned[side] = s.rings(Side(side), w.Turned)
		s.Faces[side] = deeper(made[side], turned[side])
	}
	for _, b := range w.Bosses {
		top := shallower(made[b.Side], level(s.InMM, s.OutMM, b.BelowMM))
		s.bossFaces = append(s.bossFaces, deeper(top, turned[b.Side]))
	}
	if err := s.checkWeb(); err != nil {
		return nil, err
	}
	if err := s.checkHoles(); err != nil {
		return nil, err
	}
	s.fill()
	return s, nil
}

// rimless tells whether a wheel turned down to a radius ends within a ring that stood inside its rim.
func (w Wheel) rimless(outMM float64) bool {
	for i := range len(w.Rings) + len(w.Turned) {
		if r := w.ring(i); r.FromMM < outMM && outMM <= r.ToMM && r.ToMM < w.DiameterMM/2 && r.DepthFromMM+r.DepthToMM > 0 {
			return true
		}
	}
	return false
}

func (s *Section) rings(side Side, rings []Ring) profile {
	p := level(s.InMM, s.OutMM, 0)
	for _, r := range rings {
		if r.Side == side {
			p = deeper(p, ringed(s.InMM, s.OutMM, r))
		}
	}
	return p
}

// fill works out every boss and hole once.
func (s *Section) fill() {
	for i, b := range s.bosses {
		island := Drilling{Hole: Hole{At: b.At, DiameterMM: b.DiameterMM, Through: true}, Side: b.Side}
		s.boss = append(s.boss, taken(island, s.bossFaces[i], s.Faces[b.Side]))
	}
	for i, d := range s.Holes {
		near, far := s.standing(d)
		got := taken(d, near, far)
		s.hole = append(s.hole, got)
		c := Crossing{Hole: i, Step: got.crossed, Boss: s.onBossEdge(d), Out: got.out}
		if c.Step || c.Boss || c.Out {
			s.Crossings = append(s.Crossings, c)
		}
	}
}

// standing returns where the metal under a hole begins and ends, below the
// face it is drilled from. A hole that crosses a boss's edge does not count it.
func (s *Section) standing(d Drilling) (near, far profile) {
	near, far = s.Faces[d.Side], s.Faces[d.Side.Other()]
	for i, b := range s.bosses {
		if b.At.Sub(d.At).Len()+d.DiameterMM/2 > b.DiameterMM/2 {
			continue
		}
		if b.Side == d.Side {
			near = s.bossFaces[i]
		} else {
			far = s.bossFaces[i]
		}
	}
	return near, s.across(far)
}

// across returns a face's profile as seen from the other face.
func (s *Section) across(p profile) profile {
	out := make(profile, len(p))
	for i, x := range p {
		out[i] = Span{x.FromMM, x.ToMM, s.WidthMM - x.DepthFromMM, s.WidthMM - x.DepthToMM}
	}
	return out
}

// thickness returns what stands between the faces, bosses apart.
func (s *Section) thickness() profile {
	var out profile
	for _, p := range pairs(s.Faces[Outer], s.across(s.Faces[Inner])) {
		out = out.join(Span{p.a.FromMM, p.a.ToMM, p.b.DepthFromMM - p.a.DepthFromMM, p.b.DepthToMM - p.a.DepthToMM})
	}
	return out
}

// Thickness returns the metal between the faces from bore to rim, mm, bosses
// and holes apart: each span's depths are thicknesses.
func (s *Section) Thickness() []Span { return s.thickness() }

// Metal returns the whole wheel in metal of density rho, kg/m³, or a Fault.
func (s *Section) Metal(rho float64) (Metal, error) {
	if err := CheckDensity(rho); err != nil {
		return Metal{}, err
	}
	var all Metal
	for _, t := range s.thickness() {
		volume, second := t.turned()
		all = all.Add(Metal{volume, clock.Vec{}, second})
	}
	for _, b := range s.boss {
		all = all.Add(b.Metal)
	}
	for _, h := range s.hole {
		all = all.Sub(h.Metal)
	}
	return all.scale(rho * gramsPerMM3), nil
}

func (s *Section) onBossEdge(d Drilling) bool {
	for _, b := range s.bosses {
		apart := b.At.Sub(d.At).Len()
		if reach := b.DiameterMM / 2; apart+d.DiameterMM/2 > reach && apart-d.DiameterMM/2 < reach {
			return true
		}
	}
	return false
}

func (d Drilling) inner() float64 { return math.Max(0, d.At.Len()-d.DiameterMM/2) }
func (d Drilling) outer() float64 { return d.At.Len() + d.DiameterMM/2 }
