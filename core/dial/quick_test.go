package dial

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
)

const thou = 0.0254 // mm

func TestHighSpotIsHalfTheRunOutAtTheHour(t *testing.T) {
	for _, row := range []struct {
		from         clock.End
		runOut, hour float64
		t, n         float64
	}{
		{clock.Left, 4, 0, 2, 0},
		{clock.Left, 4, 12, 2, 0},
		{clock.Left, 4, 3, 0, 2},
		{clock.Right, 4, 3, 0, -2},
		{clock.Right, 2, 7, -math.Sqrt(3) / 2, 0.5},
	} {
		r, err := HighSpot(row.from, row.runOut, row.hour, Scale{})
		require.NoError(t, err)
		assert.InDelta(t, row.t, r.E.T, 1e-12)
		assert.InDelta(t, row.n, r.E.N, 1e-12)
		assert.Equal(t, row.runOut, r.RunOut)
		assert.False(t, r.Blind)
		assert.Zero(t, r.Cov, "exact in, exact out")
	}
}

// reading(φ) = c + |e| cos(φ − high), read as the hours count up from an end.
func TestHalfWayHoursFindTheTop(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for range 500 {
		from, high := clock.End(rng.Intn(2)), 12*rng.Float64()
		level := 0.6 * (rng.Float64() - 0.5) // the half-way mark set a little off
		reading := func(h float64) float64 { return math.Cos(clock.Radians(h-high)) - level }
		rising, falling := crossings(reading)
		r, err := HalfWay(from, 0.05, rising, falling, Scale{})
		require.NoError(t, err)
		assert.InDelta(t, 0, clock.Apart(clock.SeenFrom(from, high), r.E.Hour()), 1e-4)
		assert.InDelta(t, 0.025, r.E.Len(), 1e-12)
	}
}

// crossings steps round the clock and finds where f passes 0, going up and
// going down.
func crossings(f func(float64) float64) (rising, falling float64) {
	const step = 0.01
	for i := range 1200 {
		h := float64(i) * step
		a, b := f(h), f(h+step)
		at := h + step*a/(a-b)
		switch {
		case a < 0 && b >= 0:
			rising = at
		case a >= 0 && b < 0:
			falling = at
		}
	}
	return rising, falling
}

// At the lathe, left end at the left hand: a point of the crank that is at the
// plunger. With the pin up, 3 seen from the left end is towards you.
func TestWhereTheDialStandsAndThePinPoints(t *testing.T) {
	for _, row := range []struct {
		dial, pin Side
		hour      float64
	}{
		{Up, Up, 0}, {Front, Up, 3}, {Down, Up, 6}, {Back, Up, 9},
		{Front, Front, 0}, {Up, Front, 9}, {Back, Front, 6},
		{Up, Down, 6}, {Front, Down, 9}, {Front, Back, 6}, {Down, Back, 9}, {Up, Back, 3},
	} {
		assert.Equal(t, row.hour, Seen(row.dial, row.pin), "dial %d, pin %d", row.dial, row.pin)
	}
}

// Model, section 6, "run-out + hour": where the hour is nearly right, the arc it
// may lie on is nearly straight.
func TestHowSureAQuickReadingIs(t *testing.T) {
	s := Scale{Division: 1e-5, HourStep: 1e-2}
	along := 1e-5 / math.Sqrt(24)
	step := math.Pi / 6 * 1e-2 / math.Sqrt(12)

	r, err := HighSpot(clock.Left, 0.1, 3, s)
	require.NoError(t, err)
	top := math.Acos(1-1e-5/0.1) / math.Sqrt(3)
	// Anywhere on the flat top: short by up to half a division, a third of that
	// in the mean, which counts twice.
	flat := 1e-5 * 1e-5 / 4 * (1.0/5 + 1.0/9)
	assert.InEpsilon(t, along*along+flat, r.Cov.NN, 0.1, "along 3")
	assert.InEpsilon(t, 0.05*0.05*(step*step+top*top), r.Cov.TT, 1e-3, "across")
	assert.InDelta(t, 0, r.Cov.TN, 1e-15)
	assert.InDelta(t, 2*along, r.Sigma, 1e-12)

	r, err = HalfWay(clock.Left, 0.1, 9, 3, s)
	require.NoError(t, err)
	sharp := 1e-5 / (math.Sqrt(24) * 0.05)
	assert.InEpsilon(t, along*along, r.Cov.TT, 0.02, "along 12")
	assert.InEpsilon(t, 0.05*0.05*(step*step+sharp*sharp), r.Cov.NN, 0.02, "across")
}

// Where each half-way hour is found less finely than the marks stand, their
// roundings know nothing of each other, and the mean of two is out by 1/√2 of
// one; where more finely, both round alike. Against a mean over many, seed 10.
func TestHalfWayHoursRoundAlikeOrApart(t *testing.T) {
	rng := rand.New(rand.NewSource(10))
	for _, row := range []struct{ e, least, most float64 }{{2, 0.9, 1}, {0.2, 0.7, 0.9}, {0.02, 0.45, 0.55}} {
		const division, step = 0.01, 0.5
		sum, alone := 0.0, math.Pow(clock.Radians(step), 2)/12
		const n = 200000
		for range n {
			high := 12 * rng.Float64()
			at := func(h float64) float64 {
				found := h + division/row.e*(rng.Float64()-0.5)*6/math.Pi
				return step * math.Round(found/step)
			}
			off := clock.Radians((at(high-3)+at(high+3))/2 - high)
			sum += math.Pow(math.Sin(off), 2) / n
		}
		r, err := HalfWay(clock.Left, 2*row.e, 9, 3, Scale{Division: division, HourStep: step})
		require.NoError(t, err)
		assert.InEpsilon(t, sum, r.Cov.NN/(row.e*row.e), 0.03, "e %g", row.e)
		marks := (sum - division*division/(24*row.e*row.e)) / alone
		assert.GreaterOrEqual(t, marks, row.least, "e %g", row.e)
		assert.LessOrEqual(t, marks, row.most, "e %g", row.e)
	}
}

// Half-way hours lie half a turn apart: of two that don't, one is misread by all that they lack of it,
// and the high spot is out by half of that, on the circle of the run-out.
func TestAMisreadHalfWayHourMakesTheHourUnsure(t *testing.T) {
	s := Scale{Division: 1e-4, HourStep: 0.5}
	read := func(rising, falling float64) Reading {
		r, err := HalfWay(clock.Left, 0.2, rising, falling, s)
		require.NoError(t, err)
		assert.InDelta(t, 0, clock.Apart(0, r.E.Hour()), 1e-9)
		return r
	}
	sure := read(9, 3)
	assert.Equal(t, sure.Cov, read(9.5, 2.5).Cov, "as the marks let them be")
	for _, misread := range []float64{2, 3, 5} {
		off := clock.Radians(misread) / 2
		r := read(9+misread/2, 3-misread/2)
		assert.InDelta(t, 0.1*math.Sin(off), math.Sqrt(r.Cov.NN), 0.004, "across, %g", misread)
		assert.InDelta(t, 0.1*math.Sqrt2*(1-math.Cos(off)), math.Sqrt(r.Cov.TT), 0.004, "along, %g", misread)
		assert.Equal(t, sure.Sigma, r.Sigma, "how much it is is another figure")
	}
	coarse := Scale{Division: 0.05, HourStep: 0.5} // shows each of the hours to an hour of 0.1 mm
	near, err := HalfWay(clock.Left, 0.1, 9.9, 2.1, coarse)
	require.NoError(t, err)
	even, err := HalfWay(clock.Left, 0.1, 9, 3, coarse)
	require.NoError(t, err)
	assert.Equal(t, even.Cov, near.Cov, "as the dial lets them be")
}

// The moments that the covariance is built from, against a mean over many hours
// drawn as they are said to fall, seed 2.
func TestHourErrorLiesOnAnArc(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	const e, division, step = 0.05, 0.01, 1.0
	r, err := HighSpot(clock.Left, 2*e, 0, Scale{Division: division, HourStep: step})
	require.NoError(t, err)
	flat := math.Acos(1 - division/(2*e))
	along, across, mean := 0.0, 0.0, 0.0
	const n = 400000
	for range n {
		d := flat*(2*rng.Float64()-1) + clock.Radians(step)*(rng.Float64()-0.5)
		short := e*(1-math.Cos(d)) + division/math.Sqrt(24)*rng.NormFloat64()
		along += short * short / n
		mean += short / n
		across += e * e * math.Sin(d) * math.Sin(d) / n
	}
	assert.InEpsilon(t, along+mean*mean, r.Cov.TT, 0.01, "the mean counts twice")
	assert.InEpsilon(t, across, r.Cov.NN, 0.01)
}

func TestTooSmallToShowWhere(t *testing.T) {
	s := Scale{Division: 0.5 * thou, HourStep: 1}
	r, err := HighSpot(clock.Left, 0.2*thou, 3, s)
	require.NoError(t, err)
	assert.True(t, r.Blind, "|e| below a quarter of a division")
	assert.Equal(t, clock.Vec{}, r.E)
	assert.InDelta(t, 0.2*thou, r.RunOut, 0)
	assert.Greater(t, r.Cov.TT, 0.0)
	assert.Equal(t, r.Cov.TT, r.Cov.NN)
	r, err = HighSpot(clock.Left, 0.26*thou, 3, s)
	require.NoError(t, err)
	assert.False(t, r.Blind)
}

func TestWrongFiguresAreNamed(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(-1)
	high := func(runOut, hour float64, s Scale) error { _, err := HighSpot(clock.Left, runOut, hour, s); return err }
	half := func(runOut, up, down float64) error {
		_, err := HalfWay(clock.Left, runOut, up, down, Scale{})
		return err
	}
	for _, row := range []struct {
		err   error
		field Field
	}{
		{high(-1, 3, Scale{}), RunOut}, {high(nan, 3, Scale{}), RunOut}, {high(1, nan, Scale{}), Hour}, {high(1, inf, Scale{}), Hour},
		{high(1, 3, Scale{Division: -1}), Division}, {high(1, 3, Scale{HourStep: inf}), HourStep},
		{half(1, nan, 3), Rising}, {half(1, 3, nan), Falling}, {half(1, 3, 15), Falling}, {half(-1, 3, 9), RunOut},
	} {
		var bad *Error
		require.ErrorAs(t, row.err, &bad)
		assert.Equal(t, row.field, bad.Field)
	}
}
