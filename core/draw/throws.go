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

// ThrowsView is a crank of several throws from the side, the first pin up. Lengths
// are mm. Piece k lies between pins k − 1 and k, or goes to the crank's end there.
type ThrowsView struct {
	Prefix      string
	LeftEnd     Side
	Length, Rim float64 // Rim is the radius of the webs
	Pins        []ThrowsPin
	Rise        [][2]float64 // of each piece's axis at its two ends, towards 12; none draws the crank straight
	Dials       []ThrowsDial // from left to right
	Supports    []Fixture
	Chosen      int // the pin whose clock face is shown, from 0
	Work        int // the pin to work at first; −1 for none
}

// ThrowsHeight is the height of the viewBox.
const ThrowsHeight = 188

// Places on the paper.
const (
	throwsEdge  = 26  // left and right of the crank
	throwsAxis  = 94  // from above
	throwsRim   = 44  // radius of the webs
	throwsPinY  = 158 // baseline of the pins' numbers
	throwsNote  = 183
	throwsShaft = 7 // half thickness of shafts and pins
)

// throwsSheet is where the crank stands on the paper.
type throwsSheet struct {
	v         ThrowsView
	along, up float64 // units of the paper a mm
	factor    float64
	pin, web  float64 // half the length of a pin and the thickness of a web, mm

}

// Throws draws the crank. A rectangle with data-pin, counted from 1, lies over each pin
// for a finger. Figures that make no crank draw none.
func Throws(v ThrowsView) string {
	if !v.drawable() {
		return ""
	}
	s := throwsSheet{v: v, along: (Width - 2*throwsEdge) / v.Length, up: throwsRim / v.Rim, factor: v.factor()}
	apart := v.Length
	for i := 1; i < len(v.Pins); i++ {
		apart = math.Min(apart, v.Pins[i].At-v.Pins[i-1].At)
	}
	s.pin, s.web = 0.13*apart, 0.2*apart
	p := pen{make([]byte, 0, 8192)}
	p.open(v.Prefix, ThrowsHeight, "The crank from the side, pin 1 up")
	p.s("The left end is the ")
	p.s(v.LeftEnd.Name())
	p.s(" side. ")
	p.described()
	for k := range v.pieces() {
		p.piece(&s, k)
	}
	for i := range v.Pins {
		p.throwPin(&s, i)
	}
	p.line("ax", point{s.x(0) - 8, throwsAxis}, point{s.x(v.Length) + 8, throwsAxis})
	for _, f := range v.Supports {
		p.rest(&s, f)
	}
	p.throwDials(&s)
	p.text("tx", starts, point{4, 17}, v.LeftEnd.Name())
	p.text("tx", ends, point{Width - 4, 17}, (v.LeftEnd ^ 1).Name())
	p.bendNote(s.factor, throwsNote)
	p.fingers(&s)
	return p.close()
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

// factor is the roundest exaggeration that keeps each axis within a fifth of a web.
func (v *ThrowsView) factor() float64 {
	worst := 0.0
	for _, ends := range v.Rise {
		for _, y := range ends {
			worst = math.Max(worst, math.Abs(y)/v.Rim)
		}
	}
	if len(v.Rise) != v.pieces() || !finite(worst) {
		return 0
	}
	return roundestFactor(worst)
}

// x returns the paper's x of a place along the crank.
func (s *throwsSheet) x(at float64) float64 { return throwsEdge + s.along*at }

// axis returns the point of piece k's axis at a place along it.
func (s *throwsSheet) axis(k int, at float64) point {
	from, to := s.span(k)
	y := 0.0
	if s.factor > 0 {
		ends := s.v.Rise[k]
		y = ends[0] + (ends[1]-ends[0])*(at-from)/(to-from)
	}
	return point{s.x(at), throwsAxis - s.up*s.factor*y}
}

// span is where a piece reaches: from the pin on its left, or the end, to that on its right.
func (s *throwsSheet) span(k int) (from, to float64) {
	to = s.v.Length
	if k > 0 {
		from = s.v.Pins[k-1].At
	}
	if k < len(s.v.Pins) {
		to = s.v.Pins[k].At
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
	from, to := s.span(k)
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

// throwPin draws a pin in phase between its webs, and its number below.
func (p *pen) throwPin(s *throwsSheet, i int) {
	pin := &s.v.Pins[i]
	up := s.up * pin.Throw * math.Cos(pin.Hour*math.Pi/6)
	a, b := s.axis(i, pin.At-s.pin).plus(0, -up), s.axis(i+1, pin.At+s.pin).plus(0, -up)
	p.poly("op", a.plus(0, -throwsShaft), b.plus(0, -throwsShaft), b.plus(0, throwsShaft), a.plus(0, throwsShaft))
	at := point{s.x(pin.At), throwsPinY}
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
		at, y := s.axis(k, d.At), 17.0
		if low = !low && at.x-last < 32; low {
			y = 39
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
	at := point{s.x(f.At), throwsAxis}
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
			to = s.x((pin.At + s.v.Pins[i+1].At) / 2)
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
