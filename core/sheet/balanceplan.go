package sheet

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"pintwelve/core/balance"
	"pintwelve/core/balance/drill"
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
func (s *stand) needs(corrections []balance.Correction) (n need) {
	for _, c := range corrections {
		if c.What != balance.Whole {
			end := c.What - balance.LeftWheel
			n.half[end], n.on[end] = c.GMM, true
			continue
		}
		n.on = s.onWheel(s.r.Word("plan.wheels"))
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
func (s *stand) task(h *shop, n *need, end clock.End) drill.Task {
	t := h.Task
	t.Keep = s.keepOff(end)
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
	return t
}

// probe looks, with the smallest drill alone, whether there is a plan at all.
func (s *stand) probe(h *shop, n *need) bool {
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

// Plan works out the holes that a form asks for: as fields to change, the old
// plan's blanked, and "say.plan.…" for what there is to say. Rows get keys that
// begin with key.
func Plan(f form.Form, key string) *Answers {
	a := &Answers{}
	r := form.Read(f)
	s := readStand(r)
	h := s.readShop()
	corrections, err := s.job.Correct()
	switch {
	case s.lack != "":
		a.say("plan.said", "%", s.ask)
		return a
	case err != nil:
		s.complain(err)
	}
	if len(r.Problems) > 0 {
		a.say("plan.said", mendIt)
		return a
	}
	n := s.needs(corrections)
	var plans [2]drill.Plan
	for end, on := range n.on {
		if !on {
			continue
		}
		if end == 1 && n.alike && s.alikeWheels(h, &n) {
			plans[end] = plans[clock.Left]
			continue
		}
		if plans[end], err = s.task(h, &n, clock.End(end)).Plan(); err != nil {
			a.say("plan.said", "%: %.", s.sideOf[end]+" wheel", s.complainDrill(err))
			return a
		}
	}
	a.blankRows(f, "hole.")
	a.putHoles(s, &n, plans, key)
	a.planSaid(s, h, &n, plans)
	return a
}

// alikeWheels says whether what holds for the left wheel holds for the right.
func (s *stand) alikeWheels(h *shop, n *need) bool {
	return slices.Equal(s.keepOff(clock.Left), s.keepOff(clock.Right))
}

func (a *Answers) blankRows(f form.Form, group string) {
	for _, name := range f.Names() {
		if strings.HasPrefix(name, group) {
			a.text(name, "")
		}
	}
}

// putHoles writes the plans as rows: those that are alike as holes in both wheels.
func (a *Answers) putHoles(s *stand, n *need, plans [2]drill.Plan, key string) {
	i := 0
	put := func(wheel string, holes []drill.Hole) {
		for _, hole := range holes {
			i++
			at := "hole." + key + strconv.Itoa(i) + "."
			a.text(at+"order", strconv.Itoa(i))
			a.text(at+"wheel", wheel)
			a.text(at+"radius", unit.Figures(hole.RadiusMM, unit.MM, 0.01))
			a.text(at+"hour", unit.FormatHour(s.hour(hole.Hour), 1))
			a.text(at+"drill", unit.Figures(hole.DiameterMM, unit.MM, 0.001))
			if hole.Through {
				a.text(at+"bottom", "through")
			} else {
				a.text(at+"depth", unit.Figures(hole.DepthMM, unit.MM, 0.01))
			}
			if hole.PlugG > 0 {
				a.text(at+"plug", "yes")
			}
		}
	}
	if n.alike && slices.Equal(plans[clock.Left].Holes, plans[clock.Right].Holes) {
		put("both", plans[clock.Left].Holes)
		return
	}
	for end, on := range n.on {
		if on {
			put(s.sideOf[end], plans[end].Holes)
		}
	}
}

// planSaid says whether the target is reached, and what would free it.
func (a *Answers) planSaid(s *stand, h *shop, n *need, plans [2]drill.Plan) {
	for end, on := range n.on {
		if !on {
			continue
		}
		p := &plans[end]
		if p.Reached {
			if len(p.Holes) == 0 {
				a.say("plan.said", "No hole is wanted: it is as near as asked.")
			} else {
				a.say("plan.said", "Planned.")
			}
			continue
		}
		a.say("plan.said", "Out of reach on the % wheel: % of % g·mm comes off. %", s.sideOf[end],
			plain(p.MomentGMM.Len(), 1), plain(n.half[end].Len(), 1), s.relaxWords(h, n, clock.End(end)))
		return
	}
}

// relaxWords say what would bring the target within reach.
func (s *stand) relaxWords(h *shop, n *need, end clock.End) string {
	t := s.task(h, n, end)
	found, err := t.Relaxations()
	if err != nil || len(found) == 0 {
		return "No one limit alone is in the way: ease several, or use plugs."
	}
	var ways []string
	for _, f := range found {
		ways = append(ways, s.relaxWay(f))
	}
	return fill("Any of these would free it: %.", strings.Join(ways, "; "))
}

func (s *stand) relaxWay(f drill.Relaxation) string {
	template, figure := "", millimetres(f.Need)
	switch f.Limit {
	case drill.MoreHoles:
		template, figure = "%", counted(int(f.Need), "hole", "holes")
	case drill.SecondPlan:
		template, figure = "drill this, and % more beside it", counted(int(f.Need), "hole", "holes")
	case drill.BiggerDrill:
		template = "a % drill"
	case drill.DeeperHoles:
		template = "holes % deep"
	case drill.WiderZone:
		template, figure = "a zone of % either way", degrees(f.Need)
	case drill.ThinnerWall:
		template = "a wall of %"
	case drill.NoKeepOuts:
		template = "nothing to keep off"
	default:
		template, figure = "a factor within %", percent(2*f.Need/(s.job.After.RecG()*s.job.ThrowMM))
	}
	return fill(template, figure)
}

// Drilled logs the holes of a form as drilled and the new parts as fitted, and
// clears the knife-edges for the next reading: as fields to change.
func Drilled(f form.Form, key string) form.Form {
	r := form.Read(f)
	s := readStand(r)
	h := s.readShop()
	changes := form.Form{}
	if s.lack == "" && s.job.Check() == nil {
		s.keepAim(h, changes)
	}
	for name, text := range f {
		switch {
		case strings.HasPrefix(name, "hole."), name == "after.drive", name == "after.timing":
			changes[name] = ""
		case strings.HasPrefix(name, "new."), strings.Contains(name, ".new."):
			before, after, _ := strings.Cut(name, "new.")
			changes[before+"weight."+after], changes[name] = text, ""
		case strings.HasPrefix(name, "knife.") && slices.Contains([]string{"hung", "hour", "weight", "radius"}, name[strings.LastIndexByte(name, '.')+1:]):
			changes[name] = ""
		}
	}
	for i, row := range s.rows {
		if whole := row + "weight.rod"; f[whole] != "" && s.job.After.Cylinders[i].Rod.WholeG == 0 {
			changes[whole] = "" // the ends are new, and it is not
		}
	}
	for i, d := range h.holes {
		at := "keep." + key + strconv.Itoa(i) + "."
		changes[at+"order"] = strconv.Itoa(len(f.Rows("keep")) + i + 1)
		for _, part := range [...]string{"wheel", "radius", "hour"} {
			changes[at+part] = f["hole."+d.key+"."+part]
		}
		changes[at+"across"] = f["hole."+d.key+".drill"]
	}
	return changes
}

// keepAim writes down the factor that was aimed at, which the one found no
// longer tells, and where nothing was weighed, the one reached.
func (s *stand) keepAim(h *shop, changes form.Form) {
	if c, err := s.job.Correct(); err == nil && s.job.Keep {
		changes["target"] = "factor"
		changes["target.factor"] = unit.Figures(100*c[0].Factor.X, unit.PerCent, 0.01)
	}
	if left, err := s.job.Left(s.removed(h)); err == nil && s.job.HasStated {
		changes["knife.stated"] = unit.Figures(100*left.Factor.X, unit.PerCent, 0.01)
	}
}

// removed is what the job's holes take off the crank, g·mm. Of one wheel weighed
// alone the other is taken to be done alike, whatever holes the job has in it.
func (s *stand) removed(h *shop) clock.Vec {
	if len(s.job.Weighed) == 1 && s.job.Weighed[0].What != balance.Whole {
		off := h.plan(clock.End(s.job.Weighed[0].What-balance.LeftWheel), clock.Vec{}).MomentGMM
		off.T *= 2
		return off
	}
	return h.plan(clock.Left, clock.Vec{}).MomentGMM.Add(h.plan(clock.Right, clock.Vec{}).MomentGMM)
}

// middle is a radius where a hole may well stand, mm.
func (h *shop) middle() float64 { return math.Round((h.InMM + h.OutMM) / 2) }
