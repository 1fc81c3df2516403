package crank_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/lsq"
	"pintwelve/core/tryout"
)

// Rounds that differ by more than their doubt are not averaged, whatever is logged:
// the side to strike is the later round's.
func TestRoundsThatDifferAreTwo(t *testing.T) {
	tol := crank.Tolerance{RunOut: allowed}
	passes := []crank.Pass{one(t, twist(0.65), 0.003), one(t, twist(-0.25), 0.003)}
	n := crank.Plan(passes, tol)
	assert.Equal(t, 1, n.Rounds)
	require.Len(t, n.Steps, 1)
	assert.Equal(t, 9.0, n.Steps[0].Hour)
	assert.Contains(t, n.Asks, crank.Ask{What: crank.AskSince, Pass: 1})
	assert.Empty(t, n.Tries, "what isn't logged teaches nothing")

	passes[1].Since = crank.Nothing
	n = crank.Plan(passes, tol)
	assert.Equal(t, 9.0, n.Steps[0].Hour, "the later stands")
	assert.Greater(t, n.Discrepancy.Value, 10*thou, "and the difference is the dials'")
	assert.False(t, asks(&n, crank.AskSince))

	passes[1].Since = crank.Changed
	n = crank.Plan(passes, tol)
	assert.Equal(t, 1, n.Rounds)
	assert.False(t, asks(&n, crank.AskSince), "it was said")
}

// Nobody having looked, a crank is true as it hangs, and two readings are asked for.
func TestTrueAsItHangs(t *testing.T) {
	tol := crank.Tolerance{RunOut: allowed}
	p := one(t, tryout.Start{}, 0.001)
	n := crank.Plan([]crank.Pass{p}, tol)
	assert.Equal(t, crank.FitAsHung, n.Verdict)
	assert.True(t, asks(&n, crank.AskCentres))
	p.Pose.Crank.CentresKnown = true
	n = crank.Plan([]crank.Pass{p}, tol)
	assert.Equal(t, crank.Fit, n.Verdict)
	assert.Empty(t, n.Asks)
}

// After one blow that went the other way one light blow and nothing else; after two
// it stops, names the causes and gives a test that tells them apart.
func TestTwoOtherWaysStop(t *testing.T) {
	tol := crank.Tolerance{RunOut: allowed}
	pinched := func(d float64) tryout.Start {
		return tryout.Start{D: clock.Vec{N: d}, G: clock.Vec{N: 0.002}}
	}
	passes := then(t, 0.003, pinched(0.2), pinched(0.3), strikeRight(3, 1))
	n := crank.Plan(passes, tol)
	require.Len(t, n.Steps, 1)
	assert.Equal(t, crank.Strike, n.Steps[0].Kind)
	assert.True(t, n.Steps[0].Trial)
	assert.Less(t, n.Steps[0].Dose, 1.0)
	passes[1].Done = []crank.Done{strikeRight(3, n.Steps[0].Dose)}
	passes = append(passes, one(t, pinched(0.3+0.1*n.Steps[0].Dose), 0.003))
	n = crank.Plan(passes, tol)
	assert.Equal(t, crank.Stop, n.Why)
	assert.Empty(t, n.Steps)
	assert.Subset(t, n.Causes, []crank.Cause{crank.HoursFromWrongEnd, crank.DialsExchanged, crank.WrongWheel, crank.HourMirrored})
	assert.True(t, asks(&n, crank.AskWitness))
	w := n.Witness
	assert.Greater(t, math.Abs(w.Shows-w.Mirrored), 0.005)
	assert.Greater(t, math.Abs(w.Shows-w.Exchanged), 0.005)
}

// What was logged stays as it was given.
func TestPlanLeavesThePassesAlone(t *testing.T) {
	done := []crank.Done{strikeRight(3, 1), {Kind: crank.Squeeze, Hour: 6, Dose: 1}}
	before := tryout.Start{D: clock.Vec{N: 0.3}, G: clock.Vec{T: -0.003}}
	passes := then(t, 0.003, before, tryout.Start{D: clock.Vec{N: 0.2}, G: clock.Vec{T: -0.003}}, done...)
	crank.Plan(passes, crank.Tolerance{RunOut: allowed})
	assert.Equal(t, []crank.Done{strikeRight(3, 1), {Kind: crank.Squeeze, Hour: 6, Dose: 1}}, passes[0].Done)
}

// A squeeze's hinge off the middle of the pin is learned, and named before the pin.
func TestHingeIsLearned(t *testing.T) {
	after := func(g float64) tryout.Start {
		return tryout.Start{D: clock.Vec{T: 30 * (g + 0.006)}, G: clock.Vec{T: g}}
	}
	squeeze := crank.Done{Kind: crank.Squeeze, Hour: 6, Dose: 2}
	passes := then(t, 0.001, after(-0.006), after(-0.003), squeeze)
	passes[1].Done = []crank.Done{squeeze}
	passes = append(passes, one(t, after(0), 0.001))
	n := crank.Plan(passes, crank.Tolerance{RunOut: allowed})
	assert.InDelta(t, 20, n.Hinge.At, 6, "drawn towards the middle")
	require.Equal(t, crank.Unmendable, n.Why)
	assert.Equal(t, crank.Hinged, n.Causes[0])
	assert.Contains(t, n.Causes, crank.PinSlipped)
}

// Rim gaps read in steps may miss each other by 1.96 × 2 step/√12, no more.
func TestRimGapsMayMissByTheirSteps(t *testing.T) {
	pose := solved(t, bench(), dials(clock.Vec{}, clock.Vec{}))
	for _, row := range []struct {
		closure float64
		askew   bool
	}{{0.050, false}, {-0.050, false}, {0.060, true}, {-0.060, true}} {
		_, got, askew, err := pose.Gaps(nil, crank.RimGaps{At12: 1 + row.closure, At3: 1, At6: 1, At9: 1, Step: 0.05})
		require.NoError(t, err)
		assert.InDelta(t, row.closure, got, 1e-12)
		assert.Equal(t, row.askew, askew, "%g", row.closure)
	}
}

// How far a strike's amount may be out is that across the pin, not along it.
func TestTwistIsAsSureAsItsOwnDirection(t *testing.T) {
	st := dials(clock.Vec{N: 0.05}, clock.Vec{N: -0.05})
	for i := range st {
		st[i].Cov = lsq.Cov{TT: 1e-4, NN: 1e-6}
	}
	pose := solved(t, bench(), st)
	assert.InDelta(t, 1.96*math.Sqrt(8)*1e-3, pose.StrikeHalfWidth95(st), 1e-5)
}
