package fitting

import (
	"pintwelve/core/bench"
	"pintwelve/core/fit"
	"pintwelve/core/unit"
)

// finest is how finely a size to grind to is told, mm.
const finest = 0.001

// window is the sizes between which a part may be ground, ± of what it was measured
// against taken off both ends; false where nothing is left between.
func window(lowMM, highMM, plusMM float64) (low, high string, ok bool) {
	lowMM, highMM = lowMM+plusMM, highMM-plusMM
	return unit.Figures(lowMM, unit.MM, finest), unit.Format(highMM, unit.MM, finest), highMM-lowMM >= finest
}

// grindJoint says what to grind a pressed joint to: the pin for this eye, or the eye for
// this pin, between what holds and what yields.
func (f *fitting) grindJoint(j *joint, l fit.Limits) {
	pinLow, pinHigh, ok := window(j.eye.MostMM+l.LeastMM, j.eye.LeastMM+l.MostMM, j.eye.PlusMinusMM)
	eyeLow, eyeHigh, ok2 := window(j.pin.MostMM-l.MostMM, j.pin.LeastMM-l.LeastMM, j.pin.PlusMinusMM)
	if ok && ok2 {
		f.Say(j.at+"grind", pinAndEyeTo(pinLow, pinHigh, eyeLow, eyeHigh))
	}
}

// grindRunning says what to grind a running fit to.
func (f *fitting) grindRunning(name string, hole, part fit.Size, l fit.Limits) {
	partLow, partHigh, ok := window(hole.MostMM-l.MostMM, hole.LeastMM-l.LeastMM, hole.PlusMinusMM)
	holeLow, holeHigh, ok2 := window(part.MostMM+l.LeastMM, part.LeastMM+l.MostMM, part.PlusMinusMM)
	var ways []string
	if ok {
		ways = append(ways, partOf(partLow, partHigh))
	}
	if ok2 {
		ways = append(ways, holeOf(holeLow, holeHigh))
	}
	if ways != nil {
		f.Say(name+".grind", toGrind(ways))
	}
}

// pressing says what each joint asks of the press, or of its nut, by what was measured.
func (f *fitting) pressing() {
	quiet := *f
	quiet.Answers = &bench.Answers{}
	duty, known := f.duty()
	for _, key := range f.r.Form.Rows("joint") {
		j := quiet.rowOf(key)
		quiet.need(&j, duty, known)
		measured := quiet.readJoint(&j)
		j.press.InterferenceMM = j.gap.MeanMM
		worked, err := j.worked()
		at := "press.joint." + key
		switch {
		case j.taper > 0 && j.needNm > 0:
			switch mm, can, err := j.toHold(); {
			case err != nil:
			case can:
				f.Say(at, drawPast(j.name(), f.Amount(mm/j.taper), newtonMetres(j.needNm)))
			case j.press.Hub.Brittle:
				f.Say(at, noDrawHoldsIron(j.name(), newtonMetres(j.needNm)))
			default:
				f.Say(at, noDrawHolds(j.name(), newtonMetres(j.needNm)))
			}
		case !measured || err != nil:
			f.Say(at, notMeasured(j.name()))
		case j.taper == 0:
			f.Say(at, pressWith(j.name(), unit.Format(worked.PressInN, unit.Tonne, 0.1*tonne))+fails(&worked))
		}
		if j.press.Hub.Brittle {
			f.Say(at+".iron", ironBoss)
		}
		if measured && err == nil && j.taper > 0 {
			f.Say(at+".drawn", drawnHolds(f.Amount(worked.DrawMM), newtonMetres(worked.HoldNm))+fails(&worked))
		}
	}
}

// fails says after a joint's figures that it yields or cracks, and so hasn't as much.
func fails(w *fit.Tapered) string {
	if words := failing(w); words != "" {
		return " " + words
	}
	return ""
}
