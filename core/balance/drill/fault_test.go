package drill

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
)

func TestTasksThatCannotBe(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		field Field
		spoil func(t *Task, bad float64)
		bad   []float64
	}{
		{ZoneIn, func(t *Task, b float64) { t.InMM = b }, []float64{-1, nan, inf}},
		{ZoneOut, func(t *Task, b float64) { t.OutMM = b }, []float64{40, nan, inf}},
		{ZoneHour, func(t *Task, b float64) { t.Hour = b }, []float64{-1, 13, nan}},
		{ZoneHalf, func(t *Task, b float64) { t.HalfRad = b }, []float64{-0.1, 4, nan}},
		{KeepAt, func(t *Task, b float64) { t.Keep = []Circle{{clock.Vec{T: b}, 10}} }, []float64{nan, inf}},
		{KeepAcross, func(t *Task, b float64) { t.Keep = []Circle{{clock.Vec{T: 40}, b}} }, []float64{-1, nan, inf}},
		{Drill, func(t *Task, b float64) { t.DrillsMM = []float64{b} }, []float64{0, -6, nan, inf}},
		{Point, func(t *Task, b float64) { t.PointDeg = b }, []float64{-118, 20, 200, nan}},
		{Thick, func(t *Task, b float64) { t.ThickMM = b }, []float64{0, -3, nan, inf}},
		{Wall, func(t *Task, b float64) { t.WallMM = b }, []float64{-1, nan, inf}},
		{Depth, func(t *Task, b float64) { t.MostDepthMM = b }, []float64{-1, 24.5, nan, inf}},
		{Density, func(t *Task, b float64) { t.DensityKGM3 = b }, []float64{0, -1, nan, inf}},
		{Plug, func(t *Task, b float64) { t.PlugKGM3 = b }, []float64{-1, 7850, 7900, 1e6, nan}},
		{Holes, func(t *Task, b float64) { t.MostHoles = int(b) }, []float64{0, -1, 17}},
		{RadiusStep, func(t *Task, b float64) { t.RadiusStepMM = b }, []float64{-1, 1e-9, nan, inf}},
		{AngleStep, func(t *Task, b float64) { t.AngleStepDeg = b }, []float64{-1, 0.1, 91, nan}},
		{DepthStep, func(t *Task, b float64) { t.DepthStepMM = b }, []float64{-1, 1e-9, nan, inf}},
		{Tolerance, func(t *Task, b float64) { t.ToleranceGMM = b }, []float64{0, -1, nan, inf}},
		{Remove, func(t *Task, b float64) { t.Remove.N = b }, []float64{nan, inf, 1e9}},
	} {
		for _, bad := range row.bad {
			task := flywheel(clock.Vec{T: -1000})
			row.spoil(&task, bad)
			p, err := task.Plan()
			var fault *Fault
			require.ErrorAs(t, err, &fault, "%v %g", row.field, bad)
			assert.Equal(t, row.field, fault.Field, "%g", bad)
			assert.False(t, fault.Got >= fault.Least && fault.Got <= fault.Most, "%v", fault)
			assert.Equal(t, Plan{}, p)
			assert.NotEmpty(t, fault.Error())
			_, err = task.Relaxations()
			assert.Error(t, err)
		}
	}
}

func faultOf(t *testing.T, task Task) *Fault {
	t.Helper()
	_, err := task.Plan()
	var fault *Fault
	require.ErrorAs(t, err, &fault)
	return fault
}

func TestZoneWithNoRoom(t *testing.T) {
	task := flywheel(clock.Vec{T: -1000})
	task.InMM, task.Keep = 72, nil
	f := faultOf(t, task) // 10 mm of metal less two walls of 3
	assert.Equal(t, ZoneRoom, f.Field)
	assert.InDelta(t, 4, f.Got, 1e-9)
	assert.Equal(t, 4.5, f.Least)

	task = flywheel(clock.Vec{T: -1000})
	task.Keep = []Circle{{clock.Vec{T: -60}, 160}}
	assert.Equal(t, ZoneRoom, faultOf(t, task).Field, "all of it kept out")
}

func TestDirectionOutsideTheZone(t *testing.T) {
	f := faultOf(t, flywheel(clock.Vec{T: 1000}))
	assert.Equal(t, Direction, f.Field)
	assert.InDelta(t, math.Pi, f.Got, 1e-12)
	assert.InDelta(t, math.Pi/3, f.Most, 1e-12)
}

func TestNoDepthLeft(t *testing.T) {
	task := flywheel(clock.Vec{T: -1000})
	task.Bottom, task.ThickMM = BlindOnly, 4 // 3 of it the wall
	f := faultOf(t, task)
	assert.Equal(t, Depth, f.Field)
	assert.InDelta(t, 1, f.Most, 1e-12)
	assert.InDelta(t, 0.5+2.25/math.Tan(59*math.Pi/180), f.Got, 1e-9, "half a millimetre and the point of the 4.5")
}

func TestHoleDeeperThanTheWheel(t *testing.T) {
	task := flywheel(clock.Vec{T: -1000})
	task.MostDepthMM = 30
	f := faultOf(t, task)
	assert.Equal(t, Depth, f.Field)
	assert.Equal(t, 30.0, f.Got)
	assert.Equal(t, 24.0, f.Most)
}

// Whatever is said to free a target brings it within reach, tried by itself, and
// of holes one fewer does not.
func TestWhatFreesATargetDoes(t *testing.T) {
	seen := map[Limit]bool{}
	for _, size := range []float64{1200, 4000, 7000, 9000, 12500, 15500} {
		for _, base := range []func(t *Task){
			func(*Task) {},
			func(t *Task) { t.MostHoles = 2 },
			func(t *Task) { t.HalfRad = 0.25 },
			func(t *Task) { t.MostDepthMM = 6 },
			func(t *Task) { t.Bottom, t.WallMM = BlindOnly, 6 },
			func(t *Task) { t.DrillsMM, t.HalfRad = []float64{6}, 0.5 },
			func(t *Task) { t.DrillsMM, t.Bottom, t.ToleranceGMM = []float64{16}, ThroughOnly, 1 },
		} {
			task := flywheel(clock.Vec{T: -size})
			base(&task)
			p, err := task.Plan()
			require.NoError(t, err)
			found, err := task.Relaxations()
			require.NoError(t, err)
			if p.Reached {
				assert.Empty(t, found)
			}
			for _, f := range found {
				seen[f.Limit] = true
				assertRelaxes(t, task, p, f)
			}
		}
	}
	for l := MoreHoles; l <= FinerSteps; l++ {
		assert.True(t, seen[l], "no case of limit %d", l)
	}
}

func assertRelaxes(t *testing.T, task Task, p Plan, f Relaxation) {
	t.Helper()
	eased := task
	switch f.Limit {
	case MoreHoles:
		eased.MostHoles = int(f.Need)
	case SecondPlan:
		eased.Keep, eased.Remove, eased.MostHoles = append(p.KeepOuts(), task.Keep...), p.LeftGMM, int(f.Need)
		eased.ToleranceGMM = math.Max(task.ToleranceGMM, leastOfTheWhole*task.Remove.Len())
	case BiggerDrill:
		eased.DrillsMM = Metric(math.Mod(f.Need, 1)+6, f.Need, 1)
	case DeeperHoles:
		eased.MostDepthMM = f.Need
		if f.Need == task.ThickMM {
			eased.Bottom = Either
		}
	case WiderZone:
		eased.HalfRad = f.Need
	case ThinnerWall:
		eased.WallMM = f.Need
	case NoKeepOuts:
		eased.Keep = nil
	case FinerSteps:
		eased.ToleranceGMM = f.Need * (1 + 1e-9)
	}
	q, err := eased.Plan()
	require.NoError(t, err)
	if f.Limit == SecondPlan || f.Limit == FinerSteps {
		assert.True(t, q.Reached, "limit %d to %g for %v", f.Limit, f.Need, task.Remove)
		return
	}
	need := eased.Remove.Len() - eased.ToleranceGMM
	// A reach that is just enough may leave the steps too coarse.
	assert.True(t, q.Reached || q.ReachGMM >= need, "limit %d to %g for %v", f.Limit, f.Need, task.Remove)
	if f.Limit == MoreHoles {
		eased.MostHoles--
		q, err = eased.Plan()
		require.NoError(t, err)
		assert.True(t, !q.Reached || q.Kind != Symmetric, "%d holes reach for %v", eased.MostHoles, task.Remove)
	}
}

func TestClosestPlanTakesAllThereIs(t *testing.T) {
	p, err := flywheel(clock.Vec{T: -40000}).Plan()
	require.NoError(t, err)
	assert.False(t, p.Reached)
	assert.GreaterOrEqual(t, p.MomentGMM.Len(), p.ReachGMM-1e-6)
	assert.InDelta(t, 40000, p.MomentGMM.Len()+p.LeftGMM.Len(), 1e-6, "straight along the axis")
}

// A second plan beside the first stands clear of it.
func TestSecondPlanBesideTheFirst(t *testing.T) {
	task := flywheel(clock.Vec{T: -16500})
	p, err := task.Plan()
	require.NoError(t, err)
	require.False(t, p.Reached)
	second := task
	second.Keep, second.Remove = append(p.KeepOuts(), task.Keep...), p.LeftGMM
	q, err := second.Plan()
	require.NoError(t, err)
	require.True(t, q.Reached)
	assertWalls(t, second, q)
}
