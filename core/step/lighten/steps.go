// Package lighten is the step "Lighten": the wheels and their cuts in, what comes
// off, what that does and whether the wheels will hold out.
package lighten

import (
	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// Step is the step.
var Step = bench.Step{Name: "lighten", Answer: lighten, Fields: fieldGroups, Done: weighed}

// weighed tells whether the wheels were weighed with their cuts made.
func weighed(_ *bench.Kept, f form.Form) bool {
	r := form.Read(f)
	for _, side := range bench.Sides {
		if _, ok := r.Number(form.WheelAfter, side); ok {
			return true
		}
	}
	return false
}
