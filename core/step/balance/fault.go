package balance

import (
	"math"

	"pintwelve/core/balance"
	"pintwelve/core/balance/drill"
	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

func millimetres(mm float64) string { return unit.Format(mm, unit.MM, 0.1) }

// complain puts what the balance room says of a figure beside its field.
func (s *crank) complain(err error) {
	f, ok := err.(*balance.Fault)
	if !ok {
		return
	}
	words, id, keys := s.faultWords(f)
	s.r.Complain(words, id, keys...)
}

func (s *crank) faultWords(f *balance.Fault) (words string, id form.ID, keys []string) {
	set := "weight"
	if f.Detail.After {
		set = "new"
	}
	weighing := "whole"
	if f.Item < len(s.readings) {
		weighing = s.readings[f.Item]
	}
	switch f.Field {
	case balance.RodEnds:
		c := s.job.Before.Cylinders[f.Item]
		if f.Detail.After {
			c = s.job.After.Cylinders[f.Item]
		}
		return rodHeavy(bench.Grams(f.Got, s.job.StepG), bench.Grams(c.Rod.WholeG, s.job.StepG)), form.PartRod, []string{s.rows[f.Item] + set}
	case balance.RodLength:
		return rodShort(millimetres(f.Got), millimetres(s.job.ThrowMM), millimetres(f.Least)), form.RodCentres, nil
	case balance.FoundFactor:
		return noSuchFactor(bench.Percent(f.Got), bench.Percent(balance.MostFactor)), form.KnifeHung, []string{weighing}
	case balance.TargetFactor:
		return cantAimAt(bench.Percent(f.Got), bench.Percent(balance.MostFactor)), form.Target, nil
	case balance.PinCounted:
		return pinTwice, form.KnifeOn, []string{"timing"}
	default:
		return noCrank, form.KnifeWeight, []string{weighing}
	}
}

// complainDrill does the same for the drilling plan; it returns the words, to be
// said where the plan is asked for.
func (s *crank) complainDrill(err error) string {
	f, ok := err.(*drill.Fault)
	if !ok {
		return ""
	}
	id, words := s.drillWords(f)
	s.r.Complain(words, id)
	return words
}

func (s *crank) drillWords(f *drill.Fault) (id form.ID, words string) {
	switch f.Field {
	case drill.ZoneRoom:
		return form.ZoneOut, noDrillFits(millimetres(math.Max(0, f.Got)), millimetres(f.Least))
	case drill.ZoneOut:
		return form.ZoneOut, notOutside(millimetres(f.Got), millimetres(f.Least))
	case drill.Direction:
		return form.ZoneHour, zoneAway(bench.Degrees(f.Got), bench.Degrees(f.Most))
	case drill.Depth:
		if s.r.Blank(form.DrillDepth) {
			return form.ZoneThick, noDepthLeft(millimetres(f.Got), millimetres(f.Most))
		}
		return form.DrillDepth, deeperThanWheel(millimetres(f.Got), millimetres(f.Most))
	case drill.Drills:
		return form.DrillFrom, noDrillSet
	case drill.Plug:
		return form.PlugDensity, plugsAlike(unit.Format(f.Got, unit.KgPerCubicMetre, 1), unit.Format(f.Least, unit.KgPerCubicMetre, 1))
	case drill.KeepOuts:
		return form.ZoneBoss, manyKeepOuts
	case drill.DepthStep:
		return form.DrillDepthStep, stepTooFine(millimetres(f.Got), unit.Format(f.Least, unit.MM, 0.01))
	default:
		return form.ZoneIn, noPlan
	}
}
