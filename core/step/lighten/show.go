package lighten

import (
	"math"

	"pintwelve/core/draw"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/unit"
	"pintwelve/core/wheel"
)

// draw draws the section of each wheel, or one for both.
func (l *lightening) draw() {
	for i := range l.wheels {
		w := &l.wheels[i]
		switch {
		case i == 1 && l.alike:
		case w.ok:
			l.Text("picture.lighten."+w.side, l.section(w, w.account.BeforeSection, w.account.AfterSection))
		default: // a cut can't be made: the wheel without it
			if s, err := w.wheel.Section(); err == nil {
				l.Text("picture.lighten."+w.side, l.section(w, s, s))
			}
		}
	}
	if !l.alike {
		l.Say("lighten.which.drive", drivePicture)
		l.Say("lighten.which.timing", timingPicture)
	}
}

func (l *lightening) section(w *lightened, before, after *wheel.Section) string {
	length := func(id form.ID, v float64) draw.Dim {
		return draw.Dim{MM: v, Words: unit.Format(v, unit.MM, 0.1), Assumed: l.r.Blank(id, w.side), Field: id.Name(w.side)}
	}
	v := draw.SectionView{
		Prefix:  "section-" + w.side,
		Outline: between(after, after.InMM, after.OutMM),
		Width:   length(form.WheelWidth, w.dims.width),
		Lines:   2,
	}
	if len(l.cuts) > 0 {
		v.Lines = 4
	}
	made(&v, &w.wheel, before)
	v.Diameters = append(v.Diameters, length(form.WheelDiameter, w.dims.diameter))
	if w.dims.bore > 0 {
		v.Diameters = append(v.Diameters, length(form.WheelBore, w.dims.bore))
	}
	for j, row := range w.rows {
		if j < len(w.account.Lines) {
			c := row.cut
			if row == w.found {
				c = w.size
			}
			cuts := outlines(c, before, after, row.nth)
			for i := range cuts {
				cuts[i].Field = row.field(row.main())
			}
			v.Cuts = append(v.Cuts, cuts...)
			v.Diameters = dimensioned(v.Diameters, row, form.CutRim, c.ToDiameterMM)
			v.Diameters = dimensioned(v.Diameters, row, form.CutFrom, 2*c.FromMM)
			v.Diameters = dimensioned(v.Diameters, row, form.CutTo, 2*c.ToMM)
			v.Diameters = dimensioned(v.Diameters, row, form.CutCircle, 2*c.PitchMM)
		}
	}
	return draw.FlywheelSection(v)
}

// made adds the bosses and the holes that the wheel came with, one of each that
// are alike.
func made(v *draw.SectionView, w *wheel.Wheel, s *wheel.Section) {
	for _, b := range w.Bosses {
		from, to := b.At.Len()-b.DiameterMM/2, b.At.Len()+b.DiameterMM/2
		boss := edge(s, b.Side, from, to) // the floor that it stands on
		for _, r := range [...]float64{to, from} {
			boss = append(boss, draw.Across{R: r, X: across(s, b.Side, b.BelowMM)})
		}
		v.Bosses = append(v.Bosses, boss)
	}
	for i, h := range w.Holes {
		if i > 0 && alike(h, w.Holes[i-1]) {
			continue
		}
		hole := holeOutline(flywheel.Cut{
			Side: h.Side, PitchMM: h.At.Len(), DiameterMM: h.DiameterMM, DepthMM: h.DepthMM, PointDeg: h.PointDeg, Through: h.Through,
		}, s)
		for _, b := range w.Bosses {
			if b.At.Sub(h.At).Len() < b.DiameterMM/2 {
				throughBoss(hole, h, across(s, b.Side, b.BelowMM), b.Side)
			}
		}
		v.Holes = append(v.Holes, hole)
	}
}

// throughBoss begins a hole at the top of the boss that it is drilled in, or ends
// it there where it goes through.
func throughBoss(hole []draw.Across, h wheel.Drilling, top float64, side wheel.Side) {
	switch {
	case side == h.Side:
		hole[0].X, hole[1].X = top, top
	case h.Through:
		hole[2].X, hole[3].X, hole[4].X = top, top, top
	}
}

// alike tells whether two holes are of one ring.
func alike(a, b wheel.Drilling) bool {
	const far = 1e-6 // mm
	return a.Side == b.Side && a.DiameterMM == b.DiameterMM && a.DepthMM == b.DepthMM && math.Abs(a.At.Len()-b.At.Len()) < far
}

// dimensioned adds a diameter that a cut is turned to, if it is none yet and
// there is room.
func dimensioned(dims []draw.Dim, row *cutRow, id form.ID, d float64) []draw.Dim {
	for _, other := range dims {
		if other.MM == d {
			return dims
		}
	}
	if d <= 0 || len(dims) >= 4 {
		return dims
	}
	return append(dims, draw.Dim{MM: d, Words: unit.Format(d, unit.MM, 0.1), Field: row.field(id)})
}

// outlines are what a cut takes out of a section; the first carries its number.
func outlines(c flywheel.Cut, before, after *wheel.Section, nth string) []draw.Cut {
	var cuts []draw.Cut
	switch c.Kind {
	case flywheel.TurnRim:
		cuts = append(cuts, draw.Cut{Outline: between(before, c.ToDiameterMM/2, before.OutMM)})
	case flywheel.HoleRing:
		cuts = append(cuts, draw.Cut{Outline: holeOutline(c, after), Hole: true})
	default:
		for _, s := range before.Faces[c.Side] {
			if cut := taken(c, s, before); cut != nil {
				cuts = append(cuts, draw.Cut{Outline: cut})
			}
		}
	}
	if len(cuts) > 0 {
		cuts[0].Words = nth
	}
	return cuts
}

// edge is the outline of one face between two radii; X runs from the outer face.
func edge(s *wheel.Section, side wheel.Side, from, to float64) []draw.Across {
	var out []draw.Across
	for _, x := range s.Faces[side] {
		a, b := max(from, x.FromMM), min(to, x.ToMM)
		if a < b {
			out = append(out, draw.Across{R: a, X: across(s, side, x.At(a))}, draw.Across{R: b, X: across(s, side, x.At(b))})
		}
	}
	return out
}

// between is the outline of the metal between two radii.
func between(s *wheel.Section, from, to float64) []draw.Across {
	out := edge(s, wheel.Outer, from, to)
	back := edge(s, wheel.Inner, from, to)
	for i := len(back) - 1; i >= 0; i-- {
		out = append(out, back[i])
	}
	return out
}

func across(s *wheel.Section, side wheel.Side, depth float64) float64 {
	if side == wheel.Inner {
		return s.WidthMM - depth
	}
	return depth
}

// taken is what a ring takes under one stretch of a face, or nil for nothing.
func taken(c flywheel.Cut, s wheel.Span, in *wheel.Section) []draw.Across {
	ring := wheel.Span{FromMM: in.InMM, ToMM: in.OutMM, DepthFromMM: c.DepthMM, DepthToMM: c.DepthMM}
	if c.Kind != flywheel.FaceSide {
		ring.FromMM, ring.ToMM = c.FromMM, c.ToMM
	}
	switch {
	case c.Kind == flywheel.Bevel && c.DeepInside:
		ring.DepthToMM = 0
	case c.Kind == flywheel.Bevel:
		ring.DepthFromMM = 0
	}
	from, to := max(s.FromMM, ring.FromMM), min(s.ToMM, ring.ToMM)
	if from >= to {
		return nil
	}
	topA, topB := s.At(from), s.At(to)
	endA, endB := max(topA, ring.At(from)), max(topB, ring.At(to))
	if endA+endB-topA-topB < 1e-6 {
		return nil
	}
	at := func(r, deep float64) draw.Across { return draw.Across{R: r, X: across(in, c.Side, deep)} }
	return []draw.Across{at(from, topA), at(to, topB), at(to, endB), at(from, endA)}
}

// holeOutline is one hole of a ring in the metal that is left.
func holeOutline(c flywheel.Cut, s *wheel.Section) []draw.Across {
	top, floor := 0.0, 0.0
	for _, x := range s.Faces[c.Side] {
		if c.PitchMM >= x.FromMM && c.PitchMM <= x.ToMM {
			top = x.At(c.PitchMM)
		}
	}
	for _, x := range s.Faces[c.Side.Other()] {
		if c.PitchMM >= x.FromMM && c.PitchMM <= x.ToMM {
			floor = s.WidthMM - x.At(c.PitchMM)
		}
	}
	half := c.DiameterMM / 2
	hole := wheel.Hole{DiameterMM: c.DiameterMM, DepthMM: c.DepthMM, PointDeg: c.PointDeg, Through: c.Through}
	shoulder, point := min(top+c.DepthMM, floor), min(top+hole.ReachMM(), floor)
	if c.Through {
		shoulder, point = floor, floor
	}
	at := func(r, deep float64) draw.Across { return draw.Across{R: c.PitchMM + r, X: across(s, c.Side, deep)} }
	return []draw.Across{at(-half, top), at(half, top), at(half, shoulder), at(0, point), at(-half, shoulder)}
}
