package sheet

import (
	"math"
	"strconv"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// pass is the round of readings on the bench, worked out with those before it.
type pass struct {
	*setUp
	round
	before  []crank.Pass // the passes up to this one, this one last
	keys    []string     // of all passes, in order
	bench   int          // which of them is on the bench
	seat    crank.Seat
	advice  crank.Advice
	next    crank.Next
	allowed crank.Tolerance
	moves   []move
}

// round is one round of readings as it stands in the form.
type round struct {
	key     string
	reading []reading       // by station of the set-up
	used    []int           // the stations whose readings count, left to right
	counted []crank.Station // these, for the crank room
}

// move is one advised move, with what the needles should do.
type move struct {
	crank.Step
	plus      float64   // mm, how far the amount may be out
	predicted []float64 // run-out of each dial after this move alone, mm
	watch     int       // which of these to watch
}

// truing answers the main job: dials in, clock face out.
func truing(a *Answers, r *form.Reader) {
	s := readSetUp(r)
	p := pass{setUp: &s, allowed: crank.Tolerance{RunOut: r.Default("tolerance"), Tilt: 60 * r.Default("tilt")}}
	rounds := p.readRounds(r)
	p.round = rounds[p.bench]
	switch station, complete := p.wanted(); {
	case !complete:
		a.unanswered()
		a.invite(&p, station)
	case !p.solve(a, r):
		a.unanswered()
	default:
		p.learn(r, rounds)
		p.advise()
		a.values(&p)
		a.words(&p)
		a.crossChecks(&p, r)
		a.bend(&p)
	}
	a.turns(&p)
	a.passes(&p, r, rounds)
	a.say("truing.assumed", assumedWords(r))
	a.face(&p)
	a.measure(&s, r)
}

// readRounds reads every pass, and finds the scatter of the dials over all.
func (p *pass) readRounds(r *form.Reader) []round {
	p.keys, p.bench = passKeys(r.Form)
	rounds := make([]round, len(p.keys))
	readings := make([][]reading, len(p.keys))
	for i, key := range p.keys {
		readings[i] = p.readPass(r, key)
		rounds[i] = round{key: key, reading: readings[i]}
	}
	p.pool(readings)
	for i := range rounds {
		rounds[i].count(p.setUp)
	}
	return rounds
}

// passKeys returns the keys of a job's passes, at least one, and which of them
// is on the bench: the last, unless the form says otherwise.
func passKeys(f form.Form) (keys []string, bench int) {
	if keys = f.Rows("pass"); len(keys) == 0 {
		keys = []string{"1"}
	}
	bench = len(keys) - 1
	for i, key := range keys {
		if key == f["bench"] {
			bench = i
		}
	}
	return keys, bench
}

// wanted returns the station that wants something yet; complete where each half
// has a reading and none is half done.
func (p *pass) wanted() (station int, complete bool) {
	has := [2]bool{}
	begun := -1
	for i, got := range p.reading {
		switch {
		case got.lack == mending:
			return i, false
		case got.lack == nothing:
			has[p.stations[i].half] = true
		case got.lack != runOut && (got.lack != points || got.taken > 0) && begun < 0:
			begun = i
		}
	}
	for i := range sideNames {
		if !has[p.stations[i].half] {
			return i, false
		}
	}
	return begun, begun < 0
}

// sideNames are the stations that are always there, as they come first.
var sideNames = [...]string{"drive", "timing"}

// count gathers the stations whose readings count.
func (d *round) count(s *setUp) {
	for i, got := range d.reading {
		if got.lack == nothing {
			d.use(s, i)
		}
	}
	for _, i := range d.used {
		st, got := &s.stations[i], &d.reading[i]
		d.counted = append(d.counted, crank.Station{
			Half: st.half, At: st.at, E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: st.dial,
			RunOut: got.RunOut, Sigma: got.Sigma, Unsure: got.Unsure,
		})
	}
}

// use keeps a station in the order of the places along the crank.
func (d *round) use(s *setUp, station int) {
	d.used = append(d.used, station)
	for i := len(d.used) - 1; i > 0 && s.stations[d.used[i]].at < s.stations[d.used[i-1]].at; i-- {
		d.used[i], d.used[i-1] = d.used[i-1], d.used[i]
	}
}

// solve finds how the halves sit; where it can't, it says why.
func (p *pass) solve(a *Answers, r *form.Reader) bool {
	seat, err := p.crank.Solve(p.counted)
	switch e := err.(type) {
	case nil:
		p.seat = seat
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

// learn plans by this pass and those before it.
func (p *pass) learn(r *form.Reader, rounds []round) {
	for i := range p.bench {
		before := crank.Pass{Done: p.done(r, p.keys[i])}
		if seat, err := p.crank.Solve(rounds[i].counted); err == nil {
			before.Seat, before.Stations = seat, rounds[i].counted
		}
		p.before = append(p.before, before)
	}
	p.before = append(p.before, crank.Pass{Seat: p.seat, Stations: p.counted})
	p.next = crank.Plan(p.before, p.allowed)
	p.advice = p.next.Advice
}

// advise works out what each advised step should do to the needles.
func (p *pass) advise() {
	for _, step := range p.next.Steps {
		m := move{Step: step, plus: p.seat.StrikePlus(p.counted)}
		if step.Kind != crank.Strike {
			m.plus, _, _ = p.seat.ClosePlus(p.counted)
		}
		p.moves = append(p.moves, p.foretell(m))
	}
}

func (p *pass) foretell(out move) move {
	most := math.Inf(-1)
	for i, st := range p.counted {
		f := p.seat.Forecast(st.Half, st.At)
		then := 2 * f.Strike.Len()
		if out.Kind != crank.Strike {
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
	if out.Kind == crank.Strike && out.Other.Wheel == p.counted[out.watch].Half {
		out.Move, out.Other = out.Other, out.Move
	}
	return out
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
	sureD, sureG := p.seat.SureOfD(p.counted), p.seat.SureOfG(p.counted)
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
	for n, st := range p.counted {
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
		a.number(at+"strength", m.Dose)
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
