package browser

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"maps"
	"net/http"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/site"
)

// TestFaults does to the whole site, with a job in it, what a bad host, a full
// phone or a bad sum may: after each fault the version that ran runs, and the
// saved job is there.
func TestFaults(t *testing.T) {
	c := &count{T: t}
	firstLoads(c)
	updates(c)
	c.survives("a panic in Go", panics)
	deaths(c)
	c.survives("storage full", storageFull)
	c.survives("storage refused", storageRefused)
	c.survives("clock set back", clockSetBack)
	c.survives("tab killed in mid-edit", tabKilled)
	c.survives("browser killed in mid-edit", browserKilled)
	c.survives("two versions open", twoVersionsOpen)
	c.survives("store of a newer version", newerStore)
	t.Logf("faults survived: %d of %d", c.survived, c.tried)
}

// count counts the faults that were survived.
type count struct {
	*testing.T
	survived, tried int
}

func (c *count) survives(fault string, outlive func(t *testing.T)) {
	c.tried++
	if c.Run(fault, outlive) {
		c.survived++
	}
}

// survivesOn has several faults one after another on the same page.
func (c *count) survivesOn(p *Page, fault string, outlive func(t *testing.T)) {
	c.survives(fault, func(t *testing.T) {
		whole := p.t
		p.t = t
		defer func() { p.t = whole }()
		outlive(t)
	})
}

func half(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "application/wasm")
	w.Header().Set("Content-Length", "4000000")
	w.Write([]byte("\x00asm\x01\x00\x00\x00"))
	panic(http.ErrAbortHandler)
}

func noProgram(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "application/wasm")
	w.Write([]byte("\x00asm\x99\x00\x00\x00"))
}

// stalls never answers.
func stalls(w http.ResponseWriter, r *http.Request) { <-r.Context().Done() }

const twisted = "Strike the drive wheel at 3"

// mended loads a page again and sees that the site runs, kept for good, with the job.
func mended(t *testing.T, p *Page, s *Server) {
	t.Helper()
	p.Visit("about:blank")
	p.Visit(s.URL("/crank/"))
	p.Ready()
	assert.Contains(t, p.Text(headline), twisted)
	p.Until(`navigator.serviceWorker.controller`)
}

// firstLoads break what a first visit asks for. No version is kept then, as after
// the browser has cleared its caches; the job is.
func firstLoads(c *count) {
	p, s, _ := installed(c.T)
	p.WithoutHTTPCache()
	for _, f := range []struct {
		fault, path string
		handler     http.HandlerFunc
	}{
		{"server gone", "/crank/main.js", faults["cut off"]},
		{"500", "/crank/core.wasm", faults["an error"]},
		{"half a file", "/crank/core.wasm", half},
		{"half a file said to be whole", "/crank/main.js", faults["half a file said to be whole"]},
		{"WASM that won't compile", "/crank/core.wasm", noProgram},
	} {
		c.survivesOn(p, "first load: "+f.fault, func(t *testing.T) {
			forget(t, p)
			s.Break(f.path, f.handler)
			p.Visit(s.URL("/crank/"))
			p.Until(`document.querySelector('.loading').checkVisibility({ visibilityProperty: true }) ||
				document.getElementById('notice-text').textContent.includes('could not start')`)
			assert.Empty(t, Eval[[]string](p, cacheNames))
			s.Break(f.path, nil)
			mended(t, p, s)
		})
	}
	c.survivesOn(p, "first load: wrong hash", func(t *testing.T) { wrongFirstLoad(t, p, s) })
	c.survivesOn(p, "first load: slow", func(t *testing.T) { slowFirstLoad(t, p, s) })
}

// forget takes the kept version from a page's browser.
func forget(t *testing.T, p *Page) {
	require.True(t, Eval[bool](p, `(async () => {
		await (await navigator.serviceWorker.getRegistration()).unregister();
		for (const name of await caches.keys()) await caches.delete(name);
		return true;
	})()`))
	p.Visit("about:blank")
}

// wrongFirstLoad breaks a file that the page starts without: nothing is kept.
func wrongFirstLoad(t *testing.T, p *Page, s *Server) {
	forget(t, p)
	s.Break("/crank/icons/icon.svg", faults["another file"])
	p.Visit(s.URL("/crank/"))
	p.Ready()
	assert.Contains(t, p.Text(headline), twisted)
	p.Until(`navigator.serviceWorker.getRegistration().then((r) => !r)`)
	assert.Empty(t, Eval[[]string](p, cacheNames))
	s.Break("/crank/icons/icon.svg", nil)
	mended(t, p, s)
}

// slowFirstLoad types before the core has come: it is said that the page still
// loads, and what was typed stands.
func slowFirstLoad(t *testing.T, p *Page, s *Server) {
	forget(t, p)
	arrived := make(chan struct{})
	whole := Built(t)["core.wasm"]
	s.Break("/crank/core.wasm", func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "application/wasm")
		select {
		case <-arrived:
		case <-r.Context().Done():
		}
		w.Write(whole)
	})
	p.Visit(s.URL("/crank/"))
	p.Fill("Drive run-out", "7")
	p.Until(`document.querySelector('.loading').checkVisibility({ visibilityProperty: true })`)
	close(arrived)
	p.Ready()
	assert.Equal(t, "7", p.Value("Drive run-out"))
	assert.Equal(t, "4", p.Value("Timing run-out"))
	p.Until(kept(`form['pass.1.drive.tir'] === '7'`))
	p.Fill("Drive run-out", "4")
	s.Break("/crank/core.wasm", nil)
	mended(t, p, s)
}

// later returns a site's next version: one file another, and listed so.
func later(files site.Files, path string, content []byte) site.Files {
	hash := func(b []byte) string { sum := sha256.Sum256(b); return hex.EncodeToString(sum[:16]) }
	next := maps.Clone(files)
	next[path] = content
	worker := strings.Replace(string(files["sw.js"]), hash(files[path]), hash(content), 1)
	next["sw.js"] = []byte(strings.Replace(worker, `"version":"`, `"version":"later `, 1))
	return next
}

func nextVersion(t *testing.T) site.Files {
	files := Built(t)
	return later(files, "index.html", []byte(strings.Replace(string(files["index.html"]), "<body>", `<body data-edition="2">`, 1)))
}

// installed is a page with a saved job, its version kept.
func installed(t *testing.T) (*Page, *Server, *Browser) {
	p, s, b := benchIn(t)
	twist(p)
	p.Until(`navigator.serviceWorker.controller`)
	p.Until(kept(`form['pass.1.timing.high'] === '9'`))
	return p, s, b
}

// updates break what a new version asks for, again and again.
func updates(c *count) {
	p, s, _ := installed(c.T)
	next := nextVersion(c.T)
	for _, f := range []struct {
		fault   string
		handler http.HandlerFunc
	}{
		{"server gone", faults["cut off"]}, {"slow", stalls}, {"500", faults["an error"]}, {"half a file", half},
		{"half a file said to be whole", faults["half a file said to be whole"]}, {"wrong hash", faults["another file"]},
	} {
		c.survivesOn(p, "update: "+f.fault, func(t *testing.T) {
			s.Put("/crank/", next)
			s.Break("/crank/core.wasm", f.handler)
			s.Asked()
			p.Until(`navigator.serviceWorker.getRegistration().then((r) => { r.update().catch(() => {}); return r.installing; })`)
			for end := time.Now().Add(patience); !slices.Contains(s.Asked(), "/crank/core.wasm"); time.Sleep(50 * time.Millisecond) {
				require.True(t, time.Now().Before(end), "the update never asked for the core")
			}
			oldVersionStands(t, p, s)
			s.Break("/crank/core.wasm", nil)
		})
	}
	c.survivesOn(p, "update: WASM that won't compile", func(t *testing.T) {
		s.Put("/crank/", later(Built(t), "core.wasm", []byte("\x00asm\x99\x00\x00\x00")))
		p.Until(`!await ` + look)
		oldVersionStands(t, p, s)
	})
	c.survivesOn(p, "update: storage full", func(t *testing.T) {
		quota(p, s.URL(""), Eval[float64](p, `navigator.storage.estimate().then(({ usage }) => usage + 1000)`))
		s.Put("/crank/", next)
		p.Until(`!await ` + look)
		oldVersionStands(t, p, s)
		quota(p, s.URL(""), 1e9)
	})
	c.survivesOn(p, "update: whole after all these", func(t *testing.T) {
		s.Put("/crank/", next)
		newVersionComes(t, p, s)
	})
}

// newVersionComes sees that with the host whole again the next version comes,
// once no page of the old one is open.
func newVersionComes(t *testing.T, p *Page, s *Server) {
	p.Until(look)
	p.Visit("about:blank")
	p.Visit(s.URL("/crank/"))
	p.Until(`document.body.dataset.edition === '2'`)
	p.Ready()
	assert.Contains(t, p.Text(headline), twisted)
}

// oldVersionStands sees with the host gone that the first version runs with its
// job, and no other is kept.
func oldVersionStands(t *testing.T, p *Page, s *Server) {
	t.Helper()
	s.Stop()
	p.Visit("about:blank")
	p.Visit(s.URL("/crank/"))
	p.Ready()
	assert.False(t, Eval[bool](p, `'edition' in document.body.dataset`))
	assert.Contains(t, p.Text(headline), twisted)
	p.Until(`navigator.serviceWorker.getRegistration().then((r) => !r.installing && !r.waiting)`)
	assert.Len(t, Eval[[]string](p, cacheNames), 1)
	s.Start()
}

func quota(p *Page, origin string, bytes float64) {
	send(p, storage.OverrideQuotaForOrigin, storage.OverrideQuotaForOriginParams{Origin: origin, QuotaSize: &bytes})
}

// panics asks the real core for a verb that it doesn't have, wherever a form holds "panic".
func panics(t *testing.T) {
	s := Serve(t, "/crank/", Built(t))
	p := Launch(t).Tab()
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `{
		let door, panics;
		Object.defineProperty(window, 'pintwelve', {
			get: () => (verb, texts, ...more) => {
				if (texts.includes("drive.high")) panics = texts.includes("panic");
				return door(panics ? "nothing" : verb, texts, ...more);
			},
			set: (value) => { door = value; },
		});
	}`})
	p.Visit(s.URL("/crank/"))
	p.Ready()
	twist(p)
	p.Fill("Drive high at", "panic")
	p.Until(`document.getElementById('notice-text').textContent.includes('no verb')`)
	p.Press("Drive high at, a quarter of an hour more") // another verb, which changes nothing now
	assert.Equal(t, "4", p.Value("Drive run-out"))
	p.Until(kept(`form['pass.1.drive.high'] === 'panic' && !('fault' in form)`))
	p.Reload()
	p.Ready()
	assert.Equal(t, "panic", p.Value("Drive high at"))
	p.Until(`document.getElementById('notice-text').textContent.includes('no verb')`)
	p.Fill("Drive high at", "3")
	assert.Contains(t, p.Text(headline), twisted)
	p.Until(`document.getElementById('notice').hidden`)
}

var dyingCore = sync.OnceValues(func() ([]byte, error) { return site.Compile(repository, "./web/browser/dying") })

// deaths type what a core made for it dies of.
func deaths(c *count) {
	core, err := dyingCore()
	require.NoError(c, err)
	s := Serve(c, "/crank/", later(Built(c), "core.wasm", core))
	p := Launch(c).Open(s.URL("/crank/"))
	twist(p)
	for _, d := range []struct{ fault, text string }{
		{"Go out of stack", "deep"}, {"Go out of memory", "memory"}, {"Go ends", "exit"}, {"Go blocks", "blocked"}, {"Go panics past recovery", "panic"},
	} {
		c.survivesOn(p, d.fault, func(t *testing.T) { dies(t, p, d.text) })
	}
}

func dies(t *testing.T, p *Page, text string) {
	p.Fill("Drive run-out", text)
	p.Until(`document.getElementById('notice-text').textContent.includes('The sum went wrong')`)
	p.Fill("Drive high at", "2")
	p.Fill("Drive run-out", "5")
	p.Until(`document.querySelector('` + headline + `').textContent.includes('Strike')`)
	p.Until(`document.getElementById('notice').hidden`)
	assert.Equal(t, "2", p.Value("Drive high at"))

	p.Fill("Drive run-out", text)
	p.Until(kept(`form['pass.1.drive.tir'] === '` + text + `'`))
	p.Reload()
	p.Ready()
	assert.Equal(t, text, p.Value("Drive run-out"), "a job that the core dies of can still be opened and mended")
	p.Fill("Drive high at", "3")
	p.Fill("Drive run-out", "4")
	p.Until(`document.querySelector('` + headline + `').textContent.includes('` + twisted + `')`)
}

// storageFull has the store refuse every write, and then take them again. The
// browser's own count can't be used: Chromium asks it only now and then.
func storageFull(t *testing.T) {
	p, s, _ := installed(t)
	Eval[bool](p, `(() => {
		window.put = IDBObjectStore.prototype.put;
		IDBObjectStore.prototype.put = () => { throw new DOMException('the phone is full', 'QuotaExceededError'); };
		return true;
	})()`)
	p.Fill("Timing high at", "8:30")
	p.Until(`document.getElementById('notice-text').textContent.includes('could not be kept')`)
	assert.Contains(t, savedFile(p, "Save a file"), "8:30")
	assert.True(t, Eval[bool](p, kept(`form['pass.1.timing.high'] === '9'`)), "what was kept before is there")
	Eval[bool](p, `(IDBObjectStore.prototype.put = window.put, true)`)
	to(p, "true")
	p.Fill("Timing run-out", "4.5")
	p.Until(kept(`form['pass.1.timing.tir'] === '4.5' && form['pass.1.timing.high'] === '8:30'`))
	fill4(p, "4", "3", "4", "9")
	p.Until(kept(`form['pass.1.timing.high'] === '9'`))
	mended(t, p, s)
}

// storageRefused comes to a job that was kept before, which stays.
func storageRefused(t *testing.T) {
	p, s, b := installed(t)
	refused := b.Tab()
	send(refused, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: `indexedDB.open = () => { throw new DOMException('storage is off', 'SecurityError'); };`,
	})
	refused.Visit(s.URL("/crank/"))
	refused.Ready()
	assert.Contains(t, refused.Text("#notice-text"), "keeps nothing")
	fill4(refused, "5", "3", "5", "9")
	assert.Contains(t, refused.Text(headline), twisted)
	refused.Close()
	mended(t, p, s)
}

// clockSetBack works on with the phone's clock at 1970: what was typed last counts.
func clockSetBack(t *testing.T) {
	p, s, b := installed(t)
	p.Fill("Drive run-out", "6")
	p.Until(kept(`form['pass.1.drive.tir'] === '6'`))
	back := b.Tab()
	send(back, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: `{ const Now = Date; window.Date = class extends Now { constructor(...given) { given.length ? super(...given) : super(0); } static now() { return 0; } }; }`,
	})
	back.Visit(s.URL("/crank/"))
	back.Ready()
	require.Equal(t, 1970, Eval[int](back, `new Date().getFullYear()`))
	assert.Equal(t, "6", back.Value("Drive run-out"))
	back.Fill("Drive run-out", "4")
	p.Until(`document.getElementById('drive-tir').value === '4'`)
	to(back, "jobs")
	back.Press("Start another crank")
	back.Fill("Drive run-out", "1")
	name(back, "later", "", "Mrs Thorne")
	assert.Equal(t, []string{"later", "Without a number"}, listed(back, 2), "last worked on first")
	Eval[bool](back, `(document.querySelectorAll('#jobs-rows .job-open')[1].click(), true)`)
	back.Until(`document.getElementById('drive-tir').value === '4'`)
	back.Close()
	mended(t, p, s)
}

// crash ends a tab's process at once; that it did, nobody is left to answer.
func crash(p *Page) {
	ctx, cancel := context.WithTimeout(p.ctx, time.Second)
	defer cancel()
	chromedp.Call(ctx, page.Crash, cdp.Empty{})
}

// tabKilled ends the tab's process under an edit that was not left.
func tabKilled(t *testing.T) {
	p, s, b := installed(t)
	p.Type("Drive run-out", "5")
	p.Until(kept(`form['pass.1.drive.tir'] === '5'`))
	p.Insert("0")
	crash(p)
	later := b.Open(s.URL("/crank/"))
	assert.Contains(t, []string{"5", "50"}, later.Value("Drive run-out"), "all but what was typed last")
	assert.Equal(t, "9", later.Value("Timing high at"))
	later.Fill("Drive run-out", "4")
	mended(t, later, s)
}

// browserKilled ends the whole browser at once under an edit.
func browserKilled(t *testing.T) {
	profile := Profile(t)
	s := Serve(t, "/crank/", Built(t))
	b := LaunchIn(t, profile)
	p := b.Open(s.URL("/crank/"))
	twist(p)
	p.Until(`navigator.serviceWorker.controller`)
	p.Type("Drive run-out", "5")
	p.Until(kept(`form['pass.1.drive.tir'] === '5'`))
	require.NoError(t, chromedp.FromContext(p.ctx).Browser.Process().Kill())
	s.Stop()
	later := LaunchIn(t, profile).Open(s.URL("/crank/"))
	assert.Equal(t, "5", later.Value("Drive run-out"))
	assert.Equal(t, "9", later.Value("Timing high at"))
	later.Fill("Drive run-out", "4")
	mended(t, later, s)
}

// twoVersionsOpen works on one job in two versions at once.
func twoVersionsOpen(t *testing.T) {
	p, s, b := installed(t)
	next := b.Open(s.URL("/crank/"))
	s.Put("/crank/", nextVersion(t))
	next.Until(look)
	next.Press("Change to it now")
	next.Until(`document.body.dataset.edition === '2'`)
	next.Ready()
	assert.False(t, Eval[bool](p, `'edition' in document.body.dataset`), "the page in use isn't changed under its user")
	next.Fill("Timing run-out", "6")
	p.Until(`document.getElementById('timing-tir').value === '6'`)
	p.Fill("Timing run-out", "4")
	next.Until(`document.getElementById('timing-tir').value === '4'`)
	p.Close()
	mended(t, next, s)
}

// newerStore has a newer version change the store under an old page: the old
// one lets go, says that it keeps nothing more, and hands its figures out.
func newerStore(t *testing.T) {
	p, s, _ := installed(t)
	upgrade := func(version string) string {
		return `new Promise((resolve, reject) => {
			const open = indexedDB.open('pintwelve /crank/', ` + version + `);
			open.onsuccess = () => { open.result.close(); resolve(true); };
			open.onerror = () => reject(open.error);
		})`
	}
	require.True(t, Eval[bool](p, upgrade("99")))
	p.Fill("Drive run-out", "5")
	p.Until(`document.getElementById('notice-text').textContent.includes('could not be kept')`)
	assert.Contains(t, savedFile(p, "Save a file"), `"pass.1.drive.tir": "5"`)
	Eval[bool](p, `(document.getElementById('afresh').click(), true)`)
	p.Until(`document.getElementById('drive-tir').value === ''`) // the page goes on
	assert.NotContains(t, p.Text("#notice-text"), "could not be done", "the file was saved all the same")

	p.Visit("about:blank")
	p.Visit(s.URL("/crank/"))
	p.Ready()
	assert.Contains(t, p.Text("#notice-text"), "keeps nothing")
	assert.True(t, Eval[bool](p, kept(`form['pass.1.drive.tir'] === '4'`)), "the job is left as it was")
}
