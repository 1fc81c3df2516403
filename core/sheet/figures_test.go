package sheet

import (
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/step/balance"
	"pintwelve/core/step/lighten"
	"pintwelve/core/unit"
	"pintwelve/testdata/jobs"
)

// What the page says of a figure is the figure.
func TestWhatIsSaidIsTheFigure(t *testing.T) {
	a := Answer(jobs.Typed("4", "6", "4", "6"), "")
	across, plus := jobs.Value(t, a, "gap.across_rim_mm"), jobs.Value(t, a, "gap.plus_mm")
	assert.Contains(t, jobs.Text(a, "say.sit.gap"), unit.Figures(across, unit.Thou, 0.5*jobs.Thou)+" ± "+unit.Format(plus, unit.Thou, 0.5*jobs.Thou))
	assert.Empty(t, jobs.Text(a, "say.ask.unlike"), "one round of readings differs from nothing")

	// 295.68 kg·cm²: a wheel's inertia has four figures.
	a = Answer(jobs.Single(nil), lighten.Step.Name)
	assert.InDelta(t, 0.02956815, jobs.Value(t, a, "lighten.drive.before_kgm2"), 1e-8)
	assert.Equal(t, "295.7", jobs.Text(a, "say.lighten.drive.before_kgm2"))
}

func TestTheSectionNamesTheDiametersOfItsCuts(t *testing.T) {
	for _, row := range []struct {
		cut       form.Form
		diameters []string
	}{
		{form.Form{"cut.1.from": "62", "cut.1.to": "158", "cut.1.depth": "3"}, []string{"⌀ 62 mm", "⌀ 158 mm"}},
		{form.Form{"cut.1.kind": "holes", "cut.1.holes": "6", "cut.1.circle": "134", "cut.1.drill": "12"}, []string{"⌀ 134 mm"}},
	} {
		picture := jobs.Text(Answer(jobs.Single(row.cut), lighten.Step.Name), "picture.lighten.drive")
		for _, diameter := range row.diameters {
			assert.Contains(t, picture, ">"+diameter+"<")
		}
	}
}

// Past top dead centre a pin that goes forward takes the wheels' weight behind it
// back: the force, at first straight up, leans to the rear, which is drawn at the left.
func TestTheForceGoesRoundAsTheEngineTurns(t *testing.T) {
	for turns, leansLeft := range map[string]bool{"": true, "forward": true, "backward": false} {
		picture := jobs.Text(Answer(jobs.Knife("frame.turns", turns), balance.Step.Name), "picture.loop")
		start := regexp.MustCompile(`class="ln hd" d="M([0-9.]+) [0-9.]+L([0-9.]+) `).FindStringSubmatch(picture)
		require.Len(t, start, 3)
		top, err := strconv.ParseFloat(start[1], 64)
		require.NoError(t, err)
		next, err := strconv.ParseFloat(start[2], 64)
		require.NoError(t, err)
		assert.Equal(t, leansLeft, next < top, turns)
	}
}

func TestTheForceIsToldAtFourSpeeds(t *testing.T) {
	a := Answer(jobs.Knife("frame.speeds", "1000 2000 3000 4000"), balance.Step.Name)
	assert.Empty(t, jobs.Text(a, "error.frame.speeds"))
	assert.NotEmpty(t, jobs.Text(a, "say.peak.3"))
	a = Answer(jobs.Knife("frame.speeds", "1000 2000 3000 4000 5000"), balance.Step.Name)
	assert.Contains(t, jobs.Text(a, "error.frame.speeds"), "4 numbers at most")
}

// A wheel is drawn for its holes where it has some or is to have some.
func TestWheelsAreDrawnForTheirHoles(t *testing.T) {
	for _, row := range []struct {
		more          []string
		drive, timing bool
	}{
		{[]string{"target", "factor", "target.factor", "66", "plan.wheels", "drive"}, true, false},
		{[]string{"target", "factor", "target.factor", "66", "plan.wheels", "timing"}, false, true},
		{[]string{
			"target", "factor", "target.factor", "66", "plan.wheels", "drive",
			"hole.a.wheel", "timing", "hole.a.radius", "60", "hole.a.hour", "2", "hole.a.drill", "10", "hole.a.depth", "10",
		}, true, true},
	} {
		a := Answer(jobs.Knife(row.more...), balance.Step.Name)
		assert.Equal(t, row.drive, jobs.Text(a, "picture.holes.drive") != "", "%v", row.more)
		assert.Equal(t, row.timing, jobs.Text(a, "picture.holes.timing") != "", "%v", row.more)
	}
}
