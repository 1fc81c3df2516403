// Package bound is what the rooms' faults have in common: a figure that isn't
// between what would do. The words for the user are the sheet's.
package bound

import "strconv"

// Outside words a fault of a room for a developer: which of the room's figures,
// which of a list, what was given and what would do.
func Outside(room string, figure uint8, item int, got, least, most float64) string {
	return room + ": figure " + strconv.Itoa(int(figure)) + " [" + strconv.Itoa(item) + "] " + short(got) +
		" not in " + short(least) + " to " + short(most)
}

func short(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// First returns the first error there is.
func First(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
