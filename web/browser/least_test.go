package browser

import (
	"maps"
	"strings"
	"testing"

	"pintwelve/tools/site"
)

// BenchmarkLeastStart times, in turns, what no start of this first screen can be under: of
// the screen as still HTML, with the bare page's script and its empty program; of no more of
// it than shows on a phone, all else taken out; and of that with this core, asked once,
// in the place of the empty program. As BenchmarkColdStart it reports them beside the bare page.
func BenchmarkLeastStart(b *testing.B) {
	for b.Loop() {
		still := stillScreen(b)
		showing := withPage(still, whatShows(b, still))
		turns := map[string]*Server{
			"bare": packed(b, bare(b)), "still": packed(b, still), "showing": packed(b, showing), "core": packed(b, withCore(b, showing)), "here": packed(b, Built(b)),
		}
		reportTurns(b, turns, slowed)
	}
	b.ReportMetric(0, "ns/op")
}

// stillScreen is the page with none of its scripts, but the bare page's and its program.
func stillScreen(b *testing.B) site.Files {
	files, least := Built(b), bare(b)
	page := strings.NewReplacer(`<script src=first.js></script>`, "", `src=main.js`, `src=bare.js`).Replace(string(files["index.html"]))
	return site.Files{
		"index.html": []byte(page), "app.css": files["app.css"], "draw.css": files["draw.css"],
		"bare.js": least["bare.js"], "core.wasm": least["core.wasm"],
	}
}

// whatShows is the page of a still screen with what shows on a phone alone; what the first
// paint waits for stays.
func whatShows(b *testing.B, still site.Files) string {
	p := Launch(b).Tab()
	p.Phone()
	p.Visit(Serve(b, "/", still).URL("/"))
	p.Ready()
	return Eval[string](p, `(() => {
		delete document.documentElement.dataset.ready;
		for (const text of document.querySelectorAll('script[type="text/html"]')) text.remove();
		for (const each of document.querySelectorAll('body *')) {
			const unseen = !each.closest('svg') && !each.checkVisibility() || each.getBoundingClientRect().top > innerHeight;
			if (unseen && each.id !== 'offline' && !each.querySelector('#offline')) each.remove();
		}
		return '<!doctype html>' + document.documentElement.outerHTML;
	})()`)
}

func withPage(files site.Files, page string) site.Files {
	out := maps.Clone(files)
	out["index.html"] = []byte(page)
	return out
}

// withCore starts this site's core in the place of the empty program.
func withCore(b *testing.B, files site.Files) site.Files {
	out := withPage(files, string(files["index.html"]))
	out["core.wasm"] = Built(b)["core.wasm"]
	out["bare.js"] = []byte(strings.Replace(string(files["bare.js"]), `pintwelve('answer', '', '')`, `pintwelve('answer', '', '', 'part\0true')`, 1))
	return out
}
