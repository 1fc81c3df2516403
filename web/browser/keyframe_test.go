package browser

import (
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/css"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/input"

	"pintwelve/tools/site"
)

// BenchmarkKeyToFrame times a key of a person's, from its press to the end of the
// frame that shows the answer, the processor slowed: of this site, of the one that
// PINTWELVE_AGAINST names (the dist folder of another checkout), and of a bare page
// that echoes the key, which is the least that a browser takes. They take turns, so
// that what else the machine does falls on all alike.
func BenchmarkKeyToFrame(b *testing.B) {
	const turns, keysEach = 6, 10
	for b.Loop() {
		pages := typedPages(b)
		times := map[string][]float64{}
		for turn := range turns {
			for name, p := range pages {
				for i := range keysEach {
					times[name] = append(times[name], p.press(turn*keysEach+i))
				}
			}
		}
		for name, all := range times {
			b.ReportMetric(median(all), "ms-"+name)
			b.ReportMetric(p95(all), "ms-p95-"+name)
		}
		b.ReportMetric(median(times["here"])/median(times["echo"]), "of-echo")
		if against := times["against"]; against != nil {
			b.ReportMetric(median(times["here"])/median(against), "of-against")
		}
	}
	b.ReportMetric(0, "ns/op")
}

// typedPage is a page with a field that figures are typed into, and what shows their answer.
type typedPage struct {
	*Page
	fields []string
	begun  []string // what stands in each before the key
	shown  string
}

func typedPages(b *testing.B) map[string]*typedPage {
	pages := map[string]*typedPage{
		"here": truedPage(b, Built(b)),
		"echo": echoPage(b),
	}
	if files := against(b); files != nil {
		pages["against"] = truedPage(b, files)
	}
	for _, p := range pages {
		// what DevTools itself does upon each change of the page must not count
		send(p.Page, css.Disable, cdp.Empty{})
		send(p.Page, dom.Disable, cdp.Empty{})
		p.Throttle(slowed)
		for i := range 4 {
			p.press(i)
		}
	}
	return pages
}

// truedPage is a site with a job whose answer every figure of a dial changes.
func truedPage(b *testing.B, files site.Files) *typedPage {
	s := Serve(b, "/", files)
	p := Launch(b).Tab()
	p.Phone()
	p.Visit(s.URL("/"))
	p.Ready()
	for name, text := range map[string]string{"drive.tir": "3.5", "drive.high": "3", "timing.tir": "5.5", "timing.high": "4:35"} {
		Eval[bool](p, `(() => {
			const field = document.querySelector('[name="pass.*.`+name+`"]');
			field.value = '`+text+`';
			return field.dispatchEvent(new Event('input', { bubbles: true }));
		})()`)
	}
	return &typedPage{p, []string{`[name="pass.*.drive.tir"]`, `[name="pass.*.timing.high"]`}, []string{"3.5", "4:3"}, `[data-picture="face"]`}
}

func echoPage(b *testing.B) *typedPage {
	s := Serve(b, "/", site.Files{
		"index.html": []byte(`<!doctype html><title>echo</title><input value="3.5"><p></p><script src="echo.js"></script>`),
		"echo.js":    []byte(`addEventListener('input', ({ target }) => { document.querySelector('p').textContent = target.value; });`),
	})
	p := Launch(b).Tab()
	p.Phone()
	p.Visit(s.URL("/"))
	return &typedPage{p, []string{"input"}, []string{"3.5"}, "p"}
}

// press types one more figure into a field and returns the milliseconds
// to the end of the frame that shows its answer, the page at rest before.
func (p *typedPage) press(i int) float64 {
	p.t.Helper()
	time.Sleep(250 * time.Millisecond) // a quick typist
	Eval[bool](p.Page, `(async () => {
		const field = document.querySelector(`+strconv.Quote(p.fields[i%len(p.fields)])+`);
		const frame = () => new Promise((then) => requestAnimationFrame(then));
		field.focus();
		field.value = `+strconv.Quote(p.begun[i%len(p.begun)])+`; // which no edit tells of
		await frame();
		await new Promise((then) => setTimeout(then, 150)); // that frame is to be out
		globalThis.took = new Promise((then) => {
			let pressed;
			addEventListener('keydown', ({ timeStamp }) => { pressed = timeStamp; }, { capture: true, once: true });
			new MutationObserver((_, observer) => {
				observer.disconnect();
				requestAnimationFrame(() => {
					const { port1, port2 } = new MessageChannel();
					port1.onmessage = () => then(performance.now() - pressed);
					port2.postMessage(0);
				});
			}).observe(document.querySelector(`+strconv.Quote(p.shown)+`), { subtree: true, childList: true, characterData: true, attributes: true });
		});
		return true;
	})()`)
	digit := string(rune('1' + i/len(p.fields)*5%9)) // another each time
	send(p.Page, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyDown, Key: digit, Text: digit})
	send(p.Page, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: input.DispatchKeyEventTypeKeyUp, Key: digit})
	return Eval[float64](p.Page, `globalThis.took`)
}
