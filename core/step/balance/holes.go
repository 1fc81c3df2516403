package balance

import (
	"math"
	"strconv"

	"pintwelve/core/balance/drill"
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/unit"
	"pintwelve/core/wheel"
)

// shop is what may be drilled, and with what.
type shop struct {
	drill.Task
	zoneHour bool      // the zone's hour is given
	holes    []drilled // that the job has in this throw
}

// drilled is a hole of the job, in one wheel or in each.
type drilled struct {
	drill.Hole
	key     string
	on      [2]bool // by end
	thickMM float64 // of the wheel there
}

func (s *crank) readShop() *shop {
	r, t := s.r, drill.Task{}
	t.DrillsMM = s.drills()
	t.PointDeg = r.Default(form.DrillPoint)
	t.Bottom = [...]drill.Bottom{drill.Either, drill.ThroughOnly, drill.BlindOnly}[index(r.Word(form.DrillBottom), "either", "through", "blind")]
	t.MostDepthMM, _ = r.Number(form.DrillDepth)
	t.DepthStepMM = r.Default(form.DrillDepthStep)
	t.MostHoles = int(r.Default(form.DrillHoles))
	t.InMM = r.Or(math.Round(s.rim*0.55), form.ZoneIn)
	t.OutMM = r.Or(math.Round(s.rim*0.97), form.ZoneOut)
	t.HalfRad = r.Default(form.ZoneHalf) * math.Pi / 180
	least, most := s.thick(t.InMM, t.OutMM, [2]bool{true, true})
	t.ThickMM = r.Or(least, form.ZoneThick)
	if words := s.lackingCut(); words != "" {
		s.Say("balance.uneven", words)
	} else if most > least && r.Blank(form.ZoneThick) {
		s.Say("balance.uneven", unevenZone(millimetres(least), millimetres(most)))
	}
	t.WallMM = r.Default(form.ZoneWall)
	t.DensityKGM3 = r.Or(s.density(), form.ZoneDensity)
	t.PlugKGM3, _ = r.Number(form.PlugDensity)
	t.ToleranceGMM = s.tolerance()
	hour, given := r.Number(form.ZoneHour)
	if given {
		t.Hour = s.Hour(hour)
	}
	h := &shop{Task: t, zoneHour: given}
	if t.OutMM > s.rim {
		typed := s.typedIn(form.ZoneOut)
		r.Complain(zoneOutside(typed(t.OutMM), typed(s.rim)), form.ZoneOut)
	}
	s.readHoles(h)
	return h
}

// thick is the least and the most metal that any of the wheels has between two radii:
// as under Lighten, or what stands in while that is not measured.
func (s *crank) thick(fromMM, toMM float64, on [2]bool) (least, most float64) {
	least, most = math.Inf(1), 0
	for end := range s.turned {
		if w := &s.turned[end]; on[end] && w.WidthMM > 0 && toMM > fromMM {
			l, m := w.ThickMM(fromMM, toMM)
			least, most = math.Min(least, l), math.Max(most, m)
		}
	}
	if math.IsInf(least, 0) {
		return standInThick, standInThick
	}
	return least, most
}

// lackingCut asks for the figure that a cut under Lighten lacks.
func (s *crank) lackingCut() string {
	for end := range s.turned {
		if nth := s.turned[end].Lacking; nth > 0 {
			return finishCut(strconv.Itoa(nth))
		}
	}
	return ""
}

// standInThick is a wheel's thickness in the zone while nothing of it is measured, mm.
const standInThick = 20

// density is the wheels', of the material given under Lighten.
func (s *crank) density() float64 {
	if v, ok := s.r.Number(form.LightenDensity); ok {
		return v
	}
	stock := flywheel.Steel
	switch s.r.Word(form.LightenMaterial) {
	case "iron":
		stock = flywheel.CastIron
	case "ductile":
		stock = flywheel.DuctileIron
	}
	m, _ := stock.Material()
	return m.DensityKGM3
}

// tolerance is how far the moment may be off, g·mm.
func (s *crank) tolerance() float64 {
	return math.Max(drill.LeastTolerance, s.offBy*s.job.After.RecG()*s.job.ThrowMM)
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

func (s *crank) drills() []float64 {
	const sixtyFourth = 25.4 / 64
	r := s.r
	switch r.Word(form.DrillSet) {
	case "list":
		return r.Numbers(drill.MostDrills, form.DrillList)
	case "inch":
		to64 := func(standIn float64, id form.ID) int {
			return int(math.Round(r.Or(standIn*sixtyFourth, id) / sixtyFourth))
		}
		return drill.Inch(to64(12, form.DrillFrom), to64(32, form.DrillTo), to64(2, form.DrillStep))
	}
	return drill.Metric(r.Or(5, form.DrillFrom), r.Or(12, form.DrillTo), r.Or(0.5, form.DrillStep))
}

func (s *crank) onWheel(word string) (on [2]bool) {
	for end, side := range s.SideOf {
		on[end] = word == "both" || word == side
	}
	return on
}

// readHoles reads the holes that the job has; those not whole, or that can't
// be, are left out.
func (s *crank) readHoles(h *shop) {
	for _, key := range s.r.Form.Rows("hole") {
		if !s.here(form.HolePin, key) {
			continue
		}
		d := drilled{key: key, on: s.onWheel(s.r.Word(form.HoleWheel, key))}
		d.PointDeg, d.Through = h.PointDeg, s.r.Word(form.HoleBottom, key) == "through"
		hour, ok := s.r.Number(form.HoleHour, key)
		d.Hour = s.Hour(hour)
		ok = s.given(&d.RadiusMM, form.HoleRadius, key) && ok
		ok = s.given(&d.DiameterMM, form.HoleDrill, key) && ok
		d.thickMM = h.ThickMM
		if s.r.Blank(form.ZoneThick) {
			d.thickMM, _ = s.thick(d.RadiusMM-d.DiameterMM/2, d.RadiusMM+d.DiameterMM/2, d.on)
		}
		if d.DepthMM = d.thickMM; !d.Through {
			ok = s.given(&d.DepthMM, form.HoleDepth, key) && ok
		}
		ok = s.alikeThick(&d) && ok && s.overNoEdge(&d)
		d.At = clock.Polar(d.RadiusMM, d.Hour)
		if ok && s.possible(&d, h) {
			d.weigh(h, s.r.Text(form.HolePlug, key) == "yes")
			h.holes = append(h.holes, d)
		}
	}
}

// alikeThick tells whether a hole right through both wheels takes as much off the one as
// off the other.
func (s *crank) alikeThick(d *drilled) bool {
	if !d.Through || d.on != [2]bool{true, true} || !s.r.Blank(form.ZoneThick) {
		return true
	}
	var thick [2]float64
	for end := range thick {
		one := [2]bool{}
		one[end] = true
		thick[end], _ = s.thick(d.RadiusMM-d.DiameterMM/2, d.RadiusMM+d.DiameterMM/2, one)
	}
	if thick[0] != thick[1] {
		s.r.Complain(wheelsUnlike(s.SideOf[0], millimetres(thick[0]), s.SideOf[1], millimetres(thick[1])), form.HoleWheel, d.key)
	}
	return thick[0] == thick[1]
}

// overNoEdge tells whether what a hole takes is known: it stands over no edge of the face, and
// where it goes right through the wheel is alike thick there.
func (s *crank) overNoEdge(d *drilled) bool {
	for end, on := range d.on {
		throughMM, clear := s.under(clock.End(end), d.thickMM)(d.RadiusMM, d.DiameterMM)
		if on && (!clear || d.Through && throughMM == 0) {
			s.r.Complain(overAnEdge, form.HoleRadius, d.key)
			return false
		}
	}
	return true
}

func (s *crank) given(v *float64, id form.ID, key string) bool {
	x, ok := s.r.Number(id, key)
	*v = x
	return ok
}

func (s *crank) possible(d *drilled, h *shop) bool {
	if d.RadiusMM+d.DiameterMM/2 > s.rim {
		s.r.Complain(holeOutside(s.typedIn(form.HoleRadius, d.key)(s.rim)), form.HoleRadius, d.key)
		return false
	}
	if reach := d.ReachMM(); !d.Through && reach > d.thickMM {
		typed := s.typedIn(form.HoleDepth, d.key)
		s.r.Complain(holeTooDeep(typed(reach), typed(d.thickMM), typed(math.Max(0, d.thickMM-d.PointMM()))), form.HoleDepth, d.key)
		return false
	}
	return s.clear(d, h)
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
// it, after so many of the throws before.
func (s *crank) holeWords(h *shop, before int) {
	nth := [2]int{}
	for i := range h.holes {
		d := &h.holes[i]
		for end, on := range d.on {
			if on {
				nth[end]++
			}
		}
		where, n := bothWheels, strconv.Itoa(nth[clock.Left])
		if d.on != [2]bool{true, true} {
			end := clock.Left
			if d.on[clock.Right] {
				end = clock.Right
			}
			where, n = theWheel(s.SideOf[end]), strconv.Itoa(nth[end])
		} else if nth[clock.Left] != nth[clock.Right] {
			n = bothNumbers(n, strconv.Itoa(nth[clock.Right]))
			where = bothByName(s.SideOf[clock.Left], s.SideOf[clock.Right])
		}
		deep := toShoulder(millimetres(d.DepthMM))
		if d.Through {
			deep = rightThrough
		}
		off := takes(bench.Grams(d.MassG, 0.1))
		if d.PlugG > 0 {
			words := plugTakes
			if d.MassG < 0 {
				words = plugAdds
			}
			off = words(bench.Grams(d.PlugG, 0.1), bench.Grams(math.Abs(d.MassG), 0.1))
		}
		hour := s.Hour(d.Hour)
		line := holeLine(n, where, millimetres(d.DiameterMM),
			millimetres(d.RadiusMM), unit.FormatHour(hour, 1), unit.Format(hour*30, unit.Degree, 0.1), s.onFace(d.on, d.Hour, 1), deep, off)
		at := "balance.holes/" + strconv.Itoa(before+i) + "/"
		if s.several() {
			line = atPin(pinName(s.nth), line)
			s.all.Number(at+"pin", float64(s.nth+1))
		}
		s.all.Say("hole."+d.key+".said", line)
		s.all.Text(at+"wheel", where)
		s.all.Number(at+"hour", hour)
		s.all.Number(at+"radius_mm", d.RadiusMM)
		s.all.Number(at+"drill_mm", d.DiameterMM)
		s.all.Number(at+"depth_mm", d.DepthMM)
		s.all.Number(at+"removed_g", d.MassG)
	}
}
