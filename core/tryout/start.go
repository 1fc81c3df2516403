package tryout

import (
	"math"

	"pintwelve/core/clock"
)

// ByChance draws how a crank sits, out of true by twist and gap in any mixture
// and at any hour, its worst run-out at the dials even between least and most [mm].
// The throws match.
func (c *Crank) ByChance(seed uint64, least, most float64) Start {
	luck := chanceOf(seed, forStart, 0)
	worst := luck.between(least, most)
	perD, perG := c.shows(clock.Vec{N: 0.01}, clock.Vec{}), c.shows(clock.Vec{}, clock.Vec{N: 0.01})
	s := Start{
		D: clock.Vec{N: luck.normal() / perD},
		G: clock.Vec{T: luck.normal() / perG, N: luck.normal() / perG},
	}
	return c.scaled(s, worst)
}

// scaled makes a start larger or smaller until its worst run-out is so much [mm].
// What the dials show is all but in proportion, so that this ends at once.
func (c *Crank) scaled(s Start, worst float64) Start {
	if !(worst > 0) {
		return Start{}
	}
	k := 1e-3 / math.Max(math.Hypot(s.D.Len(), s.G.Len()), 1e-300)
	for range 4 {
		k *= worst / (2 * c.shows(s.D.Scale(k), s.G.Scale(k)))
	}
	return Start{s.D.Scale(k), s.G.Scale(k)}
}

// Mismatch is how far [mm] the throws must be out of match for the worst run-out
// at the dials to be so much [mm] when all else is true.
func (c *Crank) Mismatch(runOut float64) float64 {
	return c.scaled(Start{D: clock.Vec{T: 1}}, runOut).D.T
}
