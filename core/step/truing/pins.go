package truing

import (
	"slices"
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
)

// Pins returns the fields that make a crank of so many throws, each pin so many degrees
// on from the one before it, with two places for a dial on each inner journal; keys are for
// new rows, mostPins of them for pins, then two a pin for dials. A crank of twice as
// many throws as go into a turn is its own mirror image, as a flat four's 0, 180, 180, 0
// is (common practice, no source). Pins beyond the number go, with what was read at them, and
// places where nothing stands yet.
func Pins(f form.Form, throws, apart int, keys []string) form.Form {
	pins, dials := f.Rows("pin"), f.Rows("dial")
	further := max(throws-1, 0)
	changes := form.Form{}
	for _, key := range pins[min(further, len(pins)):] {
		blank(changes, f, "pin.*.", key)
	}
	for _, key := range dials[min(2*further, len(dials)):] {
		if bare(f, key) {
			blank(changes, f, "dial.*.", key)
		}
	}
	for i := 1; i < throws; i++ {
		key := keys[i-1]
		if i <= len(pins) {
			key = pins[i-1]
		} else {
			changes[form.PinOrder.Name(key)] = strconv.Itoa(orderAfter(f, form.PinOrder, pins) + i)
		}
		pin := i
		if throws*apart == 2*turnDegrees && 2*i >= throws {
			pin = throws - 1 - i
		}
		changes[form.PinAngle.Name(key)] = strconv.Itoa(pin * apart % turnDegrees)
	}
	left := bench.ReadEnds(form.Read(f)).SideOf[clock.Left]
	for i := len(dials); i < 2*further; i++ {
		key := keys[mostPins+i]
		changes[form.DialOrder.Name(key)] = strconv.Itoa(orderAfter(f, form.DialOrder, dials) + i + 1)
		changes[form.DialHalf.Name(key)] = left
	}
	return changes
}

const (
	turnDegrees = 360
	mostPins    = 5 // beyond the first
)

// blank takes a row out, with what was read at it.
func blank(changes, f form.Form, group, key string) {
	for name := range f {
		if field, own, ok := form.Job.Lookup(name); ok && strings.Contains(field.Pattern, group) && slices.Contains(own, key) {
			changes[name] = ""
		}
	}
}

// bare tells whether nothing is known yet of a place for a dial.
func bare(f form.Form, key string) bool {
	for name, text := range f {
		if text != "" && strings.Contains(name, "dial."+key+".") && name != form.DialOrder.Name(key) && name != form.DialHalf.Name(key) {
			return false
		}
	}
	return true
}

// orderAfter is the order of the last row.
func orderAfter(f form.Form, id form.ID, rows []string) int {
	if len(rows) == 0 {
		return 0
	}
	return form.Whole(f[id.Name(rows[len(rows)-1])])
}
