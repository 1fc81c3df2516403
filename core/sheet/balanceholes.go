package sheet

import (
	"math"
	"strconv"

	"pintwelve/core/balance/drill"
	"pintwelve/core/clock"
	"pintwelve/core/unit"
	"pintwelve/core/wheel"
)

// shop is what may be drilled, and with what.
type shop struct {
	drill.Task
	zoneHour bool      // the zone's hour is given
	holes    []drilled // that the job has
}

// drilled is a hole of the job, in one wheel or in each.
type drilled struct {
	drill.Hole
	key string
	on  [2]bool // by end
}

func (s *stand) readShop() *shop {
	r, t := s.r, drill.Task{}
	t.DrillsMM = s.drills()
	t.PointDeg = r.Default("drill.point")
	t.Bottom = [...]drill.Bottom{drill.Either, drill.ThroughOnly, drill.BlindOnly}[index(r.Word("drill.bottom"), "either", "through", "blind")]
	t.MostDepthMM, _ = r.Number("drill.depth")
	t.DepthStepMM = r.Default("drill.depthstep")
	t.MostHoles = int(r.Default("drill.holes"))
	t.InMM = r.Or("zone.in", math.Round(s.rim*0.55))
	t.OutMM = r.Or("zone.out", math.Round(s.rim*0.97))
	t.HalfRad = r.Default("zone.half") * math.Pi / 180
	t.ThickMM = r.Default("zone.thick")
	t.WallMM = r.Default("zone.wall")
	t.DensityKGM3 = r.Default("zone.density")
	t.PlugKGM3, _ = r.Number("plug.density")
	t.ToleranceGMM = s.tolerance()
	h := &shop{Task: t}
	if t.Hour, h.zoneHour = r.Number("zone.hour"); h.zoneHour {
		h.Hour = s.hour(h.Hour)
	}
	if t.OutMM > s.rim {
		r.Complain("zone.out", fill("% is outside the wheel, whose radius is %", millimetres(t.OutMM), millimetres(s.rim)))
	}
	s.readHoles(h)
	return h
}

// tolerance is how far the moment may be off, g·mm.
func (s *stand) tolerance() float64 {
	return math.Max(drill.LeastTolerance, s.grant*s.job.After.RecG()*s.job.ThrowMM)
}

// index is where a word stands among others.
func index(word string, words ...string) int {
	for i, w := range words {
		if w == word {
			return i
		}
	}
	return 0
}

func (s *stand) drills() []float64 {
	const sixtyFourth = 25.4 / 64
	r := s.r
	switch r.Word("drill.set") {
	case "list":
		return r.Numbers("drill.list", drill.MostDrills)
	case "inch":
		to64 := func(name string, standIn float64) int {
			return int(math.Round(r.Or(name, standIn*sixtyFourth) / sixtyFourth))
		}
		return drill.Inch(to64("drill.from", 12), to64("drill.to", 32), to64("drill.step", 2))
	}
	return drill.Metric(r.Or("drill.from", 5), r.Or("drill.to", 12), r.Or("drill.step", 0.5))
}

// keepOff is what stands in the way on one wheel: the crankpin's boss, and the
// rows of "keep".
func (s *stand) keepOff(end clock.End) []drill.Circle {
	all := []drill.Circle{{At: clock.Vec{T: s.job.ThrowMM}, DiameterMM: s.r.Default("zone.boss")}}
	for _, key := range s.r.Form.Rows("keep") {
		at := "keep." + key + "."
		radius, ok := s.r.Number(at + "radius")
		hour, ok2 := s.r.Number(at + "hour")
		across, ok3 := s.r.Number(at + "across")
		if ok && (ok2 || radius == 0) && ok3 && s.onWheel(s.r.Word(at + "wheel"))[end] {
			all = append(all, drill.Circle{At: clock.Polar(radius, s.hour(hour)), DiameterMM: across})
		}
	}
	return all
}

func (s *stand) onWheel(word string) (on [2]bool) {
	for end, side := range s.sideOf {
		on[end] = word == "both" || word == side
	}
	return on
}

// readHoles reads the holes that the job has; those not whole, or that can't
// be, are left out.
func (s *stand) readHoles(h *shop) {
	for _, key := range s.r.Form.Rows("hole") {
		at := "hole." + key + "."
		d := drilled{key: key, on: s.onWheel(s.r.Word(at + "wheel"))}
		d.PointDeg, d.Through = h.PointDeg, s.r.Word(at+"bottom") == "through"
		hour, ok := s.r.Number(at + "hour")
		d.Hour = s.hour(hour)
		ok = s.given(at+"radius", &d.RadiusMM) && ok
		ok = s.given(at+"drill", &d.DiameterMM) && ok
		if d.DepthMM = h.ThickMM; !d.Through {
			ok = s.given(at+"depth", &d.DepthMM) && ok
		}
		if ok && s.possible(at, &d, h) {
			d.At = clock.Polar(d.RadiusMM, d.Hour)
			d.weigh(h, s.r.Form[at+"plug"] == "yes")
			h.holes = append(h.holes, d)
		}
	}
}

func (s *stand) given(name string, v *float64) bool {
	x, ok := s.r.Number(name)
	*v = x
	return ok
}

func (s *stand) possible(at string, d *drilled, h *shop) bool {
	if d.RadiusMM+d.DiameterMM/2 > s.rim {
		s.r.Complain(at+"radius", fill("the hole runs out of the wheel, whose radius is %", millimetres(s.rim)))
		return false
	}
	if reach := d.ReachMM(); !d.Through && reach > h.ThickMM {
		s.r.Complain(at+"depth", fill("with its point it is % deep and the wheel % thick: choose right through, or % at most",
			millimetres(reach), millimetres(h.ThickMM), millimetres(math.Max(0, h.ThickMM-d.PointMM()))))
		return false
	}
	return true
}

// weigh finds what the hole takes off, and what a plug puts back.
func (d *drilled) weigh(h *shop, plug bool) {
	if metal, err := d.Metal(h.DensityKGM3); err == nil {
		d.MassG = metal.MassG
	}
	if flat := (wheel.Hole{DiameterMM: d.DiameterMM, DepthMM: d.DepthMM}); plug && h.PlugKGM3 > 0 {
		if metal, err := flat.Metal(h.PlugKGM3); err == nil {
			d.PlugG = metal.MassG
			d.MassG -= d.PlugG
		}
	}
}

// plan is the holes of one wheel as a plan.
func (h *shop) plan(end clock.End, remove clock.Vec) drill.Plan {
	var p drill.Plan
	for _, d := range h.holes {
		if d.on[end] {
			p.Holes = append(p.Holes, d.Hole)
			p.MassG += d.MassG
			p.SwarfG += d.MassG + d.PlugG
			p.MomentGMM = p.MomentGMM.Add(d.At.Scale(d.MassG))
		}
	}
	p.LeftGMM = remove.Sub(p.MomentGMM)
	return p
}

// holeWords says each hole of the job, numbered as its wheel's picture numbers
// it.
func (a *Answers) holeWords(s *stand, h *shop) {
	nth := [2]int{}
	for i := range h.holes {
		d := &h.holes[i]
		for end, on := range d.on {
			if on {
				nth[end]++
			}
		}
		where, n := "each wheel", strconv.Itoa(nth[clock.Left])
		if d.on != [2]bool{true, true} {
			end := clock.Left
			if d.on[clock.Right] {
				end = clock.Right
			}
			where, n = s.sideOf[end]+" wheel", strconv.Itoa(nth[end])
		} else if nth[clock.Left] != nth[clock.Right] {
			n = fill("% and %", n, strconv.Itoa(nth[clock.Right]))
			where = fill("% and % wheel", s.sideOf[clock.Left], s.sideOf[clock.Right])
		}
		deep := fill("% deep to the shoulder", millimetres(d.DepthMM))
		if d.Through {
			deep = "right through"
		}
		off := fill("takes %", grams(d.MassG, 0.1))
		if d.PlugG > 0 {
			what := "takes"
			if d.MassG < 0 {
				what = "adds"
			}
			off = fill("plug of %, % %", grams(d.PlugG, 0.1), what, grams(abs(d.MassG), 0.1))
		}
		hour := s.hour(d.Hour)
		a.say("hole."+d.key+".said", "%. %: % drill, % from the shaft at % (%), %, %", n, where, millimetres(d.DiameterMM),
			millimetres(d.RadiusMM), unit.FormatHour(hour, 1), unit.Format(hour*30, unit.Degree, 0.1), deep, off)
		at := "balance.holes/" + strconv.Itoa(i) + "/"
		a.text(at+"wheel", where)
		a.number(at+"hour", hour)
		a.number(at+"radius_mm", d.RadiusMM)
		a.number(at+"drill_mm", d.DiameterMM)
		a.number(at+"depth_mm", d.DepthMM)
		a.number(at+"removed_g", d.MassG)
	}
}
