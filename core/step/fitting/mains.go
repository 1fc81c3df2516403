package fitting

import (
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/fit"
	"pintwelve/core/form"
	"pintwelve/core/limits"
	"pintwelve/core/unit"
)

// inTheCases answers the step "Cases": main bearings, end float, and run-out in
// the cases.
func inTheCases(a *bench.Answers, r *form.Reader) {
	f := readFitting(a, r)
	heat := f.readHeat()
	f.Say("cases.fold.heat", heatFold(celsius(heat.room), celsius(heat.running)))
	for n, key := range r.Form.Rows("main") {
		f.main(key, "fit.mains/"+strconv.Itoa(n)+"/", heat)
	}
	f.endFloat(heat)
	f.runOuts("cases.", form.CasesRunOut)
	f.top("cases", measureSeats)
}

// heat is the temperatures that the bearings see, °C, and the clearance wanted
// to drop one in.
type heat struct{ room, freezer, running, clear float64 }

func (f *fitting) readHeat() heat {
	d := f.r.Default
	return heat{d(form.HeatRoom), d(form.HeatFreezer), d(form.HeatRunning), d(form.HeatClear)}
}

// caseOf is the material of a bearing's housing.
func (f *fitting) caseOf(key string) fit.Material {
	switch f.r.Word(form.MainCase, key) {
	case "magnesium":
		return fit.Magnesium()
	case "iron":
		return fit.GreyIron()
	case "steel":
		return fit.Steel()
	}
	return fit.LightAlloy()
}

// main answers one main bearing.
func (f *fitting) main(key, out string, h heat) {
	at := "main." + key + "."
	side := f.r.Word(form.MainSide, key)
	f.Text(out+"side", side)
	b := fit.Bearing{Rollers: f.r.Word(form.MainKind, key) == "rollers", PlayMM: f.r.Default(form.MainPlay, key), Ring: fit.Steel()}
	housing := fit.Seat{Material: f.caseOf(key)}
	shaft := fit.Seat{Material: fit.Steel()}
	bore, hasBore := f.r.Number(form.MainBore, key)
	outside, hasOutside := f.r.Number(form.MainOutside, key)
	if hasBore && hasOutside && bore >= outside {
		f.faulty(&fit.Fault{Field: fit.BearingOut, Got: outside, Least: bore + 10*fit.LeastMM, Most: fit.MostMM}, form.MainOutside, key)
		return
	}
	b.BoreMM, b.OutsideMM = bore, outside
	seatLow, seatHigh, seatOK := f.class(form.MainSeatClass, key, "k5", limits.Shaft, bore, hasBore)
	houseLow, houseHigh, houseOK := f.class(form.MainHousingClass, key, "N7", limits.Hole, outside, hasOutside)
	f.Say(at+"fold", classesFold(f.className(form.MainSeatClass, key, "k5"), f.className(form.MainHousingClass, key, "N7")))
	seat, hasSeat := f.measured(form.MainSeat, key)
	if hasSeat = hasSeat && hasBore && f.near(seat, bore, form.MainSeat, key); hasSeat {
		g, _ := fit.Between(seat, fit.Known(bore, 0))
		shaft.InterferenceMM = g.MeanMM
		f.seatInterference(at+"seat_bite", out+"seat_bite_mm", atTheSeat(side), g, fit.Limits{LeastMM: seatLow, MostMM: seatHigh}, seatOK)
		f.dropOn(at, out, fit.Shrink{DiameterMM: bore, InterferenceMM: shaft.InterferenceMM, OuterPerK: b.Ring.AlphaPerK, InnerPerK: shaft.Material.AlphaPerK, RoomC: h.room}, h)
	}
	hole, hasHole := f.measured(form.MainHousing, key)
	if hasHole = hasHole && hasOutside && f.near(hole, outside, form.MainHousing, key); hasHole {
		g, _ := fit.Between(fit.Known(outside, 0), hole)
		housing.InterferenceMM = g.MeanMM
		held := f.seatInterference(at+"housing_bite", out+"housing_bite_mm", inTheHousing(side), g, fit.Limits{LeastMM: -houseHigh, MostMM: -houseLow}, houseOK)
		f.dropIn(at, out, held, fit.Shrink{DiameterMM: outside, InterferenceMM: housing.InterferenceMM, OuterPerK: housing.Material.AlphaPerK, InnerPerK: b.Ring.AlphaPerK, RoomC: h.room}, h)
	}
	if hasOutside {
		housing.WallMM = f.r.Or(1.3*outside, form.MainWall, key)
	}
	if hasSeat && hasHole {
		f.playLeft(key, out, b, shaft, housing)
	}
}

// seatOff is by what part of its diameter a seat or a housing may be off its bearing,
// worn or spun as it is; past that a figure was misread. No source.
const seatOff = 0.02

// near tells a seat or a housing that can't be this bearing's.
func (f *fitting) near(measured fit.Size, bearingMM float64, id form.ID, key string) bool {
	least, most := bearingMM*(1-seatOff), bearingMM*(1+seatOff)
	if least <= measured.MeanMM && measured.MeanMM <= most {
		return true
	}
	return !f.faulty(&fit.Fault{Field: fit.Diameter, Got: measured.MeanMM, Least: least, Most: most}, id, key)
}

// seatInterference judges an interference against its class.
func (f *fitting) seatInterference(name, out, title string, g fit.Gap, l fit.Limits, known bool) grade {
	f.Number(out, g.MeanMM)
	if !known {
		return unmeasured
	}
	return f.judged(gap{name, title, g, l, tooSlack, tooTight})
}

// class reads the deviations of a tolerance class of shafts or holes, mm; a blank
// one is stood in for.
func (f *fitting) class(id form.ID, key, standIn string, of deviations, nominal float64, has bool) (low, high float64, ok bool) {
	text := f.r.Text(id, key)
	if f.r.Blank(id, key) {
		text = standIn
		f.r.StandIns = append(f.r.StandIns, form.StandIn{Name: id.Name(key), Text: standIn})
	}
	c, err := limits.Parse(text)
	if err == nil && !has {
		return 0, 0, false
	}
	var lo, hi limits.Micron
	if err == nil {
		lo, hi, err = of(c.Letters, c.Grade, nominal)
	}
	if e, ok := err.(*limits.Error); ok {
		f.r.Complain(classFault(e.Problem, text, unit.Format(nominal, unit.MM, 0.001), strconv.Itoa(e.FromGrade), strconv.Itoa(e.ToGrade)), id, key)
	}
	return float64(lo) / 1000, float64(hi) / 1000, err == nil
}

// className is a class as it was typed, or what stands in for it.
func (f *fitting) className(id form.ID, key, standIn string) string {
	if f.r.Blank(id, key) {
		return standIn
	}
	return f.r.Text(id, key)
}

// deviations is limits.Shaft or limits.Hole.
type deviations func(letters string, grade int, nominalMM float64) (low, high limits.Micron, err error)

// hottestBearing is what a bearing is commonly let have, °C: common practice, no
// source; the maker's figure counts.
const hottestBearing = 120

// hottestCase is the most that cases are commonly heated to for a bearing, °C (common practice, no source).
const hottestCase = 150

// celsius writes a temperature.
func celsius(c float64) string { return unit.Format(c, unit.Celsius, 1) }

// dropOn says how warm a bearing must be to drop on its seat.
func (f *fitting) dropOn(at, out string, s fit.Shrink, h heat) {
	if s.InterferenceMM <= 0 {
		f.Say(at+"dropon", slidesOn(f.Amount(-s.InterferenceMM)))
		return
	}
	c, err := s.HeatOuter(h.clear, h.room)
	if err != nil {
		f.Say(at+"dropon", noHeatOn)
		return
	}
	f.Number(out+"bearing_heat_c", c)
	switch {
	case c > hottestBearing:
		f.Say(at+"dropon", tooHotOn(celsius(c), celsius(hottestBearing)))
	case c > h.room:
		f.Say(at+"dropon", warmOn(celsius(c)))
	}
}

// holdsHot names the interference that holds a race when the case is hot, and the
// class of housing that has it at the least.
func (f *fitting) holdsHot(s fit.Shrink, leftMM float64) string {
	needMM := s.InterferenceMM - leftMM
	for _, class := range [...]struct {
		letters string
		grade   int
	}{{"M", 7}, {"N", 7}, {"P", 7}, {"R", 7}, {"R", 6}} {
		if _, high, err := limits.Hole(class.letters, class.grade, s.DiameterMM); err == nil && -float64(high)/1000 >= needMM {
			return wantsClass(f.Amount(needMM), class.letters, strconv.Itoa(class.grade))
		}
	}
	return wantsMore(f.Amount(needMM))
}

// dropIn says how warm the case must be, what is left hot, and when it lets go; held
// is how the fit stands by its class.
func (f *fitting) dropIn(at, out string, held grade, s fit.Shrink, h heat) {
	c, err := s.HeatOuter(h.clear, h.room)
	cold, err2 := s.HeatOuter(h.clear, h.freezer)
	if err != nil || err2 != nil {
		f.Say(at+"dropin", noHeatIn)
	} else {
		words := heatAndFreeze(celsius(c), celsius(cold), celsius(h.freezer))
		switch {
		case c <= h.room || s.InterferenceMM <= 0:
			words = dropsInCold
		case h.freezer >= h.room: // no help
			words = heatAlone(celsius(c))
		case cold <= h.room:
			words = heatOrFreeze(celsius(c), celsius(h.freezer))
		}
		if c > hottestCase {
			words += " " + hotterThanCases
		}
		f.Say(at+"dropin", words)
		f.Number(out+"case_heat_c", c)
		f.Number(out+"case_heat_frozen_c", cold)
	}
	if left, err := s.InterferenceAt(h.running, h.running); err == nil {
		f.Number(out+"hot_bite_mm", left)
		how, words := sound, leftHot(celsius(h.running), f.Amount(left))
		switch {
		case left <= 0 && held == sound:
			how, words = doubtful, rightButLoose(celsius(h.running), f.Amount(-left))
		case left <= 0:
			how, words = amiss, looseHot(celsius(h.running), f.Amount(-left))
		}
		f.found(how, words)
		if left <= 0 {
			words += " " + f.holdsHot(s, left)
		}
		f.Say(at+"hot", words)
	}
	loose, err := s.LooseAt()
	if err == nil {
		f.Say(at+"loose", looseAt(celsius(loose)))
		f.Number(out+"loose_c", loose)
		return
	}
	if s.InterferenceMM > 0 {
		f.Say(at+"loose", neverLets)
		return
	}
	f.Say(at+"loose", looseCold)
}

func (f *fitting) playLeft(key, out string, b fit.Bearing, shaft, housing fit.Seat) {
	left, err := b.PlayLeft(shaft, housing)
	field := form.MainOutside
	if fault, ok := err.(*fit.Fault); ok && fault.Field == fit.HubOutside {
		field = form.MainWall
	}
	if f.faulty(err, field, key) {
		return
	}
	f.Number(out+"play_left_mm", left.LeftMM)
	how, words := sound, playLeft(f.Amount(left.LeftMM), f.Amount(b.PlayMM))
	if len(left.Findings) > 0 {
		how, words = amiss, noPlayLeft(f.Amount(left.InnerMM+left.OuterMM), f.Amount(b.PlayMM))
	}
	f.found(how, words)
	f.Say("main."+key+".left", words)
}
