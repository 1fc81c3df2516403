package flywheel

import (
	"math"

	"pintwelve/core/bound"
	"pintwelve/core/wheel"
)

// Held is how hard a wheel is pulled at a speed, MPa. It is no certificate:
// cracks, casting flaws, the press of pin and shaft, the engine's own forces
// and the sharpness of corners are not in it.
type Held struct {
	RimMS       float64 // speed of the rim, m/s
	ThinRingMPa float64 // the rim as a ring that nothing holds, ρ v²
	DiscMPa     float64 // a plain disc of its bore and diameter, at the bore
	Section     Stress  // where the section as it is, bosses and holes apart, is pulled hardest
	Hole        HoleStress
	HasHole     bool
	WorstMPa    float64 // the greatest of them
	Margin      float64 // tensile strength over WorstMPa
}

// HoleStress is the pull at the edge of the hole that is pulled hardest.
type HoleStress struct {
	Index  int
	Around Stress  // in the section without the hole, where it is worst under the hole
	Factor float64 // what the hole makes of the greater of the two: 2 when alike, 3 when one is 0
	MPa    float64
}

// Hold works out the pull in a wheel of material m at its highest speed, rpm.
func Hold(s *wheel.Section, m Material, rpm float64) (Held, error) {
	if err := bound.First(m.check(), within(Speed, rpm, 1, 1e5)); err != nil {
		return Held{}, err
	}
	omega := rpm * math.Pi / 30
	v := omega * s.OutMM / 1000
	h := Held{RimMS: v, ThinRingMPa: m.DensityKGM3 * v * v / 1e6, DiscMPa: bored(s.InMM, s.OutMM, m, omega)}
	through := spun(s.Thickness(), m, omega)
	h.Section = worst(through)
	h.WorstMPa = math.Max(h.ThinRingMPa, math.Max(h.DiscMPa, h.Section.greatest()))
	for i, d := range s.Holes {
		if at := holed(through, d); !h.HasHole || at.MPa > h.Hole.MPa {
			at.Index = i
			h.Hole, h.HasHole = at, true
		}
	}
	h.WorstMPa = math.Max(h.WorstMPa, h.Hole.MPa)
	h.Margin = m.StrengthMPa / h.WorstMPa
	return h, nil
}

// bored is σ_max of a disc, MPa: at the bore ρω² ((3+ν)/4) (b² + (1−ν)/(3+ν) a²)
// (MODEL §9); with no bore (3+ν)/8 ρω² b² at the middle (Timoshenko and Goodier,
// Theory of Elasticity, rotating disks; from memory).
func bored(a, b float64, m Material, omega float64) float64 {
	nu := m.Poisson
	load := m.DensityKGM3 * omega * omega * 1e-12 // MPa per mm²
	if a == 0 {
		return load * (3 + nu) / 8 * b * b
	}
	return load * (3 + nu) / 4 * (b*b + (1-nu)/(3+nu)*a*a)
}

// holed is Kirsch's small hole in a plate pulled two ways, 3σ₁ − σ₂ at its edge
// (Timoshenko and Goodier, from memory): twice the pull where it is alike both
// ways, three times where it is one way. It is taken for every hole, through or
// blind, at the worst radius that the hole covers; a large hole, or one near
// an edge or another, is worse than small.
func holed(through []Stress, d wheel.Drilling) HoleStress {
	var h HoleStress
	c, r := d.At.Len(), d.DiameterMM/2
	nearest := math.Inf(1)
	for _, s := range through {
		nearest = math.Min(nearest, math.Abs(s.RMM-c))
	}
	r = math.Max(r, nearest) // a small drill between two radii has the nearer
	for _, s := range through {
		if math.Abs(s.RMM-c) > r {
			continue
		}
		more, less := math.Max(s.RadialMPa, s.HoopMPa), math.Min(s.RadialMPa, s.HoopMPa)
		if p := 3*more - less; p > h.MPa {
			h = HoleStress{Around: s, Factor: p / more, MPa: p}
		}
	}
	return h
}
