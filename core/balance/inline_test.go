package balance

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/dsp/fourier"

	"pintwelve/core/clock"
)

// inLine is an engine of alike cylinders so far apart, its pins at the hours, couples
// about its middle.
func inLine(recG, throwMM, rodMM, apartMM float64, hours ...float64) *InLine {
	e := &InLine{AboutMM: apartMM * float64(len(hours)-1) / 2}
	for i, hour := range hours {
		e.Pins = append(e.Pins, Pin{AtMM: apartMM * float64(i), Hour: hour, ThrowMM: throwMM, RodMM: rodMM, RecG: recG})
	}
	return e
}

// Khurmi & Gupta, Theory of Machines, ch. 22, four cranks at 90° in the order 1-4-2-3,
// 1.5 kg, throw 60 mm, rods 240 mm, 150 mm apart, 1800 rpm: no forces, couples of
// 678 and 480 N·m about the central plane (values from memory). Its table by
// hand, in kg·m²: cranks 1 to 4 have ∓20.25 and ∓6.75 × 10⁻³, which leaves 13.5 one way and
// 13.5 across; doubled angles leave 54.
func TestFourCranksOfTheTextbook(t *testing.T) {
	e := inLine(1500, 60, 240, 150, 0, 6, 9, 3)
	force, couple, err := e.Shaking(1800)
	require.NoError(t, err)
	assert.InDelta(t, 0, force.Primary(), 1e-9)
	assert.InDelta(t, 0, force.Secondary(), 1e-9)
	assert.InDelta(t, 678, couple.Primary(), 0.5)
	assert.InDelta(t, 480, couple.Secondary(), 0.5)
	square := math.Pow(1800*math.Pi/30, 2)
	assert.InDelta(t, 0.0135*math.Sqrt2*square, couple.Primary(), 1e-9)
	assert.InDelta(t, 0.054*square/4, couple.Secondary(), 1e-9)
}

// Khurmi & Gupta, the same chapter: of four cranks of 150 mm the first, second and fourth
// stand 400, 200 and 200 mm from the third, with 50, 60 and 50 kg; primary balance is whole with
// 60 kg at the third (value from memory; drawn there to 160°, 26° and 227°). The angles by the law of cosines.
func TestThirdMassOfTheTextbook(t *testing.T) {
	second := math.Acos((10*10 - 20*20 - 12*12) / (2 * 20 * 12.0))
	fourth := math.Atan2(12*math.Sin(second), 20+12*math.Cos(second))
	left := 50 + cmplx.Rect(60, second) + cmplx.Rect(50, fourth)
	third, mass := cmplx.Phase(-left), cmplx.Abs(left)
	assert.InDelta(t, 60, mass, 0.1)
	degrees := func(rad float64) float64 { return math.Mod(rad*180/math.Pi+360, 360) }
	for _, row := range [][2]float64{{160, degrees(second)}, {26, degrees(fourth)}, {227, degrees(third)}} {
		assert.InDelta(t, row[0], row[1], 3, "as drawn")
	}
	pin := func(at, rad, kg float64) Pin {
		return Pin{AtMM: at, Hour: rad * 6 / math.Pi, ThrowMM: 150, RodMM: 600, RecG: 1000 * kg}
	}
	e := &InLine{Pins: []Pin{pin(0, 0, 50), pin(200, second, 60), pin(400, third, mass), pin(600, fourth, 50)}}
	force, couple, err := e.Shaking(300)
	require.NoError(t, err)
	one := 50 * 0.15 * math.Pow(300*math.Pi/30, 2)
	assert.InDelta(t, 0, force.Primary(), 1e-9*one)
	assert.InDelta(t, 0, couple.Primary(), 1e-9*one)
}

// What is known of the usual cranks, in m R ω² and its multiples of λ and the distance
// of the cylinders (the textbooks' tables, from memory; each follows from the angles by hand).
func TestTheUsualCranks(t *testing.T) {
	const m, throw, rod, apart, rpm = 500, 40, 160, 100, 3000
	one := m * 1e-3 * throw * 1e-3 * math.Pow(rpm*math.Pi/30, 2)
	two, a := one*throw/rod, apart*1e-3
	for _, row := range []struct {
		name                                         string
		hours                                        []float64
		force, couple, secondaryForce, secondaryTurn float64
	}{
		{"twin 360", []float64{0, 0}, 2 * one, 0, 2 * two, 0},
		{"twin 180", []float64{0, 6}, 0, one * a, 2 * two, 0},
		{"twin 270", []float64{0, 9}, math.Sqrt2 * one, one * a / math.Sqrt2, 0, two * a},
		{"triple 120", []float64{0, 4, 8}, 0, math.Sqrt(3) * one * a, 0, math.Sqrt(3) * two * a},
		{"flat four", []float64{0, 6, 6, 0}, 0, 0, 4 * two, 0},
		{"straight six", []float64{0, 4, 8, 8, 4, 0}, 0, 0, 0, 0},
	} {
		force, couple, err := inLine(m, throw, rod, apart, row.hours...).Shaking(rpm)
		require.NoError(t, err)
		got := []float64{force.Primary(), couple.Primary(), force.Secondary(), couple.Secondary()}
		assert.InDeltaSlice(t, []float64{row.force, row.couple, row.secondaryForce, row.secondaryTurn}, got, 1e-9*one, row.name)
	}
}

// With webs of a factor the rotating weight is gone: along the bores 1 − β of the
// reciprocating is left, across them β, at half of it the least that can be.
func TestWebsOfAFactor(t *testing.T) {
	const rpm = 3000
	_, bare, err := inLine(500, 40, 160, 100, 0, 6).Shaking(rpm)
	require.NoError(t, err)
	whole := bare.Primary()
	for _, factor := range []float64{0, 0.3, 0.5, 0.8, 1} {
		e := inLine(500, 40, 160, 100, 0, 6)
		for i := range e.Pins {
			p := &e.Pins[i]
			p.RotG = 700
			for _, side := range []float64{-20, 20} {
				w := p.WebGMM(factor)
				w.AtMM += side
				e.Webs = append(e.Webs, w)
			}
		}
		force, couple, err := e.Shaking(rpm)
		require.NoError(t, err)
		assert.InDelta(t, 0, force.Primary(), 1e-9*whole)
		assert.InDelta(t, (1-factor)*whole, couple.Along(), 1e-9*whole)
		assert.InDelta(t, factor*whole, couple.Across(), 1e-9*whole)
		assert.InDelta(t, math.Max(1-factor, factor)*whole, couple.Primary(), 1e-9*whole)
	}
}

// Random engines against the sum of what every piston, pin and web pulls at each of 256
// places of a turn, the pistons by their exact motion; gonum's FFT takes the orders apart.
// The exact motion's second order is λ + λ³/4 + 15 λ⁵/128, of which the series has λ.
func TestInLineByTheMotionOfEachPiston(t *testing.T) {
	const steps, rpm = 256, 4000
	rng := rand.New(rand.NewSource(3))
	fft := fourier.NewFFT(steps)
	k := 1e-6 * math.Pow(rpm*math.Pi/30, 2)
	for range 200 {
		lambda := 0.15 + 0.2*rng.Float64()
		e := &InLine{AboutMM: 300 * rng.Float64()}
		for range 1 + rng.Intn(4) {
			throw := 20 + 40*rng.Float64()
			e.Pins = append(e.Pins, Pin{300 * rng.Float64(), 12 * rng.Float64(), throw, throw / lambda, 200 + 400*rng.Float64(), 900 * rng.Float64()})
			e.Webs = append(e.Webs, Web{300 * rng.Float64(), 4e4 * rng.Float64(), 12 * rng.Float64()})
		}
		var along, across, alongAt, acrossAt [steps]float64
		for i := range steps {
			theta := 2 * math.Pi * float64(i) / steps
			put := func(at, up, level float64) {
				along[i], across[i] = along[i]+k*up, across[i]+k*level
				alongAt[i], acrossAt[i] = alongAt[i]+k*up*(at-e.AboutMM)/1000, acrossAt[i]+k*level*(at-e.AboutMM)/1000
			}
			for _, p := range e.Pins {
				phi := theta + clock.Radians(p.Hour)
				put(p.AtMM, p.ThrowMM*(p.RecG*Exact.pull(lambda, phi)+p.RotG*math.Cos(phi)), p.ThrowMM*p.RotG*math.Sin(phi))
			}
			for _, w := range e.Webs {
				phi := theta + clock.Radians(w.Hour)
				put(w.AtMM, w.GMM*math.Cos(phi), w.GMM*math.Sin(phi))
			}
		}
		force, couple, err := e.Shaking(rpm)
		require.NoError(t, err)
		for _, row := range []struct {
			along, across []float64
			got           Harmonic
		}{
			{along[:], across[:], force}, {alongAt[:], acrossAt[:], couple},
		} {
			up, level := fft.Coefficients(nil, row.along), fft.Coefficients(nil, row.across)
			size := func(c complex128) float64 { return cmplx.Abs(c) * 2 / steps }
			assert.InDelta(t, size(up[1]), row.got.Along(), 1e-7)
			assert.InDelta(t, size(level[1]), row.got.Across(), 1e-7)
			most := 0.0 // of the first order alone
			for i := range 3600 {
				turn := cmplx.Rect(2.0/steps, 2*math.Pi*float64(i)/3600)
				most = math.Max(most, math.Hypot(real(up[1]*turn), real(level[1]*turn)))
			}
			assert.InEpsilon(t, most, row.got.Primary(), 1e-5)
			l2 := lambda * lambda
			assert.InDelta(t, size(up[2]), row.got.Secondary()*(1+l2/4+15*l2*l2/128), 1e-3*(1+size(up[2])))
			assert.InDelta(t, 0, size(level[2]), 1e-7)
		}
	}
}

func TestInLineFaults(t *testing.T) {
	for _, row := range []struct {
		field Field
		spoil func(*InLine)
	}{
		{Unbalance, func(e *InLine) { e.Pins[1].RecG = math.NaN() }},
		{Unbalance, func(e *InLine) { e.Pins[1].RotG = math.Inf(1) }},
		{Unbalance, func(e *InLine) { e.Pins[1].AtMM = math.Inf(1) }},
		{Unbalance, func(e *InLine) { e.Pins[1].Hour = math.NaN() }},
		{Unbalance, func(e *InLine) { e.Webs = []Web{{0, math.NaN(), 0}} }},
		{Unbalance, func(e *InLine) { e.Webs = []Web{{math.NaN(), 1, 0}} }},
		{RodLength, func(e *InLine) { e.Pins[1].RodMM = 41 }},
		{RodLength, func(e *InLine) { e.Pins[1].ThrowMM = math.NaN() }},
	} {
		e := inLine(500, 40, 160, 100, 0, 6)
		row.spoil(e)
		_, _, err := e.Shaking(3000)
		require.Error(t, err, row.field)
		assert.Equal(t, row.field, err.(*Fault).Field)
	}
	_, _, err := inLine(500, 40, 160, 100, 0).Shaking(0)
	assert.Equal(t, Speed, err.(*Fault).Field)
}

func ExampleInLine_Shaking() {
	triple := InLine{AboutMM: 80}
	for i, hour := range []float64{0, 4, 8} {
		triple.Pins = append(triple.Pins, Pin{AtMM: 80 * float64(i), Hour: hour, ThrowMM: 30, RodMM: 110, RecG: 350, RotG: 500})
		for range 2 {
			triple.Webs = append(triple.Webs, triple.Pins[i].WebGMM(0.5))
		}
	}
	force, couple, err := triple.Shaking(6000)
	fmt.Printf("forces %.0f and %.0f N, couples %.0f and %.0f N·m, %v\n",
		force.Primary(), force.Secondary(), couple.Primary(), couple.Secondary(), err)
	// Output: forces 0 and 0 N, couples 287 and 157 N·m, <nil>
}
