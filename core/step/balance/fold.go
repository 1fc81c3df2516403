package balance

import (
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// folds say on each fold of the page what holds in it, so that it need not be opened.
func (s *crank) folds(h *shop) {
	if s.known {
		s.Say("balance.opens", "yes")
	}
	s.fold("pin", s.weighedParts("weight", form.PartRod, form.PartBearing, form.PartCrankpin))
	s.fold("new", s.weighedParts("new", append(cylinderParts[:], form.PartBearing, form.PartCrankpin)...))
	if n := len(s.keys); n > 0 {
		s.fold("cylinders", moreCylinders(strconv.Itoa(n)))
	}
	for _, place := range places {
		if hour := s.r.Text(form.KnifeHour, place); hour != "" && s.nth == 0 {
			s.fold("heavy."+place, settlesAt(hour, s.typed(form.KnifeWeight, place)))
		}
	}
	if len(s.rpm) > 0 {
		s.fold("frame", speedDrawn(bench.Plain(s.rpm[len(s.rpm)-1], 1)))
	}
	s.fold("zone", zoneHolds(millimetres(h.InMM), millimetres(h.OutMM), millimetres(h.ThickMM), millimetres(h.WallMM)))
	s.fold("near", nearEnough(bench.Percent(s.offBy), bench.Plain(s.r.Default(form.BalanceGrade), 0.1)))
}

func (s *crank) fold(name, words string) {
	if words != "" {
		s.Say("balance.fold."+name, words)
	}
}

// typed is a field's text, or that it is still to be given.
func (s *crank) typed(id form.ID, keys ...string) string {
	if s.r.Blank(id, keys...) {
		return "…"
	}
	return s.r.Text(id, keys...)
}

// weighedParts lists the parts of a fold that are weighed, by the words of their names.
func (s *crank) weighedParts(place string, ids ...form.ID) string {
	var all []string
	for _, id := range ids {
		if g, ok := s.r.Number(id, place); ok {
			all = append(all, partWeighs(id, s.weight(g)))
		}
	}
	return listed(all)
}
