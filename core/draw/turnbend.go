package draw

import (
	"math"
)

// turnAxis is where the crank from the side lies, below the dials.
const turnAxis = TurnHeight + 76

// turningBend draws the crank from the side at a moment of a turn.
func (p *pen) turningBend(v *TurnView) {
	s := newBendSheet(v.Bend.tidy(), 62, turnAxis)
	mirror := 1.0
	if v.SeenFrom != s.v.LeftEnd {
		mirror = -1 // 3 seen from the left end is 9 seen from the right
	}
	sin, cos := 0.0, 1.0
	if finite(v.Turned) {
		sin, cos = math.Sincos(v.Turned * math.Pi / 6)
	}
	var up [2]float64
	for i, l := range [2]Lie{s.v.Left, s.v.Right} {
		lie := [4]float64{s.scale * s.factor * l.OffsetT, mirror * s.scale * s.factor * l.OffsetN, s.factor * l.SlopeT, mirror * s.factor * l.SlopeN}
		up[i] = lie[0]*cos - lie[1]*sin
		rise := lie[2]*cos - lie[3]*sin
		p.moving(&s, v.Prefix, [2]string{"half-a", "half-b"}[i], lie[:], up[i], rise)
		shaft, wheel, _ := s.outline(i == 1)
		p.poly("op", shaft[:]...)
		p.poly("op", wheel[:]...)
		p.hatch(wheel[:], hatching(i == 1))
		p.s("</g></g>")
	}
	p.turningPin(&s, v.Prefix, cos, up)
	p.line("ax", point{s.at(0) - 10, s.yc}, point{s.at(s.v.Length) + 10, s.yc})
	y := s.yc + 62 + 14
	p.text("tx tb", starts, point{4, y}, s.v.LeftEnd.Name())
	p.text("tx tb", ends, point{Width - 4, y}, (s.v.LeftEnd ^ 1).Name())
	p.bendNote(s.factor, TurnBendHeight-7)
}

// turningPin draws the crankpin between the wheels, which goes round with them.
func (p *pen) turningPin(s *bendSheet, prefix string, cos float64, up [2]float64) {
	throw := s.scale * s.v.Throw
	_, _, in := s.outline(true)
	p.moving(s, prefix, "crankpin", []float64{throw, 2 * in}, throw*cos+(up[0]+up[1])/2, (up[1]-up[0])/(2*in))
	r := s.scale * s.shaft()
	p.poly("op", point{-in, -r}, point{in, -r}, point{in, r}, point{-in, r})
	p.s("</g></g>")
}

// moving opens the two groups of a part that rises and tilts about the middle of
// the pin: the outer stands, the inner is the page's to move.
func (p *pen) moving(s *bendSheet, prefix, class string, lie []float64, up, rise float64) {
	p.s(`<g transform="translate(`)
	p.xy(point{s.at(s.v.PinMiddle), s.yc})
	p.s(`)"><g class="`)
	p.s(class)
	p.s(`" id="`)
	p.id(prefix, class)
	p.s(`" data-lie="`)
	for i, x := range lie {
		if i > 0 {
			p.s(" ")
		}
		p.deg(x)
	}
	p.s(`" transform="translate(0 `)
	p.n(-up)
	p.s(`) rotate(`)
	p.n(-math.Atan(rise) * 180 / math.Pi)
	p.s(`)">`)
}
