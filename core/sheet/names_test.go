package sheet

import (
	rand1 "math/rand"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/jobs"
	"pintwelve/tools/site"
)

// What the page has a place for, the core can say, draw or name; and what the core
// says, draws or names has a place on the page. A word that is hard to come by
// wants a job in sayingJobs that brings it.
func TestThePageShowsWhatTheCoreSaysAndNothingElse(t *testing.T) {
	answered := map[string]bool{}
	for _, job := range append(append(givenJobs(t), sayingJobs()...), anyTruing(400)...) {
		keys := keysOf(job)
		for _, part := range steps {
			for _, e := range Answer(job, part.Name).Entries {
				if kind, _, _ := strings.Cut(e.Name, "."); e.Text != "" && (kind == "say" || kind == "picture" || kind == "unit") {
					answered[starred(e.Name, keys)] = true
				}
			}
		}
	}
	shown := shownNames(t)
	for name := range shown {
		assert.True(t, answered[name], "the page has a place for %s, which no job brings", name)
	}
	for name := range answered {
		assert.True(t, shown[name], "%s is answered and shown nowhere", name)
	}
}

// shownNames are the names that the page and its modules show.
func shownNames(t *testing.T) map[string]bool {
	shown := map[string]bool{}
	for _, m := range regexp.MustCompile(`data-(say|if|picture|unit)="([^"]+)"`).FindAllStringSubmatch(webText(t, ".html"), -1) {
		kind := m[1]
		if kind == "if" {
			kind = "say"
		}
		shown[kind+"."+m[2]] = true
	}
	for _, m := range regexp.MustCompile(`answers(?:\?\.)?\['((?:say|picture|unit)\.[^']+)'\]`).FindAllStringSubmatch(webText(t, ".js"), -1) {
		shown[m[1]] = true
	}
	return shown
}

// webText is the text of the page as it is written out, or of its modules.
func webText(t *testing.T, ending string) string {
	files, err := site.Source("../../web")
	require.NoError(t, err)
	var all strings.Builder
	for path, text := range files {
		if strings.HasSuffix(path, ending) {
			all.Write(text)
		}
	}
	require.NotEmpty(t, all.String())
	return all.String()
}

// starred puts a star in the place of each key of a row, as the page has it.
func starred(name string, keys map[string]bool) string {
	segments := strings.Split(name, ".")
	for i := 1; i < len(segments); i++ {
		if keys[segments[i-1]+"."+segments[i]] {
			segments[i] = "*"
		}
	}
	return strings.Join(segments, ".")
}

// keysOf are the keys of a job's rows, each after its group: "pass.k3y".
func keysOf(job form.Form) map[string]bool {
	all := map[string]bool{"pass.1": true} // a job without passes has this one
	for name := range job {
		field, keys, _ := form.Job.Lookup(name)
		for i, before := range strings.SplitN(field.Pattern, ".*", len(keys)+1)[:len(keys)] {
			all[before[strings.LastIndexByte(before, '.')+1:]+"."+keys[i]] = true
		}
	}
	return all
}

// anyTruing are jobs of any readings, with a further place and turns in some.
func anyTruing(n int) (all []form.Form) {
	random := rand.New(rand.NewPCG(3, 4))
	figure := func(most float64) string { return strconv.FormatFloat(most*random.Float64(), 'f', 1, 64) }
	for i := range n {
		f := jobs.Typed(figure(6), figure(12), figure(6), figure(12))
		if i%2 == 0 {
			f["dial.a.half"], f["dial.a.order"] = [...]string{"drive", "timing"}[i/2%2], "1"
			f["pass.1.dial.a.tir"], f["pass.1.dial.a.high"] = figure(3), figure(12)
		}
		for n, at := range []string{"drive", "timing", "dial.a"} {
			if (i>>n)%4 == 1 && (at != "dial.a" || i%2 == 0) {
				at = "pass.1." + at + "."
				f[at+"how"], f[at+"points"] = "turn", "8"
				for range 9 {
					f[at+"turn"] += figure(5) + " "
				}
			}
		}
		if i%3 == 0 {
			f["mount"], f["tilt"], f["tolerance"] = "bearings", figure(1), figure(9)
		}
		all = append(all, f)
	}
	return all
}

// sayingJobs bring the words that the given jobs don't.
func sayingJobs() []form.Form {
	turned := func(turn string) form.Form {
		f := jobs.Typed("3", "3", "3", "9")
		for _, at := range []string{"drive", "timing", "dial.a"} {
			f["pass.1."+at+".how"], f["pass.1."+at+".points"], f["pass.1."+at+".turn"] = "turn", "8", turn
		}
		f["drive.sweep"], f["timing.sweep"], f["dial.a.order"], f["dial.a.half"] = "10", "10", "1", "drive"
		return f
	}
	weighed := form.Form{"wheel.drive.weight": "5400", "wheel.drive.after": "5000", "wheel.timing.weight": "5400", "wheel.timing.after": "5000"}
	struck := jobs.Typed("4", "3", "4", "9").With(form.Form{
		"pass.1.done.a.kind": "strike", "pass.1.done.a.hour": "3", "pass.1.done.a.strength": "1", "pass.2.order": "1",
		"pass.2.drive.tir": "7", "pass.2.drive.high": "3", "pass.2.timing.tir": "7", "pass.2.timing.high": "9",
	})
	twin := jobs.Typed("4", "3", "4", "9").With(form.Form{"drive.pin": "100", "timing.pin": "100", "pin.b.at": "160", "pin.b.angle": "180", "pin.b.measured": "180.4", "pin.b.order": "1", "dial.a.order": "1", "dial.a.at": "120", "pass.1.dial.a.tir": "6", "pass.1.dial.a.high": "3",
		"dial.b.order": "2", "dial.b.at": "140", "pass.1.dial.b.tir": "6", "pass.1.dial.b.high": "3"})
	six := twin.With(form.Form{"timing.pin": "100", "rim": "100"})
	for i, key := range []string{"c", "d", "e", "f"} {
		six["pin."+key+".order"], six["pin."+key+".at"], six["pin."+key+".angle"] = strconv.Itoa(i+2), strconv.Itoa(60*i+220), "180"
	}
	alone := jobs.Typed("0.5", "3", "0.5", "9").With(form.Form{"drive.pin": "100", "drive.at": "60", "timing.pin": "100", "timing.at": "60", "pin.b.at": "160",
		"pin.b.order": "1", "pass.1.of": "1", "alone.1.timing.pin": "40", "alone.1.timing.at": "20", "alone.1.mount": "vblocks", "alone.1.drive.held": "30", "alone.1.timing.held": "5"})
	logged := jobs.Typed("4", "3", "4", "9")
	logged = logged.With(truing.Done(logged, []string{"a"}, "")) // "Something else", not read again yet
	return []form.Form{
		logged, alone, alone.With(form.Form{"pass.1.of": "2", "alone.2.drive.pin": "40", "alone.2.drive.at": "20"}),
		jobs.Again(jobs.Skewed(), "", "3", "12", "3", "12"), jobs.Again(jobs.Skewed(), "nothing", "3", "12", "3", "12"),
		jobs.Typed("0.5", "3", "0.5", "3").With(form.Form{"centres": "good"}),
		struck, struck.With(form.Form{"bench": "1"}), twin, six, twin.With(form.Form{"pass.2.order": "2", "pass.2.dial.a.tir": "1", "pass.2.dial.a.high": "3"}),
		jobs.Typed("0.5", "3", "0.5", "3").With(form.Form{"pass.2.order": "2", "pass.2.since": "nuts", "pass.2.drive.tir": "0.5", "pass.2.drive.high": "3", "pass.2.timing.tir": "0.5", "pass.2.timing.high": "4"}),
		jobs.Again(jobs.Skewed(), "apart", "0.5", "3", "0.5", "3").With(form.Form{"press.nuts": "yes"}), jobs.Knife("knife.came", "55", "target", "factor", "target.factor", "60"),
		struck.With(form.Form{"pass.3.order": "2", "pass.3.drive.tir": "2", "pass.3.drive.high": "9", "pass.3.timing.tir": "1", "pass.3.timing.high": "3",
			"pass.3.done.a.kind": "strike", "pass.3.done.a.hour": "3", "pass.4.order": "3", "pass.4.drive.tir": "1", "pass.4.drive.high": "9", "pass.4.timing.tir": "3", "pass.4.timing.high": "3"}),
		jobs.Knife("target", "factor", "target.factor", "66", "after.drive", "3", "after.timing", "4", "frame.speeds", "1000 2000 3000 4000",
			"keep.a.hour", "5", "hole.a.wheel", "drive", "hole.a.radius", "71", "hole.a.hour", "12", "hole.a.drill", "10", "hole.a.depth", "10",
			"hole.b.wheel", "timing", "hole.b.radius", "72", "hole.b.hour", "12", "hole.b.drill", "12", "hole.b.depth", "12",
			"balance.whole", "9 kg", "balance.rolls", "1", "knife.whole.hour", "3", "knife.whole.weight", "5", "knife.whole.radius", "80"),
		jobs.Knife("knife.apart", "apart", "drive.pin", "100", "pin.b.at", "200", "pin.b.angle", "120", "pin.b.whole.hung", "202", "pin.b.came", "70", "pin.c.at", "300", "pin.c.angle", "240"),
		jobs.Knife("knife.apart", "joined", "pin.b.angle", "360", "pin.b.order", "1"),
		jobs.Knife("knife.what", "wheels", "knife.drive.on", "pin", "knife.drive.hung", "125", "knife.timing.hung", "545"),
		jobs.Typed("3", "3", "3", "9").With(form.Form{
			"pass.1.gap12": "20", "pass.1.gap3": "20.1", "pass.1.gap6": "20", "pass.1.gap9": "20.1", "pass.1.edge12": "1", "pass.1.edge3": "2", "pass.1.edge9": "3",
		}),
		turned("0 .6 2 3.4 4 3.4 2 .6 -3"), turned("9 9.6 1 2.4 3 2.4 1 9.6"),
		{"found.rock": "0.3 mm", "found.rockat": "150", "found.width": "18", "found.pin": "30", "found.side": "0.1 mm", "found.cheek": "100"},
		{"found.bendbig": "0 0.01 mm", "found.bendsmall": "0 0.11 mm", "found.twistbig": "0 1", "found.twistsmall": "0 2"},
		{"bigend.kind": "rollers", "bigend.roller": "5 5.01"},
		{"bigend.pin": "25.0000", "bigend.bore": "25.0300", "bigend.bush": "32.0000", "bigend.eye": "32.0500",
			"joint.a.pin": "25.040", "joint.a.eye": "25.000", "joint.a.need": "100"},
		jobs.Knife("wheel.drive.width", "28", "made.m.from", "60", "made.m.to", "140", "made.m.depth", "8"),
		{"joint.a.pin": "25.05", "joint.a.eye": "25", "joint.a.wheel": "iron"}, jobs.Knife("weight.rod", "528", "cylinder.b.bank", "45"),
		jobs.Knife("new.piston", "250", "knife.what", "wheels", "knife.drive.hour", "3", "knife.timing.hour", "4"),
		{"bigend.pin": "25", "bigend.bore": "25.03", "bigend.bush": "32", "bigend.eye": "32.05"},
		{"bigend.kind": "rollers", "bigend.pin": "30", "bigend.roller": "5 5 5", "bigend.eye": "40.02"},
		{"joint.a.form": "taper", "joint.a.taper": "3", "joint.a.pin": "25", "joint.a.draw": "1", "joint.a.need": "50"},
		{"joint.a.pin": "25.2", "joint.a.eye": "25", "joint.a.need": "2000"},
		jobs.Main(nil),
		{"float.faces": "100", "float.crank": "98.9", "float.shims": "0.1 0.3 0.5", "float.caseleft": "50", "float.crankleft": "49.35"},
		{"float.faces": "100", "float.crank": "98"},
		jobs.Single(weighed.With(form.Form{"wheel.drive.after": "2310", "wheel.timing.after": "2325", "lighten.rest": "1400", "balance.whole": "6100"})),
		jobs.Single(weighed), jobs.Single(form.Form{"lighten.density": "7300", "lighten.strength": "50", "lighten.top": "9000"}),
		jobs.Single(weighed.With(form.Form{"cut.1.wheel": "drive", "cut.1.kind": "face", "cut.1.depth": "1", "cut.1.order": "1"})),
		jobs.Single(form.Form{
			"lighten.web": "20", "lighten.rimdepth": "60", "lighten.rimwidth": "30", "lighten.holewall": "100", "wheel.drive.boss": "50", "wheel.timing.width": "28.5",
			"cut.1.from": "60", "cut.1.to": "170", "cut.1.depth": "6", "cut.2.kind": "face", "cut.2.depth": "1",
			"cut.3.kind": "blind", "cut.3.holes": "6", "cut.3.circle": "130", "cut.3.drill": "12", "cut.3.depth": "6",
		}),
		jobs.Single(form.Form{"swing.1.of": "crank", "swing.1.arm": "70", "swing.1.mass": "5 kg", "swing.1.taps": jobs.Taps(0.7, 40, 0, rand1.New(rand1.NewSource(6)))}),
	}
}
