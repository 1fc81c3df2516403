package flywheel

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/wheel"
)

const steel = 7850 // kg/m³

// single is a wheel of a 500 cc single (common practice, no source): 200 mm ×
// 28 mm of steel, 25 mm bore, 5.4 kg with its recesses of 5 mm each side and
// the pin's hole of 25 mm in its boss at a throw of 41 mm.
func single() wheel.Wheel {
	pin := clock.Vec{T: 41}
	w := wheel.Wheel{
		DiameterMM: 200, WidthMM: 28, BoreMM: 25,
		Rings: []wheel.Ring{
			{Side: wheel.Outer, FromMM: 24, ToMM: 80, DepthFromMM: 5, DepthToMM: 5},
			{Side: wheel.Inner, FromMM: 24, ToMM: 80, DepthFromMM: 5, DepthToMM: 5},
		},
		Bosses: []wheel.Boss{{Side: wheel.Outer, At: pin, DiameterMM: 45}, {Side: wheel.Inner, At: pin, DiameterMM: 45}},
		Holes:  []wheel.Drilling{{Hole: wheel.Hole{At: pin, DiameterMM: 25, Through: true}}},
	}
	return w
}

func cutting(t *testing.T, w wheel.Wheel, cuts ...Cut) Account {
	t.Helper()
	a, err := Make(w, steel, cuts...)
	require.NoError(t, err)
	return a
}

// thinnest returns the thinnest wall of a kind that is left.
func thinnest(a Account, k wheel.WallKind) (wheel.Wall, bool) {
	walls := a.AfterSection.Walls()
	i := slices.IndexFunc(walls, func(w wheel.Wall) bool { return w.Kind == k })
	if i < 0 {
		return wheel.Wall{}, false
	}
	return walls[i], true
}

func TestWheelOfAFiveHundredSingle(t *testing.T) {
	a := cutting(t, single())
	assert.InDelta(t, 5400, a.Before.MassG, 50)
	for kind, mm := range map[wheel.WallKind]float64{
		wheel.Web: 18, wheel.RimDepth: 20, wheel.RimWidth: 28, wheel.HoleToBore: 16, wheel.HoleToBoss: 10,
	} {
		w, ok := thinnest(a, kind)
		require.True(t, ok, "%d", kind)
		assert.InDelta(t, mm, w.MM, 1e-9, "%d", kind)
	}
}

// The closed forms written out from MODEL §9, on a plain disc.
func TestWhatEachCutTakesOff(t *testing.T) {
	const rho = steel * 1e-6
	plain := wheel.Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 24}
	ring := func(a, b, h float64) (m, j float64) {
		m = math.Pi * rho * (b*b - a*a) * h
		return m, m * (a*a + b*b) / 2
	}
	for _, row := range []struct {
		name string
		cut  Cut
		want func() (m, j float64)
	}{
		{"rim", Cut{Kind: TurnRim, ToDiameterMM: 190}, func() (float64, float64) { return ring(95, 100, 28) }},
		{"face", Cut{Kind: FaceSide, Side: wheel.Inner, DepthMM: 2}, func() (float64, float64) { return ring(12, 100, 2) }},
		{"recess", Cut{Kind: Recess, FromMM: 40, ToMM: 80, DepthMM: 6}, func() (float64, float64) { return ring(40, 80, 6) }},
		{"bevel off the edge", Cut{Kind: Bevel, FromMM: 80, ToMM: 100, DepthMM: 6}, func() (float64, float64) {
			a, b := 80.0, 100.0
			return math.Pi * rho * 6 * (b*b - (a*a+a*b+b*b)/3),
				math.Pi * rho * 6 * (math.Pow(b, 4)/2 - (math.Pow(a, 4)+a*a*a*b+a*a*b*b+a*b*b*b+math.Pow(b, 4))/10)
		}},
		{"bevel off the hub", Cut{Kind: Bevel, FromMM: 80, ToMM: 100, DepthMM: 6, DeepInside: true}, func() (float64, float64) {
			m, j := ring(80, 100, 6)
			a, b := 80.0, 100.0
			return m - math.Pi*rho*6*(b*b-(a*a+a*b+b*b)/3),
				j - math.Pi*rho*6*(math.Pow(b, 4)/2-(math.Pow(a, 4)+a*a*a*b+a*a*b*b+a*b*b*b+math.Pow(b, 4))/10)
		}},
		{"holes", Cut{Kind: HoleRing, Number: 7, PitchMM: 70, DiameterMM: 16, Through: true}, func() (float64, float64) {
			m := 7 * math.Pi * rho * 64 * 28
			return m, m * (70*70 + 64/2.0)
		}},
	} {
		a := cutting(t, plain, row.cut)
		m, j := row.want()
		assert.InEpsilon(t, m, a.Off().MassG, 1e-11, row.name)
		assert.InEpsilon(t, j, a.Off().InertiaGMM2, 1e-11, row.name)
		assert.True(t, a.Symmetrical(), row.name)
	}
}

func TestOverlapsAreCountedOnceAndTold(t *testing.T) {
	cuts := []Cut{
		{Kind: FaceSide, Side: wheel.Outer, DepthMM: 2},
		{Kind: Recess, Side: wheel.Outer, FromMM: 50, ToMM: 75, DepthMM: 8},
		{Kind: TurnRim, ToDiameterMM: 194},
		{Kind: HoleRing, Side: wheel.Outer, Number: 4, PitchMM: 64, FirstHour: 1.5, DiameterMM: 12, Through: true},
		{Kind: Bevel, Side: wheel.Inner, FromMM: 90, ToMM: 100, DepthMM: 5},
	}
	a := cutting(t, single(), cuts...)
	var sum wheel.Metal
	for _, l := range a.Lines {
		sum = sum.Add(l.Off)
	}
	assert.InDelta(t, a.Off().MassG, sum.MassG, 1e-9)
	assert.InDelta(t, a.Off().InertiaGMM2, sum.InertiaGMM2, 1e-4)
	const g = steel * 1e-6 * math.Pi
	assert.Zero(t, a.Lines[0].OverlapG())
	boss := outside(50, 22.5, 41) - outside(50, 12.5, 41)                          // the pin's boss less its hole, where the recess runs
	assert.InDelta(t, boss*2*steel*1e-6, a.Lines[1].OverlapG(), 1e-6)              // the web is below the facing, the boss is not
	assert.InDelta(t, g*(100*100-97*97)*2, a.Lines[2].OverlapG(), 1e-9)            // the rim's faced corner
	assert.InDelta(t, 4*g*36*3, a.Lines[3].OverlapG(), 1e-9)                       // 3 mm of recess under four holes
	assert.InDelta(t, bevelOutside(97, 90, 100, 5)*g, a.Lines[4].OverlapG(), 1e-9) // the bevel's edge went with the rim

	again := cutting(t, single(), cuts[1], cuts[1])
	assert.Zero(t, again.Lines[1].Off.MassG)
	assert.Equal(t, again.Lines[0].Off.MassG, again.Lines[1].OverlapG())

	rims := cutting(t, single(), Cut{Kind: TurnRim, ToDiameterMM: 190}, Cut{Kind: TurnRim, ToDiameterMM: 195})
	assert.Zero(t, rims.Lines[1].Off.MassG)
	assert.Equal(t, 95.0, rims.AfterSection.OutMM)
}

// outside is how much of a circle of radius s, centre at c, lies outside one of
// radius r about the shaft: the circle less the textbook's two segments.
func outside(r, s, c float64) float64 {
	return math.Pi*s*s - s*s*math.Acos((c*c+s*s-r*r)/(2*c*s)) - r*r*math.Acos((c*c+r*r-s*s)/(2*c*r)) +
		math.Sqrt((-c+s+r)*(c+s-r)*(c-s+r)*(c+s+r))/2
}

// bevelOutside is 2∫ r h (r − a)/(b − a) dr from c to b, a bevel's volume over π
// that lies outside c.
func bevelOutside(c, a, b, h float64) float64 {
	prim := func(r float64) float64 { return 2 * h / (b - a) * (r*r*r/3 - a*r*r/2) }
	return prim(b) - prim(c)
}

func TestBalanceIsTouchedOnlyByWhatIsUneven(t *testing.T) {
	plain := wheel.Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 24}
	even := cutting(t, plain, Cut{Kind: HoleRing, Number: 5, PitchMM: 70, DiameterMM: 16, DepthMM: 9, PointDeg: 118})
	assert.True(t, even.Symmetrical())
	one := cutting(t, plain, Cut{Kind: HoleRing, Number: 1, PitchMM: 70, FirstHour: 6, DiameterMM: 16, DepthMM: 9, PointDeg: 118})
	assert.False(t, one.Symmetrical())
	assert.InEpsilon(t, -70*one.Off().MassG, one.Off().MomentGMM.T, 1e-12)

	// Facing over the pin's hole takes nothing there: 3 mm of 25 mm at 41 mm.
	faced := cutting(t, single(), Cut{Kind: FaceSide, DepthMM: 3})
	assert.False(t, faced.Symmetrical())
	boss := math.Pi * (22.5*22.5 - 12.5*12.5) * 3 * steel * 1e-6 * 41 // the boss is turned down there
	hub := faced.Off().MomentGMM.T
	assert.Greater(t, hub, 0.5*boss)
	assert.Less(t, hub, boss)
}

func TestCutThatCannotBeMade(t *testing.T) {
	nan := math.NaN()
	for _, row := range []struct {
		name  string
		cut   Cut
		field any
	}{
		{"outside the wheel", Cut{Kind: Recess, FromMM: 80, ToMM: 101, DepthMM: 2}, wheel.RingTo},
		{"through the bore", Cut{Kind: Recess, FromMM: 10, ToMM: 60, DepthMM: 2}, wheel.RingFrom},
		{"nothing left", Cut{Kind: Recess, FromMM: 40, ToMM: 60, DepthMM: 23}, wheel.WebLeft},
		{"deeper than wide", Cut{Kind: FaceSide, DepthMM: 29}, wheel.RingDepth},
		{"less than nothing", Cut{Kind: FaceSide, DepthMM: -1}, wheel.RingDepth},
		{"rim larger", Cut{Kind: TurnRim, ToDiameterMM: 201}, RimDiameter},
		{"rim gone", Cut{Kind: TurnRim, ToDiameterMM: 25}, RimDiameter},
		{"no rim", Cut{Kind: TurnRim}, RimDiameter},
		{"rim down to the pin's hole", Cut{Kind: TurnRim, ToDiameterMM: 2 * 53}, wheel.HoleToEdgeLeft},
		{"no holes", Cut{Kind: HoleRing, PitchMM: 70, DiameterMM: 10, Through: true}, HoleNumber},
		{"holes into each other", Cut{Kind: HoleRing, Number: 40, PitchMM: 70, DiameterMM: 11, Through: true}, wheel.HoleToHoleLeft},
		{"hole into the pin", Cut{Kind: HoleRing, Number: 1, PitchMM: 60, DiameterMM: 15, Through: true}, wheel.HoleToHoleLeft},
		{"hole out of the edge", Cut{Kind: HoleRing, Number: 4, PitchMM: 96, DiameterMM: 10, Through: true}, wheel.HoleToEdgeLeft},
		{"hole into the bore", Cut{Kind: HoleRing, Number: 1, PitchMM: 15, FirstHour: 6, DiameterMM: 10, Through: true}, wheel.HoleToBoreLeft},
		{"drill of nothing", Cut{Kind: HoleRing, Number: 4, PitchMM: 70, Through: true}, wheel.HoleDiameter},
		{"no such hour", Cut{Kind: HoleRing, Number: 4, PitchMM: 70, DiameterMM: 5, FirstHour: nan}, FirstHour},
		{"no such cut", Cut{Kind: 9}, CutKind},
		{"not a depth", Cut{Kind: FaceSide, DepthMM: nan}, wheel.RingDepth},
	} {
		_, err := Make(single(), steel, Cut{Kind: Bevel, FromMM: 96, ToMM: 100, DepthMM: 1}, row.cut)
		var cut *CutFault
		require.ErrorAs(t, err, &cut, row.name)
		assert.Equal(t, 1, cut.Cut, row.name)
		var own *Fault
		var wheels *wheel.Fault
		if _, mine := row.field.(Field); mine {
			require.ErrorAs(t, err, &own, row.name)
			assert.Equal(t, row.field, own.Field, row.name)
		} else {
			require.ErrorAs(t, err, &wheels, row.name)
			assert.Equal(t, row.field, wheels.Field, "%s: %v", row.name, err)
		}
		assert.NotEmpty(t, err.Error())
	}
	_, err := Make(wheel.Wheel{}, steel)
	assert.Error(t, err)
	_, err = Make(single(), nan)
	assert.Error(t, err)
}

func TestNothingButNumbersComesOutOfACut(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	odd := []float64{0, -1, 1e-300, 1e300, math.NaN(), math.Inf(1), math.Inf(-1)}
	pick := func(most float64) float64 {
		if rng.Intn(15) > 0 {
			return most * rng.Float64()
		}
		return odd[rng.Intn(len(odd))]
	}
	worked := 0
	for range 800 {
		c := Cut{Kind: Kind(rng.Intn(5)), Side: wheel.Side(rng.Intn(2)), ToDiameterMM: 100 + pick(100), FromMM: 12.5 + pick(40), ToMM: 50 + pick(50),
			DepthMM: pick(20), DeepInside: rng.Intn(2) == 0, Number: rng.Intn(9), PitchMM: pick(100), FirstHour: pick(12), DiameterMM: pick(20),
			PointDeg: 118, Through: rng.Intn(2) == 0}
		a, err := Make(single(), steel, c)
		if err != nil {
			continue
		}
		worked++
		off := a.Off()
		for _, x := range []float64{off.MassG, off.InertiaGMM2, off.MomentGMM.Len(), a.Lines[0].OverlapG()} {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%+v", c)
		}
		require.GreaterOrEqual(t, off.MassG, -1e-9, "%+v", c)
	}
	assert.Greater(t, worked, 150)
}
