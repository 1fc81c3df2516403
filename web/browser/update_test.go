package browser

import (
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/site"
)

// edition returns a small site with the real service worker and update module,
// which shows its number and counts its starts in the tab.
func edition(t *testing.T, number string) site.Files {
	files := site.Files{
		"index.html": []byte(`<!doctype html><html lang="en-GB" data-page="` + number + `"><head><meta charset="utf-8">
			<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; img-src data:; connect-src 'self'; worker-src 'self'">
			<title>Edition</title><link rel="icon" href="data:,"><script type="module" src="main.js"></script></head>
			<body><p id="edition"></p><button id="change" hidden>Change to it now</button></body></html>`),
		"edition.js": []byte(`export const edition = '` + number + `';`),
		"big.json":   []byte(`["` + number + `"]`),
		"main.js": []byte(`import { edition } from './edition.js';
			import { applyUpdate, onUpdateWaiting, takeWaitingAtStart } from './update.js';
			start();
			async function start() {
				sessionStorage.starts = Number(sessionStorage.starts ?? 0) + 1;
				if (await takeWaitingAtStart()) return;
				const change = document.getElementById('change');
				change.addEventListener('click', applyUpdate);
				document.getElementById('edition').textContent = edition;
				document.documentElement.dataset.ready = 'true';
				document.documentElement.dataset.offline = await onUpdateWaiting(() => { change.hidden = false; });
			}`),
	}
	for _, name := range []string{"sw.js", "update.js"} {
		content, err := os.ReadFile(filepath.Join("..", name))
		require.NoError(t, err)
		files[name] = content
	}
	files, err := site.Finish(files)
	require.NoError(t, err)
	return files
}

const (
	offline    = `document.documentElement.dataset.offline === 'true' && navigator.serviceWorker.controller`
	offered    = `!document.getElementById('change').hidden`
	cacheNames = `caches.keys().then((names) => names.sort())`
	// look resolves when a look for a new version has come to its end. It may
	// join one that the browser began before, and so miss what is newer.
	look = `(async () => {
		const registration = await navigator.serviceWorker.getRegistration();
		await registration.update().catch(() => {});
		const coming = registration.installing;
		if (coming) await new Promise((done) => coming.addEventListener('statechange', done, { once: true }));
		return Boolean(registration.waiting);
	})()`
)

func shows(t *testing.T, p *Page, number string) {
	t.Helper()
	assert.Equal(t, number, p.Text("#edition"))
}

func starts(p *Page) string {
	return Eval[string](p, "sessionStorage.starts")
}

func TestFirstVisitKeepsTheSite(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	first := b.Open(s.URL("/shop/"))
	first.Until(offline)
	assert.Equal(t, "1", starts(first), "no reload")
	s.Stop()

	for _, address := range []string{"/shop/", "/shop/index.html", "/shop/?from=home#job"} {
		p := b.Tab()
		p.WithoutHTTPCache()
		p.Visit(s.URL(address))
		p.Ready()
		shows(t, p, "1")
	}
}

func TestAfterTheInstallationOnlyTheWorkerIsAskedFor(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	b.Open(s.URL("/shop/")).Until(offline)
	s.Asked()
	p := b.Open(s.URL("/shop/"))
	p.Until(offline)
	Eval[bool](p, look)
	assert.Equal(t, []string{"/shop/sw.js"}, slices.Compact(s.Asked()))
}

func TestNewVersionTakesOverAtAStartByOneReload(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	p := b.Open(s.URL("/shop/"))
	p.Until(offline)
	s.Put("/shop/", edition(t, "2"))
	p.Until(look)
	shows(t, p, "1")
	p.Until(offered)

	p.Reload()
	p.Until(`document.getElementById('edition').textContent === '2'`)
	assert.Equal(t, "3", starts(p), "the visit, the reload, and one more")
	assert.Len(t, Eval[[]string](p, cacheNames), 1, "the old version's cache is gone")
	s.Stop()
	later := b.Open(s.URL("/shop/"))
	shows(t, later, "2")
}

// The whole site also has icons and a manifest, which the browser asks for
// while the new version takes over.
func TestNewVersionOfTheWholeSiteTakesOverAtAStart(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/crank/", Built(t))
	p := b.Open(s.URL("/crank/"))
	p.Until(`navigator.serviceWorker.controller`)
	s.Put("/crank/", nextVersion(t))
	p.Until(look)
	p.Reload()
	p.Until(`document.body.dataset.edition === '2' && document.documentElement.dataset.ready === 'true'`)
	assert.Equal(t, "/crank/icons/icon-192.png", Eval[string](p, `new URL(document.querySelector('link[rel=icon]').href).pathname`))
	assert.Equal(t, "/crank/manifest.webmanifest", Eval[string](p, `new URL(document.querySelector('link[rel=manifest]').href).pathname`))
}

func TestNewVersionTakesOverWhenEveryPageWasClosed(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	p := b.Open(s.URL("/shop/"))
	p.Until(offline)
	s.Put("/shop/", edition(t, "2"))
	p.Until(look)
	p.Close()

	p = b.Open(s.URL("/shop/"))
	shows(t, p, "2")
	assert.Equal(t, "1", starts(p))
}

func TestWithAnotherPageOpenTheButtonBringsTheNewVersion(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	one := b.Open(s.URL("/shop/"))
	one.Until(offline)
	two := b.Open(s.URL("/shop/"))
	two.Until(offline)
	s.Put("/shop/", edition(t, "2"))
	one.Until(look)
	one.Until(offered)
	two.Until(offered)

	one.Reload()
	one.Until(offered)
	shows(t, one, "1")

	one.Press("Change to it now")
	one.Until(`document.getElementById('edition').textContent === '2'`)
	shows(t, two, "1")
	assert.Equal(t, "1", starts(two), "the page in use isn't reloaded under its user")
	two.Press("Change to it now")
	two.Until(`document.getElementById('edition').textContent === '2'`)
}

func TestPageOutOfSightFollowsAtOnce(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	one := b.Open(s.URL("/shop/"))
	one.Until(offline)
	two := b.Open(s.URL("/shop/"))
	two.Until(offline)
	Eval[bool](two, `Boolean(Object.defineProperty(document, 'hidden', { value: true }))`) // headless tabs are all in sight
	s.Put("/shop/", edition(t, "2"))
	one.Until(look)
	one.Until(offered)
	one.Press("Change to it now")
	two.Until(`document.getElementById('edition').textContent === '2'`)
}

// faults are what a bad host or a bad signal makes of a file.
var faults = map[string]http.HandlerFunc{
	"another file": func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "application/json")
		w.Write([]byte(`["3"]`))
	},
	"half a file": func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Length", "5")
		w.Write([]byte(`["`))
		panic(http.ErrAbortHandler)
	},
	"half a file said to be whole": func(w http.ResponseWriter, r *http.Request) {
		w.Write([]byte(`["2`))
	},
	"an error": func(w http.ResponseWriter, r *http.Request) {
		http.Error(w, `["2"]`, http.StatusInternalServerError)
	},
	"not there": http.NotFound,
	"cut off": func(w http.ResponseWriter, r *http.Request) {
		panic(http.ErrAbortHandler)
	},
}

func TestOldVersionStaysUntilTheNewOneIsWhole(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	p := b.Open(s.URL("/shop/"))
	p.Until(offline)
	before := Eval[[]string](p, cacheNames)
	s.Put("/shop/", edition(t, "2"))
	for name, fault := range faults {
		s.Break("/shop/big.json", fault)
		s.Asked()
		for !slices.Contains(s.Asked(), "/shop/big.json") {
			assert.False(t, Eval[bool](p, look), name)
		}
		assert.Equal(t, before, Eval[[]string](p, cacheNames), name)
	}
	s.Stop()
	shows(t, b.Open(s.URL("/shop/")), "1")

	s.Start()
	s.Break("/shop/big.json", nil)
	p.Until(look)
}

func TestSlowHostHoldsNothingUp(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	p := b.Open(s.URL("/shop/"))
	p.Until(offline)
	s.Put("/shop/", edition(t, "2"))
	never := func(w http.ResponseWriter, r *http.Request) { <-r.Context().Done() }
	s.Break("/shop/big.json", never)
	p.Until(`navigator.serviceWorker.getRegistration().then((r) => { r.update().catch(() => {}); return r.installing; })`)
	shows(t, b.Open(s.URL("/shop/")), "1")

	s.Break("/shop/sw.js", never)
	shows(t, b.Open(s.URL("/shop/")), "1")
}

func TestFirstVisitToABrokenHostKeepsNothing(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	s.Break("/shop/big.json", faults["another file"])
	p := b.Open(s.URL("/shop/"))
	shows(t, p, "1")
	p.Until(`navigator.serviceWorker.getRegistration().then((r) => !r)`)
	assert.Empty(t, Eval[[]string](p, cacheNames))

	s.Break("/shop/big.json", nil)
	p.Reload()
	p.Until(offline)
}

func TestFoldersOfOneHostLeaveEachOtherAlone(t *testing.T) {
	b := Launch(t)
	folders := []string{"/a/", "/a/b/", "/c/"}
	s := Serve(t, folders[0], edition(t, "1"))
	for _, folder := range folders {
		s.Put(folder, edition(t, "1"))
		p := b.Open(s.URL(folder))
		p.Until(offline)
		p.Close()
	}
	p := b.Open(s.URL("/a/"))
	before := Eval[[]string](p, cacheNames)
	require.Len(t, before, len(folders))
	s.Put("/a/", edition(t, "2"))
	p.Until(look)
	p.Reload()
	p.Until(`document.getElementById('edition').textContent === '2'`)

	after := Eval[[]string](p, cacheNames)
	assert.Len(t, after, len(folders))
	assert.Subset(t, after, before[1:], "sorted by folder, /a/ first")
	assert.NotContains(t, after, before[0])
	s.Stop()
	for folder, number := range map[string]string{"/a/": "2", "/a/b/": "1", "/c/": "1"} {
		shows(t, b.Open(s.URL(folder)), number)
	}
}

func TestEmptiedCacheFillsAgain(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	p := b.Open(s.URL("/shop/"))
	p.Until(offline)
	require.True(t, Eval[bool](p, `caches.keys().then(([name]) => caches.delete(name))`))
	shows(t, b.Open(s.URL("/shop/")), "1")
}

func TestHostsThatSendIndexToItsFolder(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	s.Break("/shop/index.html", func(w http.ResponseWriter, r *http.Request) {
		http.Redirect(w, r, "/shop/", http.StatusPermanentRedirect)
	})
	b.Open(s.URL("/shop/")).Until(offline)
	s.Stop()
	shows(t, b.Open(s.URL("/shop/")), "1")
}

func TestInstallationAsksNoOtherHost(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/shop/", edition(t, "1"))
	other := Serve(t, "/shop/", edition(t, "1"))
	s.Break("/shop/big.json", func(w http.ResponseWriter, r *http.Request) {
		http.Redirect(w, r, other.URL("/shop/big.json"), http.StatusTemporaryRedirect)
	})
	p := b.Open(s.URL("/shop/"))
	p.Until(`navigator.serviceWorker.getRegistration().then((r) => !r)`)
	assert.Empty(t, other.Asked())
}
