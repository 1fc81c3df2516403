package drill

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
)

func TestSwarfAgainstThePlan(t *testing.T) {
	p, err := oneHoleOnly(clock.Vec{T: -2058.1}).Plan() // two holes of 17.756 g
	require.NoError(t, err)
	for _, row := range []struct {
		off      float64
		readings int
		agrees   bool
	}{
		{35.5, 1, true},  // 0.01 g short, ± 0.57 g
		{34.5, 1, false}, // 1.01 g short
		{36.2, 2, true},  // 0.69 g over, ± 0.80 g
		{36.4, 2, false},
	} {
		a, err := p.After(row.off, 1, row.readings)
		require.NoError(t, err)
		assert.Equal(t, row.agrees, a.Agrees, "%+v", row)
		assert.InDelta(t, row.off-35.512, a.OffG, 1e-3)
		assert.InDelta(t, 1.96*math.Sqrt(float64(row.readings)/12), a.PMG, 1e-12)
		assert.InDelta(t, -2058.12*row.off/35.512, a.MomentGMM.T, 0.1)
		assert.InDelta(t, -2058.1, a.MomentGMM.Add(a.LeftGMM).T, 1e-9, "what is off and what is left make the whole")
	}
}

func TestWheelGainsByHeavyPlugs(t *testing.T) {
	task := oneHoleOnly(clock.Vec{T: 1241.8})
	task.PlugKGM3 = 17000
	p, err := task.Plan()
	require.NoError(t, err)
	a, err := p.After(-20.7, 0.1, 2)
	require.NoError(t, err)
	assert.True(t, a.Agrees)
	assert.InDelta(t, 1241.8, a.MomentGMM.T, 0.5)
	a, err = p.After(17.8, 0.1, 1)
	require.NoError(t, err)
	assert.True(t, a.Agrees, "swarf goes against what was drilled out")
}

func TestWeightsOffThatCannotBe(t *testing.T) {
	p, err := oneHoleOnly(clock.Vec{T: -2058.1}).Plan()
	require.NoError(t, err)
	for _, row := range []struct {
		field    Field
		plan     Plan
		off      float64
		step     float64
		readings int
	}{
		{Swarf, p, -1, 1, 1}, {Swarf, p, 72, 1, 1}, {Swarf, p, math.NaN(), 1, 1},
		{Step, p, 35, -1, 1}, {Step, p, 35, math.NaN(), 1},
		{Readings, p, 35, 1, 0}, {Readings, p, 35, 1, 3},
		{Holes, Plan{}, 35, 1, 1},
	} {
		_, err := row.plan.After(row.off, row.step, row.readings)
		var fault *Fault
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, row.field, fault.Field)
	}
}
