package sheet

import (
	"math"
	"strconv"

	"pintwelve/core/flywheel"
	"pintwelve/core/wheel"
)

// cutRow is one row of "made" or of "cut".
type cutRow struct {
	at        string // "cut.k3y."
	nth       string // "1"
	cut       flywheel.Cut
	on        [2]bool  // drive, timing
	find      string   // the figure that is to be found for a weight: "depth"; "" for none
	findWords string   // "the depth"
	lacks     []string // what is still to be given
	wrong     bool
}

func (c *cutRow) ready() bool { return len(c.lacks) == 0 && !c.wrong }

// vary is what the wheel's room calls the figure to be found.
func (c *cutRow) vary() flywheel.Vary {
	switch c.find {
	case "depth":
		return flywheel.VaryDepth
	case "holes":
		return flywheel.VaryNumber
	}
	return flywheel.VaryDiameter
}

func (l *lightening) readRows(group, name string) []*cutRow {
	var rows []*cutRow
	for n, key := range l.r.Form.Rows(group) {
		row := &cutRow{at: group + "." + key + ".", nth: strconv.Itoa(n + 1)}
		l.say(row.at+"name", name+" %", row.nth)
		on := l.r.Word(row.at + "wheel")
		row.on = [2]bool{on != "timing", on != "drive"}
		l.readCut(row)
		if row.find != "" && (group != "cut" || l.wantedG == 0) {
			row.lacks = append(row.lacks, row.findWords)
		}
		rows = append(rows, row)
	}
	return rows
}

func (l *lightening) side(name string) wheel.Side {
	if l.r.Word(name) == "inner" {
		return wheel.Inner
	}
	return wheel.Outer
}

// readCut reads the figures that a cut of its kind has.
func (l *lightening) readCut(row *cutRow) {
	c := &row.cut
	kind := l.r.Word(row.at + "kind")
	if kind == "rim" {
		c.Kind, c.ToDiameterMM = flywheel.TurnRim, l.need(row, "rim", "the new diameter")
		return
	}
	c.Side = l.side(row.at + "side")
	switch kind {
	case "holes", "blind":
		c.Kind, c.Through = flywheel.HoleRing, kind == "holes"
		holes := l.need(row, "holes", "the number of holes")
		if c.Number = int(holes); holes != math.Floor(holes) {
			row.wrong = true
			l.r.Complain(row.at+"holes", "holes come whole: write 6, or 8")
		}
		c.PitchMM = l.need(row, "circle", "the circle’s diameter") / 2
		c.FirstHour = l.hour(l.r.Default(row.at + "first"))
		c.DiameterMM = l.need(row, "drill", "the drill")
		if c.Through {
			return
		}
		c.PointDeg = l.r.Default(row.at + "point")
	case "face":
		c.Kind = flywheel.FaceSide
	default:
		c.Kind = flywheel.Recess
		if kind == "bevel" {
			c.Kind, c.DeepInside = flywheel.Bevel, l.r.Word(row.at+"deep") == "middle"
		}
		c.FromMM, c.ToMM = l.need(row, "from", "the inner diameter")/2, l.need(row, "to", "the outer diameter")/2
	}
	c.DepthMM = l.need(row, "depth", "the depth")
}

// need reads a figure that the cut can't be made without. One that is left
// blank is to be found, if a weight settles it.
func (l *lightening) need(row *cutRow, name, words string) float64 {
	v, ok := l.r.Number(row.at + name)
	switch {
	case ok:
	case l.r.Wrong(row.at + name):
		row.wrong = true
	case row.find == "" && name != "from" && name != "to" && name != "circle":
		row.find, row.findWords = name, words
	default:
		row.lacks = append(row.lacks, words)
	}
	return v
}

// blame puts what a room says of a wheel or a cut beside the figure it is about.
func (l *lightening) blame(w *lightened, err error) {
	name, row := w.at("bore"), (*cutRow)(nil)
	if c, ok := err.(*flywheel.CutFault); ok {
		row, err = w.rows[c.Cut], c.Err
		name = row.at + row.main()
	}
	words := ""
	switch e := err.(type) {
	case *wheel.Fault:
		words = flaw(e)
		switch {
		case row != nil && e.Field == wheel.RingFrom:
			name = row.at + "from"
		case row != nil && e.Field == wheel.RingTo:
			name = row.at + "to"
		case row == nil && e.Field >= wheel.HoleDiameter:
			name = w.at("pinhole")
		case row == nil && e.Field >= wheel.BossDiameter:
			name = w.at("boss")
		}
	case *flywheel.Fault:
		words = fill(willDo, mm(e.Got), mm(e.Least), mm(e.Most))
	}
	if row != nil && !l.alike {
		words = fill("on the % wheel ", w.side) + words
	}
	l.r.Complain(name, words)
}

// main is the figure of a cut that makes it larger or smaller.
func (c *cutRow) main() string {
	switch c.cut.Kind {
	case flywheel.TurnRim:
		return "rim"
	case flywheel.HoleRing:
		return "drill"
	}
	return "depth"
}

const willDo = "% won’t do: % to % will"

// flaw words what is wrong with a wheel.
func flaw(f *wheel.Fault) string {
	got, least, most := f.Got, f.Least, f.Most
	template := willDo
	switch f.Field {
	case wheel.RingFrom, wheel.RingTo:
		got, least, most = 2*got, 2*least, 2*most
		template = "% lies outside the wheel: % to % will do"
		if f.Got < f.Least && f.Field == wheel.RingFrom {
			template = "% goes through the bore: % to % will do"
		} else if f.Got < f.Least {
			template = "% is less than the inner diameter: % to % will do"
		}
	case wheel.BossPlace:
		template = "the crankpin stands % from the shaft: % to % will do"
	case wheel.WebLeft:
		return fill("no metal is left between the faces at ⌀ %", mm(2*f.AtMM))
	case wheel.HoleToBoreLeft:
		return "a hole runs into the bore"
	case wheel.HoleToEdgeLeft:
		return "a hole breaks out of the rim"
	case wheel.HoleToHoleLeft:
		return "the holes run into one another"
	}
	return fill(template, mm(got), mm(least), mm(most))
}
