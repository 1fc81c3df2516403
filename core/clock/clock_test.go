package clock

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestHourPointsWherePolarSays(t *testing.T) {
	for _, row := range []struct{ hour, t, n float64 }{
		{0, 1, 0}, {3, 0, 1}, {6, -1, 0}, {9, 0, -1}, {1, math.Sqrt(3) / 2, 0.5}, {10.5, math.Sqrt2 / 2, -math.Sqrt2 / 2},
	} {
		v := Polar(1, row.hour)
		assert.InDelta(t, row.t, v.T, 1e-15)
		assert.InDelta(t, row.n, v.N, 1e-15)
		assert.InDelta(t, 0, Apart(row.hour, v.Hour()), 1e-12)
	}
}

func TestOtherEndReadsTwelveLessTheHour(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for range 1000 {
		v := Vec{rng.NormFloat64(), rng.NormFloat64()}
		assert.InDelta(t, 0, Apart(Mirror(v.Hour()), v.From(Right).Hour()), 1e-12)
		assert.Equal(t, v, v.From(Right).From(Right))
		assert.Equal(t, v, v.From(Left))
	}
	assert.Equal(t, 9.0, SeenFrom(Right, 3))
	assert.Equal(t, 0.0, SeenFrom(Right, 12))
	assert.Equal(t, 3.0, SeenFrom(Left, 3))
}

func TestWrapStaysOnTheFace(t *testing.T) {
	for _, row := range []struct{ in, out float64 }{{12, 0}, {-3, 9}, {27, 3}, {0, 0}, {-1e-20, 0}, {24, 0}} {
		assert.Equal(t, row.out, Wrap(row.in), "%g", row.in)
	}
}

func TestMidwayGoesClockwise(t *testing.T) {
	assert.Equal(t, 3.0, Midway(1, 5))
	assert.Equal(t, 0.0, Midway(10, 2))
	assert.Equal(t, 6.0, Midway(2, 10))
	assert.Equal(t, 1.0, Apart(0.5, 11.5))
	assert.Equal(t, Right, Left.Other())
	assert.Equal(t, Left, Right.Other())
}

func TestVectorArithmetic(t *testing.T) {
	a, b := Vec{1, 2}, Vec{3, -4}
	assert.Equal(t, Vec{4, -2}, a.Add(b))
	assert.Equal(t, Vec{-2, 6}, a.Sub(b))
	assert.Equal(t, Vec{2, 4}, a.Scale(2))
	assert.Equal(t, -5.0, a.Dot(b))
	assert.Equal(t, 5.0, b.Len())
}
