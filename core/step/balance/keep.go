package balance

import (
	"strconv"

	"pintwelve/core/balance/drill"
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
)

// kept is a place of one wheel that no hole may run into.
type kept struct {
	drill.Circle
	words string // "the crankpin"
	soft  bool   // it stands on a stand-in: a hole may lie in it, with a word
}

// ownParts are what every wheel has: the crankpin's boss, the crankpin and the shaft.
const ownParts = 3

// keepOff is what stands in the way on one wheel: its ownParts first, the rows of
// "keep" that are whole, and the holes of the lightening.
func (s *crank) keepOff(end clock.End) []kept {
	pin := clock.Vec{T: s.job.ThrowMM}
	boss, soft := s.boss(end)
	all := append(make([]kept, 0, ownParts+2),
		kept{drill.Circle{At: pin, DiameterMM: boss}, keptBoss, soft},
		kept{drill.Circle{At: pin, DiameterMM: s.pinMM}, keptPin, false},
		kept{drill.Circle{DiameterMM: s.turned[end].BoreMM}, keptBore, !s.turned[end].Bored})
	for n, key := range s.r.Form.Rows("keep") {
		at, whole := s.Place(s.r, key)
		if whole && s.here(form.KeepPin, key) && s.onWheel(s.r.Word(form.KeepWheel, key))[end] {
			all = append(all, kept{drill.Circle(at), keptPlace(strconv.Itoa(n + 1)), false})
		}
	}
	for _, h := range s.turned[end].Holes {
		all = append(all, kept{drill.Circle(h), keptLightened, false})
	}
	return all
}

// boss is how wide the crankpin's boss is taken to be on one wheel, and whether that is
// a stand-in: as typed on this step, else as it is drawn under Lighten.
func (s *crank) boss(end clock.End) (mm float64, soft bool) {
	known, ok := bench.OfWheel(s.r, form.WheelBoss, s.SideOf[end])
	if ok {
		return s.r.Or(known, form.ZoneBoss), false
	}
	return s.r.Default(form.ZoneBoss), true
}

// circles is the same for the drilling plan.
func circles(all []kept) []drill.Circle {
	out := make([]drill.Circle, len(all))
	for i, k := range all {
		out[i] = k.Circle
	}
	return out
}

// unfinished asks, under each place to keep off that isn't whole, for what it
// lacks, and says whether there is one: nothing is planned past it.
func (s *crank) unfinished() (words string) {
	for n, key := range s.r.Form.Rows("keep") {
		at, whole := s.Place(s.r, key)
		if whole {
			continue
		}
		var lacks []string
		for _, part := range [...]struct {
			id    form.ID
			words string
		}{{form.KeepRadius, lacksRadius}, {form.KeepHour, lacksHour}, {form.KeepAcross, lacksAcross}} {
			if s.r.Blank(part.id, key) && (part.id != form.KeepHour || at.At.Len() > 0 || s.r.Blank(form.KeepRadius, key)) {
				lacks = append(lacks, part.words)
			}
		}
		if len(lacks) == 0 {
			continue // a figure is wrong, and says so
		}
		s.Say("keep."+key+".lacks", stillToGive(lacks))
		if words == "" {
			words = finishPlace(strconv.Itoa(n+1), lacks)
		}
	}
	return words
}

// clear says whether a hole of the job runs into nothing on any wheel that it is
// in: neither what is kept off, nor the holes read before it. A wall thinner than
// asked is said beside it.
func (s *crank) clear(d *drilled, h *shop) bool {
	thin := ""
	for end, on := range d.on {
		if !on {
			continue
		}
		for _, k := range s.around(clock.End(end), d, h) {
			left := d.At.Sub(k.At).Len() - (d.DiameterMM+k.DiameterMM)/2
			if k.DiameterMM < 0 { // the rim, seen from inside
				left = -k.DiameterMM/2 - d.At.Len() - d.DiameterMM/2
			}
			switch {
			case left <= 0 && !k.soft:
				s.r.Complain(holeRunsInto(k.words, s.typedIn(form.HoleRadius, d.key)(h.WallMM-left)), form.HoleRadius, d.key)
				return false
			case left <= 0:
				thin = runsIntoAssumed(k.words, millimetres(k.DiameterMM))
			case left < h.WallMM-snugMM && thin == "":
				thin = onlyLeft(millimetres(left), k.words, millimetres(h.WallMM))
			}
		}
	}
	if thin != "" {
		s.all.Say("hole."+d.key+".thin", thin)
	}
	return true
}

// snugMM is how much less than the wall asked is taken for it: what rounding of a
// place to its last figure makes.
const snugMM = 0.1

// around is all that a hole must keep clear of in one wheel.
func (s *crank) around(end clock.End, d *drilled, h *shop) []kept {
	all := s.keepOff(end)
	nth := 0
	for i := range h.holes {
		if o := &h.holes[i]; o.on[end] {
			nth++
			all = append(all, kept{drill.Circle{At: o.At, DiameterMM: o.DiameterMM}, keptHole(strconv.Itoa(nth)), false})
		}
	}
	return append(all, kept{drill.Circle{DiameterMM: -2 * s.rim}, keptRim, false})
}
