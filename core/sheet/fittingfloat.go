package sheet

import (
	"strconv"
	"strings"

	"pintwelve/core/fit"
	"pintwelve/core/unit"
)

// endFloat answers the end float and its shims.
func (f *fitting) endFloat(h heat) {
	limits := f.limits("float.least", "float.most", fit.Limits{LeastMM: nan, MostMM: nan})
	washers := f.r.Default("float.washers")
	off := f.r.Default("float.off")
	faces, ok := f.r.Number("float.faces")
	over, ok2 := f.r.Number("float.crank")
	if !ok || !ok2 {
		return
	}
	at := "main."
	if keys := f.r.Form.Rows("main"); len(keys) > 0 {
		at += keys[0] + "."
	} else {
		at += "0."
	}
	e := fit.EndFloat{FacesMM: faces, CrankMM: over, ShimsMM: washers, CasePerK: f.caseOf(at).AlphaPerK, CrankPerK: fit.Steel().AlphaPerK}
	float, err := e.Float(h.running-h.room, h.running-h.room)
	if f.faulty("float.crank", err) {
		return
	}
	grows := "% cold; the case grows % more than the crank by %, which leaves % hot."
	if float.GrowthMM < 0 {
		grows = "% cold; the case grows % less than the crank by %, which leaves % hot."
	}
	f.say("float.grows", grows, f.amount(float.ColdMM), f.amount(abs(float.GrowthMM)), celsius(h.running), f.amount(float.HotMM))
	f.number("fit.float.cold_mm", float.ColdMM)
	f.number("fit.float.growth_mm", float.GrowthMM)
	f.number("fit.float.hot_mm", float.HotMM)
	s := fit.Shimming{
		FacesMM: faces, CrankMM: over + washers, LeastMM: limits.LeastMM, WantMM: (limits.LeastMM + limits.MostMM) / 2, MostMM: limits.MostMM,
		OffMM: off, ASide: shimsASide,
	}
	now := float.ColdMM
	if f.r.Word("float.judge") == "hot" {
		s.GrowthMM, now = float.GrowthMM, float.HotMM
	}
	if !f.shims(&s) {
		f.judged(gap{"float.end", "End float", exact(now, 2*f.step), limits, "too little", "too much"})
	}
}

// shimsASide is the most shims that are put on one side.
const shimsASide = 2

// shims picks shims from the sizes he has; false where there are none, or they
// can't be picked.
func (f *fitting) shims(s *fit.Shimming) bool {
	for _, mm := range f.r.Numbers("float.shims", fit.MostShimSizes) {
		s.Shims = append(s.Shims, fit.Shim{MM: mm})
	}
	var left, right bool
	s.CaseLeftMM, left = f.r.Number("float.caseleft")
	s.CrankLeftMM, right = f.r.Number("float.crankleft")
	s.Centred = left && right
	if len(s.Shims) == 0 && !s.Centred {
		return false
	}
	chosen, err := s.Choose()
	if f.faulty("float.crank", err) {
		return false
	}
	f.say("float.shims", "Drive side %, timing side %.", f.pile("drive", chosen.Left), f.pile("timing", chosen.Right))
	f.judged(gap{
		"float.end", "End float so shimmed", exact(chosen.JudgedMM, 2*f.step),
		fit.Limits{LeastMM: s.LeastMM, MostMM: s.MostMM}, "too little", "too much",
	})
	if s.Centred {
		f.number("fit.float.off_centre_mm", chosen.OffMM)
		f.judged(gap{
			"float.centre", "Rod off the cylinder’s line", exact(abs(chosen.OffMM), 2*f.step), fit.Limits{MostMM: s.OffMM}, "", "too far",
		})
	}
	return true
}

// pile writes the shims of one side.
func (f *fitting) pile(side string, shims []float64) string {
	if len(shims) == 0 {
		f.emptyList("fit.float.shims/" + side)
		return "none"
	}
	var words []string
	for i, mm := range shims {
		words = append(words, unit.Format(mm, unit.MM, 0.001))
		f.number("fit.float.shims/"+side+"/"+strconv.Itoa(i), mm)
	}
	return strings.Join(words, " and ")
}
