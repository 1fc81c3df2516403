package drill

import "math"

// layout is holes of one row being laid out from the anticlockwise side on.
type layout struct {
	row      *row
	places   []int
	cos, sin float64 // sums over the places
}

// farthest is, for a row, the most that the cosines of so many holes can sum to
// from a place on, places counted from the anticlockwise end. Less than nothing
// when they don't fit.
type farthest [MostHoles + 1][2 * 64]float64

// lay works the table out for up to k holes: a hole stands there or it doesn't.
func (f *farthest) lay(s *space, w *row, k int) {
	end := 2*len(s.cos) - 1
	for i := 1; i <= k; i++ {
		for at := 2 * len(s.cos); at >= end; at-- {
			f[i][at] = math.Inf(-1)
		}
		for at := end - 1; at >= 0; at-- {
			f[i][at] = f[i][at+1]
			if p := at + 1 - len(s.cos); w.free(p) {
				f[i][at] = max(f[i][at], s.cosAt(p)+f[i-1][min(at+w.gap, end)])
			}
		}
	}
}

// anyAngles goes through the plans of one set-up that need not be in pairs.
func (h *search) anyAngles() {
	for i := range h.rows {
		w := &h.rows[i]
		if h.done() {
			return
		}
		if h.bound(w, h.holes) < h.targetG-h.limit || h.over(w, 0, h.holes) {
			continue
		}
		h.far.lay(h.space, w, h.holes)
		h.lay(&layout{row: w}, 1-len(h.cos), h.holes)
	}
}

// crowded is more than the cosines of k places so far apart can sum to: of
// places within i gaps of one another there are no more than i + 1, so that the
// one i-th from the axis is at least i/2 gaps off.
func (s *space) crowded(gap, k int) float64 {
	sum := 0.0
	for i := range k {
		if j := (i*gap + 1) / 2; j < len(s.cos) {
			sum += s.cos[j]
		}
	}
	return sum
}

// lay lays k more holes from a place on.
func (h *search) lay(l *layout, from, k int) {
	if h.stranded(l, from, k) {
		return
	}
	places, cos, sin := l.places, l.cos, l.sin
	for p := from; p < len(h.cos); p++ {
		if !l.row.free(p) {
			continue
		}
		if h.done() || h.lopsided(l, p, k) {
			break
		}
		if h.over(l.row, cos+h.cosAt(p), k-1) {
			continue
		}
		l.places, l.cos, l.sin = append(places, p), cos+h.cosAt(p), sin+h.sinAt(p)
		if k == 1 {
			h.balance(l)
		} else {
			h.lay(l, p+l.row.gap, k-1)
		}
		l.places, l.cos, l.sin = places, cos, sin
	}
}

// lopsided is true where k more holes from p on leave too much whatever they
// do, and from any later place too.
func (h *search) lopsided(l *layout, p, k int) bool {
	across := l.sin
	for i := range k {
		across += h.sinAt(p + i*l.row.gap)
	}
	return h.misses(l.row, l.cos+h.far[k][p+len(h.cos)-1], across)
}

// misses is true where holes leave too much over whose cosines sum to cos at
// most and whose sines to sin at least: the line of their pull, as far as the
// deepest goes, does not come near enough to the target.
func (h *search) misses(w *row, cos, sin float64) bool {
	if cos <= 0 {
		return true
	}
	sin = max(0, sin)
	pull := min(w.one.most, h.targetG*cos/(cos*cos+sin*sin))
	along, across := h.targetG-pull*cos, pull*sin
	return along*along+across*across > h.limit*h.limit
}

// over is true where the holes, with k more, pull too far at their shallowest.
func (h *search) over(w *row, cos float64, k int) bool {
	return (cos+float64(k)*h.cos[len(h.cos)-1])*w.one.least > h.targetG+h.limit
}

// stranded is true where k more holes, as far clockwise as they go, don't come
// back to the axis.
func (h *search) stranded(l *layout, from, k int) bool {
	across := l.sin
	for i := range k {
		across += h.sinAt(len(h.sin) - 1 - i*l.row.gap)
	}
	at := min(from+len(h.cos)-1, 2*len(h.cos)-1)
	return h.misses(l.row, l.cos+h.far[k][at], -across)
}

// balance offers the depth that leaves least: where the pull's component along
// the holes' own direction is that of the target.
func (h *search) balance(l *layout) {
	w := l.row
	size := l.cos*l.cos + l.sin*l.sin
	z := w.bore.nearest(h.targetG * l.cos / (size * w.rMM))
	pull := w.bore.pulls[z] * w.rMM
	along, across := h.targetG-pull*l.cos, pull*l.sin
	h.offer(math.Sqrt(along*along+across*across), func() []part {
		return []part{{w, z, append([]int(nil), l.places...)}}
	})
}

// free is true where a hole of the row may stand.
func (w *row) free(p int) bool {
	if p < 0 {
		return w.acw>>-p&1 == 1
	}
	return w.cw>>p&1 == 1
}

func (s *space) cosAt(p int) float64 {
	if p = max(p, -p); p < len(s.cos) {
		return s.cos[p]
	}
	return 0
}

// sinAt goes on rising past the last place, so that it stays a lower bound.
func (s *space) sinAt(p int) float64 {
	if p < 0 {
		return -s.sinAt(-p)
	}
	return s.sin[min(p, len(s.sin)-1)]
}
