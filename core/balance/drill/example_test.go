package drill_test

import (
	"fmt"
	"math"

	"pintwelve/core/balance/drill"
	"pintwelve/core/clock"
)

// A moment of 4000 g·mm off at 6, with drills by half millimetres.
func ExampleTask_Plan() {
	t := drill.Task{
		Zone:     drill.Zone{InMM: 52, OutMM: 90, Hour: 6, HalfRad: math.Pi / 3},
		DrillsMM: drill.Metric(5, 12, 0.5), PointDeg: 118, ThickMM: 22, WallMM: 3,
		DensityKGM3: 7850, MostHoles: 6, ToleranceGMM: 20, Remove: clock.Polar(4000, 6),
	}
	p, err := t.Plan()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, h := range p.Holes {
		fmt.Printf("drill %.1f mm, %.0f mm from the shaft at %.2f, %.1f mm deep: %.1f g\n", h.DiameterMM, h.RadiusMM, h.Hour, h.DepthMM, h.MassG)
	}
	fmt.Printf("%d holes, reached %v, %.0f g·mm left\n", len(p.Holes), p.Reached, p.LeftGMM.Len())
	// Output:
	// drill 11.5 mm, 76 mm from the shaft at 5.50, 22.0 mm deep: 17.9 g
	// drill 11.5 mm, 76 mm from the shaft at 6.00, 22.0 mm deep: 17.9 g
	// drill 11.5 mm, 76 mm from the shaft at 6.50, 22.0 mm deep: 17.9 g
	// 3 holes, reached true, 3 g·mm left
}

// What one limit alone would have to be, where the target is out of reach.
func ExampleTask_Relaxations() {
	t := drill.Task{
		Zone:     drill.Zone{InMM: 52, OutMM: 90, Hour: 6, HalfRad: math.Pi / 3},
		DrillsMM: []float64{8}, PointDeg: 118, ThickMM: 22, WallMM: 3,
		DensityKGM3: 7850, MostHoles: 2, ToleranceGMM: 20, Remove: clock.Polar(1500, 6),
	}
	relaxed, err := t.Relaxations()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range relaxed {
		switch r.Limit {
		case drill.MoreHoles:
			fmt.Printf("%.0f holes\n", r.Need)
		case drill.BiggerDrill:
			fmt.Printf("a drill of %.0f mm\n", r.Need)
		}
	}
	// Output:
	// 3 holes
	// a drill of 9 mm
}
