package truing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/unit"
	"pintwelve/testdata/jobs"
)

// Faces that stand parallel as far as the dials tell may be open by what was found and
// by how far that may be out.
func TestHowFarTheFacesMayStandOpenIsSaid(t *testing.T) {
	a := sheet.Answer(jobs.Typed("3", "3", "3", "9"), "")
	most := jobs.Value(t, a, "gap.across_rim_mm") + jobs.Value(t, a, "gap.plus_mm")
	assert.Equal(t, "The wheels’ faces stand parallel as far as the dials can tell: no more than "+unit.Format(most, unit.Thou, 0.5*jobs.Thou)+" across the rim.", jobs.Said(a, "sit.gap"))
}

func TestTheDistancesLineSaysWhetherAnyIsAssumed(t *testing.T) {
	f := jobs.Typed("3", "3", "3", "9")
	assert.Equal(t, "assumed", jobs.Said(sheet.Answer(f, ""), "distances.line"))
	for _, side := range []string{"drive", "timing"} {
		f = f.With(form.Form{side + ".at": "75", side + ".pin": "120", side + ".bearing": "70", side + ".tip": "10"})
	}
	f = f.With(form.Form{"throw": "42", "rim": "190"})
	assert.Equal(t, "measured", jobs.Said(sheet.Answer(f, ""), "distances.line"))
	delete(f, "timing.tip")
	assert.Equal(t, "assumed", jobs.Said(sheet.Answer(f, ""), "distances.line"))
}

// Where reading again helps no more, what is too close to call asks for the ways of
// reading that would tell more, and for no way that the dial is read in already.
func TestWhatWouldTellIsOffered(t *testing.T) {
	choices := func(f form.Form) (all []string) {
		for _, pass := range []string{"2", "3", "4"} {
			f["pass."+pass+".order"], f["pass."+pass+".since"] = pass, "nothing"
			for _, side := range []string{"drive", "timing"} {
				for _, field := range []string{".how", ".tir", ".high", ".rise", ".fall"} {
					f["pass."+pass+"."+side+field] = f["pass.1."+side+field]
				}
			}
		}
		a := sheet.Answer(f, "")
		assert.Equal(t, "too close to call", jobs.Text(a, "verdict"))
		assert.Equal(t, "sharper", jobs.Text(a, "asks/0/what"))
		for _, i := range []string{"0", "1", "2"} {
			if word := jobs.Text(a, "asks/0/choices/"+i); word != "" {
				all = append(all, word)
			}
		}
		return all
	}
	f := jobs.Typed("2", "3", "2", "9").With(form.Form{"centres": "good"})
	assert.Equal(t, []string{"halfway", "turn"}, choices(f))
	for _, side := range []string{"drive", "timing"} {
		f["pass.1."+side+".how"] = "halfway"
	}
	f = f.With(form.Form{"pass.1.drive.rise": "12", "pass.1.drive.fall": "6", "pass.1.timing.rise": "6", "pass.1.timing.fall": "12"})
	assert.Equal(t, []string{"turn"}, choices(f))
}

// Half-way hours of a run-out lie half a turn apart; more than an hour off that is said.
func TestHalfWayHoursThatDontLieHalfATurnApartAreSaid(t *testing.T) {
	f := jobs.Typed("4", "", "4", "9").With(form.Form{"pass.1.drive.how": "halfway", "pass.1.drive.rise": "12"})
	for fall, says := range map[string]string{"6": "", "5": "", "7": "", "4.8": "4.8 apart", "7.2": "7.2 apart"} {
		f["pass.1.drive.fall"] = fall
		a := sheet.Answer(f, "")
		if words := jobs.Said(a, "turn.drive"); says == "" {
			assert.Empty(t, words, fall)
			assert.Empty(t, jobs.Said(a, "turns.any"), fall)
		} else {
			assert.Contains(t, words, says)
		}
	}
}

// Half-way hours of which one must be misread by hours tell no way to work: a full turn would.
func TestMisreadHalfWayHoursAdviseNothing(t *testing.T) {
	f := jobs.Typed("3", "", "3", "")
	for _, side := range []string{"drive", "timing"} {
		f["pass.1."+side+".how"], f["pass.1."+side+".rise"], f["pass.1."+side+".fall"] = "halfway", "9", "3"
	}
	a := sheet.Answer(f, "")
	assert.Equal(t, "work", jobs.Told(t, a, "advice"))
	for _, side := range []string{"drive", "timing"} {
		f["pass.1."+side+".rise"], f["pass.1."+side+".fall"] = "11:30", "12:30"
	}
	a = sheet.Answer(f, "")
	assert.Equal(t, "the dials can't tell", jobs.Told(t, a, "verdict"))
	assert.Contains(t, jobs.Said(a, "truing.then"), "a full turn")
}

// Out of round by no more than the scatter could make it is said as just that.
func TestOvalityOrScatterIsSaidAsEither(t *testing.T) {
	f := jobs.Typed("", "", "", "")
	for _, side := range []string{"drive", "timing"} {
		f["pass.1."+side+".how"], f["pass.1."+side+".points"] = "turn", "8"
	}
	f["pass.1.drive.turn"] = "1 0.5 3 4.5 4.5 3.5 2.5 1.5"
	f["pass.1.timing.turn"] = "0 .59 2 3.41 4 3.41 2 .59"
	a := sheet.Answer(f, "")
	assert.Equal(t, "Out of round, or scatter, by up to 1 thou: more points would tell.", jobs.Said(a, "turn.drive.oval"))
	assert.Empty(t, jobs.Said(a, "turn.timing.oval"), "a circle")
	f["pass.1.drive.turn"] = "0 3.6 4 3.4 4 7.4 8 4.6"
	assert.Contains(t, jobs.Said(sheet.Answer(f, ""), "turn.drive.oval"), "Out of round")
}

// Beside a move on a crank that is out of true for sure nothing else holds.
func TestNothingElseHoldsBesideAPlainMove(t *testing.T) {
	a := sheet.Answer(jobs.Typed("8", "3", "8", "9"), "")
	assert.Equal(t, "work", jobs.Text(a, "advice"))
	assert.Empty(t, jobs.Said(a, "truing.else"))
	a = sheet.Answer(jobs.Typed("2.4", "3", "2", "9"), "")
	assert.Equal(t, "too close to call", jobs.Text(a, "verdict"))
	assert.Contains(t, jobs.Said(a, "truing.else"), "If you work on it all the same: strike the ")
}

// As left, the dials turn beside as found once there is a later pass on the bench.
func TestTheDialsTurnAsLeftOnceReadAgain(t *testing.T) {
	f := jobs.Typed("3", "3", "5", "9")
	a := sheet.Answer(f, "")
	assert.Equal(t, [2]string{"yes", ""}, [2]string{jobs.Said(a, "spin.found"), jobs.Said(a, "spin.left")})
	f = jobs.Again(f, "", "1", "3", "1", "9")
	a = sheet.Answer(f, "")
	assert.Equal(t, [2]string{"yes", "yes"}, [2]string{jobs.Said(a, "spin.found"), jobs.Said(a, "spin.left")})
	assert.Contains(t, jobs.Text(a, "picture.left"), ">D 1 thou<")
	a = sheet.Answer(f.With(form.Form{"bench": "1"}), "")
	assert.Equal(t, [2]string{"yes", ""}, [2]string{jobs.Said(a, "spin.found"), jobs.Said(a, "spin.left")})
}

// The dials that turn show what was read of each, and nothing of one unread.
func TestTheTurningDialsShowWhatWasRead(t *testing.T) {
	picture := jobs.Text(sheet.Answer(jobs.Typed("3", "3", "5", "9"), ""), "picture.found")
	assert.Contains(t, picture, ">D 3 thou<")
	assert.Contains(t, picture, ">T 5 thou<")
	f := jobs.Typed("3", "3", "", "")
	picture = jobs.Text(sheet.Answer(f, ""), "picture.found")
	assert.Contains(t, picture, ">D 3 thou<")
	assert.NotContains(t, picture, ">T ")
}

// Until the crank of several throws can be drawn, its end dials stand beside the crank,
// and no other on top of them.
func TestTheTurningDialsOfThrowsStandApart(t *testing.T) {
	f := jobs.Typed("3", "3", "5", "9").With(form.Form{
		"pin.b.order": "1", "pin.b.angle": "180", "dial.a.order": "1", "dial.a.half": "drive", "pass.1.dial.a.tir": "4", "pass.1.dial.a.high": "3",
	})
	picture := jobs.Text(sheet.Answer(f, ""), "picture.found")
	assert.Contains(t, picture, ">D 3 thou<")
	assert.Contains(t, picture, ">T 5 thou<")
	assert.NotContains(t, picture, ">D2 ")
	for name, text := range map[string]string{"pin.b.at": "160 mm", "drive.pin": "100 mm", "timing.pin": "100 mm", "dial.a.at": "130 mm"} {
		f[name] = text
	}
	f["dial.b.order"], f["dial.b.half"], f["dial.b.at"], f["pass.1.dial.b.tir"], f["pass.1.dial.b.high"] = "2", "drive", "140 mm", "4", "3"
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "picture.found"), ">D2 4 thou<")
}

// The first point read again tells which way it went.
func TestADriftIsSaidWithItsWay(t *testing.T) {
	f := jobs.Typed("", "", "2", "9").With(form.Form{"pass.1.drive.how": "turn", "pass.1.drive.points": "8"})
	for again, says := range map[string]string{"4": "4 thou higher", "-4": "4 thou lower", "0": ""} {
		f["pass.1.drive.turn"] = "0 .6 2 3.4 4 3.4 2 .6 " + again
		words := jobs.Said(sheet.Answer(f, ""), "turn.drive.drift")
		if says == "" {
			assert.Empty(t, words)
		} else {
			assert.Contains(t, words, "The first point came back "+says)
		}
	}
}

// A move is not advised without a word of what speaks against it: rim gaps that say otherwise, or
// readings that contradict one another and would fit but for a slip.
func TestWhatSpeaksAgainstAMoveStandsBesideIt(t *testing.T) {
	f := jobs.Typed("6", "3", "5", "9").With(form.Form{"mount": "vblocks", "drive.at": "75", "drive.held": "30"})
	beside := func(more form.Form) string {
		a := sheet.Answer(f.With(more), "")
		assert.Empty(t, a.Faults())
		assert.Equal(t, "work", jobs.Told(t, a, "advice"))
		return jobs.Said(a, "truing.else")
	}
	assert.Empty(t, beside(nil))
	assert.Contains(t, beside(form.Form{"pass.1.gap12": "10", "pass.1.gap3": "10.5", "pass.1.gap6": "11", "pass.1.gap9": "10.5"}), "find out which before you strike")
	assert.Empty(t, beside(form.Form{"pass.1.gap12": "10", "pass.1.gap3": "10.01", "pass.1.gap6": "10", "pass.1.gap9": "9.99"}), "as the dials have it")
	second := form.Form{"dial.a.half": "drive", "dial.a.at": "76", "pass.1.dial.a.tir": "6", "pass.1.dial.a.high": "3"}
	assert.Empty(t, beside(second))
	second["pass.1.dial.a.high"] = "9"
	assert.Contains(t, beside(second), "the hours of D2 had been read from the other end")
	assert.Contains(t, beside(second), "Find out which before you strike.")
}
