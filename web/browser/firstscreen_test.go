package browser

import (
	"net/http"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/page"
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

// firstFrame is what stands as the page is painted for the first time, and when, in
// milliseconds from the start of its load.
type firstFrame struct {
	Stands []string
	At     float64
}

// watchFirstFrame has a page's next load note its first frame: what asks for a frame
// before there is anything to paint is called back as the first is made.
func watchFirstFrame(p *Page) {
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `
		requestAnimationFrame(() => { globalThis.firstFrame = { Stands: ` + standing + `, At: performance.now() }; });`})
}

// standsAtFirstPaint wants what stands now to have stood, to the letter and the pixel, at the first paint.
func standsAtFirstPaint(t *testing.T, p *Page) {
	t.Helper()
	p.Until(`performance.getEntriesByName('first-contentful-paint').length`)
	first := Eval[firstFrame](p, `globalThis.firstFrame`)
	assert.Equal(t, Eval[[]string](p, standing), first.Stands)
	painted := Eval[map[string]float64](p, `Object.fromEntries(performance.getEntriesByType('paint').map(({ name, startTime }) => [name, startTime]))`)
	for name, at := range painted {
		assert.GreaterOrEqual(t, at, first.At, "%s came before the frame that was looked at", name)
	}
}

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

// A new visitor's first screen stands whole at the first paint, before the core has
// come, and still when it comes.
func TestTheFirstScreenStandsBeforeTheCoreHasCome(t *testing.T) {
	s := Serve(t, "/crank/", Built(t))
	come := holdBack(t, s)
	p := Launch(t).Tab()
	p.Phone()
	watchFirstFrame(p)
	p.Visit(s.URL("/crank/"))
	p.Until(`document.readyState === 'complete'`)
	standsAtFirstPaint(t, p)
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
		watchFirstFrame(each)
		each.Visit(s.URL("/crank/"))
		each.Until(`document.readyState === 'complete'`)
		standsAtFirstPaint(t, each)
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
	says(other, ".pass", "As found") // the rest of the answer
	assert.Equal(t, before, Eval[[]string](other, standing))
}

// A screen is kept whole: not where the first of an answer is of the last figure, and the rest of one before.
func TestNoScreenIsKeptOfTwoForms(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	p.Until(`Object.entries(localStorage).some(([, text]) => text.includes('"pass.1.timing.high":"9"'))`)
	kept := Eval[[]string](p, `(async () => {
		const kept = [];
		const { setItem } = Storage.prototype;
		Storage.prototype.setItem = function (key, text) {
			if (key.endsWith(' screen')) kept.push(JSON.parse(text).form['pass.1.drive.tir']);
			return setItem.call(this, key, text);
		};
		const field = document.querySelector('[name="pass.*.drive.tir"]');
		const type = (text) => { field.value = text; field.dispatchEvent(new Event('input', { bubbles: true })); };
		const wait = (ms) => new Promise((then) => setTimeout(then, ms));
		field.focus();
		type('5');
		await wait(300); // the rest has come, and its screen is to be kept soon
		type('6');
		for (const from = performance.now(); performance.now() - from < 300;); // a slow phone: the screen falls due before the rest
		await wait(1000);
		return kept;
	})()`)
	assert.Equal(t, []string{"6"}, kept)
}
