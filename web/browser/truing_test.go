package browser

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// bench opens the page itself on a phone, in a folder of a host.
func bench(t *testing.T) (*Page, *Server) {
	t.Helper()
	p, server, _ := benchIn(t)
	return p, server
}

// benchIn is bench with the browser that it is open in.
func benchIn(t *testing.T) (*Page, *Server, *Browser) {
	t.Helper()
	server := Serve(t, "/crank/", WithModules(t))
	b := Launch(t)
	p := b.Open(server.URL("/crank/"))
	p.Phone()
	return p, server, b
}

const headline = "#true .headline"

// twist types readings that a strike mends: four fields by their labels.
func twist(p *Page) {
	p.Fill("Drive run-out", "4")
	p.Fill("Drive high at", "3")
	p.Fill("Timing run-out", "4")
	p.Fill("Timing high at", "9")
}

func TestFourFieldsByTheirLabelsGiveAnAnswer(t *testing.T) {
	p, _ := bench(t)
	assert.Equal(t, "Turn the crank once and read a dial.", p.Text(headline))
	twist(p)
	assert.Equal(t, "Strike the drive wheel at 3; drive needle to 1.4 thou.", p.Text(headline))
	assert.Contains(t, p.Text("#true .caution"), "Eye protection")
	assert.True(t, Eval[bool](p, `document.querySelector('[data-picture=face] svg desc').textContent.includes('drive')`))
}

func TestTheSentenceTheFaceAndBothReadingsFitAPhone(t *testing.T) {
	p, _ := bench(t)
	heads := map[string]bool{}
	for hour := 1; hour <= 12; hour++ {
		p.Fill("Drive run-out", "7.3")
		p.Fill("Drive high at", fmt.Sprintf("%d:15", hour))
		p.Fill("Timing run-out", "8.6")
		p.Fill("Timing high at", fmt.Sprintf("%d:45", hour*5%12+1))
		heads[strings.Fields(p.Text(headline))[0]] = true
		Eval[bool](p, `(scrollTo(0, 0), true)`)
		assert.LessOrEqual(t, Eval[float64](p, `document.querySelector('.readings').getBoundingClientRect().bottom`), 740.0, p.Text(headline))
		assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollWidth`), 360.0)
	}
	for _, head := range []string{"Strike", "Squeeze", "Spread"} {
		assert.True(t, heads[head], head)
	}
}

func TestATapAndADragSetTheHour(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Drive run-out", "4")
	p.Fill("Timing run-out", "4")
	p.Press("A tap on the clock face sets the drive hour")
	const face = "[data-picture=face] svg"
	p.Tap(face, 0.75, 166.0/330)
	assert.Equal(t, "3", p.Value("Drive high at"))
	p.Press("A tap on the clock face sets the timing hour")
	p.Drag(face, [2]float64{0.5, 0.2}, [2]float64{0.3, 0.3}, [2]float64{0.25, 166.0 / 330})
	assert.Equal(t, "9", p.Value("Timing high at"))
	assert.Contains(t, p.Text(headline), "Strike the drive wheel at 3")
}

func TestAStepIsOneDivisionOfItsDial(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Drive dial, one division is", "0.1")
	p.Press("Drive run-out, one division more")
	p.Press("Drive run-out, one division more")
	p.Press("Timing run-out, one division more")
	p.Press("Drive run-out, one division less")
	assert.Equal(t, "0.1", p.Value("Drive run-out"))
	assert.Equal(t, "0.5", p.Value("Timing run-out"))
}

func TestAReloadBringsEverythingBack(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	p.Until(kept(`form['pass.1.timing.high'] === '9'`))
	p.Reload()
	p.Ready()
	assert.Equal(t, "4", p.Value("Timing run-out"))
	assert.Contains(t, p.Text(headline), "Strike the drive wheel at 3")
}

// kept is true once the job on the bench is kept with a form that passes.
func kept(test string) string {
	return `new Promise((resolve) => {
		const open = indexedDB.open('pintwelve /crank/');
		open.onsuccess = () => {
			const all = open.result.transaction('jobs').objectStore('jobs').getAll();
			all.onsuccess = () => { open.result.close(); resolve(all.result.some(({ form }) => ` + test + `)); };
		};
	})`
}

func TestChangingUnitsChangesNoAnswer(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	p.Choose("Dials read in", "millimetres")
	assert.Equal(t, "0.102", p.Value("Drive run-out"))
	assert.Contains(t, p.Text(headline), "Strike the drive wheel at 3; drive needle to 0.04 mm.")
	p.Choose("Dials read in", "thou")
	assert.Equal(t, "4", p.Value("Drive run-out"))
}

func TestBadTextIsSaidBesideTheField(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	p.Fill("Drive run-out", "4 bananas")
	assert.Contains(t, p.Text("#error-drive-tir"), "4 bananas")
	assert.Contains(t, p.Text(headline), "Mend the drive dial")
	assert.Equal(t, "error-drive-tir", Eval[string](p, `document.getElementById('drive-tir').getAttribute('aria-describedby')`))
	p.Fill("Drive run-out", "<img src=x onerror=alert(1)>")
	assert.Zero(t, Eval[int](p, `document.querySelectorAll('img:not(#mark-picture)').length`))
	p.Fill("Drive run-out", "4")
	assert.Contains(t, p.Text(headline), "Strike")
}

// linkOf hands the job on and returns the address.
func linkOf(p *Page) string {
	to(p, "hand-on")
	Eval[bool](p, `(document.getElementById('share-said').textContent = '', true)`) // of an earlier link
	p.Press("Send the link")
	p.Until(`document.getElementById('share-said').textContent.includes('#')`)
	said := p.Text("#share-said")
	return strings.TrimSpace(said[strings.Index(said, "http"):])
}

func TestALinkOpensWithoutTouchingTheOwnJob(t *testing.T) {
	p, server := bench(t)
	twist(p)
	link := linkOf(p)

	other := Launch(t).Open(server.URL("/crank/"))
	other.Ready()
	other.Fill("Drive run-out", "1.5")
	other.Until(kept(`form['pass.1.drive.tir'] === '1.5'`))
	other.Visit("about:blank")
	other.Visit(link)
	other.Ready()
	assert.Contains(t, other.Text("#sheet"), "came by a link")
	assert.Contains(t, other.Text("#paper"), "4 thou, high at 3")
	assert.Equal(t, 0, Eval[int](other, `[...document.querySelectorAll('main input, main select, main textarea')].filter((e) => e.checkVisibility()).length`), "it is to be looked at")
	other.Press("Back to mine")
	assert.Equal(t, "1.5", other.Value("Drive run-out"))

	other.Visit("about:blank")
	other.Visit(link)
	other.Ready()
	assert.False(t, Eval[bool](other, kept(`form['pass.1.drive.tir'] === '4'`)), "a link's job is kept only when asked for")
	other.Press("Keep a copy")
	other.Until(kept(`form['pass.1.drive.tir'] === '4'`))
	other.Until(kept(`form['pass.1.drive.tir'] === '1.5'`))
	other.Reload()
	other.Ready()
	assert.Equal(t, "4", other.Value("Drive run-out"))
}

func TestADamagedLinkSaysSo(t *testing.T) {
	p, server := bench(t)
	twist(p)
	link := linkOf(p)
	for _, bad := range []string{link[:len(link)-3], link[:len(link)-9] + "AAAAAAAAA", server.URL("/crank/#nonsense")} {
		p.Visit("about:blank")
		p.Visit(bad)
		p.Ready()
		assert.False(t, Eval[bool](p, `document.getElementById('notice').hidden`), bad)
		assert.Equal(t, "4", p.Value("Drive run-out"), "the own job stays on the bench")
	}
}

func TestWithTheServerGoneANewTabStillAnswers(t *testing.T) {
	p, server, b := benchIn(t)
	twist(p)
	p.Until(`navigator.serviceWorker.controller !== null`)
	p.Until(kept(`form['pass.1.timing.high'] === '9'`))
	address := server.URL("/crank/")
	server.Stop()
	tab := b.Tab()
	tab.WithoutHTTPCache()
	tab.Visit(address)
	tab.Ready()
	assert.True(t, Eval[bool](tab, `navigator.serviceWorker.controller !== null`))
	assert.Contains(t, tab.Text(headline), "Strike the drive wheel at 3")
	tab.Fill("Drive high at", "9")
	tab.Fill("Timing high at", "3")
	assert.Contains(t, tab.Text(headline), "Strike the drive wheel at 9")
}

func TestTwoTabsOnOneJobLoseNothing(t *testing.T) {
	p, server, b := benchIn(t)
	p.Fill("Drive run-out", "4")
	p.Until(kept(`form['pass.1.drive.tir'] === '4'`))
	tab := b.Tab()
	tab.Visit(server.URL("/crank/"))
	tab.Ready()
	assert.Equal(t, "4", tab.Value("Drive run-out"))
	tab.Fill("Timing run-out", "2.5")
	p.Until(`document.getElementById('timing-tir').value === '2.5'`)
	p.Fill("Drive high at", "3")
	tab.Until(`document.getElementById('drive-high').value === '3'`)
	assert.Equal(t, "2.5", tab.Value("Timing run-out"))
}

func TestNothingIsAskedOfAnyOtherHost(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	hosts := Eval[[]string](p, `[...new Set(performance.getEntriesByType('resource').map((r) => new URL(r.name).host))]`)
	assert.Equal(t, []string{Eval[string](p, `location.host`)}, hosts)
}

// What differs of a picture is changed in place; it must come to the picture
// that the core gives for the same job.
func TestAPictureChangedInPlaceIsTheCoresPicture(t *testing.T) {
	p, _ := bench(t)
	shown := map[string]bool{}
	for _, edit := range [][2]string{
		{"Drive run-out", "3"}, {"Drive high at", "5"}, {"Timing run-out", "5.5"}, {"Timing high at", "7:30"},
		{"Timing high at", "11"}, {"Drive run-out", "0.5"}, {"Drive run-out", "much"}, {"Drive run-out", "6"},
		{"Drive high at", ""}, {"Drive high at", "11"}, {"Timing run-out", "6"},
	} {
		p.Fill(edit[0], edit[1])
		face := Eval[[]string](p, `Promise.all([import('./fields.js'), import('./bridge.js')]).then(async ([{ nameOf }, { startCore }]) => {
			const call = await (globalThis.second ??= startCore());
			const form = [...document.querySelectorAll('#true input[name]:not([type=radio])')].filter(({ value }) => value);
			const typed = Object.fromEntries(form.map((field) => [nameOf(field.name, field), field.value]));
			const drawn = document.createElement('div');
			drawn.innerHTML = call('answer', typed, { part: 'true' })['picture.face'];
			const words = (node) => node.nodeType === Node.TEXT_NODE ? node.data : [
				node.nodeName, ...node.getAttributeNames().sort().map((name) => name + '=' + node.getAttribute(name)),
				...[...node.childNodes].map(words), '/',
			].join(' ');
			return [words(drawn.firstElementChild), words(document.querySelector('[data-picture=face] svg'))];
		})`)
		assert.Equal(t, face[0], face[1], "%s: %s", edit[0], edit[1])
		shown[face[1]] = true
	}
	assert.Greater(t, len(shown), 8, "the edits change the clock face")
}
