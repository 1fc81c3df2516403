package balance

import (
	"math"
	"strconv"
)

// Field is the figure that a fault is about.
type Field uint8

// The figures that can be faulty. Item is the cylinder or the weighing, from 0.
const (
	Piston         Field = iota // g
	Rings                       // g
	GudgeonPin                  // g
	Clips                       // g
	SmallEnd                    // g
	BigEnd                      // g
	WholeRod                    // g
	RodEnds                     // g, both ends against the whole rod; Most allows for the scale's step
	Bearing                     // g
	Crankpin                    // g
	Reciprocating               // g, all of a cylinder's reciprocating parts
	Step                        // g, of the scale
	Cylinders                   // how many
	Throw                       // mm
	RodLength                   // mm
	Bank                        // rad
	Weighings                   // how many that go together
	PinCounted                  // times that the crankpin was on while wheels were weighed
	PinMissing                  // rods or a bearing on a wheel that has no pin
	Hung                        // g
	HeavyWeight                 // g
	HeavyRadius                 // mm
	HeavyHour                   // h
	FoundFactor                 // what the weights come to
	StatedFactor                // the maker's, where nothing was weighed
	TargetFactor                //
	Speed                       // rpm
	Grade                       // mm/s
	Mass                        // kg
	Angle                       // rad, of the crank or of the frame
	Points                      // on a loop
	RollingArm                  // mm
	NothingWeighed              // neither a weighing nor a stated factor
	Removed                     // g·mm
	Unbalance                   // g·mm
)

var fieldNames = [...]string{
	"piston", "rings", "gudgeon pin", "clips", "small end", "big end", "whole rod", "rod ends against whole rod",
	"bearing", "crankpin", "reciprocating weight", "scale step", "cylinders", "throw", "rod length", "bank angle",
	"weighings", "times the crankpin was on", "crankpin missing", "hung weight", "heavy spot's weight",
	"heavy spot's radius", "heavy spot's hour", "factor found", "factor stated", "target factor", "speed", "grade",
	"mass", "angle", "points", "rolling arm", "nothing weighed", "moment removed", "unbalance",
}

// String names the figure for a developer.
func (f Field) String() string {
	if int(f) < len(fieldNames) {
		return fieldNames[f]
	}
	return "figure " + strconv.Itoa(int(f))
}

// Fault says which figure will not do, what was given and what would do.
// Got may be NaN or infinite when that is what was given.
type Fault struct {
	Field       Field
	Item        int  // which cylinder or weighing, from 0
	After       bool // of the parts to be fitted, not those found
	Got         float64
	Least, Most float64 // what would do, in the field's unit
}

// Error words the fault for a developer; the user's words are the sheet's.
func (f *Fault) Error() string {
	return "balance: " + f.Field.String() + " [" + strconv.Itoa(f.Item) + "] " + short(f.Got) +
		" not in " + short(f.Least) + " to " + short(f.Most)
}

func short(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// within is written so that NaN fails it.
func within(f Field, got, least, most float64) error { return withinItem(f, 0, got, least, most) }

func withinItem(f Field, item int, got, least, most float64) error {
	if got >= least && got <= most {
		return nil
	}
	return &Fault{Field: f, Item: item, Got: got, Least: least, Most: most}
}

// above is within, with the lower end left out.
func above(f Field, got, least, most float64) error {
	return within(f, got, math.Nextafter(least, most), most)
}

// first returns the first error there is.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
