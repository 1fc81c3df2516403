package truing

import (
	"slices"
	"strconv"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/tryout"
	"pintwelve/core/unit"
)

// Done returns the fields that log what is advised for the pass on the bench as
// done, under new rows: as many of the moves as there are keys for. With a key for
// a new pass there follow those of Again. Nothing is logged where nothing is advised.
func Done(f form.Form, rows []string, newPass string) form.Form {
	changes := form.Form{}
	for i, m := range advised(f) {
		if i == len(rows) {
			break
		}
		for id, text := range map[form.ID]string{
			form.PassDoneKind: kindNames[m.Kind], form.PassDoneWheel: m.wheel, form.PassDoneHour: unit.FormatHour(m.hour, 10),
			form.PassDoneOrder: strconv.Itoa(i + 1), form.PassDonePin: m.pin,
		} {
			if text != "" {
				changes[id.Name(m.pass, rows[i])] = text
			}
		}
		if m.how != "" {
			changes[m.field.Name(m.pass, rows[i])] = m.how
		}
	}
	if newPass == "" {
		return changes
	}
	return changes.With(Again(f.With(changes), newPass))
}

// advisedMove is a step with the words that the form has for it.
type advisedMove struct {
	crank.PlannedMove
	pin, pass, wheel string
	hour             float64 // as the job numbers it
	field            form.ID // which says how hard
	how              string  // and how hard; blank where no amount was advised
}

func advised(f form.Form) (all []advisedMove) {
	r := form.Read(f)
	keys, on := passKeys(r)
	p := passOf(nil, r, keys[on])
	for _, m := range p.moves {
		field, how := p.logged(doneAs(&m.PlannedMove))
		if p.leverAssumed {
			how = ""
		}
		pin := ""
		if p.several() {
			pin = strconv.Itoa(m.joint + 1)
		}
		all = append(all, advisedMove{m.PlannedMove, pin, p.key, p.SideOf[m.Wheel], p.Hour(m.Hour), field, how})
	}
	return all
}

// Again returns the fields that begin a new pass after the last, read as the
// last was and of what it was of; on a made-up crank its dials are read at once. None is begun while
// the last is unread. Which pass is looked at is the page's to know: a job that
// says so, as older ones do, says it no more.
func Again(f form.Form, newPass string) form.Form {
	keys, _ := PassKeys(f)
	last := keys[len(keys)-1]
	if unread(f, last) {
		return nil
	}
	order := form.Whole(f[form.PassOrder.Name(last)])
	changes := form.Form{form.PassOrder.Name(newPass): strconv.Itoa(order + 1), form.Bench.Name(): ""}
	of := f[form.PassOf.Name(last)]
	if of != "" {
		changes[form.PassOf.Name(newPass)] = of
	}
	r := form.Read(f)
	s := readSetUp(r)
	for _, st := range s.stations {
		for _, id := range [...]form.ID{form.ReadingHow, form.ReadingPoints, form.ReadingHours, form.ReadingStands} {
			if text := f[id.Name(last, st.name)]; text != "" {
				changes[id.Name(newPass, st.name)] = text
			}
		}
	}
	if r.Text(form.TrySeed) != "" && of == "" {
		s.readMadeUp(r, keys, newPass, changes)
	}
	return changes
}

// unread tells whether nothing was read in a pass.
func unread(f form.Form, key string) bool {
	for name, text := range f {
		field, keys, ok := form.Job.Lookup(name)
		if ok && text != "" && slices.Contains(asRead[:], field.ID) && keys[0] == key {
			return false
		}
	}
	return true
}

// asRead are the fields that hold what a dial showed.
var asRead = [...]form.ID{
	form.ReadingTIR, form.ReadingHigh, form.ReadingRise, form.ReadingFall, form.ReadingPinAt, form.ReadingTurn,
}

// Next goes on by one reading in a turn that is typed, as form.Next does; any
// other field has all that it wants.
func Next(f form.Form, name string) (before, after string, done bool) {
	pass, place, isTurn := turnAt(f, name)
	if !isTurn {
		return f[name], "", true
	}
	r := form.Read(f)
	if wanted := form.Whole(r.Word(form.ReadingPoints, pass, place)); wanted > 0 {
		return form.Next(f, name, wanted, wanted+1) // the first point again, to see whether anything moved
	}
	given := max(len(r.Numbers(mostPoints, form.ReadingHours, pass, place)), 3)
	return form.Next(f, name, given, given)
}

// turnAt tells in which pass and at which place a field's turn is read, if it is one.
func turnAt(f form.Form, name string) (pass, place string, isTurn bool) {
	field, keys, ok := form.Job.Lookup(name)
	if !ok || field.ID != form.ReadingTurn {
		return "", "", false
	}
	s := readSetUp(form.Read(f))
	for i := range s.stations {
		if place = s.stations[i].name; form.ReadingTurn.Name(keys[0], place) == name {
			return keys[0], place, true
		}
	}
	return "", "", false
}

// TryOut returns the form of a made-up crank of so many throws, each pin so many degrees on
// from the one before it, out of true as start says, by the seed; its first pass is read.
func TryOut(seed, start string, throws, apart int) form.Form {
	f := form.Form{
		form.TrySeed.Name(): seed, form.TryStart.Name(): start, form.Number.Name(): madeUpCrank(seed), form.PassOrder.Name("1"): "1",
	}
	if throws > 1 {
		f = f.With(drawnThrows(throws, apart))
	}
	s := readSetUp(form.Read(f))
	s.readMadeUp(form.Read(f), nil, "1", f)
	return f
}

// drawnThrows are the pins of a made-up crank of several throws, their places and those of
// the dials. The sizes are made up.
func drawnThrows(throws, apart int) form.Form {
	const end, pitch, first, second = 110, 100, 30, 70
	keys := make([]string, 3*mostPins)
	for i := range keys {
		keys[i] = strconv.Itoa(i + 1)
	}
	f := Pins(nil, throws, apart, keys)
	put := func(id form.ID, mm int, key ...string) { f[id.Name(key...)] = strconv.Itoa(mm) + " mm" }
	put(form.Throw, 27)
	put(form.Rim, 110)
	for _, side := range sideNames {
		put(form.ShaftPin, end, side)
		put(form.ShaftAt, 65, side)
	}
	for i := range throws - 1 {
		put(form.PinAt, end+pitch*(i+1), keys[i])
		put(form.DialAt, end+pitch*i+first, keys[mostPins+2*i])
		put(form.DialAt, end+pitch*i+second, keys[mostPins+2*i+1])
	}
	return f
}

// readMadeUp does to the made-up crank what was done in the passes with the keys
// given, and reads its dials into a new pass.
func (s *setUp) readMadeUp(r *form.Reader, keys []string, newPass string, into form.Form) {
	made, err := s.madeUp(r)
	if err != nil {
		return
	}
	for _, key := range keys {
		made.Taken() // its dials were read; read again with nothing done they scatter anew
		for _, d := range s.done(r, key) {
			made.Do(tryout.Blow{Joint: d.Joint, Kind: tryout.Kind(d.Kind), Wheel: d.Wheel, Hour: d.Hour, Dose: d.Dose})
		}
	}
	eight := [...]float64{0, 1.5, 3, 4.5, 6, 7.5, 9, 10.5}
	for i := range s.stations {
		st, hours := &s.stations[i], eight
		for n := range hours {
			hours[n] = s.Hour(hours[n])
		}
		text := ""
		for _, mm := range made.TurnAt(st.at, tryout.HalfThou, hours[:]...) {
			text += unit.Figures(mm, s.Unit, 0.001*tryout.HalfThou.Division) + " "
		}
		text += s.Unit.Name() // finer than any dial, it would be in doubt
		into[form.ReadingHow.Name(newPass, st.name)], into[form.ReadingPoints.Name(newPass, st.name)] = "turn", "8"
		into[form.ReadingTurn.Name(newPass, st.name)] = text
	}
}

// Made-up cranks are this much out of true at their dials, mm.
const (
	leastOut = 0.08
	mostOut  = 0.38
)

func (s *setUp) madeUp(r *form.Reader) (*tryout.Made, error) {
	c := tryout.Crank{
		Throw: s.crank.Throw, Rim: s.crank.Rim, Pin: s.crank.Pin,
		Support: s.crank.Support, Dial: [2]float64{s.dialOf(clock.Left), s.dialOf(clock.Right)},
	}
	for _, j := range s.throws.Joints[1:] {
		c.More = append(c.More, tryout.Pin{At: j.At, Throw: j.Throw, Phase: j.Phase})
	}
	seed := seedOf(r.Text(form.TrySeed))
	sits := c.ByChance(seed, leastOut, mostOut)
	for j := range sits {
		start := &sits[j]
		switch r.Word(form.TryStart) {
		case "twist":
			start.D, start.G = clock.Vec{N: start.D.N}, clock.Vec{}
		case "pinch":
			start.D, start.G = clock.Vec{}, clock.Vec{T: start.G.Len()}
		case "skew":
			start.D, start.G = clock.Vec{}, clock.Vec{N: start.G.Len()}
		case "mismatch":
			start.D.T = c.Mismatch(j, leastOut) / float64(len(sits))
		}
	}
	return tryout.New(c, tryout.Rough, seed, sits...)
}

// seedOf makes a number of any text.
func seedOf(text string) uint64 {
	seed := uint64(14695981039346656037) // FNV-1a
	for i := range len(text) {
		seed = (seed ^ uint64(text[i])) * 1099511628211
	}
	return seed
}
