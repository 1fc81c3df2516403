// Package webdriver drives the page in browsers other than Chromium, by the
// commands of W3C WebDriver: WebKit by its own driver over HTTP, Firefox over
// its Marionette port, which takes the same commands without a driver between.
//
// A page finds its fields and buttons by the names that the engine computes for
// a screen reader. A helper fails its test at once when it can't do its part.
package webdriver

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// patience bounds every step; it is only spent by a step that fails.
const patience = 30 * time.Second

// command is one command of W3C WebDriver, section 6.6: over HTTP a method and a
// path within the session, to Marionette a name.
type command struct{ method, path, name string }

var (
	navigateTo    = command{"POST", "/url", "WebDriver:Navigate"}
	executeAsync  = command{"POST", "/execute/async", "WebDriver:ExecuteAsyncScript"}
	computedLabel = command{"GET", "/element/{id}/computedlabel", "WebDriver:GetComputedLabel"}
	elementClear  = command{"POST", "/element/{id}/clear", "WebDriver:ElementClear"}
	elementKeys   = command{"POST", "/element/{id}/value", "WebDriver:ElementSendKeys"}
	elementClick  = command{"POST", "/element/{id}/click", "WebDriver:ElementClick"}
)

// Keys and names that the standard fixes.
const (
	tab        = "\ue004"
	elementKey = "element-6066-11e4-a52e-4f735466cecf"
)

// wire carries commands to a browser and brings their values back.
type wire interface {
	send(c command, params map[string]any) (value json.RawMessage, err error)
}

// Page is the one window of a browser.
type Page struct {
	t    testing.TB
	wire wire
}

func (p *Page) do(c command, params map[string]any) json.RawMessage {
	p.t.Helper()
	value, err := p.wire.send(c, params)
	require.NoError(p.t, err, c.name)
	return value
}

// Visit goes to an address and waits until it is loaded, not for its answer.
func (p *Page) Visit(address string) {
	p.t.Helper()
	p.do(navigateTo, map[string]any{"url": address})
}

// Reload loads the page again and waits until it is loaded. Firefox carries out
// the standard's own command past the service worker, as no person's reload is.
func (p *Page) Reload() {
	p.t.Helper()
	var start json.Number
	require.NoError(p.t, p.run(`(setTimeout(() => location.reload()), performance.timeOrigin)`, &start))
	p.Until(fmt.Sprintf(`performance.timeOrigin !== %v && document.readyState === 'complete'`, start))
}

// Ready waits for the page's first answer.
func (p *Page) Ready() {
	p.t.Helper()
	p.Until(`document.documentElement.dataset.ready === 'true'`)
}

// run gives the value of an expression, or of what it promises. The expression
// can use args.
func (p *Page) run(expression string, value any, args ...any) error {
	script := `const args = [...arguments], done = args.pop();
		(async () => (` + expression + `))().then((value) => done({ value }), (error) => done({ error: String(error) }));`
	got, err := p.wire.send(executeAsync, map[string]any{"script": script, "args": append([]any{}, args...)})
	if err != nil {
		return err
	}
	outcome := struct {
		Value any
		Error string
	}{Value: value}
	if err := json.Unmarshal(got, &outcome); err != nil {
		return err
	}
	if outcome.Error != "" {
		return &thrown{outcome.Error}
	}
	return nil
}

// thrown is what a script threw.
type thrown struct{ what string }

func (t *thrown) Error() string { return t.what }

// Until waits until an expression, or what it promises, is true. It outlasts
// reloads of the page.
func (p *Page) Until(expression string) {
	p.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		var holds bool
		if p.run(`Boolean(await (`+expression+`))`, &holds) == nil && holds {
			return
		}
	}
	require.FailNow(p.t, "never came true: "+expression)
}

// Text returns the words that an element shows.
func (p *Page) Text(selector string) (text string) {
	p.t.Helper()
	require.NoError(p.t, p.run(`document.querySelector(args[0]).innerText`, &text, selector))
	return text
}

// Fill types text, which isn't empty, into the field with a label, in the place
// of what it holds, and leaves the field.
func (p *Page) Fill(label, text string) {
	p.t.Helper()
	id := p.named(label, "input, select, textarea")
	p.do(elementClear, map[string]any{"id": id})
	p.do(elementKeys, map[string]any{"id": id, "text": text + tab})
}

// Value returns what the field with a label holds.
func (p *Page) Value(label string) (text string) {
	p.t.Helper()
	field := map[string]string{elementKey: p.named(label, "input, select, textarea")}
	require.NoError(p.t, p.run(`args[0].value`, &text, field))
	return text
}

// Press presses the button or link with a name.
func (p *Page) Press(name string) {
	p.t.Helper()
	p.do(elementClick, map[string]any{"id": p.named(name, "button, a, summary, input[type=radio], input[type=checkbox]")})
}

// named waits for an element that can be seen and that a screen reader would
// call by a name, and returns its reference. A name is built from words that
// stand in the element, its labels or its aria-label; the engine has the last word.
func (p *Page) named(name, selector string) (id string) {
	p.t.Helper()
	const candidates = `[...document.querySelectorAll(args[1])].filter((e) => e.checkVisibility()
		&& [e, ...(e.labels ?? [])].some((o) => (o.getAttribute('aria-label') ?? o.textContent).includes(args[0])))`
	for end := time.Now().Add(patience / 3); time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		var found []map[string]string
		if p.run(candidates, &found, name, selector) != nil {
			continue // the page is being loaded
		}
		for _, element := range found {
			id := element[elementKey]
			var label string
			if json.Unmarshal(p.do(computedLabel, map[string]any{"id": id}), &label) == nil && strings.TrimSpace(label) == name {
				return id
			}
		}
	}
	require.FailNow(p.t, "nothing that can be seen is named "+name)
	return ""
}
