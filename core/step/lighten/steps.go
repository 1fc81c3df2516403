// Package lighten is the step "Lighten": the wheels and their cuts in, what comes
// off, what that does and whether the wheels will hold out.
package lighten

import "pintwelve/core/bench"

// Step is the step.
var Step = bench.Step{Name: "lighten", Answer: lighten, Fields: "cut. made. swing. "}
