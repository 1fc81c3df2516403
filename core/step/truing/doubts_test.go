package truing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/jobsheet"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/jobs"
)

func TestNothingIsCalledTrueWhileAUnitIsInDoubt(t *testing.T) {
	round := func(key, drive, timing string) form.Form {
		at := "pass." + key + "."
		return form.Form{at + "order": key, at + "drive.tir": drive, at + "drive.high": "3", at + "timing.tir": timing, at + "timing.high": "4"}
	}
	joined := func(forms ...form.Form) form.Form {
		all := form.Form{}
		for _, f := range forms {
			for name, text := range f {
				all[name] = text
			}
		}
		return all
	}
	for _, row := range []struct {
		form           form.Form
		headline, then string
	}{
		{round("1", "0.14", "0.08"), "0.14 thou, or 0.14 mm?", "drive run-out is in"},
		{round("1", "0.14 mm", "0.08"), "0.08 thou, or 0.08 mm?", "timing run-out is in"},
		{round("1", "0.003", "8/100"), "0.003 thou, or 0.003 in?", "drive run-out is in"},
		{joined(round("1", "0.14", "4"), round("2", "0.5", "0.5")), "0.14 thou, or 0.14 mm?", "drive run-out of the first readings is in"},
		{joined(round("1", "0.5", "0.5"), form.Form{"units": "metric", "tolerance": "2", "drive.division": "0.01"}), "2 thou?", "run-out allowed is in"},
		{joined(round("1", "0.5", "0.5"), form.Form{"timing.division": "0.01"}), "0.01 thou, or 0.01 mm?", "timing dial’s division is in"},
	} {
		a := sheet.Answer(row.form, "")
		headline, _ := a.Get("say.truing.headline")
		then, _ := a.Get("say.truing.then")
		verdict, _ := a.Get("verdict")
		assert.Equal(t, row.headline, headline.Text)
		assert.Contains(t, then.Text, row.then)
		assert.Equal(t, "needs a reading", verdict.Text)
		what, _ := a.Get("asks/0/what")
		assert.Equal(t, "unit", what.Text)
		choice, _ := a.Get("asks/0/choices/0")
		assert.True(t, strings.HasPrefix(headline.Text, choice.Text), choice.Text)
		for _, e := range sheet.Answer(row.form, jobsheet.Name).Entries {
			assert.NotContains(t, strings.ToLower(e.Text), "runs true", e.Name)
		}
	}
	a := sheet.Answer(joined(round("1", "0.14 thou", "0.08 thou")), "")
	headline, _ := a.Get("say.truing.headline")
	assert.True(t, strings.HasPrefix(headline.Text, "True"), headline.Text)
}

func TestAnHourInDoubtIsAskedBesideTheAnswer(t *testing.T) {
	a := sheet.Answer(form.Form{"pass.1.drive.tir": "4", "pass.1.drive.high": "5.50", "pass.1.timing.tir": "4", "pass.1.timing.high": "11.30"}, truing.First.Name)
	ask, _ := a.Get("doubt.pass.1.drive.high")
	assert.Equal(t, "5:30\n5:30\n5:50\n5:50", ask.Text)
	_, asked := a.Get("doubt.pass.1.timing.high")
	assert.False(t, asked)
	headline, _ := a.Get("say.truing.headline")
	assert.NotContains(t, headline.Text, "?")
}

// A made-up crank is read finer than any dial: its figures say their unit.
func TestAMadeUpCrankIsNeverInDoubt(t *testing.T) {
	for _, seed := range []string{"a", "b", "c"} {
		f := truing.TryOut(seed, "chance", 1, 0)
		assert.Contains(t, f["pass.1.drive.turn"], " thou")
		a := sheet.Answer(f, truing.First.Name)
		assert.Empty(t, a.Faults())
		for _, e := range a.Entries {
			assert.False(t, strings.HasPrefix(e.Name, "doubt."), e.Name)
		}
	}
}

// What was read of the crank as found, or in its cases, is no reading of the truing.
func TestAnotherStepsFigureInDoubtKeepsNothingBack(t *testing.T) {
	for _, name := range []string{"found.drive", "cases.timing"} {
		a := sheet.Answer(jobs.Typed("0.5", "3", "0.5", "3").With(form.Form{name: "0.14"}), "")
		assert.NotEmpty(t, jobs.Text(a, "doubt."+name))
		assert.Equal(t, "true as it hangs", jobs.Text(a, "verdict"), name)
	}
}
