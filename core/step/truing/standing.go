package truing

import "pintwelve/core/crank"

// standing is what a pass comes to: a verdict, or what none can be given for.
type standing crank.Verdict

const (
	// untried is not mendable as read, no centre having been tried.
	untried = standing(crank.FitAsHung) + 1 + iota
	unmeasured
	// leansOpen is inside as its needles show, how the journals lean not being told.
	leansOpen
)

// standing returns what a pass comes to: never surer than the verdict.
func (p *pass) standing() standing {
	if p.wants >= 0 || p.fault != nil || p.pressed {
		return unmeasured
	}
	if _, asked := p.asks(crank.AskCentres); asked && p.advice.Verdict == crank.NotMendable {
		return untried
	}
	if n := &p.throws.next; n.Verdict == crank.FitAsHung && n.Open {
		return leansOpen
	}
	return standing(p.advice.Verdict)
}

// came is what came of a thing done that wasn't as it was meant.
type came uint8

const (
	otherWay came = iota
	noEffect
	hardlyShows
	astray
)

// cameOf tells what came of a thing done, and whether that was amiss.
func cameOf(t *crank.Try) (c came, amiss bool) {
	switch {
	case t.Outcome == crank.Opposite:
		return otherWay, true
	case t.Outcome == crank.NoEffect:
		return noEffect, true
	case t.Outcome == crank.Unshown && len(t.Likely) > 0:
		return hardlyShows, true
	}
	return astray, t.Astray > 0
}
