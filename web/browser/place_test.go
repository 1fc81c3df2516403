package browser

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// keptFiles are the files in the caches.
const keptFiles = `(async () => {
	const paths = [];
	for (const name of await caches.keys()) {
		for (const request of await (await caches.open(name)).keys()) paths.push(new URL(request.url).pathname);
	}
	return paths.sort();
})()`

const clearCaches = `(async () => { for (const name of await caches.keys()) await caches.delete(name); return true; })()`

// Plain http on a workshop network gives a page no worker: it is said that the
// page can't do without its server, once, and what is typed is kept all the same.
func TestAnAddressThatCannotDoWithoutItsServerSaysSo(t *testing.T) {
	s := Serve(t, "/crank/", Built(t))
	p := Launch(t).Tab()
	p.Visit(strings.Replace(s.URL("/crank/"), "127.0.0.1", workshop, 1))
	p.Ready()
	assert.False(t, Eval[bool](p, `isSecureContext`))
	p.Until(`document.getElementById('notice-text').textContent.includes('can’t work without its server')`)
	p.Press("Close")
	p.Fill("Drive run-out", "4")
	p.Until(kept(`form['pass.1.drive.tir'] === '4'`))
	p.Reload()
	p.Ready()
	assert.Equal(t, "4", p.Value("Drive run-out"))
	p.Until(`document.getElementById('offline').textContent.includes('can’t work without its server')`)
	assert.True(t, Eval[bool](p, `document.getElementById('notice').hidden`), "it is said once")
	assert.NotContains(t, p.Text("footer"), "works without signal")
}

func TestAPageThatIsKeptSaysSo(t *testing.T) {
	p, s := bench(t)
	p.Until(`document.getElementById('offline').textContent === 'Kept on this phone: it works without signal.'`)
	s.Stop()
	p.Reload()
	p.Ready()
	p.Until(`document.getElementById('offline').textContent === 'Kept on this phone: it works without signal.'`)
}

// Where the caches alone were cleared, the next load comes from the network,
// whichever version stands there.
func TestClearedCachesFallThroughToTheNetwork(t *testing.T) {
	for _, number := range []string{"1", "2"} {
		s := Serve(t, "/shop/", edition(t, "1"))
		p := Launch(t).Tab()
		p.Visit(s.URL("/shop/"))
		p.Until(offline)
		Eval[bool](p, clearCaches)
		s.Put("/shop/", edition(t, number))
		p.Visit("about:blank")
		p.Visit(s.URL("/shop/"))
		p.Until(`document.getElementById('edition').textContent === '` + number + `'`)
		p.Until(`(await ` + keptFiles + `).length >= 5`)
	}
}

// One file that is gone brings back all that are.
func TestAMissingFileRefillsAll(t *testing.T) {
	s := Serve(t, "/shop/", edition(t, "1"))
	p := Launch(t).Tab()
	p.Visit(s.URL("/shop/"))
	p.Until(offline)
	whole := Eval[[]string](p, keptFiles)
	Eval[bool](p, `(async () => {
		const cache = await caches.open((await caches.keys())[0]);
		for (const name of ['edition.js', 'big.json']) await cache.delete(new URL(name, location));
		return true;
	})()`)
	p.Visit("about:blank")
	p.Visit(s.URL("/shop/"))
	p.Until(`document.getElementById('edition').textContent === '1'`)
	p.Until(`JSON.stringify(await ` + keptFiles + `) === '` + quoted(whole) + `'`)
}

// both are the numbers that the page and its module stand for.
const both = `document.documentElement.dataset.page + ' with ' + document.getElementById('edition').textContent`

// With some files gone and another version on the network, no load has files of
// both: it fails, or is the other's, and the load after it is whole.
func TestAPartlyGoneVersionIsNeverMixedWithAnother(t *testing.T) {
	for _, gone := range [][]string{{"edition.js"}, {"index.html"}, {"main.js", "edition.js"}} {
		t.Run(gone[0], func(t *testing.T) {
			s := Serve(t, "/shop/", edition(t, "1"))
			p := Launch(t).Tab()
			p.Visit(s.URL("/shop/"))
			p.Until(offline)
			s.Put("/shop/", edition(t, "2"))
			for _, name := range gone {
				require.True(t, Eval[bool](p, `(async () => {
					const cache = await caches.open((await caches.keys())[0]);
					return cache.delete(new URL('`+name+`', location));
				})()`))
			}
			p.Visit("about:blank")
			p.Visit(s.URL("/shop/"))
			p.Until(`document.readyState === 'complete' && await new Promise((then) => setTimeout(then, 300, true))`)
			assert.Contains(t, []string{"1 with ", "2 with 2"}, Eval[string](p, both))
			p.Visit("about:blank")
			p.Visit(s.URL("/shop/"))
			p.Until(both + ` === '2 with 2'`)
		})
	}
}

// A network's login page is no other version: what is left of this one stays.
func TestAPartlyGoneVersionOutlivesALoginPage(t *testing.T) {
	s := Serve(t, "/shop/", edition(t, "1"))
	p := Launch(t).Tab()
	p.Visit(s.URL("/shop/"))
	p.Until(offline)
	Eval[bool](p, `caches.keys().then(async ([name]) => (await caches.open(name)).delete(new URL('big.json', location)))`)
	left := Eval[[]string](p, keptFiles)
	for _, path := range []string{"", "index.html", "main.js", "sw.js", "big.json", "edition.js"} {
		s.Break("/shop/"+path, login)
	}
	assert.Equal(t, "refused", Eval[string](p, `fetch('big.json').then((r) => r.text(), () => 'refused')`))
	assert.Equal(t, left, Eval[[]string](p, keptFiles))
	p.Reload()
	p.Ready()
	shows(t, p, "1")
}

func quoted(texts []string) string { return `["` + strings.Join(texts, `","`) + `"]` }

// login is what a network answers with in the place of any file until one has
// logged in to it.
func login(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Write([]byte(`<!doctype html><title>Guest network</title><p>Log in`))
}

func TestANetworksLoginPageIsNamedAsSuch(t *testing.T) {
	for name, fault := range map[string]http.HandlerFunc{
		"in the place of a file": login,
		"by a redirection": func(w http.ResponseWriter, r *http.Request) {
			http.Redirect(w, r, "http://login.test/", http.StatusFound)
		},
	} {
		t.Run(name, func(t *testing.T) {
			s := Serve(t, "/crank/", Built(t))
			s.Break("/crank/core.wasm", fault)
			p := Launch(t).Tab()
			p.Visit(s.URL("/crank/"))
			p.Until(`document.getElementById('notice-text').textContent.includes('a page of the network’s own')`)
			assert.Contains(t, p.Text("#notice-text"), "log in")
			s.Break("/crank/core.wasm", nil)
			p.Visit("about:blank")
			p.Visit(s.URL("/crank/"))
			p.Ready()
			assert.True(t, Eval[bool](p, `document.getElementById('notice').hidden`))
		})
	}
}
