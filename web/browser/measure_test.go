package browser

import (
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/site"
)

// slowed is how many times slower a phone's processor is taken to be.
const slowed = 4

// BenchmarkColdStart times a start of the page, to data-ready: that of a first visit,
// and the next one's in a new process, served by the service worker. Beside it, in
// turns, start the same page with an empty Go program, a bare page with that
// program, and the site that PINTWELVE_AGAINST names (the dist folder of another
// checkout). Blocked is what tasks took over 50 ms each from the first paint until the
// page has come to rest, as Lighthouse counts it.
// Of each the median and the 95th percentile, which of so few is the worst.
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

// begun is what a start took, in milliseconds: to the first paint, to data-ready and
// to the end of the frame that shows what then stands.
type begun struct {
	PaintedAt, ReadyAt, ShownAt, Blocked float64
}

func coldStarts(b *testing.B, factor float64) {
	hosts := map[string]*Server{"here": packed(b, Built(b)), "empty": packed(b, Empty(b)), "bare": packed(b, bare(b))}
	if files := against(b); files != nil {
		hosts["against"] = packed(b, files)
	}
	reportTurns(b, hosts, factor)
}

// reportTurns starts each site with fresh profiles, in turns, and reports what that took.
func reportTurns(b *testing.B, hosts map[string]*Server, factor float64) {
	const profiles = 7
	first, next := map[string][]begun{}, map[string][]begun{}
	for round := range 1 + profiles {
		for name, s := range hosts {
			visit, again := startTwice(b, s, factor)
			if round > 0 { // the first of each warms the machine's file caches
				first[name], next[name] = append(first[name], visit), append(next[name], again)
			}
		}
	}
	for start, took := range map[string]map[string][]begun{"first": first, "next": next} {
		reportStarts(b, start, took, func(s begun) float64 { return s.ReadyAt })
		reportEach(b, start+"-blocked", took, func(s begun) float64 { return s.Blocked })
	}
}

// reportEach reports a time of the starts of each site, in milliseconds.
func reportEach(b *testing.B, what string, took map[string][]begun, time func(begun) float64) (medians map[string]float64) {
	medians = map[string]float64{}
	for name, starts := range took {
		var times []float64
		for _, s := range starts {
			times = append(times, time(s))
		}
		medians[name] = median(times)
		b.ReportMetric(medians[name], what+"-ms-"+name)
		b.ReportMetric(p95(times), what+"-p95-"+name)
	}
	return medians
}

// reportStarts does so, and reports what this site's median is of each other's.
func reportStarts(b *testing.B, what string, took map[string][]begun, time func(begun) float64) {
	medians := reportEach(b, what, took, time)
	for name, at := range medians {
		if name != "here" {
			b.ReportMetric(medians["here"]/at, what+"-of-"+name)
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

// p95 is the 95th percentile.
func p95(values []float64) float64 {
	slices.Sort(values)
	return values[len(values)*95/100]
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
			requestAnimationFrame(() => {
				const { port1, port2 } = new MessageChannel();
				port1.onmessage = () => {
					const shownAt = performance.now();
					setTimeout(() => {
						const paintedAt = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0;
						const after = long.map(({ startTime, duration }) => startTime + duration - Math.max(startTime, paintedAt));
						globalThis.begun = {
							PaintedAt: paintedAt, ReadyAt: readyAt, ShownAt: shownAt,
							Blocked: after.reduce((sum, took) => sum + Math.max(took - 50, 0), 0),
						};
					}, 600);
				};
				port2.postMessage(0);
			});
		}).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-ready'] });`})
	p.Throttle(factor)
	p.Visit(address)
	p.Until(`globalThis.begun`)
	return Eval[begun](p, `globalThis.begun`)
}
