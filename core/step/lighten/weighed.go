package lighten

import (
	"math"

	"pintwelve/core/bench"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
)

// weighIns says what the weighings tell beside each other.
func (l *lightening) weighIns() {
	if w, ok := bench.Matched(l.r); ok {
		l.matched(&w)
		l.whole(&w)
	}
}

// matched says whether the wheels weigh alike, as they should before they are pressed
// up where they are meant to be.
func (l *lightening) matched(w *bench.Weighing) {
	side, by := w.Heavier()
	l.Number("lighten.apart_g", by)
	if !w.Told {
		l.Say("lighten.matched", weighAlike)
		return
	}
	l.Say("lighten.matched", weighsMore(bench.Sides[side], l.weight(by)))
}

// whole sets the crank weighed whole beside what its parts weigh.
func (l *lightening) whole(w *bench.Weighing) {
	rest, counted := l.r.Number(form.LightenRest)
	all, weighed := l.r.Number(form.BalanceWhole)
	if !counted || !weighed {
		return
	}
	parts := w.G[0] + w.G[1] + rest
	l.Number("lighten.whole_over_parts_g", all-parts)
	// Three weighings against one, each within half a step.
	if math.Abs(all-parts) <= 2*l.scaleG+1e-9 {
		l.Say("lighten.parts", wholeIsParts(l.weight(all)))
		return
	}
	words := wholeOverParts
	if all < parts {
		words = wholeUnderParts
	}
	l.Say("lighten.parts", words(l.weight(all), l.weight(math.Abs(all-parts)), l.weight(parts)))
}

// onTable says for the sheet's table what the crank weighed and how hard it was to turn,
// before the cuts and after, and where that is the wheels alone.
func (l *lightening) onTable(c *flywheel.Crank, e *flywheel.Effect) {
	if !l.isCut() {
		return
	}
	l.weightOnTable("sheet.weight.found", e.BeforeG, form.WheelWeight)
	l.weightOnTable("sheet.weight.left", e.AfterG, form.WheelAfter)
	inertia := inertiaDrawn
	if c.OtherGMM2 > 0 || l.wheels[0].swung || l.wheels[1].swung {
		inertia = inertiaSwung
	}
	l.Say("sheet.inertia.found", inertia(squared(e.BeforeGMM2)))
	l.Say("sheet.inertia.left", inertia(squared(e.AfterGMM2)))
	if c.OtherG == 0 {
		l.Say("sheet.weight.wheels", "yes")
	}
	if c.OtherGMM2 == 0 {
		l.Say("sheet.inertia.wheels", "yes")
	}
}

// weightOnTable says a weight for the sheet's table, as drawn where a wheel wasn't weighed then.
func (l *lightening) weightOnTable(name string, g float64, weighed form.ID) {
	words := bench.Grams(g, 1)
	if l.r.Blank(weighed, bench.Sides[0]) || l.r.Blank(weighed, bench.Sides[1]) {
		words = weightDrawn(words)
	}
	l.Say(name, words)
}
