package fitting

import (
	"math"
	"strconv"
	"strings"

	"pintwelve/core/fit"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// endFloat answers the end float and its shims.
func (f *fitting) endFloat(h heat) {
	limits := f.limits(form.FloatLeast, form.FloatMost, fit.Limits{LeastMM: nan, MostMM: nan})
	washers := f.r.Default(form.FloatWashers)
	off := f.r.Default(form.FloatOff)
	f.Say("float.fold", floatFold(f.Amount(limits.LeastMM), f.Amount(limits.MostMM)))
	faces, ok := f.r.Number(form.FloatFaces)
	over, ok2 := f.r.Number(form.FloatCrank)
	if !ok || !ok2 {
		return
	}
	first := "0" // a row that is blank
	if keys := f.r.Form.Rows("main"); len(keys) > 0 {
		first = keys[0]
	}
	e := fit.EndFloat{FacesMM: faces, CrankMM: over, ShimsMM: washers, CasePerK: f.caseOf(first).AlphaPerK, CrankPerK: fit.Steel().AlphaPerK}
	float, err := e.Float(h.running-h.room, h.running-h.room)
	if err == nil && float.ColdMM < 0 {
		err = &fit.Fault{Detail: fit.Detail{Kind: fit.NoRoom}, Field: fit.OverCrank, Got: over + washers, Most: faces}
	}
	if err == nil && float.ColdMM > widestFloat {
		err = &fit.Fault{Field: fit.OverCrank, Got: over, Least: faces - washers - widestFloat, Most: faces - washers}
	}
	if f.faulty(err, form.FloatCrank) {
		return
	}
	grows := growsMore
	if float.GrowthMM < 0 {
		grows = growsLess
	}
	f.Say("float.grows", grows(f.Amount(float.ColdMM), f.Amount(math.Abs(float.GrowthMM)), celsius(h.running), f.Amount(float.HotMM)))
	f.Number("fit.float.cold_mm", float.ColdMM)
	f.Number("fit.float.growth_mm", float.GrowthMM)
	f.Number("fit.float.hot_mm", float.HotMM)
	s := fit.Shimming{
		FacesMM: faces, CrankMM: over + washers, LeastMM: limits.LeastMM, WantMM: (limits.LeastMM + limits.MostMM) / 2, MostMM: limits.MostMM,
		OffMM: off, ASide: shimsASide,
	}
	now := float.ColdMM
	if f.r.Word(form.FloatJudge) == "hot" {
		s.GrowthMM, now = float.GrowthMM, float.HotMM
	}
	if !f.shims(&s) {
		f.judgedFloat(endFloat, now, &s)
	}
}

// widestFloat is more than any shims take up, mm, by judgement: beyond it a figure is a slip.
const widestFloat = 20

// judgedFloat judges an end float, and says what shims would do where these don't: not
// so near the limits that it were too close to call.
func (f *fitting) judgedFloat(title string, mm float64, s *fit.Shimming) {
	limits, plus := fit.Limits{LeastMM: s.LeastMM, MostMM: s.MostMM}, 2*f.StepMM
	if f.judged(gap{"float.end", title, exact(mm, plus), limits, tooLittle, tooMuch}) != amiss {
		return
	}
	size := func(mm float64) string { return unit.Format(mm, unit.MM, finest) }
	switch least, want, most, ok := s.Wanted(); {
	case ok:
		f.Say("float.wanted", shimsInAll(size(want), size(math.Min(want, least+plus)), size(math.Max(want, most-plus))))
	case most < 0:
		f.Say("float.wanted", tooWide(size(-most)))
	default:
		f.Say("float.wanted", bindsCold)
	}
}

// shimsASide is the most shims that are put on one side.
const shimsASide = 2

// shims picks shims from the sizes he has; false where there are none, or they
// can't be picked.
func (f *fitting) shims(s *fit.Shimming) bool {
	for _, mm := range f.r.Numbers(fit.MostShimSizes, form.FloatShims) {
		s.Shims = append(s.Shims, fit.Shim{MM: mm})
	}
	var left, right bool
	s.CaseLeftMM, left = f.r.Number(form.FloatCaseLeft)
	s.CrankLeftMM, right = f.r.Number(form.FloatCrankLeft)
	s.Centred = left && right && f.inside(s.CaseLeftMM, 0, s.FacesMM, form.FloatCaseLeft) &&
		f.inside(s.CrankLeftMM, s.CaseLeftMM-widestFloat, min(s.CrankMM, s.CaseLeftMM+widestFloat), form.FloatCrankLeft)
	if len(s.Shims) == 0 && !s.Centred {
		return false
	}
	chosen, err := s.Choose()
	if f.faulty(err, form.FloatCrank) {
		return false
	}
	f.Say("float.shims", shimsEach(f.pile("drive", chosen.Left), f.pile("timing", chosen.Right)))
	f.judgedFloat(endFloatShimmed, chosen.JudgedMM, s)
	if s.Centred {
		f.Number("fit.float.off_centre_mm", chosen.OffMM)
		f.judged(gap{
			"float.centre", rodOffLine, exact(math.Abs(chosen.OffMM), 2*f.StepMM), fit.Limits{MostMM: s.OffMM}, "", tooFar,
		})
	}
	return true
}

// inside tells whether a middle lies within the width that it is the middle of, and near the
// other; one that doesn't was misread, or measured from the other side.
func (f *fitting) inside(middleMM, leastMM, mostMM float64, id form.ID) bool {
	if middleMM >= leastMM && middleMM <= mostMM {
		return true
	}
	return !f.faulty(&fit.Fault{Field: fit.Middle, Got: middleMM, Least: max(leastMM, 0), Most: mostMM}, id)
}

// pile writes the shims of one side.
func (f *fitting) pile(side string, shims []float64) string {
	if len(shims) == 0 {
		f.EmptyList("fit.float.shims/" + side)
		return "none"
	}
	var words []string
	for i, mm := range shims {
		words = append(words, unit.Format(mm, unit.MM, 0.001))
		f.Number("fit.float.shims/"+side+"/"+strconv.Itoa(i), mm)
	}
	return strings.Join(words, " and ")
}
