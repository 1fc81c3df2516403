package fit

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tipped returns how far an eye, a rectangle of the bore by the width cut through
// the pin's axis, can tip on a pin: the angle at which the pin's two edges, tipped
// the other way, first touch corners of the eye. Found by halving, on the corners
// themselves.
func tipped(bore, width, pin float64) float64 {
	overlaps := func(angle float64) bool {
		s, c := math.Sincos(angle)
		for _, x := range []float64{-width / 2, width / 2} {
			for _, y := range []float64{-bore / 2, bore / 2} {
				// the corner's distance from the pin's axis, on its own side
				if across := (-s*x + c*y) * math.Copysign(1, y); across < pin/2 {
					return true
				}
			}
		}
		return false
	}
	lo, hi := 0.0, 0.5
	for range 60 {
		if mid := (lo + hi) / 2; overlaps(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return (lo + hi) / 2
}

func TestRockGivesTheClearanceBack(t *testing.T) {
	rng := rand.New(rand.NewSource(15))
	for range 300 {
		pin, width, at := 20+20*rng.Float64(), 10+15*rng.Float64(), 80+120*rng.Float64()
		clearance := 0.005 + 0.3*rng.Float64()
		angle := tipped(pin+clearance, width, pin)
		r, err := Rock{MovementMM: 2 * at * math.Sin(angle), AtMM: at, PinMM: pin, WidthMM: width}.BigEnd()
		require.NoError(t, err)
		assert.InDelta(t, clearance, r.ClearanceMM, 1e-11)
		assert.InDelta(t, angle, r.AngleRad, 1e-12)
		assert.InEpsilon(t, width*2*at*math.Sin(angle)/(2*at), r.ClearanceMM, 0.3) // b m/(2 L), less exact
		assert.Empty(t, r.Findings)
	}
}

// The cheek of the rod, a rectangle of eye width by cheek diameter, tipped in the
// mouth: its corners are apart by what the mouth must have.
func TestRockStoppedByTheCheeks(t *testing.T) {
	r := Rock{MovementMM: 1.2, AtMM: 150, PinMM: 30, WidthMM: 18, CheekMM: 50, SideMM: 0.3}
	got, err := r.BigEnd()
	require.NoError(t, err)
	s, c := math.Sincos(got.AngleRad)
	assert.InDelta(t, 18*c+50*s-18, got.SideMM, 1e-12)
	assert.Empty(t, got.Findings) // 0.2 of 0.3 taken
	r.SideMM = 0.21
	got, err = r.BigEnd()
	require.NoError(t, err)
	assert.Equal(t, []Finding{{SideStops, got.SideMM, 0.21}}, got.Findings)
	r.SideMM = 0 // not known
	got, err = r.BigEnd()
	require.NoError(t, err)
	assert.Empty(t, got.Findings)
	r.SideMM, r.CheekMM = 0.21, 0
	got, err = r.BigEnd()
	require.NoError(t, err)
	assert.Zero(t, got.SideMM)
	assert.Empty(t, got.Findings)
}

func TestRocksThatWontDo(t *testing.T) {
	good := Rock{MovementMM: 0.5, AtMM: 150, PinMM: 30, WidthMM: 18}
	r := good
	r.AtMM = 0
	_, err := r.BigEnd()
	assertFault(t, err, Fault{Field: DialPlace, Got: 0, Least: LeastMM, Most: MostMM})
	r = good
	r.MovementMM = 400
	_, err = r.BigEnd()
	assertFault(t, err, Fault{Field: Movement, Got: 400, Most: 75})
	r = good
	r.PinMM = -30
	_, err = r.BigEnd()
	assertFault(t, err, Fault{Field: Pin, Got: -30, Least: LeastMM, Most: MostMM})
	still := good
	still.MovementMM = 0
	got, err := still.BigEnd()
	require.NoError(t, err)
	assert.Equal(t, Rocked{}, got)
}

// Two bars turned by known angles on a plate that is itself out of level.
func TestBarsOutOfParallel(t *testing.T) {
	rng := rand.New(rand.NewSource(16))
	bar := func(angle, span float64) Bar {
		from := 100 * rng.Float64()
		return Bar{AMM: from, BMM: from + span*math.Tan(angle), SpanMM: span}
	}
	for range 200 {
		plate, lean := 0.02*rng.NormFloat64(), 0.01*rng.NormFloat64()
		got, err := OutOfParallel(bar(plate, 50+200*rng.Float64()), bar(plate+lean, 50+200*rng.Float64()), 0.01)
		require.NoError(t, err)
		assert.InDelta(t, math.Tan(lean), got.PerMM, 1e-12)
	}
}

func TestPlusMinusOfBarsHoldsTheTruth(t *testing.T) {
	rng := rand.New(rand.NewSource(17))
	const step, jobs = 0.01, 4000
	rounded := func() float64 { // what rounding to the step adds, at a height that may be any
		mm := rng.Float64()
		return step*math.Round(mm/step) - mm
	}
	inside := 0
	for range jobs {
		lean := 0.001 * rng.NormFloat64()
		big := Bar{rounded(), rounded(), 100}
		small := Bar{rounded(), rounded() + 150*lean, 150}
		got, err := OutOfParallel(big, small, step)
		require.NoError(t, err)
		if math.Abs(got.PerMM-lean) <= got.PlusMinus {
			inside++
		}
	}
	assert.InDelta(t, 0.955, float64(inside)/jobs, 0.02)
}

func TestBarsThatWontDo(t *testing.T) {
	_, err := OutOfParallel(Bar{0, 0, 0}, Bar{0, 0, 100}, 0.01)
	assertFault(t, err, Fault{Field: Span, Got: 0, Least: LeastMM, Most: MostMM})
	_, err = OutOfParallel(Bar{0, 0, 100}, Bar{0, 60, 100}, 0.01)
	assertFault(t, err, Fault{Field: Height, Got: 60, Least: -50, Most: 50})
	_, err = OutOfParallel(Bar{0, 0, 100}, Bar{0, 0, 100}, -1)
	assertFault(t, err, Fault{Field: Step, Got: -1, Least: 1e-6, Most: 1})
}
