package form

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/unit"
	"pintwelve/testdata/links"
)

// most is what no motorcycle crank, nor what is weighed, turned or measured with
// it, reaches, by the kind of quantity in its base unit: half a metre and a
// little, a heavy V-twin's crank with clutch and rotor. Common practice, no source.
var most = map[unit.Kind]float64{
	unit.Number: 4000, unit.Length: 1200, unit.Mass: 60000, unit.Angle: 360, unit.Hour: 12, unit.Speed: 25000,
	unit.Temperature: 250, unit.Percent: 150, unit.Time: 86400, unit.Stress: 2500, unit.Density: 20000, unit.Torque: 20000, unit.Power: 300, unit.Taper: 100,
}

// No field takes what no crank has: 21464697 g was a wheel.
func TestNoFieldTakesWhatNoCrankHas(t *testing.T) {
	fields := Job.Fields()
	for i := range fields {
		f := &fields[i]
		if f.Kind != Quantity && f.Kind != List {
			continue
		}
		bound, known := most[f.Unit.Kind()]
		assert.True(t, known, "%s: no bound on its kind", f.Pattern)
		assert.Less(t, f.Min, f.Max, f.Pattern)
		assert.LessOrEqual(t, f.Max, bound, f.Pattern)
		assert.GreaterOrEqual(t, f.Min, -bound, f.Pattern)
		if f.Unit.Kind() != unit.Temperature && f.Unit.Kind() != unit.Angle && f.Min < 0 {
			assert.Equal(t, -f.Max, f.Min, "%s: to either side alike", f.Pattern)
		}
		name := Fill(f.Pattern, []string{"a", "b", "c", "d"})
		if f.Default != "" {
			assert.Empty(t, Check(Form{name: f.Default}), "%s: its stand-in", f.Pattern)
		}
		assert.NotEmpty(t, Check(Form{name: "21464697"}), f.Pattern)
	}
}

// What stands in the cranks of the trade, with room on both sides: from a moped's
// to a large V-twin's. Common practice, no source.
func TestFieldsTakeTheCranksOfTheTrade(t *testing.T) {
	for name, texts := range map[string][]string{
		"throw": {"19.5", "42", "62"}, "rim": {"70", "190", "9 1/4 in"}, "wheel.drive.diameter": {"60", "240"}, "wheel.drive.width": {"8", "45"},
		"wheel.drive.weight": {"400", "9 lb", "11 kg"}, "rod.centres": {"80", "8 in"}, "weight.piston": {"45", "900"}, "weight.rod": {"70", "1600"},
		"weight.crankpin": {"60", "900"}, "drive.at": {"10", "180"}, "drive.pin": {"25", "260"}, "tolerance": {"0.5", "2", "5", "0.02 mm"},
		"bigend.pin": {"12", "1.375 in", "50"}, "found.width": {"9", "1 1/4 in"}, "main.a.bore": {"10", "50"}, "main.a.outside": {"26", "110"},
		"lighten.top": {"3000", "14000"}, "lighten.idle": {"350", "1800"}, "duty.power": {"0.8", "120"}, "float.faces": {"50", "300"},
		"joint.a.length": {"8", "35"}, "joint.a.hub": {"22", "75"}, "joint.a.taper": {"5", "8", "20"}, "balance.whole": {"700", "22 kg"},
		"pass.1.drive.tir": {"0", "0.1", "120"}, "pass.1.drive.turn": {"−3 0 250"}, "drive.division": {"0.05", "0.5", "0.01 mm", "0.001 mm"},
	} {
		for _, text := range texts {
			assert.Empty(t, Check(Form{name: text}), "%s %s", name, text)
		}
	}
}

// Links that were once given open, and no figure of a real job in them is out of
// its range now.
func TestGivenJobsAreInRange(t *testing.T) {
	for _, g := range links.All(t) {
		if !strings.HasPrefix(g.Name, "every-") { // a 1 in every field
			for _, problem := range Check(g.Job) {
				assert.NotContains(t, problem.Text, "range", "%s: %s", g.Name, problem.Name)
			}
		}
	}
}
