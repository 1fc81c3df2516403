package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// answerOf is the big answer of a step of the work.
func answerOf(step string) string { return "#" + step + " .headline" }

// goTo presses a step in the order of work, from wherever the page stands.
func goTo(p *Page, step string) {
	p.Press("Pintwelve: the order of the work")
	p.Press(step)
}

// The job once, as he works: as found, split, measure, press up, nuts, cases.
func TestFromAsFoundToTheCases(t *testing.T) {
	p, _ := bench(t)
	goTo(p, "As found")
	assert.Equal(t, "Look it over before you split it.", p.Text(answerOf("found")))
	p.Choose("Cracks, by dye: webs at the pin, shaft roots, keyways", "good")
	p.Choose("Threads and nuts", "not good")
	assert.Contains(t, p.Text("#found"), "the nut is what draws a taper up")
	assert.NotContains(t, p.Text("#found"), "That part is scrap")
	p.Fill("Side play, by feelers", "12")
	assert.Contains(t, p.Text("#found"), "Side play 12.0 ± 0.5 thou: right.")

	goTo(p, "Measure")
	p.Fill("Crankpin", "25.000 25.000 25.000")
	p.Fill("Bush, inside", "25.030")
	p.Fill("Bush, outside", "32.000")
	p.Fill("Rod’s eye", "31.990")
	assert.Contains(t, p.Text("#measure"), "Pin in bush 1.2 ± 0.1 thou: right.")
	assert.Contains(t, p.Text("#measure .error:not([hidden])"), "32 mm doesn’t go into 31.99 mm")
	p.Fill("Rod’s eye", "32.030")
	assert.Equal(t, "Right, as far as it is measured.", p.Text(answerOf("measure")))
	p.Press("Add a joint")
	p.Fill("Pin or shaft where it sits mm", "25.040")
	p.Fill("Eye in the wheel mm", "25.000")
	assert.Contains(t, p.Text(answerOf("measure")), "not past yield. What must it hold?")
	p.Fill("Power", "20")
	p.Fill("At a speed of", "6000")
	assert.Contains(t, p.Text("#joints"), "It must hold 127 Nm: 2.3 times over.")
	assert.True(t, Eval[bool](p, `document.querySelector('[data-picture="joint.*.bite"] svg desc').textContent.includes('within the limits')`))

	goTo(p, "Press up")
	p.Fill("Drive wheel’s width at the pin", "30")
	p.Fill("Timing wheel’s width at the pin", "30")
	p.Fill("Rod’s width at the big end", "17.6")
	assert.Equal(t, "Stop the press at 77.96 mm over the wheels.", p.Text(answerOf("press")))
	assert.Contains(t, p.Text("#press .caution"), "eye protection")

	goTo(p, "Cases")
	p.Press("Add a main bearing")
	p.Fill("Bearing’s bore mm", "25")
	p.Fill("Bearing’s outside mm", "52")
	p.Fill("Housing, as measured mm", "51.97")
	assert.Contains(t, p.Text("#mains"), "Heat the case to 68 °C to drop the bearing in;")
	p.Fill("Housing meant to be (ISO 286)", "J5")
	assert.Contains(t, p.Text("#mains"), "the standard has no J5 at 52 mm")
	p.Fill("Between the case faces", "100")
	p.Fill("Over the crank, shoulder to shoulder", "98.9")
	p.Fill("Shims you have, sizes", "0.1 0.5 0.9")
	assert.Contains(t, p.Text("#end-float"), "End float so shimmed")

	p.Press("Pintwelve: the order of the work")
	p.Press("As found: done")
	p.Press("Balance: done") // split and measured are ticked by the figures
	next := p.Text(answerOf("order"))
	assert.Contains(t, next, "Next: ")
	p.Until(kept(`form['order.balance'] === 'yes' && form['float.shims'] === '0.1 0.5 0.9'`))
	p.Reload()
	p.Ready()
	assert.Equal(t, next, p.Text(answerOf("order")))
}

func TestNoStepOfTheFittingIsWiderThanASmallPhone(t *testing.T) {
	p, server := bench(t)
	p.Narrow()
	for _, step := range []string{"order", "found", "measure", "press", "cases"} {
		p.Visit("about:blank")
		p.Visit(server.URL("/crank/#" + step))
		p.Ready()
		for _, button := range []string{"Add a joint", "Add a main bearing"} {
			if Eval[bool](p, `[...document.querySelectorAll('#`+step+` button')].some((b) => b.textContent === '`+button+`')`) {
				p.Press(button)
			}
		}
		assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollWidth`), 320.0, step)
		low := Eval[[]string](p, `[...document.querySelectorAll('#`+step+` :is(input, select, button)')]
			.filter((e) => e.getClientRects().length && e.getBoundingClientRect().height < 44).map((e) => e.name || e.textContent)`)
		assert.Empty(t, low, "controls too low for a thumb in %s", step)
	}
}
