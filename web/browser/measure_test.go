package browser

import (
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/css"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/page"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/site"
)

// slowed is how many times slower a phone's processor is taken to be.
const slowed = 4

// BenchmarkEditToPicture times edits of a job with an answer: from the start of
// the input handler to the end of a forced layout with the new clock face, the
// page at rest before each, as it is between two keys of a person's.
func BenchmarkEditToPicture(b *testing.B) {
	const edits = 200
	for b.Loop() {
		p := editedPage(b)
		times := make([]float64, edits)
		for i := range times {
			times[i] = timeEdit(p, len(readings)+i) // past what is filled in
		}
		slices.Sort(times)
		b.ReportMetric(times[edits/2-1], "ms-median")
		b.ReportMetric(times[edits*95/100-1], "ms-p95")
		b.ReportMetric(times[edits-1], "ms-worst")
	}
	b.ReportMetric(0, "ns/op") // the time of 200 edits and a start says nothing
}

// reading is one of the fields that are edited in turn.
type reading struct {
	label string
	text  func(i int) string
}

var readings = []reading{
	{"Drive run-out", tenths},
	{"Drive high at", hour},
	{"Timing run-out", tenths},
	{"Timing high at", hour},
}

func tenths(i int) string { return strconv.FormatFloat(3+float64(i%37)/10, 'f', 1, 64) }

func hour(i int) string { return fmt.Sprintf("%d:%02d", 1+i%11, i%4*15) }

func editedPage(b *testing.B) *Page {
	s := Serve(b, "/", Built(b))
	p := Launch(b).Tab()
	p.Phone()
	p.Visit(s.URL("/"))
	p.Ready()
	// what DevTools itself does upon each change of the page must not count;
	// nor must the accessibility tree, which finding a field by name would keep
	send(p, css.Disable, cdp.Empty{})
	send(p, dom.Disable, cdp.Empty{})
	for i := range readings {
		timeEdit(p, i)
	}
	p.Throttle(slowed)
	return p
}

// timeEdit makes the i-th edit and returns what it took in milliseconds.
func timeEdit(p *Page, i int) float64 {
	r := readings[i%len(readings)]
	took := Eval[float64](p, `(async () => {
		const frame = () => new Promise((then) => requestAnimationFrame(then));
		await frame();
		await frame();
		const words = (label) => label.textContent.trim().replace(/\s+/g, ' ');
		const field = [...document.querySelectorAll('label')].find((label) => words(label) === `+strconv.Quote(r.label)+`).control;
		const face = document.querySelector('[data-picture="face"]');
		const before = face.innerHTML;
		field.value = `+strconv.Quote(r.text(i))+`;
		const start = performance.now();
		field.dispatchEvent(new Event('input', { bubbles: true }));
		face.getBoundingClientRect();
		const took = performance.now() - start;
		return face.innerHTML === before ? -1 : took;
	})()`)
	if i >= len(readings) { // with all four, each edit redraws the face
		require.NotEqual(p.t, -1.0, took, "edit %d, %s, changed no picture", i, r.label)
	}
	return took
}

// BenchmarkColdStart times a start of the page, to data-ready: that of a first visit,
// and the next one's in a new process, served by the service worker. Beside it, in
// turns, start the same page with an empty Go program, a bare page with that
// program, and the site that PINTWELVE_AGAINST names (the dist folder of another
// checkout). Blocked is what tasks took over 50 ms each between the first paint and then.
func BenchmarkColdStart(b *testing.B) {
	for _, factor := range []float64{1, slowed} {
		b.Run(fmt.Sprintf("slowed=%g", factor), func(b *testing.B) {
			for b.Loop() {
				coldStarts(b, factor)
			}
			b.ReportMetric(0, "ns/op")
		})
	}
}

// begun is what a start took, in milliseconds.
type begun struct {
	ReadyAt, Blocked float64
}

func coldStarts(b *testing.B, factor float64) {
	const profiles = 7
	hosts := map[string]*Server{"here": packed(b, Built(b)), "empty": packed(b, Empty(b)), "bare": packed(b, bare(b))}
	if files := against(b); files != nil {
		hosts["against"] = packed(b, files)
	}
	first, next := map[string][]begun{}, map[string][]begun{}
	for round := range 1 + profiles {
		for name, s := range hosts {
			visit, again := startTwice(b, s, factor)
			if round > 0 { // the first of each warms the machine's file caches
				first[name], next[name] = append(first[name], visit), append(next[name], again)
			}
		}
	}
	report(b, "first", first)
	report(b, "next", next)
}

func report(b *testing.B, start string, took map[string][]begun) {
	ready := map[string]float64{}
	for name, starts := range took {
		var at, blocked []float64
		for _, s := range starts {
			at, blocked = append(at, s.ReadyAt), append(blocked, s.Blocked)
		}
		ready[name] = median(at)
		b.ReportMetric(ready[name], start+"-ms-"+name)
		b.ReportMetric(median(blocked), start+"-blocked-"+name)
	}
	for name, at := range ready {
		if name != "here" {
			b.ReportMetric(ready["here"]/at, start+"-of-"+name)
		}
	}
}

// bare is the least page that starts a Go program: the empty one.
func bare(b *testing.B) site.Files {
	return site.Files{
		"index.html": []byte(`<!doctype html><title>bare</title><p>bare</p><script type="module" src="bare.js"></script>`),
		"bare.js": append(slices.Clone(wasmExec(b)), `
			const go = new Go();
			const { instance } = await WebAssembly.instantiateStreaming(fetch('core.wasm'), go.importObject);
			go.run(instance);
			globalThis.pintwelve('answer', '', '');
			document.documentElement.dataset.ready = 'true';`...),
		"core.wasm": Empty(b)["core.wasm"],
	}
}

func wasmExec(b *testing.B) []byte {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(b, err)
	script, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	require.NoError(b, err)
	return script
}

// against is the site that PINTWELVE_AGAINST names, to measure beside this one; nil without.
func against(b *testing.B) site.Files {
	dist := os.Getenv("PINTWELVE_AGAINST")
	if dist == "" {
		return nil
	}
	files, err := site.Read(dist)
	require.NoError(b, err)
	return files
}

func median(values []float64) float64 {
	slices.Sort(values)
	return values[len(values)/2]
}

// packed serves a site whose files are packed already, as a host's are that has
// served them before: to pack the core takes as long as to start it.
func packed(b *testing.B, files site.Files) *Server {
	s := Serve(b, "/", files)
	for _, path := range files.Paths() {
		request, err := http.NewRequest(http.MethodGet, s.URL("/"+path), nil)
		require.NoError(b, err)
		request.Header.Set("Accept-Encoding", "br")
		response, err := http.DefaultClient.Do(request)
		require.NoError(b, err)
		require.NoError(b, response.Body.Close())
	}
	return s
}

// startTwice returns what two starts with one fresh profile took to data-ready.
func startTwice(b *testing.B, s *Server, factor float64) (first, next begun) {
	profile := Profile(b)
	for _, took := range []*begun{&first, &next} {
		browser := LaunchIn(b, profile)
		p := browser.Tab()
		*took = timeStart(p, s.URL("/"), factor)
		if s.sites["/"]["sw.js"] != nil {
			p.Until(`navigator.serviceWorker.controller`)
		}
		browser.Quit()
	}
	return first, next
}

func timeStart(p *Page, address string, factor float64) begun {
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `
		const long = [];
		new PerformanceObserver((list) => long.push(...list.getEntries())).observe({ type: 'longtask', buffered: true });
		new MutationObserver((_, observer) => {
			if (document.documentElement.dataset.ready !== 'true') return;
			const readyAt = performance.now();
			observer.disconnect();
			setTimeout(() => {
				const painted = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0;
				const blocks = long.filter(({ startTime, duration }) => startTime + duration > painted && startTime < readyAt);
				globalThis.begun = { ReadyAt: readyAt, Blocked: blocks.reduce((sum, { duration }) => sum + duration - 50, 0) };
			}, 200);
		}).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-ready'] });`})
	p.Throttle(factor)
	p.Visit(address)
	p.Until(`globalThis.begun`)
	return Eval[begun](p, `globalThis.begun`)
}
