package browser

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// Wrong figures going in: what oily thumbs do, and what must not come of it.

const faceSVG = "[data-picture=face] svg"

// at9 and at3 are on the rim of the clock face.
func at3(p *Page) { p.Tap(faceSVG, 0.75, 166.0/330) }
func at9(p *Page) { p.Tap(faceSVG, 0.25, 166.0/330) }

// tapOn touches the button, link or choice with a name, or a field's label.
func touch(p *Page, name string) {
	p.t.Helper()
	Eval[bool](p, `(() => {
		const all = [...document.querySelectorAll('button, input')].filter((e) => e.checkVisibility());
		const found = all.find((e) => (e.getAttribute('aria-label') ?? e.labels?.[0]?.textContent.trim() ?? e.textContent) === '`+name+`');
		document.querySelectorAll('[data-touch]').forEach((e) => delete e.dataset.touch);
		(found.closest('.aim') ?? found).dataset.touch = '';
		return true;
	})()`)
	p.Tap("[data-touch]", 0.5, 0.5)
}

// quiet waits until a tap counts again after a pass has changed.
func quiet() { time.Sleep(700 * time.Millisecond) }

func hoursOf(p *Page) [2]string {
	return [2]string{p.Value("Drive high at"), p.Value("Timing high at")}
}

func TestATapAnswersTheQuestionThatStands(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Drive run-out", "4")
	p.Fill("Timing run-out", "4")
	assert.Contains(t, p.Text(headline), "drive needle")
	at3(p)
	assert.Equal(t, [2]string{"3", ""}, hoursOf(p), "asked for, though the timing field was the last that was touched")
	assert.Contains(t, p.Text(headline), "timing needle")
	assert.True(t, Eval[bool](p, `document.querySelector('input[name=aim][value=timing]').checked`))
	at9(p)
	assert.Equal(t, [2]string{"3", "9"}, hoursOf(p))
	said := p.Text(headline)

	at3(p)
	at9(p)
	assert.Equal(t, [2]string{"3", "9"}, hoursOf(p), "both stand")
	assert.Equal(t, said, p.Text(headline))
	assert.Contains(t, p.Text("#notice-text"), "Both hours stand")
	touch(p, "A tap on the clock face sets the drive hour")
	at9(p)
	assert.Equal(t, [2]string{"9", "9"}, hoursOf(p), "D was touched")
	at3(p)
	assert.Equal(t, [2]string{"9", "9"}, hoursOf(p), "once")
	touch(p, "Timing high at")
	at3(p)
	assert.Equal(t, [2]string{"9", "3"}, hoursOf(p), "the hour was touched")

	p.Press("Undo")
	p.Press("Undo")
	p.Press("Undo")
	p.Fill("Timing run-out", "3")
	at9(p)
	assert.Equal(t, [2]string{"3", "9"}, hoursOf(p), "the aim follows any field of a dial")
}

func TestATapTwiceDoesNothingTwice(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	Eval[bool](p, `(document.getElementById('again').scrollIntoView({ block: 'center', behavior: 'instant' }), true)`)
	p.Tap("#again", 0.5, 0.5)
	at3(p)
	Eval[bool](p, `(document.querySelector('[data-for="pass.*.drive.tir"][data-step="1"]').click(), true)`)
	assert.Equal(t, [2]string{"", ""}, hoursOf(p), "meant for what stood there before")
	assert.Equal(t, "", p.Value("Drive run-out"))
	quiet()
	p.Press("Read again")
	assert.Equal(t, 2, passCount(p), "the pass is unread")
	at3(p)
	assert.Equal(t, [2]string{"3", ""}, hoursOf(p))
}

func TestAtTheLatheATapIsForTheReadingThatShows(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Drive run-out", "4")
	p.Press("At the lathe")
	quiet()
	p.Until(`document.querySelector('.lathe-what').textContent.includes('high at')`)
	at3(p)
	p.Press("Next")
	at9(p)
	assert.Equal(t, "9", Eval[string](p, `document.getElementById('timing-high').value`), "the timing run-out is asked for")
	assert.Equal(t, "3", Eval[string](p, `document.getElementById('drive-high').value`))
	at3(p)
	assert.Equal(t, "9", Eval[string](p, `document.getElementById('timing-high').value`), "it stands")
	assert.Contains(t, p.Text("#notice-text"), "go to it by “Next” first")
	p.Press("One division more")
	p.Press("Next")
	at3(p)
	assert.Equal(t, "3", Eval[string](p, `document.getElementById('timing-high').value`), "the hour shows")
}

func choices(p *Page) []string {
	return Eval[[]string](p, `[...document.querySelectorAll('.choices button')].map((e) => e.textContent)`)
}

func TestAUnitInDoubtIsAskedInPlace(t *testing.T) {
	p, _ := bench(t)
	rows := func() float64 {
		return Eval[float64](p, `document.querySelector('.below').getBoundingClientRect().top - document.querySelector('.dial').getBoundingClientRect().top`)
	}
	before := rows()
	p.Fill("Drive run-out", "0.14")
	p.Fill("Drive high at", "3")
	p.Fill("Timing run-out", "0.5")
	p.Fill("Timing high at", "4")
	assert.Equal(t, before, rows(), "the question lies over what is below")
	assert.Equal(t, "0.14 thou, or 0.14 mm?", p.Text(headline))
	assert.Equal(t, []string{"0.14 thou", "0.14 mm"}, choices(p))
	p.Fill("Timing run-out", "8/100")
	quiet()
	p.Press("0.14 mm")
	assert.Equal(t, "0.14 mm", p.Value("Drive run-out"))
	assert.Equal(t, "8/100 thou, or 8/100 mm?", p.Text(headline), "one question after the other")
	quiet()
	p.Press("8/100 thou")
	assert.Equal(t, "8/100 thou", p.Value("Timing run-out"))
	assert.Empty(t, choices(p))
	assert.NotContains(t, p.Text(headline), "?")

	p.Fill("Drive run-out", "0.03")
	Eval[bool](p, `(document.querySelector('.choices button:nth-child(2)').click(), true)`)
	assert.Equal(t, "0.03", p.Value("Drive run-out"), "pressed before it could be seen")
}

// What is wrong with one dial is told where the other's question stands: it comes first.
func TestAQuestionCoversNoComplaint(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Drive run-out", "0.14")
	p.Fill("Timing run-out", "bananas")
	asked := `document.querySelector('.dial .choices').checkVisibility()`
	assert.False(t, Eval[bool](p, asked))
	p.Fill("Timing run-out", "4")
	assert.True(t, Eval[bool](p, asked))
}

// What is asked beside the right one of two fields stays on the screen: a phone widens to what hangs over.
func TestAQuestionHangsOverNoSide(t *testing.T) {
	p, _ := bench(t)
	to(p, "cases")
	p.Fill("Drive side run-out in the cases", "0.14")
	p.Fill("Timing side run-out in the cases", "0.125")
	assert.Len(t, choices(p), 4)
	assert.Equal(t, 360, Eval[int](p, `innerWidth`))
}

func TestTheUnitBesideAFigureIsItsSwitch(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Run-out allowed on either shaft", "2")
	p.Fill("Timing run-out", "0.08")
	p.Fill("Drive run-out", "0.14")
	p.Fill("Drive run-out", "0.5")
	p.Press("thou as the unit of Drive run-out")
	assert.Equal(t, "0.5", p.Value("Drive run-out"), "a thumb goes there for the field")
	assert.Contains(t, choices(p), "read in mm")
	quiet()
	p.Press("read in mm")
	assert.Equal(t, []string{"0.5", "0.08", "0.0508"}, []string{p.Value("Drive run-out"), p.Value("Timing run-out"), p.Value("Run-out allowed on either shaft")},
		"what was typed here and what was in doubt were meant in millimetres, the rest means the same")
	assert.Equal(t, "mm", p.Text("#drive-tir + .unit [data-unit]"))
	assert.Empty(t, choices(p))
	p.Press("Undo")
	assert.Equal(t, "2", p.Value("Run-out allowed on either shaft"))
}

func TestEnterGoesToTheNextReadingAndFromTheLastToTheSentence(t *testing.T) {
	p, _ := bench(t)
	p.Type("Drive run-out", "4")
	for _, text := range []string{"3", "4", "9"} {
		p.Enter()
		p.Insert(text)
	}
	Eval[bool](p, `(scrollTo(0, 300), true)`)
	p.Enter()
	assert.Equal(t, "BODY", Eval[string](p, `document.activeElement.tagName`), "the keyboard closes")
	assert.Zero(t, Eval[float64](p, `scrollY`))
	assert.Contains(t, p.Text(headline), "Strike the drive wheel at 3")
	p.Type("Drive run-out", "5")
	p.Enter()
	assert.Equal(t, "BODY", Eval[string](p, `document.activeElement.tagName`), "all others stand")
}

func TestATurnStaysOpenForItsClosingPoint(t *testing.T) {
	p, _ := bench(t)
	p.Choose("Drive dial is read by", "a full turn")
	p.Fill("Timing run-out", "1")
	p.Fill("Timing high at", "12")
	const turn = "Drive turn, reading by reading"
	type1 := func(texts ...string) {
		for _, text := range texts {
			p.Enter()
			p.Insert(text)
		}
	}
	p.Type(turn, "0")
	type1("2", "4", "2")
	p.Enter()
	assert.Equal(t, "drive-turn", Eval[string](p, `document.activeElement.id`), "open for the first point again")
	p.Insert("0.5")
	assert.Contains(t, p.Text("[data-say='turn.drive.next']"), "the turn is whole")
	p.Enter()
	assert.Equal(t, "BODY", Eval[string](p, `document.activeElement.tagName`))
	assert.Equal(t, "0 2 4 2 0.5", p.Value(turn))

	p.Type(turn, "0 2 4 2")
	p.Enter()
	p.Enter()
	assert.Equal(t, "0 2 4 2", p.Value(turn), "not read again")
	assert.Equal(t, "BODY", Eval[string](p, `document.activeElement.tagName`))

	p.Type(turn, "0; 2;")
	p.Enter()
	p.Enter()
	assert.Equal(t, "0; 2;2;2;", p.Value(turn), "passed over they read as the one before")
	p.Type(turn, "0 2 thou")
	type1("4", "2")
	assert.Equal(t, "0 2 4 2 thou", p.Value(turn))
	p.Press("Undo")
	assert.Equal(t, "0 2 4  thou", p.Value(turn), "one reading is one change")
}

func TestAnHourIsJudgedWhenItIsLeft(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Drive run-out", "4")
	p.Type("Drive high at", "7:")
	assert.Equal(t, "false", Eval[string](p, `String(document.getElementById('drive-high').getAttribute('aria-invalid') ?? false)`))
	assert.Contains(t, p.Text(headline), "At which hour does the drive needle")
	p.Tab()
	assert.Equal(t, "true", Eval[string](p, `document.getElementById('drive-high').getAttribute('aria-invalid')`))
	p.Fill("Drive high at", "5.30")
	p.Fill("Timing run-out", "4")
	p.Fill("Timing high at", "5:30")
	assert.Contains(t, Eval[string](p, `document.querySelector('[data-picture=face] svg desc').textContent`), "5:30")
	p.Fill("Timing high at", "5.50")
	assert.Equal(t, []string{"5:30", "5:50"}, choices(p))
	assert.NotContains(t, p.Text(headline), "?", "it stands meanwhile as a decimal")

	touch(p, "Timing high at")
	touch(p, "Timing high at, a quarter of an hour more")
	touch(p, "Timing high at, a quarter of an hour more")
	assert.Equal(t, "6", p.Value("Timing high at"))
	assert.Equal(t, "4", p.Value("Timing run-out"))
	touch(p, "Timing run-out")
	touch(p, "Timing run-out, one division more")
	assert.Equal(t, "4.5", p.Value("Timing run-out"))
}

func TestTheCrankAsFoundKeepsItsPlace(t *testing.T) {
	p, _ := bench(t)
	fill4(p, "6", "3", "5", "9")
	p.Press("Read again")
	fill4(p, "3", "3", "2.5", "9")
	p.Until(`document.querySelectorAll('.pass').length === 2`)
	Eval[bool](p, `(document.querySelector('.pass [data-remove]').click(), true)`)
	p.Until(`document.querySelector('.pass').textContent.includes('not read')`)
	assert.Equal(t, 2, passCount(p))
	assert.Contains(t, Eval[string](p, `document.querySelectorAll('.pass')[1].textContent`), "Pass 2: D 3 thou")
	assert.Contains(t, p.Text("#notice-text"), "as found are taken out")
	to(p, "sheet")
	assert.NotContains(t, p.Text("#paper"), "As found: D 3")
	assert.NotContains(t, p.Text("#paper"), "It came at")
	p.Press("Put it back")
	assert.Contains(t, p.Text("#paper"), "It came at")
}

func TestLookingAtAnEarlierPassIsNoEdit(t *testing.T) {
	p, server, b := benchIn(t)
	fill4(p, "6", "3", "5", "9")
	p.Press("Read again")
	fill4(p, "3", "3", "2.5", "9")
	p.Until(kept(`Object.values(form).includes('2.5')`))
	tab := b.Open(server.URL("/crank/"))
	tab.Phone()
	rev := `new Promise((resolve) => {
		const open = indexedDB.open('pintwelve /crank/');
		open.onsuccess = () => {
			const all = open.result.transaction('jobs').objectStore('jobs').getAll();
			all.onsuccess = () => { open.result.close(); resolve(all.result[0].rev); };
		};
	})`
	before := Eval[int](p, rev)
	Eval[bool](p, `(document.querySelector('.pass [data-look]').click(), true)`)
	assert.Equal(t, "6", p.Value("Drive run-out"))
	time.Sleep(300 * time.Millisecond)
	assert.Equal(t, before, Eval[int](p, rev), "nothing was kept")
	assert.Equal(t, "3", tab.Value("Drive run-out"), "the other tab looks where it looked")
	p.Press("Undo")
	assert.Equal(t, "", Eval[string](p, `(document.querySelectorAll('.pass [data-look]')[1].click(), document.getElementById('timing-high').value)`), "undo takes back a figure")
}

func TestOnVBlocksTheTwoDistancesAreAskedBesideTheReadings(t *testing.T) {
	p, _ := bench(t)
	p.Choose("The crank is turned", "on V-blocks")
	fill4(p, "6", "12", "5", "12")
	assert.NotContains(t, p.Text("#true .answer"), "thou")
	assert.Contains(t, p.Text("#true .answer"), "hang on two distances")
	p.Fill("Drive end to its dial", "30")
	p.Fill("Drive end to its V-block", "70")
	assert.Contains(t, p.Text("#true .answer"), "thou")
}

// A text with a unit of its own counts in that: no other stands beside it.
func TestAUnitTypedTakesThePlaceOfTheOneBesideIt(t *testing.T) {
	p, _ := bench(t)
	shown := func() bool {
		return Eval[bool](p, `document.querySelector('#drive-tir + .unit').checkVisibility({ visibilityProperty: true })`)
	}
	p.Fill("Drive run-out", "2")
	assert.True(t, shown())
	for _, own := range []string{"0.05 mm", "2 thou", "1/500 in", "0.002\""} {
		p.Fill("Drive run-out", own)
		assert.False(t, shown(), own)
	}
	p.Fill("Drive run-out", "3")
	assert.True(t, shown())
}

// A pass taken out takes with it what was done after it: that is said, and undone by one tap.
func TestAPassTakenOutSaysWhatGoesWithIt(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	p.Press("Struck: read again")
	assert.Equal(t, "Logged as done.", p.Text("#notice-text"))
	h := p.Thumb()
	h.Tap("Undo")
	assert.Equal(t, "4", p.Value("Drive run-out"), "by the notice, where the thumb is")
	assert.Zero(t, h.Scrolls)
	p.Press("Struck: read again")
	twist(p)
	p.Press("Struck: read again")
	twist(p)
	p.Unfold()
	Eval[bool](p, `(document.querySelectorAll('#passes .pass [data-remove]')[1].click(), true)`)
	assert.Equal(t, "Taken out. What was done after it is gone with it.", p.Text("#notice-text"))
	assert.Equal(t, 2, passCount(p))
	h.Tap("Put it back")
	assert.Equal(t, 3, passCount(p))
	p.Until(`[...document.querySelectorAll('#passes .pass')].filter((e) => e.textContent.includes('struck')).length === 2`)
}

// The way to the lathe tapped twice: the second tap finds the face where the button was.
func TestTheLatheTappedTwiceSetsNoHour(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Drive run-out", "4")
	Eval[bool](p, `(document.querySelector('.acts [data-lathe-open]').click(), true)`)
	at3(p)
	assert.Equal(t, "", Eval[string](p, `document.getElementById('drive-high').value`))
	assert.Equal(t, 1, Eval[int](p, `document.querySelectorAll('.at-lathe').length`))
	quiet()
	at3(p)
	assert.Equal(t, "3", Eval[string](p, `document.getElementById('drive-high').value`))
	Eval[bool](p, `(history.back(), true)`)
	p.Until(`!document.documentElement.classList.contains('at-lathe')`)
}
