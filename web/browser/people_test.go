package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/testdata/links"
)

// wholeJob opens a job that fills every step, on a phone.
func wholeJob(t *testing.T) *Page {
	t.Helper()
	link := links.Named(t, "whole-job.txt").Link
	p := Launch(t).Open(Serve(t, "/crank/", Built(t)).URL("/crank/#" + link))
	p.Phone()
	p.Press("Keep a copy")
	p.Until(`!document.documentElement.classList.contains('guest')`)
	return p
}

// eachStep shows the steps of the work in turn, everything in them unfolded.
func eachStep(p *Page, look func(step string)) {
	p.t.Helper()
	for _, step := range Eval[[]string](p, `[...document.querySelectorAll('.step')].map((step) => step.id)`) {
		Eval[bool](p, `new Promise((then) => {
			location.hash = '`+step+`';
			document.querySelectorAll('details').forEach((each) => { each.open = true; });
			setTimeout(() => setTimeout(() => then(true)), 50);
		})`)
		look(step)
	}
}

// WCAG 2.2: contrast 7:1 (1.4.6), no scrolling across at 320 px (1.4.10), text
// twice as big (1.4.4), targets of 44 px (2.5.5), and a name for each control
// (4.1.2). Text of 16 px is the project's own floor.
func TestEveryStepCanBeReadAndPressed(t *testing.T) {
	p := wholeJob(t)
	steps, texts := 0, 0
	for _, row := range []struct {
		name, feature, value string
		wide                 int64
		root                 string // the size of text, ours being 112.5 % of the browser’s own
	}{
		{"light", "prefers-color-scheme", "light", 360, ""},
		{"dark", "prefers-color-scheme", "dark", 360, ""},
		{"more contrast", "prefers-contrast", "more", 360, ""},
		{"forced colours", "forced-colors", "active", 360, ""},
		{"320 px", "prefers-color-scheme", "light", 320, ""},
		{"text of twice the size", "prefers-color-scheme", "light", 360, "225%"},
		{"text of twice the size at 320 px", "prefers-color-scheme", "light", 320, "225%"},
	} {
		p.Prefer(row.feature, row.value)
		p.do(chromedp.EmulateViewport(row.wide, 740, chromedp.EmulateMobile, chromedp.EmulateTouch))
		Eval[bool](p, `(document.documentElement.style.fontSize = '`+row.root+`', true)`)
		eachStep(p, func(step string) {
			found := Eval[struct {
				Texts  int
				Faults []string
			}](p, audit+`('`+step+`')`)
			assert.Empty(t, found.Faults, "%s, %s", step, row.name)
			steps, texts = steps+1, texts+found.Texts
		})
	}
	require.Greater(t, texts, 1000)
	t.Logf("%d views of steps, %d texts looked at", steps, texts)
}

// Nothing hangs over the side with text of twice the size before anything is read, and
// then: a phone's window widens to what hangs over, and shows all of it smaller.
func TestTheFirstScreenInTextOfTwiceTheSize(t *testing.T) {
	p, _ := bench(t)
	Eval[bool](p, `(document.documentElement.style.fontSize = '225%', true)`)
	assert.Equal(t, 360, Eval[int](p, `innerWidth`))
	twist(p)
	assert.Equal(t, 360, Eval[int](p, `innerWidth`))
	Eval[bool](p, `(document.documentElement.style.fontSize = '', true)`)
	name(p, "PIN-0417", "", "a.long.address.without.a.break@workshop.example")
	to(p, "sheet")
	assert.Equal(t, 360, Eval[int](p, `innerWidth`))
}

// The main job by keyboard alone: Tab to the first field, then Enter from each to the next.
func TestTheMainJobByKeyboardAlone(t *testing.T) {
	p, _ := bench(t)
	for range 12 {
		if focused(p) == "drive-tir" {
			break
		}
		p.Tab()
	}
	for _, each := range [][2]string{{"drive-tir", "4"}, {"drive-high", "3"}, {"timing-tir", "4"}, {"timing-high", "9"}} {
		require.Equal(t, each[0], focused(p))
		p.Insert(each[1])
		p.Enter()
	}
	assert.Equal(t, "Strike the drive wheel at 3; drive needle to 1.4 thou.", p.Text(headline))
}

// Tab reaches every control that shows, of a group of choices the chosen one, and
// shows where it is.
func TestTabGoesRoundTheWholePage(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	p.Unfold()
	Eval[bool](p, `(() => {
		document.activeElement.blur();
		window.want = new Set([...document.querySelectorAll('a, button, input, select, textarea, summary')].filter((e) =>
			e.checkVisibility() && e.tabIndex >= 0 && !e.disabled && e.type !== 'hidden' && e.type !== 'radio'));
		window.all = want.size;
		window.unseen = [];
		document.addEventListener('focusin', ({ target }) => {
			want.delete(target);
			const outlined = (e) => e && getComputedStyle(e).outlineStyle !== 'none' && parseFloat(getComputedStyle(e).outlineWidth) >= 2;
			if (!outlined(target) && !outlined(target.nextElementSibling)) unseen.push(target.outerHTML.slice(0, 80));
		});
		return true;
	})()`)
	all := Eval[int](p, `all`)
	require.Greater(t, all, 30)
	for range all + 20 {
		p.Tab()
	}
	assert.Empty(t, Eval[[]string](p, `[...want].map((e) => e.outerHTML.slice(0, 80))`), "never reached")
	assert.Empty(t, Eval[[]string](p, `unseen`), "no outline")
}

// What has the focus is not under the notice (WCAG 2.2, 2.4.11).
func TestTheNoticeHidesNoFocus(t *testing.T) {
	p := wholeJob(t)
	for _, step := range []string{"true", "balance"} {
		to(p, step)
		Eval[bool](p, `(() => {
			document.activeElement.blur();
			scrollTo(0, 0);
			document.getElementById('notice-text').textContent = 'A line that takes two lines on a phone is said here.';
			document.getElementById('notice').hidden = false;
			return true;
		})()`)
		for range 30 {
			p.Tab()
			assert.Empty(t, Eval[string](p, `(() => {
				const at = document.activeElement, notice = document.getElementById('notice');
				if (at === document.body || notice.contains(at)) return '';
				return at.getBoundingClientRect().bottom > notice.getBoundingClientRect().top ? at.outerHTML.slice(0, 80) : '';
			})()`), step)
		}
	}
}

// What had the focus and goes leaves it to what is nearest.
func TestTheFocusIsNotLost(t *testing.T) {
	p, _ := bench(t)
	at := `(({ activeElement: e }) => e.dataset.add ?? e.querySelector(':scope > legend')?.textContent ?? e.className + e.id)(document)`
	goes := func(selector, to, what string) {
		t.Helper()
		Eval[bool](p, `(() => { const button = document.querySelector('`+selector+`'); button.focus(); button.click(); return true; })()`)
		p.Until(at + `.startsWith('` + to + `')`)
		assert.Equal(t, "true", Eval[string](p, `String(document.activeElement.checkVisibility())`), what)
	}
	to(p, "lighten")
	p.Press("Add a cut")
	p.Press("Add a cut")
	goes(`#lighten [data-row="cut"] [data-remove]`, "Cut 1", "the next row")
	goes(`#lighten [data-row="cut"] [data-remove]`, "cut", "what adds one")
	to(p, "true")
	twist(p)
	p.Press("Struck: read again")
	says(p, ".pass", "As found")
	p.Unfold()
	goes(`.pass [data-look]:not([hidden])`, "pass", "the pass that is put on the bench")
	to(p, "jobs")
	p.Until(`document.querySelectorAll('#jobs-rows .job-open').length`)
	goes(`#jobs-rows .job-open`, "step bench", "the step that a job is worked on")
	to(p, "jobs")
	Eval[bool](p, `(document.querySelector('#jobs-rows .job-menu').click(), true)`)
	goes(`#jobs-rows [data-job="delete"]`, "jobs-afresh", "no job is left")
}

// What a screen reader gets of the main job (WAI-ARIA 1.2): the answer as a live
// region, the clock face as an image with a name and a description, an error as
// the description of its field, and a name for everything that takes the focus.
func TestAScreenReaderGetsTheWholeAnswer(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	nodes := send(p, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{}).Nodes
	text := func(v *accessibility.Value) string {
		if v == nil {
			return ""
		}
		return strings.Trim(string(v.Value), `"`)
	}
	live, images := 0, []string{}
	for _, node := range nodes {
		if node.Ignored {
			continue
		}
		for _, property := range node.Properties {
			switch value := string(property.Value.Value); {
			case property.Name == "focusable" && value == "true" && text(node.Role) != "RootWebArea":
				assert.NotEmpty(t, text(node.Name), "a %s without a name", text(node.Role))
			case property.Name == "live" && value == `"polite"` && text(node.Role) == "status":
				live++
			}
		}
		if text(node.Role) == "image" && strings.HasPrefix(text(node.Name), "Clock face") {
			images = append(images, text(node.Description)+text(node.Name))
		}
	}
	assert.Positive(t, live)
	require.Len(t, images, 1)
	assert.Contains(t, images[0], "Strike the drive wheel at 3")
	assert.Equal(t, "polite true", Eval[string](p, `(({ ariaLive, ariaAtomic }) => ariaLive + ' ' + ariaAtomic)(document.querySelector('#true .headline').closest('[role=status]'))`))

	p.Fill("Drive run-out", "four")
	described := Eval[[2]string](p, `(() => {
		const field = document.getElementById('drive-tir');
		return [field.ariaInvalid, document.getElementById(field.getAttribute('aria-describedby')).textContent];
	})()`)
	assert.Equal(t, "true", described[0])
	assert.Contains(t, described[1], "four")
}

func TestNothingMovesForOneWhoAsksForLessMotion(t *testing.T) {
	p := wholeJob(t)
	p.Prefer("prefers-reduced-motion", "reduce")
	eachStep(p, func(step string) {
		assert.Zero(t, Eval[int](p, `document.getAnimations().length`), step)
	})
	assert.True(t, Eval[bool](p, `document.getElementById('turn-itself').hidden`))
}

// focused is the id of what has the focus.
func focused(p *Page) string { return Eval[string](p, `document.activeElement.id`) }

// audit looks over a step and returns how many texts it saw and what is wrong.
const audit = `((id) => {
	const faults = [];
	const root = document.getElementById(id);
	const name = (e) => e.tagName + ' ' + (e.name || e.id || e.textContent.trim().slice(0, 30));
	const shown = (e) => e.checkVisibility({ opacityProperty: false }) && e.getBoundingClientRect().width > 1;
	const channels = (colour) => colour.match(/[\d.]+/g).map(Number);
	const light = (colour) => {
		const [r, g, b] = channels(colour).map((v) => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
		return 0.2126 * r + 0.7152 * g + 0.0722 * b;
	};
	const behind = (e) => {
		for (; e; e = e.parentElement) {
			const colour = getComputedStyle(e).backgroundColor;
			if ((channels(colour)[3] ?? 1) > 0.5) return colour;
		}
		return 'rgb(255, 255, 255)';
	};
	if (document.documentElement.scrollWidth > document.documentElement.clientWidth) faults.push('scrolls across: ' + document.documentElement.scrollWidth);
	for (const e of root.querySelectorAll('button, input, select, textarea, summary, a, [role="button"]')) {
		if (!shown(e)) continue;
		const target = e.closest('label.aim, label.tick') ?? e;
		const { width, height } = target.getBoundingClientRect();
		if (width < 43.9 || height < 43.9) faults.push('small target: ' + name(e) + ' ' + width + ' × ' + height);
		if (e.matches('input, select, textarea') && !e.labels.length && !e.ariaLabel) faults.push('no label: ' + name(e));
	}
	let texts = 0;
	const walk = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
	for (let node = walk.nextNode(); node; node = walk.nextNode()) {
		const e = node.parentElement;
		if (!node.data.trim() || !shown(e) || e.closest('title, desc, option')) continue;
		texts++;
		const style = getComputedStyle(e);
		const svg = e.closest('svg');
		const [a, b] = [light(svg ? style.fill : style.color), light(behind(e))].sort((x, y) => x - y);
		if ((b + 0.05) / (a + 0.05) < 7) faults.push('faint: ' + node.data.trim().slice(0, 40) + ' ' + ((b + 0.05) / (a + 0.05)).toFixed(2));
		const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;
		const least = svg && innerWidth < 340 ? 14 : 16;
		if (parseFloat(style.fontSize) * scale < least - 0.05) faults.push('small: ' + node.data.trim().slice(0, 40) + ' ' + parseFloat(style.fontSize) * scale);
	}
	return { Texts: texts, Faults: [...new Set(faults)] };
})`
