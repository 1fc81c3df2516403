package fit

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Ring, shaft and housing of one steel: bearing handbooks give the growth of the
// inner track as δ k (1 − k₀²)/(1 − k² k₀²), k = bore/track, k₀ = hole/bore, and
// the closing of the outer as δ h (1 − h₀²)/(1 − h² h₀²), h = track/outside,
// h₀ = outside/housing. Formulas from memory.
func TestPlayLeftIsTheHandbooksForOneSteel(t *testing.T) {
	rng := rand.New(rand.NewSource(11))
	for range 300 {
		d := 10 + 40*rng.Float64()
		D := d * (1.6 + rng.Float64())
		b := Bearing{BoreMM: d, OutsideMM: D, PlayMM: 0.02, Rollers: rng.Intn(2) == 0, Ring: Steel()}
		shaft := Seat{InterferenceMM: 0.02 * rng.Float64(), WallMM: 0.8 * d * rng.Float64(), Material: Steel()}
		housing := Seat{InterferenceMM: 0.02 * rng.Float64(), WallMM: D * (1.1 + rng.Float64()), Material: Steel()}
		f, err := b.PlayLeft(shaft, housing)
		require.NoError(t, err)
		in, out := b.Tracks()
		k, k0, h, h0 := d/in, shaft.WallMM/d, out/D, D/housing.WallMM
		assert.InEpsilon(t, shaft.InterferenceMM*k*(1-k0*k0)/(1-k*k*k0*k0), f.InnerMM, 1e-10)
		assert.InEpsilon(t, housing.InterferenceMM*h*(1-h0*h0)/(1-h*h*h0*h0), f.OuterMM, 1e-10)
		assert.InDelta(t, 0.02-f.InnerMM-f.OuterMM, f.LeftMM, 1e-15)
	}
}

// Other materials, against the integrated field of the press tests.
func TestRingsMoveAsTheirStressFieldSays(t *testing.T) {
	rng := rand.New(rand.NewSource(12))
	for range 100 {
		b := Bearing{BoreMM: 25, OutsideMM: 62, PlayMM: 0.02, Ring: randomMaterial(rng)}
		shaft := Seat{InterferenceMM: 0.015, WallMM: 8, Material: randomMaterial(rng)}
		housing := Seat{InterferenceMM: 0.03, WallMM: 85, Material: randomMaterial(rng)}
		f, err := b.PlayLeft(shaft, housing)
		require.NoError(t, err)
		in, out := b.Tracks()

		// The free face moves u; the seats part by the interference.
		seatOfRing := through(b.Ring, field{u: f.InnerMM / 2}, in/2, b.BoreMM/2)
		pin, _ := underPressure(shaft.Material, shaft.WallMM/2, b.BoreMM/2, -seatOfRing.sr)
		assert.InEpsilon(t, shaft.InterferenceMM, 2*(seatOfRing.u-pin.u), 1e-8)

		seatOfRing = through(b.Ring, field{u: -f.OuterMM / 2}, out/2, b.OutsideMM/2)
		hole, _ := underPressure(housing.Material, housing.WallMM/2, b.OutsideMM/2, -seatOfRing.sr)
		assert.InEpsilon(t, housing.InterferenceMM, 2*(hole.u-seatOfRing.u), 1e-8)
	}
}

// A 30 × 62 mm ball bearing of the 62 series has balls of 9.525 mm on a circle of
// 46 mm, so tracks of 36.5 and 55.5 mm: values from memory.
func TestStandInTracks(t *testing.T) {
	in, out := Bearing{BoreMM: 30, OutsideMM: 62}.Tracks()
	assert.InDelta(t, 36.475, in, 0.2)
	assert.InDelta(t, 55.525, out, 0.2)
	in, out = Bearing{BoreMM: 30, OutsideMM: 62, InnerTrackMM: 37, OuterTrackMM: 55}.Tracks()
	assert.Equal(t, [2]float64{37, 55}, [2]float64{in, out})
}

func TestLooseRingsLeaveThePlayAndTightOnesTakeIt(t *testing.T) {
	b := Bearing{BoreMM: 25, OutsideMM: 62, PlayMM: 0.01, Ring: Steel()}
	shaft, housing := Seat{InterferenceMM: -0.01, Material: Steel()}, Seat{InterferenceMM: 0, WallMM: 80, Material: LightAlloy()}
	f, err := b.PlayLeft(shaft, housing)
	require.NoError(t, err)
	assert.Equal(t, Fitted{LeftMM: 0.01}, f)
	none := b
	none.PlayMM = 0
	f, err = none.PlayLeft(shaft, housing)
	require.NoError(t, err)
	assert.Equal(t, Fitted{Findings: []Finding{{NoPlayLeft, 0, 0}}}, f)
	shaft.InterferenceMM = 0.03
	f, err = b.PlayLeft(shaft, housing)
	require.NoError(t, err)
	assert.Less(t, f.LeftMM, 0.0)
	assert.Equal(t, []Finding{{NoPlayLeft, f.LeftMM, 0}}, f.Findings)
}

func TestBearingsThatWontDo(t *testing.T) {
	b := Bearing{BoreMM: 25, OutsideMM: 62, PlayMM: 0.01, Ring: Steel()}
	shaft, housing := Seat{InterferenceMM: 0.01, Material: Steel()}, Seat{InterferenceMM: 0.01, WallMM: 80, Material: LightAlloy()}
	_, err := Bearing{BoreMM: 25, OutsideMM: 25, Ring: Steel()}.PlayLeft(shaft, housing)
	assertFault(t, err, Fault{Field: BearingOut, Got: 25, Least: 25.01, Most: MostMM})
	thin := housing
	thin.WallMM = 62
	_, err = b.PlayLeft(shaft, thin)
	assertFault(t, err, Fault{Field: HubOutside, Got: 62, Least: 62, Most: 10 * MostMM, Detail: Detail{NoWall}})
	holed := shaft
	holed.WallMM = 25
	_, err = b.PlayLeft(holed, housing)
	assertFault(t, err, Fault{Field: Hollow, Got: 25, Most: 25, Detail: Detail{NoWall}})
	for _, interference := range []float64{-1.3, 1.3} {
		_, err = b.PlayLeft(Seat{InterferenceMM: interference, Material: Steel()}, housing)
		assertFault(t, err, Fault{Field: Interference, Got: interference, Least: -1.25, Most: 1.25})
	}
	b.OuterTrackMM = 62
	_, err = b.PlayLeft(shaft, housing)
	assertFault(t, err, Fault{Field: Track, Got: 62, Least: 25 + 0.2*(62-25), Most: 62 - LeastMM})
	b.OuterTrackMM, b.InnerTrackMM = 0, 60
	_, err = b.PlayLeft(shaft, housing)
	assertFault(t, err, Fault{Field: Track, Got: 60, Least: 25 + LeastMM, Most: b.OutsideMM - 0.2*(62-25)})
}
