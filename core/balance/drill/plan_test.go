package drill

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"

	"pintwelve/core/clock"
)

// flywheel is a wheel as the trade meets it: 24 drills, up to 8 holes, the pin
// boss and two holes of the maker's in the way.
func flywheel(remove clock.Vec) Task {
	return Task{
		Zone: Zone{
			InMM: 45, OutMM: 82, Hour: 6, HalfRad: math.Pi / 3,
			Keep: []Circle{{clock.Vec{T: 40}, 46}, {clock.Polar(60, 5), 10}, {clock.Polar(60, 7), 10}},
		},
		DrillsMM: Metric(4.5, 16, 0.5), PointDeg: 118, ThickMM: 24, WallMM: 3,
		DensityKGM3: 7850, MostHoles: 8, ToleranceGMM: 10, Remove: remove,
	}
}

// one drill, one radius, right through only: what a hole takes is worked by hand.
func oneHoleOnly(remove clock.Vec) Task {
	return Task{
		Zone:     Zone{InMM: 51, OutMM: 69, Hour: 6, HalfRad: math.Pi / 2},
		DrillsMM: []float64{12}, Bottom: ThroughOnly, ThickMM: 20, WallMM: 3, DensityKGM3: 7850,
		MostHoles: 4, RadiusStepMM: 60, AngleStepDeg: 15, ToleranceGMM: 1, Remove: remove,
	}
}

// A wheel 20 mm thick at the least and 26 under the drill: π/4 × 12² × 26 mm³ of 7.85 g/cm³
// is 23.083 g, at 60 mm 1385.0 g·mm. Worked by hand. Where it isn't alike thick none goes through.
func TestRightThroughTakesWhatStandsThere(t *testing.T) {
	task := oneHoleOnly(clock.Vec{T: -1385})
	task.Under = func(radiusMM, drillMM float64) (float64, bool) { return 26, true }
	p, err := task.Plan()
	require.NoError(t, err)
	require.True(t, p.Reached)
	require.Len(t, p.Holes, 1)
	assert.InDelta(t, 23.083, p.Holes[0].MassG, 1e-3)
	assert.Equal(t, 26.0, p.Holes[0].DepthMM)
	task.Bottom = Either
	task.Under = func(radiusMM, drillMM float64) (float64, bool) { return 0, true }
	p, err = task.Plan()
	require.NoError(t, err)
	for _, h := range p.Holes {
		assert.False(t, h.Through)
	}
	task.Bottom = ThroughOnly
	_, err = task.Plan()
	assert.Error(t, err)
}

// Over an edge of the face no hole is planned, blind or through.
func TestNoHoleStandsOverAnEdge(t *testing.T) {
	for _, bottom := range []Bottom{BlindOnly, ThroughOnly} {
		task := oneHoleOnly(clock.Vec{T: -1385})
		task.Bottom, task.InMM, task.RadiusStepMM = bottom, 40, 1
		const edge = 60
		task.Under = func(radiusMM, drillMM float64) (float64, bool) {
			return 20, math.Abs(radiusMM-edge) >= drillMM/2
		}
		p, err := task.Plan()
		require.NoError(t, err)
		require.NotEmpty(t, p.Holes)
		for _, h := range p.Holes {
			assert.GreaterOrEqual(t, math.Abs(h.RadiusMM-edge), h.DiameterMM/2)
		}
	}
}

// π/4 × 12² × 20 mm³ of 7.85 g/cm³ is 17.756 g, at 60 mm 1065.3 g·mm; a pair at
// ±15° takes 2 m r cos 15° = 2058.1 g·mm, MODEL §8. Worked by hand.
func TestHolesWorkedByHand(t *testing.T) {
	for _, row := range []struct {
		remove clock.Vec
		places []float64 // degrees off the axis
	}{
		{clock.Vec{T: -1065.3}, []float64{0}},
		{clock.Vec{T: -2058.1}, []float64{-15, 15}},
		{clock.Vec{T: -(1065.3 + 1845.2)}, []float64{-30, 0, 30}}, // 2 × 1065.3 cos 30°
	} {
		p, err := oneHoleOnly(row.remove).Plan()
		require.NoError(t, err)
		require.True(t, p.Reached)
		require.Len(t, p.Holes, len(row.places))
		for i, h := range p.Holes {
			assert.InDelta(t, row.places[i]*math.Pi/180, h.OffRad, 1e-12)
			assert.InDelta(t, 6+row.places[i]/30, h.Hour, 1e-9)
			assert.InDelta(t, 17.756, h.MassG, 1e-3)
			assert.Equal(t, 60.0, h.RadiusMM)
			assert.True(t, h.Through)
		}
		assert.InDelta(t, float64(len(row.places))*17.756, p.MassG, 1e-2)
		assert.Equal(t, p.MassG, p.SwarfG)
		assert.Less(t, p.LeftGMM.Len(), 0.2)
	}
}

// A plug of tungsten heavy metal, 17.0 g/cm³, in the same hole adds (17.0 − 7.85)
// g/cm³ × 2261.95 mm³ = 20.697 g, at 60 mm 1241.8 g·mm, and goes opposite to
// where metal is too much. Worked by hand.
func TestPlugWorkedByHand(t *testing.T) {
	task := oneHoleOnly(clock.Vec{T: 1241.8})
	task.PlugKGM3 = 17000
	p, err := task.Plan()
	require.NoError(t, err)
	require.True(t, p.Reached)
	require.Len(t, p.Holes, 1)
	assert.InDelta(t, 6, p.Holes[0].Hour, 1e-9)
	assert.InDelta(t, -20.697, p.Holes[0].MassG, 1e-3)
	assert.InDelta(t, 38.453, p.Holes[0].PlugG, 1e-3)
	assert.InDelta(t, 17.756, p.SwarfG, 1e-3)

	light := oneHoleOnly(clock.Vec{T: -684.2}) // 60 × 2261.95 mm³ × (7.85 − 2.81)
	light.PlugKGM3 = 2810
	p, err = light.Plan()
	require.NoError(t, err)
	require.True(t, p.Reached)
	require.Len(t, p.Holes, 1)
	assert.InDelta(t, 6, p.Holes[0].Hour, 1e-9, "a light plug goes where metal is too much")
}

func TestWithinTheToleranceNeedsNoHole(t *testing.T) {
	for _, remove := range []clock.Vec{{}, {T: 3, N: -4}} {
		p, err := flywheel(remove).Plan()
		require.NoError(t, err)
		assert.True(t, p.Reached)
		assert.Empty(t, p.Holes)
		assert.Equal(t, remove, p.LeftGMM)
	}
}

// tasks returns random problems of workshop size.
func workshop(rng *rand.Rand) Task {
	t := Task{
		Zone: Zone{
			InMM: 35 + 15*rng.Float64(), OutMM: 70 + 20*rng.Float64(),
			Hour: 12 * rng.Float64(), HalfRad: 0.3 + 2.8*rng.Float64(),
		},
		DrillsMM: [][]float64{Metric(4.5, 16, 0.5), Inch(12, 40, 2), {6, 8, 10}}[rng.Intn(3)],
		PointDeg: []float64{0, 90, 118, 135}[rng.Intn(4)],
		Bottom:   Bottom(rng.Intn(3)),
		ThickMM:  16 + 16*rng.Float64(), WallMM: 2 + 2*rng.Float64(), DensityKGM3: 7200 + 700*rng.Float64(),
		PlugKGM3:  []float64{0, 0, 2700, 11340, 17000}[rng.Intn(5)],
		MostHoles: 1 + rng.Intn(8), ToleranceGMM: 2 + 30*rng.Float64(),
	}
	axis := t.Hour + 12*t.HalfRad/(2*math.Pi)*(rng.Float64()-0.5)
	t.Remove = clock.Polar(math.Pow(10, 2+1.8*rng.Float64()), axis)
	if t.heavyPlug() {
		t.Remove = t.Remove.Scale(-1)
	}
	for range rng.Intn(5) {
		t.Keep = append(t.Keep, Circle{clock.Polar(40+40*rng.Float64(), 12*rng.Float64()), 5 + 20*rng.Float64()})
	}
	return t
}

// metal integrates what a hole takes off over its volume: slices along the
// depth, each slice over the plane by two nested Gauss rules, density times
// position. The plug stands in the hole to the shoulder.
func metal(h Hole, task Task) (massG float64, moment clock.Vec) {
	slice := func(radius, density float64) (m float64, at clock.Vec) {
		strip := func(weight func(x, y float64) float64) float64 {
			return quad.Fixed(func(a float64) float64 {
				x, half := radius*math.Sin(a), radius*math.Cos(a) // smooth at the edge
				return half * quad.Fixed(func(y float64) float64 { return weight(h.At.T+x, h.At.N+y) }, -half, half, 4, nil, 0)
			}, -math.Pi/2, math.Pi/2, 24, nil, 0) * density * 1e-6
		}
		return strip(func(x, y float64) float64 { return 1 }), clock.Vec{
			T: strip(func(x, y float64) float64 { return x }),
			N: strip(func(x, y float64) float64 { return y }),
		}
	}
	add := func(from, to float64, radius func(z float64) float64, density float64) {
		massG += quad.Fixed(func(z float64) float64 { m, _ := slice(radius(z), density); return m }, from, to, 4, nil, 0)
		moment.T += quad.Fixed(func(z float64) float64 { _, v := slice(radius(z), density); return v.T }, from, to, 4, nil, 0)
		moment.N += quad.Fixed(func(z float64) float64 { _, v := slice(radius(z), density); return v.N }, from, to, 4, nil, 0)
	}
	r := h.DiameterMM / 2
	add(0, h.DepthMM, func(float64) float64 { return r }, task.DensityKGM3-task.PlugKGM3)
	if !h.Through && h.PointDeg < 180 {
		tip := r / math.Tan(h.PointDeg/2*math.Pi/180)
		add(0, tip, func(z float64) float64 { return r * (1 - z/tip) }, task.DensityKGM3)
	}
	return massG, moment
}

// The moment recomputed by numerical integration over the holes' volume, and
// the walls by plane geometry.
func TestRandomPlansAgainstIntegration(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	plans, reached := 0, 0
	for range 250 {
		task := workshop(rng)
		p, err := task.Plan()
		if err != nil {
			var fault *Fault
			require.ErrorAs(t, err, &fault)
			continue
		}
		plans++
		var mass float64
		var moment clock.Vec
		for _, h := range p.Holes {
			m, v := metal(h, task)
			assert.InEpsilon(t, m, h.MassG, 1e-3)
			mass, moment = mass+m, moment.Add(v)
		}
		assert.InDelta(t, mass, p.MassG, 1e-3*math.Abs(mass)+1e-12)
		assert.LessOrEqual(t, moment.Sub(p.MomentGMM).Len(), 1e-3*moment.Len()+1e-12)
		assert.InDelta(t, 0, task.Remove.Sub(p.MomentGMM).Sub(p.LeftGMM).Len(), 1e-9)
		tolerance := math.Max(task.ToleranceGMM, leastOfTheWhole*task.Remove.Len())
		assert.Equal(t, p.Reached, p.LeftGMM.Len() <= tolerance+1e-9)
		if p.Reached {
			reached++
		}
		assertWalls(t, task, p)
	}
	assert.Greater(t, plans, 150)
	assert.Greater(t, reached, 100)
}

func assertWalls(t *testing.T, task Task, p Plan) {
	const snug = 1e-6
	require.LessOrEqual(t, len(p.Holes), task.MostHoles)
	for i, h := range p.Holes {
		assert.GreaterOrEqual(t, h.At.Len()-h.DiameterMM/2, task.InMM+task.WallMM-snug)
		assert.LessOrEqual(t, h.At.Len()+h.DiameterMM/2, task.OutMM-task.WallMM+snug)
		assert.InDelta(t, h.RadiusMM, h.At.Len(), 1e-9)
		assert.InDelta(t, 0, clock.Apart(h.Hour, h.At.Hour()), 1e-9)
		off := math.Abs(math.Mod(h.Hour-task.Hour+18, 12)-6) * math.Pi / 6
		assert.LessOrEqual(t, off, task.HalfRad+snug)
		for _, k := range task.Keep {
			assert.GreaterOrEqual(t, h.At.Sub(k.At).Len(), (h.DiameterMM+k.DiameterMM)/2+task.WallMM-snug)
		}
		for _, g := range p.Holes[:i] {
			assert.GreaterOrEqual(t, h.At.Sub(g.At).Len(), (h.DiameterMM+g.DiameterMM)/2+task.WallMM-snug)
		}
		if h.Through {
			assert.NotEqual(t, BlindOnly, task.Bottom)
			assert.Equal(t, task.ThickMM, h.DepthMM)
		} else {
			assert.NotEqual(t, ThroughOnly, task.Bottom)
			assert.LessOrEqual(t, h.ReachMM(), task.ThickMM-task.WallMM+snug)
		}
		assert.Contains(t, task.DrillsMM, h.DiameterMM)
	}
}

// Turning the job about the shaft, or looking at it from the other end, turns
// and mirrors the plan and no more.
func TestPlanTurnsAndMirrorsWithTheJob(t *testing.T) {
	turn := func(v clock.Vec, hours float64) clock.Vec { return clock.Polar(v.Len(), v.Hour()+hours) }
	for _, remove := range []clock.Vec{{T: -1300, N: 80}, {T: -3900, N: 450}, {T: -8000, N: -300}} {
		task := flywheel(remove)
		want, err := task.Plan()
		require.NoError(t, err)

		turned := task
		turned.Hour, turned.Remove, turned.Keep = clock.Wrap(task.Hour+2.5), turn(remove, 2.5), nil
		mirrored := task
		mirrored.Remove, mirrored.Keep = remove.From(clock.Right), nil
		for _, k := range task.Keep {
			turned.Keep = append(turned.Keep, Circle{turn(k.At, 2.5), k.DiameterMM})
			mirrored.Keep = append(mirrored.Keep, Circle{k.At.From(clock.Right), k.DiameterMM})
		}
		got, err := turned.Plan()
		require.NoError(t, err)
		assert.Equal(t, want.Kind, got.Kind)
		assert.Len(t, got.Holes, len(want.Holes))
		assert.InDelta(t, 0, got.MomentGMM.Sub(turn(want.MomentGMM, 2.5)).Len(), 1e-6)
		got, err = mirrored.Plan()
		require.NoError(t, err)
		assert.Equal(t, want.Kind, got.Kind)
		assert.Len(t, got.Holes, len(want.Holes))
		again, err := task.Plan()
		require.NoError(t, err)
		assert.Equal(t, want, again, "the same job has the same plan")
	}
}

func TestSets(t *testing.T) {
	assert.InDeltaSlice(t, []float64{6, 6.5, 7}, Metric(6, 7, 0.5), 1e-12)
	assert.Len(t, Metric(4.5, 16, 0.5), 24)
	assert.InDeltaSlice(t, []float64{6.35, 9.525, 12.7}, Inch(16, 32, 8), 1e-12) // 1/4, 3/8, 1/2 in
	for _, bad := range [][]float64{Metric(0, 5, 1), Metric(1, 5, 0), Metric(1, math.NaN(), 1), Metric(1, 1e9, 0.1), Inch(0, 5, 1), Inch(1, 1e9, 1), Inch(1, 5, 0)} {
		assert.Nil(t, bad)
	}
}
