package fitting_test

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/fitting"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/jobs"
)

const micron = 1e-6

func TestABlankJobHasNothingWrongAndSaysWhatToDoFirst(t *testing.T) {
	for part, first := range map[string]string{
		"order": "Next: look it over as found.", fitting.Found.Name: "Look it over before you split it.", fitting.Measure.Name: "Measure the crankpin: both ends and the middle, then across.",
		fitting.PressUp.Name: "Measure each wheel’s width at the pin, and the rod’s.", fitting.Cases.Name: "Measure the bearing seats and housings.",
	} {
		a := sheet.Answer(form.Form{}, part)
		assert.Empty(t, a.Faults(), part)
		assert.Equal(t, first, jobs.Told(t, a, "say."+part+".headline"))
	}
}

// A figure that is wrong on another step isn't to be mended on this one.
func TestAnotherStepsFigureDoesntKeepAStepBack(t *testing.T) {
	f := form.Form{"tolerance": "wide", "wheel.drive.diameter": "-1"}
	for _, part := range []string{fitting.Found.Name, fitting.Measure.Name, fitting.PressUp.Name, fitting.Cases.Name} {
		assert.Equal(t, jobs.Said(sheet.Answer(nil, part), part+".headline"), jobs.Said(sheet.Answer(f, part), part+".headline"))
	}
}

func TestTheOrderTellsWhatIsNext(t *testing.T) {
	ticks := form.Form{"order.found": "yes", "order.split": "yes"}
	assert.Equal(t, "Next: measure.", jobs.Told(t, sheet.Answer(ticks, "order"), "say.order.headline"))
	ticks["order.press"] = "yes"
	a := sheet.Answer(ticks, "order")
	assert.Equal(t, "Next: true it.", jobs.Told(t, a, "say.order.headline"), "what lies before it he may do without")
	assert.Equal(t, "3 of 10 done", jobs.Told(t, a, "say.order.count"))
	for _, field := range form.Job.Fields() {
		if strings.HasPrefix(field.Pattern, "order.") {
			ticks[field.Pattern] = "yes"
		}
	}
	assert.Equal(t, "All done.", jobs.Told(t, sheet.Answer(ticks, "order"), "say.order.headline"))
	ticks["order.lighten"] = ""
	assert.Equal(t, "Left out: lighten.", jobs.Told(t, sheet.Answer(ticks, "order"), "say.order.headline"))
}

// What the figures show is done is ticked by them, and no more than that.
func TestTheFiguresTickTheOrder(t *testing.T) {
	shown := func(f form.Form) (all []string) {
		for _, e := range sheet.Answer(f, "order").Entries {
			if name, is := strings.CutSuffix(e.Name, ".shown"); is {
				all = append(all, strings.TrimPrefix(name, "say.order."))
			}
		}
		return all
	}
	next := func(f form.Form) string { return jobs.Told(t, sheet.Answer(f, "order"), "say.order.headline") }
	out, trued := jobs.Typed("4", "3", "4", "9"), jobs.Typed("0.5", "3", "0.5", "3")
	assert.Empty(t, shown(out))
	assert.Equal(t, "Next: true it.", next(out), "he is at it")
	assert.Equal(t, []string{"true"}, shown(trued))
	assert.Equal(t, "Next: nuts and locks.", next(trued))
	nuts := trued.With(form.Form{"pass.2.order": "2", "pass.2.since": "nuts"})
	assert.Equal(t, []string{"true", "nuts"}, shown(nuts))
	nuts = nuts.With(form.Form{"pass.2.drive.tir": "0.5", "pass.2.drive.high": "3", "pass.2.timing.tir": "0.5", "pass.2.timing.high": "4"})
	assert.Equal(t, []string{"true", "nuts", "again"}, shown(nuts))
	assert.Equal(t, "Next: into the cases.", next(nuts))
	again := nuts.With(form.Form{
		"pass.3.order": "3", "pass.3.since": "apart",
		"pass.3.drive.tir": "0.5", "pass.3.drive.high": "3", "pass.3.timing.tir": "0.5", "pass.3.timing.high": "4",
	})
	assert.Equal(t, []string{"true"}, shown(again), "apart since, its nuts are loose")
	assert.Equal(t, "Next: nuts and locks.", next(again))
	assert.Empty(t, shown(again.With(form.Form{"pass.3.drive.tir": "8", "pass.3.timing.high": "9"})))

	press := func(f form.Form) [2]string {
		a := sheet.Answer(f, "press")
		return [2]string{jobs.Said(a, "press.read"), jobs.Said(a, "press.drawn")}
	}
	assert.Equal(t, [2]string{}, press(form.Form{"press.nuts": "yes"}), "it was never read")
	assert.Equal(t, [2]string{"Pressed up: read it again"}, press(out), "how it came is nothing to strike by")
	anew := jobs.Again(out, "apart", "0.5", "3", "0.5", "3")
	assert.Equal(t, [2]string{}, press(anew))
	assert.Equal(t, [2]string{1: "Nuts tight: read it again"}, press(anew.With(form.Form{"press.nuts": "yes"})))
	assert.Equal(t, [2]string{}, press(nuts.With(form.Form{"press.nuts": "yes"})))

	looked := form.Form{}
	for _, what := range []string{"cracks", "oilways", "sludge", "pinseats", "tapers", "threads", "keyways", "witness"} {
		assert.Empty(t, shown(looked), "not all of it yet")
		looked["found."+what] = "good"
	}
	assert.Equal(t, []string{"found"}, shown(looked))
	assert.Equal(t, "Next: split it.", next(looked))
	assert.Equal(t, "Next: split it.", next(looked.With(out)), "it is how it came")
	assert.Equal(t, "Next: lighten.", next(out.With(form.Form{"order.split": "yes", "bigend.pin": "25", "bigend.bush": "32"})))
	assert.Equal(t, "Next: true it.", next(jobs.Again(looked.With(out), "apart", "3", "3", "3", "9")))
	assert.Equal(t, []string{"split"}, shown(form.Form{"bigend.pin": "25"}))
	assert.Equal(t, []string{"split", "measure"}, shown(form.Form{"bigend.pin": "25", "bigend.bush": "32"}))
	assert.Empty(t, shown(form.Form{"bigend.pin": "much", "press.over": "wide"}))
	assert.Equal(t, []string{"press"}, shown(form.Form{"press.over": "70"}))
	assert.Equal(t, []string{"lighten"}, shown(form.Form{"wheel.drive.after": "5000"}))
	cut := form.Form{"wheel.drive.after": "5000", "cut.a.kind": "face"}
	assert.Empty(t, shown(cut), "one wheel of two")
	assert.Equal(t, []string{"lighten"}, shown(cut.With(form.Form{"cut.a.wheel": "drive"})))
	assert.Equal(t, []string{"lighten"}, shown(cut.With(form.Form{"wheel.timing.after": "5010"})))
	assert.Empty(t, shown(cut.With(form.Form{"wheel.timing.after": "5010", "wheel.timing.weight": "5010"})), "nothing is off")
	assert.Empty(t, shown(form.Form{"cases.drive": "1"}), "one side of two")
	assert.Equal(t, []string{"cases"}, shown(form.Form{"cases.drive": "1", "cases.timing": "0.5"}))
}

// Clearance of 1 to 1.5 thou an inch of diameter: common practice, no source.
func TestAFloatingBushIsJudgedOnBothSides(t *testing.T) {
	job := form.Form{
		"bigend.pin": "1.0000 1.0000 1.0000 in", "bigend.pin90": "1.0000 0.9999 1.0000 in", "bigend.bore": "1.0012 in",
		"bigend.bush": "1.2500 in", "bigend.eye": "1.2525 in",
	}
	a := sheet.Answer(job, fitting.Measure.Name)
	require.Empty(t, a.Faults())
	assert.InDelta(t, 25.4*0.0012+25.4*0.0001/6, jobs.Value(t, a, "fit.bigend.inner_clearance_mm"), micron)
	assert.Equal(t, "right", jobs.Told(t, a, "fit.bigend.inner_clearance_verdict"))
	assert.InDelta(t, 25.4*0.0025, jobs.Value(t, a, "fit.bigend.outer_clearance_mm"), micron)
	assert.Equal(t, "Bush in rod 2.5 ± 0.1 thou: too loose.", jobs.Told(t, a, "say.measure.headline"))
	assert.Contains(t, jobs.Told(t, a, "say.bigend.pin"), "oval 0.1 thou")
	assert.Contains(t, jobs.Told(t, a, "picture.bigend.inner_clearance"), "within the limits")
	assert.Equal(t, "1 thou", jobs.Told(t, a, "assumed.bigend.least"))

	own := sheet.Answer(job.With(form.Form{"bigend.outleast": "2", "bigend.outmost": "3"}), fitting.Measure.Name)
	assert.Equal(t, "right", jobs.Told(t, own, "fit.bigend.outer_clearance_verdict"))
	near := sheet.Answer(job.With(form.Form{"bigend.most": "1.25"}), fitting.Measure.Name)
	assert.Equal(t, "too close to call", jobs.Told(t, near, "fit.bigend.inner_clearance_verdict"))
}

func TestRollersTakeTwiceTheirDiameter(t *testing.T) {
	a := sheet.Answer(form.Form{"bigend.kind": "rollers", "bigend.pin": "30.000", "bigend.roller": "5.000 5.000 5.000", "bigend.eye": "40.020"}, fitting.Measure.Name)
	assert.InDelta(t, 0.02, jobs.Value(t, a, "fit.bigend.roller_clearance_mm"), micron)
	assert.Equal(t, "right", jobs.Told(t, a, "fit.bigend.roller_clearance_verdict"))
}

// Lamé, equal materials on a solid shaft: p = E δ (D² − d²)/(2 d D²); torque and
// force by definition.
func TestAPressHoldsWhatLaméSays(t *testing.T) {
	job := form.Form{
		"joint.a.pin": "25.040", "joint.a.eye": "25.000", "joint.a.length": "20", "joint.a.hub": "60", "joint.a.friction": "0.1",
		"duty.power": "20", "duty.speed": "6000", "duty.peak": "8",
	}
	a := sheet.Answer(job, fitting.Measure.Name)
	require.Empty(t, a.Faults())
	const d, hub, bite, length = 25.04, 60.0, 0.04, 20.0
	p := 207e3 * bite * (hub*hub - d*d) / (2 * d * hub * hub)
	hold := 0.1 * p * math.Pi * d * d * length / 2000
	need := 8 * 20e3 / (2 * math.Pi * 100) / 2
	assert.InEpsilon(t, p, jobs.Value(t, a, "fit.joints/0/pressure_mpa"), 1e-9)
	assert.InEpsilon(t, p*(hub*hub+d*d)/(hub*hub-d*d), jobs.Value(t, a, "fit.joints/0/hoop_mpa"), 1e-9)
	assert.InEpsilon(t, hold, jobs.Value(t, a, "fit.joints/0/hold_nm"), 1e-9)
	assert.InEpsilon(t, 2000*hold/d, jobs.Value(t, a, "fit.joints/0/push_out_n"), 1e-9)
	assert.InEpsilon(t, hold/need, jobs.Value(t, a, "fit.joints/0/margin"), 1e-9)
	assert.Equal(t, "right", jobs.Told(t, a, "fit.joint.a.bite_verdict"))
	assert.Equal(t, "310 MPa", jobs.Told(t, a, "assumed.joint.a.yield"))

	slips := sheet.Answer(job.With(form.Form{"joint.a.need": "2000"}), fitting.Measure.Name)
	assert.Contains(t, jobs.Told(t, slips, "say.measure.headline"), "slips")
	assert.Contains(t, jobs.Told(t, slips, "say.joint.a.cannot"), "without yielding")
}

// A shaft's hole is in the middle of its wheel, the pin's near the rim: the thinnest
// wall stands in for the hub, 42 − 30/2 mm to the crankpin that stands in or 55 − 42 mm to
// the rim; where that leaves none, twice the hole. Common practice, no source.
func TestTheThinnestWallStandsInForTheHub(t *testing.T) {
	for _, row := range []struct{ what, rim, hub string }{
		{"drivepin", "110", "26 mm"}, {"timingpin", "110", "26 mm"}, {"driveshaft", "110", "54 mm"}, {"timingshaft", "110", "54 mm"}, {"drivepin", "90", "50 mm"},
	} {
		a := sheet.Answer(form.Form{"throw": "42", "rim": row.rim, "joint.a.what": row.what, "joint.a.pin": "25.00", "joint.a.eye": "24.96", "joint.a.length": "20"}, fitting.Measure.Name)
		assert.Equal(t, row.hub, jobs.Told(t, a, "assumed.joint.a.hub"), "%s in a wheel of %s", row.what, row.rim)
	}
}

// The draw of a taper is the bite over the taper, by definition.
func TestATaperIsDrawnUp(t *testing.T) {
	job := form.Form{"joint.a.form": "taper", "joint.a.what": "driveshaft", "joint.a.pin": "25 24 23", "joint.a.taper": "10", "joint.a.need": "100"}
	a := sheet.Answer(job, fitting.Measure.Name)
	require.Empty(t, a.Faults())
	wanted := jobs.Value(t, a, "fit.joints/0/draw_wanted_mm")
	a = sheet.Answer(job.With(form.Form{"joint.a.draw": jobs.Figure(wanted) + " mm"}), fitting.Measure.Name)
	assert.InDelta(t, wanted/10, jobs.Value(t, a, "fit.joints/0/bite_mm"), micron)
	// On a cone it holds 1/cos of half its angle more than on a cylinder.
	assert.InEpsilon(t, 100*math.Hypot(1, 0.05), jobs.Value(t, a, "fit.joints/0/hold_nm"), 1e-6)
	steep := sheet.Answer(job.With(form.Form{"joint.a.draw": "5", "joint.a.taper": "4"}), fitting.Measure.Name)
	assert.Contains(t, jobs.Told(t, steep, "say.joint.a.steep"), "the nut must hold it")
}

func TestThePressStopsWhereTheRodHasItsRoom(t *testing.T) {
	job := form.Form{"press.drive": "30", "press.timing": "31", "press.rod": "17.6", "press.washers": "2", "bigend.sideleast": "0.2 mm", "bigend.sidemost": "0.4 mm"}
	assert.InDelta(t, 30+31+17.6+2+0.3, jobs.Value(t, sheet.Answer(job, fitting.PressUp.Name), "fit.press.stop_mm"), micron)
	a := sheet.Answer(job.With(form.Form{"press.over": "80.85"}), fitting.PressUp.Name)
	assert.InDelta(t, 0.25, jobs.Value(t, a, "fit.press.side_clearance_mm"), micron)
	assert.Equal(t, "right", jobs.Told(t, a, "fit.press.verdict"))
	tight := sheet.Answer(job.With(form.Form{"press.over": "80.5"}), fitting.PressUp.Name)
	assert.Contains(t, jobs.Told(t, tight, "error.press.over"), "80.5 mm over the wheels is no more than wheels, rod and washers take, 80.6 mm")
}

// Expansions are those of fit.Steel and fit.LightAlloy: ISO 3650, and common
// practice.
func TestARaceDropsInAndComesLooseByHeat(t *testing.T) {
	a := sheet.Answer(jobs.Main(nil), fitting.Cases.Name)
	require.Empty(t, a.Faults())
	const alloy, steel = 22e-6, 11.5e-6
	assert.InDelta(t, 20+0.03/(alloy*52), jobs.Value(t, a, "fit.mains/0/case_heat_c"), 1e-6)
	assert.InDelta(t, 20+(0.03-38*steel*52)/(alloy*52), jobs.Value(t, a, "fit.mains/0/case_heat_frozen_c"), 1e-6)
	assert.InDelta(t, 20+0.0085/(steel*25), jobs.Value(t, a, "fit.mains/0/bearing_heat_c"), 1e-6)
	assert.InDelta(t, 20+0.03/((alloy-steel)*52), jobs.Value(t, a, "fit.mains/0/loose_c"), 1e-6)
	assert.InDelta(t, 0.03-70*(alloy-steel)*52, jobs.Value(t, a, "fit.mains/0/hot_bite_mm"), 1e-9)
	assert.Contains(t, jobs.Told(t, a, "say.cases.headline"), "the race is loose by")
	// A race that is in the case warms with it and holds past the heat that drops it in cold.
	assert.Less(t, jobs.Value(t, a, "fit.mains/0/case_heat_c"), jobs.Value(t, a, "fit.mains/0/loose_c"))
	assert.Contains(t, jobs.Told(t, a, "say.main.a.dropin"), "to drop the bearing in; to")
	iron := sheet.Answer(jobs.Main(form.Form{"main.a.case": "iron"}), fitting.Cases.Name)
	assert.Contains(t, jobs.Told(t, iron, "say.main.a.loose"), "expands no more")
}

// Nothing is told below 0 that a person would not say so.
func TestNothingIsSaidOfLessThanNil(t *testing.T) {
	for _, row := range []struct {
		part       string
		job        form.Form
		name, says string
	}{
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.housing": "52.03"}), "main.a.dropin", "It drops in and out of the case cold."},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.housing": "51.995"}), "main.a.dropin", "from the freezer at −18 °C it drops into the case cold."},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.play": "0.005 mm"}), "main.a.left", "and the bearing has 0.2 thou. Take one with more play."},
		{fitting.Cases.Name, form.Form{"float.faces": "100", "float.crank": "99.8", "main.a.case": "iron"}, "float.grows", "the case grows 0.2 thou less than the crank"},
		{fitting.Measure.Name, form.Form{"joint.a.form": "taper", "joint.a.taper": "3", "joint.a.pin": "25", "joint.a.draw": "1"}, "joint.a.holds", "it comes out by itself."},
		{truing.More.Name, jobs.Typed("3", "3", "3", "9").With(form.Form{"pass.1.gap12": "20", "pass.1.gap3": "20.1", "pass.1.gap6": "20", "pass.1.gap9": "20.1"}), "check.gaps.askew", "differ from 3 and 9 together by 7.9 thou"},
	} {
		says := jobs.Told(t, sheet.Answer(row.job, row.part), "say."+row.name)
		assert.Contains(t, says, row.says)
	}
	job := form.Form{"joint.a.pin": "25.3", "joint.a.eye": "25"}
	yields := 0
	for _, e := range sheet.Answer(job, fitting.Measure.Name).Entries {
		if e.Name == "say.joint.a.yields" {
			yields++
		}
	}
	assert.Equal(t, 1, yields, "of both parts, said once")
}

// ISO 286-2, values from memory: k6 at 25 mm +2 to +15 µm, N7 at 52 mm −39 to
// −9 µm, r6 at 25 mm +28 to +41 µm, H7 at 52 mm 0 to +30 µm.
func TestSeatAndHousingAreJudgedByTheirClass(t *testing.T) {
	for _, row := range []struct {
		more          form.Form
		seat, housing string
	}{
		{form.Form{"main.a.seatclass": "k6"}, "right", "right"},
		{form.Form{"main.a.seatclass": "r6", "main.a.housingclass": "H7"}, "wrong", "wrong"},
		{form.Form{"main.a.seatclass": "k6", "main.a.seat": "25.020"}, "wrong", "right"},
		{form.Form{"main.a.seatclass": "k6", "main.a.seat": "25.015"}, "too close to call", "right"},
		{form.Form{"main.a.seatclass": "r6", "main.a.seat": "25.0345", "main.a.housingclass": "H7", "main.a.housing": "52.015"}, "right", "right"},
		{form.Form{"main.a.seatclass": "k6", "main.a.housing": "51.957"}, "right", "wrong"},
	} {
		a := sheet.Answer(jobs.Main(row.more), fitting.Cases.Name)
		require.Empty(t, a.Faults(), "%v", row.more)
		assert.Equal(t, row.seat, jobs.Told(t, a, "fit.main.a.seat_bite_verdict"), "%v", row.more)
		assert.Equal(t, row.housing, jobs.Told(t, a, "fit.main.a.housing_bite_verdict"), "%v", row.more)
	}
	assert.Equal(t, "k5", jobs.Told(t, sheet.Answer(jobs.Main(nil), fitting.Cases.Name), "assumed.main.a.seatclass"))
}

func TestABearingCanLoseAllItsPlay(t *testing.T) {
	a := sheet.Answer(jobs.Main(form.Form{"main.a.play": "0.005 mm"}), fitting.Cases.Name)
	assert.Less(t, jobs.Value(t, a, "fit.mains/0/play_left_mm"), 0.0)
	assert.Contains(t, jobs.Told(t, a, "say.main.a.left"), "No play left")
}

func TestShimsMakeTheEndFloatAndBringTheRodToTheMiddle(t *testing.T) {
	job := form.Form{
		"float.faces": "100", "float.crank": "98.9", "float.shims": "0.1 0.3 0.5", "float.judge": "cold",
		"float.least": "0.1 mm", "float.most": "0.3 mm", "float.caseleft": "50", "float.crankleft": "49.35",
	}
	a := sheet.Answer(job, fitting.Cases.Name)
	require.Empty(t, a.Faults())
	// By hand: 1.1 of room wants 0.8 to 1.0 of shims, so two at the fewest: 0.5
	// with 0.3 leaves 0.3, 0.5 with 0.5 leaves 0.1, both 0.1 from the 0.2 wanted.
	// The rod stands at left shims + half the float + 49.35: with 0.5 left and 0.3
	// right exactly on the line.
	assert.InDelta(t, 0.3, jobs.Value(t, a, "fit.float.end_mm"), 1e-9)
	assert.Equal(t, "Shims: drive side 0.5 mm, timing side 0.3 mm.", jobs.Told(t, a, "say.float.shims"))
	assert.InDelta(t, 0.5+0.15+49.35-50, jobs.Value(t, a, "fit.float.off_centre_mm"), 1e-9)
	// The case grows 22 − 11.5 µm a metre and kelvin more, 70 K over the shop.
	assert.InDelta(t, 70*(22e-6*100-11.5e-6*98.9), jobs.Value(t, a, "fit.float.growth_mm"), 1e-9)
	wide := sheet.Answer(job.With(form.Form{"float.crank": "100.2"}), fitting.Cases.Name)
	assert.Contains(t, jobs.Told(t, wide, "error.float.crank"), "100.2 mm over the crank doesn’t go between faces 100 mm apart")
}

func TestTheCrankAsFound(t *testing.T) {
	a := sheet.Answer(form.Form{"found.threads": "bad", "found.oilways": "good", "found.drive": "5", "found.side": "0.3 mm"}, fitting.Found.Name)
	assert.Equal(t, "2 of 8 looked at.", jobs.Told(t, a, "say.found.count"))
	assert.Equal(t, "Not good: 1 of what was looked at.", jobs.Told(t, a, "say.found.headline"))
	assert.Equal(t, "Not good: 1 of what was looked at.", jobs.Told(t, a, "say.found.judged"))
	assert.Empty(t, jobs.Said(sheet.Answer(form.Form{"found.cracks": "good"}, "found"), "found.judged"), "what is to be done is not for the sheet")
	assert.Equal(t, "wrong", jobs.Told(t, a, "fit.found.drive.tir_verdict"))
	assert.Equal(t, "right", jobs.Told(t, a, "fit.found.sideplay_verdict"))
	a = sheet.Answer(form.Form{"found.threads": "bad", "found.cracks": "bad"}, fitting.Found.Name)
	assert.Equal(t, "Cracked: that part goes no further.", jobs.Told(t, a, "say.found.headline"))
	a = sheet.Answer(form.Form{"found.bendbig": "0 0.01 mm", "found.bendsmall": "0 0.11 mm", "found.twistbig": "1"}, fitting.Found.Name)
	assert.InDelta(t, 0.1, jobs.Value(t, a, "fit.found.bend_mm"), 1e-6)
	assert.Equal(t, "wrong", jobs.Told(t, a, "fit.found.bend_verdict"))
	assert.Contains(t, jobs.Told(t, sheet.Answer(form.Form{"found.twistbig": "1", "found.twistsmall": "1 2"}, fitting.Found.Name), "error.found.twistbig"), "two readings")
	// d = B cos θ − b sin θ with 2 L sin θ the movement: here sin θ = 0.001.
	a = sheet.Answer(form.Form{"found.rock": "0.3 mm", "found.rockat": "150", "found.width": "18", "found.pin": "30"}, fitting.Found.Name)
	assert.InDelta(t, 0.001*18, jobs.Value(t, a, "fit.found.clearance_mm"), 20e-6)
}

// Run-out as received is the first pass's, typed once; an older job's own is still shown.
func TestRunOutAsReceivedIsPassOne(t *testing.T) {
	found := func(f form.Form) *bench.Answers { return sheet.Answer(f, fitting.Found.Name) }
	assert.Contains(t, jobs.Said(found(nil), "found.received"), "pass 1")
	read := jobs.Typed("4", "3", "5", "9").With(form.Form{"pass.2.order": "2", "pass.2.drive.tir": "1", "pass.2.timing.tir": "1"})
	assert.Equal(t, "It came at 4 thou on the drive side, 5 thou on the timing side: pass 1.", jobs.Said(found(read), "found.received"))
	assert.Empty(t, jobs.Said(found(read), "found.typed"))
	assert.Equal(t, "yes", jobs.Said(found(form.Form{"found.timing": "5"}), "found.typed"))
}

func TestWhatCannotBeIsSaidPlainly(t *testing.T) {
	for _, row := range []struct {
		part  string
		job   form.Form
		field string
		says  string
	}{
		{fitting.Measure.Name, form.Form{"bigend.pin": "25.02", "bigend.bore": "25.01"}, "bigend.pin", "25.02 mm doesn’t go into 25.01 mm, and clearance is meant"},
		{fitting.Measure.Name, form.Form{"bigend.pin": "0.9850 in", "bigend.bore": "0.9840 in"}, "bigend.pin", "0.985 in doesn’t go into 0.984 in"},
		{fitting.Measure.Name, form.Form{"bigend.pin": "0.9850 0.9850 9.850 in"}, "bigend.pin", "Entry 3: “9.85 in” is out of range: 0.315 in to 5.906 in will do"},
		{fitting.Measure.Name, form.Form{"joint.a.pin": "0.9850 in", "joint.a.eye": "0.9840 in", "joint.a.hub": "0.9 in"}, "joint.a.hub", "0.9 in leaves no wall beside 0.985 in"},
		{fitting.PressUp.Name, form.Form{"press.rod": "0.01 in"}, "press.rod", "“0.01 in” is out of range: 0.07874 in to 3.937 in will do"},
		{fitting.Found.Name, form.Form{"found.bendbig": "0 200", "found.bendsmall": "0 1", "found.span": "10"}, "found.bendbig", "200 thou is out of reach here"},
		{fitting.Cases.Name, form.Form{"float.faces": "4 in", "float.crank": "4.01 in"}, "float.crank", "4.01 in over the crank doesn’t go between faces 4 in apart"},
		{fitting.Measure.Name, form.Form{"bigend.kind": "rollers", "bigend.pin": "25", "bigend.roller": "6", "bigend.eye": "36.9"}, "bigend.pin", "with a roller on each side it is 37 mm, which doesn’t go into the rod’s eye of 36.9 mm"},
		{fitting.PressUp.Name, form.Form{"press.drive": "20", "press.timing": "20", "press.rod": "1 in", "press.over": "40"}, "press.over", "40 mm over the wheels is no more than wheels, rod and washers take, 65.4 mm"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.seat": "1.2 in"}), "main.a.seat", "1.2 in is out of reach here: no more than 1.0039 in, no less than 0.9646 in"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.housing": "42.97"}), "main.a.housing", "no less than 50.96 mm"},
		{fitting.Measure.Name, form.Form{"bigend.bush": "32.01", "bigend.eye": "32"}, "bigend.bush", "clearance is meant"},
		{fitting.Measure.Name, form.Form{"bigend.pin": "25", "bigend.bore": "32", "bigend.bush": "31.9"}, "bigend.bush", "31.9 mm leaves no wall beside 32 mm"},
		{fitting.Measure.Name, form.Form{"bigend.pin": "25 apples"}, "bigend.pin", "apples"},
		{fitting.Measure.Name, form.Form{"bigend.pin": "25 2500"}, "bigend.pin", "out of range"},
		{fitting.Measure.Name, form.Form{"bigend.least": "2", "bigend.most": "1"}, "bigend.most", "the most, 1 thou, is less than the least, 2 thou"},
		{fitting.Measure.Name, form.Form{"joint.a.pin": "25", "joint.a.eye": "25.01"}, "joint.a.pin", "a press needs the pin bigger than its eye"},
		{fitting.Measure.Name, form.Form{"joint.a.pin": "25.04", "joint.a.eye": "25", "joint.a.hub": "20"}, "joint.a.hub", "20 mm leaves no wall beside 25.04 mm"},
		{fitting.Measure.Name, form.Form{"joint.a.pin": "25.04", "joint.a.eye": "25", "joint.a.hollow": "30"}, "joint.a.hollow", "30 mm leaves no wall beside 25.04 mm"},
		{fitting.Measure.Name, form.Form{"joint.a.pin": "30", "joint.a.eye": "25"}, "joint.a.pin", "the pin is 5 mm bigger than its eye, and up to 1.5 mm can be pressed"},
		{fitting.Measure.Name, form.Form{"joint.a.form": "taper", "joint.a.taper": "4", "joint.a.pin": "25", "joint.a.draw": "10 mm"}, "joint.a.draw", "10 mm is out of reach here: no more than 5 mm, no less than 0 mm"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.wall": "40"}), "main.a.wall", "40 mm leaves no wall beside 52 mm"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.seatclass": "k"}), "main.a.seatclass", "is not a class"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.seatclass": "K6"}), "main.a.seatclass", "a seat takes f g h"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.housingclass": "n7"}), "main.a.housingclass", "a housing F G H"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.housingclass": "N9"}), "main.a.housingclass", "grades 5 to 8"},
		// ISO 286-2 gives J grades 6 to 8 alone; value from memory.
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.housingclass": "J5"}), "main.a.housingclass", "the standard has no J5 at 52 mm: it gives these letters grades 6 to 8"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.outside": "200", "main.a.housing": "199.97"}), "main.a.housingclass", "sizes from 3 to 180 mm"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.outside": "24", "main.a.housing": "23.97"}), "main.a.outside", "24 mm is out of reach here: no more than 250 mm, no less than 25.01 mm"},
	} {
		a := sheet.Answer(row.job, row.part)
		assert.Contains(t, jobs.Told(t, a, "error."+row.field), row.says)
	}
	a := sheet.Answer(form.Form{"joint.a.pin": "25.10", "joint.a.eye": "25"}, fitting.Measure.Name)
	assert.Empty(t, a.Faults())
	assert.Contains(t, jobs.Told(t, a, "say.measure.headline"), "past yield")
	assert.Contains(t, jobs.Told(t, a, "say.joint.a.yields"), "more than this joint has")
}

func TestEveryAnswerOfAFullJobHasOneName(t *testing.T) {
	job := jobs.Main(form.Form{
		"bigend.pin": "25", "bigend.bore": "25.03", "bigend.bush": "32", "bigend.eye": "32.03", "found.rock": "8", "found.side": "9",
		"joint.a.pin": "25.04", "joint.a.eye": "25", "joint.b.form": "taper", "joint.b.pin": "25", "joint.b.draw": "10",
		"float.faces": "100", "float.crank": "98.9", "float.shims": "0.1 0.5", "cases.drive": "1", "found.drive": "5",
	})
	seen := map[string]bool{}
	for _, e := range sheet.Answer(job, "").Entries {
		assert.False(t, seen[e.Name], e.Name)
		seen[e.Name] = true
	}
}

// Whatever is typed, every figure is finite and nothing panics; seed 7.
func TestAnyTextIsAnswered(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	texts := []string{"", "0", "1", "25", "25.01", "24.99 25 25.01", "51.97", "-3", "1e9", "x", "0.001 mm", "k5", "N7", "99999", "0.1 0.2 0.5", "100", "98.9", "180"}
	answered := 0
	for range 400 {
		job := form.Form{}
		for _, field := range form.Job.Fields() {
			if field.Number < 400 || rng.Intn(3) == 0 {
				continue
			}
			text := texts[rng.Intn(len(texts))]
			if field.Kind == form.Choice {
				text = field.Choices[rng.Intn(len(field.Choices))]
			}
			job[form.Fill(field.Pattern, []string{"a"})] = text
		}
		for _, e := range sheet.Answer(job, "").Entries {
			if e.Kind == bench.Number {
				answered++
				require.False(t, math.IsNaN(e.Number) || math.IsInf(e.Number, 0), "%s of %v", e.Name, job)
			}
			require.False(t, strings.Contains(e.Text, "NaN"), "%s: %s", e.Name, e.Text)
		}
	}
	assert.Greater(t, answered, 400)
}

func TestAStepWithAFigureMarkedWrongAsksForItFirst(t *testing.T) {
	a := sheet.Answer(form.Form{"bigend.pin": "thirty"}, fitting.Measure.Name)
	assert.NotEmpty(t, jobs.Told(t, a, "error.bigend.pin"))
	assert.Equal(t, bench.MendIt, jobs.Told(t, a, "say.measure.headline"))
	for _, row := range []struct {
		part   string
		job    form.Form
		unsaid string // what would be judged by a figure that stands in
	}{
		{fitting.Measure.Name, form.Form{"joint.a.form": "taper", "joint.a.pin": "25", "joint.a.draw": "10", "joint.a.taper": "5 deg"}, "joint.a.bite"},
		{fitting.Found.Name, form.Form{"found.bendbig": "0 0.01", "found.bendsmall": "0 0.11 mm", "found.span": "0"}, "found.bend"},
		{fitting.Found.Name, form.Form{"found.rock": "0.3 mm", "found.rockat": "5 mm"}, "found.clearance"},
		{fitting.Cases.Name, jobs.Main(form.Form{"main.a.seat": "35 mm"}), "main.a.seat_bite"},
		{fitting.Cases.Name, jobs.Main(form.Form{"heat.running": "900"}), ""},
	} {
		a := sheet.Answer(row.job, row.part)
		assert.NotEmpty(t, a.Faults(), "%v", row.job)
		assert.Equal(t, bench.MendIt, jobs.Said(a, row.part+".headline"), "%v", row.job)
		assert.Equal(t, "not measured", jobs.Told(t, a, "fit."+row.part+".verdict"), "%v", row.job)
		if row.unsaid != "" {
			assert.Empty(t, jobs.Said(a, row.unsaid), "%v", row.job)
		}
	}
	cracked := sheet.Answer(form.Form{"found.cracks": "bad", "found.span": "0", "found.bendbig": "0 1"}, fitting.Found.Name)
	assert.Contains(t, jobs.Said(cracked, "found.headline"), "Cracked", "whatever else is to be mended")
}

// The micrometer and the bore gauge each have a step and an error of their own, which
// come together by squares (JCGM 100: the law of propagation of uncertainty): 0.1 thou
// of micrometer is 95 % × step/√12 twice, for the reading and for its zero.
func TestEachInstrumentHasItsOwnStepAndError(t *testing.T) {
	const thou = 0.0254
	rounding := func(step float64) float64 { return math.Sqrt2 * 1.959964 * step / math.Sqrt(12) }
	job := form.Form{"bigend.pin": "30.00000", "bigend.eye": "30.05000", "bigend.bore": "30.04000"}
	plus := func(f form.Form, name string) float64 {
		return jobs.Value(t, sheet.Answer(job.With(f), fitting.Measure.Name), "fit."+name+"_plus_mm")
	}
	both := form.Form{"bigend.step": "0.1", "bigend.error": "0.2", "bigend.gaugestep": "0.5", "bigend.gaugeerror": "0.3"}
	for name, wants := range map[string][2]float64{
		"bigend.pin": {rounding(0.1 * thou), 0.2 * thou}, "bigend.eye": {rounding(0.5 * thou), 0.3 * thou}, "bigend.bore": {rounding(0.5 * thou), 0.3 * thou},
	} {
		assert.InDelta(t, math.Hypot(wants[0], wants[1]), plus(both, name), 1e-6, name)
		assert.InDelta(t, rounding(0.1*thou), plus(nil, name), 1e-6, name)
	}
}
