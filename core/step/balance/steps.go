// Package balance is the step "Balance": weights and the knife-edges in, the
// factor and a drilling plan out.
package balance

import "pintwelve/core/bench"

// Step is the step.
var Step = bench.Step{Name: "balance", Answer: balancing, Fields: fieldGroups}
