package draw

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

func fit(low, value, high, half float64) FitView {
	return FitView{Prefix: "j", Name: "Crankpin in bush", Low: low, High: high, Value: value, Half: half,
		LowWords: "0.5 thou", HighWords: "1.25 thou", Words: "0.9 thou", Below: "too tight", Above: "too loose"}
}

var fits = map[string]FitView{
	"fit-within": fit(0.5, 0.9, 1.25, 0.1),
	"fit-over":   fit(0.5, 1.5, 1.25, 0),
	"fit-far":    fit(0.5, -3, 1.25, 0),
	"fit-open":   fit(0.5, 0.9, math.Inf(1), 0.05),
	"fit-none":   fit(math.NaN(), 1, math.NaN(), 0),
}

func TestFitGolden(t *testing.T) {
	for name, v := range fits {
		t.Run(name, func(t *testing.T) {
			golden(t, name, Fit(v))
			apart(t, Fit(v), FitHeight)
		})
	}
}

func TestFitIsToScaleBetweenItsLimits(t *testing.T) {
	rng := rand.New(rand.NewSource(8))
	for range 200 {
		low := rng.NormFloat64()
		high := low + rng.ExpFloat64()
		share := 2*rng.Float64() - 0.5
		v := fit(low, low+share*(high-low), high, 0)
		assert.InDelta(t, 112+136*share, v.fitScale()(v.Value), 1e-6)
		checkPicture(t, Fit(v))
		apart(t, Fit(v), FitHeight)
	}
}

func TestFitWithoutNumbers(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, v := range []FitView{fit(0, nan, 1, 0), fit(1, 1, 0, 0), fit(-inf, 0, 0, nan), fit(0, inf, 1, 0), fit(0, 0, inf, inf), fit(-1e300, 1e300, 1e-300, 1e300)} {
		v.Words, v.Name, v.Prefix = hostile, hostile, hostile
		checkPicture(t, Fit(v))
	}
}
