package clock_test

import (
	"fmt"

	"pintwelve/core/clock"
)

// What the left end reads at 3, the right end reads at 9.
func ExampleSeenFrom() {
	v := clock.Vec{T: 0, N: 2}
	fmt.Println(v.Hour(), clock.SeenFrom(clock.Right, v.Hour()))
	// Output: 3 9
}
