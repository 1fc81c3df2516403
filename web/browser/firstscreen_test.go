package browser

import (
	"net/http"
	"sync"
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

// holdBack has the core come when the function it gives is called.
func holdBack(t *testing.T, s *Server) (come func()) {
	whole := Built(t)["core.wasm"]
	held := make(chan struct{})
	s.Break("/crank/core.wasm", func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "application/wasm")
		select {
		case <-held:
		case <-r.Context().Done():
		}
		w.Write(whole)
	})
	return sync.OnceFunc(func() { close(held) })
}

// A new visitor's first screen stands whole before the core has come, and still
// when it comes.
func TestTheFirstScreenStandsBeforeTheCoreHasCome(t *testing.T) {
	s := Serve(t, "/crank/", Built(t))
	come := holdBack(t, s)
	p := Launch(t).Tab()
	p.Phone()
	p.Visit(s.URL("/crank/"))
	p.Until(`document.readyState === 'complete'`)
	assert.Equal(t, "Turn the crank once and read a dial.", p.Text(headline))
	before := Eval[[]string](p, standing)
	assert.Greater(t, len(before), 50)
	come()
	p.Ready()
	p.Until(`document.getElementById('offline').textContent`)
	assert.Equal(t, before, Eval[[]string](p, standing))
	assert.Zero(t, Eval[float64](p, shifted))
}

// So does the last first screen of the job on the bench, in its tab and in a new one.
func TestTheLastScreenOfAJobStandsBeforeTheCoreHasCome(t *testing.T) {
	p, s, b := benchIn(t)
	p.WithoutHTTPCache()
	twist(p)
	p.Until(kept(`form['pass.1.timing.high'] === '9'`))
	p.Until(`Object.entries(localStorage).some(([, text]) => text.includes('"pass.1.timing.high":"9"'))`)
	forget(t, p)
	come := holdBack(t, s)
	other := b.Tab()
	other.WithoutHTTPCache()
	other.Phone()
	for _, each := range []*Page{p, other} {
		each.Visit(s.URL("/crank/"))
		each.Until(`document.readyState === 'complete'`)
		assert.Contains(t, each.Text(headline), twisted)
		assert.Equal(t, "4", each.Value("Drive run-out"))
	}
	before := Eval[[]string](other, standing)
	come()
	for _, each := range []*Page{p, other} {
		each.Ready()
		each.Until(`document.getElementById('offline').textContent`)
		assert.Zero(t, Eval[float64](each, shifted))
	}
	assert.Equal(t, before, Eval[[]string](other, standing))
}
