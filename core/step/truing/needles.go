package truing

import (
	"strconv"
	"strings"

	"pintwelve/core/crank"
)

// needleColumn is a column of the table of needles: what it is after, and what the
// counted dial n should then show.
type needleColumn struct {
	head string
	cell func(n int) string
}

// mostColumns is how many a phone of 320 px has room for beside what was read.
const mostColumns = 3

// needles fills the table of what each dial should show: as read, and after what is advised.
func (a answers) needles(p *pass) {
	if p.leverAssumed || p.hangsOn != nil || p.several() && len(p.moves) == 0 {
		return
	}
	words, columns := wouldBeLeft(p.Within(p.advice.Floor.Value, p.advice.Floor.HalfWidth95)), p.aloneAndBoth
	if p.several() {
		words, columns = p.movesInOrder(words), p.afterEachMove
	}
	a.Say("truing.needles", words)
	all := columns()
	for k, column := range all {
		a.Say("needles."+strconv.Itoa(k+1), column.head)
	}
	for n, i := range p.used {
		got := &p.reading[i]
		now := p.needle(got.E, got.HalfWidth95())
		if p.several() {
			now = p.Bare(got.RunOut)
		}
		name := p.stations[i].name
		a.Say("now."+name, now)
		a.Say("now."+name+".at", p.dialAt(i))
		for k, column := range all {
			a.Say("needles."+strconv.Itoa(k+1)+"."+name, column.cell(n))
		}
	}
}

// aloneAndBoth are what a crank of one throw should show after each move alone and both.
func (p *pass) aloneAndBoth() (all []needleColumn) {
	forecast := func(n int) crank.Forecast { return p.pose.Forecast(p.counted[n].Half(), p.counted[n].At) }
	if p.advice.Strike {
		all = append(all, needleColumn{afterOneAlone(kindWords[crank.Strike]), func(n int) string { return p.needle(forecast(n).Strike, 0) }})
	}
	if p.advice.Close {
		m, _ := p.pose.Close()
		all = append(all, needleColumn{afterOneAlone(kindWords[m.Kind]), func(n int) string { return p.needle(forecast(n).Gap, 0) }})
	}
	return append(all, needleColumn{afterBoth, func(n int) string { return p.needle(forecast(n).Both, 0) }})
}

// afterEachMove are what one of several throws should show after each move and those before
// it; of more moves than there is room for, the first and the last.
func (p *pass) afterEachMove() (all []needleColumn) {
	for i := range p.moves {
		if i >= mostColumns-1 && i < len(p.moves)-1 {
			continue
		}
		m := &p.moves[i]
		all = append(all, needleColumn{strconv.Itoa(i + 1), func(n int) string { return p.Bare(m.then[n]) }})
	}
	return all
}

// movesInOrder lists the moves by the numbers that head the table, before some words.
func (p *pass) movesInOrder(words string) string {
	var lines []string
	for i := range p.moves {
		lines = append(lines, numbered(strconv.Itoa(i+1), p.jointDo(&p.moves[i])))
	}
	return strings.Join(append(lines, words, runOutsIn(p.Unit.Name())), "\n")
}

// dialAt names a dial by its letter and where it stands: "D2, pins 1–2".
func (p *pass) dialAt(station int) string {
	st := &p.stations[station]
	if piece := p.inner(st); piece > 0 {
		return dialBetween(st.letter, strconv.Itoa(piece), strconv.Itoa(piece+1))
	}
	return furtherDial(st.letter, p.SideOf[st.half])
}

// inner is the piece of an inner journal that a station stands on, the first being 1; 0 on
// either end's shaft.
func (s *setUp) inner(st *station) int {
	if piece := s.throws.pieceAt(st.at); piece < len(s.throws.Joints) {
		return piece
	}
	return 0
}
