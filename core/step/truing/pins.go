package truing

import (
	"slices"
	"strconv"
	"strings"

	"pintwelve/core/form"
)

// Pins returns the fields that make a crank of so many throws, each pin so many degrees
// on from the one before it; keys are for new rows, enough of them. A crank of twice as
// many throws as go into a turn is its own mirror image, as a flat four's 0, 180, 180, 0
// is (common practice, no source). Pins beyond the number go, with what was read at them.
func Pins(f form.Form, throws, apart int, keys []string) form.Form {
	rows := f.Rows("pin")
	changes := form.Form{}
	for _, key := range rows[min(max(throws-1, 0), len(rows)):] {
		for name := range f {
			if field, own, ok := form.Job.Lookup(name); ok && strings.Contains(field.Pattern, "pin.*.") && slices.Contains(own, key) {
				changes[name] = ""
			}
		}
	}
	for i := 1; i < throws; i++ {
		key := keys[i-1]
		if i <= len(rows) {
			key = rows[i-1]
		} else {
			changes[form.PinOrder.Name(key)] = strconv.Itoa(orderAfter(f, rows) + i)
		}
		pin := i
		if throws*apart == 2*turnDegrees && 2*i >= throws {
			pin = throws - 1 - i
		}
		changes[form.PinAngle.Name(key)] = strconv.Itoa(pin * apart % turnDegrees)
	}
	return changes
}

const turnDegrees = 360

// orderAfter is the order of the last row.
func orderAfter(f form.Form, rows []string) int {
	if len(rows) == 0 {
		return 0
	}
	return form.Whole(f[form.PinOrder.Name(rows[len(rows)-1])])
}
