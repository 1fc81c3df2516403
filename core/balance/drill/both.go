package drill

import (
	"slices"

	"pintwelve/core/clock"
)

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
	left.Remove, left.ToleranceGMM = remove.Scale(0.5), left.ToleranceGMM/2
	right.Remove, right.ToleranceGMM = left.Remove, left.ToleranceGMM
	var p Pair
	var err error
	if p.Left, err = left.Plan(); err != nil {
		return Pair{}, err
	}
	if right.same(left) {
		p.Right = p.Left
		p.Right.Holes = slices.Clone(p.Left.Holes)
	} else if p.Right, err = right.Plan(); err != nil {
		return Pair{}, err
	}
	p.MomentGMM = p.Left.MomentGMM.Add(p.Right.MomentGMM)
	p.LeftGMM = remove.Sub(p.MomentGMM)
	p.CoupleGMM = p.Left.MomentGMM.Sub(p.Right.MomentGMM)
	p.Reached = p.Left.Reached && p.Right.Reached
	return p, nil
}

// same is true of tasks that have the same plan, so that wheels alike need it
// looked for once only.
func (t Task) same(o Task) bool {
	return slices.Equal(t.Keep, o.Keep) && slices.Equal(t.DrillsMM, o.DrillsMM) && t.figures() == o.figures()
}

func (t Task) figures() [18]float64 {
	return [...]float64{
		t.InMM, t.OutMM, t.Hour, t.HalfRad, t.PointDeg, float64(t.Bottom), t.ThickMM, t.WallMM, t.MostDepthMM,
		t.DensityKGM3, t.PlugKGM3, float64(t.MostHoles), t.RadiusStepMM, t.AngleStepDeg, t.DepthStepMM,
		t.ToleranceGMM, t.Remove.T, t.Remove.N,
	}
}
