package truing_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/jobs"
)

var amounts = regexp.MustCompile(`[0-9.]+ (thou|mm)|blow|turn|stays`)

func TestOnAnAssumedLeverOnlyTheWayIsTold(t *testing.T) {
	for _, mount := range []string{"vblocks", "bearings"} {
		held := map[string]string{"vblocks": "held", "bearings": "bearing"}[mount]
		pinch := jobs.Typed("6", "12", "5", "12").With(form.Form{"mount": mount})
		a := sheet.Answer(pinch, "")
		for _, name := range []string{"headline", "then", "hard", "else"} {
			assert.NotRegexp(t, amounts, jobs.Text(a, "say.truing."+name), "%s: %s", mount, name)
		}
		assert.Regexp(t, `^(Squeeze|Spread|Strike) the`, jobs.Text(a, "say.truing.headline"))
		assert.Contains(t, jobs.Text(a, "say.truing.then"), "hang on two distances")
		assert.NotEmpty(t, jobs.Text(a, "say.truing.lever"))
		strength, _ := a.Get("moves/0/strength")
		assert.Equal(t, bench.Null, strength.Kind)
		assert.Equal(t, []string{"drive.at", "drive." + held}, []string{jobs.Text(a, "asks/0/field"), jobs.Text(a, "asks/1/field")})
		for name := range truing.Done(pinch, []string{"a", "b"}, "next") {
			assert.NotRegexp(t, `strength|turns|closing`, name, "none was advised")
		}

		// One half's two distances are enough: the other's are taken to be alike.
		given := pinch.With(form.Form{"drive.at": "30", "drive." + held: "70"})
		a = sheet.Answer(given, "")
		assert.Regexp(t, amounts, jobs.Text(a, "say.truing.headline"))
		for _, one := range []string{"drive.at", "drive." + held} {
			a = sheet.Answer(pinch.With(form.Form{one: "50"}), "")
			assert.NotRegexp(t, amounts, jobs.Text(a, "say.truing.headline"), one)
		}
	}
	assert.Regexp(t, amounts, jobs.Text(sheet.Answer(jobs.Typed("6", "12", "5", "12"), ""), "say.truing.headline"), "between centres")
}
