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

// Fault says which figure will not do, what was given and what would do.
// Got may be NaN or infinite when that is what was given.
type Fault struct {
	Field       Field
	Item        int // which boss, hole or ring, from 0; rings turned count on from those as made
	Got         float64
	Least, Most float64 // what would do, in the field's unit
	AtMM        float64 // radius where the web is too thin
}

// Error words the fault for a developer; the user's words are the sheet's.
func (f *Fault) Error() string {
	return bound.Outside("wheel", uint8(f.Field), f.Item, f.Got, f.Least, f.Most)
}

// within is written so that NaN fails it.
func within(f Field, got, least, most float64) error { return withinItem(f, 0, got, least, most) }

func withinItem(f Field, item int, got, least, most float64) error {
	if got >= least && got <= most {
		return nil
	}
	return &Fault{Field: f, Item: item, Got: got, Least: least, Most: most}
}
