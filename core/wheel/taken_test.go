package wheel

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"

	"pintwelve/core/clock"
)

// drilled integrates what a hole takes by arcs about the shaft: along the arc of
// radius r the metal is level, and only the drill's cone changes. It shares
// neither coordinates nor closed forms with the section, which goes by circles
// about the hole. Returned: volume, first and second moment.
func drilled(w Wheel, d Drilling) (got [3]float64) {
	c, s := d.At.Len(), d.DiameterMM/2
	tip := d.StartMM + d.ReachMM()
	arc := func(moment int) func(u float64) float64 {
		return func(u float64) float64 { // r = c + s sin u takes out the square root at the ends
			r := c + s*math.Sin(u)
			near, far := away(w, d.Side, r), w.WidthMM-away(w, d.Side.Other(), r)
			angle := func(q float64) float64 { return math.Acos(max(-1, min(1, (r*r+c*c-q*q)/(2*r*c)))) }
			high := func(phi float64) float64 {
				bottom := far
				if q := math.Sqrt(max(0, r*r+c*c-2*r*c*math.Cos(phi))); !d.Through {
					bottom = min(far, tip-d.PointMM()*q/s)
				}
				return max(0, bottom-near) * []float64{r, r * r * math.Cos(phi), r * r * r}[moment]
			}
			stops := []float64{0, angle(s)}
			if cone := d.PointMM(); cone > 0 { // where the cone leaves the metal
				stops = append(stops, angle(max(0, min(s, (tip-far)*s/cone))), angle(max(0, min(s, (tip-near)*s/cone))))
			}
			slices.Sort(stops)
			total := 0.0
			for i := 1; i < len(stops); i++ {
				total += halved(high, stops[i-1], stops[i], math.Inf(1), 1e-7*[]float64{1, c, c * c}[moment])
			}
			return 2 * s * math.Cos(u) * total
		}
	}
	places := []float64{-math.Pi / 2, math.Pi / 2}
	for _, r := range edges(w) {
		if math.Abs(r-c) < s {
			places = append(places, math.Asin((r-c)/s))
		}
	}
	slices.Sort(places)
	for moment := range got {
		for i := 1; i < len(places); i++ {
			got[moment] += integral(arc(moment), places[i-1], places[i], 1e-5*[]float64{1, c, c * c}[moment])
		}
	}
	return got
}

// randomHole stands anywhere in the wheel, so that most cross an edge or slope.
func randomHole(rng *rand.Rand, w Wheel) Hole {
	const room = 12 // mm, more than the largest hole's radius
	in, out := w.BoreMM/2+room, w.rim()-room
	return Hole{
		At:         clock.Polar(in+(out-in)*rng.Float64(), 12*rng.Float64()),
		DiameterMM: 4 + 16*rng.Float64(),
		DepthMM:    w.WidthMM * rng.Float64(),
		PointDeg:   []float64{0, 90, 118, 135}[rng.Intn(4)],
		Through:    rng.Intn(4) == 0,
	}
}

func TestHolesInRandomSectionsAgainstNumericalIntegration(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	crossed := 0
	for range 40 {
		bare := randomWheel(rng)
		w, err := bare.Drill(Side(rng.Intn(2)), randomHole(rng, bare))
		require.NoError(t, err)
		s := sectionOf(t, w)
		if len(s.Crossings) > 0 && s.Crossings[0].Step {
			crossed++
		}
		want := drilled(bare, w.Holes[0])
		got := takenBy(s.hole[0])
		whole := metalOf(t, bare)
		const rho, tol = steel * 1e-6, 1e-9
		assert.InDelta(t, want[0]*rho, got.MassG, tol*whole.MassG, "%+v", w)
		assert.InDelta(t, want[1]*rho, got.MomentGMM.Len(), tol*whole.MassG*s.OutMM, "%+v", w)
		assert.InDelta(t, want[2]*rho, got.InertiaGMM2, tol*whole.InertiaGMM2, "%+v", w)
		left := metalOf(t, w)
		assert.InEpsilon(t, whole.MassG-got.MassG, left.MassG, 1e-14)
		assert.InEpsilon(t, whole.InertiaGMM2-got.InertiaGMM2, left.InertiaGMM2, 1e-14)
	}
	assert.Greater(t, crossed, 15)
}

func TestHoleOnLevelMetalIsTheHolesOwn(t *testing.T) {
	plain := Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 25}.Turn(Ring{Outer, 30, 90, 4, 4})
	hole := Hole{At: clock.Vec{T: -60, N: 10}, DiameterMM: 14, DepthMM: 12, PointDeg: 118}
	for _, side := range []Side{Outer, Inner} {
		w, err := plain.Drill(side, hole)
		require.NoError(t, err)
		got := takenBy(sectionOf(t, w).hole[0])
		want, err := hole.Metal(steel)
		require.NoError(t, err)
		assert.InEpsilon(t, want.MassG, got.MassG, 1e-14)
		assert.Empty(t, sectionOf(t, w).Crossings)
	}
}

// takenBy is what a hole or boss takes of steel.
func takenBy(s solid) Metal { return s.scale(steel * gramsPerMM3) }

// A face turned after the hole leaves the hole that much shallower, and the
// same wheel whichever was done first.
func TestFacingOverAHoleTakesNothingTwice(t *testing.T) {
	plain := Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 25}
	hole := Hole{At: clock.Vec{T: -60}, DiameterMM: 14, DepthMM: 12, PointDeg: 118}
	face := Ring{Outer, 12.5, 100, 3, 3}
	drilled, err := plain.Drill(Outer, hole)
	require.NoError(t, err)
	faced := drilled.Turn(face)
	got := takenBy(sectionOf(t, faced).hole[0])
	hole.DepthMM -= 3
	want, err := hole.Metal(steel)
	require.NoError(t, err)
	assert.InEpsilon(t, want.MassG, got.MassG, 1e-14)

	other, err := plain.Turn(face).Drill(Outer, hole)
	require.NoError(t, err)
	assert.Equal(t, 3.0, other.Holes[0].StartMM)
	assert.InEpsilon(t, metalOf(t, faced).MassG, metalOf(t, other).MassG, 1e-14)

	gone := takenBy(sectionOf(t, drilled.Turn(Ring{Outer, 12.5, 100, 17, 17})).hole[0])
	assert.Equal(t, Metal{}, gone)
	tip := takenBy(sectionOf(t, drilled.Turn(Ring{Outer, 12.5, 100, 13, 13})).hole[0])
	cone := Hole{DiameterMM: 14, PointDeg: 118}.PointMM()
	left := math.Pi * 49 * cone / 3 * math.Pow((cone-1)/cone, 3) // a cone of the tip's height
	assert.InEpsilon(t, left*steel*1e-6, tip.MassG, 1e-9)
}

func TestWhatAHoleCrossesIsTold(t *testing.T) {
	w := Wheel{
		DiameterMM: 200, WidthMM: 28, BoreMM: 25,
		Rings:  []Ring{{Outer, 35, 80, 5, 5}},
		Bosses: []Boss{{Side: Outer, At: clock.Vec{T: 55}, DiameterMM: 40}},
	}
	for _, row := range []struct {
		hole Hole
		side Side
		want []Crossing
	}{
		{Hole{At: clock.Vec{T: -60}, DiameterMM: 10, DepthMM: 10}, Outer, nil},
		{Hole{At: clock.Vec{T: -80}, DiameterMM: 10, DepthMM: 10}, Outer, []Crossing{{Step: true}}},
		{Hole{At: clock.Vec{T: -80}, DiameterMM: 10, DepthMM: 10}, Inner, nil}, // stops short of the step
		{Hole{At: clock.Vec{T: -80}, DiameterMM: 10, Through: true}, Inner, []Crossing{{Step: true}}},
		{Hole{At: clock.Vec{T: 55}, DiameterMM: 25, Through: true}, Outer, nil}, // the pin, in its boss
		{Hole{At: clock.Vec{T: 55, N: 20}, DiameterMM: 8, DepthMM: 10}, Outer, []Crossing{{Boss: true}}},
		{Hole{At: clock.Vec{T: -60}, DiameterMM: 10, DepthMM: 21, PointDeg: 118}, Outer, []Crossing{{Out: true}}},
		{Hole{At: clock.Vec{T: -60}, DiameterMM: 10, DepthMM: 30, PointDeg: 118}, Outer, []Crossing{{Out: true}}},
	} {
		drilled, err := w.Drill(row.side, row.hole)
		require.NoError(t, err)
		assert.Equal(t, row.want, sectionOf(t, drilled).Crossings, "%+v", row.hole)
	}
}

func TestGaussNodesAgainstGonum(t *testing.T) {
	x, w := make([]float64, len(gauss)), make([]float64, len(gauss))
	quad.Legendre{}.FixedLocations(x, w, -1, 1)
	for i, n := range gauss {
		k := slices.IndexFunc(x, func(v float64) bool { return math.Abs(v-n.x) < 1e-12 })
		require.GreaterOrEqual(t, k, 0)
		assert.InDelta(t, w[k], n.w, 1e-13, "%d", i)
	}
}
