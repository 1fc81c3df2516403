package unit

import "strings"

// spellings has, for each unit, how it may be written once unitKey has folded
// case, spaces and dots away; each spelling stands between spaces.
var spellings = []struct {
	unit  Unit
	names string
}{
	{MM, " mm millimetre millimetres millimeter millimeters "},
	{Micron, " um micron microns "},
	{CM, " cm "},
	{Metre, " m metre metres meter meters "},
	{Thou, " thou thous mil mils "},
	{Inch, " in inch inches \" '' "},
	{Gram, " g gr gram grams gramme grammes "},
	{Kilogram, " kg kilo kilos "},
	{Ounce, " oz ounce ounces "},
	{Pound, " lb lbs pound pounds "},
	{Degree, " deg degree degrees "},
	{ArcMinute, " arcmin arcminute arcminutes ' "},
	{OClock, " o'clock oclock h hour hours "},
	{hourDegree, " deg degree degrees "},
	{RPM, " rpm rev/min r/min 1/min "},
	{MetrePerSecond, " m/s "},
	{FootPerSecond, " ft/s fps "},
	{Celsius, " degc c celsius centigrade deg "},
	{Fahrenheit, " degf f fahrenheit "},
	{Kelvin, " k kelvin "},
	{CelsiusRise, " degc c celsius centigrade deg k kelvin "},
	{FahrenheitRise, " degf f fahrenheit "},
	{PerCent, " % percent "},
	{Second, " s sec secs second seconds "},
	{Millisecond, " ms "},
	{Minute, " min mins minute minutes "},
	{MPa, " mpa n/mm2 "},
	{GPa, " gpa "},
	{Bar, " bar "},
	{PSI, " psi lbf/in2 lb/in2 "},
	{KgPerCubicMetre, " kg/m3 "},
	{GramPerCubicCM, " g/cm3 g/cc kg/dm3 "},
	{PoundPerCubicIn, " lb/in3 lb/cuin "},
	{Newton, " n newton newtons "},
	{Kilonewton, " kn "},
	{PoundForce, " lbf lb lbs "},
	{Tonne, " tonne tonnes t tf metricton metrictons "},
	{LongTon, " ukton uktons longton longtons "},
	{ShortTon, " uston ustons shortton shorttons "},
	{NewtonMetre, " nm "},
	{PoundForceFoot, " lbfft lbft ftlb ftlbf ftlbs "},
	{PoundForceInch, " lbfin lbin inlb inlbf inlbs "},
	{PerMillionKelvin, " um/mk um/m/k um/mdegc um/m/degc ppm/k ppm/degc ppm/c "},
	{PerMillionFahrenheit, " uin/indegf uin/in/degf ppm/degf ppm/f "},
}

// Named finds a unit of a kind by any spelling that Parse would take after a
// number.
func Named(kind Kind, name string) (Unit, bool) {
	s, fault := clean(name)
	if fault != nil {
		return Unit{}, false
	}
	return lookup(kind, s)
}

// lookup finds a unit of a kind by its spelling in cleaned text.
func lookup(kind Kind, name string) (Unit, bool) {
	key := " " + unitKey(name) + " "
	for _, row := range spellings {
		if row.unit.Kind == kind && strings.Contains(row.names, key) {
			return row.unit, true
		}
	}
	return Unit{}, false
}

// kindOf finds what a spelling measures when it isn't what the field wants.
func kindOf(name string) (Kind, bool) {
	key := " " + unitKey(name) + " "
	for _, row := range spellings {
		if strings.Contains(row.names, key) {
			return row.unit.Kind, true
		}
	}
	return Number, false
}

// unitKey drops what people put in or leave out at will: "lbf.ft", "lbf-ft",
// "µm/(m K)", "in.".
func unitKey(name string) string {
	key := make([]byte, 0, len(name))
	for i := range len(name) {
		if strings.IndexByte(" .*^()-", name[i]) < 0 {
			key = append(key, name[i])
		}
	}
	return string(key)
}
