package balance

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/diff/fd"
)

// The unbalanced primary force of a partly balanced single, √(((1 − c) m R ω²
// cos θ)² + (c m R ω² sin θ)²), as the textbooks give it; values from memory.
// With ω rounded to 25.14 rad/s Khurmi & Gupta print 2849 N.
func TestUnbalancedForceOfTheTextbooks(t *testing.T) {
	for _, row := range []struct {
		source                       string
		recG, throw, rpm, deg, want  float64
		tolerance, printed, rounding float64
	}{
		{"Khurmi & Gupta, Theory of Machines, ch. 22", 50e3, 150, 240, 60, 2847, 0.5, 2849, 25.14},
		{"Sadhu Singh, Theory of Machines, ch. 12", 120e3, 90, 250, 30, 3264, 1, 3264, 250 * math.Pi / 30},
	} {
		e := Engine{ThrowMM: row.throw, RodMM: 4 * row.throw, Factor: 2.0 / 3, Bores: []Bore{{RecG: row.recG}}}
		f := e.force(Primary, row.deg*math.Pi/180, row.rpm)
		assert.InDelta(t, row.want, f.Size(), row.tolerance, row.source)
		f = e.force(Primary, row.deg*math.Pi/180, row.rounding*30/math.Pi)
		assert.InDelta(t, row.printed, f.Size(), 1, row.source)
	}
}

// force is that on the frame with the crank theta past the line of bank angle 0.
func (e Engine) force(m Motion, theta, rpm float64) Force {
	return e.unit(m, theta).scale(e.newtons(rpm))
}

// travel is how far the piston's pin stands from the shaft, the crank phi past
// top dead centre: x = R cos φ + √(L² − R² sin² φ).
func travel(throwMM, rodMM, phi float64) float64 {
	sin, cos := math.Sincos(phi)
	return throwMM*cos + math.Sqrt(rodMM*rodMM-throwMM*throwMM*sin*sin)
}

func TestMotionAgainstNumericalDerivative(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	for range 500 {
		throw, ratio, phi := 20+60*rng.Float64(), 1.2+4*rng.Float64(), 2*math.Pi*rng.Float64()
		second := fd.Derivative(func(phi float64) float64 { return travel(throw, ratio*throw, phi) }, phi,
			&fd.Settings{Formula: fd.Central2nd, Step: 1e-3})
		assert.InDelta(t, -second/throw, Exact.pull(1/ratio, phi), 3e-5/(ratio-1))
	}
}

// The series leaves out terms of λ³, the primary one terms of λ.
func TestSeriesClosesOnExactMotion(t *testing.T) {
	for _, lambda := range []float64{0.02, 0.05, 0.1, 0.2, 0.3} {
		for phi := 0.0; phi < 2*math.Pi; phi += 0.01 {
			exact := Exact.pull(lambda, phi)
			assert.InDelta(t, exact, Secondary.pull(lambda, phi), 1.3*math.Pow(lambda, 3))
			assert.InDelta(t, exact, Primary.pull(lambda, phi), 1.1*lambda)
		}
	}
	assert.InDelta(t, 1+0.25, Exact.pull(0.25, 0), 1e-15, "top dead centre: 1 + λ")
	assert.InDelta(t, -1+0.25, Exact.pull(0.25, math.Pi), 1e-15, "bottom: −1 + λ")
}

// Standard result of the theory of machines: a 90° V-twin's primary forces are a
// vector of steady size that goes round with the crank, so half of the total
// reciprocating weight balances them.
func TestNinetyDegreeTwinHasNoPrimaryForce(t *testing.T) {
	e := Engine{ThrowMM: 40, RodMM: 150, Factor: 0.5, Bores: []Bore{{0, 500}, {math.Pi / 2, 500}}}
	for theta := 0.0; theta < 2*math.Pi; theta += 0.1 {
		f := e.force(Primary, theta, 6000)
		assert.InDelta(t, 0, f.Size(), 1e-9)
	}
	e.Bores[1].BankRad = math.Pi / 3
	f := e.force(Primary, 0.5, 6000)
	assert.Greater(t, f.Size(), 1000.0, "at 60° it has")
}

func TestSinglesSmallestPrimaryPeakIsAtOneHalf(t *testing.T) {
	best, at := math.Inf(1), 0.0
	for i := range 101 {
		e := Engine{ThrowMM: 40, RodMM: 150, Factor: float64(i) / 100, Bores: []Bore{{RecG: 500}}}
		p, err := e.Peaks(Primary, 0, 5000)
		require.NoError(t, err)
		if p[0].Size.N < best {
			best, at = p[0].Size.N, e.Factor
		}
	}
	assert.Equal(t, 0.5, at)
	omega := 5000 * math.Pi / 30
	assert.InEpsilon(t, 0.5*0.5*0.04*omega*omega, best, 1e-9)
}

// Parallel twin on a common pin: twice a single of the same weights.
func TestParallelTwinIsTwoSingles(t *testing.T) {
	one := Engine{ThrowMM: 40, RodMM: 150, Factor: 0.6, Bores: []Bore{{RecG: 500}}}
	two := one
	two.Bores = []Bore{{RecG: 500}, {RecG: 500}}
	a, err := one.Loop(Exact, 36, 4000)
	require.NoError(t, err)
	b, err := two.Loop(Exact, 36, 4000)
	require.NoError(t, err)
	for i := range a {
		assert.InDelta(t, 2*a[i].AlongN, b[i].AlongN, 1e-9)
		assert.InDelta(t, 2*a[i].AcrossN, b[i].AcrossN, 1e-9)
	}
}

// Newton's third law by hand: the force on the frame is the rate of change of
// the momentum of piston and counterweight, taken here by gonum from positions.
func TestForceAgainstMomentum(t *testing.T) {
	const throw, rod, rpm = 40.0, 145.0, 5000.0
	omega := rpm * math.Pi / 30
	e := Engine{ThrowMM: throw, RodMM: rod, Factor: 0.55, Bores: []Bore{{0, 480}, {0.9, 530}}}
	place := func(axis int) func(theta float64) float64 {
		return func(theta float64) float64 {
			unit := func(a float64) float64 { return [2]float64{math.Cos(a), math.Sin(a)}[axis] }
			sum := 0.0
			for _, b := range e.Bores {
				sum += b.RecG * travel(throw, rod, theta-b.BankRad) * unit(b.BankRad)
				sum -= e.Factor * b.RecG * throw * unit(theta)
			}
			return sum
		}
	}
	for theta := 0.0; theta < 2*math.Pi; theta += 0.2 {
		f := e.force(Exact, theta, rpm)
		for axis, got := range []float64{f.AlongN, f.AcrossN} {
			acc := fd.Derivative(place(axis), theta, &fd.Settings{Formula: fd.Central2nd, Step: 1e-3})
			assert.InDelta(t, -acc*1e-6*omega*omega, got, 0.02)
		}
	}
}

func TestPeaksAgainstAFineSweep(t *testing.T) {
	e := Engine{ThrowMM: 40, RodMM: 145, Factor: 0.63, Bores: []Bore{{0, 480}, {0.87, 530}}}
	const lean = 0.4
	peaks, err := e.Peaks(Exact, lean, 3000, 6000)
	require.NoError(t, err)
	loop, err := e.Loop(Exact, 3600, 3000)
	require.NoError(t, err)
	var size, along, across float64
	for _, f := range loop {
		f = f.Turned(lean)
		size, along, across = math.Max(size, f.Size()), math.Max(along, math.Abs(f.AlongN)), math.Max(across, math.Abs(f.AcrossN))
	}
	for _, row := range []struct {
		want float64
		got  Peak
	}{{size, peaks[0].Size}, {along, peaks[0].Along}, {across, peaks[0].Across}} {
		assert.GreaterOrEqual(t, row.got.N, row.want-1e-9)
		assert.InEpsilon(t, row.want, row.got.N, 1e-5)
	}
	f := e.force(Exact, peaks[0].Size.Theta, 3000)
	assert.InEpsilon(t, peaks[0].Size.N, f.Size(), 1e-12)
	assert.InEpsilon(t, 4*peaks[0].Size.N, peaks[1].Size.N, 1e-12, "as the square of the speed")
}

func TestTurnedToTheFrame(t *testing.T) {
	f := Force{AlongN: 3, AcrossN: 4}
	assert.InDelta(t, -4, f.Turned(math.Pi/2).AlongN, 1e-12)
	assert.InDelta(t, 3, f.Turned(math.Pi/2).AcrossN, 1e-12)
	assert.InDelta(t, 5, f.Turned(1.234).Size(), 1e-12)
}

func TestEnginesThatCannotBe(t *testing.T) {
	good := Engine{ThrowMM: 40, RodMM: 150, Factor: 0.6, Bores: []Bore{{RecG: 500}}}
	nan := math.NaN()
	for _, row := range []struct {
		field Field
		spoil func(e *Engine, theta, rpm *float64)
	}{
		{Throw, func(e *Engine, _, _ *float64) { e.ThrowMM = 0 }},
		{RodLength, func(e *Engine, _, _ *float64) { e.RodMM = 40 }},
		{RodLength, func(e *Engine, _, _ *float64) { e.RodMM = nan }},
		{TargetFactor, func(e *Engine, _, _ *float64) { e.Factor = 1.6 }},
		{Cylinders, func(e *Engine, _, _ *float64) { e.Bores = nil }},
		{Reciprocating, func(e *Engine, _, _ *float64) { e.Bores = []Bore{{RecG: -1}} }},
		{Bank, func(e *Engine, _, _ *float64) { e.Bores = []Bore{{BankRad: nan, RecG: 1}} }},
		{Speed, func(_ *Engine, _, rpm *float64) { *rpm = 0 }},
		{Speed, func(_ *Engine, _, rpm *float64) { *rpm = math.Inf(1) }},
		{Angle, func(_ *Engine, theta, _ *float64) { *theta = nan }},
	} {
		e, theta, rpm := good, 1.0, 3000.0
		row.spoil(&e, &theta, &rpm)
		_, err := e.Peaks(Exact, theta, rpm)
		var fault *Fault
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, row.field, fault.Field)
	}
	_, err := good.Loop(Exact, 2, 3000)
	var fault *Fault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, Points, fault.Field)
}
