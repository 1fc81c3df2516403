package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// part is what a vector has of a piece's A and B.
type part struct{ a, b float64 }

// along is what one component of a vector has of a piece's A and B, a·A + b·B.
type along struct{ a, b clock.Vec }

// components are those of Σ parts A + B, by piece.
func components(parts []part, t, n []along) [2][]along {
	for k, p := range parts {
		t[k] = along{clock.Vec{T: p.a}, clock.Vec{T: p.b}}
		n[k] = along{clock.Vec{N: p.a}, clock.Vec{N: p.b}}
	}
	return [2][]along{t, n}
}

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
	var t, n [2]along
	parts := [2]part{{-k.d, k.g}, {k.d, -k.g}}
	return propagated(st, s.Scatter[:], s.Pin, components(parts[:], t[:], n[:]))
}

// propagated propagates to a vector the covariances of pieces that each lie by their own
// readings, about x = from; so they add (MODEL §6).
func propagated(st []Station, sure []Scatter, from float64, rows [2][]along) lsq.Uncertainty {
	var out lsq.Uncertainty
	var u [2][MostThrows + 1]along
	for k := range sure {
		t, n := sure[k].of(rows[0][k]), sure[k].of(rows[1][k])
		out.Cov = out.Cov.Add(lsq.Cov{TT: rows[0][k].dot(t), TN: rows[0][k].dot(n), NN: rows[1][k].dot(n)})
		u[0][k], u[1][k] = t, n
	}
	var few [16]float64
	put := few[:0]
	for i := range st {
		k := st[i].Piece
		put = append(put, st[i].enters(from, u[0][k], u[1][k]))
	}
	out.Nu = freedomBehind(st, put)
	return out
}

func (k along) dot(l along) float64 { return k.a.Dot(l.a) + k.b.Dot(l.b) }

// freedomBehind returns the degrees of freedom behind what each station puts into a variance,
// and all else after them, by Welch and Satterthwaite: scatter found with one dial is
// one, however often it enters.
func freedomBehind(st []Station, put []float64) float64 {
	all, spread := 0.0, 0.0
	for i, v := range put {
		all += v
		if i >= len(st) || st[i].Nu == 0 || !firstOfDial(st, i) {
			continue
		}
		sum, nu := 0.0, st[i].Nu
		for j := i; j < len(st); j++ {
			if st[j].Dial == st[i].Dial && st[j].Nu > 0 {
				sum += put[j]
				nu = math.Min(nu, st[j].Nu)
			}
		}
		spread += sum * sum / nu
	}
	if spread == 0 {
		return 0
	}
	return all * all / spread
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

// enters returns how much variance a station puts into a vector, over both its
// components: of each the covariance with A and B is t and n, so that of a reading's
// share it is wᵀ W w with w = a + z b, z the place from there. W Σ Wᵀ = W, the weight
// being the inverse of the covariance.
func (p *Station) enters(from float64, t, n along) float64 {
	z, w := p.At-from, p.weight()
	v := t.a.Add(t.b.Scale(z))
	sum := v.Dot(w.Apply(v))
	v = n.a.Add(n.b.Scale(z))
	return sum + v.Dot(w.Apply(v))
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
