package truing

import (
	"strconv"

	"pintwelve/core/crank"
	"pintwelve/core/unit"
)

// shafts says what the dials make of each shaft and of where it is held, and
// of slips of the pen that would make readings fit which don't, "" for none.
func (a answers) shafts(p *pass, slips string) {
	for half, shaft := range p.advice.Shaft {
		side := p.SideOf[half]
		hole := p.Within(shaft.Hole.Len(), shaft.Uncertainty.HalfWidth95(shaft.Hole))
		a.Say("shaft."+side, shaftWords(shaft.State, side, p.support(), hole, p.at(shaft.Hole.Hour())))
	}
	if slips != "" {
		a.Say("shaft.slip", slips)
	}
}

// slips says what slips would each make readings of a crank of one throw fit that don't;
// "" where none would.
func (p *pass) slips() string {
	var slips []string
	for _, slip := range p.crank.Slips(p.counted) {
		if slip.Kind == crank.Swapped {
			slips = append(slips, readingsSwapped(p.letter(slip.A), p.letter(slip.B)))
		} else {
			slips = append(slips, hoursMirrored(p.letter(slip.A)))
		}
	}
	if slips == nil {
		return ""
	}
	return wouldFit(slips)
}

func (p *pass) letter(n int) string { return p.stations[p.used[n]].letter }

func (p *pass) support() string { return supportWords[p.crank.Mount] }

// turns says what each full turn shows beside its run-out.
func (a answers) turns(p *pass) {
	for i := range p.reading {
		got := &p.reading[i]
		name := p.stations[i].name
		if i >= len(sideNames) {
			a.next(got, name)
			a.Say(name+".name", furtherPlace(p.stations[i].letter))
		}
		if got.turn == nil {
			a.halves(got, &p.stations[i])
			continue
		}
		a.Say("turns.any", "yes")
		say := func(what, words string) { a.Say("turn."+name+what, words) }
		say("", turnShows(p.stations[i].letter, p.Amount(got.turn.Full), p.Within(got.RunOut, got.HalfWidth95())))
		oval := &got.turn.Oval
		switch {
		case got.turn.OutOfRound(got.noise):
			say(".oval", outOfRound(p.Amount(2*oval.Size)))
		case p.Bare(2*oval.Size) != "0" && oval.Size > 0:
			say(".oval", perhapsOutOfRound(p.Amount(2*oval.Size)))
		}
		if got.turn.Drifted(got.noise) {
			came := cameBackHigher
			if got.turn.Drift < 0 {
				came = cameBackLower
			}
			say(".drift", came(p.Amount(abs(got.turn.Drift))))
		}
		if got.turn.Unwrapped {
			say(".zero", needlePassedZero(p.Amount(got.sweep)))
		}
		if got.noise.Nu >= 1 {
			say(".scatter", scatterBy(p.Amount(got.noise.S)))
		}
	}
}

// halves says so where a needle that rose and fell about its middle, as run-out
// makes it do half a turn apart, would have been read at hours further out than
// hourMarks at either makes them.
func (a answers) halves(got *reading, st *station) {
	if got.apart == 0 || abs(got.apart-6) <= 2*hourMarks {
		return
	}
	a.Say("turns.any", "yes")
	a.Say("turn."+st.name, halvesApart(st.letter, unit.Figures(got.apart, unit.Plain, 0.1)))
}

// next says how far a turn has been read, and where to read next.
func (a answers) next(got *reading, name string) {
	if got.of == 0 || got.lack == mending {
		return
	}
	taken, of := strconv.Itoa(got.taken), strconv.Itoa(got.of)
	next := ""
	switch {
	case got.taken < min(got.of, len(got.hours)):
		next = nextPoint(taken, of, unit.FormatHour(got.hours[got.taken], 10))
	case got.taken < got.of:
		next = hoursWanted(taken, of)
	case got.taken < len(got.hours):
		next = firstPointAgain(taken, of)
	case got.of < len(got.hours):
		next = wholeAndBack(of)
	default: // at hours that were given, which may come back to the first or not
		next = wholeTurn(of)
	}
	a.Say("turn."+name+".next", next)
}
