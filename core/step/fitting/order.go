package fitting

import (
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// work is the order of work, as he takes it: each tick, and what it is of.
var work = [...]struct {
	tick  form.ID
	words string
}{
	{form.OrderFound, "look it over as found"}, {form.OrderSplit, "split it"}, {form.OrderMeasure, "measure"}, {form.OrderLighten, "lighten"},
	{form.OrderBalance, "balance"}, {form.OrderPress, "press it up"}, {form.OrderTrue, "true it"}, {form.OrderNuts, "nuts and locks"},
	{form.OrderAgain, "true it again"}, {form.OrderCases, "into the cases"},
}

// order says where in the order of work the job stands.
func order(a *bench.Answers, r *form.Reader) {
	done, next := 0, ""
	for i := len(work) - 1; i >= 0; i-- {
		if r.Text(work[i].tick) == "yes" {
			done++
		} else {
			next = work[i].words
		}
	}
	a.Say("order.count", "% of % done", strconv.Itoa(done), strconv.Itoa(len(work)))
	if next == "" {
		a.Say("order.headline", "All done.")
	} else {
		a.Say("order.headline", "Next: %.", next)
	}
}
