package truing

import (
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// stage is what passes are of: the whole crank, or before it is joined a pin alone with its
// two pieces, which is a crank of one throw. Its passes are read from a form that holds no
// other stage's, so that nothing that was done to one counts for another.
type stage struct {
	pin    int          // counted from the left; 0: the whole crank
	on     string       // the pass that is looked at
	job    *form.Reader // of the job
	read   *form.Reader // of this stage alone, a pin's with the lengths of its own pieces
	from   form.Form    // the job's names for what stands in this under others
	staged bool         // the job has passes of a pin alone
	joined bool         // its first pass came after those
}

// stageOf is the stage of a pass.
func stageOf(k *bench.Kept, r *form.Reader, pass string) *stage {
	of := stagesOf(k, r)
	own := of["pass."+pass]
	s := &stage{pin: form.Whole(own), on: pass, job: r, read: r, staged: len(of) > 0}
	if !s.staged {
		return s
	}
	alone := r.Form.With(nil)
	for name := range alone {
		group, rest, _ := strings.Cut(name, ".")
		key, _, _ := strings.Cut(rest, ".")
		if (group == "pass" || group == "dial") && of[group+"."+key] != own || group == "pin" && s.pin > 0 {
			delete(alone, name)
		}
	}
	s.read = form.Read(alone)
	if s.pin > 0 {
		s.from = form.Form{}
		s.measure(own)
	} else if keys, _ := passKeys(r); of["pass."+keys[0]] != "" {
		s.joined = true
	}
	return s
}

// stagesOf are the pins, counted from the left, that the job's passes and its further
// places are of alone, by "pass.k3y"; those of the whole crank aren't among them, for which
// a pin that it lacks is taken.
func stagesOf(k *bench.Kept, r *form.Reader) form.Form {
	of, _ := bench.Once(k, "stages", r, func(r *form.Reader) form.Form {
		of, pins := form.Form{}, 1+len(r.Rows("pin"))
		if pins == 1 {
			return of
		}
		for group, id := range map[string]form.ID{"pass": form.PassOf, "dial": form.DialOf} {
			for _, key := range r.Rows(group) {
				text := r.Text(id, key)
				if pin := form.Whole(text); pin > 0 && pin <= pins {
					of[group+"."+key] = text
				}
			}
		}
		return of
	})
	return of
}

// measure puts the lengths of a pin's own pieces in the place of the whole crank's. An end
// piece has the crank's; an inner one is measured from its own free end.
func (s *stage) measure(pin string) {
	whole := readSetUp(s.job.Apart())
	t := &whole.throws
	j := s.pin - 1
	s.put(form.Throw.Name(), form.PinThrow.Name(t.keys[j]), false)
	s.put(form.Mount.Name(), form.AloneMount.Name(pin), false)
	s.put(form.Centres.Name(), form.AloneCentres.Name(pin), true)
	for end, side := range whole.SideOf {
		piece := j + end
		inner := piece > 0 && piece < len(t.Joints)
		for _, id := range lengthsAlone {
			s.put(id.Name(side), id.Name("alone."+pin+"."+side), inner)
		}
		s.read.Form[form.ShaftBearing.Name(side)] = s.bearing(t, piece, side)
	}
}

// lengthsAlone are those that a piece is measured by; where its seat and its bearing are
// is the whole crank's to say.
var lengthsAlone = [...]form.ID{form.ShaftPin, form.ShaftAt, form.ShaftHeld, form.ShaftTip, form.ShaftBearing}

// put has a name of the stage's form stand for one of the job's, where that is given or
// always.
func (s *stage) put(name, from string, always bool) {
	if text := s.job.Form[from]; text != "" || always {
		s.read.Form[name], s.from[name] = text, from
	}
}

// bearing is how far a piece's main bearing stands from its own end, as typed; "" where
// that isn't known.
func (s *stage) bearing(t *throws, piece int, side string) string {
	pin, given := s.read.Apart().Number(form.ShaftPin, side)
	for _, m := range t.Mains {
		if off := abs(m.At - t.Joints[s.pin-1].At); given && m.Piece == piece && off <= pin {
			return unit.Format(pin-off, unit.MM, 0.001)
		}
	}
	return ""
}

// name is the job's own name for a field of the stage's form.
func (s *stage) name(name string) string {
	if from, other := s.from[name]; other {
		return from
	}
	return name
}

// rename has what was told of the stage's form told by the job's own names; what the job
// has no field for isn't.
func (s *stage) rename(r *form.Reader) {
	if s.pin == 0 {
		return
	}
	for i := range r.Problems {
		r.Problems[i].Name = s.name(r.Problems[i].Name)
	}
	for i := range r.Doubts {
		r.Doubts[i].Name = s.name(r.Doubts[i].Name)
	}
	kept := r.StandIns[:0]
	for _, in := range r.StandIns {
		in.Name = s.name(in.Name)
		if _, _, ok := form.Job.Lookup(in.Name); ok {
			kept = append(kept, in)
		}
	}
	r.StandIns = kept
	*r = *r.Told() // marked by the names before
}

// lacking are the lengths of a pin alone that aren't measured, by the job's names: its
// levers are short, and a guess would tell the wrong amounts.
func (s *stage) lacking(r *form.Reader) (names []string) {
	if s.pin == 0 {
		return nil
	}
	for _, in := range r.StandIns {
		switch field, _, _ := form.Job.Lookup(in.Name); field.ID {
		case form.ShaftPin, form.ShaftAt, form.ShaftHeld:
			names = append(names, s.name(in.Name))
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
		if p.from[form.ShaftTip.Name(side)] != "" {
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
	of := stagesOf(a.Kept, p.job)
	keys, _ := passKeys(p.job)
	for i := len(keys) - 1; i >= 0; i-- {
		seen := false
		for _, other := range all {
			seen = seen || other.pin == form.Whole(of["pass."+keys[i]])
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
	name := passName(i)
	if s.joined && i == 0 {
		name = asJoined
	}
	switch {
	case s.pin > 0:
		return passOfStage(alonePin(s.pin), lowerFirst(name))
	case s.staged:
		return passOfStage(wholeCrank, lowerFirst(name))
	}
	return name
}

// aloneOnSheet tells of each pin that was trued alone how it came and how it was left, and
// that a crank joined from such wasn't found as it was read first.
func (a answers) aloneOnSheet(left *pass) {
	var lines []string
	stages := a.stages(left)
	for i := len(stages) - 1; i >= 0; i-- { // the last is first among them
		if of := stages[i]; of.pin > 0 {
			first := passOf(a.Kept, left.job, of.rounds[0].key)
			lines = append(lines, aloneCame(upperFirst(of.state()), first.roundWords(&first.round)))
		}
	}
	if left.joined {
		lines = append(lines, foundAsJoined)
	}
	a.Say("sheet.alone", strings.Join(lines, "\n"))
}
