package sheet

import (
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"pintwelve/core/form"
	"pintwelve/testdata/jobs"

	"github.com/stretchr/testify/assert"
)

// In other units figures lie within a tenth of a half-thou dial's division of
// what they were, and the words tell the same.
func TestReadingsInOtherUnitsAreRoundedToTheDial(t *testing.T) {
	f := jobs.Typed("3", "5", "5.5", "7:30")
	f["tolerance"], f["pass.1.edge12"] = "1.5", "1"
	changes := InUnits(f, "metric")
	assert.Equal(t, form.Form{"pass.1.drive.tir": "0.076", "pass.1.timing.tir": "0.14", "pass.1.edge12": "0.025", "tolerance": "0.0381"}, changes)
	after := f.With(changes)
	after["units"] = "metric"
	a, b := Answer(f, ""), Answer(after, "")
	for _, e := range a.Entries {
		if strings.HasSuffix(e.Name, "tir_mm") {
			assert.InDelta(t, e.Number, jobs.Value(t, b, e.Name), 0.00127, e.Name)
		}
	}
	assert.Equal(t, "Strike the timing wheel at 9", jobs.Text(b, "say.truing.headline")[:28])
	assert.Contains(t, jobs.Text(b, "say.truing.headline"), " mm")
	back := after.With(InUnits(after, "inch"))
	delete(back, "units")
	assert.Equal(t, f, back)
}

// Random jobs near what is allowed, seed 7: there rounding would turn some of
// the verdicts, and none turns.
func TestOtherUnitsTurnNoVerdict(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	turned := 0
	for range 300 {
		near := func() string { return strconv.FormatFloat(1.9+0.2*rng.Float64(), 'f', 3, 64) }
		f := jobs.Typed(near(), "3", near(), "9")
		f["drive.division"], f["tolerance"] = "0.5", near()
		wants := verdicts(f)
		rounded := f.With(form.InUnits(f, "metric", 0.1))
		rounded["units"] = "metric"
		if !sameTexts(wants, verdicts(rounded)) {
			turned++
		}
		after := f.With(InUnits(f, "metric"))
		after["units"] = "metric"
		assert.Equal(t, wants, verdicts(after), "%v", f)
	}
	assert.Positive(t, turned, "no job was near enough for the test to show anything")
}
