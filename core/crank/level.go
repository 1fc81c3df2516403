package crank

import (
	"math"

	"pintwelve/core/clock"
)

// level returns the one move, at a joint that the readings tell of, that leaves the
// smallest worst run-out, and that run-out [mm]: where no fault stands clear of its
// doubt, what the dials would show after a move still does.
func (s *Stand) level() (best JointMove, least float64) {
	least = math.Inf(1)
	try := func(m JointMove) {
		if v := greatest(s.RunOuts(s.part(&m, 1))); v < least && m.Amount > 0 {
			best, least = m, v
		}
	}
	for j := range s.Bends {
		pose := s.joint(j)
		if s.TwistTold(j) {
			pose.D.N = -s.evens(j, true).N
			m := pose.strikes(j)
			m.HalfWidth95 = s.UncertaintyOfD(j).HalfWidth95(clock.Vec{N: 1})
			try(m)
		}
		if s.GTold(j) {
			pose.G = s.evens(j, false).Scale(-1)
			m := pose.closes(j)
			m.HalfWidth95 = m.Arm * s.UncertaintyOfG(j).HalfWidth95(pose.G)
			try(m)
		}
	}
	return best, least
}

// evens is the change of a joint's twist, or of its gap slope, that makes the worst
// run-out smallest: least squares over and over, each dial counting by how far it was
// out the last time (Lawson's way to a minimax fit).
func (s *Stand) evens(joint int, twist bool) (by clock.Vec) {
	weights := make([]float64, len(s.dials))
	for i := range weights {
		weights[i] = 1
	}
	k, now := make([]float64, len(s.dials)), make([]clock.Vec, len(s.dials))
	for i, l := range s.leverages(joint) {
		d := &s.dials[i]
		now[i] = s.pins[joint].own(s.At(d.Piece, d.At))
		if k[i] = l.g; twist {
			k[i] = l.d
		}
	}
	for range 30 {
		var sum clock.Vec
		of := 0.0
		for i, w := range weights {
			sum, of = sum.Add(now[i].Scale(w*k[i])), of+w*k[i]*k[i]
		}
		by = sum.Scale(-1 / of)
		if twist {
			by.T = 0
		}
		total := 0.0
		for i := range weights {
			weights[i] *= now[i].Add(by.Scale(k[i])).Len()
			total += weights[i]
		}
		if total == 0 { // all is dead true
			return by
		}
		for i := range weights {
			weights[i] /= total
		}
	}
	return by
}
