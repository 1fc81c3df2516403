package truing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/truing"
	"pintwelve/core/unit"
	"pintwelve/testdata/jobs"
)

// pinched is a crank that a squeeze at 6 closes, read again after one.
func pinched(done form.Form) form.Form {
	f := jobs.Typed("6", "6", "6", "6").With(form.Form{
		"pass.2.order": "1", "pass.2.drive.tir": "4", "pass.2.drive.high": "6", "pass.2.timing.tir": "4", "pass.2.timing.high": "6",
		"pass.1.done.a.kind": "squeeze", "pass.1.done.a.hour": "6",
	})
	return f.With(done)
}

// Blows and strength say of a clamp what they have always said; turns of its screw
// say the same.
func TestAClampIsLoggedByTurnsOrByWhatItCloses(t *testing.T) {
	old := sheet.Answer(pinched(form.Form{"pass.1.done.a.blows": "2", "pass.1.done.a.strength": "0.7"}), "")
	assert.Equal(t, "1.4", jobs.Text(old, "assumed.pass.1.done.a.turns"))
	turns := sheet.Answer(pinched(form.Form{"pass.1.done.a.turns": "1.4"}), "")
	assert.InDelta(t, jobs.Value(t, old, "moves/0/strength"), jobs.Value(t, turns, "moves/0/strength"), 1e-12)
	assert.Contains(t, jobs.Text(turns, "say.pass.1.said"), "squeezed at 6, 1.4 turns.")
	assert.Regexp(t, `^[0-9.]+ turns?: .* the first\.$`, jobs.Text(turns, "say.truing.hard"))

	// A dose of 1 closes the gap by 0.001 over the arm, 42 + 95 mm: 5.39 thou.
	one := 137 * 0.001 / jobs.Thou
	closing := sheet.Answer(pinched(form.Form{"clamp": "closing", "pass.1.done.a.closing": jobs.Figure(1.4 * one)}), "")
	assert.InDelta(t, jobs.Value(t, old, "moves/0/strength"), jobs.Value(t, closing, "moves/0/strength"), 1e-12)
	assert.InDelta(t, jobs.Value(t, closing, "moves/0/strength")*137*0.001, jobs.Value(t, closing, "moves/0/closing_mm"), 1e-12)
	assert.Contains(t, jobs.Text(closing, "say.pass.1.said"), "squeezed at 6, 7.6 thou under the clamp.")
	assert.Regexp(t, `^[0-9.]+ thou under the clamp: `, jobs.Text(closing, "say.truing.hard"))
	assert.Equal(t, "7.551 thou", jobs.Text(sheet.Answer(pinched(form.Form{"clamp": "closing", "pass.1.done.a.strength": "1.4"}), ""), "assumed.pass.1.done.a.closing"))
}

func TestDoneLogsAClampAsItIsWorked(t *testing.T) {
	f := jobs.Typed("4", "6", "4", "6")
	turns := truing.Done(f, []string{"a", "b"}, "2")
	assert.Contains(t, turns, "pass.1.done.a.turns")
	assert.NotContains(t, turns, "pass.1.done.a.strength")
	f["clamp"] = "closing"
	closing := truing.Done(f, []string{"a", "b"}, "2")
	assert.Contains(t, closing["pass.1.done.a.closing"], " thou")
	assert.Empty(t, form.Check(f.With(closing)))
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.truing.hard"), closing["pass.1.done.a.closing"], "what is said is what is logged")
}

// What the sentence goes for, what the picture says, and what the strength is for
// are one figure, short of the whole; each move says which needle comes to what.
func TestTheSentenceGoesForWhatTheStrengthIsFor(t *testing.T) {
	a := sheet.Answer(jobs.Typed("4", "5", "4", "7"), "")
	gaps := 0
	for i, say := range []string{"say.truing.headline", "say.truing.then"} {
		at := "moves/" + string(rune('0'+i)) + "/"
		said := jobs.Text(a, say)
		assert.Regexp(t, `(drive|timing) needle to [0-9.]+ thou\.$`, said)
		if jobs.Text(a, at+"kind") == "strike" {
			continue
		}
		aim := unit.Format(jobs.Value(t, a, at+"aim_mm"), unit.Thou, 0.5*jobs.Thou)
		assert.Contains(t, said, aim+" stays")
		assert.Contains(t, jobs.Text(a, "picture.face"), aim)
		assert.Less(t, jobs.Value(t, a, at+"aim_mm"), jobs.Value(t, a, at+"amount_mm"))
		gaps++
	}
	assert.Equal(t, 1, gaps)
}

// How hard a move is to be stands by what its kind has shown on this crank: a trial
// first, then so much of the latest.
func TestHowHardGoesByWhatWasShown(t *testing.T) {
	hard := func(f form.Form) string { return jobs.Said(sheet.Answer(f, ""), "truing.hard") }
	once := func(f form.Form, rows []string, driveTIR, driveHigh, timingTIR, timingHigh string) form.Form {
		return jobs.Again(f.With(truing.Done(f, rows, "2")), "", driveTIR, driveHigh, timingTIR, timingHigh)
	}
	assert.Equal(t, "A trial: a usual blow (0.8); then read.", hard(jobs.Typed("3", "3", "3", "9")))
	assert.Equal(t, "A trial: a light blow (0.4), then 0.6 turns.", hard(jobs.Typed("3", "5", "3", "7")))
	first := once(jobs.Typed("5", "3", "5", "9"), []string{"a"}, "3", "3", "3", "9")
	assert.Equal(t, "A hard blow (1.6): about 1½ × the first.", hard(first))
	second := first.With(truing.Done(first, []string{"c"}, "3")).With(form.Form{
		"pass.3.drive.tir": "2.5", "pass.3.drive.high": "3", "pass.3.timing.tir": "2.5", "pass.3.timing.high": "9",
	})
	assert.Equal(t, "Two usual blows (2.4): about 1½ × pass 2’s.", hard(second))
	both := once(jobs.Skewed(), []string{"a", "b"}, "4", "5", "4", "7")
	assert.Equal(t, "A light blow (0.6), then 1.3 turns.", hard(both))
}
