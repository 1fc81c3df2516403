// Package balance works out the static balance of a crank: the weights at the
// pin, the factor it has and should have, the metal to take off, the shaking
// force that is left, and what ISO 21940-11 permits. It is the model's section
// 8; the holes to drill are the work of balance/drill.
//
// Use:
//
//	j := balance.Job{Before: parts, After: parts, StepG: 1, ThrowMM: 40, Weighed: weighings, Target: 0.6}
//	parts.Check(j.StepG)    // a *Fault for weights that can't be
//	s, err := j.Standing()  // factor and side imbalance as found, each ±
//	c, err := j.Correct()   // the moment to take off the crank, or off each wheel
//	j.Left(removed)         // factor and side imbalance once that moment is off
//	engine.Force(...)       // on the frame, exact or as a series; Loop, Peaks
//
// Conventions: weights g, lengths mm, first moments g·mm, angles rad, forces N.
// A weight at the pin is a first moment divided by the throw. Moments across
// the shaft are clock vectors: T towards the crankpin at 12, N towards 3 seen
// from the left end. A correction points to where metal comes off.
// m_rec is piston, rings, gudgeon pin, clips and small ends; m_rot is big ends,
// bearing and crankpin.
package balance

import "math"

// Bounds on what is taken for an engine, wide enough for a textbook's.
const (
	MostG      = 1e6  // heaviest part, g
	MostMM     = 1e4  // longest length, mm
	MostFactor = 1.5  // greatest factor to aim at or to believe
	LeastFound = -1.5 // lowest factor to believe: below 0 the wheels don't even carry the rotating weight
)

// Figure is a value and the standard deviation that the scale's step leaves it.
type Figure struct{ X, SD float64 }

// PM returns the ± of the figure at 95 %, MODEL §6.
func (f Figure) PM() float64 { return 1.96 * f.SD }

// scale returns k f.
func (f Figure) scale(k float64) Figure { return Figure{k * f.X, math.Abs(k) * f.SD} }
