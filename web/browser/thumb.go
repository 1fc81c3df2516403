package browser

import (
	"strconv"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// Thumb is one finger on a Phone. It touches what it sees, scrolls to what it
// doesn't, and counts both: a way that needs no scrolling counts none.
type Thumb struct {
	p                     *Page
	Taps, Scrolls, Fields int
	// Typed, unless nil, is told of each field that was filled what moved meanwhile.
	Typed func(Typed)
}

// Thumb returns a finger that has done nothing yet.
func (p *Page) Thumb() *Thumb { return &Thumb{p: p} }

// Tap touches the button, link or choice with a name.
func (h *Thumb) Tap(name string) {
	h.p.t.Helper()
	h.touch(name, buttons)
}

// Fill touches the field with a label and types into it, in the place of what it holds.
func (h *Thumb) Fill(label, text string) {
	h.p.t.Helper()
	h.touch(label, fields)
	h.Fields++
	Eval[bool](h.p, `(document.activeElement.select?.(), true)`)
	if h.Typed == nil {
		h.p.Insert(text)
		return
	}
	top := func() float64 { return Eval[float64](h.p, `document.activeElement.getBoundingClientRect().top`) }
	h.p.WatchShifts()
	before := top()
	h.p.Insert(text)
	time.Sleep(typedRest)
	h.Typed(Typed{label, top() - before, h.p.Shifts()})
}

// Typed is what moved on the screen while a field was filled: the field itself, in
// pixels down, and whatever did.
type Typed struct {
	Label string
	By    float64
	Moved []Shift
}

// typedRest is when the rest of the answer to what was typed stands too.
const typedRest = 150 * time.Millisecond

// FillNth is Fill of the n-th control of a selector, whose label is another's too.
func (h *Thumb) FillNth(selector string, n int, text string) {
	h.p.t.Helper()
	const name = "the field of a row"
	h.p.Until(`document.querySelectorAll(` + strconv.Quote(selector) + `).length > ` + strconv.Itoa(n))
	Eval[bool](h.p, `(document.querySelectorAll(`+strconv.Quote(selector)+`)[`+strconv.Itoa(n)+`].setAttribute('aria-label', '`+name+`'), true)`)
	h.Fill(name, text)
	Eval[bool](h.p, `(document.querySelector('[aria-label="`+name+`"]').removeAttribute('aria-label'), true)`)
}

// Unfold touches the summary of a fold.
func (h *Thumb) Unfold(id string) {
	h.p.t.Helper()
	const name = "a fold"
	Eval[bool](h.p, `(document.querySelector('#`+id+` > summary').setAttribute('aria-label', '`+name+`'), true)`)
	h.Tap(name)
	Eval[bool](h.p, `(document.querySelector('#`+id+` > summary').removeAttribute('aria-label'), true)`)
}

// Choose touches the list with a label, and in it the line that reads as given.
func (h *Thumb) Choose(label, line string) {
	h.p.t.Helper()
	h.reach(label, fields)
	h.Taps += 2
	h.Fields++
	h.p.Choose(label, line)
}

// TapJob touches the row of a job that begins with a number.
func (h *Thumb) TapJob(number string) {
	h.p.t.Helper()
	open := `[...document.querySelectorAll('.job-open')].find((each) => each.textContent.startsWith(` + strconv.Quote(number) + `) && each.checkVisibility())`
	h.p.Until(`Boolean(` + open + `)`)
	Eval[bool](h.p, `(`+open+`.setAttribute('aria-label', 'the row of a job'), true)`)
	h.touch("the row of a job", buttons)
}

func (h *Thumb) touch(name string, roles []string) {
	h.p.t.Helper()
	node := h.reach(name, roles)
	quads := send(h.p, dom.GetContentQuads, dom.GetContentQuadsParams{BackendNodeID: node}).Quads
	require.NotEmpty(h.p.t, quads, "%s can't be seen", name)
	q := quads[0]
	h.Taps++
	h.p.do(chromedp.TapXY((q[0]+q[2]+q[4]+q[6])/4, (q[1]+q[3]+q[5]+q[7])/4))
}

// reach scrolls to what has a name, where it isn't in sight.
func (h *Thumb) reach(name string, roles []string) cdp.BackendNodeID {
	h.p.t.Helper()
	node := h.p.named(name, roles)
	// Seen whole, once the page stands still: not under the edge of the screen, nor under anything that lies on it.
	seen := callOn[bool](h.p, node, `async function() {
		const target = this.closest('label') ?? this;
		const frame = () => new Promise((then) => requestAnimationFrame(then));
		for (let stood = NaN, frames = 0; frames < 6; frames++) {
			const { top } = target.getBoundingClientRect();
			if (top !== stood) frames = 0;
			stood = top;
			await frame();
		}
		const { left, right, top, bottom } = target.getBoundingClientRect();
		const at = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
		return top >= 0 && bottom <= innerHeight && (target.contains(at) || at?.contains(target));
	}`)
	if !seen {
		h.Scrolls++
		callOn[chromedp.Void](h.p, node, `function() { this.scrollIntoView({ block: 'center', behavior: 'instant' }) }`)
	}
	return node
}

// WatchShifts notes from now on whatever moves on the screen without being
// scrolled, at once after a touch too.
func (p *Page) WatchShifts() {
	p.t.Helper()
	Eval[bool](p, `(() => {
		window.shiftsSeen?.disconnect();
		window.shifts = [];
		const note = (list) => {
			for (const entry of list.getEntries()) {
				const names = entry.sources.map(({ node }) => node && (node.id || node.className || node.nodeName || node.textContent).toString().slice(0, 30));
				window.shifts.push([entry.value, names.join(', '), !entry.hadRecentInput]);
			}
		};
		window.shiftsSeen = new PerformanceObserver(note);
		window.shiftsSeen.observe({ type: 'layout-shift' });
		window.shiftNote = note;
		return true;
	})()`)
}

// Shift is one movement: how much of the screen by how much of it, what moved, and
// whether it came by itself, more than half a second after the last key or touch.
type Shift struct {
	By       float64
	What     string
	ByItself bool
}

// Shifts returns what has moved since WatchShifts.
func (p *Page) Shifts() (all []Shift) {
	p.t.Helper()
	for _, each := range Eval[[][3]any](p, `new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(() => {
		window.shiftNote({ getEntries: () => window.shiftsSeen.takeRecords() });
		then(window.shifts);
	})))`) {
		all = append(all, Shift{each[0].(float64), each[1].(string), each[2].(bool)})
	}
	return all
}
