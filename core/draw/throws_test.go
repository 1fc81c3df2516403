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
		Lies:     []Lie{{SlopeT: 2e-4, SlopeN: 1e-4}, {OffsetT: 0.02, OffsetN: 0.04, SlopeT: 5e-4, SlopeN: -1e-3}, {OffsetT: 0.06, OffsetN: -0.04, SlopeT: -6e-4, SlopeN: 4e-4}},
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
		t.Run(name, func(t *testing.T) {
			golden(t, name, Throws(v))
			golden(t, name+"-bend", ThrowsBend(v))
			golden(t, name+"-turn", Turn(turningThrows(&v)))
			apart(t, ThrowsBend(v), ThrowsBendHeight)
		})
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
	v.Prefix, v.Lies, v.Dials = hostile, []Lie{{OffsetT: math.NaN()}, {}, {}}, []ThrowsDial{{hostile, math.Inf(1)}, {hostile, 60}}
	checkPicture(t, Throws(v))
}

// turningThrows is a moment of a turn of a crank, its dials each out a little more.
func turningThrows(v *ThrowsView) TurnView {
	turn := TurnView{Prefix: "t", SeenFrom: v.LeftEnd, Turned: 2, Range: 3, Throws: v}
	for i, d := range v.Dials {
		turn.Dials = append(turn.Dials, TurnDial{d.Letter, "4 thou", 0.5 * float64(i+1), 3 * float64(i)})
	}
	return turn
}

// Where pieces meet at a pin they stand apart as they do in the crank that is drawn, at
// whatever moment of the turn: what lies at 3 from the pin's own 12 shows when that is up.
func TestPiecesTurnAsTheyLie(t *testing.T) {
	v := someThrows["throws-twin"]
	for _, seen := range []Side{Drive, Timing} {
		for turned := 0.0; turned < 12; turned += 0.7 {
			turn := TurnView{SeenFrom: seen, Turned: turned, Throws: &v}
			s, _ := newThrowsSheet(&v, 0)
			angle := turned * math.Pi / 6
			if seen != v.LeftEnd {
				angle = -angle
			}
			for k, l := range v.Lies {
				at := 30.0
				from, _ := v.span(k)
				want := clockUp(l.OffsetT+at*l.SlopeT, l.OffsetN+at*l.SlopeN, angle) * s.factor * s.up
				got := s.lie(&turn, k, from+at)
				assert.InDelta(t, want, clockUp(got.OffsetT, got.OffsetN, turned*math.Pi/6), 1e-9)
			}
		}
	}
}

func clockUp(t, n, turned float64) float64 { return t*math.Cos(turned) - n*math.Sin(turned) }
