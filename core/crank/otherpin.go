package crank

import "math"

// elsewhere counts the latest rounds in a row after which what came about is far better
// explained by the work having been done at the other of two pins; those that can't tell
// are passed over.
func elsewhere(rounds [][]jointShift, joint, since int) (count int) {
	for i := len(rounds) - 1; i >= 0 && rounds[i][joint].after >= since; i-- {
		better := exchanged(rounds[i], joint)
		if better < -excused {
			return count
		}
		if better > certain {
			count++
		}
	}
	return count
}

// exchanged is by how much what was done at a joint explains what came about at another,
// and the other way round, better than as logged: twice the logarithm of a chance.
func exchanged(all []jointShift, joint int) float64 {
	here, better := &all[joint], math.Inf(-1)
	for other := range all {
		there := &all[other]
		if other == joint || !here.told || !there.told || len(here.done)+len(there.done) == 0 {
			continue
		}
		as := here.surprise(here.done) + there.surprise(there.done)
		better = math.Max(better, as-here.surprise(there.done)-there.surprise(here.done))
	}
	if math.IsInf(better, -1) {
		return 0
	}
	return better
}

// surprise is how badly a shift is explained by what was done, as a mistake's cost: what
// moved and wasn't worked at is that too.
func (c shift) surprise(done []Done) float64 {
	c.done = done
	cost := right.cost(tell([]*change{{shift: c}}))
	perD, perG := c.shows()
	_, struck := c.struck()
	_, bent := c.bent()
	if !struck {
		from := stray * c.g.Len() * perG / perD
		cost += math.Min(c.d.N*c.d.N/(c.covD.NN+from*from), 2*oddest)
	}
	if bent == none {
		from := stray * math.Abs(c.d.N) * perD / perG
		cov := c.covG
		cov.TT, cov.NN = cov.TT+from*from, cov.NN+from*from
		if w, ok := cov.Inverse(); ok {
			cost += math.Min(c.g.Dot(w.Apply(c.g)), 2*oddest)
		}
	}
	return cost
}
