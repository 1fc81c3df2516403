package lighten_test

import (
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
	"pintwelve/core/step/lighten"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/jobs"
)

// ring is the weight of a ring of steel, g, and its inertia ½ m (r₁² + r₂²),
// kg·m².
func ring(from, to, depth float64) (g, kgm2 float64) {
	g = math.Pi / 4 * (to*to - from*from) * depth * 7850e-6
	return g, g / 1000 / 8 * (from*from + to*to) / 1e6
}

// EN 10060 and handbook tables: a round bar of 100 mm weighs 61.65 kg/m, at
// 7850 kg/m³.
func TestARoundBarWeighsWhatTheTableSays(t *testing.T) {
	a := sheet.Answer(form.Form{"wheel.drive.diameter": "100", "wheel.drive.width": "150", "wheel.drive.bore": "0"}, lighten.Step.Name)
	assert.InDelta(t, 61650.0*0.15, jobs.Value(t, a, "lighten.drive.before_g"), 5)
	assert.InDelta(t, 61.65*0.15*0.1*0.1/8, jobs.Value(t, a, "lighten.drive.before_kgm2"), 1e-5)
	assert.Equal(t, "Each wheel weighs 9248 g, as drawn.", jobs.Text(a, "say.lighten.headline"))
}

// One of a thing is said as one.
func TestOneIsSaidAsOne(t *testing.T) {
	for _, row := range []struct {
		part       string
		job        form.Form
		name, says string
	}{
		{lighten.Step.Name, form.Form{"swing.a.taps": "0"}, "say.swing.a.line", "1 pass so far;"},
		{lighten.Step.Name, form.Form{"swing.a.taps": "0 0.4"}, "say.swing.a.line", "2 passes so far;"},
		{lighten.Step.Name, jobs.Single(form.Form{"lighten.off": "20", "cut.1.kind": "holes", "cut.1.circle": "110", "cut.1.drill": "12"}), "say.lighten.then", "Cut 1: 1 hole on each wheel."},
		{truing.First.Name, form.Form{"pass.1.drive.how": "turn", "pass.1.drive.points": "given", "pass.1.drive.hours": "12", "pass.1.drive.turn": "1 2"}, "error.pass.1.drive.turn", "2 readings for 1 hour:"},
		{balance.Step.Name, jobs.Knife("hole.a.radius", "60", "hole.a.hour", "6", "hole.a.drill", "10", "hole.a.depth", "10", "hole.a.plug", "yes", "plug.density", "2700"), "say.hole.a.said", ", takes 4."},
	} {
		assert.Contains(t, jobs.Text(sheet.Answer(row.job, row.part), row.name), row.says)
	}
}

func TestAWheelHeavierThanItWasIsWeighedAgain(t *testing.T) {
	a := sheet.Answer(jobs.Single(form.Form{"wheel.drive.weight": "5400", "wheel.drive.after": "5500"}), lighten.Step.Name)
	assert.Equal(t, "5500 g is more than the 5400 g it weighed before: weigh both again", jobs.Text(a, "error.wheel.drive.after"))
}

func TestEachCutIsARingOfMetal(t *testing.T) {
	for _, row := range []struct {
		name           string
		cut            form.Form
		from, to, deep float64
	}{
		{"rim", form.Form{"cut.1.kind": "rim", "cut.1.rim": "194"}, 194, 200, 28},
		{"recess", form.Form{"cut.1.from": "70", "cut.1.to": "150", "cut.1.depth": "8"}, 70, 150, 3},
		{"face, over the rim", form.Form{"cut.1.kind": "face", "cut.1.depth": "1.5"}, 0, 0, 0},
		{"recess from the other side", form.Form{"cut.1.side": "inner", "cut.1.from": "160", "cut.1.to": "200", "cut.1.depth": "2"}, 160, 200, 2},
	} {
		a := sheet.Answer(jobs.Single(row.cut), lighten.Step.Name)
		g, kgm2 := ring(row.from, row.to, row.deep)
		if row.deep == 0 {
			hubG, hubJ := ring(24, 60, 1.5)
			rimG, rimJ := ring(160, 200, 1.5)
			g, kgm2 = hubG+rimG, hubJ+rimJ
		}
		for _, side := range []string{"drive", "timing"} {
			assert.InDelta(t, g, jobs.Value(t, a, "lighten."+side+".off_g"), 1e-9, row.name)
			assert.InDelta(t, kgm2, jobs.Value(t, a, "lighten."+side+".off_kgm2"), 1e-12, row.name)
		}
		assert.Contains(t, jobs.Text(a, "picture.lighten.drive"), "<svg", row.name)
	}
	a := sheet.Answer(jobs.Single(form.Form{"cut.1.kind": "holes", "cut.1.holes": "6", "cut.1.circle": "110", "cut.1.drill": "10"}), lighten.Step.Name)
	g, kgm2 := ring(0, 10, 18)
	assert.InDelta(t, 6*g, jobs.Value(t, a, "lighten.drive.off_g"), 1e-9)
	assert.InDelta(t, 6*(kgm2+g/1000*0.055*0.055), jobs.Value(t, a, "lighten.drive.off_kgm2"), 1e-12, "by parallel axes")
}

// 0.75 kg off each wheel of a 500 cc single: common practice, no source.
func TestThreeQuartersOfAKiloOffEachWheel(t *testing.T) {
	a := sheet.Answer(jobs.Single(form.Form{"lighten.off": "0.75 kg", "cut.1.from": "48", "cut.1.to": "168"}), lighten.Step.Name)
	assert.InDelta(t, 5400, jobs.Value(t, a, "lighten.drive.before_g"), 60)
	assert.InDelta(t, 750, jobs.Value(t, a, "lighten.timing.off_g"), 1e-6)
	// By hand: the ring to the depth found, less what the recess had taken.
	gone, _ := ring(60, 160, 5)
	perMM, _ := ring(48, 168, 1)
	assert.InDelta(t, (750+gone)/perMM, jobs.Value(t, a, "lighten.drive.found"), 1e-9)
	for name, least := range map[string]float64{"web_mm": 10, "rim_depth_mm": 15, "rim_width_mm": 15} {
		assert.GreaterOrEqual(t, jobs.Value(t, a, "lighten.drive."+name), least, name)
	}
	assert.Equal(t, "750 g off each wheel", jobs.Text(a, "say.lighten.headline"))
	assert.Equal(t, "Cut 1: 8.94 mm deep on each wheel.", jobs.Text(a, "say.lighten.then"))
	assert.Equal(t, "8.94 mm", jobs.Text(a, "found.cut.1.depth"))
	assert.Contains(t, jobs.Text(a, "say.lighten.caution"), "no certificate")
	assert.Empty(t, jobs.Text(a, "say.lighten.thin"))
}

func TestEveryBlankSizeIsFoundForTheWeight(t *testing.T) {
	for _, row := range []struct {
		blank string
		cut   form.Form
		says  string
	}{
		{"rim", form.Form{"cut.1.kind": "rim"}, "down to ⌀ "},
		{"depth", form.Form{"cut.1.kind": "face"}, " deep"},
		{"depth", form.Form{"cut.1.kind": "bevel", "cut.1.from": "170", "cut.1.to": "200"}, " deep"},
		{"drill", form.Form{"cut.1.kind": "holes", "cut.1.holes": "6", "cut.1.circle": "110"}, "drill "},
		{"depth", form.Form{"cut.1.kind": "blind", "cut.1.holes": "6", "cut.1.circle": "110", "cut.1.drill": "20"}, " deep"},
		{"holes", form.Form{"cut.1.kind": "holes", "cut.1.drill": "12", "cut.1.circle": "110"}, " holes"},
	} {
		row.cut["lighten.off"] = "100"
		a := sheet.Answer(jobs.Single(row.cut), lighten.Step.Name)
		assert.Contains(t, jobs.Text(a, "say.cut.1.line"), row.says, "%v", row.cut)
		off := jobs.Value(t, a, "lighten.drive.off_g")
		within := 1e-6
		if row.blank == "holes" {
			within = 8 // half a hole
		}
		assert.InDelta(t, 100, off, within, "%v", row.cut)
		// Typed in, what was found takes off as much.
		again := jobs.Single(row.cut)
		again["cut.1."+row.blank] = jobs.Figure(jobs.Value(t, a, "lighten.drive.found"))
		assert.InDelta(t, off, jobs.Value(t, sheet.Answer(again, lighten.Step.Name), "lighten.drive.off_g"), 1e-6, "%v", row.cut)
	}
}

func TestAPlanThatCannotSaysWhatTheMostIs(t *testing.T) {
	a := sheet.Answer(jobs.Single(form.Form{"lighten.off": "750", "cut.1.kind": "rim"}), lighten.Step.Name)
	most, _ := ring(190, 200, 28)
	assert.Equal(t, "Cut 1 can’t take 750 g off each wheel. The most is "+strconv.Itoa(int(math.Round(most)))+
		" g, down to ⌀ 190 mm: beyond that the rim’s depth would be under 15 mm.", jobs.Text(a, "say.lighten.then"))
	assert.Equal(t, jobs.Text(a, "say.lighten.then"), jobs.Text(a, "say.cut.1.line"))
	e, _ := a.Get("lighten.drive.found")
	assert.Equal(t, bench.Null, e.Kind)
	a = sheet.Answer(jobs.Single(form.Form{"lighten.off": "100", "lighten.web": "20", "cut.1.from": "60", "cut.1.to": "160"}), lighten.Step.Name)
	assert.Equal(t, "Cut 1 can take nothing off each wheel: the web would be under 20 mm.", jobs.Text(a, "say.lighten.then"))
}

func TestACutSaysWhatItLacks(t *testing.T) {
	a := sheet.Answer(jobs.Single(form.Form{"cut.1.order": "1", "cut.2.order": "2", "cut.2.kind": "holes"}), lighten.Step.Name)
	assert.Equal(t, "Still to give: the inner diameter, the outer diameter, the depth.", jobs.Text(a, "say.cut.1.line"))
	assert.Equal(t, "Still to give: the circle’s diameter, the drill, the number of holes.", jobs.Text(a, "say.cut.2.line"))
	assert.Empty(t, a.Faults())
	// A weight settles one figure, of one cut.
	a = sheet.Answer(jobs.Single(form.Form{"lighten.off": "100", "cut.1.order": "1", "cut.1.kind": "face", "cut.2.order": "2", "cut.2.kind": "rim"}), lighten.Step.Name)
	assert.Contains(t, jobs.Text(a, "say.cut.1.line"), "deep")
	assert.Equal(t, "Still to give: the new diameter.", jobs.Text(a, "say.cut.2.line"))
}

func TestMetalIsCountedOnceAndSaidSo(t *testing.T) {
	a := sheet.Answer(jobs.Single(form.Form{
		"cut.1.order": "1", "cut.1.kind": "holes", "cut.1.holes": "6", "cut.1.circle": "110", "cut.1.drill": "10",
		"cut.2.order": "2", "cut.2.from": "70", "cut.2.to": "150", "cut.2.depth": "8",
	}), lighten.Step.Name)
	hole, _ := ring(0, 10, 18)
	lost, _ := ring(0, 10, 3)
	recess, _ := ring(70, 150, 3)
	assert.InDelta(t, 6*hole+recess-6*lost, jobs.Value(t, a, "lighten.drive.off_g"), 1e-9)
	assert.InDelta(t, 6*lost, jobs.Value(t, a, "lighten.drive.cuts/1/overlap_g"), 1e-9)
	assert.Contains(t, jobs.Text(a, "say.cut.2.line"), "11 g more is counted with the cuts before.")
}

func TestEachWheelHasItsOwnCuts(t *testing.T) {
	a := sheet.Answer(jobs.Single(form.Form{
		"wheel.timing.width": "26", "cut.1.kind": "face", "cut.1.depth": "1", "cut.1.wheel": "drive",
		"cut.2.order": "2", "cut.2.kind": "rim", "cut.2.rim": "198",
	}), lighten.Step.Name)
	rim, _ := ring(198, 200, 26)
	assert.InDelta(t, rim, jobs.Value(t, a, "lighten.timing.off_g"), 1e-9)
	hub, _ := ring(24, 60, 1)
	face, _ := ring(160, 200, 1)
	whole, _ := ring(198, 200, 27)
	assert.InDelta(t, hub+face+whole, jobs.Value(t, a, "lighten.drive.off_g"), 1e-9)
	assert.Contains(t, jobs.Text(a, "say.lighten.headline"), "off the drive wheel, ")
	assert.Contains(t, jobs.Text(a, "picture.lighten.timing"), "<svg")
	assert.Equal(t, "Timing wheel", jobs.Text(a, "say.lighten.which.timing"))
}

func TestWhatItDoes(t *testing.T) {
	a := sheet.Answer(jobs.Single(form.Form{
		"cut.1.kind": "rim", "cut.1.rim": "190",
		"lighten.idle": "900", "lighten.gears": "14 5", "lighten.tyre": "310", "lighten.rest": "3 kg",
	}), lighten.Step.Name)
	before, after := jobs.Value(t, a, "lighten.before_kgm2"), jobs.Value(t, a, "lighten.after_kgm2")
	_, off := ring(190, 200, 28)
	assert.InDelta(t, 2*off, before-after, 1e-12)
	assert.InDelta(t, 900*math.Sqrt(before/after), jobs.Value(t, a, "lighten.idle_rpm"), 1e-9, "n₂ = n₁ √(J₁/J₂)")
	assert.InDelta(t, before*14*14/0.31/0.31, jobs.Value(t, a, "lighten.felt/0/before_kg"), 1e-9, "J (gear/wheel radius)²")
	assert.InDelta(t, after*5*5/0.31/0.31, jobs.Value(t, a, "lighten.felt/1/after_kg"), 1e-9)
	assert.InDelta(t, 2*jobs.Value(t, a, "lighten.drive.before_g")+3000, jobs.Value(t, a, "lighten.before_g"), 1e-9)
	assert.Contains(t, jobs.Text(a, "say.lighten.balance"), "stays as it was")
	assert.Empty(t, jobs.Text(a, "say.lighten.uneven"))
	// One hole is on one side: its weight at 55 mm, carried to the throw of 42 mm.
	a = sheet.Answer(jobs.Single(form.Form{"cut.1.kind": "holes", "cut.1.holes": "1", "cut.1.circle": "110", "cut.1.drill": "10", "cut.1.wheel": "drive"}), lighten.Step.Name)
	hole, _ := ring(0, 10, 18)
	assert.InDelta(t, hole*55, jobs.Value(t, a, "lighten.balance_change_gmm"), 1e-6)
	assert.Equal(t, "To the balance", jobs.Text(a, "say.lighten.uneven"))
	assert.Contains(t, jobs.Text(a, "say.lighten.balance"), "as much as "+strconv.Itoa(int(math.Round(hole*55/42)))+" g at the crankpin: balance the crank")
}

// The pin's boss and hole stand at the throw; a recess through the boss takes
// more from that side, so that the crank must be balanced.
func TestABossMakesAnEvenCutUneven(t *testing.T) {
	f := jobs.Single(form.Form{"throw": "42", "wheel.drive.boss": "44", "wheel.drive.pinhole": "25"})
	drill, _ := ring(0, 25, 28-5)
	boss, _ := ring(0, 44, 5)
	plain := jobs.Value(t, sheet.Answer(jobs.Single(nil), lighten.Step.Name), "lighten.drive.before_g")
	f["made.b.depth"] = "" // a recess on the outer side alone, wide of the boss
	f["made.a.from"] = "30"
	a := sheet.Answer(f, lighten.Step.Name)
	recess, _ := ring(30, 60, 5)
	inner, _ := ring(60, 160, 5)
	assert.InDelta(t, plain+inner-recess+boss-drill-(drill/(28-5)*5), jobs.Value(t, a, "lighten.drive.before_g"), 25, "the boss hangs over the recess's edge")
	assert.Equal(t, "Still to give: the depth.", jobs.Text(a, "say.made.b.line"))
	f["cut.1.kind"], f["cut.1.depth"] = "face", "2"
	assert.Contains(t, jobs.Text(sheet.Answer(f, lighten.Step.Name), "say.lighten.balance"), "balance the crank after this")
}

// What isn’t there can’t be turned off: a hole of 14 mm at 6 lacks π/4 × 14² × 3 mm³
// of a cut of 3 mm in the face, 3.6 g, 85 mm from the shaft.
func TestACutOverABalancingHoleMovesTheBalance(t *testing.T) {
	said := func(more form.Form) string {
		f := form.Form{"keep.a.order": "1", "keep.a.radius": "85", "keep.a.hour": "6", "keep.a.across": "14"}
		return jobs.Said(sheet.Answer(jobs.Single(f.With(more)), lighten.Step.Name), "lighten.balance")
	}
	assert.Contains(t, said(form.Form{"cut.1.kind": "face", "cut.1.depth": "3"}), "over place 1 to keep off under Balance")
	assert.Contains(t, said(form.Form{"cut.1.kind": "rim", "cut.1.rim": "182"}), "Balance the crank after this")
	assert.Contains(t, said(form.Form{"cut.1.from": "60", "cut.1.to": "160", "cut.1.depth": "7"}), "Balance the crank after this")
	assert.Contains(t, said(form.Form{"cut.1.kind": "rim", "cut.1.rim": "186"}), "stays as it was")
	assert.Contains(t, said(form.Form{"cut.1.from": "60", "cut.1.to": "150", "cut.1.depth": "7"}), "stays as it was")
	assert.Contains(t, said(form.Form{"keep.a.wheel": "drive", "cut.1.wheel": "timing", "cut.1.kind": "face", "cut.1.depth": "3"}), "stays as it was")
	assert.Contains(t, said(form.Form{"keep.a.across": "", "cut.1.kind": "face", "cut.1.depth": "3"}), "stays as it was")
}

// The section shows what the wheel came with: the pin's boss in its recess, the
// pin's hole through it, and of a ring of holes one.
func TestTheSectionShowsBossAndHoles(t *testing.T) {
	f := jobs.Single(form.Form{"throw": "42"})
	bare := jobs.Text(sheet.Answer(f, lighten.Step.Name), "picture.lighten.drive")
	f["wheel.drive.boss"], f["wheel.drive.pinhole"] = "44", "25"
	pin := jobs.Text(sheet.Answer(f, lighten.Step.Name), "picture.lighten.drive")
	for name, text := range map[string]string{"kind": "holes", "holes": "6", "circle": "160", "drill": "12", "depth": "10"} {
		f["made.z."+name] = text
	}
	ring := jobs.Text(sheet.Answer(f, lighten.Step.Name), "picture.lighten.drive")
	for i, picture := range []string{bare, pin, ring} {
		assert.Equal(t, i, strings.Count(picture, `class="op"`), picture)
	}
	assert.Equal(t, strings.Count(bare, `class="ol"`)+1, strings.Count(pin, `class="ol"`), "the boss")
}

// Handbook rule for cast-iron rims, v²/10 lb/in² with v in ft/s (value from
// memory): 88 ft/s, 774 lb/in².
func TestARimOfCastIronIsPulledAsTheHandbookSays(t *testing.T) {
	rpm := 88 * 0.3048 / (math.Pi * 0.2) * 60
	a := sheet.Answer(jobs.Single(form.Form{"lighten.material": "iron", "lighten.top": jobs.Figure(rpm)}), lighten.Step.Name)
	assert.InDelta(t, 88*0.3048, jobs.Value(t, a, "lighten.drive.rim_ms"), 1e-9)
	assert.InEpsilon(t, 88*88/10*0.00689476, jobs.Value(t, a, "lighten.drive.thin_ring_mpa"), 0.04)
	assert.Equal(t, "7200 kg/m³", jobs.Text(a, "assumed.lighten.density"))
	a = sheet.Answer(jobs.Single(form.Form{"lighten.density": "7300", "lighten.strength": "50", "lighten.top": "9000"}), lighten.Step.Name)
	assert.Contains(t, jobs.Text(a, "say.lighten.burst"), "It would burst at 9000 rpm.")
	assert.InDelta(t, 7300*math.Pow(math.Pi*0.2*150, 2)/1e6, jobs.Value(t, a, "lighten.drive.thin_ring_mpa"), 1e-9, "ρ v²")
}

// Every wheel has a hole for the crankpin, measured or not: in a web of 6 mm the pull at its
// edge is more than half as much again as in the rim as a free ring.
func TestTheCrankpinsHoleIsPulledThoughNobodyMeasuredIt(t *testing.T) {
	thin := form.Form{
		"throw": "50", "lighten.material": "iron", "lighten.top": "8000",
		"cut.1.from": "60", "cut.1.to": "170", "cut.1.depth": "17", "made.a.to": "170",
	}
	measured := sheet.Answer(jobs.Single(thin.With(form.Form{"wheel.drive.pinhole": "30"})), lighten.Step.Name)
	a := sheet.Answer(jobs.Single(thin), lighten.Step.Name)
	assert.InDelta(t, jobs.Value(t, measured, "lighten.drive.margin"), jobs.Value(t, a, "lighten.drive.margin"), 1e-9, "30 mm stands in")
	assert.Greater(t, jobs.Value(t, a, "lighten.drive.hole_mpa"), 1.5*jobs.Value(t, a, "lighten.drive.thin_ring_mpa"))
	assert.Contains(t, jobs.Said(a, "lighten.hole"), "The hole for the crankpin raises the pull")
	ring := thin.With(form.Form{"cut.2.kind": "holes", "cut.2.holes": "6", "cut.2.circle": "150", "cut.2.drill": "8", "cut.2.first": "1"})
	assert.NotEmpty(t, jobs.Said(sheet.Answer(jobs.Single(ring), lighten.Step.Name), "lighten.hole"))
}

// Thirty holes of 10 mm on a circle of 140 mm leave 4.6 mm between them, a third of their
// pitch, to carry the rim: no hole by itself is pulled so.
func TestHolesNearOneAnotherArePulledHarder(t *testing.T) {
	said := func(holes, circle string) string {
		f := form.Form{"lighten.top": "7000", "cut.1.kind": "holes", "cut.1.holes": holes, "cut.1.circle": circle, "cut.1.drill": "10"}
		return jobs.Said(sheet.Answer(jobs.Single(f), lighten.Step.Name), "lighten.hole")
	}
	assert.Contains(t, said("30", "140"), "are pulled harder than is counted")
	assert.Contains(t, said("6", "185"), "are pulled harder than is counted", "2.5 mm to the edge")
	assert.NotContains(t, said("6", "140"), "pulled harder")
}

func TestThinWallsAreSaidBesideTheirField(t *testing.T) {
	a := sheet.Answer(jobs.Single(form.Form{"cut.1.from": "60", "cut.1.to": "160", "cut.1.depth": "16"}), lighten.Step.Name)
	assert.Equal(t, "Too thin: the web of each wheel 7 mm at ⌀ 60 mm, 10 mm asked.", jobs.Text(a, "say.lighten.thin"))
	assert.Equal(t, jobs.Text(a, "say.lighten.thin"), jobs.Text(a, "say.lighten.thin.drive.web"))
	a = sheet.Answer(jobs.Single(form.Form{"made.a.depth": "16", "cut.1.kind": "rim", "cut.1.rim": "198"}), lighten.Step.Name)
	assert.Empty(t, jobs.Text(a, "say.lighten.thin"), "a web that no cut has thinned is the maker's")
}

func TestWeighIn(t *testing.T) {
	plain := jobs.Value(t, sheet.Answer(jobs.Single(nil), lighten.Step.Name), "lighten.drive.before_g")
	for _, row := range []struct{ before, after, drawn, weighed string }{
		{"5449", "", "The drawing comes to 5449 g, as the scale says.", ""},
		{"5440", "4687", "The drawing comes to 5449 g, 9 g over the scale (0.2%).", "Off: 753 g, 750 g planned: 3 g too much."},
		{"5600", "4850.5", "The drawing comes to 5449 g, 151 g under the scale (2.7%). Look at the recesses, or the density.", "Off: 750 g, 750 g planned: as planned, to the scale’s step."},
		{"5440", "4760", "The drawing comes to 5449 g, 9 g over the scale (0.2%).", "Off: 680 g, 750 g planned: 70 g still to come off."},
	} {
		f := jobs.Single(form.Form{"lighten.off": "750", "cut.1.from": "48", "cut.1.to": "168", "wheel.drive.weight": row.before})
		if row.after != "" {
			f["wheel.drive.after"] = row.after
		}
		a := sheet.Answer(f, lighten.Step.Name)
		assert.Equal(t, row.drawn, jobs.Text(a, "say.lighten.drive.drawn"))
		assert.Equal(t, row.weighed, jobs.Text(a, "say.lighten.drive.weighed"))
		assert.Empty(t, jobs.Text(a, "say.lighten.timing.drawn"))
	}
	assert.InDelta(t, 5449, plain, 0.5)
}

// A wheel weighed with its cuts alone tells nothing of what they took: a drawing 450 g
// heavier than the wheel isn't metal off it. Where the scale has less off than the cuts
// as drawn take, their inertia isn't off either.
func TestAWeighingAloneTellsNothingOff(t *testing.T) {
	cut := form.Form{"lighten.off": "750", "cut.1.from": "48", "cut.1.to": "168"}
	a := sheet.Answer(jobs.Single(cut.With(form.Form{"wheel.drive.after": "4250"})), lighten.Step.Name)
	assert.Equal(t, "750 g off the drive wheel, 750 g off the timing wheel", jobs.Said(a, "lighten.headline"))
	assert.InDelta(t, 5000, jobs.Value(t, a, "lighten.drive.before_g"), 0.01)
	assert.InDelta(t, 4250, jobs.Value(t, a, "lighten.drive.after_g"), 1e-9)
	assert.Contains(t, jobs.Said(a, "lighten.total"), "of the inertia off both wheels.")
	begun := jobs.Single(cut.With(form.Form{"wheel.drive.weight": "5440", "wheel.drive.after": "5440", "wheel.timing.weight": "5440", "wheel.timing.after": "5440"}))
	a = sheet.Answer(begun, lighten.Step.Name)
	assert.Contains(t, jobs.Said(a, "lighten.total"), "In all 0 g off both wheels; the cuts as drawn take ")
	assert.Contains(t, jobs.Said(a, "lighten.inertia"), "The cuts as drawn take ")
}

// A wheel hung by an edge at a distance a from its middle swings once in
// 2π √((J + m a²)/(m g a)), longer by 1 + θ²/16 for a half-swing θ.
// Two wheels that weigh more apart than the scale's step are matched, and a crank that
// weighs more than its parts, or less, is asked about.
func TestWheelsAreMatchedAndTheWholeIsItsParts(t *testing.T) {
	answer := func(more form.Form) *bench.Answers {
		return sheet.Answer(jobs.Single(form.Form{"wheel.drive.weight": "3000", "wheel.timing.weight": "3000", "lighten.rest": "1400"}).With(more), lighten.Step.Name)
	}
	alike := answer(form.Form{"wheel.drive.after": "2310", "wheel.timing.after": "2311"})
	assert.Equal(t, "The wheels weigh alike, as far as the scale tells.", jobs.Said(alike, "lighten.matched"))
	a := answer(form.Form{"wheel.drive.after": "2310", "wheel.timing.after": "2325", "balance.whole": "6075"})
	assert.Contains(t, jobs.Said(a, "lighten.matched"), "The timing wheel weighs 15 g more.")
	assert.InDelta(t, 15, jobs.Value(t, a, "lighten.apart_g"), 1e-9)
	assert.InDelta(t, 40, jobs.Value(t, a, "lighten.whole_over_parts_g"), 1e-9)
	assert.Contains(t, jobs.Said(a, "lighten.parts"), "40 g more than its parts")
	assert.Contains(t, jobs.Said(answer(form.Form{"balance.whole": "7000"}), "lighten.parts"), "400 g less than its parts")
	assert.NotContains(t, jobs.Said(answer(form.Form{"balance.whole": "7401"}), "lighten.parts"), "than its parts")
	assert.Empty(t, jobs.Said(answer(form.Form{"wheel.drive.after": "2310"}), "lighten.matched"), "one before its cuts, the other after")
	pressed := sheet.Answer(form.Form{"wheel.drive.weight": "2325", "wheel.timing.weight": "2310"}, "press")
	assert.Contains(t, jobs.Said(pressed, "press.matched"), "The drive wheel weighs 15 g more")
}

// The customer's table sets weight, inertia and factor before and after side by side.
func TestTheSheetsTableHasBeforeAndAfter(t *testing.T) {
	job := jobs.Single(jobs.Knife("wheel.drive.weight", "3000", "wheel.drive.after", "2250", "wheel.timing.weight", "3010", "wheel.timing.after", "2260",
		"cut.1.order", "1", "cut.1.kind", "recess", "cut.1.from", "60", "cut.1.to", "150", "cut.1.depth", "11"))
	a := sheet.Answer(job, "sheet")
	assert.Equal(t, "6010 g", jobs.Said(a, "sheet.weight.found"))
	assert.Equal(t, "4510 g", jobs.Said(a, "sheet.weight.left"))
	planned := sheet.Answer(job.With(form.Form{"wheel.drive.after": ""}), "sheet")
	assert.Equal(t, "6010 g", jobs.Said(planned, "sheet.weight.found"))
	assert.Contains(t, jobs.Said(planned, "sheet.weight.left"), " g as drawn", "nobody weighed it")
	assert.NotEqual(t, jobs.Said(a, "sheet.inertia.found"), jobs.Said(a, "sheet.inertia.left"))
	assert.NotEmpty(t, jobs.Said(a, "sheet.factor.found"))
	assert.Equal(t, "yes", jobs.Said(a, "sheet.table"))
	assert.Empty(t, jobs.Said(sheet.Answer(form.Form{}, "sheet"), "sheet.table"))
}

func TestASwingFindsTheInertia(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	kg, j, arm := 5.449, 0.02957, 0.08
	period := 2 * math.Pi * math.Sqrt((j+kg*arm*arm)/(kg*9.80665*arm)) * (1 + math.Pow(5*math.Pi/180, 2)/16)
	f := jobs.Single(form.Form{"swing.1.arm": "80", "swing.1.armpm": "0.2", "swing.1.taps": jobs.Taps(period, 60, 0.02, rng)})
	a := sheet.Answer(f, lighten.Step.Name)
	plus := jobs.Value(t, a, "lighten.swings/0/plus_kgm2")
	assert.Less(t, plus, 0.05*j)
	assert.InDelta(t, j, jobs.Value(t, a, "lighten.swings/0/inertia_kgm2"), plus)
	assert.Equal(t, jobs.Value(t, a, "lighten.swings/0/inertia_kgm2"), jobs.Value(t, a, "lighten.drive.before_kgm2"), "the swing counts")
	assert.Equal(t, jobs.Value(t, a, "lighten.drive.before_kgm2"), jobs.Value(t, a, "lighten.timing.before_kgm2"), "for a like wheel too")
	f["wheel.timing.width"] = "27"
	a = sheet.Answer(f, lighten.Step.Name)
	assert.NotEqual(t, jobs.Value(t, a, "lighten.drive.before_kgm2"), jobs.Value(t, a, "lighten.timing.before_kgm2"), "but not for another")
	delete(f, "wheel.timing.width")
	assert.Contains(t, jobs.Text(a, "say.swing.1.line"), "over 29.5 swings.")
	assert.Contains(t, jobs.Text(a, "say.swing.1.inertia"), "agrees")
	// The drawing without its recesses doesn't agree.
	delete(f, "made.a.depth")
	delete(f, "made.b.depth")
	f["swing.1.mass"] = "5449"
	assert.Contains(t, jobs.Text(sheet.Answer(f, lighten.Step.Name), "say.swing.1.inertia"), "lies outside that")
	// Ten times the possible period is refused, with what would do.
	f["swing.1.taps"] = jobs.Taps(10*period, 20, 0.02, rng)
	a = sheet.Answer(f, lighten.Step.Name)
	assert.Contains(t, jobs.Text(a, "error.swing.1.taps"), "a swing can’t be, with this arm in a wheel of this size")
	assert.Equal(t, "Mend the figure marked Wrong below.", jobs.Text(a, "say.lighten.headline"))
	// Taps one way, said to be both.
	f["swing.1.taps"] = jobs.Taps(2*period, 20, 0.02, rng)
	assert.Contains(t, jobs.Text(sheet.Answer(f, lighten.Step.Name), "error.swing.1.taps"), "Was the mark tapped one way only?")
	f["swing.1.passes"] = "one"
	assert.Empty(t, jobs.Text(sheet.Answer(f, lighten.Step.Name), "error.swing.1.taps"))
}

func TestASwingOfTheCrankTellsWhatElseTurns(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	kg, j, arm := 15.0, 0.065, 0.07
	period := 2 * math.Pi * math.Sqrt((j+kg*arm*arm)/(kg*9.80665*arm)) * (1 + math.Pow(5*math.Pi/180, 2)/16)
	f := jobs.Single(form.Form{"swing.1.of": "crank", "swing.1.arm": "70", "swing.1.taps": jobs.Taps(period, 60, 0, rng), "cut.1.kind": "face", "cut.1.depth": "1"})
	assert.Equal(t, "Still to give: the weight.", jobs.Text(sheet.Answer(f, lighten.Step.Name), "say.swing.1.lacks"))
	f["swing.1.mass"] = "15 kg"
	a := sheet.Answer(f, lighten.Step.Name)
	assert.InDelta(t, j, jobs.Value(t, a, "lighten.before_kgm2"), jobs.Value(t, a, "lighten.swings/0/plus_kgm2"))
	assert.Contains(t, jobs.Text(a, "say.lighten.whole"), "Inertia of the whole crank ")
	f["swing.1.mass"] = "5 kg"
	assert.Contains(t, jobs.Text(sheet.Answer(f, lighten.Step.Name), "say.lighten.swungless"), "less than its wheels alone")
}

func TestWhatCannotBeCutIsToldBesideItsField(t *testing.T) {
	for _, row := range []struct {
		field string
		job   form.Form
		says  string
	}{
		{"cut.1.to", form.Form{"cut.1.from": "60", "cut.1.to": "220", "cut.1.depth": "5"}, "220 mm lies outside the wheel: 60 mm to 200 mm will do"},
		{"cut.1.from", form.Form{"cut.1.from": "10", "cut.1.to": "160", "cut.1.depth": "5"}, "10 mm goes through the bore: 24 mm to 200 mm will do"},
		{"cut.1.to", form.Form{"cut.1.from": "160", "cut.1.to": "60", "cut.1.depth": "5"}, "less than the inner diameter"},
		{"cut.1.depth", form.Form{"cut.1.from": "60", "cut.1.to": "160", "cut.1.depth": "25"}, "no metal is left between the faces"},
		{"cut.1.depth", form.Form{"cut.1.from": "60", "cut.1.to": "160", "cut.1.depth": "30"}, "30 mm won’t do: 0 mm to 28 mm will"},
		{"cut.1.depth", form.Form{"cut.1.from": "60", "cut.1.to": "160", "cut.1.depth": "-2"}, "out of range"},
		{"cut.1.rim", form.Form{"cut.1.kind": "rim", "cut.1.rim": "210"}, "210 mm won’t do"},
		{"cut.1.drill", form.Form{"cut.1.kind": "holes", "cut.1.holes": "6", "cut.1.circle": "195", "cut.1.drill": "10"}, "breaks out of the rim"},
		{"cut.1.drill", form.Form{"cut.1.kind": "holes", "cut.1.holes": "6", "cut.1.circle": "30", "cut.1.drill": "10"}, "runs into the bore"},
		{"cut.1.drill", form.Form{"cut.1.kind": "holes", "cut.1.holes": "20", "cut.1.circle": "60", "cut.1.drill": "12"}, "run into one another"},
		{"cut.1.holes", form.Form{"cut.1.kind": "holes", "cut.1.holes": "6.5", "cut.1.circle": "60", "cut.1.drill": "12"}, "holes come whole"},
		{"made.a.to", form.Form{"made.a.to": "300"}, "lies outside the wheel"},
		{"wheel.drive.bore", form.Form{"wheel.drive.diameter": "140", "wheel.drive.bore": "145"}, "145 mm won’t do"},
		{"wheel.drive.boss", form.Form{"throw": "95", "wheel.drive.diameter": "180", "wheel.drive.boss": "40"}, "the crankpin stands 95 mm from the shaft"},
		{"wheel.drive.pinhole", form.Form{"throw": "95", "wheel.drive.pinhole": "25"}, "breaks out of the rim"},
		{"lighten.off", form.Form{"lighten.off": "750", "cut.1.kind": "rim", "cut.1.rim": "180", "cut.2.order": "2", "cut.2.kind": "face"}, "already take off"},
		{"lighten.off", form.Form{"lighten.off": "9 kg", "cut.1.kind": "face"}, "the wheel weighs no more than 5.449 kg"},
		{"lighten.off", form.Form{"lighten.off": "0.75"}, "out of range: 1 g"},
		{"lighten.web", form.Form{"lighten.web": "-3"}, "out of range: 0 mm"},
		{"lighten.density", form.Form{"lighten.density": "7.85"}, "out of range"},
		{"swing.1.taps", form.Form{"swing.1.arm": "80", "swing.1.taps": "0 1 2 3 2 4 5"}, "tap 5 is not later than the one before it"},
		{"swing.1.taps", form.Form{"swing.1.arm": "80", "swing.1.taps": "0 0.1 0.9 1.3 1.35 2.9 3.05 3.5"}, "too few"},
		{"swing.1.taps", form.Form{"swing.1.arm": "80", "swing.1.taps": "0.26 1.31 3.01 4.69 4.76 5.19 7.40 9.41 9.53 10.46 10.88 12.08 12.51 12.70 12.78 14.83 16.73 16.75 17.36 19.91"}, "too uneven"},
		{"swing.1.arm", form.Form{"swing.1.arm": "120", "swing.1.taps": "0 .4 .8 1.2 1.6 2 2.4"}, "120 mm won’t do: 1 mm to 100 mm will"},
		{"swing.1.end", form.Form{"swing.1.arm": "80", "swing.1.end": "9", "swing.1.taps": "0 .4 .8 1.2 1.6 2 2.4"}, "the swing can’t grow"},
	} {
		a := sheet.Answer(jobs.Single(row.job), lighten.Step.Name)
		assert.Contains(t, jobs.Text(a, "error."+row.field), row.says, "%v", row.job)
		assert.Equal(t, "Mend the figure marked Wrong below.", jobs.Text(a, "say.lighten.headline"), "%v", row.job)
	}
}

// Whatever is typed, no figure is without end and no name stands twice.
func TestAnyLighteningIsAnswered(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	figures := []string{"", "0", "1", "5", "12", "28", "60", "100", "160", "200", "1e9", "-3", "x", "0 0.4 0.8 1.2 1.6 2 2.4", "750 g"}
	var names []string
	for _, field := range form.Job.Fields() {
		if field.Number >= 200 && field.Number < 300 {
			names = append(names, form.Fill(field.Pattern, []string{"1"}), form.Fill(field.Pattern, []string{"2"}))
		}
	}
	for range 400 {
		f := jobs.Single(nil)
		for range rng.Intn(30) {
			name := names[rng.Intn(len(names))]
			field, _, ok := form.Job.Lookup(name)
			require.True(t, ok, name)
			f[name] = figures[rng.Intn(len(figures))]
			if field.Kind == form.Choice {
				f[name] = field.Choices[rng.Intn(len(field.Choices))]
			}
		}
		seen := map[string]bool{}
		for _, e := range sheet.Answer(f, "").Entries {
			assert.False(t, seen[e.Name], "%s: %v", e.Name, f)
			seen[e.Name] = true
			assert.False(t, math.IsNaN(e.Number) || math.IsInf(e.Number, 0), "%s: %v", e.Name, f)
			assert.NotContains(t, e.Text, "NaN")
		}
	}
}

func BenchmarkLighten(b *testing.B) {
	f := jobs.Single(form.Form{
		"lighten.off": "750", "lighten.top": "6000", "wheel.drive.boss": "44", "wheel.drive.pinhole": "25",
		"cut.1.order": "1", "cut.1.kind": "holes", "cut.1.holes": "6", "cut.1.circle": "140", "cut.1.first": "1", "cut.1.drill": "10",
		"cut.2.order": "2", "cut.2.from": "48", "cut.2.to": "168",
	})
	for b.Loop() {
		sheet.Answer(f, lighten.Step.Name)
	}
}

// Turned down to 164 mm the rim warned that 2 mm were left of it, to 160 and less, where nothing
// is, it didn't.
func TestARimTurnedInsideItsRecessIsTooThin(t *testing.T) {
	for rim, says := range map[string]string{"195": "", "164": "each wheel 2 mm at ⌀ 160 mm", "160": "each wheel 0 mm at ⌀ 160 mm", "150": "each wheel 0 mm at ⌀ 150 mm"} {
		a := sheet.Answer(jobs.Single(form.Form{"cut.1.kind": "rim", "cut.1.rim": rim}), lighten.Step.Name)
		if says == "" {
			assert.Empty(t, jobs.Said(a, "lighten.thin"), rim)
			continue
		}
		assert.Equal(t, "Too thin: the rim’s depth of "+says+", 15 mm asked.", jobs.Said(a, "lighten.thin"), rim)
	}
	// Found for a weight, it stops before that.
	a := sheet.Answer(jobs.Single(form.Form{"cut.1.kind": "rim", "lighten.off": "2500"}), lighten.Step.Name)
	assert.Contains(t, jobs.Said(a, "lighten.then"), "rim’s depth")
}

// As drawn, an inertia was told that had been swung, and one wheel's swing as both wheels'; and
// weight and inertia of the wheels alone stood as the crank's.
func TestTheSheetSaysWhatItsWeightAndInertiaAreOf(t *testing.T) {
	taps := jobs.Taps(0.7, 40, 0, rand.New(rand.NewSource(6)))
	cut := form.Form{"cut.1.kind": "face", "cut.1.depth": "1"}
	drive := form.Form{"swing.1.of": "drive", "swing.1.arm": "70", "swing.1.taps": taps}
	both := drive.With(form.Form{"swing.2.of": "timing", "swing.2.arm": "70", "swing.2.taps": taps})
	whole := form.Form{"swing.1.of": "crank", "swing.1.arm": "70", "swing.1.mass": "18 kg", "swing.1.taps": taps}
	const taken = "The timing wheel is taken as like the drive wheel: swing it too."
	for _, row := range []struct {
		name  string
		more  form.Form
		by    string
		mated bool
		alone [2]string // weight, inertia
	}{
		{"drawn", nil, " as drawn", false, [2]string{"yes", "yes"}},
		{"the rest weighed", form.Form{"lighten.rest": "1400"}, " as drawn", false, [2]string{"", "yes"}},
		{"one wheel swung", drive, " as swung, the rest as drawn", true, [2]string{"yes", "yes"}},
		{"each wheel swung", both, " as swung, the rest as drawn", false, [2]string{"yes", "yes"}},
		{"the crank swung", whole, " as swung, the rest as drawn", false, [2]string{"yes", ""}},
	} {
		a := sheet.Answer(jobs.Single(cut.With(row.more)), "sheet")
		for _, column := range []string{"found", "left"} {
			assert.True(t, strings.HasSuffix(jobs.Said(a, "sheet.inertia."+column), "kg·cm²"+row.by), row.name)
		}
		assert.Equal(t, row.mated, strings.HasSuffix(jobs.Said(a, "lighten.scaled"), taken), row.name)
		assert.Equal(t, row.alone, [2]string{jobs.Said(a, "sheet.weight.wheels"), jobs.Said(a, "sheet.inertia.wheels")}, row.name)
	}
}
