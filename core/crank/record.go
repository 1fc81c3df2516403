package crank

import "math"

// record is what became of the moves of a family, the strikes or the bends, since
// the user last said that something else was changed.
type record struct {
	opposite int     // gone the other way since one last went as meant
	quiet    int     // too light to tell, since one went the other way
	gave     float64 // the most that a dose did the other way
	idle     int     // that did nothing, since one last told
	idleDose float64 // the greatest of these
	beside   bool    // the last did nothing beside another that told
	most     float64 // the greatest dose of the kind itself that went as meant
	latest   *Try    // of the kind itself, that told or did nothing
}

// record goes through the tries of a kind and, of bends, of the other one.
func (n *Next) record(k Kind) (r record) {
	for i := range n.Tries {
		t := &n.Tries[i]
		if (t.Kind == Strike) != (k == Strike) || t.Pass < n.since {
			continue
		}
		r.add(t)
		if t.Kind == k && (t.Weight > 0 || t.Outcome == NoEffect) {
			r.latest = t
		}
		if t.Kind == k && t.Outcome == AsMeant {
			r.most = math.Max(r.most, t.Dose)
		}
	}
	return r
}

func (r *record) add(t *Try) {
	r.beside = false
	switch t.Outcome {
	case AsMeant:
		r.opposite, r.quiet, r.idle, r.gave, r.idleDose = 0, 0, 0, 0, 0
	case Unshown:
		r.quiet++
	case Opposite:
		r.opposite++
		r.quiet = 0
		r.gave = math.Max(r.gave, -t.Got/t.Dose)
	case NoEffect:
		r.idle++
		r.idleDose = math.Max(r.idleDose, t.Dose)
		r.beside = t.Beside
	}
}

// bound is the greatest dose that may come next (MODEL §7).
func (r *record) bound() float64 {
	switch {
	case r.idle > 0 && r.beside:
		return harder * r.idleDose
	case r.idle > 0:
		return rise * r.idleDose
	case r.most > 0:
		return math.Max(rise*r.most, trial)
	}
	return trial
}
