package crank_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/lsq"
)

// rimGaps measures an exact body: the gap between the wheels' faces, 10 mm from
// the pin's middle each when true, at the rim.
func (b *body) rimGaps(from clock.End) crank.RimGaps {
	at := func(hour float64) float64 {
		u := clock.Polar(b.Rim, clock.SeenFrom(from, hour))
		p := b.place(vec3{b.Pin + 10, u.T, u.N})
		return p[0] - (b.Pin - 10)
	}
	return crank.RimGaps{From: from, At12: at(12), At3: at(3), At6: at(6), At9: at(9)}
}

// edge measures an exact body: how far the right rim stands proud of the left,
// its radius larger by more.
func (b *body) edge(from clock.End, more float64) crank.StraightEdge {
	at := func(hour float64) float64 {
		c := b.shaftPoint(clock.Right, b.Pin)
		u := clock.Polar(1, clock.SeenFrom(from, hour))
		along := c[1]*u.T + c[2]*u.N
		across := -c[1]*u.N + c[2]*u.T
		r := b.Rim + more
		return along + math.Sqrt(r*r-across*across) - b.Rim
	}
	return crank.StraightEdge{From: from, At3: at(3), At9: at(9), At12: at(12)}
}

// Exact bodies, seed 9: gaps and steps give the components that the dials do.
func TestCrossChecksAgreeWithTheDials(t *testing.T) {
	rng := rand.New(rand.NewSource(9))
	for i := range 100 {
		b, st := someBody(rng)
		for i := range st {
			st[i].E, st[i].Cov = b.centreOf(st[i].Half(), st[i].At, b.support(0), b.support(1)), lsq.Round(0.5*micron)
		}
		pose := solved(t, b.Crank, st)
		from := clock.End(i % 2)
		gaps, closure, askew, err := pose.Gaps(st, b.rimGaps(from))
		require.NoError(t, err)
		assert.InDelta(t, 0, gaps.Value.Sub(pose.G).Len()*2*b.Rim, micron)
		assert.InDelta(t, 0, closure, 0.1*micron)
		assert.False(t, askew && closure > 0.1*micron)
		assert.False(t, gaps.Differ)
		edge, radii, err := pose.Edge(st, b.edge(from, 0.03))
		require.NoError(t, err)
		assert.InDelta(t, 0.03, radii, micron)
		assert.InDelta(t, 0, edge.Value.Sub(pose.D).Len(), micron)
		assert.False(t, edge.Differ)
	}
}

// Model, section 3, by hand: R 80, feelers of 0.05 mm.
func TestRimGapsByHand(t *testing.T) {
	pose := solved(t, bench(), dials(clock.Vec{T: 0.0125}, clock.Vec{T: 0.0125})) // g_t = 0.0005
	st := dials(clock.Vec{}, clock.Vec{})
	c, closure, askew, err := pose.Gaps(st, crank.RimGaps{At12: 20.08, At6: 20.00, At3: 20.06, At9: 20.02, Step: 0.05})
	require.NoError(t, err)
	assert.InDelta(t, 0.0005, c.Value.T, 1e-12)
	assert.InDelta(t, 0.00025, c.Value.N, 1e-12)
	assert.InDelta(t, 0.05/math.Sqrt(12)*math.Sqrt2/160, math.Sqrt(c.Sure.Cov.TT), 1e-12)
	assert.InDelta(t, 0, closure, 1e-12)
	assert.False(t, askew)
	assert.False(t, c.Differ, "0.04 mm across the rim is within the feelers")

	c, closure, askew, err = pose.Gaps(st, crank.RimGaps{From: clock.Right, At12: 20.08, At6: 20.00, At3: 20.40, At9: 20.02, Step: 0.05})
	require.NoError(t, err)
	assert.Less(t, c.Value.N, 0.0, "3 from the right is 9 from the left")
	assert.True(t, c.Differ)
	assert.InDelta(t, -0.34, closure, 1e-12)
	assert.True(t, askew, "one gap is misread")
}

func TestStraightEdgeByHand(t *testing.T) {
	// One dial each at half-way: d = 2 e_R − 2 e_L.
	st := dials(clock.Vec{}, clock.Vec{T: 0.01, N: 0.03})
	pose := solved(t, bench(), st)
	c, radii, err := pose.Edge(st, crank.StraightEdge{At3: 0.11, At9: -0.01, At12: 0.07, Step: 0.01})
	require.NoError(t, err)
	assert.InDelta(t, 0.05, radii, 1e-12)
	assert.InDelta(t, 0.06, c.Value.N, 1e-12)
	assert.InDelta(t, 0.02, c.Value.T, 1e-12)
	v := 0.01 * 0.01 / 12
	assert.InDelta(t, 1.5*v, c.Sure.Cov.TT, 1e-15)
	assert.InDelta(t, 0.5*v, c.Sure.Cov.NN, 1e-15)
	assert.False(t, c.Differ)
	c, _, err = pose.Edge(st, crank.StraightEdge{At3: 0.21, At9: -0.11, At12: 0.07, Step: 0.01})
	require.NoError(t, err)
	assert.True(t, c.Differ)
}

func TestUnusableCrossChecksAreNamed(t *testing.T) {
	st := dials(clock.Vec{}, clock.Vec{})
	pose := solved(t, bench(), st)
	var bad *crank.CheckError
	_, _, _, err := pose.Gaps(st, crank.RimGaps{At9: math.NaN()})
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, 9.0, bad.Hour)
	_, _, err = pose.Edge(st, crank.StraightEdge{At12: math.Inf(1)})
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, 12.0, bad.Hour)
	_, _, err = pose.Edge(st, crank.StraightEdge{Step: -1})
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, 0.0, bad.Hour)
	assert.Equal(t, -1.0, bad.Given)
}
