package fit

import "math"

// Tapered is a joint pressed up a taper.
type Tapered struct {
	Joint          // PushOutN here is along the taper's axis, negative where it falls out by itself
	DrawMM float64 // along the axis, from hand-tight to full interference
	// As DrawMM, to the interference at which the first part yields; 0 where no yield is known.
	YieldDrawMM float64
}

func checkTaper(taper float64) error { return within(Taper, taper, 1e-5, 1) }

// Tapered works out the joint on a taper, DiameterMM being its mean diameter. On
// a cone of half-angle a, tan a = taper/2, pressure p acts on π d l/cos a: the
// nut pulls p π d l (μ + tan a), the joint holds μ p π d² l/(2 cos a), and it
// comes off at p π d l (μ − tan a). The pressure is taken even from end to end.
func (p Press) Tapered(taper float64) (Tapered, error) {
	if err := checkTaper(taper); err != nil {
		return Tapered{}, err
	}
	j, err := p.Joint()
	if err != nil {
		return Tapered{}, err
	}
	slope := taper / 2
	load := j.PressureMPa * math.Pi * p.DiameterMM * p.LengthMM
	j.HoldNm *= math.Sqrt(1 + slope*slope)
	j.PressInN += load * slope
	j.PushOutN -= load * slope
	if slope >= p.Friction {
		j.Findings = append(j.Findings, Finding{NotSelfHolding, slope, p.Friction})
	}
	return Tapered{Joint: j, DrawMM: p.InterferenceMM / taper, YieldDrawMM: j.YieldInterferenceMM / taper}, nil
}
