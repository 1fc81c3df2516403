package crank_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/lsq"
)

// Equal, in-phase readings: nothing runs out at the bearings on those stations,
// yet the journals lean, each with a limit of its own (MODEL §5).
func TestVerdictGoesByRunOutAndTilt(t *testing.T) {
	st := dials(clock.Polar(0.02, 4), clock.Polar(0.02, 4))
	pose := solved(t, bench(), st)
	lean := 0.02 / 50 * 180 * 60 / math.Pi // 1.375′
	ends := []crank.Place{{Half: clock.Left, At: 10}, {Half: clock.Right, At: 190}}
	for _, row := range []struct {
		name string
		tol  crank.Tolerance
		want crank.Verdict
	}{
		{"dials alone, wide", crank.Tolerance{RunOut: 0.05}, crank.Fit},
		{"dials alone, narrow", crank.Tolerance{RunOut: 0.03}, crank.OutOfTrue},
		{"tilt inside", crank.Tolerance{RunOut: 0.05, Tilt: lean + 0.01}, crank.Fit},
		{"tilt outside", crank.Tolerance{RunOut: 0.05, Tilt: lean - 0.01}, crank.OutOfTrue},
		{"shaft ends inside", crank.Tolerance{RunOut: 0.05, Running: 0.033, Places: ends}, crank.Fit},
		{"shaft ends outside", crank.Tolerance{RunOut: 0.05, Running: 0.031, Places: ends}, crank.OutOfTrue},
	} {
		t.Run(row.name, func(t *testing.T) {
			a := pose.Advise(st, row.tol)
			assert.Equal(t, row.want, a.Verdict)
			assert.Equal(t, row.want == crank.OutOfTrue, a.Close)
			assert.False(t, a.Strike)
			assert.InDelta(t, lean, a.Tilt[clock.Left].Value, 1e-9)
			assert.InDelta(t, lean, a.Tilt[clock.Right].Value, 1e-9)
		})
	}
}

func TestOvalUnseenIsNeverFitForSure(t *testing.T) {
	st := dials(clock.Polar(0.005, 4), clock.Polar(0.005, 4))
	for i := range st {
		st[i].Cov = lsq.Round(micron)
	}
	st[1].Unsure = true
	pose := solved(t, bench(), st)
	a := pose.Advise(st, crank.Tolerance{RunOut: 0.05})
	assert.Equal(t, crank.Fit, a.Plain)
	assert.Equal(t, crank.TooClose, a.Verdict)
	st[1].Unsure = false
	assert.Equal(t, crank.Fit, pose.Advise(st, crank.Tolerance{RunOut: 0.05}).Verdict)
}

// The run-out that a dial showed goes before what its vector makes of it, and
// scatter that was found counts by Student's t.
func TestTheNeedlesOwnRunOutIsJudged(t *testing.T) {
	st := dials(clock.Vec{}, clock.Polar(0.01, 3))
	st[0].Cov, st[0].RunOut, st[0].Sigma = lsq.Round(0.01), 0.004, 0.002
	st[1].Cov, st[1].Nu = lsq.Round(0.001), 4
	pose := solved(t, bench(), st)
	a := pose.Advise(st, crank.Tolerance{RunOut: 0.0035})
	assert.Equal(t, 1, a.Station)
	assert.InDelta(t, 2.776*2*0.001, a.Worst.HalfWidth95, 1e-5, "t for 4 degrees of freedom, value from memory")
	a = pose.Advise(st[:1], crank.Tolerance{RunOut: 0.0035})
	assert.InDelta(t, 0.004, a.Worst.Value, 1e-12)
	assert.InDelta(t, 1.96*0.002, a.Worst.HalfWidth95, 1e-6)
}

// What would tell: the doubt of the coarser dial weighs most, and its shaft has
// but one station.
func TestTheWeakestDialIsNamed(t *testing.T) {
	st := dials(clock.Polar(0.025, 3), clock.Polar(0.025, 9))
	st[0].Cov, st[1].Cov = lsq.Round(0.001), lsq.Round(0.004)
	pose := solved(t, bench(), st)
	a := pose.Advise(st, crank.Tolerance{RunOut: 0.05})
	assert.Equal(t, crank.TooClose, a.Verdict)
	assert.Equal(t, 1, a.Weak)
	assert.True(t, a.SecondStation)
	two := append(st, crank.Station{Piece: 1, At: 180, E: clock.Polar(0.01, 9), Cov: lsq.Round(0.002)})
	pose = solved(t, bench(), two)
	a = pose.Advise(two, crank.Tolerance{RunOut: 0.05})
	assert.Equal(t, clock.Right, two[a.Weak].Half())
	assert.False(t, a.SecondStation)
}

// How sure the moves are: by hand, one dial a shaft half-way from centre to pin,
// so that D = 2 e_R − 2 e_L and G = (e_L + e_R)/50.
func TestHowSureTheMovesAre(t *testing.T) {
	st := dials(clock.Vec{T: -0.05}, clock.Vec{T: -0.05})
	for i := range st {
		st[i].Cov, st[i].Nu, st[i].Dial = lsq.Round(0.002), 6, i
	}
	pose := solved(t, bench(), st)
	d, g := pose.UncertaintyOfD(st), pose.UncertaintyOfG(st)
	assert.InDelta(t, 8*0.002*0.002, d.Cov.TT, 1e-12)
	assert.InDelta(t, 2*0.002*0.002/2500, g.Cov.NN, 1e-15)
	assert.InDelta(t, 12, d.Nu, 1e-9, "two dials, each its own scatter: both count")
	st[1].Dial = 0
	assert.InDelta(t, 6, pose.UncertaintyOfD(st).Nu, 1e-9, "one dial carried across: its scatter is one")
	st[0].Nu, st[1].Nu = 0, 0
	assert.Zero(t, pose.UncertaintyOfD(st).Nu, "the division governs: known")

	assert.InDelta(t, 1.96*0.002*math.Sqrt(8), pose.StrikeHalfWidth95(st), 1e-5)
	plus, from, to := pose.CloseHalfWidth95(st)
	assert.InDelta(t, 1.96*0.002*math.Sqrt2/50*120, plus, 1e-6, "arm R + r")
	move, _ := pose.Close()
	assert.Equal(t, crank.Squeeze, move.Kind)
	assert.InDelta(t, 6, move.Hour, 1e-9)
	assert.InDelta(t, 6, clock.Midway(from, to), 1e-9)
	sector := math.Asin(1.96*0.002*math.Sqrt2/50/0.002) * 6 / math.Pi
	assert.InDelta(t, sector, pose.UncertaintyOfG(st).Sector(pose.G), 1e-4)
	assert.InDelta(t, 1.5*sector, clock.Apart(from, 6), 1e-3, "the ray from the pin is (R + r)/r as long as that from the shaft")
}

func TestResidualsOfMoreThanEnough(t *testing.T) {
	c := bench()
	c.Mount, c.Support = crank.VBlocks, [2]float64{20, 180}
	st := dials(clock.Vec{T: 0.03}, clock.Vec{})
	st[0].At = 60
	st = append(st, crank.Station{Piece: 0, At: 80, E: clock.Vec{T: 0.06}})
	pose := solved(t, c, st)
	// y = b (x − 20): b = (40·0.03 + 60·0.06)/(40² + 60²).
	b := (40*0.03 + 60*0.06) / (40*40 + 60*60)
	assert.InDelta(t, 0.03-40*b, st[0].E.Sub(pose.At(clock.Left, st[0].At)).T, 1e-12)
	assert.InDelta(t, 0.06-60*b, st[2].E.Sub(pose.At(clock.Left, st[2].At)).T, 1e-12)
}

// Whatever is typed, no answer is NaN or without end.
func TestAnswersAreAlwaysNumbers(t *testing.T) {
	c := bench()
	for _, e := range []float64{0, 1e-300, 1e-9, 1, 1e5} {
		for _, cov := range []lsq.Cov{{}, lsq.Round(1e-12), lsq.Round(1e5), lsq.Oriented(1e5, 0, 2), lsq.Oriented(1e-9, 1, 5)} {
			st := dials(clock.Vec{T: e}, clock.Vec{N: -e})
			st[0].Cov, st[1].Cov, st[1].Nu = cov, cov, 1
			pose, err := c.Solve(st)
			require.NoError(t, err)
			for _, tol := range []crank.Tolerance{{}, {RunOut: 0.05}, {RunOut: 0.05, Tilt: 1e-300}} {
				a := pose.Advise(st, tol)
				plus, from, to := pose.CloseHalfWidth95(st)
				move, other := pose.Close()
				for _, x := range []float64{
					a.Worst.Value, a.Worst.HalfWidth95, a.Floor.Value, a.Floor.HalfWidth95, a.Tilt[0].Value, a.Tilt[1].HalfWidth95,
					a.StrikeWorth, a.CloseWorth, plus, from, to, move.Hour, move.Amount, other.Hour, other.Arm, pose.StrikeHalfWidth95(st),
				} {
					assert.False(t, math.IsNaN(x) || math.IsInf(x, 0), "e %g, cov %v", e, cov)
				}
			}
		}
	}
}

// Twist and gap that all but cancel on one dial: either gone by itself leaves the crank
// worse than it is, both gone leave it true.
func TestWhatOnlyBothMovesMendIsGivenBoth(t *testing.T) {
	st := dials(clock.Vec{T: -0.017, N: -0.004}, clock.Vec{T: 0.009, N: 0.014})
	st[1].At = 160
	for i := range st {
		st[i].Cov, st[i].Dial = lsq.Round(1e-4), i
	}
	pose := solved(t, bench(), st)
	tol := crank.Tolerance{RunOut: 0.03}
	a := pose.Advise(st, tol)
	worst := func(d, g clock.Vec) float64 {
		then := pose.After(d, g)
		return math.Max(then.RunOut(clock.Left, 50), then.RunOut(clock.Right, 160))
	}
	level := clock.Vec{T: pose.D.T}
	require.Greater(t, worst(level, pose.G), a.Worst.Value, "struck alone")
	require.Greater(t, worst(pose.D, clock.Vec{}), a.Worst.Value, "closed alone")
	require.Less(t, worst(level, clock.Vec{}), tol.RunOut, "both")
	require.False(t, a.StrikeWorth > tol.RunOut/2 && a.CloseWorth > tol.RunOut/2, "not each by its own worth")
	assert.Equal(t, crank.OutOfTrue, a.Verdict)
	assert.True(t, a.Strike && a.Close)
}
