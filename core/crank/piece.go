package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Scatter is the covariance of a piece's A and B. AB is that of A with B, rows A.
type Scatter struct {
	AA, BB lsq.Cov
	AB     [2][2]float64
}

// byItself finds how a piece lies by its own readings about x = from, y = a + b (x − from):
// by its dials alone where they stand at two places or more and centres hold it,
// else with its rests as exact. Lack says what is wanting where that isn't told.
func byItself(st []Station, piece int, rests []float64, mount Mount, from float64) (y axis, sure Scatter, lack Lack, told bool) {
	dials, apart := places(st, piece)
	switch {
	case apart && (mount == Centres || len(rests) == 0):
		y, sure = free(st, piece, from)
		return y, sure, 0, true
	case len(rests) == 2:
		return y, sure, 0, true
	case dials == 0:
		return y, sure, NoDial, false
	case len(rests) == 1:
		y, sure, told = held(st, piece, rests[0], from)
	}
	return y, sure, AtSupport, told
}

// leastReach is the part of the way from the support to the pin that one of a half's dials
// stands off at least: a slip of a millimetre in less is a third of the lever or more, and with it
// of every amount, where a half is 60 mm from block to pin. By judgement.
const leastReach = 1.0 / 20

// TooNear tells whether a piece goes by its rest and by dials that all stand nearer than that to it.
func TooNear(st []Station, piece int, rest, pin float64, mount Mount) bool {
	dials, apart := places(st, piece)
	for i := range st {
		if p := &st[i]; p.Piece == piece && math.Abs(p.At-rest) >= leastReach*math.Abs(pin-rest) {
			return false
		}
	}
	return dials > 0 && !(apart && mount == Centres)
}

// places counts a piece's dials and tells whether two stand apart.
func places(st []Station, piece int) (dials int, apart bool) {
	first := 0.0
	for i := range st {
		if st[i].Piece != piece {
			continue
		}
		if dials == 0 {
			first = st[i].At
		}
		dials++
		apart = apart || math.Abs(st[i].At-first) >= least
	}
	return dials, apart
}

// held solves a piece whose rest is exact: y = b (x − rest), one vector.
func held(st []Station, piece int, rest, from float64) (y axis, sure Scatter, told bool) {
	var m lsq.Cov
	var v clock.Vec
	for i := range st {
		l := st[i].At - rest
		if p := &st[i]; p.Piece == piece && math.Abs(l) >= least {
			w := p.weight()
			m = m.Add(w.Scale(l * l))
			v = v.Add(w.Apply(p.E).Scale(l))
		}
	}
	c, ok := m.Inverse()
	if !ok {
		return y, sure, false
	}
	l := from - rest
	b := c.Apply(v)
	return axis{b.Scale(l), b}, Scatter{AA: c.Scale(l * l), AB: square(c.Scale(l)), BB: c}, true
}

// free solves a piece from its dials alone: y = a + b (x − mid), two vectors, by
// blocks of the normal equations about the middle of its dials, then moved. Its dials
// stand at two places or more.
func free(st []Station, piece int, from float64) (axis, Scatter) {
	mid, n := 0.0, 0.0
	for i := range st {
		if st[i].Piece == piece {
			mid += st[i].At
			n++
		}
	}
	mid /= n
	var s0, s1, s2 lsq.Cov
	var v0, v1 clock.Vec
	for i := range st {
		if p := &st[i]; p.Piece == piece {
			z, w := p.At-mid, p.weight()
			s0, s1, s2 = s0.Add(w), s1.Add(w.Scale(z)), s2.Add(w.Scale(z*z))
			v0, v1 = v0.Add(w.Apply(p.E)), v1.Add(w.Apply(p.E).Scale(z))
		}
	}
	a, b, sure := line(s0, s1, s2, v0, v1)
	l := from - mid
	return axis{a.Add(b.Scale(l)), b}, sure.shift(l)
}

// distinctPlaces counts the places along a piece where dials stand.
func distinctPlaces(st []Station, piece int) int {
	n := 0
	for i := range st {
		if st[i].Piece == piece && st[i].among(st[:i]) < 0 {
			n++
		}
	}
	return n
}

// Unlike finds two readings of one place that differ by more than their doubt at 95 % lets
// them: one of them is wrong, and their mean no better.
func Unlike(st []Station) (a, b int, found bool) {
	for b = range st {
		for a = range b {
			p, q := &st[a], &st[b]
			if p.samePlace(q) && p.E.Sub(q.E).Len() > least && lsq.Differ(p.E, q.E, lsq.Uncertainty{Cov: p.Cov, Nu: p.Nu}, lsq.Uncertainty{Cov: q.Cov, Nu: q.Nu}) {
				return a, b, true
			}
		}
	}
	return 0, 0, false
}

// among returns which of the stations is the first at its place, −1 where none is.
func (p *Station) among(st []Station) int {
	for i := range st {
		if p.samePlace(&st[i]) {
			return i
		}
	}
	return -1
}

func (p *Station) samePlace(q *Station) bool {
	return p.Piece == q.Piece && math.Abs(p.At-q.At) < least
}
