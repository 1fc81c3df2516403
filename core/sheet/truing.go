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
	*setUp
	key      string
	reading  []reading       // by station of the set-up
	used     []int           // the stations whose readings count, left to right
	stations []crank.Station // these, for the crank room
	seat     crank.Seat
	advice   crank.Advice
	allowed  crank.Tolerance
	moves    []move
}

// move is one advised move, with what the needles should do.
type move struct {
	crank.Move
	other     crank.Move // the move that does the same from elsewhere
	plus      float64    // mm, how far the amount may be out
	predicted []float64  // run-out of each dial after this move alone, mm
	watch     int        // which of these to watch
}

// truing answers the main job: dials in, clock face out.
func truing(a *Answers, r *form.Reader) {
	s := readSetUp(r)
	p := pass{setUp: &s, key: "1", allowed: crank.Tolerance{RunOut: r.Default("tolerance"), Tilt: 60 * r.Default("tilt")}}
	p.reading = s.readPass(r, p.key)
	s.pool([][]reading{p.reading})
	a.blocks(&p)
	switch next, complete := p.next(); {
	case !complete:
		a.unanswered()
		a.invite(&p, next)
	case !p.solve(a, r):
		a.unanswered()
	default:
		p.advise()
		a.values(&p)
		a.words(&p)
		a.crossChecks(&p, r)
		a.bend(&p)
	}
	a.turns(&p)
	a.say("truing.assumed", assumedWords(r))
	a.face(&p)
	a.measure(&s, r)
}

// next returns the station that wants something yet; complete where each half
// has a reading and none is half done.
func (p *pass) next() (station int, complete bool) {
	has := [2]bool{}
	begun := -1
	for i, got := range p.reading {
		switch {
		case got.lack == mending:
			return i, false
		case got.lack == nothing:
			has[p.setUp.stations[i].half] = true
		case got.lack != runOut && (got.lack != points || got.taken > 0) && begun < 0:
			begun = i
		}
	}
	for i := range sideNames {
		if !has[p.setUp.stations[i].half] {
			return i, false
		}
	}
	return begun, begun < 0
}

// sideNames are the stations that are always there, as they come first.
var sideNames = [...]string{"drive", "timing"}

// solve finds how the halves sit; where it can't, it says why.
func (p *pass) solve(a *Answers, r *form.Reader) bool {
	for i, got := range p.reading {
		if got.lack == nothing {
			p.use(i)
		}
	}
	for _, i := range p.used {
		st, got := &p.setUp.stations[i], &p.reading[i]
		p.stations = append(p.stations, crank.Station{
			Half: st.half, At: st.at, E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: st.dial,
			RunOut: got.RunOut, Sigma: got.Sigma, Unsure: got.Unsure,
		})
	}
	seat, err := p.crank.Solve(p.stations)
	switch e := err.(type) {
	case nil:
		p.seat = seat
		p.advice = p.seat.Advise(p.stations, p.allowed)
		return true
	case *crank.MissingError:
		a.say("truing.headline", "One more dial is wanted on the % shaft.", p.sideOf[e.Half])
		a.say("truing.then", "Away from where it is held: about % from that shaft’s end.", p.fromEnd(e.Half, e.At))
	case *crank.LengthError:
		if e.Length == crank.DialAt {
			e.Station = p.used[e.Station]
		}
		p.complain(r, e)
		a.say("truing.headline", "Mend the figure marked Wrong below.")
	}
	return false
}

// use keeps a station in the order of the places along the crank.
func (p *pass) use(station int) {
	p.used = append(p.used, station)
	for i := len(p.used) - 1; i > 0 && p.setUp.stations[p.used[i]].at < p.setUp.stations[p.used[i-1]].at; i-- {
		p.used[i], p.used[i-1] = p.used[i-1], p.used[i]
	}
}

// advise turns the advice into moves: the strike first, since it can be made
// without a clamp or wedge in the way. Common practice, no source.
func (p *pass) advise() {
	if p.advice.Strike {
		m, other := p.seat.Strike()
		p.add(m, other, p.seat.StrikePlus(p.stations))
	}
	if p.advice.Close {
		m, other := p.seat.Close()
		plus, _, _ := p.seat.ClosePlus(p.stations)
		p.add(m, other, plus)
	}
}

func (p *pass) add(m, other crank.Move, plus float64) {
	out := move{Move: m, other: other, plus: plus}
	most := math.Inf(-1)
	for i, st := range p.stations {
		f := p.seat.Forecast(st.Half, st.At)
		then := 2 * f.Strike.Len()
		if m.Kind != crank.Strike {
			then = 2 * f.Gap.Len()
		}
		out.predicted = append(out.predicted, then)
		fall := 2*f.Now.Len() - then
		// Of needles that fall alike the drive side's is named.
		if fall > most+p.step/100 || fall > most-p.step/100 && p.used[i] == 0 {
			most, out.watch = fall, i
		}
	}
	// Either wheel does; the one whose needle is watched is the easier to follow.
	if m.Kind == crank.Strike && other.Wheel == p.stations[out.watch].Half {
		out.Move, out.other = other, m
	}
	p.moves = append(p.moves, out)
}

var kindNames = [...]string{crank.Strike: "strike", crank.Squeeze: "squeeze", crank.Spread: "spread"}

var verdictNames = [...]string{
	crank.Fit: "true", crank.OutOfTrue: "out of true", crank.NotMendable: "not mendable by bumping",
	crank.TooClose: "too close to call", crank.CantTell: "the dials can't tell",
}

// unanswered fills in the figures that can't be given yet.
func (a *Answers) unanswered() {
	a.text("verdict", "needs a reading")
	for _, name := range [...]string{"offset.towards12_mm", "offset.towards3_mm", "gap.widest_hour", "gap.across_rim_mm", "floor_tir_mm", "bearings"} {
		a.null(name)
	}
	a.emptyList("moves")
}

// values fills in what the answers carry as figures, in mm and in hours of the
// end that the job is seen from.
func (a *Answers) values(p *pass) {
	d := p.seat.D.From(p.seen)
	a.text("verdict", verdictNames[p.advice.Verdict])
	a.text("verdict_as_read", verdictNames[p.advice.Plain])
	a.text("seen_from", p.seenFrom())
	a.number("offset.towards12_mm", d.T)
	a.number("offset.towards3_mm", d.N)
	sureD, sureG := p.seat.SureOfD(p.stations), p.seat.SureOfG(p.stations)
	a.number("offset.plus_mm", sureD.Plus(p.seat.D))
	across, widest := p.seat.Gap()
	a.hourOrNull("gap.widest_hour", sureG.Tells(p.seat.G), p.hour(widest))
	a.number("gap.across_rim_mm", across)
	a.number("gap.plus_mm", 2*p.crank.Rim*sureG.Plus(p.seat.G))
	a.number("floor_tir_mm", p.advice.Floor.Value)
	a.dialValues(p)
	a.moveValues(p)
	a.bearingValues(p)
}

func (a *Answers) hourOrNull(name string, told bool, hour float64) {
	if told {
		a.number(name, hour)
	} else {
		a.null(name)
	}
}

// dialValues tells each dial, left to right, and what it should show after
// each move alone and after both.
func (a *Answers) dialValues(p *pass) {
	for n, st := range p.stations {
		i := strconv.Itoa(n)
		f := p.seat.Forecast(st.Half, st.At)
		got := &p.reading[p.used[n]]
		a.text("dials/"+i+"/half", p.sideOf[st.Half])
		a.number("dials/"+i+"/tir_mm", got.RunOut)
		a.number("dials/"+i+"/plus_mm", got.Plus())
		a.hourOrNull("dials/"+i+"/high_hour", got.Sure().Tells(got.E), p.hour(got.E.Hour()))
		if got.turn != nil {
			a.number("dials/"+i+"/full_movement_mm", got.turn.Full)
			a.number("dials/"+i+"/ovality_mm", got.turn.Oval.Size)
			a.number("dials/"+i+"/drift_mm", got.turn.Drift)
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
		a.number(at+"plus_mm", m.plus)
		for n, v := range m.predicted {
			a.number(at+"predicted_tir_mm/"+strconv.Itoa(n), v)
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
	for half, tilt := range p.advice.Tilt {
		a.number("bearings/tilt_arcmin/"+strconv.Itoa(half), tilt.Value)
	}
}
