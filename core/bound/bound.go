// Package bound is what the rooms' faults have in common: a figure that isn't
// between what would do. The words for the user are the steps'.
package bound

import "strconv"

// Fault says which figure of a room will not do, what was given and what would do,
// in the figure's unit. Got may be NaN or infinite when that is what was given.
type Fault[Field ~uint8, Detail any] struct {
	Field            Field // one of the room's own
	Item             int   // which of a list, from 0
	Got, Least, Most float64
	Detail           Detail // what else the room tells of it
}

// Error words the fault for a developer.
func (f *Fault[Field, Detail]) Error() string {
	return Outside(uint8(f.Field), f.Item, f.Got, f.Least, f.Most)
}

// Within returns a *Fault unless a figure lies within its limits, which NaN never
// does.
func Within[Detail any, Field ~uint8](f Field, item int, got, least, most float64) error {
	if got >= least && got <= most {
		return nil
	}
	return &Fault[Field, Detail]{Field: f, Item: item, Got: got, Least: least, Most: most}
}

// Outside words a fault for a developer: which of a room's figures, which of a
// list, what was given and what would do.
func Outside(figure uint8, item int, got, least, most float64) string {
	return "figure " + strconv.Itoa(int(figure)) + " [" + strconv.Itoa(item) + "] " + short(got) +
		" not in " + short(least) + " to " + short(most)
}

func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// First returns the first error there is.
func First(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
