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
	throws, looked := readThrows(a, r)
	holes := 0
	var onSheet []string
	for n, s := range throws {
		r.Pin = s.pin
		h := s.readShop()
		need := s.answer(h, holes)
		if holes += len(h.holes); n == looked {
			s.wheels(h, &need)
			a.Entries = append(a.Entries, s.Entries...)
		}
		line := strings.Join(s.told, " ")
		if s.several() {
			line = atPin(pinName(n), line)
		}
		onSheet = append(onSheet, line)
	}
	a.Say("sheet.balance", strings.Join(onSheet, "\n"))
	together(a, throws, looked)
}

// answer answers for one throw, after so many holes of those before it.
func (s *crank) answer(h *shop, holesBefore int) (n need) {
	s.unfinished()
	s.weighed()
	s.folds(h)
	s.solve()
	s.holeWords(h, holesBefore)
	if !s.solved {
		s.unbalanced()
		s.rodDoubt("")
		return n
	}
	s.rodDoubt(halfAtSmallEnd(bench.Percent((s.lightG / 2) * (1 - s.stands.Factor.X) / s.job.Before.RecG())))
	s.standing()
	if s.several() {
		s.told[0] = s.carries()
	}
	if s.unweighed() {
		return n
	}
	to := s.remove[0].Factor.X
	n = s.needs()
	s.toTakeOff(h, &n)
	s.planned(h, to)
	s.residual()
	if !s.several() {
		s.afterwards(h, &n)
		s.shaking(s.stands.Factor.X, to)
	}
	return n
}

// tell says what the sheet tells of each throw too.
func (s *crank) tell(name, words string) {
	s.Say("balance."+name, words)
	s.told = append(s.told, words)
}

// unbalanced fills in what can't be said yet.
func (s *crank) unbalanced() {
	s.tell("headline", s.ask)
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
		s.Say("balance.weights", whatGoes(s.weight(before.RecG()), s.weight(before.RotG()), s.nothing()))
		if s.changed() {
			words := asItWillRun
			if s.several() {
				words = asTheyWillRun
			}
			s.Say("balance.new", words(s.weight(after.RecG()), s.weight(after.RotG())))
		}
	}
	for i, row := range s.rows {
		if i > 0 {
			s.Say(row+"name", cylinderName(strconv.Itoa(i+1)))
		}
		rod := before.Cylinders[i].Rod
		check := rod.Compare(s.job.StepG)
		words := rodLight
		switch check.Sum {
		case balance.NotCompared:
			continue
		case balance.EndsHeavy:
			s.complain(&balance.Fault{Field: balance.RodEnds, Item: i, Got: rod.SmallG + rod.BigG})
			continue
		case balance.Agrees:
			words = rodAgrees
		case balance.EndsLight:
			s.lightG = math.Max(s.lightG, -check.OffG)
		}
		s.Say(row+"rod.check", words(bench.Grams(math.Abs(check.OffG), s.fineStep()), bench.Grams(check.AllowG, s.fineStep())))
	}
}

// rodDoubt says above that a rod's ends don't make its whole, with what that may do to a
// factor that is found.
func (s *crank) rodDoubt(moves string) {
	if s.lightG > 0 {
		s.Say("balance.rod", rodDoubted(bench.Grams(s.lightG, s.fineStep()), moves))
	}
}

// nothing says which of the small parts of the first cylinder weigh nothing.
func (s *crank) nothing() string {
	blankRings, blankClips := s.r.Blank(form.PartRings, "weight"), s.r.Blank(form.PartClips, "weight")
	switch {
	case blankRings && blankClips:
		return ringsAndClipsBlank
	case blankRings:
		return ringsBlank
	case blankClips:
		return clipsBlank
	}
	return ""
}

func (s *crank) weight(g float64) string { return bench.Grams(g, s.job.StepG) }

// fineStep shows sums of readings finer than the scale does one.
func (s *crank) fineStep() float64 { return s.job.StepG / 10 }

// within writes a part as a percentage with its ±.
func (s *crank) within(f balance.Figure) string {
	if pm := bench.Plain(100*f.PM(), 0.1); pm != "0" {
		return bench.PlusMinus(bench.Plain(100*f.X, 0.1), bench.Percent(f.PM()))
	}
	return bench.Percent(f.X)
}

// rests says of a factor of the crank, as written, what it rests on where the crank wasn't weighed.
func (s *crank) rests(factor string) string {
	switch end, one := s.oneWheel(); {
	case s.job.HasStated:
		return notWeighed(factor)
	case one:
		return byOneWheel(factor, s.SideOf[end])
	}
	return factor
}

// oneWheel is the wheel that was weighed alone and is taken for both.
func (s *crank) oneWheel() (end clock.End, one bool) {
	if len(s.job.Weighed) != 1 || s.job.Weighed[0].What == balance.Whole {
		return 0, false
	}
	return clock.End(s.job.Weighed[0].What - balance.LeftWheel), true
}

// standing says the factor and the side imbalance as found.
func (s *crank) standing() {
	found := s.stands
	side := found.SideGMM
	s.Number("balance.factor_percent", 100*found.Factor.X)
	s.Number("balance.factor_pm_percent", 100*found.Factor.PM())
	s.Number("balance.counter_g", found.CounterG.X)
	s.Number("balance.side_imbalance_gmm", math.Abs(side.X))
	words, factor := asFound, s.rests(s.within(found.Factor))
	if came, drilled := s.r.Number(form.KnifeCame); drilled {
		words = asItStands
		s.sheetFactor("found", bench.Percent(came/100))
		s.sheetFactor("left", s.leftWith(factor))
	} else {
		s.sheetFactor("found", factor)
	}
	s.tell("headline", words(factor))
	if s.isHeavyToOneSide() {
		s.Number("balance.side_hour", s.Hour(s.sideHour(side.X)))
		s.tell("side", heavyToSide(s.at(s.sideHour(side.X)), bench.Plain(math.Abs(side.X), 1), bench.Plain(side.PM(), 1)))
	}
	if wheels, err := s.job.Wheels(); err == nil && len(wheels) == 2 {
		for _, w := range wheels {
			s.Say("balance.wheel."+s.whichWheel(w.What),
				wheelAlone(s.whichWheel(w.What), s.within(w.Factor), s.weight(w.CounterG.X)))
		}
	}
}

// leftWith is the factor that it leaves with as it stands, which new parts make another one.
func (s *crank) leftWith(factor string) string {
	if left, err := s.job.Left(clock.Vec{}); err == nil && s.changed() {
		return factorNew(s.rests(s.within(left.Factor)))
	}
	return factor
}

// isHeavyToOneSide tells whether it is as found, beyond what the scale makes of it.
func (s *crank) isHeavyToOneSide() bool {
	side := s.stands.SideGMM
	return math.Abs(side.X) > math.Max(side.PM(), 0.5)
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
	return onOuterFace(s.SideOf[away], face)
}

// toTakeOff says what comes off where, and how to prove it on the knife-edges.
func (s *crank) toTakeOff(h *shop, n *need) {
	aim := s.remove[0].Factor
	s.Number("balance.target_percent", 100*aim.X)
	all, plus := n.all(), 0.0
	for i, c := range s.remove {
		at := "balance.remove/" + strconv.Itoa(i) + "/"
		s.Text(at+"from", s.whichWheel(c.What))
		s.Number(at+"moment_gmm", c.GMM.Len())
		s.Number(at+"pm_gmm", math.Hypot(c.PMGMM[0], c.PMGMM[1]))
		s.HourOrNull(at+"hour", c.GMM.Len() > 0, s.Hour(c.GMM.Hour()))
		plus += math.Hypot(c.PMGMM[0]*all.T, c.PMGMM[1]*all.N) / all.Len() // along all of it
	}
	then := thenHas
	if s.job.Keep && s.changed() {
		then = thatKeeps
	}
	do := nearAsAsked
	if s.isNear() {
		then = toHave
	} else {
		s.probe(h, n)
		do = s.takeOff(h, n)
		if all.Len() > s.tolerance() { // of unlike wheels, one may make up for the other
			s.Say("balance.moment", inAll(bench.Plain(all.Len(), 1), bench.Plain(plus, 1), s.at(all.Hour())))
		}
		s.Say("balance.caution", holesWeaken)
	}
	if end, one := s.oneWheel(); one {
		do += otherAlike(s.SideOf[1-end])
	}
	s.tell("do", do)
	s.tell("then", then(bench.Percent(aim.X)))
	s.proof(aim.X)
}

// isNear tells whether it is as near as asked: no wheel has more to come off than may be left.
func (s *crank) isNear() bool {
	for _, c := range s.remove {
		if c.GMM.Len() > s.tolerance() {
			return false
		}
	}
	return true
}

// proof says what leaves the crank, or each wheel that was weighed, indifferent at
// a factor.
func (s *crank) proof(factor float64) {
	var all []string
	for i, w := range s.job.Weighed {
		bob, what := s.job.After.BobG(w, factor)*s.weighedAtOnce(), s.whichWheel(w.What)
		if i == 0 {
			s.Number("balance.bob_g", bob)
		}
		if w.What != balance.Whole {
			what = theWheel(what)
		}
		if bob < 0 {
			all = append(all, laidOpposite(s.weight(-bob), what))
		} else {
			all = append(all, hung(s.weight(bob), w, what))
		}
	}
	if len(all) > 0 {
		s.Say("balance.bob", toProve(all))
	}
}

// takeOff is the order: so much off each wheel, there.
func (s *crank) takeOff(h *shop, n *need) string {
	weight := func(u clock.Vec) string { return bench.Grams(u.Len()/h.middle(), 0.1) }
	out := bench.Plain(h.middle(), 1)
	if n.alike {
		u := n.half[clock.Left]
		return takeOffEach(weight(u), s.at(u.Hour()), out, s.onFace(n.on, u.Hour(), 5))
	}
	var all []string
	for end, on := range n.on {
		switch u := n.half[end]; {
		case !on:
		case u.Len() <= s.tolerance()/2:
			all = append(all, leaveWheel(s.SideOf[end]))
		default:
			on := [2]bool{}
			on[end] = true
			all = append(all, takeOffWheel(weight(u), s.SideOf[end], s.at(u.Hour()), out, s.onFace(on, u.Hour(), 5)))
		}
	}
	return orders(all)
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
	side, heavy := noSideLeft, math.Abs(left.SideGMM.X) >= 0.5
	s.HourOrNull("balance.planned_side_hour", heavy, s.Hour(s.sideHour(left.SideGMM.X)))
	if heavy {
		side = sideLeft(bench.Plain(math.Abs(left.SideGMM.X), 1), s.at(s.sideHour(left.SideGMM.X)))
	}
	s.tell("planned", withTheHoles(bench.Percent(left.Factor.X), side))
	s.sheetFactor("left", factorDrawn(s.rests(bench.Percent(left.Factor.X))))
	if !s.several() {
		s.Say("balance.after", "yes")
	}
	if words := s.lackingCut(); words != "" {
		s.Say("balance.stale", words)
	} else if off := math.Abs(left.Factor.X - aim); off > s.offBy+1e-3 || math.Abs(left.SideGMM.X) > s.tolerance()+0.5 {
		s.Say("balance.stale", planAgain(bench.Percent(aim)))
	}
	rock := h.plan(clock.Left, clock.Vec{}).MomentGMM.Sub(h.plan(clock.Right, clock.Vec{}).MomentGMM)
	if len(s.job.Weighed) < 2 && rock.Len() > s.tolerance() {
		s.Say("balance.rock", rocks(bench.Plain(rock.Len(), 1)))
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
			s.r.Complain(noHoleThere(side), form.After, side)
			continue
		}
		after, err := p.After(off, s.job.StepG, readings)
		if err != nil {
			s.r.Complain(muchMoreOff(bench.AsTyped(s.r, 0.1, form.After, side)(p.MassG)), form.After, side)
			continue
		}
		differs, plus := bench.Grams(math.Abs(after.OffG), s.fineStep()), bench.Grams(after.PMG, s.fineStep())
		words := asPlanned(side, differs, plus)
		if !after.Agrees {
			words = offThePlan(side, differs, plus, bench.Plain(after.LeftGMM.Len(), 1), s.at(after.LeftGMM.Hour()))
		}
		s.Say("after."+side, words)
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
	s.Say("balance.permits", gradePermits(bench.Plain(grade, 0.1), bench.Plain(rpm, 1), bench.Plain(res.PermitsGMM, 1)))
	if !tried {
		return
	}
	s.Number("balance.shows_gmm", shows)
	words := edgesCoarse
	if res.Enough {
		words = edgesFine
	}
	s.Say("balance.shows", words(bench.Plain(shows, 1), bench.Plain(res.Grade, 0.1)))
}
