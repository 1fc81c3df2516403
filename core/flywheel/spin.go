package flywheel

import (
	"math"
	"slices"

	"pintwelve/core/wheel"
)

// Stress is the radial and hoop stress at one radius, MPa.
type Stress struct{ RMM, RadialMPa, HoopMPa float64 }

func (s Stress) greatest() float64 { return math.Max(s.RadialMPa, s.HoopMPa) }

// spun returns the stresses through a wheel's section turning at omega, rad/s,
// as a disc whose thickness changes with the radius, in plane stress: every
// change of width is taken as shared across the disc at once, so a sharp
// corner's own rise is not in it, nor are bosses and holes.
//
// Unknown along r are N = t σ_r and e = σ_θ − ν σ_r (E times the hoop strain),
// which pass steps unbroken. Balance of a ring and its fit to its neighbours:
//
//	r N′ = t e − (1 − ν) N − t ρ ω² r²
//	r e′ = (1 − ν²) N/t − (1 + ν) e
func spun(thickness []wheel.Span, m Material, omega float64) []Stress {
	d := disc{nu: m.Poisson, load: m.DensityKGM3 * 1e-12 * omega * omega} // MPa per mm²
	for _, t := range thickness {
		if t.ToMM > t.FromMM {
			d.spans = append(d.spans, t)
		}
	}
	// Two runs from the bore: one under load, one without; as much of the
	// second is added as leaves no pull at the rim.
	loaded, free := d.run(state{}, d.load), d.run(d.start(), 0)
	share := 0.0
	if last := len(free) - 1; free[last].n != 0 {
		share = -loaded[last].n / free[last].n
	}
	out := make([]Stress, len(loaded))
	for i, l := range loaded {
		n, e := l.n+share*free[i].n, l.e+share*free[i].e
		radial := n / l.t
		out[i] = Stress{l.r, radial, e + m.Poisson*radial}
	}
	return out
}

type state struct{ r, t, n, e float64 }

type disc struct {
	spans    []wheel.Span
	nu, load float64
}

// start is the free run's state at the bore, where nothing pulls; a disc with
// no bore is pulled alike all ways at its middle.
func (d disc) start() state {
	first := d.spans[0]
	if first.FromMM > 0 {
		return state{e: 1}
	}
	return state{n: first.DepthFromMM, e: 1 - d.nu}
}

// run integrates from bore to rim by Runge–Kutta in x = ln r, whose steps are
// fine where the bore is small. Both sides of every step are returned.
func (d disc) run(at state, load float64) []state {
	const step = 0.01
	outer := d.spans[len(d.spans)-1].ToMM
	var out []state
	for _, s := range d.spans {
		from := math.Max(s.FromMM, 1e-4*outer) // the middle of a disc with no bore
		if s.ToMM <= from {
			continue
		}
		n := math.Ceil(math.Log(s.ToMM/from)/step) + 1
		h := math.Log(s.ToMM/from) / n
		slope := (s.DepthToMM - s.DepthFromMM) / (s.ToMM - s.FromMM)
		for i := 0.0; i <= n; i++ {
			at.r = from * math.Exp(i*h)
			at.t = s.DepthFromMM + slope*(at.r-s.FromMM)
			out = append(out, at)
			if i < n {
				at = d.step(at, s, slope, h, load)
			}
		}
	}
	return out
}

func (d disc) step(at state, s wheel.Span, slope, h, load float64) state {
	rate := func(x, n, e float64) (dn, de float64) {
		r := at.r * math.Exp(x)
		t := s.DepthFromMM + slope*(r-s.FromMM)
		return t*e - (1-d.nu)*n - t*load*r*r, (1-d.nu*d.nu)*n/t - (1+d.nu)*e
	}
	n1, e1 := rate(0, at.n, at.e)
	n2, e2 := rate(h/2, at.n+h/2*n1, at.e+h/2*e1)
	n3, e3 := rate(h/2, at.n+h/2*n2, at.e+h/2*e2)
	n4, e4 := rate(h, at.n+h*n3, at.e+h*e3)
	at.n += h / 6 * (n1 + 2*n2 + 2*n3 + n4)
	at.e += h / 6 * (e1 + 2*e2 + 2*e3 + e4)
	return at
}

// worst returns the greatest stress.
func worst(all []Stress) Stress {
	return slices.MaxFunc(all, func(a, b Stress) int {
		switch d := a.greatest() - b.greatest(); {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return 0
	})
}
