package balance_test

import (
	"fmt"

	"pintwelve/core/balance"
	"pintwelve/core/clock"
)

// single is a single's parts: reciprocating 550 g, rotating 760 g, of which the
// pin is 420 g.
var single = balance.Parts{
	Cylinders: []balance.Cylinder{{
		PistonG: 300, RingsG: 20, GudgeonPinG: 100, ClipsG: 2, Rod: balance.Rod{SmallG: 128, BigG: 340},
	}},
	CrankpinG: 420,
}

// 202 g hung at the small end leaves the crank indifferent: (202 + 128)/550 is
// 60 %. For 66 % come off 0.06 × 550 g at the throw of 40 mm, at the pin.
func ExampleJob() {
	job := balance.Job{
		Before: single, After: single, StepG: 1, ThrowMM: 40, Target: 0.66,
		Weighed: []balance.Weighing{{Rods: true, HungG: 202}},
	}
	found, err := job.Standing()
	if err != nil {
		fmt.Println(err)
		return
	}
	off, err := job.Correct()
	if err != nil {
		fmt.Println(err)
		return
	}
	left, err := job.Left(off[0].GMM)
	fmt.Printf("found %.1f ± %.1f %%\n", 100*found.Factor.X, 100*found.Factor.PM())
	fmt.Printf("take off %.0f g·mm at %.0f\n", off[0].GMM.Len(), off[0].GMM.Hour())
	fmt.Printf("left %.1f %%, %v\n", 100*left.Factor.X, err)
	// Output:
	// found 60.0 ± 0.2 %
	// take off 1320 g·mm at 0
	// left 66.0 %, <nil>
}

// The unbalanced force of a single whose crank carries two thirds of 50 kg, at
// 240 rev/min and a throw of 150 mm, 60° past top dead centre: 2847 N as the
// textbook's formula gives it.
func ExampleEngine_Loop() {
	e := balance.Engine{ThrowMM: 150, RodMM: 600, Factor: 2.0 / 3, Bores: []balance.Bore{{RecG: 50e3}}}
	loop, err := e.Loop(balance.Primary, 6, 240)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f N\n", loop[1].Size())
	// Output: 2847 N
}

// G 6.3 of ISO 21940-11 permits a crank of 10 kg at 3000 rev/min 6.3/(100 π) mm.
func ExamplePermissible() {
	gmm, err := balance.Permissible(6.3, 3000, 10)
	fmt.Printf("%.0f g·mm, %v\n", gmm, err)
	// Output: 201 g·mm, <nil>
}

// A weight of 5 g at 80 mm straight opposite makes a crank indifferent that
// settles heavy at 3.
func ExampleHeavySpot() {
	h := balance.HeavySpot{Hour: 3, From: clock.Left, WeightG: 5, RadiusMM: 80}
	fmt.Printf("%.0f g·mm towards 3\n", h.GMM().N)
	// Output: 400 g·mm towards 3
}
