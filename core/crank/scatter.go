package crank

import (
	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// mat is a 2 × 2 matrix in the frame of clock.Vec, rows T and N.
type mat = [2][2]float64

func square(c lsq.Cov) mat { return mat{{c.TT, c.TN}, {c.TN, c.NN}} }

func mul(a, b mat) mat {
	return mat{
		{a[0][0]*b[0][0] + a[0][1]*b[1][0], a[0][0]*b[0][1] + a[0][1]*b[1][1]},
		{a[1][0]*b[0][0] + a[1][1]*b[1][0], a[1][0]*b[0][1] + a[1][1]*b[1][1]},
	}
}

func apply(a mat, v clock.Vec) clock.Vec {
	return clock.Vec{T: a[0][0]*v.T + a[0][1]*v.N, N: a[1][0]*v.T + a[1][1]*v.N}
}

func turned(a mat) mat { return mat{{a[0][0], a[1][0]}, {a[0][1], a[1][1]}} }

// twice returns a + aᵀ, which is symmetric.
func twice(a mat) lsq.Cov {
	return lsq.Cov{TT: 2 * a[0][0], TN: a[0][1] + a[1][0], NN: 2 * a[1][1]}
}

// half returns the symmetric part of a.
func half(a mat) lsq.Cov { return twice(a).Scale(0.5) }

// trace returns that of a c aᵀ.
func trace(a mat, c lsq.Cov) float64 {
	sum := 0.0
	for _, row := range a {
		v := clock.Vec{T: row[0], N: row[1]}
		sum += v.Dot(c.Apply(v))
	}
	return sum
}

// line solves [s0 s1; s1 s2] [a; b] = [v0; v1], blocks 2 × 2, and returns the
// inverse as the covariance of a and b. The caller sees to it that the stations
// stand apart, so that both inverses exist.
func line(s0, s1, s2 lsq.Cov, v0, v1 clock.Vec) (a, b clock.Vec, sp Scatter) {
	i0, _ := s0.Inverse()
	k := mul(square(s1), square(i0))                    // s1 s0⁻¹
	schur := s2.Add(half(mul(k, square(s1))).Scale(-1)) // s2 − s1 s0⁻¹ s1
	bb, _ := schur.Inverse()
	b = bb.Apply(v1.Sub(apply(k, v0)))
	a = i0.Apply(v0.Sub(s1.Apply(b)))
	ab := mul(turned(k), square(bb)) // −ab is the covariance of a with b
	aa := i0.Add(half(mul(ab, k)))
	return a, b, Scatter{AA: aa, BB: bb, AB: mat{{-ab[0][0], -ab[0][1]}, {-ab[1][0], -ab[1][1]}}}
}

// shift moves A along the shaft by l [mm].
func (s Scatter) shift(l float64) Scatter {
	bb := square(s.BB)
	out := Scatter{AA: s.AA.Add(twice(s.AB).Scale(l)).Add(s.BB.Scale(l * l)), BB: s.BB, AB: s.AB}
	for i := range out.AB {
		for j := range out.AB[i] {
			out.AB[i][j] += l * bb[i][j]
		}
	}
	return out
}

// of returns the covariance of A and of B with a component.
func (s *Scatter) of(k along) along {
	return along{
		s.AA.Apply(k.a).Add(apply(s.AB, k.b)),
		apply(turned(s.AB), k.a).Add(s.BB.Apply(k.b)),
	}
}
