package sheet

import (
	"strconv"

	"pintwelve/core/fit"
	"pintwelve/core/unit"
)

// joint is one pressed or tapered joint.
type joint struct {
	at, out string // its names in the form, and in the answers
	what    string
	press   fit.Press
	gap     fit.Gap // of the interference
	needNm  float64 // 0 where what it must hold isn't known
	taper   float64 // 0 for a plain press
}

var jointNames = [...][2]string{
	{"drivepin", "Pin in drive wheel"}, {"timingpin", "Pin in timing wheel"},
	{"driveshaft", "Drive shaft in wheel"}, {"timingshaft", "Timing shaft in wheel"},
}

func (f *fitting) joints() {
	duty, known := f.duty()
	for n, key := range f.r.Form.Rows("joint") {
		j := joint{at: "joint." + key + ".", out: "fit.joints/" + strconv.Itoa(n) + "/"}
		j.what = f.r.Word(j.at + "what")
		f.text(j.out+"what", j.what)
		if j.taper = 0; f.r.Word(j.at+"form") == "taper" {
			j.taper = 1 / f.r.Default(j.at+"taper")
		}
		f.need(&j, duty, known)
		if f.readJoint(&j) {
			f.workOut(&j)
		}
	}
}

// duty reads what the engine asks of the joints.
func (f *fitting) duty() (fit.Duty, bool) {
	power, ok := f.r.Number("duty.power")
	speed, ok2 := f.r.Number("duty.speed")
	duty, err := fit.MustHold(power, speed, f.r.Default("duty.peak"))
	return duty, ok && ok2 && err == nil
}

// need reads what a joint must hold. What a timing shaft drives the engine's
// power doesn't tell.
func (f *fitting) need(j *joint, duty fit.Duty, known bool) {
	standIn := duty.PinNm
	if j.what == "driveshaft" {
		standIn = duty.ShaftNm
	}
	j.needNm, _ = f.r.Number(j.at + "need")
	if known && j.needNm == 0 && j.what != "timingshaft" {
		j.needNm = f.r.Or(j.at+"need", standIn)
	}
}

// readJoint reads a joint's sizes; false while some are missing or wrong.
func (f *fitting) readJoint(j *joint) bool {
	pin, ok := f.measured(j.at+"pin", "")
	d := pin.MeanMM
	if !ok {
		d = f.r.Default("found.pin")
	}
	throw, rim := f.r.Default("throw"), f.r.Default("rim")/2
	if j.what == "driveshaft" || j.what == "timingshaft" {
		rim += throw // the shaft's hole is in the middle of the wheel
	}
	hub, err := fit.EyeOutside(throw, rim, d, d)
	if err != nil {
		hub = 2 * d
	}
	material := fit.Steel()
	if f.r.Word(j.at+"wheel") == "iron" {
		material = fit.GreyIron()
	}
	material.YieldMPa = f.r.Or(j.at+"yield", material.YieldMPa)
	j.press = fit.Press{
		DiameterMM: d, LengthMM: f.r.Default(j.at + "length"), HubMM: f.r.Or(j.at+"hub", hub), HollowMM: f.r.Default(j.at + "hollow"),
		Friction: f.r.Default(j.at + "friction"), Hub: material, Pin: fit.Steel(),
	}
	if !ok {
		return false
	}
	if j.taper > 0 {
		return f.readTaper(j)
	}
	eye, ok := f.measured(j.at+"eye", "")
	if !ok {
		return false
	}
	g, err := fit.Between(eye, pin)
	j.gap = fit.Gap{MeanMM: -g.MeanMM, LeastMM: -g.MostMM, MostMM: -g.LeastMM, PlusMinusMM: g.PlusMinusMM, SpotPlusMinusMM: g.SpotPlusMinusMM}
	return !f.faulty(j.at+"pin", err)
}

// readTaper takes the interference from the draw; without one it says what draw holds.
func (f *fitting) readTaper(j *joint) bool {
	if j.needNm > 0 {
		if mm, _, err := j.press.For(j.needNm); err == nil {
			f.say(j.at+"drawto", "To hold %, draw it at least % past hand-tight.", newtonMetres(j.needNm), f.amount(mm/j.taper))
			f.number(j.out+"draw_wanted_mm", mm/j.taper)
		}
	}
	draw, ok := f.r.Number(j.at + "draw")
	j.gap = exact(draw*j.taper, f.step*j.taper)
	return ok
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

// workOut says what a joint holds and what that costs.
func (f *fitting) workOut(j *joint) {
	p := &j.press
	p.InterferenceMM = j.gap.MeanMM
	worked, err := j.worked()
	if fault, ok := err.(*fit.Fault); ok {
		field := "pin"
		switch fault.Field {
		case fit.HubOutside:
			field = "hub"
		case fit.Hollow:
			field = "hollow"
		}
		f.faulty(j.at+field, err)
		return
	}
	limits := fit.Limits{MostMM: worked.YieldInterferenceMM}
	below, above := "", "past yield"
	if mm, _, err := p.For(j.needNm); err == nil {
		limits.LeastMM, below = mm, "slips"
	}
	if limits.LeastMM >= limits.MostMM {
		above = ""
		f.say(j.at+"cannot", "No interference holds that without yielding: it wants a longer or bigger pin, or another steel.")
	}
	title := ""
	for _, name := range jointNames {
		if name[0] == j.what {
			title = name[1] + ", interference"
		}
	}
	f.judged(gap{j.at + "bite", title, j.gap, limits, below, above})
	f.jointWords(j, &worked)
}

func (f *fitting) jointWords(j *joint, w *fit.Tapered) {
	mpa := func(v float64) string { return unit.Format(v, unit.MPa, 1) }
	holds := "Holds %. Press it in with %; it comes out at %."
	if w.PushOutN <= 0 {
		holds = "Holds %. Press it in with %; it comes out by itself."
	}
	f.say(j.at+"holds", holds, newtonMetres(w.HoldNm), unit.Format(w.PressInN, unit.Tonne, 0.1*tonne), unit.Format(w.PushOutN, unit.Tonne, 0.1*tonne))
	f.say(j.at+"stress", "Pressure %; at the eye’s bore % of hoop tension, % by von Mises against % yield.",
		mpa(w.PressureMPa), mpa(w.HubHoopMPa), mpa(w.HubMisesMPa), mpa(j.press.Hub.YieldMPa))
	if j.taper > 0 {
		f.say(j.at+"drawn", "The eye begins to yield at a draw of %.", f.amount(w.YieldDrawMM))
	}
	yields := false
	for _, found := range w.Findings {
		if found.Trouble == fit.NotSelfHolding {
			f.say(j.at+"steep", "Too steep to hold by itself: the nut must hold it.")
		} else {
			yields = true // either part or both
		}
	}
	if yields {
		f.say(j.at+"yields", "It yields: the figures are those of parts that stay elastic, so more than this joint has.")
	}
	f.number(j.out+"bite_mm", j.press.InterferenceMM)
	f.number(j.out+"pressure_mpa", w.PressureMPa)
	f.number(j.out+"hoop_mpa", w.HubHoopMPa)
	f.number(j.out+"hold_nm", w.HoldNm)
	f.number(j.out+"press_in_n", w.PressInN)
	f.number(j.out+"push_out_n", w.PushOutN)
	if margin, err := fit.Margin(w.HoldNm, j.needNm); err == nil {
		f.say(j.at+"margin", "It must hold %: % times over.", newtonMetres(j.needNm), unit.Figures(margin, unit.Plain, 0.1))
		f.number(j.out+"margin", margin)
	}
}

// tonne is the weight of one, N.
const tonne = 9806.65
