package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// aVoice stands in for the phone's: what it is to say is kept.
const aVoice = `((local) => {
	window.spoken = [];
	window.speaking = false;
	window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
	speechSynthesis.getVoices = () => [{ lang: 'en-US', localService: false, name: 'away' }, ...(local ? [{ lang: 'en-GB', localService: true, name: 'here' }] : [])];
	speechSynthesis.speak = (utterance) => { spoken.push(utterance.voice.name + ': ' + utterance.text); window.speaking = true; };
	speechSynthesis.cancel = () => { window.speaking = false; };
	Object.defineProperty(speechSynthesis, 'speaking', { get: () => window.speaking, configurable: true });
	speechSynthesis.dispatchEvent(new Event('voiceschanged'));
	return true;
})`

func TestTheLatheIsSpokenAloudByThePhonesOwnVoice(t *testing.T) {
	p, _ := bench(t)
	touch4(p.Thumb(), "3", "5", "5.5", "7:30")
	p.Press("At the lathe")
	silent := `document.querySelector('[data-lathe="say"]').hidden`
	assert.True(t, Eval[bool](p, aVoice+`(false) && `+silent), "a voice that sends the words away is none")
	assert.False(t, Eval[bool](p, aVoice+`(true) && `+silent))
	p.Press("Next")
	assert.Empty(t, Eval[[]string](p, `spoken`), "not before it is asked")
	p.Press("Say it")
	said := Eval[[]string](p, `spoken`)
	assert.Len(t, said, 1)
	assert.Regexp(t, `^here: Strike the timing wheel at 9; timing needle to 4\.4 thou\. Then squeeze at 7 `, said[0])
	Eval[bool](p, `(window.speaking = false, true)`)
	p.Press("Struck: read again")
	p.Until(`spoken.length === 2`)
	assert.Regexp(t, `^here: Pass 2: read again\. Before: D 3 thou`, Eval[string](p, `spoken[1]`))
	p.Press("Say it") // it is speaking: hush
	assert.False(t, Eval[bool](p, `window.speaking`))
	assert.Equal(t, "false", Eval[string](p, `document.querySelector('[data-lathe="say"]').ariaPressed`))
}

// A phone on its side: two columns, and nothing to scroll to.
func TestOnItsSideThePageTakesTwoColumns(t *testing.T) {
	p, _ := bench(t)
	p.do(chromedp.EmulateViewport(740, 360, chromedp.EmulateMobile, chromedp.EmulateTouch))
	h := p.Thumb()
	touch4(h, "3", "5", "5.5", "7:30")
	h.Tap("Both done: read again")
	assert.Equal(t, "Pass 2: read again.", p.Text(headline))
	touch4(h, "2.5", "5", "3", "7:30")
	assert.Zero(t, h.Scrolls)
	beside := `((left, right) => document.querySelector(left).getBoundingClientRect().right <= document.querySelector(right).getBoundingClientRect().left)`
	assert.True(t, Eval[bool](p, beside+`('#true .headline', '#face svg')`))
	assert.True(t, Eval[bool](p, beside+`('#true .readings', '#face svg')`))
	p.Press("At the lathe")
	assert.True(t, Eval[bool](p, beside+`('#true .far', '.lathe-bar')`))
	for range 4 {
		for _, part := range []string{"#true .far", "#true .acts", "#true .now input", ".lathe-bar"} {
			assert.LessOrEqual(t, Eval[float64](p, `document.querySelector('`+part+`').getBoundingClientRect().bottom`), 360.5, part)
		}
		assert.LessOrEqual(t, Eval[float64](p, `document.querySelector('#true .now input').getBoundingClientRect().bottom`),
			Eval[float64](p, `document.querySelector('.lathe-bar').getBoundingClientRect().top`), "the reading is seen whole")
		p.Press("Next")
	}
	assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollWidth`), 740.0)
}

// On a phone held upright the reading stands above the bar, whatever the sentence and
// the clock face take; the face is wholly in sight too.
func TestTheReadingIsSeenAtTheLathe(t *testing.T) {
	p, _ := bench(t)
	p.Press("At the lathe")
	assert.Equal(t, "next", Eval[string](p, `document.activeElement.dataset.lathe`))
	seen := func(what string) {
		assert.LessOrEqual(t, Eval[float64](p, `(() => {
			const top = document.querySelector('.lathe-bar').getBoundingClientRect().top;
			return document.querySelector('#true .now input').getBoundingClientRect().bottom - top;
		})()`), 4.0, what) // its frame
	}
	face := `document.querySelector('.face svg').getBoundingClientRect().bottom - document.querySelector('.readings').getBoundingClientRect().top`
	seen("nothing read yet")
	assert.LessOrEqual(t, Eval[float64](p, face), 1.0)
	Eval[bool](p, `(document.querySelector('[data-lathe="leave"]').click(), true)`)
	p.Until(`!document.documentElement.classList.contains('at-lathe')`)
	twist(p)
	Eval[bool](p, `(document.querySelector('.acts [data-lathe-open], .below [data-lathe-open]').click(), true)`)
	seen("to strike")
	assert.LessOrEqual(t, Eval[float64](p, face), 1.0)
	Eval[bool](p, `(document.querySelector('[data-lathe="leave"]').click(), true)`)
	fill4(p, "6.5", "2", "4", "9:30")
	Eval[bool](p, `(document.querySelector('.acts [data-lathe-open], .below [data-lathe-open]').click(), true)`)
	seen("to strike and to spread")
	assert.Equal(t, 3, Eval[int](p, `document.querySelectorAll('#true .acts > :not([hidden])').length`))
	assert.LessOrEqual(t, Eval[float64](p, face), 1.0)
	p.Narrow()
	seen("on the smallest phone")
	assert.LessOrEqual(t, Eval[float64](p, face), 1.0)
	assert.GreaterOrEqual(t, Eval[float64](p, `document.querySelector('.face svg').getBoundingClientRect().height`), 130.0)
	Eval[bool](p, `(document.documentElement.style.fontSize = '225%', true)`)
	seen("in text of twice the size")
}
