package fit

import "pintwelve/core/bound"

// Material is what a part is made of. A YieldMPa of 0 is unknown and isn't
// judged. One that is brittle doesn't yield but cracks: for it YieldMPa is the
// tensile strength, which the greatest tension is held against (Rankine).
type Material struct {
	EMPa, Poisson, YieldMPa, AlphaPerK float64
	Brittle                            bool
}

// Stand-ins, to be shown as assumed. E and ν as in Shigley, Mechanical
// Engineering Design, table A-5: values from memory.

// Steel is medium-carbon steel: yield of AISI 1045 hot-rolled (Shigley table
// A-20), expansion of ISO 3650 gauge blocks. Values from memory.
func Steel() Material { return Material{207e3, 0.292, 310, 11.5e-6, false} }

// GreyIron has the tensile strength of ASTM class 30 (Shigley table A-24), from
// memory; its expansion is common practice, no source.
func GreyIron() Material { return Material{100e3, 0.211, 214, 10.8e-6, true} }

// LightAlloy is cast aluminium-silicon; it expands less than pure aluminium.
// Common practice, no source.
func LightAlloy() Material { return Material{71.7e3, 0.333, 0, 22e-6, false} }

// Magnesium is cast magnesium alloy; expansion is common practice, no source.
func Magnesium() Material { return Material{44.8e3, 0.350, 0, 26e-6, false} }

func (m Material) check() error {
	return bound.First(
		within(Modulus, m.EMPa, 1e2, 1e7),
		within(Poisson, m.Poisson, 0, 0.5),
		within(Yield, m.YieldMPa, 0, 1e5),
	)
}

func expansion(alpha float64) error { return within(Expansion, alpha, 1e-7, 1e-3) }
