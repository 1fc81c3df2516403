package browser

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/tools/engines"
	"pintwelve/web/browser/webdriver"
)

// hands are what the main path asks of a page, in whichever engine.
type hands interface {
	Visit(address string)
	Reload()
	Ready()
	Until(script string)
	Text(selector string) string
	Value(label string) string
	Fill(label, text string)
	Press(name string)
}

// fresh opens the window of a fresh browser with each engine.
var fresh = map[string]func(t testing.TB, path string) hands{
	"Chromium": func(t testing.TB, _ string) hands { return Launch(t).Tab() },
	"WebKit":   func(t testing.TB, path string) hands { return webdriver.LaunchWebKit(t, path) },
	"Firefox":  func(t testing.TB, path string) hands { return webdriver.LaunchFirefox(t, path) },
}

func TestEngines(t *testing.T) {
	inEachEngine(t, func(t *testing.T, p hands) {
		mainPath(t, p)
		newVersion(t, p)
	})
}

// inEachEngine has a test use a fresh browser of each engine that is there.
func inEachEngine(t *testing.T, test func(t *testing.T, p hands)) {
	if engines.Off() {
		t.Skip("BROWSER=none: the browser tests are skipped")
	}
	for _, engine := range engines.All {
		t.Run(engine.Name, func(t *testing.T) {
			path, err := engine.Find()
			if err != nil {
				t.Skip(err)
			}
			test(t, fresh[engine.Name](t, path))
		})
	}
}

// mainPath is the way of a new user: two dials, an answer, the next pass, a
// reload, holes planned by the worker, a link, and no signal.
func mainPath(t *testing.T, p hands) {
	s := Serve(t, "/crank/", Built(t))
	p.Visit(s.URL("/crank/"))
	p.Ready()
	assert.Equal(t, "Turn the crank once and read a dial.", p.Text(headline))
	p.Fill("Drive run-out", "4")
	p.Fill("Drive high at", "3")
	p.Fill("Timing run-out", "4")
	p.Fill("Timing high at", "9")
	strike := "Strike the drive wheel at 3; drive needle to 1.4 thou."
	assert.Equal(t, strike, p.Text(headline))
	p.Until(`document.querySelector('[data-picture=face] svg').getBoundingClientRect().height > 100`)
	p.Until(kept(`form['pass.1.timing.high'] === '9'`))
	p.Press("Struck: read again")
	assert.Empty(t, p.Value("Drive run-out"))
	p.Until(`(document.getElementById('passes').open = true)`)
	p.Press("Undo")
	assert.Equal(t, strike, p.Text(headline))

	p.Until(kept(`!form.bench`))
	p.Reload()
	p.Ready()
	assert.Equal(t, "4", p.Value("Timing run-out"))
	assert.Equal(t, strike, p.Text(headline))

	p.Press("Pintwelve: the order of the work")
	p.Press("Job sheet")
	p.Press("Send the link")
	p.Until(`document.getElementById('share-said').textContent.includes('#')`)
	said := p.Text("#share-said")
	p.Visit("about:blank")
	p.Visit(mangled(strings.TrimSpace(said[strings.Index(said, "http"):])))
	p.Ready()
	assert.Contains(t, p.Text("#sheet"), "came by a link")
	assert.Contains(t, p.Text("#paper"), "4 thou, high at 3")
	p.Press("Back to mine")
	assert.Equal(t, strike, p.Text(headline))

	p.Until(`navigator.serviceWorker.controller !== null`)
	s.Stop()
	p.Visit("about:blank")
	p.Visit(s.URL("/crank/"))
	p.Ready()
	assert.Equal(t, "4", p.Value("Timing run-out"))
	p.Fill("Drive high at", "9")
	p.Fill("Timing high at", "3")
	assert.Contains(t, p.Text(headline), "Strike the drive wheel at 9")
}

// newVersion is the way of an update: by one reload at a start.
func newVersion(t *testing.T, p hands) {
	s := Serve(t, "/shop/", edition(t, "1"))
	p.Visit(s.URL("/shop/"))
	p.Ready()
	p.Until(offline)
	s.Put("/shop/", edition(t, "2"))
	p.Until(look)
	p.Until(offered)
	p.Reload()
	p.Until(`document.getElementById('edition').textContent === '2'`)
	p.Until(`sessionStorage.starts === '3'`) // the visit, the reload, and one more
	s.Stop()
	p.Reload()
	p.Ready()
	assert.Equal(t, "2", p.Text("#edition"))
}
