package truing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
	"pintwelve/core/step/truing"
)

// The pins of the usual cranks. Source: common practice, no source.
func TestPinsByFiringAngle(t *testing.T) {
	keys := strings.Fields("a b c d e")
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
	}
}

// What stands of a pin stays, and a pin too many goes with what was read at it.
func TestPinsKeepWhatIsThere(t *testing.T) {
	f := form.Form{"pin.x.order": "3", "pin.x.at": "160", "pin.y.order": "5", "pin.y.at": "220", "pass.1.pin.y.gap12": "17", "pass.1.note": "y"}
	assert.Equal(t, form.Form{"pin.x.angle": "180", "pin.y.order": "", "pin.y.at": "", "pass.1.pin.y.gap12": ""}, truing.Pins(f, 2, 180, strings.Fields("a b c d e")))
	more := f.With(truing.Pins(f, 4, 90, strings.Fields("a b c d e")))
	assert.Equal(t, []string{"x", "y", "c"}, more.Rows("pin"))
	assert.Equal(t, "160", more["pin.x.at"])
}
