package form

import (
	"math"
	"strings"

	"pintwelve/core/unit"
)

// Doubt is a text that may mean more than one thing, and what it may mean.
type Doubt struct {
	Name     string
	Meanings []Meaning
	Unit     bool // the unit is in doubt: nothing may be built on the figure
}

// Meaning is one thing that a text may mean: in few words, and as a text that
// means nothing else.
type Meaning struct{ Label, Text string }

// span is a range that figures of a field lie in, mm.
type span struct{ low, high float64 }

// Dials as they are made, by judgement: divisions of 1 µm to a twentieth of a
// millimetre, a turn of the needle of 0.1 to 10 mm.
var (
	divisionsMade = span{0.001, 0.05}
	sweepsMade    = span{0.1, 10}
)

// expected is the range of what a bare figure of a field could mean, and the
// division that it is read off by eye, or 0; ok is false where nothing is known
// of it.
//
// A needle tells nothing of less than half its division, a run-out of more than
// a turn of it is no crank’s, and nobody allows a fifth of that: by judgement.
func (r *Reader) expected(name string, f *Field) (s span, division float64, ok bool) {
	switch f.ID {
	case ShaftDivision:
		return divisionsMade, 0, true
	case ShaftSweep:
		return sweepsMade, 0, true
	case ReadingTIR, FoundRunOut, CasesRunOut:
		q, sweep := r.scale(name)
		return span{q / 2, sweep}, q, true
	case ReadingTurn:
		q, sweep := r.scale(name)
		return span{q / 2, sweep}, 0, true
	case Tolerance:
		q, sweep := r.scale(name)
		return span{q / 2, sweep / 5}, 0, true
	}
	return s, 0, false
}

// scale is the division of the dial that a field is read off, and one turn of
// its needle, mm, without keeping what stands in for them.
func (r *Reader) scale(name string) (division, sweep float64) {
	side := r.sideOf(name)
	quiet := Reader{Form: r.Form, sure: true}
	division = quiet.Division(side)
	if r.Form[Units.Name()] == "metric" && len(quiet.StandIns) > 0 {
		division = 0.01 // who reads millimetres has hundredths, though half a thou stands in
	}
	return division, quiet.Or(100*division, ShaftSweep, side)
}

// doubt keeps it where a bare figure, or the swing of a list, is none that the
// dial could show, and would be one in another unit. A figure that the field
// doesn't take could be in another unit alone.
func (r *Reader) doubt(name string, f *Field, takes bool) {
	if r.sure || r.doubted.has(name) || r.typed(name) == "" || f.Unit != unit.Thou {
		return
	}
	s, division, ok := r.expected(name, f)
	if !ok {
		return
	}
	own := f.UnitIn(r.Form)
	size, bare := sizeIn(r.Form[name], own, f)
	if !bare || takes && s.holds(size) && !between(size, division) {
		return
	}
	d := Doubt{Name: name, Unit: true}
	if takes {
		d.add(r.typed(name), own, f)
	}
	others := 0
	for _, u := range [...]unit.Unit{unit.Thou, unit.MM, unit.Inch} {
		if u == unit.Inch && size >= s.low {
			continue // inches are tiny figures
		}
		size, _ := sizeIn(r.Form[name], u, f)
		if u != own && s.holds(size) && (f.Kind == List || onMarks(size, u)) {
			d.add(r.typed(name), u, f)
			others++
		}
	}
	if others > 0 {
		r.keep(d)
	}
}

// inDoubt tells whether the unit of a field's text is in doubt.
func (r *Reader) inDoubt(name string, f *Field) bool {
	if f.Kind != Quantity && f.Kind != List {
		return false
	}
	r.doubt(name, f, true)
	return r.doubted.has(name)
}

// doubtHour keeps it where an hour may be minutes or a decimal. The two lie
// closer together than chalk marks, so that the answers may stand meanwhile.
func (r *Reader) doubtHour(name string) {
	d := Doubt{Name: name}
	for _, text := range unit.Hours(r.Form[name]) {
		d.Meanings = append(d.Meanings, Meaning{text, text})
	}
	if d.Meanings != nil && !r.sure && !r.doubted.has(name) {
		r.keep(d)
	}
}

// lightest is what a part of the crank that isn't small weighs at least, g, by judgement.
const lightest = 5

// tooLight tells of a bare weight that no such part has, as who weighs in kilograms writes it.
func (f *Field) tooLight(text string, grams float64) bool {
	switch f.ID {
	case PartPiston, PartGudgeon, PartSmall, PartBig, PartRod, PartBearing, PartCrankpin, LightenOff:
		return grams > 0 && grams < lightest && unitless(text)
	}
	return false
}

// unitless tells whether a figure was typed without its unit.
func unitless(text string) bool { return strings.IndexByte("0123456789.,", text[len(text)-1]) >= 0 }

// mostFactor is the largest balance factor that is taken, %.
const mostFactor = 150

// doubtFactor keeps it where a bare balance factor may be a part of one, as books
// write it: “0.66” for 66%. No crank is balanced to a hundredth of what it carries.
func (r *Reader) doubtFactor(name string, f *Field, percent float64) {
	if f.Unit != unit.PerCent || f.Max != mostFactor || !unitless(r.typed(name)) || percent <= 0 || 100*percent > mostFactor || r.sure || r.doubted.has(name) {
		return
	}
	d := Doubt{Name: name}
	for _, v := range [...]float64{100 * percent, percent} {
		text := unit.Format(v, unit.PerCent, 0.001)
		d.Meanings = append(d.Meanings, Meaning{text, text})
	}
	r.keep(d)
}

// InDoubt returns what the text of a field that was read may mean, likeliest
// first; none where it means one thing.
func (r *Reader) InDoubt(id ID, keys ...string) []Meaning {
	for _, d := range r.Doubts {
		if d.Name == r.Name(id, keys...) {
			return d.Meanings
		}
	}
	return nil
}

func (r *Reader) keep(d Doubt) {
	r.doubted.put(d.Name)
	r.Doubts = append(r.Doubts, d)
}

func (d *Doubt) add(text string, u unit.Unit, f *Field) {
	m := Meaning{Text: text + " " + u.Name()}
	if m.Label = m.Text; f.Kind == List {
		m.Label = allIn(u.Name())
	}
	d.Meanings = append(d.Meanings, m)
}

func (s span) holds(size float64) bool {
	const rounding = 1e-9
	return size == 0 || size >= s.low-rounding && size <= s.high+rounding
}

// sizeIn is a figure, or how far a list swings, in mm with the text read in a
// unit; bare is false where the text has a unit of its own.
func sizeIn(text string, u unit.Unit, f *Field) (size float64, bare bool) {
	read := func(u unit.Unit) (float64, bool) {
		if f.Kind == List {
			all, err := unit.ParseList(text, u, f.Long)
			return swing(all), err == nil
		}
		v, err := unit.Parse(text, u)
		return v, err == nil
	}
	size, ok := read(u)
	elsewhere := unit.MM
	if u == unit.MM {
		elsewhere = unit.Thou
	}
	other, _ := read(elsewhere)
	return size, ok && size != other
}

func swing(all []float64) float64 {
	least, most := math.Inf(1), math.Inf(-1)
	for _, v := range all {
		least, most = math.Min(least, v), math.Max(most, v)
	}
	return math.Max(most-least, 0)
}

// between tells a figure that lies between what can be told apart on a dial: by
// eye a division is halved, quartered or cut in five. Common practice, no source.
func between(mm, division float64) bool {
	return division > 0 && !isWhole(mm, division/4) && !isWhole(mm, division/5)
}

// onMarks tells a figure that somebody could have read in a unit: halves of a
// hundredth of a millimetre, tenths of a thou.
func onMarks(mm float64, u unit.Unit) bool {
	if u == unit.MM {
		return isWhole(mm, 0.005)
	}
	return isWhole(mm, 0.00254)
}

// isWhole tells a whole number of steps, within a twentieth of one.
func isWhole(mm, step float64) bool {
	n := mm / step
	return math.Abs(n-math.Round(n)) < 0.05
}
