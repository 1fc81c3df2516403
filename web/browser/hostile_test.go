package browser

import (
	"encoding/json"
	"math/rand/v2"
	"net/url"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
)

// What somebody may put into a job that he hands on.
var hostileTexts = []string{
	`<img src=x onerror="globalThis.owned = 1">`, `"><svg onload="globalThis.owned = 1">`, `<script>globalThis.owned = 1</script>`,
	`<a href="https://elsewhere.example/">`, "javascript:globalThis.owned=1", "<style>*{display:none}</style>", "{{7*7}}", "]]><!--",
	"9e999", strings.Repeat("9", 600), strings.Repeat("1 ", 2000), "\u202e12\u202c", "\u200b", "١٢٣", "😀\ufffd",
}

// Every field of the table holds one of the texts, each in its turn; each step
// shows the job, and what shows is text. A page that throws or breaks its policy
// fails as it ends.
func TestHostileTextIsOnlyText(t *testing.T) {
	const turns = 4
	p, s := bench(t)
	hosts := hostsAsked(t, p)
	const tags = `[...document.querySelectorAll('script, style, iframe, object, embed, img, base, meta, link')].map((each) => each.src || each.href || each.cloneNode().outerHTML)`
	keep(p, form.Form{"pass.1.order": "1", "pass.1.drive.tir": "3"})
	p.Reload()
	p.Ready()
	own := Eval[[]string](p, tags)
	eachStep(p, func(string) {}) // which has what waits stand
	own = append(own, Eval[[]string](p, tags)...)
	for turn := range turns {
		keep(p, everyField(turn, func(n int) string { return hostileTexts[(n+turn*len(hostileTexts)/turns)%len(hostileTexts)] }))
		p.Reload()
		p.Ready()
		eachStep(p, func(step string) {
			assert.False(t, Eval[bool](p, `'owned' in globalThis`), "%s, turn %d", step, turn)
			assert.Subset(t, own, Eval[[]string](p, tags), "%s, turn %d", step, turn)
			assert.Empty(t, Eval[string](p, `document.getElementById('notice').hidden ? '' : document.getElementById('notice-text').textContent`), "%s, turn %d", step, turn)
			assert.NotRegexp(t, `NaN|Infinity|undefined|\[object`, p.Text("main"), "%s, turn %d", step, turn)
		})
	}
	ours, err := url.Parse(s.URL("/"))
	require.NoError(t, err)
	assert.Equal(t, map[string]bool{ours.Host: true}, hosts())
}

// hostsAsked returns a function that tells which hosts a page has asked for anything since.
func hostsAsked(t *testing.T, p *Page) func() map[string]bool {
	t.Helper()
	send(p, network.Enable, network.EnableParams{})
	asked := make(chan string, 10000)
	require.NoError(t, chromedp.Listen(p.ctx, func(event any) {
		if sent, ok := event.(*network.EventRequestWillBeSent); ok {
			asked <- sent.Request.URL
		}
	}))
	return func() map[string]bool {
		hosts := map[string]bool{}
		for len(asked) > 0 {
			if at, err := url.Parse(<-asked); assert.NoError(t, err) && at.Host != "" {
				hosts[at.Host] = true
			}
		}
		return hosts
	}
}

// everyField is a job with a text in every field, and each choice in its turn.
func everyField(turn int, text func(n int) string) map[string]string {
	job := map[string]string{}
	for n, field := range form.Job.Fields() {
		given := text(n)
		if len(field.Choices) > 0 {
			given = field.Choices[(turn+n)%len(field.Choices)]
		}
		job[form.Fill(field.Pattern, []string{"a1", "b2", "c3", "d4"})] = given
	}
	return job
}

// A file that is not quite one: each is refused with words, or gives jobs that
// are fit for the table, never more and never a fault. Seed 1.
func TestAFileThatIsChangedIsRefusedOrRead(t *testing.T) {
	const files = 1000
	p, _ := bench(t)
	random := rand.New(rand.NewPCG(1, 9))
	jobs := []map[string]any{}
	for i, text := range []string{"1.5", "<b>", "é"} {
		f := map[string]string{"pass.a1.drive.how": "turn"}
		for _, name := range []string{"number", "throw", "pass.a1.drive.tir", "pass.b2.note", "notes"} {
			f[name] = text
		}
		jobs = append(jobs, map[string]any{"id": "job" + strconv.Itoa(i), "rev": 1 + i, "form": f})
	}
	whole, err := json.Marshal(map[string]any{"file": "Pintwelve jobs", "version": 1, "jobs": jobs})
	require.NoError(t, err)
	changed := make([]string, files)
	for i := range changed {
		changed[i] = string(spoiled(random, whole))
	}
	sent, err := json.Marshal(changed)
	require.NoError(t, err)
	got := Eval[struct {
		Refused, Read int
		Faults        []string
	}](p, `(async (files) => {
		const { read, written } = await import('./file.js');
		const { startCore } = await import('./bridge.js');
		const call = await startCore();
		const unfit = (form) => Object.keys(call('unfit', form));
		const out = { Refused: 0, Read: 0, Faults: [] };
		for (const text of files) {
			try {
				const { records } = await read(new File([text], 'jobs.json'), unfit);
				out.Read++;
				if (records.length > 3) out.Faults.push('too many');
				for (const { id, form } of records) {
					if (!/^[a-z0-9]{1,24}$/.test(id) || unfit(form).length) out.Faults.push(id);
				}
				const again = await read(new File([written(records)], 'jobs.json'), unfit);
				if (again.dropped || JSON.stringify(again.records.map(({ id }) => id)) !== JSON.stringify(records.map(({ id }) => id))) out.Faults.push('not the same');
			} catch (error) {
				out.Refused++;
				if (error.constructor !== Error || !/^(it|a newer|the \S+ job|“[^”]*”) /.test(error.message.replace(/^its /, 'it '))) out.Faults.push(String(error));
			}
		}
		return out;
	})(`+string(sent)+`)`)
	assert.Empty(t, got.Faults)
	assert.Equal(t, files, got.Refused+got.Read)
	assert.Greater(t, got.Read, files/20)
	assert.Greater(t, got.Refused, files/20)
	t.Logf("%d files changed: %d refused, %d read", files, got.Refused, got.Read)
}

// spoiled is a file with one to three places cut, doubled or changed.
func spoiled(random *rand.Rand, whole []byte) []byte {
	text := append([]byte(nil), whole...)
	for range 1 + random.IntN(3) {
		at := random.IntN(len(text))
		n := min(1+random.IntN(12), len(text)-at)
		switch random.IntN(4) {
		case 0:
			text = append(text[:at], text[at+n:]...)
		case 1:
			text = append(text[:at:at], append(append([]byte(nil), text[at:at+n]...), text[at:]...)...)
		case 2:
			text[at] = `{}[]",:0e-\u`[random.IntN(12)]
		default:
			text[at] ^= byte(1 << random.IntN(7))
		}
	}
	return text
}
