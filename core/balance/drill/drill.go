// Package drill finds the fewest holes, or heavy plugs, that take a moment off
// a wheel in size and direction: the drilling plan of core/MODEL.md §8.
//
// A hole takes off ρ π d²/4 × (depth to the shoulder + d/(6 tan(point angle/2))),
// a plug counts ρ_plug − ρ_wheel, and a pair at ±α pulls 2 m r cos α along the
// axis: TestHolesWorkedByHand, TestPlugWorkedByHand. Plans are proved against
// volumes summed in slices, TestRandomPlansAgainstIntegration, and the search
// against brute force, TestAgainstBruteForce.
//
// Conventions: lengths mm, weights g, densities kg/m³, moments g·mm; clock
// vectors have T towards 12 and N towards 3 seen from the left end, and hours
// are for that end.
//
// # What is searched
//
// Places are a grid: radii that are whole multiples of RadiusStepMM, and angles
// that are whole multiples of AngleStepDeg, up to MostOffDeg, to either side of
// the axis, which is where metal must come off (or a heavy plug go in). A
// drill may stand where the zone, the keep-outs and the wall let it. Depths are
// multiples of DepthStepMM that leave a floor of WallMM under the drill's
// point, or right through: of a wheel that isn't alike thick all over the zone, blind holes
// go by where it is thinnest, those right through by what stands under the drill, and none
// stands over an edge of the face.
//
// A set-up is one drill at one radius and one depth. The kinds of plan:
//
//   - Symmetric: one set-up; a hole on the axis or none, and pairs at ±α.
//   - TwoDepths: Symmetric, but the hole on the axis, or one pair, to another
//     depth.
//   - TwoSetUps: Symmetric, but the hole on the axis, or one pair, of a second
//     set-up of any drill, radius and depth.
//   - AnyAngles: one set-up, at any angles.
//   - TwoHoles: two holes, each of any set-up and at any angle.
//
// So of one and of two holes there is no plan in the grid that is not searched.
// Of three and more, those with three set-ups, or with two at angles that make
// no pairs, are not.
//
// # What is best
//
// Of the plans that leave no more than the tolerance: the fewest holes, then the
// kind first in that list, then the least left over, counted in whole tenths of
// the tolerance since nothing can show less. Among equals, the one first met: of
// one set-up from the outermost radius in and from the smallest drill up, of two
// from the strongest. When none is within the tolerance: the least left over, in
// tenths of the tolerance again, then the fewest holes, then the kind. The search
// is exact: no plan of these kinds in the grid is better by this measure.
package drill

import (
	"pintwelve/core/clock"
	"pintwelve/core/wheel"
)

// Circle is a round keep-out: a pin boss, a hole that is there already.
type Circle struct {
	At         clock.Vec // from the shaft, mm
	DiameterMM float64
}

// Zone is where a wheel may be drilled. A wall is kept from its inner and outer
// radius and from every keep-out; the half-angle bounds the holes' centres.
type Zone struct {
	InMM, OutMM float64
	Hour        float64
	HalfRad     float64 // π for all round
	Keep        []Circle
}

// Bottom says how a hole may end.
type Bottom uint8

// The bottoms allowed.
const (
	Either Bottom = iota
	ThroughOnly
	BlindOnly
)

// Task is a wheel to be drilled. Zero steps, tolerance aside, mean the defaults.
type Task struct {
	Zone
	DrillsMM     []float64 // diameters to hand
	PointDeg     float64   // of the drills; 0 or 180 for a flat bottom
	Bottom       Bottom
	ThickMM      float64 // of the wheel in the zone, at the least
	WallMM       float64 // least metal between holes, to any edge, and under a blind hole
	MostDepthMM  float64 // to the shoulder; 0 for what the wall leaves
	DensityKGM3  float64 // of the wheel
	PlugKGM3     float64 // of plugs that fill the holes to the shoulder; 0 for open holes
	MostHoles    int
	RadiusStepMM float64
	AngleStepDeg float64
	DepthStepMM  float64
	ToleranceGMM float64   // most that may be left over
	Remove       clock.Vec // to take off, g·mm; points to where metal is too much

	// Under tells of the wheel under a drill at a radius, where it is not ThickMM all over the
	// zone: how thick it is, 0 where it isn't alike thick all under the drill and no hole goes
	// right through there; and whether it is clear of the edges of its face, over which none
	// stands, since what one takes there isn't known. Nil for ThickMM and clear.
	Under func(radiusMM, drillMM float64) (throughMM float64, clear bool)
}

// The defaults, and how far from the axis a hole may stand.
const (
	DefaultRadiusStepMM = 1.0
	DefaultAngleStepDeg = 2.5 // five minutes of the clock face
	DefaultDepthStepMM  = 0.5
	MostOffDeg          = 60.0 // beyond it a pair does less than one hole on the axis
)

// Kind is a kind of plan, tidiest first.
type Kind uint8

// The kinds, as the package comment has them.
const (
	Symmetric Kind = iota
	TwoDepths
	TwoSetUps
	AnyAngles
	TwoHoles
)

// Hole is a hole of a plan. Its At, diameter, depth to the shoulder and Through
// are in the wheel.Hole.
type Hole struct {
	wheel.Hole
	RadiusMM float64
	Hour     float64 // seen from the left end
	OffRad   float64 // from the axis, clockwise seen from the left end
	MassG    float64 // taken off; under nothing where a heavy plug adds
	PlugG    float64 // weight of the plug that goes in, 0 for none
}

// Plan is the holes for one wheel, by angle across the axis.
type Plan struct {
	Kind      Kind
	Holes     []Hole
	MassG     float64   // taken off in all
	SwarfG    float64   // drilled out, plugs not counted
	MomentGMM clock.Vec // taken off in all
	LeftGMM   clock.Vec // of what was to be removed
	Reached   bool      // what is left is within the tolerance; else Task.Relaxations says what would help
	ReachGMM  float64   // the most that a symmetric plan here takes off, worked out when not reached
}

// Plan returns the best plan there is in the grid, or a *Fault. A moment within
// the tolerance needs no hole.
func (t Task) Plan() (Plan, error) {
	s, err := newSpace(t)
	if err != nil {
		return Plan{}, err
	}
	best, reached := s.search()
	p := s.plan(best)
	if p.Reached = reached; !reached {
		p.ReachGMM = s.mostGMM()
	}
	return p, nil
}
