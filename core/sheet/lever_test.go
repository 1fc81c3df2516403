package sheet

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/step/truing"
)

var amounts = regexp.MustCompile(`[0-9.]+ (thou|mm)|blow|turn|stays`)

func TestOnAnAssumedLeverOnlyTheWayIsTold(t *testing.T) {
	for _, mount := range []string{"vblocks", "bearings"} {
		held := map[string]string{"vblocks": "held", "bearings": "bearing"}[mount]
		pinch := with(typed("6", "12", "5", "12"), form.Form{"mount": mount})
		a := Answer(pinch, "")
		for _, name := range []string{"headline", "then", "hard", "else"} {
			assert.NotRegexp(t, amounts, text(a, "say.truing."+name), "%s: %s", mount, name)
		}
		assert.Regexp(t, `^(Squeeze|Spread|Strike) the`, text(a, "say.truing.headline"))
		assert.Contains(t, text(a, "say.truing.then"), "hang on two distances")
		assert.NotEmpty(t, text(a, "say.truing.lever"))
		strength, _ := a.Get("moves/0/strength")
		assert.Equal(t, bench.Null, strength.Kind)
		assert.Equal(t, []string{"drive.at", "drive." + held}, []string{text(a, "asks/0/field"), text(a, "asks/1/field")})
		for name := range truing.Done(pinch, []string{"a", "b"}, "next") {
			assert.NotRegexp(t, `strength|turns|closing`, name, "none was advised")
		}

		// One half's two distances are enough: the other's are taken to be alike.
		given := with(pinch, form.Form{"drive.at": "30", "drive." + held: "70"})
		a = Answer(given, "")
		assert.Regexp(t, amounts, text(a, "say.truing.headline"))
		for _, one := range []string{"drive.at", "drive." + held} {
			a = Answer(with(pinch, form.Form{one: "50"}), "")
			assert.NotRegexp(t, amounts, text(a, "say.truing.headline"), one)
		}
	}
	assert.Regexp(t, amounts, text(Answer(typed("6", "12", "5", "12"), ""), "say.truing.headline"), "between centres")
}
