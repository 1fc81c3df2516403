package fit

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A steel ring of 62 mm at 11 µm/m·K needs 88 °C of heating to open by 0.06 mm.
func TestHeatOfASteelRing(t *testing.T) {
	s := Shrink{DiameterMM: 62, InterferenceMM: 0.04, OuterPerK: 11e-6, InnerPerK: 11e-6, RoomC: 20}
	c, err := s.HeatOuter(0.02, 20)
	require.NoError(t, err)
	assert.InDelta(t, 20+88, c, 0.03)
	s.InterferenceMM = 0.06
	c, err = s.HeatOuter(0, 20)
	require.NoError(t, err)
	assert.InDelta(t, 20+88, c, 0.03)
}

// Linear expansion of the elements near 25 °C, CRC Handbook of Chemistry and
// Physics, and of steel gauge blocks, ISO 3650, (11.5 ± 1.0) 10⁻⁶/K: values from
// memory. An alloy may stand some way off its metal.
func TestExpansionIsNearTheHandbooks(t *testing.T) {
	assert.InDelta(t, 11.5e-6, Steel().AlphaPerK, 1.0e-6)
	assert.InEpsilon(t, 11.8e-6, GreyIron().AlphaPerK, 0.1)   // iron
	assert.InEpsilon(t, 23.1e-6, LightAlloy().AlphaPerK, 0.1) // aluminium
	assert.InEpsilon(t, 24.8e-6, Magnesium().AlphaPerK, 0.1)
	for _, m := range []Material{Steel(), GreyIron(), LightAlloy(), Magnesium()} {
		require.NoError(t, expansion(m.AlphaPerK))
	}
}

// Each diameter grown by itself, d (1 + α ΔT): the gap between them is the working
// clearance at the temperatures found, and 0 where the race comes loose.
func TestHeatAndColdBringTheDiametersThere(t *testing.T) {
	rng := rand.New(rand.NewSource(10))
	for range 500 {
		d, interference, room := 40+120*rng.Float64(), 0.001+0.03*rng.Float64(), 40*rng.Float64()-10
		s := Shrink{DiameterMM: d, InterferenceMM: interference, OuterPerK: (15 + 12*rng.Float64()) * 1e-6, InnerPerK: (10 + 3*rng.Float64()) * 1e-6, RoomC: room}
		hole := func(c float64) float64 { return d * (1 + s.OuterPerK*(c-room)) }
		part := func(c float64) float64 { return d*(1+s.InnerPerK*(c-room)) + interference }

		working, other := 0.03*rng.Float64(), 30*rng.Float64()
		c, err := s.HeatOuter(working, other)
		require.NoError(t, err)
		assert.InDelta(t, working, hole(c)-part(other), 1e-12)
		left, err := s.InterferenceAt(other, 2*other)
		require.NoError(t, err)
		assert.InDelta(t, part(2*other)-hole(other), left, 1e-12)
		c, err = s.LooseAt()
		require.NoError(t, err)
		assert.InDelta(t, 0, hole(c)-part(c), 1e-11)
	}
}

// Model, section 10: ΔT = δ/((α_housing − α_race) d).
func TestRaceComesLoose(t *testing.T) {
	s := Shrink{DiameterMM: 62, InterferenceMM: 0.05, OuterPerK: 22e-6, InnerPerK: 11.5e-6, RoomC: 20}
	c, err := s.LooseAt()
	require.NoError(t, err)
	assert.InEpsilon(t, 20+0.05/(10.5e-6*62), c, 1e-12)
}

func TestHeatThatWontDo(t *testing.T) {
	good := Shrink{DiameterMM: 62, InterferenceMM: 0.05, OuterPerK: 22e-6, InnerPerK: 11.5e-6, RoomC: 20}

	s := good
	s.OuterPerK = 11.5e-6
	_, err := s.LooseAt()
	assertFault(t, err, Fault{Field: Expansion, Got: 11.5e-6, Least: 11.5e-6, Most: 1e-3, Detail: Detail{NeverLoose}})
	s.OuterPerK = 11.5e-6 + 1e-12
	_, err = s.LooseAt()
	var f *Fault
	require.ErrorAs(t, err, &f)
	assert.Equal(t, [2]any{NeverLoose, Temperature}, [2]any{f.Detail.Kind, f.Field})

	for _, interference := range []float64{0, -0.01} {
		s = good
		s.InterferenceMM = interference
		_, err = s.LooseAt()
		assertFault(t, err, Fault{Field: Interference, Got: interference, Most: 3.1, Detail: Detail{NoInterference}})
	}

	_, err = good.HeatOuter(10, 20) // hotter than any metal bears
	require.ErrorAs(t, err, &f)
	assert.Equal(t, Temperature, f.Field)
	assert.Greater(t, f.Got, float64(HottestC))
	_, err = good.HeatOuter(-1, 20)
	assertFault(t, err, Fault{Field: Clearance, Got: -1, Most: MostMM})
	_, err = good.InterferenceAt(-300, 20)
	assertFault(t, err, Fault{Field: Temperature, Got: -300, Least: ColdestC, Most: HottestC})
	s = good
	s.DiameterMM = math.NaN()
	_, err = s.InterferenceAt(20, 20)
	require.ErrorAs(t, err, &f)
	assert.Equal(t, Diameter, f.Field)
}
