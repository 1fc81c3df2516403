package flywheel

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/wheel"
)

func TestWhatLighteningDoes(t *testing.T) {
	rim := Cut{Kind: TurnRim, ToDiameterMM: 190}
	a, b := cutting(t, single(), rim), cutting(t, single())
	c := Crank{
		Wheels: []Account{a, b}, OtherG: 1500, OtherGMM2: 2e6,
		IdleRPM: 900, Gears: []float64{12, 5}, TyreMM: 310,
	}
	e, err := c.Effect()
	require.NoError(t, err)
	assert.InDelta(t, a.Off().MassG, e.BeforeG-e.AfterG, 1e-9)
	assert.InDelta(t, a.Off().InertiaGMM2, e.BeforeGMM2-e.AfterGMM2, 1e-4)
	assert.InEpsilon(t, a.Before.InertiaGMM2+b.Before.InertiaGMM2+2e6, e.BeforeGMM2, 1e-12)
	// As steady means the same energy in the wheels, J n² alike.
	assert.InEpsilon(t, e.BeforeGMM2*900*900, e.AfterGMM2*e.IdleRPM*e.IdleRPM, 1e-12)
	// The same torque over the inertia: pick-up as the inverse of it.
	assert.InEpsilon(t, 1/e.AfterGMM2, e.Ratio/e.BeforeGMM2, 1e-12)
	assert.True(t, e.Symmetrical)
	// Felt weight holds the energy the crank has at that road speed, ½ J ω² = ½ m v².
	for i, gear := range c.Gears {
		const v = 20.0 // m/s
		omega := v / 0.310 * gear
		assert.InEpsilon(t, e.BeforeGMM2*1e-9*omega*omega, e.Felt[i].BeforeKG*v*v, 1e-12)
		assert.InEpsilon(t, e.AfterGMM2*1e-9*omega*omega, e.Felt[i].AfterKG*v*v, 1e-12)
	}
}

func TestEvenTogetherIsNotEvenEach(t *testing.T) {
	hole := func(hour float64) Account {
		return cutting(t, single(), Cut{Kind: HoleRing, Number: 1, PitchMM: 70, FirstHour: hour, DiameterMM: 12, Through: true})
	}
	opposite, err := Crank{Wheels: []Account{hole(3), hole(9)}}.Effect()
	require.NoError(t, err)
	assert.InDelta(t, 0, opposite.MomentGMM, 1e-6)
	assert.False(t, opposite.Symmetrical)
	one, err := Crank{Wheels: []Account{hole(6)}}.Effect()
	require.NoError(t, err)
	assert.InDelta(t, 70*hole(6).Off().MassG, one.MomentGMM, 1e-6)
	assert.False(t, one.Symmetrical)
}

func TestEffectOfFiguresThatCannotBe(t *testing.T) {
	good := Crank{Wheels: []Account{cutting(t, single())}, OtherG: 100, OtherGMM2: 1e5, IdleRPM: 900, Gears: []float64{12, 5}, TyreMM: 310}
	for field, spoil := range map[Field]func(c *Crank, bad float64){
		Mass:       func(c *Crank, bad float64) { c.OtherG = bad },
		Inertia:    func(c *Crank, bad float64) { c.OtherGMM2 = bad },
		IdleSpeed:  func(c *Crank, bad float64) { c.IdleRPM = bad },
		Gear:       func(c *Crank, bad float64) { c.Gears = []float64{12, bad} },
		TyreRadius: func(c *Crank, bad float64) { c.TyreMM = bad },
	} {
		for _, bad := range []float64{-1, math.NaN(), math.Inf(1), 1e300} {
			c := good
			spoil(&c, bad)
			_, err := c.Effect()
			var fault *Fault
			require.ErrorAs(t, err, &fault, "%v", field)
			assert.Equal(t, field, fault.Field)
			if field == Gear {
				assert.Equal(t, 1, fault.Item)
			}
		}
	}
	_, err := Crank{}.Effect()
	assert.Error(t, err)
	_, err = Crank{Wheels: []Account{{Before: wheel.Metal{InertiaGMM2: math.NaN()}}}}.Effect()
	assert.Error(t, err)
	bare, err := Crank{Wheels: good.Wheels}.Effect()
	require.NoError(t, err)
	assert.Empty(t, bare.Felt)
	assert.Zero(t, bare.IdleRPM)
}

func TestWeighIn(t *testing.T) {
	for _, row := range []struct {
		w    Weighing
		want Weighed
	}{
		{Weighing{5400, 4650, 750, 5}, Weighed{750, 0, false}},
		{Weighing{5400, 4655, 750, 5}, Weighed{745, -5, false}}, // within the step
		{Weighing{5400, 4660, 750, 5}, Weighed{740, -10, true}},
		{Weighing{5400, 4600, 750, 5}, Weighed{800, 50, true}},
		{Weighing{5400, 5405, 0, 5}, Weighed{-5, -5, false}},
		{Weighing{5400.1, 4650.2, 749.9, 0}, Weighed{749.9, 0, false}}, // the sums are not exact
	} {
		got, err := row.w.Against()
		require.NoError(t, err)
		assert.InDelta(t, row.want.OffG, got.OffG, 1e-9)
		assert.InDelta(t, row.want.MissG, got.MissG, 1e-9)
		assert.Equal(t, row.want.Told, got.Told, "%+v", row.w)
	}
	drawn, err := Drawn(5418, 5400, 5)
	require.NoError(t, err)
	assert.Equal(t, Weighed{5400, -18, true}, drawn)
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1), 1.1e7} {
		for i, w := range []Weighing{{bad, 4650, 750, 5}, {5400, bad, 750, 5}, {5400, 4650, bad, 5}, {5400, 4650, 750, bad}} {
			_, err := w.Against()
			var fault *Fault
			require.ErrorAs(t, err, &fault)
			assert.Equal(t, []Field{Weight, Weight, WantedOff, ScaleStep}[i], fault.Field)
		}
		_, err = Drawn(bad, 5400, 5)
		assert.Error(t, err)
		_, err = Drawn(5400, bad, 5)
		assert.Error(t, err)
		_, err = Drawn(5400, 5400, bad)
		assert.Error(t, err)
	}
}
