package sheet

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
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
		for name := range Done(pinch, []string{"a", "b"}, "next") {
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

func TestNoStandInMakesAShortLever(t *testing.T) {
	for _, mount := range []string{"vblocks", "bearings"} {
		held := map[string]string{"vblocks": "held", "bearings": "bearing"}[mount]
		for _, lengths := range []form.Form{
			{}, {"drive.at": "75"}, {"drive.at": "60"}, {"drive.at": "20"}, {"drive.at": "5"}, {"drive.at": "115"}, {"drive." + held: "70"}, {"drive." + held: "75"},
			{"drive." + held: "2"}, {"drive." + held: "110"}, {"drive.pin": "60"}, {"drive.pin": "300", "timing.at": "180"}, {"timing." + held: "40", "drive.at": "41"},
		} {
			_, heldOwn := lengths["drive."+held]
			_, dialOwn := lengths["drive.at"]
			s := readSetUp(form.Read(with(lengths, form.Form{"mount": mount})))
			for half := range [2]clock.End{} {
				x, end := s.crank.Support[half], float64(half)*s.length()
				own := func(v float64) float64 { return abs(v - end) }
				lever, span := abs(own(s.dialOf(clock.End(half)))-own(x)), s.ownPin[half]-own(x)
				if _, both := lengths["timing."+held]; both || heldOwn && dialOwn {
					continue // both given: theirs to say
				}
				assert.GreaterOrEqual(t, lever, span/5-1e-9, "%s %v", mount, lengths)
				assert.Greater(t, own(x), 0.0, "%s %v", mount, lengths)
				assert.GreaterOrEqual(t, own(s.dialOf(clock.End(half))), 1.0, "%s %v", mount, lengths)
			}
		}
	}
}
