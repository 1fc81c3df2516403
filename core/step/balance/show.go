package balance

import (
	"math"
	"strconv"

	"pintwelve/core/balance"
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// frame is how the cylinder stands: how far it leans forward of upright, and
// whether the crank turns the way the wheels of the machine roll.
type frame struct {
	lean float64 // rad, clockwise as drawn, the front being right
	turn float64 // 1: clockwise as drawn
}

// push turns a force on the frame to the paper.
func (f frame) push(on balance.Force) draw.Push {
	t := on.Turned(f.turn * f.lean)
	return draw.Push{Up: t.AlongN / 1000, Right: f.turn * t.AcrossN / 1000}
}

// loopPoints are drawn of one turn.
const loopPoints = 180

// shaking says and draws the force on the frame, as found and as it should be.
func (s *crank) shaking(found, target float64) {
	f := frame{lean: s.r.Default(form.FrameLean) * math.Pi / 180, turn: 1}
	if s.r.Word(form.FrameTurns) == "backward" {
		f.turn = -1
	}
	rod := s.r.Or(4*s.job.ThrowMM, form.RodCentres)
	now := balance.Engine{ThrowMM: s.job.ThrowMM, RodMM: rod, Bores: s.job.Before.Bores(), Factor: found}
	then := balance.Engine{ThrowMM: s.job.ThrowMM, RodMM: rod, Bores: s.job.After.Bores(), Factor: target}
	speeds := s.rpm
	peaks, err := now.Peaks(balance.Exact, f.turn*f.lean, speeds...)
	if err != nil {
		s.complain(err)
		return
	}
	aims, err := then.Peaks(balance.Exact, f.turn*f.lean, speeds...)
	if err != nil {
		s.complain(err)
		return
	}
	for i, p := range peaks {
		q, n := &aims[i], strconv.Itoa(i)
		s.Say("peak."+n, bench.Plain(p.RPM, 1))
		s.Say("peak."+n+".found", force(kilonewtons(p.Size), kilonewtons(p.Along), kilonewtons(p.Across)))
		s.Say("peak."+n+".target", force(kilonewtons(q.Size), kilonewtons(q.Along), kilonewtons(q.Across)))
		at := "balance.peaks/" + n + "/"
		s.Number(at+"rpm", p.RPM)
		s.Number(at+"found_n", p.Size.N)
		s.Number(at+"target_n", q.Size.N)
	}
	last := len(speeds) - 1
	v := draw.LoopView{
		Prefix: "loop", Unit: "kN", UpWord: "up", RightWord: "front", Found: f.loop(&now, speeds[last]), Target: f.loop(&then, speeds[last]),
		FoundPeak: kilonewtons(peaks[last].Size) + " kN", TargetPeak: kilonewtons(aims[last].Size) + " kN",
	}
	for _, b := range now.Bores {
		v.Cylinders = append(v.Cylinders, (f.lean+f.turn*b.BankRad)*180/math.Pi)
	}
	s.Text("picture.loop", draw.Loop(v))
	more := ""
	if s.isHeavyToOneSide() {
		more = sideNotCounted
	}
	s.Say("loop.at", drawnAt(bench.Plain(speeds[last], 1), more))
}

func kilonewtons(p balance.Peak) string { return unit.Figures(p.N/1000, unit.Plain, 0.01) }

func (f frame) loop(e *balance.Engine, rpm float64) []draw.Push {
	forces, err := e.Loop(balance.Exact, loopPoints, rpm)
	if err != nil {
		return nil
	}
	all := make([]draw.Push, len(forces))
	for i, on := range forces {
		all[i] = f.push(on)
	}
	return all
}

// wheels draws each wheel that has holes or is to have some, for the page and at full
// size, as that wheel's own outer face is seen: it is drilled from there.
func (s *crank) wheels(h *shop, n *need) {
	for end, side := range s.SideOf {
		own := clock.End(end)
		if p := h.plan(own, clock.Vec{}); len(p.Holes) == 0 && !n.on[end] {
			continue
		}
		boss, _ := s.boss(own)
		v := draw.HolesView{
			Prefix: "holes-" + side, SeenFrom: bench.Drawn(side), Wheel: bench.Drawn(side),
			Rim: s.rim, Throw: s.job.ThrowMM, Boss: boss / 2,
		}
		s.drawHoles(&v, h, n, own)
		s.Text("picture.holes."+side, draw.Holes(v))
		if side == "timing" {
			s.fold("timing", ownOuterFace)
		}
		if len(h.holes) > 0 {
			v.Prefix, v.FullSize = "full-"+side, true
			s.Text("picture.full."+side, draw.Holes(v))
		}
	}
}

// drawHoles puts a wheel's zone, its holes and what to keep off as they look on its
// own outer face.
func (s *crank) drawHoles(v *draw.HolesView, h *shop, n *need, wheel clock.End) {
	t := s.task(h, n, wheel)
	if n.on[wheel] {
		v.Zone = draw.Zone{Inner: t.InMM, Outer: t.OutMM, Hour: clock.SeenFrom(wheel, t.Hour), HalfHours: t.HalfRad * 6 / math.Pi}
	}
	for _, k := range t.Keep[ownParts:] {
		v.Holes = append(v.Holes, draw.Hole{Radius: k.At.Len(), Hour: clock.SeenFrom(wheel, k.At.Hour()), Diameter: k.DiameterMM, Old: true})
	}
	for _, d := range h.holes {
		if d.on[wheel] {
			v.Holes = append(v.Holes, draw.Hole{
				Radius: d.RadiusMM, Hour: clock.SeenFrom(wheel, d.Hour), Diameter: d.DiameterMM, Plug: d.PlugG > 0,
			})
		}
	}
}
