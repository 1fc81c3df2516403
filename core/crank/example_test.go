package crank_test

import (
	"fmt"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
)

// Dials half-way from centre to pin, 0.1 mm of run-out each, high at opposite
// hours: by hand d = e_R l/a − e_L l/a is 0.2 mm of twist, and no gap.
func ExampleCrank_Solve() {
	c := crank.Crank{Throw: 40, Rim: 80, Pin: 100, Support: [2]float64{0, 200}, Bearing: [2]float64{50, 150}}
	stations := []crank.Station{
		{Piece: 0, At: 50, E: clock.Polar(0.05, 3)}, {Piece: 1, At: 150, E: clock.Polar(0.05, 9)},
	}
	pose, err := c.Solve(stations)
	if err != nil {
		fmt.Println(err)
		return
	}
	blow, other := pose.Strike()
	fmt.Printf("offset %.1f mm towards 9, gap slope %.4f\n", pose.D.Len(), pose.G.Len())
	fmt.Printf("strike the right wheel at %.0f or the left at %.0f\n", hourOf(blow, other, clock.Right), hourOf(blow, other, clock.Left))
	fmt.Printf("then the left needle shows %.3f mm\n", 2*pose.Forecast(clock.Left, 50).Strike.Len())
	// Output:
	// offset 0.2 mm towards 9, gap slope 0.0000
	// strike the right wheel at 9 or the left at 3
	// then the left needle shows 0.000 mm
}

func hourOf(a, b crank.Move, wheel clock.End) float64 {
	if a.Wheel == wheel {
		return a.Hour
	}
	return b.Hour
}
