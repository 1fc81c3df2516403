// Package unit turns quantities as people write them into numbers and back:
// "1.5 thou", "0,04 mm", "1 5/8 in", "2 lb 3 oz", "4:30".
//
// Factors are exact by definition (international yard and pound agreement of
// 1959: 1 in = 25.4 mm, 1 lb = 453.59237 g; standard gravity of ISO 80000-3:
// 9.80665 m/s²) and checked against NIST SP 811 (values from memory):
// TestFactorsAgainstSP811, TestFactorsFromDefinitions.
//
// Conventions:
//   - A value is held in its kind's base unit, named beside each Kind.
//   - A unit that is typed beats the field's own; a bare number takes the
//     field's.
//   - Comma or point is the decimal sign, and a point never groups thousands.
//     "1,234" could be either of two numbers, so it is refused and both are
//     named; so is "ton", of which there are three.
//   - Hours are those of package clock: 12 is the crankpin and is held as 0. One
//     figure after a point is a decimal ("4.5" and "4:30" are the same point), two
//     are minutes ("4.30") but where a decimal is as likely: see Hours.
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
	Power                       // kW
	Taper                       // the length that the diameter changes by 1 in
)

// Unit is a unit of one kind. The zero Unit is Plain.
type Unit uint8

// The units.
const (
	Plain Unit = iota

	MM
	Micron
	CM
	Metre
	Thou
	Inch

	Gram
	Kilogram
	Ounce
	Pound

	Degree
	ArcMinute

	OClock
	hourDegree

	RPM

	MetrePerSecond
	FootPerSecond

	Celsius
	Fahrenheit
	Kelvin

	CelsiusRise
	FahrenheitRise

	PerCent

	Second
	Millisecond
	Minute

	MPa
	GPa
	Bar
	PSI

	KgPerCubicMetre
	GramPerCubicCM
	PoundPerCubicIn

	Newton
	Kilonewton
	PoundForce
	Tonne
	LongTon
	ShortTon

	NewtonMetre
	PoundForceFoot
	PoundForceInch

	PerMillionKelvin
	PerMillionFahrenheit

	Kilowatt
	BrakeHorsepower
	MetricHorsepower

	OneIn
)

// Name returns what is written after a number; "" for Plain.
func (u Unit) Name() string { return units[u].name }

// Kind returns what the unit measures.
func (u Unit) Kind() Kind { return units[u].kind }

// row is what is known of a unit.
type row struct {
	name      string
	kind      Kind
	num, den  uint64 // base = (x − zero/100) num/den, all exact
	zero      uint64 // hundredths that this unit reads where the base reads 0
	spellings string // how it may be written once unitKey has folded it, each between spaces
}

// Exact factors: inch and pound by the international yard and pound agreement
// of 1959 (25.4 mm, 0.45359237 kg); standard gravity 9.80665 m/s², the
// pound-force built on it, with the horsepower of 550 ft lbf/s and the metric one of
// 75 m kgf/s, and the degree Fahrenheit as NIST SP 811, appendix B
// has them. Value from memory.
var units = [...]row{
	Plain: {num: 1, den: 1},

	MM:     {"mm", Length, 1, 1, 0, " mm millimetre millimetres millimeter millimeters "},
	Micron: {"µm", Length, 1, 1000, 0, " um micron microns "},
	CM:     {"cm", Length, 10, 1, 0, " cm "},
	Metre:  {"m", Length, 1000, 1, 0, " m metre metres meter meters "},
	Thou:   {"thou", Length, 254, 10000, 0, " thou thous mil mils "},
	Inch:   {"in", Length, 254, 10, 0, " in inch inches \" '' "},

	Gram:     {"g", Mass, 1, 1, 0, " g gr gram grams gramme grammes "},
	Kilogram: {"kg", Mass, 1000, 1, 0, " kg kilo kilos "},
	Ounce:    {"oz", Mass, 45359237, 1600000, 0, " oz ounce ounces "},
	Pound:    {"lb", Mass, 45359237, 100000, 0, " lb lbs pound pounds "},

	Degree:    {"°", Angle, 1, 1, 0, " deg degree degrees "},
	ArcMinute: {"arcmin", Angle, 1, 60, 0, " arcmin arcminute arcminutes ' "},

	OClock:     {"o'clock", Hour, 1, 1, 0, " o'clock oclock h hour hours "},
	hourDegree: {"°", Hour, 1, 30, 0, " deg degree degrees "},

	RPM: {"rpm", Speed, 1, 1, 0, " rpm rev/min r/min 1/min "},

	MetrePerSecond: {"m/s", Velocity, 1, 1, 0, " m/s "},
	FootPerSecond:  {"ft/s", Velocity, 3048, 10000, 0, " ft/s fps "},

	Celsius:    {"°C", Temperature, 1, 1, 0, " degc c celsius centigrade deg "},
	Fahrenheit: {"°F", Temperature, 5, 9, 3200, " degf f fahrenheit "},
	Kelvin:     {"K", Temperature, 1, 1, 27315, " k kelvin "},

	CelsiusRise:    {"°C", TemperatureRise, 1, 1, 0, " degc c celsius centigrade deg k kelvin "},
	FahrenheitRise: {"°F", TemperatureRise, 5, 9, 0, " degf f fahrenheit "},

	PerCent: {"%", Percent, 1, 1, 0, " % percent "},

	Second:      {"s", Time, 1, 1, 0, " s sec secs second seconds "},
	Millisecond: {"ms", Time, 1, 1000, 0, " ms "},
	Minute:      {"min", Time, 60, 1, 0, " min mins minute minutes "},

	MPa: {"MPa", Stress, 1, 1, 0, " mpa n/mm2 "},
	GPa: {"GPa", Stress, 1000, 1, 0, " gpa "},
	Bar: {"bar", Stress, 1, 10, 0, " bar "},
	PSI: {"psi", Stress, 44482216152605, 64516e11, 0, " psi lbf/in2 lb/in2 "},

	KgPerCubicMetre: {"kg/m³", Density, 1, 1, 0, " kg/m3 "},
	GramPerCubicCM:  {"g/cm³", Density, 1000, 1, 0, " g/cm3 g/cc kg/dm3 "},
	PoundPerCubicIn: {"lb/in³", Density, 45359237e4, 16387064, 0, " lb/in3 lb/cuin "},

	Newton:     {"N", Force, 1, 1, 0, " n newton newtons "},
	Kilonewton: {"kN", Force, 1000, 1, 0, " kn "},
	PoundForce: {"lbf", Force, 44482216152605, 1e13, 0, " lbf lb lbs "},
	Tonne:      {"tonne", Force, 980665, 100, 0, " tonne tonnes t tf metricton metrictons "},
	LongTon:    {"UK ton", Force, 2240 * 44482216152605, 1e13, 0, " ukton uktons longton longtons "},
	ShortTon:   {"US ton", Force, 2000 * 44482216152605, 1e13, 0, " uston ustons shortton shorttons "},

	NewtonMetre:    {"Nm", Torque, 1, 1, 0, " nm "},
	PoundForceFoot: {"lbf ft", Torque, 13558179483314004, 1e16, 0, " lbfft lbft ftlb ftlbf ftlbs "},
	PoundForceInch: {"lbf in", Torque, 13558179483314004, 12e16, 0, " lbfin lbin inlb inlbf inlbs "},

	PerMillionKelvin:     {"µm/m·K", Expansion, 1, 1, 0, " um/mk um/m/k um/mdegc um/m/degc ppm/k ppm/degc ppm/c "},
	PerMillionFahrenheit: {"µin/in·°F", Expansion, 9, 5, 0, " uin/indegf uin/in/degf ppm/degf ppm/f "},

	Kilowatt:         {"kW", Power, 1, 1, 0, " kw kilowatt kilowatts "},
	BrakeHorsepower:  {"bhp", Power, 37284993579113511, 5e16, 0, " bhp hp "},
	MetricHorsepower: {"PS", Power, 73549875, 1e8, 0, " ps cv pk "},

	OneIn: {"", Taper, 1, 1, 0, ""},
}

// reading turns a value in the base unit into what u reads.
func (u Unit) reading(value float64) float64 {
	return u.span(value) + float64(units[u].zero)/100
}

// span turns a difference in the base unit into one in u.
func (u Unit) span(value float64) float64 {
	return value * float64(units[u].den) / float64(units[u].num)
}
