package fit

import (
	"math"

	"pintwelve/core/bound"
	"pintwelve/core/lsq"
)

// Rock is a rod rocked sideways on its big end, the dial far up the rod.
type Rock struct {
	MovementMM float64 // of the dial, from one stop to the other
	AtMM       float64 // dial from the middle of the eye
	PinMM      float64 // diameter
	WidthMM    float64 // of the bearing in the eye, along the pin
	// Side clearance and the diameter of the rod's cheek that it acts on, both 0
	// where they aren't known.
	SideMM, CheekMM float64
}

// Rocked is what the rock shows.
type Rocked struct {
	ClearanceMM float64 // of the big end, on diameter; of a floating bush, inner and outer together
	AngleRad    float64 // each way
	SideMM      float64 // side clearance that this rock takes up; 0 where CheekMM isn't known
	Findings    []Finding
}

// nearStop is how near the whole of the side clearance a rock may come before it
// may as well be the cheek that stops it.
const nearStop = 0.9

// BigEnd returns the clearance that lets a rod rock so. An eye of bore B and width
// b tipped by θ on a pin d touches it at opposite edges where d = B cos θ − b sin θ;
// the dial moves 2 L sin θ. Where the cheeks meet the wheels first, the clearance
// is at least that found: Finding SideStops.
func (r Rock) BigEnd() (Rocked, error) {
	if err := r.check(); err != nil {
		return Rocked{}, err
	}
	sin := r.MovementMM / (2 * r.AtMM)
	angle := math.Asin(sin)
	half := math.Sin(angle / 2)
	lost := 2 * half * half // 1 − cos θ
	out := Rocked{
		ClearanceMM: (r.WidthMM*sin + r.PinMM*lost) / (1 - lost),
		AngleRad:    angle,
		SideMM:      math.Max(0, r.CheekMM*sin-r.WidthMM*lost),
	}
	if r.CheekMM == 0 {
		out.SideMM = 0
	}
	if r.CheekMM > 0 && r.SideMM > 0 && out.SideMM >= nearStop*r.SideMM {
		out.Findings = append(out.Findings, Finding{SideStops, out.SideMM, r.SideMM})
	}
	return out, nil
}

func (r Rock) check() error {
	return bound.First(
		length(DialPlace, r.AtMM),
		within(Movement, r.MovementMM, 0, r.AtMM/2), // 14° each way, far past any rod
		length(Pin, r.PinMM), length(RodWidth, r.WidthMM),
		within(SideClearance, r.SideMM, 0, MostMM), within(Cheek, r.CheekMM, 0, MostMM),
	)
}

// Bar is a bar through an eye, its height read at two places.
type Bar struct{ AMM, BMM, SpanMM float64 }

// slope returns the bar's rise over its span.
func (b Bar) slope() float64 { return (b.BMM - b.AMM) / b.SpanMM }

func (b Bar) check() error {
	return bound.First(
		length(Span, b.SpanMM),
		within(Height, b.AMM, -MostMM, MostMM),
		within(Height, b.BMM, b.AMM-b.SpanMM/2, b.AMM+b.SpanMM/2),
	)
}

// Lean is how far two bars are out of parallel, mm per mm, and its ±.
type Lean struct{ PerMM, PlusMinus float64 }

// OutOfParallel compares the bar through the small end with the one through the
// big end, both read from A to B the same way. With the rod standing up from the
// plate it is the rod's bend; lying along the plate, its twist. stepMM is the
// least that the gauge shows.
func OutOfParallel(big, small Bar, stepMM float64) (Lean, error) {
	if err := bound.First(big.check(), small.check(), within(Step, stepMM, 1e-6, 1)); err != nil {
		return Lean{}, err
	}
	a, b := small.slope(), big.slope()
	one := lsq.Normal95 * stepMM / math.Sqrt(12) * math.Sqrt2
	return Lean{
		PerMM:     (a - b) / (1 + a*b), // tan of the angle between them
		PlusMinus: quadrature(one/big.SpanMM, one/small.SpanMM),
	}, nil
}
