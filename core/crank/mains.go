package crank

import (
	"pintwelve/core/clock"
)

// Main is how a main bearing would find its journal, the crank running in all of its
// bearings: about the line through them, which of more than two goes between them by
// least squares (MODEL §5, §11).
type Main struct {
	Rest
	RunOut Figure // mm, the full movement of the journal there
	Lean   Figure // minutes of arc, of the journal from the line
	Told   bool   // every way of sitting that agrees with the readings has the same
}

// combination is a vector made of the pieces' axes, Σ a_k A_k + b_k B_k, by piece.
type combination []part

// place is where a piece stands at x.
func (s *Stand) place(piece int, x float64) combination {
	c := make(combination, s.Assembly.Pieces())
	c[piece] = part{1, x}
	return c
}

func (c combination) add(piece int, by part) {
	c[piece].a += by.a
	c[piece].b += by.b
}

func (c combination) of(axes []axis) (v clock.Vec) {
	for k, p := range c {
		v = v.Add(axes[k].a.Scale(p.a)).Add(axes[k].b.Scale(p.b))
	}
	return v
}

func (c combination) components() [2][]along {
	return components(c, make([]along, len(c)), make([]along, len(c)))
}

// throwsGauge is one thing that is judged of an assembly: a vector, and how many mm of run-out
// beside what is allowed each of it counts for.
type throwsGauge struct {
	of    combination
	scale float64
	leans bool // a journal's lean, at so many mm of run-out a radian
}

// throwsJudge is one judging of a stand.
type throwsJudge struct {
	*Stand
	tol    Tolerance
	mains  []Main
	gauges []throwsGauge // the dials, then what is told of the main bearings
}

func (s *Stand) judge(tol Tolerance) throwsJudge {
	j := throwsJudge{Stand: s, tol: tol}
	for i := range s.dials {
		j.gauges = append(j.gauges, throwsGauge{of: s.place(s.dials[i].Piece, s.dials[i].At), scale: 2})
	}
	for i, m := range s.Assembly.Mains {
		off, lean := s.mainOf(i)
		main := Main{Rest: m, RunOut: s.figure(off, 2), Lean: s.figure(lean, arcmin)}
		if main.Told = s.told(off.components()) && s.told(lean.components()); main.Told {
			j.gauges = append(j.gauges, throwsGauge{of: off, scale: 2})
			if tol.Tilt > 0 {
				j.gauges = append(j.gauges, throwsGauge{lean, arcmin * tol.RunOut / tol.Tilt, true})
			}
		}
		j.mains = append(j.mains, main)
	}
	return j
}

// mainOf is how far a journal stands off the line through the main bearings, and how
// it leans from that: the line's place at x is Σ y_i (1/n + (x − x̄)(x_i − x̄)/S).
func (s *Stand) mainOf(main int) (off, lean combination) {
	all := s.Assembly.Mains
	middle, spread := 0.0, 0.0
	for _, m := range all {
		middle += m.At / float64(len(all))
	}
	for _, m := range all {
		spread += (m.At - middle) * (m.At - middle)
	}
	at := all[main]
	off, lean = s.place(at.Piece, at.At), make(combination, s.Assembly.Pieces())
	lean[at.Piece].b = 1
	for _, m := range all {
		slope := (m.At - middle) / spread
		there := 1/float64(len(all)) + (at.At-middle)*slope
		off.add(m.Piece, part{-there, -there * m.At})
		lean.add(m.Piece, part{-slope, -slope * m.At})
	}
	return off, lean
}

// figure is the length of a vector as it counts, and how far that may be out.
func (s *Stand) figure(of combination, scale float64) Figure {
	v := of.of(s.axes)
	return Figure{scale * v.Len(), scale * s.uncertaintyOf(of.components()).HalfWidth95(v)}
}

// burden is the worst of all that is judged with the bends so changed, as a run-out [mm]
// beside what is allowed.
func (j *throwsJudge) burden(change []Bend) (worst float64) {
	axes := j.axesAfter(change)
	for i := range j.gauges {
		if v := j.gauges[i].scale * j.gauges[i].of.of(axes).Len(); v > worst {
			worst = v
		}
	}
	return worst
}

// lean judges the journals in their main bearings, each figure's doubt counted k times:
// whether all are known to stand inside, whether any stands outside, and whether any is
// open. Half of a limit is inside whatever the doubt.
func (j *throwsJudge) lean(k float64) (inside, outside, open bool) {
	inside = true
	for i := range j.mains {
		m := &j.mains[i]
		if !m.Told {
			open = true
			continue
		}
		for _, f := range [...]struct {
			Figure
			limit float64
		}{{m.RunOut, j.tol.RunOut}, {m.Lean, j.tol.Tilt}} {
			if f.limit > 0 {
				inside = inside && f.Value+min(k*f.HalfWidth95, f.limit/2) <= f.limit
				outside = outside || f.Value-k*f.HalfWidth95 > f.limit
			}
		}
	}
	return inside, outside, open
}
