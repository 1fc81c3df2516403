package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A triple by one thumb, from the empty page to the first move: its pins set by choice and
// placed, which brings a dial on each shaft and two on each inner journal. Counted, printed by -v.
func TestATripleByThumb(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	touch4(h, "5", "1", "4", "8")
	h.Unfold("distances")
	h.Fill("Drive end to the middle of the crankpin", "110")
	h.Fill("Timing end to the middle of the crankpin", "110")
	h.Unfold("throws")
	p.Choose("Throws", "3")
	p.Choose("From pin to pin", "120°")
	h.Taps += 4 // each choice is opened and made
	h.Tap("Set the pins so")
	for n, at := range []string{"210", "310"} {
		h.FillNth(`#throws [name="pin.*.at"]`, n, at)
	}
	h.Unfold("more-dials")
	for n, row := range [][3]string{{"140", "6", "3"}, {"180", "4", "5:30"}, {"240", "7", "7"}, {"280", "5", "9:30"}} {
		h.FillNth(`#more-dials [name="dial.*.at"]`, n, row[0])
		h.FillNth(`#more-dials [name="pass.*.dial.*.tir"]`, n, row[1])
		h.FillNth(`#more-dials [name="pass.*.dial.*.high"]`, n, row[2])
	}
	p.Until(`document.querySelector('#true .headline').textContent.includes(' pin ')`)
	t.Logf("triple, first move: %d taps, %d scrolls, %d fields", h.Taps, h.Scrolls, h.Fields)
	t.Log(p.Text(headline))
	assert.LessOrEqual(t, h.Fields, 20)
	assert.LessOrEqual(t, h.Taps, 28)
}

// A made-up triple is practised on: every dial is read, a move is done and they are read
// anew, and each turns with the crank.
func TestAMadeUpTriple(t *testing.T) {
	p, _ := bench(t)
	p.Unfold()
	p.Choose("It is a crank of", "three, 120°")
	p.Press("Put it on the bench")
	p.Until(`document.querySelector('#true .headline').textContent.includes(' pin ')`)
	turns := `[...document.querySelectorAll('.readings [name$=".turn"]')].filter((c) => !c.closest('[hidden]')).map((c) => c.value)`
	before := Eval[[]string](p, turns)
	assert.Len(t, before, 6)
	swings := `document.querySelectorAll('#spin [data-picture="found"] [data-swing]').length`
	p.Until(swings + ` === 6`)
	turned := `[...document.querySelectorAll('#spin [data-picture="found"] .turns')].map((each) => each.getAttribute('transform')).join()`
	still := Eval[string](p, turned)
	Eval[bool](p, `(() => {
		const slider = document.getElementById('turned');
		slider.value = 4;
		slider.dispatchEvent(new Event('input', { bubbles: true }));
		return true;
	})()`)
	moved := Eval[string](p, turned)
	assert.NotEqual(t, still, moved)
	assert.NotContains(t, moved, "NaN")
	Eval[bool](p, `(scrollTo(0, 0), document.getElementById('did-both').hidden ? document.getElementById('did').click() : document.getElementById('did-both').click(), true)`)
	p.Until(`document.querySelectorAll('#passes .pass').length === 2`)
	p.Until(turns + `.every((text) => text)`)
	assert.NotEqual(t, before, Eval[[]string](p, turns))
	assert.True(t, Eval[bool](p, `document.documentElement.scrollWidth <= document.documentElement.clientWidth`), "nothing hangs over")
}
