// Package jobs holds, for tests, small jobs as people would type them, and reads
// answers.
package jobs

import (
	"maps"
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// Thou is one, in mm.
const Thou = 0.0254

// Typed is a job of two dials, in thou and hours seen from the drive side.
func Typed(driveTIR, driveHigh, timingTIR, timingHigh string) form.Form {
	return form.Form{
		"pass.1.drive.tir": driveTIR, "pass.1.drive.high": driveHigh,
		"pass.1.timing.tir": timingTIR, "pass.1.timing.high": timingHigh,
	}
}

// Again adds a pass that reads so, with what is said to have come before it.
func Again(f form.Form, since, driveTIR, driveHigh, timingTIR, timingHigh string) form.Form {
	return f.With(form.Form{
		"pass.1.order": "1", "pass.2.order": "2", "pass.2.since": since,
		"pass.2.drive.tir": driveTIR, "pass.2.drive.high": driveHigh, "pass.2.timing.tir": timingTIR, "pass.2.timing.high": timingHigh,
	})
}

// Skewed wants a strike and a squeeze.
func Skewed() form.Form { return Typed("8", "5", "8", "7") }

// Knife is a single on the knife-edges, with more fields, each name before its text:
// reciprocating 550 g, rotating 760 g, of which the pin is 420 g.
func Knife(more ...string) form.Form {
	f := form.Form{
		"weight.piston": "300", "weight.rings": "20", "weight.gudgeon": "100", "weight.clips": "2",
		"weight.small": "128", "weight.big": "340", "weight.rod": "468", "weight.crankpin": "420",
		"throw": "40", "knife.whole.hung": "202",
	}
	for i := 0; i < len(more); i += 2 {
		f[more[i]] = more[i+1]
	}
	return f
}

// Single is a wheel of a 500 cc single (common practice, no source): 200 mm × 28 mm
// of steel, 24 mm bore, 5.4 kg with a recess of 5 mm in each side.
func Single(more form.Form) form.Form {
	f := form.Form{
		"wheel.drive.diameter": "200", "wheel.drive.width": "28", "wheel.drive.bore": "24",
		"made.a.from": "60", "made.a.to": "160", "made.a.depth": "5",
		"made.b.side": "inner", "made.b.from": "60", "made.b.to": "160", "made.b.depth": "5",
	}
	maps.Copy(f, more)
	return f
}

// Main is a 6205-sized bearing, 25 by 52 mm, in a light-alloy case.
func Main(more form.Form) form.Form {
	f := form.Form{"main.a.bore": "25", "main.a.outside": "52", "main.a.seat": "25.0085", "main.a.housing": "51.97", "heat.clear": "0"}
	return f.With(more)
}

// Taps are the passes of a swing of so many periods, s, both ways, each with some
// scatter.
func Taps(period float64, n int, scatter float64, rng *rand.Rand) string {
	var all []string
	for i := range n {
		at := float64(i)*period/2 + scatter*rng.NormFloat64()
		all = append(all, strconv.FormatFloat(math.Max(0, at), 'f', 2, 64))
	}
	all[0] = "0"
	return strings.Join(all, " ")
}

// Figure writes a number as it would be typed.
func Figure(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// Text returns an answer's text, "" where there is none.
func Text(a *bench.Answers, name string) string {
	e, _ := a.Get(name)
	return e.Text
}

// Told returns the text of an answer that must be there.
func Told(t testing.TB, a *bench.Answers, name string) string {
	t.Helper()
	e, ok := a.Get(name)
	require.True(t, ok, name)
	return e.Text
}

// Said returns what an answer says on the page, "" where it says nothing.
func Said(a *bench.Answers, name string) string { return Text(a, "say."+name) }

// WithPlan puts a plan's holes into a job.
func WithPlan(f form.Form, plan *bench.Answers) form.Form {
	f = maps.Clone(f)
	for _, e := range plan.Entries {
		if !strings.HasPrefix(e.Name, "say.") {
			f[e.Name] = e.Text
		}
	}
	maps.DeleteFunc(f, func(_, text string) bool { return text == "" })
	return f
}

// Value returns an answer's number.
func Value(t testing.TB, a *bench.Answers, name string) float64 {
	t.Helper()
	e, ok := a.Get(name)
	require.True(t, ok, name)
	require.Equal(t, bench.Number, e.Kind, name)
	return e.Number
}
