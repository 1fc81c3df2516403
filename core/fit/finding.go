package fit

// Trouble is what an answer shows that the trade must hear of.
type Trouble uint8

// The troubles, with what Got and Limit are.
const (
	TightSpot      Trouble = iota + 1 // least clearance, mm, against 0
	HubYields                         // von Mises stress at the eye against its yield, MPa
	HubCracks                         // hoop tension at a brittle eye against its tensile strength, MPa
	PinYields                         // von Mises stress in the pin against its yield, MPa
	NotSelfHolding                    // half the taper against the friction
	NoPlayLeft                        // play in the bearing, mm, against 0
	SideStops                         // side clearance taken by the rock against what there is, mm
	BindsCold                         // end float as measured, mm, against 0
	BindsHot                          // end float hot, mm, against 0
	FloatOutside                      // end float against the nearer limit, mm
	RodOffCentre                      // off the cylinder's line against what is allowed, mm
)

// Finding is a trouble with its figure and the limit it breaks.
type Finding struct {
	Trouble    Trouble
	Got, Limit float64
}
