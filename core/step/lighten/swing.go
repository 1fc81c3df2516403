package lighten

import (
	"math"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// tapStep is how finely the page's stopwatch writes a tap, s.
const tapStep = 0.01

// swings works out the swing tests. What they find of a wheel counts against
// its drawing, and for a like wheel that was not swung; what they find of the
// crank tells what else turns.
func (l *lightening) swings() {
	for n, key := range l.r.Form.Rows("swing") {
		values := "lighten.swings/" + strconv.Itoa(n)
		l.Say("swing."+key+".name", swingName(strconv.Itoa(n+1)))
		of := l.r.Word(form.SwingOf, key)
		l.Text(values+"/of", of)
		l.Text(values+"/when", l.r.Word(form.SwingWhen, key))
		s, ok := l.swung(key, of)
		if !ok {
			l.Null(values + "/inertia_kgm2")
			continue
		}
		l.Number(values+"/inertia_kgm2", s.InertiaGMM2/1e9)
		l.Number(values+"/plus_kgm2", s.PM/1e9)
		l.Number(values+"/period_s", s.SmallS)
		l.found(key, of, &s)
	}
	for i := range l.wheels {
		if mate := &l.wheels[1-i]; l.alike && mate.swung && !l.wheels[i].swung {
			l.wheels[i].account = mate.account
			l.mated = takenAsSwung(l.wheels[i].side, mate.side)
		}
	}
}

// swung works out one swing test.
func (l *lightening) swung(key, of string) (flywheel.Swung, bool) {
	timing, timed := l.timed(key)
	swing, whole := l.readSwing(key, of)
	if !timed || !whole || !l.wheels[0].ok || !l.wheels[1].ok {
		return flywheel.Swung{}, false
	}
	swing.PeriodS, swing.SDS, swing.Freedom = timing.PeriodS, timing.SDS, timing.Freedom
	s, err := swing.Inertia()
	if err != nil {
		l.complainSwing(key, err)
	}
	return s, err == nil
}

// timed reads the taps.
func (l *lightening) timed(key string) (flywheel.Timing, bool) {
	taps := l.r.Numbers(1000, form.SwingTaps, key)
	if taps == nil {
		return flywheel.Timing{}, false
	}
	passes := 2
	if l.r.Word(form.SwingPasses, key) == "one" {
		passes = 1
	}
	if len(taps) < flywheel.LeastTaps {
		l.Say("swing."+key+".line", passesSoFar(passesOf(len(taps))))
		return flywheel.Timing{}, false
	}
	t, err := flywheel.Time(taps, passes, tapStep)
	if err != nil {
		l.complainSwing(key, err)
		return t, false
	}
	l.Say("swing."+key+".line", period(bench.PlusMinus(unit.Figures(t.PeriodS, unit.Second, 0.0001),
		unit.Format(t.PM(), unit.Second, 0.0001)), unit.Figures(t.Swings, unit.Plain, 0.5), slips(&t)))
	return t, true
}

// slips says which taps were missed or double.
func slips(t *flywheel.Timing) string {
	missed := 0
	for _, m := range t.Missed {
		missed += m.Count
	}
	if missed+len(t.Doubled) == 0 {
		return ""
	}
	return slipsAllowed(missed, len(t.Doubled))
}

// readSwing reads how a swing hung; false while a figure lacks.
func (l *lightening) readSwing(key, of string) (flywheel.Swing, bool) {
	s := flywheel.Swing{
		ArmPM: l.r.Default(form.SwingArmPM, key), StartDeg: l.r.Default(form.SwingStart, key),
		MassPM: l.scaleG, ReachMM: max(l.wheels[0].dims.diameter, l.wheels[1].dims.diameter) / 2,
	}
	s.EndDeg, _ = l.r.Number(form.SwingEnd, key)
	var arm, mass bool
	s.ArmMM, arm = l.r.Number(form.SwingArm, key)
	if of == "crank" {
		s.MassG, mass = l.r.Number(form.SwingMass, key)
	} else {
		s.MassG, mass = l.r.Or(l.weighs(key, of), form.SwingMass, key), true
	}
	var lacks []string
	if !arm && !l.r.Wrong(form.SwingArm, key) {
		lacks = append(lacks, lacksArm)
	}
	if !mass && !l.r.Wrong(form.SwingMass, key) {
		lacks = append(lacks, lacksWeight)
	}
	if len(lacks) > 0 {
		l.Say("swing."+key+".lacks", stillToGive(lacks))
	}
	return s, arm && mass
}

// weighs returns a wheel's weight on the scale, or else by its drawing.
func (l *lightening) weighs(key, of string) float64 {
	w := l.wheel(of)
	on, drawn := form.WheelWeight, w.account.Before.MassG
	if l.r.Word(form.SwingWhen, key) == "after" {
		on, drawn = form.WheelAfter, w.account.After.MassG
	}
	if v, ok := l.r.Number(on, w.side); ok {
		return v
	}
	return drawn
}

func (l *lightening) wheel(side string) *lightened {
	if side == bench.Sides[1] {
		return &l.wheels[1]
	}
	return &l.wheels[0]
}

// found says what a swing found, and puts it in the place of the drawing's.
func (l *lightening) found(key, of string, s *flywheel.Swung) {
	after := l.r.Word(form.SwingWhen, key) == "after"
	words := ""
	if of == "crank" {
		l.crankGMM2, l.crankAfter = s.InertiaGMM2, after
	} else {
		words = l.against(l.wheel(of), after, s)
	}
	l.Say("swing."+key+".inertia", swungInertia(bench.PlusMinus(bench.Plain(s.InertiaGMM2/1e5, 0.1), bench.Plain(s.PM/1e5, 0.1)), words))
}

// other is the inertia of what else turns, 0 where no swing of the crank tells
// it.
func (l *lightening) other() float64 {
	if l.crankGMM2 == 0 {
		return 0
	}
	rest := l.crankGMM2
	for i := range l.wheels {
		if l.crankAfter {
			rest -= l.wheels[i].account.After.InertiaGMM2
		} else {
			rest -= l.wheels[i].account.Before.InertiaGMM2
		}
	}
	if rest < 0 {
		l.Say("lighten.swungless", swungLess)
	}
	return max(rest, 0)
}

// against compares a swing with the drawing, and lets it count.
func (l *lightening) against(w *lightened, after bool, s *flywheel.Swung) string {
	off := w.account.Off().InertiaGMM2
	drawn := w.account.Before.InertiaGMM2
	if after {
		drawn = w.account.After.InertiaGMM2
	}
	miss := math.Abs(s.InertiaGMM2 - drawn)
	if w.account.After.InertiaGMM2 = s.InertiaGMM2; !after {
		w.account.After.InertiaGMM2 -= off
	}
	w.account.Before.InertiaGMM2 = w.account.After.InertiaGMM2 + off
	w.swung = true
	if miss > s.PM {
		return drawingOutside(squared(drawn))
	}
	return drawingInside(squared(drawn))
}

// complainSwing puts what the room says of a swing beside the figure it is about.
func (l *lightening) complainSwing(key string, err error) {
	f, ok := err.(*flywheel.Fault)
	if !ok {
		return
	}
	id, words := form.SwingTaps, tapsUneven
	switch f.Field {
	case flywheel.PeriodTooLong, flywheel.PeriodTooShort:
		words = noSuchPeriod(unit.Figures(f.Got, unit.Second, 0.001),
			unit.Figures(f.Least, unit.Second, 0.001), unit.Figures(f.Most, unit.Second, 0.001), miscounted(f.Detail.Factor))
	case flywheel.TapTime:
		words = tapNotLater(strconv.Itoa(f.Item + 1))
	case flywheel.TapCount:
		words = fewPasses(times(f.Got), times(f.Least))
	case flywheel.Arm, flywheel.ArmPM:
		id, words = form.SwingArm, willDo(mm(f.Got), mm(f.Least), mm(f.Most))
	case flywheel.Mass, flywheel.MassPM:
		id, words = form.SwingMass, willDo(bench.Grams(f.Got, 1), bench.Grams(f.Least, 1), bench.Grams(f.Most, 1))
	case flywheel.HalfSwing:
		id, words = form.SwingEnd, swingCantGrow
	}
	l.r.Complain(words, id, key)
}

// miscounted guesses at a slip in counting.
func miscounted(factor float64) string {
	switch factor {
	case 2:
		return tappedOneWay
	case 0.5:
		return tappedBothWays
	}
	return lookAtTheTaps
}
