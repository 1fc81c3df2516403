package balance

import (
	"math"

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

// Web is what a web carries against its pin: mass times radius, g·mm, towards where
// it lies with the first pin at 12.
type Web struct {
	AtMM float64
	GMM  clock.Vec
}

// WebGMM returns what each of a pin's two webs carries at a factor, half of
// m_rot + β m_rec at the throw opposite the pin.
func (p *Pin) WebGMM(factor float64) clock.Vec {
	return clock.Polar((p.RotG+factor*p.RecG)*p.ThrowMM/2, p.Hour+6)
}

// InLine is an engine of several throws, its couples taken about AboutMM.
type InLine struct {
	Pins    []Pin
	Webs    []Web
	AboutMM float64
}

// Harmonic is a force [N] or a couple [N·m] of one order n on the frame: at crank
// angle θ along the bores the cosine part of what is Bore + Round at θ = 0 and turns
// by n θ, across them the sine part of Round.
type Harmonic struct{ Bore, Round clock.Vec }

// Along and Across return the greatest of a turn along the bores and across them.
func (h Harmonic) Along() float64 { return h.Bore.Add(h.Round).Len() }

// Across is Along's other axis.
func (h Harmonic) Across() float64 { return h.Round.Len() }

// Greatest returns the greatest of a turn, whichever way it points: a part that goes
// round one way, Round + Bore/2, and one the other, Bore/2, once stand alike.
func (h Harmonic) Greatest() float64 {
	half := h.Bore.Scale(0.5)
	return h.Round.Add(half).Len() + half.Len()
}

func (h *Harmonic) add(bore, round clock.Vec) {
	h.Bore, h.Round = h.Bore.Add(bore), h.Round.Add(round)
}

func (h Harmonic) scale(k float64) Harmonic { return Harmonic{h.Bore.Scale(k), h.Round.Scale(k)} }

// Order is the force and the couple of an order.
type Order struct{ ForceN, CoupleNM Harmonic }

// add takes up g·mm at a place so far from where couples are taken about.
func (o *Order) add(mm float64, bore, round clock.Vec) {
	o.ForceN.add(bore, round)
	o.CoupleNM.add(bore.Scale(mm), round.Scale(mm))
}

// Shaking returns what shakes the frame once and twice a turn, or a *Fault.
func (e *InLine) Shaking(rpm float64) (primary, secondary Order, err error) {
	if err := bound.First(e.check(), checkSpeed(rpm)); err != nil {
		return primary, secondary, err
	}
	for i := range e.Pins {
		p := &e.Pins[i]
		mm, unit := p.AtMM-e.AboutMM, clock.Polar(p.ThrowMM, p.Hour)
		primary.add(mm, unit.Scale(p.RecG), unit.Scale(p.RotG))
		secondary.add(mm, clock.Polar(p.RecG*p.ThrowMM*p.ThrowMM/p.RodMM, 2*p.Hour), clock.Vec{})
	}
	for _, w := range e.Webs {
		primary.add(w.AtMM-e.AboutMM, clock.Vec{}, w.GMM)
	}
	return primary.at(rpm), secondary.at(rpm), nil
}

// at turns g·mm and g·mm² into what they pull at a speed.
func (o Order) at(rpm float64) Order {
	const metres, kilograms = 1e-3, 1e-3
	k := metres * kilograms * omega(rpm) * omega(rpm)
	return Order{o.ForceN.scale(k), o.CoupleNM.scale(k * metres)}
}

// check returns a *Fault for the first figure that can't be; its Item is the pin.
func (e *InLine) check() error {
	err := within(Cylinders, float64(len(e.Pins)), 1, 12)
	for i := 0; err == nil && i < len(e.Pins); i++ {
		p := &e.Pins[i]
		err = bound.First(
			withinItem(Throw, i, p.ThrowMM, math.Nextafter(0, 1), MostMM),
			withinItem(RodLength, i, p.RodMM, leastRod*p.ThrowMM, 100*p.ThrowMM),
			withinItem(Reciprocating, i, p.RecG, 1e-3, MostG),
			withinItem(Rotating, i, p.RotG, 0, MostG),
			withinItem(Place, i, p.AtMM-e.AboutMM, -MostMM, MostMM),
			withinItem(Angle, i, p.Hour, -mostAngle, mostAngle),
		)
	}
	for i := 0; err == nil && i < len(e.Webs); i++ {
		err = bound.First(
			withinItem(Unbalance, i, e.Webs[i].GMM.Len(), 0, MostG*MostMM),
			withinItem(Place, i, e.Webs[i].AtMM-e.AboutMM, -MostMM, MostMM),
		)
	}
	return err
}
