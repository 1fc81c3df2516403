package balance_test

import (
	"maps"
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/balance"
	"pintwelve/testdata/jobs"
)

// The trade's method, P. E. Irving, Tuning for Speed (method, from memory): what
// hangs at the small end, with the small end, over all that goes up and down.
// The figures are a table worked by hand.
func TestFactorsByTheTradesMethod(t *testing.T) {
	for _, row := range []struct {
		name                 string
		f                    form.Form
		factor, moment, hour float64
	}{
		{"found: (202 + 128)/550", jobs.Knife(), 60, 0, 0},
		{"found: (147 + 128)/550", jobs.Knife("knife.whole.hung", "147"), 50, 0, 0},
		{"bob on the pin: 340 + 330, the pin not counted", jobs.Knife("knife.whole.on", "bob", "knife.whole.hung", "670"), 60, 0, 0},
		{"one wheel alone: (760 + 330)/2", jobs.Knife("knife.what", "drive", "knife.drive.hung", "545"), 60, 0, 0},
		{"pin in one wheel: 545 − 420", jobs.Knife("knife.what", "wheels", "knife.drive.on", "pin", "knife.drive.hung", "125", "knife.timing.hung", "545"), 60, 0, 0},
		{"factor to 66 %: 0.06 × 550 × 40", jobs.Knife("target", "factor", "target.factor", "66"), 60, 1320, 0},
		{"factor to 50 %: 0.1 × 550 × 40, off the far side", jobs.Knife("target", "factor", "target.factor", "50"), 60, 2200, 6},
		{"piston 50 g lighter at the same factor: 0.6 × 50 × 40", jobs.Knife("new.piston", "250"), 60, 1200, 6},
		{"crankpin 50 g heavier: 50 × 40", jobs.Knife("new.crankpin", "470"), 60, 2000, 0},
		{"by the maker's factor", jobs.Knife("knife.what", "stated", "knife.stated", "60", "new.piston", "250"), 60, 1200, 6},
		{"heavy at 3 by 5 g at 80", jobs.Knife("knife.whole.hour", "3", "knife.whole.weight", "5", "knife.whole.radius", "80"), 60, 400, 3},
		{"the same, seen from the timing side", jobs.Knife("seen", "timing", "knife.whole.hour", "9", "knife.whole.weight", "5", "knife.whole.radius", "80"), 60, 400, 9},
	} {
		a := sheet.Answer(row.f, balance.Step.Name)
		require.Empty(t, a.Faults(), row.name)
		assert.InDelta(t, row.factor, jobs.Value(t, a, "balance.factor_percent"), 1e-9, row.name)
		assert.InDelta(t, row.moment, jobs.Value(t, a, "balance.remove/0/moment_gmm"), 1e-6, row.name)
		if row.moment > 0 {
			assert.InDelta(t, row.hour, jobs.Value(t, a, "balance.remove/0/hour"), 1e-9, row.name)
		}
	}
}

// Each wheel is told apart: the one that is right is left, and the bob weight of
// each proves it. By hand, half of 760 + 0.6 × 550 is 545: with the pin on, 125;
// with the rods on too, 545 − 760 − 128, which goes opposite.
func TestEachWheelIsToldApart(t *testing.T) {
	wheels := func(more ...string) *bench.Answers {
		return sheet.Answer(jobs.Knife(append([]string{"knife.what", "wheels", "target", "factor", "target.factor", "60", "knife.timing.hung", "600"}, more...)...), balance.Step.Name)
	}
	a := wheels("knife.drive.on", "pin", "knife.drive.hung", "125")
	require.Empty(t, a.Faults())
	// 55 g at the throw of 40 mm, on 72 mm: 30.6 g.
	assert.Equal(t, "Leave the drive wheel. Take 30.6 g off the timing wheel at 6, 72 mm out.", jobs.Said(a, "balance.do"))
	assert.Equal(t, "To prove it: 125 g hung at the pin leaves the drive wheel indifferent; 545 g hung at the pin leaves the timing wheel indifferent.", jobs.Said(a, "balance.bob"))
	a = wheels("knife.drive.on", "rods", "knife.drive.hung", "-398")
	assert.Contains(t, jobs.Said(a, "balance.bob"), "To prove it: 343 g laid straight opposite the pin, as far out, leaves the drive wheel indifferent;")
	assert.Empty(t, jobs.Said(a, "balance.moment"), "one makes up for the other")
}

// A hole on the drive wheel takes π 6²/4 · 20 · 7850e-6 g at 72 mm off the side
// it stands on: the other side is then heavy, by its hour from either end.
func TestTheSideLeftIsToldFromTheEndSeen(t *testing.T) {
	hole := []string{"target", "factor", "target.factor", "60", "hole.a.wheel", "drive", "hole.a.radius", "72", "hole.a.hour", "3", "hole.a.drill", "6", "hole.a.bottom", "through"}
	for seen, holeAt := range map[string]string{"drive": "3", "timing": "9"} {
		a := sheet.Answer(jobs.Knife(append(hole, "seen", seen, "hole.a.hour", holeAt)...), balance.Step.Name)
		require.Empty(t, a.Faults())
		assert.InDelta(t, math.Pi*9*20*7850e-6*72, jobs.Value(t, a, "balance.planned_side_gmm"), 1e-3, seen)
		assert.InDelta(t, map[string]float64{"drive": 9, "timing": 3}[seen], jobs.Value(t, a, "balance.planned_side_hour"), 1e-9, seen)
	}
}

// One wheel weighed alone stands for both, so that its own hole counts twice, and
// one in each no more than that: 2 · π 6²/4 · 20 · 7850e-6 · 72/40 of 550 g.
func TestAHoleInEachWheelCountsOnceEach(t *testing.T) {
	for _, wheel := range []string{"drive", "both"} {
		a := sheet.Answer(jobs.Knife("knife.what", "drive", "knife.drive.hung", "545", "hole.a.wheel", wheel, "hole.a.radius", "72", "hole.a.hour", "12", "hole.a.drill", "6", "hole.a.bottom", "through"), balance.Step.Name)
		require.Empty(t, a.Faults())
		assert.InDelta(t, 60+100*2*math.Pi*9*20*7850e-6*72/40/550, jobs.Value(t, a, "balance.planned_factor_percent"), 1e-9, wheel)
	}
}

// Wheels that carry nothing yet: what goes opposite the pin is the textbooks'
// balance weight, here at a hundredth of their masses and half of the lengths: no
// crank of ours weighs so much. Values from memory.
func TestTextbooksBalanceWeights(t *testing.T) {
	for _, row := range []struct {
		source                            string
		piston, small, pin, throw, radius float64
		weight                            float64
	}{
		{"Khurmi & Gupta, Theory of Machines, ch. 22", 400, 100, 370, 75, 200, 263.8},
		{"Sadhu Singh, Theory of Machines, ch. 12", 1000, 200, 700, 45, 75, 900},
	} {
		f := form.Form{
			"weight.piston": jobs.Figure(row.piston), "weight.gudgeon": "0", "weight.small": jobs.Figure(row.small), "weight.big": "0.001 g", "weight.crankpin": jobs.Figure(row.pin),
			"throw": jobs.Figure(row.throw), "knife.whole.on": "bob", "knife.whole.hung": jobs.Figure(-row.pin),
			"target": "factor", "target.factor": "66.666667",
		}
		a := sheet.Answer(f, balance.Step.Name)
		require.Empty(t, a.Faults(), row.source)
		assert.InDelta(t, row.weight, jobs.Value(t, a, "balance.remove/0/moment_gmm")/row.radius, 0.1, row.source)
		assert.InDelta(t, 0, jobs.Value(t, a, "balance.remove/0/hour"), 1e-9, "off the pin side is on opposite")
	}
}

func TestAFurtherCylinderIsAsTheFirstWhereItIsBlank(t *testing.T) {
	for _, row := range []struct {
		f           form.Form
		found, runs string
	}{
		{jobs.Knife("cylinder.b.bank", "0"), "reciprocating 1100 g, rotating 1100 g", ""},
		{jobs.Knife("cylinder.b.bank", "0", "new.piston", "250"), "reciprocating 1100 g", "reciprocating 1000 g"},
		{jobs.Knife("cylinder.b.weight.piston", "310", "new.piston", "250"), "reciprocating 1110 g", "reciprocating 1060 g"},
		{jobs.Knife("cylinder.b.new.piston", "260", "new.piston", "250"), "reciprocating 1100 g", "reciprocating 1010 g"},
	} {
		a := sheet.Answer(row.f, balance.Step.Name)
		assert.Contains(t, strings.ToLower(jobs.Said(a, "balance.weights")), row.found)
		assert.Contains(t, jobs.Said(a, "balance.new"), row.runs)
	}
}

// Standard result of the theory of machines: half of the total reciprocating
// weight leaves a 90° V-twin no primary force, and √2 λ m R ω² of the second order.
func TestNinetyDegreeTwinAtHalf(t *testing.T) {
	a := sheet.Answer(jobs.Knife("cylinder.b.bank", "90", "knife.what", "stated", "knife.stated", "50", "rod.centres", "500", "throw", "40"), balance.Step.Name)
	require.Empty(t, a.Faults())
	ω := jobs.Value(t, a, "balance.peaks/0/rpm") * math.Pi / 30
	assert.InEpsilon(t, math.Sqrt2*40/500*0.55*0.040*ω*ω, jobs.Value(t, a, "balance.peaks/0/target_n"), 0.01)
}

// Heavy to one side by 6400 g·mm a crank is pulled by 2.5 kN at 6000 rpm that the greatest
// force doesn't have: which way the hours run as it turns isn't known.
func TestTheForceSaysThatTheSideIsNotInIt(t *testing.T) {
	said := func(more ...string) string {
		return jobs.Said(sheet.Answer(jobs.Knife(more...), balance.Step.Name), "loop.at")
	}
	assert.NotContains(t, said(), "to one side")
	assert.Contains(t, said("knife.whole.hour", "3", "knife.whole.weight", "80", "knife.whole.radius", "80"), "heavy by to one side shakes it too, as found, and isn’t counted")
}

// ISO 21940-11: G 6.3 at 3000 rpm is 20 g·mm for each kg.
func TestPermissibleUnbalance(t *testing.T) {
	a := sheet.Answer(jobs.Knife("balance.whole", "1000", "frame.speeds", "1500 3000", "balance.rolls", "0.5", "balance.rollsat", "50"), balance.Step.Name)
	assert.InDelta(t, 20, jobs.Value(t, a, "balance.permits_gmm"), 0.1)
	assert.Contains(t, jobs.Said(a, "balance.shows"), "25 g·mm")
	assert.Contains(t, jobs.Said(a, "balance.shows"), "not fine enough")
}

// The holes as written into the job, each volume summed slice by slice, must
// take off what brings the factor to its target.
func TestPlannedHolesReachTheTarget(t *testing.T) {
	for _, f := range []form.Form{
		jobs.Knife("new.piston", "250"),
		jobs.Knife("target", "factor", "target.factor", "70", "zone.thick", "12", "drill.bottom", "blind"),
		jobs.Knife("new.piston", "250", "seen", "timing", "left", "timing", "knife.whole.hour", "4", "knife.whole.weight", "6", "knife.whole.radius", "80"),
		jobs.Knife("new.piston", "280", "drill.set", "inch", "plan.wheels", "drive"),
		jobs.Knife("new.piston", "340", "plug.density", "17500", "knife.what", "stated", "knife.stated", "55"),
	} {
		plan := balance.Plan(f, "k")
		require.Equal(t, "Planned.", jobs.Said(plan, "plan.said"))
		f = jobs.WithPlan(f, plan)
		require.Empty(t, form.Check(f))
		a := sheet.Answer(f, balance.Step.Name)
		require.Empty(t, a.Faults())
		assert.InDelta(t, jobs.Value(t, a, "balance.target_percent"), jobs.Value(t, a, "balance.planned_factor_percent"), 0.51)
		rec := jobs.Value(t, a, "balance.reciprocating_g")
		unplanned := maps.Clone(f)
		maps.DeleteFunc(unplanned, func(name, _ string) bool { return strings.HasPrefix(name, "hole.") })
		// with no hole the factor is off by the whole moment along 12
		b := sheet.Answer(unplanned, balance.Step.Name)
		hour := jobs.Value(t, b, "balance.remove/0/hour")
		along := jobs.Value(t, b, "balance.remove/0/moment_gmm") * math.Cos(hour*math.Pi/6)
		before := jobs.Value(t, b, "balance.target_percent") - 100*along/40/rec
		assert.InEpsilon(t, sliced(t, f), (jobs.Value(t, a, "balance.planned_factor_percent")-before)/100*40*rec, 1e-3)
	}
}

// A wheel that is recessed in its zone isn't alike thick there: a hole right through takes
// off what stands where it is, and none is planned across a step.
func TestPlannedHolesReachTheTargetInARecessedWheel(t *testing.T) {
	for _, more := range [][]string{
		{"cut.a.from", "100", "cut.a.to", "150", "cut.a.depth", "6"},
		{"made.a.from", "100", "made.a.to", "150", "made.a.depth", "6", "made.a.wheel", "drive"},
		{"cut.a.kind", "bevel", "cut.a.from", "100", "cut.a.to", "190", "cut.a.depth", "8"},
		{"made.a.from", "60", "made.a.to", "150", "made.a.depth", "5", "drill.bottom", "through"},
	} {
		for _, target := range []string{"57", "63", "66", "69"} {
			f := jobs.Knife(append(more, "target", "factor", "target.factor", target, "drill.holes", "4",
				"wheel.drive.diameter", "200", "wheel.drive.width", "28", "wheel.drive.bore", "24")...)
			plan := balance.Plan(f, "k")
			if jobs.Said(plan, "plan.said") != "Planned." {
				assert.Contains(t, more, "through", "%s: %s", target, jobs.Said(plan, "plan.said"))
				continue
			}
			a := sheet.Answer(jobs.WithPlan(f, plan), balance.Step.Name)
			require.Empty(t, a.Faults(), "over no edge")
			assert.InDelta(t, jobs.Value(t, a, "balance.target_percent"), jobs.Value(t, a, "balance.planned_factor_percent"), 0.51, "%v %s", more, target)
			assert.Empty(t, jobs.Said(a, "balance.stale"), "%v %s", more, target)
		}
	}
	// 28 mm in the one wheel and 22 in the other: no one weight is taken off each.
	unlike := jobs.Knife("hole.a.radius", "65", "hole.a.hour", "6", "hole.a.drill", "10", "hole.a.bottom", "through",
		"wheel.drive.diameter", "200", "wheel.drive.width", "28", "made.a.from", "100", "made.a.to", "150", "made.a.depth", "6", "made.a.wheel", "drive")
	assert.Contains(t, jobs.Text(sheet.Answer(unlike, balance.Step.Name), "error.hole.a.wheel"), "the drive wheel is 22 mm thick and the timing wheel 28 mm")
	unlike["hole.a.wheel"] = "timing" // π/4 × 10² × 28 mm³ of 7.85 g/cm³
	assert.InDelta(t, 17.263, jobs.Value(t, sheet.Answer(unlike, balance.Step.Name), "balance.holes/0/removed_g"), 1e-3)
}

// A blind hole over the edge of a recess in the face that it is drilled from counted as solid;
// clear of the edge, and over one of the other face, what it takes is known.
func TestAHoleOverAnEdgeIsRefused(t *testing.T) {
	recess := func(side string) []string {
		return []string{"made.a.side", side, "made.a.from", "100", "made.a.to", "150", "made.a.depth", "6", "wheel.drive.diameter", "200"}
	}
	bevel := []string{"made.a.kind", "bevel", "made.a.side", "outer", "made.a.from", "100", "made.a.to", "190", "made.a.depth", "6", "wheel.drive.diameter", "200"}
	buried := append(recess("outer"), "made.b.side", "outer", "made.b.from", "120", "made.b.to", "140", "made.b.depth", "4")
	width := []string{"wheel.drive.width", "28"}
	for _, row := range []struct {
		name           string
		wheel          []string
		radius, bottom string
		refused        bool
	}{
		{"over it", recess("outer"), "73", "", true},
		{"over it, the width known", append(recess("outer"), width...), "73", "", true},
		{"beside it", recess("outer"), "81", "", false},
		{"in the recess", recess("outer"), "68", "", false},
		{"over an edge that a deeper recess took", buried, "68", "", false},
		{"on a bevel", bevel, "75", "", false},
		{"over where a bevel begins", bevel, "52", "", true},
		{"over the other face’s", recess("inner"), "73", "", false},
		{"through both", append(recess("inner"), width...), "73", "through", true},
		{"through, of a thickness that is given", append(recess("inner"), append(width, "zone.thick", "22")...), "73", "through", false},
	} {
		hole := []string{"hole.a.radius", row.radius, "hole.a.hour", "6", "hole.a.drill", "10"}
		if row.bottom == "" {
			hole = append(hole, "hole.a.depth", "8")
		} else {
			hole = append(hole, "hole.a.bottom", row.bottom)
		}
		a := sheet.Answer(jobs.Knife(append(row.wheel, hole...)...), balance.Step.Name)
		assert.Equal(t, row.refused, strings.HasPrefix(jobs.Text(a, "error.hole.a.radius"), "it stands over an edge or a slope"), row.name)
		assert.Equal(t, row.refused, jobs.Said(a, "balance.planned") == "", row.name)
	}
}

// sliced sums the moment towards 12 of all holes in thin slices, g·mm.
func sliced(t *testing.T, f form.Form) float64 {
	r := form.Read(f)
	sum := 0.0
	for _, key := range f.Rows("hole") {
		radius, _ := r.Number(form.HoleRadius, key)
		hour, _ := r.Number(form.HoleHour, key)
		across, _ := r.Number(form.HoleDrill, key)
		depth, blind := r.Number(form.HoleDepth, key)
		point := across / 2 / math.Tan(59*math.Pi/180)
		if !blind {
			depth, point = r.Default(form.ZoneThick), 0
		}
		const slices = 20000
		step := (depth + point) / slices
		mass := 0.0
		for i := range slices {
			z := (float64(i) + 0.5) * step
			half := across / 2
			if z > depth {
				half *= 1 - (z-depth)/point
			}
			mass += math.Pi * half * half * step * 7850e-6
			if r.Text(form.HolePlug, key) == "yes" && z <= depth {
				mass -= math.Pi * half * half * step * 17500e-6
			}
		}
		if r.Text(form.HoleWheel, key) == "both" {
			mass *= 2
		}
		sum += mass * radius * math.Cos(hour*math.Pi/6)
	}
	require.Empty(t, r.Problems)
	return sum
}

func TestImpossibleFiguresAreSaidBesideTheField(t *testing.T) {
	for _, row := range []struct {
		f           form.Form
		field, says string
	}{
		{jobs.Knife("weight.rod", "460"), "weight.rod", "the rod’s ends come to 468 g, more than the whole rod, 460 g"},
		{jobs.Knife("new.rod", "460", "new.small", "130", "new.big", "350"), "new.rod", "more than the whole rod"},
		{jobs.Knife("target", "factor", "target.factor", "160"), "target.factor", "0% to 150% will do"},
		{jobs.Knife("knife.whole.hung", "900"), "knife.whole.hung", "a factor of 186.9%, which no crank has"},
		{jobs.Knife("knife.what", "wheels", "knife.drive.on", "pin", "knife.timing.on", "pin", "knife.drive.hung", "125", "knife.timing.hung", "125"), "knife.timing.on", "count twice"},
		{jobs.Knife("new.piston", "250", "zone.in", "80", "zone.out", "88"), "zone.out", "there is room for 2 mm, and the smallest drill is 5 mm"},
		{jobs.Knife("new.piston", "250", "zone.in", "80", "zone.out", "70"), "zone.out", "not outside the inner radius"},
		{jobs.Knife("new.piston", "250", "zone.hour", "12"), "zone.hour", "180° away"},
		{jobs.Knife("new.piston", "250", "drill.depth", "30"), "drill.depth", "30 mm is deeper than the wheel is thick: up to 20 mm"},
		{jobs.Knife("new.piston", "250", "drill.set", "list"), "drill.from", "no set of drills"},
		{jobs.Knife("rod.centres", "41"), "rod.centres", "too short for a throw of 40 mm: 44 mm or more"},
		{jobs.Knife("hole.a.radius", "70", "hole.a.hour", "6", "hole.a.drill", "10", "hole.a.depth", "25"), "hole.a.depth", "choose right through, or 17 mm at most"},
		{jobs.Knife("hole.a.radius", "93", "hole.a.hour", "6", "hole.a.drill", "10", "hole.a.bottom", "through"), "hole.a.radius", "out of the wheel"},
		{jobs.Knife("new.bearing", "60"), "weight.bearing", "what counts is how they differ"},
		{jobs.Knife("after.drive", "20"), "after.drive", "no hole is planned"},
		{jobs.Knife("weight.piston", "a lot"), "weight.piston", "a lot"},
	} {
		a := sheet.Answer(row.f, balance.Step.Name)
		e, ok := a.Get("error." + row.field)
		require.True(t, ok, "%s: %v", row.field, a.Faults())
		assert.Contains(t, e.Text, row.says)
		assert.NotContains(t, e.Text, "%!", row.field)
	}
}

func TestRodsEndsAgainstTheWhole(t *testing.T) {
	assert.Contains(t, jobs.Said(sheet.Answer(jobs.Knife(), balance.Step.Name), "rod.check"), "within 0 g; the scale’s step allows 1.5 g")
	assert.Contains(t, jobs.Said(sheet.Answer(jobs.Knife("weight.rod", "480"), balance.Step.Name), "rod.check"), "12 g lighter than the whole")
	a := sheet.Answer(jobs.Knife("weight.big", "", "balance.scale", "0.1"), balance.Step.Name)
	assert.InDelta(t, 760, jobs.Value(t, a, "balance.rotating_g"), 1e-9, "the end not weighed is what the other leaves")
}

func TestWhatIsWantedIsAskedForInOrder(t *testing.T) {
	f := form.Form{}
	for _, row := range []struct{ says, field, text string }{
		{"Weigh the piston", "weight.piston", "422"},
		{"small end", "weight.small", "128"},
		{"Weigh the gudgeon pin; 0 where", "weight.gudgeon", "0"},
		{"what hangs at the small end", "knife.whole.hung", "202"},
		{"Balance factor 60", "target", "factor"},
		{"To which factor?", "target.factor", "65"},
		{"Balance factor 60", "weight.piston", "nonsense"},
		{"Mend", "weight.piston", "422"},
	} {
		assert.Contains(t, jobs.Said(sheet.Answer(f, balance.Step.Name), "balance.headline"), row.says)
		f[row.field] = row.text
	}
}

// Drilled and weighed it carries 330 g of 550 that go up and down; with a piston 50 g
// lighter fitted the same wheels carry 330 of 500.
func TestTheSheetsFactorIsThatItLeavesWith(t *testing.T) {
	left := func(more ...string) string {
		return jobs.Said(sheet.Answer(jobs.Knife(append(more, "knife.came", "55")...), "sheet"), "sheet.factor.left")
	}
	assert.Equal(t, "60.0 ± 0.2%", left())
	assert.Equal(t, "66.0 ± 0.2% with the new parts", left("new.piston", "250"))
}

func TestAfterDrilling(t *testing.T) {
	f := jobs.Knife("new.piston", "250")
	f = jobs.WithPlan(f, balance.Plan(f, "k"))
	planned := 0.0
	a := sheet.Answer(f, balance.Step.Name)
	for i := range f.Rows("hole") {
		planned += jobs.Value(t, a, "balance.holes/"+strconv.Itoa(i)+"/removed_g")
	}
	f["after.drive"], f["after.timing"] = jobs.Figure(math.Round(planned)), jobs.Figure(math.Round(planned/2))
	a = sheet.Answer(f, balance.Step.Name)
	assert.Contains(t, jobs.Said(a, "after.drive"), "as planned")
	assert.Contains(t, jobs.Said(a, "after.timing"), "Still to come off")

	f = jobs.WithPlan(f, &bench.Answers{}) // a copy
	for name, text := range balance.Drilled(f, "n") {
		f[name] = text
	}
	maps.DeleteFunc(f, func(_, text string) bool { return text == "" })
	require.Empty(t, form.Check(f))
	assert.Empty(t, f.Rows("hole"))
	assert.NotEmpty(t, f.Rows("keep"))
	assert.Equal(t, "250", f["weight.piston"])
	assert.Equal(t, "60", f["target.factor"])
	assert.Contains(t, jobs.Said(sheet.Answer(f, balance.Step.Name), "balance.headline"), "Now the knife-edges")
	f["knife.whole.hung"] = "172" // 0.6 × 500 − 128
	a = sheet.Answer(f, balance.Step.Name)
	assert.Contains(t, jobs.Said(a, "balance.do"), "Leave it")
	assert.Contains(t, jobs.Said(a, "balance.headline"), "Balance factor 60.0 ± 0.2% as drilled.")
	assert.Equal(t, "60%", jobs.Said(a, "sheet.factor.found"), "(202 + 128) ÷ 550, as it came")
	assert.Equal(t, "60.0 ± 0.2%", jobs.Said(a, "sheet.factor.left"))
	drilledTwice := balance.Drilled(f, "o")
	_, again := drilledTwice["knife.came"]
	assert.False(t, again, "it came once")
	f["knife.whole.hung"] = "180"
	assert.Contains(t, jobs.Said(sheet.Answer(f, balance.Step.Name), "balance.do"), "off each wheel at 6")
	assert.Equal(t, "Planned.", jobs.Said(balance.Plan(f, "m"), "plan.said"), "beside the holes that are there")
}

func TestATargetOutOfReachSaysWhatWouldFreeIt(t *testing.T) {
	f := jobs.Knife("new.piston", "100", "drill.from", "5", "drill.to", "6", "drill.holes", "2")
	plan := balance.Plan(f, "k")
	assert.Contains(t, jobs.Said(plan, "plan.said"), "Out of reach on the drive wheel: ")
	assert.Contains(t, jobs.Said(plan, "plan.said"), "Any of these would free it: ")
	assert.NotEmpty(t, jobs.WithPlan(f, plan).Rows("hole"), "the closest is drawn all the same")
	assert.Equal(t, "Now the knife-edges: what hangs at the small end when the crank rests anywhere?",
		jobs.Said(balance.Plan(jobs.Knife("knife.whole.hung", ""), "k"), "plan.said"))
}

// Whatever is typed, the answers hold no NaN and the core stands. Seed 7.
func TestAnyJobIsAnswered(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	texts := []string{"0", "1", "3", "12", "40", "150", "1000", "-5", "0.01", "x", "yes", "wheels", "drive", "stated", "pin", "rods", "bob", "factor", "inch", "list", "through", "backward"}
	var names []string
	for _, field := range form.Job.Fields() {
		if field.Number >= 300 && field.Number < 400 || field.Pattern == "throw" || field.Pattern == "rim" {
			names = append(names, form.Fill(field.Pattern, []string{"a"}))
		}
	}
	for i := range 400 {
		f := jobs.Knife()
		for range 1 + rng.Intn(25) {
			f[names[rng.Intn(len(names))]] = texts[rng.Intn(len(texts))]
		}
		for _, e := range sheet.Answer(f, balance.Step.Name).Entries {
			assert.False(t, math.IsNaN(e.Number) || math.IsInf(e.Number, 0), "%s of %v", e.Name, f)
			assert.NotContains(t, e.Text, "NaN", "%s of %v", e.Name, f)
		}
		if i%10 == 0 {
			assert.NotEmpty(t, jobs.Said(balance.Plan(f, "k"), "plan.said"), "%v", f)
			balance.Drilled(f, "n")
		}
	}
}

func TestAHoleInBothWheelsGoesByEachPicturesNumber(t *testing.T) {
	f := jobs.Knife(
		"hole.a.order", "1", "hole.a.wheel", "drive", "hole.a.radius", "60", "hole.a.hour", "6", "hole.a.drill", "10", "hole.a.depth", "10",
		"hole.b.order", "2", "hole.b.radius", "60", "hole.b.hour", "5", "hole.b.drill", "10", "hole.b.depth", "10")
	assert.Contains(t, jobs.Said(sheet.Answer(f, balance.Step.Name), "hole.b.said"), "2 and 1. drive and timing wheel:")
	f["hole.a.wheel"] = "both"
	assert.Contains(t, jobs.Said(sheet.Answer(f, balance.Step.Name), "hole.b.said"), "2. each wheel:")
}

// What is all to one side is as sure as the weight that was laid opposite it: 20 g at 80 mm by
// steps of 1 g, and a radius.
func TestWhatComesOffIsAsSureAsItsOwnDirection(t *testing.T) {
	a := sheet.Answer(jobs.Knife("knife.whole.hour", "3", "knife.whole.weight", "20", "knife.whole.radius", "80"), balance.Step.Name)
	require.Empty(t, a.Faults())
	assert.Equal(t, "In all 1600 ± 45 g·mm at 3.", jobs.Said(a, "balance.moment"))
	assert.Contains(t, jobs.Said(a, "balance.side"), "by 1600 ± 45 g·mm")
}

// A factor that nobody weighed, or by one wheel, is told as such wherever it is told, before
// the holes and after them; the other wheel is to be weighed.
func TestAFactorSaysWhatItRestsOn(t *testing.T) {
	const drive = " (by the drive wheel, taken for both)"
	stated := []string{"knife.what", "stated", "knife.stated", "60"}
	one := []string{"knife.what", "drive", "knife.drive.hung", "545"}
	hole := []string{"hole.a.radius", "72", "hole.a.hour", "12", "hole.a.drill", "6", "hole.a.bottom", "through"}
	for _, row := range []struct {
		job         []string
		head, rests string
		also        bool
	}{
		{stated, "Balance factor 60% (not weighed) as found.", " (not weighed)", false},
		{one, "Balance factor 60.0 ± 0.3%" + drive + " as found.", drive, true},
		{nil, "Balance factor 60.0 ± 0.2% as found.", "", false},
	} {
		a := sheet.Answer(jobs.Knife(append(row.job, hole...)...), "sheet")
		assert.Equal(t, row.head, jobs.Said(a, "balance.headline"))
		left := jobs.Said(a, "sheet.factor.left")
		assert.True(t, strings.HasSuffix(left, "%"+row.rests+" with the holes drawn"), left)
		assert.Equal(t, row.also, strings.HasSuffix(jobs.Said(a, "balance.do"), "The timing wheel is taken as like it, and done alike: weigh that too."), row.head)
	}
	drilled := sheet.Answer(jobs.Knife(append(stated, "knife.came", "55")...), "sheet")
	assert.Equal(t, "Balance factor 60% (not weighed) as drilled.", jobs.Said(drilled, "balance.headline"))
	assert.Equal(t, "60% (not weighed)", jobs.Said(drilled, "sheet.factor.left"))
	assert.Contains(t, jobs.Said(sheet.Answer(jobs.Knife(append(one, "target", "factor", "target.factor", "66")...), "balance"), "balance.do"), " off the drive wheel at 12, 72 mm out. The timing wheel is ")
}
