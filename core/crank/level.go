package crank

import (
	"math"

	"pintwelve/core/clock"
)

// level returns the one move, at a joint that the readings tell of, that leaves the
// smallest burden, and that [mm]: where no fault stands clear of its
// doubt, what the dials would show after a move still does.
func (j *throwsJudge) level() (best JointMove, least float64) {
	least = math.Inf(1)
	try := func(m JointMove) {
		if v := j.burden(j.part(&m, 1)); v < least && m.Amount > 0 {
			best, least = m, v
		}
	}
	for at := range j.Bends {
		pose := j.joint(at)
		if j.TwistTold(at) {
			pose.D.N = -j.evens(at, true).N
			m := pose.strikes(at)
			m.HalfWidth95 = j.UncertaintyOfD(at).HalfWidth95(clock.Vec{N: 1})
			try(m)
		}
		if j.GTold(at) {
			pose.G = j.evens(at, false).Scale(-1)
			m := pose.closes(at)
			m.HalfWidth95 = m.Arm * j.UncertaintyOfG(at).HalfWidth95(pose.G)
			try(m)
		}
	}
	return best, least
}

// evens is the change of a joint's twist, or of its gap slope, that makes the burden
// smallest: least squares over and over, each gauge counting by how far it was
// out the last time (Lawson's way to a minimax fit).
func (j *throwsJudge) evens(joint int, twist bool) (by clock.Vec) {
	n := len(j.gauges)
	weights, k, now := make([]float64, n), make([]float64, n), make([]clock.Vec, n)
	shown := j.shownOf(joint, Bend{G: clock.Vec{T: 1}})
	if twist {
		shown = j.shownOf(joint, Bend{D: clock.Vec{T: 1}})
	}
	for i := range j.gauges {
		g := &j.gauges[i]
		weights[i], k[i] = 1, g.scale*g.of.of(shown).T
		now[i] = j.pins[joint].own(g.of.of(j.axes)).Scale(g.scale)
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
