package sheet

import (
	"math"

	"pintwelve/core/balance"
	"pintwelve/core/balance/drill"
	"pintwelve/core/unit"
)

func grams(g, step float64) string { return unit.Format(g, unit.Gram, step) }

func millimetres(mm float64) string { return unit.Format(mm, unit.MM, 0.1) }

func percent(part float64) string { return unit.Format(100*part, unit.PerCent, 0.1) }

func degrees(rad float64) string { return unit.Format(rad*180/math.Pi, unit.Degree, 1) }

// plain writes a number without a unit.
func plain(x, step float64) string { return unit.Figures(x, unit.Plain, step) }

// complain puts what the balance room says of a figure beside its field.
func (s *stand) complain(err error) {
	f, ok := err.(*balance.Fault)
	if !ok {
		return
	}
	name, words := s.faultWords(f)
	s.r.Complain(name, words)
}

func (s *stand) faultWords(f *balance.Fault) (name, words string) {
	set := "weight."
	if f.After {
		set = "new."
	}
	weighing := "knife.whole."
	if f.Item < len(s.readings) {
		weighing = s.readings[f.Item]
	}
	switch f.Field {
	case balance.RodEnds:
		c := s.job.Before.Cylinders[f.Item]
		if f.After {
			c = s.job.After.Cylinders[f.Item]
		}
		return s.rows[f.Item] + set + "rod", fill("the rod’s ends come to %, more than the whole rod, %: an end was not held level, or something touched it",
			grams(f.Got, s.job.StepG), grams(c.Rod.WholeG, s.job.StepG))
	case balance.RodLength:
		return "rod.centres", fill("a rod of % is too short for a throw of %: % or more will do", millimetres(f.Got), millimetres(s.job.ThrowMM), millimetres(f.Least))
	case balance.FoundFactor:
		return weighing + "hung", fill("that makes a factor of %, which no crank has: look at this weight, at what was on, and at the weights of the parts; up to % will do",
			percent(f.Got), percent(balance.MostFactor))
	case balance.TargetFactor:
		return "target", fill("the factor it has is %, which can’t be aimed at: give one, up to %", percent(f.Got), percent(balance.MostFactor))
	case balance.PinCounted:
		return "knife.timing.on", "the crankpin can’t be in both wheels: it would count twice"
	default:
		return weighing + "weight", "these figures make no crank: look at the weights and at what was on the knife-edges"
	}
}

// complainDrill does the same for the drilling plan; it returns the words, to be
// said where the plan is asked for.
func (s *stand) complainDrill(err error) string {
	f, ok := err.(*drill.Fault)
	if !ok {
		return ""
	}
	name, words := s.drillWords(f)
	s.r.Complain(name, words)
	return words
}

func (s *stand) drillWords(f *drill.Fault) (name, words string) {
	switch f.Field {
	case drill.ZoneRoom:
		return "zone.out", fill("no drill fits between the radii with the wall and the keep-outs: there is room for %, and the smallest drill is %",
			millimetres(math.Max(0, f.Got)), millimetres(f.Least))
	case drill.ZoneOut:
		return "zone.out", fill("% is not outside the inner radius, %", millimetres(f.Got), millimetres(f.Least))
	case drill.Direction:
		return "zone.hour", fill("the zone is % away from where metal must come off, and goes % either way", degrees(f.Got), degrees(f.Most))
	case drill.Depth:
		if s.r.Blank("drill.depth") {
			return "zone.thick", fill("no hole has a depth left: the point and the wall take %, and % is all there is", millimetres(f.Got), millimetres(f.Most))
		}
		return "drill.depth", fill("% is deeper than the wheel is thick: up to % will do", millimetres(f.Got), millimetres(f.Most))
	case drill.Drills:
		return "drill.from", "that makes no set of drills, or more than a hundred: give the smallest, the largest, and the step between"
	case drill.Plug:
		return "plug.density", fill("plugs of % are hardly heavier or lighter than the wheel: % or more will do",
			unit.Format(f.Got, unit.KgPerCubicMetre, 1), unit.Format(f.Least, unit.KgPerCubicMetre, 1))
	case drill.KeepOuts:
		return "zone.boss", "there are more than a hundred places to keep off"
	case drill.DepthStep:
		return "drill.depthstep", fill("% is too fine for this wheel: % or more will do", millimetres(f.Got), unit.Format(f.Least, unit.MM, 0.01))
	default:
		return "zone.in", "these figures make no drilling plan: look at the zone, the drills and the wheel’s thickness"
	}
}
