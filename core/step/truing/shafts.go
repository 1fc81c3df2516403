package truing

import (
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/unit"
)

// shafts says what the dials make of each shaft and of where it is held, and
// of slips of the pen that would make readings fit which don't.
func (a answers) shafts(p *pass) {
	for half, shaft := range p.advice.Shaft {
		side := p.SideOf[half]
		hole := p.within(shaft.Hole.Len(), shaft.Uncertainty.HalfWidth95(shaft.Hole))
		a.Say("shaft."+side, shaftWords[shaft.State], side, p.support(), hole, p.at(shaft.Hole.Hour()))
	}
	var slips []string
	for _, slip := range p.crank.Slips(p.counted) {
		template := "the hours of % had been read from the other end"
		if slip.Kind == crank.Swapped {
			template = "those of % and % had been exchanged"
		}
		slips = append(slips, bench.Fill(template, p.letter(slip.A), p.letter(slip.B)))
	}
	if slips != nil {
		a.Say("shaft.slip", "The readings would fit if %.", strings.Join(slips, ", or if "))
	}
}

func (p *pass) letter(n int) string { return p.stations[p.used[n]].letter }

// shaftWords are filled with the side, what holds the shaft, how far that
// stands off the shaft's axis, and towards which hour.
var shaftWords = [...]string{
	crank.Unseen:        "With one dial on the % shaft its % is taken on trust.",
	crank.Sound:         "The % shaft’s % can be trusted.",
	crank.SupportOrBent: "On the % side, a bad % or a bent shaft: the dials’ line passes % from it, towards %. A third place on that shaft would tell which; the dials alone are gone by.",
	crank.BadSupport:    "Don’t trust the % shaft’s %: it stands % off the shaft’s axis, towards %. The dials alone are gone by.",
	crank.Bent:          "The % shaft is bent, or a dial was misread: its dials don’t stand on one line.",
}

func (p *pass) support() string {
	return [...]string{crank.Centres: "centre", crank.VBlocks: "V-block seat", crank.OwnBearings: "bearing seat"}[p.crank.Mount]
}

// turns says what each full turn shows beside its run-out.
func (a answers) turns(p *pass) {
	for i := range p.reading {
		got := &p.reading[i]
		name := p.stations[i].name
		if i >= len(sideNames) {
			a.next(got, name)
			a.Say(name+".name", "Place %", p.stations[i].letter)
		}
		if got.turn == nil {
			a.halves(got, &p.stations[i])
			continue
		}
		a.Say("turns.any", "yes")
		say := func(what, template string, figures ...string) {
			a.Say("turn."+name+what, template, figures...)
		}
		say("", "%: full movement %, fitted run-out %.", p.stations[i].letter, p.amount(got.turn.Full), p.within(got.RunOut, got.HalfWidth95()))
		oval := &got.turn.Oval
		switch {
		case got.turn.OutOfRound(got.noise):
			say(".oval", "Out of round by %: the shaft’s own shape, not its place.", p.amount(2*oval.Size))
		case p.bare(2*oval.Size) != "0" && oval.Size > 0:
			say(".oval", "Out of round, or scatter, by up to %: more points would tell.", p.amount(2*oval.Size))
		}
		if got.turn.Drifted(got.noise) {
			way := "higher"
			if got.turn.Drift < 0 {
				way = "lower"
			}
			say(".drift", "The first point came back % %: the dial or the crank has moved. Read the turn again.", p.amount(abs(got.turn.Drift)), way)
		}
		if got.turn.Unwrapped {
			say(".zero", "The needle passed zero: the readings were taken on past it, one turn of it being %.", p.amount(got.sweep))
		}
		if got.noise.Nu >= 1 {
			say(".scatter", "Readings scatter by about %.", p.amount(got.noise.S))
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
	a.Say("turn."+st.name, "%: the half-way hours lie % apart, where half a turn is 6. One is misread, or the shaft is out of round: read a full turn.",
		st.letter, unit.Figures(got.apart, unit.Plain, 0.1))
}

// next says how far a turn has been read, and where to read next.
func (a answers) next(got *reading, name string) {
	if got.of == 0 || got.lack == mending {
		return
	}
	count := bench.Fill("% of % read", strconv.Itoa(got.taken), strconv.Itoa(got.of))
	next := ""
	switch {
	case got.taken < min(got.of, len(got.hours)):
		next = bench.Fill("%; next at %.", count, unit.FormatHour(got.hours[got.taken], 10))
	case got.taken < got.of:
		next = bench.Fill("%; give the hours of three points or more.", count)
	case got.taken < len(got.hours):
		next = bench.Fill("%; read the first point again to see whether anything moved.", count)
	case got.of < len(got.hours):
		next = bench.Fill("All % read, and the first again: the turn is whole.", strconv.Itoa(got.of))
	default: // at hours that were given, which may come back to the first or not
		next = bench.Fill("All % read: the turn is whole.", strconv.Itoa(got.of))
	}
	a.Say("turn."+name+".next", "%", next)
}
