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
// hour. A blank counts as 0. Text that is wrong stays as it is.
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
	return field.stepped(v, r.division(name), by, field.UnitIn(f))
}

// stepped writes, in a unit, a figure moved by divisions and kept in the
// field's range.
func (field *Field) stepped(v, step float64, by int, in unit.Unit) string {
	v = math.Round(v/step+float64(by)) * step
	return unit.Figures(math.Min(math.Max(v, field.Min), field.Max), in, step)
}

// stepLast steps the last number of a list, or makes a new one where a
// separator behind the last says that the next is to come: it begins at the one
// before. The list keeps its separators and its unit.
func stepLast(f Form, name string, by int) string {
	text := f[name]
	field, _, _ := Job.Lookup(name)
	t := unit.TailOf(text)
	in := field.UnitIn(f)
	if u, ok := unit.Named(in.Kind(), t.Unit); ok {
		in = u
	} else if t.Unit != "" {
		return text
	}
	v := 0.0
	if t.Number != "" {
		var err error
		if v, err = unit.Parse(t.Number, in); err != nil {
			return text
		}
	}
	stepped := field.stepped(v, Read(f).division(name), by, in)
	if t.Number == "" || t.Unit == "" && t.Open() {
		return text + stepped
	}
	if t.Open() {
		return t.Before + t.Number + " " + stepped + t.Gap[1:] + t.Unit
	}
	return t.Before + stepped + t.Gap + t.Unit
}

// Next goes on in a list by one number, as Enter or a dial with a keyboard
// output does: a number that stands is closed, one passed over reads as the one
// before it. It returns the text up to where the next is to be typed, and what
// stands behind that place; with done the list, of which so many are wanted and
// at most so many may be read, has all.
func Next(f Form, name string, wanted, most int) (before, after string, done bool) {
	text := f[name]
	t := unit.TailOf(text)
	count := 0
	if field, _, ok := Job.Lookup(name); ok && t.Number != "" {
		all, err := unit.ParseList(text, field.UnitIn(f), field.Long)
		if err != nil {
			return text, "", true
		}
		count = len(all)
	}
	behind := ""
	if t.Unit != "" {
		behind = " " + t.Unit
	}
	switch passed := t.Number == "" || t.Open(); {
	case count >= most || count >= wanted && passed:
		return t.Before + t.Number + behind, "", true
	case t.Number == "":
		return "0 ", "", false
	case !passed:
		return t.Before + t.Number + t.Sign(), behind, false
	case t.Unit != "":
		return t.Before + t.Number + " " + t.Number + " ", behind, false
	default:
		return t.Before + t.Number + t.Gap + t.Number + t.Sign(), "", false
	}
}

// division is that of the dial which a field is read off.
func (r *Reader) division(name string) float64 { return r.Division(r.sideOf(name)) }

// sideOf is the side of the dial which a field is read off; at a further place
// along a shaft, that shaft's side.
func (r *Reader) sideOf(name string) string {
	for _, side := range sides {
		if strings.Contains("."+name+".", "."+side+".") {
			return side
		}
	}
	if _, place, more := strings.Cut(name, ".dial."); more {
		key, _, _ := strings.Cut(place, ".")
		return r.Word(DialHalf, key)
	}
	return sides[0]
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
// and with part 0 everything, comes to the very same value. A bare figure whose
// unit is in doubt stays as it was typed; one that would come into doubt gets
// its unit written behind it.
func InUnits(f Form, to string, part float64) Form {
	changes := Form{}
	r := Read(f)
	for name, text := range f {
		field, _, ok := Job.Lookup(name)
		if !ok || r.inDoubt(name, field) {
			continue
		}
		from, target := field.UnitIn(f), field.UnitIn(Form{Units.Name(): to})
		if from == target {
			continue
		}
		step := 0.0
		if field.readOffADial() {
			step = part * r.division(name)
		}
		if text, ok := inUnit(field, text, from, target, step); ok {
			changes[name] = text
		}
	}
	return changes.sure(f, to)
}

// sure writes units behind those of the changes that would be in doubt without.
func (changes Form) sure(f Form, to string) Form {
	after := Form{}
	for _, from := range [...]Form{f, changes, {Units.Name(): to}} {
		for name, text := range from {
			after[name] = text
		}
	}
	r := Read(after)
	for name, text := range changes {
		if field, _, ok := Job.Lookup(name); ok && r.inDoubt(name, field) {
			changes[name] = text + " " + field.UnitIn(after).Name()
		}
	}
	return changes
}

// readOffADial tells the fields in a dial's unit that hold readings from those
// that hold limits and what a dial is.
func (field *Field) readOffADial() bool {
	first, _, _ := strings.Cut(field.Pattern, ".")
	return field.ID != FoundRodAllowed && (first == "pass" || first == "found" || first == "cases")
}

func inUnit(field *Field, text string, from, to unit.Unit, step float64) (string, bool) {
	if field.Kind == List {
		return unit.ConvertList(text, from, to, field.Long, step)
	}
	return unit.Convert(text, from, to, step)
}

// HourText writes an hour as a tap on the clock face sets it.
func HourText(hour float64) string { return unit.FormatHour(hour, hourStep*60) }

// With returns the form with changes made to it.
func (f Form) With(changes Form) Form {
	all := make(Form, len(f)+len(changes))
	for _, from := range [...]Form{f, changes} {
		for name, text := range from {
			all[name] = text
		}
	}
	return all
}
