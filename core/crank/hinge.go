package crank

import (
	"math"

	"pintwelve/core/clock"
)

// Hinge is where a squeeze or spread bends the crank: At [mm] to the right of the
// middle of the pin, by how far the offset goes with the gap slope, Δd = At Δg
// (MODEL §3). Sigma is its standard error; both are about 0 until a
// squeeze has shown otherwise.
type Hinge struct{ At, Sigma float64 }

const (
	// A pin gives about its middle to within so many mm, and one squeeze's own
	// astray offset is as much again. By judgement, no source.
	hingeSpread = 8.0
	hingeAstray = 8.0
)

// newHinge is what is taken of it before any squeeze.
func newHinge() Hinge { return Hinge{Sigma: hingeSpread} }

// learn takes in what a bend did. Beside a strike only the offset towards 12 is
// the bend's.
func (h *Hinge) learn(c *shift, struck bool) {
	d, g, cov := c.d, c.g, c.covD
	along, v := d.Dot(g), cov.Var(g)
	length := g.Len()
	if struck {
		along, v, length = d.T*g.T, cov.TT, math.Abs(g.T)
	}
	if !(length > 0) {
		return
	}
	noise := math.Sqrt(v)/length + c.covG.Widest()/length*hingeSpread
	w := 1 / (noise*noise + hingeAstray*hingeAstray)
	prior := 1 / (h.Sigma * h.Sigma)
	h.At = (h.At*prior + along/(length*length)*w) / (prior + w)
	h.Sigma = 1 / math.Sqrt(prior+w)
}

// brings is what a bend that changes the slope by so much brings of offset.
func (h *Hinge) brings(slope clock.Vec) clock.Vec {
	if !h.shown() {
		return clock.Vec{}
	}
	return slope.Scale(h.At)
}

// shown tells whether the hinge stands off the middle of the pin by more than
// its own doubt.
func (h *Hinge) shown() bool { return math.Abs(h.At) > h.Sigma }
