package truing

import (
	"math"
	"strconv"
	"strings"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// stage is what passes are of: the whole crank, or before it is joined a pin alone with its
// two pieces, which is a crank of one throw. Its passes are read from a form that holds no
// other stage's, so that nothing that was done to one counts for another.
type stage struct {
	pin  int               // counted from the left; 0: the whole crank
	job  form.Form         // the job
	form form.Form         // this stage alone, a pin's with the lengths of its own pieces
	from map[string]string // the job's names for what stands in form under others

	staged bool // the job has passes of a pin alone
}

// stageOf is the stage of a pass.
func stageOf(f form.Form, pass string) *stage {
	of, staged := stagesOf(f)
	s := &stage{pin: of["pass."+pass], job: f, form: f.With(form.Form{form.Bench.Name(): pass}), staged: staged}
	if !staged {
		return s
	}
	for name := range s.form {
		if !s.holds(name, of) {
			delete(s.form, name)
		}
	}
	if s.pin > 0 {
		s.from = map[string]string{}
		s.measure(strconv.Itoa(s.pin))
	}
	return s
}

// stagesOf are the pins, counted from the left, that the job's passes and its further
// places are of alone, by "pass.k3y"; 0 is the whole crank, which a pin that it lacks is
// taken for. False where all are of the whole.
func stagesOf(f form.Form) (of map[string]int, staged bool) {
	of = map[string]int{}
	pins := 0
	for name, text := range f {
		if !strings.HasSuffix(name, ".of") { // few do, and it is asked at each keystroke
			continue
		}
		field, _, ok := form.Job.Lookup(name)
		if !ok || field.ID != form.PassOf && field.ID != form.DialOf {
			continue
		}
		if pins == 0 {
			pins = 1 + len(f.Rows("pin"))
		}
		if pin := form.Whole(text); pins > 1 && pin > 0 && pin <= pins {
			of[strings.TrimSuffix(name, ".of")] = pin
		}
	}
	return of, len(of) > 0
}

// holds tells whether a field of the job is one of the stage's.
func (s *stage) holds(name string, of map[string]int) bool {
	group, rest, _ := strings.Cut(name, ".")
	switch group {
	case "pass", "dial":
		key, _, _ := strings.Cut(rest, ".")
		return of[group+"."+key] == s.pin
	case "pin":
		return s.pin == 0
	}
	return true
}

// measure puts the lengths of a pin's own pieces in the place of the whole crank's. An end
// piece has the crank's; an inner one is measured from its own free end.
func (s *stage) measure(pin string) {
	whole := readSetUp(form.Read(s.job))
	t := &whole.throws
	j := s.pin - 1
	if key := t.keys[j]; key != "" && s.job[form.PinThrow.Name(key)] != "" {
		s.put(form.Throw.Name(), form.PinThrow.Name(key))
	}
	if mount := form.AloneMount.Name(pin); s.job[mount] != "" {
		s.put(form.Mount.Name(), mount)
	}
	s.put(form.Centres.Name(), form.AloneCentres.Name(pin))
	for end, side := range whole.SideOf {
		own, piece := "alone."+pin+"."+side, j+end
		inner := piece > 0 && piece < len(t.Joints)
		for _, id := range lengthsAlone {
			if inner || s.job[id.Name(own)] != "" {
				s.put(id.Name(side), id.Name(own))
			}
		}
		bearing := form.ShaftBearing.Name(side)
		if inner {
			s.put(form.ShaftTip.Name(side), "")
			s.put(bearing, "")
			s.form[bearing] = s.bearing(t, piece, own)
		} else if s.job[bearing] == "" { // what stands in for it is the whole crank's
			s.form[bearing] = whole.fromEnd(clock.End(end), whole.crank.Bearing[end])
		}
	}
}

// lengthsAlone are those that an inner piece is measured by.
var lengthsAlone = [...]form.ID{form.ShaftPin, form.ShaftAt, form.ShaftHeld}

// put has a name of the stage's form stand for one of the job's; "" for none.
func (s *stage) put(name, from string) { s.form[name], s.from[name] = s.job[from], from }

// bearing is how far an inner journal's main bearing stands from its free end, as typed;
// "" where that isn't known.
func (s *stage) bearing(t *throws, piece int, own string) string {
	pin, given := form.Read(s.job).Number(form.ShaftPin, own)
	for _, m := range t.Mains {
		if off := math.Abs(m.At - t.Joints[s.pin-1].At); given && m.Piece == piece && off <= pin {
			return unit.Format(pin-off, unit.MM, 0.1)
		}
	}
	return ""
}

// name is the job's own name for a field of the stage's form; "" where it has none.
func (s *stage) name(name string) string {
	if from, other := s.from[name]; other {
		return from
	}
	return name
}

// rename has what was told of the stage's form told by the job's own names.
func (s *stage) rename(r *form.Reader) {
	for i := range r.Problems {
		r.Problems[i].Name = s.name(r.Problems[i].Name)
	}
	for i := range r.Doubts {
		r.Doubts[i].Name = s.name(r.Doubts[i].Name)
	}
	kept := r.StandIns[:0]
	for _, in := range r.StandIns {
		if in.Name = s.name(in.Name); in.Name != "" {
			kept = append(kept, in)
		}
	}
	r.StandIns = kept
}

// lacks are the lengths of a pin alone that aren't measured, by the job's names: its levers
// are short, and a guess would tell the wrong amounts.
func (p *pass) lacks(r *form.Reader) (names []string) {
	if p.pin == 0 {
		return nil
	}
	for _, side := range p.SideOf {
		for _, id := range lengthsAlone {
			if (id != form.ShaftHeld || p.heldAt == id) && r.Blank(id, side) {
				names = append(names, p.name(id.Name(side)))
			}
		}
	}
	return names
}

// pinAlone tells the page whether a pass may be of a pin alone, and of one that is which
// of its lengths are its own.
func (a answers) pinAlone(p *pass, r *form.Reader) {
	pins := len(r.Rows("pin")) + 1
	if pins > 1 && r.Text(form.TrySeed) == "" {
		a.Say("alone.may", "yes")
	}
	if p.pin == 0 {
		if pins > 1 && !r.Blank(form.PassOf, p.key) {
			r.Complain(noSuchPin(strconv.Itoa(pins)), form.PassOf, p.key)
		}
		return
	}
	a.Say("alone.name", alonePin(p.pin))
	a.Say("throws.look", pinOnFace(alonePin(p.pin)))
	for _, side := range p.SideOf {
		if _, inner := p.from[form.ShaftTip.Name(side)]; inner {
			a.Say("alone."+side, "yes")
		}
	}
	if p.heldAt == form.ShaftHeld {
		a.Say("alone.held", "yes")
	}
}

// stages are a pass of each stage of the job: the one on the bench, and of each other
// the last.
func (a answers) stages(p *pass) []*pass {
	all := []*pass{p}
	if !p.staged {
		return all
	}
	of, _ := stagesOf(p.job)
	keys, _ := PassKeys(p.job)
	for i := len(keys) - 1; i >= 0; i-- {
		seen := false
		for _, other := range all {
			seen = seen || other.pin == of["pass."+keys[i]]
		}
		if !seen {
			all = append(all, passOf(a.Kept, p.job, keys[i]))
		}
	}
	return all
}

// onward is which pin is to be trued alone next, once that on the bench is; 0 where every
// one is.
func (a answers) onward(p *pass) int {
	stages := a.stages(p)
	for pin := 1; pin <= len(p.job.Rows("pin"))+1; pin++ {
		done := pin == p.pin
		for _, other := range stages[1:] {
			done = done || other.pin == pin && other.left()
		}
		if !done {
			return pin
		}
	}
	return 0
}

// isTrue tells whether what is on the bench is true, surely or as it hangs.
func (p *pass) isTrue() bool {
	is := p.standing()
	return is == standing(crank.Fit) || is == standing(crank.FitAsHung) || is == leansOpen
}

// left tells whether it is to be left as it is: true, or inside as it reads.
func (p *pass) left() bool { return p.next.Why == crank.Leave && !p.pressed }

// leaveIt says that a crank is true in the words for the whole, or of a pin alone how, and
// what comes next.
func (a answers) leaveIt(p *pass, whole, alone string) string {
	if p.pin == 0 {
		return whole
	}
	next := joinNext
	if pin := a.onward(p); pin > 0 {
		next = aloneNext(pinName(pin - 1))
	}
	return aloneIs(alonePin(p.pin), alone, next)
}

// join offers what comes after a pin that is true alone.
func (a answers) join(p *pass) {
	if pin := a.onward(p); pin > 0 {
		a.Say("truing.alone", readAloneNext(pinName(pin-1)))
		a.Text("next.alone", strconv.Itoa(pin))
	}
	a.Say("truing.join", joinedReadWhole)
}

// passName names one of the stage's passes, counted from 0.
func (s *stage) passName(i int) string {
	switch {
	case s.pin > 0:
		return passOfStage(alonePin(s.pin), lowerFirst(passName(i)))
	case s.staged:
		return passOfStage(wholeCrank, lowerFirst(passName(i)))
	}
	return passName(i)
}
