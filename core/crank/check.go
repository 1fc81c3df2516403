package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// RimGaps are the gaps between the wheels at the rim [mm] at 12, 3, 6 and 9 as
// seen from an end, by feelers or inside micrometer, each to ± half a Step.
type RimGaps struct {
	From                clock.End
	At12, At3, At6, At9 float64
	Step                float64 // mm, between one feeler and the next
}

// StraightEdge is the steps under a straight-edge laid across both rims [mm],
// the right rim proud counting plus, outwards, at 3, 9 and 12 as seen from an
// end, each to ± half a Step.
type StraightEdge struct {
	From           clock.End
	At3, At9, At12 float64
	Step           float64 // mm
}

// CheckError says which of the figures of a cross-check can't be used: by its
// hour, or 0 for the step.
type CheckError struct {
	Hour  float64
	Given float64
}

func (e *CheckError) Error() string { return "crank: unusable figure in a cross-check" }

// Check is what a cross-check makes of one of the dials' components, beside
// theirs.
type Check struct {
	Value  clock.Vec // D in mm, or G in mm per mm, left-end frame
	Sure   lsq.Uncertainty
	Differ bool // from the dials' by more than both doubts together let it
}

// Gaps returns the gap slope by the rim gaps beside the dials'
// (MODEL §3): g_t = (G12 − G6)/2r, g_n = (G3 − G9)/2r. closure is
// G12 + G6 − G3 − G9 [mm], 0 for flat faces; askew tells that it is more than
// the steps let it be, so that one gap is misread or a face is not flat.
func (s *Pose) Gaps(st []Station, r RimGaps) (c Check, closure float64, askew bool, err error) {
	if err := checked(r.Step, hourly{12, r.At12}, hourly{3, r.At3}, hourly{6, r.At6}, hourly{9, r.At9}); err != nil {
		return Check{}, 0, false, err
	}
	across, sigma := 2*s.Crank.Rim, stepSigma(r.Step)
	c.Value = clock.Vec{T: (r.At12 - r.At6) / across, N: (r.At3 - r.At9) / across}.From(r.From)
	c.Sure = lsq.Uncertainty{Cov: lsq.Round(math.Sqrt2 * sigma / across)}
	c.Differ = lsq.Differ(c.Value, s.G, c.Sure, s.UncertaintyOfG(st))
	closure = r.At12 + r.At6 - r.At3 - r.At9
	return c, closure, math.Abs(closure) > lsq.Student95(0)*2*sigma, nil
}

// Edge returns the offset by a straight-edge beside the dials' (MODEL
// §3): d_n = (s3 − s9)/2, d_t = s12 − Δr with Δr = (s3 + s9)/2 the
// difference of the rims' radii [mm], which it also returns.
func (s *Pose) Edge(st []Station, e StraightEdge) (c Check, radii float64, err error) {
	if err := checked(e.Step, hourly{3, e.At3}, hourly{9, e.At9}, hourly{12, e.At12}); err != nil {
		return Check{}, 0, err
	}
	v := stepSigma(e.Step) * stepSigma(e.Step)
	radii = (e.At3 + e.At9) / 2
	c.Value = clock.Vec{T: e.At12 - radii, N: (e.At3 - e.At9) / 2}.From(e.From)
	c.Sure = lsq.Uncertainty{Cov: lsq.Cov{TT: 1.5 * v, NN: 0.5 * v}}
	c.Differ = lsq.Differ(c.Value, s.D, c.Sure, s.UncertaintyOfD(st))
	return c, radii, nil
}

// stepSigma is the standard error of a figure read to a step, and never less
// than that of a reading that counts as exact.
func stepSigma(step float64) float64 { return math.Max(step/math.Sqrt(12), blur) }

type hourly struct{ hour, given float64 }

func checked(step float64, figures ...hourly) error {
	if !usable(step) || step < 0 {
		return &CheckError{Given: step}
	}
	for _, f := range figures {
		if !usable(f.given) {
			return &CheckError{Hour: f.hour, Given: f.given}
		}
	}
	return nil
}
