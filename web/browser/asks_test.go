package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/link"
)

// benchOf opens the page with a job on the bench.
func benchOf(t *testing.T, job form.Form) *Page {
	t.Helper()
	p, server := bench(t)
	put(p, server, job)
	return p
}

// put puts a copy of a job on the bench, as it comes by a link.
func put(p *Page, server *Server, job form.Form) {
	p.t.Helper()
	code, err := link.Encode(job)
	require.NoError(p.t, err)
	p.Visit("about:blank")
	p.Visit(server.URL("/crank/#" + code))
	p.Ready()
	p.Press("Keep a copy")
	to(p, "true")
}

// apart is a crank read twice, nothing logged between.
func apart() form.Form {
	return form.Form{
		"pass.1.order": "1", "pass.1.drive.tir": "8", "pass.1.drive.high": "3", "pass.1.timing.tir": "8", "pass.1.timing.high": "9",
		"pass.2.order": "2", "pass.2.drive.tir": "3", "pass.2.drive.high": "9", "pass.2.timing.tir": "3", "pass.2.timing.high": "3",
	}
}

func fits(t *testing.T, p *Page) {
	t.Helper()
	Eval[bool](p, `(scrollTo(0, 0), true)`)
	assert.LessOrEqual(t, Eval[float64](p, `document.querySelector('.readings').getBoundingClientRect().bottom`), 740.0, p.Text(headline))
	assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollWidth`), 360.0)
}

// What was done is said by one tap of the record, and stands in it.
func TestWhatCameBetweenIsSaidOnThePage(t *testing.T) {
	p := benchOf(t, apart())
	p.Choose("Between the readings before and these", "the nuts were drawn up")
	p.Until(`document.querySelector('.pass').textContent.includes('the nuts were drawn up')`)
	p.Choose("Between the readings before and these", "all was done as said")
	p.Until(`document.querySelector('.pass').textContent.includes('struck drive at 3')`)
}

func TestAClampIsLoggedAsItIsWorked(t *testing.T) {
	p, _ := bench(t)
	fill4(p, "6", "6", "6", "6")
	p.Choose("A clamp or wedge is worked by", "how far the gap closes or opens")
	assert.Contains(t, Eval[string](p, `document.querySelector('[data-say="truing.hard"]').textContent`), "thou under the clamp")
	p.Press("Squeezed: read again")
	says(p, ".pass", "thou under the clamp")
	Eval[bool](p, `(document.querySelector('.pass [data-look]').click(), true)`)
	assert.Contains(t, Eval[string](p, `document.querySelector('[name="pass.*.done.*.closing"]').value`), "thou")
}

func TestPressureIsAskedToBeReadAgain(t *testing.T) {
	p, _ := bench(t)
	fill4(p, "6", "6", "6", "6")
	Eval[bool](p, `(document.querySelector('#check').open = true)`)
	p.Choose("Tailstock backed off to just snug", "the needles moved")
	assert.Contains(t, p.Text(headline), "It was pressure")
	assert.True(t, Eval[bool](p, `document.getElementById('did').hidden`))
	fits(t, p)
}

// Rounds that differ with nothing logged: the first screen asks, one tap answers.
func TestTheFirstScreenAsksWhatWasDone(t *testing.T) {
	p := benchOf(t, apart())
	assert.Equal(t, "What was done after the first readings?", p.Text(headline))
	fits(t, p)
	p.Press("All as said")
	assert.Contains(t, p.Text(headline), "Strike the drive wheel at 9")
	p.Until(`document.querySelector('.pass').textContent.includes('struck drive at 3')`)
	p.Until(kept(`form['pass.2.since'] === 'said'`))
	p.Press("Undo")
	p.Press("Nuts drawn up")
	p.Until(kept(`form['pass.2.since'] === 'nuts'`))
}

// What else was done is said in a row on the pass before; blank, it counts as not known.
func TestSomethingElseOpensARowToSayIt(t *testing.T) {
	p := benchOf(t, apart())
	p.Press("Something else")
	p.Until(kept(`form['pass.2.since'] === 'else'`))
	assert.Equal(t, "pass.*.done.*.kind", Eval[string](p, `document.activeElement.name`))
	says(p, ".pass", "something was done that isn’t logged")
	p.Choose("Move", "squeeze")
	p.Type("At hour", "6")
	p.Until(`document.querySelector('.pass').textContent.includes('squeezed at 6')`)
	assert.NotContains(t, p.Text(".pass"), "isn’t logged")
	for range 3 {
		p.Press("Undo")
	}
	p.Until(kept(`!form['pass.2.since'] && !Object.keys(form).some((name) => name.includes('.done.'))`))
}

// At the lathe there is no room for a row, and the view stays.
func TestSomethingElseIsNotedAtTheLathe(t *testing.T) {
	p := benchOf(t, apart())
	p.Press("At the lathe")
	p.Press("Something else")
	p.Until(kept(`form['pass.2.since'] === 'else' && !Object.keys(form).some((name) => name.includes('.done.'))`))
	assert.True(t, Eval[bool](p, `document.querySelector('[data-lathe="leave"]').checkVisibility()`))
}

func TestTheCentresAreAskedForOnce(t *testing.T) {
	p, _ := bench(t)
	fill4(p, "1", "3", "0.5", "3")
	assert.Equal(t, "True as it hangs: leave it.", p.Text(headline))
	fits(t, p)
	p.Press("Read close to the centres")
	assert.Equal(t, 2, Eval[int](p, `[...document.querySelectorAll('[name="dial.*.at"]')].filter((c) => c.checkVisibility()).length`))
	p.Press("Undo")
	p.Press("Centres known good")
	assert.Equal(t, "True: leave it. It is fit to go in.", p.Text(headline))
	assert.False(t, Eval[bool](p, `document.getElementById('near-centres').checkVisibility()`))
}

func TestAStopFitsTheFirstScreen(t *testing.T) {
	p := benchOf(t, form.Form{
		"pass.1.order": "1", "pass.1.drive.tir": "8", "pass.1.drive.high": "3", "pass.1.timing.tir": "8", "pass.1.timing.high": "9",
		"pass.1.done.a.hour": "3", "pass.2.done.a.hour": "3", "pass.2.done.a.strength": "0.4",
		"pass.2.order": "2", "pass.2.drive.tir": "13", "pass.2.drive.high": "3", "pass.2.timing.tir": "13", "pass.2.timing.high": "9",
		"pass.3.order": "3", "pass.3.drive.tir": "15.5", "pass.3.drive.high": "3", "pass.3.timing.tir": "15.5", "pass.3.timing.high": "9",
	})
	assert.Contains(t, p.Text(headline), "Stop: ")
	assert.True(t, Eval[bool](p, `document.getElementById('did').hidden`))
	fits(t, p)
}

func TestATapSaysThatTheNeedlesStayed(t *testing.T) {
	p, _ := bench(t)
	fill4(p, "6", "6", "6", "6")
	p.Press("They stayed")
	p.Until(kept(`form['pass.1.tailstock'] === 'steady'`))
	assert.False(t, Eval[bool](p, `document.querySelector('[data-say="ask.pressure"]').checkVisibility()`))
}
