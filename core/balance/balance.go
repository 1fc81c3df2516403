// Package balance works out the static balance of a crank: the weights at the
// pin, the factor it has and should have, the metal to take off, the shaking
// force that is left, and what ISO 21940-11 permits (core/MODEL.md §8). The
// holes to drill are the work of balance/drill.
//
// m_rec is piston, rings, gudgeon pin, clips and small ends; m_rot is big ends,
// bearing and crankpin; R the throw, L the rod, λ = R/L; U a first moment.
//
//	β = (weight carried at the pin − m_rot)/m_rec, indifferent on knife-edges
//	    the trade's method, P. E. Irving, Tuning for Speed (from memory):
//	    TestFactorFound
//	bob weight = the part of m_rot not on the crank + β m_rec; one wheel alone
//	    carries half of (m_rot + β m_rec)            TestBobWeight
//	heavy spot: U = w ρ                              TestSideImbalanceComesOffWhereItIsHeavy
//	ΔU = [(m_rot′ + β′ m_rec′) − (m_rot + β m_rec)] R, primed = after
//	    Khurmi and Gupta ch. 22, Sadhu Singh ch. 12, Theory of Machines (both
//	    from memory): TestBalanceMassOfTheTextbooks
//	force on the frame, cylinders i at bank angles γ on one pin:
//	    F = Σ mᵢ (−ẍᵢ) uᵢ − β (Σ mᵢ) R ω² (cos θ, sin θ), uᵢ = (cos γᵢ, sin γᵢ),
//	    x = R cos φ + √(L² − R² sin² φ), φ = θ − γᵢ
//	    series −ẍ ≈ R ω² (cos φ + λ cos 2φ)
//	    TestUnbalancedForceOfTheTextbooks, TestForceAgainstMomentum,
//	    TestMotionAgainstNumericalDerivative
//	several throws in line, one cylinder a pin at hour φⱼ and place xⱼ, webs Uₖ:
//	    primary: Bore Σ m_rec R e^{iφ}, Round Σ m_rot R e^{iφ} + Σ U, times ω²;
//	    secondary: Bore Σ λ m_rec R e^{2iφ}; couples the same times x;
//	    greatest |Round + Bore/2| + |Bore/2|    TestFourCranksOfTheTextbook,
//	    TestThirdMassOfTheTextbook, TestInLineByTheMotionOfEachPiston
//	e_per [mm] = G [mm/s]/ω [rad/s], U_per = m e_per, ISO 21940-11
//	    TestPermissibleUnbalance
//	±: every reading of the scale one step higher, each step/√12, 1.96 of the
//	    root of the squares                          TestSpreadWorkedByHand
//
// Conventions: weights g, lengths mm, first moments g·mm, angles rad, forces N.
// A weight at the pin is a first moment divided by the throw. Moments across
// the shaft are clock vectors: T towards the crankpin at 12, N towards 3 seen
// from the left end. A correction points to where metal comes off. Wrong figures
// come back as a *Fault.
package balance

import "math"

// Bounds on what is taken for an engine, wide enough for a textbook's.
const (
	MostG      = 1e6  // heaviest part, g
	MostMM     = 1e4  // longest length, mm
	MostFactor = 1.5  // greatest factor to aim at or to believe
	LeastFound = -1.5 // lowest factor to believe: below 0 the wheels don't even carry the rotating weight
)

// Figure is a value and the standard deviation that the scale's step leaves it.
type Figure struct{ X, SD float64 }

// PM returns the ± of the figure at 95 %, MODEL §6.
func (f Figure) PM() float64 { return 1.96 * f.SD }

// scale returns k f.
func (f Figure) scale(k float64) Figure { return Figure{k * f.X, math.Abs(k) * f.SD} }
