package unit

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Arithmetic from the definitions cited in unit.go; where a row rests on more
// than those, it says so.
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
		// NIST SP 811 appendix B, psi to pascal 6.894757e3; value from memory.
		{"1000000 psi", MPa, 6894.757293168362},

		{"7.85 g/cm³", KgPerCubicMetre, 7850},
		{"7850 kg/m3", KgPerCubicMetre, 7850},
		// NIST SP 811 appendix B, lb/in³ to kg/m³ 2.767990e4; value from memory.
		{"1 lb/in³", KgPerCubicMetre, 27679.904710203125},

		{"50 kN", Newton, 50000},
		{"1 lbf", Newton, 4.4482216152605},
		{"1 tonne", Newton, 9806.65},
		// NIST SP 811 appendix B, ton-force (2000 lbf) 8.896443e3; value from memory.
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

		{"0.1", Unit{}, 0.1},
		{"3/4", Plain, 0.75},
		{"0.1000000000000000055511151231257827", Plain, 0.1},
	} {
		got, err := Parse(row.text, row.def)
		if assert.NoError(t, err, row.text) {
			assert.InEpsilon(t, 1+row.want, 1+got, 1e-15, "%q: %v, not %v", row.text, got, row.want)
		}
	}
}
