package browser

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestFaultsInEachEngine does to the site what a bad host or a full phone may, as
// far as it can be done from outside an engine: the version that ran runs, with the job.
func TestFaultsInEachEngine(t *testing.T) {
	inEachEngine(t, func(t *testing.T, p hands) {
		s := Serve(t, "/crank/", Built(t))
		brokenFirstLoads(t, p, s)
		p.Fill("Drive run-out", "4")
		p.Fill("Drive high at", "3")
		p.Fill("Timing run-out", "4")
		p.Fill("Timing high at", "9")
		p.Until(kept(`form['pass.1.timing.high'] === '9'`))
		p.Until(`navigator.serviceWorker.controller !== null`)
		brokenUpdates(t, p, s)
		fullStore(t, p)
		backAndForward(t, p, s)
	})
}

func brokenFirstLoads(t *testing.T, p hands, s *Server) {
	for _, f := range []struct {
		path    string
		handler http.HandlerFunc
	}{
		{"/crank/core.wasm", faults["an error"]}, {"/crank/core.wasm", half}, {"/crank/core.wasm", noProgram}, {"/crank/main.js", faults["an error"]},
	} {
		s.Break(f.path, f.handler)
		p.Visit(s.URL("/crank/"))
		p.Until(`document.querySelector('.loading').checkVisibility({ visibilityProperty: true }) ||
			document.getElementById('notice-text').textContent.includes('could not start')`)
		p.Until(`(await ` + cacheNames + `).length === 0`)
		s.Break(f.path, nil)
	}
	p.Visit("about:blank")
	p.Visit(s.URL("/crank/"))
	p.Ready()
}

func brokenUpdates(t *testing.T, p hands, s *Server) {
	for _, fault := range []http.HandlerFunc{faults["an error"], half, faults["another file"]} {
		s.Put("/crank/", nextVersion(t))
		s.Break("/crank/core.wasm", fault)
		p.Until(`!await ` + look)
		s.Stop()
		p.Visit("about:blank")
		p.Visit(s.URL("/crank/"))
		p.Ready()
		assert.Contains(t, p.Text(headline), twisted)
		p.Until(`!('edition' in document.body.dataset)`)
		s.Start()
		s.Break("/crank/core.wasm", nil)
	}
	p.Until(look)
	p.Visit("about:blank")
	p.Visit(s.URL("/crank/"))
	p.Until(`document.body.dataset.edition === '2'`)
	p.Ready()
	assert.Contains(t, p.Text(headline), twisted)
}

// fullStore has the store refuse every write, and then take them again.
func fullStore(t *testing.T, p hands) {
	p.Until(`(() => {
		window.put = IDBObjectStore.prototype.put;
		IDBObjectStore.prototype.put = () => { throw new DOMException('the phone is full', 'QuotaExceededError'); };
		return true;
	})()`)
	p.Fill("Timing high at", "8:30")
	p.Until(`document.getElementById('notice-text').textContent.includes('could not be kept')`)
	p.Until(kept(`form['pass.1.timing.high'] === '9'`))
	p.Until(`(IDBObjectStore.prototype.put = window.put, true)`)
	p.Fill("Timing high at", "9:30")
	p.Until(kept(`form['pass.1.timing.high'] === '9:30'`))
	p.Fill("Timing high at", "9")
	p.Until(kept(`form['pass.1.timing.high'] === '9'`))
}

// backAndForward leaves the page and comes back by the browser's own way, to the
// page as it stood where the engine keeps such, else to one loaded anew.
func backAndForward(t *testing.T, p hands, s *Server) {
	p.Until(`(window.stood = true)`)
	p.Visit("about:blank")
	p.Until(`(history.back(), true)`)
	p.Until(`location.pathname === '/crank/'`)
	p.Ready()
	p.Until(`document.getElementById('drive-tir').value === '4'`)
	p.Until(`document.getElementById('timing-high').value === '9'`)
	assert.Contains(t, p.Text(headline), twisted)
	p.Fill("Drive run-out", "5")
	p.Until(kept(`form['pass.1.drive.tir'] === '5'`))
}
