package wheel

import (
	"math"

	"pintwelve/core/bound"
)

// check returns a Fault for the first figure that no wheel could have. Walls
// are left to the section, which knows what metal remains.
func (w Wheel) check() error {
	turned := w.TurnedToMM
	if turned == 0 {
		turned = w.DiameterMM
	}
	if err := bound.First(
		within(Diameter, w.DiameterMM, LeastMM, MostMM),
		within(Width, w.WidthMM, LeastMM, MostMM),
		within(Bore, w.BoreMM, 0, w.DiameterMM-LeastMM),
		within(TurnedTo, turned, w.BoreMM+LeastMM, w.DiameterMM),
	); err != nil {
		return err
	}
	for i := range len(w.Rings) + len(w.Turned) {
		if err := w.checkRing(i); err != nil {
			return err
		}
	}
	for i := range w.Bosses {
		if err := w.checkBoss(i); err != nil {
			return err
		}
	}
	for i, h := range w.Holes {
		if err := bound.First(h.check(i), withinItem(HoleStart, i, h.StartMM, 0, w.WidthMM)); err != nil {
			return err
		}
	}
	return nil
}

func (w Wheel) ring(i int) Ring {
	if i < len(w.Rings) {
		return w.Rings[i]
	}
	return w.Turned[i-len(w.Rings)]
}

func (w Wheel) checkRing(i int) error {
	r := w.ring(i)
	return bound.First(
		withinItem(RingFrom, i, r.FromMM, w.BoreMM/2, w.DiameterMM/2),
		withinItem(RingTo, i, r.ToMM, r.FromMM, w.DiameterMM/2),
		withinItem(RingDepth, i, r.DepthFromMM, 0, w.WidthMM),
		withinItem(RingDepth, i, r.DepthToMM, 0, w.WidthMM),
	)
}

func (w Wheel) checkBoss(i int) error {
	b := w.Bosses[i]
	if err := bound.First(
		withinItem(BossDiameter, i, b.DiameterMM, LeastMM, w.DiameterMM),
		withinItem(BossPlace, i, b.At.Len(), 0, w.DiameterMM/2),
		withinItem(BossBelow, i, b.BelowMM, 0, w.WidthMM),
	); err != nil {
		return err
	}
	for _, o := range w.Bosses[:i] {
		apart := b.At.Sub(o.At).Len() - (b.DiameterMM+o.DiameterMM)/2
		if o.Side == b.Side && apart < 0 {
			return &Fault{Field: BossPlace, Item: i, Got: apart, Least: 0, Most: math.Inf(1)}
		}
	}
	return nil
}
