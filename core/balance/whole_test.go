package balance_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/balance"
	"pintwelve/core/balance/drill"
	"pintwelve/core/clock"
)

// From the kitchen scale to holes and back to the knife-edges: a lighter piston
// at the same factor, a crank that also settles heavy to one side.
func TestWeighBalanceDrillWeighAgain(t *testing.T) {
	parts := balance.Parts{
		Cylinders: []balance.Cylinder{{
			PistonG: 310, RingsG: 24, GudgeonPinG: 86, ClipsG: 2, Rod: balance.Rod{SmallG: 128, BigG: 300, WholeG: 428},
		}},
		BearingG: 40, CrankpinG: 420,
	}
	j := balance.Job{
		Before: parts, After: parts, StepG: 1, ThrowMM: 40, Keep: true,
		Weighed: []balance.Weighing{{Rods: true, HungG: 202, Heavy: balance.HeavySpot{Hour: 8, WeightG: 6, RadiusMM: 80}}},
	}
	j.After.Cylinders = []balance.Cylinder{parts.Cylinders[0]}
	j.After.Cylinders[0].PistonG = 255
	found, err := j.Standing()
	require.NoError(t, err)
	c, err := j.Correct()
	require.NoError(t, err)

	wheel := drill.Task{
		Zone:     drill.Zone{InMM: 50, OutMM: 82, Hour: clock.Wrap(math.Round(c[0].GMM.Hour())), HalfRad: math.Pi / 3},
		DrillsMM: drill.Inch(12, 40, 2), PointDeg: 118, ThickMM: 22, WallMM: 3, DensityKGM3: 7850,
		MostHoles: 8, ToleranceGMM: 20, Remove: c[0].GMM.Scale(0.5), // half on each wheel
	}
	p, err := wheel.Plan()
	require.NoError(t, err)
	require.True(t, p.Reached)
	left, err := j.Left(p.MomentGMM.Scale(2))
	require.NoError(t, err)
	assert.InDelta(t, found.Factor.X, left.Factor.X, 40/(40*495.0))
	assert.InDelta(t, 0, left.SideGMM.X, 40)

	// On the knife-edges again, the bob weight of the factor aimed at: the heavy
	// spot is what the plan left, and the next correction is just that.
	again := balance.Weighing{HungG: j.After.BobG(balance.Weighing{}, found.Factor.X)}
	again.Heavy = balance.HeavySpot{Hour: p.LeftGMM.Hour(), WeightG: 2 * p.LeftGMM.Len() / 80, RadiusMM: 80}
	next := balance.Job{
		Before: j.After, After: j.After, StepG: 1, ThrowMM: 40, Target: found.Factor.X, Weighed: []balance.Weighing{again},
	}
	d, err := next.Correct()
	require.NoError(t, err)
	assert.InDelta(t, 0, d[0].GMM.Sub(p.LeftGMM.Scale(2)).Len(), 1e-6)
}
