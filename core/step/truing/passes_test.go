package truing_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/jobs"
)

func TestDoneLogsTheAdviceAndBeginsAPass(t *testing.T) {
	f := jobs.Typed("4", "3", "4", "9")
	f["pass.1.drive.how"] = "hour"
	after := f.With(truing.Done(f, []string{"a", "b"}, "next"))
	assert.Equal(t, "strike", after["pass.1.done.a.kind"])
	assert.Equal(t, "drive", after["pass.1.done.a.wheel"])
	assert.Equal(t, "3", after["pass.1.done.a.hour"])
	assert.Empty(t, after["bench"], "which pass is looked at is no figure")
	assert.Empty(t, truing.Again(after, "more"), "none is begun while the last is unread")
	assert.Equal(t, "hour", after["pass.next.drive.how"], "read as the last was")
	assert.Empty(t, form.Check(after))
	a := sheet.Answer(after, "")
	assert.Equal(t, "Pass 2: read again.", jobs.Text(a, "say.truing.headline"))
	assert.Equal(t, "Before: D 4 thou, T 4 thou.\nHoped for: D 1.4 thou, T 1.4 thou.", jobs.Text(a, "say.truing.before"))
	assert.Contains(t, jobs.Text(a, "picture.face"), "Before, D: high spot at 3, run-out 4.")
	assert.Contains(t, jobs.Text(a, "say.pass.1.said"), "As found: D 4 thou, T 4 thou; struck drive at 3, a usual blow (1.1).")

	// The pass that is on the bench is answered, whichever it is.
	after["bench"] = "1"
	assert.Contains(t, jobs.Text(sheet.Answer(after, ""), "say.truing.headline"), "Strike the drive wheel at 3")
}

// What is logged is what its field takes, however little or much is advised.
func TestDoneLogsWhatTheFieldTakes(t *testing.T) {
	for _, row := range []struct {
		readings form.Form
		strength string
	}{
		{jobs.Typed("0.06", "3", "0.06", "9").With(form.Form{"tolerance": "0.05", "drive.division": "0.004", "timing.division": "0.004"}), "0.1"},
		{jobs.Typed("200", "3", "200", "9"), "2"}, // a first blow is a trial
	} {
		changes := truing.Done(row.readings, []string{"a", "b"}, "2")
		assert.Equal(t, row.strength, changes["pass.1.done.a.strength"])
		assert.Empty(t, form.Check(row.readings.With(changes)))
	}
}

func TestWhatABlowDidSaysHowHardTheNextIs(t *testing.T) {
	f := jobs.Typed("4", "3", "4", "9").With(form.Form{
		"pass.1.done.a.kind": "strike", "pass.1.done.a.hour": "3", "pass.1.done.a.strength": "1", "pass.2.order": "1",
		"pass.2.drive.tir": "2.6", "pass.2.drive.high": "3", "pass.2.timing.tir": "2.6", "pass.2.timing.high": "9",
	})
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.truing.hard"), "the first.")
	f["pass.2.drive.tir"], f["pass.2.timing.tir"] = "7", "7"
	a := sheet.Answer(f, "")
	assert.Contains(t, jobs.Text(a, "say.truing.lesson"), "The strike after the first readings went the other way")
	assert.NotContains(t, jobs.Text(a, "say.truing.hard"), "the first.", "what went the other way teaches nothing")
}

// A crank that is too close to call is left before it is touched, but worked on to
// the end once begun; the doubt is told either way.
func TestWhatIsBegunIsWorkedOnThoughTooCloseToCall(t *testing.T) {
	f := jobs.Typed("6", "3", "6", "9").With(form.Form{
		"pass.1.done.a.kind": "strike", "pass.1.done.a.hour": "3", "pass.1.done.a.strength": "1", "pass.2.order": "1",
		"pass.2.drive.tir": "2.1", "pass.2.drive.high": "3", "pass.2.timing.tir": "1", "pass.2.timing.high": "9",
	})
	a := sheet.Answer(f, "")
	assert.Equal(t, "too close to call", jobs.Text(a, "verdict"))
	assert.Contains(t, jobs.Text(a, "say.truing.headline"), "Strike the drive wheel at 3; drive needle to ")
	assert.Contains(t, jobs.Text(a, "say.truing.else"), "It is too close to call: 2.1 ± 0.4 thou, 2 thou allowed. What would tell: ")
	assert.Equal(t, "STRIKE drive at 3", jobs.Text(a, "say.lathe.do"))
	f["pass.2.drive.tir"] = "1.9"
	a = sheet.Answer(f, "")
	assert.Contains(t, jobs.Text(a, "say.truing.headline"), "Too close to call")
	assert.Empty(t, jobs.Text(a, "say.truing.hard"), "as read it is inside: it is left")
}

// Made-up cranks, a hundred of a seed each, trued by logging what is advised.
func TestTheAdviceTruesMadeUpCranks(t *testing.T) {
	const most = 8
	rounds := 0
	for n := range 100 {
		f := truing.TryOut("seed"+strconv.Itoa(n), "chance", 1, 0)
		require.Empty(t, form.Check(f))
		for i := 0; ; i++ {
			a := sheet.Answer(f, truing.First.Name)
			if jobs.Text(a, "say.truing.did") == "" {
				assert.Equal(t, "true", jobs.Text(sheet.Answer(f, truing.Values.Name), "verdict_as_read"), "seed%d", n)
				break
			}
			if !assert.Less(t, i, most, "seed%d: %s", n, jobs.Text(a, "say.truing.headline")) {
				break
			}
			rounds++
			key := "p" + strconv.Itoa(i)
			f = f.With(truing.Done(f, []string{key + "a", key + "b"}, key))
		}
	}
	t.Logf("100 made-up cranks took %d rounds of moves", rounds)
	assert.Less(t, rounds, 350)
}

func TestAMadeUpCrankIsTheSameForTheSameSeed(t *testing.T) {
	assert.Equal(t, truing.TryOut("seven", "twist", 1, 0), truing.TryOut("seven", "twist", 1, 0))
	assert.NotEqual(t, truing.TryOut("seven", "twist", 1, 0)["pass.1.drive.turn"], truing.TryOut("eight", "twist", 1, 0)["pass.1.drive.turn"])
	a := sheet.Answer(truing.TryOut("seven", "twist", 1, 0), "")
	assert.Contains(t, jobs.Text(a, "say.truing.headline"), "Strike the ")
	b := sheet.Answer(truing.TryOut("seven", "pinch", 1, 0), "")
	assert.Contains(t, jobs.Text(b, "say.truing.headline"), "Spread the wheels at 6")
}

func TestReadingAMadeUpCrankAgainScattersAnew(t *testing.T) {
	f := truing.TryOut("seven", "chance", 1, 0)
	after := f.With(truing.Again(f, "next"))
	assert.NotEqual(t, f["pass.1.drive.turn"]+f["pass.1.timing.turn"], after["pass.next.drive.turn"]+after["pass.next.timing.turn"])
}

// Expected: MODEL §3, worked by hand for a wheel of 190 mm.
func TestRimGapsAndStraightEdgeStandBesideTheDials(t *testing.T) {
	f := jobs.Typed("3", "6", "3", "6").With(form.Form{
		"pass.1.gap12": "20.00", "pass.1.gap3": "20.06", "pass.1.gap6": "20.12", "pass.1.gap9": "20.06",
		"pass.1.edge3": "1", "pass.1.edge9": "-1", "pass.1.edge12": "0.5",
	})
	a := sheet.Answer(f, "")
	assert.InDelta(t, 0.12, jobs.Value(t, a, "gaps.across_rim_mm"), 1e-9)
	assert.InDelta(t, 6, jobs.Value(t, a, "gaps.widest_hour"), 1e-9)
	assert.InDelta(t, 0.0254, jobs.Value(t, a, "edge.towards3_mm"), 1e-9)
	assert.InDelta(t, 0.0127, jobs.Value(t, a, "edge.towards12_mm"), 1e-9)
	assert.Contains(t, jobs.Text(a, "say.check.gaps.agree"), "The dials say otherwise", "they see 0.19 mm")
	f["pass.1.gap6"], f["pass.1.gap3"], f["pass.1.gap9"] = "20.19", "20.09", "20.10"
	assert.Equal(t, "The dials agree.", jobs.Text(sheet.Answer(f, ""), "say.check.gaps.agree"))
	f["pass.1.gap3"] = "20.5"
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.check.gaps.askew"), "one gap is misread")
}

func TestASecondPlaceOnAShaftTriesItsCentre(t *testing.T) {
	f := jobs.Typed("3", "3", "3", "9").With(form.Form{"dial.a.half": "drive", "dial.a.at": "30", "pass.1.dial.a.tir": "1.2", "pass.1.dial.a.high": "3"})
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.shaft.drive"), "can be trusted")
	f["pass.1.dial.a.tir"], f["pass.1.dial.a.high"] = "4", "12"
	a := sheet.Answer(f, "")
	assert.Contains(t, jobs.Text(a, "say.shaft.drive"), "a bad centre or a bent shaft")
	assert.Equal(t, "Place D2", jobs.Text(a, "say.dial.a.name"))
}

func TestADialWhereTheCrankIsHeldIsAskedForElsewhere(t *testing.T) {
	f := jobs.Typed("3", "3", "3", "9").With(form.Form{"mount": "bearings", "drive.at": "70", "drive.bearing": "70"})
	a := sheet.Answer(f, "")
	assert.Equal(t, "One more dial is wanted on the drive shaft.", jobs.Text(a, "say.truing.headline"))
	assert.Equal(t, "needs a reading", jobs.Text(a, "verdict"))
}

func TestATurnIsReadPointByPoint(t *testing.T) {
	f := jobs.Typed("", "", "1", "12")
	f["pass.1.drive.how"], f["pass.1.drive.points"] = "turn", "8"
	for i, step := range []struct{ turn, next string }{
		{"98", "1 of 8 read; next at 1:30."}, {"98 99", "2 of 8 read; next at 3."}, {"98 99 0 1 2 1 0 99", "8 of 8 read; read the first point again"},
		{"98 99 0 1 2 1 0 99 98", "All 8 read, and the first again: the turn is whole."},
	} {
		f["pass.1.drive.turn"] = step.turn
		a := sheet.Answer(f, "")
		assert.Contains(t, jobs.Text(a, "say.turn.drive.next"), step.next, i)
	}
	given := f.With(form.Form{"pass.1.drive.points": "given"})
	for _, row := range [...][3]string{
		{"12 2 4 6 8 10", "0 1 2", "3 of 6 read; next at 6."}, {"12 2 4 6 8 10", "0 1 2 3 2 1", "All 6 read: the turn is whole."},
		{"12 3 6 9 12", "0 1 2 1 0", "All 5 read: the turn is whole."}, {"12 3", "0 1", "2 of 3 read; give the hours of three points or more."}, {"", "", "0 of 3 read; give the hours"},
	} {
		given["pass.1.drive.hours"], given["pass.1.drive.turn"] = row[0], row[1]
		assert.Contains(t, jobs.Text(sheet.Answer(given, ""), "say.turn.drive.next"), row[2])
	}
	a := sheet.Answer(f, "")
	assert.Contains(t, jobs.Text(a, "say.turn.drive.zero"), "passed zero")
	assert.InDelta(t, 6, jobs.Value(t, a, "dials/0/high_hour"), 0.01)
	f["pass.1.drive.turn"] = "0 .6 2 3.4 4 3.4 2 .6 -3"
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.turn.drive.drift"), "came back 3 thou lower: the dial or the crank has moved")
	f["pass.1.drive.turn"] += " 1"
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "error.pass.1.drive.turn"), "10 readings for 9 hours")
	f["pass.1.drive.turn"] = "1 2 x"
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "error.pass.1.drive.turn"), "entry 2")
	assert.False(t, strings.Contains(jobs.Text(sheet.Answer(f, ""), "say.truing.headline"), "%"))
}

func TestHalfWayHoursThatAreNoHalfTurnApartAreDoubted(t *testing.T) {
	job := form.Form{
		"pass.1.drive.how": "halfway", "pass.1.drive.tir": "3", "pass.1.drive.rise": "1", "pass.1.drive.fall": "7:45",
		"pass.1.timing.tir": "2", "pass.1.timing.high": "4",
	}
	assert.Empty(t, jobs.Text(sheet.Answer(job, ""), "say.turn.drive"), "marks read to half an hour can be so far out")
	job["pass.1.drive.fall"] = "8:15"
	assert.Contains(t, jobs.Text(sheet.Answer(job, ""), "say.turn.drive"), "7.2 apart, where half a turn is 6")
	job["pass.1.drive.fall"] = "3:30"
	assert.Contains(t, jobs.Text(sheet.Answer(job, ""), "say.turn.drive"), "2.5 apart")
}

// Of two moves one may be done alone; what was hoped for is then what that one
// alone should bring. What was done otherwise leaves nobody knowing what was hoped.
func TestWhatIsHopedForIsOfWhatWasDone(t *testing.T) {
	f := jobs.Typed("3", "5", "5.5", "7:30").With(form.Form{"pass.1.order": "1"})
	first := sheet.Answer(f, "")
	require.Equal(t, "Struck: read again", jobs.Text(first, "say.truing.did"))
	require.Equal(t, "Both done: read again", jobs.Text(first, "say.truing.both"))
	for said, rows := range map[string][]string{"say.truing.headline": {"a"}, "say.truing.then": {"a", "b"}} {
		_, needle, found := strings.Cut(jobs.Text(first, said), "timing needle to ")
		require.True(t, found)
		before := jobs.Text(sheet.Answer(f.With(truing.Done(f, rows, "2")), ""), "say.truing.before")
		assert.Regexp(t, `^Before: D 3 thou, T 5\.5 thou\.\nHoped for: D [0-9.]+ thou, T `+needle+"$", before)
	}
	for name, other := range map[string]string{"hour": "11", "strength": "9", "wheel": "drive"} {
		after := f.With(truing.Done(f, []string{"a"}, "2"))
		after["pass.1.done.a."+name] = other
		assert.Equal(t, "Before: D 3 thou, T 5.5 thou.", jobs.Text(sheet.Answer(after, ""), "say.truing.before"), name)
	}
	after := f.With(truing.Again(f, "2"))
	assert.Equal(t, "Before: D 3 thou, T 5.5 thou.\nNothing is logged as done since.", jobs.Text(sheet.Answer(after, ""), "say.truing.before"))
}

// "Something else" logs what was advised, to be changed, and begins no pass.
func TestWhatWasAdvisedCanBeLoggedToBeChanged(t *testing.T) {
	f := jobs.Typed("3", "5", "5.5", "7:30").With(form.Form{"pass.1.order": "1"})
	changes := truing.Done(f, []string{"a", "b"}, "")
	assert.Equal(t, "strike", changes["pass.1.done.a.kind"])
	assert.Equal(t, "squeeze", changes["pass.1.done.b.kind"])
	assert.NotContains(t, changes, "bench")
	a := sheet.Answer(f.With(changes), "")
	assert.Empty(t, jobs.Text(a, "say.truing.did"), "it is logged already")
	assert.Equal(t, "As logged: read again", jobs.Text(a, "say.truing.logged"))
}

// Enter goes on in a turn until it has its points and the first again, and in any other
// field, or a turn whose place isn't on the crank, to the next.
func TestNextGoesOnInATurn(t *testing.T) {
	f := form.Form{
		"pass.1.drive.how": "turn", "pass.1.drive.points": "4", "dial.a.half": "timing", "dial.a.order": "1", "pass.1.dial.a.points": "given", "pass.1.dial.a.hours": "12 3 6 9",
	}
	for _, row := range []struct {
		field, text, before string
		done                bool
	}{
		{"pass.1.drive.turn", "", "0 ", false},
		{"pass.1.drive.turn", "0 1 2 1", "0 1 2 1 ", false},
		{"pass.1.drive.turn", "0 1 2 1 ", "0 1 2 1", true}, // the first again is passed over
		{"pass.1.drive.turn", "0 1 2 1 0", "0 1 2 1 0", true},
		{"pass.1.dial.a.turn", "0 1 2", "0 1 2 ", false},
		{"pass.1.dial.a.turn", "0 1 2 1", "0 1 2 1", true},
		{"pass.1.dial.b.turn", "0 1", "0 1", true},
		{"pass.1.drive.tir", "3", "3", true},
		{"no.such", "3", "3", true},
	} {
		before, _, done := truing.Next(f.With(form.Form{row.field: row.text}), row.field)
		assert.Equal(t, row.before, before, "%v", row)
		assert.Equal(t, row.done, done, "%v", row)
	}
}

// A tap points from an eighth of the face's radius outwards: nearer to the middle it
// points nowhere.
func TestATapNearTheMiddlePointsNowhere(t *testing.T) {
	at := func(right, up float64) string {
		return truing.HourAt(jobs.Figure(draw.FaceCentreX+right*draw.FaceRim), jobs.Figure(draw.FaceCentreY-up*draw.FaceRim))
	}
	assert.Equal(t, []string{"12", "3", "6", "9", "1:30"}, []string{at(0, 0.126), at(0.126, 0), at(0, -1), at(-1, 0), at(0.5, 0.5)})
	assert.Equal(t, []string{"", ""}, []string{at(0, 0.124), at(0, 0)})
	assert.Empty(t, truing.HourAt("", "10"))
}
