package drill

import (
	"math"
	"sort"
)

// slot is the hole on the axis of a row, or one pair of it, as a second set-up.
type slot struct {
	row, step   int32
	perGram     float64 // g·mm along the axis for each g of pull of one hole
	most, least float64 // g·mm
}

// twoParts goes through the plans of two set-ups or two depths, the second of one
// or two holes.
func (h *search) twoParts() {
	for holes := 1; holes <= 2 && holes < h.holes && !h.done(); holes++ {
		if h.kind == TwoDepths {
			h.twoDepths(holes)
		} else if main := h.reach(h.holes - holes); main > 0 {
			h.twoSetUps(holes, main)
		}
	}
}

// twoSetUps gives each row the slots of all, those that with the strongest and the
// weakest pairing there is could come to the target.
func (h *search) twoSetUps(holes int, main float64) {
	must := span{h.targetG - h.limit - main, h.targetG + h.limit - h.weakest(h.holes-holes)}
	if h.reach(holes) < must.least {
		return
	}
	slots := h.slots(0, len(h.rows), holes, must)
	sort.SliceStable(slots, func(i, j int) bool { return slots[i].most > slots[j].most })
	pull := pulls(slots)
	for i := range h.rows {
		h.beside(&h.rows[i], h.holes-holes, slots, pull)
	}
}

// weakest is no more than the least that k holes of a row pull.
func (s *space) weakest(k int) float64 {
	least := math.Inf(1)
	for i := range s.rows {
		w := &s.rows[i]
		least = math.Min(least, w.one.least)
	}
	return least * float64(k) * s.cos[len(s.cos)-1]
}

// twoDepths gives each row slots of its own only.
func (h *search) twoDepths(holes int) {
	for i := range h.rows {
		w := &h.rows[i]
		if h.bound(w, h.holes) >= h.targetG-h.limit {
			slots := h.slots(i, i+1, holes, span{0, math.Inf(1)})
			h.beside(w, h.holes-holes, slots, pulls(slots))
		}
	}
}

// bound is more than k holes of a row can have, spaced as they must be.
func (s *space) bound(w *row, k int) float64 { return s.crowded(w.gap, k) * w.one.most }

// slots returns the axis holes, or the pairs, of the rows from one to another,
// nearest to the axis first, that can pull, g·mm, as they must.
func (s *space) slots(from, to, holes int, must span) []slot {
	var all []slot
	for i := from; i < to; i++ {
		w := &s.rows[i]
		first, last := 0, 0
		if holes == 2 {
			first, last = 1, len(s.cos)-1
		}
		for j, ok := nextBit(w.pairs, first); ok && j <= last; j, ok = nextBit(w.pairs, j+1) {
			each := float64(holes) * s.cos[j]
			if w.one.most*each < must.least {
				break
			}
			if w.one.least*each <= must.most {
				all = append(all, slot{int32(i), int32(j), w.rMM * each, w.one.most * each, w.one.least * each})
			}
		}
	}
	return all
}

// pulls returns the weakest and the strongest of slots.
func pulls(slots []slot) span {
	p := span{math.Inf(1), 0}
	for i := range slots {
		p = span{min(p.least, slots[i].least), max(p.most, slots[i].most)}
	}
	return p
}

// beside goes through the pairings of k holes of a row with each of the slots, the
// strongest slot first.
func (h *search) beside(w *row, k int, slots []slot, pull span) {
	if len(slots) == 0 || h.done() {
		return
	}
	h.pairings(w, k, h.span(w, pull.least, pull.most), func(f *pairing) bool {
		for i := range slots {
			a := &slots[i]
			if f.sum*w.one.most+a.most < h.targetG-h.limit {
				break
			}
			if h.clear(f, a) {
				h.depths(f, a)
			}
			if h.done() {
				return true
			}
		}
		return false
	})
}

// clear is true where the holes of a slot stand clear of a pairing's.
func (s *space) clear(f *pairing, a *slot) bool {
	w, step := &s.rows[a.row], int(a.step)
	for _, j := range f.steps {
		off := max(j-step, step-j)
		if w == f.row && off < w.gap || w != f.row && !s.apart(f.row, w, s.cos[off]) {
			return false
		}
	}
	return true
}

// apart is true where holes of two rows, as far apart in angle as has this
// cosine, stand clear of each other.
func (s *space) apart(w, v *row, cos float64) bool {
	least := (w.bore.dMM+v.bore.dMM)/2 + s.t.WallMM - snugMM
	return w.rMM*w.rMM+v.rMM*v.rMM-2*w.rMM*v.rMM*cos >= least*least
}

// depths goes through the depths of a pairing, and the nearest of the slot to each.
func (h *search) depths(f *pairing, a *slot) {
	perGram, other := f.row.rMM*f.sum, &h.rows[a.row]
	for z, pull := range f.row.bore.pulls {
		rest := h.targetG - pull*perGram
		if rest > a.most+h.limit {
			continue
		}
		if rest < a.least-h.limit || h.done() {
			return
		}
		y := other.bore.nearest(rest / a.perGram)
		h.offer(math.Abs(rest-other.bore.pulls[y]*a.perGram), func() []part {
			lone := &pairing{steps: []int{int(a.step)}}
			return []part{{f.row, z, f.places()}, {other, y, lone.places()}}
		})
	}
}
