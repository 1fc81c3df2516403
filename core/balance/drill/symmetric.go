package drill

import "math"

// pairing is the holes of one set-up being laid out in pairs about the axis, and
// the one on it, as steps off.
type pairing struct {
	row   *row
	steps []int
	sum   float64 // of the cosines of all holes
}

// span is what a part of a plan must come to, for a plan no worse than the best.
type span struct{ least, most float64 }

// span is for the cosines of a row beside which other holes pull from least to
// most.
func (h *search) span(w *row, least, most float64) span {
	return span{
		(h.targetG - h.limit - most) / w.one.most,
		(h.targetG + h.limit - least) / w.one.least,
	}
}

// symmetric goes through the plans of one set-up.
func (h *search) symmetric() {
	if h.reach(h.holes) < h.targetG-h.limit {
		return
	}
	for i := range h.rows {
		w := &h.rows[i]
		h.pairings(w, h.holes, h.span(w, 0, 0), func(f *pairing) bool {
			perGram := w.rMM * f.sum
			z := w.bore.nearest(h.targetG / perGram)
			h.offer(math.Abs(h.targetG-w.bore.pulls[z]*perGram), func() []part {
				return []part{{w, z, f.places()}}
			})
			return h.done()
		})
		if h.done() {
			return
		}
	}
}

// pairings calls f for every way to lay k holes in pairs about the axis, nearest
// first, whose cosines sum to what they must. It stops when f returns true.
func (s *space) pairings(w *row, k int, sum span, f func(*pairing) bool) {
	if s.packed(w, k) < sum.least {
		return
	}
	var room [MostHoles]int
	start, from := pairing{row: w, steps: room[:0]}, 1
	if k%2 == 1 {
		if w.pairs&1 == 0 {
			return
		}
		start.steps, start.sum, from = append(start.steps, 0), 1, w.gap
	}
	s.spread(&start, from, k/2, sum, f)
}

// spread lays the pairs that are left from a step on.
func (s *space) spread(n *pairing, from, pairs int, must span, f func(*pairing) bool) bool {
	if pairs == 0 {
		return n.sum >= must.least && n.sum <= must.most && f(n)
	}
	farthest := s.cos[len(s.cos)-1]
	steps, sum := n.steps, n.sum
	for j, ok := nextBit(n.row.pairs, from); ok; j, ok = nextBit(n.row.pairs, j+1) {
		if sum+2*float64(pairs)*s.cos[j] < must.least {
			break
		}
		if sum+2*s.cos[j]+2*float64(pairs-1)*farthest > must.most {
			continue
		}
		n.steps, n.sum = append(steps, j), sum+2*s.cos[j]
		if s.spread(n, j+n.row.gap, pairs-1, must, f) {
			return true
		}
	}
	n.steps, n.sum = steps, sum
	return false
}

// places returns the holes of the pairing.
func (f *pairing) places() []int {
	var all []int
	for _, j := range f.steps {
		all = append(all, j)
		if j > 0 {
			all = append(all, -j)
		}
	}
	return all
}
