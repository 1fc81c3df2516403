// Package crank works out how the two halves of a built-up crank sit from what
// the dials show, what to do about it, and what the dials should show then
// (MODEL §3 to §7).
//
// e is what a dial finds, l and a from the centre to the middle of the pin and to
// the dial, R the throw, r the rim, x along the shafts and m the middle of the pin:
//
//	d = e_R l_R/a_R − e_L l_L/a_L, g = e_L/a_L + e_R/a_R, between centres, one
//	    dial each; in general by weighted least squares
//	    by hand, TestBetweenCentresByHand; gonum's QR, TestSolveAgreesWithGonumQR;
//	    exact bodies turned by full rotations, TestExactBodiesAreFound
//	strike for d_n, its arm R |sin φ|; squeeze or spread for g where the ray from
//	    the pin along θ meets the rim, s = −R cos θ + √(r² − R² sin² θ)
//	                                                 TestWhereToSqueezeAndSpread
//	forwards y_R = y_L + d − g (x − m)               TestNeedlesDoAsPredicted
//	own bearings: run-out about the line through them, tilt b less its slope
//	                                                 TestOwnCases
//	rim gaps g_t = (G12 − G6)/2r, g_n = (G3 − G9)/2r; straight-edge
//	    d_n = (s3 − s9)/2, d_t = s12 − (s3 + s9)/2   TestRimGapsByHand, TestStraightEdgeByHand
//	gain κ = (κ₀/4 + Σ wᵢ κᵢ)/(1/4 + Σ wᵢ)           TestGainsByHand
//	verdict by the decision rule of ISO 14253-1; run-out is twice the
//	    eccentricity, ISO 1101 and ASME Y14.5        TestCoverage
//	several throws: each piece by its own readings, as a half is; what these don't tell
//	    of all pieces, or gaps say too, over the row space of the equations; forecasts by
//	    arcs about the pins                             TestThrowsAreFound, exact bodies;
//	    gonum's QR and SVD, TestAssemblyAgreesWithGonumQR, TestAssemblyRankAgreesWithGonumSVD;
//	    either way, TestPiecesAloneAreAsTheyAreTogether
//
// Files: crank.go lengths; piece.go, scatter.go, uncertainty.go how a piece lies and
// how sure that is, solve.go how the halves sit by that; axes.go any station for any pose; move.go, advise.go, gauge.go
// what to do; pooled.go, learn.go, causes.go, mistake.go, plan.go the passes (section 7); shaft.go,
// slip.go, check.go what the dials can't be blamed for; assembly.go, assembled.go, rowspace.go,
// joints.go cranks of several throws (section 11).
//
// Frame: x [mm] along the shafts from the left end; vectors across them are
// clock.Vec, T towards the pin, N towards 3 seen from the left end. Every hour
// is for the left end. A half is a shaft and its wheel, taken as rigid; its
// axis is y(x) = A + B (x − m), m the middle of the pin. Angles are small, so
// slopes stand for them [rad].
package crank

import (
	"math"

	"pintwelve/core/clock"
)

// Mount is how the crank is held while it is turned.
type Mount uint8

// The mounts. On V-blocks and in its own bearings the support is a round part
// of the shaft itself; between centres it is a centre hole, which may stand off
// the shaft's axis.
const (
	Centres Mount = iota
	VBlocks
	OwnBearings
)

// Crank is the geometry of a crank and of its set-up, lengths in mm, places
// along x from the left end, arrays indexed by clock.Left and clock.Right.
type Crank struct {
	Throw   float64    // R, shaft centre to pin centre
	Rim     float64    // r, rim radius of the wheels
	Pin     float64    // m, middle of the pin
	Support [2]float64 // where each half is held while it is turned
	Bearing [2]float64 // where each half runs in the cases
	Mount   Mount
	// CentresKnown and Steady are what the user says of the set-up: the centres
	// are known to be good; with the tailstock backed off to just snug the needles
	// don't move.
	CentresKnown, Steady bool
}

// Length names a length of the set-up.
type Length uint8

// The lengths a LengthError may name.
const (
	Throw Length = iota
	Rim
	Pin
	Support
	Bearing
	DialAt
)

// LengthError says that a length can't be: which, as given, and what would do.
// A place or a length must lie above Above; where HasBelow it must also lie below Below.
type LengthError struct {
	Length   Length
	Half     clock.End // for Support, Bearing and DialAt
	Station  int       // for DialAt, its index
	Given    float64
	HasAbove bool
	Above    float64
	HasBelow bool
	Below    float64
}

// Error names the length, for a log; the sheet words it for the user.
func (e *LengthError) Error() string {
	return "crank: impossible " + [...]string{
		"throw", "rim radius", "pin middle", "support", "bearing", "dial place",
	}[e.Length]
}

// span is where a length must lie, both ends left out.
type span struct {
	above, below       float64
	hasAbove, hasBelow bool
}

func over(x float64) span       { return span{above: x, hasAbove: true} }
func under(x float64) span      { return span{below: x, hasBelow: true} }
func between(x, y float64) span { return span{above: x, below: y, hasAbove: true, hasBelow: true} }

// holds leaves a micron at both ends, so that no two places fall together.
func (s span) holds(x float64) bool {
	return usable(x) && (!s.hasAbove || x >= s.above+least) && (!s.hasBelow || x <= s.below-least)
}

func (s span) fault(l Length, half clock.End, station int, given float64) error {
	return &LengthError{
		Length: l, Half: half, Station: station, Given: given,
		HasAbove: s.hasAbove, Above: s.above, HasBelow: s.hasBelow, Below: s.below,
	}
}

// Check tells whether the lengths can be those of a crank; the error is a
// *LengthError.
func (c *Crank) Check() error {
	if s := over(0); !s.holds(c.Throw) {
		return s.fault(Throw, 0, 0, c.Throw)
	}
	if s := over(c.Throw); !s.holds(c.Rim) {
		return s.fault(Rim, 0, 0, c.Rim)
	}
	if !usable(c.Pin) {
		return span{}.fault(Pin, 0, 0, c.Pin)
	}
	for h := clock.Left; h <= clock.Right; h++ {
		s := c.side(h)
		if !s.holds(c.Support[h]) {
			return s.fault(Support, h, 0, c.Support[h])
		}
		if !s.holds(c.Bearing[h]) {
			return s.fault(Bearing, h, 0, c.Bearing[h])
		}
	}
	return nil
}

// side is where a half's shaft lies: left or right of the middle of the pin.
func (c *Crank) side(h clock.End) span {
	if h == clock.Left {
		return under(c.Pin)
	}
	return over(c.Pin)
}

// reach is where a dial can stand on a half: between centres the shaft ends at
// the centre, on V-blocks and bearings it may stick out beyond them.
func (c *Crank) reach(h clock.End) span {
	switch {
	case c.Mount != Centres:
		return c.side(h)
	case h == clock.Left:
		return between(c.Support[h], c.Pin)
	}
	return between(c.Pin, c.Support[h])
}

const (
	least = 1e-3 // mm, nearer than this two places are one
	most  = 1e6  // mm, no length or reading of a crank is so long
)

func usable(x float64) bool { return math.Abs(x) <= most }
