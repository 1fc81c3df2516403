package fit

import "pintwelve/core/bound"

// Limits are what a gap is judged against, mm; interferences are negative.
type Limits struct{ LeastMM, MostMM float64 }

// Call is the verdict on one limit, by the decision rule of ISO 14253-1 with the ±
// at 95 %.
type Call uint8

// The calls.
const (
	Clear    Call = iota // inside, ± and all
	Doubtful             // too close to call
	Beyond               // outside, ± and all
)

// Judgement is the verdict on both limits: the tightest spot against the least,
// the loosest against the most.
type Judgement struct{ Tight, Loose Call }

// Judge compares the gap with limits.
func (g Gap) Judge(l Limits) (Judgement, error) {
	if err := bound.First(
		within(Clearance, g.LeastMM, -MostMM, MostMM),
		within(Clearance, g.MostMM, g.LeastMM, MostMM),
		within(Clearance, g.SpotPlusMinusMM, 0, MostMM),
		within(LeastWanted, l.LeastMM, -MostMM, MostMM),
		within(MostWanted, l.MostMM, l.LeastMM, MostMM),
	); err != nil {
		return Judgement{}, err
	}
	return Judgement{
		Tight: call(l.LeastMM-g.LeastMM, g.SpotPlusMinusMM),
		Loose: call(g.MostMM-l.MostMM, g.SpotPlusMinusMM),
	}, nil
}

// call judges how far a figure stands beyond its limit.
func call(beyond, plusMinus float64) Call {
	switch {
	case beyond+plusMinus <= 0:
		return Clear
	case beyond-plusMinus > 0:
		return Beyond
	}
	return Doubtful
}
