package browser

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// touch4 types a round of readings by touch.
func touch4(h *Thumb, tirD, highD, tirT, highT string) {
	h.Fill("Drive run-out", tirD)
	h.Fill("Drive high at", highD)
	h.Fill("Timing run-out", tirT)
	h.Fill("Timing high at", highT)
}

// topOf scrolls to the top of the page, as a person finds it.
func topOf(p *Page) { Eval[bool](p, `(scrollTo(0, 0), true)`) }

func TestAWholeTruingByTouchNeedsNoScrolling(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	p.WatchShifts()
	touch4(h, "3", "5", "5.5", "7:30")
	assert.Equal(t, "Strike the timing wheel at 9; timing needle to 4.4 thou.", p.Text(headline))
	h.Tap("Both done: read again")
	assert.Equal(t, "Pass 2: read again.", p.Text(headline))
	before := strings.Split(p.Text("#true .before"), "\n")
	require.Len(t, before, 2)
	assert.Equal(t, "Before: D 3 thou, T 5.5 thou.", before[0])
	assert.Regexp(t, `^Hoped for: D [0-9.]+ thou, T [0-9.]+ thou\.$`, before[1])
	assert.Contains(t, Eval[string](p, `document.querySelector('#face desc').textContent`), "Before, D: high spot at 5, run-out 3. Before, T: high spot at 7:30, run-out 5.5.")
	assert.Equal(t, "", p.Value("Drive run-out"))

	touch4(h, "0.5", "5", "1", "7:30")
	assert.Equal(t, "True as it hangs: leave it.", p.Text(headline))
	assert.NotContains(t, Eval[string](p, `document.querySelector('#face desc').textContent`), "Before")
	assert.Equal(t, 9, h.Taps)
	assert.Equal(t, 8, h.Fields)
	assert.Zero(t, h.Scrolls)
	for _, shift := range p.Shifts() {
		assert.Fail(t, "moved", "%+v", shift)
	}
}

func TestAStepOpensWithTheWayToAllOthersInSight(t *testing.T) {
	p, _ := bench(t)
	for _, step := range []string{"order", "jobs", "sheet", "balance", "lighten", "measure", "true", "press"} {
		to(p, step)
		Eval[bool](p, `new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(() => then(true))))`)
		assert.Zero(t, Eval[float64](p, `scrollY`), step)
	}
}

func TestOfTwoMovesTheFirstAloneIsLoggedByOneTap(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	touch4(h, "3", "5", "5.5", "7:30")
	h.Tap("Struck: read again")
	assert.Equal(t, 5, h.Taps)
	assert.Zero(t, h.Scrolls)
	p.Until(`document.querySelector('.pass').textContent.includes('struck timing at 9')`)
	assert.NotContains(t, Eval[string](p, `document.querySelector('.pass').textContent`), "squeezed")
}

func TestSomethingElseOpensFilledInWithWhatWasAdvised(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	touch4(h, "3", "5", "5.5", "7:30")
	h.Tap("Something else")
	says(p, ".pass", "struck timing at 9") // which is answered with what shows of its rows
	rows := Eval[[]string](p, `[...document.querySelectorAll('[data-row="pass.*.done"]')].map((row) =>
		[...row.querySelectorAll('.field')].filter((each) => !each.hidden).map((each) => each.querySelector('input, select').value).join(' '))`)
	require.Len(t, rows, 2)
	assert.Regexp(t, `^strike timing 9 `, rows[0])
	assert.Regexp(t, `^squeeze 7 `, rows[1])
	assert.Equal(t, "strike", Eval[string](p, `document.activeElement.value`), "the first of them is there to be changed")
	topOf(p)
	assert.True(t, Eval[bool](p, `document.getElementById('did').hidden`), "it is logged already")
	h.Tap("As logged: read again")
	assert.Equal(t, "Pass 2: read again.", p.Text(headline))
}

// The page with figures, nothing unfolded: at most three screens of a phone.
func TestTheTruingPageIsThreeScreens(t *testing.T) {
	p, _ := bench(t)
	touch4(p.Thumb(), "3", "5", "5.5", "7:30")
	p.Until(`!document.getElementById('needles').hidden`)
	assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollHeight / 740`), 3.0)
	assert.Equal(t, "between centres · 0.5 thou dials", Eval[string](p, `document.querySelector('[data-say="setup.line"]').innerText`))
	assert.Equal(t, "assumed", Eval[string](p, `document.querySelector('[data-say="distances.line"]').innerText`))
}

func TestTheWayBackLeavesTheViewAtTheLatheNotThePage(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	touch4(h, "3", "5", "5.5", "7:30")
	p.Press("At the lathe")
	assert.Equal(t, "STRIKE timing at 9", p.Text(".far"))
	assert.Contains(t, p.Text(`#true .then`), "Then squeeze at 7 until ")
	p.Press("Both done: read again")
	p.Until(`document.querySelector('.lathe-what').textContent === 'Drive run-out'`)
	assert.Equal(t, "", p.Value("Drive run-out"))
	Eval[bool](p, `(history.back(), true)`)
	p.Until(`!document.documentElement.classList.contains('at-lathe')`)
	assert.Equal(t, "Pass 2: read again.", p.Text(headline))
}

func TestTheCranksNumberStandsInTheTitleBlockAndTheTab(t *testing.T) {
	p, _ := bench(t)
	assert.Equal(t, "Pintwelve", p.Text(".known"))
	to(p, "jobs")
	p.Fill("Job or engine number", "B44-1187")
	assert.Equal(t, "B44-1187", p.Text(".known"))
	assert.Equal(t, "B44-1187 · Pintwelve", Eval[string](p, `document.title`))
}

func TestTrueLeadsOn(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	touch4(h, "0.5", "5", "0.5", "5")
	h.Tap("Centres known good")
	assert.Equal(t, "True: leave it. It is fit to go in.", p.Text(headline))
	h.Tap("Send the sheet")
	p.Until(`location.hash === '#sheet' && !document.getElementById('sheet').hidden`)
	Eval[bool](p, shareSheet)
	h.Tap("Send as a picture")
	p.Until(`window.shared`)
	assert.Zero(t, h.Scrolls, "two taps")
}

// The example opens as found, from the first screen, and is gone through pass by pass.
func TestTheExampleIsSteppedThrough(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	h.Tap("Try one")
	p.Until(`document.getElementById('drive-tir').value === '4.5'`)
	assert.Contains(t, p.Text(headline), "Strike the ")
	h.Tap("On to pass 2")
	p.Until(`document.getElementById('drive-tir').value === '2.5'`)
	quiet()
	h.Tap("On to pass 3")
	p.Until(`document.getElementById('drive-tir').value === '0.5'`)
	assert.Equal(t, "True: leave it. It is fit to go in.", p.Text(headline))
	assert.True(t, Eval[bool](p, `document.getElementById('next-pass').hidden`), "it is the last")
	assert.Zero(t, h.Scrolls)
	assert.False(t, Eval[bool](p, kept(`form.number`)), "looked at, it is no job of his")
}
