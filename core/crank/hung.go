package crank

import (
	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// looked tells whether every support and shaft is known to be good: between
// centres, by dials at two places on it or by the user's word.
func (s *Pose) looked(a *Advice, tol Tolerance) bool {
	return s.Crank.Mount != Centres || s.Crank.CentresKnown || a.Shaft[clock.Left].vouched(tol) && a.Shaft[clock.Right].vouched(tol)
}

// vouched tells whether a shaft is known well enough to call the crank true: how far
// its centre hole may stand off, by run-out and with all its doubt, is little beside
// what is allowed. Where readings are coarse a bent shaft passes for a sound one: of
// 200 bent by 2 thou 9 were called true by half-way hours, 13 by the hour of the high
// spot, and so none.
func (s Shaft) vouched(tol Tolerance) bool {
	if s.State != Sound {
		return s.known()
	}
	most := s.Hole.Len() + lsq.Radius95(s.Uncertainty.Nu)*s.Uncertainty.Cov.Widest()
	return 2*most <= little*tol.RunOut
}

const little = 1.2

// known tells whether nothing of the shaft is in doubt: it is straight, and where its
// support is bad, that is told apart.
func (s Shaft) known() bool { return s.State == Sound || s.State == BadSupport }

// reserve takes shafts that were found sound in an earlier round for sound.
func (n *Next) reserve(g []*pooled, tol Tolerance) {
	if n.Verdict != FitAsHung {
		return
	}
	for h := range n.Shaft {
		s := n.Shaft[h]
		if s.State == Unseen {
			s = lastSeen(g, clock.End(h))
		}
		if s.State != Sound && n.Shaft[h].State == Unseen || !s.vouched(tol) {
			return
		}
	}
	n.Verdict = Fit
}

// lastSeen is a shaft as it was found when it was last looked at.
func lastSeen(g []*pooled, h clock.End) Shaft {
	for i := len(g) - 1; i >= 0; i-- {
		if s := g[i].Pose.Shaft(g[i].Stations, h); s.State != Unseen {
			return s
		}
	}
	return Shaft{}
}

// seenSound tells whether a shaft was found sound when it was last looked at.
func seenSound(g []*pooled, h clock.End) bool { return lastSeen(g, h).State == Sound }

// unseen tells whether a shaft was never read at more than one place.
func (n *Next) unseen(g []*pooled) bool {
	for h := range n.Shaft {
		if n.Shaft[h].State == Unseen && !seenSound(g, clock.End(h)) {
			return true
		}
	}
	return false
}
