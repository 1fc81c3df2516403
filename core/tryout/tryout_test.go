package tryout_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/tryout"
	"pintwelve/testdata/cases"
)

const micron = 1e-3 // mm

var middling = tryout.Crank{Throw: 40, Rim: 80, Pin: 120, Support: [2]float64{0, 240}, Dial: [2]float64{75, 165}}

// exact yields alike to every blow, and nothing goes astray.
var exact = tryout.Temper{Strike: 0.1, Bend: 0.001}

func made(t *testing.T, temper tryout.Temper, seed uint64, s tryout.Start) *tryout.Made {
	t.Helper()
	m, err := tryout.New(middling, temper, seed, s)
	require.NoError(t, err)
	return m
}

// known is a crank whose truth is known.
type known struct{ cases.Crank }

func (k *known) crank() (tryout.Crank, tryout.Start, clock.End) {
	c := tryout.Crank{
		Throw: k.Throw, Rim: k.Rim, Pin: k.Pin,
		Support: [2]float64{k.Supports[0].At, k.Supports[1].At}, Dial: [2]float64{k.Dials[0].At, k.Dials[1].At},
	}
	from := clock.Left
	if k.SeenFrom == "right" {
		from = clock.Right
	}
	s := tryout.Start{D: clock.Vec{T: k.Truth.Offset.T, N: k.Truth.Offset.N}.From(from)}
	if k.Truth.Gap.Widest != nil {
		s.G = clock.Polar(k.Truth.Gap.Across/(2*k.Rim), clock.SeenFrom(from, *k.Truth.Gap.Widest))
	}
	return c, s, from
}

func knowns(t *testing.T) (all []known) {
	for _, c := range cases.OfOne(t) {
		all = append(all, known{c})
	}
	return all
}

func TestShowsWhatTheKnownCranksShow(t *testing.T) {
	for _, k := range knowns(t) {
		c, s, from := k.crank()
		m, err := tryout.New(c, exact, 1, s)
		require.NoError(t, err)
		for h := clock.Left; h <= clock.Right; h++ {
			assert.InDelta(t, k.Dials[h].TIR, m.RunOut(h), 0.1*micron, "%s: run-out at dial %d", k.Name, h)
			var hours []float64
			for _, r := range k.Dials[h].Readings {
				hours = append(hours, clock.SeenFrom(from, r.Clock))
			}
			if k.Name == "mixed 4" || k.Name == "mixed 14" {
				continue // oval shafts, unsteady dials: ours are neither
			}
			got := m.Turn(h, tryout.Dial{}, hours...)
			for i, r := range k.Dials[h].Readings {
				// A dial's 0 is where it was set.
				want := r.MM - k.Dials[h].Readings[0].MM
				assert.InDelta(t, want, got[i]-got[0], 0.1*micron+k.Division, "%s: dial %d at %g", k.Name, h, r.Clock)
			}
		}
	}
}

// The known cranks of several throws, by their joints' offsets and gaps: how far the axis
// stands out at each dial, and what is left once a joint's twist is taken out by strikes
// square to its pin.
func TestShowsWhatTheKnownThrowsShow(t *testing.T) {
	for _, k := range cases.OfSeveral(t) {
		c := tryout.Crank{
			Throw: k.Pins[0].Throw, Rim: k.Rim, Pin: k.Pins[0].At, Support: [2]float64{k.Supports[0].At, k.Supports[1].At},
			Dial: [2]float64{k.Pins[0].At - 7.3, k.Pins[len(k.Pins)-1].At + 7.3},
		}
		for _, p := range k.Pins[1:] {
			c.More = append(c.More, tryout.Pin{At: p.At, Throw: p.Throw, Phase: p.Phase})
		}
		var sits []tryout.Start
		for _, j := range k.Truth.Joints {
			sits = append(sits, tryout.Start{D: clock.Vec{T: j.T, N: j.N}, G: clock.Polar(j.Across/(2*k.Rim), j.Widest)})
		}
		m, err := tryout.New(c, exact, 1, sits...)
		require.NoError(t, err, k.Name)
		for _, d := range k.Dials {
			assert.InDelta(t, 0, m.Eccentricity(d.At).Sub(clock.Vec{T: d.T, N: d.N}).Len(), 1.2*micron, "%s: at %g", k.Name, d.At)
		}
		for j, want := range k.Truth.Joints {
			m, err = tryout.New(c, exact, 1, sits...)
			require.NoError(t, err, k.Name)
			hour := 3.0
			if want.N < 0 {
				hour = 9
			}
			require.NoError(t, m.Do(tryout.Blow{Joint: j, Kind: tryout.Strike, Wheel: clock.Right, Hour: hour, Dose: math.Abs(want.N) / exact.Strike}))
			assert.InDelta(t, 0, m.Sits(j).D.N, 0.1*micron, k.Name)
			for i, d := range k.Dials {
				assert.InDelta(t, want.Untwist[i], m.RunOutAt(d.At), 2*micron, "%s: pin %d, at %g", k.Name, j+1, d.At)
			}
		}
	}
}

// The moves that take the whole of the twist or of the gap leave what the
// known cranks leave (MODEL §4 for the senses of the moves).
func TestMovesTakeWhatTheKnownCranksLose(t *testing.T) {
	for _, k := range knowns(t) {
		c, s, _ := k.crank()
		m, err := tryout.New(c, exact, 1, s)
		require.NoError(t, err)
		strike := tryout.Blow{Kind: tryout.Strike, Wheel: clock.Right, Hour: 3, Dose: math.Abs(s.D.N) / exact.Strike}
		if s.D.N < 0 {
			strike.Hour = 9
		}
		require.NoError(t, m.Do(strike))
		for h := clock.Left; h <= clock.Right; h++ {
			assert.InDelta(t, k.Truth.Untwist[h], m.RunOut(h), 0.3*micron, "%s: dial %d after the strike", k.Name, h)
		}
		if s.G == (clock.Vec{}) {
			continue
		}
		m, err = tryout.New(c, exact, 1, s)
		require.NoError(t, err)
		require.NoError(t, m.Do(tryout.Blow{Kind: tryout.Squeeze, Hour: ray(&c, s.G), Dose: s.G.Len() / exact.Bend}))
		for h := clock.Left; h <= clock.Right; h++ {
			assert.InDelta(t, k.Truth.Closed[h], m.RunOut(h), 0.3*micron, "%s: dial %d after the squeeze", k.Name, h)
		}
	}
}

// ray is the hour where the way u from the pin meets the rim, found by trying.
func ray(c *tryout.Crank, u clock.Vec) float64 {
	best, hour := math.Inf(1), 0.0
	for h := 0.0; h < 12; h += 1e-4 {
		v := clock.Polar(c.Rim, h).Sub(clock.Vec{T: c.Throw})
		if off := v.Scale(1 / v.Len()).Sub(u.Scale(1 / u.Len())).Len(); off < best {
			best, hour = off, h
		}
	}
	return hour
}

// Common practice, no source: which way each move takes the crank.
func TestSenseOfTheMoves(t *testing.T) {
	for _, row := range []struct {
		blow tryout.Blow
		d, g clock.Vec
	}{
		{tryout.Blow{Kind: tryout.Strike, Wheel: clock.Right, Hour: 3, Dose: 1}, clock.Vec{N: -0.1}, clock.Vec{}},
		{tryout.Blow{Kind: tryout.Strike, Wheel: clock.Left, Hour: 9, Dose: 1}, clock.Vec{N: -0.1}, clock.Vec{}},
		{tryout.Blow{Kind: tryout.Strike, Wheel: clock.Right, Hour: 9, Dose: 2}, clock.Vec{N: 0.2}, clock.Vec{}},
		{tryout.Blow{Kind: tryout.Strike, Wheel: clock.Left, Hour: 3, Dose: 1}, clock.Vec{N: 0.1}, clock.Vec{}},
		{tryout.Blow{Kind: tryout.Strike, Wheel: clock.Left, Hour: 1, Dose: 1}, clock.Vec{N: 0.05}, clock.Vec{}},
		{tryout.Blow{Kind: tryout.Strike, Wheel: clock.Left, Hour: 12, Dose: 1}, clock.Vec{}, clock.Vec{}},
		{tryout.Blow{Kind: tryout.Squeeze, Hour: 6, Dose: 1}, clock.Vec{}, clock.Vec{T: 0.001}},
		{tryout.Blow{Kind: tryout.Spread, Hour: 6, Dose: 1}, clock.Vec{}, clock.Vec{T: -0.001}},
		{tryout.Blow{Kind: tryout.Squeeze, Hour: 2, Dose: 1}, clock.Vec{}, clock.Vec{N: -0.001}}, // R = r/2: square to the pin
		{tryout.Blow{Kind: tryout.Spread, Hour: 10, Dose: 1}, clock.Vec{}, clock.Vec{N: -0.001}},
	} {
		m := made(t, exact, 1, tryout.Start{})
		require.NoError(t, m.Do(row.blow))
		s := m.Sits(0)
		assert.InDelta(t, row.d.N, s.D.N, 0.1*micron, "%+v", row.blow)
		assert.InDelta(t, row.d.T, s.D.T, 0.6*micron, "%+v: down its circle", row.blow)
		assert.InDelta(t, 0, s.G.Sub(row.g).Len(), 1e-7, "%+v", row.blow)
	}
}

// The start is what was asked for; by chance, the worst run-out is what was drawn
// and nothing of the throws.
func TestStart(t *testing.T) {
	sum := 0.0
	const n = 2000
	for seed := range uint64(n) {
		s := middling.ByChance(seed, 0.1, 0.3)[0]
		m := made(t, tryout.Rough, seed, s)
		got := m.Sits(0)
		assert.InDelta(t, 0, got.D.Sub(s.D).Len(), 1e-6)
		assert.InDelta(t, 0, got.G.Sub(s.G).Len(), 1e-9)
		assert.True(t, m.Worst() > 0.1-1e-6 && m.Worst() < 0.3+1e-6)
		assert.Zero(t, s.D.T)
		sum += m.Worst() / n
	}
	assert.InDelta(t, 0.2, sum, 4*0.2/math.Sqrt(12*n), "even between the bounds")
	s := tryout.Start{D: clock.Vec{T: middling.Mismatch(0, 0.05)}}
	m := made(t, exact, 1, s)
	assert.InDelta(t, 0.05, m.Worst(), 1e-6)
	assert.InDelta(t, 0.05, m.Floor(), 1e-6)
}

// Blows of a rough hand, over many cranks: the logarithm of the gain and the hand's
// share, mean and deviation, each within four standard errors.
func TestTemper(t *testing.T) {
	const n = 4000
	for _, gaussian := range []bool{false, true} {
		temper := tryout.Rough
		temper.Gaussian, temper.Cross = gaussian, 0
		var gain, hand moments
		for seed := range uint64(n) {
			m := made(t, temper, seed, tryout.Start{})
			require.NoError(t, m.Do(tryout.Blow{Kind: tryout.Spread, Hour: 6, Dose: 2}))
			gain.add(math.Log(m.Gain(0, tryout.Spread)))
			hand.add(-m.Sits(0).G.T / (2 * temper.Bend * m.Gain(0, tryout.Spread)))
		}
		spread := 0.4
		if !gaussian {
			spread /= math.Sqrt(3)
			assert.True(t, hand.least > 0.6-1e-4 && hand.most < 1.4+1e-4)
		}
		assert.InDelta(t, 0, gain.mean(), 4*0.4/math.Sqrt(n))
		assert.InDelta(t, 0.4, gain.deviation(), 4*0.4/math.Sqrt(2*n))
		assert.InDelta(t, 1, hand.mean(), 4*spread/math.Sqrt(n))
		assert.InDelta(t, spread, hand.deviation(), 4*spread/math.Sqrt(2*n))
	}
}

type moments struct{ n, sum, squares, least, most float64 }

func (m *moments) add(x float64) {
	m.least, m.most = math.Min(m.least, x), math.Max(m.most, x)
	if m.n == 0 {
		m.least, m.most = x, x
	}
	m.n++
	m.sum += x
	m.squares += x * x
}

func (m *moments) mean() float64      { return m.sum / m.n }
func (m *moments) deviation() float64 { return math.Sqrt(m.squares/m.n - m.mean()*m.mean()) }

// What goes astray moves the dials by a set part of what the move does.
func TestAstray(t *testing.T) {
	for _, throws := range []bool{false, true} {
		temper := exact
		temper.Cross, temper.Throws = 0.15, throws
		worst := func(s tryout.Start) float64 { return made(t, exact, 1, s).Worst() }
		sideways := 0
		for seed := range uint64(50) {
			m := made(t, temper, seed, tryout.Start{})
			require.NoError(t, m.Do(tryout.Blow{Kind: tryout.Strike, Wheel: clock.Right, Hour: 3, Dose: 1}))
			s := m.Sits(0)
			assert.InEpsilon(t, 0.15, worst(tryout.Start{G: s.G})/worst(tryout.Start{D: s.D}), 2e-3)

			m = made(t, temper, seed, tryout.Start{})
			require.NoError(t, m.Do(tryout.Blow{Kind: tryout.Squeeze, Hour: 6, Dose: 1}))
			s = m.Sits(0)
			assert.InEpsilon(t, 0.15, worst(tryout.Start{D: s.D})/worst(tryout.Start{G: s.G}), 2e-3)
			if math.Abs(s.D.T) > 1*micron {
				sideways++
			}
		}
		assert.Equal(t, throws, sideways > 0, "the throws move only where they are said to")
	}
}

// The same seed, start and moves give the same readings; others don't.
func TestSameAgain(t *testing.T) {
	hours := []float64{0, 3, 6, 9}
	play := func(seed uint64, taken int, blows ...tryout.Blow) []float64 {
		m := made(t, tryout.Rough, seed, middling.ByChance(seed, 0.08, 0.38)[0])
		for _, b := range blows {
			m.Turn(clock.Left, tryout.HalfThou, hours...)
			require.NoError(t, m.Do(b))
		}
		for range taken {
			m.Taken()
		}
		return m.Turn(clock.Left, tryout.HalfThou, hours...)
	}
	one := tryout.Blow{Kind: tryout.Strike, Wheel: clock.Right, Hour: 3, Dose: 1}
	two := tryout.Blow{Kind: tryout.Squeeze, Hour: 6, Dose: 0.5}
	assert.Equal(t, play(7, 0, one, two), play(7, 0, one, two))
	assert.NotEqual(t, play(7, 0, one, two), play(8, 0, one, two))
	assert.NotEqual(t, play(7, 0, one, two), play(7, 0, one))
	assert.NotEqual(t, play(7, 0, one, two), play(7, 1, one, two), "another round scatters anew")

	m := made(t, tryout.Rough, 7, middling.ByChance(7, 0.08, 0.38)[0])
	a := m.Turn(clock.Left, tryout.HalfThou, hours...)
	assert.NotEqual(t, a, m.Turn(clock.Left, tryout.HalfThou, hours...))
}

// A turned-through crank is seen as it is, to within the division and the marks;
// without either, exactly.
func TestWatch(t *testing.T) {
	for seed := range uint64(300) {
		m := made(t, tryout.Rough, seed, middling.ByChance(seed, 0.08, 0.38)[0])
		high := func(d tryout.Dial) (runOut, hour float64) {
			runOut, rising, falling := m.Watch(clock.Right, d)
			return runOut, clock.Midway(rising, falling)
		}
		exactly, top := high(tryout.Dial{})
		assert.InDelta(t, m.RunOut(clock.Right), exactly, 1e-9)
		seen, hour := high(tryout.HalfThou)
		assert.InDelta(t, exactly, seen, tryout.HalfThou.Division+8*tryout.HalfThou.Scatter)
		assert.InDelta(t, 0, math.Remainder(seen, tryout.HalfThou.Division), 1e-9, "told in whole divisions")
		if exactly > 0.05 {
			assert.Less(t, clock.Apart(top, hour), 1.6)
		}
		// A full turn, its first harmonic by the four quarters.
		v := m.Turn(clock.Right, tryout.Dial{}, 0, 3, 6, 9)
		e := clock.Vec{T: (v[0] - v[2]) / 2, N: (v[1] - v[3]) / 2}
		assert.InDelta(t, exactly, 2*e.Len(), 1e-4)
		assert.Less(t, clock.Apart(top, e.Hour()), 0.01)
	}
}

func TestImpossible(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, change := range []func(*tryout.Crank){
		func(c *tryout.Crank) { c.Throw = nan },
		func(c *tryout.Crank) { c.Throw = 80 },
		func(c *tryout.Crank) { c.Rim = inf },
		func(c *tryout.Crank) { c.Pin = 0 },
		func(c *tryout.Crank) { c.Pin = nan },
		func(c *tryout.Crank) { c.Support[1] = 110 },
		func(c *tryout.Crank) { c.Dial[0] = 0 },
		func(c *tryout.Crank) { c.Dial[1] = 120 },
		func(c *tryout.Crank) { c.Dial[1] = nan },
		func(c *tryout.Crank) { c.More = []tryout.Pin{{At: 110, Throw: 40}} },
		func(c *tryout.Crank) { c.More = []tryout.Pin{{At: 130, Throw: 90}} },
		func(c *tryout.Crank) { c.More = []tryout.Pin{{At: 130, Throw: 40, Phase: nan}} },
		func(c *tryout.Crank) { c.More = []tryout.Pin{{At: 170, Throw: 40}} },
	} {
		c := middling
		change(&c)
		_, err := tryout.New(c, exact, 1, tryout.Start{})
		assert.Equal(t, tryout.Lengths, err, "%+v", c)
	}
	for _, s := range []tryout.Start{{D: clock.Vec{N: nan}}, {G: clock.Vec{T: 1}}, {D: clock.Vec{T: -inf}}} {
		_, err := tryout.New(middling, exact, 1, s)
		assert.Equal(t, tryout.Sitting, err)
	}
	m := made(t, exact, 1, middling.ByChance(1, 0.1, 0.2)[0])
	before := m.Sits(0)
	for _, b := range []tryout.Blow{
		{Kind: tryout.Spread + 1, Dose: 1}, {Wheel: 2, Hour: 3, Dose: 1}, {Hour: nan, Dose: 1}, {Hour: inf, Dose: 1},
		{Hour: 3, Dose: -1}, {Hour: 3, Dose: nan}, {Joint: 1, Hour: 3, Dose: 1}, {Joint: -1, Hour: 3, Dose: 1}, {Hour: 3, Dose: tryout.MostDose + 1}, {Hour: 3, Dose: tryout.MostDose},
	} {
		assert.Equal(t, tryout.Moving, m.Do(b), "%+v", b)
		assert.Equal(t, before, m.Sits(0), "nothing was done")
	}
}
