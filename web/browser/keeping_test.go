package browser

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/storage"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// type types a run-out of the drive side and waits until it is kept.
func runOut(p *Page, thou string) {
	p.t.Helper()
	to(p, "true")
	p.Fill("Drive run-out", thou)
	p.Until(kept(`form['pass.1.drive.tir'] === '` + thou + `'`))
}

// saved saves all jobs in a file that the person says is there.
func saved(p *Page) string {
	p.t.Helper()
	to(p, "jobs")
	return savedFile(p, "Save all jobs in a file")
}

// takes reads a file of jobs and opens the newest job that it brought.
func takes(p *Page, file string) string {
	p.t.Helper()
	to(p, "jobs")
	return readFile(p, file)
}

func opens(p *Page, tir string) {
	p.t.Helper()
	p.Until(`document.querySelector('#jobs-rows .job-open')`)
	Eval[bool](p, `(document.querySelector('#jobs-rows .job-open').click(), true)`)
	p.Until(`document.getElementById('drive-tir').value === '` + tir + `'`)
}

// twoPhones share one job, with a run-out of 4 that phone A typed.
func twoPhones(t *testing.T) (a, b *Page) {
	a, server := bench(t)
	runOut(a, "4")
	file := saved(a)
	b = Launch(t).Open(server.URL("/crank/"))
	takes(b, file)
	opens(b, "4")
	return a, b
}

// holds sees that a page's phone keeps every one of some run-outs.
func holds(p *Page, tirs ...string) {
	p.t.Helper()
	for _, tir := range tirs {
		p.Until(kept(`form['pass.1.drive.tir'] === '` + tir + `'`))
	}
}

func TestTheOtherPhonesWorkIsKeptHoweverOftenThisOneWrote(t *testing.T) {
	a, b := twoPhones(t)
	runOut(b, "5")
	for _, tir := range []string{"6", "7", "8", "9"} {
		runOut(a, tir)
	}
	said := takes(a, saved(b))
	assert.Contains(t, said, "worked on in both places")
	assert.Contains(t, said, "9 here, 5 in the file", "a word of what differs")
	holds(a, "9", "5")
}

func TestAFileOfALaterCountDoesNotTakeThisPhonesWork(t *testing.T) {
	a, b := twoPhones(t)
	runOut(b, "5")
	saved(b) // which A never reads
	for _, tir := range []string{"6", "7", "8", "9"} {
		runOut(a, tir)
	}
	assert.Contains(t, takes(b, saved(a)), "worked on in both places")
	holds(b, "9", "5")
}

func TestWhatDescendsFromThisPhonesStateRenewsIt(t *testing.T) {
	a, b := twoPhones(t)
	runOut(b, "5")
	file := saved(b)
	assert.Equal(t, "From the file: 1 brought up to date.", takes(a, file))
	holds(a, "5")
	runOut(a, "6")
	assert.Equal(t, "From the file: 1 older than here and left alone.", takes(a, file))
	assert.Equal(t, "From the file: 1 brought up to date.", takes(b, saved(a)))
	holds(b, "6")
}

func TestAWriteTakenBackIsStillAnotherState(t *testing.T) {
	a, b := twoPhones(t)
	runOut(a, "5")
	takes(b, saved(a))
	p := b
	to(p, "true")
	p.Fill("Timing run-out", "2")
	p.Until(kept(`form['pass.1.timing.tir'] === '2'`))
	runOut(a, "4") // as it was first shared
	assert.Contains(t, takes(a, saved(b)), "worked on in both places")
	holds(a, "4", "5")
}

func TestAFileReadTwiceMakesNoSecondCopy(t *testing.T) {
	a, b := twoPhones(t)
	runOut(a, "6")
	runOut(b, "5")
	file := saved(b)
	takes(a, file)
	assert.Equal(t, "From the file: 1 already here.", takes(a, file))
	listed(a, 2)
}

// As kept and written before a job knew where it came from.
func TestAJobOfUnknownDescentIsKeptTwice(t *testing.T) {
	p, _ := bench(t)
	runOut(p, "4")
	to(p, "jobs")
	file := strings.Join(strings.Split(savedFile(p, "Save all jobs in a file"), `"past"`), `"former"`)
	runOut(p, "5")
	said := takes(p, file)
	assert.Contains(t, said, "worked on in both places")
	holds(p, "4", "5")
}

func TestTwoExamplesTypedOverAreTwoJobs(t *testing.T) {
	a, server := bench(t)
	b := Launch(t).Open(server.URL("/crank/"))
	for i, p := range []*Page{a, b} {
		example(p, "jobs")
		to(p, "jobs")
		assert.True(t, Eval[bool](p, `document.querySelector('#jobs .loose').hidden`), "nothing was typed")
		p.Fill("Owner", fmt.Sprint("Owner ", i))
		p.Until(kept(fmt.Sprintf(`form.owner === 'Owner %d'`, i)))
		to(p, "true")
		to(p, "jobs")
		p.Until(`!document.querySelector('#jobs .loose').hidden`)
	}
	takes(b, saved(a))
	b.Until(kept(`form.owner === 'Owner 0'`))
	b.Until(kept(`form.owner === 'Owner 1'`))
	for _, p := range []*Page{a, b} {
		assert.False(t, Eval[bool](p, `new Promise((resolve) => {
			indexedDB.open('pintwelve /crank/').onsuccess = ({ target: { result: db } }) => {
				db.transaction('jobs').objectStore('jobs').get('example').onsuccess = ({ target }) => { db.close(); resolve(Boolean(target.result)); };
			};
		})`))
	}
}

const fileOf = `{"file":"Pintwelve jobs","version":1,"jobs":[%s]}`

func TestOneUnreadableJobRefusesNoOther(t *testing.T) {
	p, _ := bench(t)
	to(p, "jobs")
	said := readFile(p, fmt.Sprintf(fileOf, `{"id":"a","rev":1,"form":{"number":"12"}},{"id":"../x","rev":1,"form":{"number":"13"}},null,{"id":"c","rev":9007199254740992,"form":{"number":"14"}}`))
	assert.Contains(t, said, "2 new")
	assert.Contains(t, said, "“13”", "which one it was")
	assert.Contains(t, said, "the third")
	assert.ElementsMatch(t, []string{"12", "14"}, listed(p, 2))
	whole := saved(p)
	assert.NotContains(t, whole, "9007199254740992")
	assert.Equal(t, "From the file: 2 already here.", readFile(p, whole))
	p.Fill("Owner", "Mr Alder")
	p.Until(kept(`form.owner === 'Mr Alder'`))
}

func TestOfATruncatedFileWhatIsWholeIsRead(t *testing.T) {
	p, _ := bench(t)
	to(p, "jobs")
	file := fmt.Sprintf(fileOf, `{"id":"a","rev":1,"form":{"number":"1}{\"2"}},{"id":"b","rev":1,"form":{"number":"13"}},{"id":"c","rev":1,"form":{"number":"14"}}`)
	said := readFile(p, file[:len(file)-20])
	assert.Contains(t, said, "2 new")
	assert.Contains(t, said, "end is missing")
	listed(p, 2)
}

func TestAMissingVersionIsNoNewerOne(t *testing.T) {
	p, _ := bench(t)
	to(p, "jobs")
	assert.Contains(t, readFile(p, `{"file":"Pintwelve jobs","jobs":[{"id":"a","rev":1,"form":{"number":"12"}}]}`), "1 new")
	assert.Contains(t, readFile(p, `{"file":"Pintwelve jobs","version":2,"jobs":[]}`), "newer version")
}

func TestTwoOfOneIdInOneFileAreBothKept(t *testing.T) {
	p, _ := bench(t)
	to(p, "jobs")
	readFile(p, fmt.Sprintf(fileOf, `{"id":"a","rev":3,"form":{"number":"12"}},{"id":"a","rev":2,"form":{"owner":"Mrs Thorne"}}`))
	p.Until(kept(`form.number === '12'`))
	p.Until(kept(`form.owner === 'Mrs Thorne'`))
}

func TestWhatIsWrittenCanBeRead(t *testing.T) {
	p, _ := bench(t)
	for _, row := range []struct{ jobs, letters, files int }{{7000, 4600, 1}, {20001, 1, 2}} {
		got := Eval[[]int](p, fmt.Sprintf(`import('./file.js').then(async ({ written, read }) => {
			const jobs = Array.from({ length: %d }, (_, i) => ({ id: 'job' + i, rev: 1, form: { notes: 'x'.repeat(%d) } }));
			const files = [written(jobs)].flat();
			let read_ = 0;
			for (const text of files) read_ += (await read(new File([text], 'jobs.json'), () => [])).records.length;
			return [read_, files.length, files[0].length];
		})`, row.jobs, row.letters))
		assert.Equal(t, row.jobs, got[0])
		assert.Equal(t, row.files, got[1])
		t.Logf("%d jobs: %d bytes in the first of %d files", row.jobs, got[2], got[1])
	}
}

func TestASaveThatWasRefusedIsNone(t *testing.T) {
	p, _ := bench(t)
	runOut(p, "4")
	to(p, "jobs")
	p.Until(`!document.querySelector('#jobs .loose').hidden`)
	loose := func() bool { return Eval[bool](p, `!document.querySelector('#jobs .loose').hidden`) }

	Eval[bool](p, `(window.showSaveFilePicker = async () => { throw new DOMException('no', 'AbortError'); }, true)`)
	p.Press("Save all jobs in a file")
	p.Until(`document.getElementById('notice-text').textContent.includes('not saved')`)
	assert.True(t, loose(), "given up in the browser's own window")

	Eval[bool](p, `(window.showSaveFilePicker = undefined, true)`)
	p.Press("Save all jobs in a file")
	p.Until(`document.getElementById('notice-text').textContent.includes('Is the file')`)
	assert.True(t, loose(), "nobody has said that it is there")
	p.Press("Close")
	assert.True(t, loose())

	Eval[bool](p, `(window.showSaveFilePicker = async () => ({ createWritable: async () => ({ write: async (text) => { window.written = text; }, close: async () => { window.shut = true; } }) }), true)`)
	p.Press("Save all jobs in a file")
	p.Until(`document.querySelector('#jobs .loose').hidden && window.shut`)
	assert.Contains(t, Eval[string](p, `new Response(window.written).text()`), `"pass.1.drive.tir": "4"`)
}

func TestEachTabHasItsOwnBench(t *testing.T) {
	p, server, b := benchIn(t)
	runOut(p, "4")
	tab := b.Open(server.URL("/crank/"))
	to(tab, "jobs")
	tab.Press("Start another crank")
	tab.Fill("Drive run-out", "1")
	tab.Until(kept(`form['pass.1.drive.tir'] === '1'`))
	p.Reload()
	p.Ready()
	assert.Equal(t, "4", p.Value("Drive run-out"))
	p.Fill("Timing run-out", "5")
	p.Until(kept(`form['pass.1.drive.tir'] === '4' && form['pass.1.timing.tir'] === '5'`))
	tab.Reload()
	tab.Ready()
	assert.Equal(t, "1", tab.Value("Drive run-out"))
	assert.Equal(t, "1", b.Open(server.URL("/crank/")).Value("Drive run-out"), "a new tab has the last one")
}

// refuse has every write of a page fail.
func refuse(p *Page) {
	Eval[bool](p, `(window.put ??= IDBObjectStore.prototype.put, IDBObjectStore.prototype.put = () => { throw new DOMException('the phone is full', 'QuotaExceededError'); }, true)`)
}

func TestNoReloadWhileTextStandsUnkept(t *testing.T) {
	p, s, b := benchIn(t)
	p.Until(`navigator.serviceWorker.controller`)
	tab := b.Open(s.URL("/crank/"))
	s.Put("/crank/", nextVersion(t))
	for _, each := range []*Page{p, tab} {
		refuse(each)
		each.Fill("Drive run-out", "5")
		each.Until(`document.getElementById('notice-text').textContent.includes('could not be kept')`)
	}
	Eval[bool](p, `Boolean(Object.defineProperty(document, 'hidden', { value: true }))`)
	tab.Until(look)
	tab.Until(`document.getElementById('notice-text').textContent.includes('new version')`)
	tab.Press("Change to it now")
	tab.Until(`document.getElementById('notice-text').textContent.includes('is not kept')`)
	assert.Equal(t, "5", tab.Value("Drive run-out"), "no reload by the button")
	Eval[bool](tab, `navigator.serviceWorker.getRegistration().then(({ waiting }) => (waiting.postMessage('take over'), true))`)
	p.Until(`document.getElementById('notice-text').textContent.includes('new version')`)
	assert.Equal(t, "5", p.Value("Drive run-out"), "no reload out of sight")
	tab.Press("Change to it now")
	assert.Contains(t, savedFile(tab, "Save a file"), `"pass.1.drive.tir": "5"`)
	dismiss(tab, "new version")
	tab.Press("Change to it now")
	tab.Until(`document.body.dataset.edition === '2'`)
}

// dismiss closes what is said until what is wanted stands there.
func dismiss(p *Page, words string) {
	p.t.Helper()
	p.Until(`(() => {
		if (document.getElementById('notice-text').textContent.includes(` + strconv.Quote(words) + `)) return true;
		document.getElementById('notice-close').click();
		return false;
	})()`)
}

func TestWithoutAStoreNothingLeavesTheBenchUnsaid(t *testing.T) {
	server := Serve(t, "/crank/", WithModules(t))
	p := Launch(t).Tab()
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: `indexedDB.open = () => { throw new DOMException('storage is off', 'SecurityError'); };`,
	})
	p.Visit(server.URL("/crank/"))
	p.Ready()
	p.Fill("Drive run-out", "4")
	to(p, "jobs")
	p.Press("Start another crank")
	p.Until(`document.getElementById('notice-text').textContent.includes('is not kept')`)
	to(p, "true")
	assert.Equal(t, "4", p.Value("Drive run-out"), "it stays until the person has said so")
	p.Press("Go on without it")
	p.Until(`document.getElementById('drive-tir').value === ''`)
	assert.NotContains(t, p.Text("#notice-text"), "the other is kept")

	p.Fill("Drive run-out", "6")
	Eval[bool](p, `(async () => {
		const { startCore } = await import('./bridge.js');
		location.hash = (await startCore())('encode', { throw: '42' }).link;
		return true;
	})()`)
	p.Until(`document.documentElement.classList.contains('guest')`)
	assert.NotContains(t, p.Text("#notice-text"), "untouched")
	p.Press("Keep a copy")
	p.Until(`document.getElementById('notice-text').textContent.includes('is not kept')`)
	p.Press("Back to mine")
	assert.Equal(t, "6", p.Value("Drive run-out"))
}

func TestAnOlderFileReadAfterADeleteIsAnotherJob(t *testing.T) {
	p, server, b := benchIn(t)
	runOut(p, "4")
	file := saved(p)
	runOut(p, "5")
	runOut(p, "6")
	tab := b.Open(server.URL("/crank/#jobs"))
	listed(tab, 1)
	tab.Press("More: Without a number")
	tab.Press("Delete: Without a number")
	listed(tab, 0)
	takes(tab, file)
	listed(tab, 1)
	Eval[bool](p, `(() => {
		window.writes = 0;
		const { transaction } = IDBDatabase.prototype;
		IDBDatabase.prototype.transaction = function (...all) { if (all[1] === 'readwrite') window.writes++; return transaction.apply(this, all); };
		return true;
	})()`)
	to(p, "true")
	p.Fill("Timing run-out", "3")
	p.Until(kept(`form['pass.1.timing.tir'] === '3' && form['pass.1.drive.tir'] === '6'`))
	holds(p, "4")
	assert.Less(t, Eval[int](p, `new Promise((resolve) => setTimeout(() => resolve(window.writes), 500))`), 10)
}

func TestAnImportIsOneMessageAndAListReadAtMostTwice(t *testing.T) {
	p, server, b := benchIn(t)
	to(p, "jobs")
	tab := b.Open(server.URL("/crank/#jobs"))
	Eval[bool](tab, `(() => {
		window.messages = 0;
		window.reads = 0;
		new BroadcastChannel('pintwelve /crank/').onmessage = () => { window.messages++; };
		const { getAll } = IDBObjectStore.prototype;
		IDBObjectStore.prototype.getAll = function (...all) { window.reads++; return getAll.apply(this, all); };
		return true;
	})()`)
	jobs := make([]string, 1500)
	for i := range jobs {
		jobs[i] = fmt.Sprintf(`{"id":"job%d","rev":1,"form":{"number":"%d","throw":"42"}}`, i, i)
	}
	assert.Equal(t, "From the file: 1500 new.", readFile(p, fmt.Sprintf(fileOf, strings.Join(jobs, ","))))
	tab.Until(`document.getElementById('jobs-count').textContent === '1500 jobs'`)
	assert.Equal(t, 1, Eval[int](tab, `window.messages`))
	assert.LessOrEqual(t, Eval[int](tab, `window.reads`), 4, "the jobs, and what is in the bin, each at most twice")
}

func TestAStoreThatNeverAnswersStopsNoStart(t *testing.T) {
	server := Serve(t, "/crank/", Built(t))
	p := Launch(t).Tab()
	send(p, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: `{ const { open } = IDBFactory.prototype; IDBFactory.prototype.open = function (...all) { const late = {}; window.answer = () => { const r = open.apply(this, all); r.onupgradeneeded = late.onupgradeneeded && ((e) => { late.result = r.result; late.transaction = r.transaction; late.onupgradeneeded(e); }); r.onsuccess = () => { late.result = r.result; late.onsuccess(); }; }; return late; }; window.reopen = () => { IDBFactory.prototype.open = open; }; }`,
	})
	p.Visit(server.URL("/crank/"))
	p.Ready()
	assert.Contains(t, p.Text("#notice-text"), "keeps nothing")
	p.Fill("Drive run-out", "4")
	assert.Contains(t, p.Text(headline), "drive")
	Eval[bool](p, `(window.answer(), window.reopen(), true)`)
	p.Until(kept(`form['pass.1.drive.tir'] === '4'`)) // it came late, but it came
	p.Until(`document.getElementById('notice').hidden`)
}

func TestAStoreClearedUnderThePageIsOpenedAnew(t *testing.T) {
	p, _ := bench(t)
	runOut(p, "4")
	send(p, storage.ClearDataForOrigin, storage.ClearDataForOriginParams{Origin: Eval[string](p, `location.origin`), StorageTypes: "indexeddb"})
	p.Until(`document.getElementById('notice-text').textContent.includes('cleared')`)
	// What is asked while Chromium clears is sometimes never answered: ask again.
	p.Until(`Promise.race([indexedDB.databases().then((all) => all.length > 0), new Promise((then) => setTimeout(then, 500))])`)
	holds(p, "4")
	runOut(p, "3")
}

func TestTakingOneThingDoneOutLeavesThoseOfOtherPasses(t *testing.T) {
	p, _ := bench(t)
	got := Eval[[]string](p, `import('./rows.js').then(({ removed }) => {
		const form = { 'pass.1.done.1.kind': 'squeeze', 'pass.2.done.1.kind': 'strike', 'pass.1.dial.1.tir': '3', 'dial.1.at': '60', 'pass.2.done.11.kind': 'spread' };
		return [removed(form, 'pass.2.done', '1'), removed(form, 'dial', '1')].map((gone) => Object.keys(gone).sort().join(' '));
	})`)
	assert.Equal(t, []string{"pass.2.done.1.kind", "dial.1.at pass.1.dial.1.tir"}, got)
}

func TestTheBinGivesBackWhatWasDeleted(t *testing.T) {
	p, server, b := benchIn(t)
	for _, number := range []string{"1", "2"} {
		runOut(p, number)
		to(p, "jobs")
		p.Fill("Job or engine number", number)
		p.Until(kept(`form.number === '` + number + `'`))
		p.Press("Start another crank")
	}
	to(p, "jobs")
	listed(p, 2)
	for _, number := range []string{"1", "2"} {
		p.Press("More: " + number)
		p.Press("Delete: " + number)
	}
	listed(p, 0)
	p.Reload()
	p.Ready()
	p.Until(`document.querySelector("#jobs-bin summary")?.textContent === "Deleted: 2"`)
	Eval[bool](p, `(document.querySelector("#jobs-bin summary").click(), true)`)
	p.Press("Put back: 1")
	assert.Equal(t, []string{"1"}, listed(p, 1))
	tab := b.Open(server.URL("/crank/#jobs"))
	tab.Until(`document.querySelector("#jobs-bin summary").textContent === "Deleted: 1"`)
	Eval[bool](tab, `(document.querySelector("#jobs-bin summary").click(), true)`)
	tab.Press("Put back: 2")
	listed(tab, 2)
	listed(p, 2)
	tab.Until(`document.getElementById('jobs-bin').hidden`)
}

func TestTheBinIsNotEmptiedByAClock(t *testing.T) {
	p, _ := bench(t)
	got := Eval[[]int](p, `import('./bin.js').then(({ daysOf, over }) => {
		const day = 24 * 60 * 60 * 1000;
		const put = 1e12;
		let days = { seen: put, count: 0 };
		const bin = { gone: put, days: 0 };
		const at = (now) => { days = daysOf(days, now); return Number(over(bin, days, now)); };
		const jumped = at(put + 4000 * day); // the clock runs off for ten years
		let outlived = 0;
		for (let i = 1; i <= 40; i++) outlived += 1 - at(put + i * day);
		return [jumped, outlived];
	})`)
	assert.Equal(t, 0, got[0])
	assert.GreaterOrEqual(t, got[1], 29)
	assert.Less(t, got[1], 32)
}

func TestALinksViewHasItsWaysInThePage(t *testing.T) {
	p, server := bench(t)
	twist(p)
	link := linkOf(p)
	other := Launch(t).Open(server.URL("/crank/"))
	other.Fill("Drive run-out", "1.5")
	other.Until(kept(`form['pass.1.drive.tir'] === '1.5'`))
	for _, way := range []struct{ press, tir string }{{"Back to mine", "1.5"}, {"Keep a copy", "4"}} {
		other.Visit("about:blank")
		other.Visit(link)
		other.Ready()
		assert.True(t, Eval[bool](other, `document.getElementById('notice').hidden`), "nothing to close first")
		other.Press(way.press)
		other.Until(`document.getElementById('drive-tir').value === '` + way.tir + `'`)
	}
	other.Until(kept(`form['pass.1.drive.tir'] === '4'`))
	other.Until(kept(`form['pass.1.drive.tir'] === '1.5'`))
}

func TestAPageThatComesBackFromTheCacheReadsAgain(t *testing.T) {
	p, server, b := benchIn(t)
	runOut(p, "4")
	Eval[bool](p, `(BroadcastChannel.prototype.postMessage = () => {}, dispatchEvent(new PageTransitionEvent('pagehide', { persisted: true })), true)`)
	tab := b.Tab()
	send(tab, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `BroadcastChannel.prototype.postMessage = () => {};`}) // a page that sleeps hears nothing
	tab.Visit(server.URL("/crank/"))
	tab.Ready()
	runOut(tab, "6")
	require.Equal(t, "4", p.Value("Drive run-out"))
	Eval[bool](p, `dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))`)
	p.Until(`document.getElementById('drive-tir').value === '6'`)
}

// What is typed goes to the store once its answer stands: a page that ends before hands it on.
func TestWhatIsTypedAsThePageGoesIsKept(t *testing.T) {
	p, server, b := benchIn(t)
	runOut(p, "4")
	typeAndGo(p, "5")
	tab := b.Open(server.URL("/crank/"))
	assert.Equal(t, []string{"4", "5"}, []string{tab.Value("Drive run-out"), tab.Value("Timing run-out")})
	tab.Until(kept(`form['pass.1.drive.tir'] === '4' && form['pass.1.timing.tir'] === '5'`))
	runOut(tab, "6")
	tab.Reload()
	tab.Ready()
	assert.Equal(t, "6", tab.Value("Drive run-out"), "what was handed on comes once")
}

func TestTheFirstFigureTypedAsThePageGoesIsKept(t *testing.T) {
	p, server, b := benchIn(t)
	typeAndGo(p, "5")
	assert.Equal(t, "5", b.Open(server.URL("/crank/")).Value("Timing run-out"))
}

// typeAndGo types a run-out of the timing side and leaves the page at once.
func typeAndGo(p *Page, thou string) {
	p.t.Helper()
	Eval[bool](p, `(setTimeout(() => {
		const field = document.getElementById('timing-tir');
		field.value = '`+thou+`';
		field.dispatchEvent(new Event('input', { bubbles: true }));
		location.replace('about:blank');
	}), true)`)
	p.Until(`location.href === 'about:blank'`)
}

func TestNoticesStandAtTheBottomEdgeAndQueue(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	said := func() string {
		return Eval[string](p, `document.getElementById('notice').hidden ? '' : document.getElementById('notice-text').textContent`)
	}
	p.Choose("Dials read in", "millimetres")
	assert.Contains(t, said(), "units are changed")
	for _, by := range []string{"0", "document.body.scrollHeight"} {
		edge := Eval[[]float64](p, `(() => {
			scrollTo({ top: `+by+`, behavior: 'instant' });
			const { top, bottom } = document.getElementById('notice').getBoundingClientRect();
			return [top, bottom, innerHeight];
		})()`)
		assert.Equal(t, edge[2], edge[1], "at the bottom edge")
		assert.Less(t, edge[2]-edge[0], 160.0, "and low")
	}
	Eval[bool](p, `(document.getElementById('notice-do').click(), true)`) // the page has an undo of its own too
	assert.Equal(t, "4", p.Value("Drive run-out"))
	assert.Empty(t, said())

	// One that holds a way back waits under a later one, and comes again.
	refuse(p)
	p.Fill("Drive run-out", "5")
	p.Until(`document.getElementById('notice-text').textContent.includes('could not be kept')`)
	p.Choose("Dials read in", "millimetres")
	p.Until(`document.getElementById('notice-text').textContent.includes('units are changed')`)
	p.Fill("Drive run-out", "3")
	p.Until(`document.getElementById('notice-text').textContent.includes('could not be kept')`)
	assert.NotContains(t, said(), "units are changed", "it left at the next edit")
}
