package drill

import "strconv"

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

var fieldNames = [...]string{
	"zone's inner radius", "zone's outer radius", "zone's hour", "zone's half-angle", "room in the zone",
	"needed direction from the zone", "keep-outs", "keep-out's place", "keep-out's diameter", "drills", "drill", "point angle",
	"bottom", "thickness", "wall", "depth", "density", "plug density", "holes", "radius step", "angle step",
	"depth step", "tolerance", "moment to remove", "weight off", "scale step", "readings",
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
	Item        int // which drill or keep-out, from 0
	Got         float64
	Least, Most float64 // what would do, in the field's unit
}

// Error words the fault for a developer; the user's words are the sheet's.
func (f *Fault) Error() string {
	return "drill: " + f.Field.String() + " [" + strconv.Itoa(f.Item) + "] " + short(f.Got) +
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

// first returns the first error there is.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
