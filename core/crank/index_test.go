package crank_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/crank"
)

const degree = math.Pi / 180

// levels are the heights of a crank turned so far clockwise from its first pin at 3, its
// pin so far on from the first: whole rotations of the pins' middles.
func levels(turned, index, throw float64) crank.Levels {
	high := func(clockwise float64) float64 {
		p := vec3{0, 0, throw}.turned(vec3{1}, clockwise)
		return 100 + p[1]
	}
	return crank.Levels{Axis: 100, First: high(turned), Pin: high(turned + index), FirstThrow: throw, PinThrow: throw, Step: 0.02}
}

func TestIndexOfTurnedPins(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	read := 0
	for range 2000 {
		nominal := []float64{180, 360, 270, 120, 240}[rng.Intn(5)] * degree
		index := nominal + 2*degree*rng.NormFloat64()
		turned := 60 * degree * (2*rng.Float64() - 1)
		l := levels(turned, index, 30+20*rng.Float64())
		got, err := l.Index(nominal)
		if level := math.Min(math.Abs(math.Cos(turned)), math.Abs(math.Cos(turned+index))); level < 0.35 {
			assert.Error(t, err)
			continue
		}
		require.NoError(t, err)
		if math.Abs(math.Cos(turned+index)) < 0.5 { // the other angle at that height may be nearer
			continue
		}
		read++
		assert.InDelta(t, index, got.Value, 1e-9)
	}
	assert.Greater(t, read, 500)
}

// A pin 0.1° past 180° at a throw of 42 mm stands R δ = 0.0733 mm out of level, by hand.
func TestIndexByHand(t *testing.T) {
	l := crank.Levels{Axis: 80, First: 80, Pin: 80.0733, FirstThrow: 42, PinThrow: 42, Step: 0.02}
	got, err := l.Index(180 * degree)
	require.NoError(t, err)
	assert.InDelta(t, 180.1, got.Value/degree, 1e-3)
	// 1.96 × 0.02/√12 × √(1 + 1 + 4)/42 rad: the middle of the shafts counts twice.
	assert.InDelta(t, 0.0378, got.HalfWidth95/degree, 1e-4)
}

// The stated 95 % of heights rounded to what the gauge tells apart.
func TestIndexIsAsSureAsStated(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	inside, n := 0, 4000
	for range n {
		index := (180 + rng.NormFloat64()) * degree
		l := levels(20*degree*(2*rng.Float64()-1), index, 42)
		up := rng.Float64() // the flat stands anywhere
		l.Axis, l.First, l.Pin = l.Axis+up, l.First+up, l.Pin+up
		for _, h := range []*float64{&l.Axis, &l.First, &l.Pin} {
			*h = math.Round(*h/l.Step) * l.Step
		}
		got, err := l.Index(180 * degree)
		require.NoError(t, err)
		if math.Abs(got.Value-index) <= got.HalfWidth95 {
			inside++
		}
	}
	assert.InDelta(t, 0.95, float64(inside)/float64(n), 0.03)
}

func TestImpossibleLevels(t *testing.T) {
	for _, row := range []struct {
		name  string
		l     crank.Levels
		first bool
		dull  bool
	}{
		{"higher than its throw", crank.Levels{Axis: 80, First: 80, Pin: 130, FirstThrow: 42, PinThrow: 42}, false, false},
		{"the first at 12", crank.Levels{Axis: 80, First: 122, Pin: 80, FirstThrow: 42, PinThrow: 42}, true, true},
		{"at 6", crank.Levels{Axis: 80, First: 80, Pin: 38.5, FirstThrow: 42, PinThrow: 42}, false, true},
		{"no figure", crank.Levels{Axis: math.NaN(), First: 80, Pin: 80, FirstThrow: 42, PinThrow: 42}, true, false},
	} {
		_, err := row.l.Index(math.Pi)
		var fault *crank.LevelError
		require.ErrorAs(t, err, &fault, row.name)
		assert.Equal(t, [2]bool{row.first, row.dull}, [2]bool{fault.First, fault.Dull}, row.name)
	}
}
