package wheel

import "pintwelve/core/bound"

// Field is the figure a fault is about.
type Field uint8

// The figures that can be faulty. Lengths are mm.
const (
	Density        Field = iota // kg/m³
	Diameter                    // outside
	Width                       // over all
	Bore                        // its diameter
	TurnedTo                    // diameter the rim is turned down to
	RingFrom                    // inner radius of a ring
	RingTo                      // outer radius of a ring
	RingDepth                   // from the face
	BossDiameter                // across
	BossPlace                   // from the shaft, or the gap to the next boss
	BossBelow                   // its top below the face
	HoleDiameter                // of the drill
	HoleDepth                   // to the shoulder
	HolePoint                   // degrees
	HolePlace                   // from the shaft
	HoleStart                   // where its depth is measured from
	WebLeft                     // metal left between the two faces
	HoleToBoreLeft              // metal left between a hole and the bore
	HoleToEdgeLeft              // metal left between a hole and the rim's edge
	HoleToHoleLeft              // metal left between two holes
)

// Detail says of a fault the radius where the web or a wall is too thin.
type Detail struct{ AtMM float64 }

// Fault says which figure will not do; Item is the boss, hole or ring, rings turned counting on
// from those as made.
type Fault = bound.Fault[Field, Detail]

func within(f Field, got, least, most float64) error { return withinItem(f, 0, got, least, most) }

func withinItem(f Field, item int, got, least, most float64) error {
	return bound.Within[Detail](f, item, got, least, most)
}
