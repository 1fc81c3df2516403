package truing

import (
	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// onSheet answers what the job's sheet tells of the truing: the crank as found and
// as left, and the passes between.
func (a answers) onSheet(r *form.Reader) {
	found, left := a.rounds(r)
	assumed := distancesAssumed(left.read)
	a.plain(found, left, assumed)
	a.line(r, left)
	a.aloneOnSheet(left)
	if left.wants < 0 && left.fault == nil {
		switch {
		case assumed:
			a.Say("sheet.assumed", notJudgedAssumed)
		case left.several():
			a.throwsSit(left, left.indexLines(r)...)
		default:
			a.sit(left)
		}
	}
	for _, of := range a.stages(left) {
		a.listed(of)
		for _, d := range of.rounds {
			a.Say("pass."+d.key+".noted", r.Text(form.PassNote, d.key))
		}
	}
}

// distancesAssumed tells whether any of the distances that turn run-out into
// what is wrong at the pin and in the bearings is a stand-in.
func distancesAssumed(r *form.Reader) bool {
	own := r.Apart()
	readSetUp(own)
	for _, s := range own.StandIns {
		if isDistance(s.Name) {
			return true
		}
	}
	return false
}

// isDistance tells whether a field holds a length that it matters to have measured: a
// further pin's throw left blank is the first's, and an inner journal's bearing stands
// half-way along it.
func isDistance(name string) bool {
	f, _, _ := form.Job.Lookup(name)
	return f.Unit == unit.MM && f.ID != form.PinThrow && f.ID != form.PinMain
}

// line is the sheet in one line, to go with it into a message: never surer than
// the verdict.
func (a answers) line(r *form.Reader, left *pass) {
	name := r.Text(form.Number)
	if name == "" {
		name = r.Text(form.Engine)
	}
	if name == "" {
		a.Say("sheet.line", sheetLine(left.state()))
	} else {
		a.Say("sheet.line", sheetLineOf(name, left.state()))
	}
}

// state says in a few words how far a job's truing is.
func (a answers) state(r *form.Reader) {
	a.Say("state", lastPass(a.Kept, r).state())
}

// Begun tells whether a job holds a reading of its crank.
func Begun(_ *bench.Kept, f form.Form) bool {
	for name, text := range f {
		if field, _, ok := form.Job.Lookup(name); ok && text != "" && (field.ID == form.ReadingTIR || field.ID == form.ReadingTurn) {
			return true
		}
	}
	return false
}

// ReadAgain tells whether a round after the first holds a reading.
func ReadAgain(k *bench.Kept, f form.Form) bool {
	keys, _ := PassKeys(f)
	for _, key := range keys[1:] {
		if !unread(f, key) {
			return true
		}
	}
	return false
}

// Trued tells whether a job's figures show its crank trued: true as last read, or
// gone on with to its nuts.
func Trued(k *bench.Kept, f form.Form) bool { return NutsDrawn(k, f) || endsTrue(k, f) }

// NutsDrawn tells whether its passes tell of nuts drawn up, and of no pressing apart after that.
func NutsDrawn(_ *bench.Kept, f form.Form) (drawn bool) {
	r := form.Read(f)
	keys, _ := passKeys(r)
	for _, key := range keys {
		switch r.Word(form.PassSince, key) {
		case "nuts":
			drawn = true
		case "apart":
			drawn = false
		}
	}
	return drawn
}

// TruedAgain tells whether its figures show it true with the nuts drawn up.
func TruedAgain(k *bench.Kept, f form.Form) bool { return NutsDrawn(k, f) && endsTrue(k, f) }

func endsTrue(k *bench.Kept, f form.Form) bool {
	last := lastPass(k, form.Read(f))
	return last.pin == 0 && last.isTrue()
}

// lastPass works out a job with its last pass on the bench.
func lastPass(k *bench.Kept, r *form.Reader) *pass {
	keys, _ := passKeys(r)
	return passOf(k, r, keys[len(keys)-1])
}

// state says how far a pass has come: never surer than the verdict.
func (p *pass) state() string {
	words := stateWords(p.standing(), p.besideRunOut(crank.Figure{Value: p.advice.Worst.Value}))
	if p.pin > 0 {
		return aloneState(alonePin(p.pin), words)
	}
	return words
}

// rounds works out the first pass and the last, and shows the dials in each.
func (a answers) rounds(r *form.Reader) (found, left *pass) {
	left = lastPass(a.Kept, r)
	found = passOf(a.Kept, r, left.rounds[0].key)
	which := [...]string{"found", "left"}
	both := []*pass{found, left}
	if len(left.rounds) == 1 {
		both = both[:1]
	}
	for i, p := range both {
		if !a.needlesOnSheet(p, which[i]) {
			continue
		}
		a.Say("sheet."+which[i], "yes")
		if !p.several() {
			a.Text("picture.sheet."+which[i], draw.Face(p.highSpots("sheet-"+which[i])))
		}
	}
	if found.several() {
		a.throwsOnSheet(both, which[:])
	}
	from := hoursSeenFrom
	if found.several() {
		from = hoursOfPin1SeenFrom
	}
	a.Say("sheet.from", from(found.SeenFrom()))
	return found, left
}

// needlesOnSheet shows what the dials showed in a round, and tells whether any did: of one
// throw both sides', of several every one.
func (a answers) needlesOnSheet(p *pass, which string) (read bool) {
	for n := range p.reading {
		got, name := &p.reading[n], p.stations[n].name
		if got.lack != nothing || n >= len(sideNames) && !p.several() {
			continue
		}
		read = true
		a.Say("sheet."+which+"."+name, p.needle(got.E, got.HalfWidth95()))
		if n >= len(sideNames) {
			a.Say("sheet."+name, runOutAt(p.dialAt(n)))
		}
	}
	return read
}

// throwsOnSheet draws a crank of several throws as it sat in each of the passes, its bend
// alike too big.
func (a answers) throwsOnSheet(passes []*pass, which []string) {
	factor := 0.0
	for _, p := range passes {
		v := p.throwsView("", p.throws.stand)
		if own := v.RoundFactor(); own > 0 && (factor == 0 || own < factor) {
			factor = own
		}
	}
	for i, p := range passes {
		v := p.throwsView("sheet-"+which[i], p.throws.stand)
		v.Factor = factor
		a.Text("picture.sheet."+which[i], draw.ThrowsBend(v))
	}
}

// plain tells the customer how the crank came and how it goes.
func (a answers) plain(found, left *pass, assumed bool) {
	worst, allowed := left.besideRunOut(crank.Figure{Value: left.advice.Worst.Value}), left.limit()
	standing := left.standing()
	if left.pin > 0 {
		a.Say("sheet.plain", notJoined(left.state()))
		return
	}
	if standing == unmeasured {
		a.Say("sheet.plain", plainWords(standing, worst, allowed))
		return
	}
	switch leans := left.leansOnly(); {
	case leans && assumed:
		a.Say("sheet.plain", leansAsAssumed(worst, allowed))
	case leans:
		a.Say("sheet.plain", leansTooMuch(worst, allowed))
	default:
		a.Say("sheet.plain", plainWords(standing, worst, allowed))
	}
	if len(left.rounds) > 1 && !left.joined && found.wants < 0 && found.fault == nil {
		a.Say("sheet.came", cameAt(found.Amount(found.advice.Worst.Value)))
	}
}
