package draw

import "strconv"

// turnThrows is how high the crank of several throws stands below its dials.
const turnThrows = 160

// turningThrows draws a crank of several throws from the side at a moment of a turn, its
// pieces and pins each a part of its own.
func (p *pen) turningThrows(v *TurnView) {
	s, ok := newThrowsSheet(v.Throws, v.rows()+66)
	if !ok {
		return
	}
	for i := range s.v.Pins {
		pin := &s.v.Pins[i]
		l := between(s.lie(v, i, pin.At), s.lie(v, i+1, pin.At), 2*s.pin*s.along, s.up*pin.Throw, hourSeen(pin.Hour, v.SeenFrom != s.v.LeftEnd))
		p.moving(v, s.paper(pin.At, 0), "pin-"+strconv.Itoa(i+1), l)
		p.turningPin(s.pin*s.along, throwsShaft)
	}
	for k := range s.v.pieces() {
		from, to := s.v.span(k)
		at := s.paper((from+to)/2, 0)
		p.moving(v, at, "piece-"+strconv.Itoa(k+1), s.lie(v, k, (from+to)/2))
		straight := s
		straight.factor, straight.edge, straight.axisAt = 0, s.edge-at.x, 0
		p.piece(&straight, k)
		p.s("</g></g>")
	}
	p.line("ax", s.paper(0, 0).plus(-8, 0), s.paper(s.v.Length, 0).plus(8, 0))
	p.foot(&s, s.axisAt+throwsFoot)
}

func hourSeen(hour float64, mirrored bool) float64 {
	if mirrored {
		return -hour
	}
	return hour
}

// lie is how a piece lies at a place along it, on the paper of a turn.
func (s *throwsSheet) lie(v *TurnView, k int, at float64) Lie {
	if s.factor == 0 {
		return Lie{}
	}
	l, bend := v.moved(s.v.Lies[k], s.v.LeftEnd), s.up*s.factor
	from, _ := s.v.span(k)
	slope := bend / s.along
	return Lie{bend * (l.OffsetT + l.SlopeT*(at-from)), bend * (l.OffsetN + l.SlopeN*(at-from)), slope * l.SlopeT, slope * l.SlopeN}
}
