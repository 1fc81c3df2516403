package balance

import (
	"math"
	"slices"
	"strconv"

	"pintwelve/core/balance"
	"pintwelve/core/balance/drill"
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// need is the moment that must come off each wheel.
type need struct {
	half  [2]clock.Vec // by end, g·mm
	on    [2]bool      // which wheels are to be drilled
	alike bool         // half of one moment each
}

func (n *need) all() clock.Vec { return n.half[clock.Left].Add(n.half[clock.Right]) }

// needs shares the corrections out over the wheels.
func (s *crank) needs() (n need) {
	for _, c := range s.remove {
		if c.What != balance.Whole {
			end := c.What - balance.LeftWheel
			n.half[end], n.on[end] = c.GMM, true
			continue
		}
		n.on = s.onWheel(s.r.Word(form.PlanWheels))
		n.alike = n.on[clock.Left] && n.on[clock.Right]
		share := 1.0
		if n.alike {
			share = 0.5
		}
		for end, on := range n.on {
			if on {
				n.half[end] = c.GMM.Scale(share)
			}
		}
	}
	return n
}

// task is the drilling of one wheel; each to half of what the whole may be off.
func (s *crank) task(h *shop, n *need, end clock.End) drill.Task {
	t := h.Task
	t.Keep = circles(s.keepOff(end))
	t.Remove = n.half[end]
	if !h.zoneHour {
		t.Hour = t.Remove.Hour()
		if t.PlugKGM3 > t.DensityKGM3 {
			t.Hour = clock.Wrap(t.Hour + 6)
		}
	}
	if n.on[clock.Left] && n.on[clock.Right] {
		t.ToleranceGMM /= 2
	}
	t.Under = s.under(end, t.ThickMM)
	return t
}

// under tells of a wheel under a drill what the drilling plan asks: it is as thick as it is
// measured under Lighten, else as given.
func (s *crank) under(end clock.End, givenMM float64) func(radiusMM, drillMM float64) (throughMM float64, clear bool) {
	w := &s.turned[end]
	face, measured := w.OuterFace(), w.WidthMM > 0 && s.r.Blank(form.ZoneThick)
	return func(radiusMM, drillMM float64) (throughMM float64, clear bool) {
		from, to := radiusMM-drillMM/2, radiusMM+drillMM/2
		throughMM = givenMM
		if measured {
			least, most := w.ThickMM(from, to)
			if throughMM = least; least != most {
				throughMM = 0
			}
		}
		return throughMM, !face.HasEdge(from, to)
	}
}

// probe looks, with the smallest drill alone, whether there is a plan at all.
func (s *crank) probe(h *shop, n *need) bool {
	for end, on := range n.on {
		if !on {
			continue
		}
		t := s.task(h, n, clock.End(end))
		if len(t.DrillsMM) > 0 {
			t.DrillsMM = []float64{slices.Min(t.DrillsMM)}
		}
		t.MostHoles = 1
		if _, err := t.Plan(); err != nil {
			s.complainDrill(err)
			return false
		}
	}
	return true
}

// Plan works out the holes that a form asks for, in the throw that is looked at or in
// all that are weighed together: as fields to change, the old plan's blanked, and
// "say.plan.said". A cut under Lighten that lacks a figure stops it. Rows get keys that begin with key.
func Plan(f form.Form, key string) *bench.Answers {
	r := form.Read(f)
	a := &bench.Answers{}
	for _, s := range atOnce(readThrows(&bench.Answers{}, r)) {
		r.Pin = s.pin
		a.Say("plan.said", s.plan(a, f, key))
	}
	return a
}

// plan puts a throw's holes into a as fields to change, and returns what there is to say.
func (s *crank) plan(a *bench.Answers, f form.Form, key string) string {
	h := s.readShop()
	s.solve()
	switch {
	case s.ask != "":
		return s.ask
	case s.unweighed():
		return noHolesUnweighed
	}
	if words := s.unfinished(); words != "" {
		return words
	}
	if words := s.lackingCut(); words != "" {
		return words
	}
	if len(s.r.Problems) > 0 {
		return bench.MendIt
	}
	n := s.needs()
	var plans [2]drill.Plan
	for end, on := range n.on {
		if !on {
			continue
		}
		if end == 1 && n.alike && s.alikeWheels(h, &n) {
			plans[end] = plans[clock.Left]
			continue
		}
		var err error
		if plans[end], err = s.task(h, &n, clock.End(end)).Plan(); err != nil {
			return wheelCant(s.SideOf[end], s.complainDrill(err))
		}
	}
	for name := range f {
		if s.ofHole(form.Job.Lookup(name)) {
			a.Text(name, "")
		}
	}
	s.putHoles(a, &n, plans, key)
	return s.planSaid(h, &n, plans)
}

// alikeWheels says whether what holds for the left wheel holds for the right.
func (s *crank) alikeWheels(h *shop, n *need) bool {
	return slices.Equal(circles(s.keepOff(clock.Left)), circles(s.keepOff(clock.Right))) &&
		s.turned[clock.Left].AsThick(&s.turned[clock.Right])
}

// ofHole tells whether a field is of a hole in this throw.
func (s *crank) ofHole(field *form.Field, keys []string, known bool) bool {
	return known && slices.Contains(holeFields[:], field.ID) && s.here(form.HolePin, keys[0])
}

// holeFields are what a hole to be drilled is written in.
var holeFields = [...]form.ID{
	form.HoleOrder, form.HoleWheel, form.HoleRadius, form.HoleHour, form.HoleDrill, form.HoleDepth, form.HoleBottom, form.HolePlug, form.HolePin,
}

// putHoles writes the plans as rows: those that are alike as holes in both wheels.
func (s *crank) putHoles(a *bench.Answers, n *need, plans [2]drill.Plan, key string) {
	i := 100 * s.nth // over all that a throw may have
	put := func(wheel string, holes []drill.Hole) {
		for _, hole := range holes {
			i++
			row := key + strconv.Itoa(i)
			a.Text(form.HoleOrder.Name(row), strconv.Itoa(i))
			a.Text(form.HoleWheel.Name(row), wheel)
			if s.nth > 0 {
				a.Text(form.HolePin.Name(row), strconv.Itoa(s.nth+1))
			}
			a.Text(form.HoleRadius.Name(row), unit.Figures(hole.RadiusMM, unit.MM, 0.01))
			a.Text(form.HoleHour.Name(row), unit.FormatHour(s.Hour(hole.Hour), 1))
			a.Text(form.HoleDrill.Name(row), unit.Figures(hole.DiameterMM, unit.MM, 0.001))
			if hole.Through {
				a.Text(form.HoleBottom.Name(row), "through")
			} else {
				a.Text(form.HoleDepth.Name(row), unit.Figures(hole.DepthMM, unit.MM, 0.01))
			}
			if hole.PlugG > 0 {
				a.Text(form.HolePlug.Name(row), "yes")
			}
		}
	}
	if n.alike && slices.Equal(plans[clock.Left].Holes, plans[clock.Right].Holes) {
		put("both", plans[clock.Left].Holes)
		return
	}
	for end, on := range n.on {
		if on {
			put(s.SideOf[end], plans[end].Holes)
		}
	}
}

// planSaid says whether the target is reached, and what would free it.
func (s *crank) planSaid(h *shop, n *need, plans [2]drill.Plan) string {
	said := nothingWanted
	for end, on := range n.on {
		p := &plans[end]
		switch {
		case !on:
		case !p.Reached:
			return outOfReach(s.SideOf[end],
				bench.Plain(p.MomentGMM.Len(), 1), bench.Plain(n.half[end].Len(), 1), s.relaxWords(h, n, clock.End(end)))
		case len(p.Holes) > 0:
			said = plannedNow
		}
	}
	return said
}

// relaxWords say what would bring the target within reach.
func (s *crank) relaxWords(h *shop, n *need, end clock.End) string {
	t := s.task(h, n, end)
	found, err := t.Relaxations()
	if err != nil || len(found) == 0 {
		return easeSeveral
	}
	var ways []string
	for _, f := range found {
		ways = append(ways, s.relaxWay(f))
	}
	return anyWouldFree(ways)
}

func (s *crank) relaxWay(f drill.Relaxation) string {
	switch f.Limit {
	case drill.MoreHoles:
		return holesOf(int(f.Need))
	case drill.SecondPlan:
		return besideThese(holesOf(int(f.Need)))
	case drill.BiggerDrill:
		return biggerDrill(millimetres(f.Need))
	case drill.DeeperHoles:
		return deeperHoles(millimetres(f.Need))
	case drill.WiderZone:
		return widerZone(bench.Degrees(f.Need))
	case drill.ThinnerWall:
		return thinnerWall(millimetres(f.Need))
	case drill.NoKeepOuts:
		return noKeepOuts
	}
	return factorWithin(bench.Percent(2 * f.Need / (s.job.After.RecG() * s.job.ThrowMM)))
}

// removed is what the job's holes take off the crank, g·mm. Of one wheel weighed
// alone the other is taken to be done alike, whatever holes the job has in it.
func (s *crank) removed(h *shop) clock.Vec {
	if end, one := s.oneWheel(); one {
		off := h.plan(end, clock.Vec{}).MomentGMM
		off.T *= 2
		return off
	}
	return h.plan(clock.Left, clock.Vec{}).MomentGMM.Add(h.plan(clock.Right, clock.Vec{}).MomentGMM)
}

// middle is a radius where a hole may well stand, mm.
func (h *shop) middle() float64 { return math.Round((h.InMM + h.OutMM) / 2) }
