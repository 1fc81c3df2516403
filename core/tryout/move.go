package tryout

import (
	"math"

	"pintwelve/core/clock"
)

// Do makes a move. The error is a Fault, and nothing has then been done: no such
// move, or one so hard that the crank would come apart.
func (m *Made) Do(b Blow) error {
	if !(b.Dose >= 0 && b.Dose <= MostDose) || !(math.Abs(b.Hour) <= mostLong) || b.Kind > Spread || b.Wheel > clock.Right || b.Joint < 0 || b.Joint >= m.crank.joints() {
		return Moving
	}
	luck := chanceOf(m.seed, forMove, m.moves)
	effect := math.Max(b.Dose-m.temper.Dead, 0) * m.gain[b.Joint][b.Kind] * m.hand(&luck)
	astray := clock.Polar(m.temper.Cross, luck.between(0, 12))
	before := m.body
	if b.Kind == Strike {
		m.strike(b, effect*m.temper.Strike, astray)
	} else {
		m.bend(b, effect*m.temper.Bend, astray)
	}
	if s := m.Sits(b.Joint); !s.possible() {
		m.body = before
		return Moving
	}
	m.moves++
	clear(m.turns)
	return nil
}

// hand is how much of what was meant a blow does.
func (m *Made) hand(luck *chance) float64 {
	if m.temper.Gaussian {
		return 1 + m.temper.Hand*luck.normal()
	}
	return 1 + m.temper.Hand*luck.between(-1, 1)
}

// strike brings what is right of a joint over: a blow inwards turns the wheel it falls on
// about the pin by its arm there, R sin φ, and the left wheel turning one way is
// the right wheel turning the other.
func (m *Made) strike(b Blow, effect float64, astray clock.Vec) {
	by := -effect * math.Sin(clock.Radians(b.Hour))
	if b.Wheel == clock.Left {
		by = -by
	}
	m.crank.twist(&m.body, b.Joint, by)
	m.crank.hinge(&m.body, b.Joint, astray.Scale(math.Abs(by)*m.ratio[b.Joint]), 0)
}

// bend closes or opens the gap along the line from the pin to where the clamp or
// the wedge sits.
func (m *Made) bend(b Blow, slope float64, astray clock.Vec) {
	to := clock.Polar(m.crank.Rim, b.Hour).Sub(clock.Vec{T: m.crank.pin(b.Joint).Throw})
	if b.Kind == Squeeze {
		slope = -slope
	}
	m.crank.hinge(&m.body, b.Joint, to.Scale(slope/to.Len()), m.temper.Hinge)
	lost := astray.Scale(math.Abs(slope) / m.ratio[b.Joint])
	if !m.temper.Throws {
		lost = clock.Vec{N: math.Copysign(lost.Len(), astray.N)}
	}
	m.crank.shift(&m.body, b.Joint, clock.Vec{T: lost.T})
	m.crank.twist(&m.body, b.Joint, lost.N)
}
