package balance

import (
	"strconv"
	"strings"

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
		s.fold("cylinders", strconv.Itoa(n)+" more")
	}
	for _, place := range [...]string{"whole", "drive", "timing"} {
		if hour := s.r.Text(form.KnifeHour, place); hour != "" {
			s.fold("heavy."+place, bench.Fill("at %, % opposite", hour, s.typed(form.KnifeWeight, place)))
		}
	}
	if len(s.rpm) > 0 {
		s.fold("frame", bench.Fill("at % rpm", bench.Plain(s.rpm[len(s.rpm)-1], 1)))
	}
	s.fold("zone", bench.Fill("% to %, % thick, wall %", millimetres(h.InMM), millimetres(h.OutMM), millimetres(h.ThickMM), millimetres(h.WallMM)))
	s.fold("near", bench.Fill("within %, G %", bench.Percent(s.offBy), bench.Plain(s.r.Default(form.BalanceGrade), 0.1)))
}

func (s *crank) fold(name, words string) {
	if words != "" {
		s.Say("balance.fold."+name, "%", words)
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
			all = append(all, partWords[id]+" "+s.weight(g))
		}
	}
	return strings.Join(all, ", ")
}

var partWords = map[form.ID]string{
	form.PartPiston: "piston", form.PartRings: "rings", form.PartGudgeon: "gudgeon pin", form.PartClips: "clips", form.PartSmall: "small end",
	form.PartBig: "big end", form.PartRod: "whole rod", form.PartBearing: "bearing", form.PartCrankpin: "crankpin",
}
