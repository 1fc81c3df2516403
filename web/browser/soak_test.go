package browser

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/heapprofiler"
	"github.com/chromedp/cdproto/page"
	"github.com/stretchr/testify/require"
)

// holdsWASM keeps the instance of the core where a script of the test finds it.
const holdsWASM = `(() => {
	const { instantiateStreaming } = WebAssembly;
	WebAssembly.instantiateStreaming = async (...all) => {
		const made = await instantiateStreaming.apply(WebAssembly, all);
		globalThis.core = made.instance;
		return made;
	};
})()`

// BenchmarkSoak makes 20,000 edits in one page and prints, every 2,000, what the
// page holds; it fails where that still grows in the second half.
func BenchmarkSoak(b *testing.B) {
	const edits, each, atOnce = 20000, 2000, 200 // at once: within patience
	for b.Loop() {
		p := watchedPage(b, nil)
		var at []held
		for done := 0; done < edits; done += each {
			for n := 0; n < each; n += atOnce {
				Eval[bool](p, editing(done+n, atOnce))
			}
			at = append(at, whatIsHeld(p))
			b.Logf("%5d edits: %s", done+each, at[len(at)-1])
		}
		half, end := at[len(at)/2-1], at[len(at)-1]
		require.LessOrEqual(b, end.Memory, half.Memory, "memory of the WASM")
		require.LessOrEqual(b, end.Nodes, half.Nodes, "nodes of the page")
		require.Less(b, end.Heap, 1.25*half.Heap, "memory of the scripts")
		b.ReportMetric(end.Memory/1e6, "MB-wasm")
		b.ReportMetric(end.Heap/1e6, "MB-scripts")
		b.ReportMetric(end.Nodes, "nodes")
	}
	b.ReportMetric(0, "ns/op")
}

// editing is a script that makes edits number from to from+n−1, each answered
// and kept before the next.
func editing(from, n int) string {
	return fmt.Sprintf(`(async (from, n) => {
		const fields = ['drive-tir', 'drive-high', 'timing-tir', 'timing-high'].map((id) => document.getElementById(id));
		for (let i = from; i < from + n; i++) {
			const field = fields[i %% 4];
			field.value = i %% 2 ? String(1 + (i %% 44) / 4).replace('.25', ':15').replace('.5', ':30').replace('.75', ':45') : String(3 + (i %% 37) / 10);
			field.dispatchEvent(new Event('input', { bubbles: true }));
			await new Promise((then) => setTimeout(then));
		}
		return true;
	})(%d, %d)`, from, n)
}

// held is what a page holds; sizes in bytes.
type held struct{ Memory, Heap, Nodes float64 }

func (h held) String() string {
	return fmt.Sprintf("WASM %.1f MB, scripts %.2f MB, %.0f nodes", h.Memory/1e6, h.Heap/1e6, h.Nodes)
}

func whatIsHeld(p *Page) held {
	send(p, heapprofiler.CollectGarbage, cdp.Empty{})
	return Eval[held](p, `({
		Memory: core.exports.mem.buffer.byteLength,
		Heap: performance.memory.usedJSHeapSize,
		Nodes: document.querySelectorAll('*').length,
	})`)
}

// watchedPage opens the page on a job, or on none, with its core in reach.
func watchedPage(b *testing.B, job map[string]string) *Page {
	p := Launch(b).Tab()
	p.Phone()
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: holdsWASM})
	p.Visit(Serve(b, "/", WithModules(b)).URL("/"))
	p.Ready()
	if job != nil {
		keep(p, job)
		p.Reload()
		p.Ready()
	}
	return p
}

// keep puts a job into the page's store as the one on the bench.
func keep(p *Page, job map[string]string) {
	var pairs strings.Builder
	for name, text := range job {
		fmt.Fprintf(&pairs, "[%q, %q], ", name, text)
	}
	Eval[bool](p, `import('./store.js').then(async ({ openStore }) => {
		const store = await openStore();
		await store.put({ id: 'soaked', rev: 0 }, Object.fromEntries([`+pairs.String()+`]));
		await store.setCurrent('soaked');
		sessionStorage.clear(); // where the tab remembers the job it began with
		return true;
	})`)
}

// BenchmarkCostAgainstSize prints what an edit takes, the first part of its answer and
// the layout of that, by how much the job holds.
func BenchmarkCostAgainstSize(b *testing.B) {
	for _, row := range []struct{ passes, points int }{{1, 4}, {1, 360}, {10, 8}, {100, 4}, {100, 8}, {100, 360}} {
		b.Run(fmt.Sprintf("passes=%d/points=%d", row.passes, row.points), func(b *testing.B) {
			for b.Loop() {
				p := watchedPage(b, bigJob(row.passes, row.points))
				require.Equal(b, row.passes, Eval[int](p, `document.querySelectorAll('.pass').length`))
				b.ReportMetric(Eval[float64](p, `(async () => {
					const field = document.getElementById('drive-turn');
					const turn = field.value;
					const times = [];
					for (let i = 0; i < 10; i++) {
						field.value = turn.replace(/^\S+/, String(i % 7 / 2));
						const start = performance.now();
						field.dispatchEvent(new Event('input', { bubbles: true }));
						await new Promise((then) => setTimeout(then));
						document.body.getBoundingClientRect();
						times.push(performance.now() - start);
					}
					return times.sort((a, b) => a - b)[5];
				})()`), "ms-median")
				h := whatIsHeld(p)
				b.ReportMetric(h.Memory/1e6, "MB-wasm")
				b.ReportMetric(h.Nodes, "nodes")
			}
			b.ReportMetric(0, "ns/op")
		})
	}
}

func bigJob(passes, points int) map[string]string {
	job := map[string]string{}
	turn := strings.TrimSuffix(strings.Repeat("0 1 2 1 ", points/4), " ")
	for i := range passes {
		at := "pass.p" + strconv.Itoa(i) + "."
		job[at+"order"] = strconv.Itoa(i + 1)
		for _, side := range []string{"drive", "timing"} {
			job[at+side+".how"] = "turn"
			job[at+side+".points"] = "given"
			job[at+side+".turn"] = turn
			var hours strings.Builder
			for n := range points {
				fmt.Fprintf(&hours, "%.4g ", 12*float64(n)/float64(points))
			}
			job[at+side+".hours"] = hours.String()
		}
	}
	return job
}
