package lsq

import (
	"math"

	"pintwelve/core/clock"
)

// Uncertainty is that of a vector: its covariance, and the degrees of freedom
// that the scatter behind it was estimated with. Nu of 0 means that the scatter
// is known, not estimated.
type Uncertainty struct {
	Cov Cov
	Nu  float64
}

// Significant tells whether the vector differs significantly from 0 at 95 %:
// vᵀ Σ⁻¹ v ≥ k² (core/MODEL.md §6). Where it does not, its direction is unknown.
func (s Uncertainty) Significant(v clock.Vec) bool {
	k := Radius95(s.Nu)
	return v != (clock.Vec{}) && s.Cov.Distance2(v) >= k*k
}

// HalfWidth95 returns the half-width of the 95 % confidence interval of the component
// along u. For u of 0 it is that of the component that is least sure.
func (s Uncertainty) HalfWidth95(u clock.Vec) float64 {
	sigma := s.Cov.Widest()
	if u != (clock.Vec{}) {
		sigma = math.Sqrt(math.Max(s.Cov.Var(u), 0))
	}
	return Student95(s.Nu) * sigma
}

// Sector returns half the angle [hours] within which v points at 95 %:
// arcsin(t σ_across/|v|) (core/MODEL.md §6). It means nothing unless v is
// Significant.
func (s Uncertainty) Sector(v clock.Vec) float64 {
	n := v.Len()
	if n == 0 {
		return 6
	}
	across := Student95(s.Nu) * math.Sqrt(math.Max(s.Cov.Across(v), 0))
	return math.Asin(math.Min(across/n, 1)) * 6 / math.Pi
}

// Scale returns the uncertainty of k v.
func (s Uncertainty) Scale(k float64) Uncertainty {
	return Uncertainty{Cov: s.Cov.Scale(k * k), Nu: s.Nu}
}

// Differ tells whether two independent vectors differ significantly at 95 %.
func Differ(v, w clock.Vec, a, b Uncertainty) bool {
	return Uncertainty{Cov: a.Cov.Add(b.Cov), Nu: PooledNu(a, b)}.Significant(v.Sub(w))
}

// PooledNu returns the effective degrees of freedom of the sum of two independent
// vectors, by Welch and Satterthwaite on the traces of their covariances.
func PooledNu(a, b Uncertainty) float64 {
	va, vb := a.Cov.TT+a.Cov.NN, b.Cov.TT+b.Cov.NN
	spread := 0.0
	if a.Nu > 0 {
		spread += va * va / a.Nu
	}
	if b.Nu > 0 {
		spread += vb * vb / b.Nu
	}
	if spread == 0 {
		return 0
	}
	return (va + vb) * (va + vb) / spread
}
