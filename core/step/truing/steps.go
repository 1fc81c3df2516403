// Package truing is the step "True": what the dials say in, the clock face, the
// moves and what the passes teach out.
package truing

import (
	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// The parts of the step: its first screen, what stands below that, what is for
// others than the page, how far a job is in a few words, and how to measure.
var (
	First  = bench.Step{Name: "true", Answer: with((answers).first), OnSheet: with((answers).onSheet)}
	More   = bench.Step{Name: "true.more", Answer: with((answers).more)}
	Values = bench.Step{Name: "true.values", Answer: with((answers).values)}
	State  = bench.Step{Name: "state", Answer: with((answers).state)}
	HowTo  = bench.Step{Name: "how", Answer: with((answers).howTo)}
)

// answers are the bench's, with this step's words and pictures.
type answers struct{ *bench.Answers }

func with(fill func(answers, *form.Reader)) func(*bench.Answers, *form.Reader) {
	return func(a *bench.Answers, r *form.Reader) { fill(answers{a}, r) }
}
