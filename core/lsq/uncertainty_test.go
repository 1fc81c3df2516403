package lsq

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/clock"
)

func TestTellsTakesTheRadiusOfItsFreedom(t *testing.T) {
	for _, row := range []struct {
		nu, length float64
		tells      bool
	}{
		{0, 2.44, false}, {0, 2.46, true}, {4, 3.7, false}, {4, 3.75, true}, {1, 19.9, false}, {1, 20, true}, // √399 = 19.97
	} {
		assert.Equal(t, row.tells, Uncertainty{Cov: Round(1), Nu: row.nu}.Significant(clock.Polar(row.length, 4)), "%v", row)
	}
	assert.False(t, Uncertainty{}.Significant(clock.Vec{}), "nil points nowhere, however sure")
	assert.True(t, Uncertainty{}.Significant(clock.Vec{T: 1e-9}))
}

func TestPlusAndSector(t *testing.T) {
	s := Uncertainty{Cov: Oriented(1, 2, 0)}
	assert.InDelta(t, 1.96, s.HalfWidth95(clock.Vec{T: 5}), 1e-4)
	assert.InDelta(t, 3.92, s.HalfWidth95(clock.Vec{N: 5}), 1e-4)
	assert.InDelta(t, 3.92, s.HalfWidth95(clock.Vec{}), 1e-4, "the least sure")
	assert.InDelta(t, math.Asin(3.92/10)*6/math.Pi, s.Sector(clock.Vec{T: 10}), 1e-4, "arcsin(1.96 σ_across/|v|)")
	assert.InDelta(t, 3, s.Sector(clock.Vec{T: 1}), 1e-12, "no more than a quarter turn either way")
	assert.InDelta(t, 6, s.Sector(clock.Vec{}), 0)
	assert.InDelta(t, 7.84, s.Scale(2).HalfWidth95(clock.Vec{N: 1}), 1e-3)
}

func TestPooledFreedom(t *testing.T) {
	a, b := Uncertainty{Cov: Round(1), Nu: 4}, Uncertainty{Cov: Round(1), Nu: 4}
	assert.InDelta(t, 8, PooledNu(a, b), 1e-12, "alike: both count")
	b.Cov = Round(1e-3)
	assert.InDelta(t, 4, PooledNu(a, b), 1e-4, "one governs")
	assert.Zero(t, PooledNu(Uncertainty{Cov: Round(1)}, Uncertainty{Cov: Round(2)}), "both known")
	assert.InDelta(t, 16, PooledNu(a, Uncertainty{Cov: Round(1)}), 1e-12, "half of it known")
}

// Two vectors that are the same but for their scatter differ once in twenty,
// seed 3.
func TestDiffer(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	a, b := Uncertainty{Cov: Round(1)}, Uncertainty{Cov: Oriented(2, 0.5, 1)}
	differ := 0
	const n = 20000
	for range n {
		v := clock.Vec{T: rng.NormFloat64(), N: rng.NormFloat64()}
		u := clock.Polar(2*rng.NormFloat64(), 1).Add(clock.Polar(0.5*rng.NormFloat64(), 4))
		if Differ(v, u, a, b) {
			differ++
		}
	}
	assert.InDelta(t, 0.05, float64(differ)/n, 0.005)
}

func TestFloorRaisesOnlyWhatIsLow(t *testing.T) {
	c := Oriented(3, 1, 2)
	assert.Equal(t, c, c.Floor(0.5))
	f := c.Floor(4)
	assert.InDelta(t, 9, f.Var(clock.Polar(1, 2)), 1e-12)
	assert.InDelta(t, 4, f.Across(clock.Polar(1, 2)), 1e-12)
	assert.InDelta(t, 16, c.Floor(16).TT, 1e-12)
	assert.InDelta(t, 0, c.Floor(16).TN, 1e-12)
}
