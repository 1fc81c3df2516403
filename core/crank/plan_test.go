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
	"pintwelve/core/tryout"
)

// exactly gives a crank yields as usual and every blow as meant.
var exactly = tryout.Temper{}

// known reads both dials without error; sigma [mm] is what they are said to be
// sure to.
func (b *lathe) known(t *testing.T, sigma float64) crank.Pass {
	var p crank.Pass
	for h := clock.Left; h <= clock.Right; h++ {
		v := b.made.Turn(h, tryout.Dial{}, 0, 3, 6, 9)
		e := clock.Vec{T: (v[0] - v[2]) / 2, N: (v[1] - v[3]) / 2}
		p.Stations = append(p.Stations, crank.Station{Piece: int(h), At: b.at[h], E: e, Cov: lsq.Round(sigma)})
	}
	var err error
	p.Pose, err = b.set.Solve(p.Stations)
	require.NoError(t, err)
	return p
}

// do makes moves that the crank can bear.
func (b *lathe) do(t *testing.T, p *crank.Pass, done ...crank.Done) {
	p.Done = done
	for _, d := range done {
		require.NoError(t, b.made.Do(tryout.Blow{Kind: tryout.Kind(d.Kind), Wheel: d.Wheel, Hour: d.Hour, Dose: d.Dose}))
	}
}

func asAdvised(n *crank.Next) (done []crank.Done) {
	for _, s := range n.Steps {
		done = append(done, crank.Done{Kind: s.Kind, Wheel: s.Wheel, Hour: s.Hour, Dose: s.Dose})
	}
	return done
}

const sharp = 1e-4 // mm

// The needles do what was said they would, on cranks of any size whose blows do
// what a usual one is taken to: what each step goes for is gone.
func TestNeedlesDoAsPredicted(t *testing.T) {
	r := row{temper: exactly, anySize: true, yields: 1}
	both, turns := 0, 0
	for seed := int64(1); seed <= 400; seed++ {
		b := setUp(t, &r, seed, 3*thou, 15*thou)
		p := b.known(t, sharp)
		n := crank.Plan([]crank.Pass{p}, crank.Tolerance{RunOut: allowed})
		if n.Why == crank.Unmendable {
			continue
		}
		require.Equal(t, crank.Work, n.Why)
		b.do(t, &p, asAdvised(&n)...)
		for h := clock.Left; h <= clock.Right; h++ {
			assert.InDelta(t, n.RunOut(h, b.at[h]), b.made.RunOut(h), 2*micron, "seed %d, dial %d", seed, h)
		}
		after := b.known(t, sharp)
		assert.InDelta(t, 0, after.Pose.D.Sub(n.D).Len(), 2.5*micron, "seed %d: offset", seed)
		assert.InDelta(t, 0, after.Pose.G.Sub(n.G).Len(), 5e-5, "seed %d: slope", seed)
		if len(n.Steps) == 2 {
			both++
			assert.Equal(t, crank.Strike, n.Steps[0].Kind)
			assert.Equal(t, p.Pose.G, n.Steps[0].G, "the strike leaves the gap")
			left := func(s crank.PlannedMove) float64 { return 1 - s.Aim/s.Amount }
			assert.InDelta(t, left(n.Steps[0])*p.Pose.D.N, n.D.N, 1e-12)
			assert.InDelta(t, left(n.Steps[1])*p.Pose.G.Len(), n.G.Len(), 1e-12)
		}
		last := n.Steps[len(n.Steps)-1]
		assert.Equal(t, n.D, last.D)
		assert.Equal(t, n.G, last.G)
		turns++
	}
	assert.Greater(t, both, 200)
	assert.Greater(t, turns, 350)
}

// A dose is nine tenths of the component over what a dose does (MODEL §7):
// the starting value at first, then as learned, likened to the latest.
func TestDoses(t *testing.T) {
	r := row{temper: exactly, yields: 2}
	b := setUp(t, &r, 1, 10*thou, 10*thou)
	b.made, _ = tryout.New(tryout.Crank{Throw: 40, Rim: 80, Pin: 120, Support: b.set.Support, Dial: b.at},
		tryout.Temper{Strike: 0.2, Bend: 0.002}, 1, tryout.Start{D: clock.Vec{N: 0.3}, G: clock.Vec{T: -0.003}})
	tol := crank.Tolerance{RunOut: allowed}
	passes := []crank.Pass{b.known(t, sharp)}
	n := crank.Plan(passes, tol)
	require.Len(t, n.Steps, 2)
	assert.Equal(t, [2]float64{crank.UsualStrike, crank.UsualBend}, [2]float64{n.Gain[crank.Strike].PerDose, n.Gain[crank.Squeeze].PerDose})
	assert.InDelta(t, 0.65*3, n.Steps[0].Dose, 0.01, "a trial goes for less")
	assert.InDelta(t, 0.65*3, n.Steps[1].Dose, 0.01)
	for _, s := range n.Steps {
		assert.False(t, s.Learned)
		assert.Equal(t, -1, s.Pass, "nothing to liken a first blow to")
		assert.True(t, s.Trial)
		assert.InDelta(t, 0.65*s.Amount, s.Aim, 0.01*s.Amount, "what it goes for is what the dose is for")
	}

	// A cautious hand gives a third of it; twice as much comes as was taken.
	b.do(t, &passes[0], crank.Done{Kind: crank.Strike, Wheel: clock.Right, Hour: 3, Dose: 0.9}, crank.Done{Kind: crank.Squeeze, Hour: 6, Dose: 0.9})
	passes = append(passes, b.known(t, sharp))
	n = crank.Plan(passes, tol)
	require.Len(t, n.Steps, 2)
	// A quarter of a vote for the starting value and one for the pass, the noise being
	// 0 but for what the one move may have done to the other's.
	for i, k := range [...]crank.Kind{crank.Strike, crank.Squeeze} {
		usual := [...]float64{crank.UsualStrike, crank.UsualBend}[i]
		assert.InEpsilon(t, (0.25+2)/1.25*usual, n.Gain[k].PerDose, 5e-2)
		assert.InEpsilon(t, 0.9*1.2/1.8, n.Steps[i].Dose, 5e-2)
		assert.False(t, n.Steps[i].Trial)
		assert.InDelta(t, 0.9*n.Steps[i].Amount, n.Steps[i].Aim, 1e-12)
	}
	for _, s := range n.Steps {
		assert.True(t, s.Learned)
		assert.Equal(t, 0, s.Pass)
		assert.InDelta(t, s.Dose/0.9, s.Times, 1e-9)
	}
}

// Where a squeeze gave more than usual, a first spread is no bolder than it
// teaches; where it gave less, no bolder than usual.
func TestFirstOfASortIsCautious(t *testing.T) {
	for _, row := range []struct{ gave, dose, reckoned float64 }{{3, 2, (0.25 + 3) / 1.25}, {0.5, 4, 1}} {
		temper := tryout.Temper{Strike: 0.1, Bend: 0.001 * row.gave}
		c, at := usualSize()
		m, err := tryout.New(tryout.Crank{Throw: 40, Rim: 80, Pin: 120, Support: c.Support, Dial: at}, temper, 1, tryout.Start{G: clock.Vec{T: -0.001}})
		require.NoError(t, err)
		b := &lathe{set: c, at: at, made: m}
		passes := []crank.Pass{b.known(t, sharp)}
		b.do(t, &passes[0], crank.Done{Kind: crank.Squeeze, Hour: 6, Dose: row.dose})
		passes = append(passes, b.known(t, sharp))
		n := crank.Plan(passes, crank.Tolerance{RunOut: allowed})
		require.Len(t, n.Steps, 1)
		assert.Equal(t, crank.Spread, n.Steps[0].Kind)
		assert.False(t, n.Steps[0].Learned)
		assert.Equal(t, -1, n.Steps[0].Pass)
		assert.InEpsilon(t, 0.65*(row.gave*row.dose-1)/row.reckoned, n.Steps[0].Dose, 0.01)
		assert.True(t, n.Steps[0].Trial)
	}
}

// one is a crank read exactly, sitting so.
func one(t *testing.T, s tryout.Start, sigma float64) crank.Pass {
	c, at := usualSize()
	m, err := tryout.New(tryout.Crank{Throw: 40, Rim: 80, Pin: 120, Support: c.Support, Dial: at}, exactly, 1, s)
	require.NoError(t, err)
	return (&lathe{set: c, at: at, made: m}).known(t, sigma)
}

func TestWhy(t *testing.T) {
	clear := func(s tryout.Start) []crank.Pass { return []crank.Pass{one(t, s, 0.002)} }
	worked := func(p []crank.Pass) []crank.Pass {
		found := one(t, twist(0.3), 0.002)
		found.Done = []crank.Done{strikeRight(3, 2.7)}
		return append([]crank.Pass{found}, p...)
	}
	for _, row := range []struct {
		name   string
		passes []crank.Pass
		manner crank.Manner
		why    crank.Why
		steps  []crank.Kind
	}{
		{"no pass", nil, crank.Manner{}, crank.Unread, nil},
		{"not solved", []crank.Pass{{}}, crank.Manner{}, crank.Unread, nil},
		{"dead true", clear(tryout.Start{}), crank.Manner{}, crank.Leave, nil},
		{"inside", clear(tryout.Start{D: clock.Vec{N: 0.03}}), crank.Manner{}, crank.Leave, nil},
		{"inside, but not for sure", clear(tryout.Start{D: clock.Vec{N: 0.036}}), crank.Manner{Margin: 1}, crank.Unclear, []crank.Kind{crank.Strike}},
		{"inside, but not for sure, and worked on", worked(clear(tryout.Start{D: clock.Vec{N: 0.036}})), crank.Manner{Margin: 1}, crank.Work, []crank.Kind{crank.Strike}},
		{"outside, but not for sure", clear(tryout.Start{D: clock.Vec{N: 0.042}}), crank.Manner{}, crank.Unclear, []crank.Kind{crank.Strike}},
		{"outside, but not for sure, and worked on", worked(clear(tryout.Start{D: clock.Vec{N: 0.042}})), crank.Manner{}, crank.Work, []crank.Kind{crank.Strike}},
		{"inside for sure", clear(tryout.Start{D: clock.Vec{N: 0.02}}), crank.Manner{Margin: 1}, crank.Leave, nil},
		{"twist", clear(tryout.Start{D: clock.Vec{N: 0.3}}), crank.Manner{}, crank.Work, []crank.Kind{crank.Strike}},
		{"open at 6", clear(tryout.Start{G: clock.Vec{T: -0.003}}), crank.Manner{}, crank.Work, []crank.Kind{crank.Squeeze}},
		{"open at 12", clear(tryout.Start{G: clock.Vec{T: 0.003}}), crank.Manner{}, crank.Work, []crank.Kind{crank.Spread}},
		{"twist and open at 6", clear(tryout.Start{D: clock.Vec{N: -0.3}, G: clock.Vec{T: -0.003}}), crank.Manner{}, crank.Work, []crank.Kind{crank.Strike, crank.Squeeze}},
		{"much twist, little gap", clear(tryout.Start{D: clock.Vec{N: -0.3}, G: clock.Vec{T: -0.00015}}), crank.Manner{}, crank.Work, []crank.Kind{crank.Strike}},
		{"throws out of match", clear(tryout.Start{D: clock.Vec{T: 0.2, N: 0.3}}), crank.Manner{}, crank.Unmendable, nil},
		{"a poor dial", []crank.Pass{one(t, tryout.Start{D: clock.Vec{N: 0.06}}, 0.03)}, crank.Manner{}, crank.Unclear, nil},
	} {
		n := row.manner.Plan(row.passes, crank.Tolerance{RunOut: allowed})
		assert.Equal(t, row.why, n.Why, row.name)
		var kinds []crank.Kind
		for _, s := range n.Steps {
			kinds = append(kinds, s.Kind)
		}
		assert.Equal(t, row.steps, kinds, row.name)
		assert.Equal(t, len(n.Steps) > 0, n.Strike || n.Close, row.name)
	}
}

// A crank whose throws don't match is not begun on, but one that the work has made
// worse is first brought back.
func TestBringsBackWhatItMadeWorse(t *testing.T) {
	tol := crank.Tolerance{RunOut: allowed}
	found := one(t, tryout.Start{D: clock.Vec{T: 0.1, N: 0.15}}, 0.002)
	assert.Equal(t, crank.Unmendable, crank.Plan([]crank.Pass{found}, tol).Why)
	found.Done = []crank.Done{{Kind: crank.Strike, Wheel: clock.Right, Hour: 3, Dose: 4}}
	n := crank.Plan([]crank.Pass{found, one(t, tryout.Start{D: clock.Vec{T: 0.1, N: -0.3}}, 0.002)}, tol)
	assert.Equal(t, crank.NotMendable, n.Verdict)
	assert.Equal(t, crank.Work, n.Why)
	require.Len(t, n.Steps, 1)
	assert.Equal(t, crank.Strike, n.Steps[0].Kind)
	n = crank.Plan([]crank.Pass{found, one(t, tryout.Start{D: clock.Vec{T: 0.1, N: -0.1}}, 0.002)}, tol)
	assert.Equal(t, crank.Unmendable, n.Why)
}

// Rounds with nothing done between them count as one, by all their readings.
func TestReadAgain(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	truth := tryout.Start{D: clock.Vec{N: 0.08}, G: clock.Vec{T: -0.0004}}
	const sigma = 0.01
	var passes []crank.Pass
	var stations []crank.Station
	for range 3 {
		p := one(t, truth, sigma)
		for i := range p.Stations {
			p.Stations[i].E = p.Stations[i].E.Add(clock.Vec{T: sigma * rng.NormFloat64(), N: sigma * rng.NormFloat64()})
		}
		var err error
		p.Pose, err = p.Pose.Crank.Solve(p.Stations)
		require.NoError(t, err)
		stations = append(stations, p.Stations...)
		passes = append(passes, p)
	}
	all, err := passes[0].Pose.Crank.Solve(stations)
	require.NoError(t, err)
	n := crank.Plan(passes, crank.Tolerance{RunOut: 0})
	assert.Equal(t, 3, n.Rounds)
	// Solved together by least squares, they are the mean of the three.
	assert.InDelta(t, 0, n.D.T-all.D.T, 1e-9)
	if len(n.Steps) > 0 && n.Steps[0].Kind == crank.Strike {
		assert.InDelta(t, math.Abs(all.D.N), n.Steps[0].Amount, 1e-9)
	}
	one := crank.Plan(passes[:1], crank.Tolerance{RunOut: 0})
	assert.InEpsilon(t, one.Worst.HalfWidth95/math.Sqrt(3), n.Worst.HalfWidth95, 0.15, "and surer by as much")
	assert.Empty(t, n.Tries, "nothing was done")
}

// Of a round whose scatter is known and one whose scatter was found, it makes no
// odds which came first, and what was found from little leaves them less sure
// (Welch and Satterthwaite).
func TestReadAgainInEitherOrder(t *testing.T) {
	truth := tryout.Start{D: clock.Vec{N: 0.08}, G: clock.Vec{T: -0.0004}}
	known, found := one(t, truth, 0.01), one(t, truth, 0.01)
	for i := range found.Stations {
		found.Stations[i].Nu, found.Stations[i].Dial, known.Stations[i].Dial = 1, i, i
	}
	tol := crank.Tolerance{RunOut: 0.01}
	either := crank.Plan([]crank.Pass{known, found}, tol)
	other := crank.Plan([]crank.Pass{found, known}, tol)
	once := crank.Plan([]crank.Pass{known}, tol)
	assert.InEpsilon(t, other.Worst.HalfWidth95, either.Worst.HalfWidth95, 1e-12)
	assert.InEpsilon(t, other.Advice.Tilt[clock.Left].HalfWidth95, either.Advice.Tilt[clock.Left].HalfWidth95, 1e-12)
	assert.InEpsilon(t, lsq.Student95(4)/lsq.Student95(0)*once.Worst.HalfWidth95/math.Sqrt2, either.Worst.HalfWidth95, 1e-12, "half of it on one degree: ν = 1/(½)²")
}

// What is read the same to the figure is rounded the same, or copied: three of it are no surer
// than one, as they are once one of them differs.
func TestReadTheSameIsNoSurer(t *testing.T) {
	truth := tryout.Start{D: clock.Vec{N: 0.08}, G: clock.Vec{T: -0.0004}}
	tol := crank.Tolerance{RunOut: 0.01}
	p := one(t, truth, 0.01)
	once := crank.Plan([]crank.Pass{p}, tol)
	same := crank.Plan([]crank.Pass{p, p, p}, tol)
	assert.Equal(t, 3, same.Rounds)
	assert.Equal(t, once.Worst, same.Worst)
	assert.Equal(t, once.Advice.Tilt, same.Advice.Tilt)
	other := crank.Plan([]crank.Pass{p, p, one(t, tryout.Start{D: clock.Vec{N: 0.081}, G: truth.G}, 0.01)}, tol)
	assert.InEpsilon(t, once.Worst.HalfWidth95/math.Sqrt2, other.Worst.HalfWidth95, 1e-3)
}

// A crank seen from its other end, its halves renamed, is told the same moves by
// their other names (MODEL §1).
func TestPlanTurnedEndForEnd(t *testing.T) {
	r := row{temper: even, anySize: true, yields: 1, points: 8}
	for seed := int64(1); seed <= 100; seed++ {
		b := setUp(t, &r, seed, 3*thou, 15*thou)
		var passes, turned []crank.Pass
		for range 3 {
			p := b.reads(t)
			n := crank.Plan(append(passes, p), crank.Tolerance{RunOut: allowed})
			m := crank.Plan(append(turned, endForEnd(t, &p)), crank.Tolerance{RunOut: allowed})
			require.Equal(t, n.Why, m.Why)
			require.Len(t, m.Steps, len(n.Steps))
			for i, s := range n.Steps {
				other := m.Steps[i]
				assert.Equal(t, s.Kind, other.Kind)
				assert.InEpsilon(t, s.Dose, other.Dose, 1e-6)
				hour := clock.Mirror(other.Hour)
				if s.Kind == crank.Strike && s.Wheel == other.Wheel {
					// The right wheel is advised whichever way round: here it is the left one's mate.
					hour = clock.Wrap(hour + 6)
				}
				assert.InDelta(t, 0, clock.Apart(s.Hour, hour), 1e-6)
			}
			b.do(t, &p, asAdvised(&n)...)
			q := endForEnd(t, &p)
			passes, turned = append(passes, p), append(turned, q)
		}
	}
}

// endForEnd is a pass with the crank turned round.
func endForEnd(t *testing.T, p *crank.Pass) crank.Pass {
	c := p.Pose.Crank
	end := c.Support[clock.Right]
	flip := func(x [2]float64) [2]float64 { return [2]float64{end - x[1], end - x[0]} }
	c.Pin, c.Support, c.Bearing = end-c.Pin, flip(c.Support), flip(c.Bearing)
	var q crank.Pass
	for i := len(p.Stations) - 1; i >= 0; i-- {
		s := p.Stations[i]
		s.Piece, s.At, s.E, s.Dial = 1-s.Piece, end-s.At, s.E.From(clock.Right), 1-s.Dial
		s.Cov.TN = -s.Cov.TN
		q.Stations = append(q.Stations, s)
	}
	for _, d := range p.Done {
		q.Done = append(q.Done, crank.Done{Kind: d.Kind, Wheel: d.Wheel.Other(), Hour: clock.Mirror(d.Hour), Dose: d.Dose})
	}
	var err error
	q.Pose, err = c.Solve(q.Stations)
	require.NoError(t, err)
	return q
}

// Whatever was logged as done, the plan is made of numbers.
func TestPlanHoldsAgainstNonsense(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	odd := []float64{0, -1, 1, 1e-300, 1e300, math.NaN(), math.Inf(1), math.Inf(-1), 3, 12, 1e6}
	any := func() float64 { return odd[rng.Intn(len(odd))] }
	for range 3000 {
		var passes []crank.Pass
		for range 1 + rng.Intn(4) {
			p := one(t, tryout.Start{D: clock.Vec{N: 0.3 * rng.NormFloat64()}, G: clock.Vec{T: 0.003 * rng.NormFloat64()}}, math.Abs(rng.NormFloat64())*0.01)
			if rng.Intn(8) == 0 {
				p = crank.Pass{}
			}
			for range rng.Intn(4) {
				p.Done = append(p.Done, crank.Done{Kind: crank.Kind(rng.Intn(3)), Wheel: clock.End(rng.Intn(2)), Hour: any(), Dose: any()})
			}
			passes = append(passes, p)
		}
		n := crank.Plan(passes, crank.Tolerance{RunOut: math.Max(any(), 0)})
		figures := []float64{n.D.T, n.D.N, n.G.T, n.G.N, n.RunOut(clock.Left, 75), n.RunOut(clock.Right, 165)}
		for _, g := range n.Gain {
			figures = append(figures, g.PerDose, g.Weight)
		}
		for _, s := range n.Steps {
			figures = append(figures, s.Dose, s.Aim, s.Times, s.Hour, s.Amount)
		}
		for _, tr := range n.Tries {
			figures = append(figures, tr.Dose, tr.Meant, tr.Got, tr.Sigma, tr.Weight, tr.Astray)
		}
		for _, x := range figures {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%+v", n)
		}
	}
}

// A crank that no bumping trues is brought back only from where it stands more than
// the limit above what bumping comes to.
func TestWhatCantBeTruedIsBroughtBackFromFarOffOnly(t *testing.T) {
	const limit, mismatch = 0.025, 0.03
	at := func(twist float64) (p crank.Pass) {
		p.Stations = dials(clock.Vec{T: -mismatch, N: -twist}, clock.Vec{T: mismatch, N: twist})
		for i := range p.Stations {
			p.Stations[i].Cov, p.Stations[i].Dial = lsq.Round(sharp), i
		}
		p.Pose = solved(t, bench(), p.Stations)
		return p
	}
	for _, row := range []struct {
		twist float64
		want  crank.Why
	}{{0.030, crank.Work}, {0.029, crank.Unmendable}} { // 2 × hypot(0.03, 0.03) = 0.0849, 0.0834; 0.06 + 0.025 = 0.085
		twist := row.twist + 0.0003
		found := at(0.001)
		found.Done = []crank.Done{{Kind: crank.Strike, Wheel: clock.Right, Hour: 9, Dose: 4 * twist / crank.UsualStrike}}
		n := crank.Plan([]crank.Pass{found, at(twist)}, crank.Tolerance{RunOut: limit})
		assert.Equal(t, crank.NotMendable, n.Verdict)
		assert.Equal(t, row.want, n.Why, "twist %g: worst %g, floor %g", twist, n.Worst.Value, n.Floor.Value)
	}
}

// Round upon round alike, and nothing said of what was done between: first it is asked,
// then it stops. Whoever says that nothing was done is neither asked nor stopped.
func TestRoundsAlikeAreAskedAfter(t *testing.T) {
	var passes []crank.Pass
	for rounds := 1; rounds <= 7; rounds++ {
		st := dials(clock.Vec{T: -0.02}, clock.Vec{T: -0.02})
		for i := range st {
			st[i].Cov, st[i].Dial = lsq.Round(0.001), i
		}
		passes = append(passes, crank.Pass{Stations: st, Pose: solved(t, bench(), st)})
		n := crank.Plan(passes, crank.Tolerance{RunOut: 0.025})
		assert.Equal(t, rounds, n.Rounds)
		assert.Equal(t, rounds > 6, n.Why == crank.Stop, "round %d", rounds)
		assert.Equal(t, rounds > 3 && rounds <= 6, asks(&n, crank.AskSince), "round %d", rounds)
		if n.Why == crank.Stop {
			assert.Contains(t, n.Causes, crank.Unlogged)
		}
		passes[rounds-1].Since = crank.Nothing
		n = crank.Plan(passes, crank.Tolerance{RunOut: 0.025})
		assert.Equal(t, crank.Work, n.Why)
		assert.False(t, asks(&n, crank.AskSince))
		passes[rounds-1].Since = crank.Unsaid
	}
}

// Places close to the centres that agree with the dials vouch for the shafts only as
// far as they were read: 2 × 2.45 × 1.49 σ beside 1.2 × what is allowed, the hole lying
// (50² + 15²)^½/35 = 1.49 times as unsure as a place at 15 and one at 50 mm.
func TestCoarseReadingsDontVouchForTheCentres(t *testing.T) {
	c := bench()
	c.CentresKnown = false
	for _, row := range []struct {
		sigma float64
		want  crank.Verdict
	}{{0.0048, crank.Fit}, {0.0051, crank.FitAsHung}} {
		st := dials(clock.Vec{T: 0.001}, clock.Vec{T: -0.001})
		st = append(st, crank.Station{Piece: 0, At: 15, E: clock.Vec{T: 0.0003}}, crank.Station{Piece: 1, At: 185, E: clock.Vec{T: -0.0003}})
		for i := range st {
			st[i].Cov, st[i].Dial = lsq.Round(row.sigma), st[i].Piece
		}
		p := crank.Pass{Stations: st, Pose: solved(t, c, st)}
		n := crank.Plan([]crank.Pass{p}, crank.Tolerance{RunOut: 0.03})
		assert.Equal(t, crank.Sound, n.Shaft[0].State)
		assert.Equal(t, row.want, n.Verdict, "sigma %g", row.sigma)
		// Read again at the dials alone, what was found of the shafts stands.
		again := crank.Pass{Stations: st[:2], Pose: solved(t, c, st[:2]), Since: crank.Nothing}
		n = crank.Plan([]crank.Pass{{Stations: st, Pose: p.Pose, Done: []crank.Done{strikeRight(3, 0.01)}}, again}, crank.Tolerance{RunOut: 0.03})
		assert.Equal(t, row.want, n.Verdict, "sigma %g, once looked at", row.sigma)
	}
}
