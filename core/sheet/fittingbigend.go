package sheet

import (
	"math"

	"pintwelve/core/fit"
	"pintwelve/core/form"
)

var nan = math.NaN()

// measuring answers the step "Measure": the big end and the joints.
func measuring(a *Answers, r *form.Reader) {
	f := readFitting(a, r)
	f.bigEnd()
	f.joints()
	f.top("measure", "Measure the crankpin: both ends and the middle, then across.")
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
	if f.r.Word("bigend.kind") == "bush" {
		standIn, _ = fit.ThouPerInch(pinMM, bushLeast, bushMost)
	}
	inner = f.limits("bigend.least", "bigend.most", standIn)
	outer = f.limits("bigend.outleast", "bigend.outmost", standIn)
	return inner, outer
}

func (f *fitting) bigEnd() {
	f.sideLimits()
	pin, hasPin := f.measured("bigend.pin", "bigend.pin90")
	eye, hasEye := f.measured("bigend.eye", "bigend.eye90")
	if !hasPin {
		pin.MeanMM = f.r.Default("found.pin")
	}
	inner, outer := f.bigEndLimits(pin.MeanMM)
	if f.r.Word("bigend.kind") == "rollers" {
		roller, ok := f.measured("bigend.roller", "")
		if !ok || !hasPin || !hasEye {
			return
		}
		g, err := fit.Rollers(pin, roller, eye)
		if !f.faulty("bigend.pin", err) {
			f.judged(gap{"bigend.roller_clearance", "Rollers’ clearance", g, inner, "too tight", "too loose"})
		}
		return
	}
	bore, hasBore := f.measured("bigend.bore", "bigend.bore90")
	if hasPin && hasBore {
		f.runs("bigend.pin", gap{name: "bigend.inner_clearance", title: "Pin in bush", Limits: inner}, bore, pin)
	}
	bush, hasBush := f.measured("bigend.bush", "bigend.bush90")
	if hasBush && hasEye {
		f.runs("bigend.bush", gap{name: "bigend.outer_clearance", title: "Bush in rod", Limits: outer}, eye, bush)
	}
	if hasBore && hasBush {
		f.faulty("bigend.bush", fit.BushWall(bore, bush))
	}
}

// runs judges a running clearance; what is wrong with it is told beside the
// field of what runs.
func (f *fitting) runs(field string, g gap, hole, part fit.Size) {
	var err error
	g.Gap, err = fit.Running(hole, part)
	if !f.faulty(field, err) {
		g.below, g.above = "too tight", "too loose"
		f.judged(g)
	}
}
