package jobsheet_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/jobsheet"
	"pintwelve/testdata/jobs"
)

// aJob is a crank with twist as found, and true after a strike.
func aJob(more form.Form) form.Form {
	f := form.Form{
		"number": "12", "owner": "Mrs Thorne", "date.in": "2026-03-09", "notes": "New pin.\nNew mains.",
		"pass.a.order": "1", "pass.a.drive.tir": "6", "pass.a.drive.high": "9", "pass.a.timing.tir": "6", "pass.a.timing.high": "3",
		"pass.a.note": "pressed up dry", "pass.a.done.x.kind": "strike", "pass.a.done.x.wheel": "timing", "pass.a.done.x.hour": "3",
		"pass.b.order": "2", "pass.b.drive.tir": "0.5", "pass.b.drive.high": "8", "pass.b.timing.tir": "1", "pass.b.timing.high": "2",
	}
	for name, text := range more {
		f[name] = text
	}
	return f
}

func TestTheSheetTellsAsFoundAndAsLeftWhateverIsOnTheBench(t *testing.T) {
	for _, bench := range []string{"", "a", "b"} {
		a := sheet.Answer(aJob(form.Form{"bench": bench}), jobsheet.Name)
		assert.Equal(t, "Hung between its centres the crank runs true: over one turn neither shaft moves more than 1 thou; 2 thou is allowed. The centres themselves were not tried.", jobs.Said(a, "sheet.plain"))
		assert.Equal(t, "It came at 6 thou.", jobs.Said(a, "sheet.came"))
		assert.Contains(t, jobs.Said(a, "sheet.found.drive"), "6")
		assert.Contains(t, jobs.Said(a, "sheet.found.drive"), "high at 9")
		assert.Contains(t, jobs.Said(a, "sheet.left.timing"), "high at 2")
		assert.Contains(t, jobs.Said(a, "pass.a.said"), "struck timing at 3")
		assert.Equal(t, "pressed up dry", jobs.Said(a, "pass.a.noted"))
		for _, picture := range []string{"picture.sheet.found", "picture.sheet.left"} {
			e, ok := a.Get(picture)
			assert.True(t, ok)
			assert.NotContains(t, e.Text, `class="mf"`, "a sheet orders nothing")
		}
	}
}

func TestTheSheetOfAnUnreadOrUntrueCrank(t *testing.T) {
	a := sheet.Answer(form.Form{}, jobsheet.Name)
	assert.Equal(t, "Not measured to the end yet.", jobs.Said(a, "sheet.plain"))
	assert.Empty(t, jobs.Said(a, "sheet.found"))
	a = sheet.Answer(aJob(form.Form{"pass.b.drive.tir": "5", "pass.b.timing.tir": "5"}), jobsheet.Name)
	assert.Equal(t, "Not true yet: a shaft still moves 5 thou over one turn; 2 thou is allowed.", jobs.Said(a, "sheet.plain"))
}

// The cases come last: true on its centres and out of true in them, a crank isn't told as true.
func TestTheSheetSaysFirstThatItIsOutOfTrueInItsCases(t *testing.T) {
	for _, row := range []struct {
		drive string
		out   bool
	}{{"4", true}, {"0.5", false}, {"", false}} {
		a := sheet.Answer(aJob(form.Form{"centres": "good", "cases.drive": row.drive, "cases.timing": "0.5"}), jobsheet.Name)
		plain, line := jobs.Said(a, "sheet.plain"), jobs.Said(a, "sheet.line")
		assert.Contains(t, plain, "The crank runs true")
		assert.Equal(t, row.out, strings.HasSuffix(plain, " Read in its cases it is out of true."), plain)
		assert.Equal(t, row.out, strings.HasSuffix(line, "; out of true in its cases"), line)
	}
}

func TestTheSheetTakesInWhatTheJobHolds(t *testing.T) {
	a := sheet.Answer(aJob(nil), jobsheet.Name)
	for _, e := range a.Entries {
		assert.NotContains(t, e.Name, "say.sheet.has.")
	}
	a = sheet.Answer(aJob(form.Form{"float.faces": "100", "float.crank": "99.5"}), jobsheet.Name)
	assert.Equal(t, "yes", jobs.Said(a, "sheet.has.cases"))
	assert.NotEmpty(t, jobs.Said(a, "cases.headline"))
	assert.Empty(t, jobs.Said(a, "sheet.has.balance"))
}

// measured are all the distances that the sheet's words can rest on.
var measured = form.Form{
	"throw": "42", "rim": "190", "centres": "good", "drive.at": "75", "drive.pin": "120", "drive.bearing": "70", "drive.tip": "10",
	"timing.at": "75", "timing.pin": "120", "timing.bearing": "70", "timing.tip": "10",
}

func TestTheSheetLeavesOutWhatRestsOnAssumedDistances(t *testing.T) {
	a := sheet.Answer(aJob(measured), jobsheet.Name)
	assert.NotEmpty(t, jobs.Said(a, "sit.bearings"))
	assert.NotEmpty(t, jobs.Said(a, "sit.tilt"))
	assert.Empty(t, jobs.Said(a, "sheet.assumed"))
	for name := range measured {
		if name == "centres" {
			continue
		}
		f := aJob(measured)
		delete(f, name)
		a = sheet.Answer(f, jobsheet.Name)
		assert.Empty(t, jobs.Said(a, "sit.bearings"), name)
		assert.Empty(t, jobs.Said(a, "sit.tilt"), name)
		assert.Contains(t, jobs.Said(a, "sheet.assumed"), "assumed, not measured", name)
	}
}

// The line that goes into a message is never surer than the verdict.
func TestTheLineOfWordsIsNoSurerThanTheVerdict(t *testing.T) {
	for _, row := range []struct {
		more form.Form
		want string
	}{
		{form.Form{"centres": "good"}, "Job sheet 12: true to 1 thou"},
		{nil, "Job sheet 12: true as it hangs, to 1 thou"},
		{form.Form{"pass.b.drive.tir": "2", "pass.b.timing.tir": "2"}, "Job sheet 12: 2 thou as read, too close to call"},
		{form.Form{"pass.b.drive.tir": "5", "pass.b.timing.tir": "5"}, "Job sheet 12: not true yet, 5 thou"},
		{form.Form{"pass.b.drive.tir": "8", "pass.b.timing.tir": "8", "pass.b.drive.high": "12", "pass.b.timing.high": "6", "centres": "good"}, "Job sheet 12: can’t be trued as it stands, 8 thou"},
		{form.Form{"pass.c.order": "3"}, "Job sheet 12: not measured to the end yet"},
		{form.Form{"number": "", "engine": "499 single", "centres": "good"}, "Job sheet 499 single: true to 1 thou"},
	} {
		assert.Equal(t, row.want, jobs.Said(sheet.Answer(aJob(row.more), jobsheet.Name), "sheet.line"), "%v", row.more)
	}
}

func TestTheSheetCarriesTheShop(t *testing.T) {
	a := sheet.Answer(aJob(nil), jobsheet.Name)
	assert.Empty(t, jobs.Said(a, "sheet.shop"))
	a = sheet.Answer(aJob(form.Form{"shop.name": "<b>Thorne & Daughter</b>", "shop.telephone": "01632 960118", "shop.mark": "T<D", "shop.shape": "shield"}), jobsheet.Name)
	assert.Equal(t, "<b>Thorne & Daughter</b>", jobs.Said(a, "shop.name"), "the page shows it as text")
	assert.Equal(t, "yes", jobs.Said(a, "sheet.shop"))
	mark, _ := a.Get("picture.shop")
	assert.Contains(t, mark.Text, "T&lt;D</text>")
	assert.NotContains(t, mark.Text, "<D")
}

// How it came is told where that was read, and only of what has been read since.
func TestHowItCameIsToldWhereItWasRead(t *testing.T) {
	for _, row := range []struct {
		more form.Form
		came string
	}{
		{nil, "It came at 6 thou."},
		{form.Form{"pass.a.drive.tir": ""}, ""},
		{form.Form{"pass.a.timing.tir": ""}, ""},
		{form.Form{"pass.a.drive.tir": "-1"}, ""},
	} {
		assert.Equal(t, row.came, jobs.Said(sheet.Answer(aJob(row.more), jobsheet.Name), "sheet.came"), "%v", row.more)
	}
	first := aJob(nil)
	for name := range first {
		if strings.HasPrefix(name, "pass.b.") {
			delete(first, name)
		}
	}
	assert.Empty(t, jobs.Said(sheet.Answer(first, jobsheet.Name), "sheet.came"), "it hasn't gone yet")
}
