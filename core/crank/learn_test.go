package crank_test

import (
	"math"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/tryout"
)

// then is a crank found sitting one way, something done, and found another way.
func then(t *testing.T, sigma float64, before, after tryout.Start, done ...crank.Done) []crank.Pass {
	found := one(t, before, sigma)
	found.Done = done
	return []crank.Pass{found, one(t, after, sigma)}
}

// lesson is what passes teach, as the plan has it.
func lesson(passes []crank.Pass) crank.Lesson {
	return crank.Plan(passes, crank.Tolerance{RunOut: 0.02}).Lesson
}

func twist(mm float64) tryout.Start { return tryout.Start{D: clock.Vec{N: mm}} }
func gap(t, n float64) tryout.Start { return tryout.Start{G: clock.Vec{T: t, N: n}} }

func strikeRight(hour, dose float64) crank.Done {
	return crank.Done{Kind: crank.Strike, Wheel: clock.Right, Hour: hour, Dose: dose}
}

// Model, section 7: κ = (κ₀/4 + Σ w κᵢ)/(1/4 + Σ w), w = p²/(p² + 4σ²), worked by hand.
// With dials at 75 of 120 mm, d_n is the difference of the two readings' 120/75
// parts, so that σ_d = √2 × 1.6 × σ of a reading.
func TestGainsByHand(t *testing.T) {
	const sigma = 0.01
	sigmaD := math.Sqrt2 * 1.6 * sigma
	passes := then(t, sigma, twist(0.30), twist(0.15), strikeRight(3, 1))
	passes[1].Done = []crank.Done{strikeRight(3, 0.5)}
	passes = append(passes, one(t, twist(0.02), sigma))

	w1 := 0.1 * 0.1 / (0.1*0.1 + 4*sigmaD*sigmaD)
	after1 := (0.25*0.1 + w1*0.15) / (0.25 + w1)
	p2 := after1 * 0.5
	w2 := p2 * p2 / (p2*p2 + 4*sigmaD*sigmaD)
	after2 := (0.25*0.1 + w1*0.15 + w2*0.13/0.5) / (0.25 + w1 + w2)

	l := lesson(passes[:2])
	assert.InEpsilon(t, after1, l.Gain[crank.Strike].PerDose, 1e-3)
	l = lesson(passes)
	assert.InEpsilon(t, after2, l.Gain[crank.Strike].PerDose, 1e-3)
	assert.InEpsilon(t, w1+w2, l.Gain[crank.Strike].Weight, 1e-3)
	assert.Equal(t, crank.Gain{PerDose: crank.UsualBend}, l.Gain[crank.Squeeze])
	require.Len(t, l.Tries, 2)
	assert.Equal(t, []int{0, 1}, []int{l.Tries[0].Pass, l.Tries[1].Pass})
	assert.InEpsilon(t, 0.15, l.Tries[0].Got, 1e-3)
	assert.InEpsilon(t, 0.1, l.Tries[0].Meant, 1e-3)
	assert.InEpsilon(t, math.Sqrt2*sigmaD, l.Tries[0].Sigma, 1e-3)
}

// What a move was meant to do follows from where it was made: the arm of a strike is
// R |sin φ|, and two of them add up; a squeeze works along the line from the pin.
func TestDoseCountsWithItsArm(t *testing.T) {
	for _, row := range []struct {
		name      string
		before    tryout.Start
		after     tryout.Start
		done      []crank.Done
		kind      crank.Kind
		dose, got float64
	}{
		{"strike at 2", twist(0.3), twist(0.2), []crank.Done{strikeRight(2, 1)}, crank.Strike, math.Sqrt(3) / 2, 0.1},
		{"left wheel at 9", twist(0.3), twist(0.2), []crank.Done{{Kind: crank.Strike, Wheel: clock.Left, Hour: 9, Dose: 1}}, crank.Strike, 1, 0.1},
		{"right wheel at 9", twist(-0.3), twist(-0.2), []crank.Done{strikeRight(9, 1)}, crank.Strike, 1, 0.1},
		{"three, one too many", twist(0.3), twist(0.2), []crank.Done{strikeRight(3, 1), strikeRight(3, 1), strikeRight(9, 0.5)}, crank.Strike, 1.5, 0.1},
		{"squeeze at 6", gap(-0.003, 0), gap(-0.002, 0), []crank.Done{{Kind: crank.Squeeze, Hour: 6, Dose: 1}}, crank.Squeeze, 1, 0.001},
		{"spread at 6", gap(0.003, 0), gap(0.002, 0), []crank.Done{{Kind: crank.Spread, Hour: 6, Dose: 1}}, crank.Spread, 1, 0.001},
		{"squeeze at 2, square to the pin", gap(0, 0.003), gap(0, 0.002), []crank.Done{{Kind: crank.Squeeze, Hour: 2, Dose: 1}}, crank.Squeeze, 1, 0.001},
		{"squeezes at 2 and 6", gap(-0.003, 0.003), gap(-0.002, 0.002), []crank.Done{{Kind: crank.Squeeze, Hour: 2, Dose: 1}, {Kind: crank.Squeeze, Hour: 6, Dose: 1}}, crank.Squeeze, math.Sqrt2, math.Sqrt2 * 0.001},
	} {
		l := lesson(then(t, 0.001, row.before, row.after, row.done...))
		require.Len(t, l.Tries, 1, row.name)
		tr := l.Tries[0]
		assert.Equal(t, row.kind, tr.Kind, row.name)
		assert.Equal(t, crank.AsMeant, tr.Outcome, row.name)
		assert.InEpsilon(t, row.dose, tr.Dose, 1e-9, row.name)
		assert.InEpsilon(t, row.got, tr.Got, 1e-2, row.name)
		assert.Zero(t, tr.Astray, row.name)
	}
}

func TestOutcomes(t *testing.T) {
	squeeze := func(hour, dose float64) crank.Done {
		return crank.Done{Kind: crank.Squeeze, Hour: hour, Dose: dose}
	}
	spread := func(hour, dose float64) crank.Done {
		return crank.Done{Kind: crank.Spread, Hour: hour, Dose: dose}
	}
	const fine, coarse = 0.001, 0.03 // how sure a reading is, mm
	for _, row := range []struct {
		name    string
		passes  []crank.Pass
		outcome crank.Outcome
		votes   bool
		astray  bool
		likely  []crank.Cause
	}{
		{"as meant", then(t, fine, twist(0.3), twist(0.2), strikeRight(3, 1)), crank.AsMeant, true, false, nil},
		{"struck from the wrong side", then(t, fine, twist(0.2), twist(0.3), strikeRight(3, 1)), crank.Opposite, false, false,
			[]crank.Cause{crank.HoursFromWrongEnd, crank.DialsExchanged, crank.WrongWheel, crank.HourMirrored}},
		{"a dead blow", then(t, fine, twist(0.3), twist(0.3), strikeRight(3, 1)), crank.NoEffect, false, false,
			[]crank.Cause{crank.TooLight, crank.NotSupported}},
		{"too little to see", then(t, coarse, twist(0.3), twist(0.3), strikeRight(3, 0.5)), crank.Unshown, false, false, nil},
		{"squeezed where it was closed", then(t, fine, gap(-0.002, 0), gap(-0.003, 0), squeeze(6, 1)), crank.Opposite, false, false,
			[]crank.Cause{crank.WrongMove, crank.HoursFromWrongEnd, crank.HourMirrored}},
		{"squeezed at 2 for 10", then(t, fine, gap(0, 0.002), gap(0, 0.003), squeeze(2, 1)), crank.Opposite, false, false,
			[]crank.Cause{crank.HoursFromWrongEnd, crank.HourMirrored}},
		{"squeezed and spread", then(t, fine, gap(-0.003, 0), gap(-0.002, 0), squeeze(6, 2), spread(6, 0.5)), crank.Mixed, false, false, nil},
		{"a strike that opened the gap", then(t, fine, twist(0.3), tryout.Start{D: clock.Vec{N: 0.2}, G: clock.Vec{T: 0.002}}, strikeRight(3, 1)),
			crank.AsMeant, true, true, []crank.Cause{crank.NotSupported, crank.DialMoved}},
		{"a squeeze that moved the pin", then(t, fine, gap(-0.003, 0), tryout.Start{D: clock.Vec{T: 0.1}, G: clock.Vec{T: -0.002}}, squeeze(6, 1)),
			crank.AsMeant, true, true, []crank.Cause{crank.PinSlipped, crank.NotSupported}},
		{"a strike that strays no more than most", then(t, fine, twist(0.3), tryout.Start{D: clock.Vec{N: 0.2}, G: clock.Vec{T: 0.0001}}, strikeRight(3, 1)),
			crank.AsMeant, true, false, nil},
		{"a small strike beside a large squeeze", then(t, fine, tryout.Start{D: clock.Vec{N: 0.05}, G: clock.Vec{T: -0.008}}, twist(0.08), squeeze(6, 8), strikeRight(3, 0.5)),
			crank.Unshown, false, false, nil},
	} {
		l := lesson(row.passes)
		require.NotEmpty(t, l.Tries, row.name)
		tr := l.Tries[0]
		assert.Equal(t, row.outcome, tr.Outcome, row.name)
		assert.Equal(t, row.votes, tr.Weight > 0, row.name)
		assert.Equal(t, row.votes, l.Gain[tr.Kind].Weight > 0, row.name)
		assert.Equal(t, row.astray, tr.Astray > 0, row.name)
		assert.Equal(t, row.likely, tr.Likely, row.name)
	}
}

// A slipped dial shows on its own needle only.
func TestOneNeedleAstrayIsTheDials(t *testing.T) {
	passes := then(t, 0.001, twist(0.3), twist(0.2), strikeRight(3, 1))
	p := &passes[1]
	p.Stations[clock.Left].E.T += 0.05
	var err error
	p.Pose, err = p.Pose.Crank.Solve(p.Stations)
	require.NoError(t, err)
	l := lesson(passes)
	require.Len(t, l.Tries, 1)
	assert.Greater(t, l.Tries[0].Astray, 0.08)
	assert.Equal(t, crank.DialMoved, l.Tries[0].Likely[0])
}

// After a dead blow by itself the next is harder, twice as hard at most; a second is
// a question, not a blow; one that tells brings it back to what is known.
func TestHarderWhereNothingMoved(t *testing.T) {
	tol := crank.Tolerance{RunOut: allowed}
	passes := then(t, 0.001, twist(0.3), twist(0.3), strikeRight(3, 2))
	n := crank.Plan(passes, tol)
	require.Len(t, n.Steps, 1)
	assert.Equal(t, 0, n.Steps[0].Pass)
	assert.Greater(t, n.Steps[0].Times, 1.5-1e-9)
	assert.LessOrEqual(t, n.Steps[0].Times, 2.0)
	passes[1].Done = []crank.Done{strikeRight(3, 4)}
	idle := append(passes, one(t, twist(0.3), 0.001))
	n = crank.Plan(idle, tol)
	assert.Equal(t, crank.Stop, n.Why, "no dose without an end")
	assert.Empty(t, n.Steps)
	assert.Contains(t, n.Causes, crank.TooLight)
	assert.Contains(t, n.Causes, crank.NotDone)
	told := append(passes, one(t, twist(0.1), 0.001))
	n = crank.Plan(told, tol)
	require.Len(t, n.Steps, 1)
	assert.InEpsilon(t, 2, n.Gain[crank.Strike].Dead, 0.1, "what did nothing is dead")
	assert.Greater(t, n.Steps[0].Dose, 2.0, "never below the greatest dose that did nothing")
	assert.Less(t, n.Steps[0].Dose, 4.0)
}

// What is learned comes near what made-up cranks yield: the middle and the 90th
// of a hundred of how far off, read at 8 points with a rough hand, after so many
// tries of a kind. Seeds 1 to 600.
func TestLearnsWhatCranksYield(t *testing.T) {
	r := row{points: 8, temper: even, rule: advice(crank.Manner{}), yields: 1}
	off := map[int][]float64{}
	for seed := int64(1); seed <= 600; seed++ {
		b := setUp(t, &r, seed, 3*thou, 15*thou)
		j := b.work(t, r.rule)
		l := lesson(j.passesLog)
		for k, usual := range [3]float64{crank.UsualStrike, crank.UsualBend, crank.UsualBend} {
			truth := usual * b.made.Gain(0, tryout.Kind(k))
			tries := min(int(math.Round(l.Gain[k].Weight)), 3)
			off[tries] = append(off[tries], math.Abs(math.Log(l.Gain[k].PerDose/truth)))
		}
	}
	for tries, want := range [...]struct{ middle, most float64 }{{0.30, 0.80}, {0.20, 0.50}, {0.17, 0.42}, {0.16, 0.38}} {
		o := off[tries]
		sort.Float64s(o)
		middle, most := o[len(o)/2], o[len(o)*9/10]
		t.Logf("%d tries: %4d gains, off by %.0f %% in the middle, %.0f %% at the 90th of a hundred", tries, len(o), 100*math.Expm1(middle), 100*math.Expm1(most))
		assert.Less(t, middle, want.middle, "%d tries", tries)
		assert.Less(t, most, want.most, "%d tries", tries)
	}
}

// A strike does what it was meant to; the squeeze logged with it shows next to nothing,
// too little of what was meant to go by and too little to be sure of: it is asked
// after. Where it shows a part, or the dials couldn't have shown it, it is not.
func TestAMoveThatHardlyShowsIsAskedAfter(t *testing.T) {
	for _, row := range []struct {
		dose, slope float64
		asked       bool
	}{{1, 0.0001, true}, {1, 0.0004, false}, {0.5, 0.0001, false}} {
		before := tryout.Start{D: clock.Vec{N: 0.1}, G: clock.Vec{T: -0.0015}}
		after := tryout.Start{D: clock.Vec{N: 0.02}, G: clock.Vec{T: -0.0015 + row.slope}}
		l := lesson(then(t, 0.01, before, after, strikeRight(3, 0.8), crank.Done{Kind: crank.Squeeze, Hour: 6, Dose: row.dose}))
		require.Len(t, l.Tries, 2)
		strike, squeeze := l.Tries[0], l.Tries[1]
		assert.Equal(t, crank.AsMeant, strike.Outcome, "%+v", row)
		assert.Equal(t, crank.Unshown, squeeze.Outcome, "%+v", row)
		if row.asked {
			assert.Equal(t, []crank.Cause{crank.FirstOnly, crank.TooLight, crank.NotSupported}, squeeze.Likely)
		} else {
			assert.Empty(t, squeeze.Likely, "%+v", row)
		}
		alone := lesson(then(t, 0.01, before, tryout.Start{D: before.D, G: after.G}, crank.Done{Kind: crank.Squeeze, Hour: 6, Dose: row.dose}))
		assert.Empty(t, alone.Tries[0].Likely, "by itself there is no first move to have been the only one")
	}
}

// A squeeze that did nothing has a dead dose taken for it; the next, which went the
// other way, moved the crank by all of its own. The light trial after it reckons so.
func TestATrialAfterTheOtherWayTakesNothingForDead(t *testing.T) {
	squeeze := func(dose float64) crank.Done { return crank.Done{Kind: crank.Squeeze, Hour: 6, Dose: dose} }
	const sigma, other = 0.002, 0.0025
	passes := then(t, sigma, gap(-0.003, 0), gap(-0.003, 0), squeeze(0.8))
	passes[1].Done = []crank.Done{squeeze(1.6)}
	passes = append(passes, one(t, gap(-0.003-other, 0), sigma))
	n := crank.Plan(passes, crank.Tolerance{RunOut: 0.02})
	require.Equal(t, crank.Work, n.Why)
	require.Greater(t, n.Gain[crank.Squeeze].Dead, 0.5)
	require.Len(t, n.Steps, 1)
	step := n.Steps[0]
	assert.True(t, step.Trial)
	assert.InEpsilon(t, step.Aim/step.Arm, step.Dose*other/1.6, 1e-2, "what it goes for is what its dose does as shown")
}
