package lighten

import (
	"math"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/unit"
	"pintwelve/core/wheel"
)

// account says and tells what each wheel was, is, and stands.
func (l *lightening) account() {
	l.sayRows()
	if !l.wheels[0].ok || !l.wheels[1].ok {
		return
	}
	var thin []string
	var worst *flywheel.Held
	atPin := false
	rpm, spun := l.r.Number(form.LightenTop)
	for i := range l.wheels {
		w := &l.wheels[i]
		l.weights(w)
		if found := l.walls(w, i); i == 0 || !l.alike {
			thin = append(thin, found...)
		}
		l.weighIn(w)
		if !spun {
			continue
		}
		section := l.withPin(w)
		if held, err := flywheel.Hold(section, l.material, rpm); err == nil {
			l.holds(w, &held)
			if worst == nil || held.Margin < worst.Margin {
				worst, atPin = &held, section.Holes[held.Hole.Index].At == l.pin().At
			}
		}
	}
	if len(thin) > 0 {
		l.Say("lighten.thin", tooThin(thin))
	}
	l.wallRows()
	l.weighIns()
	l.verdict(worst, rpm, atPin)
	l.effect()
}

// cell fills a cell of the table, and a figure of the answers.
func (l *lightening) cell(w *lightened, name, words string, value float64) {
	at := "lighten." + w.side + "." + name
	l.Text("say."+at, words)
	l.Number(at, value)
}

func (l *lightening) weights(w *lightened) {
	a, off := &w.account, w.account.Off()
	before, after := a.Before, a.After
	before.MassG, after.MassG = l.scaled(w)
	off.MassG = before.MassG - after.MassG
	for i, m := range [...]wheel.Metal{before, after, off} {
		l.cell(w, [...]string{"before_g", "after_g", "off_g"}[i], unit.Figures(m.MassG, unit.Gram, 1), m.MassG)
		l.cell(w, [...]string{"before_kgm2", "after_kgm2", "off_kgm2"}[i], squared(m.InertiaGMM2), m.InertiaGMM2/1e9)
	}
	for j, line := range a.Lines {
		at := "lighten." + w.side + ".cuts/" + strconv.Itoa(j)
		l.Number(at+"/off_g", line.Off.MassG)
		l.Number(at+"/off_kgm2", line.Off.InertiaGMM2/1e9)
		l.Number(at+"/overlap_g", line.OverlapG())
	}
	if at := "lighten." + w.side + ".found"; w.planned {
		l.Number(at, w.found.size(w.size))
	} else {
		l.Null(at)
	}
}

// scaled are a wheel's weights before and after: as far as it was weighed the
// scale's, else the drawing's. Weighed once, it tells nothing of what is off.
func (l *lightening) scaled(w *lightened) (beforeG, afterG float64) {
	before, came := l.r.Number(form.WheelWeight, w.side)
	after, cut := l.r.Number(form.WheelAfter, w.side)
	off := w.account.Off().MassG
	switch {
	case came && cut && after <= before:
		return before, after
	case came:
		return before, before - off
	case cut:
		return after + off, after
	}
	return w.account.Before.MassG, w.account.After.MassG
}

// offG is what is off a wheel, by the scale as far as it was weighed.
func (l *lightening) offG(w *lightened) float64 {
	before, after := l.scaled(w)
	return before - after
}

// weighed says whether the scale settles any weight of a wheel.
func (l *lightening) weighed(w *lightened) bool {
	return !l.r.Blank(form.WheelWeight, w.side) || !l.r.Blank(form.WheelAfter, w.side)
}

// walls tells how thin the walls left are, and returns what to say of those that
// a cut has made thinner than asked.
func (l *lightening) walls(w *lightened, i int) (thin []string) {
	was := w.account.BeforeSection.Walls()
	var beside [len(leastNames)][]string
	for _, wall := range w.account.AfterSection.Walls() {
		l.cell(w, wallCells[wall.Kind], unit.Figures(wall.MM, unit.MM, 0.1), wall.MM)
		which, least := l.asked(wall.Kind)
		if wall.MM < least-1e-9 && thinner(wall, was) {
			words := thinWall(wall.Kind, l.which(w), mm(wall.MM), mm(2*wall.AtMM), mm(least))
			beside[which] = append(beside[which], words)
			thin = append(thin, words)
		}
	}
	pin := l.thinToPin(w, i)
	beside[len(leastNames)-1] = append(beside[len(leastNames)-1], pin...)
	thin = append(thin, pin...)
	for which, words := range beside {
		if len(words) > 0 {
			l.Say("lighten.thin."+w.side+"."+leastNames[which], tooThin(words))
		}
	}
	return thin
}

// wallRows says which walls either wheel has, beyond the web and the rim's width,
// which every wheel has.
func (l *lightening) wallRows() {
	var has [len(wallCells)]bool
	for i := range l.wheels {
		for _, wall := range l.wheels[i].account.AfterSection.Walls() {
			has[wall.Kind] = wall.Kind != wheel.Web && wall.Kind != wheel.RimWidth
		}
	}
	for kind, some := range has {
		if some {
			l.Say("lighten.has."+wallCells[kind], "yes")
		}
	}
}

// thinner says whether a wall is thinner than the thinnest of its kind was.
func thinner(wall wheel.Wall, was []wheel.Wall) bool {
	for _, old := range was {
		if old.Kind == wall.Kind && wall.MM >= old.MM-1e-9 {
			return false
		}
	}
	return true
}

var wallCells = [wheel.HoleToBoss + 1]string{
	wheel.Web: "web_mm", wheel.RimDepth: "rim_depth_mm", wheel.RimWidth: "rim_width_mm", wheel.HoleFloor: "hole_floor_mm",
	wheel.HoleToBore: "hole_to_bore_mm", wheel.HoleToEdge: "hole_to_edge_mm", wheel.HoleToHole: "hole_to_hole_mm", wheel.HoleToBoss: "hole_to_boss_mm",
}

// holds fills in how hard a wheel is pulled.
func (l *lightening) holds(w *lightened, h *flywheel.Held) {
	tenths := func(name string, v float64) { l.cell(w, name, unit.Figures(v, unit.Plain, 0.1), v) }
	tenths("rim_ms", h.RimMS)
	tenths("thin_ring_mpa", h.ThinRingMPa)
	tenths("disc_mpa", h.DiscMPa)
	tenths("section_mpa", max(h.Section.HoopMPa, h.Section.RadialMPa))
	tenths("hole_mpa", h.Hole.MPa)
	tenths("margin", h.Margin)
}

func mpa(v float64) string { return unit.Format(v, unit.MPa, 0.1) }

// verdict says how near the worse wheel is to bursting, and whether the hole that pulls
// hardest is the crankpin's.
func (l *lightening) verdict(h *flywheel.Held, rpm float64, atPin bool) {
	switch {
	case h == nil:
		l.Say("lighten.hold", giveTheSpeed)
	case h.Margin <= 1:
		l.Say("lighten.hold", wouldBurst(speed(rpm), mpa(h.WorstMPa), mpa(l.material.StrengthMPa)))
		l.Say("lighten.burst", burstsAt(speed(rpm)))
	default:
		l.Say("lighten.hold", pulledAt(speed(rpm), mpa(h.WorstMPa),
			mpa(l.material.StrengthMPa), unit.Figures(h.Margin, unit.Plain, 0.1)))
	}
	if h != nil {
		words := holeRaises
		if atPin {
			words = pinRaises
		}
		near := ""
		if l.holesNear(&l.wheels[0]) || l.holesNear(&l.wheels[1]) {
			near = nearHoles
		}
		l.Say("lighten.hole", words(times(h.Hole.Factor), near))
	}
}

// holesNear tells whether holes, the crankpin's aside, stand nearer to one another, or to an
// edge, than they are wide: the pull at a small hole's edge, far from all, isn't theirs.
func (l *lightening) holesNear(w *lightened) bool {
	s := w.account.AfterSection
	for _, wall := range s.Walls() {
		if wall.Kind != wheel.HoleToBore && wall.Kind != wheel.HoleToEdge && wall.Kind != wheel.HoleToHole {
			continue
		}
		for _, i := range wall.Holes {
			if hole := &s.Holes[i]; wall.MM < hole.DiameterMM && hole.At != l.pin().At {
				return true
			}
		}
	}
	return false
}

func speed(rpm float64) string { return unit.Format(rpm, unit.RPM, 1) }

// drawnWell is how near to the scale a wheel's drawing comes that was measured
// with a caliper, as a part of its weight: common practice, no source.
const drawnWell = 0.01

// weighIn compares the scale with the drawing, and with the plan.
func (l *lightening) weighIn(w *lightened) {
	before, ok := l.r.Number(form.WheelWeight, w.side)
	if !ok {
		return
	}
	if got, err := flywheel.Drawn(w.account.Before.MassG, before, l.scaleG); err == nil {
		l.Say("lighten."+w.side+".drawn", l.drawnWords(&got, w.account.Before.MassG, before))
		l.Number("lighten."+w.side+".scale_over_drawing_g", got.MissG)
	}
	after, ok := l.r.Number(form.WheelAfter, w.side)
	if ok && after > before {
		typed := bench.AsTyped(l.r, l.scaleG, form.WheelAfter, w.side)
		l.r.Complain(heavierAfter(typed(after), typed(before)), form.WheelAfter, w.side)
		ok = false
	}
	if !ok {
		return
	}
	plan := w.account.Off().MassG
	got, err := flywheel.Weighing{BeforeG: before, AfterG: after, PlannedG: plan, StepG: l.scaleG}.Against()
	if err != nil {
		return
	}
	off, planned, miss := l.weight(got.OffG), l.weight(plan), l.weight(math.Abs(got.MissG))
	words := offAsPlanned(off, planned)
	l.missed = l.missed || got.Told
	if got.Told && got.MissG > 0 {
		words = offTooMuch(off, planned, miss)
	} else if got.Told {
		words = offStill(off, planned, miss)
	}
	l.Say("lighten."+w.side+".weighed", words)
	l.Number("lighten."+w.side+".weighed_off_g", got.OffG)
	l.Number("lighten."+w.side+".weighed_over_plan_g", got.MissG)
}

// drawnWords set a wheel's drawing beside the scale.
func (l *lightening) drawnWords(got *flywheel.Weighed, drawnG, scaleG float64) string {
	drawn, off := bench.Grams(drawnG, 1), math.Abs(got.MissG)
	if !got.Told {
		return drawingAgrees(drawn)
	}
	advice := ""
	if off > drawnWell*scaleG {
		advice = lookAtTheRecesses
	}
	if got.MissG < 0 {
		return drawingOver(drawn, l.weight(off), bench.Percent(off/scaleG), advice)
	}
	return drawingUnder(drawn, l.weight(off), bench.Percent(off/scaleG), advice)
}

// weight writes a weight as finely as the scale shows it.
func (l *lightening) weight(g float64) string { return unit.Format(g, unit.Gram, l.scaleG) }

// effect says what the lightening does to the engine.
func (l *lightening) effect() {
	c := flywheel.Crank{Wheels: []flywheel.Account{l.wheels[0].account, l.wheels[1].account}}
	c.OtherG, _ = l.r.Number(form.LightenRest)
	c.OtherGMM2 = l.other()
	c.IdleRPM, _ = l.r.Number(form.LightenIdle)
	c.TyreMM, _ = l.r.Number(form.LightenTyre)
	c.Gears = l.r.Numbers(12, form.LightenGears)
	e, err := c.Effect()
	if err != nil {
		return
	}
	for i := range l.wheels {
		before, after := l.scaled(&l.wheels[i])
		e.BeforeG += before - l.wheels[i].account.Before.MassG
		e.AfterG += after - l.wheels[i].account.After.MassG
	}
	for i := range l.wheels {
		if w := &l.wheels[i]; l.weighed(w) || w.swung {
			l.Say("lighten.scaled", scaledNote+l.mated)
			break
		}
	}
	l.Number("lighten.before_g", e.BeforeG)
	l.Number("lighten.after_g", e.AfterG)
	l.Number("lighten.before_kgm2", e.BeforeGMM2/1e9)
	l.Number("lighten.after_kgm2", e.AfterGMM2/1e9)
	l.Number("lighten.ratio", e.Ratio)
	l.Number("lighten.balance_change_gmm", e.MomentGMM)
	words := wheelsAlone
	switch {
	case c.OtherG > 0 && c.OtherGMM2 > 0:
		words = wholeCrank
	case c.OtherG > 0:
		words = wholeWeightOnly
	case c.OtherGMM2 > 0:
		words = wholeInertiaOnly
	}
	l.Say("lighten.whole", words(bench.Grams(e.BeforeG, 1), bench.Grams(e.AfterG, 1), squared(e.BeforeGMM2), squared(e.AfterGMM2)))
	l.onTable(&c, &e)
	l.does(&c, &e)
}

func (l *lightening) does(c *flywheel.Crank, e *flywheel.Effect) {
	if !l.isCut() {
		return
	}
	l.Say("lighten.pickup", picksUp(times(e.Ratio)))
	l.Say("lighten.steady", swingsAsWide(times(e.Ratio)))
	if c.IdleRPM > 0 {
		l.Say("lighten.idle", wantsIdle(speed(c.IdleRPM), speed(e.IdleRPM)))
		l.Number("lighten.idle_rpm", e.IdleRPM)
	}
	var felt []string
	for i, f := range e.Felt {
		at := "lighten.felt/" + strconv.Itoa(i)
		l.Number(at+"/before_kg", f.BeforeKG)
		l.Number(at+"/after_kg", f.AfterKG)
		felt = append(felt, fromTo(kilos(f.BeforeKG), kilos(f.AfterKG)))
	}
	if len(felt) > 0 {
		l.Say("lighten.felt", feltAs(felt))
	}
	switch place := l.turnedOver(); {
	case e.Symmetrical && place > 0:
		l.Say("lighten.balance", placeTurnedOver(strconv.Itoa(place)))
		l.Say("lighten.uneven", toTheBalance)
	case e.Symmetrical:
		l.Say("lighten.balance", balanceStays)
	default:
		l.Say("lighten.balance", balanceMoves(bench.Grams(e.MomentGMM/l.throw, 1)))
		l.Say("lighten.uneven", toTheBalance)
	}
}

func kilos(kg float64) string { return unit.Format(1000*kg, unit.Kilogram, 100) }
