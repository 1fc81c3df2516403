package tryout_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/tryout"
)

// firstHarmonic is what a dial without error shows at a place, by four quarters.
func firstHarmonic(m *tryout.Made, x float64) clock.Vec {
	v := m.TurnAt(x, tryout.Dial{}, 0, 3, 6, 9)
	return clock.Vec{T: (v[0] - v[2]) / 2, N: (v[1] - v[3]) / 2}
}

// A true crank hung on a bad centre wobbles: all of the hole's offset at that
// centre, none at the other, in between in proportion, and the other way round.
func TestBadCentre(t *testing.T) {
	for h := clock.Left; h <= clock.Right; h++ {
		m := made(t, exact, 1, tryout.Start{})
		hole := clock.Polar(0.05, 4)
		flaw := tryout.Flaw{}
		flaw.Hole[h] = hole
		m.Spoil(flaw)
		for _, x := range []float64{10, 75, 165, 230} {
			part := math.Abs(x-middling.Support[h.Other()]) / 240
			want := hole.Scale(-part)
			assert.InDelta(t, 0, firstHarmonic(m, x).Sub(want).Len(), 0.1*micron, "half %d at %g", h, x)
		}
		assert.InDelta(t, 0, m.Aligned(), 1e-12)
		m.Spoil(tryout.Flaw{})
		assert.InDelta(t, 0, m.Worst(), 1e-12, "mended")
	}
}

// A shaft bent outside its dial hangs the crank off by what the bend is at its
// centre; nothing shows where the centre stands, though it is bent there.
func TestBentShaft(t *testing.T) {
	for h := clock.Left; h <= clock.Right; h++ {
		m := made(t, exact, 1, tryout.Start{})
		bent := clock.Polar(0.001, 8)
		flaw := tryout.Flaw{BentAt: [2]float64{90, 150}}
		flaw.Bent[h] = bent
		m.Spoil(flaw)
		atCentre := bent.Scale(90)
		for _, x := range []float64{5, 40, 75, 165, 235} {
			at, out := clock.Left, flaw.BentAt[h]-x
			if x > middling.Pin {
				at, out = clock.Right, x-flaw.BentAt[h]
			}
			want := atCentre.Scale(-math.Abs(x-middling.Support[h.Other()]) / 240)
			if at == h {
				want = want.Add(bent.Scale(math.Max(out, 0)))
			}
			assert.InDelta(t, 0, firstHarmonic(m, x).Sub(want).Len(), 0.2*micron, "half %d at %g", h, x)
		}
		assert.InDelta(t, 0, m.Aligned(), 1e-12)
	}
}

// A pressing tailstock looks like a pinch, and is gone when it is backed off.
func TestPressed(t *testing.T) {
	pinched, pressed := made(t, exact, 1, tryout.Start{G: clock.Vec{T: -0.001}}), made(t, exact, 1, tryout.Start{})
	pressed.Spoil(tryout.Flaw{Pressed: clock.Vec{T: -0.001}})
	for h := clock.Left; h <= clock.Right; h++ {
		assert.InDelta(t, pinched.RunOut(h), pressed.RunOut(h), 0.05*micron)
		assert.InDelta(t, 0, firstHarmonic(pinched, 30+150*float64(h)).Sub(firstHarmonic(pressed, 30+150*float64(h))).Len(), 0.05*micron)
	}
	assert.InDelta(t, 0, pressed.Aligned(), 1e-12)
	assert.Equal(t, tryout.Start{}, pressed.Sits(0))
}

// Of a dose nothing stays up to the dead one, and what is more does what it should.
func TestDeadDose(t *testing.T) {
	dull := exact
	dull.Dead = 0.8
	for _, row := range []struct{ dose, got float64 }{{0.5, 0}, {0.8, 0}, {1.8, 0.1}, {2.3, 0.15}} {
		m := made(t, dull, 1, tryout.Start{D: clock.Vec{N: 0.3}})
		require.NoError(t, m.Do(tryout.Blow{Kind: tryout.Strike, Wheel: clock.Right, Hour: 3, Dose: row.dose}))
		assert.InDelta(t, 0.3-row.got, m.Sits(0).D.N, 0.5*micron)
	}
}

// A squeeze hinged off the middle of the pin moves the offset by that arm times
// what it does to the gap (MODEL §3).
func TestHinge(t *testing.T) {
	for _, off := range []float64{-30, 15} {
		off1 := exact
		off1.Hinge = off
		m := made(t, off1, 1, tryout.Start{G: clock.Vec{T: -0.003}})
		require.NoError(t, m.Do(tryout.Blow{Kind: tryout.Squeeze, Hour: 6, Dose: 2}))
		assert.InDelta(t, -0.001, m.Sits(0).G.T, 1e-6)
		assert.InDelta(t, off*0.002, m.Sits(0).D.T, 0.2*micron)
	}
}
