// Package dial turns what a dial gauge shows over one turn of the crank into
// the eccentricity of the shaft at that place (model, sections 2 and 6).
//
// Use:
//
//	r, err := dial.HighSpot(from, runOut, hour, scale)          // run-out and the hour of the high spot
//	r, err := dial.HalfWay(from, runOut, rising, falling, scale) // run-out and the two half-way hours
//	hour := dial.Seen(dial.Front, dial.Up)                       // dial stands in front, highest with the pin up
//
// A Reading's E and Cov go into crank.Station as they are.
//
// Lengths are mm. A rising needle means that the shaft stands nearer. Hours
// given are those of the end they are seen from; every vector and hour that
// comes back is for the left end.
package dial

import (
	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Scale is what is known of how finely a dial was read. The zero value is an
// exact dial with exact hours.
type Scale struct {
	Division float64 // mm, one division of the dial
	HourStep float64 // hours between the clock marks an hour was read to
}

// QuarterStep is the hour step where only up, front, down and back are told
// apart.
const QuarterStep = 3.0

// Reading is one turn of a dial.
type Reading struct {
	E   clock.Vec // mm, eccentricity, left-end frame: the high spot lies along it
	Cov lsq.Cov   // mm², of E

	RunOut float64 // mm, run-out as given or fitted; 2|E| unless Blind
	// Blind says that the run-out is too small for the dial to show where it is
	// high; E is then nil and Cov as wide as the run-out.
	Blind bool
}

// Hour returns the hour of the high spot seen from the left end; it means
// nothing where the reading is Blind or E is nil.
func (r Reading) Hour() float64 { return r.E.Hour() }

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
)

// Error says which figure can't be used. What would do is always a finite
// number, of Least or more where HasLeast; for Falling it is also any hour other than
// Rising's.
type Error struct {
	Field    Field
	Given    float64
	Least    float64
	HasLeast bool
}

// Error names the field, for a log; the sheet words it for the user.
func (e *Error) Error() string {
	return "dial: can't use the " + [...]string{
		"run-out", "hour", "rising hour", "falling hour", "division", "hour step",
	}[e.Field]
}
