package bench

import (
	"math"

	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// Gauge writes what is read off a dial or a micrometer as finely as that shows it.
type Gauge struct {
	Unit   unit.Unit
	StepMM float64
}

// FineUnit is what is read off a dial in.
func FineUnit(r *form.Reader) unit.Unit {
	if r.Word(form.Units) == "metric" {
		return unit.MM
	}
	return unit.Thou
}

// Amount writes a length with its unit: "2.5 thou".
func (g Gauge) Amount(mm float64) string { return unit.Format(mm, g.Unit, g.StepMM) }

// Bare writes a length without its unit.
func (g Gauge) Bare(mm float64) string { return unit.Figures(mm, g.Unit, g.StepMM) }

// Within writes a length with how far it may be out: "2.1 ± 0.3 thou".
func (g Gauge) Within(mm, plus float64) string {
	if g.Bare(plus) == "0" {
		return g.Amount(mm)
	}
	return PlusMinus(g.Bare(mm), g.Amount(plus))
}

// PlusMinus writes a figure with how far it may be out, both of them rounded alike, to one
// decimal: "0.50", "0.12 mm" are "0.50 ± 0.12 mm", whatever noughts they were written without.
func PlusMinus(figure, plus string) string {
	return Fill("% ± %", asFine(figure, plus), asFine(plus, figure))
}

// asFine writes out the noughts of a figure that another, rounded alike, shows it to have.
func asFine(text, as string) string {
	end, places := decimals(text)
	_, want := decimals(as)
	for ; end > 0 && places < want; places++ {
		nought := "0"
		if places == 0 {
			nought = ".0"
		}
		text = text[:end] + nought + text[end:]
		end += len(nought)
	}
	return text
}

// decimals tells where the figure in a text ends, and how many decimals it has.
func decimals(text string) (end, places int) {
	dot := len(text)
	for i := range len(text) {
		switch c := text[i]; {
		case c == '.':
			dot = i
		case '0' <= c && c <= '9':
			end = i + 1
		}
	}
	return end, max(0, end-1-dot)
}

// AsTyped writes quantities in the unit that was typed in a field, as finely as a step
// [base unit].
func AsTyped(r *form.Reader, step float64, id form.ID, keys ...string) func(v float64) string {
	in := r.UnitOf(MostReadings, id, keys...)
	return func(v float64) string { return unit.Format(v, in, step) }
}

// Grams writes a weight as finely as a step.
func Grams(g, step float64) string { return unit.Format(g, unit.Gram, step) }

// Percent writes a part of a whole.
func Percent(part float64) string { return unit.Format(100*part, unit.PerCent, 0.1) }

// Degrees writes an angle in whole degrees.
func Degrees(rad float64) string { return unit.Format(rad*180/math.Pi, unit.Degree, 1) }

// Plain writes a number without a unit.
func Plain(x, step float64) string { return unit.Figures(x, unit.Plain, step) }
