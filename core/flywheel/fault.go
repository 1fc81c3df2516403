package flywheel

import (
	"strconv"

	"pintwelve/core/bound"
	"pintwelve/core/wheel"
)

// Field is the figure a fault is about.
type Field uint8

// The figures that can be faulty.
const (
	CutKind        Field = iota
	RimDiameter          // mm, that the rim is turned down to
	HoleNumber           // in one ring
	FirstHour            // from −12 to 12
	WantedOff            // g
	Varied               // the figure to find is none that this cut has
	LeastWall            // mm
	Density              // kg/m³
	Strength             // MPa
	Poisson              // Poisson's ratio
	Speed                // rev/min
	Mass                 // g
	MassPM               // g
	Arm                  // mm from the knife-edge to the centre of gravity
	ArmPM                // mm
	Reach                // mm from the centre of gravity to the rim
	PeriodGiven          // s
	PeriodSD             // s
	PeriodTooLong        // s, at small swings: no wheel of that size is so slow
	PeriodTooShort       // s, at small swings: nothing hung by that arm is so quick
	HalfSwing            // degrees
	Gravity              // m/s²
	TapCount             // too few passes
	TapTime              // s: not a time, or not after the one before; Item says which
	TapsUneven           // the scatter is too large a part of the gap between passes
	Passes               // passes of the mark in one swing there and back
	ClockStep            // s
	Inertia              // g·mm²
	IdleSpeed            // rev/min
	Gear                 // turns of the crank to one of the road wheel; Item says which
	TyreRadius           // mm
	Weight               // g, on the scale; Item 0 before, 1 after
	ScaleStep            // g
)

// Detail says of a period by how much the counting of swings is out: 2 when half
// the time would do, ½ when twice the time would; 0 when neither would.
type Detail struct{ Factor float64 }

// Fault says which figure will not do; Item as its Field says.
type Fault = bound.Fault[Field, Detail]

func within(f Field, got, least, most float64) error { return withinItem(f, 0, got, least, most) }

func withinItem(f Field, item int, got, least, most float64) error {
	return bound.Within[Detail](f, item, got, least, most)
}

// CutFault says which cut cannot be made. Err is a *Fault or a *wheel.Fault;
// rings turned come after those as made in its Item.
type CutFault struct {
	Cut int
	Err error
}

// Error words the fault for a developer.
func (f *CutFault) Error() string { return "cut " + strconv.Itoa(f.Cut) + ": " + f.Err.Error() }

// Unwrap returns what is wrong with the cut.
func (f *CutFault) Unwrap() error { return f.Err }

// Cannot says that no size of the cut takes the weight off.
type Cannot struct {
	WantedG       float64
	LeastG, MostG float64     // what it can give
	Most          Cut         // the cut that gives the most
	Wall          *wheel.Wall // the wall that stops it, as left by Most; or
	Err           error       // what is wrong with one any larger
}

// Error words the refusal for a developer.
func (c *Cannot) Error() string {
	return bound.Outside(uint8(WantedOff), 0, c.WantedG, c.LeastG, c.MostG)
}
