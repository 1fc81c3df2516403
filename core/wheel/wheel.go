// Package wheel holds a flywheel's section: its weight, its inertia about the
// shaft, the holes drilled in it, and the walls left (core/MODEL.md §8 and §9).
// ρ is the density, r₁ and r₂ radii, h a depth, d a drill.
//
//	ring    m = π ρ h (r₂² − r₁²), J = ½ m (r₁² + r₂²)
//	bevel, h at r₂ and 0 at r₁
//	        m = π ρ h [r₂² − (r₁² + r₁r₂ + r₂²)/3]
//	        J = π ρ h [r₂⁴/2 − (r₁⁴ + r₁³r₂ + r₁²r₂² + r₁r₂³ + r₂⁴)/10]
//	        TestRingAndBevelOfTheModel
//	hole    m = ρ π d²/4 × (depth to the shoulder + d/(6 tan(point angle/2)))
//	        cylinder ½ m r², cone 3/10 m r², and parallel axes
//	        TestHoleAgainstNumericalIntegration
//	any section that holes and bosses cross: by Gauss's quadrature
//	        TestRandomSectionsAgainstNumericalIntegration,
//	        TestHolesInRandomSectionsAgainstNumericalIntegration
//
// Weights are those of EN 10060 and handbook tables, a round bar of 100 mm:
// 61.65 kg/m (value from memory), TestPlainDiscIsRoundBar.
//
// Conventions: lengths are mm, densities kg/m³, weights g, first moments g·mm
// and moments of inertia g·mm² (1 kg·m² is 1e9 g·mm²). Positions across the
// shaft are clock vectors, T towards the crankpin and N towards 3 seen from
// the left end. Metal taken off counts as positive metal.
package wheel

import (
	"slices"

	"pintwelve/core/clock"
)

// Bounds on what is taken for a wheel, wide enough for a stationary engine.
const (
	LeastMM     = 0.01  // least diameter, width or web, mm
	MostMM      = 5000  // longest length, mm
	MostDensity = 25000 // kg/m³, above tungsten and platinum
)

// Side is a face of a wheel.
type Side uint8

// The two faces: Outer towards the main bearing, Inner towards the rod.
const (
	Outer Side = iota
	Inner
)

// Other returns the opposite face.
func (s Side) Other() Side { return s ^ 1 }

// Ring is a band of one face that is away, between two radii, as deep as a
// straight line from one depth to the other: a recess has equal depths, a bevel
// has none at one end. Depths are from the face as the width was measured, so
// that where rings overlap the deeper one counts.
type Ring struct {
	Side                   Side
	FromMM, ToMM           float64 // radii
	DepthFromMM, DepthToMM float64
}

// Boss is a round island left standing in the recesses of a face as made.
type Boss struct {
	Side       Side
	At         clock.Vec // from the shaft, mm
	DiameterMM float64
	BelowMM    float64 // its top below the face
}

// Drilling is a hole in a wheel. Its depth is measured from StartMM below the
// face that it is drilled from.
type Drilling struct {
	Hole
	Side    Side
	StartMM float64
}

// Wheel is a flywheel as measured, and what has been cut from it. Width is over
// all: a proud hub is a wheel of the hub's width with the rest recessed.
type Wheel struct {
	DiameterMM, WidthMM float64
	BoreMM              float64 // diameter; 0 for none
	Rings               []Ring  // recesses and bevels as made, in which bosses stand
	Bosses              []Boss
	TurnedToMM          float64 // diameter the rim is turned down to; 0 for not
	Turned              []Ring  // turned since, through bosses too
	Holes               []Drilling
}

// Turn returns the wheel with one more ring turned off it.
func (w Wheel) Turn(r Ring) Wheel {
	w.Turned = append(slices.Clip(w.Turned), r)
	return w
}

// Drill returns the wheel with holes drilled in from one face, each depth
// measured from the highest metal under that drill as the wheel now stands.
func (w Wheel) Drill(side Side, holes ...Hole) (Wheel, error) {
	s, err := w.Section()
	if err != nil {
		return Wheel{}, err
	}
	w.Holes = slices.Clip(w.Holes)
	for _, h := range holes {
		d := Drilling{Hole: h, Side: side}
		if err := h.check(len(w.Holes)); err != nil {
			return Wheel{}, err
		}
		near, _ := s.standing(d)
		d.StartMM, _ = extent(near, d.inner(), d.outer())
		w.Holes = append(w.Holes, d)
	}
	return w, nil
}

// gramsPerMM3 is one kg/m³ in g/mm³.
const gramsPerMM3 = 1e-6

// Metal is a piece of metal as the shaft feels it.
type Metal struct {
	MassG       float64
	MomentGMM   clock.Vec // first moment about the shaft, g·mm
	InertiaGMM2 float64   // about the shaft, g·mm²
}

// Add returns both pieces together.
func (m Metal) Add(o Metal) Metal {
	return Metal{m.MassG + o.MassG, m.MomentGMM.Add(o.MomentGMM), m.InertiaGMM2 + o.InertiaGMM2}
}

// Sub returns m with o taken away.
func (m Metal) Sub(o Metal) Metal { return m.Add(o.scale(-1)) }

func (m Metal) scale(k float64) Metal {
	return Metal{k * m.MassG, m.MomentGMM.Scale(k), k * m.InertiaGMM2}
}

// CheckDensity returns a Fault unless rho, kg/m³, is that of a metal.
func CheckDensity(rho float64) error { return within(Density, rho, 1, MostDensity) }
