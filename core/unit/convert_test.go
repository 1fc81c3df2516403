package unit

import (
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestConvert(t *testing.T) {
	for _, row := range []struct {
		text     string
		from, to Unit
		want     string
		ok       bool
	}{
		{"2", Thou, MM, "0.0508", true},
		{"1½", Thou, MM, "0.0381", true},
		{"-0,5", Thou, MM, "-0.0127", true},
		{"0", Thou, MM, "0", true},
		{"-0", Thou, MM, "0", true},
		{"0.0508", MM, Thou, "2", true},
		{"0.05", MM, Thou, "1.968503937007874", true},
		{"1 5/8", Inch, MM, "41.275", true},
		{"41.275", MM, Inch, "1.625", true},
		{"25.40", MM, MM, "25.40", true},
		{"180", Celsius, Fahrenheit, "356", true},
		{"210000", MPa, GPa, "210", true},
		{"4.5", OClock, OClock, "4.5", true},
		{"0.000001", Micron, Metre, "0.000000000001", true},
		{"0.000000000001", Micron, Metre, "0.000000000000000001", true},
		{"0.000000000001", Micron, Inch, "0.000000000001 µm", true},

		{"32.0000001", Fahrenheit, Kelvin, "32.0000001 °F", true},
		{"999999999999", Inch, MM, "999999999999 in", true},

		{"2 thou", MM, Thou, "2 thou", false},
		{"2 mm", MM, Thou, "2 mm", false},
		{"4:30", OClock, OClock, "4:30", false},
		{"bananas", MM, Thou, "bananas", false},
		{"2", MM, Gram, "2", false},
		{"", MM, Thou, "", false},
	} {
		got, ok := Convert(row.text, row.from, row.to, 0)
		assert.Equal(t, row.ok, ok, row.text)
		assert.Equal(t, row.want, got, row.text)
	}
}

func TestConvertList(t *testing.T) {
	for _, row := range []struct {
		text string
		want string
		ok   bool
	}{
		{"0 .5 1 1½", "0 0.0127 0.0254 0.0381", true},
		{"0,5; 1", "0.0127 0.0254", true},
		{"0 1 2 thou", "0 1 2 thou", false},
		{"0 1 x", "0 1 x", false},
		{" 1 0.000000000000001", "1 0.000000000000001 thou", true},
		{"", "", false},
	} {
		got, ok := ConvertList(row.text, Thou, MM, 6, 0)
		assert.Equal(t, row.ok, ok, row.text)
		assert.Equal(t, row.want, got, row.text)
	}
}

// What a half-thou dial can be read to is a tenth of its division, 0.00127 mm.
func TestConvertRoundsToTheStep(t *testing.T) {
	const step = 0.00127
	for _, row := range []struct {
		text     string
		from, to Unit
		want     string
	}{
		{"3", Thou, MM, "0.076"},
		{"0.5", Thou, MM, "0.013"},
		{"1", Thou, MM, "0.025"},
		{"100", Thou, MM, "2.54"},
		{"-3", Thou, MM, "-0.076"},
		{"0", Thou, MM, "0"},
		{"0.01", Thou, MM, "0.0003"},
		{"0.05", MM, Thou, "1.97"},
		{"0.076", MM, Thou, "3"},
		{"3 thou", MM, Thou, "3 thou"},
	} {
		got, _ := Convert(row.text, row.from, row.to, step)
		assert.Equal(t, row.want, got, row.text)
	}
	got, _ := ConvertList("0 .5 1 1½", Thou, MM, 6, step)
	assert.Equal(t, "0 0.013 0.025 0.038", got)
	// What a person reads off the dial, in halves of a division and tenths of a
	// thou, comes back as it was.
	for tenths := range 400 {
		text := strings.TrimSuffix(strconv.FormatFloat(float64(tenths)/10, 'f', 1, 64), ".0")
		there, _ := Convert(text, Thou, MM, step)
		back, _ := Convert(there, MM, Thou, step)
		assert.Equal(t, text, back, there)
	}
}

// Seed 5: changing the unit and changing it back changes neither the value nor,
// for a plain decimal, the text.
func TestConvertKeepsTheValue(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	for _, pair := range [][2]Unit{
		{Thou, MM}, {Inch, MM}, {Micron, Thou}, {Ounce, Gram}, {Pound, Kilogram}, {PSI, MPa}, {PoundForceFoot, NewtonMetre}, {Fahrenheit, Celsius},
	} {
		for k := range 400 {
			from, to := pair[k%2], pair[1-k%2]
			places := rng.Intn(5)
			text := strconv.FormatFloat(1+rng.Float64()*1000, 'f', places, 64)
			text = strconv.FormatFloat(must(t, text, Plain), 'f', -1, 64)
			there, ok := Convert(text, from, to, 0)
			assert.True(t, ok)
			assert.Equal(t, must(t, text, from), must(t, there, to), "%s %s: %s", text, from.Name(), there)
			assert.NotContains(t, there, " ", "%s %s", text, from.Name())
			back, ok := Convert(there, to, from, 0)
			assert.True(t, ok)
			assert.Equal(t, text, back, there)
		}
	}
}

func must(t *testing.T, text string, u Unit) float64 {
	v, err := Parse(text, u)
	assert.NoError(t, err, text)
	return v
}
