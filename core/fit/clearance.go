package fit

import "pintwelve/core/bound"

// Gap is a clearance on diameter, or between faces; negative where they interfere.
type Gap struct {
	MeanMM          float64
	LeastMM, MostMM float64 // at the tightest and the loosest spot
	PlusMinusMM     float64 // ± of the mean
	SpotPlusMinusMM float64 // ± of the least and the most
	Findings        []Finding
}

// Between returns the gap that a hole leaves round a part, of either sign.
func Between(hole, part Size) (Gap, error) {
	if err := bound.First(hole.check(Eye), part.check(Pin)); err != nil {
		return Gap{}, err
	}
	return Gap{
		MeanMM:          hole.MeanMM - part.MeanMM,
		LeastMM:         hole.LeastMM - part.MostMM,
		MostMM:          hole.MostMM - part.LeastMM,
		PlusMinusMM:     quadrature(hole.PlusMinusMM, part.PlusMinusMM),
		SpotPlusMinusMM: quadrature(hole.SpotPlusMinusMM, part.SpotPlusMinusMM),
	}, nil
}

// Running returns the clearance of a pin in its eye. A pin that isn't smaller is
// a Fault of kind TooBigForHole.
func Running(eye, pin Size) (Gap, error) {
	g, err := Between(eye, pin)
	if err != nil {
		return Gap{}, err
	}
	if g.MeanMM <= 0 {
		return Gap{}, &Fault{Detail: Detail{TooBigForHole}, Field: Pin, Got: pin.MeanMM, Least: LeastMM, Most: eye.MeanMM}
	}
	if g.LeastMM <= 0 {
		g.Findings = append(g.Findings, Finding{TightSpot, g.LeastMM, 0})
	}
	return g, nil
}

// BushWall returns a Fault of kind NoWall for a floating bush whose bore comes
// to its outside.
func BushWall(bore, outside Size) error {
	if err := bound.First(bore.check(BushBore), outside.check(BushOutside)); err != nil {
		return err
	}
	if bore.MostMM >= outside.LeastMM {
		return &Fault{Detail: Detail{NoWall}, Field: BushOutside, Got: outside.LeastMM, Least: bore.MostMM, Most: MostMM}
	}
	return nil
}

// Rollers returns the diametral clearance of rollers between the pin's track and
// the eye's: eye less pin less two rollers.
func Rollers(pin, roller, eye Size) (Gap, error) {
	if err := bound.First(pin.check(Pin), roller.check(Roller)); err != nil {
		return Gap{}, err
	}
	over := Size{
		MeanMM:          pin.MeanMM + 2*roller.MeanMM,
		LeastMM:         pin.LeastMM + 2*roller.LeastMM,
		MostMM:          pin.MostMM + 2*roller.MostMM,
		PlusMinusMM:     quadrature(pin.PlusMinusMM, 2*roller.PlusMinusMM),
		SpotPlusMinusMM: quadrature(pin.SpotPlusMinusMM, 2*roller.SpotPlusMinusMM),
	}
	g, err := Running(eye, over)
	if fault, ok := err.(*Fault); ok && fault.Detail.Kind == TooBigForHole {
		fault.Detail.Kind = RollersTooBig
	}
	return g, err
}

// ThouPerInch returns limits of so many thou of clearance an inch of diameter:
// common practice, no source.
func ThouPerInch(diameterMM, least, most float64) (Limits, error) {
	if err := bound.First(
		length(Diameter, diameterMM),
		within(LeastWanted, least, 0, 1e3),
		within(MostWanted, most, least, 1e3),
	); err != nil {
		return Limits{}, err
	}
	return Limits{least * diameterMM / 1000, most * diameterMM / 1000}, nil
}

// Widths are what the side clearance of the rod comes from.
type Widths struct {
	LeftMM, RightMM float64 // each wheel at the pin, outer face to the mouth
	RodMM           float64 // big end
	WashersMM       float64 // thrust washers beside it, all together
}

func (w Widths) check() error {
	return bound.First(
		length(WheelWidth, w.LeftMM), length(WheelWidth, w.RightMM),
		length(RodWidth, w.RodMM), within(Washers, w.WashersMM, 0, MostMM),
	)
}

// Side returns the mouth between the wheels and the rod's clearance in it, from
// the width over the wheels. A rod that has no room is a Fault of kind
// TooNarrow.
func (w Widths) Side(overWheelsMM float64) (mouthMM, sideMM float64, err error) {
	if err := bound.First(w.check(), length(OverWheels, overWheelsMM)); err != nil {
		return 0, 0, err
	}
	mouthMM = overWheelsMM - w.LeftMM - w.RightMM
	rod := w.RodMM + w.WashersMM
	if rod >= mouthMM {
		return 0, 0, &Fault{Detail: Detail{TooNarrow}, Field: OverWheels, Got: overWheelsMM, Least: w.LeftMM + w.RightMM + rod}
	}
	return mouthMM, mouthMM - rod, nil
}

// OverWheels returns the width over the wheels at which the rod has the side
// clearance wanted: where to stop the press.
func (w Widths) OverWheels(sideMM float64) (float64, error) {
	if err := bound.First(w.check(), within(SideClearance, sideMM, 0, MostMM)); err != nil {
		return 0, err
	}
	return w.LeftMM + w.RightMM + w.RodMM + w.WashersMM + sideMM, nil
}
