package dial

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Noise is the scatter of one reading of a dial, found from what the fits of
// its turns leave over.
type Noise struct {
	S  float64 // mm, standard deviation of a reading
	Nu float64 // degrees of freedom; 0 where nothing is known of it
}

// What a pool starts with: the scatter of the rounding and of a hand that reads to
// four tenths of a division, at two degrees of freedom, so that four whole
// divisions that happen to fit don't pass for no scatter at all, nor one misfit for a
// dial that can't be read. Chosen by simulation over hands that scatter 0 to a
// whole division, round and oval shafts, one turn and three (TestThePrior): with it
// the 95 % region of a lone turn at four points is 1.3 to 1.7 divisions wide, where a
// quarter of a degree of freedom made it 2.3 to 4.6, and holds the truth in 95 of 100
// or more up to six tenths, in 90 at a whole one. Three degrees make it a tenth
// narrower and hold in 86 there; a hand taken for steadier holds in fewer.
const (
	handScatter  = 0.4 // divisions
	priorFreedom = 2
)

// Pool returns the scatter over all turns of the job with one dial of a
// division [mm]: s² = (ν₀ s₀² + Σ SSE)/(ν₀ + Σ ν) (MODEL §6).
func Pool(division float64, fits ...*Harmonics) Noise {
	sse, nu := 0.0, 0.0
	for _, f := range fits {
		sse += f.SSE
		nu += float64(f.Nu)
	}
	if division > 0 && len(fits) > 0 {
		sse += priorFreedom * division * division * (1./12 + handScatter*handScatter)
		nu += priorFreedom
	}
	if nu == 0 {
		return Noise{}
	}
	return Noise{S: math.Sqrt(sse / nu), Nu: nu}
}

// nothing [mm] is less than any dial shows.
const nothing = 1e-6

// Reading returns the turn as a reading, given the scatter of its dial. Its
// covariance is that of the scatter, or of the division by itself where that
// gives the larger region; the division's is in no direction below
// division/√48 (MODEL §6).
func (f *Harmonics) Reading(n Noise) Reading {
	least := math.Max(f.division*f.division/48, nothing*nothing)
	sure := lsq.Uncertainty{Cov: f.unit.Scale(f.division * f.division / 12).Floor(least)}
	governed := true
	if n.Nu > 0 {
		k := lsq.Radius95(n.Nu) / lsq.Radius95(0)
		scatter := f.unit.Scale(n.S * n.S)
		if governed = k*scatter.Widest() <= sure.Cov.Widest(); !governed {
			sure = lsq.Uncertainty{Cov: scatter.Floor(least / (k * k)), Nu: n.Nu}
		}
	}
	return Reading{
		E: f.E, Cov: sure.Cov, Nu: sure.Nu,
		RunOut: f.RunOut, Sigma: 2 * sigmaAlong(sure.Cov, f.E),
		Unsure: f.Oval.unsure(),
		Better: Better{MorePoints: f.points < 8, FinerDial: governed && f.division > 0},
	}
}

func sigmaAlong(c lsq.Cov, e clock.Vec) float64 {
	if e == (clock.Vec{}) {
		return c.Widest()
	}
	return math.Sqrt(c.Var(e))
}

// reading1 is the larger of the scatter of one reading and of its rounding, as
// how far it may be out at 95 %.
func (f *Harmonics) reading1(n Noise) float64 {
	return math.Max(lsq.Student95(n.Nu)*n.S, lsq.Student95(0)*f.division/math.Sqrt(12))
}

// Drifted tells whether the drift stands above the scatter at 95 %: the dial or
// the crank has moved. One whole division may be rounding alone.
func (f *Harmonics) Drifted(n Noise) bool {
	return f.Repeated && math.Abs(f.Drift) > math.Max(math.Sqrt2*f.reading1(n), f.division)+nothing
}

// OutOfRound tells whether the ovality stands above the scatter at 95 %; it
// can only do so where it was fitted.
func (f *Harmonics) OutOfRound(n Noise) bool {
	if f.Oval.State != OvalFitted || f.Oval.Size < nothing {
		return false
	}
	v := clock.Vec{T: f.Oval.P, N: f.Oval.Q}
	scatter := lsq.Uncertainty{Cov: f.Oval.unit.Scale(n.S * n.S), Nu: n.Nu}
	step := lsq.Uncertainty{Cov: f.Oval.unit.Scale(f.division * f.division / 12)}
	return scatter.Significant(v) && step.Significant(v)
}
