package flywheel

import (
	"math"

	"pintwelve/core/bound"
	"pintwelve/core/wheel"
)

// Crank is a whole crank whose wheels have been cut.
type Crank struct {
	Wheels    []Account
	OtherG    float64 // what else turns with it: shafts, pin, big end, drive
	OtherGMM2 float64
	IdleRPM   float64   // 0 when not asked
	Gears     []float64 // turns of the crank to one of the road wheel, each gear
	TyreMM    float64   // rolling radius; 0 when not asked
}

// Effect is what lightening does.
type Effect struct {
	BeforeG, AfterG       float64
	BeforeGMM2, AfterGMM2 float64
	// Ratio is inertia before over after. Clutch out, the crank picks up that
	// many times as fast for the same torque; at the same idle its speed swings
	// that many times as wide.
	Ratio       float64
	IdleRPM     float64 // that is as steady as the old idle was
	Felt        []Felt  // one a gear
	MomentGMM   float64 // change of balance, g·mm
	Symmetrical bool    // the balance factor stays: so of each wheel and of the whole
}

// Felt is the weight on the road that the crank's inertia feels like, kg.
type Felt struct{ BeforeKG, AfterKG float64 }

// Effect works out what the cuts on all wheels together do.
func (c Crank) Effect() (Effect, error) {
	if err := c.check(); err != nil {
		return Effect{}, err
	}
	before := wheel.Metal{MassG: c.OtherG, InertiaGMM2: c.OtherGMM2}
	after := before
	each := true
	for _, a := range c.Wheels {
		before, after = before.Add(a.Before), after.Add(a.After)
		each = each && a.Symmetrical()
	}
	if err := bound.First(within(Inertia, before.InertiaGMM2, 1, mostInertia), within(Inertia, after.InertiaGMM2, 1, mostInertia)); err != nil {
		return Effect{}, err
	}
	e := Effect{
		BeforeG: before.MassG, AfterG: after.MassG,
		BeforeGMM2: before.InertiaGMM2, AfterGMM2: after.InertiaGMM2,
		Ratio:     before.InertiaGMM2 / after.InertiaGMM2,
		MomentGMM: before.MomentGMM.Sub(after.MomentGMM).Len(),
	}
	e.Symmetrical = each && e.MomentGMM <= FeltGMM
	e.IdleRPM = c.IdleRPM * math.Sqrt(e.Ratio) // MODEL §9, n₂ = n₁ √(J₁/J₂)
	if c.TyreMM > 0 {
		for _, gear := range c.Gears {
			e.Felt = append(e.Felt, Felt{felt(before, gear, c.TyreMM), felt(after, gear, c.TyreMM)})
		}
	}
	return e, nil
}

// felt is J (gear/wheel radius)², MODEL §9, in kg.
func felt(m wheel.Metal, gear, tyreMM float64) float64 {
	return m.InertiaGMM2 * gear / tyreMM * gear / tyreMM / 1000
}

const mostInertia = 1e15 // g·mm², a tonne at a metre

func (c Crank) check() error {
	err := bound.First(within(Mass, c.OtherG, 0, 1e9), within(Inertia, c.OtherGMM2, 0, mostInertia),
		within(IdleSpeed, c.IdleRPM, 0, 1e5))
	if err == nil && c.TyreMM != 0 {
		err = within(TyreRadius, c.TyreMM, 10, 5000)
	}
	for i, g := range c.Gears {
		err = bound.First(err, withinItem(Gear, i, g, 0.01, 1000))
	}
	return err
}
