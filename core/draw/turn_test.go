package draw

import (
	"math"
	"math/rand"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

var twisted = bends["bend-twist"]

var turns = map[string]TurnView{
	"turn-found": {Prefix: "a", Turned: 2.5, Dials: []TurnDial{{"D", "4 thou", 2, 11}, {"T", "2.5 thou", 1.2, 5}}, Range: 3},
	"turn-left":  {Prefix: "b", SeenFrom: Timing, Dials: []TurnDial{{"D", "0.02 mm", 0.01, 0}, {"T", "0 mm", 0, 0}}, Range: 0.05},
	"turn-bend":  {Prefix: "d", Turned: 1, Dials: []TurnDial{{"D", "4 thou", 2, 11}, {"T", "2.5 thou", 1.2, 5}}, Range: 3, Bend: &twisted},
	"turn-one":   {Prefix: "c", Turned: math.NaN(), Dials: []TurnDial{{"D", "", 9, 0}, {"T", "", math.NaN(), 0}}, Range: 3},
}

func TestTurnGolden(t *testing.T) {
	for name, v := range turns {
		t.Run(name, func(t *testing.T) {
			golden(t, name, Turn(v))
			height := float64(TurnHeight)
			if v.Bend != nil {
				height = TurnBendHeight
			}
			apart(t, Turn(v), height)
		})
	}
}

func TestTurnKeepsItsWordToThePage(t *testing.T) {
	svg := Turn(turns["turn-found"])
	assert.Contains(t, svg, `id="a-needle-1" data-swing="2 11 50" transform="rotate(70.71)">`)
	assert.Contains(t, svg, `id="a-needle-2" data-swing="1.2 5 50" transform="rotate(-42.43)">`)
	assert.Contains(t, svg, `id="a-crank" transform="rotate(75)">`)
	one := Turn(turns["turn-one"])
	assert.Contains(t, one, `id="c-needle-1" data-swing="9 0 50" transform="rotate(150)"`, "a needle stops at the end of its dial")
	assert.NotContains(t, one, "needle-2")
	checkPicture(t, Turn(TurnView{Prefix: hostile, Range: math.Inf(1), Dials: []TurnDial{{hostile, hostile, 1, 1}}}))
}

// A dial has round figures on it, and no swing runs off it.
func TestADialIsLetteredInRoundFigures(t *testing.T) {
	for swing, letters := range map[float64]string{2.06066: "±2.5", 2.5: "±2.5", 2.51: "±3", 0.0523: "±0.06", 0.99: "±1", 7.1: "±8", 0: "±1"} {
		assert.Contains(t, Turn(TurnView{Range: swing, Dials: make([]TurnDial, 1)}), ">"+letters+"<", "%v", swing)
	}
	rng := rand.New(rand.NewSource(5))
	for range 1000 {
		swing := math.Pow(10, 5*rng.Float64()-3)
		most := dialRange(swing)
		assert.GreaterOrEqual(t, most, swing*(1-1e-8))
		assert.LessOrEqual(t, most, swing*1.7)
		assert.LessOrEqual(t, len(tick(most)), 6, "%v", most)
	}
}

// The shafts move as the needles do: a half's place at a dial, by what the page
// is given of it, is the offset there of the crank that is drawn.
func TestTheBendTurnsWithTheNeedles(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for range 50 {
		far := func(most float64) float64 { return most * (2*rng.Float64() - 1) }
		v := BendView{Length: 240, PinMiddle: 120, Rim: 90, Throw: 42,
			Left: Lie{far(0.05), far(0.05), far(4e-4), far(4e-4)}, Right: Lie{far(0.05), far(0.05), far(4e-4), far(4e-4)}}
		v.LeftEnd = Side(rng.Intn(2))
		turned, at := 12*rng.Float64(), 175.0
		svg := Turn(TurnView{Prefix: "x", SeenFrom: v.LeftEnd, Turned: turned, Bend: &v})
		got := regexp.MustCompile(`id="x-half-b"[^>]*transform="translate\(0 ([^)]*)\) rotate\(([^)]*)\)"`).FindStringSubmatch(svg)
		down, _ := strconv.ParseFloat(got[1], 64)
		deg, _ := strconv.ParseFloat(got[2], 64)
		s := newBendSheet(v, 62, turnAxis)
		// Where the axis of the right half stands at the dial, towards 12 and 3; its
		// share towards the plunger as the crank has turned.
		towards12 := v.Right.OffsetT + v.Right.SlopeT*(at-v.PinMiddle)
		towards3 := v.Right.OffsetN + v.Right.SlopeN*(at-v.PinMiddle)
		wants := math.Hypot(towards12, towards3) * math.Cos(math.Atan2(towards3, towards12)+turned*math.Pi/6)
		up := -down/s.scale - math.Tan(deg*math.Pi/180)*(at-v.PinMiddle)
		assert.InDelta(t, wants*s.factor, up, 0.05)
		other := Turn(TurnView{Prefix: "x", SeenFrom: v.LeftEnd ^ 1, Turned: -turned, Bend: &v})
		assert.Contains(t, other, got[0][strings.Index(got[0], "transform"):], "turned the other way, as it is seen from the other end")
	}
}
