package truing

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// thou is one, in mm.
const thou = 0.0254

// What is read off a figure, its ± and the limit beside them is what the verdict
// went by: inside for sure, outside for sure, or neither (ISO 14253-1).
func TestNoRoundingContradictsTheVerdict(t *testing.T) {
	rng := rand.New(rand.NewSource(14))
	c := scale{unit.Thou, 0.5 * thou}
	verdict := func(v, plus, limit float64) [3]bool {
		return [3]bool{over(v, limit), over(v+plus, limit), over(v-plus, limit)}
	}
	finer := 0
	for range 5000 {
		f := crank.Figure{Value: (0.5 + 2*rng.Float64()) * thou, HalfWidth95: rng.Float64() * thou}
		limit := float64(1+rng.Intn(4)) / 2 * thou
		value, plus := c.beside(f, limit)
		if strings.HasPrefix(value, "just") {
			continue
		}
		v, err := unit.Parse(value, unit.Thou)
		require.NoError(t, err)
		p, err := unit.Parse(plus, unit.Thou)
		require.NoError(t, err)
		require.Equal(t, verdict(f.Value, f.HalfWidth95, limit), verdict(v, p, limit), "%v thou: %s ± %s, %v allowed", f.Value/thou, value, plus, limit/thou)
		if value != c.figures(f.Value) {
			finer++
		}
	}
	assert.Positive(t, finer, "a digit more is shown where it takes one")
	assert.Less(t, finer, 1000, "and only there")
}

func TestAFigureBesideItsLimit(t *testing.T) {
	c := scale{unit.Thou, 0.5 * thou}
	for _, row := range []struct {
		v, plus, limit float64
		value, shown   string
	}{
		{1.9, 0.4, 2, "1.9", "0.4"},
		{1.04, 0.56, 1, "1.04", "0.56"}, // "1 ± 0.6, 1 allowed" would read as inside
		{0.98, 0.56, 1, "1", "0.6"},     // and this is
		{1.000001, 0.5, 1, "just over 1", "0.5"},
		{1, 0, 1, "1", "0"},
	} {
		value, plus := c.beside(crank.Figure{Value: row.v * thou, HalfWidth95: row.plus * thou}, row.limit*thou)
		assert.Equal(t, row.value, value, row.v)
		assert.Equal(t, row.shown, plus, row.v)
	}
}

// The chart is in the dials' own unit, and of a round that doesn't tell it shows nothing.
func TestTheChartsFiguresAreInTheDialsUnit(t *testing.T) {
	f := form.Form{
		"pass.1.drive.tir": "3 thou", "pass.1.drive.high": "3", "pass.1.timing.tir": "3 thou", "pass.1.timing.high": "9",
		"pass.2.order": "2", "pass.2.drive.tir": "1 thou", "pass.2.drive.high": "3",
	}
	for units, tir := range map[string]float64{"inch": 3, "metric": 3 * thou} {
		p := passOf(nil, form.Read(f.With(form.Form{"units": units})), "1")
		read := p.figures(&p.rounds[0], &p.past[0])
		assert.InDelta(t, tir, read.Drive, 1e-9, units)
		assert.InDelta(t, -1.6*tir, read.Twist, 1e-9, units) // at the dial 75 of 120 mm out: 3 × 120/75
		half := p.figures(&p.rounds[1], &p.past[1])
		assert.InDelta(t, tir/3, half.Drive, 1e-9, units)
		for _, v := range []float64{half.Timing, half.Twist, half.Gap, half.Mismatch} {
			assert.True(t, math.IsNaN(v), units)
		}
	}
}
