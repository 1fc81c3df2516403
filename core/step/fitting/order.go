package fitting

import (
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// Task is a line of the order of work: its tick, what it is called there, and
// what tells of a job whether its figures show it done, or begun (nil where no figure can).
type Task struct {
	Tick        form.ID
	Words       string
	Done, Begun func(*bench.Kept, form.Form) bool
}

// Order returns the step that says where in the order of work a job stands.
func Order(work []Task) bench.Step {
	return bench.Step{Name: "order", Answer: func(a *bench.Answers, r *form.Reader) { order(a, r, work) }}
}

func order(a *bench.Answers, r *form.Reader, work []Task) {
	done, last := 0, -1
	first, after := "", ""
	for i, task := range work {
		shown := task.Done != nil && task.Done(a.Kept, r.Form)
		if shown {
			a.Say(task.Tick.Name()+".shown", "yes")
		}
		if shown || r.Text(task.Tick) == "yes" {
			done++
			last = i
			after = ""
			continue
		}
		if first == "" {
			first = task.Words
		}
		if after == "" || task.Begun != nil && task.Begun(a.Kept, r.Form) {
			after = task.Words
		}
	}
	a.Say("order.count", doneOf(strconv.Itoa(done), strconv.Itoa(len(work))))
	switch {
	case after != "" && last < len(work)-1:
		// What he left out before the last that is done he may do without.
		a.Say("order.headline", nextIs(after))
	case first != "":
		a.Say("order.headline", leftOut(first))
	default:
		a.Say("order.headline", allDone)
	}
}
