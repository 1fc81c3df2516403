package sheet

import (
	"strings"

	"pintwelve/core/crank"
	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/step/balance"
	"pintwelve/core/step/fitting"
	"pintwelve/core/step/lighten"
	"pintwelve/core/unit"
)

// Sheet is the part that sums a job up: for the customer in plain words, and for
// the file in figures.
const Sheet = "sheet"

// jobSheet answers the sheet: the crank as found and as left, the passes between,
// and of the other steps what the job holds.
func jobSheet(a *Answers, r *form.Reader) {
	a.known(r)
	a.shop(r)
	found, left := a.rounds(r)
	assumed := distancesAssumed(r)
	a.plainWords(found, left, assumed)
	a.line(r, left)
	if left.wants < 0 && left.fault == nil {
		if assumed {
			a.say("sheet.assumed", "This crank’s distances were assumed, not measured: how it would run and lean in its bearings is left out.")
		} else {
			a.sit(left)
		}
	}
	for i, d := range left.rounds {
		at := "pass." + d.key + "."
		a.say(at+"said", "%: %%", passName(i), left.roundWords(&d), left.doneWords(i))
		a.say(at+"noted", "%", r.Text(form.PassNote, d.key))
	}
	for _, p := range sheetParts {
		if p.held(r.Form) {
			a.say("sheet.has."+p.name, "yes")
			p.answer(a, r)
		}
	}
}

// known says what the job is known by.
func (a *Answers) known(r *form.Reader) {
	a.say("sheet.title", "%", r.Text(form.Number))
	a.say("sheet.engine", "%", r.Text(form.Engine))
	a.say("sheet.owner", "%", r.Text(form.Owner))
	a.say("sheet.in", "%", dateWords(r.Text(form.DateIn)))
	a.say("sheet.out", "%", dateWords(r.Text(form.DateOut)))
	a.say("sheet.notes", "%", r.Text(form.Notes))
}

// shop says who did the work, and draws their mark.
func (a *Answers) shop(r *form.Reader) {
	a.say("shop.name", "%", r.Text(form.ShopName))
	a.say("shop.telephone", "%", r.Text(form.ShopTelephone))
	if letters := strings.TrimFunc(r.Text(form.ShopMark), unit.IsSpace); letters != "" {
		shape := map[string]draw.Shape{"hexagon": draw.Hexagon, "shield": draw.Shield}[r.Word(form.ShopShape)]
		a.text("picture.shop", draw.Shop(draw.ShopMark{Prefix: "shop", Letters: letters, Shape: shape}))
	}
	if r.Text(form.ShopName)+r.Text(form.ShopTelephone)+r.Text(form.ShopMark) != "" {
		a.say("sheet.shop", "yes")
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
func (a *Answers) line(r *form.Reader, left *pass) {
	name := r.Text(form.Number)
	if name == "" {
		name = r.Text(form.Engine)
	}
	if name != "" {
		name = " " + name
	}
	if left.wants >= 0 || left.fault != nil || left.pressed {
		a.say("sheet.line", "Job sheet%: not measured to the end yet", name)
		return
	}
	template := "Job sheet%: not true yet, %"
	switch left.advice.Verdict {
	case crank.Fit:
		template = "Job sheet%: true to %"
	case crank.FitAsHung:
		template = "Job sheet%: true as it hangs, to %"
	case crank.TooClose:
		template = "Job sheet%: % as read, too close to call"
	case crank.NotMendable:
		if _, asked := left.asks(crank.AskCentres); !asked {
			template = "Job sheet%: can’t be trued as it stands, %"
		}
	case crank.CantTell:
		template = "Job sheet%: %, more readings wanted"
	}
	a.say("sheet.line", template, name, left.besideRunOut(crank.Figure{Value: left.advice.Worst.Value}))
}

const months = "JanFebMarAprMayJunJulAugSepOctNovDec"

// dateWords writes a date as people read it: "9 Mar 2026". What is no date
// stands as it is.
func dateWords(date string) string {
	if len(date) != 10 || date[4] != '-' || date[7] != '-' {
		return date
	}
	month := 10*int(date[5]-'0') + int(date[6]-'0')
	if month < 1 || month > 12 {
		return date
	}
	return fill("% % %", strings.TrimPrefix(date[8:], "0"), months[3*month-3:3*month], date[:4])
}

// rounds works out the first pass and the last, and shows both dials in each.
func (a *Answers) rounds(r *form.Reader) (found, left *pass) {
	keys, _ := passKeys(r.Form)
	found, left = passOf(r, keys[0]), passOf(r, keys[len(keys)-1])
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
				a.say("sheet."+which+"."+side, "%", p.needle(got.E, got.HalfWidth95()))
			}
		}
		if read {
			a.say("sheet."+which, "yes")
			a.text("picture.sheet."+which, draw.Face(p.highSpots("sheet-"+which)))
		}
	}
	a.say("sheet.from", "Hours run clockwise as seen from the % side; 12 is the crankpin.", found.seenFrom())
	return found, left
}

// passOf works out the job with one of its passes on the bench.
func passOf(r *form.Reader, key string) *pass {
	return workOut(form.Read(with(r.Form, form.Form{"bench": key})))
}

// plainWords tell the customer how the crank came and how it goes.
func (a *Answers) plainWords(found, left *pass, assumed bool) {
	if left.wants >= 0 || left.fault != nil || left.pressed {
		a.say("sheet.plain", "Not measured to the end yet.")
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
	a.say("sheet.plain", template, worst, allowed)
	if len(left.rounds) > 1 && found.wants < 0 && found.fault == nil {
		a.say("sheet.came", "It came at %.", found.amount(found.advice.Worst.Value))
	}
}

// sheetPart is a step of the work that the sheet takes in where the job holds
// any of its fields.
type sheetPart struct {
	name   string
	answer func(*Answers, *form.Reader)
	begins string // the beginnings of its fields' names
}

var sheetParts = [...]sheetPart{
	{fitting.Found.Name, apart(&fitting.Found), fitting.Found.Fields},
	{lighten.Step.Name, apart(&lighten.Step), lighten.Step.Fields},
	{balance.Step.Name, apart(&balance.Step), balance.Step.Fields},
	{fitting.Measure.Name, apart(&fitting.Measure), fitting.Measure.Fields},
	{fitting.PressUp.Name, apart(&fitting.PressUp), fitting.PressUp.Fields},
	{fitting.Cases.Name, apart(&fitting.Cases), fitting.Cases.Fields},
}

func (p *sheetPart) held(f form.Form) bool {
	for name, text := range f {
		first, _, _ := strings.Cut(name, ".")
		if text != "" && strings.Contains(" "+p.begins, " "+first+". ") {
			return true
		}
	}
	return false
}
