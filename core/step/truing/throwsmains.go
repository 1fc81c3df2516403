package truing

import (
	"strconv"

	"pintwelve/core/crank"
)

// mainLines say bearing by bearing how the crank would run in them.
func (p *pass) mainLines() (lines []string) {
	mains := p.throws.next.Mains
	for i := range mains {
		m := &mains[i]
		if p.leverAssumed {
			continue
		}
		how := cantTellRuns
		switch lean := p.besideTilt(m.Lean); {
		case m.Told && len(mains) == 2: // the line goes through both
			how = leansBy(lean, p.tiltLimit())
		case m.Told:
			how = runsAndLeans(p.besideRunOut(m.RunOut), lean, p.tiltLimit())
		}
		lines = append(lines, inMainEnds(p.pieceName(m.Piece), how))
	}
	return lines
}

func (p *pass) tiltLimit() string { return tiltScale.limit(p.allowed.Tilt / 60) }

// worstMain is the main bearing, of those that are told, whose figure stands nearest to
// its limit or furthest beyond, and whether that is its lean.
func (p *pass) worstMain() (worst *crank.Main, leans bool) {
	mains, most := p.throws.next.Mains, -1.0
	for i := range mains {
		m := &mains[i]
		if !m.Told {
			continue
		}
		if by := m.RunOut.Value / p.allowed.RunOut; by > most {
			worst, most, leans = m, by, false
		}
		if by := m.Lean.Value / p.allowed.Tilt; by >= most {
			worst, most, leans = m, by, true
		}
	}
	return worst, leans
}

// worstMainWords say how the crank runs in the bearing that finds it worst.
func (p *pass) worstMainWords() string {
	m, leans := p.worstMain()
	if m == nil || p.leverAssumed {
		return ""
	}
	how := runsOutBy(p.besideRunOut(m.RunOut), p.limit())
	if leans {
		how = leansBy(p.besideTilt(m.Lean), p.tiltLimit())
	}
	return inMain(p.pieceName(m.Piece), how)
}

// needlesInside tells whether every needle is inside for sure: what counts against the
// crank is how it would run in its bearings.
func (p *pass) needlesInside() bool {
	w := p.throws.next.Worst
	return w.Value+w.HalfWidth95 <= p.allowed.RunOut
}

// throwsLeft says what throws that don't match leave: run-out, or where that would be
// inside, lean.
func (p *pass) throwsLeft() string {
	n := &p.throws.next
	if n.Floor.Value-n.Floor.HalfWidth95 > p.allowed.RunOut {
		return stillLeft(p.besideRunOut(n.Floor), p.limit())
	}
	return stillLeans(p.besideTilt(n.FloorLean), p.tiltLimit())
}

// throwsStand says what stands nearest to its limit or beyond: a needle, or where all
// are inside for sure, a journal in its bearing.
func (p *pass) throwsStand() string {
	if p.needlesInside() {
		return p.worstMainWords()
	}
	return p.runOutWords()
}

// mainValues fills in how the crank would run in its main bearings, from left to right.
func (a answers) mainValues(p *pass) {
	for i, m := range p.throws.next.Mains {
		at := "mains/" + strconv.Itoa(i) + "/"
		a.Number(at+"piece", float64(m.Piece+1))
		a.Number(at+"at_mm", m.At)
		if !m.Told {
			a.Null(at + "tir_mm")
			a.Null(at + "lean_arcmin")
			continue
		}
		a.Number(at+"tir_mm", m.RunOut.Value)
		a.Number(at+"tir_plus_mm", m.RunOut.HalfWidth95)
		a.Number(at+"lean_arcmin", m.Lean.Value)
		a.Number(at+"lean_plus_arcmin", m.Lean.HalfWidth95)
	}
}
