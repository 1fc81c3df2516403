package balance

import (
	"math"

	"pintwelve/core/bound"
)

// Peak is the greatest of something over a turn and where the crank stands then.
type Peak struct {
	N     float64 // newtons
	Theta float64 // rad from the line of bank angle 0, in [0, 2π)
}

// Peaks are the greatest forces of a turn at one speed.
type Peaks struct {
	RPM           float64
	Size          Peak // of the force, whichever way it points
	Along, Across Peak // of its parts, whichever sign, along axes the frame has
}

// Peaks returns the peaks at each speed, in axes that the bore of bank angle 0
// leans from by leanRad as Force.Turned says, or a *Fault.
func (e Engine) Peaks(m Motion, leanRad float64, rpm ...float64) ([]Peaks, error) {
	if err := bound.First(e.Check(), within(Angle, leanRad, -mostAngle, mostAngle)); err != nil {
		return nil, err
	}
	for _, n := range rpm {
		if err := checkSpeed(n); err != nil {
			return nil, err
		}
	}
	at := func(part func(Force) float64) Peak {
		return greatest(func(theta float64) float64 { return part(e.unit(m, theta).Turned(leanRad)) })
	}
	one := Peaks{
		Size:   at(Force.Size),
		Along:  at(func(f Force) float64 { return math.Abs(f.AlongN) }),
		Across: at(func(f Force) float64 { return math.Abs(f.AcrossN) }),
	}
	all := make([]Peaks, len(rpm))
	for i, n := range rpm {
		k := e.newtons(n)
		all[i] = Peaks{n, one.Size.scale(k), one.Along.scale(k), one.Across.scale(k)}
	}
	return all, nil
}

func (p Peak) scale(k float64) Peak { return Peak{k * p.N, p.Theta} }

// greatest finds the peak of f over a turn: at even steps, then by the golden
// section about each step that its neighbours don't top.
func greatest(f func(theta float64) float64) Peak {
	const steps = 360
	const step = 2 * math.Pi / steps
	var at [steps]float64
	for i := range at {
		at[i] = f(float64(i) * step)
	}
	best := Peak{N: math.Inf(-1)}
	for i, y := range at {
		if y < at[(i+steps-1)%steps] || y < at[(i+1)%steps] {
			continue
		}
		theta := golden(f, float64(i-1)*step, float64(i+1)*step)
		if y := f(theta); y > best.N {
			best = Peak{y, math.Mod(theta+2*math.Pi, 2*math.Pi)}
		}
	}
	return best
}

// golden returns where f is greatest between lo and hi, f having one top there.
func golden(f func(float64) float64, lo, hi float64) float64 {
	ratio := (math.Sqrt(5) - 1) / 2
	a, b := hi-ratio*(hi-lo), lo+ratio*(hi-lo)
	fa, fb := f(a), f(b)
	for hi-lo > 1e-9 {
		if fa >= fb {
			hi, b, fb = b, a, fa
			a = hi - ratio*(hi-lo)
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + ratio*(hi-lo)
			fb = f(b)
		}
	}
	return (lo + hi) / 2
}
