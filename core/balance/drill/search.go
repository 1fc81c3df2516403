package drill

import "math"

// part is the holes of one set-up: places in steps from the axis, signed,
// clockwise counted up.
type part struct {
	row    *row
	depth  int
	places []int
}

// pick is a plan as the search has it.
type pick struct {
	holes  int
	kind   Kind
	tenths float64 // of the tolerance, whole, left over
	parts  []part
}

// better is the measure of the package comment for plans out of tolerance;
// within it, holes and kinds are gone through in order.
func (p pick) better(than pick) bool {
	if p.tenths != than.tenths {
		return p.tenths < than.tenths
	}
	if p.holes != than.holes {
		return p.holes < than.holes
	}
	return p.kind < than.kind
}

// search is one class of plans being gone through, or all of them for the closest.
type search struct {
	*space
	best    pick
	closest bool    // no plan is within the tolerance: the least left over counts
	limit   float64 // g·mm: a plan that leaves more is no better than the best
	holes   int
	kind    Kind
	far     farthest
}

// tenth is the grain that remainders count in, g·mm.
func (s *space) tenth() float64 { return s.t.ToleranceGMM / 10 }

// search returns the best plan, and whether it is within the tolerance.
func (s *space) search() (pick, bool) {
	if s.targetG <= s.t.ToleranceGMM {
		return pick{}, true
	}
	h := &search{space: s}
	for h.holes = 1; h.holes <= s.t.MostHoles; h.holes++ {
		for h.kind = Symmetric; h.kind <= TwoHoles; h.kind++ {
			h.best, h.limit = pick{tenths: math.Inf(1)}, s.t.ToleranceGMM
			if h.run(); h.best.parts != nil {
				return h.best, true
			}
		}
	}
	return s.closestPlan(), false
}

// closestPlan is for when no plan is within the tolerance. It starts where the
// closest are: at the most holes when the target is out of reach, else at one.
func (s *space) closestPlan() pick {
	h := &search{space: s, closest: true}
	h.best = pick{tenths: math.Floor(s.targetG / s.tenth())}
	h.limit = s.targetG
	for i := range s.t.MostHoles {
		h.holes = i + 1
		if s.mostGMM() < s.targetG {
			h.holes = s.t.MostHoles - i
		}
		for h.kind = Symmetric; h.kind <= TwoHoles; h.kind++ {
			h.run()
		}
	}
	return h.best
}

func (h *search) run() {
	switch h.kind {
	case Symmetric:
		h.symmetric()
	case TwoDepths, TwoSetUps:
		h.twoParts()
	case AnyAngles:
		h.anyAngles()
	case TwoHoles:
		h.twoHoles()
	}
}

// done is true when nothing can be better: less than a tenth is left.
func (h *search) done() bool { return !h.closest && h.best.tenths == 0 }

// offer takes a plan that leaves so much, if it is better than the best. The
// parts are made only then.
func (h *search) offer(left float64, parts func() []part) {
	if left > h.limit {
		return
	}
	p := pick{holes: h.holes, kind: h.kind, tenths: math.Floor(left / h.tenth())}
	if h.closest && !p.better(h.best) || !h.closest && p.tenths >= h.best.tenths {
		return
	}
	p.parts = parts()
	h.best = p
	h.limit = math.Min(h.limit, p.tenths*h.tenth())
	if h.closest {
		h.limit += h.tenth() // as near with fewer holes is better
	}
}
