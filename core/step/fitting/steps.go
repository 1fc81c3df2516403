// Package fitting is the fitting-up: the order of work, the crank looked over as
// found, its big end and joints measured, pressed up, and put into the cases.
package fitting

import (
	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// The steps, but for the order of work: it is made of them all.
var (
	Found   = bench.Step{Name: "found", Answer: asFound, Fields: "found. ", Done: lookedOver}
	Measure = bench.Step{Name: "measure", Answer: measuring, Fields: "bigend. joint. ", Done: measured}
	PressUp = bench.Step{Name: "press", Answer: pressingUp, Fields: "press. ", Done: pressedUp}
	Cases   = bench.Step{Name: "cases", Answer: inTheCases, Fields: "main. float. cases. ", Done: inCases}
)

// What figures show of a step: that all was looked at, the big end measured
// through, the width over the wheels taken, the run-out read in the cases.

func lookedOver(_ *bench.Kept, f form.Form) bool {
	r := form.Read(f)
	for _, what := range lookedAt {
		if r.Text(what) == "" {
			return false
		}
	}
	return true
}

func measured(_ *bench.Kept, f form.Form) bool {
	r := form.Read(f)
	given := func(id form.ID) bool { return len(r.Numbers(bench.MostReadings, id)) > 0 }
	return given(form.BigEndPin) && (given(form.BigEndBush) || given(form.BigEndEye))
}

// Split tells whether a job's figures show its crank split: who measured its pin has it apart.
func Split(_ *bench.Kept, f form.Form) bool {
	return len(form.Read(f).Numbers(bench.MostReadings, form.BigEndPin)) > 0
}

// Apart tells whether a job has its crank looked over to be split, or split, by its
// figures or its ticks.
func Apart(k *bench.Kept, f form.Form) bool {
	return f[form.OrderFound.Name()] == "yes" || f[form.OrderSplit.Name()] == "yes" || lookedOver(k, f) || Split(k, f)
}

func pressedUp(_ *bench.Kept, f form.Form) bool {
	_, ok := form.Read(f).Number(form.PressOver)
	return ok
}

func inCases(_ *bench.Kept, f form.Form) bool {
	r := form.Read(f)
	for _, side := range bench.Sides {
		if _, ok := r.Number(form.CasesRunOut, side); !ok {
			return false
		}
	}
	return true
}
