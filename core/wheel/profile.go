package wheel

import "math"

// Span is a stretch of a face's profile: how deep the metal begins below the
// face, in a straight line from one radius to the other, mm.
type Span struct {
	FromMM, ToMM           float64
	DepthFromMM, DepthToMM float64
}

// At returns how deep the span lies at a radius, mm.
func (s Span) At(r float64) float64 {
	return s.DepthFromMM + (s.DepthToMM-s.DepthFromMM)*(r-s.FromMM)/(s.ToMM-s.FromMM)
}

// piece returns the part of s between two radii.
func (s Span) piece(from, to float64) Span { return Span{from, to, s.At(from), s.At(to)} }

// profile is spans that follow one another from the bore to the rim.
type profile []Span

func level(in, out, depth float64) profile { return profile{{in, out, depth, depth}} }

// ringed returns the profile of one ring alone, clipped to the wheel.
func ringed(in, out float64, r Ring) profile {
	cut := Span{r.FromMM, r.ToMM, r.DepthFromMM, r.DepthToMM}
	from, to := math.Max(in, r.FromMM), math.Min(out, r.ToMM)
	if from >= to {
		return level(in, out, 0)
	}
	var p profile
	for _, s := range []Span{{in, from, 0, 0}, cut.piece(from, to), {to, out, 0, 0}} {
		if s.ToMM > s.FromMM {
			p = append(p, s)
		}
	}
	return p
}

// pair is two profiles over one stretch where neither has a corner.
type pair struct{ a, b Span }

// pairs lays two profiles of the same reach side by side.
func pairs(a, b profile) []pair {
	var out []pair
	for i, j := 0, 0; i < len(a) && j < len(b); {
		from, to := math.Max(a[i].FromMM, b[j].FromMM), math.Min(a[i].ToMM, b[j].ToMM)
		if to > from {
			out = append(out, pair{a[i].piece(from, to), b[j].piece(from, to)})
		}
		if a[i].ToMM <= to {
			i++
		}
		if b[j].ToMM <= to {
			j++
		}
	}
	return out
}

// deeper returns whichever profile is the deeper at each radius.
func deeper(a, b profile) profile { return merge(a, b, 1) }

// shallower returns whichever profile is the shallower at each radius.
func shallower(a, b profile) profile { return merge(a, b, -1) }

func merge(a, b profile, sign float64) profile {
	var out profile
	for _, p := range pairs(a, b) {
		from := sign * (p.a.DepthFromMM - p.b.DepthFromMM)
		to := sign * (p.a.DepthToMM - p.b.DepthToMM)
		mid := p.a.ToMM
		if from*to < 0 {
			mid = p.a.FromMM + (p.a.ToMM-p.a.FromMM)*from/(from-to)
		}
		if mid <= p.a.FromMM || mid >= p.a.ToMM {
			out = out.join(choose(p, from+to > 0))
			continue
		}
		out = out.join(choose(p, from > 0).piece(p.a.FromMM, mid))
		out = out.join(choose(p, to > 0).piece(mid, p.a.ToMM))
	}
	return out
}

func choose(p pair, a bool) Span {
	if a {
		return p.a
	}
	return p.b
}

// join adds a span, as part of the last one where both lie on one line.
func (p profile) join(s Span) profile {
	const flush = 1e-12 // mm
	if n := len(p); n > 0 {
		last := p[n-1]
		whole := Span{last.FromMM, s.ToMM, last.DepthFromMM, s.DepthToMM}
		if math.Abs(last.DepthToMM-s.DepthFromMM) < flush && math.Abs(whole.At(s.FromMM)-s.DepthFromMM) < flush {
			p[n-1] = whole
			return p
		}
	}
	return append(p, s)
}

// extent returns the least and greatest depth between two radii.
func extent(p profile, from, to float64) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, s := range p {
		lo, hi := math.Max(from, s.FromMM), math.Min(to, s.ToMM)
		if lo < hi {
			least = math.Min(least, math.Min(s.At(lo), s.At(hi)))
			most = math.Max(most, math.Max(s.At(lo), s.At(hi)))
		}
	}
	if least > most {
		return 0, 0
	}
	return least, most
}

// turned returns 2π∫ r h dr and 2π∫ r³ h dr of a span, h its depth: the volume
// and the second moment of the ring or bevel it cuts. With DepthFromMM = 0 they
// are the bevel, with equal depths the ring ½ m (r₁² + r₂²), of MODEL §9.
func (s Span) turned() (volume, second float64) {
	a, b, ha, hb := s.FromMM, s.ToMM, s.DepthFromMM, s.DepthToMM
	volume = math.Pi * (b - a) / 3 * (ha*(2*a+b) + hb*(a+2*b))
	second = math.Pi * (b - a) / 10 *
		(ha*(4*a*a*a+3*a*a*b+2*a*b*b+b*b*b) + hb*(a*a*a+2*a*a*b+3*a*b*b+4*b*b*b))
	return volume, second
}
