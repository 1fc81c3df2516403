// Package dial turns what a dial gauge shows over one turn of the crank into
// the eccentricity of the shaft at that place (MODEL §2 and §6).
//
// Use, quick forms:
//
//	r, err := dial.HighSpot(from, runOut, hour, scale)           // run-out and the hour of the high spot
//	r, err := dial.HalfWay(from, runOut, rising, falling, scale) // run-out and the two half-way hours
//	hour := dial.Seen(dial.Front, dial.Up)                       // dial stands in front, highest with the pin up
//
// Full turns:
//
//	turn := dial.Turn{From: from, Hours: dial.Even(8, true), Values: mm, Division: d, Range: 100 * d}
//	fit, err := turn.Fit()                  // eccentricity, full movement, ovality, drift
//	noise := dial.Pool(d, &fit, &others…)   // over all turns of the job with this dial
//	r := fit.Reading(noise)                 // how sure it is
//
// A Reading's E, Cov, Nu, RunOut, Sigma and Unsure go into crank.Station as
// they are.
//
// Lengths are mm. A rising needle means that the shaft stands nearer. Hours
// given are those of the end they are seen from; every vector and hour that
// comes back is for the left end.
package dial

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Reading is one turn of a dial.
type Reading struct {
	E   clock.Vec // mm, eccentricity, left-end frame: the high spot lies along it
	Cov lsq.Cov   // mm², of E
	Nu  float64   // degrees of freedom behind Cov; 0 where it is known, not found from scatter

	RunOut float64 // mm, run-out as given or fitted; 2|E| unless Blind
	Sigma  float64 // mm, standard error of RunOut
	// Blind says that the run-out is too small for the dial to show where it is
	// high; E is then 0 and Cov as wide as the run-out.
	Blind bool
	// Unsure says that an oval shaft would pass into E unseen, so that E is never
	// sure, however small Cov is.
	Unsure bool
	Better Better
}

// Better is what would make a reading surer.
type Better struct {
	HalfWay    bool // the two half-way hours instead of the top, which is flat
	MorePoints bool // a full turn, or more points round it
	FinerDial  bool // a dial with a finer division
}

// Uncertainty returns that of E.
func (r Reading) Uncertainty() lsq.Uncertainty { return lsq.Uncertainty{Cov: r.Cov, Nu: r.Nu} }

// HalfWidth95 returns how far RunOut may be out, either way, at 95 % [mm].
func (r Reading) HalfWidth95() float64 { return lsq.Student95(r.Nu) * r.Sigma }

// Field names what was given to a function of this package.
type Field uint8

// The fields an Error may name.
const (
	RunOut Field = iota
	Hour
	Rising
	Falling
	Division
	HourStep
	Points // how many points, told apart by their hours
	Value  // one reading of a turn
	Range
)

// Error says which figure can't be used. What would do is always a finite
// number, of Least or more where HasLeast; for Falling it is also any hour other than
// Rising's. For the Hour or Value of a full turn, Index counts its points from 0.
type Error struct {
	Field    Field
	Index    int
	Given    float64
	Least    float64
	HasLeast bool
}

// Error names the field, for a log; the sheet words it for the user.
func (e *Error) Error() string {
	return "dial: can't use the " + [...]string{
		"run-out", "hour", "rising hour", "falling hour", "division", "hour step", "points", "reading", "range",
	}[e.Field]
}

// farthest is more mm, or hours, than any dial or clock shows.
const farthest = 1e6

func usable(x float64) bool { return math.Abs(x) <= farthest }
