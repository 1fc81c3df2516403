package truing

import (
	"slices"
	"strconv"
	"strings"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// asks tells whether a thing is asked, and of which pass.
func (p *pass) asks(what crank.What) (pass int, asked bool) {
	for _, ask := range p.next.Asks {
		if ask.What == what {
			return ask.Pass, true
		}
	}
	return 0, false
}

// asksSince tells whether it is asked what came before the round on the bench: that
// of the pass itself, or of one that it is taken together with.
func (p *pass) asksSince() (pass int, asked bool) {
	if pass, asked = p.asks(crank.AskSince); !asked {
		return 0, false
	}
	for i := pass; i < p.bench; i++ {
		asked = asked && len(p.rounds[i].did) == 0
	}
	return pass, asked
}

// askSince asks what came between two rounds that differ: before it is answered,
// the later one alone is gone by.
func (a answers) askSince(p *pass, pass int) {
	a.Say("truing.headline", whatWasDone(afterName(pass-1)))
	then := differUnlogged
	if p.next.Rounds > 1 && pass == p.bench {
		then = alikeUnlogged
	}
	for i := range p.next.Tries {
		if t := &p.next.Tries[i]; t.Assumed && t.Pass == pass-1 {
			then = movedAsAdvised
		}
	}
	if p.next.Why == crank.Work {
		then = asTheyStand(then, lowerFirst(p.doMove(&p.moves[0])))
	}
	a.Say("truing.then", then)
	if len(p.advisedAt(p.past[:pass], &p.rounds[pass-1])) > 1 {
		a.Say("ask.first", "yes")
	}
	a.Say("ask.since", "yes")
	a.Text("ask.since", form.PassSince.Name(p.rounds[pass].key))
}

// smallAsks are those that stand beside an answer.
func (a answers) smallAsks(p *pass) {
	if pass, asked := p.asks(crank.AskPressure); asked {
		a.Say("ask.pressure", backItOff)
		a.Text("ask.pressure", form.PassTailstock.Name(p.rounds[pass].key))
	}
	if _, asked := p.asks(crank.AskReadAgain); asked {
		a.Say("ask.again", readOnceMore)
	}
	if p.next.Discrepancy.Value > 0 {
		a.Say("ask.unlike", needleDiffers(p.Amount(p.next.Discrepancy.Value)))
	}
	pass, asked := p.asks(crank.AskSince)
	if _, here := p.asksSince(); asked && !here {
		a.Say("ask.earlier", sayItThere(afterName(pass-1), afterName(pass)))
	}
}

// nearCentre is about where a place close to a shaft's centre is, mm from that
// shaft's own end: a fifth of the way to its dial, by judgement.
func (s *setUp) nearCentre(half clock.End) float64 {
	return abs(s.dialOf(half)-s.crank.Support[half]) / 5
}

// untried are the shafts that are read at one place only.
func (s *setUp) untried() (halves []clock.End) {
	places := [2]int{}
	for i := range s.stations {
		places[s.stations[i].half]++
	}
	for half, n := range places {
		if n < 2 {
			halves = append(halves, clock.End(half))
		}
	}
	return halves
}

// NearCentres returns the fields that add a place close to its centre on each shaft
// that is read at one place only, under new rows with the keys given.
func NearCentres(f form.Form, rows [2]string) form.Form {
	r := form.Read(f)
	keys, on := passKeys(r)
	of := stageOf(nil, r, keys[on])
	s := readSetUp(of.read)
	changes := form.Form{}
	for i, half := range s.untried() {
		changes[form.DialHalf.Name(rows[i])] = s.SideOf[half]
		changes[form.DialAt.Name(rows[i])] = unit.Figures(s.nearCentre(half), unit.MM, 1)
		changes[form.DialOrder.Name(rows[i])] = strconv.Itoa(len(sideNames) + len(r.Rows("dial")) + i)
		if of.pin > 0 {
			changes[form.DialOf.Name(rows[i])] = strconv.Itoa(of.pin)
		}
	}
	return changes
}

// stopWords say why to hit it no more, what is likely wrong, and what would tell.
func (a answers) stopWords(p *pass) {
	a.Say("truing.headline", stopFindOut)
	var causes []string
	for _, c := range p.next.Causes {
		causes = append(causes, causeWords[c])
	}
	a.Say("truing.then", likeliestFirst(strings.Join(causes, "; ")))
	a.Say("truing.hard", p.quickTest())
	a.Say("truing.long", "yes")
}

// unmendable says where to look when bumping is no help, the likeliest first.
func (p *pass) unmendable(pins string) string {
	words := ""
	for _, c := range p.next.Causes {
		switch c {
		case crank.LowForHigh:
			words += lowForHighShows + " "
			pins = elseMismatch // which is gone into once it is read again
		case crank.Hinged:
			words += squeezeHinged + " "
		case crank.CentreOrShaft:
			words += badCentreShows + " "
		}
	}
	return words + pins
}

// quickTest words the test that tells the causes of a stop apart: what the needle
// stands at if each is so, those that it can't tell apart together.
func (p *pass) quickTest() string {
	w := &p.next.Witness
	if w.Shows == 0 && w.Mirrored == 0 && w.Exchanged == 0 {
		return freshChalk
	}
	var shown, means []string
	for _, each := range [...]struct {
		mm    float64
		means string
	}{{w.Shows, fellElsewhere}, {w.Mirrored, fromOtherEnd}, {w.Exchanged, dialsExchanged}} {
		at := p.offMiddle(each.mm)
		n := slices.Index(shown, at)
		if n < 0 {
			shown, means = append(shown, at), append(means, each.means)
			continue
		}
		means[n] = oneOf([]string{means[n], each.means})
	}
	test := quickTest(p.at(w.Hour), p.SideOf[w.Half], p.Unit.Name())
	for i := range shown {
		test += ifItShows(shown[i], means[i])
	}
	return test + "."
}

// offMiddle writes how far a needle stands from the middle of its swing.
func (s *setUp) offMiddle(mm float64) string {
	if s.Bare(mm) != "0" && mm > 0 {
		return "+" + s.Bare(mm)
	}
	return s.Bare(mm)
}

// askValues tells what is asked, each with the field that answers it, and of a
// reading where it is to be taken.
func (a answers) askValues(p *pass) {
	n := 0
	ask := func(what, field string, choices ...string) (at string) {
		at = "asks/" + strconv.Itoa(n) + "/"
		n++
		a.Text(at+"what", what)
		if field != "" {
			a.Text(at+"field", field)
		}
		for i, choice := range choices {
			a.Text(at+"choices/"+strconv.Itoa(i), choice)
		}
		return at
	}
	p.askMeanings(ask)
	switch {
	case p.wants >= 0:
		ask("reading", lackNames[p.reading[p.wants].lack].Name(p.key, p.stations[p.wants].name))
	case p.pressed:
		ask(adviceNames[crank.Unclear], "")
	case p.fault != nil:
		for _, name := range p.lacks {
			ask("distance", name)
		}
	default:
		for _, each := range p.next.Asks {
			key := p.rounds[each.Pass].key
			switch each.What {
			case crank.AskSince:
				ask("since", form.PassSince.Name(key), "said", "first", "else", "nuts", "apart", "nothing")
			case crank.AskCentres:
				at := ask("centres", p.name(form.Centres.Name()), "good")
				for i, half := range p.untried() {
					place := at + "places/" + strconv.Itoa(i) + "/"
					a.Text(place+"half", p.SideOf[half])
					a.Number(place+"at_mm", p.nearCentre(half))
				}
			case crank.AskPressure:
				ask("pressure", form.PassTailstock.Name(key), "steady", "moved")
			case crank.AskReadAgain:
				ask(adviceNames[crank.Unclear], "")
			case crank.AskWitness:
				ask("witness", "")
			}
		}
		if v := p.advice.Verdict; len(p.next.Asks) == 0 && p.hangsOn == nil && (v == crank.TooClose || v == crank.CantTell) {
			ask("sharper", form.ReadingHow.Name(p.key, p.stations[p.used[p.advice.Weak]].name), p.sharper()...)
		}
	}
	if n == 0 {
		a.EmptyList("asks")
	}
}

// lackNames are the fields that give what a reading lacks.
var lackNames = [...]form.ID{
	runOut: form.ReadingTIR, hour: form.ReadingHigh, halfway: form.ReadingRise, pinAt: form.ReadingPinAt, points: form.ReadingTurn, mending: form.ReadingTIR,
}

// sharper are the ways of reading that would tell more than the dial's that weighs most.
func (p *pass) sharper() (ways []string) {
	better := p.reading[p.used[p.advice.Weak]].Better
	if better.HalfWay {
		ways = append(ways, "halfway")
	}
	if better.MorePoints {
		ways = append(ways, "turn")
	}
	return ways
}

// stopValue tells why to stop, and the one quick test.
func (a answers) stopValue(p *pass) {
	if p.wants >= 0 || p.fault != nil || p.next.Why != crank.Stop {
		a.Null("stop")
		return
	}
	for i, c := range p.next.Causes {
		a.Text("stop/causes/"+strconv.Itoa(i), causeNames[c])
	}
	a.Text("stop/test", p.quickTest())
}
