package draw

import (
	"math"
	"strconv"
)

// FixtureKind is what stands at a place along the crank.
type FixtureKind uint8

// What may stand along the crank.
const (
	DialAt FixtureKind = iota
	CentreAt
	VBlockAt
	BearingAt
)

// Fixture is what holds or touches a shaft at a place along the crank, mm from its left end.
type Fixture struct {
	Kind FixtureKind
	At   float64
}

// Lie is how a half lies: its offset from the axis at the middle of the pin in
// mm, and its slope in mm per mm towards the right, each towards 12 (T) and
// towards 3 seen from the left end (N).
type Lie struct{ OffsetT, OffsetN, SlopeT, SlopeN float64 }

// BendView is the crank from the side, pin up, and from above, with its bend
// exaggerated. Lengths are mm; one that is absent or would make no crank is
// stood in for.
type BendView struct {
	Prefix                        string
	LeftEnd                       Side
	Length, PinMiddle, Rim, Throw float64
	Left, Right                   Lie
	Stations                      []Fixture
	// Factor is how many times the bend is drawn; 0 chooses a round one.
	Factor float64
}

// BendHeight is the height of the viewBox.
const BendHeight = 466

// bendSheet is where one view of the crank stands on the paper.
type bendSheet struct {
	v              BendView
	scale, x0, yc  float64
	width, between float64 // of the wheels, mm
	factor         float64
	above          bool
}

// Bend draws the crank from the side and from above.
func Bend(v BendView) string {
	p := pen{make([]byte, 0, 12288)}
	v = v.tidy()
	f := v.factor()
	p.open(v.Prefix, BendHeight, "The crank from the side and from above")
	p.s("The left end is the ")
	p.s(v.LeftEnd.Name())
	p.s(" side. ")
	if f > 0 {
		p.s("The bend is drawn ")
		p.factor(f)
		p.s(" times too big.")
	} else {
		p.s("The crank is drawn straight.")
	}
	p.described()
	s := newBendSheet(v, 78, 124)
	p.crank(&s, "From the side, pin up")
	s.above, s.yc = true, 340
	p.crank(&s, "From above")
	p.bendNote(f, BendHeight-7)
	return p.close()
}

// newBendSheet lays a tidy view out about an axis, its wheels so high at most.
func newBendSheet(v BendView, rim, axis float64) bendSheet {
	scale := min(336/v.Length, rim/v.Rim)
	return bendSheet{v: v, scale: scale, x0: (Width - scale*v.Length) / 2, yc: axis, factor: v.factor(), width: 0.34 * v.Rim, between: 0.32 * v.Rim}
}

// RoundFactor returns how many times the bend is drawn: the roundest that shows
// it and still draws a crank, or Factor where that is given; 0 where there is no
// bend to show.
func (v BendView) RoundFactor() float64 { return v.tidy().factor() }

func (p *pen) bendNote(f, y float64) {
	at := point{Width / 2, y}
	if f == 0 {
		p.text("tx", middle, at, "Drawn straight")
		return
	}
	p.text("tx", middle, at, "Bend drawn ×"+strconv.FormatFloat(f, 'f', -1, 64))
}

func (p *pen) factor(f float64) { p.b = strconv.AppendFloat(p.b, f, 'f', -1, 64) }

// tidy stands in for what is absent or would make no crank.
func (v BendView) tidy() BendView {
	within := func(x *float64, low, high, standIn float64) {
		if !finite(*x) || *x == 0 {
			*x = standIn
		}
		*x = clamp(*x, low, high)
	}
	within(&v.Length, 20, 5000, 240)
	within(&v.PinMiddle, 0.3*v.Length, 0.7*v.Length, v.Length/2)
	within(&v.Rim, 0.15*v.Length, 0.6*v.Length, 0.33*v.Length)
	within(&v.Throw, 0.3*v.Rim, 0.7*v.Rim, 0.5*v.Rim)
	for _, l := range [2]*Lie{&v.Left, &v.Right} {
		if !finite(l.OffsetT, l.OffsetN, l.SlopeT, l.SlopeN) {
			*l = Lie{}
		}
	}
	return v
}

// factor returns the roundest exaggeration that shows the bend and still draws
// a crank; 0 where there is none to show.
func (v BendView) factor() float64 {
	if finite(v.Factor) && v.Factor > 0 {
		return math.Min(v.Factor, 1e6)
	}
	// As shares of the rim radius; the wheels, leaning to one another, must not
	// touch.
	worst := 0.8 * max(math.Abs(v.Left.SlopeT-v.Right.SlopeT), math.Abs(v.Left.SlopeN-v.Right.SlopeN))
	for _, l := range [2]Lie{v.Left, v.Right} {
		for _, y := range [4]float64{l.OffsetT / v.Rim, l.OffsetN / v.Rim, l.SlopeT, l.SlopeN} {
			worst = math.Max(worst, math.Abs(y))
		}
	}
	return roundestFactor(worst)
}

// roundestFactor is the roundest exaggeration that draws a share of the rim radius
// as a fifth of it at most; 0 where there is none to show.
func roundestFactor(share float64) float64 {
	if share < 1e-7 {
		return 0
	}
	round := 1.0
	for decade := 1.0; decade < 1e6; decade *= 10 {
		for _, step := range [3]float64{1, 2, 5} {
			if decade*step*share <= 0.2 {
				round = decade * step
			}
		}
	}
	return round
}

// at returns the paper's x of a place along the crank.
func (s *bendSheet) at(x float64) float64 { return s.x0 + s.scale*x }

// lie returns offset and slope of a half on the paper, where y runs down:
// towards 6 from the side, towards 3 from above.
func (s *bendSheet) lie(right bool) (offset, slope float64) {
	l := s.v.Left
	if right {
		l = s.v.Right
	}
	if s.above {
		return l.OffsetN, l.SlopeN
	}
	return -l.OffsetT, -l.SlopeT
}

// half draws one half rigid where it lies and returns the ends of the pin's side
// at its inner face.
func (p *pen) half(s *bendSheet, right bool) (pin [2]point) {
	offset, slope := s.lie(right)
	sin, cos := math.Sincos(math.Atan(s.factor * slope))
	mid := point{s.at(s.v.PinMiddle), s.yc + s.scale*s.factor*offset}
	turn := func(q point) point { // units of the paper from the middle of the pin
		return mid.plus(q.x*cos-q.y*sin, q.x*sin+q.y*cos)
	}
	shaft, wheel, inner := s.outline(right)
	for i := range shaft {
		shaft[i], wheel[i] = turn(shaft[i]), turn(wheel[i])
	}
	p.poly("op", shaft[:]...)
	p.poly("op", wheel[:]...)
	p.hatch(wheel[:], hatching(right))
	y, r := s.scale*s.pinY(), s.scale*s.shaft()
	return [2]point{turn(point{inner, y - r}), turn(point{inner, y + r})}
}

// outline returns the shaft and the wheel of a half as it would lie true, in
// units of the paper from the middle of the pin, and where its inner face stands.
func (s *bendSheet) outline(right bool) (shaft, wheel [4]point, inner float64) {
	tip, sign := s.scale*-s.v.PinMiddle, -s.scale
	if right {
		tip, sign = s.scale*(s.v.Length-s.v.PinMiddle), s.scale
	}
	in := sign * s.between / 2
	out := in + sign*s.width
	r, y := s.scale*s.v.Rim, s.scale*s.shaft()
	return [4]point{{out, -y}, {tip, -y}, {tip, y}, {out, y}}, [4]point{{in, -r}, {out, -r}, {out, r}, {in, r}}, in
}

// shaft is the half thickness that shafts and pin are drawn with, mm.
func (s *bendSheet) shaft() float64 { return 0.16 * s.v.Rim }

// hatching is how far apart the lines of a wheel stand, and which way they lean.
func hatching(right bool) float64 {
	if right {
		return 8
	}
	return -8
}

// pinY is where the pin's axis stands on the paper, mm below the shafts' axis.
func (s *bendSheet) pinY() float64 {
	if s.above {
		return 0
	}
	return -s.v.Throw
}

func (p *pen) crank(s *bendSheet, title string) {
	left := p.half(s, false)
	right := p.half(s, true)
	p.poly("op", left[0], right[0], right[1], left[1])
	p.line("ax", point{s.at(0) - 10, s.yc}, point{s.at(s.v.Length) + 10, s.yc})
	for _, st := range s.v.Stations {
		if finite(st.At) && st.At >= 0 && st.At <= s.v.Length {
			p.fixture(s, st)
		}
	}
	p.text("tx", starts, point{4, s.yc - 108}, title)
	p.text("tx tb", starts, point{4, s.yc + 46}, s.v.LeftEnd.Name())
	p.text("tx tb", ends, point{Width - 4, s.yc + 46}, (s.v.LeftEnd ^ 1).Name())
}

func (p *pen) fixture(s *bendSheet, st Fixture) {
	shaft := s.scale * 0.16 * s.v.Rim
	right, side := st.At > s.v.PinMiddle, s.v.LeftEnd
	if right {
		side ^= 1
	}
	offset, slope := s.lie(right)
	at := point{s.at(st.At), s.yc + s.scale*s.factor*(offset+slope*(st.At-s.v.PinMiddle))}
	switch st.Kind {
	case DialAt:
		p.line("th", at.plus(0, -shaft), at.plus(0, -shaft-14))
		p.circle("op", at.plus(0, -shaft-27), 13)
		p.text("tx tb", middle, at.plus(0, -shaft-20), side.Letter())
	case BearingAt:
		for _, y := range [2]float64{-shaft - 14, shaft} {
			p.bearing(at.plus(-7, y), 14)
		}
	case CentreAt:
		out := -22.0
		if right {
			out = 22
		}
		at.y = s.yc
		p.poly("th", at, at.plus(out, -10), at.plus(out, 10))
	case VBlockAt:
		p.poly("th", at.plus(0, shaft), at.plus(11, shaft+20), at.plus(-11, shaft+20))
	}
}
