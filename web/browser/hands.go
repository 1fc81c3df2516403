package browser

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// Roles that a name is looked for under (WAI-ARIA 1.2).
var (
	fields  = []string{"textbox", "searchbox", "spinbutton", "combobox", "ComboBoxSelect", "slider"}
	buttons = []string{"button", "link", "radio", "checkbox", "switch", "tab", "option", "menuitem", "DisclosureTriangle", "summary"}
)

// Fill types text into the field with a label, in the place of what it holds,
// and leaves the field.
func (p *Page) Fill(label, text string) {
	p.t.Helper()
	p.Type(label, text)
	p.do(chromedp.KeyEvent(kb.Tab))
}

// Type types text into the field with a label, in the place of what it holds,
// and stays there.
func (p *Page) Type(label, text string) {
	p.t.Helper()
	field := p.named(label, fields)
	send(p, dom.Focus, dom.FocusParams{BackendNodeID: field})
	callOn[chromedp.Void](p, field, "function() { this.select() }")
	if text == "" {
		p.do(chromedp.KeyEvent(kb.Delete))
		return
	}
	send(p, input.InsertText, input.InsertTextParams{Text: text})
}

// Enter presses Enter where the caret is.
func (p *Page) Enter() {
	p.t.Helper()
	p.do(chromedp.KeyEvent(kb.Enter))
}

// Tab goes on to the next control.
func (p *Page) Tab() {
	p.t.Helper()
	p.do(chromedp.KeyEvent(kb.Tab))
}

// Insert types text where the caret is.
func (p *Page) Insert(text string) {
	p.t.Helper()
	send(p, input.InsertText, input.InsertTextParams{Text: text})
}

// Value returns what the field with a label holds.
func (p *Page) Value(label string) string {
	p.t.Helper()
	p.rest()
	return callOn[string](p, p.named(label, fields), "function() { return this.value }")
}

// Choose picks, in the list with a label, the line that reads as given.
func (p *Page) Choose(label, line string) {
	p.t.Helper()
	found := callOn[bool](p, p.named(label, fields), `function() {
		const option = [...this.options].find((o) => o.text === `+strconv.Quote(line)+`);
		if (!option) return false;
		this.value = option.value;
		this.dispatchEvent(new Event('input', { bubbles: true }));
		this.dispatchEvent(new Event('change', { bubbles: true }));
		return true;
	}`)
	require.True(p.t, found, "%s has no line %q", label, line)
}

// fromUnderTheNotice scrolls an element up from under the notice, as a person does.
const fromUnderTheNotice = `function() {
	const notice = document.getElementById('notice');
	if (!notice || notice.hidden || notice.contains(this) || notice.getBoundingClientRect().top <= 0) return;
	const under = this.getBoundingClientRect().bottom - notice.getBoundingClientRect().top;
	if (under > 0) scrollBy({ top: under, behavior: 'instant' });
}`

// Press presses the button, link or choice with a name.
func (p *Page) Press(name string) {
	p.t.Helper()
	node := p.named(name, buttons)
	send(p, dom.ScrollIntoViewIfNeeded, dom.ScrollIntoViewIfNeededParams{BackendNodeID: node})
	callOn[chromedp.Void](p, node, fromUnderTheNotice)
	quads := send(p, dom.GetContentQuads, dom.GetContentQuadsParams{BackendNodeID: node}).Quads
	require.NotEmpty(p.t, quads, "%s can't be seen", name)
	q := quads[0]
	p.do(chromedp.MouseClickXY((q[0]+q[2]+q[4]+q[6])/4, (q[1]+q[3]+q[5]+q[7])/4))
}

// Tap touches an element at a part of its width and height, each from 0 to 1.
// The page must be a Phone.
func (p *Page) Tap(selector string, across, down float64) {
	p.t.Helper()
	x, y := p.place(selector, across, down)
	p.do(chromedp.TapXY(x, y))
}

// Drag touches an element at the first point and draws the finger over the
// others; points are parts of the element's width and height.
func (p *Page) Drag(selector string, points ...[2]float64) {
	p.t.Helper()
	kind := input.DispatchTouchEventTypeTouchStart
	for _, point := range points {
		x, y := p.place(selector, point[0], point[1])
		send(p, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: []*input.TouchPoint{{X: x, Y: y}}})
		kind = input.DispatchTouchEventTypeTouchMove
	}
	send(p, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchEnd, TouchPoints: []*input.TouchPoint{}})
}

func (p *Page) place(selector string, across, down float64) (x, y float64) {
	p.t.Helper()
	box := Eval[[4]float64](p, `(() => {
		const element = document.querySelector(`+strconv.Quote(selector)+`);
		element.scrollIntoView({ block: 'nearest', behavior: 'instant' });
		(`+fromUnderTheNotice+`).call(element);
		const { left, top, width, height } = element.getBoundingClientRect();
		return [left, top, width, height];
	})()`)
	return box[0] + across*box[2], box[1] + down*box[3]
}

// named waits for an element that a screen reader would call by a name, in one
// of some roles, and returns it.
func (p *Page) named(name string, roles []string) cdp.BackendNodeID {
	p.t.Helper()
	var seen []string
	tries := 0
	for end := time.Now().Add(patience / 3); time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		seen = nil
		tries++
		root := send(p, dom.GetDocument, dom.GetDocumentParams{}).Root
		query := accessibility.QueryAXTreeParams{NodeID: root.NodeID, AccessibleName: name}
		for _, node := range p.asked(query) {
			if node.Ignored || node.Role == nil {
				continue
			}
			role := strings.Trim(string(node.Role.Value), `"`)
			if slices.Contains(roles, role) {
				return node.BackendDOMNodeID
			}
			seen = append(seen, role)
		}
		// What isn't in sight is looked for in what is folded away; what has only just come is told late.
		if tries > 2 {
			p.Unfold()
		}
	}
	require.FailNow(p.t, fmt.Sprintf("nothing named %q is a %s; so named are %v", name, strings.Join(roles, ", "), seen))
	return 0
}

// asked returns what a screen reader would find; nothing where the browser, rarely,
// gives no answer: it is asked again then.
func (p *Page) asked(query accessibility.QueryAXTreeParams) []*accessibility.Node {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience/6)
	defer cancel()
	found, err := chromedp.Call(ctx, accessibility.QueryAXTree, query)
	if errors.Is(err, context.DeadlineExceeded) {
		return nil
	}
	require.NoError(p.t, err)
	return found.Nodes
}

// callOn calls a function with an element as its this.
func callOn[T any](p *Page, node cdp.BackendNodeID, function string) T {
	p.t.Helper()
	object := send(p, dom.ResolveNode, dom.ResolveNodeParams{BackendNodeID: node}).Object
	value, err := chromedp.Run(p.ctx, chromedp.CallFunctionOn[T](function, func(params *runtime.CallFunctionOnParams) {
		params.ObjectID = object.ObjectID
		params.AwaitPromise = new(true)
	}))
	require.NoError(p.t, err, function)
	return value
}
