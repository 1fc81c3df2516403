package crank_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/dial"
)

// someBody is a crank out of true by up to some 15 thou on the dials.
func someBody(rng *rand.Rand) (body, []crank.Station) {
	c, st := someCrank(rng)
	b := body{Crank: c, round: 12 + 3*rng.Float64()}
	b.twist = 0.04 * rng.NormFloat64() / c.Throw
	b.gap = clock.Polar(0.0004*rng.NormFloat64(), 12*rng.Float64())
	b.mismatch = 0.02 * rng.NormFloat64()
	return b, st
}

// reads takes a turn of a dial: exact readings rounded to a division, and the
// scatter of a hand.
func (b *body) reads(rng *rand.Rand, h clock.End, x float64, hours []float64, division, scatter float64) dial.Turn {
	t := dial.Turn{Hours: hours, Division: division}
	zero := 0.0
	if rng != nil {
		zero = rng.Float64()
	}
	for _, hour := range hours {
		v := b.shows(h, x, hour) - b.round + zero
		if scatter > 0 {
			v += scatter * rng.NormFloat64()
		}
		if division > 0 {
			v = division * math.Round(v/division)
		}
		t.Values = append(t.Values, v)
	}
	return t
}

// Exact readings of an exact body, seed 8: the small angles of the model cost
// less than half a micron. (12 is towards the pin from the spindle, which is a
// hair off that from the shaft.)
func TestExactBodiesAreFound(t *testing.T) {
	rng := rand.New(rand.NewSource(8))
	const tol = 0.5e-3
	for range 300 {
		b, st := someBody(rng)
		for i := range st {
			turn := b.reads(nil, st[i].Half(), st[i].At, dial.Even(8, false), 0, 0)
			f, err := turn.Fit()
			require.NoError(t, err)
			assert.InDelta(t, 0, f.E.Sub(b.centreOf(st[i].Half(), st[i].At, b.support(0), b.support(1))).Len(), tol)
			st[i] = crank.Station{Piece: st[i].Piece, At: st[i].At, E: f.E}
		}
		pose := solved(t, b.Crank, st)
		d, g := b.truth()
		assert.InDelta(t, 0, pose.D.Sub(d).Len(), tol, "offset")
		assert.InDelta(t, 0, pose.G.Sub(g).Len()*2*b.Rim, tol, "gap across the rim")
		run := pose.Running(pose.D, pose.G)
		for h := clock.Left; h <= clock.Right; h++ {
			x := b.Support[h]
			assert.InDelta(t, b.inBearings(h, x), run.RunOut(h, x), tol, "in its own bearings")
			assert.InDelta(t, b.tilt(h), run.Tilt(h), 0.02, "minutes of arc")
		}
		// Each move made on the body itself.
		struck, closed := b, b
		struck.twist = 0
		closed.gap = clock.Vec{}
		for _, s := range st {
			f := pose.Forecast(s.Half(), s.At)
			after := func(b *body) float64 { return b.centreOf(s.Half(), s.At, b.support(0), b.support(1)).Len() }
			assert.InDelta(t, after(&struck), f.Strike.Len(), tol, "after the strike")
			assert.InDelta(t, after(&closed), f.Gap.Len(), tol, "after the gap is closed")
		}
		if t.Failed() {
			return
		}
	}
}
