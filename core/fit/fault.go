package fit

import "pintwelve/core/bound"

// Field is the figure that a fault or a finding is about.
type Field uint8

// The figures. Lengths are mm, and a part's name alone is its diameter.
const (
	Pin Field = iota // crankpin, shaft or seat
	Eye              // hole that takes it: rod's eye, wheel's eye, housing
	BushBore
	BushOutside
	Roller
	Reading     // of a micrometer
	Step        // of a micrometer or gauge
	LeastWanted // the user's own limits
	MostWanted
	Diameter // of a joint
	Interference
	JointLength
	HubOutside
	Hollow // hole through a pin
	Friction
	Modulus // MPa
	Poisson
	Yield     // MPa
	Expansion // 1/K
	Torque    // N m
	Power     // kW
	Speed     // rev/min
	Factor
	Taper
	Temperature // °C
	Clearance   // wanted
	BearingBore
	BearingOut // its outside
	Track      // raceway
	Play       // inside a bearing
	OverWheels // width
	WheelWidth // one wheel, outer face to the mouth
	RodWidth   // big end
	Washers
	CaseFaces  // between them
	OverCrank  // width, shoulder to shoulder
	ShimSize   // thickness
	ShimStock  // how many of one size, or how many sizes
	ShimsASide // how many
	Middle     // place of the cylinder's line, or of the mouth's middle
	OffCentre  // how far the rod may stand off the cylinder's line
	Float
	Throw
	RimRadius
	Movement  // of a dial
	DialPlace // from the eye's middle
	SideClearance
	Cheek  // of the rod, beside its eye
	Height // reading on a bar
	Span   // between two readings on a bar
)

// Kind says in what way a figure won't do.
type Kind uint8

// The kinds of fault.
const (
	OutOfRange     Kind = iota // Got is not in Least to Most, or not a number
	TooBigForHole              // Got, the inner part, is not smaller than Most, the hole, where clearance is meant
	NoInterference             // Got, the interference, is 0 or a clearance where a press is meant
	TooBigForEye               // Got, the interference, is more than Most, which can be pressed
	NoWall                     // Got leaves no wall: the hub's outside not over Least, or the hollow not under Most
	NeverLoose                 // Got, the housing's expansion, is not over Least, the race's
	TooNarrow                  // Got, over the wheels, is not over Least, which wheels and rod take between them
	RollersTooBig              // Got, the pin with a roller on each side, doesn't go into Most, the eye
	NoRoom                     // Got, over the crank, is more than Most, between the faces
	Astray                     // Got, a reading, is outside Least to Most, which the others of its part leave
)

// Detail is the kind of a fault.
type Detail struct{ Kind Kind }

// Fault says which figure will not do.
type Fault = bound.Fault[Field, Detail]

func within(f Field, got, least, most float64) error { return withinItem(f, 0, got, least, most) }

func withinItem(f Field, item int, got, least, most float64) error {
	return bound.Within[Detail](f, item, got, least, most)
}

// length checks a length that must be there.
func length(f Field, got float64) error { return within(f, got, LeastMM, MostMM) }
