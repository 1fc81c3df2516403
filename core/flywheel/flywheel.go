// Package flywheel is the room for lightening a crank's wheels: what each cut
// takes off, how deep a cut must be for a given weight, the inertia by a swing
// test, what lightening does, and whether the wheel will hold (core/MODEL.md §9).
// The wheel's section itself stands in package wheel.
//
//	swing on a knife-edge at a from the centre of gravity, half-swing θ:
//	    T₀ = T/(1 + θ²/16 + 11 θ⁴/3072), J = m g a T₀²/4π² − m a²
//	    textbook pendulums, and the elliptic integral by gonum:
//	    TestTextbookPendulums, TestAmplitudeAgainstTheEllipticIntegral
//	its ±: each reading's part in quadrature, Student's t at Welch and
//	    Satterthwaite's ν (JCGM 100, G.4.1)
//	    TestTapsRecoverTheInertiaWithinItsPlusMinus
//	period from taps: t = start + gap k ± unevenness, least squares on k
//	    TestFitAgainstGonum
//	same steadiness at idle: n₂ = n₁ √(J₁/J₂); felt on the road:
//	    J (gear/wheel radius)²                    TestWhatLighteningDoes
//	thin ring σ = ρ v²; disc, bore a, outer b:
//	    σ_max = ρ ω² ((3+ν)/4) (b² + (1−ν)/(3+ν) a²)
//	    a section of any thickness by Runge–Kutta, a hole's 3σ₁ − σ₂ by Kirsch
//	    Timoshenko and Goodier, Theory of Elasticity, rotating disks, and the
//	    v²/10 lb/in² rule for iron rims (both from memory):
//	    TestBoredDiscAtEveryRadius, TestRimOnAThinWebAgainstTwoDiscs,
//	    TestSolidDiscAndPinHole, TestCastIronRimAgainstTheHandbookRule
//
// Conventions are those of package wheel: mm, g, g·mm², kg/m³, radii rather
// than diameters for what is turned, depths from the face as the width was
// measured. Stresses are MPa, speeds rev/min, times s. A ± is two-sided, 95 %.
package flywheel

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/wheel"
)

// Kind is a kind of cut.
type Kind uint8

// The cuts, and which figures of Cut each uses.
const (
	TurnRim  Kind = iota // ToDiameterMM
	FaceSide             // Side, DepthMM: the whole face, hub and bosses too
	Recess               // Side, FromMM, ToMM, DepthMM
	Bevel                // Side, FromMM, ToMM, DepthMM at one end and none at the other
	HoleRing             // Side, Number, PitchMM, FirstHour, DiameterMM, DepthMM, PointDeg, Through
)

// Cut is one cut on one wheel.
type Cut struct {
	Kind         Kind
	Side         wheel.Side
	ToDiameterMM float64
	FromMM, ToMM float64 // radii
	DepthMM      float64 // holes: to the shoulder, from the metal they start on
	DeepInside   bool    // the bevel is deepest at its inner radius

	Number     int
	PitchMM    float64 // radius of the ring of holes
	FirstHour  float64 // seen from the left end
	DiameterMM float64 // of the drill
	PointDeg   float64
	Through    bool
}

// MostHoles is the most holes taken in one ring.
const MostHoles = 100

// on returns the wheel with the cut made.
func (c Cut) on(w wheel.Wheel) (wheel.Wheel, error) {
	switch c.Kind {
	case TurnRim:
		return c.turnRim(w)
	case FaceSide:
		return w.Turn(wheel.Ring{Side: c.Side, FromMM: w.BoreMM / 2, ToMM: w.DiameterMM / 2,
			DepthFromMM: c.DepthMM, DepthToMM: c.DepthMM}), nil
	case Recess, Bevel:
		return w.Turn(c.ring()), nil
	case HoleRing:
		holes, err := c.holes()
		if err != nil {
			return wheel.Wheel{}, err
		}
		return w.Drill(c.Side, holes...)
	}
	return wheel.Wheel{}, within(CutKind, float64(c.Kind), float64(TurnRim), float64(HoleRing))
}

func (c Cut) turnRim(w wheel.Wheel) (wheel.Wheel, error) {
	if err := within(RimDiameter, c.ToDiameterMM, w.BoreMM+wheel.LeastMM, w.DiameterMM); err != nil {
		return wheel.Wheel{}, err
	}
	if w.TurnedToMM == 0 || c.ToDiameterMM < w.TurnedToMM {
		w.TurnedToMM = c.ToDiameterMM
	}
	return w, nil
}

func (c Cut) ring() wheel.Ring {
	r := wheel.Ring{Side: c.Side, FromMM: c.FromMM, ToMM: c.ToMM, DepthFromMM: c.DepthMM, DepthToMM: c.DepthMM}
	if c.Kind == Bevel && c.DeepInside {
		r.DepthToMM = 0
	} else if c.Kind == Bevel {
		r.DepthFromMM = 0
	}
	return r
}

func (c Cut) holes() ([]wheel.Hole, error) {
	if err := within(HoleNumber, float64(c.Number), 1, MostHoles); err != nil {
		return nil, err
	}
	if err := within(FirstHour, c.FirstHour, -12, 12); err != nil {
		return nil, err
	}
	holes := make([]wheel.Hole, c.Number)
	for i := range holes {
		holes[i] = wheel.Hole{
			At:         clock.Polar(c.PitchMM, c.FirstHour+12*float64(i)/float64(c.Number)),
			DiameterMM: c.DiameterMM, DepthMM: c.DepthMM, PointDeg: c.PointDeg, Through: c.Through,
		}
	}
	return holes, nil
}

// Line is what one cut takes off.
type Line struct {
	Alone wheel.Metal // were it the only cut
	Off   wheel.Metal // after the cuts before it: the lines add up to the whole
}

// OverlapG returns the weight that cuts before it had already taken, g.
func (l Line) OverlapG() float64 { return math.Max(0, l.Alone.MassG-l.Off.MassG) }

// Account is a wheel before and after its cuts.
type Account struct {
	Before, After               wheel.Metal
	BeforeSection, AfterSection *wheel.Section
	Cut                         wheel.Wheel // the wheel as cut
	Lines                       []Line      // one a cut, in the order made
}

// Off returns everything taken off, overlaps counted once.
func (a Account) Off() wheel.Metal { return a.Before.Sub(a.After) }

// FeltGMM is the change of balance that is taken for none, g·mm: a tenth of a
// gram at 100 mm, less than knife-edges show (common practice, no source).
const FeltGMM = 10

// Symmetrical tells whether the cuts leave the balance factor alone. A ring
// turned across the crankpin's hole or boss takes more from the other side.
func (a Account) Symmetrical() bool { return a.Off().MomentGMM.Len() <= FeltGMM }

// Make works out the cuts on a wheel of density rho, kg/m³, in order. A wheel
// or density that cannot be is a *wheel.Fault; a cut that cannot be made is a
// *CutFault around what is wrong with it.
func Make(w wheel.Wheel, rho float64, cuts ...Cut) (Account, error) {
	section, metal, err := work(w, rho)
	if err != nil {
		return Account{}, err
	}
	a := Account{Before: metal, After: metal, BeforeSection: section, AfterSection: section, Cut: w}
	for i, c := range cuts {
		if err := a.add(w, rho, c); err != nil {
			return Account{}, &CutFault{Cut: i, Err: err}
		}
	}
	return a, nil
}

func (a *Account) add(w wheel.Wheel, rho float64, c Cut) error {
	cut, section, after, err := made(a.Cut, rho, c)
	if err != nil {
		return err
	}
	alone := after
	if len(a.Lines) > 0 {
		if _, _, alone, err = made(w, rho, c); err != nil {
			return err
		}
	}
	a.Lines = append(a.Lines, Line{Alone: a.Before.Sub(alone), Off: a.After.Sub(after)})
	a.Cut, a.AfterSection, a.After = cut, section, after
	return nil
}

// made returns the wheel with one more cut, worked out.
func made(w wheel.Wheel, rho float64, c Cut) (wheel.Wheel, *wheel.Section, wheel.Metal, error) {
	cut, err := c.on(w)
	if err != nil {
		return wheel.Wheel{}, nil, wheel.Metal{}, err
	}
	section, metal, err := work(cut, rho)
	return cut, section, metal, err
}

func work(w wheel.Wheel, rho float64) (*wheel.Section, wheel.Metal, error) {
	section, err := w.Section()
	if err != nil {
		return nil, wheel.Metal{}, err
	}
	metal, err := section.Metal(rho)
	return section, metal, err
}
