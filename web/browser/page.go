package browser

import (
	"context"
	"errors"
	"os"
	"strconv"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Page is one open tab.
type Page struct {
	t     testing.TB
	ctx   context.Context
	Close func()

	mu         sync.Mutex
	complaints []string
}

// hear notes what a page must never have to say.
func (p *Page) hear(event any) {
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		text := e.ExceptionDetails.Text
		if thrown := e.ExceptionDetails.Exception; thrown != nil {
			text += " " + thrown.Description
		}
		p.complain(text)
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError {
			p.complain("console.error was called")
		}
	case *page.EventJavascriptDialogOpening:
		// A page with text that is not kept asks before it is left.
		go chromedp.Call(p.ctx, page.HandleJavaScriptDialog, page.HandleJavaScriptDialogParams{Accept: true})
	case *log.EventEntryAdded:
		if e.Entry.Source == log.EntrySourceSecurity {
			p.complain(e.Entry.Text)
		}
	}
}

func (p *Page) complain(text string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.complaints = append(p.complaints, text)
}

func (p *Page) checkComplaints() {
	p.mu.Lock()
	defer p.mu.Unlock()
	assert.Empty(p.t, p.complaints, "what the page complained of")
}

// do carries out steps that give nothing back.
func (p *Page) do(steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	require.NoError(p.t, chromedp.Do(ctx, steps...))
}

// send sends one command of the DevTools protocol and returns its result.
func send[P, R any](p *Page, command cdp.Command[P, R], params P) R {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	result, err := chromedp.Call(ctx, command, params)
	require.NoError(p.t, err, command.Method)
	return result
}

// Eval runs a script on the page at rest, waits for its promise, and returns its value.
func Eval[T any](p *Page, script string) T {
	p.t.Helper()
	p.rest()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	require.NoError(p.t, err, script)
	return value
}

// Until waits until a script's value, or what it promises, is true. It outlasts reloads of the page.
func (p *Page) Until(script string) {
	p.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		ctx, cancel := context.WithTimeout(p.ctx, patience)
		holds, err := chromedp.Run(ctx, chromedp.Evaluate[bool]("(async () => Boolean(await ("+script+")))()", chromedp.EvalAwaitPromise))
		cancel()
		if err == nil && holds {
			return
		}
	}
	require.FailNow(p.t, "never came true: "+script)
}

// Visit goes to an address and waits until it is loaded, not for its answer. Of a page
// that loads itself anew as it loads, for a newer version, nothing tells that it is.
func (p *Page) Visit(address string) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience/2)
	defer cancel()
	err := chromedp.Do(ctx, chromedp.Navigate(address))
	if errors.Is(err, context.DeadlineExceeded) {
		p.Until(`document.readyState === 'complete' && location.protocol !== 'about:'`)
		return
	}
	require.NoError(p.t, err)
}

// Reload loads the page again and waits until it is loaded.
func (p *Page) Reload() {
	p.t.Helper()
	p.do(chromedp.Reload())
}

// Ready waits for the page's first answer.
func (p *Page) Ready() {
	p.t.Helper()
	p.Until(`document.documentElement.dataset.ready === 'true'`)
}

// Text returns the words that an element shows, unfolded where it is folded away.
func (p *Page) Text(selector string) string {
	p.t.Helper()
	return Eval[string](p, `(() => {
		const element = document.querySelector(`+strconv.Quote(selector)+`);
		for (let fold = element.closest('details'); fold; fold = fold.parentElement.closest('details')) fold.open = true;
		return element.innerText;
	})()`)
}

// Unfold opens whatever is folded away in the step that shows.
func (p *Page) Unfold() {
	p.t.Helper()
	Eval[bool](p, `(document.querySelectorAll('.step:not([hidden]) details').forEach((fold) => { fold.open = true; }), true)`)
}

// Phone makes the page 360 × 740 with touch, as on a phone held upright.
func (p *Page) Phone() {
	p.t.Helper()
	p.do(chromedp.EmulateViewport(360, 740, chromedp.EmulateMobile, chromedp.EmulateTouch, chromedp.EmulateScale(2)))
}

// Narrow makes the page as wide as the smallest phones.
func (p *Page) Narrow() {
	p.t.Helper()
	p.do(chromedp.EmulateViewport(320, 568, chromedp.EmulateMobile, chromedp.EmulateTouch))
}

// Prefer sets a media feature, such as prefers-color-scheme to dark.
func (p *Page) Prefer(feature, value string) {
	p.t.Helper()
	send(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: feature, Value: value}},
	})
}

// Throttle slows the page's processor by a factor; 1 is full speed.
func (p *Page) Throttle(factor float64) {
	p.t.Helper()
	send(p, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: factor})
}

// WithoutHTTPCache keeps the page from the browser's own cache, so that what
// still loads without a network comes from the service worker.
func (p *Page) WithoutHTTPCache() {
	p.t.Helper()
	send(p, network.ClearBrowserCache, cdp.Empty{})
	send(p, network.SetCacheDisabled, network.SetCacheDisabledParams{CacheDisabled: true})
}

// Screenshot writes what the screen shows to a PNG file.
func (p *Page) Screenshot(file string) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	picture, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	require.NoError(p.t, err)
	require.NoError(p.t, os.WriteFile(file, picture, 0o644))
}
