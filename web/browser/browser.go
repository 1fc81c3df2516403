// Package browser drives the built site in a real Chromium, as a person with a
// phone would: by labels, taps and the words on the page. It serves the site on
// the loopback address from a host that a test can stop, break and update.
//
// A helper fails its test at once when it can't do its part, and a page that
// throws, or breaks its security policy, fails the test that opened it.
package browser

import (
	"context"
	"os"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/engines"
)

// patience bounds every step; it is only spent by a step that fails.
const patience = 30 * time.Second

// Browser is a Chromium as a person has it who was never here before: its
// stores are empty, and no other Browser sees them.
type Browser struct {
	t   testing.TB
	ctx context.Context
	// Quit closes all pages, and a browser of its own as a person does, so
	// that it writes what it holds. The end of the test does it too.
	Quit func()
}

// one is the process that the tests share, each with stores of its own; to
// start a process for each would take most of their time.
var one struct {
	sync.Mutex
	ctx context.Context
	end func()
}

// Launch returns a fresh browser, which ends with the test. It skips the test
// when there is none or BROWSER=none.
func Launch(t testing.TB) *Browser {
	path := find(t)
	one.Lock()
	defer one.Unlock()
	if one.ctx == nil {
		dir, err := os.MkdirTemp("", "profile")
		require.NoError(t, err)
		ctx, quit := start(t, path, dir)
		one.ctx, one.end = ctx, func() { quit(); os.RemoveAll(dir) }
	}
	ctx, quit := chromedp.NewContext(one.ctx, chromedp.WithNewBrowserContext())
	t.Cleanup(quit)
	require.NoError(t, chromedp.Do(ctx))
	return &Browser{t, ctx, quit}
}

// End ends the process behind Launch; TestMain calls it.
func End() {
	one.Lock()
	defer one.Unlock()
	if one.ctx != nil {
		one.end()
	}
}

// LaunchIn starts a process of its own with a profile, which an earlier one may
// have used.
func LaunchIn(t testing.TB, profile string) *Browser {
	ctx, quit := start(t, find(t), profile)
	t.Cleanup(quit)
	return &Browser{t, ctx, quit}
}

func start(t testing.TB, path, profile string) (ctx context.Context, quit func()) {
	options := append(flags(), chromedp.ExecPath(path), chromedp.UserDataDir(profile))
	allocator, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, _ = chromedp.NewContext(allocator)
	quit = sync.OnceFunc(func() {
		chromedp.Cancel(ctx)
		stop()
	})
	if err := chromedp.Do(ctx); err != nil {
		quit()
		require.NoError(t, err, "start %s", path)
	}
	return ctx, quit
}

func find(t testing.TB) string {
	if engines.Off() {
		t.Skip("BROWSER=none: the browser tests are skipped")
	}
	path, err := engines.Chromium()
	if err != nil {
		t.Skip(err)
	}
	return path
}

// Profile returns an empty folder for a browser to keep its things in. It is not
// the test's own temporary folder: a Chromium that still writes there when the
// test ends would fail the test.
func Profile(t testing.TB) string {
	dir, err := os.MkdirTemp("", "profile")
	require.NoError(t, err)
	t.Cleanup(func() { os.RemoveAll(dir) })
	return dir
}

// workshop is this machine by a name that is no loopback address: over plain http
// a browser trusts it no more than any host of a network.
const workshop = "workshop.test"

// flags keep Chromium from the network; as root it runs without its sandbox.
func flags() []chromedp.ExecAllocatorOption {
	options := append([]chromedp.ExecAllocatorOption{}, chromedp.DefaultExecAllocatorOptions[:]...)
	for _, name := range []string{"disable-gpu", "disable-quic", "disable-component-update", "disable-domain-reliability"} {
		options = append(options, chromedp.Flag(name, true))
	}
	options = append(options, chromedp.Flag("host-resolver-rules", "MAP "+workshop+" 127.0.0.1, MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"))
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	return options
}

// Tab opens an empty page.
func (b *Browser) Tab() *Page {
	ctx, closeTab := chromedp.NewContext(b.ctx)
	p := &Page{t: b.t, ctx: ctx, Close: closeTab}
	b.t.Cleanup(p.checkComplaints)
	require.NoError(b.t, chromedp.Listen(ctx, p.hear))
	p.watchRest()
	return p
}

// Open opens a page at an address and waits for its first answer.
func (b *Browser) Open(address string) *Page {
	p := b.Tab()
	p.Visit(address)
	p.Ready()
	return p
}
