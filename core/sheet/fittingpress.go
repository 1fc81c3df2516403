package sheet

import (
	"pintwelve/core/fit"
	"pintwelve/core/form"
)

// pressingUp answers the step "Press up".
func pressingUp(a *Answers, r *form.Reader) {
	f := readFitting(a, r)
	side := f.sideLimits()
	w := fit.Widths{WashersMM: r.Default("press.washers")}
	has := true
	for _, width := range [...]struct {
		name string
		mm   *float64
	}{{"drive", &w.LeftMM}, {"timing", &w.RightMM}, {"rod", &w.RodMM}} {
		mm, ok := r.Number("press." + width.name)
		*width.mm = mm
		has = has && ok
	}
	first := "Measure each wheel’s width at the pin, and the rod’s."
	if has {
		first = "Then measure over the wheels."
		f.widths(&w, side)
	}
	f.top("press", first)
}

func (f *fitting) widths(w *fit.Widths, limits fit.Limits) {
	stop, err := w.OverWheels((limits.LeastMM + limits.MostMM) / 2)
	if f.faulty("press.rod", err) {
		return
	}
	half := (limits.MostMM - limits.LeastMM) / 2
	f.say("press.stop", "Stop the press at % over the wheels.", f.size(stop))
	f.say("press.range", "From % to % gives the rod its side clearance.", f.size(stop-half), f.size(stop+half))
	f.number("fit.press.stop_mm", stop)
	over, ok := f.r.Number("press.over")
	if !ok {
		return
	}
	_, side, err := w.Side(over)
	if !f.faulty("press.over", err) {
		f.judged(gap{"press.side_clearance", "Side clearance", exact(side, 0.01), limits, "too little", "too much"})
	}
}
