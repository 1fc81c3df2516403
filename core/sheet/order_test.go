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
