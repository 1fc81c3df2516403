package wheel

import "strconv"

// Field is the figure a fault is about.
type Field uint8

// The figures that can be faulty.
const (
	Density      Field = iota // kg/m³
	HoleDiameter              // mm
	HoleDepth                 // mm to the shoulder
	HolePoint                 // degrees
	HolePlace                 // mm from the shaft
	HoleMass                  // g
)

var fieldNames = [...]string{"density", "hole diameter", "hole depth", "hole point angle", "hole place", "hole mass"}

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
	Got         float64
	Least, Most float64 // what would do, in the field's unit
}

// Error words the fault for a developer; the user's words are the sheet's.
func (f *Fault) Error() string {
	return "wheel: " + f.Field.String() + " " + short(f.Got) + " not in " + short(f.Least) + " to " + short(f.Most)
}

func short(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// within is written so that NaN fails it.
func within(f Field, got, least, most float64) error {
	if got >= least && got <= most {
		return nil
	}
	return &Fault{Field: f, Got: got, Least: least, Most: most}
}
