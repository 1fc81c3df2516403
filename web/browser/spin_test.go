package browser

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The example's dials stand 75 mm from the ends of a crank of 2 × 120 mm, its
// throw is 42 mm. Under each dial the shaft that is drawn rises and falls as the
// needle does, as many times too big in one picture as in the other.
func TestTheBendTurnsWithTheNeedles(t *testing.T) {
	p, _ := bench(t)
	example(p, "true")
	Eval[bool](p, `(document.querySelectorAll('#passes .pass [data-look]')[1].click(), true)`)
	p.Until(`document.querySelector('#left-half-b')`)
	moments := Eval[[]struct{ Reading, Up float64 }](p, `(() => {
		const slider = document.getElementById('turned');
		const all = [];
		const part = (id) => document.getElementById(id).getAttribute('transform').match(/-?\d*\.?\d+(?:e-?\d+)?/g).map(Number);
		for (let hours = 0; hours < 12; hours += 0.5) {
			slider.value = hours;
			slider.dispatchEvent(new Event('input', { bubbles: true }));
			for (const which of ['found', 'left']) {
				const lies = ['half-a', 'half-b', 'crankpin'].map((id) => Number(document.getElementById(which + '-' + id).dataset.lie.split(' ')[0]));
				const scale = (lies[2] - (lies[0] + lies[1]) / 2) / 42;
				for (const [half, needle, from] of [['a', '1', -45], ['b', '2', 45]]) {
					const [, down, degrees] = part(which + '-half-' + half);
					const dial = document.getElementById(which + '-needle-' + needle);
					all.push({
						Reading: part(dial.id)[0] / dial.dataset.swing.split(' ')[2],
						Up: -down - Math.tan(degrees * Math.PI / 180) * from * scale,
					});
				}
			}
		}
		return all;
	})()`)
	require.Len(t, moments, 24*4)
	ratio, most := 0.0, 0.0
	for _, m := range moments {
		if math.Abs(m.Reading) > most {
			most, ratio = math.Abs(m.Reading), m.Up/m.Reading
		}
	}
	require.Greater(t, most*ratio, 3.0, "units of the paper: a bend that can be seen")
	for _, m := range moments {
		assert.InDelta(t, m.Reading*ratio, m.Up, 0.03*most*ratio)
	}
	p.Prefer("prefers-reduced-motion", "reduce")
	p.Until(`document.getElementById('turn-itself').hidden`)
}
