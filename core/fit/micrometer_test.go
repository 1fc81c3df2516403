package fit

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// everySpot reads a shape at every spot.
func everySpot(at func(Spot) float64) (readings []Micrometer) {
	for _, plane := range []Plane{NearEnd, MidLength, FarEnd} {
		for _, across := range []bool{false, true} {
			s := Spot{plane, across}
			readings = append(readings, Micrometer{s, at(s)})
		}
	}
	return readings
}

func TestMeasureFindsTheShape(t *testing.T) {
	rng := rand.New(rand.NewSource(13))
	for range 200 {
		size, taper, oval, barrel := 20+20*rng.Float64(), 0.05*rng.NormFloat64(), 0.05*rng.NormFloat64(), 0.05*rng.NormFloat64()
		lean, swell := 0.01*rng.NormFloat64(), 0.01*rng.NormFloat64() // by which the directions differ
		readings := everySpot(func(s Spot) float64 {
			way := 1.0
			if s.Across {
				way = -1
			}
			mm := size + (taper+way*lean)*(float64(s.At)-1)/2 + way*oval/2
			if s.At == MidLength {
				mm += barrel + way*swell
			}
			return mm
		})
		rng.Shuffle(len(readings), func(i, j int) { readings[i], readings[j] = readings[j], readings[i] })
		got, err := Measure(readings, Instrument{StepMM: 0.001})
		require.NoError(t, err)
		assert.InDelta(t, size+barrel/3, got.MeanMM, 1e-12)
		assert.InDelta(t, taper, got.Form.TaperMM, 1e-12)
		most := 0.0
		for _, o := range []float64{oval - lean, oval + 2*swell, oval + lean} {
			if math.Abs(o) > math.Abs(most) {
				most = o
			}
		}
		assert.InDelta(t, most, got.Form.OvalMM, 1e-12)
		assert.InDelta(t, barrel, got.Form.BarrelMM, 1e-12)
		assert.Equal(t, [4]any{true, true, true, 6}, [4]any{got.Form.TaperKnown, got.Form.OvalKnown, got.Form.BarrelKnown, got.Readings})
		for _, r := range readings {
			assert.True(t, got.LeastMM <= r.MM && r.MM <= got.MostMM)
		}
		require.NoError(t, got.check(Pin))
	}
}

func TestMeasureKnowsOnlyWhatWasRead(t *testing.T) {
	near, mid, far := Spot{At: NearEnd}, Spot{At: MidLength}, Spot{At: FarEnd}
	for _, row := range []struct {
		readings []Micrometer
		want     Form
	}{
		{[]Micrometer{{mid, 30}}, Form{}},
		{[]Micrometer{{near, 30}, {far, 30.5}}, Form{TaperMM: 0.5, TaperKnown: true}},
		{[]Micrometer{{near, 30}, {Spot{FarEnd, true}, 30.5}}, Form{}}, // one end each way: taper or oval, who knows
		{[]Micrometer{{mid, 30.5}, {Spot{MidLength, true}, 30}}, Form{OvalMM: 0.5, OvalKnown: true}},
		{[]Micrometer{{near, 30}, {mid, 30.5}, {far, 30}}, Form{BarrelMM: 0.5, TaperKnown: true, BarrelKnown: true}},
	} {
		got, err := Measure(row.readings, Instrument{StepMM: 0.01})
		require.NoError(t, err)
		assert.Equal(t, row.want, got.Form)
	}
}

// A reading rounded to the step is off by up to half of it, and the zero the same:
// rectangular, step/√12 each. Repeats of one spot scatter.
func TestPlusMinus(t *testing.T) {
	one := 1.959963984540054 * 0.01 / math.Sqrt(12)
	got, err := Measure([]Micrometer{{MM: 30}}, Instrument{StepMM: 0.01})
	require.NoError(t, err)
	assert.InDelta(t, one*math.Sqrt2, got.PlusMinusMM, 1e-12)
	assert.InDelta(t, one*math.Sqrt2, got.SpotPlusMinusMM, 1e-12)

	got, err = Measure(everySpot(func(Spot) float64 { return 30 }), Instrument{StepMM: 0.01})
	require.NoError(t, err)
	assert.InDelta(t, one*math.Sqrt2, got.PlusMinusMM, 1e-12)
	assert.InDelta(t, one*math.Sqrt2, got.SpotPlusMinusMM, 1e-12)

	repeats := []Micrometer{{MM: 30.00}, {MM: 30.02}, {MM: 30.04}} // s = 0.02, ν = 2, t = 4.303
	got, err = Measure(repeats, Instrument{StepMM: 0.001})
	require.NoError(t, err)
	assert.InDelta(t, math.Hypot(4.302653*0.02/math.Sqrt(3), one/10), got.PlusMinusMM, 1e-6)
	assert.InEpsilon(t, got.PlusMinusMM, got.SpotPlusMinusMM, 1e-12)

	// Two spots, read twice and three times: s² = (0.0002 + 0.0008)/3, ν = 3, t = 3.182.
	uneven := []Micrometer{{MM: 30}, {MM: 30.02}, {Spot{At: FarEnd}, 31}, {Spot{At: FarEnd}, 31.02}, {Spot{At: FarEnd}, 31.04}}
	got, err = Measure(uneven, Instrument{StepMM: 0.0001})
	require.NoError(t, err)
	u := 3.182446 * math.Sqrt(0.001/3)
	assert.InEpsilon(t, u*math.Sqrt(1.0/2+1.0/3)/2, got.PlusMinusMM, 1.3e-3)
	assert.InEpsilon(t, u/math.Sqrt2, got.SpotPlusMinusMM, 1.3e-3)
	assert.InDelta(t, 30.515, got.MeanMM, 1e-12)
}

// The ± must hold the true size in 95 of 100 jobs or more, whichever governs: the
// step or the scatter.
func TestPlusMinusHoldsTheTruth(t *testing.T) {
	rng := rand.New(rand.NewSource(14))
	for _, scatter := range []float64{0, 0.0003, 0.003} {
		const step, jobs = 0.001, 4000
		inside := 0
		for range jobs {
			size := 30 + rng.Float64()
			zero := step * (rng.Float64() - 0.5)
			var readings []Micrometer
			for range 2 {
				readings = append(readings, everySpot(func(Spot) float64 {
					return step * math.Round((size+zero+scatter*rng.NormFloat64())/step)
				})...)
			}
			got, err := Measure(readings, Instrument{StepMM: step})
			require.NoError(t, err)
			if math.Abs(got.MeanMM-size) <= got.PlusMinusMM {
				inside++
			}
		}
		assert.GreaterOrEqual(t, float64(inside)/jobs, 0.94, "scatter %g mm", scatter)
	}
}

func TestReadingsThatWontDo(t *testing.T) {
	_, err := Measure(nil, Instrument{StepMM: 0.01})
	assertFault(t, err, Fault{Field: Reading, Got: 0, Least: LeastMM, Most: MostMM})
	_, err = Measure([]Micrometer{{MM: 30}, {MM: -30}}, Instrument{StepMM: 0.01})
	assertFault(t, err, Fault{Field: Reading, Item: 1, Got: -30, Least: LeastMM, Most: MostMM})
	_, err = Measure([]Micrometer{{Spot{At: 3}, 30}}, Instrument{StepMM: 0.01})
	assertFault(t, err, Fault{Field: Reading, Got: 3, Most: 2})
	_, err = Measure([]Micrometer{{MM: 30}}, Instrument{})
	assertFault(t, err, Fault{Field: Step, Got: 0, Least: 1e-6, Most: 1})
}
