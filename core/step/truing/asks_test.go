package truing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/jobsheet"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/jobs"
)

// The rounds differ and nothing is logged: the later alone is gone by, and what
// came between is asked.
func TestRoundsThatDifferAreNotAveraged(t *testing.T) {
	f := jobs.Again(jobs.Typed("8", "3", "8", "9"), "", "3", "9", "3", "3")
	a := sheet.Answer(f, "")
	assert.Equal(t, "What was done after the first readings?", jobs.Text(a, "say.truing.headline"))
	assert.Contains(t, jobs.Text(a, "say.truing.then"), "strike the drive wheel at 9")
	assert.Equal(t, "pass.2.since", jobs.Text(a, "ask.since"), "what the page writes the answer into")
	assert.Empty(t, jobs.Text(a, "say.ask.first"), "one move was advised")
	assert.Empty(t, jobs.Text(a, "say.truing.did"), "first it is answered")
	assert.Equal(t, "since", jobs.Text(a, "asks/0/what"))
	assert.Equal(t, "pass.2.since", jobs.Text(a, "asks/0/field"))
	for i, choice := range []string{"said", "first", "else", "nuts", "apart", "nothing"} {
		assert.Equal(t, choice, jobs.Text(a, "asks/0/choices/"+string(rune('0'+i))))
		f["pass.2.since"] = choice
		b := sheet.Answer(f, "")
		assert.Empty(t, jobs.Text(b, "say.ask.since"), choice)
		assert.InDelta(t, 9, jobs.Value(t, b, "moves/0/hour"), 1e-9, choice)
	}
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.ask.unlike"), "a needle differs by", "nothing was done")

	alike := jobs.Again(jobs.Typed("8", "3", "8", "9"), "", "8.3", "3", "7.8", "9")
	assert.Empty(t, jobs.Text(sheet.Answer(alike, ""), "say.ask.since"))
	assert.NotEmpty(t, jobs.Text(sheet.Answer(jobs.Again(jobs.Typed("8", "5", "8", "7"), "", "3", "12", "3", "12"), ""), "say.ask.first"), "two moves were advised")
}

// With 2 thou allowed, 0.5 at 12 on both and then 4 at 6 on both, the nuts between,
// is 4 jobs.Thou, not 2.2.
func TestTheNutsMovedIt(t *testing.T) {
	a := sheet.Answer(jobs.Again(jobs.Typed("0.5", "12", "0.5", "12"), "nuts", "4", "6", "4", "6"), "")
	assert.Contains(t, jobs.Text(a, "say.truing.headline"), "Squeeze the wheels at 6")
	assert.InDelta(t, 4*jobs.Thou, jobs.Value(t, a, "dials/0/tir_mm"), 1e-9)
}

func TestTrueAsItHangsAsksForTheCentresOnce(t *testing.T) {
	f := jobs.Typed("1", "3", "0.5", "3")
	a := sheet.Answer(f, "")
	assert.Equal(t, "true as it hangs", jobs.Text(a, "verdict"))
	assert.Equal(t, "True as it hangs: leave it.", jobs.Text(a, "say.truing.headline"))
	assert.Equal(t, "centres", jobs.Text(a, "asks/0/what"))
	assert.Equal(t, "centres", jobs.Text(a, "asks/0/field"))
	assert.Equal(t, "drive", jobs.Text(a, "asks/0/places/0/half"))
	assert.InDelta(t, 15, jobs.Value(t, a, "asks/0/places/1/at_mm"), 1e-9)
	assert.Contains(t, jobs.Text(sheet.Answer(f, jobsheet.Name), "say.sheet.plain"), "The centres themselves were not tried.")

	known := sheet.Answer(f.With(form.Form{"centres": "good"}), "")
	assert.Equal(t, "true", jobs.Text(known, "verdict"))
	assert.Empty(t, jobs.Text(known, "say.ask.centres"))

	sound := f.With(truing.NearCentres(f, [2]string{"a", "b"}))
	for key, tir := range map[string]string{"a": "0.25", "b": "0"} {
		sound["pass.1.dial."+key+".tir"], sound["pass.1.dial."+key+".high"] = tir, "3"
	}
	read := sheet.Answer(sound, "")
	assert.Equal(t, "true", jobs.Text(read, "verdict"))
	assert.Empty(t, jobs.Text(read, "say.ask.centres"))

	blocks := sheet.Answer(f.With(form.Form{"mount": "vblocks"}), "")
	assert.Empty(t, jobs.Text(blocks, "say.ask.centres"), "no centre holds it")
}

func TestACentreIsNamedBeforeThePin(t *testing.T) {
	f := jobs.Typed("8", "12", "8", "6")
	then := jobs.Text(sheet.Answer(f, ""), "say.truing.then")
	assert.Regexp(t, "^One shaft’s low spot .* A bad centre or a bent shaft .* Else the throws don", then)
	f["centres"] = "good"
	then = jobs.Text(sheet.Answer(f, ""), "say.truing.then")
	assert.Regexp(t, "^One shaft’s low spot [^.]*[.] Else the throws don", then)
}

// Twice the other way: it stops, and says what would tell why.
func TestTwiceTheOtherWayIsAStop(t *testing.T) {
	f := jobs.Again(jobs.Typed("8", "3", "8", "9"), "", "13", "3", "13", "9")
	f["pass.1.done.a.kind"], f["pass.1.done.a.hour"], f["pass.1.done.a.strength"] = "strike", "3", "1"
	a := sheet.Answer(f, "")
	assert.Contains(t, jobs.Text(a, "say.truing.hard"), "It went the other way: now a light blow (")
	assert.Contains(t, jobs.Text(a, "say.truing.hard"), " as a trial")
	f = f.With(form.Form{
		"pass.2.done.a.kind": "strike", "pass.2.done.a.hour": "3", "pass.2.done.a.strength": "0.4", "pass.3.order": "3",
		"pass.3.drive.tir": "15.5", "pass.3.drive.high": "3", "pass.3.timing.tir": "15.5", "pass.3.timing.high": "9",
	})
	a = sheet.Answer(f, "")
	assert.Equal(t, "Stop: find out first why it goes wrong.", jobs.Text(a, "say.truing.headline"))
	assert.Regexp(t, "^Likeliest first: .*hours from the other end", jobs.Text(a, "say.truing.then"))
	assert.Regexp(t, `^Quick test: turn (3|9) on the (drive|timing) shaft under its dial\. In thou from the middle of its swing; \+7\.[0-9]: as logged, .*; −7\.[0-9]: .*\.$`, jobs.Text(a, "say.truing.hard"))
	assert.Empty(t, jobs.Text(a, "say.truing.did"))
	assert.NotEmpty(t, jobs.Text(a, "stop/causes/0"))
	assert.Equal(t, jobs.Text(a, "say.truing.hard"), jobs.Text(a, "stop/test"))
	moves, _ := a.Get("moves")
	assert.NotEmpty(t, moves.Name, "no move is advised")
}

// What went wrong is told to scripts as it is said, its pass and likely causes with it.
func TestWhatCameAmissIsTold(t *testing.T) {
	f := jobs.Again(jobs.Typed("8", "3", "8", "9"), "", "13", "3", "13", "9")
	f["pass.1.done.a.kind"], f["pass.1.done.a.hour"], f["pass.1.done.a.strength"] = "strike", "3", "1"
	a := sheet.Answer(f, "")
	assert.Equal(t, []string{"1", "strike", "the other way", "hours from the other end"},
		[]string{jobs.Text(a, "amiss/0/pass"), jobs.Text(a, "amiss/0/kind"), jobs.Text(a, "amiss/0/came"), jobs.Text(a, "amiss/0/causes/0")})
	assert.Equal(t, "work", jobs.Text(a, "advice"))
	f["pass.1.done.a.hour"] = "9"
	amiss, _ := sheet.Answer(f, "").Get("amiss")
	assert.Equal(t, bench.EmptyList, amiss.Kind)
}

// A floor above the limit, but not clear of its doubt, after as many rounds as help:
// nothing is called true, and no blow is advised; the pin is named.
func TestAsReadBumpingGetsItNoFurther(t *testing.T) {
	f := jobs.Typed("2.1", "12", "2.1", "6")
	f["centres"] = "good"
	for _, pass := range []string{"2", "3"} {
		f["pass."+pass+".order"], f["pass."+pass+".since"] = pass, "nothing"
		for _, side := range []string{"drive", "timing"} {
			for _, field := range []string{".tir", ".high"} {
				f["pass."+pass+"."+side+field] = f["pass.1."+side+field]
			}
		}
	}
	a := sheet.Answer(f, "")
	assert.Equal(t, "too close to call", jobs.Text(a, "verdict"))
	assert.Equal(t, "look elsewhere", jobs.Text(a, "advice"))
	assert.Regexp(t, `^As read, bumping gets it no further: .* would still be left, 2 thou allowed\.$`, jobs.Text(a, "say.truing.headline"))
	assert.Contains(t, jobs.Text(a, "say.truing.then"), "Throw mismatch")
}

func TestAFirstBlowIsCalledATrial(t *testing.T) {
	a := sheet.Answer(jobs.Typed("20", "3", "20", "9"), "")
	assert.Regexp(t, `^A trial: two usual blows \(2\); then read\.$`, jobs.Text(a, "say.truing.hard"))
	b := sheet.Answer(jobs.Typed("8", "5", "8", "7"), "")
	assert.Regexp(t, `^A trial: .* \([0-9.]+\), then [0-9.]+ turns?\.$`, jobs.Text(b, "say.truing.hard"))
}

func TestAPinchAsksAfterTheTailstockOnce(t *testing.T) {
	f := jobs.Typed("4", "6", "4", "6")
	a := sheet.Answer(f, "")
	assert.Contains(t, jobs.Text(a, "say.ask.pressure"), "Back the tailstock off")
	assert.Equal(t, "pass.1.tailstock", jobs.Text(a, "ask.pressure"))
	f["pass.1.tailstock"] = "steady"
	assert.Empty(t, jobs.Text(sheet.Answer(f, ""), "say.ask.pressure"))
}

// What is asked after says what the needles make of it: moved as what was advised moves
// them, or moved otherwise.
func TestWhatIsAskedSaysHowTheNeedlesMoved(t *testing.T) {
	then := func(f form.Form) string { return jobs.Said(sheet.Answer(f, ""), "truing.then") }
	assert.Regexp(t, `^Nothing is logged, but the needles moved as what was advised would move them: until you say, it counts as done\. As they stand: strike the drive wheel at 3\.$`,
		then(jobs.Again(jobs.Typed("8", "3", "8", "9"), "", "2.7", "3", "2.7", "9")))
	assert.Regexp(t, `^These readings differ by more than the dials can, and nothing is logged\. As they stand: strike the drive wheel at 3\.$`,
		then(jobs.Again(jobs.Skewed(), "", "4", "5", "4", "7")))
}

// A strike moves both needles of dials that stand alike. One that stays at nothing while the
// other moves is told, by run-outs and hours too, whose hour is unsure where the run-out isn't.
func TestANeedleThatStaysIsTold(t *testing.T) {
	f := jobs.Typed("6", "3", "0", "12").With(form.Form{
		"tolerance": "1", "drive.at": "75", "drive.pin": "120",
		"pass.1.done.1.kind": "strike", "pass.1.done.1.wheel": "drive", "pass.1.done.1.hour": "3",
		"pass.2.order": "2", "pass.2.drive.tir": "3", "pass.2.drive.high": "3", "pass.2.timing.tir": "0", "pass.2.timing.high": "12",
	})
	a := sheet.Answer(f, "")
	require.Empty(t, a.Faults())
	assert.Equal(t, "astray", jobs.Told(t, a, "amiss/0/came"))
	assert.Contains(t, jobs.Said(a, "truing.lesson"), "a dial or its foot slipped")
	f["centres"] = "good"
	done := jobs.Again(f, "", "0.3", "3", "0", "12").With(form.Form{"pass.2.done.1.kind": "strike", "pass.2.done.1.wheel": "drive", "pass.2.done.1.hour": "3"})
	a = sheet.Answer(done, "")
	assert.Equal(t, "true", jobs.Told(t, a, "verdict"))
	assert.Equal(t, "read again", jobs.Told(t, a, "asks/0/what"), "it may stick")
	// As it should: both needles by half of the offset's, 1.5 thou.
	f = f.With(form.Form{"pass.1.timing.tir": "5", "pass.1.timing.high": "9", "pass.2.drive.tir": "4.5", "pass.2.timing.tir": "3.5", "pass.2.timing.high": "9"})
	_, amiss := sheet.Answer(f, "").Get("amiss/0/came")
	assert.False(t, amiss)
}

// A figure of the set-up that is wrong isn't answered by what would stand in for it: 1..5 for a tolerance
// of 1.5 thou would be judged by 2.
func TestAWrongFigureOfTheSetUpIsMendedFirst(t *testing.T) {
	f := jobs.Typed("0.5", "3", "0.5", "3").With(form.Form{"drive.at": "75", "drive.pin": "120", "timing.at": "75", "timing.pin": "120"})
	assert.Equal(t, "true as it hangs", jobs.Told(t, sheet.Answer(f, ""), "verdict"))
	for _, field := range []string{"tolerance", "tilt", "throw", "rim", "drive.at", "timing.pin", "drive.division"} {
		a := sheet.Answer(f.With(form.Form{field: "1..5"}), "")
		assert.NotEmpty(t, jobs.Text(a, "error."+field))
		assert.Equal(t, bench.MendIt, jobs.Said(a, "truing.headline"), field)
		assert.Equal(t, "needs a reading", jobs.Told(t, a, "verdict"), field)
	}
	assert.Equal(t, "true as it hangs", jobs.Told(t, sheet.Answer(f.With(form.Form{"wheel.drive.diameter": "x"}), ""), "verdict"), "mended under Lighten")
}

// Two readings of one place that can't both be so were averaged, and a move was told by that.
func TestReadingsOfOnePlaceThatDifferAreReadAgain(t *testing.T) {
	at := func(place, tir, high string, more form.Form) form.Form {
		return jobs.Typed("3", "5", "4", "7:30").With(form.Form{
			"centres": "good", "drive.at": "75", "dial.a.half": "drive", "dial.a.order": "1", "dial.a.at": place,
			"pass.1.dial.a.tir": tir, "pass.1.dial.a.high": high,
		}).With(more)
	}
	for _, row := range []struct {
		name   string
		job    form.Form
		unlike bool
	}{
		{"alike", at("75", "3.5", "5", nil), false},
		{"much more", at("75", "8", "5", nil), true},
		{"the other way", at("75", "3", "11", nil), true},
		{"at another place", at("40", "8", "11", nil), false},
		{"on the other shaft", at("75", "8", "11", form.Form{"dial.a.half": "timing", "timing.at": "60"}), false},
	} {
		a := sheet.Answer(row.job, "")
		assert.Equal(t, row.unlike, jobs.Text(a, "error.pass.1.drive.tir") == "D2 at the same place reads otherwise: one of them is wrong, or where it stands is", row.name)
		assert.Equal(t, row.unlike, jobs.Text(a, "verdict") == "needs a reading", row.name)
		if row.unlike {
			assert.Contains(t, jobs.Text(a, "error.pass.1.dial.a.tir"), "D at the same place ")
			assert.Equal(t, "Mend the drive dial’s figure marked Wrong.", jobs.Said(a, "truing.headline"))
			assert.Equal(t, "reading", jobs.Text(a, "asks/0/what"))
			assert.Equal(t, "pass.1.drive.tir", jobs.Text(a, "asks/0/field"))
		}
	}
	// Left so in an earlier pass, it teaches nothing.
	next := form.Form{"pass.1.order": "1", "pass.2.order": "2", "pass.2.since": "nothing", "pass.2.drive.tir": "3", "pass.2.drive.high": "5", "pass.2.timing.tir": "4", "pass.2.timing.high": "7:30"}
	alone := sheet.Answer(jobs.Typed("3", "5", "4", "7:30").With(form.Form{"centres": "good", "drive.at": "75"}), "")
	later := sheet.Answer(at("75", "8", "11", next), "")
	assert.Equal(t, jobs.Value(t, alone, "gap.across_rim_mm"), jobs.Value(t, later, "gap.across_rim_mm"))
}
