package truing

import (
	"strconv"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// words says the verdict, what to do, and what the needles should then do.
func (a answers) words(p *pass) {
	since, asked := p.asksSince()
	far := standingWords[p.standing()].far
	switch {
	case p.pressed:
		a.Say("truing.headline", itWasPressure)
		a.Say("truing.then", pressureShows)
		far = farReadAgain
	case asked:
		a.askSince(p, since)
		far = farWhatDone
	case p.several():
		far = a.throwsWords(p, far)
	case p.next.Why == crank.Stop:
		a.stopWords(p)
		far = farStop
	case p.next.Why == crank.Work:
		a.workWords(p)
		far = p.farWork(&p.moves[0].Move)
	default:
		a.leaveWords(p)
	}
	if _, asked := p.asks(crank.AskCentres); asked && p.next.Why != crank.Stop {
		a.Say("ask.centres", "yes")
		a.Text("ask.centres", p.name(form.Centres.Name()))
	}
	if p.pin > 0 {
		far = farAtPin(far, strconv.Itoa(p.pin))
	}
	a.Say("lathe.do", far)
}

// leaveWords say why nothing is to be done now.
func (a answers) leaveWords(p *pass) {
	switch verdict := p.advice.Verdict; {
	case verdict == crank.Fit:
		a.Say("truing.headline", a.leaveIt(p, trueLeaveIt, isTrue))
		a.Say("truing.then", worstRunOut(p.runOutWords()))
	case verdict == crank.FitAsHung:
		a.Say("truing.headline", a.leaveIt(p, trueAsHung, isTrueAsHung))
		a.Say("truing.then", worstAsHung(p.runOutWords(), p.whyAsHung()))
	case verdict == crank.NotMendable || p.next.Why == crank.Unmendable:
		headline := bumpingCantMend
		if _, again := p.asks(crank.AskReadAgain); again || verdict != crank.NotMendable {
			headline = noFurtherAsRead // a needle may be misread, or the floor isn't clear of its doubt
		}
		a.Say("truing.headline", headline(p.leftWords()))
		a.Say("truing.then", p.unmendable(throwMismatch))
		a.Say("truing.long", "yes") // the clock face makes room for it
	case verdict == crank.TooClose:
		as := readsOutside
		if p.advice.Plain == crank.Fit {
			as = readsInside
		}
		a.Say("truing.headline", tooClose(p.standsWords()))
		a.Say("truing.then", as(p.tellers()))
	default:
		a.Say("truing.headline", cantTellWhich)
		a.Say("truing.then", whatWouldTell(p.tellers()))
	}
}

// whyAsHung says why a crank is true no further than as it hangs.
func (p *pass) whyAsHung() string {
	if _, asked := p.asks(crank.AskCentres); !asked {
		return centresUnproved
	}
	return oneDialCantSee
}

// workWords say what to do, and what the needles should then do.
func (a answers) workWords(p *pass) {
	if p.leverAssumed {
		a.directionWords(p)
		return
	}
	m := p.moves[0]
	a.Say("truing.headline", doAndWatch(p.do(m.Move, m.Aim), p.watchWords(m)))
	if len(p.moves) > 1 {
		next := p.moves[1]
		a.Say("truing.then", thenAndWatch(p.doNext(next.Move, next.Aim), p.watchWords(next)))
	} else if stays := m.Aim * m.Other.Amount / m.Amount; m.Kind == crank.Strike || stays >= p.StepMM {
		// On the pin's side the same bend may hardly open the wheels: less than a division nobody can gauge.
		a.Say("truing.then", orDo(p.doNext(m.Other, stays)))
	}
	a.Say("truing.hard", p.howHard())
	a.Say("truing.caution", caution)
}

// farWork says a move to be read from two metres.
func (p *pass) farWork(m *crank.Move) string {
	if m.Kind == crank.Strike {
		return farStrike(p.SideOf[m.Wheel], p.at(m.Hour))
	}
	return farClose(m.Kind, p.at(m.Hour))
}

// elseWords say what else holds where the verdict and the advice differ: of a
// crank not begun on what working on it would be, of one begun on what is in doubt. Where
// readings don't fit one another but for slips, or what else was measured, that comes first.
func (a answers) elseWords(p *pass, checksDiffer bool, slips string) {
	switch works := p.next.Why == crank.Work; {
	case p.pressed || p.next.Why == crank.Stop:
	case works && checksDiffer:
		a.Say("truing.else", checksSayOtherwise)
	case works && slips != "":
		a.Say("truing.else", slipFirst(slips))
	case !works && len(p.moves) > 0 && p.leverAssumed:
		a.Say("truing.else", ifWorkedUnmeasured(lowerFirst(p.way(p.moves[0].Move))))
		a.Say("truing.else.caution", caution)
	case !works && len(p.moves) > 0:
		a.Say("truing.else", ifWorkedOn(lowerFirst(p.do(p.moves[0].Move, p.moves[0].Aim)), p.howHard()))
		a.Say("truing.else.caution", caution)
	case works && p.advice.Verdict == crank.TooClose:
		a.Say("truing.else", elseTooClose(p.standsWords(), p.tellers()))
	case works && p.advice.Verdict == crank.NotMendable:
		a.Say("truing.else", onlyBack(p.leftWords()))
	}
}

// standsWords say what stands nearest to its limit or beyond: run-out, or where
// that is inside for sure, the lean of a journal.
func (p *pass) standsWords() string {
	half, inside := p.leans()
	if !inside {
		return p.runOutWords()
	}
	return journalLeans(p.SideOf[half], p.besideTilt(p.advice.Tilt[half]), p.tiltLimit())
}

// leans tells whether the run-out is inside for sure and a journal's lean is not,
// and which leans more.
func (p *pass) leans() (half clock.End, governs bool) {
	tilt := &p.advice.Tilt
	if tilt[clock.Right].Value > tilt[clock.Left].Value {
		half = clock.Right
	}
	worst := p.advice.Worst
	return half, worst.Value+worst.HalfWidth95 <= p.allowed.RunOut && tilt[half].Value+tilt[half].HalfWidth95 > p.allowed.Tilt
}

// leansOnly tells whether a crank is out of true, its run-out being inside for sure.
func (p *pass) leansOnly() bool {
	switch p.advice.Verdict {
	case crank.Fit, crank.FitAsHung, crank.TooClose:
		return false
	}
	if p.several() {
		return p.needlesInside()
	}
	_, leans := p.leans()
	return leans
}

// leftWords say what no bumping passes: run-out, or where that would be inside,
// the lean that a throw mismatch gives both journals alike.
func (p *pass) leftWords() string {
	floor, doubt := p.advice.Floor, 0.0
	if p.advice.Verdict == crank.NotMendable {
		doubt = floor.HalfWidth95
	}
	if floor.Value-doubt > p.allowed.RunOut {
		return stillLeft(p.besideRunOut(floor), p.limit())
	}
	axes := p.pose.Running(clock.Vec{T: p.pose.D.T}, clock.Vec{})
	return stillLeans(p.besideTilt(crank.Figure{Value: axes.Tilt(clock.Left)}), p.tiltLimit())
}

// tiltVerdict says so where it is a journal's lean that counts against a crank
// whose dials are inside.
func (a answers) tiltVerdict(p *pass) {
	for half, tilt := range p.advice.Tilt {
		if tilt.Value > p.allowed.Tilt && p.advice.Worst.Value <= p.allowed.RunOut {
			a.Say("truing.lean", insideButLeans(p.SideOf[half], p.besideTilt(crank.Figure{Value: tilt.Value}), p.tiltLimit()))
			return
		}
	}
}

// tellers says what would make the dial that weighs most surer.
func (p *pass) tellers() string {
	if p.hangsOn != nil {
		return ownDistances
	}
	weak := p.used[p.advice.Weak]
	better := p.reading[weak].Better
	var ways []string
	add := func(helps bool, way string) {
		if helps {
			ways = append(ways, way)
		}
	}
	add(better.HalfWay, halfWayHours)
	add(better.MorePoints, morePoints)
	add(better.FinerDial, finerDial)
	add(p.advice.SecondStation, secondPlace)
	if len(ways) == 0 {
		return onceMore
	}
	return dialWays(p.dialName(weak), oneOf(ways))
}

// do is what to do, and of a squeeze or spread how much of it [mm] must stay when
// the clamp or wedge is out: "Squeeze the wheels at 6 until 2 thou stays".
func (p *pass) do(m crank.Move, stays float64) string {
	if m.Kind == crank.Strike || p.leverAssumed {
		return p.way(m)
	}
	return untilStays(p.way(m), p.Amount(stays))
}

// doMove is do of an advised move, at its pin where there are several.
func (p *pass) doMove(m *move) string {
	if p.several() {
		return p.jointDo(m)
	}
	return p.do(m.Move, m.Aim)
}

// doNext is the same after another move, so that it fits one line.
func (p *pass) doNext(m crank.Move, stays float64) string {
	if m.Kind == crank.Strike || p.leverAssumed {
		return lowerFirst(p.do(m, stays))
	}
	return closeUntil(m.Kind, p.at(m.Hour), p.Amount(stays))
}

// watchWords say which needle to watch, and what it should come to.
func (p *pass) watchWords(m move) string {
	return needleTo(p.dialName(p.used[m.watch]), p.Amount(m.then[m.watch]))
}

// foldedLines say in a line each what holds of the set-up and of the distances.
func (a answers) foldedLines(s *setUp, r *form.Reader) {
	a.Say("setup.line", setUpLine(mountWords[s.crank.Mount], unit.Format(s.StepMM, s.Unit, 0)))
	for _, standIn := range r.StandIns {
		if isDistance(standIn.Name) {
			a.Say("distances.line", assumedLine)
			a.Say("truing.assumed", distancesAssumedWords)
			return
		}
	}
	a.Say("distances.line", measuredLine)
	a.Say("truing.assumed", distancesYours)
}

func abs(x float64) float64 { return max(x, -x) }
