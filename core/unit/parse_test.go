package unit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Arithmetic by hand from the definitions cited in unit.go, which have a test of
// their own. The tolerance is one rounding, for sums such as "2 lb 3 oz".
func TestParse(t *testing.T) {
	for _, row := range []struct {
		text string
		def  Unit
		want float64
	}{
		{"2 thou", MM, 0.0508},
		{"2", Thou, 0.0508},
		{"2thou", MM, 0.0508},
		{"1.5 Thou", MM, 0.0381},
		{"1½ thou", MM, 0.0381},
		{"½", Thou, 0.0127},
		{"0.05 mm", Thou, 0.05},
		{"0,05 mm", Thou, 0.05},
		{",05 mm", Thou, 0.05},
		{"50 µm", Thou, 0.05},
		{"50 μm", Thou, 0.05},
		{"50 um", Thou, 0.05},
		{"50 micron", Thou, 0.05},
		{"1 5/8 in", MM, 41.275},
		{"1-5/8 in", MM, 41.275},
		{"1⅝ in", MM, 41.275},
		{"1 ⅝\"", MM, 41.275},
		{"5/8 in", MM, 15.875},
		{"5⁄8 in", MM, 15.875},
		{"3 5/8\"", MM, 92.075},
		{"3 5/8″", MM, 92.075},
		{"3.625 IN.", MM, 92.075},
		{"13/8 inch", MM, 41.275},
		{"1 5/8", Inch, 41.275},
		{"4 cm", MM, 40},
		{"0.2 m", MM, 200},
		{"1 in 20 thou", MM, 25.908},
		{"+2 mm", Thou, 2},
		{"-2 mm", Thou, -2},
		{"− 2 mm", Thou, -2},
		{"–2 mm", Thou, -2},
		{"-0", MM, 0},
		{" \u00a02\u00a0mm\u202f", Thou, 2},
		{"2\tmm", Thou, 2},
		{"5.", MM, 5},
		{"25,40", MM, 25.4},
		{"0,125", Inch, 3.175},
		{"1.625", Inch, 41.275},
		{"1234,5", MM, 1234.5},
		{"12345,678", MM, 12345.678},

		{"350", Gram, 350},
		{"0.35 kg", Gram, 350},
		{"1 oz", Gram, 28.349523125},
		{"2 lb", Gram, 907.18474},
		{"2 lb 3 oz", Gram, 992.233309375},
		{"2lb3oz", Gram, 992.233309375},
		{"2 LBS 3½ oz", Gram, 1006.4080709375},
		{"1 kg 200 g", Gram, 1200},
		{"-2 lb 3 oz", Gram, -992.233309375},

		{"35°", Degree, 35},
		{"35 deg", Degree, 35},
		{"35", Degree, 35},
		{"6° 30′", Degree, 6.5},
		{"3 arcmin", Degree, 0.05},
		{"3", ArcMinute, 0.05},

		{"4:30", OClock, 4.5},
		{"4.30", OClock, 4.5},
		{"4,30", OClock, 4.5},
		{"4.30 o'clock", OClock, 4.5},
		{"12.15", OClock, 0.25},
		{"4.05", OClock, 4 + 5.0/60},
		{"4.00", OClock, 4},
		{"4.75", OClock, 4.75},
		{"4.50", OClock, 4.5},
		{"4.25", OClock, 4.25},
		{"4.37", OClock, 4.37},
		{"4.3", OClock, 4.3},
		{"4.305", OClock, 4.305},
		{"123.30°", OClock, 4.11},
		{"4.5", OClock, 4.5},
		{"4½", OClock, 4.5},
		{"4,5 h", OClock, 4.5},
		{"135°", OClock, 4.5},
		{"360 deg", OClock, 0},
		{"12", OClock, 0},
		{"12:15", OClock, 0.25},
		{"0", OClock, 0},
		{"0:30", OClock, 0.5},
		{"3 o'clock", OClock, 3},
		{"3 O’CLOCK", OClock, 3},
		{"4:30 o'clock", OClock, 4.5},
		{"11:59", OClock, 11 + 59.0/60},

		{"5500", RPM, 5500},
		{"5500 rev/min", RPM, 5500},
		{"12 m/s", MetrePerSecond, 12},
		{"40 ft/s", MetrePerSecond, 12.192},

		{"180 °C", Fahrenheit, 180},
		{"356 °F", Celsius, 180},
		{"-40 F", Celsius, -40},
		{"293.15 K", Celsius, 20},
		{"180 ℃", Fahrenheit, 180},
		{"144 °F", CelsiusRise, 80},
		{"80 K", CelsiusRise, 80},
		{"80 °C", FahrenheitRise, 80},

		{"52", PerCent, 52},
		{"52 %", PerCent, 52},
		{"52 per cent", PerCent, 52},

		{"1.35", Second, 1.35},
		{"1350 ms", Second, 1.35},
		{"1:30", Second, 90},
		{"1:30.5", Second, 90.5},
		{"1 min 30 s", Second, 90},

		{"210 GPa", MPa, 210000},
		{"210 N/mm²", MPa, 210},
		{"210 N/mm^2", MPa, 210},
		{"2 bar", MPa, 0.2},
		{"30000 lbf/in²", PSI, 30000 * 4.4482216152605 / 645.16},

		{"7.85 g/cm³", KgPerCubicMetre, 7850},
		{"7850 kg/m3", KgPerCubicMetre, 7850},
		{"0.283 lb/in³", KgPerCubicMetre, 0.283 * 0.45359237 / 0.000016387064},

		{"50 kN", Newton, 50000},
		{"1 lbf", Newton, 4.4482216152605},
		{"1 tonne", Newton, 9806.65},
		{"1 US ton", Newton, 8896.443230521},
		{"1 UK ton", Newton, 9964.01641818352},

		{"40 Nm", NewtonMetre, 40},
		{"40 N·m", NewtonMetre, 40},
		{"1 lbf ft", NewtonMetre, 1.3558179483314004},
		{"1 lbf·ft", NewtonMetre, 1.3558179483314004},
		{"1 ft-lb", NewtonMetre, 1.3558179483314004},
		{"12 lbf in", NewtonMetre, 1.3558179483314004},

		{"11.5", PerMillionKelvin, 11.5},
		{"11.5 µm/m·K", PerMillionKelvin, 11.5},
		{"11.5 µm/(m K)", PerMillionKelvin, 11.5},
		{"11.5 ppm/°C", PerMillionKelvin, 11.5},

		{"6.5 µin/in·°F", PerMillionKelvin, 11.7},

		{"0.1", Plain, 0.1},
		{"999999999999", Plain, 999999999999},
		{"3/4", Plain, 0.75},
		{"0000000000000000000000000000000000000000000000000000000000000001", Plain, 1},
		{"0.1000000000000000055511151231257827", Plain, 0.1},
	} {
		got, err := Parse(row.text, row.def)
		if assert.NoError(t, err, row.text) {
			assert.InDelta(t, row.want, got, 2e-16*math.Abs(row.want), row.text)
			assert.False(t, math.Signbit(got) && got == 0, row.text)
		}
	}
}

func TestSameLengthSameFloat(t *testing.T) {
	want, err := Parse("0.0508", MM)
	assert.NoError(t, err)
	for _, text := range []string{"2 thou", "0.002 in", "50.8 µm", "0,00508 cm", "0.0000508 m", "1/500 in"} {
		got, err := Parse(text, MM)
		assert.NoError(t, err)
		assert.Equal(t, want, got, text)
	}
}

func TestParseRefuses(t *testing.T) {
	for _, row := range []struct {
		text string
		def  Unit
		want string
	}{
		{"2 bananas", Thou, `“2 bananas” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"2 bananas", MM, `“2 bananas” is not a figure in thou, mm or inches: write 41.3 mm or 1 5/8 in`},
		{"", Thou, `“(nothing)” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"  ", Gram, `“  ” is not a weight: write 350 g or 2 lb 3 oz`},
		{"thou", Thou, `“thou” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"2 kg", Thou, `“2 kg” is a weight, not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"20 °C", Plain, `“20 °C” is a temperature, not a number: write 0.5 or 12`},

		{"1,234", MM, `“1,234” could be 1.234 or 1234: write 1.234 (or 1,2340) or 1234`},
		{"-25,013 mm", MM, `“-25,013 mm” could be 25.013 or 25013: write 25.013 (or 25,0130) or 25013`},
		{"1,234.5", RPM, `“1,234.5” has more than one comma or point: write the number without thousands marks`},
		{"1.234,5", RPM, `“1.234,5” has more than one comma or point: write the number without thousands marks`},
		{"1,234,567", RPM, `“1,234,567” has more than one comma or point: write the number without thousands marks`},
		{"1 234", RPM, `“1 234” has a space inside the number: write the number without the space`},
		{"1'234", RPM, `“1'234” is not a speed in rpm: write 5500 rpm`},

		{"1/0", Inch, `“1/0” is not a fraction: write 5/8 or 0.625`},
		{"1/", Inch, `“1/” is not a fraction: write 5/8 or 0.625`},
		{"1/2.5", Inch, `“1/2.5” is not a fraction: write 5/8 or 0.625`},
		{"1/99999", Inch, `“1/99999” is not a fraction: write 5/8 or 0.625`},
		{"1 9/8 in", Inch, `“1 9/8 in” has a fraction larger than 1 after a whole number: write 1 5/8 or 1.625`},
		{"½2", Inch, `“½2” has a space inside the number: write the number without the space`},
		{"1.5/8", Inch, `“1.5/8” is not a figure in thou, mm or inches: write 41.3 mm or 1 5/8 in`},

		{"2 mm 3 cm", Thou, `“2 mm 3 cm” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"2 lb 3", Gram, `“2 lb 3” is not a weight: write 350 g or 2 lb 3 oz`},
		{"1 in 10", MM, `“1 in 10” is not a figure in thou, mm or inches: write 41.3 mm or 1 5/8 in`},
		{"20 °C 3 °C", Celsius, `“20 °C 3 °C” is not a temperature: write 180 °C or 356 °F`},
		{"5 ton", Newton, `“5 ton” could be any of three tons: write 5 tonne, 5 UK ton or 5 US ton`},

		{"13", OClock, `“13” is not on the clock face: write 3, 4:30 or 12`},
		{"-1", OClock, `“-1” is not on the clock face: write 3, 4:30 or 12`},
		{"13:00", OClock, `“13:00” is not on the clock face: write 3, 4:30 or 12`},
		{"-4:30", OClock, `“-4:30” is not on the clock face: write 3, 4:30 or 12`},
		{"375°", OClock, `“375°” is not on the clock face: write 3, 4:30 or 12`},
		{"4:60", OClock, `“4:60” has more than 59 after the colon: write 3, 4:30 or 12`},
		{"4:5", OClock, `“4:5” is not an hour of the clock: write 3, 4:30 or 12`},
		{"4:30:10", OClock, `“4:30:10” is not an hour of the clock: write 3, 4:30 or 12`},
		{"4:30.5", OClock, `“4:30.5” is not an hour of the clock: write 3, 4:30 or 12`},
		{"4:30°", OClock, `“4:30°” is not an hour of the clock: write 3, 4:30 or 12`},
		{"1:30 min", Second, `“1:30 min” is not a time: write 1.35 s or 1:30`},
		{"1:00.0000001", Second, `“1:00.0000001” has too many decimals: write 1.35 s or 1:30`},
		{"1:30,500", Second, `“1:30,500” could be 30.500 or 30500: write 30.500 (or 30,5000) or 30500`},
		{"4:30", MM, `“4:30” is not a figure in thou, mm or inches: write 41.3 mm or 1 5/8 in`},

		{"--2", Thou, `“--2” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"+-2", Thou, `“+-2” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"2-", Thou, `“2-” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{".", Thou, `“.” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"1e999", Thou, `“1e999” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"1e-3", Thou, `“1e-3” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"NaN", Thou, `“NaN” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"-Inf", Thou, `“-Inf” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"0x1p3", Thou, `“0x1p3” is not a figure in thou, mm or inches: write 2 thou or 0.05 mm`},
		{"1_000", RPM, `“1_000” has a character in it that can't be read: write 5500 rpm`},
		{"2\x00", RPM, "“2\uFFFD” has a character in it that can't be read: write 5500 rpm"},
		{"\u202e2 rpm", RPM, "“\uFFFD2 rpm” has a character in it that can't be read: write 5500 rpm"},
		{"2\u200f", RPM, "“2\uFFFD” has a character in it that can't be read: write 5500 rpm"},
		{"2\xff", RPM, "“2\uFFFD” has a character in it that can't be read: write 5500 rpm"},
		{"٣", RPM, `“٣” has a character in it that can't be read: write 5500 rpm`},
		{"1000000000000", RPM, `“1000000000000” is too large: write 5500 rpm`},
		{"00000000000000000000000000000000000000000000000000000000000000001", RPM,
			`“000000000000000000000000…” is too long: write 5500 rpm`},
	} {
		got, err := Parse(row.text, row.def)
		assert.EqualError(t, err, row.want)
		assert.Zero(t, got)
	}
}

func TestTwoFiguresAfterAPointMayBeMinutes(t *testing.T) {
	for text, want := range map[string][]string{
		"5.50": {"5:30", "5:50"}, "5.25": {"5:15", "5:25"}, "5,50 h": {"5:30", "5:50"}, "4.37": {"4:22", "4:37"},
		"5.30": nil, "5.5": nil, "5.75": nil, "5.00": nil, "5:30": nil, "13.50": nil, "5.50°": nil, "": nil, "x": nil,
	} {
		assert.Equal(t, want, Hours(text), text)
	}
}
