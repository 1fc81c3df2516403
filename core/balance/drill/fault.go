package drill

import "pintwelve/core/bound"

// Field is the figure that a fault is about.
type Field uint8

// The figures that can be faulty.
const (
	ZoneIn     Field = iota // mm
	ZoneOut                 // mm
	ZoneHour                // h
	ZoneHalf                // rad
	ZoneRoom                // mm: Got is the widest hole there is room for, Least the smallest drill
	Direction               // rad: Got is how far the needed hour is from the zone's, Most its half-angle
	KeepOuts                // how many
	KeepAt                  // mm from the shaft
	KeepAcross              // mm
	Drills                  // how many
	Drill                   // mm
	Point                   // degrees
	Bottoms                 // not one of the bottoms
	Thick                   // mm
	Wall                    // mm
	Depth                   // mm: deeper than the wheel, or no depth left; Most is what would do
	Density                 // kg/m³
	Plug                    // kg/m³
	Holes                   // how many
	RadiusStep              // mm
	AngleStep               // degrees
	DepthStep               // mm
	Tolerance               // g·mm
	Remove                  // g·mm
	Swarf                   // g
	Step                    // g, of the scale
	Readings                // of the scale
)

// Fault says which figure will not do; Item is the drill or the keep-out.
type Fault = bound.Fault[Field, struct{}]

func within(f Field, got, least, most float64) error { return withinItem(f, 0, got, least, most) }

func withinItem(f Field, item int, got, least, most float64) error {
	return bound.Within[struct{}](f, item, got, least, most)
}
