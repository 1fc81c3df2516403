package dial

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// The choice of the prior, seed 7: hands that scatter 0 to a whole
// division, shafts round and oval by three tenths, one turn of the dial and three.
// The region's half-width in divisions, and how many of a hundred hold.
func TestThePrior(t *testing.T) {
	for _, row := range []struct {
		points, turns int
		widest        float64 // divisions, of a steady hand's region
		holds         float64 // % at the least
	}{{4, 1, 1.4, 88}, {4, 3, 0.95, 87}, {8, 1, 0.68, 88}, {8, 3, 0.5, 91}} {
		rng := rand.New(rand.NewSource(7))
		for _, oval := range []float64{0, 0.3} {
			for _, scatter := range []float64{0, 0.2, 0.4, 0.6, 1} {
				holds, width := 0.0, 0.0
				const n = 2000
				for range n {
					var fits []*Harmonics
					e := clock.Polar(15*rng.Float64(), 12*rng.Float64())
					for range row.turns {
						f := fitted(t, handRead(rng, e, row.points, oval, scatter))
						fits = append(fits, &f)
					}
					f := fits[0]
					r := f.Reading(Pool(1, fits...))
					if !r.Uncertainty().Significant(f.E.Sub(e)) {
						holds += 100. / n
					}
					width += lsq.Radius95(r.Nu) * r.Cov.Widest() / n
				}
				t.Logf("%d points, %d turns, oval %.1f, scatter %.1f: half-width %.2f divisions, holds %.1f %%", row.points, row.turns, oval, scatter, width, holds)
				assert.GreaterOrEqual(t, holds, row.holds)
				if oval == 0 && scatter == 0 {
					assert.LessOrEqual(t, width, row.widest)
				}
			}
		}
	}
}

// handRead is a turn read to whole divisions by an unsteady hand.
func handRead(rng *rand.Rand, e clock.Vec, points int, oval, scatter float64) Turn {
	turn := wave{c: rng.Float64(), e: e}.turn(Even(points, false))
	phase := 2 * math.Pi * rng.Float64()
	for i, v := range turn.Values {
		v += oval*math.Cos(math.Pi*turn.Hours[i]/3+phase) + scatter*rng.NormFloat64()
		turn.Values[i] = math.Round(v)
	}
	turn.Division = 1
	return turn
}

// Four points of 4.5 7.5 4.5 2.5 and 4.5 4.5 5 5 thou on half-thou dials leave no
// doubt larger than the run-out itself.
func TestFourPointsAreNotAbsurd(t *testing.T) {
	for _, values := range [][]float64{{4.5, 7.5, 4.5, 2.5}, {4.5, 4.5, 5, 5}} {
		turn := Turn{Hours: Even(4, false), Values: values, Division: 0.5}
		f := fitted(t, turn)
		assert.Less(t, f.Reading(Pool(0.5, &f)).HalfWidth95(), 1.7)
	}
}
