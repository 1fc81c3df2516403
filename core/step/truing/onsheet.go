package truing

import (
	"strings"

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
	assumed := distancesAssumed(r)
	a.plainWords(found, left, assumed)
	a.line(r, left)
	if left.wants < 0 && left.fault == nil {
		if left.several() {
			a.throwsSit(left)
		} else if assumed {
			a.Say("sheet.assumed", "This crank’s distances were assumed, not measured: how it would run and lean in its bearings is left out.")
		} else {
			a.sit(left)
		}
	}
	for i, d := range left.rounds {
		at := "pass." + d.key + "."
		a.Say(at+"said", "%: %%", passName(i), left.roundWords(&d), left.doneWords(i))
		a.Say(at+"noted", "%", r.Text(form.PassNote, d.key))
	}
}

// distancesAssumed tells whether any of the distances that turn run-out into
// what is wrong at the pin and in the bearings is a stand-in.
func distancesAssumed(r *form.Reader) bool {
	own := form.Read(r.Form)
	readSetUp(own)
	for _, s := range own.StandIns {
		if f, _, _ := form.Job.Lookup(s.Name); f.Unit == unit.MM {
			return true
		}
	}
	return false
}

// line is the sheet in one line, to go with it into a message: never surer than
// the verdict.
func (a answers) line(r *form.Reader, left *pass) {
	name := r.Text(form.Number)
	if name == "" {
		name = r.Text(form.Engine)
	}
	if name != "" {
		name = " " + name
	}
	a.Say("sheet.line", "Job sheet%: %", name, left.state())
}

// state says in a few words how far a job's truing is.
func (a answers) state(r *form.Reader) {
	keys, _ := PassKeys(r.Form)
	a.Say("state", "%", a.passOf(r.Form, keys[len(keys)-1]).state())
}

// Begun tells whether a job holds a reading of its crank.
func Begun(f form.Form) bool {
	for name, text := range f {
		if text != "" && strings.HasPrefix(name, "pass.") && (strings.HasSuffix(name, ".tir") || strings.HasSuffix(name, ".turn")) {
			return true
		}
	}
	return false
}

// Trued tells whether a job's figures show its crank trued: true as last read, or
// gone on with to its nuts.
func Trued(f form.Form) bool { return NutsDrawn(f) || endsTrue(f) }

// NutsDrawn tells whether its passes tell of nuts drawn up.
func NutsDrawn(f form.Form) bool {
	keys, _ := PassKeys(f)
	for _, key := range keys {
		if form.Read(f).Word(form.PassSince, key) == "nuts" {
			return true
		}
	}
	return false
}

// TruedAgain tells whether its figures show it true with the nuts drawn up.
func TruedAgain(f form.Form) bool { return NutsDrawn(f) && endsTrue(f) }

func endsTrue(f form.Form) bool {
	keys, _ := PassKeys(f)
	p := workOut(form.Read(f.With(form.Form{form.Bench.Name(): keys[len(keys)-1]})), nil)
	return p.wants < 0 && p.fault == nil && !p.pressed && (p.advice.Verdict == crank.Fit || p.advice.Verdict == crank.FitAsHung)
}

// state says how far a pass has come: never surer than the verdict.
func (p *pass) state() string {
	if p.wants >= 0 || p.fault != nil || p.pressed {
		return "not measured to the end yet"
	}
	template := "not true yet, %"
	switch p.advice.Verdict {
	case crank.Fit:
		template = "true to %"
	case crank.FitAsHung:
		template = "true as it hangs, to %"
	case crank.TooClose:
		template = "% as read, too close to call"
	case crank.NotMendable:
		if _, asked := p.asks(crank.AskCentres); !asked {
			template = "can’t be trued as it stands, %"
		}
	case crank.CantTell:
		template = "%, more readings wanted"
	}
	return bench.Fill(template, p.besideRunOut(crank.Figure{Value: p.advice.Worst.Value}))
}

// rounds works out the first pass and the last, and shows both dials in each.
func (a answers) rounds(r *form.Reader) (found, left *pass) {
	keys, _ := PassKeys(r.Form)
	found, left = a.passOf(r.Form, keys[0]), a.passOf(r.Form, keys[len(keys)-1])
	for i, p := range [...]*pass{found, left} {
		which := [...]string{"found", "left"}[i]
		if i == 1 && len(keys) == 1 {
			break
		}
		read := false
		for n, side := range sideNames {
			got := &p.reading[n]
			if got.lack == nothing {
				read = true
				a.Say("sheet."+which+"."+side, "%", p.needle(got.E, got.HalfWidth95()))
			}
		}
		if read {
			a.Say("sheet."+which, "yes")
			a.Text("picture.sheet."+which, draw.Face(p.highSpots("sheet-"+which)))
		}
	}
	a.Say("sheet.from", "Hours run clockwise as seen from the % side; 12 is the crankpin.", found.SeenFrom())
	return found, left
}

// plainWords tell the customer how the crank came and how it goes.
func (a answers) plainWords(found, left *pass, assumed bool) {
	if left.wants >= 0 || left.fault != nil || left.pressed {
		a.Say("sheet.plain", "Not measured to the end yet.")
		return
	}
	worst, allowed := left.besideRunOut(crank.Figure{Value: left.advice.Worst.Value}), left.limit()
	template := "Not true yet: a shaft still moves % over one turn; % is allowed."
	switch left.advice.Verdict {
	case crank.Fit:
		template = "The crank runs true: over one turn neither shaft moves more than %; % is allowed."
	case crank.FitAsHung:
		template = "Hung between its centres the crank runs true: over one turn neither shaft moves more than %; % is allowed. The centres themselves were not tried."
	case crank.TooClose:
		template = "The crank runs true or very nearly, as far as the dials can tell: %, and % is allowed."
	case crank.NotMendable:
		template = "As it stands the crank can’t be trued: a shaft moves % over one turn, % is allowed, and its halves don’t match."
		if _, asked := left.asks(crank.AskCentres); asked {
			template = "As it stands the crank can’t be trued: a shaft moves % over one turn, % is allowed. Its halves don’t match, or a centre or a shaft is bad: that was not tried."
		}
	}
	if _, leans := left.leans(); leans && left.advice.Verdict != crank.TooClose {
		template = "Not true yet: over one turn no shaft moves more than %, and % is allowed, but a shaft leans in its bearing more than it may."
		if assumed {
			template = strings.TrimSuffix(template, ".") + ", as reckoned with assumed distances."
		}
	}
	a.Say("sheet.plain", template, worst, allowed)
	if len(left.rounds) > 1 && found.wants < 0 && found.fault == nil {
		a.Say("sheet.came", "It came at %.", found.amount(found.advice.Worst.Value))
	}
}
