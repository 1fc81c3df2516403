package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/step/jobsheet"
	"pintwelve/core/step/truing"
)

// The rounds differ and nothing is logged: the later alone is gone by, and what
// came between is asked.
func TestRoundsThatDifferAreNotAveraged(t *testing.T) {
	f := again(typed("8", "3", "8", "9"), "", "3", "9", "3", "3")
	a := Answer(f, "")
	assert.Equal(t, "What was done after the first readings?", text(a, "say.truing.headline"))
	assert.Contains(t, text(a, "say.truing.then"), "strike the drive wheel at 9")
	assert.Equal(t, "pass.2.since", text(a, "ask.since"), "what the page writes the answer into")
	assert.Empty(t, text(a, "say.ask.first"), "one move was advised")
	assert.Empty(t, text(a, "say.truing.did"), "first it is answered")
	assert.Equal(t, "since", text(a, "asks/0/what"))
	assert.Equal(t, "pass.2.since", text(a, "asks/0/field"))
	for i, choice := range []string{"said", "first", "else", "nuts", "nothing"} {
		assert.Equal(t, choice, text(a, "asks/0/choices/"+string(rune('0'+i))))
		f["pass.2.since"] = choice
		b := Answer(f, "")
		assert.Empty(t, text(b, "say.ask.since"), choice)
		assert.InDelta(t, 9, value(t, b, "moves/0/hour"), 1e-9, choice)
	}
	assert.Contains(t, text(Answer(f, ""), "say.ask.unlike"), "a needle differs by", "nothing was done")

	alike := again(typed("8", "3", "8", "9"), "", "8.3", "3", "7.8", "9")
	assert.Empty(t, text(Answer(alike, ""), "say.ask.since"))
	assert.NotEmpty(t, text(Answer(again(typed("8", "5", "8", "7"), "", "3", "12", "3", "12"), ""), "say.ask.first"), "two moves were advised")
}

// With 2 thou allowed, 0.5 at 12 on both and then 4 at 6 on both, the nuts between,
// is 4 thou, not 2.2.
func TestTheNutsMovedIt(t *testing.T) {
	a := Answer(again(typed("0.5", "12", "0.5", "12"), "nuts", "4", "6", "4", "6"), "")
	assert.Contains(t, text(a, "say.truing.headline"), "Squeeze the wheels at 6")
	assert.InDelta(t, 4*thou, value(t, a, "dials/0/tir_mm"), 1e-9)
}

func TestTrueAsItHangsAsksForTheCentresOnce(t *testing.T) {
	f := typed("1", "3", "0.5", "3")
	a := Answer(f, "")
	assert.Equal(t, "true as it hangs", text(a, "verdict"))
	assert.Equal(t, "True as it hangs: leave it.", text(a, "say.truing.headline"))
	assert.Equal(t, "centres", text(a, "asks/0/what"))
	assert.Equal(t, "centres", text(a, "asks/0/field"))
	assert.Equal(t, "drive", text(a, "asks/0/places/0/half"))
	assert.InDelta(t, 15, value(t, a, "asks/0/places/1/at_mm"), 1e-9)
	assert.Contains(t, text(Answer(f, jobsheet.Name), "say.sheet.plain"), "The centres themselves were not tried.")

	known := Answer(with(f, form.Form{"centres": "good"}), "")
	assert.Equal(t, "true", text(known, "verdict"))
	assert.Empty(t, text(known, "say.ask.centres"))

	sound := with(f, truing.NearCentres(f, [2]string{"a", "b"}))
	for key, tir := range map[string]string{"a": "0.25", "b": "0"} {
		sound["pass.1.dial."+key+".tir"], sound["pass.1.dial."+key+".high"] = tir, "3"
	}
	read := Answer(sound, "")
	assert.Equal(t, "true", text(read, "verdict"))
	assert.Empty(t, text(read, "say.ask.centres"))

	blocks := Answer(with(f, form.Form{"mount": "vblocks"}), "")
	assert.Empty(t, text(blocks, "say.ask.centres"), "no centre holds it")
}

func TestACentreIsNamedBeforeThePin(t *testing.T) {
	f := typed("8", "12", "8", "6")
	then := text(Answer(f, ""), "say.truing.then")
	assert.Regexp(t, "^A bad centre or a bent shaft .* Throw mismatch", then)
	f["centres"] = "good"
	then = text(Answer(f, ""), "say.truing.then")
	assert.Regexp(t, "^Throw mismatch", then)
}

// Twice the other way: it stops, and says what would tell why.
func TestTwiceTheOtherWayIsAStop(t *testing.T) {
	f := again(typed("8", "3", "8", "9"), "", "13", "3", "13", "9")
	f["pass.1.done.a.kind"], f["pass.1.done.a.hour"], f["pass.1.done.a.strength"] = "strike", "3", "1"
	a := Answer(f, "")
	assert.Contains(t, text(a, "say.truing.hard"), "It went the other way: now a light blow (")
	assert.Contains(t, text(a, "say.truing.hard"), " as a trial")
	f = with(f, form.Form{
		"pass.2.done.a.kind": "strike", "pass.2.done.a.hour": "3", "pass.2.done.a.strength": "0.4", "pass.3.order": "3",
		"pass.3.drive.tir": "15.5", "pass.3.drive.high": "3", "pass.3.timing.tir": "15.5", "pass.3.timing.high": "9",
	})
	a = Answer(f, "")
	assert.Equal(t, "Stop: find out first why it goes wrong.", text(a, "say.truing.headline"))
	assert.Regexp(t, "^Likeliest first: .*hours from the other end", text(a, "say.truing.then"))
	assert.Regexp(t, `^Quick test: turn (3|9) on the (drive|timing) shaft under its dial\. In thou from the middle of its swing; \+7\.[0-9]: as logged, .*; −7\.[0-9]: .*\.$`, text(a, "say.truing.hard"))
	assert.Empty(t, text(a, "say.truing.did"))
	assert.NotEmpty(t, text(a, "stop/causes/0"))
	assert.Equal(t, text(a, "say.truing.hard"), text(a, "stop/test"))
	moves, _ := a.Get("moves")
	assert.NotEmpty(t, moves.Name, "no move is advised")
}

// What went wrong is told to scripts as it is said, its pass and likely causes with it.
func TestWhatCameAmissIsTold(t *testing.T) {
	f := again(typed("8", "3", "8", "9"), "", "13", "3", "13", "9")
	f["pass.1.done.a.kind"], f["pass.1.done.a.hour"], f["pass.1.done.a.strength"] = "strike", "3", "1"
	a := Answer(f, "")
	assert.Equal(t, []string{"1", "strike", "the other way", "hours from the other end"},
		[]string{text(a, "amiss/0/pass"), text(a, "amiss/0/kind"), text(a, "amiss/0/came"), text(a, "amiss/0/causes/0")})
	assert.Equal(t, "work", text(a, "advice"))
	f["pass.1.done.a.hour"] = "9"
	amiss, _ := Answer(f, "").Get("amiss")
	assert.Equal(t, bench.EmptyList, amiss.Kind)
}

// A floor above the limit, but not clear of its doubt, after as many rounds as help:
// nothing is called true, and no blow is advised; the pin is named.
func TestAsReadBumpingGetsItNoFurther(t *testing.T) {
	f := typed("2.1", "12", "2.1", "6")
	f["centres"] = "good"
	for _, pass := range []string{"2", "3"} {
		f["pass."+pass+".order"], f["pass."+pass+".since"] = pass, "nothing"
		for _, side := range []string{"drive", "timing"} {
			for _, field := range []string{".tir", ".high"} {
				f["pass."+pass+"."+side+field] = f["pass.1."+side+field]
			}
		}
	}
	a := Answer(f, "")
	assert.Equal(t, "too close to call", text(a, "verdict"))
	assert.Equal(t, "look elsewhere", text(a, "advice"))
	assert.Regexp(t, `^As read, bumping gets it no further: .* would still be left, 2 thou allowed\.$`, text(a, "say.truing.headline"))
	assert.Contains(t, text(a, "say.truing.then"), "Throw mismatch")
}

func TestAFirstBlowIsCalledATrial(t *testing.T) {
	a := Answer(typed("20", "3", "20", "9"), "")
	assert.Regexp(t, `^A trial: two usual blows \(2\); then read\.$`, text(a, "say.truing.hard"))
	b := Answer(typed("8", "5", "8", "7"), "")
	assert.Regexp(t, `^A trial: .* \([0-9.]+\), then [0-9.]+ turns?\.$`, text(b, "say.truing.hard"))
}

func TestAPinchAsksAfterTheTailstockOnce(t *testing.T) {
	f := typed("4", "6", "4", "6")
	a := Answer(f, "")
	assert.Contains(t, text(a, "say.ask.pressure"), "Back the tailstock off")
	assert.Equal(t, "pass.1.tailstock", text(a, "ask.pressure"))
	f["pass.1.tailstock"] = "steady"
	assert.Empty(t, text(Answer(f, ""), "say.ask.pressure"))
}
