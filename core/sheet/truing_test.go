package sheet

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
	"pintwelve/core/step/jobsheet"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/cases"
)

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// formOf types a case in, the left half being the side named; with turns from
// its full readings, else from its true run-outs and high spots.
func formOf(c cases.Crank, left string, turns bool) form.Form {
	sides := map[string]string{"left": left, "right": "timing"}
	if left == "timing" {
		sides["right"] = "drive"
	}
	f := form.Form{"left": left, "seen": sides[c.SeenFrom], "throw": number(c.Throw), "rim": number(2 * c.Rim)}
	own := func(p cases.Place) float64 {
		if p.Half == "right" {
			return c.Length - p.At
		}
		return p.At
	}
	for i, d := range c.Dials {
		side := sides[d.Half]
		at := "pass.1." + side + "."
		f[at+"tir"], f[at+"high"] = number(d.TIR)+" mm", number(d.HighSpot)
		if turns {
			f[at+"how"], f[at+"points"] = "turn", "given"
			for _, reading := range d.Readings {
				f[at+"turn"] += number(reading.MM) + "mm "
				f[at+"hours"] += number(reading.Clock) + " "
			}
		}
		f[side+".division"] = number(max(c.Division, 0.0001)) + " mm"
		f[side+".at"] = number(own(d.Place))
		f[side+".pin"] = number(own(cases.Place{Half: d.Half, At: c.Pin}))
		f[side+".tip"] = number(own(cases.Place{Half: d.Half, At: c.Truth.At[i]}))
		f[side+".bearing"] = number(own(c.Bearings[i]))
		if c.Mount == "journals" {
			f["mount"], f[side+".held"] = "vblocks", number(own(c.Supports[i]))
		}
	}
	return f
}

func value(t *testing.T, a *bench.Answers, name string) float64 {
	t.Helper()
	e, ok := a.Get(name)
	require.True(t, ok, name)
	require.Equal(t, bench.Number, e.Kind, name)
	return e.Number
}

// Source: readings of an exact rigid-body crank, testdata/cases/truing.json.
func TestExactCranksAreFoundAsTheyAre(t *testing.T) {
	n := 0
	for _, c := range cases.OfOne(t) {
		for _, left := range []string{"drive", "timing"} {
			againstTruth(t, c, Answer(formOf(c, left, false), ""))
			if c.Division == 0 {
				n++
				againstTruth(t, c, Answer(formOf(c, left, true), ""))
			}
		}
	}
	assert.GreaterOrEqual(t, n, 10)
}

func againstTruth(t *testing.T, c cases.Crank, a *bench.Answers) {
	t.Helper()
	const halfMicron = 0.0005
	require.Empty(t, a.Faults(), c.Name)
	assert.InDelta(t, c.Truth.Offset.T, value(t, a, "offset.towards12_mm"), halfMicron, c.Name)
	assert.InDelta(t, c.Truth.Offset.N, value(t, a, "offset.towards3_mm"), halfMicron, c.Name)
	assert.InDelta(t, c.Truth.Gap.Across, value(t, a, "gap.across_rim_mm"), halfMicron, c.Name)
	if hour, _ := a.Get("gap.widest_hour"); hour.Kind == bench.Number && c.Truth.Gap.Across > 0.005 {
		assert.InDelta(t, 0, clock.Apart(*c.Truth.Gap.Widest, hour.Number), 0.05, c.Name)
	}
	for i := range c.Dials {
		at := "/" + strconv.Itoa(i)
		assert.InDelta(t, c.Truth.Untwist[i], value(t, a, "after_strike_tir_mm"+at), halfMicron, c.Name)
		assert.InDelta(t, c.Truth.Closed[i], value(t, a, "after_gap_tir_mm"+at), halfMicron, c.Name)
		assert.InDelta(t, c.Truth.Both[i], value(t, a, "after_both_tir_mm"+at), halfMicron, c.Name)
		assert.InDelta(t, c.Truth.Bearings[i], value(t, a, "bearings/tir_mm"+at), halfMicron, c.Name)
	}
}

// typed is a job of two dials, in thou and hours seen from the drive side.
func typed(driveTIR, driveHigh, timingTIR, timingHigh string) form.Form {
	return form.Form{
		"pass.1.drive.tir": driveTIR, "pass.1.drive.high": driveHigh,
		"pass.1.timing.tir": timingTIR, "pass.1.timing.high": timingHigh,
	}
}

func text(a *bench.Answers, name string) string {
	e, _ := a.Get(name)
	return e.Text
}

// Source: common practice, no source.
func TestThePatternsOfTheTrade(t *testing.T) {
	for _, row := range []struct {
		name           string
		job            form.Form
		verdict, first string
	}{
		{"both high at the pin", typed("4", "12", "4", "12"), "out of true", "Spread the wheels at 6 until 4.7 thou stays; drive needle to 1.4 thou."},
		{"both high opposite the pin", typed("4", "6", "4", "6"), "out of true", "Squeeze the wheels at 6 until 4.7 thou stays; drive needle to 1.4 thou."},
		{"opposed, drive high at 3", typed("4", "3", "4", "9"), "out of true", "Strike the drive wheel at 3; drive needle to 1.4 thou."},
		{"opposed, drive high at 9", typed("4", "9", "4", "3"), "out of true", "Strike the drive wheel at 9; drive needle to 1.4 thou."},
		{"half a thou and one, rising together", typed("0.5", "2", "1", "2"), "true as it hangs", "True as it hangs: leave it."},
		{"1.9 with 2 allowed", typed("1.9", "3", "1", "9"), "too close to call", "Too close to call: 1.9 ± 0.4 thou, 2 thou allowed."},
		{"2.1 with 2 allowed", typed("2.1", "3", "1", "9"), "too close to call", "Too close to call: 2.1 ± 0.4 thou, 2 thou allowed."},
		{"opposed at the pin and opposite it", typed("5", "12", "5", "6"), "not mendable by bumping", "Bumping can’t mend this"},
	} {
		a := Answer(row.job, "")
		assert.Equal(t, row.verdict, text(a, "verdict"), row.name)
		assert.Contains(t, text(a, "say.truing.headline"), row.first, row.name)
	}
}

// By the bare figures, 1.9 is inside 2 and 2.1 is not; how sure they are decides
// the verdict (ISO 14253-1), and what would tell is said.
func TestAsReadTheLimitIsTheLimit(t *testing.T) {
	a := Answer(typed("1.9", "3", "1", "9"), "")
	assert.Equal(t, "true", text(a, "verdict_as_read"))
	assert.Contains(t, text(a, "say.truing.then"), "As read it is inside.")
	b := Answer(typed("2.1", "3", "1", "9"), "")
	assert.Equal(t, "out of true", text(b, "verdict_as_read"))
	assert.Contains(t, text(b, "say.truing.then"), "As read it is outside. What would tell: ")
	assert.Contains(t, text(b, "say.truing.else"), "strike the drive wheel at 3")
}

// Where the needles are inside and a journal's lean is not, it is the lean that is
// told beside its limit (MODEL §5).
func TestTheLeanIsToldWhereItIsWhatIsWrong(t *testing.T) {
	pinch := with(typed("1", "6", "1", "6"), form.Form{"tilt": "0.5"})
	a := Answer(pinch, "")
	assert.Equal(t, "too close to call", text(a, "verdict"))
	// Equal and in phase: the shafts tilt by e/a = 0.0127/75, 0.6 minutes of arc.
	assert.Equal(t, "Too close to call: the drive journal leans 0.6′ ± 0.7′, 0.5′ allowed.", text(a, "say.truing.headline"))
	mismatch := with(typed("1", "12", "1", "6"), form.Form{"tilt": "0.3"})
	a = Answer(mismatch, "")
	assert.Equal(t, "not mendable by bumping", text(a, "verdict"))
	// d = 2 · 0.0127 · 120/75 = 0.0406 mm, over the 100 mm from bearing to bearing.
	assert.Equal(t, "Bumping can’t mend this: the journals would still lean 1.4′, 0.3′ allowed.", text(a, "say.truing.headline"))
	assert.Contains(t, text(Answer(mismatch, jobsheet.Name), "say.sheet.plain"), "leans in its bearing more than it may")
}

func TestTheOtherEndSeesTheMirrorImage(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for range 200 {
		tir := [2]float64{3 + 5*rng.Float64(), 3 + 5*rng.Float64()}
		high := [2]float64{12 * rng.Float64(), 12 * rng.Float64()}
		job := func(seen string, h [2]float64) *bench.Answers {
			f := typed(number(tir[0]), number(clock.Wrap(h[0])), number(tir[1]), number(clock.Wrap(h[1])))
			f["seen"] = seen
			return Answer(f, "")
		}
		a := job("drive", high)
		b := job("timing", [2]float64{clock.Mirror(high[0]), clock.Mirror(high[1])})
		assert.InDelta(t, value(t, a, "offset.towards12_mm"), value(t, b, "offset.towards12_mm"), 1e-12)
		assert.InDelta(t, value(t, a, "offset.towards3_mm"), -value(t, b, "offset.towards3_mm"), 1e-12)
		if e, _ := a.Get("gap.widest_hour"); e.Kind == bench.Number {
			assert.InDelta(t, 0, clock.Apart(e.Number, clock.Mirror(value(t, b, "gap.widest_hour"))), 1e-9)
		}
		assert.Equal(t, text(a, "verdict"), text(b, "verdict"))
		for i := range 2 {
			at := "moves/" + strconv.Itoa(i) + "/"
			if text(a, at+"kind") == "" {
				assert.Empty(t, text(b, at+"kind"))
				continue
			}
			assert.Equal(t, text(a, at+"kind"), text(b, at+"kind"))
			assert.Equal(t, text(a, at+"wheel"), text(b, at+"wheel"))
			assert.InDelta(t, 0, clock.Apart(value(t, a, at+"hour"), clock.Mirror(value(t, b, at+"hour"))), 1e-9)
			assert.InDelta(t, value(t, a, at+"amount_mm"), value(t, b, at+"amount_mm"), 1e-12)
		}
	}
}

// Which end is at the left hand changes no advice: wheels keep their names, and
// so do hours that are seen from a named side.
func TestTurningTheLatheRoundChangesNoAdvice(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for range 200 {
		f := typed(number(3+5*rng.Float64()), number(12*rng.Float64()), number(3+5*rng.Float64()), number(12*rng.Float64()))
		f["drive.pin"], f["timing.at"] = "110", "60"
		a := Answer(f, "")
		f["left"] = "timing"
		b := Answer(f, "")
		assert.Equal(t, text(a, "say.truing.headline"), text(b, "say.truing.headline"))
		assert.InDelta(t, value(t, a, "offset.towards12_mm"), -value(t, b, "offset.towards12_mm"), 1e-12)
		assert.InDelta(t, value(t, a, "offset.towards3_mm"), -value(t, b, "offset.towards3_mm"), 1e-12)
		if e, _ := a.Get("gap.widest_hour"); e.Kind == bench.Number {
			assert.InDelta(t, 0, clock.Apart(e.Number, value(t, b, "gap.widest_hour")), 1e-9)
		}
	}
}

// In other units figures lie within a tenth of a half-thou dial's division of
// what they were, and the words tell the same.
func TestReadingsInOtherUnitsAreRoundedToTheDial(t *testing.T) {
	f := typed("3", "5", "5.5", "7:30")
	f["tolerance"], f["pass.1.edge12"] = "1.5", "1"
	changes := InUnits(f, "metric")
	assert.Equal(t, form.Form{"pass.1.drive.tir": "0.076", "pass.1.timing.tir": "0.14", "pass.1.edge12": "0.025", "tolerance": "0.0381"}, changes)
	after := with(f, changes)
	after["units"] = "metric"
	a, b := Answer(f, ""), Answer(after, "")
	for _, e := range a.Entries {
		if strings.HasSuffix(e.Name, "tir_mm") {
			assert.InDelta(t, e.Number, value(t, b, e.Name), 0.00127, e.Name)
		}
	}
	assert.Equal(t, "Strike the timing wheel at 9", text(b, "say.truing.headline")[:28])
	assert.Contains(t, text(b, "say.truing.headline"), " mm")
	back := with(after, InUnits(after, "inch"))
	delete(back, "units")
	assert.Equal(t, f, back)
}

// Random jobs near what is allowed, seed 7: there rounding would turn some of
// the verdicts, and none turns.
func TestOtherUnitsTurnNoVerdict(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	turned := 0
	for range 300 {
		near := func() string { return strconv.FormatFloat(1.9+0.2*rng.Float64(), 'f', 3, 64) }
		f := typed(near(), "3", near(), "9")
		f["drive.division"], f["tolerance"] = "0.5", near()
		wants := verdicts(f)
		rounded := with(f, form.InUnits(f, "metric", 0.1))
		rounded["units"] = "metric"
		if !sameTexts(wants, verdicts(rounded)) {
			turned++
		}
		after := with(f, InUnits(f, "metric"))
		after["units"] = "metric"
		assert.Equal(t, wants, verdicts(after), "%v", f)
	}
	assert.Positive(t, turned, "no job was near enough for the test to show anything")
}

func TestNoAnswerWaitsForADistance(t *testing.T) {
	a := Answer(typed("3", "5", "5.5", "7:30"), "")
	assert.Equal(t, "out of true", text(a, "verdict"))
	assert.Equal(t, "75 mm", text(a, "assumed.timing.at"))
	f := typed("3", "5", "5.5", "7:30")
	f["drive.at"] = "60"
	assert.Equal(t, "60 mm", text(Answer(f, ""), "assumed.timing.at"), "the other half is taken to be alike")
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
		a := Answer(f, "")
		assert.Contains(t, text(a, "say.truing.headline"), step.next, step.name+"="+step.text)
		assert.Contains(t, text(a, "picture.face"), "<svg")
	}
}

func TestOneDialIsCarriedAcrossFromTheLeft(t *testing.T) {
	f := form.Form{"dials": "one", "left": "timing", "pass.1.timing.tir": "3"}
	assert.Contains(t, text(Answer(f, ""), "say.truing.headline"), "does the timing needle stand highest")
	f["pass.1.timing.high"] = "3"
	assert.Equal(t, "Carry the dial across to the drive shaft and turn again.", text(Answer(f, ""), "say.truing.headline"))
}

// The same reading in its three forms gives one answer.
func TestTheQuickFormsAgree(t *testing.T) {
	hour := Answer(typed("4", "3", "4", "9"), "")
	f := typed("4", "", "4", "")
	f["pass.1.drive.how"], f["pass.1.drive.rise"], f["pass.1.drive.fall"] = "halfway", "12", "6"
	f["pass.1.timing.how"], f["pass.1.timing.stands"], f["pass.1.timing.pinat"] = "pin", "behind", "up"
	mixed := Answer(f, "")
	assert.Equal(t, text(hour, "say.truing.headline"), text(mixed, "say.truing.headline"))
	assert.InDelta(t, value(t, hour, "offset.towards3_mm"), value(t, mixed, "offset.towards3_mm"), 1e-12)
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
		f := typed("3", "5", "5.5", "7:30")
		f[row.name] = row.text
		a := Answer(f, "")
		assert.Contains(t, text(a, "error."+row.name), row.says, row.name+"="+row.text)
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
	for _, e := range Answer(typed("3", "5", "5.5", "7:30"), "").Entries {
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
	a := Answer(f, "true")
	assert.Contains(t, text(a, "say.truing.headline"), "Squeeze the wheels at 6")
	assert.Empty(t, text(a, "say.truing.then"))
	f["throw"], f["rim"], f["pass.1.drive.tir"], f["pass.1.timing.tir"] = "42", "190", "1", "1.5"
	assert.Contains(t, text(Answer(f, "true"), "say.truing.then"), "Or spread at 12 until ")
}

func TestALimitIsShownAsItWasGiven(t *testing.T) {
	a := Answer(with(typed("1.3", "3", "1", "9"), map[string]string{"tolerance": "1.25"}), "")
	assert.Equal(t, "1.25 thou allowed", text(a, "say.block.tolerance"))
	assert.Contains(t, text(a, "say.truing.headline"), "1.25 thou allowed")
}

// What comes of both dials is shown no finer than the coarser one reads.
func TestFiguresAreNoFinerThanTheCoarserDial(t *testing.T) {
	f := again(typed("1.33", "3", "2", "9"), "", "1.33", "3", "2", "9")
	for _, divisions := range [][2]string{{"0.05", "0.5"}, {"0.5", "0.05"}, {"0.05", "0.05"}} {
		f["drive.division"], f["timing.division"] = divisions[0], divisions[1]
		want := "D 1.3 thou, T 2 thou"
		if divisions[0] == divisions[1] {
			want = "D 1.33 thou, T 2 thou"
		}
		assert.Contains(t, text(Answer(f, ""), "say.pass.1.said"), want, divisions)
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
		a := Answer(f, "")
		return value(t, a, "dials/0/plus_mm"), value(t, a, "dials/1/plus_mm")
	}
	steady, shaky := plus("two")
	assert.Less(t, 2*steady, shaky)
	one, same := plus("one")
	assert.InDelta(t, one, same, micron/100)
	assert.True(t, steady < one && one < shaky, "%g %g %g", steady, one, shaky)
}
