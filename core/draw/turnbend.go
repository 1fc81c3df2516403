package draw

import (
	"math"
)

// turnAxis is where the crank from the side lies, below the dials.
const turnAxis = TurnHeight + 76

// moved is how a part lies on the paper, its clock as seen from where the hours are.
func (v *TurnView) moved(l Lie, left Side) Lie {
	if v.SeenFrom != left {
		l.OffsetN, l.SlopeN = -l.OffsetN, -l.SlopeN // 3 seen from the left end is 9 seen from the right
	}
	return l
}

// turningBend draws the crank from the side at a moment of a turn.
func (p *pen) turningBend(v *TurnView) {
	s := newBendSheet(v.Bend.tidy(), 62, turnAxis)
	at := point{s.at(s.v.PinMiddle), s.yc}
	var lies [2]Lie
	for i, l := range [2]Lie{s.v.Left, s.v.Right} {
		l = v.moved(l, s.v.LeftEnd)
		lies[i] = Lie{s.scale * s.factor * l.OffsetT, s.scale * s.factor * l.OffsetN, s.factor * l.SlopeT, s.factor * l.SlopeN}
		p.moving(v, at, [2]string{"half-a", "half-b"}[i], lies[i])
		shaft, wheel, _ := s.outline(i == 1)
		p.poly("op", shaft[:]...)
		p.poly("op", wheel[:]...)
		p.hatch(wheel[:], hatching(i == 1))
		p.s("</g></g>")
	}
	_, _, in := s.outline(true)
	p.moving(v, at, "crankpin", between(lies[0], lies[1], 2*in, s.scale*s.v.Throw, 0))
	p.turningPin(in, s.scale*s.shaft())
	p.line("ax", point{s.at(0) - 10, s.yc}, point{s.at(s.v.Length) + 10, s.yc})
	y := s.yc + 62 + 14
	p.text("tx tb", starts, point{4, y}, s.v.LeftEnd.Name())
	p.text("tx tb", ends, point{Width - 4, y}, (s.v.LeftEnd ^ 1).Name())
	p.bendNote(s.factor, TurnBendHeight-7)
}

// turningPin draws a crankpin in its part, so long and thick either way of its middle, and
// closes that.
func (p *pen) turningPin(long, thick float64) {
	p.poly("op", point{-long, -thick}, point{long, -thick}, point{long, thick}, point{-long, thick})
	p.s("</g></g>")
}

// between is how a crankpin lies, in units of the paper: at its throw and hour from the
// middle of two parts that it joins, apart so far, as each lies at the pin.
func between(left, right Lie, apart, throw, hour float64) Lie {
	n, t := math.Sincos(hour * math.Pi / 6)
	return Lie{
		throw*t + (left.OffsetT+right.OffsetT)/2, throw*n + (left.OffsetN+right.OffsetN)/2,
		(right.OffsetT - left.OffsetT) / apart, (right.OffsetN - left.OffsetN) / apart,
	}
}

// moving opens a part that rises and tilts about a point as the crank turns.
func (p *pen) moving(v *TurnView, at point, name string, l Lie) {
	sin, cos := math.Sincos(v.Turned * math.Pi / 6)
	p.part(at, v.Prefix, name, "lie", l.OffsetT, l.OffsetN, l.SlopeT, l.SlopeN)
	p.s("translate(0 ")
	p.n(l.OffsetN*sin - l.OffsetT*cos)
	p.s(") rotate(")
	p.n(math.Atan(l.SlopeN*sin-l.SlopeT*cos) * 180 / math.Pi)
	p.s(`)">`)
}
