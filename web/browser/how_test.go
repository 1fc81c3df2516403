package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestEverySectionSaysWhatItIsFor(t *testing.T) {
	p, _ := bench(t)
	silent := Eval[[]string](p, `[...document.querySelectorAll('main h2')]
		.filter((h) => !h.closest('summary, #paper') && h.textContent !== 'Take care' && h.nextElementSibling?.tagName !== 'P')
		.map((h) => h.textContent)`)
	assert.Empty(t, silent)
}

func TestHowToMeasureStandsOnThePhone(t *testing.T) {
	p, server, b := benchIn(t)
	p.Until(`navigator.serviceWorker.controller !== null`)
	address := server.URL("/crank/#how")
	server.Stop()
	tab := b.Tab()
	tab.Phone()
	tab.WithoutHTTPCache()
	tab.Visit(address)
	tab.Ready()
	assert.Equal(t, 3, Eval[int](tab, `[...document.querySelectorAll('#how figure svg')].filter((e) => e.checkVisibility()).length`))
	assert.Contains(t, tab.Text("#how"), "half the stroke")
	assert.LessOrEqual(t, Eval[float64](tab, `document.documentElement.scrollWidth`), 360.0)
}
