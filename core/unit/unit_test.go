package unit

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The seven figures that NIST SP 811, appendix B.8, prints for its factors,
// brought to the base units here by powers of ten. All values from memory.
func TestFactorsAgainstSP811(t *testing.T) {
	for _, row := range []struct {
		unit Unit
		want float64
	}{
		{Inch, 25.4},
		{Thou, 2.54e-2}, // "mil (0.001 in)"
		{Ounce, 28.34952},
		{Pound, 453.5924},
		{FootPerSecond, 0.3048},
		{PSI, 6.894757e-3},
		{Bar, 0.1},
		{PoundPerCubicIn, 2.767990e4},
		{PoundForce, 4.448222},
		{Tonne, 9806.65},              // 1000 kilogram-force
		{ShortTon, 8896.443},          // "ton-force (2000 lbf)"
		{LongTon, 1016.047 * 9.80665}, // "ton, long (2240 lb)" as a weight
		{PoundForceFoot, 1.355818},
		{PoundForceInch, 0.1129848},
	} {
		got, err := Parse("1", row.unit)
		assert.NoError(t, err)
		assert.InEpsilon(t, row.want, got, 5e-7, row.unit.Name())
	}
}

// Factors built up as exact fractions from the definitions: inch, foot, pound,
// standard gravity.
func TestFactorsFromDefinitions(t *testing.T) {
	rat := func(s string) *big.Rat {
		r, ok := new(big.Rat).SetString(s)
		assert.True(t, ok, s)
		return r
	}
	times := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
	over := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }
	inch, pound, gravity := rat("25.4"), rat("0.45359237"), rat("9.80665")
	foot := times(rat("12"), inch)
	lbf := times(pound, gravity)
	thousand := rat("1000")
	for _, row := range []struct {
		unit Unit
		want *big.Rat
	}{
		{Inch, inch},
		{Thou, over(inch, thousand)},
		{Pound, times(pound, thousand)},
		{Ounce, over(times(pound, thousand), rat("16"))},
		{FootPerSecond, over(foot, thousand)},
		{PSI, over(lbf, times(inch, inch))},
		{PoundPerCubicIn, over(times(pound, rat("1e9")), times(inch, times(inch, inch)))},
		{PoundForce, lbf},
		{LongTon, times(rat("2240"), lbf)},
		{ShortTon, times(rat("2000"), lbf)},
		{Tonne, times(thousand, gravity)},
		{PoundForceFoot, over(times(lbf, foot), thousand)},
		{PoundForceInch, over(times(lbf, inch), thousand)},
	} {
		got := new(big.Rat).SetFrac(new(big.Int).SetUint64(units[row.unit].num), new(big.Int).SetUint64(units[row.unit].den))
		assert.Zero(t, row.want.Cmp(got), "%s: %s, not %s", row.unit.Name(), got.RatString(), row.want.RatString())
	}
}

// Fixed points: ice and steam on both scales, where they cross, absolute zero.
func TestTemperatureFixedPoints(t *testing.T) {
	for _, row := range []struct {
		celsius, other string
		unit           Unit
	}{
		{"0", "32", Fahrenheit}, {"100", "212", Fahrenheit}, {"-40", "-40", Fahrenheit}, {"-273.15", "-459.67", Fahrenheit},
		{"-273.15", "0", Kelvin}, {"0", "273.15", Kelvin},
	} {
		want, err := Parse(row.celsius, Celsius)
		assert.NoError(t, err)
		got, err := Parse(row.other, row.unit)
		assert.NoError(t, err)
		assert.Equal(t, want, got, row.other)
	}
}

func TestEveryNameIsFoundInItsKindAlone(t *testing.T) {
	for _, u := range allUnits() {
		if u == OneIn { // it has no name behind the figure
			continue
		}
		got, ok := Named(u.Kind(), u.Name())
		assert.True(t, ok, u.Name())
		assert.Equal(t, u, got)
		_, ok = Named(Number, u.Name())
		assert.False(t, ok, u.Name())
	}
	for _, name := range []string{"", " ", "bananas", "mm thou", "\x00", "m\u200fm"} {
		_, ok := Named(Length, name)
		assert.False(t, ok, "%q", name)
	}
	for name, want := range map[string]Unit{"THOU": Thou, " mm ": MM, "μm": Micron, "in.": Inch} {
		got, ok := Named(Length, name)
		assert.True(t, ok, name)
		assert.Equal(t, want, got, name)
	}
}
