package balance

import (
	"math"
	"strconv"
	"strings"

	"pintwelve/core/balance"
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// balancing answers the step "Balance": weights in, factor and drilling plan
// out.
func balancing(a *bench.Answers, r *form.Reader) {
	s := readCrank(a, r)
	h := s.readShop()
	s.unfinished()
	s.weighed()
	s.folds(h)
	found, corrections, ok := s.solve()
	if !ok {
		s.unbalanced()
		s.holeWords(h)
		s.wheels(h, &need{})
		return
	}
	n := s.needs(corrections)
	if s.lightG > 0 {
		s.Say("balance.rod", "The rod’s ends come to % less than the whole rod: weigh them again. Half of it at the small end moves the factor by %.",
			bench.Grams(s.lightG, s.fineStep()), bench.Percent((s.lightG/2)*(1-found.Factor.X)/s.job.Before.RecG()))
	}
	s.standing(found)
	s.toTakeOff(h, &n, corrections)
	s.holeWords(h)
	s.planned(h, corrections[0].Factor.X)
	s.afterwards(h, &n)
	s.shaking(found.Factor.X, corrections[0].Factor.X)
	s.residual()
	s.wheels(h, &n)
}

// unbalanced fills in what can't be said yet.
func (s *crank) unbalanced() {
	s.Say("balance.headline", "%", s.ask)
	for _, name := range [...]string{"factor_percent", "target_percent", "side_imbalance_gmm", "planned_factor_percent"} {
		s.Null("balance." + name)
	}
	s.EmptyList("balance.remove")
}

// weighed says what goes up and down and what goes round, and whether each
// rod's ends agree with the whole.
func (s *crank) weighed() {
	before, after := &s.job.Before, &s.job.After
	s.Number("balance.reciprocating_g", after.RecG())
	s.Number("balance.rotating_g", after.RotG())
	if before.RecG() > 0 {
		s.Say("balance.weights", "Reciprocating %, rotating %.%", s.weight(before.RecG()), s.weight(before.RotG()), s.nothing())
		if s.changed() {
			s.Say("balance.new", "As it will run: reciprocating %, rotating %.", s.weight(after.RecG()), s.weight(after.RotG()))
		}
	}
	for i, row := range s.rows {
		if i > 0 {
			s.Say(row+"name", "Cylinder %", strconv.Itoa(i+1))
		}
		check := before.Cylinders[i].Rod.Compare(s.job.StepG)
		template := "Rod: the ends are % lighter than the whole, and the scale’s step allows %. An end was not held level, or something touched it."
		if check.Sum == balance.Agrees {
			template = "Rod: the ends come to the whole within %; the scale’s step allows %."
		}
		if check.Sum == balance.Agrees || check.Sum == balance.EndsLight {
			if check.Sum == balance.EndsLight && s.lightG < -check.OffG {
				s.lightG = -check.OffG
			}
			s.Say(row+"rod.check", template, bench.Grams(math.Abs(check.OffG), s.fineStep()), bench.Grams(check.AllowG, s.fineStep()))
		}
	}
}

// nothing says which of the small parts of the first cylinder weigh nothing.
func (s *crank) nothing() string {
	blankRings, blankClips := s.r.Blank(form.PartRings, "weight"), s.r.Blank(form.PartClips, "weight")
	switch {
	case blankRings && blankClips:
		return " Rings and clips are blank: taken as weighed with the piston."
	case blankRings:
		return " The rings are blank: taken as weighed with the piston."
	case blankClips:
		return " The clips are blank: taken as weighed with the piston."
	}
	return ""
}

func (s *crank) weight(g float64) string { return bench.Grams(g, s.job.StepG) }

// fineStep shows sums of readings finer than the scale does one.
func (s *crank) fineStep() float64 { return s.job.StepG / 10 }

// within writes a part as a percentage with its ±.
func (s *crank) within(f balance.Figure) string {
	if pm := bench.Plain(100*f.PM(), 0.1); pm != "0" {
		return bench.Fill("% ± %", bench.Plain(100*f.X, 0.1), bench.Percent(f.PM()))
	}
	return bench.Percent(f.X)
}

// standing says the factor and the side imbalance as found.
func (s *crank) standing(found balance.Standing) {
	side := found.SideGMM
	s.Number("balance.factor_percent", 100*found.Factor.X)
	s.Number("balance.factor_pm_percent", 100*found.Factor.PM())
	s.Number("balance.counter_g", found.CounterG.X)
	s.Number("balance.side_imbalance_gmm", math.Abs(side.X))
	s.Say("balance.headline", "Balance factor % as found.", s.within(found.Factor))
	s.Say("sheet.factor.found", "%", s.within(found.Factor))
	if math.Abs(side.X) > math.Max(side.PM(), 0.5) {
		s.Number("balance.side_hour", s.Hour(s.sideHour(side.X)))
		s.Say("balance.side", "To one side it is heavy at % by % ± % g·mm.", s.at(s.sideHour(side.X)), bench.Plain(math.Abs(side.X), 1), bench.Plain(side.PM(), 1))
	}
	if wheels, err := s.job.Wheels(); err == nil && len(wheels) == 2 {
		for _, w := range wheels {
			s.Say("balance.wheel."+s.whichWheel(w.What), "The % wheel alone: as for %, were both like it; it carries %.",
				s.whichWheel(w.What), s.within(w.Factor), s.weight(w.CounterG.X))
		}
	}
}

func (s *crank) sideHour(towards3 float64) float64 { return clock.Vec{N: towards3}.Hour() }

// at writes an hour seen from the left as the job numbers it.
func (s *crank) at(hour float64) string { return unit.FormatHour(s.Hour(hour), 5) }

// onFace says an hour as the outer face is marked of a wheel that the job sees from
// behind: drilled from there, it is another one.
func (s *crank) onFace(on [2]bool, hour float64, minutes int) string {
	away := 1 - s.Seen
	face := unit.FormatHour(clock.SeenFrom(away, hour), minutes)
	if !on[away] || face == unit.FormatHour(s.Hour(hour), minutes) {
		return ""
	}
	return bench.Fill(", on the % wheel’s own outer face at %", s.SideOf[away], face)
}

// toTakeOff says what comes off where, and how to prove it on the knife-edges.
func (s *crank) toTakeOff(h *shop, n *need, corrections []balance.Correction) {
	aim := corrections[0].Factor
	s.Number("balance.target_percent", 100*aim.X)
	most, plus := 0.0, 0.0
	for i, c := range corrections {
		at := "balance.remove/" + strconv.Itoa(i) + "/"
		s.Text(at+"from", s.whichWheel(c.What))
		s.Number(at+"moment_gmm", c.GMM.Len())
		s.Number(at+"pm_gmm", math.Hypot(c.PMGMM[0], c.PMGMM[1]))
		s.HourOrNull(at+"hour", c.GMM.Len() > 0, s.Hour(c.GMM.Hour()))
		most, plus = math.Max(most, c.GMM.Len()), plus+c.PMGMM[0]
	}
	template := "It then has %."
	if s.job.Keep && s.changed() {
		template = "That keeps % with the new parts."
	}
	if most <= s.tolerance() {
		s.Say("balance.do", "Leave it: that is as near as you asked.")
		template = "To have: %."
	} else {
		s.probe(h, n)
		s.Say("balance.do", "%", s.takeOff(h, n))
		if all := n.all(); all.Len() > s.tolerance() { // of unlike wheels, one may make up for the other
			s.Say("balance.moment", "In all % ± % g·mm at %.", bench.Plain(all.Len(), 1), bench.Plain(plus, 1), s.at(all.Hour()))
		}
		s.Say("balance.caution", "Holes near the crankpin’s boss or the rim weaken the wheel. Eye protection; the wheel clamped; the pin and bearing covered from swarf.")
	}
	s.Say("balance.then", template, bench.Percent(aim.X))
	s.proof(aim.X)
}

// proof says what leaves the crank, or each wheel that was weighed, indifferent at
// a factor.
func (s *crank) proof(factor float64) {
	var all []string
	for i, w := range s.job.Weighed {
		bob, what := s.job.After.BobG(w, factor), s.whichWheel(w.What)
		if i == 0 {
			s.Number("balance.bob_g", bob)
		}
		if w.What != balance.Whole {
			what += " wheel"
		}
		where := "hung " + hangs(w)
		if bob < 0 {
			where = "laid straight opposite the pin, as far out,"
		}
		all = append(all, bench.Fill("% % leaves the % indifferent", s.weight(math.Abs(bob)), where, what))
	}
	if len(all) > 0 {
		s.Say("balance.bob", "To prove it: %.", strings.Join(all, "; "))
	}
}

// takeOff is the order: so much off each wheel, there.
func (s *crank) takeOff(h *shop, n *need) string {
	words := func(u clock.Vec) string { return bench.Grams(u.Len()/h.middle(), 0.1) }
	out := bench.Plain(h.middle(), 1)
	if n.alike {
		u := n.half[clock.Left]
		return bench.Fill("Take % off each wheel at %, % mm out%.", words(u), s.at(u.Hour()), out, s.onFace(n.on, u.Hour(), 5))
	}
	var all []string
	for end, on := range n.on {
		switch u := n.half[end]; {
		case !on:
		case u.Len() <= s.tolerance()/2:
			all = append(all, bench.Fill("Leave the % wheel.", s.SideOf[end]))
		default:
			on := [2]bool{}
			on[end] = true
			all = append(all, bench.Fill("Take % off the % wheel at %, % mm out%.", words(u), s.SideOf[end], s.at(u.Hour()), out, s.onFace(on, u.Hour(), 5)))
		}
	}
	return strings.Join(all, " ")
}

// planned says where the holes of the job bring it.
func (s *crank) planned(h *shop, aim float64) {
	if len(h.holes) == 0 {
		s.Null("balance.planned_factor_percent")
		return
	}
	left, err := s.job.Left(s.removed(h))
	if err != nil {
		return
	}
	s.Number("balance.planned_factor_percent", 100*left.Factor.X)
	s.Number("balance.planned_side_gmm", math.Round(1000*math.Abs(left.SideGMM.X))/1000)
	side, heavy := "no side imbalance left", math.Abs(left.SideGMM.X) >= 0.5
	s.HourOrNull("balance.planned_side_hour", heavy, s.Hour(s.sideHour(left.SideGMM.X)))
	if heavy {
		side = bench.Fill("% g·mm heavy at % left", bench.Plain(math.Abs(left.SideGMM.X), 1), s.at(s.sideHour(left.SideGMM.X)))
	}
	s.Say("balance.planned", "With the holes drawn: %, %.", bench.Percent(left.Factor.X), side)
	s.Say("sheet.factor.left", "% with the holes drawn", bench.Percent(left.Factor.X))
	if off := math.Abs(left.Factor.X - aim); off > s.offBy+1e-3 || math.Abs(left.SideGMM.X) > s.tolerance()+0.5 {
		s.Say("balance.stale", "The holes drawn don’t make what is aimed at, %: plan them again.", bench.Percent(aim))
	}
	rock := h.plan(clock.Left, clock.Vec{}).MomentGMM.Sub(h.plan(clock.Right, clock.Vec{}).MomentGMM)
	if len(s.job.Weighed) < 2 && rock.Len() > s.tolerance() {
		s.Say("balance.rock", "One wheel loses % g·mm more than the other: that rocks the crank from end to end.", bench.Plain(rock.Len(), 1))
	}
}

// afterwards sets what was weighed after drilling beside the plan.
func (s *crank) afterwards(h *shop, n *need) {
	readings := 1 + index(s.r.Word(form.AfterWay), "swarf", "wheel")
	for end, side := range s.SideOf {
		off, ok := s.r.Number(form.After, side)
		if !ok {
			continue
		}
		p := h.plan(clock.End(end), n.half[end])
		if len(p.Holes) == 0 {
			s.r.Complain(bench.Fill("no hole is planned in the % wheel", side), form.After, side)
			continue
		}
		after, err := p.After(off, s.job.StepG, readings)
		if err != nil {
			s.r.Complain(bench.Fill("the plan takes off %: this is more than twice that", bench.Grams(p.MassG, 0.1)), form.After, side)
			continue
		}
		template := "% wheel: % off the plan, more than the scale’s step makes of it (%). Still to come off: % g·mm at %."
		if after.Agrees {
			template = "% wheel: as planned, within %; the scale can’t tell better than %."
		}
		s.Say("after."+side, template, side, bench.Grams(math.Abs(after.OffG), s.fineStep()), bench.Grams(after.PMG, s.fineStep()),
			bench.Plain(after.LeftGMM.Len(), 1), s.at(after.LeftGMM.Hour()))
	}
}

// residual sets what ISO 21940-11 permits beside what the knife-edges show.
func (s *crank) residual() {
	grade := s.r.Default(form.BalanceGrade)
	mass, ok := s.r.Number(form.BalanceWhole)
	rolls, tried := s.r.Number(form.BalanceRolls)
	at := s.r.Or(s.rim, form.BalanceRollsAt)
	if !ok {
		return
	}
	rpm := 0.0
	for _, v := range s.rpm {
		rpm = math.Max(rpm, v)
	}
	shows, err := balance.RollsGMM(rolls, at)
	if err != nil {
		return
	}
	res, err := balance.CompareResidual(grade, rpm, mass/1000, shows)
	if err != nil {
		return
	}
	s.Number("balance.permits_gmm", res.PermitsGMM)
	s.Say("balance.permits", "G % at % rpm permits % g·mm for this crank, the part that goes up and down aside.",
		bench.Plain(grade, 0.1), bench.Plain(rpm, 1), bench.Plain(res.PermitsGMM, 1))
	if !tried {
		return
	}
	s.Number("balance.shows_gmm", shows)
	template := "The knife-edges show % g·mm at best, as for G %: not fine enough to prove it."
	if res.Enough {
		template = "The knife-edges show % g·mm, as for G %: fine enough."
	}
	s.Say("balance.shows", template, bench.Plain(shows, 1), bench.Plain(res.Grade, 0.1))
}
