package crank

import (
	"math"

	"pintwelve/core/clock"
)

// Axes is how the two shafts lie about the axis that the crank turns on: the
// axis of half h is A[h] + B[h] (x − Pin), mm and mm per mm.
type Axes struct {
	Pin  float64
	A, B [2]clock.Vec
}

// At returns the eccentricity [mm] of a half at x [mm].
func (a *Axes) At(half clock.End, x float64) clock.Vec {
	return a.A[half].Add(a.B[half].Scale(x - a.Pin))
}

// RunOut returns the run-out [mm] of a half at x [mm], the full movement of a
// dial on a round shaft: twice the eccentricity (ISO 1101, ASME Y14.5).
func (a *Axes) RunOut(half clock.End, x float64) float64 { return 2 * a.At(half, x).Len() }

// Tilt returns how far a journal of a half leans from the axis it turns on, in
// minutes of arc.
func (a *Axes) Tilt(half clock.End) float64 { return a.B[half].Len() * arcmin }

// arcmin is the minutes of arc in a radian.
const arcmin = 180 * 60 / math.Pi

// hang returns the axes of a crank whose right half sits at d and g from the
// left, held at the supports x where its axes stand at y (MODEL §4,
// "forwards": y_R = y_L + d − g (x − m)).
func hang(pin float64, x [2]float64, y [2]clock.Vec, d, g clock.Vec) Axes {
	at, bends := [1]float64{pin}, [1]Bend{{d, g}}
	rests := [2]Rest{{0, x[clock.Left]}, {1, x[clock.Right]}}
	left := lay(at[:], bends[:], rests, y, 0)
	a := left.at(pin)
	return Axes{Pin: pin, A: [2]clock.Vec{a, a.Add(d)}, B: [2]clock.Vec{left.b, left.b.Sub(g)}}
}

// After returns the axes once the halves have been moved to sit at d and g, the
// crank hung again as before: the supports keep the y found for them.
func (s *Pose) After(d, g clock.Vec) Axes {
	return hang(s.Crank.Pin, s.Crank.Support, s.Held, d, g)
}

// Running returns the axes of the crank in its own bearings, the halves sitting
// at d and g (MODEL §5). Its tilts are those the bearings see.
func (s *Pose) Running(d, g clock.Vec) Axes {
	return hang(s.Crank.Pin, s.Crank.Bearing, [2]clock.Vec{}, d, g)
}

// Forecast is the eccentricity [mm] of one place now and after each move alone
// and both, the crank hung again as before. The needle's full movement is twice
// each length.
type Forecast struct{ Now, Strike, Gap, Both clock.Vec }

// Forecast returns what a dial on a half at x [mm] shows now and should show
// after the strike (d_n 0), after the gap is closed (g 0) and after both.
func (s *Pose) Forecast(half clock.End, x float64) Forecast {
	now := s.At(half, x)
	t := s.throughSupports(half, x)
	strike := clock.Vec{N: -s.D.N}.Scale(t.d)
	gap := s.G.Scale(-t.g)
	return Forecast{Now: now, Strike: now.Add(strike), Gap: now.Add(gap), Both: now.Add(strike).Add(gap)}
}

// share is how much of d and of g [per mm] a place on a half shows.
type share struct{ d, g float64 }

// throughSupports returns what a place shows of d and g while the crank turns
// on its supports.
func (s *Pose) throughSupports(half clock.End, x float64) share {
	return shareOf(s.Crank.Pin, s.Crank.Support, half, x)
}

// shareOf is hang solved for one place: with y 0, y(x) = share.d d + share.g g.
func shareOf(pin float64, held [2]float64, half clock.End, x float64) share {
	xl, xr := held[clock.Left], held[clock.Right]
	k := (x - xl) / (xr - xl)
	s := share{d: -k, g: k * (xr - pin)}
	if half == clock.Right {
		s.d++
		s.g -= x - pin
	}
	return s
}
