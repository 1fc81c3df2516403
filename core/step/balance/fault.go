package balance

import (
	"math"

	"pintwelve/core/balance"
	"pintwelve/core/balance/drill"
	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// tenth is how finely a length is told, mm.
const tenth = 0.1

func millimetres(mm float64) string { return unit.Format(mm, unit.MM, tenth) }

// typedIn writes a length in the unit that was typed in a field.
func (s *crank) typedIn(id form.ID, keys ...string) func(mm float64) string {
	return bench.AsTyped(s.r, tenth, id, keys...)
}

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
		place := s.rows[f.Item] + set
		typed := bench.AsTyped(s.r, s.job.StepG, form.PartRod, place)
		return rodHeavy(typed(f.Got), typed(c.Rod.WholeG)), form.PartRod, []string{place}
	case balance.RodLength:
		typed := s.typedIn(form.RodCentres)
		return rodShort(typed(f.Got), typed(s.job.ThrowMM), typed(f.Least)), form.RodCentres, nil
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

// drillField is where a figure of the drilling plan stands.
func (s *crank) drillField(f drill.Field) form.ID {
	switch f {
	case drill.ZoneRoom, drill.ZoneOut:
		return form.ZoneOut
	case drill.Direction:
		return form.ZoneHour
	case drill.Depth:
		if s.r.Blank(form.DrillDepth) {
			return form.ZoneThick
		}
		return form.DrillDepth
	case drill.Drills:
		return form.DrillFrom
	case drill.Plug:
		return form.PlugDensity
	case drill.KeepOuts:
		return form.ZoneBoss
	case drill.DepthStep:
		return form.DrillDepthStep
	}
	return form.ZoneIn
}

func (s *crank) drillWords(f *drill.Fault) (id form.ID, words string) {
	id = s.drillField(f.Field)
	size, density := s.typedIn(id), bench.AsTyped(s.r, 1, id)
	switch f.Field {
	case drill.ZoneRoom:
		return id, noDrillFits(size(math.Max(0, f.Got)), size(f.Least))
	case drill.ZoneOut:
		return id, notOutside(size(f.Got), size(f.Least))
	case drill.Direction:
		return id, zoneAway(bench.Degrees(f.Got), bench.Degrees(f.Most))
	case drill.Depth:
		if id == form.ZoneThick {
			return id, noDepthLeft(size(f.Got), size(f.Most))
		}
		return id, deeperThanWheel(size(f.Got), size(f.Most))
	case drill.Drills:
		return id, noDrillSet
	case drill.Plug:
		return id, plugsAlike(density(f.Got), density(f.Least))
	case drill.KeepOuts:
		return id, manyKeepOuts
	case drill.DepthStep:
		return id, stepTooFine(size(f.Got), bench.AsTyped(s.r, tenth/10, id)(f.Least))
	}
	return id, noPlan
}
