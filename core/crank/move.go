package crank

import (
	"math"

	"pintwelve/core/clock"
)

// Kind is a kind of move.
type Kind uint8

// The moves: a soft hammer on one rim, a clamp across both rims, a wedge
// between them.
const (
	Strike Kind = iota
	Squeeze
	Spread
)

// Move is one thing to do to the crank.
type Move struct {
	Kind   Kind
	Wheel  clock.End // the wheel to strike; a squeeze or spread takes both
	Hour   float64   // of the rim point to work at, seen from the left end
	Amount float64   // mm: offset a strike takes out at the pin, or the gap's change where it is worked
	Arm    float64   // mm, of the work about the pin
}

// Strike returns the blow that takes out the twist, and the one on the other
// wheel that does the same (MODEL §4): its side is that of d_n, never
// of one dial's high spot. Blows are inwards, at 3 or 9, where the arm
// R |sin φ| is greatest.
func (s *Pose) Strike() (move, other Move) {
	m := Move{Kind: Strike, Amount: math.Abs(s.D.N), Arm: s.Crank.Throw}
	move, other = m, m
	move.Wheel, move.Hour = clock.Right, 3
	other.Wheel, other.Hour = clock.Left, 9
	if s.D.N < 0 {
		move.Hour, other.Hour = 9, 3
	}
	return move, other
}

// Close returns the squeeze or spread that closes the gap, and the opposite
// move with the shorter arm that does the same (MODEL §4): a squeeze
// where the gap is open in the lower half, else a spread.
func (s *Pose) Close() (move, other Move) {
	squeeze := s.Crank.work(Squeeze, s.G, s.G)
	spread := s.Crank.work(Spread, s.G.Scale(-1), s.G)
	if s.G.T > 0 {
		return spread, squeeze
	}
	return squeeze, spread
}

// work returns a squeeze or spread for the gap slope g at the rim point that
// the ray from the pin along u meets. A round pin yields about the axis of the
// moment, so the gap changes along that ray.
func (c *Crank) work(k Kind, u, g clock.Vec) Move {
	n := u.Len()
	if n == 0 {
		u, n = clock.Vec{T: -1}, 1
	}
	cos, sin := u.T/n, u.N/n
	arm := -c.Throw*cos + math.Sqrt(c.Rim*c.Rim-c.Throw*c.Throw*sin*sin)
	at := clock.Vec{T: c.Throw + arm*cos, N: arm * sin}
	return Move{Kind: k, Hour: at.Hour(), Amount: arm * g.Len(), Arm: arm}
}

// Gap returns how much wider the gap between the wheels is on one side of the
// rim than across it [mm], 2 r |g|, and the hour where it is widest.
func (s *Pose) Gap() (across, widest float64) {
	return 2 * s.Crank.Rim * s.G.Len(), s.G.Hour()
}
