package unit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestParseList(t *testing.T) {
	for _, row := range []struct {
		text string
		def  Unit
		want []float64
	}{
		{"0 .5 1 1.5", MM, []float64{0, 0.5, 1, 1.5}},
		{"0 .5 1 1.5 thou", MM, []float64{0, 0.0127, 0.0254, 0.0381}},
		{"0 .5 1 1.5thou", MM, []float64{0, 0.0127, 0.0254, 0.0381}},
		{"0, .5, 1, 1.5", MM, []float64{0, 0.5, 1, 1.5}},
		{"0,5 1 1,5", MM, []float64{0.5, 1, 1.5}},
		{"0,5, 1, 1,5", MM, []float64{0.5, 1, 1.5}},
		{"0,5;1;1,5;", MM, []float64{0.5, 1, 1.5}},
		{"0;1;2 µm", MM, []float64{0, 0.001, 0.002}},
		{"0\n1\t2\r\n3\u00a04", MM, []float64{0, 1, 2, 3, 4}},
		{"0,\n1,\n2,\n", MM, []float64{0, 1, 2}},
		{"1,-2,+3,.5", MM, []float64{1, -2, 3, 0.5}},
		{"1 −2", MM, []float64{1, -2}},
		{"½ 1½ 2", Thou, []float64{0.0127, 0.0381, 0.0508}},
		{"0; 1/2; 1", Thou, []float64{0, 0.0127, 0.0254}},
		{"0 thou, 1 thou, 2 thou", MM, []float64{0, 0.0254, 0.0508}},
		{"10 20 lbf ft", NewtonMetre, []float64{13.558179483314004, 27.116358966628008}},
		{"12 3 4:30 9", OClock, []float64{0, 3, 4.5, 9}},
		{"12 4:30 o'clock", OClock, []float64{0, 4.5}},
		{"0 90 135 deg", OClock, []float64{0, 3, 4.5}},
		{"7", MM, []float64{7}},
	} {
		got, err := ParseList(row.text, row.def, 6)
		if assert.NoError(t, err, row.text) {
			assert.Equal(t, row.want, got, row.text)
		}
	}
}

func TestParseListRefuses(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"", `“(nothing)” is not a list of numbers: write 0 .5 1 .5`},
		{" ; ", `entry 1: “(nothing)” stands between two separators: write 0 .5 1 .5`},
		{"1, , 2", `entry 2: “(nothing)” stands between two separators: write 0 .5 1 .5`},
		{"thou", `entry 1: “thou” is not a figure in thou, mm or inches: write 41.3 mm or 1 5/8 in`},
		{"0 1 2x", `entry 3: “2x” is not a figure in thou, mm or inches: write 41.3 mm or 1 5/8 in`},
		{"0 1,234", `entry 2: “1,234” could be 1.234 or 1234: write 1.234 (or 1,2340) or 1234`},
		{"0,1,2", `entry 1: “0,1,2” has more than one comma or point: write the number without thousands marks`},
		{"0 1 5/8 2", `entry 2: “1 5/8” could be one number or two: write decimals`},
		{"0 ½", `entry 1: “0 ½” could be one number or two: write decimals`},
		{"1 thou 2", `entry 1: “1 thou” has a unit of its own: write one unit, behind the last number`},
		{"1 mm 2 thou", `entry 1: “1 mm” has a unit of its own: write one unit, behind the last number`},
		{"1 thou 2 3 thou", `entry 3: “3 thou” has a unit, but not every number before it has: write one unit, behind the last number`},
		{"1 2 kg", `entry 2: “2 kg” is a weight, not a figure in thou, mm or inches: write 41.3 mm or 1 5/8 in`},
		{"1 - 2", `entry 2: “-” is not a figure in thou, mm or inches: write 41.3 mm or 1 5/8 in`},
		{"1 2 3 4", `entry 4: “4” is one too many: write 3 numbers at most`},
		{strings.Repeat(" ", 3*maxText+1), `“                        …” is too long: write 3 numbers at most`},
	} {
		got, err := ParseList(row.text, MM, 3)
		assert.EqualError(t, err, row.want)
		assert.Nil(t, got)
	}
}

func TestTheUnitThatAListWasTypedIn(t *testing.T) {
	for _, row := range []struct {
		text string
		def  Unit
		want Unit
	}{
		{"0 .5 1", Thou, Thou}, {"0 .5 1 mm", Thou, MM}, {"0.985", MM, MM}, {"0.985 in", MM, Inch}, {"1 in 2 in", MM, Inch},
		{"1 in 2", MM, MM}, {"", MM, MM}, {"1 apple", Thou, Thou}, {"29 bhp", Kilowatt, BrakeHorsepower},
	} {
		assert.Equal(t, row.want, UnitOf(row.text, row.def, 3), row.text)
	}
}
