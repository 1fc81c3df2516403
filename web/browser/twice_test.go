package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Text of twice the size (WCAG 2.2, 1.4.4) in a window of 360 px, and of 320 px
// with text as it is: what stands in a field, or in its place while it is blank,
// is whole and clear of its unit. Ours is 112.5 % of the browser's own size.
func TestNoFieldCutsWhatStandsInIt(t *testing.T) {
	p := wholeJob(t)
	fields := 0
	for _, row := range []struct {
		name string
		wide int64
		root string
	}{{"as it is", 360, ""}, {"a narrow phone", 320, ""}, {"twice the size", 360, "225%"}} {
		p.do(chromedp.EmulateViewport(row.wide, 740, chromedp.EmulateMobile, chromedp.EmulateTouch))
		Eval[bool](p, `(document.documentElement.style.fontSize = '`+row.root+`', true)`)
		eachStep(p, func(step string) {
			found := Eval[struct {
				Fields int
				Cut    []string
			}](p, cutFields+`('`+step+`')`)
			assert.Empty(t, found.Cut, "%s, %s", step, row.name)
			fields += found.Fields
		})
	}
	require.Greater(t, fields, 500)
	t.Logf("%d fields looked at", fields)
}

// cutFields looks over the fields of a step that show: what stands in each, a
// figure of usual length, and what stands there while it is blank.
const cutFields = `((id) => {
	const cut = [];
	let fields = 0;
	const pen = document.createElement('canvas').getContext('2d');
	const widthOf = (text, style) => {
		pen.font = [style.fontStyle, style.fontWeight, style.fontSize, style.fontFamily].join(' ');
		pen.fontKerning = 'normal';
		return pen.measureText(text).width + text.length * (parseFloat(style.letterSpacing) || 0);
	};
	for (const e of document.getElementById(id).querySelectorAll('input:not([type]), input[type="text"], input[type="search"], select')) {
		if (!e.checkVisibility() || e.getBoundingClientRect().width < 2) continue;
		fields++;
		const style = getComputedStyle(e);
		const box = e.getBoundingClientRect();
		const unit = e.parentElement.matches('.with-unit') && e.parentElement.querySelector('.unit');
		const label = (text) => (e.name || e.id) + ' “' + text + '”';
		const check = (text, font, blank) => {
			const left = box.left + parseFloat(style.borderLeftWidth) + parseFloat(style.paddingLeft);
			const right = box.right - parseFloat(style.borderRightWidth) - parseFloat(style.paddingRight);
			const seen = unit && getComputedStyle(unit).opacity !== '0' && unit.textContent;
			const before = seen ? document.createRange() : null;
			before?.selectNodeContents(unit);
			const at = before?.getBoundingClientRect();
			const beside = at && at.top < box.bottom - 4 && at.bottom > box.top + 4;
			const arrow = e.tagName === 'SELECT' ? 18 : 0;
			const room = Math.min(right - arrow, beside ? at.left : Infinity) - left;
			const wide = widthOf(text, font);
			if (wide > room + 1) cut.push(label(text) + (blank ? ' while blank' : '') + ' is ' + wide.toFixed() + ' px wide in ' + room.toFixed());
		};
		if (e.tagName === 'SELECT') {
			check(e.selectedOptions[0].text, style, false);
			continue;
		}
		const was = e.value;
		e.value = '';
		if (e.placeholder) check(e.placeholder, getComputedStyle(e, '::placeholder'), true);
		e.value = 'hour' in e.dataset ? '12:45' : '88.88';
		if ('hour' in e.dataset || e.inputMode === 'decimal' || e.closest('.with-unit')) check(e.value, style, false);
		e.value = was;
	}
	return { Fields: fields, Cut: cut };
})`
