// Package unit turns quantities as people write them into numbers and back:
// "1.5 thou", "0,04 mm", "1 5/8 in", "2 lb 3 oz", "4:30".
//
// It serves every section of the model, and every field of the job.
// Conventions:
//   - A value is held in its kind's base unit, named beside each Kind.
//   - A unit that is typed beats the field's own; a bare number takes the
//     field's.
//   - Comma or point is the decimal sign, and a point never groups thousands.
//     "1,234" could be either of two numbers, so it is refused and both are
//     named; so is "ton", of which there are three.
//   - Hours are those of package clock: 12 is the crankpin and is held as 0. A
//     decimal hour is a decimal ("4.5" and "4:30" are the same point).
//   - A number is kept as an exact ratio until one correctly rounded division,
//     so that 50.8 µm, 0.0508 mm and 2 thou are the same float64.
//   - Text is refused with what was given and an example that would do.
package unit

// Kind is what a quantity measures.
type Kind uint8

// The kinds, each with its base unit.
const (
	Number          Kind = iota // a plain number
	Length                      // mm
	Mass                        // g
	Angle                       // degrees
	Hour                        // hours of the clock face, [0, 12)
	Speed                       // rev/min
	Velocity                    // m/s
	Temperature                 // °C
	TemperatureRise             // °C, a difference
	Percent                     // %
	Time                        // s
	Stress                      // MPa, pressures too
	Density                     // kg/m³
	Force                       // N
	Torque                      // N·m
	Expansion                   // 1e-6 per K
)

// Unit is a unit of one kind, and may be compared with ==. The zero Unit is
// Plain.
type Unit struct {
	Name     string // as it is written after a number
	Kind     Kind
	num, den uint64 // base = (x − zero/100) num/den, all exact
	zero     uint64 // hundredths that this unit reads where the base reads 0
}

// Exact factors: inch and pound by the international yard and pound agreement
// of 1959 (25.4 mm, 0.45359237 kg); standard gravity 9.80665 m/s², the
// pound-force built on it, and the degree Fahrenheit as NIST SP 811, appendix B
// has them. Value from memory.
var (
	Plain = Unit{}

	MM     = Unit{"mm", Length, 1, 1, 0}
	Micron = Unit{"µm", Length, 1, 1000, 0}
	CM     = Unit{"cm", Length, 10, 1, 0}
	Metre  = Unit{"m", Length, 1000, 1, 0}
	Thou   = Unit{"thou", Length, 254, 10000, 0}
	Inch   = Unit{"in", Length, 254, 10, 0}

	Gram     = Unit{"g", Mass, 1, 1, 0}
	Kilogram = Unit{"kg", Mass, 1000, 1, 0}
	Ounce    = Unit{"oz", Mass, 45359237, 1600000, 0}
	Pound    = Unit{"lb", Mass, 45359237, 100000, 0}

	Degree    = Unit{"°", Angle, 1, 1, 0}
	ArcMinute = Unit{"arcmin", Angle, 1, 60, 0}

	OClock     = Unit{"o'clock", Hour, 1, 1, 0}
	hourDegree = Unit{"°", Hour, 1, 30, 0}

	RPM = Unit{"rpm", Speed, 1, 1, 0}

	MetrePerSecond = Unit{"m/s", Velocity, 1, 1, 0}
	FootPerSecond  = Unit{"ft/s", Velocity, 3048, 10000, 0}

	Celsius    = Unit{"°C", Temperature, 1, 1, 0}
	Fahrenheit = Unit{"°F", Temperature, 5, 9, 3200}
	Kelvin     = Unit{"K", Temperature, 1, 1, 27315}

	CelsiusRise    = Unit{"°C", TemperatureRise, 1, 1, 0}
	FahrenheitRise = Unit{"°F", TemperatureRise, 5, 9, 0}

	PerCent = Unit{"%", Percent, 1, 1, 0}

	Second      = Unit{"s", Time, 1, 1, 0}
	Millisecond = Unit{"ms", Time, 1, 1000, 0}
	Minute      = Unit{"min", Time, 60, 1, 0}

	MPa = Unit{"MPa", Stress, 1, 1, 0}
	GPa = Unit{"GPa", Stress, 1000, 1, 0}
	Bar = Unit{"bar", Stress, 1, 10, 0}
	PSI = Unit{"psi", Stress, 44482216152605, 64516e11, 0}

	KgPerCubicMetre = Unit{"kg/m³", Density, 1, 1, 0}
	GramPerCubicCM  = Unit{"g/cm³", Density, 1000, 1, 0}
	PoundPerCubicIn = Unit{"lb/in³", Density, 45359237e4, 16387064, 0}

	Newton     = Unit{"N", Force, 1, 1, 0}
	Kilonewton = Unit{"kN", Force, 1000, 1, 0}
	PoundForce = Unit{"lbf", Force, 44482216152605, 1e13, 0}
	Tonne      = Unit{"tonne", Force, 980665, 100, 0}
	LongTon    = Unit{"UK ton", Force, 2240 * 44482216152605, 1e13, 0}
	ShortTon   = Unit{"US ton", Force, 2000 * 44482216152605, 1e13, 0}

	NewtonMetre    = Unit{"Nm", Torque, 1, 1, 0}
	PoundForceFoot = Unit{"lbf ft", Torque, 13558179483314004, 1e16, 0}
	PoundForceInch = Unit{"lbf in", Torque, 13558179483314004, 12e16, 0}

	PerMillionKelvin     = Unit{"µm/m·K", Expansion, 1, 1, 0}
	PerMillionFahrenheit = Unit{"µin/in·°F", Expansion, 9, 5, 0}
)

// reading turns a value in the base unit into what u reads.
func (u Unit) reading(value float64) float64 {
	return u.span(value) + float64(u.zero)/100
}

// span turns a difference in the base unit into one in u.
func (u Unit) span(value float64) float64 {
	num, den := u.ratio()
	return value * float64(den) / float64(num)
}

// ratio is num/den, 1/1 for Plain.
func (u Unit) ratio() (num, den uint64) {
	if u.den == 0 {
		return 1, 1
	}
	return u.num, u.den
}
