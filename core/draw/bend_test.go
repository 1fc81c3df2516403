package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

var bends = map[string]BendView{
	"bend-twist": {
		Prefix: "s", LeftEnd: Drive, Length: 246.31, PinMiddle: 115.787, Rim: 79.869, Throw: 38.571,
		Left: Lie{OffsetN: 0.02, SlopeN: 0.00018}, Right: Lie{OffsetN: -0.025, SlopeN: 0.0002},
		Stations: []Fixture{{CentreAt, 0}, {CentreAt, 246.31}, {DialAt, 54.5}, {DialAt, 177.5}, {BearingAt, 30}, {BearingAt, 205}},
	},
	"bend-gap": {
		Prefix: "s", LeftEnd: Timing, Length: 260, PinMiddle: 130, Rim: 90, Throw: 45,
		Left: Lie{OffsetT: -0.03, SlopeT: -0.00025}, Right: Lie{OffsetT: -0.03, SlopeT: 0.00025},
		Stations: []Fixture{{VBlockAt, 30}, {VBlockAt, 230}, {DialAt, 60}, {DialAt, 200}},
	},
	"bend-nothing": {Prefix: "s"},
}

func TestBendGolden(t *testing.T) {
	for name, v := range bends {
		t.Run(name, func(t *testing.T) {
			svg := Bend(v)
			golden(t, name, svg)
		})
	}
}

func TestBendFactorIsRoundAndShowsTheBend(t *testing.T) {
	for _, row := range []struct{ offset, slope, want float64 }{
		{0, 0, 0}, {0.02, 0, 500}, {0, 0.0005, 200}, {0.5, 0, 20}, {1e-4, 0, 100000}, {20, 0, 1},
	} {
		v := BendView{Rim: 80, Left: Lie{OffsetT: row.offset, SlopeN: row.slope}}.tidy()
		assert.Equal(t, row.want, v.factor(), "%+v", row)
	}
}

func TestBendWithoutNumbersIsACrankAllTheSame(t *testing.T) {
	nan := math.NaN()
	checkPicture(t, Bend(BendView{Prefix: hostile, Length: nan, PinMiddle: math.Inf(1), Rim: -1, Throw: nan, Factor: nan,
		Left: Lie{OffsetT: nan}, Right: Lie{SlopeN: math.Inf(-1)}, Stations: []Fixture{{DialAt, nan}, {BearingAt, -4}}}))
}
