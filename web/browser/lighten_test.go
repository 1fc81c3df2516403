package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// lightenBench goes to the step from the order of the work.
func lightenBench(t *testing.T) *Page {
	t.Helper()
	p, _ := bench(t)
	p.Press("Pintwelve: the order of the work")
	p.Press("Lighten")
	p.Until(`!document.getElementById('lighten').hidden`)
	return p
}

// single types in the wheel of a 500 cc single with a recess in each side.
func single(p *Page) {
	p.Fill("Diameter of the drive wheel", "200")
	p.Fill("Width over all of the drive wheel", "28")
	p.Fill("Bore for the shaft of the drive wheel", "24")
	for _, row := range []string{"As made 1", "As made 2"} {
		p.Press("Add a recess, bevel or holes")
		p.Fill(row+" Inner diameter", "60")
		p.Fill(row+" Outer diameter", "160")
		p.Fill(row+" Depth", "5")
	}
	p.Choose("As made 2 From the face towards", "the rod")
}

const (
	lightened = "#lighten .headline"
	section   = `[data-picture="lighten.drive"]`
)

func TestTheWheelsAreLightenedFromFirstTapToLast(t *testing.T) {
	p := lightenBench(t)
	assert.Equal(t, "Each wheel weighs 6133 g, as drawn.", p.Text(lightened))
	assert.Contains(t, p.Text("#lighten .answer"), "Figures in italics are assumed")
	single(p)
	assert.Equal(t, "Each wheel weighs 5449 g, as drawn.", p.Text(lightened))
	whole := Eval[string](p, `document.querySelector('`+section+`').innerHTML`)

	// Plan backwards, with a cut of one's own before it.
	p.Press("Add a cut")
	p.Fill("Weight to come off each wheel, in all", "0.75 kg")
	p.Choose("Cut 1 What is cut", "drill through holes")
	p.Fill("Cut 1 How many holes", "6")
	p.Fill("Cut 1 On a circle of", "140")
	p.Fill("Cut 1 First at hour", "1")
	p.Fill("Cut 1 Drill", "10")
	p.Press("Add a cut")
	p.Fill("Cut 2 Inner diameter", "48")
	p.Fill("Cut 2 Outer diameter", "168")
	assert.Equal(t, "750 g off each wheel", p.Text(lightened))
	assert.Equal(t, "10.3% of the inertia off", p.Text("#lighten .headline + .headline"))
	assert.Equal(t, "Cut 2: 8.6 mm deep on each wheel.", p.Text("#lighten .then"))
	assert.Contains(t, p.Text("#lighten .answer"), "A lightened wheel can burst.")
	assert.Equal(t, "8.6 mm found", Eval[string](p, `[...document.querySelectorAll('[name="cut.*.depth"]')].at(-1).placeholder`))
	assert.NotEqual(t, whole, Eval[string](p, `document.querySelector('`+section+`').innerHTML`), "the section follows the figures")
	assert.Contains(t, p.Text("#lighten"), "13 g more is counted with the cuts before.")

	// What it does, and whether it will hold.
	p.Fill("Idle speed now", "900")
	p.Fill("Rear wheel, axle to ground", "310")
	p.Fill("Each gear: turns of the crank to one of the rear wheel", "14 5")
	p.Fill("Highest speed it will ever see", "6000")
	page := p.Text("#lighten")
	for _, words := range []string{
		"Clutch out it picks up 1.11 times as fast.", "it wants 950 rpm", "120.6 kg → 108.2 kg; 15.4 kg → 13.8 kg",
		"the balance factor stays as it was", "the material tears at 550 MPa, 17.7 times as much", "The maker’s limits, local rules and a licensed shop’s judgement decide.",
	} {
		assert.Contains(t, page, words)
	}

	// Swing test, by the stopwatch and by a list.
	p.Press("Add a swing test")
	p.Fill("Swing 1 From the edge to the shaft’s middle", "80")
	for range 5 {
		p.Press("Swing 1 Tap at each pass")
	}
	tapped := strings.Fields(p.Value("Swing 1 Passes, as timed"))
	assert.Len(t, tapped, 5)
	assert.Equal(t, "0", tapped[0])
	assert.Contains(t, p.Text("#lighten"), "5 passes so far")
	Eval[bool](p, `(document.getElementById('undo').click(), true)`)
	assert.Equal(t, tapped[:4], strings.Fields(p.Value("Swing 1 Passes, as timed")), "each tap is a change of its own")
	p.Press("Swing 1 Start again")
	assert.Empty(t, p.Value("Swing 1 Passes, as timed"))
	p.Fill("Swing 1 Passes, as timed", "0 0.39 0.77 1.15 1.54 1.92 2.31 2.69 3.08 3.46 3.84 4.23")
	assert.Contains(t, p.Text("#lighten"), "over 5.5 swings.")
	assert.Contains(t, p.Text("#lighten"), "The swing counts.")

	// Weigh-in.
	p.Fill("Drive, before", "5440")
	p.Fill("Drive, after", "4687")
	assert.Contains(t, p.Text("#lighten"), "9 g over the scale (0.2%).")
	assert.Contains(t, p.Text("#lighten"), "Off: 753 g, 750 g planned: 3 g too much.")

	p.Until(kept(`form['wheel.drive.after'] === '4687'`))
	p.Reload()
	p.Ready()
	assert.Equal(t, "753 g off the drive wheel, 750 g off the timing wheel", p.Text(lightened))
	assert.Equal(t, "140", p.Value("Cut 1 On a circle of"))
}

func TestACutTakenOutComesBack(t *testing.T) {
	p := lightenBench(t)
	p.Press("Add a cut")
	p.Choose("Cut 1 What is cut", "turn the rim down")
	p.Fill("Cut 1 Down to diameter", "190")
	off := p.Text(lightened)
	assert.Contains(t, off, "g off each wheel")
	p.Fill("Scale’s step", "2")
	p.Press("Take out Cut 1")
	assert.Contains(t, p.Text(lightened), "Each wheel weighs")
	p.Press("Put it back")
	assert.Equal(t, off, p.Text(lightened))
	assert.Equal(t, "190", p.Value("Cut 1 Down to diameter"))
	assert.Equal(t, "2", p.Value("Scale’s step"), "only the cut is put back")
}

func TestAnImpossibleCutIsSaidBesideItsField(t *testing.T) {
	p := lightenBench(t)
	p.Press("Add a cut")
	p.Fill("Cut 1 Inner diameter", "60")
	p.Fill("Cut 1 Outer diameter", "230")
	p.Fill("Cut 1 Depth", "5")
	assert.Equal(t, "Mend the figure marked Wrong below.", p.Text(lightened))
	said := Eval[string](p, `(() => {
		const control = document.querySelector('#lighten [aria-invalid="true"]');
		return control.name + ': ' + document.getElementById(control.getAttribute('aria-describedby')).textContent;
	})()`)
	assert.Equal(t, "cut.*.to: 230 mm lies outside the wheel: 60 mm to 190 mm will do", said)
	p.Fill("Cut 1 Outer diameter", "160")
	assert.Contains(t, p.Text(lightened), "g off each wheel")
}

func TestTheLighteningFitsANarrowPhoneAndAThumb(t *testing.T) {
	p := lightenBench(t)
	single(p)
	p.Press("Add a cut")
	p.Press("Add a swing test")
	p.Fill("Highest speed it will ever see", "6000")
	Eval[bool](p, `(document.querySelectorAll('#lighten details').forEach((d) => { d.open = true; }), true)`)
	for _, width := range []int64{360, 320} {
		p.do(chromedp.EmulateViewport(width, 740, chromedp.EmulateMobile, chromedp.EmulateTouch, chromedp.EmulateScale(2)))
		assert.LessOrEqual(t, Eval[int64](p, `document.documentElement.scrollWidth`), width)
		assert.Empty(t, Eval[[]string](p, `[...document.querySelectorAll('#lighten :is(button, input, select, textarea, summary)')]
			.filter((e) => e.offsetParent && e.getBoundingClientRect().height < 44).map((e) => e.outerHTML)`))
		assert.Empty(t, Eval[[]string](p, `[...document.querySelectorAll('#lighten *')].filter((e) => e.offsetParent && !e.closest('.unseen, svg') &&
			parseFloat(getComputedStyle(e).fontSize) < 16).map((e) => e.outerHTML.slice(0, 90))`))
	}
}

// A dimension on the section leads to the field that it is typed in, whatever that is folded
// away in, by a thumb and by a key. Targets are as large as a thumb (WCAG 2.2, 2.5.5), none on another.
func TestADimensionOnTheSectionLeadsToItsField(t *testing.T) {
	p := lightenBench(t)
	p.Phone()
	h := p.Thumb()
	leads := func(field string) {
		t.Helper()
		p.Until(`document.activeElement.name === '` + field + `'`)
		assert.True(t, Eval[bool](p, `(({ top, bottom }) => top >= 0 && bottom <= innerHeight)(document.activeElement.getBoundingClientRect())`), "%s is in sight", field)
	}
	h.Tap("change width 28 mm assumed")
	leads("wheel.drive.width")
	h.Tap("change diameter 190 mm assumed")
	leads("wheel.drive.diameter")

	p.Press("Add a cut")
	p.Fill("Cut 1 Inner diameter", "70")
	p.Fill("Cut 1 Outer diameter", "150")
	p.Fill("Cut 1 Depth", "5")
	h.Tap("change diameter 150 mm")
	leads("cut.*.to")
	h.Tap("change cut 1")
	leads("cut.*.depth")

	p.Fill("Bore for the shaft of the drive wheel", "24")
	p.Fill("Bore for the shaft of the timing wheel", "26")
	Eval[bool](p, `(document.querySelectorAll('#lighten details').forEach((d) => { d.open = false; }), true)`)
	h.Tap("change diameter 26 mm")
	leads("wheel.timing.bore")

	Eval[bool](p, `(document.querySelector('[data-picture="lighten.drive"] [aria-label^="change width"]').focus(), true)`)
	p.Enter()
	leads("wheel.drive.width")

	p.Narrow()
	assert.Empty(t, Eval[[]string](p, `(() => {
		const all = [...document.querySelectorAll('[data-field]')].map((e) => ({ e, box: e.getBoundingClientRect() }));
		const faults = all.filter(({ box }) => box.width < 44 || box.height < 44).map(({ e }) => 'small: ' + e.ariaLabel);
		for (const a of all) for (const b of all) {
			const over = Math.min(a.box.right, b.box.right) > Math.max(a.box.left, b.box.left) + 1 && Math.min(a.box.bottom, b.box.bottom) > Math.max(a.box.top, b.box.top) + 1;
			if (a !== b && over) faults.push(a.e.ariaLabel + ' lies on ' + b.e.ariaLabel);
		}
		return all.length < 10 ? ['only ' + all.length] : faults;
	})()`))
}
