package fitting

import (
	"math"

	"pintwelve/core/bench"
	"pintwelve/core/fit"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

var nan = math.NaN()

// measuring answers the step "Measure": the big end and the joints.
func measuring(a *bench.Answers, r *form.Reader) {
	f := readFitting(a, r)
	f.bigEnd()
	f.joints()
	f.top("measure", measureThePin)
}

// Thou of clearance an inch of diameter for a floating bush, and thou for
// rollers: common practice, no source.
const (
	bushLeast, bushMost     = 1, 1.5
	rollerLeast, rollerMost = 0.5 * thou, 1 * thou
	thou                    = 0.0254
)

// bigEndLimits reads the limits of the big end's clearances.
func (f *fitting) bigEndLimits(pinMM float64) (inner, outer fit.Limits) {
	standIn := fit.Limits{LeastMM: rollerLeast, MostMM: rollerMost}
	if f.r.Word(form.BigEndKind) == "bush" {
		standIn, _ = fit.ThouPerInch(pinMM, bushLeast, bushMost)
	}
	inner = f.limits(form.BigEndLeast, form.BigEndMost, standIn)
	outer = f.limits(form.BigEndOutLeast, form.BigEndOutMost, standIn)
	return inner, outer
}

func (f *fitting) bigEnd() {
	f.sideLimits()
	pin, hasPin := f.measuredBoth(form.BigEndPin, form.BigEndPin90)
	eye, hasEye := f.measuredBoth(form.BigEndEye, form.BigEndEye90)
	if !hasPin {
		pin.MeanMM = f.r.Default(form.FoundPin)
	}
	inner, outer := f.bigEndLimits(pin.MeanMM)
	f.Say("bigend.fold.limits", limitsAndSteps(f.Amount(inner.LeastMM), f.Amount(inner.MostMM), f.Amount(f.StepMM)))
	if f.r.Word(form.BigEndKind) == "rollers" {
		roller, ok := f.rollers()
		if !ok || !hasPin || !hasEye {
			return
		}
		g, err := fit.Rollers(pin, roller, eye)
		if !f.faulty(err, form.BigEndPin) {
			f.judged(gap{"bigend.roller_clearance", rollersClearance, g, inner, tooTight, tooLoose})
		}
		return
	}
	bore, hasBore := f.measuredBoth(form.BigEndBore, form.BigEndBore90)
	if hasPin && hasBore {
		f.runs(form.BigEndPin, gap{name: "bigend.inner_clearance", title: pinInBush, Limits: inner}, bore, pin)
	}
	bush, hasBush := f.measuredBoth(form.BigEndBush, form.BigEndBush90)
	if hasBush && hasEye {
		f.runs(form.BigEndBush, gap{name: "bigend.outer_clearance", title: bushInRod, Limits: outer}, eye, bush)
	}
	if hasBore && hasBush {
		f.faulty(fit.BushWall(bore, bush), form.BigEndBush)
	}
}

// rollersAlike is how far the rollers of one set differ at the most, mm: common
// practice, no source.
const rollersAlike = 0.002

// rollers works out the rollers' size: each reading is of another roller, so that
// what differs is no taper.
func (f *fitting) rollers() (fit.Size, bool) {
	var all []fit.Micrometer
	for _, mm := range f.r.Numbers(bench.MostReadings, form.BigEndRoller) {
		all = append(all, fit.Micrometer{Spot: fit.Spot{At: fit.MidLength}, MM: mm})
	}
	size, ok := f.worked(all, f.instrument(form.BigEndRoller), form.BigEndRoller)
	if !ok || !f.told(&size, form.BigEndRoller.Name()) {
		return size, false
	}
	least, most := all[0].MM, all[0].MM
	for _, r := range all {
		least, most = math.Min(least, r.MM), math.Max(most, r.MM)
	}
	if most-least > rollersAlike+1e-9 {
		words := rollersDiffer(f.Amount(most-least), unit.Format(least, unit.MM, 0.001), unit.Format(most, unit.MM, 0.001), f.Amount(rollersAlike))
		f.Say("bigend.rollers", words)
		f.found(amiss, words)
	}
	return size, true
}

// runs judges a running clearance; what is wrong with it is told beside the
// field of what runs.
func (f *fitting) runs(field form.ID, g gap, hole, part fit.Size) {
	var err error
	g.Gap, err = fit.Running(hole, part)
	f.grindRunning(g.name, hole, part, g.Limits)
	if !f.faulty(err, field) {
		g.below, g.above = tooTight, tooLoose
		f.judged(g)
	}
}
