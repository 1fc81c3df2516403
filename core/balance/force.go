package balance

import (
	"math"

	"pintwelve/core/bound"
)

// Bore is a cylinder as it shakes the frame.
type Bore struct {
	BankRad, RecG float64
}

// Engine is cylinders on one crankpin and the factor that the crank is
// balanced to.
type Engine struct {
	ThrowMM, RodMM float64
	Bores          []Bore
	Factor         float64
}

// Force is a force on the frame, N: along the bore of bank angle 0, away from
// the shaft, and across it, the way the crank turns from there.
type Force struct{ AlongN, AcrossN float64 }

// Size returns the size of the force, N.
func (f Force) Size() float64 { return math.Hypot(f.AlongN, f.AcrossN) }

// Turned returns the force in axes of the frame that the bore of bank angle 0
// leans from by rad, the way the crank turns: the first axis, then the second,
// a quarter turn on.
func (f Force) Turned(rad float64) Force {
	sin, cos := math.Sincos(rad)
	return Force{f.AlongN*cos - f.AcrossN*sin, f.AlongN*sin + f.AcrossN*cos}
}

// leastRod is the shortest rod for a throw of 1: below it the piston would
// hardly clear the wheels, and the motion runs away.
const leastRod = 1.1

// Check returns a *Fault for the first figure that can't be.
func (e Engine) Check() error {
	if err := bound.First(
		above(Throw, e.ThrowMM, 0, MostMM),
		within(RodLength, e.RodMM, leastRod*e.ThrowMM, 100*e.ThrowMM),
		within(TargetFactor, e.Factor, LeastFound, MostFactor),
		within(Cylinders, float64(len(e.Bores)), 1, 12),
	); err != nil {
		return err
	}
	for i, b := range e.Bores {
		if err := bound.First(
			withinItem(Bank, i, b.BankRad, -2*math.Pi, 2*math.Pi),
			withinItem(Reciprocating, i, b.RecG, 1e-3, MostG),
		); err != nil {
			return err
		}
	}
	return nil
}

// mostAngle keeps the sine of an angle meaningful.
const mostAngle = 1e6

// MostRPM is the fastest engine taken.
const MostRPM = 30000

func checkSpeed(rpm float64) error { return above(Speed, rpm, 0, MostRPM) }

// omega returns rad/s.
func omega(rpm float64) float64 { return rpm * math.Pi / 30 }

// newtons is R ω² for 1 g, in N.
func (e Engine) newtons(rpm float64) float64 {
	const metres, kilograms = 1e-3, 1e-3
	return e.ThrowMM * metres * kilograms * omega(rpm) * omega(rpm)
}

func (f Force) scale(k float64) Force { return Force{k * f.AlongN, k * f.AcrossN} }

// unit is F/(R ω²), g: F = Σ mᵢ (−ẍᵢ) uᵢ − β (Σ mᵢ) R ω² (cos θ, sin θ),
// uᵢ = (cos γᵢ, sin γᵢ), MODEL §8.
func (e Engine) unit(m Motion, theta float64) Force {
	var f Force
	total := 0.0
	for _, b := range e.Bores {
		sin, cos := math.Sincos(b.BankRad)
		pull := b.RecG * m.pull(e.ThrowMM/e.RodMM, theta-b.BankRad)
		f.AlongN += pull * cos
		f.AcrossN += pull * sin
		total += b.RecG
	}
	sin, cos := math.Sincos(theta)
	f.AlongN -= e.Factor * total * cos
	f.AcrossN -= e.Factor * total * sin
	return f
}

// Loop returns the force at n even steps of one turn of the crank from theta 0,
// 3 to 3600 of them, or a *Fault.
func (e Engine) Loop(m Motion, n int, rpm float64) ([]Force, error) {
	if err := bound.First(e.Check(), checkSpeed(rpm), within(Points, float64(n), 3, 3600)); err != nil {
		return nil, err
	}
	k := e.newtons(rpm)
	loop := make([]Force, n)
	for i := range loop {
		loop[i] = e.unit(m, 2*math.Pi*float64(i)/float64(n)).scale(k)
	}
	return loop, nil
}
