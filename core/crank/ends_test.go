package crank_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/lsq"
)

const twinLong = 260.0 // mm

// twinReads is a twin whose axis stands at such a place by what a dial reads there.
func twinReads(t *testing.T, e func(x float64) clock.Vec, places ...float64) *crank.Stand {
	t.Helper()
	a := crank.Assembly{
		Rim: 55, Joints: []crank.Joint{{At: 100, Throw: 27}, {At: 160, Throw: 27, Phase: 6}},
		Rests: [2]crank.Rest{{Piece: 0}, {Piece: 2, At: twinLong}},
	}
	var dials []crank.Station
	for _, x := range places {
		piece := 0
		for piece < 2 && a.Joints[piece].At < x {
			piece++
		}
		dials = append(dials, crank.Station{Piece: piece, At: x, E: e(x), Cov: lsq.Round(0.001), RunOut: 2 * e(x).Len()})
	}
	s, err := a.Solve(dials, nil)
	require.NoError(t, err)
	return s
}

// onBadCentre is a true twin hung with one centre hole off its shaft's axis: it wobbles by
// all of that there and not at the other end, in proportion between (by hand).
func onBadCentre(t *testing.T, hole clock.Vec, places ...float64) *crank.Stand {
	t.Helper()
	return twinReads(t, func(x float64) clock.Vec { return hole.Scale(-(1 - x/twinLong)) }, places...)
}

// A bad centre is found by two dials on its shaft, and told from a bent shaft by a third;
// the good one at the other end is known for good.
func TestABadCentreOfSeveralThrows(t *testing.T) {
	hole := clock.Polar(0.05, 4)
	s := onBadCentre(t, hole, 20, 70, 120, 140, 190, 240)
	left := s.Shaft(clock.Left)
	assert.Equal(t, crank.SupportOrBent, left.State)
	assert.InDelta(t, 0, left.Hole.Sub(hole).Len(), 1e-9)
	assert.Equal(t, crank.Sound, s.Shaft(clock.Right).State)
	s = onBadCentre(t, hole, 20, 45, 70, 120, 140, 190, 240)
	assert.Equal(t, crank.BadSupport, s.Shaft(clock.Left).State)
	assert.Equal(t, crank.Unseen, onBadCentre(t, hole, 70, 120, 140, 190).Shaft(clock.Left).State)
}

// What reads inside is true as it hangs while a centre is in doubt: nobody looked, or it
// was found wanting and nothing tells it from a bent shaft. Only who hasn't looked is asked to.
func TestNoneIsTrueOnADoubtfulCentre(t *testing.T) {
	small := clock.Polar(0.01, 4)
	for _, row := range []struct {
		hole    clock.Vec
		places  []float64
		verdict crank.Verdict
		asked   bool
	}{
		{small, []float64{70, 120, 140, 190}, crank.FitAsHung, true},
		{small, []float64{20, 70, 120, 140, 190, 240}, crank.FitAsHung, false},
		{small, []float64{20, 45, 70, 120, 140, 190, 240}, crank.Fit, false},
		{clock.Vec{}, []float64{20, 70, 120, 140, 190, 240}, crank.Fit, false},
	} {
		n := crank.PlanThrows([]crank.ThrowsPass{{Stand: onBadCentre(t, row.hole, row.places...)}}, crank.Tolerance{RunOut: 0.06, Tilt: 60})
		assert.Equal(t, row.verdict, n.Verdict, "%v", row.places)
		asked := false
		for _, a := range n.Asks {
			asked = asked || a.What == crank.AskCentres
		}
		assert.Equal(t, row.asked, asked, "%v", row.places)
	}
}

// Where no bumping mends what the needles show, as where the throws of the first pin don't
// match (by hand), a centre that nobody has looked at is named.
func TestADoubtfulCentreIsNamedWhereBumpingIsNoHelp(t *testing.T) {
	mismatched := func(x float64) clock.Vec {
		y := -0.1 * x / twinLong
		if x > 100 {
			y += 0.1
		}
		return clock.Vec{T: y}
	}
	for _, row := range []struct {
		places []float64
		causes []crank.JointCause
	}{
		{[]float64{70, 120, 140, 190}, []crank.JointCause{{Joint: -1, Cause: crank.CentreOrShaft}}},
		{[]float64{20, 70, 120, 140, 190, 240}, nil},
	} {
		n := crank.PlanThrows([]crank.ThrowsPass{{Stand: twinReads(t, mismatched, row.places...)}}, crank.Tolerance{RunOut: 0.01, Tilt: 60})
		assert.Equal(t, crank.Unmendable, n.Why)
		assert.Equal(t, row.causes, n.Causes)
	}
}
