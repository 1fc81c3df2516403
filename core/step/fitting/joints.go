package fitting

import (
	"math"
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/fit"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// joint is one pressed or tapered joint.
type joint struct {
	key     string // of its row
	at, out string // its names in the words, and in the answers
	what    string
	press   fit.Press
	gap     fit.Gap // of the interference
	pin     fit.Size
	eye     fit.Size // of a plain press
	needNm  float64  // 0 where what it must hold isn't known
	taper   float64  // 0 for a plain press
}

var jointNames = [...][2]string{
	{"drivepin", pinInDrive}, {"timingpin", pinInTiming},
	{"driveshaft", driveInWheel}, {"timingshaft", timingInWheel},
}

func (f *fitting) joints() {
	duty, known := f.duty()
	for n, key := range f.r.Form.Rows("joint") {
		problems := len(f.r.Problems)
		j := f.rowOf(key)
		j.out = "fit.joints/" + strconv.Itoa(n) + "/"
		f.Text(j.out+"what", j.what)
		f.need(&j, duty, known)
		// What stands in for a figure that is wrong judges nothing.
		if f.readJoint(&j) && len(f.r.Problems) == problems {
			f.workOut(&j)
		}
	}
}

// rowOf reads what a row's joint is.
func (f *fitting) rowOf(key string) joint {
	j := joint{key: key, at: "joint." + key + ".", what: f.r.Word(form.JointWhat, key)}
	if f.r.Word(form.JointForm, key) == "taper" {
		j.taper = 1 / f.r.Default(form.JointTaper, key)
	}
	return j
}

// duty reads what the engine asks of the joints.
func (f *fitting) duty() (fit.Duty, bool) {
	power, ok := f.r.Number(form.DutyPower)
	speed, ok2 := f.r.Number(form.DutySpeed)
	duty, err := fit.MustHold(power, speed, f.r.Default(form.DutyPeak))
	return duty, ok && ok2 && err == nil
}

// need reads what a joint must hold. What a timing shaft drives the engine's
// power doesn't tell.
func (f *fitting) need(j *joint, duty fit.Duty, known bool) {
	standIn := duty.PinNm
	if j.what == "driveshaft" {
		standIn = duty.ShaftNm
	}
	j.needNm, _ = f.r.Number(form.JointNeed, j.key)
	if known && j.needNm == 0 && j.what != "timingshaft" {
		j.needNm = f.r.Or(standIn, form.JointNeed, j.key)
	}
}

// readJoint reads a joint's sizes; false while some are missing or wrong.
func (f *fitting) readJoint(j *joint) bool {
	pin, ok := f.measured(form.JointPin, j.key)
	d := pin.MeanMM
	if !ok {
		d = f.r.Default(form.FoundPin)
	}
	hub := f.roundEye(j, d)
	material := fit.Steel()
	if f.isIron(j.key) {
		material = fit.GreyIron()
	}
	material.YieldMPa = f.r.Or(material.YieldMPa, form.JointYield, j.key)
	j.press = fit.Press{
		DiameterMM: d, LengthMM: f.r.Default(form.JointLength, j.key), HubMM: f.r.Or(hub, form.JointHub, j.key), HollowMM: f.r.Default(form.JointHollow, j.key),
		Friction: f.r.Default(form.JointFriction, j.key), Hub: material, Pin: fit.Steel(),
	}
	f.Say(j.at+"fold", jointFold(unit.Format(j.press.LengthMM, unit.MM, 0.1), unit.Format(j.press.HubMM, unit.MM, 0.1), bench.Plain(j.press.Friction, 0.01)))
	if !ok {
		return false
	}
	if j.taper > 0 {
		return f.readTaper(j)
	}
	eye, ok := f.measured(form.JointEye, j.key)
	if !ok {
		return false
	}
	g, err := fit.Between(eye, pin)
	j.pin, j.eye = pin, eye
	j.gap = fit.Gap{MeanMM: -g.MeanMM, LeastMM: -g.MostMM, MostMM: -g.LeastMM, PlusMinusMM: g.PlusMinusMM, SpotPlusMinusMM: g.SpotPlusMinusMM}
	return !f.faulty(err, form.JointPin, j.key)
}

// isIron says whether a joint's wheel is of cast iron: as chosen, or while nothing is,
// as under Lighten.
func (f *fitting) isIron(key string) bool {
	id := form.JointWheel
	if f.r.Blank(id, key) {
		return f.r.Word(form.LightenMaterial) == "iron"
	}
	return f.r.Word(id, key) == "iron"
}

// roundEye stands in for the metal round an eye of some diameter: as far as the wheel,
// as it will be cut, reaches evenly, and no further than the crankpin's boss.
func (f *fitting) roundEye(j *joint, d float64) float64 {
	side, isShaft := strings.CutSuffix(j.what, "shaft")
	side = strings.TrimSuffix(side, "pin")
	w := bench.ReadTurned(f.r, side)
	throw, rim, other := f.r.Default(form.Throw), math.Min(f.r.Or(bench.WheelMM(f.r), form.Rim), w.DiameterMM)/2, w.BoreMM
	if isShaft {
		rim, other = rim+throw, bench.CrankpinMM(f.r) // its hole is in the middle of the wheel
	}
	hub, err := fit.EyeOutside(throw, rim, d, other)
	if err != nil {
		hub = 2 * d
	}
	if boss, ok := bench.OfWheel(f.r, form.WheelBoss, side); ok && boss > d && !isShaft {
		hub = math.Min(hub, boss)
	}
	return hub
}

// readTaper takes the interference from the draw; without one it says what draw holds.
func (f *fitting) readTaper(j *joint) bool {
	switch mm, can, err := j.toHold(); {
	case err != nil || j.needNm == 0:
	case can:
		f.Say(j.at+"drawto", drawTo(newtonMetres(j.needNm), f.Amount(mm/j.taper)))
		f.Number(j.out+"draw_wanted_mm", mm/j.taper)
	default:
		f.Say(j.at+"cannot", j.noneHolds())
	}
	draw, ok := f.r.Number(form.JointDraw, j.key)
	j.gap = exact(draw*j.taper, f.StepMM*j.taper)
	return ok && draw > 0
}

// toHold returns the interference at which a joint holds what it must; can is false where
// none does without yielding, or cracking the wheel.
func (j *joint) toHold() (mm float64, can bool, err error) {
	mm, made, err := j.press.For(j.needNm)
	if fault, ok := err.(*fit.Fault); ok && fault.Field == fit.Interference { // more than can be pressed
		return min(fault.Got, fit.MostMM), false, nil
	}
	return mm, mm < made.YieldInterferenceMM, err
}

// noneHolds says what a joint that no interference helps wants.
func (j *joint) noneHolds() string {
	if j.press.Hub.Brittle {
		return noneHoldsInIron
	}
	return noneHolds
}

func newtonMetres(nm float64) string { return unit.Format(nm, unit.NewtonMetre, 1) }

// worked returns the joint as it holds on its taper; without one it has no draw.
func (j *joint) worked() (fit.Tapered, error) {
	if j.taper > 0 {
		return j.press.Tapered(j.taper)
	}
	plain, err := j.press.Joint()
	return fit.Tapered{Joint: plain}, err
}

// name is what a joint is called at the head of a sentence.
func (j *joint) name() string {
	for _, name := range jointNames {
		if name[0] == j.what {
			return name[1]
		}
	}
	return ""
}

// workOut says what a joint holds and what that costs.
func (f *fitting) workOut(j *joint) {
	p := &j.press
	p.InterferenceMM = j.gap.MeanMM
	worked, err := j.worked()
	if fault, ok := err.(*fit.Fault); ok {
		f.faulty(err, j.faultAt(fault), j.key)
		return
	}
	limits := fit.Limits{MostMM: worked.YieldInterferenceMM}
	below, above := "", pastYield
	if p.Hub.Brittle {
		above = cracksTheWheel
	}
	if mm, can, err := j.toHold(); err == nil {
		limits.LeastMM, below = mm, slips
		switch past := j.gap.LeastMM-j.gap.SpotPlusMinusMM > limits.MostMM; {
		case can:
		case past: // and by that alone it is wrong, whatever it holds
			limits.LeastMM, below = 0, ""
		default:
			above = ""
		}
		if !can && j.taper == 0 { // of a taper it is said by what draw is wanted
			f.Say(j.at+"cannot", j.noneHolds())
		}
	}
	title := interferenceOf(j.name())
	f.judgedUnless(gap{j.at + "bite", title, j.gap, limits, below, above}, j.wanted())
	if below != "" && j.taper == 0 {
		f.grindJoint(j, limits)
	}
	f.jointWords(j, &worked)
}

// faultAt is the field that a fault is about; of a taper's interference the draw, in whose
// figures it then is.
func (j *joint) faultAt(fault *fit.Fault) form.ID {
	switch {
	case fault.Field == fit.HubOutside:
		return form.JointHub
	case fault.Field == fit.Hollow:
		return form.JointHollow
	case fault.Field == fit.Interference && j.taper > 0:
		fault.Detail.Kind = fit.OutOfRange
		fault.Got, fault.Least, fault.Most = fault.Got/j.taper, fault.Least/j.taper, fault.Most/j.taper
		return form.JointDraw
	}
	return form.JointPin
}

// wanted asks what a joint must hold while that isn't known: short of yield is not right.
func (j *joint) wanted() string {
	words, by := shortOfYield, powerOrTorque
	if j.needNm > 0 {
		return ""
	}
	if j.press.Hub.Brittle {
		words = shortOfCracking
	}
	if j.what == "timingshaft" {
		by = theTorque
	}
	return words(by)
}

func (f *fitting) jointWords(j *joint, w *fit.Tapered) {
	mpa := func(v float64) string { return unit.Format(v, unit.MPa, 1) }
	tonnes := func(n float64) string { return unit.Format(n, unit.Tonne, 0.1*tonne) }
	if w.PushOutN > 0 {
		f.Say(j.at+"holds", holdsAndPushes(newtonMetres(w.HoldNm), tonnes(w.PressInN), tonnes(w.PushOutN)))
	} else {
		f.Say(j.at+"holds", holdsBarely(newtonMetres(w.HoldNm), tonnes(w.PressInN)))
	}
	hub, drawn := &j.press.Hub, eyeYieldsAt
	if hub.Brittle {
		drawn = eyeCracksAt
		f.Say(j.at+"stress", stressOfIron(mpa(w.PressureMPa), mpa(w.HubHoopMPa), mpa(hub.YieldMPa)))
	} else {
		f.Say(j.at+"stress", stressOfSteel(mpa(w.PressureMPa), mpa(w.HubHoopMPa), mpa(w.HubMisesMPa), mpa(hub.YieldMPa)))
	}
	if j.taper > 0 {
		f.Say(j.at+"drawn", drawn(f.Amount(w.YieldDrawMM)))
	}
	f.troubles(j, w)
	f.Number(j.out+"bite_mm", j.press.InterferenceMM)
	f.Number(j.out+"pressure_mpa", w.PressureMPa)
	f.Number(j.out+"hoop_mpa", w.HubHoopMPa)
	f.Number(j.out+"hold_nm", w.HoldNm)
	f.Number(j.out+"press_in_n", w.PressInN)
	f.Number(j.out+"push_out_n", w.PushOutN)
	if margin, err := fit.Margin(w.HoldNm, j.needNm); err == nil {
		words, much := mustHoldTimes, unit.Figures(math.Floor(10*margin)/10, unit.Plain, 0.1)
		if margin < 1 {
			words, much = mustHoldOnly, unit.Format(math.Floor(100*margin), unit.PerCent, 1)
		}
		f.Say(j.at+"margin", words(newtonMetres(j.needNm), much))
		f.Number(j.out+"margin", margin)
	}
}

// troubles says what a joint shows that must be heard of.
func (f *fitting) troubles(j *joint, w *fit.Tapered) {
	for _, found := range w.Findings {
		if found.Trouble == fit.NotSelfHolding {
			f.Say(j.at+"steep", tooSteep)
		}
	}
	if words := failing(w); words != "" {
		f.Say(j.at+"yields", words)
	}
	if j.press.Hub.Brittle {
		words := ironBoss
		if f.r.Blank(form.JointWheel, j.key) {
			words = ironUnderLighten
		}
		f.Say(j.at+"iron", words)
	}
}

// failing says which part of a joint yields or cracks, the wheel before the pin; nothing
// where neither does.
func failing(w *fit.Tapered) string {
	words := ""
	for _, found := range w.Findings {
		switch {
		case found.Trouble == fit.HubCracks:
			return itCracks
		case found.Trouble == fit.HubYields:
			return itYields
		case found.Trouble == fit.PinYields:
			mpa := func(v float64) string { return unit.Format(v, unit.MPa, 1) }
			words = pinYields(mpa(found.Got), mpa(found.Limit))
		}
	}
	return words
}

// tonne is the weight of one, N.
const tonne = 9806.65
