package drill

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
)

// spot is a hole of the brute force: where, how big, what it takes off.
type spot struct {
	x, y, d, pull float64
	setUp         [3]int // drill, radius, depth
	place         int
}

// brute goes through every plan that the package comment allows, with plane
// geometry of its own and no bound but the number of holes and, since more holes
// are never better than fewer within the tolerance, stops at the first number
// that has one.
type brute struct {
	t       Task
	x0, y0  float64 // the axis
	target  float64
	spots   [][]spot // of one drill at one radius and depth
	best    pick
	tried   int
	reached bool
}

func newBrute(t Task) *brute {
	t = t.withDefaults()
	b := &brute{t: t, target: t.Remove.Len()}
	b.x0, b.y0 = t.Remove.T/b.target, t.Remove.N/b.target
	for i, d := range t.DrillsMM {
		for j := 1; float64(j)*t.RadiusStepMM < t.OutMM; j++ {
			for k, depth := range b.depths(d) {
				if all := b.places(i, j, k, d, float64(j)*t.RadiusStepMM, depth); len(all) > 0 {
					b.spots = append(b.spots, all)
				}
			}
		}
	}
	return b
}

// depths returns the volume over the area for every depth that can be drilled.
func (b *brute) depths(d float64) []float64 {
	var all []float64
	tan := math.Tan(b.t.PointDeg / 2 * math.Pi / 180)
	for z := b.t.DepthStepMM; z+d/2/tan <= b.t.ThickMM-b.t.WallMM+1e-9; z += b.t.DepthStepMM {
		all = append(all, z+d/6/tan)
	}
	return append(all, b.t.ThickMM)
}

func (b *brute) places(i, j, k int, d, r, deep float64) []spot {
	var all []spot
	n := int(MostOffDeg / b.t.AngleStepDeg)
	for p := -n; p <= n; p++ {
		sin, cos := math.Sincos(float64(p) * b.t.AngleStepDeg * math.Pi / 180)
		h := spot{x: r * (b.x0*cos - b.y0*sin), y: r * (b.x0*sin + b.y0*cos), d: d, setUp: [3]int{i, j, k}, place: p}
		h.pull = math.Pi * d * d / 4 * deep * b.t.DensityKGM3 * 1e-6
		if b.fits(h, r) {
			all = append(all, h)
		}
	}
	return all
}

func (b *brute) fits(h spot, r float64) bool {
	const snug = 1e-9
	zone := b.t.Hour * math.Pi / 6
	if r-h.d/2-b.t.WallMM < b.t.InMM-snug || r+h.d/2+b.t.WallMM > b.t.OutMM+snug {
		return false
	}
	if math.Acos((h.x*math.Cos(zone)+h.y*math.Sin(zone))/r) > b.t.HalfRad+1e-7 {
		return false
	}
	for _, k := range b.t.Keep {
		if math.Hypot(h.x-k.At.T, h.y-k.At.N) < (h.d+k.DiameterMM)/2+b.t.WallMM-snug {
			return false
		}
	}
	return true
}

func (b *brute) clash(h, g spot) bool {
	return math.Hypot(h.x-g.x, h.y-g.y) < (h.d+g.d)/2+b.t.WallMM-1e-9
}

// sets calls f for every set of k of the spots that don't clash; even ones only
// when so asked.
func (b *brute) sets(spots []spot, k int, even bool, f func([]spot)) {
	var grow func(from int, set []spot)
	grow = func(from int, set []spot) {
		if len(set) == k {
			if !even || mirrored(set) {
				f(set)
			}
			return
		}
	next:
		for i := from; i < len(spots); i++ {
			for _, h := range set {
				if b.clash(h, spots[i]) {
					continue next
				}
			}
			grow(i+1, append(set[:len(set):len(set)], spots[i]))
		}
	}
	grow(0, nil)
}

func mirrored(set []spot) bool {
	for i := range set {
		if set[i].place != -set[len(set)-1-i].place {
			return false
		}
	}
	return true
}

func (b *brute) offer(kind Kind, sets ...[]spot) {
	b.tried++
	var t, n float64
	holes := 0
	for _, set := range sets {
		for _, h := range set {
			t, n, holes = t+h.pull*h.x, n+h.pull*h.y, holes+1
		}
	}
	left := math.Hypot(b.t.Remove.T-t, b.t.Remove.N-n)
	p := pick{holes: holes, kind: kind, tenths: math.Floor(left / (b.t.ToleranceGMM / 10))}
	in := left <= b.t.ToleranceGMM
	switch {
	case in && !b.reached:
		b.best, b.reached = p, true
	case in && p.holes == b.best.holes && (p.kind < b.best.kind || p.kind == b.best.kind && p.tenths < b.best.tenths):
		b.best = p
	case !in && !b.reached && p.better(b.best):
		b.best = p
	}
}

// run goes through all plans of up to MostHoles holes.
func (b *brute) run() {
	b.best = pick{tenths: math.Floor(b.target / (b.t.ToleranceGMM / 10))}
	for k := 1; k <= b.t.MostHoles && !b.reached; k++ {
		for _, spots := range b.spots {
			b.sets(spots, k, true, func(s []spot) { b.offer(Symmetric, s) })
			b.sets(spots, k, false, func(s []spot) { b.offer(AnyAngles, s) })
			b.seconds(spots, k)
		}
		if k == 2 {
			b.twoHoles()
		}
	}
}

func (b *brute) twoHoles() {
	all := slices.Concat(b.spots...)
	for i, h := range all {
		for _, g := range all[:i] {
			if !b.clash(h, g) {
				b.offer(TwoHoles, []spot{h, g})
			}
		}
	}
}

func (b *brute) seconds(spots []spot, k int) {
	for n := 1; n <= 2 && n < k; n++ {
		b.sets(spots, k-n, true, func(s []spot) {
			for _, other := range b.spots {
				b.sets(other, n, true, func(o []spot) { b.pair(s, o) })
			}
		})
	}
}

func (b *brute) pair(s, o []spot) {
	for _, h := range s {
		for _, g := range o {
			if b.clash(h, g) {
				return
			}
		}
	}
	kind := TwoSetUps
	if s[0].setUp[0] == o[0].setUp[0] && s[0].setUp[1] == o[0].setUp[1] {
		kind = TwoDepths
	}
	b.offer(kind, s, o)
}

// smallTask is a random problem small enough for the brute force.
func smallTask(rng *rand.Rand) Task {
	t := Task{
		Zone: Zone{
			InMM: 50, OutMM: 68 + 8*rng.Float64(),
			Hour: 12 * rng.Float64(), HalfRad: 0.3 + 0.8*rng.Float64(),
		},
		DrillsMM: []float64{7, 9.5, 12}[:1+rng.Intn(3)],
		PointDeg: 118, ThickMM: 16 + 6*rng.Float64(), WallMM: 2 + rng.Float64(),
		DensityKGM3: 7850, MostHoles: 1 + rng.Intn(4),
		RadiusStepMM: 5, AngleStepDeg: 9 + 6*rng.Float64(), DepthStepMM: 6,
		ToleranceGMM: 10 + 60*rng.Float64(),
	}
	t.Remove = clock.Polar(100+3500*rng.Float64(), t.Hour+12*(rng.Float64()-0.5)*t.HalfRad/math.Pi*rng.Float64())
	for range rng.Intn(4) {
		t.Keep = append(t.Keep, Circle{clock.Polar(48+25*rng.Float64(), t.Hour+3*(rng.Float64()-0.5)), 4 + 12*rng.Float64()})
	}
	return t
}

// Nothing that the brute force finds is better, and what the search finds the
// brute force finds too.
func TestAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewSource(12))
	kinds, reached, blocked := map[Kind]int{}, 0, 0
	for i := range 800 {
		task := smallTask(rng)
		p, err := task.Plan()
		if err != nil {
			var fault *Fault
			require.ErrorAs(t, err, &fault)
			require.Contains(t, []Field{ZoneRoom, Direction}, fault.Field)
			b := newBrute(task)
			if fault.Field == ZoneRoom {
				require.Empty(t, b.spots, "%d: room for the brute force", i)
			}
			blocked++
			continue
		}
		b := newBrute(task)
		b.run()
		got := pick{holes: len(p.Holes), kind: p.Kind, tenths: math.Floor(p.LeftGMM.Len() / (b.t.ToleranceGMM / 10))}
		want := pick{holes: b.best.holes, kind: b.best.kind, tenths: b.best.tenths}
		require.Equal(t, b.reached, p.Reached, "%d: %+v", i, task)
		require.Equal(t, want, got, "%d: %+v", i, task)
		if p.Reached {
			kinds[p.Kind]++
			reached++
		}
	}
	t.Log("within the tolerance", reached, "no room or no direction", blocked, "of each kind", kinds)
	for k := Symmetric; k <= TwoHoles; k++ {
		assert.NotZero(t, kinds[k], "no case of kind %d", k)
	}
}
