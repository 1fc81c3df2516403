package sheet

import (
	"math"
	"strconv"
	"strings"

	"pintwelve/core/balance"
	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// balancing answers the step "Balance": weights in, factor and drilling plan
// out.
func balancing(a *Answers, r *form.Reader) {
	s := readStand(r)
	h := s.readShop()
	a.weighed(s)
	found, corrections, ok := s.solve()
	if !ok {
		a.unbalanced(s)
		a.holeWords(s, h)
		a.wheels(s, h, &need{})
		return
	}
	n := s.needs(corrections)
	a.standing(s, found)
	a.toTakeOff(s, h, &n, corrections)
	a.holeWords(s, h)
	a.planned(s, h)
	a.afterwards(s, h, &n)
	a.shaking(s, found.Factor.X, corrections[0].Factor.X)
	a.residual(s)
	a.wheels(s, h, &n)
}

// solve finds where the crank stands and what must come off.
func (s *stand) solve() (found balance.Standing, corrections []balance.Correction, ok bool) {
	if s.lack != "" {
		return found, nil, false
	}
	found, err := s.job.Standing()
	if err == nil {
		corrections, err = s.job.Correct()
	}
	if err != nil {
		s.complain(err)
		s.ask = mendIt
		return found, nil, false
	}
	return found, corrections, true
}

// unbalanced fills in what can't be said yet.
func (a *Answers) unbalanced(s *stand) {
	a.say("balance.headline", "%", s.ask)
	for _, name := range [...]string{"factor_percent", "target_percent", "side_imbalance_gmm", "planned_factor_percent"} {
		a.null("balance." + name)
	}
	a.emptyList("balance.remove")
}

// weighed says what goes up and down and what goes round, and whether each
// rod's ends agree with the whole.
func (a *Answers) weighed(s *stand) {
	before, after := &s.job.Before, &s.job.After
	a.number("balance.reciprocating_g", after.RecG())
	a.number("balance.rotating_g", after.RotG())
	if before.RecG() > 0 {
		a.say("balance.weights", "Reciprocating %, rotating %.", s.weight(before.RecG()), s.weight(before.RotG()))
		if s.changed() {
			a.say("balance.new", "As it will run: reciprocating %, rotating %.", s.weight(after.RecG()), s.weight(after.RotG()))
		}
	}
	for i, row := range s.rows {
		if i > 0 {
			a.say(row+"name", "Cylinder %", strconv.Itoa(i+1))
		}
		check := before.Cylinders[i].Rod.Compare(s.job.StepG)
		template := "Rod: the ends are % lighter than the whole, and the scale’s step allows %. An end was not held level, or something touched it."
		if check.Sum == balance.Agrees {
			template = "Rod: the ends come to the whole within %; the scale’s step allows %."
		}
		if check.Sum == balance.Agrees || check.Sum == balance.EndsLight {
			a.say(row+"rod.check", template, grams(abs(check.OffG), s.fineStep()), grams(check.AllowG, s.fineStep()))
		}
	}
}

func (s *stand) weight(g float64) string { return grams(g, s.job.StepG) }

// fineStep shows sums of readings finer than the scale does one.
func (s *stand) fineStep() float64 { return s.job.StepG / 10 }

// within writes a part as a percentage with its ±.
func (s *stand) within(f balance.Figure) string {
	if pm := plain(100*f.PM(), 0.1); pm != "0" {
		return fill("% ± %", plain(100*f.X, 0.1), percent(f.PM()))
	}
	return percent(f.X)
}

// standing says the factor and the side imbalance as found.
func (a *Answers) standing(s *stand, found balance.Standing) {
	side := found.SideGMM
	a.number("balance.factor_percent", 100*found.Factor.X)
	a.number("balance.factor_pm_percent", 100*found.Factor.PM())
	a.number("balance.counter_g", found.CounterG.X)
	a.number("balance.side_imbalance_gmm", abs(side.X))
	a.say("balance.headline", "Balance factor % as found.", s.within(found.Factor))
	if abs(side.X) > math.Max(side.PM(), 0.5) {
		a.number("balance.side_hour", s.hour(s.sideHour(side.X)))
		a.say("balance.side", "To one side it is heavy at % by % ± % g·mm.", s.at(s.sideHour(side.X)), plain(abs(side.X), 1), plain(side.PM(), 1))
	}
	if wheels, err := s.job.Wheels(); err == nil && len(wheels) == 2 {
		for _, w := range wheels {
			a.say("balance.wheel."+s.whichWheel(w.What), "The % wheel alone: as for %, were both like it; it carries %.",
				s.whichWheel(w.What), s.within(w.Factor), s.weight(w.CounterG.X))
		}
	}
}

func (s *stand) sideHour(towards3 float64) float64 { return clock.Vec{N: towards3}.Hour() }

// at writes an hour seen from the left as the job numbers it.
func (s *stand) at(hour float64) string { return unit.FormatHour(s.hour(hour), 5) }

// toTakeOff says what comes off where, and how to prove it on the knife-edges.
func (a *Answers) toTakeOff(s *stand, h *shop, n *need, corrections []balance.Correction) {
	aim := corrections[0].Factor
	a.number("balance.target_percent", 100*aim.X)
	most, plus := 0.0, 0.0
	for i, c := range corrections {
		at := "balance.remove/" + strconv.Itoa(i) + "/"
		a.text(at+"from", s.whichWheel(c.What))
		a.number(at+"moment_gmm", c.GMM.Len())
		a.number(at+"pm_gmm", math.Hypot(c.PMGMM[0], c.PMGMM[1]))
		a.hourOrNull(at+"hour", c.GMM.Len() > 0, s.hour(c.GMM.Hour()))
		most, plus = math.Max(most, c.GMM.Len()), plus+c.PMGMM[0]
	}
	template := "It then has %."
	if s.job.Keep && s.changed() {
		template = "That keeps % with the new parts."
	}
	if most <= s.tolerance() {
		a.say("balance.do", "Leave it: that is as near as you asked.")
		template = "To have: %."
	} else {
		s.probe(h, n)
		a.say("balance.do", "%", s.takeOff(h, n))
		if all := n.all(); all.Len() > s.tolerance() { // of unlike wheels, one may make up for the other
			a.say("balance.moment", "In all % ± % g·mm at %.", plain(all.Len(), 1), plain(plus, 1), s.at(all.Hour()))
		}
		a.say("balance.caution", "Holes near the crankpin’s boss or the rim weaken the wheel. Eye protection; the wheel clamped; the pin and bearing covered from swarf.")
	}
	a.say("balance.then", template, percent(aim.X))
	a.proof(s, aim.X)
}

// proof says what leaves the crank, or each wheel that was weighed, indifferent at
// a factor.
func (a *Answers) proof(s *stand, factor float64) {
	var all []string
	for i, w := range s.job.Weighed {
		bob, what := s.job.After.BobG(w, factor), s.whichWheel(w.What)
		if i == 0 {
			a.number("balance.bob_g", bob)
		}
		if w.What != balance.Whole {
			what += " wheel"
		}
		where := "hung " + hangs(w)
		if bob < 0 {
			where = "laid straight opposite the pin, as far out,"
		}
		all = append(all, fill("% % leaves the % indifferent", s.weight(abs(bob)), where, what))
	}
	if len(all) > 0 {
		a.say("balance.bob", "To prove it: %.", strings.Join(all, "; "))
	}
}

// takeOff is the order: so much off each wheel, there.
func (s *stand) takeOff(h *shop, n *need) string {
	words := func(u clock.Vec) string { return grams(u.Len()/h.middle(), 0.1) }
	out := plain(h.middle(), 1)
	if n.alike {
		u := n.half[clock.Left]
		return fill("Take % off each wheel at %, % mm out.", words(u), s.at(u.Hour()), out)
	}
	var all []string
	for end, on := range n.on {
		switch u := n.half[end]; {
		case !on:
		case u.Len() <= s.tolerance()/2:
			all = append(all, fill("Leave the % wheel.", s.sideOf[end]))
		default:
			all = append(all, fill("Take % off the % wheel at %, % mm out.", words(u), s.sideOf[end], s.at(u.Hour()), out))
		}
	}
	return strings.Join(all, " ")
}

// planned says where the holes of the job bring it.
func (a *Answers) planned(s *stand, h *shop) {
	if len(h.holes) == 0 {
		a.null("balance.planned_factor_percent")
		return
	}
	left, err := s.job.Left(s.removed(h))
	if err != nil {
		return
	}
	a.number("balance.planned_factor_percent", 100*left.Factor.X)
	a.number("balance.planned_side_gmm", math.Round(1000*abs(left.SideGMM.X))/1000)
	side, heavy := "no side imbalance left", abs(left.SideGMM.X) >= 0.5
	a.hourOrNull("balance.planned_side_hour", heavy, s.hour(s.sideHour(left.SideGMM.X)))
	if heavy {
		side = fill("% g·mm heavy at % left", plain(abs(left.SideGMM.X), 1), s.at(s.sideHour(left.SideGMM.X)))
	}
	a.say("balance.planned", "With the holes drawn: %, %.", percent(left.Factor.X), side)
	rock := h.plan(clock.Left, clock.Vec{}).MomentGMM.Sub(h.plan(clock.Right, clock.Vec{}).MomentGMM)
	if len(s.job.Weighed) < 2 && rock.Len() > s.tolerance() {
		a.say("balance.rock", "One wheel loses % g·mm more than the other: that rocks the crank from end to end.", plain(rock.Len(), 1))
	}
}

// afterwards sets what was weighed after drilling beside the plan.
func (a *Answers) afterwards(s *stand, h *shop, n *need) {
	readings := 1 + index(s.r.Word("after.way"), "swarf", "wheel")
	for end, side := range s.sideOf {
		name := "after." + side
		off, ok := s.r.Number(name)
		if !ok {
			continue
		}
		p := h.plan(clock.End(end), n.half[end])
		if len(p.Holes) == 0 {
			s.r.Complain(name, fill("no hole is planned in the % wheel", side))
			continue
		}
		after, err := p.After(off, s.job.StepG, readings)
		if err != nil {
			s.r.Complain(name, fill("the plan takes off %: this is more than twice that", grams(p.MassG, 0.1)))
			continue
		}
		template := "% wheel: % off the plan, more than the scale’s step makes of it (%). Still to come off: % g·mm at %."
		if after.Agrees {
			template = "% wheel: as planned, within %; the scale can’t tell better than %."
		}
		a.say("after."+side, template, side, grams(abs(after.OffG), s.fineStep()), grams(after.PMG, s.fineStep()),
			plain(after.LeftGMM.Len(), 1), s.at(after.LeftGMM.Hour()))
	}
}

// residual sets what ISO 21940-11 permits beside what the knife-edges show.
func (a *Answers) residual(s *stand) {
	grade := s.r.Default("balance.grade")
	mass, ok := s.r.Number("balance.whole")
	rolls, tried := s.r.Number("balance.rolls")
	at := s.r.Or("balance.rollsat", s.rim)
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
	a.number("balance.permits_gmm", res.PermitsGMM)
	a.say("balance.permits", "G % at % rpm permits % g·mm for this crank, the part that goes up and down aside.",
		plain(grade, 0.1), plain(rpm, 1), plain(res.PermitsGMM, 1))
	if !tried {
		return
	}
	a.number("balance.shows_gmm", shows)
	template := "The knife-edges show % g·mm at best, as for G %: not fine enough to prove it."
	if res.Enough {
		template = "The knife-edges show % g·mm, as for G %: fine enough."
	}
	a.say("balance.shows", template, plain(shows, 1), plain(res.Grade, 0.1))
}
