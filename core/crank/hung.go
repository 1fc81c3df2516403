package crank

import "pintwelve/core/clock"

// looked tells whether every support and shaft is known to be good: between
// centres, by dials at two places on it or by the user's word.
func (s *Pose) looked(a *Advice) bool {
	return s.Crank.Mount != Centres || s.Crank.CentresKnown || a.Shaft[clock.Left].known() && a.Shaft[clock.Right].known()
}

// known tells whether nothing of the shaft is in doubt: it is straight, and where its
// support is bad, that is told apart.
func (s Shaft) known() bool { return s.State == Sound || s.State == BadSupport }

// reserve takes shafts that were found sound in an earlier round for sound.
func (n *Next) reserve(g []pooled) {
	if n.Verdict != FitAsHung {
		return
	}
	for h := range n.Shaft {
		if n.Shaft[h].State == Unseen && !seenSound(g, clock.End(h)) || n.Shaft[h].State != Unseen && !n.Shaft[h].known() {
			return
		}
	}
	n.Verdict = Fit
}

// seenSound tells whether a shaft was found sound when it was last looked at.
func seenSound(g []pooled, h clock.End) bool {
	for i := len(g) - 1; i >= 0; i-- {
		if s := g[i].Pose.Shaft(g[i].Stations, h); s.State != Unseen {
			return s.State == Sound
		}
	}
	return false
}

// unseen tells whether a shaft was never read at more than one place.
func (n *Next) unseen(g []pooled) bool {
	for h := range n.Shaft {
		if n.Shaft[h].State == Unseen && !seenSound(g, clock.End(h)) {
			return true
		}
	}
	return false
}
