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
	rounds  []round // of all passes, in order
	bench   int     // which of them is on the bench
	wants   int     // the station that wants a reading yet, or −1
	fault   error   // why the readings can't be solved
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
	p := workOut(r)
	for i, name := range sideNames {
		a.next(&p.reading[i], p.key, name)
	}
	switch {
	case p.wants >= 0:
		a.unanswered()
		a.invite(p)
	case p.fault != nil:
		a.unanswered()
		a.cantSolve(p)
	default:
		a.values(p)
		a.words(p)
	}
	a.face(p)
}

// truingMore answers what stands below the clock face.
func truingMore(a *Answers, r *form.Reader) {
	p := workOut(r)
	a.say("right.side", p.sideOf[clock.Right])
	if p.wants < 0 && p.fault == nil {
		a.elseWords(p)
		a.tiltVerdict(p)
		a.sit(p)
		a.needles(p)
		a.shafts(p)
		a.crossChecks(p, r)
		a.bend(p)
	}
	a.turns(p)
	a.passes(p, r)
	a.say("truing.assumed", assumedWords(r))
	a.measure(p.setUp, r)
}

// workOut reads the passes and works out the one on the bench, as far as its
// readings let it.
func workOut(r *form.Reader) *pass {
	s := readSetUp(r)
	p := &pass{setUp: &s, allowed: crank.Tolerance{RunOut: r.Default("tolerance"), Tilt: 60 * r.Default("tilt")}}
	p.readRounds(r)
	p.round = p.rounds[p.bench]
	if p.wants = p.wanted(); p.wants >= 0 {
		return p
	}
	if p.seat, p.fault = p.crank.Solve(p.counted); p.fault != nil {
		p.complain(r, p.fault)
		return p
	}
	p.learn(r)
	p.advise()
	return p
}

// readRounds reads every pass, and finds the scatter of the dials over all.
func (p *pass) readRounds(r *form.Reader) {
	var keys []string
	keys, p.bench = passKeys(r.Form)
	readings := make([][]reading, len(keys))
	for i, key := range keys {
		readings[i] = p.readPass(r, key)
		p.rounds = append(p.rounds, round{key: key, reading: readings[i]})
	}
	p.pool(readings)
	for i := range p.rounds {
		p.rounds[i].count(p.setUp)
	}
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

// wanted returns the station that wants something yet, or −1 where each half
// has a reading and none is half done.
func (p *pass) wanted() int {
	has := [2]bool{}
	begun := -1
	for i, got := range p.reading {
		switch {
		case got.lack == mending:
			return i
		case got.lack == nothing:
			has[p.stations[i].half] = true
		case got.lack != runOut && (got.lack != points || got.taken > 0) && begun < 0:
			begun = i
		}
	}
	for n := range sideNames {
		i := n
		if p.oneDial && p.end("drive") == clock.Right {
			i = 1 - n
		}
		if !has[p.stations[i].half] {
			return i
		}
	}
	return begun
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

// learn plans by this pass and those before it.
func (p *pass) learn(r *form.Reader) {
	var passes []crank.Pass
	for i := range p.bench {
		before := crank.Pass{Done: p.done(r, p.rounds[i].key)}
		if seat, err := p.crank.Solve(p.rounds[i].counted); err == nil {
			before.Seat, before.Stations = seat, p.rounds[i].counted
		}
		passes = append(passes, before)
	}
	passes = append(passes, crank.Pass{Seat: p.seat, Stations: p.counted})
	p.next = crank.Plan(passes, p.allowed)
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

var loudNames = [...]string{crank.Strike: "STRIKE", crank.Squeeze: "SQUEEZE", crank.Spread: "SPREAD"}

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
