package wheel

import (
	"math"

	"pintwelve/core/bound"
	"pintwelve/core/clock"
)

// LeastPointDeg is the sharpest drill point taken, degrees.
const LeastPointDeg = 45

// Hole is a round hole parallel to the shaft.
type Hole struct {
	At         clock.Vec // of its axis from the shaft, mm
	DiameterMM float64
	DepthMM    float64 // to the shoulder; the metal gone through when Through
	PointDeg   float64 // angle of the drill's point; 0 or 180 leaves a flat bottom
	Through    bool    // no cone is left at the bottom
}

// Check returns a Fault for the first figure that no drill could have.
func (h Hole) Check() error { return h.check(0) }

func (h Hole) check(item int) error {
	point := h.PointDeg
	if point == 0 {
		point = 180
	}
	return bound.First(
		withinItem(HoleDiameter, item, h.DiameterMM, LeastMM, MostMM),
		withinItem(HoleDepth, item, h.DepthMM, 0, MostMM),
		withinItem(HolePoint, item, point, LeastPointDeg, 180),
		withinItem(HolePlace, item, h.At.Len(), 0, MostMM),
	)
}

// PointMM returns how far the cone reaches beyond the shoulder, mm: 0 for a
// through or flat-bottomed hole.
func (h Hole) PointMM() float64 {
	if h.Through || h.PointDeg == 0 || h.PointDeg >= 180 {
		return 0
	}
	return h.DiameterMM / (2 * math.Tan(h.PointDeg*math.Pi/360))
}

// ReachMM returns how deep the hole goes, cone and all, mm.
func (h Hole) ReachMM() float64 { return h.DepthMM + h.PointMM() }

// volumes are π d²/4 × depth and π d²/4 × d/(6 tan(point angle/2)), MODEL §8.
func (h Hole) volumes() (cylinder, cone float64) {
	area := math.Pi * h.DiameterMM * h.DiameterMM / 4
	return area * h.DepthMM, area * h.PointMM() / 3
}

// Metal returns what the drill takes out of metal of density rho, kg/m³, as if
// the hole stood in solid metal all the way. The inertia is exact: cylinder
// ½ m r², cone 3/10 m r² (r the drill's radius), and parallel axes, MODEL §9.
func (h Hole) Metal(rho float64) (Metal, error) {
	if err := h.Check(); err != nil {
		return Metal{}, err
	}
	if err := CheckDensity(rho); err != nil {
		return Metal{}, err
	}
	return h.unit().scale(rho * gramsPerMM3), nil
}

// unit is Metal at a density of 1 g/mm³, unchecked.
func (h Hole) unit() Metal {
	cylinder, cone := h.volumes()
	r2 := h.DiameterMM * h.DiameterMM / 4
	v := cylinder + cone
	about := (cylinder/2+cone*3/10)*r2 + v*h.At.Dot(h.At)
	return Metal{MassG: v, MomentGMM: h.At.Scale(v), InertiaGMM2: about}
}
