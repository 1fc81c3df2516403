package bench

import (
	"math"

	"pintwelve/core/form"
)

// WheelG is what the scale last said of a side's wheel, g.
func WheelG(r *form.Reader, side string) (g float64, ok bool) {
	q := form.Read(r.Form)
	if g, ok = q.Number(form.WheelAfter, side); !ok {
		g, ok = q.Number(form.WheelWeight, side)
	}
	return g, ok
}

// Weighing is what two weighings that should agree come to.
type Weighing struct {
	G    [2]float64 // what each says, g
	Told bool       // that they differ, beyond the scale's steps
}

// Matched sets the two wheels beside each other as they were last weighed, each reading
// within half a step of the scale; false where one wasn't.
func Matched(r *form.Reader) (w Weighing, ok bool) {
	for i, side := range Sides {
		if w.G[i], ok = WheelG(r, side); !ok {
			return w, false
		}
	}
	w.Told = math.Abs(w.G[0]-w.G[1]) > form.Read(r.Form).Default(form.LightenScale)+1e-9
	return w, true
}

// Heavier is the side's number that weighs more, and by how much [g].
func (w *Weighing) Heavier() (side int, by float64) {
	if w.G[1] > w.G[0] {
		side = 1
	}
	return side, math.Abs(w.G[0] - w.G[1])
}
