package browser

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
)

// standing is what stands on the page and where, element by element.
const standing = `[...document.querySelectorAll('header *, main *')]
	.filter((e) => e.checkVisibility() && !e.closest('svg *'))
	.map((e) => {
		const { x, y, width, height } = e.getBoundingClientRect();
		return [e.tagName, e.id, ...[x, y, width, height].map(Math.round), e.placeholder ?? '', e.children.length ? '' : e.textContent.trim()].join(' ');
	})`

// shifted is how far the page's layout has shifted since its load, by the
// Layout Instability API.
const shifted = `new Promise((then) => {
	let sum = 0;
	new PerformanceObserver((list) => { for (const { value } of list.getEntries()) sum += value; }).observe({ type: 'layout-shift', buffered: true });
	requestAnimationFrame(() => setTimeout(() => then(sum), 100));
})`

// A new visitor's first screen stands whole before the core has come, and still
// when it comes.
func TestTheFirstScreenStandsBeforeTheCoreHasCome(t *testing.T) {
	s := Serve(t, "/crank/", Built(t))
	whole := Built(t)["core.wasm"]
	come := make(chan struct{})
	s.Break("/crank/core.wasm", func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "application/wasm")
		select {
		case <-come:
		case <-r.Context().Done():
		}
		w.Write(whole)
	})
	p := Launch(t).Tab()
	p.Phone()
	p.Visit(s.URL("/crank/"))
	p.Until(`document.readyState === 'complete'`)
	assert.Equal(t, "Turn the crank once and read a dial.", p.Text(headline))
	before := Eval[[]string](p, standing)
	assert.Greater(t, len(before), 50)
	close(come)
	p.Ready()
	p.Until(`document.getElementById('offline').textContent`)
	assert.Equal(t, before, Eval[[]string](p, standing))
	assert.Zero(t, Eval[float64](p, shifted))
}
