package drill

import "pintwelve/core/clock"

// Pair is a plan for each wheel of a crank.
type Pair struct {
	Left, Right Plan
	MomentGMM   clock.Vec // taken off both together
	LeftGMM     clock.Vec // of what was to be removed from both
	CoupleGMM   clock.Vec // what the left wheel loses over the right: it rocks the crank
	Reached     bool      // what is left of both together is within the tolerance
}

// Both plans half of a moment for each wheel, so that none is taken from one end
// more than the other, each to half of the left task's tolerance. What the tasks
// say is to be removed doesn't count. The error is a *Fault of the first wheel
// that has one.
func Both(left, right Task, remove clock.Vec) (Pair, error) {
	var p Pair
	tolerance := left.ToleranceGMM / 2
	for _, half := range []struct {
		task Task
		plan *Plan
	}{{left, &p.Left}, {right, &p.Right}} {
		half.task.Remove, half.task.ToleranceGMM = remove.Scale(0.5), tolerance
		var err error
		if *half.plan, err = half.task.Plan(); err != nil {
			return Pair{}, err
		}
	}
	p.MomentGMM = p.Left.MomentGMM.Add(p.Right.MomentGMM)
	p.LeftGMM = remove.Sub(p.MomentGMM)
	p.CoupleGMM = p.Left.MomentGMM.Sub(p.Right.MomentGMM)
	p.Reached = p.Left.Reached && p.Right.Reached
	return p, nil
}
