package flywheel

import (
	"math"

	"pintwelve/core/bound"
)

// Weighing is one wheel on the scale before and after its cuts.
type Weighing struct {
	BeforeG, AfterG float64
	PlannedG        float64 // to come off
	StepG           float64 // of the scale
}

// Weighed is how a wheel stands against its plan.
type Weighed struct {
	OffG  float64
	MissG float64 // off beyond the plan; negative is still to come off
	Told  bool    // the miss is more than the scale's step
}

// Against compares the scale with the plan.
func (w Weighing) Against() (Weighed, error) {
	if err := bound.First(
		withinItem(Weight, 0, w.BeforeG, 0, 1e7), withinItem(Weight, 1, w.AfterG, 0, 1e7),
		within(WantedOff, w.PlannedG, 0, 1e7), within(ScaleStep, w.StepG, 0, 1e6),
	); err != nil {
		return Weighed{}, err
	}
	return against(w.BeforeG-w.AfterG, w.PlannedG, w.StepG), nil
}

// Drawn compares a wheel's weight from its drawing with the scale, g: OffG is
// the scale's, MissG what it has over the drawing.
func Drawn(drawingG, scaleG, stepG float64) (Weighed, error) {
	if err := bound.First(
		withinItem(Weight, 0, drawingG, 0, 1e7), withinItem(Weight, 1, scaleG, 0, 1e7), within(ScaleStep, stepG, 0, 1e6),
	); err != nil {
		return Weighed{}, err
	}
	return against(scaleG, drawingG, stepG), nil
}

func against(got, want, step float64) Weighed {
	const slack = 1e-9 // g, of arithmetic
	miss := got - want
	return Weighed{OffG: got, MissG: miss, Told: math.Abs(miss) > step+slack}
}
