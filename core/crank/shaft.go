package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// ShaftState is what the dials on one shaft say of it and of where it is held.
type ShaftState uint8

// The states. With dials at one place nothing can be seen of the support; at two,
// a support off the axis and a bent shaft look the same; a third place tells
// them apart (MODEL §3).
const (
	Unseen        ShaftState = iota // dials at one place: the support is taken on trust
	Sound                           // the support stands on the axis, as far as the dials can tell
	SupportOrBent                   // a bad centre (or V-block or bearing seat) or a bent shaft
	BadSupport                      // the dials lie on a line, the support does not
	Bent                            // the dials don't lie on a line
)

// Shaft is a shaft's state, with where the middle of its support stands from
// the shaft's axis [mm] and how sure that is; these mean nothing where Unseen.
// Between centres it is the centre hole: −y(x_c).
type Shaft struct {
	State       ShaftState
	Hole        clock.Vec
	Uncertainty lsq.Uncertainty
}

// Trusted tells whether the support may be trusted: nothing speaks against it.
func (s Shaft) Trusted() bool { return s.State == Unseen || s.State == Sound }

// Shaft looks at one shaft by its dials alone.
func (s *Pose) Shaft(st []Station, h clock.End) Shaft {
	return shaftBy(st, int(h), s.Crank.Support[h])
}

// shaftBy looks at the shaft of a piece that is held at rest, by its dials alone.
func shaftBy(st []Station, piece int, rest float64) Shaft {
	n := distinctPlaces(st, piece)
	if n < 2 {
		return Shaft{}
	}
	// About the rest itself, so that its place is A.
	var sure [MostThrows + 1]Scatter
	var parts [MostThrows + 1]part
	var rows [2][MostThrows + 1]along
	y, scatter := free(st, piece, rest)
	sure[piece], parts[piece] = scatter, part{a: 1}
	out := Shaft{Hole: y.a.Scale(-1), Uncertainty: propagated(st, sure[:], rest, components(parts[:], rows[0][:], rows[1][:]))}
	switch {
	case n >= 3 && !fits(st, piece, y, rest, 2):
		out.State = Bent
	case !out.off():
		out.State = Sound
	case n == 2:
		out.State = SupportOrBent
	default:
		out.State = BadSupport
	}
	return out
}

// off tells whether the support stands off the axis by more than the dials'
// doubt; less than a micron is no support's fault.
func (s Shaft) off() bool { return s.Hole.Len() > least && s.Uncertainty.Significant(s.Hole) }

// fits tells whether a piece's dials lie on its axis about from to within their doubt at
// 95 %, the axis fitted to them with so many unknown vectors. Less than a micron
// is no shaft's fault.
func fits(st []Station, piece int, y axis, from float64, unknown int) bool {
	chi2, worst, dials, nu := 0.0, 0.0, 0, 0.0
	for i := range st {
		p := &st[i]
		if p.Piece != piece {
			continue
		}
		r := p.E.Sub(y.at(p.At - from))
		chi2 += r.Dot(p.weight().Apply(r))
		worst = math.Max(worst, r.Len())
		dials++
		if p.Nu > 0 && (nu == 0 || p.Nu < nu) {
			nu = p.Nu
		}
	}
	// Scatter that was found, not known, may be larger by as much as a vector's
	// radius is.
	k := lsq.Radius95(0) / lsq.Radius95(nu)
	return worst <= least || !lsq.Beyond95(chi2*k*k, 2*(dials-unknown))
}
