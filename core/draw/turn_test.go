package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

var turns = map[string]TurnView{
	"turn-found": {Prefix: "a", Turned: 2.5, Drive: 1.5, Timing: -0.8, Range: 3, DriveWords: "4 thou", TimingWords: "2.5 thou"},
	"turn-left":  {Prefix: "b", SeenFrom: Timing, Drive: 0.01, Timing: 0, Range: 0.05, DriveWords: "0.02 mm", TimingWords: "0 mm"},
	"turn-one":   {Prefix: "c", Turned: math.NaN(), Drive: 9, Timing: math.NaN(), Range: 3},
}

func TestTurnGolden(t *testing.T) {
	for name, v := range turns {
		t.Run(name, func(t *testing.T) {
			golden(t, name, Turn(v))
			apart(t, Turn(v), TurnHeight)
		})
	}
}

func TestTurnKeepsItsWordToThePage(t *testing.T) {
	svg := Turn(turns["turn-found"])
	assert.Contains(t, svg, `<g class="needle-d" id="a-needle-d" data-step="50" transform="rotate(75)">`)
	assert.Contains(t, svg, `<g class="needle-t" id="a-needle-t" data-step="50" transform="rotate(-40)">`)
	assert.Contains(t, svg, `<g class="crank" id="a-crank" transform="rotate(75)">`)
	one := Turn(turns["turn-one"])
	assert.Contains(t, one, `id="c-needle-d" data-step="50" transform="rotate(150)"`, "a needle stops at the end of its dial")
	assert.NotContains(t, one, "needle-t")
	checkPicture(t, Turn(TurnView{Prefix: hostile, Range: math.Inf(1), DriveWords: hostile}))
}
