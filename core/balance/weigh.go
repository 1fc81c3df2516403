package balance

import (
	"pintwelve/core/bound"
	"pintwelve/core/clock"
)

// What was on the knife-edges.
type What uint8

// The whole crank, its pin fitted, or one wheel alone.
const (
	Whole What = iota
	LeftWheel
	RightWheel
)

// HeavySpot is where what lies on the knife-edges settles, and the weight
// at a radius straight opposite that leaves it indifferent. No weight: it is
// indifferent as it is.
type HeavySpot struct {
	Hour              float64
	From              clock.End // that the hour is seen from
	WeightG, RadiusMM float64
}

// GMM returns the unbalance, g·mm, towards the heavy spot: U = w ρ, MODEL §8.
func (h HeavySpot) GMM() clock.Vec {
	return clock.Polar(h.WeightG*h.RadiusMM, clock.SeenFrom(h.From, h.Hour))
}

// Weighing is one reading on the knife-edges: a weight hung, and what heavy spot
// it leaves. With rods on, the weight hangs at the small ends; else it is a bob
// weight at the pin's place, itself included. A weight that had to be laid
// opposite the pin is negative, as it would count at the throw.
type Weighing struct {
	What What
	// Pin, Bearing and Rods were on a single wheel; the whole crank always has its pin.
	Pin, Bearing, Rods bool
	HungG              float64
	Heavy              HeavySpot
}

// pin is true where the crankpin turns with what is weighed.
func (w Weighing) pin() bool { return w.Pin || w.What == Whole }

// carriedG returns the weight that the pin carries while it is weighed.
func (w Weighing) carriedG(p Parts) float64 {
	small, big := p.EndsG()
	sum := w.HungG
	if w.pin() {
		sum += p.CrankpinG
	}
	if w.Bearing || w.Rods {
		sum += p.BearingG
	}
	if w.Rods {
		sum += small + big
	}
	return sum
}

// counterG returns what the wheels carry, as a weight at the pin: indifferent,
// they carry what hangs there; a heavy spot at 12 is what they don't.
func (w Weighing) counterG(p Parts, throwMM float64) float64 {
	return w.carriedG(p) - w.Heavy.GMM().T/throwMM
}

func (w Weighing) check(i int) error {
	if err := bound.First(
		withinItem(Hung, i, w.HungG, -MostG, MostG),
		withinItem(HeavyHour, i, w.Heavy.Hour, 0, 12),
		withinItem(HeavyWeight, i, w.Heavy.WeightG, 0, MostG),
		withinItem(HeavyRadius, i, w.Heavy.RadiusMM, 0, MostMM),
	); err != nil {
		return err
	}
	if w.Heavy.WeightG > 0 && w.Heavy.RadiusMM == 0 {
		return &Fault{Field: HeavyRadius, Item: i, Least: 1, Most: MostMM}
	}
	if !w.pin() && (w.Bearing || w.Rods) {
		return &Fault{Field: PinMissing, Item: i, Got: 0, Least: 1, Most: 1}
	}
	return nil
}

// checkWeighings returns a *Fault unless the weighings are one of the whole
// crank, of one wheel, or of each wheel with the pin in one of them at most.
func checkWeighings(ws []Weighing) error {
	for i, w := range ws {
		if err := w.check(i); err != nil {
			return err
		}
	}
	if len(ws) < 2 {
		return nil
	}
	if len(ws) > 2 || ws[0].What == Whole || ws[1].What == Whole || ws[0].What == ws[1].What {
		return &Fault{Field: Weighings, Got: float64(len(ws)), Least: 1, Most: 1}
	}
	if ws[0].Pin && ws[1].Pin {
		return &Fault{Field: PinCounted, Got: 2, Most: 1}
	}
	return nil
}

// BobG returns the bob weight for a factor: the part of m_rot not on what is
// weighed + β m_rec, MODEL §8; for one wheel alone its half less what it has
// on. With rods on it is the weight to hang at the small ends. HungG and the
// heavy spot of the weighing don't count.
func (p Parts) BobG(w Weighing, factor float64) float64 {
	w.HungG = 0
	return p.shareG(w.What, factor) - w.carriedG(p)
}

// shareG is what the crank, or one wheel of two, carries at a factor.
func (p Parts) shareG(w What, factor float64) float64 {
	if w == Whole {
		return p.CounterG(factor)
	}
	return p.CounterG(factor) / 2
}
