package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
	"pintwelve/testdata/jobs"
)

// Out of true in its cases a crank isn't done with: it comes out of them again.
func TestACrankOutOfTrueInItsCasesIsNotDone(t *testing.T) {
	ticks := form.Form{"cases.drive": "0.5", "cases.timing": "0.5"}
	for _, task := range []string{"found", "split", "measure", "lighten", "balance", "press", "true", "nuts", "again"} {
		ticks["order."+task] = "yes"
	}
	assert.Equal(t, "All done.", jobs.Said(Answer(ticks, "order"), "order.headline"))
	out := Answer(ticks.With(form.Form{"cases.timing": "4"}), "order")
	assert.Equal(t, "Next: into the cases.", jobs.Said(out, "order.headline"))
	assert.Equal(t, "9 of 10 done", jobs.Said(out, "order.count"))
	assert.Empty(t, jobs.Said(out, "order.cases.shown"))
}

// Drilled and weighed again, 60% where 60 was aimed at, a crank is balanced by its figures; by
// what was reckoned, assumed, doubted or is still to be drilled it isn't.
func TestACrankIsBalancedByTheKnifeEdges(t *testing.T) {
	drilled := jobs.Knife("knife.came", "55", "target", "factor", "target.factor", "60")
	hole := form.Form{"hole.a.radius": "76", "hole.a.hour": "6", "hole.a.drill": "10", "hole.a.bottom": "through"}
	for _, row := range []struct {
		why  string
		more form.Form
		done bool
	}{
		{"as near as asked", nil, true},
		{"never drilled, and as near", form.Form{"knife.came": ""}, true},
		{"further off", form.Form{"target.factor": "62"}, false},
		{"cleared to be weighed again", form.Form{"knife.whole.hung": ""}, false},
		{"by a factor that is stated", form.Form{"knife.what": "stated", "knife.stated": "60"}, false},
		{"one wheel taken for both", form.Form{"knife.what": "drive", "knife.drive.hung": "545", "knife.drive.on": "bare"}, false},
		{"a hole still to drill", hole, false},
		{"aimed at as found", form.Form{"target": "keep"}, false},
		{"heavy to one side", form.Form{"knife.whole.hour": "3", "knife.whole.weight": "20", "knife.whole.radius": "80"}, false},
		{"a rod whose ends don’t make it", form.Form{"weight.rod": "490"}, false},
		{"a figure that is wrong", form.Form{"plan.within": "lots"}, false},
	} {
		assert.Equal(t, row.done, jobs.Said(Answer(drilled.With(row.more), "order"), "order.balance.shown") == "yes", row.why)
	}
}
