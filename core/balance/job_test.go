package balance

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
)

func job(ws ...Weighing) Job {
	return Job{Before: single(), After: single(), ThrowMM: 40, Weighed: ws, Keep: true}
}

// The trade's method, P. E. Irving, Tuning for Speed (method, from memory): the
// reciprocating weight is the piston complete with rings, pin, clips and small
// end; the crank is indifferent on knife-edges with part of it hung on; that
// part over the whole is the factor. The figures are a table worked by hand for
// m_rec 550 g, m_rot 760 g, of which the pin is 420 g and bearing and big end
// 340 g.
func TestFactorFound(t *testing.T) {
	for _, row := range []struct {
		name    string
		weighed []Weighing
		factor  float64
	}{
		// (202 + 128)/550
		{"hung at the small end", []Weighing{{Rods: true, HungG: 202}}, 0.6},
		// (147 + 128)/550
		{"hung at the small end, one half", []Weighing{{Rods: true, HungG: 147}}, 0.5},
		// 670 = 340 + 330, the pin not counted
		{"bob on the pin", []Weighing{{HungG: 670}}, 0.6},
		// 630 = 300 + 330, the bearing left on
		{"bob on the pin, bearing on", []Weighing{{Bearing: true, HungG: 630}}, 0.6},
		// 545 = (760 + 330)/2
		{"one wheel alone", []Weighing{{What: LeftWheel, HungG: 545}}, 0.6},
		// 535 + 555 = 760 + 330
		{"each wheel", []Weighing{{What: LeftWheel, HungG: 535}, {What: RightWheel, HungG: 555}}, 0.6},
		// 545 − 420 = 125 on the wheel with the pin in it
		{"each wheel, pin in one", []Weighing{{What: LeftWheel, Pin: true, HungG: 125}, {What: RightWheel, HungG: 545}}, 0.6},
		// heavy at 12 by 22 g at 40: the wheels carry 22 g less than hangs, (202 − 22 + 128)/550
		{"heavy at the pin", []Weighing{{Rods: true, HungG: 202, Heavy: HeavySpot{WeightG: 22, RadiusMM: 40}}}, 0.56},
		// heavy at 6 by 11 g at 80: 22 g more at the throw
		{"heavy opposite the pin", []Weighing{{Rods: true, HungG: 202, Heavy: HeavySpot{Hour: 6, WeightG: 11, RadiusMM: 80}}}, 0.64},
	} {
		s, err := job(row.weighed...).Standing()
		require.NoError(t, err, row.name)
		assert.InDelta(t, row.factor, s.Factor.X, 1e-12, row.name)
		assert.InDelta(t, 760+row.factor*550, s.CounterG.X, 1e-9, row.name)
		assert.InDelta(t, 0, s.SideGMM.X, 1e-9, row.name)
	}
}

// The same table the other way: what to hang for a factor of 0.6.
func TestBobWeight(t *testing.T) {
	for _, row := range []struct {
		w    Weighing
		want float64
	}{
		{Weighing{Rods: true}, 202},
		{Weighing{}, 670},
		{Weighing{Bearing: true}, 630},
		{Weighing{What: LeftWheel}, 545},
		{Weighing{What: RightWheel, Pin: true}, 125},
		{Weighing{What: RightWheel, Pin: true, HungG: 50, Heavy: HeavySpot{WeightG: 3, RadiusMM: 9}}, 125},
	} {
		assert.InDelta(t, row.want, single().BobG(row.w, 0.6), 1e-12, "%+v", row.w)
	}
}

// Worked by hand at a throw of 40 mm, found at 0.6.
func TestCorrection(t *testing.T) {
	heavier := single()
	heavier.CrankpinG += 50
	lighter := single()
	lighter.Cylinders[0].PistonG -= 50
	bush := single()
	bush.BearingG += 12
	found := []Weighing{{Rods: true, HungG: 202}}
	for _, row := range []struct {
		name   string
		after  Parts
		keep   bool
		target float64
		want   clock.Vec
	}{
		{"as it is", single(), true, 0, clock.Vec{}},
		{"factor to 0.66: 0.06 × 550 × 40", single(), false, 0.66, clock.Vec{T: 1320}},
		{"factor to 0.5: −0.1 × 550 × 40, off the far side", single(), false, 0.5, clock.Vec{T: -2200}},
		{"piston 50 g lighter at the same factor: −0.6 × 50 × 40", lighter, true, 0, clock.Vec{T: -1200}},
		{"crankpin 50 g heavier: 50 × 40", heavier, true, 0, clock.Vec{T: 2000}},
		{"bush 12 g heavier: 12 × 40", bush, true, 0, clock.Vec{T: 480}},
	} {
		j := job(found...)
		j.After, j.Keep, j.Target = row.after, row.keep, row.target
		c, err := j.Correct()
		require.NoError(t, err, row.name)
		require.Len(t, c, 1)
		assert.InDelta(t, row.want.T, c[0].GMM.T, 1e-9, row.name)
		assert.InDelta(t, row.want.N, c[0].GMM.N, 1e-9, row.name)

		j.Weighed, j.Stated, j.HasStated = nil, 0.6, true
		stated, err := j.Correct()
		require.NoError(t, err, row.name)
		assert.InDelta(t, row.want.T, stated[0].GMM.T, 1e-9, "%s, by the maker's factor", row.name)
	}
}

func TestSideImbalanceComesOffWhereItIsHeavy(t *testing.T) {
	j := job(Weighing{Rods: true, HungG: 202, Heavy: HeavySpot{Hour: 3, WeightG: 5, RadiusMM: 80}})
	c, err := j.Correct()
	require.NoError(t, err)
	assert.InDelta(t, 400, c[0].GMM.N, 1e-9, "5 g at 80 mm")
	assert.InDelta(t, 0, c[0].GMM.T, 1e-9)

	j.Weighed[0].Heavy.From = clock.Right
	s, err := j.Standing()
	require.NoError(t, err)
	assert.InDelta(t, -400, s.SideGMM.X, 1e-9, "3 seen from the right is 9")
}

// With the bob weight of the target factor on, the heavy spot is the whole
// correction: no formula of factors comes into it.
func TestHeavySpotUnderTheTargetsBobWeight(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for range 200 {
		target := 0.3 + 0.5*rng.Float64()
		w := Weighing{Rods: rng.Intn(2) == 0, Heavy: HeavySpot{Hour: 12 * rng.Float64(), WeightG: 20 * rng.Float64(), RadiusMM: 90}}
		w.HungG = single().BobG(w, target)
		j := job(w)
		j.Keep, j.Target = false, target
		c, err := j.Correct()
		require.NoError(t, err)
		assert.InDelta(t, 0, c[0].GMM.Sub(w.Heavy.GMM()).Len(), 1e-9)

		left, err := j.Left(c[0].GMM)
		require.NoError(t, err)
		assert.InDelta(t, target, left.Factor.X, 1e-12)
		assert.InDelta(t, 0, left.SideGMM.X, 1e-9)
	}
}

func TestEachWheelTakesItsHalf(t *testing.T) {
	j := job(Weighing{What: LeftWheel, HungG: 535}, Weighing{What: RightWheel, HungG: 555})
	wheels, err := j.Wheels()
	require.NoError(t, err)
	require.Len(t, wheels, 2)
	assert.InDelta(t, (2*535.0-760)/550, wheels[0].Factor.X, 1e-12)
	assert.InDelta(t, (2*555.0-760)/550, wheels[1].Factor.X, 1e-12)
	assert.InDelta(t, 535, wheels[0].CounterG.X, 1e-12)

	c, err := j.Correct()
	require.NoError(t, err)
	require.Len(t, c, 2)
	assert.Equal(t, []What{LeftWheel, RightWheel}, []What{c[0].What, c[1].What})
	assert.InDelta(t, 400, c[0].GMM.T, 1e-9, "545 − 535 at 40 mm")
	assert.InDelta(t, -400, c[1].GMM.T, 1e-9)
}

// Partial balancing of a single cylinder: the balance mass opposite the crank
// is (revolving + c × reciprocating) × crank radius / its own radius.
// Khurmi & Gupta, Theory of Machines, ch. 22, and Sadhu Singh, Theory of
// Machines, ch. 12; values from memory.
func TestBalanceMassOfTheTextbooks(t *testing.T) {
	for _, row := range []struct {
		source                     string
		rec, rot, throw, at, wantG float64
	}{
		{"Khurmi & Gupta", 50e3, 37e3, 150, 400, 26.38e3},
		{"Sadhu Singh", 120e3, 70e3, 90, 150, 90e3},
	} {
		p := Parts{Cylinders: []Cylinder{{PistonG: row.rec}}, CrankpinG: row.rot}
		j := Job{Before: p, After: p, ThrowMM: row.throw, HasStated: true, Target: 2.0 / 3}
		c, err := j.Correct() // from wheels that carry only the revolving mass
		require.NoError(t, err)
		mass := (row.rot*row.throw + c[0].GMM.T) / row.at
		assert.InDelta(t, row.wantG, mass, 5, row.source)
	}
}

// The spread against readings that are each up to half a step out, over and over.
func TestSpreadAgainstReadingsHalfAStepOut(t *testing.T) {
	rng := rand.New(rand.NewSource(8))
	const step, trials = 2.0, 4000
	exact := job(Weighing{Bearing: true, HungG: 630, Heavy: HeavySpot{Hour: 2, WeightG: 30, RadiusMM: 80}})
	exact.StepG, exact.Keep, exact.Target = step, false, 0.7
	exact.After.Cylinders[0].PistonG = 250
	var factors, moments []float64
	for range trials {
		j := exact.clone()
		for _, group := range (&j).readings() {
			read := *group[0] + step*(rng.Float64()-0.5)
			for _, same := range group {
				*same = read
			}
		}
		s, err := j.Standing()
		require.NoError(t, err)
		c, err := j.Correct()
		require.NoError(t, err)
		factors, moments = append(factors, s.Factor.X), append(moments, c[0].GMM.T)
	}
	s, err := exact.Standing()
	require.NoError(t, err)
	c, err := exact.Correct()
	require.NoError(t, err)
	assert.InEpsilon(t, deviation(factors), s.Factor.SD, 0.05)
	assert.InEpsilon(t, 1.96*deviation(moments), c[0].PMGMM[0], 0.05)
}

func deviation(x []float64) float64 {
	mean, sum := 0.0, 0.0
	for _, v := range x {
		mean += v / float64(len(x))
	}
	for _, v := range x {
		sum += (v - mean) * (v - mean)
	}
	return math.Sqrt(sum / float64(len(x)-1))
}

func TestSpreadWorkedByHand(t *testing.T) {
	j := job(Weighing{Rods: true, HungG: 202})
	j.StepG = 1
	s, err := j.Standing()
	require.NoError(t, err)
	// β = (H + small)/m_rec: H moves it by 1/550, the small end by (1 − β)/550,
	// piston, rings, gudgeon pin and clips by β/550 each.
	want := math.Sqrt((1+0.4*0.4+4*0.6*0.6)/12) / 550
	assert.InEpsilon(t, want, s.Factor.SD, 1e-2)
	assert.InDelta(t, 1.96*s.Factor.SD, s.Factor.PM(), 1e-15)

	j.After.Cylinders[0].PistonG = 260
	c, err := j.Correct()
	require.NoError(t, err)
	// Same factor, another piston: what was not changed hardly counts.
	assert.Less(t, c[0].PMGMM[0], 1.96*40*math.Sqrt(2*0.6*0.6/12)*1.05)
	assert.Zero(t, c[0].PMGMM[1])
}

func TestJobsThatCannotBe(t *testing.T) {
	good := job(Weighing{Rods: true, HungG: 202})
	nan := math.NaN()
	for _, row := range []struct {
		field Field
		spoil func(j *Job)
		got   float64
	}{
		{Throw, func(j *Job) { j.ThrowMM = 0 }, 0},
		{Throw, func(j *Job) { j.ThrowMM = nan }, nan},
		{Hung, func(j *Job) { j.Weighed[0].HungG = nan }, nan},
		{HeavyHour, func(j *Job) { j.Weighed[0].Heavy.Hour = 13 }, 13},
		{HeavyWeight, func(j *Job) { j.Weighed[0].Heavy.WeightG = -2 }, -2},
		{HeavyRadius, func(j *Job) { j.Weighed[0].Heavy.WeightG = 2 }, 0},
		{FoundFactor, func(j *Job) { j.Weighed[0].HungG = 128 + 1.6*550 }, (2*128 + 1.6*550) / 550},
		{FoundFactor, func(j *Job) { j.Weighed[0].HungG = -1100 }, (128 - 1100.0) / 550},
		{TargetFactor, func(j *Job) { j.Keep, j.Target = false, 1.51 }, 1.51},
		{TargetFactor, func(j *Job) { j.Keep, j.Target = false, nan }, nan},
		{TargetFactor, func(j *Job) { j.Keep, j.Target = false, -0.1 }, -0.1},
		{NothingWeighed, func(j *Job) { j.Weighed = nil }, 0},
		{StatedFactor, func(j *Job) { j.Weighed, j.HasStated, j.Stated = nil, true, 1.6 }, 1.6},
		{Weighings, func(j *Job) { j.Weighed = []Weighing{{HungG: 670}, {What: LeftWheel, HungG: 545}} }, 2},
		{Weighings, func(j *Job) {
			j.Weighed = []Weighing{{What: LeftWheel, HungG: 545}, {What: LeftWheel, HungG: 545}}
		}, 2},
		{PinCounted, func(j *Job) {
			j.Weighed = []Weighing{{What: LeftWheel, Pin: true, HungG: 125}, {What: RightWheel, Pin: true, HungG: 125}}
		}, 2},
		{PinMissing, func(j *Job) { j.Weighed = []Weighing{{What: LeftWheel, Rods: true, HungG: 545}} }, 0},
	} {
		j := good.clone()
		row.spoil(&j)
		_, err := j.Correct()
		var fault *Fault
		require.ErrorAs(t, err, &fault, "%v", row.field)
		assert.Equal(t, row.field, fault.Field)
		if math.IsNaN(row.got) {
			assert.True(t, math.IsNaN(fault.Got))
		} else {
			assert.InDelta(t, row.got, fault.Got, 1e-12, "%v", row.field)
		}
		assert.False(t, fault.Got >= fault.Least && fault.Got <= fault.Most, "%v", row.field)
	}
	j := good.clone()
	j.After.BearingG = -1
	_, err := j.Standing()
	var fault *Fault
	require.ErrorAs(t, err, &fault)
	assert.True(t, fault.Detail.After)
	_, err = good.Left(clock.Vec{T: nan})
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, Removed, fault.Field)
}
