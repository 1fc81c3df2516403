package draw

import (
	"math"
	"strconv"
)

// ThrowsPin is a crankpin of a crank of several: its place in mm from the left end,
// its throw in mm, and its hour with the first pin at 12.
type ThrowsPin struct{ At, Throw, Hour float64 }

// ThrowsDial is a dial, or a place that wants one: its letter, its place in mm from the left end.
type ThrowsDial struct {
	Letter string
	At     float64
}

// ThrowsView is a crank of several throws. Lengths are mm. Piece k lies between pins
// k − 1 and k, or goes to the crank's end there.
type ThrowsView struct {
	Prefix      string
	LeftEnd     Side
	Length, Rim float64 // Rim is the radius of the webs
	Pins        []ThrowsPin
	Lies        []Lie        // of each piece, its offset where its left end is; none draws the crank straight
	Dials       []ThrowsDial // from left to right
	Supports    []Fixture
	Factor      float64 // how many times the bend is drawn; 0 chooses a round one
	Chosen      int     // the pin whose clock face is shown, from 0; −1 for none
	Work        int     // the pin to work at first; −1 for none
}

// ThrowsHeight is the height of the viewBox of the crank from the side, ThrowsBendHeight
// that with the crank from above below it.
const (
	ThrowsHeight     = 188
	ThrowsBendHeight = throwsAbove + throwsRim + 34
)

// Places on the paper.
const (
	throwsEdge  = 26  // left and right of the crank
	throwsSide  = 94  // the axis, from the side alone
	throwsFirst = 118 // the axes of both views
	throwsAbove = 262
	throwsRim   = 44 // radius of the webs
	throwsPinY  = 64 // the pins' numbers below the axis
	throwsFoot  = 89 // of what is said of bend and sides: above, it would lie over the dials' letters
	throwsShaft = 7  // half thickness of shafts and pins
)

// throwsSheet is where the crank stands on the paper.
type throwsSheet struct {
	v            *ThrowsView
	along, up    float64 // units of the paper a mm
	factor       float64
	pin, web     float64 // half the length of a pin and the thickness of a web, mm
	edge, axisAt float64
	above        bool // seen from above
}

// newThrowsSheet lays a crank out about an axis; ok is false where its figures make none.
func newThrowsSheet(v *ThrowsView, axis float64) (s throwsSheet, ok bool) {
	if !v.drawable() {
		return s, false
	}
	s = throwsSheet{v: v, along: (Width - 2*throwsEdge) / v.Length, up: throwsRim / v.Rim, factor: v.RoundFactor(), edge: throwsEdge, axisAt: axis}
	apart := v.Length
	for i := 1; i < len(v.Pins); i++ {
		apart = math.Min(apart, v.Pins[i].At-v.Pins[i-1].At)
	}
	s.pin, s.web = 0.13*apart, 0.2*apart
	return s, true
}

// Throws draws the crank from the side, the first pin up. A rectangle with data-pin,
// counted from 1, lies over each pin for a finger. Figures that make no crank draw none.
func Throws(v ThrowsView) string {
	s, ok := newThrowsSheet(&v, throwsSide)
	if !ok {
		return ""
	}
	p := pen{make([]byte, 0, 8192)}
	p.openThrows(&s, ThrowsHeight, "The crank from the side, pin 1 up")
	p.throws(&s)
	p.foot(&s, throwsSide+throwsFoot)
	p.fingers(&s)
	return p.close()
}

// ThrowsBend draws the crank from the side and from above: what bends in the plane of
// the one hardly shows in the other. Figures that make no crank draw none.
func ThrowsBend(v ThrowsView) string {
	s, ok := newThrowsSheet(&v, throwsFirst)
	if !ok {
		return ""
	}
	p := pen{make([]byte, 0, 16384)}
	p.openThrows(&s, ThrowsBendHeight, "The crank from the side and from above")
	p.text("tx", middle, point{Width / 2, 17}, "From the side, pin 1 up")
	p.throws(&s)
	s.above, s.axisAt = true, throwsAbove
	p.text("tx", middle, point{Width / 2, throwsAbove - throwsRim - 10}, "From above")
	p.pieces(&s)
	p.foot(&s, ThrowsBendHeight-5)
	return p.close()
}

func (p *pen) openThrows(s *throwsSheet, height float64, title string) {
	p.open(s.v.Prefix, height, title)
	p.s("The left end is the ")
	p.s(s.v.LeftEnd.Name())
	p.s(" side. ")
	p.described()
}

// throws draws the view from the side, with its dials and the pins' numbers.
func (p *pen) throws(s *throwsSheet) {
	p.pieces(s)
	for i := range s.v.Pins {
		p.pinNumber(s, i)
	}
	p.throwDials(s)
}

// pieces draws the crank with its axis and what holds it.
func (p *pen) pieces(s *throwsSheet) {
	for k := range s.v.pieces() {
		p.piece(s, k)
	}
	for i := range s.v.Pins {
		p.throwPin(s, i)
	}
	p.line("ax", s.paper(0, 0).plus(-8, 0), s.paper(s.v.Length, 0).plus(8, 0))
	for _, f := range s.v.Supports {
		p.rest(s, f)
	}
}

// foot names both ends of the crank, and says how many times its bend is drawn.
func (p *pen) foot(s *throwsSheet, y float64) {
	p.text("tx", starts, point{4, y}, s.v.LeftEnd.Name())
	p.text("tx", ends, point{Width - 4, y}, (s.v.LeftEnd ^ 1).Name())
	p.bendNote(s.factor, y)
}

// drawable tells whether the figures make a crank: pins in their order within it.
func (v *ThrowsView) drawable() bool {
	last := 0.0
	for _, pin := range v.Pins {
		if !finite(pin.At, pin.Throw, pin.Hour) || pin.At <= last {
			return false
		}
		last = pin.At
	}
	return len(v.Pins) > 0 && finite(v.Length, v.Rim) && v.Rim > 0 && last < v.Length
}

func (v *ThrowsView) pieces() int { return len(v.Pins) + 1 }

// RoundFactor returns how many times the bend is drawn: the roundest exaggeration that
// keeps each axis within a fifth of a web, or Factor where that is given; 0 where there
// is no bend to show.
func (v *ThrowsView) RoundFactor() float64 {
	if len(v.Lies) != v.pieces() {
		return 0
	}
	if v.Factor > 0 {
		return v.Factor
	}
	worst := 0.0
	for k, l := range v.Lies {
		from, to := v.span(k)
		for _, at := range [2]float64{0, to - from} {
			worst = math.Max(worst, math.Max(math.Abs(l.OffsetT+at*l.SlopeT), math.Abs(l.OffsetN+at*l.SlopeN))/v.Rim)
		}
	}
	if !finite(worst) {
		return 0
	}
	return roundestFactor(worst)
}

// paper returns the point so far along the crank and above its axis, mm.
func (s *throwsSheet) paper(at, high float64) point {
	return point{s.edge + s.along*at, s.axisAt - s.up*high}
}

// axis returns the point of piece k's axis at a place along it.
func (s *throwsSheet) axis(k int, at float64) point {
	if s.factor == 0 {
		return s.paper(at, 0)
	}
	l := s.v.Lies[k]
	from, _ := s.v.span(k)
	if s.above {
		return s.paper(at, -s.factor*(l.OffsetN+l.SlopeN*(at-from)))
	}
	return s.paper(at, s.factor*(l.OffsetT+l.SlopeT*(at-from)))
}

// span is where a piece reaches: from the pin on its left, or the end, to that on its right.
func (v *ThrowsView) span(k int) (from, to float64) {
	to = v.Length
	if k > 0 {
		from = v.Pins[k-1].At
	}
	if k < len(v.Pins) {
		to = v.Pins[k].At
	}
	return from, to
}

// bar draws what lies about a piece's axis between two places, so thick either way.
func (p *pen) bar(s *throwsSheet, k int, from, to, half float64) [4]point {
	a, b := s.axis(k, from), s.axis(k, to)
	corners := [4]point{a.plus(0, -half), b.plus(0, -half), b.plus(0, half), a.plus(0, half)}
	p.poly("op", corners[:]...)
	return corners
}

// piece draws a shaft or journal with its webs.
func (p *pen) piece(s *throwsSheet, k int) {
	from, to := s.v.span(k)
	var webs [2]float64 // from, where there are
	if k > 0 {
		from += s.pin
		webs[0] = from
	}
	if k < len(s.v.Pins) {
		to -= s.pin
		webs[1] = to - s.web
	}
	p.bar(s, k, from, to, throwsShaft)
	for _, at := range webs {
		if at > 0 {
			web := p.bar(s, k, at, at+s.web, throwsRim)
			p.hatch(web[:], hatching(k%2 == 1))
		}
	}
}

// throwPin draws a pin in phase between its webs.
func (p *pen) throwPin(s *throwsSheet, i int) {
	pin := &s.v.Pins[i]
	n, t := math.Sincos(pin.Hour * math.Pi / 6)
	up := s.up * pin.Throw * t
	if s.above {
		up = -s.up * pin.Throw * n
	}
	a, b := s.axis(i, pin.At-s.pin).plus(0, -up), s.axis(i+1, pin.At+s.pin).plus(0, -up)
	p.poly("op", a.plus(0, -throwsShaft), b.plus(0, -throwsShaft), b.plus(0, throwsShaft), a.plus(0, throwsShaft))
}

// pinNumber numbers a pin below it.
func (p *pen) pinNumber(s *throwsSheet, i int) {
	at := s.paper(s.v.Pins[i].At, 0).plus(0, throwsPinY)
	if i == s.v.Chosen {
		p.circle("ol", at.plus(0, -7), 12)
	}
	class := "tx tb"
	if i == s.v.Work {
		class = "tx tm"
	}
	p.text(class, middle, at, strconv.Itoa(i+1))
}

// throwDials draws the dials, those whose letters would run together in two rows.
func (p *pen) throwDials(s *throwsSheet) {
	last, low := math.Inf(-1), false
	for _, d := range s.v.Dials {
		if !finite(d.At) || d.At <= 0 || d.At >= s.v.Length {
			continue
		}
		k := 0
		for k < len(s.v.Pins) && s.v.Pins[k].At < d.At {
			k++
		}
		at, y := s.axis(k, d.At), s.axisAt-77
		if low = !low && at.x-last < 32; low {
			y += 22
		}
		last = at.x
		p.line("th", point{at.x, y + 3}, at.plus(0, -throwsShaft))
		p.poly("fi", at.plus(0, -throwsShaft), at.plus(-4, -throwsShaft-8), at.plus(4, -throwsShaft-8))
		p.text("tx tb", middle, point{at.x, y}, d.Letter)
	}
}

// rest draws what holds the crank.
func (p *pen) rest(s *throwsSheet, f Fixture) {
	if !finite(f.At) || f.At < 0 || f.At > s.v.Length {
		return
	}
	at := s.paper(f.At, 0)
	out := 20.0
	if f.At < s.v.Pins[0].At {
		out = -out
	}
	switch f.Kind {
	case CentreAt:
		p.poly("th", at, at.plus(out, -9), at.plus(out, 9))
	case VBlockAt:
		p.poly("th", at.plus(0, throwsShaft), at.plus(10, throwsShaft+18), at.plus(-10, throwsShaft+18))
	case BearingAt:
		for _, y := range [2]float64{-throwsShaft - 12, throwsShaft} {
			p.bearing(at.plus(-6, y), 12)
		}
	}
}

// fingers lays over each pin what a finger may touch for it.
func (p *pen) fingers(s *throwsSheet) {
	from := 0.0
	for i, pin := range s.v.Pins {
		to := float64(Width)
		if i+1 < len(s.v.Pins) {
			to = s.paper((pin.At+s.v.Pins[i+1].At)/2, 0).x
		}
		p.s(`<rect data-pin="`)
		p.s(strconv.Itoa(i + 1))
		p.s(`" pointer-events="all"`)
		p.a("x", from)
		p.a("y", 0)
		p.a("width", to-from)
		p.a("height", ThrowsHeight)
		p.s("/>")
		from = to
	}
}
