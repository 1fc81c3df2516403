package unit

import "strconv"

// Error says why a text was refused: `“2 bananas” is not a figure in thou, mm or
// inches: write 2 thou or 0.05 mm`. All its parts are short and printable whatever was typed.
type Error struct {
	Entry   int    // which entry of a list, from 1; 0 for a single quantity
	Given   string // what was typed, cut, with unprintable characters replaced
	Problem string // follows Given in a sentence: "is not a weight"
	Example string // what would do: "2 thou or 0.05 mm"
}

func (e *Error) Error() string {
	where := ""
	if e.Entry > 0 {
		where = "entry " + strconv.Itoa(e.Entry) + ": "
	}
	return where + "“" + e.Given + "” " + e.Problem + ": write " + e.Example
}

// complete fills in what the field knows and the reader of the text doesn't.
func (e *Error) complete(text string, def Unit) *Error {
	e.Given = printable(text)
	if e.Example == "" {
		e.Example = example(def)
	}
	return e
}

const shown = 24 // characters of the given text that an error repeats

// printable cuts a text and replaces what would not show, or would turn the
// sentence around it the other way.
func printable(text string) string {
	out := make([]rune, 0, shown+1)
	for _, r := range text {
		if len(out) == shown {
			out = append(out, '…')
			break
		}
		if IsSpace(r) {
			r = ' '
		} else if Unseen(r) {
			r = '\uFFFD'
		}
		out = append(out, r)
	}
	if len(out) == 0 {
		return "(nothing)"
	}
	return string(out)
}

// Unseen tells whether a character shows nothing of its own: controls, what
// joins or turns the text around it, and what no script has.
func Unseen(r rune) bool {
	return r < ' ' || r >= 0x7f && r < 0xa0 || r == 0xad || r == 0x061c || r >= 0x200b && r <= 0x200f || r >= 0x2028 && r <= 0x202e ||
		r >= 0x2060 && r <= 0x206f || r >= 0xe000 && r <= 0xf8ff || r == 0xfeff || r >= 0xe0000
}

// kinds has what each kind is called, with its article, and what would do for a
// field of it.
var kinds = [...]struct{ noun, example string }{
	Number:          {"a number", "0.5 or 12"},
	Length:          {"a figure in thou, mm or inches", "41.3 mm or 1 5/8 in"},
	Mass:            {"a weight", "350 g or 2 lb 3 oz"},
	Angle:           {"an angle", "35° or 4.5"},
	Hour:            {"an hour of the clock", "3, 4:30 or 12"},
	Speed:           {"a speed in rpm", "5500 rpm"},
	Velocity:        {"a speed", "12 m/s or 40 ft/s"},
	Temperature:     {"a temperature", "180 °C or 356 °F"},
	TemperatureRise: {"a temperature difference", "80 °C or 144 °F"},
	Percent:         {"a percentage", "52%"},
	Time:            {"a time", "1.35 s or 1:30"},
	Stress:          {"a stress or pressure", "210 GPa or 30000 psi"},
	Density:         {"a density", "7850 kg/m³ or 7.85 g/cm³"},
	Force:           {"a force", "50 kN or 5 tonne"},
	Torque:          {"a torque", "40 Nm or 30 lbf ft"},
	Expansion:       {"a rate of expansion", "11.5 µm/m·K"},
	Power:           {"a power", "22 kW or 29 bhp"},
	Taper:           {"a taper", "1:8, 1 in 8 or 0.125"},
}

func (k Kind) noun() string { return kinds[k].noun }

// example is what would do for a field whose own unit is u.
func example(u Unit) string {
	switch u {
	case Thou, Micron:
		return "2 thou or 0.05 mm"
	case ArcMinute:
		return "3 arcmin or 0.05°"
	}
	return kinds[u.Kind()].example
}
