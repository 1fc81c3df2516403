package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
)

func sheetSays(a *Answers, name string) string {
	e, _ := a.Get("say." + name)
	return e.Text
}

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
		a := Answer(aJob(form.Form{"bench": bench}), Sheet)
		assert.Equal(t, "Hung between its centres the crank runs true: over one turn neither shaft moves more than 1 thou; 2 thou is allowed. The centres themselves were not tried.", sheetSays(a, "sheet.plain"))
		assert.Equal(t, "It came at 6 thou.", sheetSays(a, "sheet.came"))
		assert.Contains(t, sheetSays(a, "sheet.found.drive"), "6")
		assert.Contains(t, sheetSays(a, "sheet.found.drive"), "high at 9")
		assert.Contains(t, sheetSays(a, "sheet.left.timing"), "high at 2")
		assert.Contains(t, sheetSays(a, "pass.a.said"), "struck timing at 3")
		assert.Equal(t, "pressed up dry", sheetSays(a, "pass.a.noted"))
		for _, picture := range []string{"picture.sheet.found", "picture.sheet.left"} {
			e, ok := a.Get(picture)
			assert.True(t, ok)
			assert.NotContains(t, e.Text, `class="mf"`, "a sheet orders nothing")
		}
	}
}

func TestTheSheetOfAnUnreadOrUntrueCrank(t *testing.T) {
	a := Answer(form.Form{}, Sheet)
	assert.Equal(t, "Not measured to the end yet.", sheetSays(a, "sheet.plain"))
	assert.Empty(t, sheetSays(a, "sheet.found"))
	a = Answer(aJob(form.Form{"pass.b.drive.tir": "5", "pass.b.timing.tir": "5"}), Sheet)
	assert.Equal(t, "Not true yet: a shaft still moves 5 thou over one turn; 2 thou is allowed.", sheetSays(a, "sheet.plain"))
}

func TestTheSheetTakesInWhatTheJobHolds(t *testing.T) {
	a := Answer(aJob(nil), Sheet)
	for _, p := range sheetParts {
		assert.Empty(t, sheetSays(a, "sheet.has."+p.name))
	}
	a = Answer(aJob(form.Form{"float.faces": "100", "float.crank": "99.5"}), Sheet)
	assert.Equal(t, "yes", sheetSays(a, "sheet.has.cases"))
	assert.NotEmpty(t, sheetSays(a, "cases.headline"))
	assert.Empty(t, sheetSays(a, "sheet.has.balance"))
}

func TestDatesAreWrittenAsPeopleReadThem(t *testing.T) {
	for date, expected := range map[string]string{
		"2026-03-09": "9 Mar 2026", "2026-12-31": "31 Dec 2026", "": "", "in March": "in March", "2026-13-01": "2026-13-01", "2026-00-01": "2026-00-01", "2026-/:-01": "2026-/:-01",
	} {
		assert.Equal(t, expected, dateWords(date), date)
	}
}
