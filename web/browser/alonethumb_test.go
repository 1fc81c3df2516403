package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A twin by one thumb as the trade does it: its halves true alone, each in a pass, then
// joined and read whole. Counted, printed by -v.
func TestATwinsHalvesByThumb(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	h.Unfold("distances")
	for _, side := range []string{"Drive", "Timing"} {
		h.Fill(side+" end to the dial", "65")
		h.Fill(side+" end to the middle of the crankpin", "110")
	}
	h.Unfold("throws")
	h.Tap("Set the pins so")
	h.FillNth(`#throws [name="pin.*.at"]`, 0, "210")
	h.FillNth(`#throws [name="pin.*.angle"]`, 0, "180")
	topOf(p)
	h.Choose("This pass reads", "pin 1 alone")
	touch4(h, "4", "5", "3", "8")
	assert.Equal(t, "Pin 1 alone: measure where its dials and its pin stand.", p.Text(headline))
	h.Fill("Timing end to the middle of its pin", "50")
	h.Fill("Timing end to its dial", "30")
	p.Until(`document.querySelector('#true .headline').textContent.includes('the drive wheel') || document.querySelector('#true .headline').textContent.includes('the timing wheel')`)
	topOf(p)
	p.Until(`!document.getElementById('did').hidden`)
	if Eval[bool](p, `document.getElementById('did-both').hidden`) {
		h.Tap(p.Text("#did"))
	} else {
		h.Tap(p.Text("#did-both"))
	}
	touch4(h, "0.5", "5", "0.5", "8")
	p.Until(`document.querySelector('#true .headline').textContent.startsWith('Pin 1 alone is true')`)
	h.Tap("Read pin 2 alone")
	assert.Equal(t, "2", Eval[string](p, `document.getElementById('alone').dataset.key`))
	touch4(h, "0.5", "5", "0.5", "8")
	h.Fill("Drive end to the middle of its pin", "50")
	h.Fill("Drive end to its dial", "30")
	p.Until(`document.querySelector('#true .headline').textContent.includes('Join the pieces')`)
	topOf(p)
	h.Tap("Joined: read the whole")
	p.Until(`document.getElementById('alone').hidden`)
	assert.Empty(t, Eval[string](p, `document.querySelector('.reads select[name="pass.*.of"]').value`), "the whole crank")
	t.Logf("a twin's halves: %d taps, %d scrolls, %d fields", h.Taps, h.Scrolls, h.Fields)
	p.Unfold()
	p.Until(`document.querySelectorAll('#passes .pass').length === 4`)
	says(p, "#passes", "Pin 1 alone, pass 2")
	says(p, "#passes", "Pin 2 alone, as found")
	assert.True(t, Eval[bool](p, `document.documentElement.scrollWidth <= document.documentElement.clientWidth`), "nothing hangs over")
	assert.LessOrEqual(t, h.Taps, 40)
	assert.LessOrEqual(t, h.Fields, 30)
}
