package truing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/testdata/jobs"
)

// A twin's second pin by dividing head and by heights: R δ at the pin by hand, 0.4° of
// 40 mm being 0.279 mm, 11 thou; a head's doubt 1.96 × 0.1° × √2/√12 = 0.08°.
func TestTheAngleBetweenPins(t *testing.T) {
	twin := jobs.Typed("4", "3", "4", "9").With(form.Form{
		"drive.pin": "100", "timing.pin": "100", "throw": "40", "pin.b.at": "160", "pin.b.angle": "180", "pin.b.order": "1",
		"dial.a.order": "1", "dial.a.at": "120", "pass.1.dial.a.tir": "6", "pass.1.dial.a.high": "3",
		"dial.b.order": "2", "dial.b.at": "140", "pass.1.dial.b.tir": "6", "pass.1.dial.b.high": "3",
	})
	for _, row := range []struct {
		name string
		with form.Form
		want string
	}{
		{"head", form.Form{"pin.b.measured": "180.4"}, "Pin 2 stands at 180.40 ± 0.08°: 0.4° past 180°, the way the hours run, 11 thou at the pin. How far it may be out is the maker’s to say: give it, and this is judged."},
		{"short", form.Form{"pin.b.measured": "179.5", "index.allowed": "1"}, "Pin 2 stands at 179.50 ± 0.08°: 0.5° short of 180°, the way the hours run, 13.7 thou at the pin. Inside 1°."},
		{"as meant", form.Form{"pin.b.measured": "180.05", "index.allowed": "1"}, "Pin 2 stands at 180.05 ± 0.08°: at 180° as far as this tells. Inside 1°."},
		{"asked", form.Form{"pin.b.measured": "180.4", "index.allowed": "0.25"}, "More than 0.25°. Is the journal before it pressed or solid?"},
		{"pressed", form.Form{"pin.b.measured": "180.4", "index.allowed": "0.25", "pin.b.journal": "pressed"}, "is pressed and can be turned"},
		{"solid", form.Form{"pin.b.measured": "180.4", "index.allowed": "0.25", "pin.b.journal": "solid"}, "nothing turns it"},
		{"close", form.Form{"pin.b.measured": "180.4", "index.allowed": "0.45"}, "Too close to 0.45° to call"},
		{"heights", form.Form{"index.axis": "80", "index.first": "80", "pin.b.height": "80.28"}, "Pin 2 stands at 180.40 ± 0.04°: 0.4° past 180°"},
		{"a full turn", form.Form{"pin.b.angle": "360", "pin.b.measured": "0.4"}, "Pin 2 stands at 360.40 ± 0.08°: 0.4° past 360°"},
	} {
		a := sheet.Answer(twin.With(row.with), "true.more")
		require.Empty(t, a.Faults(), row.name)
		assert.Contains(t, jobs.Said(a, "pin.b.index"), row.want, row.name)
	}
	a := sheet.Answer(twin.With(form.Form{"pin.b.measured": "180.4"}), "true.values")
	e, ok := a.Get("index/0/error_deg")
	require.True(t, ok)
	assert.InDelta(t, 0.4, e.Number, 1e-9)
	a = sheet.Answer(twin.With(form.Form{"index.axis": "80", "index.first": "80", "pin.b.height": "130"}), "true.more")
	require.Len(t, a.Faults(), 1)
	assert.ErrorContains(t, a.Faults()[0], "50 mm from the shafts’ middle is more than the throw of 40 mm")
	assert.Empty(t, jobs.Said(sheet.Answer(twin, "true.more"), "pin.b.index"), "nobody measured it")
}

// A journal that leans in its bearing counts against a twin whose needles are all inside,
// and the customer is told which it is; the angle between its pins stands on the sheet.
func TestATwinWhoseJournalLeans(t *testing.T) {
	twin := jobs.Typed("0.5", "3", "0.5", "9").With(form.Form{
		"drive.pin": "100", "timing.pin": "100", "throw": "40", "pin.b.at": "160", "pin.b.angle": "180", "pin.b.order": "1", "pin.b.measured": "180.4",
		"drive.division": "0.05", "timing.division": "0.05", "drive.at": "75", "timing.at": "75",
		"rim": "110", "drive.bearing": "70", "timing.bearing": "70", "drive.tip": "10", "timing.tip": "10",
		"dial.a.order": "1", "dial.a.at": "120", "pass.1.dial.a.tir": "1.5", "pass.1.dial.a.high": "3",
		"dial.b.order": "2", "dial.b.at": "140", "pass.1.dial.b.tir": "1.5", "pass.1.dial.b.high": "9",
	})
	a := sheet.Answer(twin, "true")
	assert.Contains(t, jobs.Said(a, "truing.then"), "The needles are inside; but main bearing on the journal between pin 1 and pin 2: the journal leans ")
	a = sheet.Answer(twin, "sheet")
	assert.Contains(t, jobs.Said(a, "sheet.plain"), "a shaft leans in its bearing more than it may")
	assert.Contains(t, jobs.Said(a, "throws.sit"), "Pin 2 stands at 180.4")
	assert.Contains(t, jobs.Said(a, "throws.sit"), "Main bearing on the journal between pin 1 and pin 2: the journal runs out by ")
	a = sheet.Answer(twin.With(form.Form{"tilt": "30"}), "sheet")
	assert.NotContains(t, jobs.Said(a, "sheet.plain"), "leans in its bearing more")
}
