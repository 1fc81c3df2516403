// Package wheel holds a flywheel's section: its weight, its inertia about the
// shaft, and the holes drilled in it. It is the model's section 9, and the
// hole of section 8.
//
// Conventions: lengths are mm, densities kg/m³, weights g, first moments g·mm
// and moments of inertia g·mm² (1 kg·m² is 1e9 g·mm²). Positions across the
// shaft are clock vectors, T towards the crankpin and N towards 3 seen from
// the left end. Metal taken off counts as positive metal.
package wheel

import "pintwelve/core/clock"

// Bounds on what is taken for a wheel, wide enough for a stationary engine.
const (
	MostMM      = 5000  // longest length, mm
	MostDensity = 25000 // kg/m³, above tungsten and platinum
)

// gramsPerMM3 is one kg/m³ in g/mm³.
const gramsPerMM3 = 1e-6

// Metal is a piece of metal as the shaft feels it.
type Metal struct {
	MassG       float64
	MomentGMM   clock.Vec // first moment about the shaft, g·mm
	InertiaGMM2 float64   // about the shaft, g·mm²
}

// Add returns both pieces together.
func (m Metal) Add(o Metal) Metal {
	return Metal{m.MassG + o.MassG, m.MomentGMM.Add(o.MomentGMM), m.InertiaGMM2 + o.InertiaGMM2}
}

// Sub returns m with o taken away.
func (m Metal) Sub(o Metal) Metal { return m.Add(o.scale(-1)) }

func (m Metal) scale(k float64) Metal {
	return Metal{k * m.MassG, m.MomentGMM.Scale(k), k * m.InertiaGMM2}
}

// CheckDensity returns a Fault unless rho, kg/m³, is that of a metal.
func CheckDensity(rho float64) error { return within(Density, rho, 1, MostDensity) }
