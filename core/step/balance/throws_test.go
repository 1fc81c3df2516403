package balance_test

import (
	"maps"
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

// twin is a twin of throws like jobs.Knife's that come apart, 60 % each, its pins 100 mm apart
// at 180°.
func twin(more ...string) form.Form {
	return jobs.Knife(append([]string{
		"drive.pin", "100", "pin.b.order", "1", "pin.b.at", "200", "pin.b.angle", "180", "knife.apart", "apart", "pin.b.whole.hung", "202",
	}, more...)...)
}

func answered(f form.Form) *bench.Answers { return sheet.Answer(f, balance.Step.Name) }

// What a twin leaves at 3000 rpm, by hand, in m R ω² of 550 g at 40 mm, 2.171 kN: at 180° no primary
// force, a couple along the cylinders of 1 − β of it by 100 mm and of β across them, and twice a quarter of it, R/L, as the
// secondary force; at 360° the forces add up; at 270° and 120° the secondary is a couple.
func TestWhatSeveralThrowsLeave(t *testing.T) {
	for _, row := range []struct {
		name   string
		f      form.Form
		leaves string
	}{
		{"180", twin(), "primary force 0 kN, 0 along the cylinders and 0 across, secondary 1.09 kN; primary couple 130.3 N·m, 86.9 along and 130.3 across, secondary 0 N·m."},
		{"180, 50 and 60 %", twin("knife.whole.hung", "147"), "primary force 0.22 kN, 0.22 along the cylinders and 0.22 across, secondary 1.09 kN; primary couple 119.4 N·m, 97.7 along and 119.4 across, secondary 0 N·m."},
		{"360", twin("pin.b.angle", "360"), "primary force 2.61 kN, 1.74 along the cylinders and 2.61 across, secondary 1.09 kN; primary couple 0 N·m, 0 along and 0 across, secondary 0 N·m."},
		{"270: √2 and 1/√2", twin("pin.b.angle", "270"), "primary force 1.84 kN, 1.23 along the cylinders and 1.84 across, secondary 0 kN; primary couple 92.1 N·m, 61.4 along and 92.1 across, secondary 54.3 N·m."},
		{"the same seen from the other side", twin("pin.b.angle", "90", "seen", "timing"), "primary force 1.84 kN, 1.23 along the cylinders and 1.84 across, secondary 0 kN; primary couple 92.1 N·m, 61.4 along and 92.1 across, secondary 54.3 N·m."},
		{"120: √3", twin("pin.b.angle", "120", "pin.c.order", "2", "pin.c.angle", "240", "pin.c.at", "300", "pin.c.whole.hung", "202"),
			"primary force 0 kN, 0 along the cylinders and 0 across, secondary 0 kN; primary couple 225.6 N·m, 150.4 along and 225.6 across, secondary 94 N·m."},
		{"by the maker's factor of 70 %", twin("knife.apart", "", "knife.what", "stated", "knife.stated", "70"),
			"primary force 0 kN, 0 along the cylinders and 0 across, secondary 1.09 kN; primary couple 152 N·m, 65.1 along and 152 across, secondary 0 N·m."},
	} {
		a := answered(row.f)
		require.Empty(t, a.Faults(), row.name)
		assert.Contains(t, jobs.Said(a, "balance.shake"), "3000 rpm, as found: "+row.leaves, row.name)
	}
	a := answered(twin("target", "factor", "target.factor", "50", "frame.speeds", "3000 1500"))
	assert.Contains(t, jobs.Said(a, "balance.shake"), "1500 rpm, as found: primary force 0 kN, 0 along the cylinders and 0 across, secondary 0.27 kN; primary couple 32.6 N·m")
	assert.Contains(t, jobs.Said(a, "balance.shake"), "1500 rpm, as aimed at: primary force 0 kN, 0 along the cylinders and 0 across, secondary 0.27 kN; primary couple 27.1 N·m, 27.1 along and 27.1 across")
}

// Heavy to one side is an unbalance too: 50 g at 80 mm at 3000 rpm pull 395 N.
func TestAThrowHeavyToOneSideShakes(t *testing.T) {
	f := twin("knife.whole.hung", "147", "pin.b.whole.hung", "147", "pin.b.whole.hour", "3", "pin.b.whole.weight", "50", "pin.b.whole.radius", "80")
	a := answered(f)
	require.Empty(t, a.Faults())
	assert.Contains(t, jobs.Said(a, "balance.shake"), "as found: primary force 0.39 kN, 0.39 along the cylinders and 0.39 across")
	assert.Contains(t, jobs.Said(a, "balance.shake"), "as aimed at: primary force 0 kN")
	assert.Contains(t, jobs.Said(answered(f.With(form.Form{"look": "2"})), "balance.side"), "heavy at 3 by 4000")
}

// Each throw is weighed by itself: the one that is looked at is answered for as a single is, each
// has a line, and one still to be weighed is asked for.
func TestEachThrowIsAnsweredByItself(t *testing.T) {
	f := twin("pin.b.whole.hung", "147", "target", "factor", "target.factor", "60")
	single := answered(jobs.Knife("knife.whole.hung", "147", "target", "factor", "target.factor", "60"))
	second := answered(f.With(form.Form{"look": "2"}))
	assert.Equal(t, "Pin 2", jobs.Said(second, "balance.pin"))
	for _, name := range []string{"balance.headline", "balance.do", "balance.moment", "balance.weights"} {
		assert.Equal(t, jobs.Said(single, name), jobs.Said(second, name), name)
	}
	first := answered(f)
	assert.Contains(t, jobs.Said(first, "balance.headline"), "Balance factor 60")
	assert.Equal(t, "Pin 1", jobs.Said(first, "balance.pin"))
	assert.Contains(t, jobs.Said(first, "balance.do"), "Leave it")
	assert.Equal(t, "Pin 1: 60.0 ± 0.2% as found, to have 60%; its wheels carry 545 g each at the throw, then 545 g.\n"+
		"Pin 2: 50.0 ± 0.2% as found, to have 60%; its wheels carry 518 g each at the throw, then 545 g.", jobs.Said(first, "balance.throws"))

	a := answered(twin("pin.b.whole.hung", ""))
	assert.Equal(t, "Pin 2", jobs.Said(a, "balance.pin"))
	assert.Contains(t, jobs.Said(a, "balance.headline"), "Now the knife-edges")
	assert.NotContains(t, jobs.Said(a, "balance.throws"), "Pin 2")
	assert.Contains(t, jobs.Said(a, "balance.shake"), "once every throw")
	assert.Contains(t, jobs.Said(answered(twin("weight.big", "", "weight.rod", "")), "balance.headline"), "big end", "each wheel's weight hangs on it")

	wheels := answered(twin("knife.what", "wheels", "knife.drive.hung", "545", "knife.timing.hung", "545", "pin.b.drive.hung", "545", "pin.b.timing.hung", "600", "look", "2"))
	require.Empty(t, wheels.Faults())
	assert.Contains(t, jobs.Said(wheels, "balance.wheel.timing"), "carries 600 g")
}

// What can't be told is asked for or refused, never guessed.
func TestThrowsAreRefusedRatherThanGuessed(t *testing.T) {
	for _, row := range []struct {
		f    form.Form
		said string
	}{
		{twin("knife.apart", ""), "Can each throw be weighed by itself"},
		{twin("knife.apart", "joined"), "Knife-edges can’t tell"},
		{twin("knife.apart", "joined", "pin.b.angle", ""), "Knife-edges can’t tell"},
		{twin("knife.apart", "joined", "pin.b.angle", "360", "pin.b.throw", "41"), "Knife-edges can’t tell"},
		{twin("knife.apart", "joined", "pin.b.angle", "360", "knife.what", "wheels"), "weighed with the crank whole"},
		{twin("pin.c.order", "2", "pin.d.order", "3"), "four throws and more"},
	} {
		a := answered(row.f)
		assert.Contains(t, jobs.Said(a, "balance.headline"), row.said)
		assert.Empty(t, jobs.Said(a, "balance.opens"))
		assert.Empty(t, jobs.Said(a, "balance.do"))
		assert.Contains(t, jobs.Said(balance.Plan(row.f, "k"), "plan.said"), row.said)
	}
	stated := twin("knife.what", "stated", "knife.stated", "55", "target", "factor", "target.factor", "60")
	assert.Empty(t, jobs.Said(answered(stated), "balance.do"))
	assert.Contains(t, jobs.Said(balance.Plan(stated, "k"), "plan.said"), "No holes are planned")

	for _, f := range []form.Form{twin("pin.b.at", ""), twin("drive.pin", ""), twin("pin.b.angle", ""), twin("cylinder.x.order", "1")} {
		assert.Contains(t, jobs.Said(answered(f), "balance.shake"), "told once every throw has its factor")
	}
	_, told := answered(twin("rod.centres", "40")).Get("error.rod.centres")
	assert.True(t, told)
}

// The pins of a 360° twin stand alike: one reading of the whole crank, the sum of what the two
// throws would have hung, answers for both, and the plan and the drilling are of both. The figures
// are those of each throw weighed by itself (TestWhatSeveralThrowsLeave's row of 360).
func TestATwinOfPinsAlikeIsWeighedWhole(t *testing.T) {
	apart := twin("pin.b.angle", "360", "knife.whole.hung", "147", "pin.b.whole.hung", "147", "knife.whole.hour", "3", "knife.whole.weight", "5", "knife.whole.radius", "80",
		"pin.b.whole.hour", "3", "pin.b.whole.weight", "5", "pin.b.whole.radius", "80", "target", "factor", "target.factor", "60")
	f := apart.With(form.Form{"knife.apart": "joined", "knife.whole.hung": "294", "knife.whole.weight": "10", "pin.b.whole.hung": "", "pin.b.whole.weight": "", "pin.b.whole.hour": ""})
	for _, look := range []string{"1", "2"} {
		alone, whole := answered(apart.With(form.Form{"look": look})), answered(f.With(form.Form{"look": look}))
		require.Empty(t, whole.Faults())
		for _, name := range []string{"balance.headline", "balance.do", "balance.moment", "balance.side", "balance.throws", "balance.pin"} {
			require.NotEmpty(t, jobs.Said(alone, name), name)
			assert.Equal(t, jobs.Said(alone, name), jobs.Said(whole, name), name)
		}
		assert.Contains(t, jobs.Said(whole, "balance.bob"), "404 g hung at the small end leaves the crank indifferent")
		assert.Contains(t, jobs.Said(whole, "balance.joined"), "taken to share it alike")
		assert.Contains(t, jobs.Said(whole, "balance.shake"), "as found: primary force 2.25 kN, 2.17 along the cylinders and 2.17 across", "and 5 g at 80 mm of each to one side, 0.08 kN")
		assert.Contains(t, jobs.Said(whole, "balance.shake"), "as aimed at: primary force 2.61 kN, 1.74 along the cylinders and 2.61 across")
		assert.Contains(t, jobs.Said(whole, "balance.shake"), "a couple between them shows on a balancing machine alone")
		assert.Contains(t, jobs.Said(alone, "balance.shake"), "in the plane of its pin")
	}
	planned := jobs.WithPlan(f, balance.Plan(f, "k"))
	holes := len(planned.Rows("hole"))
	for _, row := range []string{"sheet", "pin.b"} {
		assert.Equal(t, "60% with the holes drawn", jobs.Said(answered(planned), row+".factor.left"))
	}
	done := drilled(planned, "d")
	assert.Empty(t, done.Rows("hole"))
	assert.Len(t, done.Rows("keep"), holes)
	assert.Empty(t, done["knife.whole.hung"])
	assert.Equal(t, "50", done["knife.came"])
}

// What is wrong with a further throw's figure stands beside it.
func TestAThrowsFaultStandsBesideItsField(t *testing.T) {
	for name, text := range map[string]string{"pin.b.whole.hung": "3 kg", "pin.b.whole.weight": "x", "pin.b.throw": "2"} {
		f := twin("pin.b.whole.hour", "3", "pin.b.whole.weight", "1", "pin.b.whole.radius", "80")
		f[name] = text
		a := answered(f)
		e, told := a.Get("error." + name)
		assert.True(t, told, name)
		assert.NotEmpty(t, e.Text)
		_, told = a.Get("error." + strings.Replace(name, "pin.b", "knife", 1))
		assert.False(t, told, name)
	}
}

// drilled is a form with its holes drilled, its blanks out of it as the page has it.
func drilled(f form.Form, key string) form.Form {
	done := f.With(balance.Drilled(f, key))
	maps.DeleteFunc(done, func(_, text string) bool { return text == "" })
	return done
}

// Holes are planned for the throw that is looked at and stand in it alone; once drilled they
// are kept off in it, and it alone is weighed again.
func TestHolesOfOneThrow(t *testing.T) {
	f := twin("target", "factor", "target.factor", "50", "look", "2")
	f = jobs.WithPlan(f, balance.Plan(f, "k"))
	require.NotEmpty(t, f.Rows("hole"))
	for _, key := range f.Rows("hole") {
		assert.Equal(t, "2", f["hole."+key+".pin"])
		assert.Contains(t, jobs.Said(answered(f), "hole."+key+".said"), "each wheel: ")
	}
	assert.Contains(t, jobs.Said(answered(f), "balance.planned"), "With the holes drawn: 50")
	first := f.With(form.Form{"look": "1"})
	assert.Empty(t, jobs.Said(answered(first), "balance.planned"))
	assert.Contains(t, jobs.Said(answered(first), "hole."+f.Rows("hole")[0]+".said"), "Pin 2: 1. each wheel: ")
	again := jobs.WithPlan(f, balance.Plan(f, "m"))
	assert.Len(t, again.Rows("hole"), len(f.Rows("hole")), "a plan takes the place of the one before")
	both := jobs.WithPlan(first, balance.Plan(first, "m"))
	assert.Len(t, both.Rows("hole"), 2*len(f.Rows("hole")), "but for that of another throw")

	done := drilled(both, "d")
	require.Len(t, done.Rows("keep"), len(f.Rows("hole")))
	assert.Equal(t, f.Rows("hole"), done.Rows("hole"), "the other throw's holes wait to be drilled")
	assert.Empty(t, done["knife.whole.hung"])
	assert.Equal(t, "202", done["pin.b.whole.hung"])
	assert.Contains(t, jobs.Said(answered(done), "balance.headline"), "Now the knife-edges")
	assert.Contains(t, jobs.Said(answered(done.With(form.Form{"look": "2"})), "balance.planned"), "With the holes drawn: 50")
	done = done.With(form.Form{"look": "2", "knife.whole.hung": "147"})
	done = drilled(done, "e")
	assert.Empty(t, done.Rows("hole"))
	assert.Equal(t, "147", done["knife.whole.hung"])
	assert.Empty(t, done["pin.b.whole.hung"])
	pins := ""
	for _, key := range done.Rows("keep") {
		pins += "/" + done["keep."+key+".pin"]
	}
	assert.Contains(t, pins, "/2")
	assert.Contains(t, pins+"/", "//", "at the first pin")
	placed := done.With(form.Form{"pin.b.whole.hung": "147"})
	for _, key := range placed.Rows("keep") {
		blocked := placed.With(form.Form{"hole.z.radius": placed["keep."+key+".radius"], "hole.z.hour": placed["keep."+key+".hour"], "hole.z.drill": "6", "hole.z.depth": "5"})
		for pin, hit := range map[string]bool{"1": placed["keep."+key+".pin"] == "", "2": placed["keep."+key+".pin"] == "2"} {
			a := answered(blocked.With(form.Form{"hole.z.pin": pin, "keep." + key + ".across": "8"}))
			if _, told := a.Get("error.hole.z.radius"); hit {
				assert.True(t, told, "a hole is kept off in its own throw, whichever is looked at")
			}
		}
	}
}

// A throw keeps the factor that it came with, not that of the throw that was drilled before it.
func TestEachThrowKeepsTheFactorItCameWith(t *testing.T) {
	f := twin("knife.whole.hung", "147", "target", "keep", "new.piston", "260", "hole.z.radius", "70", "hole.z.hour", "6", "hole.z.drill", "8", "hole.z.bottom", "through")
	aim := jobs.Said(answered(f), "balance.throws")
	assert.Contains(t, aim, "Pin 1: 50.0 ± 0.2% as found, to have 50%")
	done := f.With(balance.Drilled(f, "d"))
	assert.Equal(t, "50", done["knife.came"])
	assert.Equal(t, "keep", done["target"])
	weighed := answered(done.With(form.Form{"knife.whole.hung": "160"}))
	require.Empty(t, weighed.Faults())
	assert.Contains(t, jobs.Said(weighed, "balance.throws"), "Pin 1: 52.4 ± 0.2% as found, to have 50%")
	assert.Contains(t, jobs.Said(weighed, "balance.throws"), "Pin 2: 60.0 ± 0.2% as found, to have 60%")
	assert.Equal(t, "50%", jobs.Said(weighed, "sheet.factor.found"))
	assert.Equal(t, "56.5 ± 0.2% with the new parts", jobs.Said(weighed, "sheet.factor.left"))
	assert.Equal(t, "60.0 ± 0.2%", jobs.Said(weighed, "pin.b.factor.found"))
	assert.Empty(t, jobs.Said(weighed, "pin.b.factor.left"))

	assert.Equal(t, "260", done["new.piston"], "the second throw was weighed with the old piston")
	assert.Contains(t, jobs.Said(weighed, "balance.new"), "Weigh every throw with the old parts until all are drilled.")
	last := done.With(form.Form{"look": "2"})
	last = last.With(balance.Drilled(last, "e"))
	assert.Equal(t, "60", last["pin.b.came"])
	assert.Equal(t, "260", last["weight.piston"], "no reading is left that was taken with the old one")
	assert.Empty(t, last["new.piston"])
}

// The sheet tells each throw's order, holes and what they leave, whichever is looked at.
func TestTheSheetTellsOfEachThrow(t *testing.T) {
	f := twin("target", "factor", "target.factor", "50", "look", "2")
	f = jobs.WithPlan(f, balance.Plan(f, "k"))
	for _, look := range []string{"1", "2"} {
		a := answered(f.With(form.Form{"look": look}))
		one, two, _ := strings.Cut(jobs.Said(a, "sheet.balance"), "\n")
		assert.Contains(t, one, "Pin 1: 60.0 ± 0.2% as found, to have 50%; its wheels carry 545 g each at the throw, then 518 g. ")
		assert.Contains(t, one, "Take ")
		assert.NotContains(t, one, "With the holes drawn")
		assert.Contains(t, two, "Pin 2: 60.0 ± 0.2% as found")
		assert.Contains(t, two, "With the holes drawn: 50")
		assert.Equal(t, "50% with the holes drawn", jobs.Said(a, "pin.b.factor.left"))
	}
	assert.Contains(t, jobs.Said(answered(twin("pin.b.whole.hung", "")), "sheet.balance"), "\nPin 2: Now the knife-edges")
}

// The answer program gives each throw's figures by the names that one throw's have, and what
// shakes the frame at each speed: by hand as in TestWhatSeveralThrowsLeave.
func TestTheFiguresOfSeveralThrows(t *testing.T) {
	a := answered(twin("knife.whole.hung", "147", "frame.speeds", "1500 3000", "target", "factor", "target.factor", "60"))
	assert.InDelta(t, 50, jobs.Value(t, a, "balance.throws/0/factor_percent"), 0.05)
	assert.InDelta(t, 60, jobs.Value(t, a, "balance.throws/1/factor_percent"), 0.05)
	for name, want := range map[string]float64{
		"0/rpm": 1500, "1/rpm": 3000, "0/found/force_n/secondary": 1085.7 / 4,
		"1/found/force_n/primary": 217.1, "1/found/force_n/secondary": 1085.7, "1/found/couple_nm/primary": 119.4, "1/found/couple_nm/along": 97.7,
		"1/found/couple_nm/across": 119.4, "1/found/couple_nm/secondary": 0, "1/target/force_n/primary": 0, "1/target/couple_nm/along": 86.9,
	} {
		assert.InDelta(t, want, jobs.Value(t, a, "balance.shaking/"+name), 0.2, name)
	}
}
