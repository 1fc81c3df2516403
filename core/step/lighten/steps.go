// Package lighten is the step "Lighten": the wheels and their cuts in, what comes
// off, what that does and whether the wheels will hold out.
package lighten

import (
	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// Step is the step.
var Step = bench.Step{Name: "lighten", Answer: lighten, Fields: fieldGroups, Done: weighed}

// weighed tells whether the wheels were weighed with their cuts made: each that has one
// to be made, and lighter than it was.
func weighed(_ *bench.Kept, f form.Form) bool {
	r, some := form.Read(f), false
	var cut [len(bench.Sides)]bool
	for _, key := range r.Rows("cut") {
		on := r.Word(form.CutWheel, "cut", key)
		for i, side := range bench.Sides {
			cut[i] = cut[i] || on == "both" || on == side
		}
	}
	for i, side := range bench.Sides {
		after, ok := r.Number(form.WheelAfter, side)
		before, both := r.Number(form.WheelWeight, side)
		if cut[i] && (!ok || both && after >= before) {
			return false
		}
		some = some || ok
	}
	return some
}
