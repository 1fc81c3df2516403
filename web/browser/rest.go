package browser

import (
	"context"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// watchRest counts what a page has put off to soon: its short timers and the frames
// it waits for. A frame asked for in a frame is of an animation, which never rests.
const watchRest = `{
	const SOON_MS = 60;
	const put = new Set();
	const { setTimeout: timer, clearTimeout: clear, requestAnimationFrame: ask, cancelAnimationFrame: cancel } = globalThis;
	let inFrame = false;
	globalThis.setTimeout = (then, ms = 0, ...rest) => {
		const id = timer(() => { put.delete(id); then(...rest); }, ms);
		if (ms <= SOON_MS) put.add(id);
		return id;
	};
	globalThis.clearTimeout = (id) => { put.delete(id); clear(id); };
	globalThis.requestAnimationFrame = (then) => {
		const id = ask((time) => {
			put.delete('frame' + id);
			inFrame = true;
			try { then(time); } finally { inFrame = false; }
		});
		if (!inFrame) put.add('frame' + id);
		return id;
	};
	globalThis.cancelAnimationFrame = (id) => { put.delete('frame' + id); cancel(id); };
	globalThis.atRest = async () => {
		do { await new Promise((then) => timer(then)); } while (put.size); // an event that waits, such as hashchange, comes before a timer
		return true;
	};
}`

// watchRest makes the page tell when it is at rest; a page that is timed is left alone.
func (p *Page) watchRest() {
	if _, timed := p.t.(*testing.B); timed {
		return
	}
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: watchRest})
}

// rest waits for what the page has put off to soon, as a person looks when what
// is answered has come. A page that goes or never rests isn't waited for.
func (p *Page) rest() {
	ctx, cancel := context.WithTimeout(p.ctx, 5*time.Second)
	defer cancel()
	_, _ = chromedp.Run(ctx, chromedp.Evaluate[bool](`globalThis.atRest?.() ?? true`, chromedp.EvalAwaitPromise))
}
