package unit

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFormat(t *testing.T) {
	const thou = 0.0254
	for _, row := range []struct {
		value float64
		unit  Unit
		step  float64
		want  string
	}{
		{2 * thou, Thou, thou / 2, "2 thou"},
		{1.5 * thou, Thou, thou / 2, "1.5 thou"},
		{1.73 * thou, Thou, thou / 2, "1.7 thou"},
		{1.73 * thou, Thou, thou, "2 thou"},
		{0.05, MM, 0.01, "0.05 mm"},
		{0.0508, MM, thou / 2, "0.05 mm"},
		{0.10, MM, 0.01, "0.1 mm"},
		{-0.05, MM, 0.01, "−0.05 mm"},
		{-0.004, MM, 0.01, "0 mm"},
		{math.Copysign(0, -1), MM, 0.01, "0 mm"},
		{0.05, Micron, 0.001, "50 µm"},
		{41.275, Inch, thou, "1.625 in"},
		{992.233309375, Pound, 1, "2.188 lb"},
		{5734, RPM, 50, "5730 rpm"},
		{5750, RPM, 100, "5800 rpm"},
		{4, RPM, 10, "0 rpm"},
		{5734, RPM, 1e300, "0 rpm"},
		{135, Degree, 0.5, "135°"},
		{52.04, PerCent, 0.1, "52%"},
		{180, Fahrenheit, 1, "356 °F"},
		{0.3, Plain, 0.01, "0.3"},
		{0.3, Plain, 0.01, "0.3"},
		{4.5, OClock, 0.25, "4:30"},
		{4.6, OClock, 0.5, "4:30"},

		{1.23456789, MM, 0, "1.235 mm"},
		{0.00123456, MM, 0, "0.001235 mm"},
		{123456, MM, 0, "123456 mm"},
		{1500, MM, -1, "1500 mm"},
		{0, MM, 0, "0 mm"},
		{1e-30, MM, 1e-30, "0 mm"},

		{math.NaN(), MM, 0.01, "?"},
		{math.Inf(-1), MM, 0.01, "?"},
		{1e12, MM, 0.01, "?"},
		{math.NaN(), OClock, 0.5, "?"},
		{1, MM, math.NaN(), "1 mm"},
		{4.6, OClock, math.NaN(), "4:36"},
	} {
		assert.Equal(t, row.want, Format(row.value, row.unit, row.step), "%v %v", row.value, row.unit.Name())
	}
	assert.Equal(t, "1.5", Figures(1.5*thou, Thou, thou/2))
}

func TestFormatHour(t *testing.T) {
	for _, row := range []struct {
		hour    float64
		minutes int
		want    string
	}{
		{0, 30, "12"}, {12, 30, "12"}, {3, 30, "3"}, {4.5, 30, "4:30"}, {10.25, 15, "10:15"},
		{4.51, 15, "4:30"}, {4.51, 1, "4:31"}, {3.1, 3, "3:06"}, {11.99, 30, "12"}, {0.25, 15, "12:15"},
		{-0.001, 30, "12"}, {-3, 30, "9"}, {27, 30, "3"}, {3.02, 0, "3:01"}, {5, 99999, "12"},
		{math.Inf(1), 30, "?"}, {math.NaN(), 30, "?"},
	} {
		assert.Equal(t, row.want, FormatHour(row.hour, row.minutes), "%v", row.hour)
	}
}

// Seed 3: what is written reads back within half a step.
func TestFormatReadsBack(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for range 5000 {
		u := allUnits()[rng.Intn(len(allUnits()))]
		if u.Kind() == Hour || u.Kind() == Taper { // a taper under 1 in 1 is read the other way up
			continue
		}
		value := rng.NormFloat64() * math.Pow(10, float64(rng.Intn(6)-2))
		step := rng.Float64() * math.Pow(10, float64(rng.Intn(6)-3))
		if u.span(step) < 1e-9 {
			continue
		}
		text := Format(value, u, step)
		got, err := Parse(text, u)
		assert.NoError(t, err, text)
		assert.InDelta(t, value, got, step/2*(1+1e-8)+1e-12*(math.Abs(value)+300), "%s for %v by %v", text, value, step)
	}
}

// Seed 4: the same on the clock face, every minute step that divides the hour.
func TestFormatHourReadsBack(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	for _, minutes := range []int{1, 2, 3, 5, 6, 10, 12, 15, 20, 30, 60} {
		for range 200 {
			hour := 12 * rng.Float64()
			got, err := Parse(FormatHour(hour, minutes), OClock)
			assert.NoError(t, err)
			apart := math.Abs(hour - got)
			assert.LessOrEqual(t, math.Min(apart, 12-apart), float64(minutes)/120+1e-12)
		}
	}
}
