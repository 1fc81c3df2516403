package balance

import (
	"math"
	"math/cmplx"

	"pintwelve/core/bound"
	"pintwelve/core/clock"
)

// Pin is a pin of a crank of several throws, one cylinder on it, the cylinders
// all in line.
type Pin struct {
	AtMM           float64 // along the shafts, from any one place
	Hour           float64 // with the first pin at 12, seen from the left end
	ThrowMM, RodMM float64
	RecG, RotG     float64
}

// Web is what a web carries against its pin: mass times radius, g·mm, towards the hour
// where it lies with the first pin at 12.
type Web struct{ AtMM, GMM, Hour float64 }

// WebGMM returns what each of a pin's two webs carries at a factor, half of
// m_rot + β m_rec at the throw opposite the pin.
func (p *Pin) WebGMM(factor float64) Web {
	return Web{p.AtMM, (p.RotG + factor*p.RecG) * p.ThrowMM / 2, p.Hour + 6}
}

// InLine is an engine of several throws, its couples taken about AboutMM.
type InLine struct {
	Pins    []Pin
	Webs    []Web
	AboutMM float64
}

// Harmonic is a force [N] or a couple [N·m] on the frame over a turn, real along the bores,
// imaginary across them: at crank angle θ the bores have the real part of Bore e^{iθ}, the
// primary, and of Twice e^{2iθ}, the secondary, and Round e^{iθ} goes round with the crank.
type Harmonic struct{ Bore, Round, Twice complex128 }

// Along returns the greatest of the primary along the bores.
func (h *Harmonic) Along() float64 { return cmplx.Abs(h.Bore + h.Round) }

// Across returns the greatest of the primary across the bores.
func (h *Harmonic) Across() float64 { return cmplx.Abs(h.Round) }

// Primary returns the greatest of the primary, whichever way it points: a part that goes
// round one way, Round + Bore/2, and one the other, Bore/2, once stand alike.
func (h *Harmonic) Primary() float64 {
	half := 0.5 * h.Bore
	return cmplx.Abs(h.Round+half) + cmplx.Abs(half)
}

// Secondary returns the greatest of the secondary.
func (h *Harmonic) Secondary() float64 { return cmplx.Abs(h.Twice) }

func (h *Harmonic) add(turn complex128, bore, round, twice float64) {
	h.Bore += complex(bore, 0) * turn
	h.Round += complex(round, 0) * turn
	h.Twice += complex(twice, 0) * turn * turn
}

// Shaking returns what shakes the frame at a speed, or a *Fault, whose Item is the pin.
func (e *InLine) Shaking(rpm float64) (force, couple Harmonic, err error) {
	newtons := omega(rpm) * omega(rpm) * 1e-6 // of 1 g·mm
	put := func(atMM, hour, bore, round, twice float64) {
		turn, metres := cmplx.Rect(1, clock.Radians(hour)), (atMM-e.AboutMM)/1000*newtons
		force.add(turn, newtons*bore, newtons*round, newtons*twice)
		couple.add(turn, metres*bore, metres*round, metres*twice)
	}
	for i := range e.Pins {
		p := &e.Pins[i]
		if err := withinItem(RodLength, i, p.RodMM, leastRod*p.ThrowMM, 100*p.ThrowMM); err != nil {
			return force, couple, err
		}
		bore := p.RecG * p.ThrowMM
		put(p.AtMM, p.Hour, bore, p.RotG*p.ThrowMM, bore*p.ThrowMM/p.RodMM)
	}
	for _, w := range e.Webs {
		put(w.AtMM, w.Hour, 0, w.GMM, 0)
	}
	// A figure that is none, or endless, leaves no number here.
	all := force.Primary() + couple.Primary() + couple.Secondary()
	return force, couple, bound.First(checkSpeed(rpm), within(Unbalance, all, 0, math.MaxFloat64))
}
