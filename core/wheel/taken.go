package wheel

import (
	"math"
	"slices"
	"sort"

	"pintwelve/core/clock"
)

// solid is a hole or a boss at a density of 1 g/mm³.
type solid struct {
	Metal
	crossed bool // integrated, since the metal there is not level
	out     bool // the point of a blind hole comes out
}

// taken returns the metal between near and far, both below the face drilled
// from, that stands inside a hole. On level metal it is the hole's own closed
// form; otherwise it is integrated.
func taken(d Drilling, near, far profile) solid {
	top, topMost := extent(near, d.inner(), d.outer())
	end, endMost := extent(far, d.inner(), d.outer())
	shoulder := d.StartMM + d.DepthMM
	reach := shoulder + d.PointMM()
	if d.Through {
		shoulder, reach = math.MaxFloat64, math.MaxFloat64
	}
	s := solid{out: !d.Through && reach > end}
	level := top == topMost && (end == endMost || reach <= end) &&
		d.inner() >= near[0].FromMM && d.outer() <= near[len(near)-1].ToMM // a boss may hang over bore or rim
	switch {
	case level && shoulder >= end:
		d.Through, d.DepthMM = true, math.Max(0, end-top)
	case level && reach <= end && shoulder >= top:
		d.DepthMM = shoulder - top
	default:
		s.crossed = !level
		s.Metal = newBit(d, near, far).integrate()
		return s
	}
	s.Metal = d.unit()
	return s
}

// bit is the drill in metal that is not level, with the wheel seen from the
// drill: q from the hole's axis, ψ about it from the line out of the shaft.
type bit struct {
	at       clock.Vec
	c, s     float64 // the hole's place and radius
	tip, run float64 // depth of the tip's point, and its rise per mm of q
	under    []pair  // near and far metal, over the radii that the hole covers
}

func newBit(d Drilling, near, far profile) bit {
	b := bit{at: d.At, c: d.At.Len(), s: d.DiameterMM / 2, tip: d.StartMM + d.ReachMM(), run: 2 * d.PointMM() / d.DiameterMM}
	if d.Through {
		b.tip, b.run = math.MaxFloat64, 0
	}
	for _, p := range pairs(near, far) {
		if p.a.ToMM > b.c-b.s && p.a.FromMM < b.c+b.s {
			b.under = append(b.under, p)
		}
	}
	return b
}

// integrate takes rings of q about the hole's axis, split where one first
// touches an edge of the metal or of the cone, so that every stretch is smooth
// once the square root at its ends is taken out by q = mid + half sin u.
func (b bit) integrate() Metal {
	var volume, out, second float64
	for _, q := range stretches(b.rings(), 0, b.s) {
		mid, half := (q[0]+q[1])/2, (q[1]-q[0])/2
		for _, n := range gauss {
			sin, cos := math.Sincos(n.x * math.Pi / 2)
			v, m, i := b.ring(mid + half*sin)
			w := n.w * math.Pi / 2 * half * cos
			volume, out, second = volume+w*v, out+w*m, second+w*i
		}
	}
	m := Metal{MassG: volume, InertiaGMM2: second}
	if b.c > 0 {
		m.MomentGMM = b.at.Scale(out / b.c)
	}
	return m
}

// rings returns the q at which a ring's height can have a corner.
func (b bit) rings() []float64 {
	var at []float64
	for _, p := range b.under {
		for _, r := range []float64{p.a.FromMM, p.a.ToMM} {
			at = append(at, math.Abs(r-b.c), r+b.c)
		}
		for _, l := range []Span{p.a, p.b} {
			slope := (l.DepthToMM - l.DepthFromMM) / (l.ToMM - l.FromMM)
			gap := b.tip - l.DepthFromMM - slope*(b.c-l.FromMM) // over the metal at the axis
			at = append(at, (b.tip-l.DepthFromMM)/b.run, (b.tip-l.DepthToMM)/b.run, gap/(b.run+slope), gap/(b.run-slope))
		}
	}
	return at
}

// ring returns, per mm of q, the volume of one ring, its first moment along the
// line out of the shaft and its second moment about the shaft.
func (b bit) ring(q float64) (volume, out, second float64) {
	bottom := b.tip - b.run*q
	for _, psi := range stretches(b.corners(q, bottom), 0, math.Pi) {
		mid, half := (psi[0]+psi[1])/2, (psi[1]-psi[0])/2
		metal, ok := b.metal(q, mid)
		if !ok {
			continue
		}
		for _, n := range gauss {
			along := q * math.Cos(mid+half*n.x)
			x, r2 := b.c+along, b.c*b.c+q*q+2*b.c*along
			r := math.Sqrt(max(0, r2))
			h := n.w * half * 2 * q * max(0, min(metal.b.At(r), bottom)-metal.a.At(r))
			volume, out, second = volume+h, out+h*x, second+h*r2
		}
	}
	return volume, out, second
}

// metal returns the stretch of metal at a place under the drill.
func (b bit) metal(q, psi float64) (pair, bool) {
	r := math.Sqrt(max(0, b.c*b.c+q*q+2*b.c*q*math.Cos(psi)))
	i := slices.IndexFunc(b.under, func(p pair) bool { return r >= p.a.FromMM && r <= p.a.ToMM })
	if i < 0 {
		return pair{}, false
	}
	return b.under[i], true
}

// corners returns the ψ at which the height along a ring has a corner.
func (b bit) corners(q, bottom float64) []float64 {
	var at []float64
	add := func(r float64) {
		if cos := (r*r - b.c*b.c - q*q) / (2 * b.c * q); cos > -1 && cos < 1 {
			at = append(at, math.Acos(cos))
		}
	}
	for _, p := range b.under {
		add(p.a.FromMM)
		add(p.a.ToMM)
		for _, l := range []Span{p.a, p.b} {
			from, to := l.DepthFromMM-bottom, l.DepthToMM-bottom
			if from*to < 0 {
				add(l.FromMM + (l.ToMM-l.FromMM)*from/(from-to))
			}
		}
	}
	return at
}

// stretches splits lo to hi at those of the given places that lie between.
func stretches(at []float64, lo, hi float64) [][2]float64 {
	sort.SliceStable(at, func(i, j int) bool { return at[i] < at[j] })
	var out [][2]float64
	for _, x := range at {
		if x > lo && x < hi {
			out = append(out, [2]float64{lo, x})
			lo = x
		}
	}
	return append(out, [2]float64{lo, hi})
}

// node is one place and weight of Gauss's rule on [−1, 1].
type node struct{ x, w float64 }

var gauss = legendre(16)

// legendre returns the Gauss–Legendre nodes of order n: roots of Pₙ by Newton
// from cos π(i + ¾)/(n + ½), weights 2/((1 − x²) P′ₙ²).
func legendre(n int) []node {
	nodes := make([]node, n)
	for i := range nodes {
		x, slope := math.Cos(math.Pi*(float64(i)+0.75)/(float64(n)+0.5)), 0.0
		for range 10 {
			p0, p1 := 1.0, x
			for k := 2; k <= n; k++ {
				p0, p1 = p1, (float64(2*k-1)*x*p1-float64(k-1)*p0)/float64(k)
			}
			slope = float64(n) * (x*p1 - p0) / (x*x - 1)
			x -= p1 / slope
		}
		nodes[i] = node{x, 2 / ((1 - x*x) * slope * slope)}
	}
	return nodes
}
