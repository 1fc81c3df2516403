package drill

import (
	"cmp"
	"math"
	"slices"
)

// slot is the hole on the axis of a row, or one pair of it, as a second set-up.
type slot struct {
	row         *row
	step        int
	perGram     float64 // g·mm along the axis for each g of pull of one hole
	most, least float64 // g·mm
}

func newSlot(w *row, step int, perGram float64) slot {
	return slot{w, step, perGram, w.bore.most() * perGram, w.bore.least() * perGram}
}

// second goes through the plans of two set-ups, the second of one or two holes.
func (h *hunt) second() {
	for holes := 1; holes <= 2 && holes < h.holes && !h.done(); holes++ {
		if h.kind == Trimmed {
			h.trimmed(holes)
		} else if main := h.reaches[h.holes-holes]; main > 0 {
			h.mixed(holes, main)
		}
	}
}

// mixed gives each row the slots of all, those that with the strongest and the
// weakest fan there is could come to the target.
func (h *hunt) mixed(holes int, main float64) {
	must := span{h.targetG - h.limit - main, h.targetG + h.limit - h.weakest(h.holes-holes)}
	if h.reaches[holes] < must.least {
		return
	}
	slots := h.slots(h.rows, holes, must)
	slices.SortFunc(slots, func(a, b slot) int { return cmp.Compare(b.most, a.most) })
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

// trimmed gives each row slots of its own only.
func (h *hunt) trimmed(holes int) {
	for i := range h.rows {
		w := &h.rows[i]
		if h.bound(w, h.holes) >= h.targetG-h.limit {
			slots := h.slots(h.rows[i:i+1], holes, span{0, math.Inf(1)})
			h.beside(w, h.holes-holes, slots, pulls(slots))
		}
	}
}

// bound is more than k holes of a row can have, spaced as they must be.
func (s *space) bound(w *row, k int) float64 { return s.crowded(w.gap, k) * w.one.most }

// slots returns the axis holes, or the pairs, of some rows, nearest to the axis
// first, that can pull, g·mm, as they must.
func (s *space) slots(rows []row, holes int, must span) []slot {
	var all []slot
	for i := range rows {
		w := &rows[i]
		perGram, j := w.rMM, 0
		if holes == 2 {
			perGram, j = 2*w.rMM, 1
		}
		for j, ok := nextBit(w.even, j); ok && (holes == 2 || j == 0); j, ok = nextBit(w.even, j+1) {
			a := newSlot(w, j, perGram*s.cos[j])
			if a.most < must.least {
				break
			}
			if a.least <= must.most {
				all = append(all, a)
			}
		}
	}
	return all
}

// pulls returns the weakest and the strongest of slots.
func pulls(slots []slot) span {
	p := span{math.Inf(1), 0}
	for _, a := range slots {
		p = span{math.Min(p.least, a.least), math.Max(p.most, a.most)}
	}
	return p
}

// beside goes through the fans of k holes of a row with each of the slots, the
// strongest slot first.
func (h *hunt) beside(w *row, k int, slots []slot, pull span) {
	if len(slots) == 0 || h.done() {
		return
	}
	h.fans(w, k, h.span(w, pull.least, pull.most), func(f *fan) bool {
		for _, a := range slots {
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

// clear is true where the holes of a slot stand clear of a fan's.
func (s *space) clear(f *fan, a slot) bool {
	if a.row == f.row {
		for _, j := range f.steps {
			if max(j-a.step, a.step-j) < f.row.gap {
				return false
			}
		}
		return true
	}
	for _, j := range f.steps {
		if !s.apart(f.row, j, a.row, a.step) {
			return false
		}
	}
	return true
}

// depths goes through the depths of a fan, and the nearest of the slot to each.
func (h *hunt) depths(f *fan, a slot) {
	perGram := f.row.rMM * f.sum
	for z, pull := range f.row.bore.pulls {
		rest := h.targetG - pull*perGram
		if rest > a.most+h.limit {
			continue
		}
		if rest < a.least-h.limit || h.done() {
			return
		}
		y := a.row.bore.nearest(rest / a.perGram)
		h.offer(math.Abs(rest-a.row.bore.pulls[y]*a.perGram), func() []part {
			lone := &fan{steps: []int{a.step}}
			return []part{{f.row, z, f.places()}, {a.row, y, lone.places()}}
		})
	}
}
