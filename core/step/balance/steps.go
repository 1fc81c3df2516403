// Package balance is the step "Balance": weights and the knife-edges in, the
// factor and a drilling plan out.
package balance

import (
	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// Step is the step.
var Step = bench.Step{Name: "balance", Answer: balancing, Fields: fieldGroups, Done: balanced}

// balanced tells whether the knife-edges show each throw as near to the factor that is given
// as is asked, with no hole of the job left to drill.
func balanced(_ *bench.Kept, f form.Form) bool {
	r := form.Read(f)
	throws, _ := readThrows(&bench.Answers{}, r)
	for _, s := range throws {
		r.Pin = s.pin
		s.weighed()
		if s.solve(); !s.proven() {
			return false
		}
	}
	return len(r.Problems)+len(f.Rows("hole")) == 0
}

// proven tells whether a throw is weighed, one wheel not taken for two, and near enough. As
// found is no aim: every crank is as near to that as can be.
func (s *crank) proven() bool {
	_, one := s.oneWheel()
	return s.solved && !s.job.HasStated && !one && !s.job.Keep && s.lightG == 0 && s.isNear()
}
