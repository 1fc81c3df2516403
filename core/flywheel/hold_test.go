package flywheel

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"pintwelve/core/clock"
	"pintwelve/core/wheel"
)

func sectionOf(t *testing.T, w wheel.Wheel) *wheel.Section {
	t.Helper()
	s, err := w.Section()
	require.NoError(t, err)
	return s
}

func held(t *testing.T, w wheel.Wheel, m Material, rpm float64) Held {
	t.Helper()
	h, err := Hold(sectionOf(t, w), m, rpm)
	require.NoError(t, err)
	return h
}

// The handbook rule for cast-iron rims, tension in lb/in² is v²/10 with v in
// ft/s (value from memory), at 88 ft/s, a mile a minute.
func TestCastIronRimAgainstTheHandbookRule(t *testing.T) {
	iron := Material{DensityKGM3: 7200, StrengthMPa: 200, Poisson: 0.26}
	const v = 88 * 0.3048 // m/s
	h := held(t, wheel.Wheel{DiameterMM: 200, WidthMM: 28}, iron, v/0.1*30/math.Pi)
	assert.InDelta(t, v, h.RimMS, 1e-12)
	const psi = 0.006894757 // MPa
	assert.InEpsilon(t, 88.0*88/10, h.ThinRingMPa/psi, 0.04)
}

// Rotating discs of Timoshenko and Goodier, Theory of Elasticity, from memory:
// hoop and radial stress of a solid disc (3+ν)/8 ρω²r² at its middle, and with
// a bore of a pin-hole twice that at its edge.
func TestSolidDiscAndPinHole(t *testing.T) {
	m, _ := Steel.Material()
	const rpm = 7000
	omega := rpm * math.Pi / 30
	want := (3 + m.Poisson) / 8 * m.DensityKGM3 * omega * omega * 0.1 * 0.1 / 1e6
	solid := held(t, wheel.Wheel{DiameterMM: 200, WidthMM: 28}, m, rpm)
	assert.InEpsilon(t, want, solid.DiscMPa, 1e-12)
	assert.InEpsilon(t, want, solid.Section.HoopMPa, 1e-6)
	assert.InEpsilon(t, want, solid.Section.RadialMPa, 1e-6)
	pin := held(t, wheel.Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 0.02}, m, rpm)
	assert.InEpsilon(t, 2*want, pin.DiscMPa, 1e-6)
	assert.InEpsilon(t, 2*want, pin.Section.HoopMPa, 1e-6)
	assert.Less(t, pin.Section.RMM, 0.011)
}

// The bored disc's own closed forms at every radius, from the same book:
// σ_r = (3+ν)/8 ρω² (b² + a² − a²b²/r² − r²),
// σ_θ = (3+ν)/8 ρω² (b² + a² + a²b²/r² − (1+3ν)/(3+ν) r²).
func TestBoredDiscAtEveryRadius(t *testing.T) {
	m, _ := CastIron.Material()
	const a, b, omega = 12.5, 100.0, 700.0
	k := (3 + m.Poisson) / 8 * m.DensityKGM3 * omega * omega / 1e12
	all := spun([]wheel.Span{{FromMM: a, ToMM: b, DepthFromMM: 20, DepthToMM: 20}}, m, omega)
	for _, s := range all {
		r2, q := s.RMM*s.RMM, a*a*b*b/(s.RMM*s.RMM)
		assert.InDelta(t, k*(b*b+a*a-q-r2), s.RadialMPa, 1e-7)
		assert.InDelta(t, k*(b*b+a*a+q-(1+3*m.Poisson)/(3+m.Poisson)*r2), s.HoopMPa, 1e-7)
	}
	assert.Greater(t, len(all), 100)
	assert.InEpsilon(t, bored(a, b, m, omega), worst(all).HoopMPa, 1e-9)
}

// A heavy rim on a thin web is two plain discs joined where their pull and
// their stretch agree, A + B/r² in each: four unknowns, solved by gonum.
func TestRimOnAThinWebAgainstTwoDiscs(t *testing.T) {
	m, _ := Steel.Material()
	const a, c, b, web, rim, omega = 12.5, 80.0, 100.0, 10.0, 28.0, 800.0
	nu, load := m.Poisson, m.DensityKGM3*omega*omega/1e12
	radial := func(r float64) float64 { return -(3 + nu) / 8 * load * r * r }
	hoop := func(r float64) float64 { return -(1 + 3*nu) / 8 * load * r * r }
	// σ_r = A − B/r² + radial, σ_θ = A + B/r² + hoop; e = σ_θ − ν σ_r
	design := mat.NewDense(4, 4, []float64{
		1, -1 / (a * a), 0, 0,
		0, 0, 1, -1 / (b * b),
		web, -web / (c * c), -rim, rim / (c * c),
		1 - nu, (1 + nu) / (c * c), -(1 - nu), -(1 + nu) / (c * c),
	})
	right := mat.NewVecDense(4, []float64{-radial(a), -radial(b), (rim - web) * radial(c), 0})
	var x mat.VecDense
	require.NoError(t, x.SolveVec(design, right))
	w := wheel.Wheel{DiameterMM: 2 * b, WidthMM: rim, BoreMM: 2 * a}.Turn(
		wheel.Ring{Side: wheel.Outer, FromMM: a, ToMM: c, DepthFromMM: 9, DepthToMM: 9}).Turn(
		wheel.Ring{Side: wheel.Inner, FromMM: a, ToMM: c, DepthFromMM: 9, DepthToMM: 9})
	all := spun(sectionOf(t, w).Thickness(), m, omega)
	inRim := false
	for i, s := range all {
		inRim = inRim || i > 0 && s.RMM == all[i-1].RMM
		k := 0
		if inRim {
			k = 2
		}
		r2 := s.RMM * s.RMM
		assert.InDelta(t, x.AtVec(k)-x.AtVec(k+1)/r2+radial(s.RMM), s.RadialMPa, 1e-6)
		assert.InDelta(t, x.AtVec(k)+x.AtVec(k+1)/r2+hoop(s.RMM), s.HoopMPa, 1e-6)
	}
	assert.True(t, inRim)
	plain := spun([]wheel.Span{{FromMM: a, ToMM: b, DepthFromMM: rim, DepthToMM: rim}}, m, omega)
	assert.Greater(t, worst(all).greatest(), worst(plain).greatest()) // the web carries the rim
}

// Half the wheel's own pull is carried across its diameter, whatever the
// section: ∫ σ_θ t dr = ρω² ∫ t r² dr.
func TestHoopCarriesHalfTheWheel(t *testing.T) {
	m, _ := Steel.Material()
	w := single().Turn(wheel.Ring{Side: wheel.Outer, FromMM: 40, ToMM: 100, DepthFromMM: 0, DepthToMM: 9})
	thick := sectionOf(t, w).Thickness()
	const omega = 700.0
	at := func(r float64, from int) float64 {
		for _, s := range thick[from:] {
			if r <= s.ToMM {
				return s.DepthFromMM + (s.DepthToMM-s.DepthFromMM)*(r-s.FromMM)/(s.ToMM-s.FromMM)
			}
		}
		return 0
	}
	var carried, pulled float64
	all := spun(thick, m, omega)
	for i := 1; i < len(all); i++ {
		p, q := all[i-1], all[i]
		if q.RMM == p.RMM {
			continue
		}
		mid := (p.RMM + q.RMM) / 2
		tMid := at(mid, 0)
		carried += (p.HoopMPa + q.HoopMPa) / 2 * tMid * (q.RMM - p.RMM)
		pulled += m.DensityKGM3 * 1e-12 * omega * omega * tMid * mid * mid * (q.RMM - p.RMM)
	}
	assert.InEpsilon(t, pulled, carried, 1e-4) // by the trapezium rule
}

// Kirsch's plate (Timoshenko and Goodier, from memory): a small hole doubles
// the pull where it is alike both ways, and trebles it where it is one way.
func TestHoleFactor(t *testing.T) {
	m, _ := Steel.Material()
	plain := wheel.Wheel{DiameterMM: 200, WidthMM: 28}
	middle, err := plain.Drill(wheel.Outer, wheel.Hole{At: clock.Vec{T: 1}, DiameterMM: 0.2, Through: true})
	require.NoError(t, err)
	h := held(t, middle, m, 6000)
	require.True(t, h.HasHole)
	assert.InEpsilon(t, 2, h.Hole.Factor, 1e-3)
	assert.InEpsilon(t, 2*h.DiscMPa, h.Hole.MPa, 1e-3)

	edge, err := plain.Drill(wheel.Outer, wheel.Hole{At: clock.Vec{T: 99.8}, DiameterMM: 0.2, Through: true})
	require.NoError(t, err)
	assert.InEpsilon(t, 3, held(t, edge, m, 6000).Hole.Factor, 0.02)

	both, err := edge.Drill(wheel.Outer, wheel.Hole{At: clock.Vec{T: 1}, DiameterMM: 0.2, Through: true})
	require.NoError(t, err)
	assert.Equal(t, 1, held(t, both, m, 6000).Hole.Index)
}

func TestMarginIsAgainstTheWorst(t *testing.T) {
	m, _ := Steel.Material()
	slow, fast := held(t, single(), m, 3500), held(t, single(), m, 7000)
	assert.InEpsilon(t, 4*slow.WorstMPa, fast.WorstMPa, 1e-9)
	assert.InEpsilon(t, slow.Margin/4, fast.Margin, 1e-9)
	assert.InEpsilon(t, m.StrengthMPa, fast.Margin*fast.WorstMPa, 1e-12)
	for _, mpa := range []float64{fast.ThinRingMPa, fast.DiscMPa, fast.Section.greatest(), fast.Hole.MPa} {
		assert.LessOrEqual(t, mpa, fast.WorstMPa)
	}
	assert.False(t, held(t, wheel.Wheel{DiameterMM: 200, WidthMM: 28}, m, 7000).HasHole)
}

func TestHoldWithFiguresThatCannotBe(t *testing.T) {
	good, _ := Steel.Material()
	s := sectionOf(t, single())
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1), 1e300} {
		for field, spoil := range map[Field]func(m *Material, rpm *float64){
			Density:  func(m *Material, _ *float64) { m.DensityKGM3 = bad },
			Strength: func(m *Material, _ *float64) { m.StrengthMPa = bad },
			Speed:    func(_ *Material, rpm *float64) { *rpm = bad },
			Poisson: func(m *Material, _ *float64) {
				m.Poisson = bad
				if bad == 0 {
					m.Poisson = 0.6
				}
			},
		} {
			m, rpm := good, 7000.0
			spoil(&m, &rpm)
			_, err := Hold(s, m, rpm)
			var fault *Fault
			require.ErrorAs(t, err, &fault)
			assert.Equal(t, field, fault.Field)
		}
	}
	_, ok := Stock(9).Material()
	assert.False(t, ok)
	for stock := range DuctileIron + 1 {
		m, ok := stock.Material()
		assert.True(t, ok)
		assert.NoError(t, m.check())
	}
	// The thinnest web and the smallest bore that are taken still give numbers.
	thin := wheel.Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 0.0001}.Turn(
		wheel.Ring{Side: wheel.Outer, FromMM: 1, ToMM: 99.9999, DepthFromMM: 27.99, DepthToMM: 27.99})
	h := held(t, thin, good, 1e5)
	assert.False(t, math.IsNaN(h.WorstMPa) || math.IsInf(h.WorstMPa, 0))
	assert.Positive(t, h.Margin)
}

func BenchmarkHold(b *testing.B) {
	m, _ := Steel.Material()
	s, err := single().Section()
	require.NoError(b, err)
	for b.Loop() {
		_, err := Hold(s, m, 7000)
		require.NoError(b, err)
	}
}
