package balance

import (
	"math"

	"pintwelve/core/bound"
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
	NothingWeighed              // neither a weighing nor a stated factor
	Removed                     // g·mm
	Unbalance                   // g·mm
)

// Detail says of a fault whether it is about the parts to be fitted, not those found.
type Detail struct{ After bool }

// Fault says which figure will not do; Item is the cylinder or the weighing.
type Fault = bound.Fault[Field, Detail]

func within(f Field, got, least, most float64) error { return withinItem(f, 0, got, least, most) }

func withinItem(f Field, item int, got, least, most float64) error {
	return bound.Within[Detail](f, item, got, least, most)
}

// above is within, with the lower end left out.
func above(f Field, got, least, most float64) error {
	return within(f, got, math.Nextafter(least, most), most)
}
