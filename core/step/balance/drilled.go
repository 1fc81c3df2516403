package balance

import (
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// Drilled logs the holes of the throw that is looked at as drilled, and the new parts as
// fitted, and clears its knife-edges for the next reading: as fields to change. New rows
// get keys that begin with key.
func Drilled(f form.Form, key string) form.Form {
	r := form.Read(f)
	changes, kept := form.Form{}, len(f.Rows("keep"))
	for _, s := range atOnce(readThrows(&bench.Answers{}, r)) {
		r.Pin = s.pin
		h := s.readShop()
		s.drilled(h, changes)
		for i := range h.holes {
			kept++
			s.keepHole(h.holes[i].key, key+strconv.Itoa(kept), kept, changes)
		}
	}
	return changes
}

// drilled logs a throw as drilled, but for its holes as places to keep off. The new parts
// count as fitted once no other throw's reading stands: while that was taken the old were on.
func (s *crank) drilled(h *shop, changes form.Form) {
	if s.ask == "" && s.job.Check() == nil {
		s.keepAim(h, changes)
	}
	others := false
	for name, text := range s.r.Form {
		field, keys, known := form.Job.Lookup(name)
		if !known || text == "" {
			continue
		}
		switch pin, is := readingOf(field, keys); {
		case is && (s.joined || pin == s.pin) || s.ofHole(field, keys, true):
			changes[name] = ""
		case is:
			others = true
		}
	}
	if !others {
		s.fitNew(changes)
	}
}

// readingOf tells whether a field is of a reading, on the knife-edges or of what came off, and
// of which pin, by its row.
func readingOf(field *form.Field, keys []string) (pin string, is bool) {
	switch id := field.ID; {
	case id >= form.PinHung && id <= form.PinRadius:
		return keys[0], true
	default:
		return "", id == form.After || id >= form.KnifeHung && id <= form.KnifeRadius
	}
}

// fitNew takes the new parts as those that are on.
func (s *crank) fitNew(changes form.Form) {
	for name, text := range s.r.Form {
		if weighed, isNew := form.Renewed(name); isNew {
			changes[weighed], changes[name] = text, ""
		}
	}
	for i, row := range s.rows {
		if whole := form.PartRod.Name(row + "weight"); s.r.Form[whole] != "" && s.job.After.Cylinders[i].Rod.WholeG == 0 {
			changes[whole] = "" // the ends are new, and it is not
		}
	}
}

// keepHole makes a hole the nth place to keep off, in a new row.
func (s *crank) keepHole(hole, row string, nth int, changes form.Form) {
	changes[form.KeepOrder.Name(row)] = strconv.Itoa(nth)
	for _, pair := range [...][2]form.ID{
		{form.KeepPin, form.HolePin}, {form.KeepWheel, form.HoleWheel}, {form.KeepRadius, form.HoleRadius}, {form.KeepHour, form.HoleHour}, {form.KeepAcross, form.HoleDrill},
	} {
		changes[pair[0].Name(row)] = s.r.Form[pair[1].Name(hole)]
	}
}

// keepAim writes down the factor that it came with, and, for it is no longer to be found,
// the one that was aimed at: of several throws each keeps the one that it came with. Where nothing was
// weighed it writes the one reached.
func (s *crank) keepAim(h *shop, changes form.Form) {
	if found, err := s.job.Standing(); err == nil && found.Factor.X >= 0 && s.r.Blank(form.KnifeCame) {
		changes[s.r.Name(form.KnifeCame)] = unit.Figures(100*found.Factor.X, unit.PerCent, 0.1)
	}
	if c, err := s.job.Correct(); err == nil && s.job.Keep && !s.several() {
		changes[form.Target.Name()] = "factor"
		changes[form.TargetFactor.Name()] = unit.Figures(100*c[0].Factor.X, unit.PerCent, 0.01)
	}
	if left, err := s.job.Left(s.removed(h)); err == nil && s.job.HasStated {
		changes[form.KnifeStated.Name()] = unit.Figures(100*left.Factor.X, unit.PerCent, 0.01)
	}
}
