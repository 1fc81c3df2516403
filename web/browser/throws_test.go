package browser

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/testdata/jobs"
)

// typeInto types a text into the n-th control of a selector.
func typeInto(p *Page, selector string, n int, text string) {
	Eval[bool](p, `(() => {
		const control = document.querySelectorAll(`+strconv.Quote(selector)+`)[`+strconv.Itoa(n)+`];
		control.value = `+strconv.Quote(text)+`;
		control.dispatchEvent(new Event('input', { bubbles: true }));
		return true;
	})()`)
}

// A twin: its second pin and two places on the journal between are added, and the page
// says at which pin to work, with that pin's own clock face below.
func TestATwinIsRead(t *testing.T) {
	p, _ := bench(t)
	p.Phone()
	twist(p)
	p.Press("Add a crankpin")
	p.Until(`document.querySelectorAll('#throws [name$=".angle"]').length === 1`)
	p.Until(`document.querySelector(` + strconv.Quote(headline) + `).textContent === 'Measure where each crankpin stands.'`)
	for selector, text := range map[string]string{`#throws [name$=".at"]`: "160", `#throws [name$=".angle"]`: "180", `#distances [name="drive.pin"]`: "100", `#distances [name="timing.pin"]`: "100"} {
		typeInto(p, selector, 0, text)
	}
	p.Until(`document.querySelector(` + strconv.Quote(headline) + `).textContent.includes('can’t tell at which pin')`)
	for n, row := range [][3]string{{"120", "8", "3"}, {"140", "7", "3:10"}} {
		p.Press("Add a place")
		p.Until(`document.querySelectorAll('#more-dials [name$=".at"]').length === ` + strconv.Itoa(n+1))
		typeInto(p, `#more-dials [name$=".at"]`, n, row[0])
		typeInto(p, `.readings [name="pass.*.dial.*.tir"]`, n, row[1])
		typeInto(p, `.readings [name="pass.*.dial.*.high"]`, n, row[2])
	}
	p.Until(`document.querySelector(` + strconv.Quote(headline) + `).textContent.includes(' pin ')`)
	says(p, `#pieces [data-say="throws.sit"]`, "Pin 2: ")
	p.Until(`document.querySelectorAll('#more-dials [name$=".tir"]')[1].value === '7'`)
	names := Eval[string](p, `[...document.querySelectorAll('.readings .dial:not([hidden]) .wide input')].map((c) => c.labels[0].textContent.trim()).join(', ')`)
	assert.Equal(t, "Drive run-out, Timing run-out, D2 run-out thou, D3 run-out thou", names)
	for _, pin := range []string{"1", "2"} {
		Eval[bool](p, `(document.querySelector('.elevation').scrollIntoView({ block: 'center', behavior: 'instant' }), true)`)
		p.Tap(`.elevation [data-pin="`+pin+`"]`, 0.5, 0.5)
		p.Until(`document.querySelector('.pins [data-pin="` + pin + `"]').getAttribute('aria-pressed') === 'true'`)
		assert.Contains(t, p.Text(`[data-say="throws.look"]`), "Pin "+pin+", 12 on this face: ")
	}
	high := p.Value("Drive high at")
	p.Tap(`[data-picture="face"]`, 0.7, 0.5)
	p.Until(`document.getElementById('notice').textContent.includes('this pin’s own')`)
	assert.Equal(t, high, p.Value("Drive high at"), "the face of another pin sets no reading's hour")
	p.Press("Pin 1")
	p.Until(`document.querySelector('.pins [data-pin="1"]').getAttribute('aria-pressed') === 'true'`)
	assert.True(t, Eval[bool](p, `document.documentElement.scrollWidth <= document.documentElement.clientWidth`), "nothing hangs over")
}

// The number of throws and how far apart the pins stand are chosen, and undone as one.
func TestPinsAreSetByChoice(t *testing.T) {
	p, _ := bench(t)
	p.Phone()
	p.Unfold()
	p.Choose("Throws", "3")
	p.Choose("From pin to pin", "120°")
	p.Press("Set the pins so")
	angles := `[...document.querySelectorAll('#throws [name$=".angle"]')].map((c) => c.value).join(' ')`
	p.Until(angles + ` === '120 240'`)
	p.Until(`document.querySelector('.elevation svg')`)
	places := `document.querySelectorAll('#more-dials [name="dial.*.at"]').length`
	p.Until(places + ` === 4`)
	p.Choose("Throws", "2")
	p.Choose("From pin to pin", "180°")
	p.Press("Set the pins so")
	p.Until(angles + ` === '180'`)
	p.Until(places + ` === 2`)
	Eval[bool](p, `(document.getElementById('undo').click(), true)`)
	p.Until(angles + ` === '120 240'`)
	assert.True(t, Eval[bool](p, `document.getElementById('notice').hidden`), "no second Undo for what is undone")
	assert.True(t, Eval[bool](p, `document.documentElement.scrollWidth <= document.documentElement.clientWidth`), "nothing hangs over")
}

// The view at the lathe goes through every dial of a crank of several throws, and its
// clock face sets the hour of the one that it is at.
func TestTheLatheGoesThroughEveryDial(t *testing.T) {
	p, _ := bench(t)
	p.Phone()
	p.Unfold()
	p.Press("Set the pins so")
	p.Until(`document.querySelector('.readings [name="pass.*.dial.*.tir"]')`)
	twist(p)
	Eval[bool](p, `(scrollTo(0, 0), document.querySelector('.acts [data-lathe-open]').click(), true)`)
	p.Until(`document.querySelector('.lathe-what').textContent.startsWith('D2 run-out')`)
	Eval[bool](p, `new Promise((done) => setTimeout(() => done(true), 700))`)
	p.Press("One division more")
	p.Press("Next")
	p.Until(`document.querySelector('.lathe-what').textContent === 'D2 high at'`)
	p.Tap(`[data-picture="face"] svg`, 0.72, 0.47)
	p.Until(`document.querySelector('.readings [name="pass.*.dial.*.high"]').value === '2:45'`)
	assert.Equal(t, "3", Eval[string](p, `document.querySelector('[name="pass.*.drive.high"]').value`))
	assert.Greater(t, Eval[float64](p, `document.querySelector('.readings .now input').getBoundingClientRect().height`), 60.0, "the reading shows")
	p.Until(`document.querySelector('#more-dials [name$=".high"]').value === '2:45'`)
}

// A twin is weighed throw by throw: what is asked, the pin that is touched, its holes, and what both leave.
func TestATwinIsBalanced(t *testing.T) {
	p, server := bench(t)
	put(p, server, jobs.Knife("drive.pin", "100", "timing.pin", "100", "pin.b.order", "1", "pin.b.at", "200", "pin.b.angle", "180", "target", "factor", "target.factor", "55"))
	to(p, "balance")
	says := `document.querySelector('#balance .answer').textContent`
	p.Until(says + `.includes('Can each throw be weighed by itself')`)
	p.Choose("Each throw can be weighed by itself, its two wheels on its pin", "yes")
	p.Until(says + `.includes('Pin 2') && ` + says + `.includes('Now the knife-edges')`)
	typeInto(p, `#balance [name="pin.*.whole.hung"]`, 0, "147")
	p.Until(says + `.includes('Pin 1') && ` + says + `.includes('at 6, ')`)
	p.Press("Pin 2")
	p.Until(says + `.includes('Pin 2') && ` + says + `.includes('at 12, ')`)
	assert.Equal(t, "Pin 2", Eval[string](p, `document.querySelector('#balance .pins [aria-pressed="true"]').textContent`))
	p.Press("Plan the holes")
	p.Until(planSaid + ` === 'Planned.'`)
	assert.Contains(t, balanceSays(p), "With the holes drawn: 55")
	assert.Contains(t, p.Text(`#balance [data-say="balance.shake"]`), "primary couple 119.4 N·m")
	p.Press("Pin 1")
	p.Until(`document.querySelector('#holes [data-say="hole.*.said"]').textContent.startsWith('Pin 2: 1.')`)
	assert.True(t, Eval[bool](p, `document.documentElement.scrollWidth <= document.documentElement.clientWidth`), "nothing hangs over")
	p.Press("Pin 2")
	p.Press("Drilled: weigh again")
	p.Until(says + `.includes('Pin 2') && ` + says + `.includes('Now the knife-edges')`)
	assert.Equal(t, "", Eval[string](p, `document.querySelector('#balance [name="pin.*.whole.hung"]').value`))
	assert.Equal(t, "202", Eval[string](p, `document.querySelector('#balance [name="knife.whole.hung"]').value`), "the other throw was not drilled")
	assert.Equal(t, "50", Eval[string](p, `document.querySelector('#balance [name="pin.*.came"]').value`))
}
