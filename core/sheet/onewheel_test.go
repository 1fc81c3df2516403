package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/step/balance"
	"pintwelve/core/step/fitting"
	"pintwelve/core/step/lighten"
	"pintwelve/testdata/jobs"
)

// holeAt is a hole typed by hand in the wheel of the base job.
func holeAt(radius, hour, across string, more ...string) *bench.Answers {
	return balanced(append([]string{"hole.a.radius", radius, "hole.a.hour", hour, "hole.a.drill", across, "hole.a.bottom", "through"}, more...)...)
}

func refusal(a *bench.Answers) string { return jobs.Text(a, "error.hole.a.radius") }

// A wheel of 160 mm under Lighten has no metal at 84 mm from the shaft, planned or
// typed by hand.
func TestNothingIsDrilledOutsideTheWheelUnderLighten(t *testing.T) {
	wheel := []string{"wheel.drive.diameter", "160"}
	assert.Contains(t, refusal(holeAt("84", "6", "8", wheel...)), "the hole runs out of the wheel, whose radius is 80 mm")
	assert.Contains(t, jobs.Text(balanced(append(wheel, "zone.out", "84")...), "error.zone.out"), "84 mm is outside the wheel, whose radius is 80 mm")
	f := oneSingle(append(wheel, "target", "factor", "target.factor", "55")...)
	planned := jobs.WithPlan(f, balance.Plan(f, "k"))
	require.NotEmpty(t, planned.Rows("hole"))
	for _, key := range planned.Rows("hole") {
		radius, _ := form.Read(planned).Number(form.HoleRadius, key)
		across, _ := form.Read(planned).Number(form.HoleDrill, key)
		assert.LessOrEqual(t, radius+across/2, 80.0)
	}
}

// What is drawn of the wheel under Lighten is kept off on Balance: 56 mm of boss at the
// throw of 42 ends 70 mm out, a hole of 44 mm for the pin 64 mm out, a bore of 40 mm 20 mm out.
func TestWhatIsDrawnOfTheWheelIsKeptOff(t *testing.T) {
	for _, row := range []struct {
		name    string
		a       *bench.Answers
		refusal string
	}{
		{"no boss drawn: 50 mm stands in, which is but said", holeAt("69", "12", "8"), ""},
		{"into the boss as drawn", holeAt("73", "12", "8", "wheel.drive.boss", "56"), "the hole runs into the crankpin’s boss: 4 mm further off will do"},
		{"the timing wheel's alone, where it is drawn", holeAt("73", "12", "8", "wheel.timing.boss", "56"), "the crankpin’s boss"},
		{"past the boss", holeAt("77.5", "12", "8", "wheel.drive.boss", "56"), ""},
		{"each wheel its own", holeAt("73", "12", "8", "wheel.drive.boss", "56", "wheel.timing.boss", "46", "hole.a.wheel", "timing"), ""},
		{"typed here it counts before the drawing", holeAt("73", "12", "8", "wheel.drive.boss", "56", "zone.boss", "48"), ""},
		{"no boss: into the pin's hole", holeAt("67", "12", "8", "wheel.drive.boss", "0", "wheel.drive.pinhole", "44"), "the hole runs into the crankpin"},
		{"no boss, past the pin", holeAt("67", "12", "8", "wheel.drive.boss", "0"), ""},
		{"into the bore as drawn", holeAt("22", "6", "8", "wheel.drive.bore", "40"), "the hole runs into the shaft’s bore"},
		{"into the bore as its shaft's eye was measured", holeAt("22", "6", "8", "joint.b.what", "driveshaft", "joint.b.eye", "40.00"), "the shaft’s bore"},
		{"past the bore that stands in, 24 mm", holeAt("22", "6", "8"), ""},
	} {
		if row.refusal == "" {
			assert.Empty(t, refusal(row.a), row.name)
		} else {
			assert.Contains(t, refusal(row.a), row.refusal, row.name)
		}
	}
	assert.Contains(t, jobs.Said(holeAt("14", "6", "8"), "hole.a.thin"), "the shaft’s bore, assumed 24 mm across: measure that")
	assert.Equal(t, "56 mm", jobs.Text(balanced("wheel.timing.boss", "56"), "assumed.zone.boss"))
	assert.Equal(t, "50 mm", jobs.Text(balanced(), "assumed.zone.boss"))
}

// A cut whose depth is left blank and found leaves less metal than the wheel is wide: it
// counts as found, for the holes too. Where nothing finds it, nothing is planned past it.
func TestACutThatIsFoundCounts(t *testing.T) {
	wheel := []string{
		"target", "factor", "target.factor", "66", "wheel.drive.diameter", "190", "wheel.drive.width", "28", "wheel.drive.bore", "25",
		"lighten.off", "600", "cut.a.order", "1", "cut.a.from", "100", "cut.a.to", "158",
	}
	f := oneSingle(wheel...)
	require.Equal(t, "6.5 mm", jobs.Text(Answer(f, lighten.Step.Name), "found.cut.a.depth"))
	hole := []string{"hole.a.bottom", "", "hole.a.depth", "20"}
	a := holeAt("68", "6", "8", append(hole, wheel...)...)
	assert.Contains(t, jobs.Text(a, "error.hole.a.depth"), "the wheel 21.5 mm thick")
	assert.Contains(t, jobs.Said(a, "balance.uneven"), "from 21.5 mm to 28 mm thick")
	given := f.With(form.Form{"cut.a.depth": "6.5"})
	assert.Equal(t, Plan(given, "k").Entries, Plan(f, "k").Entries)
	assert.Equal(t, "Planned.", jobs.Said(Plan(f, "k"), "plan.said"))

	unlike := f.With(form.Form{"wheel.timing.width": "30", "made.b.from": "60", "made.b.to": "170", "made.b.depth": "4", "made.b.wheel": "timing"})
	assert.Contains(t, jobs.Said(Plan(unlike, "k"), "plan.said"), "Finish cut 1 under Lighten", "each wheel has its own depth")
	delete(f, "lighten.off")
	planned := Plan(f, "k")
	assert.Contains(t, jobs.Said(planned, "plan.said"), "Finish cut 1 under Lighten")
	assert.Empty(t, jobs.WithPlan(f, planned).Rows("hole"))
	assert.Contains(t, jobs.Said(holeAt("88", "12", "6", append(wheel, "lighten.off", "")...), "balance.stale"), "Finish cut 1 under Lighten")
	for _, lacks := range [][]string{{"cut.b.kind", "rim"}, {"cut.b.kind", "face"}, {"cut.b.kind", "holes", "cut.b.holes", "6", "cut.b.circle", "140"}} {
		a := balanced(append(lacks, "cut.b.order", "2", "wheel.drive.diameter", "190")...)
		assert.Contains(t, jobs.Said(a, "balance.uneven"), "Finish cut 1 under Lighten", lacks)
	}
}

// The plan goes round the boss and the pin's hole as they are drawn.
func TestThePlanKeepsOffTheWheelAsDrawn(t *testing.T) {
	// More is to be carried: metal comes off at the pin, between its boss and the rim.
	f := oneSingle("target", "factor", "target.factor", "66", "wheel.drive.boss", "0", "wheel.drive.pinhole", "60", "zone.half", "40")
	planned := jobs.WithPlan(f, balance.Plan(f, "k"))
	r := form.Read(planned)
	require.NotEmpty(t, planned.Rows("hole"))
	for _, key := range planned.Rows("hole") {
		radius, _ := r.Number(form.HoleRadius, key)
		hour, _ := r.Number(form.HoleHour, key)
		across, _ := r.Number(form.HoleDrill, key)
		left := clock.Polar(radius, hour).Sub(clock.Vec{T: 42}).Len() - (60+across)/2
		assert.GreaterOrEqual(t, left, 3-0.05, "the least wall to the hole for the pin")
	}
}

// A boss given on Balance stands in the recess under Lighten, and a shaft's eye as
// measured is the wheel's bore; what nobody has measured isn't drawn.
func TestLightenDrawsWhatOtherStepsKnow(t *testing.T) {
	weight := func(more ...string) float64 {
		f := jobs.Single(nil)
		for i := 0; i < len(more); i += 2 {
			f[more[i]] = more[i+1]
		}
		return jobs.Value(t, Answer(f, lighten.Step.Name), "lighten.drive.before_g")
	}
	bare := weight()
	assert.InDelta(t, weight("wheel.drive.boss", "44", "wheel.timing.boss", "44"), weight("zone.boss", "44"), 1e-9)
	assert.Greater(t, weight("zone.boss", "44"), bare)
	eye := []string{"wheel.drive.bore", "", "joint.b.what", "driveshaft", "joint.b.eye", "32.00"}
	assert.InDelta(t, weight("wheel.drive.bore", "32"), weight(eye...), 1e-9)
	a := Answer(form.Form{}, lighten.Step.Name)
	for _, name := range []string{"assumed.wheel.drive.boss", "assumed.wheel.drive.pinhole"} {
		assert.Empty(t, jobs.Text(a, name), "%s: one stand-in for all sheets", name)
	}
}

// The metal round a joint's eye is that of the wheel as it will be cut, and of its boss:
// 168/2 − 42 is 42 mm from the pin's middle to the rim, less than 42 − 24/2 to the bore
// leaves; turned to 130 mm the rim is 23 mm away.
func TestTheJointKnowsTheWheel(t *testing.T) {
	across := func(more ...string) string {
		f := oneSingle(append([]string{"rim", "", "wheel.drive.diameter", "168", "joint.a.pin", "25.03", "joint.a.eye", "25.00"}, more...)...)
		return jobs.Text(Answer(f, fitting.Measure.Name), "assumed.joint.a.hub")
	}
	assert.Equal(t, "60 mm", across(), "to the bore that stands in, 24 mm")
	assert.Equal(t, "52 mm", across("wheel.drive.bore", "32"))
	assert.Equal(t, "46 mm", across("cut.a.kind", "rim", "cut.a.rim", "130"))
	assert.Equal(t, "44 mm", across("wheel.drive.boss", "44"))
}

// Of cast iron a hole takes off 7200/7850 of what it does of steel.
func TestTheDensityOfIronCountsInTheHoles(t *testing.T) {
	hole := func(material string) float64 {
		return jobs.Value(t, holeAt("80", "6", "10", "lighten.material", material), "balance.holes/0/removed_g")
	}
	assert.InDelta(t, hole("steel")*7200/7850, hole("iron"), 1e-9)
}

// Iron under Lighten is iron at the press, until steel is chosen there: it cracks where
// steel would yield, and the boss is warned of where it is measured and where it is pressed.
func TestIronUnderLightenIsIronAtThePress(t *testing.T) {
	job := form.Form{"joint.a.pin": "25.050", "joint.a.eye": "25.000", "lighten.material": "iron"}
	a := Answer(job, fitting.Measure.Name)
	assert.Contains(t, jobs.Said(a, "joint.a.iron"), "Judged as cast iron, which the wheels are under Lighten: choose what this one is. A cast-iron boss: ")
	assert.Contains(t, jobs.Said(a, "joint.a.stress"), "Cast iron doesn’t yield")
	assert.Equal(t, "214 MPa", jobs.Text(a, "assumed.joint.a.yield"), "class 30, from memory")
	assert.Contains(t, jobs.Said(Answer(job, fitting.PressUp.Name), "press.joint.a.iron"), "cast-iron boss")
	for wheel, iron := range map[string]bool{"steel": false, "iron": true} {
		job["joint.a.wheel"] = wheel
		a := Answer(job, fitting.Measure.Name)
		assert.Equal(t, iron, jobs.Said(a, "joint.a.iron") != "", wheel)
		assert.NotContains(t, jobs.Said(a, "joint.a.iron"), "under Lighten", wheel)
		assert.Equal(t, iron, jobs.Said(Answer(job, fitting.PressUp.Name), "press.joint.a.iron") != "", wheel)
	}
}
