package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/step/jobsheet"
	"pintwelve/core/step/truing"
)

// again adds a pass that reads so, with what is said to have come before it.
func again(f form.Form, since, driveTIR, driveHigh, timingTIR, timingHigh string) form.Form {
	return with(f, form.Form{
		"pass.1.order": "1", "pass.2.order": "2", "pass.2.since": since,
		"pass.2.drive.tir": driveTIR, "pass.2.drive.high": driveHigh, "pass.2.timing.tir": timingTIR, "pass.2.timing.high": timingHigh,
	})
}

// skewed wants a strike and a squeeze.
func skewed() form.Form { return typed("8", "5", "8", "7") }

// To say that all was done as said teaches what logging it does, and stands in the
// record of what was done.
func TestDoneAsSaidCountsAsLogged(t *testing.T) {
	f := skewed()
	logged := with(f, truing.Done(f, []string{"a", "b"}, "2"))
	a := Answer(again(logged, "", "4", "5", "4", "7"), "")
	b := Answer(again(f, "said", "4", "5", "4", "7"), "")
	assert.Equal(t, "strike", text(a, "moves/0/kind"))
	for i := range 2 {
		name := "moves/" + string(rune('0'+i)) + "/strength"
		// What is logged is rounded to a tenth.
		assert.InDelta(t, value(t, a, name), value(t, b, name), 0.1, name)
	}
	assert.Regexp(t, `; struck drive at 3, .*; squeezed at 6, .*, as advised\.$`, text(b, "say.pass.1.said"))
	assert.NotContains(t, text(a, "say.pass.1.said"), "as advised")
}

// After a pass that wasn't read there is nothing that could have been done as advised.
func TestNothingWasAdvisedAfterAPassUnread(t *testing.T) {
	f := again(skewed(), "", "", "", "", "")
	for _, since := range []string{"said", "first"} {
		f = with(f, form.Form{
			"pass.3.order": "3", "pass.3.since": since,
			"pass.3.drive.tir": "4", "pass.3.drive.high": "5", "pass.3.timing.tir": "4", "pass.3.timing.high": "7",
		})
		a := Answer(f, "")
		assert.Contains(t, text(a, "say.pass.2.said"), "not read yet.", since)
		assert.NotContains(t, text(a, "say.pass.2.said"), "as advised", since)
	}
}

// Of two moves logged, the second counts as not done when it is said so.
func TestTheFirstMoveOnlyTakesBackTheSecond(t *testing.T) {
	f := skewed()
	logged := with(f, truing.Done(f, []string{"a", "b"}, "2"))
	first := with(logged, nil)
	delete(first, "pass.1.done.b.kind")
	delete(first, "pass.1.done.b.hour")
	a := Answer(again(first, "", "7", "5:30", "7", "6:30"), "")
	for name, f := range map[string]form.Form{"logged": logged, "not logged": f} {
		b := Answer(again(f, "first", "7", "5:30", "7", "6:30"), "")
		assert.InDelta(t, value(t, a, "moves/0/strength"), value(t, b, "moves/0/strength"), 0.1, name)
		assert.Contains(t, text(b, "say.pass.1.said"), "; struck drive at 3, ", name)
		assert.NotContains(t, text(b, "say.pass.1.said"), "squeezed", name)
	}
}

func TestTheRecordSaysWhatWasNotLogged(t *testing.T) {
	f := skewed()
	for since, says := range map[string]string{
		"nuts": "; the nuts were drawn up.", "else": "; something was done that isn’t logged.", "nothing": "T 8 thou.", "": "T 8 thou.",
	} {
		f := again(f, since, "3", "1", "3", "2")
		assert.Contains(t, text(Answer(f, ""), "say.pass.1.said"), says, since)
		assert.Contains(t, text(Answer(f, jobsheet.Name), "say.pass.1.said"), says, since)
	}
}

// A strike the wrong way is told beside a squeeze that went right.
func TestAllThatWasTriedInAPassIsTold(t *testing.T) {
	f := skewed()
	logged := with(f, truing.Done(f, []string{"a", "b"}, "2"))
	// What is open at 6 falls from 6.9 to 3.4, what is off towards 3 and 9 rises from 4 to 8.3.
	a := Answer(again(logged, "", "9", "3:45", "9", "8:15"), "")
	for _, say := range []string{"say.truing.lesson", "say.pass.1.came"} {
		assert.Contains(t, text(a, say), "The strike after the first readings went the other way", say)
	}
}

// The tailstock's pressure is the one thing that stands between readings and
// advice: once the needles moved, the next readings count, and are no comparison.
func TestReadingsUnderPressureAreReadAgain(t *testing.T) {
	f := typed("6", "6", "6", "6")
	f["pass.1.tailstock"] = "moved"
	a := Answer(f, "")
	assert.Contains(t, text(a, "say.truing.headline"), "It was pressure")
	assert.Equal(t, "needs a reading", text(a, "verdict"))
	assert.Equal(t, "read again", text(a, "asks/0/what"))
	assert.Empty(t, text(a, "say.truing.did"))
	assert.Equal(t, "Not measured to the end yet.", text(Answer(f, jobsheet.Name), "say.sheet.plain"))
	b := Answer(again(f, "", "1", "3", "0.5", "3"), "")
	assert.NotContains(t, text(b, "say.truing.headline"), "pressure")
	assert.Empty(t, text(b, "say.ask.since"))
	f["pass.1.tailstock"] = "steady"
	assert.Contains(t, text(Answer(f, ""), "say.truing.headline"), "Squeeze the wheels at 6")
}

func TestPlacesCloseToTheCentresAreAddedOnce(t *testing.T) {
	f := typed("1", "3", "0.5", "3")
	near := truing.NearCentres(f, [2]string{"a", "b"})
	assert.Equal(t, form.Form{
		"dial.a.half": "drive", "dial.a.at": "15", "dial.a.order": "2",
		"dial.b.half": "timing", "dial.b.at": "15", "dial.b.order": "3",
	}, near)
	f = with(f, near)
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
		a := Answer(f, "")
		assert.Equal(t, "reading", text(a, "asks/0/what"))
		assert.Equal(t, step[2], text(a, "asks/0/field"))
		stop, ok := a.Get("stop")
		assert.True(t, ok && stop.Kind == bench.Null)
	}
}
