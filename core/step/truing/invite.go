package truing

import (
	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"strconv"
)

// invite says which reading to take next.
func (a answers) invite(p *pass) {
	next := p.wants
	got := &p.reading[next]
	a.Say("truing.reading", "yes")
	if got.lack == runOut && next < len(sideNames) {
		switch other := p.reading[1-next].lack; {
		case other == runOut && p.bench > 0:
			a.Say("truing.headline", readAgain(p.passName(p.bench)))
			return
		case other == runOut:
			a.Say("truing.headline", turnAndRead)
			a.Say("truing.then", typeRunOutAndHour)
			return
		case other == nothing && p.oneDial:
			a.Say("truing.headline", carryTheDial(p.dialName(next)))
			return
		}
	}
	switch got.lack {
	case hour:
		if p.bench > 0 {
			break // he has done it before
		}
		a.Say("truing.then", tapTheFace)
	case points:
		a.Say("truing.then", pointsRead(strconv.Itoa(got.taken), strconv.Itoa(got.of)))
	}
	if got.lack == hour || got.lack == halfway {
		a.Text("tap", got.blank)
	}
	a.Say("truing.headline", invitation(got.lack, p.dialName(next)))
}

// dialName names a station's dial: "drive", "D2, drive".
func (s *setUp) dialName(station int) string {
	st := &s.stations[station]
	if s.inner(st) > 0 {
		return st.letter
	}
	if len(st.letter) > 1 {
		return furtherDial(st.letter, s.SideOf[st.half])
	}
	return s.SideOf[st.half]
}

// cantSolve says why readings that are all there can't be worked out.
func (a answers) cantSolve(p *pass) {
	if p.doubt != nil {
		a.askUnit(p)
		return
	}
	if _, ok := p.fault.(*unmeasuredError); ok && p.pin > 0 {
		a.Say("truing.headline", measureThePiece(alonePin(p.pin)))
		a.Say("truing.then", pieceHangsOnIt)
		return
	} else if ok {
		a.Say("truing.headline", measureThePins)
		a.Say("truing.then", pinHangsOnIt)
		return
	}
	if e, ok := p.fault.(*crank.MissingError); ok {
		a.Say("truing.headline", oneMoreDial(p.SideOf[e.Half]))
		a.Say("truing.then", awayFromSupport(p.fromEnd(e.Half, e.At)))
		return
	}
	a.Say("truing.headline", bench.MendIt)
}
