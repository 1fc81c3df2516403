package tryout_test

import (
	"fmt"

	"pintwelve/core/clock"
	"pintwelve/core/tryout"
)

// A twist of 0.1 mm at the pin is shared by both halves: half-way to it each stands
// 0.025 mm out, which is 0.05 mm of run-out.
func ExampleMade_RunOut() {
	c := tryout.Crank{Throw: 40, Rim: 80, Pin: 120, Support: [2]float64{0, 240}, Dial: [2]float64{60, 180}}
	m, err := tryout.New(c, tryout.Rough, 1, tryout.Start{D: clock.Vec{N: 0.1}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f %.3f mm\n", m.RunOut(clock.Left), m.RunOut(clock.Right))
	// Output: 0.050 0.050 mm
}
