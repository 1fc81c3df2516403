package balance

import (
	"math"

	"pintwelve/core/bound"
)

// Rod is a connecting rod with its ends weighed level. A weight of 0 was not
// taken; an end that was not is what the other leaves of the whole.
type Rod struct {
	SmallG, BigG, WholeG float64
}

// Ends returns the weights of the small and the big end.
func (r Rod) Ends() (smallG, bigG float64) {
	switch {
	case r.WholeG > 0 && r.SmallG == 0 && r.BigG > 0:
		return r.WholeG - r.BigG, r.BigG
	case r.WholeG > 0 && r.BigG == 0 && r.SmallG > 0:
		return r.SmallG, r.WholeG - r.SmallG
	}
	return r.SmallG, r.BigG
}

// RodSum says how the ends of a rod agree with the whole.
type RodSum uint8

// The answers. Ends heavier than the rod can't be, and are a fault; ends that
// are lighter say that the rod hung askew or touched something.
const (
	NotCompared RodSum = iota
	Agrees
	EndsLight
	EndsHeavy
)

// RodCheck is both ends of a rod against the whole of it.
type RodCheck struct {
	Sum    RodSum
	OffG   float64 // ends less the whole
	AllowG float64 // what three readings, each half a step out, can make of it
}

// Compare checks the ends of a rod against the whole on a scale of stepG.
func (r Rod) Compare(stepG float64) RodCheck {
	if r.SmallG == 0 || r.BigG == 0 || r.WholeG == 0 {
		return RodCheck{}
	}
	c := RodCheck{Agrees, r.SmallG + r.BigG - r.WholeG, r.allowG(stepG)}
	switch {
	case c.OffG > c.AllowG:
		c.Sum = EndsHeavy
	case c.OffG < -c.AllowG:
		c.Sum = EndsLight
	}
	return c
}

// allowG is how far the ends may be off the whole, each reading half a step
// out. One end alone can't outweigh the rod by any of it: nothing would be
// left for the other.
func (r Rod) allowG(stepG float64) float64 {
	const rounding = 1e-9 // g, of decimal weights in binary
	if r.SmallG == 0 || r.BigG == 0 {
		return 0
	}
	return 1.5*stepG + rounding
}

// Cylinder is one cylinder's parts. Cylinders that share a crankpin differ by
// their bank angle, counted the way the crank turns; a parallel twin's is 0.
type Cylinder struct {
	BankRad                              float64
	PistonG, RingsG, GudgeonPinG, ClipsG float64
	Rod                                  Rod
}

// RecG returns the cylinder's reciprocating weight, MODEL §8.
func (c Cylinder) RecG() float64 {
	small, _ := c.Rod.Ends()
	return c.PistonG + c.RingsG + c.GudgeonPinG + c.ClipsG + small
}

// Parts is what one crankpin carries.
type Parts struct {
	Cylinders           []Cylinder
	BearingG, CrankpinG float64
}

// RecG returns m_rec, MODEL §8, of all cylinders.
func (p Parts) RecG() float64 {
	sum := 0.0
	for _, c := range p.Cylinders {
		sum += c.RecG()
	}
	return sum
}

// EndsG returns the small ends and the big ends of all rods.
func (p Parts) EndsG() (smallG, bigG float64) {
	for _, c := range p.Cylinders {
		s, b := c.Rod.Ends()
		smallG, bigG = smallG+s, bigG+b
	}
	return smallG, bigG
}

// RotG returns m_rot, MODEL §8.
func (p Parts) RotG() float64 {
	_, big := p.EndsG()
	return big + p.BearingG + p.CrankpinG
}

// CounterG returns the weight at the pin that wheels of a factor carry,
// m_rot + β m_rec, MODEL §8.
func (p Parts) CounterG(factor float64) float64 { return p.RotG() + factor*p.RecG() }

// Bores returns the cylinders as a shaking engine sees them.
func (p Parts) Bores() []Bore {
	bores := make([]Bore, len(p.Cylinders))
	for i, c := range p.Cylinders {
		bores[i] = Bore{BankRad: c.BankRad, RecG: c.RecG()}
	}
	return bores
}

// Check returns a *Fault for the first weight that can't be, as read on a scale
// of stepG: negative, too big, no number, an end heavier than its rod.
func (p Parts) Check(stepG float64) error {
	err := bound.First(
		within(Step, stepG, 0, 1000),
		within(Cylinders, float64(len(p.Cylinders)), 1, 12),
		within(Bearing, p.BearingG, 0, MostG),
		within(Crankpin, p.CrankpinG, 0, MostG),
	)
	for i := 0; err == nil && i < len(p.Cylinders); i++ {
		err = p.Cylinders[i].check(i, stepG)
	}
	return err
}

func (c Cylinder) check(i int, stepG float64) error {
	part := func(f Field, g float64) error { return withinItem(f, i, g, 0, MostG) }
	if err := bound.First(
		withinItem(Bank, i, c.BankRad, -2*math.Pi, 2*math.Pi),
		part(Piston, c.PistonG), part(Rings, c.RingsG), part(GudgeonPin, c.GudgeonPinG), part(Clips, c.ClipsG),
		part(SmallEnd, c.Rod.SmallG), part(BigEnd, c.Rod.BigG), part(WholeRod, c.Rod.WholeG),
	); err != nil {
		return err
	}
	if r := c.Rod; r.WholeG > 0 {
		if err := withinItem(RodEnds, i, r.SmallG+r.BigG, 0, r.WholeG+r.allowG(stepG)); err != nil {
			return err
		}
	}
	return withinItem(Reciprocating, i, c.RecG(), 1e-3, MostG)
}
