package sheet

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/step/balance"
	"pintwelve/core/step/fitting"
	"pintwelve/core/step/lighten"
	"pintwelve/core/unit"
)

// What would do is told by what is measured, never by what the rooms guard their sums
// with: no part of a crank is 5 m long.
func TestNoBoundIsOfNothing(t *testing.T) {
	metres := regexp.MustCompile(`(^|[^.0-9])[0-9]{4,}(\.[0-9]+)? mm`)
	random := rand.New(rand.NewPCG(5, 6))
	told := 0
	for range 400 {
		f := figuresAtTheEnds(random)
		for _, part := range [...]bench.Step{lighten.Step, balance.Step, fitting.Found, fitting.Measure, fitting.PressUp, fitting.Cases} {
			for _, e := range Answer(f, part.Name).Entries {
				if strings.HasPrefix(e.Name, "error.") && !strings.HasPrefix(e.Name, "error.lighten.tyre") {
					told++
					assert.NotRegexp(t, metres, e.Text, e.Name)
				}
			}
		}
	}
	assert.Greater(t, told, 1000)
}

// figuresAtTheEnds is a job of most figures at an end of what their fields take, or
// somewhere between.
func figuresAtTheEnds(random *rand.Rand) form.Form {
	f := form.Form{}
	fields := form.Job.Fields()
	for i := range fields {
		field := &fields[i]
		name := form.Fill(field.Pattern, []string{"a", "b"})
		part := []float64{0, 1, random.Float64(), random.Float64() * random.Float64()}[random.IntN(4)]
		figure := unit.Figures(field.Min+part*(field.Max-field.Min), field.Unit, 0)
		switch {
		case random.IntN(3) == 0:
		case field.Kind == form.Quantity:
			f[name] = figure
		case field.Kind == form.List:
			f[name] = figure + " " + figure
		case field.Kind == form.Choice:
			f[name] = field.Choices[random.IntN(len(field.Choices))]
		}
	}
	return f
}
