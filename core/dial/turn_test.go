package dial

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/mat"

	"pintwelve/core/clock"
	"pintwelve/testdata/cases"
)

// wave is a shaft as it shows: c + e·u + p cos 2φ + q sin 2φ.
type wave struct {
	c    float64
	e    clock.Vec
	p, q float64
}

func (w wave) at(hour float64) float64 {
	s, c := math.Sincos(clock.Radians(hour))
	s2, c2 := math.Sincos(2 * clock.Radians(hour))
	return w.c + w.e.T*c + w.e.N*s + w.p*c2 + w.q*s2
}

func (w wave) turn(hours []float64) Turn {
	t := Turn{Hours: hours}
	for _, h := range hours {
		t.Values = append(t.Values, w.at(h))
	}
	return t
}

func fitted(t *testing.T, turn Turn) Harmonics {
	t.Helper()
	f, err := turn.Fit()
	require.NoError(t, err)
	return f
}

// Even points, seed 3, against gonum's FFT: the first two harmonics.
func TestEvenPointsAgainstGonumFFT(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for range 300 {
		n := 3 + rng.Intn(22)
		turn := Turn{Hours: Even(n, false)}
		for range n {
			turn.Values = append(turn.Values, rng.NormFloat64())
		}
		f := fitted(t, turn)
		h := fourier.NewFFT(n).Coefficients(nil, turn.Values)
		assert.InDelta(t, real(h[0])/float64(n), f.C, 1e-12)
		assert.InDelta(t, 2*real(h[1])/float64(n), f.E.T, 1e-12)
		assert.InDelta(t, -2*imag(h[1])/float64(n), f.E.N, 1e-12)
		if n >= 6 {
			require.Equal(t, OvalFitted, f.Oval.State)
			assert.InDelta(t, 2*real(h[2])/float64(n), f.Oval.P, 1e-12)
			assert.InDelta(t, -2*imag(h[2])/float64(n), f.Oval.Q, 1e-12)
		}
		assert.InDelta(t, 2/float64(n), f.unit.TT, 1e-12, "σ_e = σ √(2/N)")
		assert.InDelta(t, 2/float64(n), f.unit.NN, 1e-12)
		assert.InDelta(t, 0, f.unit.TN, 1e-12)
	}
}

// Points anywhere, seed 4, against gonum's QR.
func TestUnevenPointsAgainstGonumQR(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	with := 0
	for range 300 {
		n := 4 + rng.Intn(12)
		turn := Turn{}
		for range n {
			turn.Hours = append(turn.Hours, 12*rng.Float64())
			turn.Values = append(turn.Values, rng.NormFloat64())
		}
		f := fitted(t, turn)
		columns := 3
		if f.Oval.State == OvalFitted {
			columns, with = 5, with+1
		}
		a, y := mat.NewDense(n, columns, nil), mat.NewDense(n, 1, turn.Values)
		for i, h := range turn.Hours {
			p := clock.Radians(h)
			a.SetRow(i, []float64{1, math.Cos(p), math.Sin(p), math.Cos(2 * p), math.Sin(2 * p)}[:columns])
		}
		var qr mat.QR
		qr.Factorize(a)
		var x, ata, inv mat.Dense
		require.NoError(t, qr.SolveTo(&x, false, y))
		ata.Mul(a.T(), a)
		require.NoError(t, inv.Inverse(&ata))
		tol := 1e-9 * math.Max(1, mat.Norm(&inv, 2))
		assert.InDelta(t, x.At(0, 0), f.C, tol)
		assert.InDelta(t, x.At(1, 0), f.E.T, tol)
		assert.InDelta(t, x.At(2, 0), f.E.N, tol)
		assert.InDelta(t, inv.At(1, 1), f.unit.TT, tol*tol*1e9)
		assert.Equal(t, n-columns, f.Nu)
		sse := 0.0
		for _, r := range f.Residuals {
			sse += r * r
		}
		assert.InDelta(t, sse, f.SSE, 1e-9)
	}
	assert.Greater(t, with, 50, "turns that tell ovality")
	assert.Less(t, with, 250, "turns that can't")
}

// Model, section 2: three even points pass ovality whole into e as (p, −q).
func TestThreePointsCantTellOvality(t *testing.T) {
	w := wave{c: 1, e: clock.Vec{T: 0.03, N: -0.02}, p: 0.004, q: 0.007}
	f := fitted(t, w.turn(Even(3, false)))
	assert.InDelta(t, 0.034, f.E.T, 1e-12)
	assert.InDelta(t, -0.027, f.E.N, 1e-12)
	assert.Equal(t, OvalHidden, f.Oval.State)
	assert.InDelta(t, 1, f.Oval.leaks, 1e-12)
	r := f.Reading(Noise{})
	assert.True(t, r.Unsure, "never sure")
	assert.True(t, r.Better.MorePoints)
}

// Model, section 2: of four points the one residual (r12 − r3 + r6 − r9)/4 is
// oval or noise, and e is free of it.
func TestFourPointsLeaveOvalOrNoise(t *testing.T) {
	w := wave{c: 1, e: clock.Vec{T: 0.03, N: -0.02}, p: 0.004, q: 0.007}
	turn := w.turn(Even(4, false))
	f := fitted(t, turn)
	assert.InDelta(t, 0.03, f.E.T, 1e-12)
	assert.InDelta(t, -0.02, f.E.N, 1e-12)
	v := turn.Values
	assert.Equal(t, OvalOrNoise, f.Oval.State)
	assert.InDelta(t, math.Abs(v[0]-v[1]+v[2]-v[3])/4, f.Oval.Size, 1e-12)
	assert.InDelta(t, 0.004, f.Oval.Size, 1e-12, "q can't show at 12, 3, 6, 9")
	assert.Equal(t, 1, f.Nu)
	assert.False(t, f.Reading(Noise{}).Unsure)
	assert.False(t, f.OutOfRound(Pool(0, &f)), "not separable")
	// Four points that stand badly let some of it into e.
	skew := fitted(t, w.turn([]float64{12, 2, 5, 7}))
	assert.True(t, skew.Reading(Noise{}).Unsure)
}

func TestEightPointsTellOvality(t *testing.T) {
	w := wave{c: 1, e: clock.Vec{T: 0.03, N: -0.02}, p: 0.004, q: 0.007}
	f := fitted(t, w.turn(Even(8, false)))
	assert.Equal(t, OvalFitted, f.Oval.State)
	assert.InDelta(t, 0.004, f.Oval.P, 1e-12)
	assert.InDelta(t, 0.007, f.Oval.Q, 1e-12)
	assert.True(t, f.OutOfRound(Pool(0, &f)))
	assert.Greater(t, f.Full, f.RunOut, "full movement has the form error in it")
	assert.InDelta(t, 2*math.Hypot(0.03, 0.02), f.RunOut, 1e-12)
}

// ISO 1101, ASME Y14.5: a round shaft with eccentricity e moves the needle 2e.
func TestFullMovementOfARoundShaft(t *testing.T) {
	f := fitted(t, wave{e: clock.Polar(0.05, 3)}.turn(Even(12, false)))
	assert.InDelta(t, 0.1, f.Full, 1e-12)
	assert.InDelta(t, 0.1, f.RunOut, 1e-12)
	assert.InDelta(t, 3, f.E.Hour(), 1e-9)
}

func TestReadFromTheOtherEnd(t *testing.T) {
	w := wave{c: 1, e: clock.Vec{T: 0.03, N: -0.02}, p: 0.004, q: 0.007}
	turn := Turn{From: clock.Right, Hours: Even(8, true)}
	for _, h := range turn.Hours {
		turn.Values = append(turn.Values, w.at(clock.Mirror(h)))
	}
	f := fitted(t, turn)
	assert.InDelta(t, 0.03, f.E.T, 1e-12)
	assert.InDelta(t, -0.02, f.E.N, 1e-12)
	assert.InDelta(t, 0.007, f.Oval.Q, 1e-12)
}

// A dial that creeps evenly, told by reading the first point again.
func TestDriftIsTakenOut(t *testing.T) {
	w := wave{c: 1, e: clock.Vec{T: 0.03, N: -0.02}, p: 0.004}
	turn := w.turn(Even(8, true))
	for k := range turn.Values {
		turn.Values[k] += 0.016 * float64(k) / 8
	}
	f := fitted(t, turn)
	assert.True(t, f.Repeated)
	assert.InDelta(t, 0.016, f.Drift, 1e-12)
	assert.InDelta(t, 0.03, f.E.T, 1e-12)
	assert.InDelta(t, -0.02, f.E.N, 1e-12)
	assert.InDelta(t, 0, f.SSE, 1e-20)
	assert.Len(t, f.Residuals, 8)
	turn.Division = 0.005
	f = fitted(t, turn)
	assert.True(t, f.Drifted(Pool(0.005, &f)), "three divisions stand above the rounding")
	turn.Division = 0.0254
	f = fitted(t, turn)
	assert.False(t, f.Drifted(Pool(0.0254, &f)), "half a division does not")
	still := fitted(t, w.turn(Even(8, true)))
	assert.False(t, still.Drifted(Pool(0, &still)))
	open := fitted(t, w.turn(Even(8, false)))
	assert.False(t, open.Repeated, "without the repeated point drift can't be told")
}

// The covariance with the drift taken out, and the squares left over, against
// the scatter of many turns, seed 5.
func TestDriftCostsSureness(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	for _, n := range []int{4, 8, 12} {
		const turns = 5000
		var tt, tn, nn, sse float64
		var f Harmonics
		for range turns {
			turn := Turn{Hours: Even(n, true), Values: make([]float64, n+1)}
			for i := range turn.Values {
				turn.Values[i] = rng.NormFloat64()
			}
			f = fitted(t, turn)
			tt, tn, nn, sse = tt+f.E.T*f.E.T, tn+f.E.T*f.E.N, nn+f.E.N*f.E.N, sse+f.SSE
		}
		assert.InEpsilon(t, tt/turns, f.unit.TT, 0.08, "%d points", n)
		assert.InEpsilon(t, nn/turns, f.unit.NN, 0.08, "%d points", n)
		assert.InDelta(t, tn/turns, f.unit.TN, 0.08*f.unit.NN, "%d points", n)
		assert.InEpsilon(t, float64(f.Nu), sse/turns, 0.08, "%d points", n)
		assert.Greater(t, f.unit.NN, 1.2*2/float64(n), "it costs")
	}
}

func TestNeedlePassesZero(t *testing.T) {
	for _, row := range []struct {
		name   string
		in     []float64
		full   float64
		out    []float64
		passed bool
	}{
		{"98, 99, 0, 1", []float64{98, 99, 0, 1}, 100, []float64{98, 99, 100, 101}, true},
		{"and back", []float64{98, 1, 99, 97}, 100, []float64{98, 101, 99, 97}, true},
		{"downwards", []float64{2, 0, 98, 1}, 100, []float64{2, 0, -2, 1}, true},
		{"minus readings are taken as they stand", []float64{1, 0, -1, 0}, 100, []float64{1, 0, -1, 0}, false},
		{"a metric dial", []float64{0.99, 0.01, 0.03, 0.98}, 1, []float64{0.99, 1.01, 1.03, 0.98}, true},
		{"a dial that can't", []float64{98, 99, 0, 1}, 0, []float64{98, 99, 0, 1}, false},
		{"half the range is not a pass", []float64{0, 50, 0, 50}, 100, []float64{0, 50, 0, 50}, false},
		{"nor after one", []float64{98, 1, 51, 99}, 100, []float64{98, 101, 151, 199}, true},
		{"nor down after one", []float64{98, 60, 10, 70}, 100, []float64{98, 60, 10, -30}, true},
		{"twice round", []float64{60, 0, 40, 90, 30, 50}, 100, []float64{60, 100, 140, 190, 230, 250}, true},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := append([]float64{}, row.in...)
			assert.Equal(t, row.passed, unwrap(got, row.full))
			assert.InDeltaSlice(t, row.out, got, 1e-12)
			f := fitted(t, Turn{Hours: Even(len(row.in), false), Values: row.in, Range: row.full})
			assert.Equal(t, row.passed, f.Unwrapped)
		})
	}
}

func TestWhatCanNotBeFittedIsNamed(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		name  string
		turn  Turn
		field Field
		index int
	}{
		{"nothing", Turn{}, Points, 0},
		{"two points", Turn{Hours: []float64{0, 6}, Values: []float64{1, 2}}, Points, 0},
		{"two and one of them again", Turn{Hours: []float64{0, 6, 12}, Values: []float64{1, 2, 1}}, Points, 0},
		{"a value short", Turn{Hours: Even(8, false), Values: make([]float64, 7)}, Points, 0},
		{"not a number", Turn{Hours: Even(3, false), Values: []float64{1, nan, 2}}, Value, 1},
		{"no hour", Turn{Hours: []float64{0, 4, nan}, Values: []float64{1, 1, 2}}, Hour, 2},
		{"no division", Turn{Hours: Even(3, false), Values: []float64{1, 1, 2}, Division: -1}, Division, 0},
		{"no range", Turn{Hours: Even(3, false), Values: []float64{1, 1, 2}, Range: nan}, Range, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := row.turn.Fit()
			var bad *Error
			require.ErrorAs(t, err, &bad)
			assert.Equal(t, row.field, bad.Field)
			assert.Equal(t, row.index, bad.Index)
			if row.field == Points {
				assert.True(t, bad.HasLeast)
				assert.Greater(t, bad.Least, bad.Given)
			}
		})
	}
}

func TestScatterIsPooled(t *testing.T) {
	w := wave{c: 1, e: clock.Polar(0.03, 2)}
	a, b := w.turn(Even(8, false)), w.turn(Even(12, false))
	rng := rand.New(rand.NewSource(6))
	for i := range a.Values {
		a.Values[i] += 0.001 * rng.NormFloat64()
	}
	for i := range b.Values {
		b.Values[i] += 0.001 * rng.NormFloat64()
	}
	f, g := fitted(t, a), fitted(t, b)
	n := Pool(0, &f, &g)
	assert.Equal(t, 10.0, n.Nu, "3 and 7")
	assert.InDelta(t, math.Sqrt((f.SSE+g.SSE)/10), n.S, 1e-15)
	r := f.Reading(n)
	assert.Equal(t, n.Nu, r.Nu)
	assert.InDelta(t, n.S*math.Sqrt(2.0/8), math.Sqrt(r.Cov.TT), 1e-12, "σ_e = s √(2/N)")
	assert.Equal(t, Noise{}, Pool(0.01), "no turn, no scatter")

	// A coarse dial read at eight points: what a hand may scatter governs.
	a.Division = 0.02
	f = fitted(t, a)
	n = Pool(0.02, &f)
	assert.Equal(t, 5.0, n.Nu, "3 and the prior's 2")
	assert.InDelta(t, math.Sqrt((2*0.02*0.02*(1./12+0.16)+f.SSE)/5), n.S, 1e-15)
	assert.False(t, f.Reading(n).Better.FinerDial)
	// At twelve: the division governs, and is known.
	b.Division = 0.02
	g = fitted(t, b)
	r = g.Reading(Pool(0.02, &g))
	assert.Zero(t, r.Nu)
	assert.True(t, r.Better.FinerDial)
	assert.InDelta(t, 0.02/math.Sqrt(48), math.Sqrt(r.Cov.TT), 1e-12, "never below")
}

// The dials of testdata/cases/truing.json, from an exact rigid body: run-out and
// high spot within half a micron where readings are exact; where they were
// rounded, e within 0.71, 0.65 and 0.64 of a division at 4, 8 and 12 points, the
// most that rounding can do.
func TestTruingTurns(t *testing.T) {
	bound := map[int]float64{4: 0.71, 8: 0.65, 12: 0.64}
	for _, c := range cases.OfOne(t) {
		from := clock.Left
		if c.SeenFrom == "right" {
			from = clock.Right
		}
		for _, d := range c.Dials {
			turn := Turn{From: from, Division: c.Division}
			for _, r := range d.Readings {
				turn.Hours = append(turn.Hours, r.Clock)
				turn.Values = append(turn.Values, r.MM)
			}
			f := fitted(t, turn)
			truth := clock.Polar(d.TIR/2, clock.SeenFrom(from, d.HighSpot))
			off := f.E.Sub(truth).Len()
			limit := 0.5e-3 / 2
			if c.Division > 0 {
				limit = bound[len(d.Readings)] * c.Division
			}
			require.Positive(t, limit)
			assert.LessOrEqual(t, off, limit, c.Name)
		}
	}
}

func BenchmarkFitOfTwelvePoints(b *testing.B) {
	turn := wave{c: 1, e: clock.Polar(0.03, 2), p: 0.001}.turn(Even(12, true))
	b.ReportAllocs()
	for b.Loop() {
		_, _ = turn.Fit()
	}
}

// Ovality is fitted where that makes E at most twice as unsure as a round fit's is:
// just under that, and just over it, by gonum's inverse of the normal equations.
func TestOvalityIsFittedWhereThePointsTellItApart(t *testing.T) {
	widest := func(hours []float64, columns int) float64 {
		a := mat.NewDense(len(hours), columns, nil)
		for i, h := range hours {
			s, c := math.Sincos(clock.Radians(h))
			copy(a.RawRowView(i), []float64{1, c, s, c*c - s*s, 2 * s * c}[:columns])
		}
		var normal, inverse mat.Dense
		normal.Mul(a.T(), a)
		require.NoError(t, inverse.Inverse(&normal))
		var eigen mat.EigenSym
		e := mat.NewSymDense(2, []float64{inverse.At(1, 1), inverse.At(1, 2), inverse.At(2, 1), inverse.At(2, 2)})
		require.True(t, eigen.Factorize(e, false))
		return math.Sqrt(eigen.Values(nil)[1])
	}
	for _, row := range []struct {
		hours []float64
		times float64
		want  OvalState
	}{{[]float64{0, 1, 6, 7, 8, 9}, 1.986, OvalFitted}, {[]float64{0, 1, 2, 4, 5, 6, 7}, 2.053, OvalOrNoise}} {
		require.InDelta(t, row.times, widest(row.hours, 5)/widest(row.hours, 3), 0.001)
		f := fitted(t, wave{e: clock.Vec{T: 5, N: 2}, p: 1}.turn(row.hours))
		assert.Equal(t, row.want, f.Oval.State, "%v", row.hours)
	}
}
