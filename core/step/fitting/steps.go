// Package fitting is the fitting-up: the order of work, the crank looked over as
// found, its big end and joints measured, pressed up, and put into the cases.
package fitting

import "pintwelve/core/bench"

// The steps.
var (
	Order   = bench.Step{Name: "order", Answer: order}
	Found   = bench.Step{Name: "found", Answer: asFound, Fields: "found. "}
	Measure = bench.Step{Name: "measure", Answer: measuring, Fields: "bigend. joint. "}
	PressUp = bench.Step{Name: "press", Answer: pressingUp, Fields: "press. "}
	Cases   = bench.Step{Name: "cases", Answer: inTheCases, Fields: "main. float. cases. "}
)
