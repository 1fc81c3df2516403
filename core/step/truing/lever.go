package truing

import (
	"slices"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// leastLever is the part of the way from where a shaft is held to the middle of
// the pin that a dial's lever has at least, where one of its ends is stood in
// for: what a dial shows is blown up by the inverse of it. By judgement.
const leastLever = 0.2

// lever moves what stands in for a dial's place or for where the shaft is held,
// so that they don't come too close.
func (p *places) lever(dialGiven, heldGiven bool) {
	gap := abs(p.dial - p.held)
	if gap >= leastLever*(p.pin-p.held) || dialGiven && heldGiven {
		return
	}
	switch outboard := p.held / 2; {
	case dialGiven && p.dial > p.pin*leastLever:
		// Held as far out as makes the lever just that part of the way.
		p.held = (p.dial - leastLever*p.pin) / (1 - leastLever)
	case dialGiven:
		p.held = (p.dial + leastLever*p.pin) / (1 + leastLever)
	case p.held-outboard >= leastLever*(p.pin-p.held):
		p.dial = outboard
	default:
		p.dial = p.held + leastLever*(p.pin-p.held)
	}
}

// leverAssumed tells whether the way from where a shaft is held to its dial is
// guessed: off V-blocks and bearings it may be short. Between centres a guess is
// of little weight.
func leverAssumed(r *form.Reader) bool {
	held, ok := heldBy(r)
	given := func(length form.ID) bool { return !r.Blank(length, sideNames[0]) || !r.Blank(length, sideNames[1]) }
	return ok && (!given(form.ShaftAt) || !given(held))
}

// heldBy is the length that says where a shaft is held; none does between centres.
func heldBy(r *form.Reader) (held form.ID, ok bool) {
	switch mountNamed(r.Word(form.Mount)) {
	case crank.VBlocks:
		return form.ShaftHeld, true
	case crank.OwnBearings:
		return form.ShaftBearing, true
	}
	return 0, false
}

// ownLengths holds back that no bumping mends a crank where that hangs on lengths that stand
// in: dials with levers unlike one another show a mere pinch as throws that don't match,
// unless the shafts of one throw stand to opposite sides of the line that the crank turns on.
func (p *pass) ownLengths(r *form.Reader) {
	if p.next.Why != crank.Unmendable || !p.leverAssumed && p.pose.A[clock.Left].T*p.pose.A[clock.Right].T < 0 {
		return
	}
	for _, in := range r.StandIns {
		switch field, _, _ := form.Job.Lookup(in.Name); field.ID {
		case form.ShaftPin, form.ShaftAt, form.DialAt, p.heldAt:
			p.hangsOn = append(p.hangsOn, in.Name)
		}
	}
	if p.hangsOn != nil {
		p.next.Why, p.next.Verdict = crank.Unclear, crank.CantTell
		p.next.Asks = slices.DeleteFunc(p.next.Asks, func(a crank.Ask) bool { return a.What != crank.AskSince }) // the others wait for these
	}
}

// directionWords say which way to work, and no amount: it hangs on the lever.
func (a answers) directionWords(p *pass) {
	a.Say("truing.headline", onlyTheWay(p.way(p.moves[0].Move)))
	words := howFarHangs
	if len(p.moves) > 1 {
		words = thenTheWay(lowerFirst(p.way(p.moves[1].Move)), words)
	}
	a.Say("truing.then", words)
	a.Say("truing.caution", caution)
}

// askLever asks for the two distances beside the readings where amounts hang on
// them, and leaves them there when they are given.
func (a answers) askLever(r *form.Reader) {
	if _, ok := heldBy(r); ok {
		a.Say("truing.lever", distancesAlike)
	}
}

// way is a move without its amount.
func (p *pass) way(m crank.Move) string {
	if m.Kind == crank.Strike {
		return strikeAt(p.SideOf[m.Wheel], p.at(m.Hour))
	}
	return closeAt(m.Kind, p.at(m.Hour))
}
