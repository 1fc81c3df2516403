package lsq_test

import (
	"fmt"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// A straight line through three points, and what is left of them.
func ExampleFit() {
	line := lsq.New(2)
	for _, p := range [][2]float64{{0, 1}, {1, 3}, {2, 4}} {
		line.Add([]float64{1, p[0]}, p[1])
	}
	r, ok := line.Solve()
	fmt.Printf("%.4f + %.1f x, SSE %.4f with %d degree of freedom, %v\n", r.X[0], r.X[1], r.SSE, r.Nu, ok)
	// Output: 1.1667 + 1.5 x, SSE 0.1667 with 1 degree of freedom, true
}

// The two-sided 95 % quantiles that every table of t prints.
func ExampleStudent95() {
	fmt.Printf("%.3f %.3f %.3f\n", lsq.Student95(1), lsq.Student95(3), lsq.Student95(0))
	// Output: 12.706 3.182 1.960
}

// A vector of 3 with a standard deviation of 1 each way differs significantly
// from 0, one of 2 does not: the radius is √(2 ln 20) = 2.45.
func ExampleUncertainty_Significant() {
	s := lsq.Uncertainty{Cov: lsq.Round(1)}
	fmt.Println(s.Significant(clock.Vec{T: 3}), s.Significant(clock.Vec{N: 2}))
	// Output: true false
}
