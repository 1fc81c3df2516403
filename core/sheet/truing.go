package sheet

import (
	"math"
	"strconv"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// pass is one round of readings, worked out.
type pass struct {
	setUp
	reading  [2]reading // by clock.End
	stations []crank.Station
	seat     crank.Seat
	advice   crank.Advice
	allowed  float64 // mm
	moves    []move
}

// move is one advised move, with what the needles should do.
type move struct {
	crank.Move
	other     crank.Move // the move that does the same from elsewhere
	predicted [2]float64 // run-out of each dial after this move alone, mm
	watch     clock.End  // the needle to watch
}

// truing answers the main job: two dials in, clock face out.
func truing(a *Answers, r *form.Reader) {
	p := pass{setUp: readSetUp(r), allowed: r.Default("tolerance")}
	key := "1"
	for half := range p.reading {
		p.reading[half] = p.readDial(r, key, p.sideOf[half])
	}
	a.blocks(&p)
	switch {
	case !p.complete():
		a.unanswered()
		a.invite(&p)
	case !p.solve(r):
		a.unanswered()
		a.say("truing.headline", "Mend the figure marked Wrong below.")
	default:
		p.advise()
		a.values(&p)
		a.words(&p)
	}
	a.say("truing.assumed", assumedWords(r))
	a.picture(&p)
}

// unanswered fills in the figures that can't be given yet.
func (a *Answers) unanswered() {
	a.text("verdict", "needs a reading")
	for _, name := range []string{"offset.towards12_mm", "offset.towards3_mm", "gap.widest_hour", "gap.across_rim_mm", "floor_tir_mm", "bearings"} {
		a.null(name)
	}
	a.emptyList("moves")
}

func (p *pass) complete() bool {
	return p.reading[clock.Left].lack == nothing && p.reading[clock.Right].lack == nothing
}

// solve finds how the halves sit; false when a length of the set-up can't be.
func (p *pass) solve(r *form.Reader) bool {
	p.stations = make([]crank.Station, len(p.reading))
	for half, got := range p.reading {
		p.stations[half] = p.station(clock.End(half), got.Reading)
	}
	seat, err := p.crank.Solve(p.stations)
	if err != nil {
		p.complain(r, err)
		return false
	}
	p.seat = seat
	p.advice = p.seat.Advise(p.stations, crank.Tolerance{RunOut: p.allowed})
	return true
}

// advise turns the advice into moves: the strike first, since it can be made
// without a clamp or wedge in the way. Common practice, no source.
func (p *pass) advise() {
	if p.advice.Strike {
		m, other := p.seat.Strike()
		p.add(m, other, func(f crank.Forecast) float64 { return 2 * f.Strike.Len() })
	}
	if p.advice.Close {
		m, other := p.seat.Close()
		p.add(m, other, func(f crank.Forecast) float64 { return 2 * f.Gap.Len() })
	}
}

func (p *pass) add(m, other crank.Move, after func(crank.Forecast) float64) {
	out := move{Move: m, other: other}
	most := math.Inf(-1)
	for _, half := range [...]clock.End{p.end("drive"), p.end("timing")} {
		f := p.forecast(half)
		out.predicted[half] = after(f)
		if fall := 2*f.Now.Len() - out.predicted[half]; fall > most+p.step/100 {
			most, out.watch = fall, half
		}
	}
	// Either wheel does; the one whose needle is watched is the easier to follow.
	if m.Kind == crank.Strike && other.Wheel == out.watch {
		out.Move, out.other = other, m
	}
	p.moves = append(p.moves, out)
}

func (p *pass) forecast(half clock.End) crank.Forecast {
	return p.seat.Forecast(half, p.dial[half])
}

var kindNames = [...]string{crank.Strike: "strike", crank.Squeeze: "squeeze", crank.Spread: "spread"}

var verdictNames = [...]string{
	crank.Fit: "true", crank.OutOfTrue: "out of true", crank.NotMendable: "not mendable by bumping",
	crank.TooClose: "too close to call", crank.CantTell: "the dials can't tell",
}

// values fills in what the answers carry as figures, in mm and in hours of the
// end that the job is seen from.
func (a *Answers) values(p *pass) {
	d := p.seat.D.From(p.seen)
	a.text("verdict", verdictNames[p.advice.Plain])
	a.text("seen_from", p.seenFrom())
	a.number("offset.towards12_mm", d.T)
	a.number("offset.towards3_mm", d.N)
	across, widest := p.seat.Gap()
	if p.seat.G == (clock.Vec{}) {
		a.null("gap.widest_hour")
	} else {
		a.number("gap.widest_hour", p.hour(widest))
	}
	a.number("gap.across_rim_mm", across)
	a.number("floor_tir_mm", p.advice.Floor.Value)
	a.dialValues(p)
	a.moveValues(p)
	a.bearingValues(p)
}

// dialValues tells each dial, left to right, and what it should show after
// each move alone and after both.
func (a *Answers) dialValues(p *pass) {
	for half := range p.reading {
		f, i := p.forecast(clock.End(half)), strconv.Itoa(half)
		a.text("dials/"+i+"/half", p.sideOf[half])
		a.number("dials/"+i+"/tir_mm", 2*f.Now.Len())
		if f.Now == (clock.Vec{}) {
			a.null("dials/" + i + "/high_hour")
		} else {
			a.number("dials/"+i+"/high_hour", p.hour(f.Now.Hour()))
		}
		a.number("after_strike_tir_mm/"+i, 2*f.Strike.Len())
		a.number("after_gap_tir_mm/"+i, 2*f.Gap.Len())
		a.number("after_both_tir_mm/"+i, 2*f.Both.Len())
	}
}

func (a *Answers) moveValues(p *pass) {
	if len(p.moves) == 0 {
		a.emptyList("moves")
	}
	for i, m := range p.moves {
		at := "moves/" + strconv.Itoa(i) + "/"
		wheel := "both"
		if m.Kind == crank.Strike {
			wheel = p.sideOf[m.Wheel]
		}
		a.text(at+"kind", kindNames[m.Kind])
		a.text(at+"wheel", wheel)
		a.number(at+"hour", p.hour(m.Hour))
		a.text(at+"seen_from", p.seenFrom())
		a.number(at+"amount_mm", m.Amount)
		for half, v := range m.predicted {
			a.number(at+"predicted_tir_mm/"+strconv.Itoa(half), v)
		}
	}
}

// bearingValues tells the run-out where the sprocket, pinion or rotor sits, and
// each journal's tilt, the crank in its own bearings.
func (a *Answers) bearingValues(p *pass) {
	axes := p.seat.Running(p.seat.D, p.seat.G)
	for half, x := range p.tip {
		a.number("bearings/tir_mm/"+strconv.Itoa(half), axes.RunOut(clock.End(half), x))
	}
	for half := range p.tip {
		a.number("bearings/tilt_arcmin/"+strconv.Itoa(half), axes.Tilt(clock.End(half)))
	}
}
