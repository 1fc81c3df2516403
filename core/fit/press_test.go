package fit

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// field is the state of a cylinder at a radius: displacement u, mm, and radial
// stress, MPa.
type field struct{ u, sr float64 }

func (f field) plus(k float64, d field) field { return field{f.u + k*d.u, f.sr + k*d.sr} }

// hoop is Hooke's law round the ring, plane stress: u/r = (σ_θ − ν σ_r)/E.
func (f field) hoop(m Material, r float64) float64 { return m.EMPa*f.u/r + m.Poisson*f.sr }

// slope is Hooke's law along the radius and the equilibrium of a ring element:
// du/dr = (σ_r − ν σ_θ)/E, dσ_r/dr = (σ_θ − σ_r)/r.
func (f field) slope(m Material, r float64) field {
	st := f.hoop(m, r)
	return field{(f.sr - m.Poisson*st) / m.EMPa, (st - f.sr) / r}
}

// through integrates a field from one radius to another, Runge–Kutta of the fourth
// order in steps of equal ratio.
func through(m Material, f field, from, to float64) field {
	const steps = 400
	grow := math.Pow(to/from, 1.0/steps)
	for range steps {
		h := from * (grow - 1)
		a := f.slope(m, from)
		b := f.plus(h/2, a).slope(m, from+h/2)
		c := f.plus(h/2, b).slope(m, from+h/2)
		d := f.plus(h, c).slope(m, from+h)
		f = f.plus(h/6, a).plus(h/3, b).plus(h/3, c).plus(h/6, d)
		from *= grow
	}
	return f
}

// underPressure returns the field at the end radius of a cylinder whose start
// radius is free and whose end radius carries σ_r = −p. Fields are linear, so one
// scaled trial does.
func underPressure(m Material, free, loaded, p float64) (at field, start float64) {
	trial := through(m, field{u: free}, free, loaded)
	k := -p / trial.sr
	return field{k * trial.u, k * trial.sr}, k * free
}

func randomMaterial(rng *rand.Rand) Material {
	return Material{EMPa: 4e4 + 2e5*rng.Float64(), Poisson: 0.15 + 0.25*rng.Float64()}
}

func randomPress(rng *rand.Rand) Press {
	d := 8 + 60*rng.Float64()
	p := Press{
		DiameterMM: d, InterferenceMM: d * (0.0002 + 0.002*rng.Float64()), LengthMM: 5 + 40*rng.Float64(),
		HubMM: d * (1.05 + 3*rng.Float64()), HollowMM: d * 0.95 * rng.Float64(), Friction: 0.05 + 0.2*rng.Float64(),
		Hub: randomMaterial(rng), Pin: randomMaterial(rng),
	}
	if rng.Intn(3) == 0 {
		p.HollowMM = 0
	}
	return p
}

// The pressure must open the eye and close the pin by the interference between them when
// the stress field of each is integrated outwards from Hooke's law and
// equilibrium, and the stresses must be those of that field.
func TestPressMeetsHookeAndEquilibrium(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	for range 300 {
		p := randomPress(rng)
		j, err := p.Joint()
		require.NoError(t, err)
		pressure, r := j.PressureMPa, p.DiameterMM/2

		eye, _ := underPressure(p.Hub, p.HubMM/2, r, pressure)
		hoop := eye.hoop(p.Hub, r)
		assert.InEpsilon(t, hoop, j.HubHoopMPa, 1e-8)
		assert.InEpsilon(t, mises(hoop, -pressure), j.HubMisesMPa, 1e-8)

		pin := field{u: -pressure * r * (1 - p.Pin.Poisson) / p.Pin.EMPa, sr: -pressure} // solid: the same pressure everywhere
		worst := mises(-pressure, -pressure)
		if p.HollowMM > 0 {
			var u float64
			pin, u = underPressure(p.Pin, p.HollowMM/2, r, pressure)
			worst = mises(field{u: u}.hoop(p.Pin, p.HollowMM/2), 0)
		}
		assert.InEpsilon(t, worst, j.PinMisesMPa, 1e-8)
		assert.InEpsilon(t, p.InterferenceMM, 2*(eye.u-pin.u), 1e-8)
	}
}

// mises is √(½[(σ₁−σ₂)² + (σ₂−σ₃)² + (σ₃−σ₁)²]) with σ₃ = 0.
func mises(a, b float64) float64 { return math.Sqrt(((a-b)*(a-b) + a*a + b*b) / 2) }

// Shigley, Mechanical Engineering Design, press and shrink fits, both parts of one
// material: p = E δ/(2 d³) · (D² − d²)(d² − d_i²)/(D² − d_i²), and for a solid
// shaft p = E δ (D² − d²)/(2 d D²). Formulas from memory.
func TestPressOfOneMaterialIsTheTextbooks(t *testing.T) {
	rng := rand.New(rand.NewSource(8))
	for range 300 {
		p := randomPress(rng)
		p.Pin = p.Hub
		j, err := p.Joint()
		require.NoError(t, err)
		e, d, D, h := p.Hub.EMPa, p.DiameterMM, p.HubMM, p.HollowMM
		assert.InEpsilon(t, e*p.InterferenceMM/(2*d*d*d)*(D*D-d*d)*(d*d-h*h)/(D*D-h*h), j.PressureMPa, 1e-11)
		p.HollowMM = 0
		j, err = p.Joint()
		require.NoError(t, err)
		assert.InEpsilon(t, e*p.InterferenceMM*(D*D-d*d)/(2*d*D*D), j.PressureMPa, 1e-11)
	}
}

// A thin hoop on a pin that doesn't give: hoop strain δ/d, σ = E δ/d, p = 2 σ t/d.
func TestThinHoop(t *testing.T) {
	rigid := Material{EMPa: 1e7, Poisson: 0}
	hub := Steel()
	for _, wall := range []float64{0.5, 0.05, 0.005} {
		p := Press{DiameterMM: 50, InterferenceMM: 0.01, LengthMM: 10, HubMM: 50 + 2*wall, Friction: 0.1, Hub: hub, Pin: rigid}
		j, err := p.Joint()
		require.NoError(t, err)
		sigma := hub.EMPa * p.InterferenceMM / p.DiameterMM
		assert.InEpsilon(t, sigma, j.HubHoopMPa, 1.5*wall/50+1e-4)
		assert.InEpsilon(t, 2*sigma*wall/50, j.PressureMPa, 3*wall/50+1e-4)
	}
}

// Torque and forces by their definition: friction summed over the contact.
func TestHoldingIsFrictionOverTheContact(t *testing.T) {
	p := Press{DiameterMM: 25, InterferenceMM: 0.05, LengthMM: 20, HubMM: 60, Friction: 0.12, Pressing: 0.08, Hub: Steel(), Pin: Steel()}
	j, err := p.Joint()
	require.NoError(t, err)
	const n = 720
	patch := math.Pi * p.DiameterMM / n * p.LengthMM
	force, torque := 0.0, 0.0
	for range n {
		f := p.Friction * j.PressureMPa * patch
		force += f
		torque += f * p.DiameterMM / 2 / 1000
	}
	assert.InEpsilon(t, force, j.PushOutN, 1e-10)
	assert.InEpsilon(t, torque, j.HoldNm, 1e-10)
	assert.InEpsilon(t, force*0.08/0.12, j.PressInN, 1e-10)
	p.Pressing = 0
	j, err = p.Joint()
	require.NoError(t, err)
	assert.Equal(t, j.PushOutN, j.PressInN)
}

func TestInterferenceForATorqueHoldsThatTorque(t *testing.T) {
	rng := rand.New(rand.NewSource(9))
	for range 200 {
		p := randomPress(rng)
		want, err := p.Joint()
		require.NoError(t, err)
		interference, j, err := p.For(want.HoldNm)
		require.NoError(t, err)
		assert.InEpsilon(t, p.InterferenceMM, interference, 1e-12)
		assert.InEpsilon(t, want.HoldNm, j.HoldNm, 1e-12)
	}
}

func TestInterferencePastYieldIsFound(t *testing.T) {
	p := Press{DiameterMM: 25, InterferenceMM: 0.02, LengthMM: 20, HubMM: 50, Friction: 0.12, Hub: Steel(), Pin: Material{207e3, 0.292, 900, 11.5e-6, false}}
	j, err := p.Joint()
	require.NoError(t, err)
	assert.Empty(t, j.Findings)
	p.InterferenceMM = j.YieldInterferenceMM * 1.0001
	j, err = p.Joint()
	require.NoError(t, err)
	require.Len(t, j.Findings, 1)
	assert.Equal(t, Finding{HubYields, j.HubMisesMPa, 310}, j.Findings[0])
	assert.InEpsilon(t, 310*1.0001, j.HubMisesMPa, 1e-12)

	p.HollowMM, p.Pin.YieldMPa = 20, 250 // the pin goes first
	j, err = p.Joint()
	require.NoError(t, err)
	p.InterferenceMM = j.YieldInterferenceMM * 1.0001
	j, err = p.Joint()
	require.NoError(t, err)
	require.Len(t, j.Findings, 1)
	assert.Equal(t, PinYields, j.Findings[0].Trouble)
	assert.InEpsilon(t, 250*1.0001, j.PinMisesMPa, 1e-12)

	hubAlone := p
	hubAlone.Pin.YieldMPa = 0
	hubAlone.InterferenceMM = 0.01
	j, err = hubAlone.Joint()
	require.NoError(t, err)
	assert.InEpsilon(t, 310*0.01/j.HubMisesMPa, j.YieldInterferenceMM, 1e-12)

	p.Hub.YieldMPa = 0
	j, err = p.Joint()
	require.NoError(t, err)
	assert.InEpsilon(t, p.InterferenceMM/1.0001, j.YieldInterferenceMM, 1e-12)
	p.Pin.YieldMPa = 0
	j, err = p.Joint()
	require.NoError(t, err)
	assert.Zero(t, j.YieldInterferenceMM)
	assert.Empty(t, j.Findings)
}

func TestPressThatIsNoPress(t *testing.T) {
	good := Press{DiameterMM: 25, InterferenceMM: 0.05, LengthMM: 20, HubMM: 60, HollowMM: 10, Friction: 0.12, Hub: Steel(), Pin: Steel()}
	for _, row := range []struct {
		spoil       func(*Press)
		kind        Kind
		field       Field
		got         float64
		least, most float64
	}{
		{func(p *Press) { p.InterferenceMM = 0 }, NoInterference, Interference, 0, 0, 1.25},
		{func(p *Press) { p.InterferenceMM = -0.02 }, NoInterference, Interference, -0.02, 0, 1.25},
		{func(p *Press) { p.InterferenceMM = 2 }, TooBigForEye, Interference, 2, 1e-7, 1.25},
		{func(p *Press) { p.HollowMM = 25 }, NoWall, Hollow, 25, 0, 25},
		{func(p *Press) { p.HollowMM = 26 }, NoWall, Hollow, 26, 0, 25},
		{func(p *Press) { p.HubMM = 25 }, NoWall, HubOutside, 25, 25, 1e5},
		{func(p *Press) { p.HubMM = 20 }, NoWall, HubOutside, 20, 25, 1e5},
		{func(p *Press) { p.DiameterMM = 0 }, OutOfRange, Diameter, 0, 1e-3, 1e4},
		{func(p *Press) { p.DiameterMM = -25 }, OutOfRange, Diameter, -25, 1e-3, 1e4},
		{func(p *Press) { p.LengthMM = 0 }, OutOfRange, JointLength, 0, 1e-3, 1e4},
		{func(p *Press) { p.Friction = 0 }, OutOfRange, Friction, 0, 1e-4, 10},
		{func(p *Press) { p.Hub.EMPa = 0 }, OutOfRange, Modulus, 0, 1e2, 1e7},
		{func(p *Press) { p.Pin.Poisson = 0.6 }, OutOfRange, Poisson, 0.6, 0, 0.5},
	} {
		p := good
		row.spoil(&p)
		_, err := p.Joint()
		assertFault(t, err, Fault{Field: row.field, Got: row.got, Least: row.least, Most: row.most, Detail: Detail{row.kind}})
	}
	_, _, err := good.For(0)
	assertFault(t, err, Fault{Field: Torque, Got: 0, Least: 1e-6, Most: 1e9})
	_, _, err = good.For(1e9) // no interference a pin could have
	var f *Fault
	require.ErrorAs(t, err, &f)
	assert.Equal(t, Interference, f.Field)
}

func assertFault(t *testing.T, err error, want Fault) {
	t.Helper()
	var f *Fault
	require.ErrorAs(t, err, &f)
	assert.Equal(t, want, *f)
	assert.NotEmpty(t, f.Error())
}

func TestEyeOutsideIsTheThinnestWall(t *testing.T) {
	for _, row := range []struct{ throw, rim, eye, other, want float64 }{
		{40, 80, 25, 30, 50}, // to the shaft's hole: 40 − 15
		{40, 60, 25, 30, 40}, // to the rim: 60 − 40
		{40, 80, 25, 0, 80},  // no other hole
	} {
		got, err := EyeOutside(row.throw, row.rim, row.eye, row.other)
		require.NoError(t, err)
		assert.Equal(t, row.want, got)
	}
	_, err := EyeOutside(40, 50, 25, 30)
	assertFault(t, err, Fault{Field: HubOutside, Got: 20, Least: 25, Most: MostMM, Detail: Detail{NoWall}})
	_, err = EyeOutside(40, 52.5, 25, 30)
	assertFault(t, err, Fault{Field: HubOutside, Got: 25, Least: 25, Most: MostMM, Detail: Detail{NoWall}})
}

// Shigley table A-5 also gives the modulus of rigidity G; E = 2 G (1 + ν) ties the
// three together. Values from memory.
func TestStandInsAgreeWithTheirRigidity(t *testing.T) {
	for name, row := range map[string]struct {
		m Material
		g float64
	}{
		"carbon steel": {Steel(), 79.3e3}, "grey iron": {GreyIron(), 41.4e3}, "aluminium alloys": {LightAlloy(), 26.9e3},
		"magnesium": {Magnesium(), 16.5e3},
	} {
		assert.InEpsilon(t, row.m.EMPa, 2*row.g*(1+row.m.Poisson), 0.012, name)
		require.NoError(t, row.m.check())
	}
}
