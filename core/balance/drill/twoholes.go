package drill

import (
	"math"
	"sort"
)

// twoHoles goes through all plans of two holes that have nothing to do with each
// other, the strongest first, so that what is too weak can be left out together.
func (h *search) twoHoles() {
	if h.holes != 2 {
		return
	}
	strong := h.strong()
	if len(strong) == 0 {
		return
	}
	end := len(h.cos) - 1
	var ends []bank
	for p := -end; p <= end; p++ {
		ends = append(ends, bankAt(p, strong))
	}
	for i := range ends {
		q := (i + end) % len(ends) // clockwise from the axis, then the rest
		for p := 0; p <= q && !h.done(); p++ {
			h.couple(ends[p], ends[q])
		}
	}
}

// strong returns the rows that with one more hole can reach the target, the
// strongest first.
func (h *search) strong() []*row {
	most := 0.0
	for i := range h.rows {
		most = math.Max(most, h.rows[i].one.most)
	}
	var all []*row
	for i := range h.rows {
		if w := &h.rows[i]; w.one.most+most >= h.targetG-h.limit {
			all = append(all, w)
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].one.most > all[j].one.most })
	return all
}

// bank is the rows that have one place free, strongest first.
type bank struct {
	place int
	rows  []*row
	one   span // what a hole there can pull, g·mm
}

func bankAt(place int, strong []*row) bank {
	b := bank{place, make([]*row, 0, len(strong)), span{math.Inf(1), 0}}
	for _, w := range strong {
		if w.free(place) {
			b.rows = append(b.rows, w)
			b.one = span{min(b.one.least, w.one.least), max(b.one.most, w.one.most)}
		}
	}
	return b
}

// couple goes through the holes at one place that leave what a hole at another
// can pull, along and across the axis.
func (h *search) couple(one, other bank) {
	cos, rest := h.cosAt(one.place), h.cosAt(other.place)
	must := span{
		(h.targetG - h.limit - other.one.most*rest) / cos,
		(h.targetG + h.limit - other.one.least*rest) / cos,
	}
	// What the second hole can't mend is the part square to its own direction.
	square := h.targetG * h.sinAt(other.place)
	sin := h.sinAt(other.place)*cos - rest*h.sinAt(one.place)
	if sin > 0 {
		must.least = max(must.least, (square-h.limit)/sin)
		must.most = min(must.most, (square+h.limit)/sin)
	} else if math.Abs(square) > h.limit {
		return
	}
	for _, w := range one.rows {
		if h.done() || w.one.most < must.least {
			return
		}
		for z := w.bore.nearest(must.most / w.rMM); z >= 0 && w.bore.pulls[z]*w.rMM >= must.least; z-- {
			h.join(w, z, one.place, other)
		}
	}
}

// join offers a hole with the best hole of every row at another place.
func (h *search) join(w *row, z, p int, other bank) {
	q, pull := other.place, w.bore.pulls[z]*w.rMM
	along, across := h.targetG-pull*h.cosAt(p), pull*h.sinAt(p)
	want := along*h.cosAt(q) - across*h.sinAt(q)
	square := along*h.sinAt(q) + across*h.cosAt(q)
	between := h.cosAt(p)*h.cosAt(q) + h.sinAt(p)*h.sinAt(q)
	if math.Abs(square) > h.limit {
		return
	}
	for _, v := range other.rows {
		if h.done() || v.one.most+h.limit < want {
			return
		}
		y := v.bore.nearest(want / v.rMM)
		off := want - v.bore.pulls[y]*v.rMM
		if math.Abs(off) > h.limit || !h.apart(w, v, between) {
			continue
		}
		h.offer(math.Sqrt(off*off+square*square), func() []part {
			return []part{{w, z, []int{p}}, {v, y, []int{q}}}
		})
	}
}
