package lighten

import (
	"math"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/wheel"
)

// cutRow is one row of "made" or of "cut".
type cutRow struct {
	group     string // "made" or "cut"
	key       string
	at        string // "cut.k3y."
	nth       string // "1"
	cut       flywheel.Cut
	on        [2]bool  // drive, timing
	finding   bool     // a figure is to be found for a weight
	find      form.ID  // which
	findWords string   // "the depth"
	lacks     []string // what is still to be given
	wrong     bool
}

// keys are those of one of the row's fields.
func (c *cutRow) keys(id form.ID) []string {
	if id == form.CutRim || id == form.CutKind || id == form.MadeKind { // not alike for both groups
		return []string{c.key}
	}
	return []string{c.group, c.key}
}

// field is the name of one of the row's fields in the job.
func (c *cutRow) field(id form.ID) string { return id.Name(c.keys(id)...) }

func (c *cutRow) ready() bool { return len(c.lacks) == 0 && !c.wrong }

// vary is what the wheel's room calls the figure to be found.
func (c *cutRow) vary() flywheel.Vary {
	switch c.find {
	case form.CutDepth:
		return flywheel.VaryDepth
	case form.CutHoles:
		return flywheel.VaryNumber
	}
	return flywheel.VaryDiameter
}

func (l *lightening) readRows(group string, name func(nth string) string) []*cutRow {
	var rows []*cutRow
	for n, key := range l.r.Form.Rows(group) {
		row := &cutRow{group: group, key: key, at: group + "." + key + ".", nth: strconv.Itoa(n + 1)}
		l.Say(row.at+"name", name(row.nth))
		on := l.r.Word(form.CutWheel, group, key)
		row.on = [2]bool{on != "timing", on != "drive"}
		l.readCut(row)
		if row.finding && (group != "cut" || l.wantedG == 0) {
			row.lacks = append(row.lacks, row.findWords)
		}
		rows = append(rows, row)
	}
	return rows
}

func (l *lightening) side(id form.ID, keys ...string) wheel.Side {
	if l.r.Word(id, keys...) == "inner" {
		return wheel.Inner
	}
	return wheel.Outer
}

// readCut reads the figures that a cut of its kind has.
func (l *lightening) readCut(row *cutRow) {
	c := &row.cut
	of := form.CutKind
	if row.group == "made" {
		of = form.MadeKind
	}
	kind := l.r.Word(of, row.key)
	if kind == "rim" {
		c.Kind, c.ToDiameterMM = flywheel.TurnRim, l.need(row, form.CutRim, lacksRim)
		return
	}
	c.Side = l.side(form.CutSide, row.group, row.key)
	switch kind {
	case "holes", "blind":
		c.Kind, c.Through = flywheel.HoleRing, kind == "holes"
		holes := l.need(row, form.CutHoles, lacksHoles)
		if c.Number = int(holes); holes != math.Floor(holes) {
			row.wrong = true
			l.r.Complain(holesComeWhole, form.CutHoles, row.group, row.key)
		}
		c.PitchMM = l.need(row, form.CutCircle, lacksCircle) / 2
		c.DiameterMM = l.need(row, form.CutDrill, lacksDrill)
		if row.find != form.CutHoles || !row.finding || !l.r.Blank(form.CutFirst, row.keys(form.CutFirst)...) {
			l.setFirst(row, c)
		}
		if c.Through {
			return
		}
		c.PointDeg = l.r.Default(form.CutPoint, row.group, row.key)
	case "face":
		c.Kind = flywheel.FaceSide
	default:
		c.Kind = flywheel.Recess
		if kind == "bevel" {
			c.Kind, c.DeepInside = flywheel.Bevel, l.r.Word(form.CutDeep, row.group, row.key) == "middle"
		}
		c.FromMM, c.ToMM = l.need(row, form.CutFrom, lacksFrom)/2, l.need(row, form.CutTo, lacksTo)/2
	}
	c.DepthMM = l.need(row, form.CutDepth, lacksDepth)
}

// need reads a figure that the cut can't be made without. One that is left
// blank is to be found, if a weight settles it.
func (l *lightening) need(row *cutRow, id form.ID, words string) float64 {
	v, ok := l.r.Number(id, row.keys(id)...)
	switch {
	case ok:
	case l.r.Wrong(id, row.keys(id)...):
		row.wrong = true
	case !row.finding && id != form.CutFrom && id != form.CutTo && id != form.CutCircle:
		row.finding, row.find, row.findWords = true, id, words
	default:
		row.lacks = append(row.lacks, words)
	}
	return v
}

// complain puts what a room says of a wheel or a cut beside the figure it is about.
func (l *lightening) complain(w *lightened, err error) {
	id, row := form.WheelBore, (*cutRow)(nil)
	if c, ok := err.(*flywheel.CutFault); ok {
		row, err = w.rows[c.Cut], c.Err
		id = row.main()
	}
	if e, ok := err.(*wheel.Fault); ok {
		id = fieldOf(e.Field, row != nil, id)
	}
	keys := []string{w.side}
	if row != nil {
		keys = row.keys(id)
	}
	words, size := "", bench.AsTyped(l.r, finest, id, keys...)
	switch e := err.(type) {
	case *wheel.Fault:
		words = flaw(e, id, size)
	case *flywheel.Fault:
		_, most := id.Range(e.Least, e.Most)
		words = willDo(size(e.Got), size(e.Least), size(most))
	}
	if row != nil && !l.alike {
		words = onThisWheel(w.side, words)
	}
	l.r.Complain(words, id, keys...)
}

// fieldOf is where a wheel's figure stands, one of a cut or of the wheel as it came; any
// other stands where orElse says.
func fieldOf(f wheel.Field, ofCut bool, orElse form.ID) form.ID {
	switch {
	case ofCut && f == wheel.RingFrom:
		return form.CutFrom
	case ofCut && f == wheel.RingTo:
		return form.CutTo
	case !ofCut && f >= wheel.HoleDiameter:
		return form.WheelPinHole
	case !ofCut && f >= wheel.BossDiameter:
		return form.WheelBoss
	}
	return orElse
}

// main is the figure of a cut that makes it larger or smaller.
func (c *cutRow) main() form.ID {
	switch c.cut.Kind {
	case flywheel.TurnRim:
		return form.CutRim
	case flywheel.HoleRing:
		return form.CutDrill
	}
	return form.CutDepth
}

// flaw words what is wrong with a wheel, beside one of its figures and in its unit.
func flaw(f *wheel.Fault, id form.ID, mm func(v float64) string) string {
	got, least := f.Got, f.Least
	_, most := id.Range(least, f.Most)
	words := willDo
	switch f.Field {
	case wheel.RingFrom, wheel.RingTo:
		got, least, most = 2*got, 2*least, 2*f.Most
		words = outsideWheel
		if f.Got < f.Least && f.Field == wheel.RingFrom {
			words = throughBore
		} else if f.Got < f.Least {
			words = underInner
		}
	case wheel.BossPlace:
		words = pinStands
	case wheel.WebLeft:
		return noMetalAt(mm(2 * f.Detail.AtMM))
	case wheel.HoleToBoreLeft:
		return runsIntoBore
	case wheel.HoleToEdgeLeft:
		return breaksOut
	case wheel.HoleToHoleLeft:
		return runIntoAnother
	}
	return words(mm(got), mm(least), mm(most))
}
