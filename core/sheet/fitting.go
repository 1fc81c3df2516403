package sheet

import (
	"math"

	"pintwelve/core/draw"
	"pintwelve/core/fit"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// fitting is one step of the fitting-up as it is worked out.
type fitting struct {
	setUp // its ends, and how it writes figures
	*Answers
	r        *form.Reader
	grade    grade
	headline string
}

// grade is how bad what was found is.
type grade uint8

const (
	unmeasured grade = iota
	sound
	doubtful
	amiss
)

func readFitting(a *Answers, r *form.Reader) *fitting {
	return &fitting{setUp: setUp{ends: readEnds(r), fine: fineUnit(r), step: r.Default("bigend.step")}, Answers: a, r: r}
}

// size writes a diameter or a width.
func (f *fitting) size(mm float64) string { return unit.Format(mm, unit.MM, min(f.step, 0.01)) }

// found keeps the worst that was found for the headline.
func (f *fitting) found(g grade, words string) {
	if g > f.grade {
		f.grade, f.headline = g, words
	}
}

// top says the step's headline: the worst found, or what to do first.
func (f *fitting) top(step, first string) {
	switch {
	case f.grade == unmeasured && len(f.r.Problems) > 0:
		f.headline = mendIt
	case f.grade == unmeasured:
		f.headline = first
	case f.grade == sound:
		f.headline = "Right, as far as it is measured."
	}
	f.say(step+".headline", "%", f.headline)
	f.text("fit."+step+".verdict", gradeNames[f.grade])
}

var gradeNames = [...]string{"not measured", "right", "too close to call", "wrong"}

// faulty tells a fault of the fit room beside a field.
func (f *fitting) faulty(name string, err error) bool {
	fault, ok := err.(*fit.Fault)
	if !ok {
		return false
	}
	bounds := [...]string{f.size(fault.Got), f.size(fault.Most), f.size(fault.Least)}
	if fault.Kind == fit.NoWall && fault.Field != fit.Hollow {
		bounds[1] = bounds[2] // what is outside is to be more than the least
	}
	f.r.Complain(name, fill(faultWords[fault.Kind], bounds[:]...))
	return true
}

// faultWords are filled with what was given, the most and the least that would
// do.
var faultWords = [...]string{
	fit.OutOfRange:     "% is out of reach here: no more than %, no less than %, will do",
	fit.TooBigForHole:  "% doesn’t go into %, and clearance is meant: measure both again, or look whether two were exchanged",
	fit.NoInterference: "no interference: a press needs the pin bigger than its eye, but this one’s interference is %",
	fit.NoWall:         "% leaves no wall beside %",
	fit.NeverLoose:     "% comes loose at no heat",
	fit.NoRoom:         "% over the crank doesn’t go between faces % apart: measure both again",
}

// mostReadings is how many readings one list takes.
const mostReadings = 60

// sized works a size out of the lists in one or two fields; false where there
// is none, or one is wrong.
func (f *fitting) sized(along, across string) (size fit.Size, ok bool) {
	var all []fit.Micrometer
	for i, name := range [...]string{along, across} {
		if name == "" {
			continue
		}
		list := f.r.Numbers(name, mostReadings)
		for n, mm := range list {
			at := fit.Station(n % 3)
			switch len(list) {
			case 1:
				at = fit.MidLength
			case 2:
				at = fit.Station(2 * n)
			}
			all = append(all, fit.Micrometer{Spot: fit.Spot{At: at, Across: i == 1}, MM: mm})
		}
	}
	if len(all) == 0 || f.r.Wrong(along) || across != "" && f.r.Wrong(across) {
		return size, false
	}
	size, err := fit.Measure(all, f.step)
	return size, !f.faulty(along, err)
}

// measured is sized, said under the first field.
func (f *fitting) measured(along, across string) (size fit.Size, ok bool) {
	if size, ok = f.sized(along, across); !ok {
		return size, false
	}
	f.say(along, "% ± %%%.", unit.Figures(size.MeanMM, unit.MM, f.step), f.size(size.PlusMinusMM),
		f.shape(", taper %", size.Form.TaperMM, size.Form.TaperKnown), f.shape(", oval %", size.Form.OvalMM, size.Form.OvalKnown))
	f.number("fit."+along+"_mm", size.MeanMM)
	f.number("fit."+along+"_plus_mm", size.PlusMinusMM)
	return size, true
}

func (f *fitting) shape(template string, mm float64, known bool) string {
	if !known {
		return ""
	}
	return fill(template, f.amount(abs(mm)))
}

// limits reads the limits in two fields.
func (f *fitting) limits(least, most string, standIn fit.Limits) fit.Limits {
	l := fit.Limits{LeastMM: f.r.Or(least, standIn.LeastMM), MostMM: f.r.Or(most, standIn.MostMM)}
	if l.MostMM < l.LeastMM {
		f.r.Complain(most, fill("the most, %, is less than the least, %", f.amount(l.MostMM), f.amount(l.LeastMM)))
		l.MostMM = l.LeastMM
	}
	return l
}

// gap is a clearance, or an interference, to be judged.
type gap struct {
	name         string // of the words, the picture and the figures
	title        string
	fit.Gap             //
	fit.Limits          //
	below, above string // past the limits; a blank one is open
}

// exact is a gap that stands on one figure.
func exact(mm, plus float64) fit.Gap {
	return fit.Gap{MeanMM: mm, LeastMM: mm, MostMM: mm, PlusMinusMM: plus, SpotPlusMinusMM: plus}
}

// judged says, draws and gives a gap against its limits.
func (f *fitting) judged(g gap) grade {
	v := draw.FitView{
		Prefix: g.name, Name: g.title, Low: g.Limits.LeastMM, High: g.Limits.MostMM, Value: g.MeanMM, Half: g.PlusMinusMM,
		LowWords: f.amount(g.Limits.LeastMM), HighWords: f.amount(g.Limits.MostMM), Words: f.amount(g.MeanMM),
		Below: g.below, Above: g.above,
	}
	if g.below == "" {
		v.Low, v.LowWords, g.Limits.LeastMM = math.Inf(-1), "", -fit.MostMM
	}
	if g.above == "" {
		v.High, v.HighWords, g.Limits.MostMM = math.Inf(1), "", fit.MostMM
	}
	j, err := g.Judge(g.Limits)
	if err != nil {
		return unmeasured
	}
	how, verdict := sound, "right"
	switch {
	case j.Tight == fit.Beyond:
		how, verdict = amiss, g.below
	case j.Loose == fit.Beyond:
		how, verdict = amiss, g.above
	case j.Tight == fit.Doubtful || j.Loose == fit.Doubtful:
		how, verdict = doubtful, "too close to call"
	}
	words := fill("% %: %.", g.title, f.within(g.MeanMM, g.PlusMinusMM), verdict)
	f.found(how, words)
	if f.bare(g.Gap.MostMM-g.Gap.LeastMM) != "0" {
		words += fill(" From % to % round it.", f.bare(g.Gap.LeastMM), f.amount(g.Gap.MostMM))
	}
	f.say(g.name, "%", words)
	f.number("fit."+g.name+"_mm", g.MeanMM)
	f.text("fit."+g.name+"_verdict", gradeNames[how])
	f.text("picture."+g.name, draw.Fit(v))
	return how
}
