package fit

import "pintwelve/core/bound"

// EndFloat is what a crank's end float comes from.
type EndFloat struct {
	FacesMM             float64 // between the case faces
	CrankMM             float64 // over the crank, shoulder to shoulder
	ShimsMM             float64 // washers and shims, all together
	CasePerK, CrankPerK float64 // expansion
}

// Floating is the end float as measured and hot.
type Floating struct {
	ColdMM   float64
	GrowthMM float64 // by which it grows
	HotMM    float64
	Findings []Finding
}

// Float returns the end float, between the case faces − over the crank − shims,
// and what is left of it when the case and the crank have warmed by so many
// kelvins.
func (e EndFloat) Float(caseK, crankK float64) (Floating, error) {
	if err := e.check(caseK, crankK); err != nil {
		return Floating{}, err
	}
	cold := e.FacesMM - e.CrankMM - e.ShimsMM
	growth := e.CasePerK*e.FacesMM*caseK - e.CrankPerK*(e.CrankMM+e.ShimsMM)*crankK
	f := Floating{ColdMM: cold, GrowthMM: growth, HotMM: cold + growth}
	if cold < 0 {
		f.Findings = append(f.Findings, Finding{BindsCold, cold, 0})
	}
	if f.HotMM < 0 {
		f.Findings = append(f.Findings, Finding{BindsHot, f.HotMM, 0})
	}
	return f, nil
}

func (e EndFloat) check(caseK, crankK float64) error {
	return bound.First(
		length(CaseFaces, e.FacesMM), length(OverCrank, e.CrankMM), within(ShimSize, e.ShimsMM, 0, MostMM),
		expansion(e.CasePerK), expansion(e.CrankPerK),
		within(Temperature, caseK, ColdestC, HottestC), within(Temperature, crankK, ColdestC, HottestC),
	)
}
