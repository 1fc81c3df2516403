package wheel

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"

	"pintwelve/core/clock"
)

// Round bar of 100 mm in steel of 7850 kg/m³ weighs 61.65 kg/m: EN 10060 and
// handbook tables, value from memory. A hole is a bar of what it takes out.
func TestBarOfAHundredMillimetres(t *testing.T) {
	m, err := Hole{DiameterMM: 100, DepthMM: 1000, Through: true}.Metal(7850)
	require.NoError(t, err)
	assert.InDelta(t, 61650, m.MassG, 5)
}

// coned integrates the drilled shape slice by slice over its depth, which
// knows nothing of the cone's closed forms.
func coned(h Hole) (volume, inertia float64) {
	cone := 0.0
	if !h.Through && h.PointDeg != 0 {
		cone = h.DiameterMM / 2 / math.Tan(h.PointDeg/2*math.Pi/180)
	}
	radius := func(z float64) float64 {
		if z <= h.DepthMM {
			return h.DiameterMM / 2
		}
		return h.DiameterMM / 2 * (1 - (z-h.DepthMM)/cone)
	}
	a2 := h.At.T*h.At.T + h.At.N*h.At.N
	area := func(z float64) float64 { return math.Pi * math.Pow(radius(z), 2) }
	polar := func(z float64) float64 { return area(z) * (math.Pow(radius(z), 2)/2 + a2) }
	for _, span := range [][2]float64{{0, h.DepthMM}, {h.DepthMM, h.DepthMM + cone}} {
		if span[1] > span[0] {
			volume += quad.Fixed(area, span[0], span[1], 20, nil, 0)
			inertia += quad.Fixed(polar, span[0], span[1], 20, nil, 0)
		}
	}
	return volume, inertia
}

func TestHoleAgainstNumericalIntegration(t *testing.T) {
	rng := rand.New(rand.NewSource(9))
	for range 500 {
		h := Hole{
			At:         clock.Polar(100*rng.Float64(), 12*rng.Float64()),
			DiameterMM: 2 + 30*rng.Float64(),
			DepthMM:    40 * rng.Float64(),
			PointDeg:   60 + 120*rng.Float64(),
			Through:    rng.Intn(3) == 0,
		}
		volume, inertia := coned(h)
		m, err := h.Metal(7850)
		require.NoError(t, err)
		assert.InEpsilon(t, volume*7850e-6, m.MassG, 1e-12)
		assert.InEpsilon(t, inertia*7850e-6, m.InertiaGMM2, 1e-12)
		assert.InDelta(t, m.MassG*h.At.T, m.MomentGMM.T, 1e-9)
		assert.InDelta(t, m.MassG*h.At.N, m.MomentGMM.N, 1e-9)
	}
}

func TestPointOfADrill(t *testing.T) {
	for _, row := range []struct {
		hole Hole
		want float64
	}{
		{Hole{DiameterMM: 12, PointDeg: 90}, 6},
		{Hole{DiameterMM: 12, PointDeg: 118}, 6 / math.Tan(59*math.Pi/180)},
		{Hole{DiameterMM: 12, PointDeg: 180}, 0},
		{Hole{DiameterMM: 12}, 0},
		{Hole{DiameterMM: 12, PointDeg: 118, Through: true}, 0},
	} {
		assert.InDelta(t, row.want, row.hole.PointMM(), 1e-12, "%+v", row.hole)
		row.hole.DepthMM = 7
		assert.InDelta(t, row.want+7, row.hole.ReachMM(), 1e-12, "%+v", row.hole)
	}
}

func TestHoleThatNoDrillMakes(t *testing.T) {
	good := Hole{At: clock.Vec{T: 50}, DiameterMM: 12, DepthMM: 10, PointDeg: 118}
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		field Field
		spoil func(h *Hole, bad float64)
		bad   []float64
	}{
		{HoleDiameter, func(h *Hole, b float64) { h.DiameterMM = b }, []float64{0, -1, nan, inf, 1e300}},
		{HoleDepth, func(h *Hole, b float64) { h.DepthMM = b }, []float64{-1, nan, inf, 1e300}},
		{HolePoint, func(h *Hole, b float64) { h.PointDeg = b }, []float64{-118, 10, 181, nan, inf}},
		{HolePlace, func(h *Hole, b float64) { h.At.N = b }, []float64{nan, inf, -1e300}},
	} {
		for _, bad := range row.bad {
			h := good
			row.spoil(&h, bad)
			m, err := h.Metal(7850)
			var fault *Fault
			require.ErrorAs(t, err, &fault, "%v %g", row.field, bad)
			assert.Equal(t, row.field, fault.Field)
			assert.Equal(t, Metal{}, m)
			assert.NotEmpty(t, fault.Error())
		}
	}
	for _, rho := range []float64{0, -7850, nan, inf} {
		_, err := good.Metal(rho)
		var fault *Fault
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, Density, fault.Field)
	}
}

func TestMetalAddsAndTakesAway(t *testing.T) {
	a := Metal{10, clock.Vec{T: 1, N: 2}, 100}
	b := Metal{4, clock.Vec{T: 3, N: -1}, 30}
	assert.Equal(t, Metal{14, clock.Vec{T: 4, N: 1}, 130}, a.Add(b))
	assert.Equal(t, a, a.Add(b).Sub(b))
}
