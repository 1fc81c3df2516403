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
		return bench.Fill("the rod’s ends come to %, more than the whole rod, %: an end was not held level, or something touched it",
			bench.Grams(f.Got, s.job.StepG), bench.Grams(c.Rod.WholeG, s.job.StepG)), form.PartRod, []string{s.rows[f.Item] + set}
	case balance.RodLength:
		return bench.Fill("a rod of % is too short for a throw of %: % or more will do", millimetres(f.Got), millimetres(s.job.ThrowMM), millimetres(f.Least)), form.RodCentres, nil
	case balance.FoundFactor:
		return bench.Fill("that makes a factor of %, which no crank has: look at this weight, at what was on, and at the weights of the parts; up to % will do",
			bench.Percent(f.Got), bench.Percent(balance.MostFactor)), form.KnifeHung, []string{weighing}
	case balance.TargetFactor:
		return bench.Fill("the factor it has is %, which can’t be aimed at: give one, up to %", bench.Percent(f.Got), bench.Percent(balance.MostFactor)), form.Target, nil
	case balance.PinCounted:
		return "the crankpin can’t be in both wheels: it would count twice", form.KnifeOn, []string{"timing"}
	default:
		return "these figures make no crank: look at the weights and at what was on the knife-edges", form.KnifeWeight, []string{weighing}
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
		return form.ZoneOut, bench.Fill("no drill fits between the radii with the wall and the keep-outs: there is room for %, and the smallest drill is %",
			millimetres(math.Max(0, f.Got)), millimetres(f.Least))
	case drill.ZoneOut:
		return form.ZoneOut, bench.Fill("% is not outside the inner radius, %", millimetres(f.Got), millimetres(f.Least))
	case drill.Direction:
		return form.ZoneHour, bench.Fill("the zone is % away from where metal must come off, and goes % either way", bench.Degrees(f.Got), bench.Degrees(f.Most))
	case drill.Depth:
		if s.r.Blank(form.DrillDepth) {
			return form.ZoneThick, bench.Fill("no hole has a depth left: the point and the wall take %, and % is all there is", millimetres(f.Got), millimetres(f.Most))
		}
		return form.DrillDepth, bench.Fill("% is deeper than the wheel is thick: up to % will do", millimetres(f.Got), millimetres(f.Most))
	case drill.Drills:
		return form.DrillFrom, "that makes no set of drills, or more than a hundred: give the smallest, the largest, and the step between"
	case drill.Plug:
		return form.PlugDensity, bench.Fill("plugs of % are hardly heavier or lighter than the wheel: % or more will do",
			unit.Format(f.Got, unit.KgPerCubicMetre, 1), unit.Format(f.Least, unit.KgPerCubicMetre, 1))
	case drill.KeepOuts:
		return form.ZoneBoss, "there are more than a hundred places to keep off"
	case drill.DepthStep:
		return form.DrillDepthStep, bench.Fill("% is too fine for this wheel: % or more will do", millimetres(f.Got), unit.Format(f.Least, unit.MM, 0.01))
	default:
		return form.ZoneIn, "these figures make no drilling plan: look at the zone, the drills and the wheel’s thickness"
	}
}
