package balance

import (
	"strconv"
	"strings"

	"pintwelve/core/balance"
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
)

// mostThrows is how many throws are balanced: a crank of more wants a machine.
const mostThrows = 3

// readThrows reads the throws of a crank, each as a crank by itself, and which is looked
// at: the one touched, else the first that lacks something. The reader stays with that.
func readThrows(a *bench.Answers, r *form.Reader) (all []*crank, looked int) {
	pins := []bench.Pin{{ThrowMM: r.Default(form.Throw)}}
	if len(r.Rows("pin")) > 0 {
		ends := bench.ReadEnds(r)
		first, _ := r.Number(form.ShaftPin, ends.SideOf[clock.Left])
		pins = bench.ReadPins(r, ends.Seen, first, bench.WheelMM(r))
	}
	for n := range min(len(pins), mostThrows) {
		s := readCrank(a, r, pins, n)
		if all = append(all, s); all[looked].ask == "" && s.ask != "" {
			looked = n
		}
	}
	if pin := form.Whole(r.Text(form.Look)); pin > 0 && pin <= len(all) {
		looked = pin - 1
	}
	return all, looked
}

// atOnce are the throws that are planned and drilled at once: the one that is looked at, or
// all that are weighed together.
func atOnce(all []*crank, looked int) []*crank {
	if all[looked].joined {
		return all
	}
	return all[looked : looked+1]
}

// several tells whether it is one throw of several.
func (s *crank) several() bool { return len(s.pins) > 1 }

// ofSeveral asks of one throw of several whether it can be weighed by itself.
func (s *crank) ofSeveral() {
	apart := s.r.Word(form.KnifeApart)
	switch {
	case !s.several():
	case len(s.pins) > mostThrows:
		s.want(tooManyThrows, form.KnifeApart)
	case s.unweighed():
	case apart == "":
		s.want(areTheyApart, form.KnifeApart)
	case apart == "apart":
		s.Say("balance.first", firstThrow)
	case !s.alike():
		s.want(joinedUntold, form.KnifeWhat)
	case s.r.Word(form.KnifeWhat) != "whole":
		s.want(weighItWhole, form.KnifeWhat)
	default:
		s.joined, s.pin, s.r.Pin = true, "", ""
		s.Say("balance.joined", weighedWhole)
	}
}

// alike tells whether all pins stand at one hour with one throw: one reading of the crank
// whole then tells what the throws carry together.
func (s *crank) alike() bool {
	for _, p := range s.pins {
		if p.Hour != 0 && p.Hour != 12 || p.ThrowMM != s.pins[0].ThrowMM {
			return false
		}
	}
	return true
}

// weighedAtOnce is how many throws a reading is of.
func (s *crank) weighedAtOnce() float64 {
	if s.joined {
		return float64(len(s.pins))
	}
	return 1
}

// unweighed tells whether it is a throw of several by a factor that is stated: nothing is
// drilled by that.
func (s *crank) unweighed() bool { return s.several() && s.job.HasStated }

// here tells whether a hole, or a place to keep off, is in this throw.
func (s *crank) here(pin form.ID, key string) bool {
	return !s.several() || s.r.Word(pin, key) == strconv.Itoa(s.nth+1)
}

// together says where the throws stand, and of several the forces and the couples that
// they leave as found and as aimed at.
func together(a *bench.Answers, throws []*crank, looked int) {
	r := throws[0].r
	for n, s := range throws {
		if r.Pin = s.pin; n > 0 {
			a.Say("pin."+s.pins[n].Key+".name", pinName(n))
		}
		if came := r.Name(form.KnifeCame); r.Form[came] != "" {
			a.Say(came, "yes")
		}
	}
	if !throws[0].several() {
		return
	}
	a.Say("throws.any", "yes")
	if len(throws) == mostThrows {
		a.Say("balance.three", "yes")
	}
	a.Say("balance.pin", pinName(looked))
	a.Text("looked", strconv.Itoa(looked+1))
	var lines []string
	var found, aim balance.InLine
	told := true
	for _, s := range throws {
		r.Pin = s.pin
		s.values(a)
		if told = told && s.solved && s.placed(); s.solved {
			lines = append(lines, atPin(pinName(s.nth), s.carries()))
			s.join(&found, &s.job.Before, s.stands.Factor.X, s.stands.SideGMM.X)
			s.join(&aim, &s.job.After, s.remove[0].Factor.X, 0)
		}
	}
	a.Say("balance.throws", strings.Join(lines, "\n"))
	switch {
	case told:
		throws[0].shakes(a, &found, &aim)
	case len(lines) > 0:
		a.Say("balance.shake", shakeUntold)
	}
}

// sheetFactor puts the throw's factor in a column of the sheet.
func (s *crank) sheetFactor(column, factor string) {
	row := "sheet.factor."
	if s.nth > 0 {
		row = "pin." + s.pins[s.nth].Key + ".factor."
	}
	s.all.Say(row+column, factor)
}

// carries says what a throw's wheels carry, and are to.
func (s *crank) carries() string {
	to := s.remove[0].Factor.X
	return carries(s.rests(s.within(s.stands.Factor)), bench.Percent(to),
		s.weight(s.job.Before.CounterG(s.stands.Factor.X)/2), s.weight(s.job.After.CounterG(to)/2))
}

// values gives each throw's figures for the answer program, by the names that they have of
// one throw.
func (s *crank) values(a *bench.Answers) {
	for _, e := range s.Entries {
		if of, ok := strings.CutPrefix(e.Name, "balance."); ok && !strings.HasPrefix(of, "holes/") {
			e.Name = "balance.throws/" + strconv.Itoa(s.nth) + "/" + of
			a.Entries = append(a.Entries, e)
		}
	}
}

// placed tells whether it is measured where the pin stands, and one cylinder is on it.
func (s *crank) placed() bool {
	key := s.pins[s.nth].Key
	if s.nth == 0 {
		return !s.r.Blank(form.ShaftPin, s.SideOf[clock.Left]) && len(s.keys) == 0
	}
	return !s.r.Blank(form.PinAt, key) && !s.r.Blank(form.PinAngle, key)
}

// join puts the throw into an engine by its parts, its factor and how heavy it is towards
// its own 3; its webs count as in the plane of its pin.
func (s *crank) join(e *balance.InLine, parts *balance.Parts, factor, sideGMM float64) {
	at := &s.pins[s.nth]
	p := balance.Pin{
		AtMM: at.AtMM, Hour: at.Hour, ThrowMM: at.ThrowMM, RodMM: s.r.Or(4*at.ThrowMM, form.RodCentres),
		RecG: parts.RecG(), RotG: parts.RotG(),
	}
	web := p.WebGMM(factor)
	e.Pins = append(e.Pins, p)
	e.Webs = append(e.Webs, web, web, balance.Web{AtMM: p.AtMM, GMM: sideGMM, Hour: p.Hour + 3})
	e.AboutMM = (e.Pins[0].AtMM + p.AtMM) / 2
}

// shakes says what an engine leaves as found and as aimed at, at the last speed given, and
// gives the figures at each.
func (s *crank) shakes(a *bench.Answers, found, aim *balance.InLine) {
	words := ""
	for i, rpm := range s.rpm {
		at := "balance.shaking/" + strconv.Itoa(i) + "/"
		a.Number(at+"rpm", rpm)
		words = s.shake(a, found, rpm, at+"found/", whenFound) + "\n" + s.shake(a, aim, rpm, at+"target/", whenAimed)
	}
	note := countedInPlane
	if s.joined {
		note = countedAlike
	}
	a.Say("balance.shake", words+"\n"+note)
}

func (s *crank) shake(a *bench.Answers, e *balance.InLine, rpm float64, at, when string) string {
	force, couple, err := e.Shaking(rpm)
	if err != nil {
		s.complain(err)
		return ""
	}
	words := []string{bench.Plain(rpm, 1), when}
	put := func(at string, h *balance.Harmonic, scale, step float64) {
		of := [...]float64{h.Primary(), h.Along(), h.Across(), h.Secondary()}
		for i, name := range [...]string{"primary", "along", "across", "secondary"} {
			a.Number(at+name, of[i])
			words = append(words, bench.Plain(of[i]/scale, step))
		}
	}
	put(at+"force_n/", &force, 1000, 0.01)
	put(at+"couple_nm/", &couple, 1, 0.1)
	return shakes(words)
}
