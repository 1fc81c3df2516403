package bench

import (
	"math"

	"pintwelve/core/form"
)

// Weighing is what two weighings that should agree come to.
type Weighing struct {
	G    [2]float64 // what each says, g
	Told bool       // that they differ, beyond the scale's steps
}

// Matched sets the two wheels beside each other as the scale last said of them, each
// reading within half a step of it; false where one wasn't weighed, or was before its
// cuts and the other after.
func Matched(r *form.Reader) (w Weighing, ok bool) {
	q := r.Apart() // what is wrong with a weight is the lightening's to say
	when := form.WheelWeight
	for _, side := range Sides {
		if !q.Blank(form.WheelAfter, side) {
			when = form.WheelAfter
		}
	}
	for i, side := range Sides {
		if w.G[i], ok = q.Number(when, side); !ok {
			return w, false
		}
	}
	w.Told = math.Abs(w.G[0]-w.G[1]) > q.Default(form.LightenScale)+1e-9
	return w, true
}

// Heavier is the side's number that weighs more, and by how much [g].
func (w *Weighing) Heavier() (side int, by float64) {
	if w.G[1] > w.G[0] {
		side = 1
	}
	return side, math.Abs(w.G[0] - w.G[1])
}
