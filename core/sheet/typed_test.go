package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
	"pintwelve/core/step/balance"
	"pintwelve/core/step/lighten"
	"pintwelve/testdata/jobs"
)

// What was typed in inches, pounds or ounces is answered in them: 25.4 mm and 453.6 g.
func TestFaultsAreToldInTheUnitThatWasTyped(t *testing.T) {
	inches := form.Form{"wheel.drive.diameter": "7.5 in"}
	for field, row := range map[string]struct {
		step string
		job  form.Form
		says string
	}{
		"cut.a.to":           {lighten.Step.Name, inches.With(form.Form{"cut.a.from": "2 in", "cut.a.to": "8 in", "cut.a.depth": "0.25 in"}), "8 in lies outside the wheel: 2 in to 7.5 in will do"},
		"cut.b.rim":          {lighten.Step.Name, inches.With(form.Form{"cut.b.kind": "rim", "cut.b.rim": "7.6 in"}), "7.6 in won’t do: "},
		"lighten.off":        {lighten.Step.Name, inches.With(form.Form{"lighten.off": "20 lb", "cut.a.kind": "face"}), "the wheel weighs no more than 13.59"},
		"wheel.drive.after":  {lighten.Step.Name, form.Form{"wheel.drive.weight": "10 lb", "wheel.drive.after": "11 lb"}, "11 lb is more than the 10 lb it weighed before"},
		"hole.a.radius":      {balance.Step.Name, oneSingle("hole.a.radius", "3.9 in", "hole.a.hour", "6", "hole.a.drill", "0.375 in", "hole.a.depth", "0.3 in"), "whose radius is 3.74 in"},
		"hole.b.radius":      {balance.Step.Name, oneSingle("hole.b.radius", "2 in", "hole.b.hour", "12", "hole.b.drill", "0.375 in", "hole.b.depth", "0.3 in"), "runs into the crankpin: 0.55 in further off will do"},
		"hole.c.depth":       {balance.Step.Name, oneSingle("hole.c.radius", "2.9 in", "hole.c.hour", "6", "hole.c.drill", "0.375 in", "hole.c.depth", "0.9 in"), "1.013 in deep and the wheel 0.787 in thick"},
		"weight.rod":         {balance.Step.Name, oneSingle("weight.small", "5.2 oz", "weight.big", "11 oz", "weight.rod", "14 oz"), "the rod’s ends come to 16.2 oz, more than the whole rod, 14 oz"},
		"zone.out":           {balance.Step.Name, oneSingle("zone.out", "4 in"), "4 in is outside the wheel, whose radius is 3.74 in"},
		"drill.depth":        {balance.Step.Name, oneSingle("drill.depth", "1.2 in", "target", "factor", "target.factor", "55"), "1.2 in is deeper than the wheel is thick: up to 0.787 in will do"},
		"wheel.drive.weight": {lighten.Step.Name, form.Form{"wheel.drive.weight": "100 lb"}, "“100 lb” is out of range"},
	} {
		assert.Contains(t, jobs.Text(Answer(row.job, row.step), "error."+field), row.says)
	}
}
