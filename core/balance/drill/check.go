package drill

import (
	"math"
	"slices"
	"sort"

	"pintwelve/core/bound"
	"pintwelve/core/wheel"
)

// Bounds on a task. The steps' lower bounds keep the grid small enough to
// search whole; the angles fit one word of bits.
const (
	LeastMM         = 0.1  // smallest length but a wall
	MostMM          = 2000 // longest length
	MostDrills      = 100
	MostKeepOuts    = 100
	MostHoles       = 16
	MostRadii       = 200
	LeastAngleStep  = 1.5  // degrees
	MostMomentGMM   = 1e7  // to remove from one wheel
	LeastTolerance  = 0.01 // g·mm
	leastOfTheWhole = 5e-4 // the tolerance counts as this part of the moment at least: no stop is truer
)

// withDefaults returns t with steps filled in and drills in order.
func (t Task) withDefaults() Task {
	t.RadiusStepMM = or(t.RadiusStepMM, DefaultRadiusStepMM)
	t.AngleStepDeg = or(t.AngleStepDeg, DefaultAngleStepDeg)
	t.DepthStepMM = or(t.DepthStepMM, DefaultDepthStepMM)
	t.PointDeg = or(t.PointDeg, 180)
	t.DrillsMM = slices.Clone(t.DrillsMM)
	sort.SliceStable(t.DrillsMM, func(i, j int) bool { return t.DrillsMM[i] < t.DrillsMM[j] })
	t.DrillsMM = slices.Compact(t.DrillsMM)
	return t
}

func or(x, instead float64) float64 {
	if x == 0 {
		return instead
	}
	return x
}

// check returns a *Fault for the first figure that can't be; t has its defaults.
func (t Task) check() error {
	if err := bound.First(
		within(ZoneIn, t.InMM, 0, MostMM),
		within(ZoneOut, t.OutMM, t.InMM, MostMM),
		within(ZoneHour, t.Hour, 0, 12),
		within(ZoneHalf, t.HalfRad, 0, math.Pi+1e-9),
		within(Point, t.PointDeg, wheel.LeastPointDeg, 180),
		within(Bottoms, float64(t.Bottom), 0, float64(BlindOnly)),
		within(Thick, t.ThickMM, LeastMM, MostMM),
		within(Wall, t.WallMM, 0, MostMM),
		within(Depth, t.MostDepthMM, 0, t.ThickMM),
		within(Density, t.DensityKGM3, 1, wheel.MostDensity),
		within(Plug, t.PlugKGM3, 0, wheel.MostDensity),
		within(Holes, float64(t.MostHoles), 1, MostHoles),
		within(RadiusStep, t.RadiusStepMM, (t.OutMM-t.InMM)/MostRadii, MostMM),
		within(AngleStep, t.AngleStepDeg, LeastAngleStep, 90),
		within(DepthStep, t.DepthStepMM, t.ThickMM/MostRadii, MostMM),
		within(Tolerance, t.ToleranceGMM, LeastTolerance, MostMomentGMM),
		within(Remove, t.Remove.Len(), 0, MostMomentGMM),
	); err != nil {
		return err
	}
	return bound.First(t.checkDrills(), t.checkKeep(), t.checkPlug())
}

func (t Task) checkDrills() error {
	if err := within(Drills, float64(len(t.DrillsMM)), 1, MostDrills); err != nil {
		return err
	}
	for i, d := range t.DrillsMM {
		if err := withinItem(Drill, i, d, LeastMM, MostMM); err != nil {
			return err
		}
	}
	return nil
}

func (t Task) checkKeep() error {
	if err := within(KeepOuts, float64(len(t.Keep)), 0, MostKeepOuts); err != nil {
		return err
	}
	for i, k := range t.Keep {
		if err := bound.First(
			withinItem(KeepAt, i, k.At.Len(), 0, MostMM),
			withinItem(KeepAcross, i, k.DiameterMM, 0, MostMM),
		); err != nil {
			return err
		}
	}
	return nil
}

// checkPlug returns a *Fault for a plug that hardly differs from the wheel.
func (t Task) checkPlug() error {
	const alike = 0.02
	if t.PlugKGM3 == 0 || math.Abs(t.PlugKGM3-t.DensityKGM3) > alike*t.DensityKGM3 {
		return nil
	}
	return &Fault{Field: Plug, Got: t.PlugKGM3, Least: (1 + alike) * t.DensityKGM3, Most: wheel.MostDensity}
}
