package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// part is what a vector has of a half's A and B.
type part struct{ a, b float64 }

// UncertaintyOfD returns that of D, mm.
func (s *Pose) UncertaintyOfD(st []Station) lsq.Uncertainty { return s.uncertaintyOf(st, share{d: 1}) }

// UncertaintyOfG returns that of G, mm per mm.
func (s *Pose) UncertaintyOfG(st []Station) lsq.Uncertainty { return s.uncertaintyOf(st, share{g: 1}) }

// UncertaintyOfTilt returns that of the tilt of a half's journal in its own
// bearings, minutes of arc.
func (s *Pose) UncertaintyOfTilt(st []Station, half clock.End) lsq.Uncertainty {
	return s.uncertaintyOf(st, tiltShare(&s.Crank, half)).Scale(arcmin)
}

// uncertaintyOf returns that of k.d D + k.g G; D = A_R − A_L, G = B_L − B_R.
func (s *Pose) uncertaintyOf(st []Station, k share) lsq.Uncertainty {
	return propagated(st, s.Pin, &s.Scatter, [2]part{clock.Left: {-k.d, k.g}, clock.Right: {k.d, -k.g}})
}

// propagated propagates the halves' covariances, which add since the halves were
// read apart (MODEL §6), and the degrees of freedom behind them by Welch
// and Satterthwaite: scatter found with one dial is one, however often it enters.
func propagated(st []Station, pin float64, sc *[2]Scatter, parts [2]part) lsq.Uncertainty {
	out := lsq.Uncertainty{Cov: sc[0].of(parts[0].a, parts[0].b).Add(sc[1].of(parts[1].a, parts[1].b))}
	all, spread := 0.0, 0.0
	for i := range st {
		all += enters(&st[i], pin, sc, parts)
		if st[i].Nu == 0 || !firstOfDial(st, i) {
			continue
		}
		sum, nu := 0.0, st[i].Nu
		for j := i; j < len(st); j++ {
			if st[j].Dial == st[i].Dial && st[j].Nu > 0 {
				sum += enters(&st[j], pin, sc, parts)
				nu = math.Min(nu, st[j].Nu)
			}
		}
		spread += sum * sum / nu
	}
	if spread > 0 {
		out.Nu = all * all / spread
	}
	return out
}

// firstOfDial tells whether no station before i found its scatter with the same dial.
func firstOfDial(st []Station, i int) bool {
	for j := range i {
		if st[j].Dial == st[i].Dial && st[j].Nu > 0 {
			return false
		}
	}
	return true
}

// enters returns how much variance, over both directions, a station puts into
// a A + b B of its half: the trace of M Σ Mᵀ with
// M = (a AA + b ABᵀ + z (a AB + b BB)) W, z its place from the pin.
func enters(p *Station, pin float64, sc *[2]Scatter, parts [2]part) float64 {
	h, k, z := &sc[p.Half], parts[p.Half], p.At-pin
	ab, ba := h.AB, turned(h.AB)
	aa, bb := square(h.AA), square(h.BB)
	var m mat
	for i := range m {
		for j := range m[i] {
			m[i][j] = k.a*aa[i][j] + k.b*ba[i][j] + z*(k.a*ab[i][j]+k.b*bb[i][j])
		}
	}
	// W Σ Wᵀ = W, the weight being the inverse of the covariance.
	return trace(m, p.weight())
}

// StrikeHalfWidth95 returns how far the strike's amount may be out, either way, at 95 %
// [mm].
func (s *Pose) StrikeHalfWidth95(st []Station) float64 {
	return s.UncertaintyOfD(st).HalfWidth95(clock.Vec{N: 1})
}

// CloseHalfWidth95 returns how far the amount of the squeeze or spread may be out,
// either way, at 95 % [mm], and the hours between which its place on the rim
// lies, clockwise. They mean nothing where the dials can't tell G.
func (s *Pose) CloseHalfWidth95(st []Station) (plus, from, to float64) {
	sure := s.UncertaintyOfG(st)
	move, _ := s.Close()
	turn := sure.Sector(s.G)
	worked := func(by float64) float64 {
		u := clock.Polar(1, s.G.Hour()+by)
		if move.Kind == Spread {
			u = u.Scale(-1)
		}
		return s.Crank.work(move.Kind, u, s.G).Hour
	}
	return move.Arm * sure.HalfWidth95(s.G), worked(-turn), worked(turn)
}
