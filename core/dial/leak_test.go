package dial

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// What of an ovality passes into E is, for the ovality that is turned the worst way,
// what gonum's least squares make of it at the same points.
func TestWhatOfAnOvalityLeaksAgainstGonum(t *testing.T) {
	rng := rand.New(rand.NewSource(41))
	for range 50 {
		n := 4 + rng.Intn(4)
		rows := make([][5]float64, n)
		at := mat.NewDense(n, 3, nil)
		angles := make([]float64, n)
		for i := range rows {
			angles[i] = 2 * math.Pi * rng.Float64()
			sin, cos := math.Sincos(angles[i])
			sin2, cos2 := math.Sincos(2 * angles[i])
			rows[i] = [5]float64{1, cos, sin, cos2, sin2}
			at.SetRow(i, rows[i][:3])
		}
		d, ok := fitColumns(3, rows, make([]float64, n))
		if !ok || mat.Cond(at, 2) > 50 {
			continue
		}
		most := 0.0
		for turned := 0.0; turned < 360; turned++ {
			values := mat.NewVecDense(n, nil)
			for i, a := range angles {
				values.SetVec(i, math.Cos(2*a-turned*math.Pi/180))
			}
			var x mat.VecDense
			require.NoError(t, x.SolveVec(at, values))
			most = math.Max(most, math.Hypot(x.AtVec(1), x.AtVec(2)))
		}
		assert.InEpsilon(t, most, d.leak(), 2e-4)
	}
}
