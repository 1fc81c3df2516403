package lsq

import (
	"math"

	"pintwelve/core/clock"
)

// Cov is the covariance of a vector across the shafts, or any other symmetric
// 2 × 2 matrix in the frame of clock.Vec. The zero value is that of an exact
// vector.
type Cov struct{ TT, TN, NN float64 }

// Round returns the covariance that is the same in every direction, standard
// deviation s in each.
func Round(s float64) Cov { return Cov{TT: s * s, NN: s * s} }

// Oriented returns the covariance whose standard deviation is along in the
// direction of an hour seen from the left end, and across at right angles.
func Oriented(along, across, hour float64) Cov {
	s, c := math.Sincos(clock.Radians(hour))
	a, b := along*along, across*across
	return Cov{TT: a*c*c + b*s*s, TN: (a - b) * c * s, NN: a*s*s + b*c*c}
}

// Add returns c + d.
func (c Cov) Add(d Cov) Cov { return Cov{c.TT + d.TT, c.TN + d.TN, c.NN + d.NN} }

// Scale returns k c.
func (c Cov) Scale(k float64) Cov { return Cov{k * c.TT, k * c.TN, k * c.NN} }

// Apply returns the product c v.
func (c Cov) Apply(v clock.Vec) clock.Vec {
	return clock.Vec{T: c.TT*v.T + c.TN*v.N, N: c.TN*v.T + c.NN*v.N}
}

// Var returns the variance of the component along v, v of any length; it is 0
// where v is 0.
func (c Cov) Var(v clock.Vec) float64 {
	n := v.Dot(v)
	if n == 0 {
		return 0
	}
	return v.Dot(c.Apply(v)) / n
}

// Across returns the variance of the component at right angles to v.
func (c Cov) Across(v clock.Vec) float64 { return c.Var(clock.Vec{T: -v.N, N: v.T}) }

// Inverse returns c⁻¹, and false where c has none to working accuracy.
func (c Cov) Inverse() (Cov, bool) {
	det := c.TT*c.NN - c.TN*c.TN
	if !(det > 1e-14*c.TT*c.NN) {
		return Cov{}, false
	}
	return Cov{c.NN / det, -c.TN / det, c.TT / det}, true
}

// Proper tells whether c is a covariance: finite and not negative in any
// direction, to working accuracy.
func (c Cov) Proper() bool {
	return c.TT >= 0 && c.NN >= 0 && c.TT <= math.MaxFloat64 && c.NN <= math.MaxFloat64 &&
		c.TN*c.TN <= c.TT*c.NN*(1+1e-9)
}

// Distance2 returns vᵀ c⁻¹ v, the squared Mahalanobis distance of v from 0. An
// exact vector that is not 0 stands as far as a float goes; one that is, at 0.
func (c Cov) Distance2(v clock.Vec) float64 {
	if v == (clock.Vec{}) {
		return 0
	}
	if w, ok := c.Inverse(); ok {
		return math.Min(v.Dot(w.Apply(v)), math.MaxFloat64)
	}
	// Singular: only the direction that varies can excuse the vector.
	long, least := c.axes()
	across := clock.Vec{T: -long.N, N: long.T}
	if s := v.Dot(across); s*s > 1e-14*v.Dot(v) || !(least > 0) {
		return math.MaxFloat64
	}
	s := v.Dot(long)
	return math.Min(s*s/least, math.MaxFloat64)
}

// axes returns the direction of the greatest variance, a unit vector, and that
// variance.
func (c Cov) axes() (clock.Vec, float64) {
	half, apart := (c.TT+c.NN)/2, (c.TT-c.NN)/2
	r := math.Sqrt(apart*apart + c.TN*c.TN)
	// Of the two ways to write the direction, the one that loses no digits.
	u := clock.Vec{T: r + math.Abs(apart), N: c.TN}
	if apart < 0 {
		u = clock.Vec{T: c.TN, N: r - apart}
	}
	n := math.Sqrt(u.Dot(u))
	if n == 0 {
		return clock.Vec{T: 1}, half
	}
	return u.Scale(1 / n), half + r
}

// Floor returns c with the variance in no direction less than v.
func (c Cov) Floor(v float64) Cov {
	u, most := c.axes()
	least := c.TT + c.NN - most
	if least >= v {
		return c
	}
	a, b := math.Max(most, v), v
	return Cov{TT: a*u.T*u.T + b*u.N*u.N, TN: (a - b) * u.T * u.N, NN: a*u.N*u.N + b*u.T*u.T}
}

// Widest returns the greatest standard deviation over all directions.
func (c Cov) Widest() float64 {
	_, v := c.axes()
	return math.Sqrt(math.Max(v, 0))
}
