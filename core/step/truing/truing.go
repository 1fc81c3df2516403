package truing

import (
	"slices"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// pass is the round of readings on the bench, worked out with those before it.
type pass struct {
	*setUp
	*stage
	round
	rounds  []round // of all passes, in order
	past    []past  // these, for the crank room
	learned *crank.Past
	bench   int   // which of them is on the bench
	wants   int   // the station that wants a reading yet, or −1
	fault   error // why the readings can't be solved
	doubts  []form.Doubt
	doubt   *form.Doubt // the one that keeps the answer back
	pose    crank.Pose
	advice  crank.Advice
	next    crank.Next
	allowed crank.Tolerance
	moves   []move
	lacks   []string // lengths of a pin alone that aren't measured
	hangsOn []string // lengths that stand in, where whether bumping mends the crank hangs on them
	pressed bool     // the tailstock pressed on the crank while it was read
}

// round is one round of readings as it stands in the form.
type round struct {
	key     string
	reading []reading         // by station of the set-up
	used    []int             // the stations whose readings count, left to right
	counted []crank.Station   // these, for the crank room
	since   string            // what the user says came before it
	did     []crank.JointDone // after it
	// What was done isn't logged: the pass after says that it was as advised.
	unlogged bool
}

// first answers the main job: dials in, clock face out.
func (a answers) first(r *form.Reader) {
	p := a.workOut(r)
	for i, name := range sideNames {
		a.next(&p.reading[i], name)
	}
	switch {
	case p.wants >= 0:
		a.invite(p)
		a.before(p, r)
	case p.fault != nil:
		a.cantSolve(p)
	default:
		a.words(p)
		a.wayOn(p, r)
	}
	if p.several() {
		a.elevation(p, r)
	}
	if p.solved() {
		a.jointFace(p, p.looked(r))
	} else {
		a.face(p)
	}
	if p.pin == 0 {
		a.askLever(r)
	}
	a.pinAlone(p, r)
}

// more answers what stands below the clock face.
func (a answers) more(r *form.Reader) {
	p := a.workOut(r)
	a.Say("right.side", p.SideOf[clock.Right])
	switch {
	case p.wants >= 0 || p.fault != nil:
	case p.several():
		a.throwsSit(p)
		a.throwsTellMore(p)
		a.needles(p)
		a.smallAsks(p)
	default:
		slips := p.slips()
		a.elseWords(p, a.crossChecks(p, r), slips)
		a.smallAsks(p)
		a.tiltVerdict(p)
		a.sit(p)
		a.needles(p)
		a.shafts(p, slips)
		a.bend(p)
	}
	if p.several() {
		a.index(p, r)
	}
	a.turns(p)
	a.passes(p)
	s := p.setUp
	if p.pin > 0 { // these are of the whole crank
		whole := readSetUp(r)
		s = &whole
	}
	a.foldedLines(s, r)
	a.measure(s, r)
}

// workOut works out the pass on the bench, and tells what is wrong with its fields.
func (a answers) workOut(r *form.Reader) *pass {
	keys, on := passKeys(r)
	p, told := passAt(a.Kept, r, keys[on])
	r.Take(told)
	return p
}

// passOf works out the job with one of its passes on the bench.
func passOf(k *bench.Kept, r *form.Reader, key string) *pass {
	p, _ := passAt(k, r, key)
	return p
}

func passAt(k *bench.Kept, r *form.Reader, key string) (*pass, *form.Reader) {
	s := stageOf(k, r, key)
	return bench.Once(k, "pass "+key, s.read, func(r *form.Reader) *pass {
		p := workOut(r, s, k)
		s.rename(r)
		return p
	})
}

// workOut reads the passes and works out the one on the bench, as far as its
// readings let it. What it reads of the passes is kept.
func workOut(r *form.Reader, of *stage, kept *bench.Kept) *pass {
	s := readSetUp(r)
	p := &pass{setUp: &s, stage: of, lacks: of.lacking(r), allowed: crank.Tolerance{RunOut: r.Default(form.Tolerance), Tilt: 60 * r.Default(form.Tilt)}}
	wrong := setUpWrong(r)
	p.learned = kept.Lasting("learned "+strconv.Itoa(of.pin), &crank.Past{}).(*crank.Past)
	p.readRounds(r, kept)
	p.past = p.history(r, kept)
	p.round = p.rounds[p.bench]
	p.doubts = r.Doubts
	p.pressed = r.Word(form.PassTailstock, p.key) == "moved"
	if p.wants = p.wanted(); p.wants >= 0 {
		return p
	}
	if p.doubt = doubtOf(r); p.doubt != nil {
		p.fault = errDoubt
		return p
	}
	if p.fault = wrong; wrong != nil {
		return p
	}
	if p.several() {
		p.workOutThrows(r)
		return p
	}
	if p.pose, p.fault = p.past[p.bench].pose, p.past[p.bench].fault; p.fault != nil {
		p.complain(r, p.fault)
		return p
	}
	p.next = p.learned.Plan(ofOne(p.past[:p.bench+1]), p.allowed)
	p.ownLengths(r)
	p.advice = p.next.Advice
	if !p.pressed {
		p.moves = p.setUp.moves(&p.round, &p.pose, &p.next)
	}
	return p
}

// readRounds reads every pass, and finds the scatter of the dials over all.
func (p *pass) readRounds(r *form.Reader, kept *bench.Kept) {
	keys, _ := passKeys(r)
	p.bench = slices.Index(keys, p.on)
	readings := make([][]reading, len(keys))
	p.rounds = make([]round, 0, len(keys))
	for i, key := range keys {
		read := bench.OfRow(kept, r, "pass", key, "readings", func(r *form.Reader) []reading { return p.readPass(r, key) })
		readings[i] = slices.Clone(read) // what the other passes tell of the dials goes into the copy
		p.rounds = append(p.rounds, round{key: key, reading: readings[i]})
	}
	p.pool(readings)
	for i := range p.rounds {
		d := &p.rounds[i]
		d.count(p.setUp)
		if a, b, unlike := crank.Unlike(d.counted); unlike {
			p.disown(r, d, d.used[a], d.used[b])
		}
	}
}

// disown takes two readings of one place that differ for none, and asks for them anew.
func (p *pass) disown(r *form.Reader, d *round, a, b int) {
	for _, pair := range [...][2]int{{a, b}, {b, a}} {
		got, id := &d.reading[pair[0]], form.ReadingTIR
		if got.turn != nil {
			id = form.ReadingTurn
		}
		got.lack = mending
		r.Complain(readsUnlike(p.stations[pair[1]].letter), id, d.key, p.stations[pair[0]].name)
	}
	d.count(p.setUp)
}

// PassKeys returns the keys of a job's passes, at least one, and which of them
// is on the bench: the last, unless the form says otherwise.
func PassKeys(f form.Form) (keys []string, bench int) { return passKeys(form.Read(f)) }

func passKeys(r *form.Reader) (keys []string, bench int) {
	if keys = r.Rows("pass"); len(keys) == 0 {
		keys = []string{"1"}
	}
	if bench = slices.Index(keys, r.Text(form.Bench)); bench < 0 {
		bench = len(keys) - 1
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
		if p.oneDial && p.End("drive") == clock.Right {
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
	d.used = make([]int, 0, len(d.reading))
	for i, got := range d.reading {
		if got.lack == nothing {
			d.use(s, i)
		}
	}
	d.counted = make([]crank.Station, 0, len(d.used))
	for _, i := range d.used {
		st, got := &s.stations[i], &d.reading[i]
		d.counted = append(d.counted, crank.Station{
			Piece: int(st.half), At: st.at, E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: st.dial,
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
