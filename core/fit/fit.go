// Package fit works out how the parts of a bottom end fit: sizes from micrometer
// readings, clearances of the big end, pressed and tapered joints, heat to drop
// a race in, the play left in a bearing, end float and its shims, and what a
// rocking or bent rod shows (core/MODEL.md §10).
//
// δ is the interference and d the diameter of the joint, D the outside of the
// hub, d_i the hole through the pin, l its length, μ the friction; h is the hub,
// s the pin.
//
//	p = (δ/d)/{[(D² + d²)/(D² − d²) + ν_h]/E_h + [(d² + d_i²)/(d² − d_i²) − ν_s]/E_s}
//	    Lamé, plane stress; for one steel Shigley, Mechanical Engineering
//	    Design (formulas from memory): TestPressMeetsHookeAndEquilibrium,
//	    TestPressOfOneMaterialIsTheTextbooks, TestThinHoop
//	hoop stress at the bore p (D² + d²)/(D² − d²), and von Mises
//	holding torque μ p π d² l/2, push-out μ p π d l   TestHoldingIsFrictionOverTheContact
//	taper, tan a = taper/2: nut p π d l (μ + tan a), off p π d l (μ − tan a),
//	    holds μ p π d² l/(2 cos a), draw δ/taper      TestTaperForcesAreTheSumOverTheCone
//	drop-in ΔT = (δ + working clearance)/(α d)        TestHeatOfASteelRing
//	race loose at ΔT = δ/((α_housing − α_race) d)     TestRaceComesLoose
//	ring of a bearing, track d_t: 2 p d² d_t/(E (d_t² − d²)) wider,
//	    2 p D² D_t/(E (D² − D_t²)) narrower           TestRingsMoveAsTheirStressFieldSays
//	end float = between the case faces − over the crank − shims
//	                                                  TestEndFloatColdAndHot, TestShimsAgainstBruteForce
//	rock of a rod: d = B cos θ − b sin θ, the dial moves 2 L sin θ
//	                                                  TestRockGivesTheClearanceBack
//	±: rounding step/√12 that no repeat averages out, scatter by Student's t,
//	    the larger, and the zero's rounding           TestPlusMinusHoldsTheTruth
//	limits by the decision rule of ISO 14253-1        TestJudgeByTheDecisionRule
//
// Interference and clearance are on diameter and positive; where one figure can
// be either it is a clearance, and an interference is negative. Taper is the
// change of diameter over a length. Lengths are mm, stresses MPa (N/mm²), forces
// N, torques N m, temperatures °C, expansion 1/K. "±" is the half-width at 95 %.
//
// A figure that won't do comes back as a *Fault with what would. A figure that
// can be worked out but means trouble comes with a Finding.
package fit

import (
	"math"

	"pintwelve/core/bound"
)

// What figures this package takes, mm and °C. They keep every answer finite and
// are far outside any crank.
const (
	LeastMM  = 1e-3
	MostMM   = 1e4
	ColdestC = -273.15
	HottestC = 1500
)

// Size is a diameter or a width as measured.
type Size struct {
	MeanMM          float64 // of the spots measured
	LeastMM, MostMM float64 // of the spots measured
	PlusMinusMM     float64 // ± of the mean
	SpotPlusMinusMM float64 // ± of the least and the most
	Form            Form
	Readings        int // how many it stands on
}

// Form is how a pin or an eye departs from a cylinder. A figure is given where
// its Known says so.
type Form struct {
	TaperMM  float64 // far end less near end
	OvalMM   float64 // first direction less the one across it, where they differ most
	BarrelMM float64 // middle less the mean of the ends: positive is a barrel, negative a waist in a pin

	TaperKnown, OvalKnown, BarrelKnown bool
}

// Known returns a size given as one figure, with its ±.
func Known(mm, plusMinusMM float64) Size {
	return Size{MeanMM: mm, LeastMM: mm, MostMM: mm, PlusMinusMM: plusMinusMM, SpotPlusMinusMM: plusMinusMM}
}

func (s Size) check(f Field) error {
	return bound.First(
		within(f, s.MeanMM, LeastMM, MostMM),
		within(f, s.LeastMM, LeastMM, s.MeanMM*(1+tieSlack)),
		within(f, s.MostMM, s.MeanMM*(1-tieSlack), MostMM),
		within(f, s.PlusMinusMM, 0, s.MeanMM),
		within(f, s.SpotPlusMinusMM, 0, s.MeanMM),
	)
}

// tieSlack is what a mean of equal readings may stand off them.
const tieSlack = 1e-12

// quadrature adds independent ± figures.
func quadrature(a ...float64) float64 {
	sum := 0.0
	for _, x := range a {
		sum += x * x
	}
	return math.Sqrt(sum)
}
