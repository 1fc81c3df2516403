package flywheel_test

import (
	"fmt"

	"pintwelve/core/flywheel"
	"pintwelve/core/wheel"
)

// A recess between radii of 24 and 84 mm, as deep as takes 750 g off.
func ExamplePlan() {
	w := wheel.Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 24}
	recess := flywheel.Cut{Kind: flywheel.Recess, FromMM: 24, ToMM: 84}
	found, err := flywheel.Plan(w, 7850, recess, flywheel.VaryDepth, 750, flywheel.Least{WebMM: 10})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f mm deep, %.0f g and %.6f kg·m² off\n", found.Cut.DepthMM, found.Off.MassG, found.Off.InertiaGMM2/1e9)
	// Output: 4.69 mm deep, 750 g and 0.002862 kg·m² off
}

// A wheel of 5.4 kg swung 60 mm from its middle, 0.68 s there and back through 5°
// either way: m g a T₀²/4π² − m a².
func ExampleSwing_Inertia() {
	swing := flywheel.Swing{MassG: 5400, MassPM: 1, ArmMM: 60, ArmPM: 0.5, ReachMM: 100, PeriodS: 0.68, StartDeg: 5}
	s, err := swing.Inertia()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.5f ± %.5f kg·m²\n", s.InertiaGMM2/1e9, s.PM/1e9)
	// Output: 0.01774 ± 0.00011 kg·m²
}

// A plain steel disc of 200 mm with a bore of 24 mm at 6000 rev/min: by the
// textbook's disc ρω² ((3+ν)/4)(b² + (1−ν)/(3+ν) a²).
func ExampleHold() {
	section, err := wheel.Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 24}.Section()
	if err != nil {
		fmt.Println(err)
		return
	}
	steel, _ := flywheel.Steel.Material()
	held, err := flywheel.Hold(section, steel, 6000)
	fmt.Printf("rim %.1f m/s, %.1f MPa, holds %.0f times as much, %v\n", held.RimMS, held.DiscMPa, held.Margin, err)
	// Output: rim 62.8 m/s, 25.6 MPa, holds 18 times as much, <nil>
}
