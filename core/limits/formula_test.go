package limits

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The rules from which ISO 286-1 makes its tables; D is the geometric mean of the
// ends of the range in mm, results in µm. Formulas from memory.

// unit is the standard tolerance factor i.
func unit(d float64) float64 { return 0.45*math.Cbrt(d) + 0.001*d }

var times = map[int]float64{5: 7, 6: 10, 7: 16, 8: 25}

// An entry may stand off its rule only where the standard rounded it otherwise;
// those are named, so that a mistaken entry shows.
func TestStandardTolerancesFollowTheirRule(t *testing.T) {
	type cell struct {
		grade int
		upTo  float64
	}
	roundedUp := map[cell]bool{{6, 6}: true, {7, 10}: true, {7, 18}: true} // 7.3 → 8, 14.4 → 15, 17.3 → 18
	for _, r := range ranges {
		for grade, k := range times {
			it := standardTolerance(t, grade, r[1])
			want := k * unit(math.Sqrt(r[0]*r[1]))
			if roundedUp[cell{grade, r[1]}] {
				want = math.Ceil(want)
			}
			assert.InDelta(t, want, float64(it), 0.5, "IT%d up to %g", grade, r[1])
		}
	}
}

// IT4 comes in through Δ for grade 5 alone. IT2 to IT4 lie in geometric
// progression between IT1 = 0.8 + 0.020 D and IT5.
func TestDeltaOfGradeFiveFollowsItsRule(t *testing.T) {
	for _, r := range ranges {
		d := math.Sqrt(r[0] * r[1])
		it1, it5 := 0.8+0.020*d, 7*unit(d)
		k5lo, k5hi, err := Shaft("k", 5, r[1])
		require.NoError(t, err)
		_, K5hi, err := Hole("K", 5, r[1])
		require.NoError(t, err)
		it4 := float64(k5hi-k5lo) - float64(K5hi+k5lo) // IT5 − Δ
		assert.InDelta(t, it1*math.Pow(it5/it1, 0.75), it4, 0.75, "IT4 up to %g", r[1])
	}
}

func TestFundamentalDeviationsFollowTheirRules(t *testing.T) {
	power := func(k, x float64) func(float64, [9]float64) float64 {
		return func(d float64, _ [9]float64) float64 { return k * math.Pow(d, x) }
	}
	for _, rule := range []struct {
		letters string
		upper   bool
		rule    func(d float64, it [9]float64) float64 // it[n] is ITn
		within  float64
	}{
		{"f", true, power(-5.5, 0.41), 0.6},
		{"g", true, power(-2.5, 0.34), 0.5},
		{"h", true, func(float64, [9]float64) float64 { return 0 }, 0},
		{"k", false, power(0.6, 1.0/3), 0.5},
		{"m", false, func(_ float64, it [9]float64) float64 { return it[7] - it[6] }, 0},
		{"n", false, power(5, 0.34), 0.8},
	} {
		for _, r := range ranges {
			lo, hi, err := Shaft(rule.letters, 6, r[1])
			require.NoError(t, err)
			got := float64(lo)
			if rule.upper {
				got = float64(hi)
			}
			assert.InDelta(t, rule.rule(math.Sqrt(r[0]*r[1]), tolerances(t, r[1])), got, rule.within, "%s up to %g", rule.letters, r[1])
		}
	}
}

// standardTolerance is that of a grade at a nominal size in mm.
func standardTolerance(t *testing.T, grade int, nominal float64) Micron {
	s, problem := Class{"h", grade}.step(nominal)
	require.Zero(t, problem)
	return s.grade(grade)
}

func tolerances(t *testing.T, size float64) (it [9]float64) {
	for grade := LowestGrade; grade <= HighestGrade; grade++ {
		it[grade] = float64(standardTolerance(t, grade, size))
	}
	return it
}

// p = IT7 + 0 to 5; s = IT8 + 1 to 4 up to 50 mm, then IT7 + 0.4 D; r is the
// geometric mean of p and s. p keeps the whole range above 50 mm, r and s don't.
func TestPRAndSFollowTheirRules(t *testing.T) {
	narrow := [][2]float64{{3, 6}, {6, 10}, {10, 18}, {18, 30}, {30, 50}, {50, 65}, {65, 80}, {80, 100}, {100, 120}, {120, 140}, {140, 160}, {160, 180}}
	for _, r := range narrow {
		it := tolerances(t, r[1])
		p, _, err := Shaft("p", 6, r[1])
		require.NoError(t, err)
		s, _, err := Shaft("s", 6, r[1])
		require.NoError(t, err)
		m, _, err := Shaft("r", 6, r[1])
		require.NoError(t, err)
		assert.GreaterOrEqual(t, float64(p)-it[7], 0.0)
		assert.LessOrEqual(t, float64(p)-it[7], 5.0)
		if r[1] <= 50 {
			assert.GreaterOrEqual(t, float64(s)-it[8], 1.0)
			assert.LessOrEqual(t, float64(s)-it[8], 4.0)
		} else {
			assert.InDelta(t, it[7]+0.4*math.Sqrt(r[0]*r[1]), float64(s), 0.5, "s up to %g", r[1])
		}
		assert.InDelta(t, math.Sqrt(float64(p*s)), float64(m), 0.65, "r up to %g", r[1])
	}
}

// What Δ is for (ISO 286-1, general rule for fundamental deviations of holes):
// H7/p6 and P7/h6 bite alike, and so for K, M, N up to grade 8 and P, R up to 7
// with a shaft one grade finer.
func TestHoleBasisAndShaftBasisBiteAlike(t *testing.T) {
	for letters, last := range map[string]int{"k": 8, "m": 8, "n": 8, "p": 7, "r": 7} {
		for grade := 6; grade <= last; grade++ {
			for _, r := range ranges {
				for _, size := range inside(r) {
					_, shaft, err := Shaft(letters, grade-1, size)
					require.NoError(t, err)
					hole, _, err := Hole(string(letters[0]-'a'+'A'), grade, size)
					require.NoError(t, err)
					assert.Equal(t, shaft, -hole, "%s%d at %g", letters, grade, size)
				}
			}
		}
	}
}
