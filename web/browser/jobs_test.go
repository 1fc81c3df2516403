package browser

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// to goes to a step of the work.
func to(p *Page, step string) {
	Eval[bool](p, `(location.hash = '#`+step+`', true)`)
	p.Until(`!document.getElementById('` + step + `').closest('.step').hidden`)
}

// name gives the crank on the bench a number, an engine and an owner.
func name(p *Page, number, engine, owner string) {
	to(p, "jobs")
	p.Fill("Job or engine number", number)
	p.Fill("Engine", engine)
	p.Fill("Owner", owner)
	p.Until(kept(`form.owner === ` + strconv.Quote(owner)))
	to(p, "true")
	to(p, "jobs")
}

// listed are the names in the list of jobs, once the list is as long as given.
func listed(p *Page, length int) []string {
	p.Until(`document.querySelectorAll('#jobs-rows .job-name').length === ` + strconv.Itoa(length))
	return Eval[[]string](p, `[...document.querySelectorAll('#jobs-rows .job-name')].map((e) => e.textContent)`)
}

// savedFile presses a button and returns the text of the file it saves.
func savedFile(p *Page, button string) string {
	Eval[bool](p, `(() => {
		window.showSaveFilePicker = undefined; // it would wait for a person
		window.saved = null;
		window.made ??= URL.createObjectURL;
		URL.createObjectURL = (blob) => { blob.text().then((text) => { window.saved = text; }); return made.call(URL, blob); };
		return true;
	})()`)
	p.Press(button)
	p.Until(`window.saved`)
	p.Press("Yes, it is saved")
	return Eval[string](p, `window.saved`)
}

// setFile chooses a file in the control with an id.
func setFile(p *Page, id, path string) {
	p.t.Helper()
	root := send(p, dom.GetDocument, dom.GetDocumentParams{}).Root
	file := send(p, dom.QuerySelector, dom.QuerySelectorParams{NodeID: root.NodeID, Selector: "#" + id}).NodeID
	send(p, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{path}, NodeID: file})
}

// readFile gives the page a file of jobs and returns what it says of it.
func readFile(p *Page, text string) string {
	p.t.Helper()
	path := filepath.Join(p.t.TempDir(), "jobs.json")
	require.NoError(p.t, os.WriteFile(path, []byte(text), 0o600))
	Eval[bool](p, `(document.getElementById('notice').hidden = true, true)`)
	setFile(p, "read-file", path)
	p.Until(`!document.getElementById('notice').hidden`)
	return p.Text("#notice-text")
}

func TestJobsAreListedFoundSortedCopiedArchivedAndDeleted(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	name(p, "12", "Alder 350", "Mrs Thorne")
	p.Press("Start another crank")
	p.Fill("Drive run-out", "1")
	name(p, "7", "Birch 500", "Mr Alder")
	assert.Equal(t, []string{"7", "12"}, listed(p, 2), "last worked on first")
	p.Choose("Sorted by", "engine")
	assert.Equal(t, []string{"12", "7"}, listed(p, 2))
	p.Choose("Sorted by", "number")
	assert.Equal(t, []string{"7", "12"}, listed(p, 2), "numbers by size, not by letter")
	find := func(words string, length int) []string {
		p.Fill("Find by number, engine, owner, date or notes", words)
		return listed(p, length)
	}
	assert.Equal(t, []string{"12"}, find("thorne 350", 1))
	find("alder", 2)

	p.Fill("Find by number, engine, owner, date or notes", "thorne")
	listed(p, 1)
	p.Press("More: 12")
	p.Press("Copy: 12")
	assert.ElementsMatch(t, []string{"12", "12 (copy)"}, listed(p, 2))
	p.Press("More: 12 (copy)")
	p.Press("Archive: 12 (copy)")
	assert.Equal(t, []string{"12"}, listed(p, 1))
	p.Press("Archived ones too")
	listed(p, 2)
	p.Press("More: 12 (copy)")
	p.Press("Delete: 12 (copy)")
	listed(p, 1)
	p.Press("Put it back")
	listed(p, 2)

	p.Press("More: 12 (copy)")
	p.Press("Delete: 12 (copy)")
	listed(p, 1)
	Eval[bool](p, `(document.querySelector('#jobs-rows .job-open').click(), true)`)
	p.Until(`!document.getElementById('true').hidden`)
	assert.Equal(t, "4", p.Value("Drive run-out"))
}

func TestTheJobOnTheBenchCanBeDeletedAndPutBack(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	name(p, "12", "", "Mrs Thorne")
	p.Press("More: 12")
	p.Press("Delete: 12")
	listed(p, 0)
	assert.Equal(t, "", p.Value("Owner"))
	p.Press("Put it back")
	listed(p, 1)
}

func TestANewcomersExampleOpensAndGoes(t *testing.T) {
	p, _ := bench(t)
	to(p, "jobs")
	p.Press("Look at an example")
	p.Until(`!document.getElementById('true').hidden`)
	assert.Contains(t, p.Text(headline), "Strike the drive wheel at 9", "it opens as found")
	assert.Equal(t, 3, passCount(p))
	to(p, "jobs")
	assert.True(t, Eval[bool](p, `document.querySelector('#jobs .loose').hidden`), "an example need be in no file")
	listed(p, 0)
	p.Fill("Owner", "Mrs Thorne")
	p.Until(kept(`form.owner === 'Mrs Thorne'`))
	to(p, "true")
	to(p, "jobs")
	assert.Equal(t, []string{"Example: CB 0417"}, listed(p, 1), "kept from its first edit on")
	p.Until(`!document.querySelector('#jobs .loose').hidden`)
}

func TestAFileFromTheOtherPhone(t *testing.T) {
	p, server := bench(t)
	twist(p)
	name(p, "12", "Alder <b>350</b>", "Mrs Thorne")
	p.Until(`!document.querySelector('#jobs .loose').hidden`)
	first := savedFile(p, "Save all jobs in a file")
	p.Until(`document.querySelector('#jobs .loose').hidden`)
	assert.Contains(t, first, `"pass.1.drive.tir": "4"`, "a person can read it")

	other := Launch(t).Open(server.URL("/crank/"))
	to(other, "jobs")
	assert.Equal(t, "From the file: 1 new.", readFile(other, first))
	assert.Equal(t, []string{"12"}, listed(other, 1))
	assert.Equal(t, "From the file: 1 already here.", readFile(other, first))
	Eval[bool](other, `(document.querySelector('#jobs-rows .job-open').click(), true)`)
	other.Until(`document.getElementById('drive-tir').value === '4'`)
	other.Fill("Drive run-out", "3")
	other.Until(kept(`form['pass.1.drive.tir'] === '3'`))
	to(other, "jobs")
	second := savedFile(other, "Save the crank on the bench")

	assert.Equal(t, "From the file: 1 brought up to date.", readFile(p, second))
	to(p, "true")
	assert.Equal(t, "3", p.Value("Drive run-out"), "the job on the bench too")
	to(p, "jobs")
	assert.Equal(t, "From the file: 1 older than here and left alone.", readFile(p, first))

	to(p, "true")
	p.Fill("Timing run-out", "5")
	p.Until(kept(`form['pass.1.timing.tir'] === '5'`))
	to(other, "true")
	other.Fill("Timing run-out", "6")
	other.Fill("Timing high at", "8")
	other.Until(kept(`form['pass.1.timing.high'] === '8'`))
	to(other, "jobs")
	third := savedFile(other, "Save all jobs in a file")
	to(p, "jobs")
	assert.Contains(t, readFile(p, third), "worked on in both places")
	listed(p, 2)
	p.Until(kept(`form['pass.1.timing.tir'] === '5'`))
	p.Until(kept(`form['pass.1.timing.tir'] === '6'`))
}

func TestAHostileFileIsRefusedOrStripped(t *testing.T) {
	p, _ := bench(t)
	to(p, "jobs")
	for _, bad := range []string{
		"", "{", "[]", "null", `{"file":"x"}`, `{"file":"Pintwelve jobs","version":2,"jobs":[]}`,
		`{"file":"Pintwelve jobs","version":1,"jobs":{}}`,
		`{"file":"Pintwelve jobs","version":1,"jobs":[{"id":"../x","rev":1,"form":{}}]}`,
		`{"file":"Pintwelve jobs","version":1,"jobs":[{"id":"x","rev":1,"form":[]},null]}`,
	} {
		assert.Contains(t, readFile(p, bad), "was not read", bad)
	}
	assert.Empty(t, listed(p, 0))
	said := readFile(p, `{"file":"Pintwelve jobs","version":1,"jobs":[{"id":"x","rev":1,"form":{
		"number":"<img src=x onerror=alert(1)>","owner":7,"__proto__":"x","nosuch":"1","left":"up","throw":"4 bananas","engine":""}}]}`)
	assert.Equal(t, "From the file: 1 new. 5 of its fields can’t stand in a job and were left out.", said)
	assert.Equal(t, []string{"<img src=x onerror=alert(1)>"}, listed(p, 1))
	p.Until(kept(`form.throw === '4 bananas' && Object.keys(form).length === 2`))
}

// Five thousand jobs are listed, found, worked on, and go into files that can be read.
func TestFiveThousandJobsStayAtHand(t *testing.T) {
	p, _ := bench(t)
	to(p, "jobs")
	p.Press("Look at an example")
	to(p, "jobs")
	p.Fill("Owner", "Mr Alder")
	p.Until(kept(`form.owner`))
	Eval[bool](p, `new Promise((resolve) => {
		const open = indexedDB.open('pintwelve /crank/');
		open.onsuccess = () => {
			const work = open.result.transaction(['jobs', 'lines'], 'readwrite');
			for (const kept of [work.objectStore('jobs'), work.objectStore('lines')]) {
				kept.getAll().onsuccess = ({ target: { result: [result] } }) => {
					for (let i = 0; i < 5000; i++) kept.put({ ...result, id: 'job' + i, turn: i + 10, form: { ...result.form, number: 'Number ' + i } });
				};
			}
			work.oncomplete = () => { open.result.close(); resolve(true); };
		};
	})`)
	p.Reload()
	p.Ready()
	Eval[bool](p, `new Promise((r) => setTimeout(() => r(true), 1500))`)
	p.Throttle(4)
	took := Eval[float64](p, `(async () => {
		const t0 = performance.now();
		location.hash = '#jobs';
		while (document.querySelectorAll('#jobs-rows .job-name').length < 20) await new Promise((r) => setTimeout(r));
		await new Promise(requestAnimationFrame);
		return performance.now() - t0;
	})()`)
	t.Logf("a list of five thousand opened in %.0f ms, throttled 4 times", took)
	assert.Equal(t, "Number 4999", Eval[string](p, `document.querySelector('#jobs-rows .job-name').textContent`))
	p.Throttle(1)
	p.Fill("Find by number, engine, owner, date or notes", "number 4555")
	listed(p, 1)
	Eval[bool](p, `(document.querySelector('#jobs-rows .job-open').click(), true)`)
	p.Until(`document.title.includes('Number 4555')`)
	p.Fill("Drive run-out", "1.25")
	p.Until(kept(`form.number === 'Number 4555' && form['pass.1.drive.tir'] === '1.25'`))
	to(p, "jobs")
	var whole struct {
		Jobs []struct{ Form map[string]string } `json:"jobs"`
	}
	require.NoError(t, json.Unmarshal([]byte(savedFile(p, "Save all jobs in a file")), &whole))
	assert.Len(t, whole.Jobs, 5001)
}

func TestAFullPhoneSaysSoAndOffersTheFile(t *testing.T) {
	p, _ := bench(t)
	Eval[bool](p, `(IDBObjectStore.prototype.put = function () { throw new DOMException('the phone is full', 'QuotaExceededError'); }, true)`)
	cannotKeep(t, p, "4")
}

// cannotKeep types a run-out that the page can't keep: it says so at once, with
// the file as a way out.
func cannotKeep(t *testing.T, p *Page, runOut string) {
	t.Helper()
	p.Fill("Drive run-out", runOut)
	p.Until(`!document.getElementById('notice').hidden`)
	assert.Contains(t, p.Text("#notice-text"), "could not be kept")
	assert.Contains(t, savedFile(p, "Save a file"), `"pass.1.drive.tir": "`+runOut+`"`)
}

func TestABrowserThatKeepsNothingStillAnswersAndSaves(t *testing.T) {
	server := Serve(t, "/crank/", Built(t))
	p := Launch(t).Tab()
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: `indexedDB.open = () => { throw new DOMException('storage is off', 'SecurityError'); };`,
	})
	p.Visit(server.URL("/crank/"))
	p.Ready()
	assert.Contains(t, p.Text("#notice-text"), "keeps nothing")
	twist(p)
	assert.Contains(t, p.Text(headline), "Strike the drive wheel at 3")
	to(p, "jobs")
	assert.Contains(t, p.Text("#jobs-promise"), "keeps nothing")
	assert.Contains(t, savedFile(p, "Save the crank on the bench"), `"pass.1.drive.tir": "4"`)
}

func TestAJobDeletedInAnotherTabIsNotLostFromTheBench(t *testing.T) {
	p, server, b := benchIn(t)
	twist(p)
	name(p, "12", "", "Mrs Thorne")
	tab := b.Tab()
	tab.Visit(server.URL("/crank/#jobs"))
	tab.Ready()
	listed(tab, 1)
	tab.Press("More: 12")
	tab.Press("Delete: 12")
	p.Until(`document.getElementById('notice-text').textContent.includes('deleted in another tab')`)
	to(p, "true")
	p.Fill("Drive run-out", "3")
	p.Until(kept(`form['pass.1.drive.tir'] === '3' && form.owner === 'Mrs Thorne'`))
}

func TestThePagesFitANarrowPhone(t *testing.T) {
	p, _ := bench(t)
	example(p, "jobs")
	p.do(chromedp.EmulateViewport(320, 640, chromedp.EmulateMobile, chromedp.EmulateTouch))
	for _, step := range []string{"order", "jobs", "sheet", "how"} {
		to(p, step)
		assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollWidth`), 320.0, step)
		small := Eval[[]string](p, `[...document.querySelectorAll('#`+step+` :is(button, input, select, textarea)')]
			.filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 44).map((e) => e.outerHTML)`)
		assert.Empty(t, small, "as high as a thumb")
	}
}

func TestTwoTabsOnOneListSeeEachOther(t *testing.T) {
	p, server, b := benchIn(t)
	twist(p)
	name(p, "12", "", "Mrs Thorne")
	tab := b.Tab()
	tab.Visit(server.URL("/crank/#jobs"))
	tab.Ready()
	listed(tab, 1)
	tab.Press("More: 12")
	tab.Press("Archive: 12")
	listed(tab, 0)
	listed(p, 0)
	p.Fill("Owner", "Mr Thorne")
	p.Until(kept(`form.owner === 'Mr Thorne' && form.archived === 'yes'`))
}

func TestTheBrowserIsAskedToKeepTheJobsOnceThereIsOne(t *testing.T) {
	server := Serve(t, "/crank/", Built(t))
	p := Launch(t).Tab()
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: `window.asked = 0; StorageManager.prototype.persist = async () => { window.asked++; return true; }; StorageManager.prototype.persisted = async () => window.asked > 0;`,
	})
	p.Visit(server.URL("/crank/"))
	p.Ready()
	assert.Equal(t, 0, Eval[int](p, `window.asked`))
	twist(p)
	p.Until(`window.asked === 1`)
	to(p, "jobs")
	p.Until(`document.getElementById('jobs-promise').textContent.includes('has promised')`)
}

// A row says how far its crank is, its pass and its day; the field that finds it
// stays in sight of what it found.
func TestARowSaysHowFarItsCrankIs(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	p.Press("Struck: read again")
	p.Until(kept(`Object.keys(form).some((name) => name.endsWith('.kind'))`))
	for n := range 12 {
		to(p, "jobs")
		p.Press("Start another crank")
		p.Fill("Drive run-out", "4")
		name(p, "N"+strconv.Itoa(n), "", "R. Lind")
	}
	p.Until(kept(`form.number === 'N11' && form.owner === 'R. Lind'`)) // of what is kept later the row is asked again
	to(p, "jobs")
	row := func(n int, says string) {
		p.Until(`document.querySelectorAll('#jobs-rows .job-stands')[` + strconv.Itoa(n) + `]?.textContent === '` + says + `'`)
	}
	row(0, "pass 1 · not measured to the end yet · today")
	row(12, "pass 2 · not measured to the end yet · today")

	// The day goes by the phone's calendar.
	Eval[bool](p, `(() => { const now = Date.now; Date.now = () => now() + 864e5; return true; })()`)
	to(p, "true")
	to(p, "jobs")
	p.Until(`document.querySelectorAll('#jobs-rows .job-stands')[12].textContent.endsWith('yesterday')`)

	p.Type("Find by number, engine, owner, date or notes", "N1")
	p.Until(`document.querySelectorAll('#jobs-rows li').length === 3`)
	for _, scrolled := range []string{`document.querySelectorAll('#jobs-rows li')[0]`, `document.getElementById('jobs-count')`} {
		assert.Less(t, Eval[float64](p, scrolled+`.getBoundingClientRect().bottom`), 330.0, "above the keyboard")
	}
	p.Fill("Find by number, engine, owner, date or notes", "")
	p.Until(`document.querySelectorAll('#jobs-rows li').length === 13`)
	Eval[bool](p, `(document.querySelectorAll('#jobs-rows li')[11].scrollIntoView({ block: 'end', behavior: 'instant' }), true)`)
	assert.GreaterOrEqual(t, Eval[float64](p, `document.getElementById('jobs-find').getBoundingClientRect().top`), 0.0)
}

// Pasted text that a field can't take whole was cut off without a word.
func TestAFullFieldSaysThatItCutsOff(t *testing.T) {
	p, _ := bench(t)
	to(p, "jobs")
	p.Fill("Notes, for the sheet", strings.Repeat("x", 1899))
	assert.True(t, Eval[bool](p, `document.getElementById('notice').hidden`))
	p.Fill("Notes, for the sheet", strings.Repeat("x", 2000))
	assert.Len(t, p.Value("Notes, for the sheet"), 1900)
	assert.Contains(t, p.Text("#notice"), "Full: 1900 letters. What goes past them is cut off.")
	p.Fill("Owner", strings.Repeat("y", 81))
	assert.Contains(t, p.Text("#notice"), "Full: 80 letters.")
	p.Fill("Owner", "Mrs Thorne")
	assert.True(t, Eval[bool](p, `document.getElementById('notice').hidden`))
}

// A number is told from others by its end: it stands whole in the title block, on the smallest phone too.
func TestTheTitleBlockCutsNoNumber(t *testing.T) {
	p, _ := bench(t)
	p.Narrow()
	tall := Eval[float64](p, `document.querySelector('.title-block').offsetHeight`)
	name(p, "B31/1957-0417", "", "R")
	to(p, "true")
	assert.Equal(t, "B31/1957-0417", p.Text(".known"))
	assert.Equal(t, "0 0", Eval[string](p, `(({ scrollWidth, clientWidth, scrollHeight, clientHeight }) => scrollWidth - clientWidth + ' ' + (scrollHeight - clientHeight))(document.querySelector('.known'))`))
	assert.Equal(t, tall, Eval[float64](p, `document.querySelector('.title-block').offsetHeight`))
}
