package fit_test

import (
	"fmt"

	"pintwelve/core/fit"
)

// A pin of 25.04 mm in an eye of 25 mm. For one steel and a solid pin Lamé's
// pressure is E δ (D² − d²)/(2 d D²).
func ExamplePress_Joint() {
	p := fit.Press{
		DiameterMM: 25.04, InterferenceMM: 0.04, LengthMM: 20, HubMM: 60, Friction: 0.1, Hub: fit.Steel(), Pin: fit.Steel(),
	}
	j, err := p.Joint()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f MPa, holds %.0f N·m, comes out at %.0f N\n", j.PressureMPa, j.HoldNm, j.PushOutN)
	// Output: 136.5 MPa, holds 269 N·m, comes out at 21482 N
}

// The end float as measured, and at 90 °C, the shop at 20 °C: light alloy grows
// more than steel.
func ExampleEndFloat_Float() {
	e := fit.EndFloat{FacesMM: 100, CrankMM: 99.8, CasePerK: fit.LightAlloy().AlphaPerK, CrankPerK: fit.Steel().AlphaPerK}
	f, err := e.Float(70, 70)
	fmt.Printf("%.3f mm cold, %.3f mm hot, %v\n", f.ColdMM, f.HotMM, err)
	// Output: 0.200 mm cold, 0.274 mm hot, <nil>
}

// Which shims leave 0.1 to 0.3 mm between faces 100 mm apart.
func ExampleShimming_Choose() {
	s := fit.Shimming{
		FacesMM: 100, CrankMM: 98.9, LeastMM: 0.1, WantMM: 0.2, MostMM: 0.3, ASide: 2,
		Shims: []fit.Shim{{MM: 0.1}, {MM: 0.3}, {MM: 0.5}},
	}
	chosen, err := s.Choose()
	fmt.Printf("left %v, right %v: %.1f mm, %v\n", chosen.Left, chosen.Right, chosen.ColdMM, err)
	// Output: left [], right [0.5 0.5]: 0.1 mm, <nil>
}
