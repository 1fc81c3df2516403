package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a job costs a thumb, printed by -v: taps, scrolls and fields, each way as a
// person goes it, and held to what was reached.
func TestWhatAJobCostsAThumb(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	spent := func(what string, taps, scrolls, fields int) {
		t.Logf("%-22s %2d taps, %d scrolls, %d fields", what, h.Taps, h.Scrolls, h.Fields)
		assert.LessOrEqual(t, h.Taps, taps, "%s: taps", what)
		assert.LessOrEqual(t, h.Scrolls, scrolls, "%s: scrolls", what)
		assert.LessOrEqual(t, h.Fields, fields, "%s: fields", what)
		h = p.Thumb()
	}
	touch4(h, "3", "5", "5.5", "7:30")
	assert.Contains(t, p.Text(headline), "Strike the timing wheel at 9")
	spent("first answer", 4, 0, 4)

	h.Tap("Struck: read again")
	assert.Equal(t, "Pass 2: read again.", p.Text(headline))
	spent("only the strike done", 1, 0, 0)

	touch4(h, "2", "5", "2.5", "7:30")
	assert.NotContains(t, p.Text(headline), "read again")
	spent("the pass after it", 4, 0, 4)

	h.Tap("Struck: read again")
	touch4(h, "0.5", "5", "1", "7:30")
	assert.Equal(t, "True as it hangs: leave it.", p.Text(headline))
	spent("next pass, with done", 5, 0, 4)

	h.Tap("Centres known good")
	h = p.Thumb()
	Eval[bool](p, shareSheet)
	h.Tap("Send the sheet")
	p.Until(`!document.getElementById('sheet').hidden`)
	h.Tap("Send as a picture")
	p.Until(`window.shared`)
	spent("sheet sent, from true", 2, 0, 0)

	name(p, "B44-1187", "", "R. Lind")
	p.Press("Start another crank")
	p.Until(`!document.getElementById('true').hidden`)
	p.Reload()
	p.Ready()
	h = p.Thumb()
	h.Tap("Pintwelve: the order of the work")
	h.TapJob("B44-1187")
	p.Until(`!document.getElementById('true').hidden && document.getElementById('drive-tir').value === '0.5'`)
	spent("yesterday's job", 2, 0, 0)
}

// stepSize is how many screens of a phone a step is, and how many fields are in sight,
// nothing unfolded but what unfolds itself.
type stepSize struct {
	Screens float64
	Fields  int
}

const sizeOfStep = `new Promise((then) => setTimeout(() => then({
	Screens: document.documentElement.scrollHeight / innerHeight,
	Fields: [...document.querySelectorAll('.step:not([hidden]) :is(input, select, textarea)')].filter((each) => each.type !== 'checkbox' && each.checkVisibility()).length,
}), 120))`

// How long each step is. The sheets of the bench are held to what they ask: blank,
// the most fields and screens before an answer; filled by the example, screens.
func TestHowLongEachStepIs(t *testing.T) {
	p, _ := bench(t)
	lengths := func() map[string]stepSize {
		all := map[string]stepSize{}
		for _, step := range Eval[[]string](p, `[...document.querySelectorAll('.step')].map(({ id }) => id)`) {
			to(p, step)
			all[step] = Eval[stepSize](p, sizeOfStep)
		}
		return all
	}
	empty := lengths()
	example(p, "true")
	filled := lengths()
	for _, step := range Eval[[]string](p, `[...document.querySelectorAll('.step')].map(({ id }) => id)`) {
		t.Logf("%-8s %4.1f screens and %2d fields empty, %4.1f and %2d filled", step, empty[step].Screens, empty[step].Fields, filled[step].Screens, filled[step].Fields)
	}
	assert.LessOrEqual(t, filled["true"].Screens, 3.0)
	for step, fields := range map[string]int{"balance": 10, "lighten": 5, "measure": 8, "press": 6, "cases": 9, "found": 8} {
		assert.LessOrEqual(t, empty[step].Fields, fields, "%s: fields", step)
		assert.LessOrEqual(t, empty[step].Screens, 2.0, "%s: screens", step)
		assert.LessOrEqual(t, filled[step].Screens, 4.0, "%s filled: screens", step)
	}
}
