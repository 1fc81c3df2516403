package lsq

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"pintwelve/core/clock"
)

func dense(c Cov) *mat.Dense { return mat.NewDense(2, 2, []float64{c.TT, c.TN, c.TN, c.NN}) }

// Random covariances, seed 1, against gonum.
func TestCovAgainstGonum(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for range 1000 {
		c := Oriented(0.1+rng.Float64(), 0.1+rng.Float64(), 12*rng.Float64())
		v := clock.Vec{T: rng.NormFloat64(), N: rng.NormFloat64()}
		var inv mat.Dense
		require.NoError(t, inv.Inverse(dense(c)))
		w, ok := c.Inverse()
		require.True(t, ok)
		assert.InDelta(t, inv.At(0, 0), w.TT, 1e-9)
		assert.InDelta(t, inv.At(0, 1), w.TN, 1e-9)
		assert.InDelta(t, inv.At(1, 1), w.NN, 1e-9)
		x := mat.NewVecDense(2, []float64{v.T, v.N})
		assert.InEpsilon(t, mat.Inner(x, &inv, x), c.Distance2(v), 1e-9)
		var eig mat.EigenSym
		require.True(t, eig.Factorize(mat.NewSymDense(2, []float64{c.TT, c.TN, c.TN, c.NN}), false))
		assert.InEpsilon(t, math.Sqrt(eig.Values(nil)[1]), c.Widest(), 1e-9)
		assert.InEpsilon(t, c.TT+c.NN, c.Var(v)+c.Across(v), 1e-9, "the trace is the same in every frame")
	}
}

func TestOrientedLiesAlongTheHour(t *testing.T) {
	c := Oriented(3, 1, 2)
	assert.InDelta(t, 9, c.Var(clock.Polar(5, 2)), 1e-12)
	assert.InDelta(t, 1, c.Across(clock.Polar(5, 2)), 1e-12)
	assert.Equal(t, Cov{TT: 4, NN: 4}, Round(2))
}

func TestExactAndFlatVectors(t *testing.T) {
	var exact Cov
	assert.Equal(t, 0.0, exact.Distance2(clock.Vec{}))
	assert.Equal(t, math.MaxFloat64, exact.Distance2(clock.Vec{T: 1e-9}))
	flat := Cov{TT: 4}
	assert.InDelta(t, 2.25, flat.Distance2(clock.Vec{T: 3}), 1e-12)
	assert.Equal(t, math.MaxFloat64, flat.Distance2(clock.Vec{T: 3, N: 1}))
	_, ok := flat.Inverse()
	assert.False(t, ok)
	assert.Equal(t, 0.0, flat.Var(clock.Vec{}))
}

func TestProper(t *testing.T) {
	for _, row := range []struct {
		c  Cov
		ok bool
	}{
		{Cov{}, true}, {Cov{1, 0.5, 1}, true}, {Oriented(1, 0, 2), true},
		{Cov{1, 2, 1}, false}, {Cov{-1, 0, 1}, false}, {Cov{math.NaN(), 0, 1}, false}, {Cov{1, math.NaN(), 1}, false}, {Cov{math.Inf(1), 0, 1}, false},
	} {
		assert.Equal(t, row.ok, row.c.Proper(), "%v", row.c)
	}
}
