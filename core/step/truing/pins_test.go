package truing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/truing"
)

// rowKeys are for five pins and ten dials.
const rowKeys = "a b c d e d1 d2 d3 d4 d5 d6 d7 d8 d9 d10"

// The pins of the usual cranks. Source: common practice, no source.
func TestPinsByFiringAngle(t *testing.T) {
	keys := strings.Fields(rowKeys)
	for _, row := range []struct {
		throws, apart int
		want          string
	}{
		{2, 180, "180"}, {2, 360, "0"}, {2, 270, "270"}, {2, 90, "90"}, {3, 120, "120 240"},
		{4, 180, "180 180 0"}, {4, 90, "90 180 270"}, {6, 120, "120 240 240 120 0"}, {1, 180, ""},
	} {
		f := form.Form{}.With(truing.Pins(form.Form{}, row.throws, row.apart, keys))
		var angles []string
		for _, key := range f.Rows("pin") {
			angles = append(angles, f["pin."+key+".angle"])
		}
		assert.Equal(t, row.want, strings.Join(angles, " "), "%+v", row)
		assert.Len(t, f.Rows("dial"), 2*(row.throws-1), "two on each inner journal")
	}
}

// What stands of a pin stays, and a pin too many goes with what was read at it.
func TestPinsKeepWhatIsThere(t *testing.T) {
	f := form.Form{"pin.x.order": "3", "pin.x.at": "160", "pin.y.order": "5", "pin.y.at": "220", "pass.1.pin.y.gap12": "17", "pass.1.note": "y", "dial.p.order": "4", "dial.p.at": "130", "dial.q.order": "7", "pass.1.dial.q.tir": "2"}
	assert.Equal(t, form.Form{"pin.x.angle": "180", "pin.y.order": "", "pin.y.at": "", "pass.1.pin.y.gap12": ""}, truing.Pins(f, 2, 180, strings.Fields(rowKeys)))
	more := f.With(truing.Pins(f, 4, 90, strings.Fields(rowKeys)))
	assert.Equal(t, []string{"x", "y", "c"}, more.Rows("pin"))
	assert.Equal(t, "160", more["pin.x.at"])
	assert.Equal(t, []string{"p", "q", "d3", "d4", "d5", "d6"}, more.Rows("dial"))
	one := truing.Pins(more, 1, 180, strings.Fields(rowKeys))
	assert.Equal(t, "", one["dial.d3.order"])
	assert.Contains(t, one, "dial.d3.order", "a place where nothing stands goes")
	assert.NotContains(t, one, "dial.p.order")
	assert.NotContains(t, one, "dial.q.order", "a reading stays")
}

// The places stand on their journals until they are measured, from whichever end, and no more than
// assumed: a third of the way from pin to pin, and two.
func TestTheUsualDialsStandOnTheInnerJournals(t *testing.T) {
	for _, left := range []string{"drive", "timing"} {
		right := map[string]string{"drive": "timing", "timing": "drive"}[left]
		f := form.Form{"left": left, "seen": left, left + ".pin": "100", right + ".pin": "100"}
		f = f.With(truing.Pins(f, 3, 120, strings.Fields(rowKeys)))
		assert.Equal(t, left, f["dial.d1.half"])
		f["pin.a.at"], f["pin.b.at"] = "190", "310"
		f["dial.d4.half"] = right // told from the other end
		a := sheet.Answer(f, truing.First.Name)
		for key, at := range map[string]string{"d1": "130 mm", "d2": "160 mm", "d3": "230 mm", "d4": "140 mm"} {
			e, _ := a.Get("assumed.dial." + key + ".at")
			assert.Equal(t, at, e.Text, key)
		}
	}
}
