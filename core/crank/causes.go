package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Cause is what may lie behind an outcome that was not meant.
type Cause uint8

// The causes.
const (
	HoursFromWrongEnd Cause = iota // the place was read from the other end
	WrongWheel                     // the other wheel was struck
	WrongMove                      // squeezed where it should have been spread, or at the opposite hour
	TooLight                       // the work gave and sprang back: too little for this fit
	NotSupported                   // the other wheel was not held, or the clamp stood askew
	DialMoved                      // a dial or its foot slipped while it was read
	PinSlipped                     // the pin has shifted in its seat, or the seat is worn
	DialsExchanged                 // each dial's readings stand with the other shaft
	HourMirrored                   // the work was done at the hour seen from the other end
	LowForHigh                     // where the needle was low was taken for where it was high
	FirstOnly                      // only the first of two moves was done
	NotDone                        // none of it was done
	CentreOrShaft                  // a bad centre or a bent shaft
	Hinged                         // the squeeze closed the gap about one end of the pin, not its middle
	Unlogged                       // something was done that isn't logged
	Pressure                       // the tailstock presses the crank out of shape
	OtherPin                       // of several throws, the work was done at another pin
)

// causes finds what went astray, and the likely causes. blow and bend are the
// doses that were meant to change d_n and g.
func (c *shift) causes(tries []Try, blow float64, bend clock.Vec) {
	for i := range tries {
		switch t := &tries[i]; t.Outcome {
		case Opposite:
			t.Likely = c.opposite(t, bend)
		case NoEffect:
			t.Likely = []Cause{TooLight, NotSupported}
			if t.Beside {
				t.Likely = []Cause{FirstOnly, TooLight, NotSupported}
			}
		case Unshown:
			if t.unseen() {
				t.Likely = []Cause{FirstOnly, TooLight, NotSupported}
			}
		}
	}
	if n := len(tries); n > 0 && tries[n-1].Outcome == AsMeant {
		c.stray(&tries[n-1], blow != 0, bend)
	}
}

// opposite tells hours read from the wrong end by the gap having moved along
// the mirrored way.
func (c *shift) opposite(t *Try, bend clock.Vec) []Cause {
	if t.Kind == Strike {
		return []Cause{HoursFromWrongEnd, DialsExchanged, WrongWheel, HourMirrored}
	}
	mirrored := bend.From(clock.Right)
	if c.g.Dot(mirrored) > lsq.Student95(0)*math.Sqrt(c.covG.Var(mirrored))*mirrored.Len() {
		return []Cause{HoursFromWrongEnd, HourMirrored}
	}
	return []Cause{WrongMove, HoursFromWrongEnd, HourMirrored}
}

// amiss is the part of what was meant, on the needles, beyond which what was not
// meant is told: a rough hand's moves stray by a seventh.
const amiss = 0.5

// stray finds what the needles did that the moves should not have made them do.
func (c *shift) stray(t *Try, struck bool, bend clock.Vec) {
	d, g := c.d, c.g
	var meantD, meantG clock.Vec
	if struck {
		meantD.N = d.N
	}
	if n := bend.Len(); n > 0 {
		meantG = bend.Scale(g.Dot(bend) / (n * n))
	}
	d, g = d.Sub(meantD), g.Sub(meantG)
	most, meant, moved := 0.0, 0.0, 0
	for _, k := range c.dials {
		meant = math.Max(meant, 2*(meantD.Scale(k.d).Len()+meantG.Scale(k.g).Len()))
		noise := lsq.Uncertainty{Cov: c.covD.Scale(k.d * k.d).Add(c.covG.Scale(k.g * k.g))}
		if off := d.Scale(k.d).Add(g.Scale(k.g)); noise.Significant(off) {
			most = math.Max(most, 2*off.Len())
			moved++
		}
	}
	if most > amiss*meant {
		t.Astray, t.Likely = most, c.astray(t, d, moved)
	}
}

// astray gives the likely causes: one needle by itself is the dial's, the
// throws' coming out of match the pin's.
func (c *shift) astray(t *Try, d clock.Vec, moved int) []Cause {
	switch {
	case moved == 1 && len(c.dials) > 1:
		return []Cause{DialMoved, NotSupported}
	case math.Abs(d.T) > lsq.Student95(0)*math.Sqrt(c.covD.TT):
		return []Cause{PinSlipped, NotSupported}
	}
	return []Cause{NotSupported, DialMoved}
}
