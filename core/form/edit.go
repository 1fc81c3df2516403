package form

import (
	"math"
	"strings"

	"pintwelve/core/unit"
)

// hourStep is how far one step moves an hour, and how finely a tap sets one.
const hourStep = 0.25

// Step returns the text of a field one step up or down (by is 1 or −1): a
// dial's own division for what is read off a dial, a quarter of an hour for an
// hour. A blank counts as nil. Text that is wrong stays as it is.
func Step(f Form, name string, by int) string {
	field, _, ok := Job.Lookup(name)
	if ok && field.Kind == List {
		return stepLast(f, name, by)
	}
	if !ok || field.Kind != Quantity {
		return f[name]
	}
	r := Read(f)
	v, ok := r.number(field, name)
	if !ok && r.typed(name) != "" {
		return f[name]
	}
	if field.Unit == unit.OClock {
		return unit.FormatHour(v+float64(by)*hourStep+12, hourStep*60)
	}
	step := r.division(name)
	return field.stepped(f, v, step, by)
}

// stepped writes a figure moved by divisions and kept in the field's range.
func (field *Field) stepped(f Form, v, step float64, by int) string {
	v = math.Round(v/step+float64(by)) * step
	return unit.Figures(math.Min(math.Max(v, field.Min), field.Max), field.UnitIn(f), step)
}

// stepLast steps the last entry of a list, or makes a new one where a blank
// after the last says that the next is to come: it begins at the one before.
func stepLast(f Form, name string, by int) string {
	text := f[name]
	entries := strings.FieldsFunc(text, unit.IsSpace)
	last := "0"
	if len(entries) > 0 {
		last = entries[len(entries)-1]
	}
	before := text
	if text != "" && !strings.HasSuffix(text, " ") {
		before = strings.TrimSuffix(text, last)
	}
	field, _, _ := Job.Lookup(name)
	v, err := unit.Parse(last, field.UnitIn(f))
	if err != nil {
		return text
	}
	return before + field.stepped(f, v, Read(f).division(name), by)
}

// division is that of the dial which a field is read off; at a further place
// along a shaft, the dial of that shaft's side.
func (r *Reader) division(name string) float64 {
	for _, side := range sides {
		if strings.Contains(name, "."+side+".") {
			return r.Division(side)
		}
	}
	if _, place, more := strings.Cut(name, ".dial."); more {
		key, _, _ := strings.Cut(place, ".")
		return r.Division(r.Word(DialHalf, key))
	}
	return r.Division(sides[0])
}

// Division returns the division [mm] of the dial on a side: with one dial
// carried across, the first side's.
func (r *Reader) Division(side string) float64 {
	if r.Word(Dials) == "one" {
		side = sides[0]
	}
	return r.Default(ShaftDivision, side)
}

// InUnits returns the fields whose text must change so that the form means the
// same in other units ("inch" or "metric"). What was read off a dial comes no
// finer than to that part of its dial's division, within half of it; all else,
// and with part 0 everything, comes to the very same value.
func InUnits(f Form, to string, part float64) Form {
	changes := Form{}
	r := Read(f)
	for name, text := range f {
		field, _, ok := Job.Lookup(name)
		if !ok {
			continue
		}
		from, target := field.UnitIn(f), field.UnitIn(Form{"units": to})
		if from == target {
			continue
		}
		step := 0.0
		if readOffADial(name) {
			step = part * r.division(name)
		}
		if text, ok := inUnit(field, text, from, target, step); ok {
			changes[name] = text
		}
	}
	return changes
}

// readOffADial tells the fields in a dial's unit that hold readings from those
// that hold limits and what a dial is.
func readOffADial(name string) bool {
	for _, group := range [...]string{"pass.", "found.", "cases."} {
		if strings.HasPrefix(name, group) {
			return name != "found.rodallowed"
		}
	}
	return false
}

func inUnit(field *Field, text string, from, to unit.Unit, step float64) (string, bool) {
	if field.Kind == List {
		return unit.ConvertList(text, from, to, field.Long, step)
	}
	return unit.Convert(text, from, to, step)
}

// HourText writes an hour as a tap on the clock face sets it.
func HourText(hour float64) string { return unit.FormatHour(hour, hourStep*60) }
