package fitting

import (
	"pintwelve/core/bench"
	"pintwelve/core/fit"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// pressingUp answers the step "Press up".
func pressingUp(a *bench.Answers, r *form.Reader) {
	f := readFitting(a, r)
	f.pressing()
	side := f.sideLimits()
	w := fit.Widths{WashersMM: r.Default(form.PressWashers)}
	has := true
	for _, part := range [...]struct {
		id   form.ID
		keys []string
		mm   *float64
	}{{form.PressWidth, bench.Sides[:1], &w.LeftMM}, {form.PressWidth, bench.Sides[1:], &w.RightMM}, {form.PressRod, nil, &w.RodMM}} {
		mm, ok := r.Number(part.id, part.keys...)
		*part.mm = mm
		has = has && ok
	}
	first := measureWidths
	if has {
		first = thenOverWheels
		f.widths(&w, side)
	}
	f.Say("press.fold.nuts", nutsFold(r.Text(form.PressNuts) == "yes", r.Text(form.PressLocked) == "yes"))
	if n := len(r.Form.Rows("joint")); n > 0 {
		f.Say("press.fold.tonnes", tonnesFold(n))
	}
	if w, ok := bench.Matched(r); ok && w.Told {
		side, by := w.Heavier()
		f.Say("press.matched", matchThem(bench.Sides[side], bench.Grams(by, 1)))
	}
	f.readAgain()
	f.top("press", first)
}

// readAgain says when the crank is to be read again: what it showed before it was
// split, or before its nuts were drawn up, is nothing to strike by.
func (f *fitting) readAgain() {
	if _, _, read := f.cameAt(); !read {
		return
	}
	rounds := f.r.Rows("pass")
	if len(rounds) <= 1 {
		f.Say("press.read", readAnew)
		return
	}
	for _, key := range rounds {
		if f.r.Word(form.PassSince, key) == "nuts" {
			return
		}
	}
	if f.r.Text(form.PressNuts) == "yes" {
		f.Say("press.drawn", readWithNuts)
	}
}

// widthStep is how finely a width over the wheels is read and told, mm.
const widthStep = 0.01

func width(mm float64) string { return unit.Format(mm, unit.MM, widthStep) }

func (f *fitting) widths(w *fit.Widths, limits fit.Limits) {
	stop, err := w.OverWheels((limits.LeastMM + limits.MostMM) / 2)
	if f.faulty(err, form.PressRod) {
		return
	}
	half := (limits.MostMM - limits.LeastMM) / 2
	f.Say("press.stop", stopAt(width(stop)))
	f.Say("press.range", givesClearance(width(stop-half), width(stop+half)))
	f.Number("fit.press.stop_mm", stop)
	over, ok := f.r.Number(form.PressOver)
	if !ok {
		return
	}
	_, side, err := w.Side(over)
	if !f.faulty(err, form.PressOver) {
		f.judged(gap{"press.side_clearance", sideClearance, exact(side, widthStep), limits, tooLittle, tooMuch})
	}
}
