package fitting

import (
	"math"
	"slices"

	"pintwelve/core/bench"
	"pintwelve/core/draw"
	"pintwelve/core/fit"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// fitting is one step of the fitting-up as it is worked out.
type fitting struct {
	bench.Gauge
	*bench.Answers
	r        *form.Reader
	grade    grade
	headline string
}

// grade is how bad what was found is.
type grade uint8

const (
	unmeasured grade = iota
	sound
	asked // what settles it
	doubtful
	amiss
)

func readFitting(a *bench.Answers, r *form.Reader) *fitting {
	return &fitting{Gauge: bench.Gauge{Unit: bench.FineUnit(r), StepMM: r.Default(form.BigEndStep)}, Answers: a, r: r}
}

// size writes a diameter or a width.
func (f *fitting) size(mm float64) string { return unit.Format(mm, unit.MM, min(f.StepMM, 0.01)) }

// found keeps the worst that was found for the headline.
func (f *fitting) found(g grade, words string) {
	if g > f.grade {
		f.grade, f.headline = g, words
	}
}

// top says the step's headline: a crack, a figure to be mended, by which nothing is
// called right or wrong, the worst found, or what to do first.
func (f *fitting) top(step, first string) {
	if f.grade <= amiss && len(f.r.Problems) > 0 {
		f.grade, f.headline = unmeasured, bench.MendIt
	}
	f.grade = min(f.grade, amiss)
	switch {
	case f.grade == unmeasured && f.headline != "":
	case f.grade == unmeasured:
		f.headline = first
	case f.grade == sound:
		f.headline = rightSoFar
	}
	f.Say(step+".headline", f.headline)
	if f.grade != unmeasured {
		f.Say(step+".judged", f.headline) // for the sheet: no word of what is to be done
	}
	f.Text("fit."+step+".verdict", gradeNames[f.grade])
}

// wrong says whether one of some fields is, so that what stands in for it judges nothing.
func (f *fitting) wrong(ids ...form.ID) bool {
	return slices.ContainsFunc(ids, func(id form.ID) bool { return f.r.Wrong(id) })
}

// faulty tells a fault of the fit room beside a field, in the unit that was typed there.
func (f *fitting) faulty(err error, id form.ID, keys ...string) bool {
	fault, ok := err.(*fit.Fault)
	if !ok {
		return false
	}
	size := bench.AsTyped(f.r, min(f.StepMM, 0.01), id, keys...)
	least, most := id.Range(fault.Least, fault.Most)
	bounds := [...]string{size(fault.Got), size(most), size(least)}
	if kind := fault.Detail.Kind; kind == fit.TooNarrow || kind == fit.NoWall && fault.Field != fit.Hollow {
		bounds[1] = bounds[2] // what is outside is to be more than the least
	}
	f.r.Complain(faultWords(fault.Detail.Kind, bounds[0], bounds[1], bounds[2]), id, keys...)
	return true
}

// readings reads a list of them, from the near end over the middle to the far one.
func (f *fitting) readings(across bool, id form.ID, keys ...string) (all []fit.Micrometer) {
	list := f.r.Numbers(bench.MostReadings, id, keys...)
	for n, mm := range list {
		at := fit.Plane(n % 3)
		switch len(list) {
		case 1:
			at = fit.MidLength
		case 2:
			at = fit.Plane(2 * n)
		}
		all = append(all, fit.Micrometer{Spot: fit.Spot{At: at, Across: across}, MM: mm})
	}
	return all
}

// sized works a size out of the lists in two fields, along and at right angles;
// false where there is none, or one is wrong.
func (f *fitting) sized(along, across form.ID) (fit.Size, bool) {
	all := f.readings(false, along)
	first := len(all)
	all = append(all, f.readings(true, across)...)
	if f.r.Wrong(across) {
		return fit.Size{}, false
	}
	if err, ok := fit.Together(all).(*fit.Fault); ok && err.Item >= first {
		f.faulty(err, across)
		return fit.Size{}, false
	}
	with := f.instrument(along)
	with.StepMM = math.Max(with.StepMM, f.instrument(across).StepMM)
	return f.worked(all, with, along)
}

// bores are measured with the bore gauge, all else with the micrometer.
var bores = [...]form.ID{form.BigEndBore, form.BigEndBore90, form.BigEndEye, form.BigEndEye90, form.JointEye, form.MainHousing}

// instrument is what the readings of a field are taken with; it tells apart its step,
// or a coarser one by the decimals typed, “30.00” being no tenth of a thou.
func (f *fitting) instrument(id form.ID, keys ...string) fit.Instrument {
	with := fit.Instrument{StepMM: f.StepMM, ErrorMM: f.r.Default(form.BigEndError)}
	if slices.Contains(bores[:], id) {
		with = fit.Instrument{StepMM: f.r.Or(f.StepMM, form.BigEndGaugeStep), ErrorMM: f.r.Default(form.BigEndGaugeError)}
	}
	with.StepMM = math.Max(with.StepMM, f.r.Coarsest(bench.MostReadings, id, keys...))
	return with
}

func (f *fitting) worked(all []fit.Micrometer, with fit.Instrument, id form.ID, keys ...string) (fit.Size, bool) {
	if len(all) == 0 || f.r.Wrong(id, keys...) {
		return fit.Size{}, false
	}
	if !f.onTaper(id, keys...) && f.faulty(fit.Together(all), id, keys...) {
		return fit.Size{}, false
	}
	size, err := fit.Measure(all, with)
	return size, !f.faulty(err, id, keys...)
}

// onTaper says whether a field's readings are of a taper, which differ by as much as
// it tapers.
func (f *fitting) onTaper(id form.ID, keys ...string) bool {
	return id == form.JointPin && f.r.Word(form.JointForm, keys...) == "taper"
}

// measured works a size out of the list in one field, and says it under it.
func (f *fitting) measured(id form.ID, keys ...string) (fit.Size, bool) {
	size, ok := f.worked(f.readings(false, id, keys...), f.instrument(id, keys...), id, keys...)
	return size, ok && f.told(&size, id.Name(keys...))
}

// measuredBoth is sized, said under the first field.
func (f *fitting) measuredBoth(along, across form.ID) (fit.Size, bool) {
	size, ok := f.sized(along, across)
	return size, ok && f.told(&size, along.Name())
}

func (f *fitting) told(size *fit.Size, name string) bool {
	f.Say(name, sizeSaid(bench.PlusMinus(unit.Figures(size.MeanMM, unit.MM, min(f.StepMM, 0.01)), f.size(size.PlusMinusMM)),
		f.shape(andTaper, size.Form.TaperMM, size.Form.TaperKnown), f.shape(andOval, size.Form.OvalMM, size.Form.OvalKnown)))
	f.Number("fit."+name+"_mm", size.MeanMM)
	f.Number("fit."+name+"_plus_mm", size.PlusMinusMM)
	return true
}

func (f *fitting) shape(words func(by string) string, mm float64, known bool) string {
	if !known {
		return ""
	}
	return words(f.Amount(math.Abs(mm)))
}

// limits reads the limits in two fields.
func (f *fitting) limits(least, most form.ID, standIn fit.Limits) fit.Limits {
	l := fit.Limits{LeastMM: f.r.Or(standIn.LeastMM, least), MostMM: f.r.Or(standIn.MostMM, most)}
	if l.MostMM < l.LeastMM {
		f.r.Complain(mostUnderLeast(f.Amount(l.MostMM), f.Amount(l.LeastMM)), most)
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
func (f *fitting) judged(g gap) grade { return f.judgedUnless(g, "") }

// judgedUnless is judged, but where something is wanted before the gap may be called
// right, it asks for that.
func (f *fitting) judgedUnless(g gap, wanted string) grade {
	v := draw.FitView{
		Prefix: g.name, Name: g.title, Low: g.Limits.LeastMM, High: g.Limits.MostMM, Value: g.MeanMM, Half: g.PlusMinusMM,
		LowWords: f.Amount(g.Limits.LeastMM), HighWords: f.Amount(g.Limits.MostMM), Words: f.Amount(g.MeanMM),
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
	how, verdict := sound, rightWord
	switch {
	case j.Tight == fit.Beyond:
		how, verdict = amiss, g.below
	case j.Loose == fit.Beyond:
		how, verdict = amiss, g.above
	case j.Tight == fit.Doubtful || j.Loose == fit.Doubtful:
		how, verdict = doubtful, tooCloseWords
	case wanted != "":
		how, verdict = asked, wanted
	}
	words := judgedAs(g.title, f.Within(g.MeanMM, g.PlusMinusMM), verdict)
	f.found(how, words)
	if f.Bare(g.Gap.MostMM-g.Gap.LeastMM) != "0" {
		words += " " + fromToRound(f.Bare(g.Gap.LeastMM), f.Amount(g.Gap.MostMM))
	}
	f.Say(g.name, words)
	f.Number("fit."+g.name+"_mm", g.MeanMM)
	f.Text("fit."+g.name+"_verdict", gradeNames[how])
	f.Text("picture."+g.name, draw.Fit(v))
	return how
}
