package drill

import (
	"math"

	"pintwelve/core/bound"
	"pintwelve/core/clock"
)

// After is what was really taken off, by weight.
type After struct {
	OffG      float64   // weighed less planned
	PMG       float64   // what the scale can make of it, at 95 %
	Agrees    bool      // the weight is as planned as far as the scale can tell
	MomentGMM clock.Vec // taken off, every hole out by the same part
	LeftGMM   clock.Vec // still to be removed: the next correction, until the knife-edges give a truer one
}

// After compares a weight with the plan. Swarf caught is one reading of the
// scale and goes against SwarfG; a wheel weighed before and after, plugs and all,
// is two and goes against MassG. A *Fault for figures that can't be.
func (p Plan) After(offG, stepG float64, readings int) (After, error) {
	planned := p.MassG
	if readings == 1 {
		planned = p.SwarfG
	}
	if err := bound.First(
		within(Readings, float64(readings), 1, 2),
		within(Step, stepG, 0, 1000),
		within(Holes, float64(len(p.Holes)), 1, MostHoles),
		within(Swarf, offG, math.Min(0, 2*planned), math.Max(0, 2*planned)),
	); err != nil {
		return After{}, err
	}
	a := After{OffG: offG - planned, PMG: 1.96 * stepG * math.Sqrt(float64(readings)/12)}
	a.Agrees = math.Abs(a.OffG) <= a.PMG
	a.MomentGMM = p.MomentGMM.Scale(offG / planned)
	a.LeftGMM = p.MomentGMM.Add(p.LeftGMM).Sub(a.MomentGMM)
	return a, nil
}
