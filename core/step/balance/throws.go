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

// lookedAt reads the throw that is looked at.
func lookedAt(a *bench.Answers, r *form.Reader) *crank {
	all, looked := readThrows(a, r)
	r.Pin = all[looked].pins[looked].Key
	return all[looked]
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
	default:
		s.want(joinedUntold, form.KnifeWhat)
	}
}

// unweighed tells whether it is a throw of several by a factor that is stated: nothing is
// drilled by that.
func (s *crank) unweighed() bool { return s.several() && s.job.HasStated }

// here tells whether a hole, or a place to keep off, is in this throw.
func (s *crank) here(pin form.ID, key string) bool {
	return !s.several() || s.r.Word(pin, key) == strconv.Itoa(s.nth+1)
}

// together says where each throw of several stands, and the forces and the couples that
// they leave as found and as aimed at.
func together(throws []*crank, looked int) {
	s := throws[0]
	if !s.several() {
		return
	}
	s.Say("throws.any", "yes")
	if len(throws) == mostThrows {
		s.Say("balance.three", "yes")
	}
	s.Say("balance.pin", pinName(looked))
	s.Text("looked", strconv.Itoa(looked+1))
	var lines []string
	var found, aim balance.InLine
	told := true
	for n, t := range throws {
		if n > 0 {
			s.Say("pin."+t.pins[n].Key+".name", pinName(n))
		}
		s.r.Pin = t.pins[n].Key
		stands, corrections, ok := t.solve()
		if told = told && ok && t.placed(); !ok {
			continue
		}
		to := corrections[0].Factor.X
		lines = append(lines, pinCarries(pinName(n), t.within(stands.Factor), bench.Percent(to),
			t.weight(t.job.Before.CounterG(stands.Factor.X)/2), t.weight(t.job.After.CounterG(to)/2)))
		t.join(&found, &t.job.Before, stands.Factor.X, stands.SideGMM.X)
		t.join(&aim, &t.job.After, to, 0)
	}
	s.Say("balance.throws", strings.Join(lines, "\n"))
	switch {
	case told:
		s.Say("balance.shake", s.shake(&found, whenFound)+"\n"+s.shake(&aim, whenAimed))
	case len(lines) > 0:
		s.Say("balance.shake", shakeUntold)
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

// shake says what an engine leaves at the last speed given.
func (s *crank) shake(e *balance.InLine, when string) string {
	rpm := s.rpm[len(s.rpm)-1]
	force, couple, err := e.Shaking(rpm)
	if err != nil {
		s.complain(err)
		return ""
	}
	words := []string{bench.Plain(rpm, 1), when}
	for _, newtons := range [...]float64{force.Primary(), force.Along(), force.Across(), force.Secondary()} {
		words = append(words, bench.Plain(newtons/1000, 0.01))
	}
	for _, metres := range [...]float64{couple.Primary(), couple.Along(), couple.Across(), couple.Secondary()} {
		words = append(words, bench.Plain(metres, 0.1))
	}
	return shakes(words)
}
