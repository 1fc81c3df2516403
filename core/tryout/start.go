package tryout

import (
	"math"

	"pintwelve/core/clock"
)

// ByChance draws how the joints sit, out of true by twist and gap in any mixture
// and at any hour, the worst run-out at the dials even between least and most [mm].
// The throws match.
func (c *Crank) ByChance(seed uint64, least, most float64) (sits []Start) {
	luck := chanceOf(seed, forStart, 0)
	worst := luck.between(least, most)
	for j := range c.joints() {
		perD, perG := c.perUnit(j)
		sits = append(sits, Start{
			D: clock.Vec{N: luck.normal() / perD},
			G: clock.Vec{T: luck.normal() / perG, N: luck.normal() / perG},
		})
	}
	return c.scaled(sits, worst)
}

// scaled makes starts larger or smaller until the worst run-out is so much [mm].
// What the dials show is all but in proportion, so that this ends at once.
func (c *Crank) scaled(sits []Start, worst float64) []Start {
	by := func(k float64) []Start {
		out := make([]Start, len(sits))
		for j, s := range sits {
			out[j] = Start{s.D.Scale(k), s.G.Scale(k)}
		}
		return out
	}
	if !(worst > 0) {
		return by(0)
	}
	far := 1e-300
	for _, s := range sits {
		far = math.Max(far, math.Hypot(s.D.Len(), s.G.Len()))
	}
	k := 1e-3 / far
	for range 4 {
		k *= worst / (2 * c.shows(by(k)...))
	}
	return by(k)
}

// Mismatch is how far [mm] the throws of a joint must be out of match for the worst
// run-out at the dials to be so much [mm] when all else is true.
func (c *Crank) Mismatch(joint int, runOut float64) float64 {
	sits := make([]Start, joint+1)
	sits[joint].D.T = 1
	return c.scaled(sits, runOut)[joint].D.T
}
