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

const steel = 7850 // kg/m³

func sectionOf(t *testing.T, w Wheel) *Section {
	t.Helper()
	s, err := w.Section()
	require.NoError(t, err)
	return s
}

func metalOf(t *testing.T, w Wheel) Metal {
	t.Helper()
	m, err := sectionOf(t, w).Metal(steel)
	require.NoError(t, err)
	return m
}

// Handbook tables give round bar of 100 mm in steel 61.65 kg/m (EN 10060, value
// from memory); a plain disc is that bar, J = ½ m r².
func TestPlainDiscIsRoundBar(t *testing.T) {
	m := metalOf(t, Wheel{DiameterMM: 100, WidthMM: 1000})
	assert.InDelta(t, 61650, m.MassG, 5)
	assert.InEpsilon(t, m.MassG*50*50/2, m.InertiaGMM2, 1e-14)
}

// The ring and the bevel of core/MODEL.md §9, written as they stand there.
func TestRingAndBevelOfTheModel(t *testing.T) {
	const a, b, h = 30.0, 90.0, 7.0
	plain := Wheel{DiameterMM: 200, WidthMM: 28}
	ring := metalOf(t, plain).Sub(metalOf(t, plain.Turn(Ring{Inner, a, b, h, h})))
	assert.InEpsilon(t, math.Pi*(b*b-a*a)*h*steel*1e-6, ring.MassG, 1e-12)
	assert.InEpsilon(t, ring.MassG*(a*a+b*b)/2, ring.InertiaGMM2, 1e-12)

	bevel := metalOf(t, plain).Sub(metalOf(t, plain.Turn(Ring{Outer, a, b, 0, h})))
	rho := steel * 1e-6
	assert.InEpsilon(t, math.Pi*rho*h*(b*b-(a*a+a*b+b*b)/3), bevel.MassG, 1e-12)
	assert.InEpsilon(t, math.Pi*rho*h*(math.Pow(b, 4)/2-(math.Pow(a, 4)+a*a*a*b+a*a*b*b+a*b*b*b+math.Pow(b, 4))/10),
		bevel.InertiaGMM2, 1e-12)
}

func randomWheel(rng *rand.Rand) Wheel {
	w := Wheel{DiameterMM: 120 + 180*rng.Float64(), WidthMM: 15 + 25*rng.Float64(), BoreMM: 15 + 20*rng.Float64()}
	if rng.Intn(3) == 0 {
		w.TurnedToMM = w.DiameterMM - 12*rng.Float64()
	}
	ring := func() Ring {
		in, out := w.BoreMM/2, w.DiameterMM/2
		r := Ring{Side: Side(rng.Intn(2)), FromMM: in + (out-in)*rng.Float64()}
		r.ToMM = r.FromMM + (out-r.FromMM)*rng.Float64()
		r.DepthFromMM, r.DepthToMM = 0.45*w.WidthMM*rng.Float64(), 0.45*w.WidthMM*rng.Float64()
		switch rng.Intn(3) {
		case 0:
			r.DepthToMM = r.DepthFromMM
		case 1:
			r.DepthFromMM = 0
		}
		return r
	}
	for range rng.Intn(4) {
		w.Rings = append(w.Rings, ring())
	}
	for range rng.Intn(4) {
		w.Turned = append(w.Turned, ring())
	}
	return w
}

func (w Wheel) rim() float64 {
	if w.TurnedToMM > 0 {
		return w.TurnedToMM / 2
	}
	return w.DiameterMM / 2
}

// away is how deep a face is away at radius r: the deepest ring there.
func away(w Wheel, side Side, r float64) float64 {
	deep := 0.0
	for _, x := range slices.Concat(w.Rings, w.Turned) {
		if x.Side == side && r >= x.FromMM && r <= x.ToMM && x.ToMM > x.FromMM {
			deep = max(deep, x.DepthFromMM+(x.DepthToMM-x.DepthFromMM)*(r-x.FromMM)/(x.ToMM-x.FromMM))
		}
	}
	return deep
}

// edges are the radii where a ring begins, ends, or crosses another.
func edges(w Wheel) []float64 {
	in, out := w.BoreMM/2, w.rim()
	at := []float64{in, out}
	add := func(r float64) {
		if r > in && r < out {
			at = append(at, r)
		}
	}
	all := slices.Concat(w.Rings, w.Turned)
	line := func(x Ring) (slope, zero float64) {
		slope = (x.DepthToMM - x.DepthFromMM) / (x.ToMM - x.FromMM)
		return slope, x.DepthFromMM - slope*x.FromMM
	}
	for _, x := range all {
		add(x.FromMM)
		add(x.ToMM)
		for _, y := range all {
			ax, bx := line(x)
			ay, by := line(y)
			add((by - bx) / (ax - ay))
		}
	}
	slices.Sort(at)
	return at
}

// integral is gonum's Gauss rule over ten pieces, each halved wherever two
// halves differ from the whole, so that it closes in on corners it knows
// nothing of.
func integral(f func(float64) float64, a, b, tol float64) float64 {
	const pieces = 10
	total, step := 0.0, (b-a)/pieces
	for k := range pieces {
		total += halved(f, a+float64(k)*step, a+float64(k+1)*step, math.Inf(1), tol/pieces)
	}
	return total
}

func halved(f func(float64) float64, a, b, whole, tol float64) float64 {
	mid := (a + b) / 2
	left, right := quad.Fixed(f, a, mid, 5, nil, 0), quad.Fixed(f, mid, b, 5, nil, 0)
	if math.Abs(left+right-whole) < tol || b-a < 1e-9 {
		return left + right
	}
	return halved(f, a, mid, left, tol) + halved(f, mid, b, right, tol)
}

// revolved integrates 2πr t and 2πr³ t over the radius, t the width less the
// deepest ring of each face.
func revolved(w Wheel) (volume, second float64) {
	stand := func(r float64) float64 {
		return w.WidthMM - away(w, Outer, r) - away(w, Inner, r)
	}
	at := edges(w)
	for i := 1; i < len(at); i++ {
		f := func(r float64) float64 { return 2 * math.Pi * r * stand(r) }
		g := func(r float64) float64 { return 2 * math.Pi * r * r * r * stand(r) }
		volume += integral(f, at[i-1], at[i], 1e-7)
		second += integral(g, at[i-1], at[i], 1e-3)
	}
	return volume, second
}

func TestRandomSectionsAgainstNumericalIntegration(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	for range 150 {
		w := randomWheel(rng)
		volume, second := revolved(w)
		m := metalOf(t, w)
		assert.InEpsilon(t, volume*steel*1e-6, m.MassG, 1e-9, "%+v", w)
		assert.InEpsilon(t, second*steel*1e-6, m.InertiaGMM2, 1e-9, "%+v", w)
		assert.Equal(t, clock.Vec{}, m.MomentGMM)
	}
}

func TestOverlappingRingsCountOnce(t *testing.T) {
	plain := Wheel{DiameterMM: 200, WidthMM: 28}
	ring := Ring{Inner, 30, 90, 6, 6}
	once := metalOf(t, plain.Turn(ring))
	assert.Equal(t, once, metalOf(t, plain.Turn(ring).Turn(ring)))
	assert.Equal(t, once, metalOf(t, plain.Turn(ring).Turn(Ring{Inner, 40, 80, 3, 5})))
	parts := plain.Turn(Ring{Inner, 30, 60, 6, 6}).Turn(Ring{Inner, 50, 90, 6, 6})
	assert.InEpsilon(t, once.MassG, metalOf(t, parts).MassG, 1e-14)
	other := metalOf(t, plain.Turn(ring).Turn(Ring{Outer, 30, 90, 6, 6}))
	assert.Greater(t, once.MassG-other.MassG, 900.0) // the other face is other metal
	w := plain.Turn(ring)
	w.Rings = []Ring{ring}
	assert.Equal(t, once, metalOf(t, w))
}

// lens is where a circle of radius s, its centre at c, lies inside one of radius
// r about the shaft: the textbook's two circular segments.
func lens(r, s, c float64) float64 {
	return s*s*math.Acos((c*c+s*s-r*r)/(2*c*s)) + r*r*math.Acos((c*c+r*r-s*s)/(2*c*r)) -
		math.Sqrt((-c+s+r)*(c+s-r)*(c-s+r)*(c+s+r))/2
}

func TestBossStandsInItsRecess(t *testing.T) {
	bare := Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 25, Rings: []Ring{{Outer, 35, 80, 5, 5}}}
	stands := func(b Boss, more ...Ring) Metal {
		cut, with := bare, bare
		cut.Turned = more
		with.Turned, with.Bosses = more, []Boss{b}
		return metalOf(t, with).Sub(metalOf(t, cut))
	}
	const rho = steel * 1e-6
	inside := stands(Boss{Outer, clock.Vec{T: 58}, 40, 0})
	assert.InEpsilon(t, math.Pi*400*5*rho, inside.MassG, 1e-10)
	assert.InEpsilon(t, inside.MassG*58, inside.MomentGMM.T, 1e-10)
	assert.InEpsilon(t, inside.MassG*(58*58+200), inside.InertiaGMM2, 1e-10)

	low := stands(Boss{Outer, clock.Vec{T: 58}, 40, 2})
	assert.InEpsilon(t, math.Pi*400*3*rho, low.MassG, 1e-10)
	faced := stands(Boss{Outer, clock.Vec{T: 58}, 40, 0}, Ring{Outer, 12.5, 100, 4, 4})
	assert.InEpsilon(t, math.Pi*400*1*rho, faced.MassG, 1e-9)
	gone := stands(Boss{Outer, clock.Vec{T: 58}, 40, 0}, Ring{Outer, 12.5, 100, 6, 6})
	assert.InDelta(t, 0, gone.MassG, 1e-9)

	// a boss over the bore or the rim adds only where the wheel is
	bare.Rings[0].FromMM = 12.5
	bored := stands(Boss{Outer, clock.Vec{T: 30}, 50, 0})
	assert.InEpsilon(t, (math.Pi*625-lens(12.5, 25, 30))*5*rho, bored.MassG, 1e-8)
	bare.Rings[0] = Ring{Outer, 35, 100, 5, 5}
	over := stands(Boss{Outer, clock.Vec{T: 90}, 30, 0})
	assert.InEpsilon(t, lens(100, 15, 90)*5*rho, over.MassG, 1e-8)
	bare.Rings[0] = Ring{Outer, 35, 80, 5, 5}
	// a boss over the hub's edge adds only where the face is recessed
	over = stands(Boss{Outer, clock.Vec{T: 41}, 60, 0})
	assert.InEpsilon(t, (math.Pi*900-lens(35, 30, 41))*5*rho, over.MassG, 1e-8)
}

func TestThinnestWalls(t *testing.T) {
	w := Wheel{
		DiameterMM: 200, WidthMM: 28, BoreMM: 25,
		Rings:  []Ring{{Outer, 35, 80, 5, 5}, {Inner, 35, 80, 6, 6}, {Inner, 96, 100, 0, 3}},
		Bosses: []Boss{{Side: Outer, At: clock.Vec{T: 55}, DiameterMM: 40}},
	}
	w, err := w.Drill(Outer, Hole{At: clock.Vec{T: 55}, DiameterMM: 25, Through: true},
		Hole{At: clock.Vec{T: -60, N: 5}, DiameterMM: 10, DepthMM: 12}, Hole{At: clock.Vec{T: -60, N: -8}, DiameterMM: 8, Through: true})
	require.NoError(t, err)
	w, err = w.Drill(Inner, Hole{At: clock.Vec{N: 60}, DiameterMM: 10, DepthMM: 10, PointDeg: 90})
	require.NoError(t, err)
	got := map[WallKind]Wall{}
	for _, wall := range sectionOf(t, w).Walls() {
		got[wall.Kind] = wall
	}
	for _, row := range []struct {
		kind WallKind
		mm   float64
	}{
		{Web, 17}, {RimDepth, 20}, {RimWidth, 25},
		{HoleFloor, 17 - 10 - 5}, {HoleToBore, 55 - 12.5 - 12.5},
		{HoleToEdge, 100 - 55 - 12.5}, {HoleToHole, 13 - 9}, {HoleToBoss, 20 - 12.5},
	} {
		require.Contains(t, got, row.kind)
		assert.InDelta(t, row.mm, got[row.kind].MM, 1e-9, "%d", row.kind)
	}
	assert.Equal(t, [2]int{1, 2}, got[HoleToHole].Holes)
	assert.Equal(t, [2]int{3, 3}, got[HoleFloor].Holes)
	for _, wall := range sectionOf(t, Wheel{DiameterMM: 100, WidthMM: 10}).Walls() {
		assert.NotEqual(t, RimDepth, wall.Kind) // a plain disc has no rim
	}
}

// A recess to 160 mm leaves a rim 20 mm deep of 200, 2 of 164, and none of 160 and less.
func TestARimTurnedAwayIsNoDepth(t *testing.T) {
	for to, depth := range map[float64]float64{0: 20, 164: 2, 160: 0, 150: 0} {
		for _, w := range []Wheel{
			{Rings: []Ring{{Outer, 30, 80, 5, 5}}},
			{Turned: []Ring{{Inner, 30, 80, 5, 5}}},
			{Rings: []Ring{{Outer, 50, 80, 5, 5}}, Turned: []Ring{{Outer, 30, 80, 2, 4}}},
		} {
			w.DiameterMM, w.WidthMM, w.BoreMM, w.TurnedToMM = 200, 28, 24, to
			found := false
			for _, wall := range sectionOf(t, w).Walls() {
				if wall.Kind == RimDepth {
					found = true
					assert.InDelta(t, depth, wall.MM, 1e-9, "%g", to)
				}
			}
			assert.True(t, found, "%g", to)
		}
	}
	for _, wall := range sectionOf(t, Wheel{DiameterMM: 200, WidthMM: 28, TurnedToMM: 150}).Walls() {
		assert.NotEqual(t, RimDepth, wall.Kind, "a plain disc has no rim")
	}
}

func TestHolesFromBothFacesMayPassAboveOneAnother(t *testing.T) {
	w := Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 25}
	at := clock.Vec{T: -60}
	w, err := w.Drill(Outer, Hole{At: at, DiameterMM: 12, DepthMM: 10})
	require.NoError(t, err)
	both, err := w.Drill(Inner, Hole{At: at, DiameterMM: 12, DepthMM: 10})
	require.NoError(t, err)
	for _, wall := range sectionOf(t, both).Walls() {
		if wall.Kind == HoleToHole {
			assert.InDelta(t, 8, wall.MM, 1e-12)
		}
	}
	beside, err := w.Drill(Inner, Hole{At: clock.Vec{T: -60, N: 15}, DiameterMM: 12, DepthMM: 14})
	require.NoError(t, err)
	for _, wall := range sectionOf(t, beside).Walls() {
		if wall.Kind == HoleToHole {
			assert.InDelta(t, 5, wall.MM, 1e-12) // 3 across and 4 along
		}
	}
	deep, err := w.Drill(Inner, Hole{At: at, DiameterMM: 12, DepthMM: 18})
	require.NoError(t, err)
	_, err = deep.Section()
	var fault *Fault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, HoleToHoleLeft, fault.Field)
	assert.Equal(t, 1, fault.Item)
}

func TestWheelThatCannotBe(t *testing.T) {
	good := Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 25}
	nan, inf := math.NaN(), math.Inf(1)
	with := func(change func(w *Wheel)) Wheel {
		w := good
		change(&w)
		return w
	}
	hole := func(at clock.Vec, d float64) Wheel {
		return with(func(w *Wheel) {
			w.Holes = []Drilling{{Hole: Hole{At: at, DiameterMM: d, DepthMM: 5}}, {Hole: Hole{At: clock.Vec{N: 60}, DiameterMM: 20, DepthMM: 5}}}
		})
	}
	for _, row := range []struct {
		field Field
		item  int
		wheel Wheel
	}{
		{Diameter, 0, Wheel{}},
		{Diameter, 0, with(func(w *Wheel) { w.DiameterMM = nan })},
		{Diameter, 0, with(func(w *Wheel) { w.DiameterMM = 1e300 })},
		{Width, 0, with(func(w *Wheel) { w.WidthMM = -28 })},
		{Width, 0, with(func(w *Wheel) { w.WidthMM = inf })},
		{Bore, 0, with(func(w *Wheel) { w.BoreMM = 200 })},
		{Bore, 0, with(func(w *Wheel) { w.BoreMM = -1 })},
		{TurnedTo, 0, with(func(w *Wheel) { w.TurnedToMM = 201 })},
		{TurnedTo, 0, with(func(w *Wheel) { w.TurnedToMM = 25 })},
		{TurnedTo, 0, with(func(w *Wheel) { w.TurnedToMM = nan })},
		{RingFrom, 0, good.Turn(Ring{Outer, 10, 50, 3, 3})},                                   // through the bore
		{RingFrom, 1, good.Turn(Ring{Outer, 40, 50, 3, 3}).Turn(Ring{Inner, 110, 120, 3, 3})}, // outside the wheel
		{RingTo, 0, good.Turn(Ring{Outer, 40, 101, 3, 3})},                                    // outside the wheel
		{RingTo, 0, good.Turn(Ring{Outer, 40, 30, 3, 3})},                                     // inside out
		{RingDepth, 0, good.Turn(Ring{Outer, 40, 50, -3, 3})},
		{RingDepth, 0, good.Turn(Ring{Outer, 40, 50, 3, nan})},
		{RingDepth, 0, good.Turn(Ring{Outer, 40, 50, 29, 29})},                                 // deeper than the wheel is wide
		{WebLeft, 0, good.Turn(Ring{Outer, 40, 50, 15, 15}).Turn(Ring{Inner, 45, 60, 14, 14})}, // the faces meet
		{WebLeft, 0, good.Turn(Ring{Outer, 40, 50, 28, 28})},
		{BossDiameter, 0, with(func(w *Wheel) { w.Bosses = []Boss{{DiameterMM: nan}} })},
		{BossPlace, 0, with(func(w *Wheel) { w.Bosses = []Boss{{DiameterMM: 9, At: clock.Vec{T: 300}}} })},
		{BossPlace, 1, with(func(w *Wheel) { w.Bosses = []Boss{{DiameterMM: 9}, {DiameterMM: 9, At: clock.Vec{T: 5}}} })},
		{BossBelow, 0, with(func(w *Wheel) { w.Bosses = []Boss{{DiameterMM: 9, BelowMM: -1}} })},
		{HoleStart, 0, with(func(w *Wheel) { w.Holes = []Drilling{{Hole: Hole{DiameterMM: 5}, StartMM: 29}} })},
		{HoleDiameter, 0, hole(clock.Vec{T: 60}, 0)},
		{HoleToBoreLeft, 0, hole(clock.Vec{T: 16}, 10)},
		{HoleToEdgeLeft, 0, hole(clock.Vec{T: 96}, 10)},
		{HoleToHoleLeft, 1, hole(clock.Vec{N: 70}, 10)},
	} {
		s, err := row.wheel.Section()
		var fault *Fault
		require.ErrorAs(t, err, &fault, "%+v", row.wheel)
		assert.Nil(t, s)
		assert.Equal(t, row.field, fault.Field, "%v", err)
		assert.Equal(t, row.item, fault.Item, "%v", err)
		_, err = row.wheel.Drill(Outer)
		assert.ErrorAs(t, err, &fault)
	}
	_, err := good.Drill(Outer, Hole{DiameterMM: nan})
	assert.Error(t, err)
}

func TestNothingButNumbersComesOut(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	odd := []float64{0, -1, 1, 5, 12, 28, 50, 100, 200, 1e-300, 1e300, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64}
	pick := func() float64 {
		if rng.Intn(12) > 0 {
			return 100 * rng.Float64()
		}
		return odd[rng.Intn(len(odd))]
	}
	worked := 0
	for range 20000 {
		w := Wheel{DiameterMM: 100 + pick(), WidthMM: pick(), BoreMM: pick() / 4}
		if rng.Intn(2) == 0 {
			w.TurnedToMM = 100 + pick()
		}
		w = w.Turn(Ring{Side(rng.Intn(2)), pick(), 50 + pick(), pick() / 4, pick() / 4})
		w.Bosses = []Boss{{Side(rng.Intn(2)), clock.Vec{T: pick()}, pick() / 2, 0}}
		w.Holes = []Drilling{{Hole{clock.Vec{T: pick(), N: pick()}, pick() / 4, pick(), 118, rng.Intn(2) == 0}, Inner, pick() / 8}}
		s, err := w.Section()
		if err != nil {
			continue
		}
		worked++
		m, err := s.Metal(steel)
		require.NoError(t, err)
		for _, x := range []float64{m.MassG, m.InertiaGMM2, m.MomentGMM.Len()} {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0) || x < 0, "%+v", w)
		}
		require.Positive(t, m.MassG, "%+v", w)
		for _, wall := range s.Walls() {
			require.False(t, math.IsNaN(wall.MM) || math.IsInf(wall.MM, 0) || wall.MM < 0, "%+v", w)
		}
	}
	assert.Greater(t, worked, 100)
	_, err := sectionOf(t, Wheel{DiameterMM: 200, WidthMM: 28}).Metal(math.NaN())
	assert.Error(t, err)
}
