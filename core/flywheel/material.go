package flywheel

import (
	"pintwelve/core/bound"
	"pintwelve/core/wheel"
)

// Material is what a wheel is made of.
type Material struct {
	DensityKGM3 float64
	StrengthMPa float64 // tensile strength
	Poisson     float64
}

// Stock is a material to stand in until the user's own figures are known.
type Stock uint8

// The stock materials.
const (
	Steel Stock = iota
	CastIron
	DuctileIron
)

// Material returns common handbook values, from memory, and false for no such
// stock: medium carbon steel as forged, grey iron with flakes, nodular iron.
func (s Stock) Material() (Material, bool) {
	switch s {
	case Steel:
		return Material{DensityKGM3: 7850, StrengthMPa: 550, Poisson: 0.29}, true
	case CastIron:
		return Material{DensityKGM3: 7200, StrengthMPa: 200, Poisson: 0.26}, true
	case DuctileIron:
		return Material{DensityKGM3: 7100, StrengthMPa: 400, Poisson: 0.275}, true
	}
	return Material{}, false
}

func (m Material) check() error {
	return bound.First(within(Density, m.DensityKGM3, 1, wheel.MostDensity), within(Strength, m.StrengthMPa, 1, 5000),
		within(Poisson, m.Poisson, 0, 0.5))
}
