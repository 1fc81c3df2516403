package draw

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

var someThrows = map[string]ThrowsView{
	"throws-twin": {
		Prefix: "t", LeftEnd: Drive, Length: 260, Rim: 95, Chosen: 1, Work: 1,
		Pins:     []ThrowsPin{{100, 42, 0}, {160, 42, 6}},
		Rise:     [][2]float64{{0, 0.02}, {0.02, 0.05}, {0.06, 0}},
		Dials:    []ThrowsDial{{"D", 60}, {"D2", 122}, {"D3", 138}, {"T", 200}},
		Supports: []Fixture{{CentreAt, 0}, {CentreAt, 260}},
	},
	"throws-triple": {
		Prefix: "t", LeftEnd: Timing, Length: 420, Rim: 70, Work: -1,
		Pins:     []ThrowsPin{{120, 32, 0}, {210, 32, 4}, {300, 32, 8}},
		Dials:    []ThrowsDial{{"T", 80}, {"T2", 165}, {"D2", 255}, {"D", 350}},
		Supports: []Fixture{{VBlockAt, 60}, {BearingAt, 370}},
	},
}

func TestThrowsGolden(t *testing.T) {
	for name, v := range someThrows {
		t.Run(name, func(t *testing.T) { golden(t, name, Throws(v)) })
	}
}

// Each pin has a place for a finger, and these share the whole width out.
func TestEachThrowCanBeTouched(t *testing.T) {
	assert.Equal(t, 3, strings.Count(Throws(someThrows["throws-triple"]), "data-pin="))
}

func TestFiguresThatMakeNoCrankDrawNone(t *testing.T) {
	assert.Empty(t, Throws(ThrowsView{}))
	v := someThrows["throws-twin"]
	v.Pins = []ThrowsPin{{160, 42, 0}, {100, 42, 6}}
	assert.Empty(t, Throws(v), "pins out of order")
	v.Pins = []ThrowsPin{{100, math.NaN(), 0}}
	assert.Empty(t, Throws(v))
	v = someThrows["throws-twin"]
	v.Prefix, v.Rise, v.Dials = hostile, [][2]float64{{math.NaN()}, {}, {}}, []ThrowsDial{{hostile, math.Inf(1)}, {hostile, 60}}
	checkPicture(t, Throws(v))
}
