package sheet

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/step/lighten"
	"pintwelve/testdata/jobs"
)

func markup(t *testing.T, step string) string {
	text, err := os.ReadFile("../../web/steps/" + step + ".html")
	require.NoError(t, err)
	return string(text)
}

// A bush's bore is what runs on the pin, its outside what runs in the rod's eye.
func TestTheBushIsCalledBySideAndNotBySlip(t *testing.T) {
	page := markup(t, "measure")
	for field, label := range map[string]string{"bigend.bore": "Bush, inside", "bigend.bush": "Bush, outside", "bigend.bore90": "Bush, inside, across", "bigend.bush90": "Bush, outside, across"} {
		assert.Regexp(t, `<field name="`+regexp.QuoteMeta(field)+`"[^>]*>`+label+`<`, page)
	}
}

// Holes in one wheel have their walls in the table, whatever is cut on the other: a ring
// of 150 mm in a wheel of 190 with a drill of 10 leaves (190 − 150 − 10)/2 to the rim.
func TestAWallOfOneWheelIsShownWhateverTheOtherHas(t *testing.T) {
	page := markup(t, "lighten")
	for _, holed := range []string{"drive", "timing"} {
		other := map[string]string{"drive": "timing", "timing": "drive"}[holed]
		a := Answer(form.Form{"wheel.drive.diameter": "190", "cut.a.kind": "rim", "cut.a.rim": "180", "cut.a.wheel": other,
			"cut.b.kind": "holes", "cut.b.holes": "6", "cut.b.circle": "150", "cut.b.drill": "10", "cut.b.wheel": holed}, lighten.Step.Name)
		require.Empty(t, a.Faults())
		assert.Equal(t, "15", jobs.Said(a, "lighten."+holed+".hole_to_edge_mm"))
		for _, wall := range []string{"hole_to_edge_mm", "hole_to_bore_mm", "hole_to_hole_mm"} {
			assert.Equal(t, "yes", jobs.Said(a, "lighten.has."+wall), wall)
			assert.Contains(t, page, `data-if="lighten.has.`+wall+`"`)
			assert.Contains(t, page, `data-say="lighten.`+holed+`.`+wall+`"`)
		}
	}
}

// A caution stands where the work can hurt, as a caution and not as a hint.
func TestCautionsStandWhereTheWorkHurts(t *testing.T) {
	for _, row := range [][2]string{
		{"balance", `<p class="caution" data-when="knife.what=whole\|wheels\|drive\|timing">It can roll off:`},
		{"lighten", `<p class="caution">It can jump off:`},
		{"measure", `<p class="caution" data-if="joint.\*.holds">Tonnes under a press:`},
		{"measure", `<p class="caution" data-say="joint.\*.iron">`},
		{"press", `<p class="caution" data-say="press.joint.\*.iron">`},
		{"press", `<p class="caution">Press work:`},
	} {
		assert.Regexp(t, row[1], markup(t, row[0]))
	}
}
