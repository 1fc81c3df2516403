package wheel_test

import (
	"fmt"

	"pintwelve/core/clock"
	"pintwelve/core/wheel"
)

// A disc 100 mm across and 500 mm wide is half a metre of round bar: 61.65 kg/m
// in EN 10060 and the handbooks (value from memory).
func ExampleWheel_Section() {
	section, err := wheel.Wheel{DiameterMM: 100, WidthMM: 500}.Section()
	if err != nil {
		fmt.Println(err)
		return
	}
	metal, err := section.Metal(7850)
	fmt.Printf("%.2f kg, %.5f kg·m², %v\n", metal.MassG/1000, metal.InertiaGMM2/1e9, err)
	// Output: 30.83 kg, 0.03853 kg·m², <nil>
}

// A 12 mm drill of 118°, 10 mm to the shoulder, takes out its cylinder and a
// third of the same across the point’s 3.6 mm.
func ExampleHole_Metal() {
	hole := wheel.Hole{At: clock.Polar(60, 6), DiameterMM: 12, DepthMM: 10, PointDeg: 118}
	metal, err := hole.Metal(7850)
	fmt.Printf("point %.2f mm, %.2f g, %.0f g·mm at %.0f, %v\n", hole.PointMM(), metal.MassG, metal.MomentGMM.Len(), metal.MomentGMM.Hour(), err)
	// Output: point 3.61 mm, 9.95 g, 597 g·mm at 6, <nil>
}
