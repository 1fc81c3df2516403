package balance

import "math"

// Motion is how the piston is taken to move.
type Motion uint8

// The exact motion, and its series cut off after the first or second term.
const (
	Exact Motion = iota
	Primary
	Secondary
)

// pull returns −x″/R, x as Travel gives it and ″ with respect to φ, that is
// −ẍ/(R ω²) at a steady speed.
//
//	exact:  cos φ + λ cos 2φ/s + λ³ sin² φ cos² φ/s³, s = √(1 − λ² sin² φ), λ = R/L
//	series: cos φ + λ cos 2φ, MODEL §8
func (m Motion) pull(lambda, phi float64) float64 {
	sin, cos := math.Sincos(phi)
	cos2 := cos*cos - sin*sin
	switch m {
	case Primary:
		return cos
	case Secondary:
		return cos + lambda*cos2
	}
	s := math.Sqrt(1 - lambda*lambda*sin*sin)
	return cos + lambda*cos2/s + math.Pow(lambda/s, 3)*sin*sin*cos*cos
}
