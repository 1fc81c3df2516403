package draw

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

var charts = map[string]ChartView{
	"chart-four": {Prefix: "c", Unit: "thou", Limit: 2, Passes: []PassFigures{
		{7.5, 5, 3.4, -2.8, 0.3}, {3.5, 4.2, 0.8, -2.6, 0.3}, {1.5, 2.2, 0.3, -1, 0.4}, {0.5, 0.5, 0.1, -0.2, 0.3}}},
	"chart-mm":   {Prefix: "c", Unit: "mm", Limit: 0.05, Passes: []PassFigures{{0.12, 0.03, 0.02, 0.04, math.NaN()}, {0.03, math.NaN(), 0.01, 0.01, math.NaN()}}},
	"chart-one":  {Prefix: "c", Unit: "thou", Limit: 2, Passes: []PassFigures{{1, 1, 0, 0, 0}}},
	"chart-none": {Prefix: "c", Unit: "thou"},
}

func TestChartGolden(t *testing.T) {
	for name, v := range charts {
		t.Run(name, func(t *testing.T) {
			golden(t, name, Chart(v))
			apart(t, Chart(v), ChartHeight)
		})
	}
}

func TestChartKeepsItsWordsApart(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	for range 200 {
		v := ChartView{Prefix: "c", Unit: "thou"}
		size := math.Pow(10, 3*rng.Float64()-1)
		for range rng.Intn(14) {
			f := PassFigures{size * rng.Float64(), size * rng.Float64(), size * rng.NormFloat64(), size * rng.NormFloat64(), size * rng.NormFloat64()}
			if rng.Intn(4) == 0 {
				f.Gap = math.Inf(1)
			}
			v.Passes = append(v.Passes, f)
		}
		svg := Chart(v)
		checkPicture(t, svg)
		apart(t, svg, ChartHeight)
	}
}

func TestRoundStep(t *testing.T) {
	for _, row := range []struct{ in, want float64 }{{1, 1}, {1.1, 2}, {2, 2}, {3, 5}, {6, 10}, {0.03, 0.05}, {130, 200}} {
		assert.InEpsilon(t, row.want, roundStep(row.in), 1e-12)
	}
}
