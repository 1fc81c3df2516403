package crank_test

import (
	"errors"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/lsq"
)

// bench is a plain crank between centres; its numbers make mental arithmetic.
func bench() crank.Crank {
	return crank.Crank{
		Throw: 40, Rim: 80, Pin: 100,
		Support: [2]float64{0, 200}, Bearing: [2]float64{50, 150},
		CentresKnown: true,
	}
}

// dials puts one on each shaft half-way from centre to pin.
func dials(left, right clock.Vec) []crank.Station {
	return []crank.Station{
		{Piece: 0, At: 50, E: left},
		{Piece: 1, At: 150, E: right},
	}
}

func solved(t *testing.T, c crank.Crank, st []crank.Station) crank.Pose {
	t.Helper()
	pose, err := c.Solve(st)
	require.NoError(t, err)
	return pose
}

// Model, section 3: between centres with one dial each,
// d = e_R l_R/a_R − e_L l_L/a_L; g = e_L/a_L + e_R/a_R.
func TestBetweenCentresByHand(t *testing.T) {
	pose := solved(t, bench(), dials(clock.Vec{T: 0.01, N: 0.02}, clock.Vec{T: 0.03, N: -0.04}))
	assert.InDelta(t, 0.04, pose.D.T, 1e-12)
	assert.InDelta(t, -0.12, pose.D.N, 1e-12)
	assert.InDelta(t, 0.04/50, pose.G.T, 1e-15)
	assert.InDelta(t, -0.02/50, pose.G.N, 1e-15)
	assert.InDelta(t, 0.02, pose.RunOut(clock.Left, 50)*0.01/0.022360679774997896, 1e-12, "eccentricity e, full movement 2e: ISO 1101, ASME Y14.5")
}

// Model, section 5: equal, in-phase readings where l/a is the same on both
// sides: offset 0, gap slope only, widest at the common high spot; run-out at
// bearings on those stations 0, and the shafts tilt oppositely by e/a.
func TestEqualInPhaseReadings(t *testing.T) {
	e := clock.Polar(0.03, 4)
	pose := solved(t, bench(), dials(e, e))
	assert.InDelta(t, 0, pose.D.Len(), 1e-15)
	across, widest := pose.Gap()
	assert.InDelta(t, 4, widest, 1e-9)
	assert.InDelta(t, 160*0.06/50, across, 1e-12)
	run := pose.Running(pose.D, pose.G)
	assert.InDelta(t, 0, run.RunOut(clock.Left, 50), 1e-15)
	assert.InDelta(t, 0, run.RunOut(clock.Right, 150), 1e-15)
	nearVec(t, e.Scale(1/50.0), run.B[clock.Left], "left shaft")
	nearVec(t, e.Scale(-1/50.0), run.B[clock.Right], "right shaft")
	assert.InDelta(t, 0.03/50*180*60/math.Pi, run.Tilt(clock.Left), 1e-9)
}

// The worked figures of MODEL §4: R 40, r 80.
func TestWhereToSqueezeAndSpread(t *testing.T) {
	for _, row := range []struct {
		name              string
		g                 clock.Vec
		kind              crank.Kind
		hour, arm         float64
		other             crank.Kind
		otherHour, otherA float64
	}{
		{"open at 6: squeeze at 6, arm R + r", clock.Vec{T: -0.001}, crank.Squeeze, 6, 120, crank.Spread, 0, 40},
		{"open at 12: spread at 6, arm R + r", clock.Vec{T: 0.001}, crank.Spread, 6, 120, crank.Squeeze, 0, 40},
		{"open at 3: squeeze at 2, or spread at 10, arm 69", clock.Vec{N: 0.001}, crank.Squeeze, 2, math.Sqrt(4800), crank.Spread, 10, math.Sqrt(4800)},
		{"open at 9: squeeze at 10, or spread at 2", clock.Vec{N: -0.001}, crank.Squeeze, 10, math.Sqrt(4800), crank.Spread, 2, math.Sqrt(4800)},
	} {
		t.Run(row.name, func(t *testing.T) {
			pose := solved(t, bench(), dials(row.g.Scale(25), row.g.Scale(25)))
			nearVec(t, row.g, pose.G, "gap slope")
			move, other := pose.Close()
			assert.Equal(t, row.kind, move.Kind)
			assert.InDelta(t, 0, clock.Apart(row.hour, move.Hour), 1e-9)
			assert.InDelta(t, row.arm, move.Arm, 1e-9)
			assert.InDelta(t, row.arm*0.001, move.Amount, 1e-12)
			assert.Equal(t, row.other, other.Kind)
			assert.InDelta(t, 0, clock.Apart(row.otherHour, other.Hour), 1e-9)
			assert.InDelta(t, row.otherA, other.Arm, 1e-9)
		})
	}
}

const thou = 0.0254

// The trade's patterns: common practice, no source.
func TestPatternsOfTheTrade(t *testing.T) {
	at := func(runOut, hour float64) clock.Vec { return clock.Polar(runOut*thou/2, hour) }
	for _, row := range []struct {
		name        string
		left, right clock.Vec
		verdict     crank.Verdict
		strike      bool
		gap         bool
		kind        crank.Kind
		wheel       clock.End
		hour        float64
		worst       float64
	}{
		{"both high at the pin: spread opposite", at(5, 0), at(5, 0), crank.OutOfTrue, false, true, crank.Spread, 0, 6, 5},
		{"both high opposite the pin: squeeze there", at(5, 6), at(5, 6), crank.OutOfTrue, false, true, crank.Squeeze, 0, 6, 5},
		{"opposed, left at 3 and right at 9: strike", at(5, 3), at(5, 9), crank.OutOfTrue, true, false, crank.Strike, clock.Right, 9, 5},
		{"opposed, left at 9 and right at 3: strike", at(5, 9), at(5, 3), crank.OutOfTrue, true, false, crank.Strike, clock.Right, 3, 5},
		{"0.5 and 1.0 rising together: leave it", at(0.5, 6), at(1, 6), crank.Fit, false, false, 0, 0, 0, 1},
		{"1.9 where 2 is allowed", at(1.9, 3), at(1, 9), crank.Fit, false, false, 0, 0, 0, 1.9},
		{"2.1 where 2 is allowed", at(2.1, 3), at(1, 9), crank.OutOfTrue, true, false, crank.Strike, clock.Right, 9, 2.1},
		{"opposed at 12 and 6: not mendable by bumping", at(5, 0), at(5, 6), crank.NotMendable, false, false, 0, 0, 0, 5},
	} {
		t.Run(row.name, func(t *testing.T) {
			st := dials(row.left, row.right)
			pose := solved(t, bench(), st)
			a := pose.Advise(st, crank.Tolerance{RunOut: 2 * thou})
			assert.Equal(t, row.verdict, a.Plain)
			assert.Equal(t, row.verdict, a.Verdict, "exact readings leave no doubt")
			assert.Equal(t, row.strike, a.Strike)
			assert.Equal(t, row.gap, a.Close)
			assert.InDelta(t, row.worst*thou, a.Worst.Value, 1e-12)
			if row.strike {
				move, other := pose.Strike()
				assert.Equal(t, row.wheel, move.Wheel)
				assert.Equal(t, row.hour, move.Hour)
				assert.Equal(t, row.wheel.Other(), other.Wheel)
				assert.Equal(t, clock.Mirror(row.hour), other.Hour)
			}
			if row.gap {
				move, _ := pose.Close()
				assert.Equal(t, row.kind, move.Kind)
				assert.InDelta(t, row.hour, move.Hour, 1e-9)
			}
		})
	}
}

// A twist and a gap, both large: worth doing together (MODEL §7).
func TestBothMovesTogether(t *testing.T) {
	st := dials(clock.Vec{T: -0.06, N: 0.04}, clock.Vec{T: -0.06, N: -0.04})
	pose := solved(t, bench(), st)
	a := pose.Advise(st, crank.Tolerance{RunOut: 2 * thou})
	assert.True(t, a.Strike && a.Close)
	assert.Greater(t, a.StrikeWorth, thou)
	assert.Greater(t, a.CloseWorth, a.StrikeWorth)
	small := dials(clock.Vec{T: -0.06, N: 0.01}, clock.Vec{T: -0.06, N: -0.01})
	pose = solved(t, bench(), small)
	a = pose.Advise(small, crank.Tolerance{RunOut: 2 * thou})
	assert.False(t, a.Strike, "the strike is not worth its reading yet")
	assert.True(t, a.Close)
}

// Half a thou of rounding in every reading: what it does to the same figures.
func TestRoundingLeavesDoubt(t *testing.T) {
	sigma := lsq.Round(0.5 * thou / math.Sqrt(24))
	for _, row := range []struct {
		name    string
		runOut  float64
		verdict crank.Verdict
	}{
		{"1.0 of 2: inside for sure", 1.0, crank.Fit},
		{"1.9 of 2: too close to call", 1.9, crank.TooClose},
		{"2.1 of 2: too close to call", 2.1, crank.TooClose},
		{"3.0 of 2: outside for sure", 3.0, crank.OutOfTrue},
	} {
		t.Run(row.name, func(t *testing.T) {
			st := dials(clock.Polar(row.runOut*thou/2, 3), clock.Polar(row.runOut*thou/2, 9))
			st[0].Cov, st[1].Cov = sigma, sigma
			pose := solved(t, bench(), st)
			a := pose.Advise(st, crank.Tolerance{RunOut: 2 * thou})
			assert.Equal(t, row.verdict, a.Verdict)
			assert.Equal(t, row.runOut > 2, a.Plain == crank.OutOfTrue)
			assert.Equal(t, row.runOut > 2, a.Strike, "the plain verdict has its move too")
			assert.InEpsilon(t, 1.96*2*0.5*thou/math.Sqrt(24), a.Worst.HalfWidth95, 1e-4)
		})
	}
}

// One dial is outside for sure, but the other is read so coarsely that neither
// twist nor gap stands above the noise: nothing may be advised.
func TestDialsThatCantTell(t *testing.T) {
	st := dials(clock.Vec{T: 1.2 * thou}, clock.Vec{N: 1.2 * thou})
	st[0].Cov, st[1].Cov = lsq.Round(0.1*thou), lsq.Round(thou)
	pose := solved(t, bench(), st)
	a := pose.Advise(st, crank.Tolerance{RunOut: 2 * thou})
	assert.Equal(t, crank.OutOfTrue, a.Plain)
	assert.Equal(t, crank.CantTell, a.Verdict)
}

// mirrored looks at the same crank from the other end of the frame: hours h
// read 12 − h, wheels keep their names, so N changes sign.
func TestSeenFromTheOtherEndIsTheMirrorImage(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	for range 500 {
		c, st := someCrank(rng)
		pose := solved(t, c, st)
		for i := range st {
			st[i].E = st[i].E.From(clock.Right)
			st[i].Cov.TN = -st[i].Cov.TN
		}
		seen := solved(t, c, st)
		nearVec(t, pose.D.From(clock.Right), seen.D, "offset")
		nearVec(t, pose.G.From(clock.Right), seen.G, "gap slope")
		move, _ := pose.Close()
		image, _ := seen.Close()
		assert.Equal(t, move.Kind, image.Kind)
		assert.InDelta(t, 0, clock.Apart(clock.Mirror(move.Hour), image.Hour), 1e-9)
		assert.InDelta(t, move.Amount, image.Amount, 1e-9)
		blow, _ := pose.Strike()
		imageBlow, _ := seen.Strike()
		assert.Equal(t, blow.Wheel, imageBlow.Wheel)
		assert.InDelta(t, clock.Mirror(blow.Hour), imageBlow.Hour, 1e-12)
		if t.Failed() {
			return
		}
	}
}

// Model, section 1: turning the crank end for end, halves renamed and seen from
// the new left, d_t and g_n change sign, d_n and g_t do not.
func TestTurnedEndForEnd(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	for range 500 {
		c, st := someCrank(rng)
		pose := solved(t, c, st)
		length := c.Support[0] + c.Support[1]
		turn := func(x float64) float64 { return length - x }
		e := c
		e.Pin = turn(c.Pin)
		e.Support = [2]float64{turn(c.Support[1]), turn(c.Support[0])}
		e.Bearing = [2]float64{turn(c.Bearing[1]), turn(c.Bearing[0])}
		for i := range st {
			st[i].Piece, st[i].At = 1-st[i].Piece, turn(st[i].At)
			st[i].E.N, st[i].Cov.TN = -st[i].E.N, -st[i].Cov.TN
		}
		turned := solved(t, e, st)
		nearVec(t, clock.Vec{T: -pose.D.T, N: pose.D.N}, turned.D, "offset")
		nearVec(t, clock.Vec{T: pose.G.T, N: -pose.G.N}, turned.G, "gap slope")
		before, after := pose.Running(pose.D, pose.G), turned.Running(turned.D, turned.G)
		assert.InDelta(t, before.Tilt(clock.Left), after.Tilt(clock.Right), 1e-9)
		if t.Failed() {
			return
		}
	}
}

// Units change no answer: everything in inches is the same crank.
func TestScaleChangesNoAnswer(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	for range 200 {
		c, st := someCrank(rng)
		pose := solved(t, c, st)
		k := 1 / 25.4
		i := c
		i.Throw, i.Rim, i.Pin = c.Throw*k, c.Rim*k, c.Pin*k
		for h := range 2 {
			i.Support[h], i.Bearing[h] = c.Support[h]*k, c.Bearing[h]*k
		}
		for n := range st {
			st[n].At, st[n].E, st[n].Cov = st[n].At*k, st[n].E.Scale(k), st[n].Cov.Scale(k*k)
		}
		inch := solved(t, i, st)
		nearVec(t, pose.D, inch.D.Scale(25.4), "offset")
		nearVec(t, pose.G, inch.G, "gap slope")
	}
}

func TestImpossibleLengthsAreNamed(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		name   string
		spoil  func(*crank.Crank, []crank.Station)
		length crank.Length
		half   clock.End
		above  float64 // nan: unbounded
		below  float64
	}{
		{"no throw", func(c *crank.Crank, _ []crank.Station) { c.Throw = 0 }, crank.Throw, 0, 0, nan},
		{"throw not a number", func(c *crank.Crank, _ []crank.Station) { c.Throw = nan }, crank.Throw, 0, 0, nan},
		{"rim inside the pin", func(c *crank.Crank, _ []crank.Station) { c.Rim = 39 }, crank.Rim, 0, 40, nan},
		{"rim without end", func(c *crank.Crank, _ []crank.Station) { c.Rim = inf }, crank.Rim, 0, 40, nan},
		{"pin nowhere", func(c *crank.Crank, _ []crank.Station) { c.Pin = inf }, crank.Pin, 0, nan, nan},
		{"left support beyond the pin", func(c *crank.Crank, _ []crank.Station) { c.Support[0] = 120 }, crank.Support, clock.Left, nan, 100},
		{"right support short of the pin", func(c *crank.Crank, _ []crank.Station) { c.Support[1] = 100 }, crank.Support, clock.Right, 100, nan},
		{"left bearing at the pin", func(c *crank.Crank, _ []crank.Station) { c.Bearing[0] = 100 }, crank.Bearing, clock.Left, nan, 100},
		{"right bearing short of the pin", func(c *crank.Crank, _ []crank.Station) { c.Bearing[1] = 30 }, crank.Bearing, clock.Right, 100, nan},
		{"left dial at the pin", func(_ *crank.Crank, s []crank.Station) { s[0].At = 100 }, crank.DialAt, clock.Left, 0, 100},
		{"left dial outside its centre", func(_ *crank.Crank, s []crank.Station) { s[0].At = -3 }, crank.DialAt, clock.Left, 0, 100},
		{"right dial beyond the pin", func(_ *crank.Crank, s []crank.Station) { s[1].At = 90 }, crank.DialAt, clock.Right, 100, 200},
		{"right dial not a number", func(_ *crank.Crank, s []crank.Station) { s[1].At = nan }, crank.DialAt, clock.Right, 100, 200},
		{"left dial beyond the pin on V-blocks", func(c *crank.Crank, s []crank.Station) { c.Mount, s[0].At = crank.VBlocks, 101 }, crank.DialAt, clock.Left, nan, 100},
	} {
		t.Run(row.name, func(t *testing.T) {
			c, st := bench(), dials(clock.Vec{}, clock.Vec{})
			row.spoil(&c, st)
			_, err := c.Solve(st)
			var bad *crank.LengthError
			require.ErrorAs(t, err, &bad)
			assert.Equal(t, row.length, bad.Length)
			assert.Equal(t, row.half, bad.Half)
			assert.Equal(t, !math.IsNaN(row.above), bad.HasAbove)
			assert.Equal(t, !math.IsNaN(row.below), bad.HasBelow)
			if bad.HasAbove {
				assert.Equal(t, row.above, bad.Above)
			}
			if bad.HasBelow {
				assert.Equal(t, row.below, bad.Below)
			}
			if row.length == crank.DialAt {
				assert.Equal(t, st[bad.Station].Half(), bad.Half)
			}
		})
	}
}

func TestMissingReadingsAreNamed(t *testing.T) {
	c := bench()
	left := dials(clock.Vec{}, clock.Vec{})[:1]
	_, err := c.Solve(left)
	var missing *crank.MissingError
	require.ErrorAs(t, err, &missing)
	assert.Equal(t, crank.MissingError{Half: clock.Right, Lack: crank.NoDial, At: 150}, *missing)

	c.Mount = crank.VBlocks
	st := dials(clock.Vec{}, clock.Vec{})
	st[0].At = c.Support[0]
	_, err = c.Solve(st)
	require.ErrorAs(t, err, &missing)
	assert.Equal(t, crank.MissingError{Half: clock.Left, Lack: crank.AtSupport, At: 50}, *missing)

	span := c.Pin - c.Support[0]
	for part, near := range map[float64]bool{0.049: true, 0.051: false, -0.049: true, -0.051: false} {
		st[0].At = c.Support[0] + part*span
		_, err = c.Solve(st)
		assert.Equal(t, near, errors.As(err, &missing), "%g of the way to the pin", part)
	}

	st = dials(clock.Vec{T: math.NaN()}, clock.Vec{})
	_, err = c.Solve(st)
	var bad *crank.StationError
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, 0, bad.Station)
	st = dials(clock.Vec{}, clock.Vec{})
	st[1].Cov = lsq.Cov{TT: 1, TN: 2, NN: 1}
	_, err = c.Solve(st)
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, 1, bad.Station)
}

// Two dials on one shaft go by these alone and find the centre hole off the
// axis; the other half goes by its centre.
func TestTwoStationsTakeTheCentreOut(t *testing.T) {
	c := bench()
	axis := func(x float64) clock.Vec {
		return clock.Vec{T: 0.02, N: -0.01}.Add(clock.Vec{T: 1e-4, N: 3e-4}.Scale(x - 100))
	}
	st := dials(clock.Vec{}, clock.Vec{T: 0.01})
	st[0].E = axis(50)
	st = append(st, crank.Station{Piece: 0, At: 20, E: axis(20)})
	pose := solved(t, c, st)
	nearVec(t, axis(100), pose.A[clock.Left], "axis at the pin")
	nearVec(t, axis(0), pose.Held[clock.Left], "axis at the centre")
	nearVec(t, clock.Vec{}, pose.Held[clock.Right], "the other is exact")
	after := pose.After(clock.Vec{}, clock.Vec{})
	nearVec(t, axis(0), after.At(clock.Left, 0), "the centre hole stays where it is in the shaft")
	nearVec(t, clock.Vec{}, after.At(clock.Right, 200), "and so does the other")
}
