package browser

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
)

// put types a text into the n-th control of a selector.
func put(p *Page, selector string, n int, text string) {
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
	p.Until(`document.querySelector(` + strconv.Quote(headline) + `).textContent.includes('can’t tell at which pin')`)
	for n, row := range [][3]string{{"140", "8", "3"}, {"155", "7", "3:10"}} {
		p.Press("Add a place")
		p.Until(`document.querySelectorAll('#more-dials [name$=".at"]').length === ` + strconv.Itoa(n+1))
		put(p, `#more-dials [name$=".at"]`, n, row[0])
		put(p, `#more-dials [name$=".tir"]`, n, row[1])
		put(p, `#more-dials [name$=".high"]`, n, row[2])
	}
	p.Until(`document.querySelector(` + strconv.Quote(headline) + `).textContent.includes(' pin ')`)
	p.Until(`document.querySelector('#throws [data-picture="joint"] svg')`)
	assert.Contains(t, p.Text(`#throws [data-say="throws.sit"]`), "Pin 2: ")
	assert.True(t, Eval[bool](p, `document.documentElement.scrollWidth <= innerWidth`), "nothing hangs over")
}
