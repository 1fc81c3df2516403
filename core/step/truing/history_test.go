package truing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/jobsheet"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/jobs"
)

// To say that all was done as said teaches what logging it does, and stands in the
// record of what was done.
func TestDoneAsSaidCountsAsLogged(t *testing.T) {
	f := jobs.Skewed()
	logged := f.With(truing.Done(f, []string{"a", "b"}, "2"))
	a := sheet.Answer(jobs.Again(logged, "", "4", "5", "4", "7"), "")
	b := sheet.Answer(jobs.Again(f, "said", "4", "5", "4", "7"), "")
	assert.Equal(t, "strike", jobs.Text(a, "moves/0/kind"))
	for i := range 2 {
		name := "moves/" + string(rune('0'+i)) + "/strength"
		// What is logged is rounded to a tenth.
		assert.InDelta(t, jobs.Value(t, a, name), jobs.Value(t, b, name), 0.1, name)
	}
	assert.Regexp(t, `; struck drive at 3, .*; squeezed at 6, .*, as advised\.$`, jobs.Text(b, "say.pass.1.said"))
	assert.NotContains(t, jobs.Text(a, "say.pass.1.said"), "as advised")
}

// After a pass that wasn't read there is nothing that could have been done as advised.
func TestNothingWasAdvisedAfterAPassUnread(t *testing.T) {
	f := jobs.Again(jobs.Skewed(), "", "", "", "", "")
	for _, since := range []string{"said", "first"} {
		f = f.With(form.Form{
			"pass.3.order": "3", "pass.3.since": since,
			"pass.3.drive.tir": "4", "pass.3.drive.high": "5", "pass.3.timing.tir": "4", "pass.3.timing.high": "7",
		})
		a := sheet.Answer(f, "")
		assert.Contains(t, jobs.Text(a, "say.pass.2.said"), "not read yet.", since)
		assert.NotContains(t, jobs.Text(a, "say.pass.2.said"), "as advised", since)
	}
}

// Of two moves logged, the second counts as not done when it is said so.
func TestTheFirstMoveOnlyTakesBackTheSecond(t *testing.T) {
	f := jobs.Skewed()
	logged := f.With(truing.Done(f, []string{"a", "b"}, "2"))
	first := logged.With(nil)
	delete(first, "pass.1.done.b.kind")
	delete(first, "pass.1.done.b.hour")
	a := sheet.Answer(jobs.Again(first, "", "7", "5:30", "7", "6:30"), "")
	for name, f := range map[string]form.Form{"logged": logged, "not logged": f} {
		b := sheet.Answer(jobs.Again(f, "first", "7", "5:30", "7", "6:30"), "")
		assert.InDelta(t, jobs.Value(t, a, "moves/0/strength"), jobs.Value(t, b, "moves/0/strength"), 0.1, name)
		assert.Contains(t, jobs.Text(b, "say.pass.1.said"), "; struck drive at 3, ", name)
		assert.NotContains(t, jobs.Text(b, "say.pass.1.said"), "squeezed", name)
	}
}

func TestTheRecordSaysWhatWasNotLogged(t *testing.T) {
	f := jobs.Skewed()
	for since, says := range map[string]string{
		"nuts": "; the nuts were drawn up.", "apart": "; the crank was pressed apart and up again.", "else": "; something was done that isn’t logged.", "nothing": "T 8 thou.", "": "T 8 thou.",
	} {
		f := jobs.Again(f, since, "3", "1", "3", "2")
		assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.pass.1.said"), says, since)
		assert.Contains(t, jobs.Text(sheet.Answer(f, jobsheet.Name), "say.pass.1.said"), says, since)
	}
}

// A strike the wrong way is told beside a squeeze that went right.
func TestAllThatWasTriedInAPassIsTold(t *testing.T) {
	f := jobs.Skewed()
	logged := f.With(truing.Done(f, []string{"a", "b"}, "2"))
	// What is open at 6 falls from 6.9 to 3.4, what is off towards 3 and 9 rises from 4 to 8.3.
	a := sheet.Answer(jobs.Again(logged, "", "9", "3:45", "9", "8:15"), "")
	for _, say := range []string{"say.truing.lesson", "say.pass.1.came"} {
		assert.Contains(t, jobs.Text(a, say), "The strike after the first readings went the other way", say)
	}
}

// The tailstock's pressure is the one thing that stands between readings and
// advice: once the needles moved, the next readings count, and are no comparison.
func TestReadingsUnderPressureAreReadAgain(t *testing.T) {
	f := jobs.Typed("6", "6", "6", "6")
	f["pass.1.tailstock"] = "moved"
	a := sheet.Answer(f, "")
	assert.Contains(t, jobs.Text(a, "say.truing.headline"), "It was pressure")
	assert.Equal(t, "needs a reading", jobs.Text(a, "verdict"))
	assert.Equal(t, "read again", jobs.Text(a, "asks/0/what"))
	assert.Empty(t, jobs.Text(a, "say.truing.did"))
	assert.Equal(t, "Not measured to the end yet.", jobs.Text(sheet.Answer(f, jobsheet.Name), "say.sheet.plain"))
	b := sheet.Answer(jobs.Again(f, "", "1", "3", "0.5", "3"), "")
	assert.NotContains(t, jobs.Text(b, "say.truing.headline"), "pressure")
	assert.Empty(t, jobs.Text(b, "say.ask.since"))
	f["pass.1.tailstock"] = "steady"
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.truing.headline"), "Squeeze the wheels at 6")
}

func TestPlacesCloseToTheCentresAreAddedOnce(t *testing.T) {
	f := jobs.Typed("1", "3", "0.5", "3")
	near := truing.NearCentres(f, [2]string{"a", "b"})
	assert.Equal(t, form.Form{
		"dial.a.half": "drive", "dial.a.at": "15", "dial.a.order": "2",
		"dial.b.half": "timing", "dial.b.at": "15", "dial.b.order": "3",
	}, near)
	f = f.With(near)
	assert.Empty(t, form.Check(f))
	assert.Empty(t, truing.NearCentres(f, [2]string{"c", "d"}))
}

func TestWhatIsWantedIsAskedByItsField(t *testing.T) {
	f := form.Form{}
	for _, step := range [...][3]string{
		{"", "", "pass.1.drive.tir"}, {"pass.1.drive.tir", "3", "pass.1.drive.high"}, {"pass.1.drive.high", "3", "pass.1.timing.tir"},
		{"pass.1.timing.how", "turn", "pass.1.timing.turn"},
	} {
		if step[0] != "" {
			f[step[0]] = step[1]
		}
		a := sheet.Answer(f, "")
		assert.Equal(t, "reading", jobs.Text(a, "asks/0/what"))
		assert.Equal(t, step[2], jobs.Text(a, "asks/0/field"))
		stop, ok := a.Get("stop")
		assert.True(t, ok && stop.Kind == bench.Null)
	}
}
