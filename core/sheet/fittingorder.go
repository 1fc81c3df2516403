package sheet

import (
	"strconv"

	"pintwelve/core/form"
)

// work is the order of work, as he takes it, with the ticks' names.
var work = [...][2]string{
	{"found", "look it over as found"}, {"split", "split it"}, {"measure", "measure"}, {"lighten", "lighten"}, {"balance", "balance"},
	{"press", "press it up"}, {"true", "true it"}, {"nuts", "nuts and locks"}, {"again", "true it again"}, {"cases", "into the cases"},
}

// order says where in the order of work the job stands.
func order(a *Answers, r *form.Reader) {
	done, next := 0, ""
	for i := len(work) - 1; i >= 0; i-- {
		if r.Form["order."+work[i][0]] == "yes" {
			done++
		} else {
			next = work[i][1]
		}
	}
	a.say("order.count", "% of % done", strconv.Itoa(done), strconv.Itoa(len(work)))
	if next == "" {
		a.say("order.headline", "All done.")
	} else {
		a.say("order.headline", "Next: %.", next)
	}
}
