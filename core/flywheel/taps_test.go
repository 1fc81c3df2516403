package flywheel

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// even returns taps at every pass, gap s apart, scattered by sd s.
func even(rng *rand.Rand, n int, gap, sd float64) []float64 {
	taps := make([]float64, n)
	for k := range taps {
		taps[k] = 100 + gap*float64(k) + sd*rng.NormFloat64()
	}
	return taps
}

func TestPeriodOfExactTaps(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for _, passes := range []int{1, 2} {
		got, err := Time(even(rng, 21, 0.45, 0), passes, 0)
		require.NoError(t, err)
		assert.InDelta(t, 0.45*float64(passes), got.PeriodS, 1e-12)
		assert.InDelta(t, 20/float64(passes), got.Swings, 1e-12)
		assert.Equal(t, 21, got.Used)
		assert.Empty(t, got.Missed)
		assert.Empty(t, got.Doubled)
	}
	stepped, err := Time(even(rng, 21, 0.45, 0), 1, 0.01) // the clock's step is a floor
	require.NoError(t, err)
	assert.InEpsilon(t, 0.01/math.Sqrt(12), stepped.ScatterS, 1e-6)
	assert.InEpsilon(t, student95(19)*stepped.SDS, stepped.PM(), 1e-12)
}

// The same fit by gonum's QR, with its covariance.
func TestFitAgainstGonum(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for range 200 {
		taps := even(rng, 8+rng.Intn(20), 0.5, 0.03)
		for k := range taps {
			taps[k] += 0.04 * float64(k%2)
		}
		got, err := Time(taps, 2, 0)
		require.NoError(t, err)
		design, times := mat.NewDense(len(taps), 3, nil), mat.NewVecDense(len(taps), taps)
		for k := range taps {
			design.SetRow(k, []float64{1, float64(k), float64(1 - 2*(k%2))})
		}
		var x, fit, left mat.VecDense
		require.NoError(t, x.SolveVec(design, times))
		fit.MulVec(design, &x)
		left.SubVec(times, &fit)
		s := mat.Norm(&left, 2) / math.Sqrt(float64(len(taps)-3))
		var normal, cov mat.Dense
		normal.Mul(design.T(), design)
		require.NoError(t, cov.Inverse(&normal))
		assert.InEpsilon(t, 2*x.AtVec(1), got.PeriodS, 1e-9)
		assert.InEpsilon(t, s, got.ScatterS, 1e-9)
		assert.InEpsilon(t, 2*s*math.Sqrt(cov.At(1, 1)), got.SDS, 1e-9)
		assert.InDelta(t, 2*x.AtVec(2), got.UnevenS, 1e-9)
		assert.Equal(t, float64(len(taps)-3), got.Freedom)
	}
}

func TestMissedAndDoubleTaps(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	for range 300 {
		taps := even(rng, 30, 0.45, 0.02)
		double := slices.Insert(slices.Clone(taps), 11, taps[10]+0.15) // a bounce of the thumb
		missed := slices.Delete(slices.Clone(double), 20, 22)
		got, err := Time(missed, 1, 0)
		require.NoError(t, err)
		assert.Equal(t, []int{11}, got.Doubled)
		assert.Equal(t, []Missed{{After: 19, Count: 2}}, got.Missed)
		assert.Equal(t, 28, got.Used)
		assert.InDelta(t, 29, got.Swings, 1e-12)
		assert.InDelta(t, 0.45, got.PeriodS, 0.003)
	}
}

func TestMarkFarOffTheMiddle(t *testing.T) {
	var taps []float64
	for k := range 20 {
		taps = append(taps, 0.45*float64(k)+0.12*float64(k%2)) // 0.57 s, then 0.33 s
	}
	got, err := Time(taps, 2, 0)
	require.NoError(t, err)
	assert.InDelta(t, 0.9, got.PeriodS, 1e-12)
	assert.InDelta(t, -0.12, got.UnevenS, 1e-12)
	assert.Empty(t, got.Missed)
}

func TestTapsThatCannotBeTimed(t *testing.T) {
	good := even(rand.New(rand.NewSource(5)), 12, 0.5, 0)
	with := func(i int, x float64) []float64 {
		taps := slices.Clone(good)
		taps[i] = x
		return taps
	}
	for _, row := range []struct {
		name   string
		field  Field
		item   int
		taps   []float64
		passes int
		step   float64
	}{
		{"none", TapCount, 0, nil, 1, 0},
		{"too few", TapCount, 0, good[:5], 1, 0},
		{"backwards", TapTime, 4, with(4, 3), 1, 0},
		{"not a time", TapTime, 4, with(4, math.NaN()), 1, 0},
		{"never", TapTime, 11, with(11, math.Inf(1)), 1, 0},
		{"two days", TapTime, 11, with(11, 2*86400), 1, 0},
		{"all at once", TapTime, 0, make([]float64, 12), 1, 0},
		{"three ways", Passes, 0, good, 3, 0},
		{"clock", ClockStep, 0, good, 1, math.NaN()},
		{"at random", TapsUneven, 0, []float64{0, 0.5, 1.7, 1.9, 2.6, 3.4, 3.7, 5, 5.45, 6.3}, 1, 0},
		{"bounces only", TapsUneven, 0, []float64{0, 0, 0, 0, 0, 0, 0, 0, 5}, 1, 0},
	} {
		got, err := Time(row.taps, row.passes, row.step)
		var fault *Fault
		require.ErrorAs(t, err, &fault, row.name)
		assert.Equal(t, row.field, fault.Field, "%s: %v", row.name, err)
		assert.Equal(t, row.item, fault.Item, row.name)
		assert.Equal(t, Timing{}, got, row.name)
	}
}

func TestNothingButNumbersComesOutOfTaps(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	timed := 0
	for range 20000 {
		taps := make([]float64, rng.Intn(16))
		at := 0.0
		for i := range taps {
			at += []float64{0.5, 0.5, 0.5, 0.55, 0, 0.1, 1, 1e-9, 1e4, 1e15}[rng.Intn(10)*rng.Intn(2)*rng.Intn(2)]
			taps[i] = at
		}
		got, err := Time(taps, 1+rng.Intn(2), 0)
		if err != nil {
			continue
		}
		timed++
		for _, x := range []float64{got.PeriodS, got.SDS, got.PM(), got.ScatterS, got.UnevenS, got.Swings} {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%v", taps)
		}
		require.Positive(t, got.PeriodS)
	}
	assert.Greater(t, timed, 1000)
}
