package truing_test

import (
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/jobsheet"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/cases"
	"pintwelve/testdata/jobs"
)

// formOf types a case in, the left half being the side named; with turns from
// its full readings, else from its true run-outs and high spots.
func formOf(c cases.Crank, left string, turns bool) form.Form {
	sides := map[string]string{"left": left, "right": "timing"}
	if left == "timing" {
		sides["right"] = "drive"
	}
	f := form.Form{"left": left, "seen": sides[c.SeenFrom], "throw": jobs.Figure(c.Throw), "rim": jobs.Figure(2 * c.Rim)}
	own := func(p cases.Place) float64 {
		if p.Half == "right" {
			return c.Length - p.At
		}
		return p.At
	}
	for i, d := range c.Dials {
		side := sides[d.Half]
		at := "pass.1." + side + "."
		f[at+"tir"], f[at+"high"] = jobs.Figure(d.TIR)+" mm", jobs.Figure(d.HighSpot)
		if turns {
			f[at+"how"], f[at+"points"] = "turn", "given"
			for _, reading := range d.Readings {
				f[at+"turn"] += jobs.Figure(reading.MM) + "mm "
				f[at+"hours"] += jobs.Figure(reading.Clock) + " "
			}
		}
		f[side+".division"] = jobs.Figure(max(c.Division, 0.0001)) + " mm"
		f[side+".at"] = jobs.Figure(own(d.Place))
		f[side+".pin"] = jobs.Figure(own(cases.Place{Half: d.Half, At: c.Pin}))
		f[side+".tip"] = jobs.Figure(own(cases.Place{Half: d.Half, At: c.Truth.At[i]}))
		f[side+".bearing"] = jobs.Figure(own(c.Bearings[i]))
		if c.Mount == "journals" {
			f["mount"], f[side+".held"] = "vblocks", jobs.Figure(own(c.Supports[i]))
		}
	}
	return f
}

// Source: readings of an exact rigid-body crank, testdata/cases/truing.json.
func TestExactCranksAreFoundAsTheyAre(t *testing.T) {
	n := 0
	for _, c := range cases.OfOne(t) {
		for _, left := range []string{"drive", "timing"} {
			againstTruth(t, c, sheet.Answer(formOf(c, left, false), ""))
			if c.Division == 0 {
				n++
				againstTruth(t, c, sheet.Answer(formOf(c, left, true), ""))
			}
		}
	}
	assert.GreaterOrEqual(t, n, 10)
}

func againstTruth(t *testing.T, c cases.Crank, a *bench.Answers) {
	t.Helper()
	const halfMicron = 0.0005
	require.Empty(t, a.Faults(), c.Name)
	assert.InDelta(t, c.Truth.Offset.T, jobs.Value(t, a, "offset.towards12_mm"), halfMicron, c.Name)
	assert.InDelta(t, c.Truth.Offset.N, jobs.Value(t, a, "offset.towards3_mm"), halfMicron, c.Name)
	assert.InDelta(t, c.Truth.Gap.Across, jobs.Value(t, a, "gap.across_rim_mm"), halfMicron, c.Name)
	if hour, _ := a.Get("gap.widest_hour"); hour.Kind == bench.Number && c.Truth.Gap.Across > 0.005 {
		assert.InDelta(t, 0, clock.Apart(*c.Truth.Gap.Widest, hour.Number), 0.05, c.Name)
	}
	for i := range c.Dials {
		at := "/" + strconv.Itoa(i)
		assert.InDelta(t, c.Truth.Untwist[i], jobs.Value(t, a, "after_strike_tir_mm"+at), halfMicron, c.Name)
		assert.InDelta(t, c.Truth.Closed[i], jobs.Value(t, a, "after_gap_tir_mm"+at), halfMicron, c.Name)
		assert.InDelta(t, c.Truth.Both[i], jobs.Value(t, a, "after_both_tir_mm"+at), halfMicron, c.Name)
		assert.InDelta(t, c.Truth.Bearings[i], jobs.Value(t, a, "bearings/tir_mm"+at), halfMicron, c.Name)
	}
}

// Source: common practice, no source.
func TestThePatternsOfTheTrade(t *testing.T) {
	for _, row := range []struct {
		name           string
		job            form.Form
		verdict, first string
	}{
		{"both high at the pin", jobs.Typed("4", "12", "4", "12"), "out of true", "Spread the wheels at 6 until 4.7 thou stays; drive needle to 1.4 thou."},
		{"both high opposite the pin", jobs.Typed("4", "6", "4", "6"), "out of true", "Squeeze the wheels at 6 until 4.7 thou stays; drive needle to 1.4 thou."},
		{"opposed, drive high at 3", jobs.Typed("4", "3", "4", "9"), "out of true", "Strike the drive wheel at 3; drive needle to 1.4 thou."},
		{"opposed, drive high at 9", jobs.Typed("4", "9", "4", "3"), "out of true", "Strike the drive wheel at 9; drive needle to 1.4 thou."},
		{"half a thou and one, rising together", jobs.Typed("0.5", "2", "1", "2"), "true as it hangs", "True as it hangs: leave it."},
		{"1.9 with 2 allowed", jobs.Typed("1.9", "3", "1", "9"), "too close to call", "Too close to call: 1.9 ± 0.4 thou, 2 thou allowed."},
		{"2.1 with 2 allowed", jobs.Typed("2.1", "3", "1", "9"), "too close to call", "Too close to call: 2.1 ± 0.4 thou, 2 thou allowed."},
		{"opposed at the pin and opposite it", jobs.Typed("5", "12", "5", "6"), "not mendable by bumping", "As read, bumping gets it no further"},
	} {
		a := sheet.Answer(row.job, "")
		assert.Equal(t, row.verdict, jobs.Text(a, "verdict"), row.name)
		assert.Contains(t, jobs.Text(a, "say.truing.headline"), row.first, row.name)
	}
}

// By the bare figures, 1.9 is inside 2 and 2.1 is not; how sure they are decides
// the verdict (ISO 14253-1), and what would tell is said.
func TestAsReadTheLimitIsTheLimit(t *testing.T) {
	a := sheet.Answer(jobs.Typed("1.9", "3", "1", "9"), "")
	assert.Equal(t, "true", jobs.Text(a, "verdict_as_read"))
	assert.Contains(t, jobs.Text(a, "say.truing.then"), "As read it is inside.")
	b := sheet.Answer(jobs.Typed("2.1", "3", "1", "9"), "")
	assert.Equal(t, "out of true", jobs.Text(b, "verdict_as_read"))
	assert.Contains(t, jobs.Text(b, "say.truing.then"), "As read it is outside. What would tell: ")
	assert.Contains(t, jobs.Text(b, "say.truing.else"), "strike the drive wheel at 3")
}

// Where the needles are inside and a journal's lean is not, it is the lean that is
// told beside its limit (MODEL §5).
func TestTheLeanIsToldWhereItIsWhatIsWrong(t *testing.T) {
	pinch := jobs.Typed("1", "6", "1", "6").With(form.Form{"tilt": "0.5"})
	a := sheet.Answer(pinch, "")
	assert.Equal(t, "too close to call", jobs.Text(a, "verdict"))
	// Equal and in phase: the shafts tilt by e/a = 0.0127/75, 0.6 minutes of arc.
	assert.Equal(t, "Too close to call: the drive journal leans 0.6′ ± 0.7′, 0.5′ allowed.", jobs.Text(a, "say.truing.headline"))
	mismatch := jobs.Typed("1", "12", "1", "6").With(form.Form{"tilt": "0.3"})
	a = sheet.Answer(mismatch, "")
	assert.Equal(t, "not mendable by bumping", jobs.Text(a, "verdict"))
	// d = 2 · 0.0127 · 120/75 = 0.0406 mm, over the 100 mm from bearing to bearing.
	assert.Equal(t, "As read, bumping gets it no further: the journals would still lean 1.4′, 0.3′ allowed.", jobs.Text(a, "say.truing.headline"))
	assert.Contains(t, jobs.Text(sheet.Answer(mismatch, jobsheet.Name), "say.sheet.plain"), "leans in its bearing more than it may")
}

func TestTheOtherEndSeesTheMirrorImage(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for range 200 {
		tir := [2]float64{3 + 5*rng.Float64(), 3 + 5*rng.Float64()}
		high := [2]float64{12 * rng.Float64(), 12 * rng.Float64()}
		job := func(seen string, h [2]float64) *bench.Answers {
			f := jobs.Typed(jobs.Figure(tir[0]), jobs.Figure(clock.Wrap(h[0])), jobs.Figure(tir[1]), jobs.Figure(clock.Wrap(h[1])))
			f["seen"] = seen
			return sheet.Answer(f, "")
		}
		a := job("drive", high)
		b := job("timing", [2]float64{clock.Mirror(high[0]), clock.Mirror(high[1])})
		assert.InDelta(t, jobs.Value(t, a, "offset.towards12_mm"), jobs.Value(t, b, "offset.towards12_mm"), 1e-12)
		assert.InDelta(t, jobs.Value(t, a, "offset.towards3_mm"), -jobs.Value(t, b, "offset.towards3_mm"), 1e-12)
		if e, _ := a.Get("gap.widest_hour"); e.Kind == bench.Number {
			assert.InDelta(t, 0, clock.Apart(e.Number, clock.Mirror(jobs.Value(t, b, "gap.widest_hour"))), 1e-9)
		}
		assert.Equal(t, jobs.Text(a, "verdict"), jobs.Text(b, "verdict"))
		for i := range 2 {
			at := "moves/" + strconv.Itoa(i) + "/"
			if jobs.Text(a, at+"kind") == "" {
				assert.Empty(t, jobs.Text(b, at+"kind"))
				continue
			}
			assert.Equal(t, jobs.Text(a, at+"kind"), jobs.Text(b, at+"kind"))
			assert.Equal(t, jobs.Text(a, at+"wheel"), jobs.Text(b, at+"wheel"))
			assert.InDelta(t, 0, clock.Apart(jobs.Value(t, a, at+"hour"), clock.Mirror(jobs.Value(t, b, at+"hour"))), 1e-9)
			assert.InDelta(t, jobs.Value(t, a, at+"amount_mm"), jobs.Value(t, b, at+"amount_mm"), 1e-12)
		}
	}
}

// Which end is at the left hand changes no advice: wheels keep their names, and
// so do hours that are seen from a named side.
func TestTurningTheLatheRoundChangesNoAdvice(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for range 200 {
		f := jobs.Typed(jobs.Figure(3+5*rng.Float64()), jobs.Figure(12*rng.Float64()), jobs.Figure(3+5*rng.Float64()), jobs.Figure(12*rng.Float64()))
		f["drive.pin"], f["timing.at"] = "110", "60"
		a := sheet.Answer(f, "")
		f["left"] = "timing"
		b := sheet.Answer(f, "")
		assert.Equal(t, jobs.Text(a, "say.truing.headline"), jobs.Text(b, "say.truing.headline"))
		assert.InDelta(t, jobs.Value(t, a, "offset.towards12_mm"), -jobs.Value(t, b, "offset.towards12_mm"), 1e-12)
		assert.InDelta(t, jobs.Value(t, a, "offset.towards3_mm"), -jobs.Value(t, b, "offset.towards3_mm"), 1e-12)
		if e, _ := a.Get("gap.widest_hour"); e.Kind == bench.Number {
			assert.InDelta(t, 0, clock.Apart(e.Number, jobs.Value(t, b, "gap.widest_hour")), 1e-9)
		}
	}
}

func TestNoAnswerWaitsForADistance(t *testing.T) {
	a := sheet.Answer(jobs.Typed("3", "5", "5.5", "7:30"), "")
	assert.Equal(t, "out of true", jobs.Text(a, "verdict"))
	assert.Equal(t, "75 mm", jobs.Text(a, "assumed.timing.at"))
	f := jobs.Typed("3", "5", "5.5", "7:30")
	f["drive.at"] = "60"
	assert.Equal(t, "60 mm", jobs.Text(sheet.Answer(f, ""), "assumed.timing.at"), "the other half is taken to be alike")
}

func TestAnIncompleteJobIsInvitedToTheNextReading(t *testing.T) {
	f := form.Form{}
	for _, step := range []struct{ name, text, next string }{
		{"", "", "Turn the crank once and read a dial."},
		{"pass.1.drive.tir", "3", "At which hour does the drive needle stand highest?"},
		{"pass.1.drive.high", "3", "Now the timing dial’s run-out."},
		{"pass.1.timing.tir", "0", "Strike the drive wheel at 3"},
		{"pass.1.timing.tir", "2", "At which hour does the timing needle stand highest?"},
		{"pass.1.timing.how", "halfway", "At which hours does the timing needle rise and fall through half-way?"},
		{"pass.1.timing.how", "pin", "Where does the pin point when the timing needle stands highest?"},
		{"pass.1.timing.tir", "two", "Mend the timing dial’s figure marked Wrong."},
	} {
		if step.name != "" {
			f[step.name] = step.text
		}
		a := sheet.Answer(f, "")
		assert.Contains(t, jobs.Text(a, "say.truing.headline"), step.next, step.name+"="+step.text)
		assert.Contains(t, jobs.Text(a, "picture.face"), "<svg")
	}
}

func TestOneDialIsCarriedAcrossFromTheLeft(t *testing.T) {
	f := form.Form{"dials": "one", "left": "timing", "pass.1.timing.tir": "3"}
	assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.truing.headline"), "does the timing needle stand highest")
	f["pass.1.timing.high"] = "3"
	assert.Equal(t, "Carry the dial across to the drive shaft and turn again.", jobs.Text(sheet.Answer(f, ""), "say.truing.headline"))
}

// The same reading in its three forms gives one answer.
func TestTheQuickFormsAgree(t *testing.T) {
	hour := sheet.Answer(jobs.Typed("4", "3", "4", "9"), "")
	f := jobs.Typed("4", "", "4", "")
	f["pass.1.drive.how"], f["pass.1.drive.rise"], f["pass.1.drive.fall"] = "halfway", "12", "6"
	f["pass.1.timing.how"], f["pass.1.timing.stands"], f["pass.1.timing.pinat"] = "pin", "behind", "up"
	mixed := sheet.Answer(f, "")
	assert.Equal(t, jobs.Text(hour, "say.truing.headline"), jobs.Text(mixed, "say.truing.headline"))
	assert.InDelta(t, jobs.Value(t, hour, "offset.towards3_mm"), jobs.Value(t, mixed, "offset.towards3_mm"), 1e-12)
}

func TestBadInputIsToldBesideItsField(t *testing.T) {
	for _, row := range []struct{ name, text, says string }{
		{"pass.1.drive.tir", "2 bananas", "is not a figure in thou, mm or inches"},
		{"pass.1.drive.tir", "-1", "out of range: 0 thou to 250 thou will do"},
		{"pass.1.drive.tir", "NaN", "write"},
		{"pass.1.timing.high", "25", "12"},
		{"rim", "60", "outside the wheel"},
		{"drive.at", "130", "the crankpin’s middle, which stands at 120 mm"},
		{"timing.bearing", "150", "the crankpin’s middle, which stands at 120 mm"},
		{"left", "up", "drive, timing"},
		{"tolerance", "0", "out of range"},
		{"drive.division", "1e9", "write"},
	} {
		f := jobs.Typed("3", "5", "5.5", "7:30")
		f[row.name] = row.text
		a := sheet.Answer(f, "")
		assert.Contains(t, jobs.Text(a, "error."+row.name), row.says, row.name+"="+row.text)
		for _, e := range a.Entries {
			assert.False(t, math.IsNaN(e.Number) || math.IsInf(e.Number, 0), e.Name)
		}
	}
}

func TestATapOnTheFaceIsAnHour(t *testing.T) {
	for _, row := range []struct{ x, y, hour string }{
		{"180", "60", "12"}, {"300", "166", "3"}, {"180", "300", "6"}, {"20", "166", "9"},
		{"180", "166", ""}, {"", "", ""}, {"NaN", "1", ""}, {"Inf", "1", ""},
	} {
		assert.Equal(t, row.hour, truing.HourAt(row.x, row.y), row.x+","+row.y)
	}
}

func TestEveryAnswerHasOneName(t *testing.T) {
	seen := map[string]bool{}
	for _, e := range sheet.Answer(jobs.Typed("3", "5", "5.5", "7:30"), "").Entries {
		assert.False(t, seen[e.Name], e.Name)
		seen[e.Name] = true
		assert.False(t, strings.Contains(e.Text, "\x00"))
	}
}

// Where the pin stands near the rim, a spread at 12 would open the wheels by less
// than anyone can gauge ("Or spread at 12 by 0 thou"): it isn't offered.
func TestNoMoveByNothingIsOffered(t *testing.T) {
	f := form.Form{
		"pass.1.drive.tir": "0.5", "pass.1.drive.high": "6", "pass.1.timing.tir": "1", "pass.1.timing.high": "6",
		"throw": "60", "rim": "130", "drive.pin": "100", "tolerance": "0.5",
	}
	a := sheet.Answer(f, "true")
	assert.Contains(t, jobs.Text(a, "say.truing.headline"), "Squeeze the wheels at 6")
	assert.Empty(t, jobs.Text(a, "say.truing.then"))
	f["throw"], f["rim"], f["pass.1.drive.tir"], f["pass.1.timing.tir"] = "42", "190", "1", "1.5"
	assert.Contains(t, jobs.Text(sheet.Answer(f, "true"), "say.truing.then"), "Or spread at 12 until ")
}

func TestALimitIsShownAsItWasGiven(t *testing.T) {
	a := sheet.Answer(jobs.Typed("1.3", "3", "1", "9").With(map[string]string{"tolerance": "1.25"}), "")
	assert.Equal(t, "1.25 thou allowed", jobs.Text(a, "say.block.tolerance"))
	assert.Contains(t, jobs.Text(a, "say.truing.headline"), "1.25 thou allowed")
}

// What comes of both dials is shown no finer than the coarser one reads.
func TestFiguresAreNoFinerThanTheCoarserDial(t *testing.T) {
	f := jobs.Again(jobs.Typed("1.33", "3", "2", "9"), "", "1.33", "3", "2", "9")
	for _, divisions := range [][2]string{{"0.05", "0.5"}, {"0.5", "0.05"}, {"0.05", "0.05"}} {
		f["drive.division"], f["timing.division"] = divisions[0], divisions[1]
		want := "D 1.3 thou, T 2 thou"
		if divisions[0] == divisions[1] {
			want = "D 1.33 thou, T 2 thou"
		}
		assert.Contains(t, jobs.Text(sheet.Answer(f, ""), "say.pass.1.said"), want, divisions)
	}
}

// A dial carried across brings its scatter along; of two dials each has its own.
func TestADialCarriedAcrossHasOneScatter(t *testing.T) {
	f := form.Form{}
	for side, turn := range map[string]string{"drive": "5 3.5 0 -3.5 -5 -3.5 0 3.5", "timing": "5 2 1.5 -5 -3.5 -5 1.5 2"} {
		f["pass.1."+side+".how"], f["pass.1."+side+".points"], f["pass.1."+side+".turn"] = "turn", "8", turn
	}
	plus := func(dials string) (drive, timing float64) {
		f["dials"] = dials
		a := sheet.Answer(f, "")
		return jobs.Value(t, a, "dials/0/plus_mm"), jobs.Value(t, a, "dials/1/plus_mm")
	}
	steady, shaky := plus("two")
	assert.Less(t, 2*steady, shaky)
	one, same := plus("one")
	assert.InDelta(t, one, same, 1e-6/100)
	assert.True(t, steady < one && one < shaky, "%g %g %g", steady, one, shaky)
}

// A tap on the clock face fills the hour that is asked for, and nothing where none is.
func TestATapFillsTheHourThatIsAskedFor(t *testing.T) {
	f := form.Form{}
	for _, step := range []struct{ name, text, tap string }{
		{"pass.1.order", "1", ""},
		{"pass.1.drive.tir", "3", "pass.1.drive.high"},
		{"pass.1.drive.high", "3", ""},
		{"pass.1.timing.how", "halfway", ""},
		{"pass.1.timing.tir", "2", "pass.1.timing.rise"},
		{"pass.1.timing.rise", "6", "pass.1.timing.fall"},
		{"pass.1.timing.fall", "12", ""},
		{"pass.1.timing.how", "pin", ""},
	} {
		f[step.name] = step.text
		assert.Equal(t, step.tap, jobs.Text(sheet.Answer(f, truing.First.Name), "tap"), "%v", step)
	}
}

// A job is new until a figure of its first pass stands, however that is read.
func TestAJobIsNewUntilAFigureStands(t *testing.T) {
	isNew := func(f form.Form) string { return jobs.Said(sheet.Answer(f, truing.First.Name), "truing.new") }
	f := form.Form{"pass.1.drive.how": "turn", "pass.1.drive.points": "8"}
	assert.Equal(t, "yes", isNew(form.Form{}))
	assert.Equal(t, "yes", isNew(f))
	assert.Empty(t, isNew(f.With(form.Form{"pass.1.drive.turn": "0"})))
	assert.Empty(t, isNew(form.Form{"pass.1.timing.tir": "2"}))
}

// A dial a millimetre from where its shaft is held has a lever that no rule measures: it told of
// 293 ± 70 thou, and that no bumping mends it. Another dial is asked for, further off.
func TestAGivenLeverThatIsShortAsksForAnotherDial(t *testing.T) {
	for _, row := range []struct {
		more  form.Form
		short bool
	}{
		{form.Form{"mount": "vblocks", "drive.at": "61", "drive.held": "60"}, true},
		{form.Form{"mount": "bearings", "drive.at": "61", "drive.bearing": "60"}, true},
		{form.Form{"drive.at": "1"}, true},
		{form.Form{"mount": "vblocks", "drive.at": "75", "drive.held": "60"}, false},
		{form.Form{"mount": "vblocks", "drive.at": "61", "drive.held": "60", "dial.a.half": "drive", "dial.a.at": "90", "pass.1.dial.a.tir": "5", "pass.1.dial.a.high": "5"}, false},
	} {
		f := jobs.Typed("3", "5", "4", "7:30").With(form.Form{"drive.pin": "120", "timing.at": "75", "timing.held": "60", "timing.bearing": "60"})
		a := sheet.Answer(f.With(row.more), "")
		assert.Equal(t, row.short, jobs.Said(a, "truing.headline") == "One more dial is wanted on the drive shaft.", "%v", row.more)
		assert.Equal(t, row.short, jobs.Text(a, "verdict") == "needs a reading", "%v", row.more)
		two := f.With(form.Form{"timing.pin": "120", "pin.b.at": "220", "pin.b.angle": "180", "drive.at": "75", "rim": "190"}).With(row.more)
		assert.Equal(t, row.short, jobs.Said(sheet.Answer(two, ""), "truing.headline") == "One more dial is wanted on the drive shaft.", "two throws, %v", row.more)
	}
}
