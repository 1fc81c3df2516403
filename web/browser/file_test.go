package browser

import (
	"encoding/json"
	"math/rand"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/link"
)

// settle runs the page's own rule for a file's job beside the one that is kept.
func settle(t *testing.T, p *Page, kept, job string) (count string, keep []map[string]any) {
	t.Helper()
	var got struct {
		Count string           `json:"count"`
		Keep  []map[string]any `json:"keep"`
	}
	text := Eval[string](p, `import('./descent.js').then(({ settled }) => JSON.stringify(settled((id) => id === 'a' ? `+kept+` : undefined, `+job+`)))`)
	require.NoError(t, json.Unmarshal([]byte(text), &got))
	return got.Count, got.Keep
}

func TestAFilesJobsMeetThoseThatAreKept(t *testing.T) {
	p, _ := bench(t)
	const job = `{ id: 'a', rev: 5, past: ['m', 'n'], form: { throw: '42' } }`
	for _, row := range []struct {
		name, kept, count string
		keep              int
		past              []any // of what is kept
	}{
		{"none kept", `undefined`, "added", 1, []any{"m", "n"}},
		{"alike", `{ id: 'a', rev: 9, shared: 9, past: ['m', 'n'], form: { throw: '42' } }`, "same", 1, []any{"m", "n"}},
		{"alike, come to apart", `{ id: 'a', rev: 9, shared: 7, past: ['m', 'o'], form: { throw: '42' } }`, "same", 1, []any{"o", "m", "n"}},
		{"the file's comes from the kept", `{ id: 'a', rev: 9, shared: 9, past: ['m'], form: { throw: '40' } }`, "renewed", 1, []any{"m", "n"}},
		{"the file's comes from the kept, which more writes made", `{ id: 'a', rev: 99, shared: 99, past: ['l', 'm'], form: { throw: '40' } }`, "renewed", 1, []any{"l", "m", "n"}},
		{"the kept comes from the file's", `{ id: 'a', rev: 2, shared: 2, past: ['m', 'n', 'o'], form: { throw: '40' } }`, "older", 0, nil},
		{"the kept, worked on, comes from the file's", `{ id: 'a', rev: 2, shared: 1, past: ['m', 'n'], form: { throw: '40' } }`, "older", 0, nil},
		{"the kept was worked on since what both come from", `{ id: 'a', rev: 3, shared: 2, past: ['m'], form: { throw: '40' } }`, "parted", 1, nil},
		{"both are in files of their own", `{ id: 'a', rev: 3, shared: 3, filed: 3, past: ['m', 'o'], form: { throw: '40' } }`, "parted", 1, nil},
		{"the kept is of unknown descent", `{ id: 'a', rev: 3, filed: 3, form: { throw: '40' } }`, "parted", 1, nil},
	} {
		count, keep := settle(t, p, row.kept, job)
		assert.Equal(t, row.count, count, row.name)
		require.Len(t, keep, row.keep, row.name)
		switch {
		case row.count == "parted":
			assert.NotEqual(t, "a", keep[0]["id"], "the kept one stays; the copy has an id of its own")
			assert.NotContains(t, keep[0], "filed", "no file holds the copy")
		case row.keep > 0:
			assert.Equal(t, "a", keep[0]["id"])
			assert.Equal(t, row.past, keep[0]["past"], row.name)
			assert.Equal(t, keep[0]["rev"], keep[0]["filed"], row.name)
		}
	}
	count, _ := settle(t, p, `{ id: 'a', rev: 5, form: { throw: '40' } }`, `{ id: 'a', rev: 9, past: [], form: { throw: '42' } }`)
	assert.Equal(t, "parted", count, "neither knows where it comes from")
}

// Seed 8: random jobs come back whole through a file, through a link, and
// through both one after the other.
func TestRandomJobsComeBackThroughFileAndLink(t *testing.T) {
	p, _ := bench(t)
	rnd := rand.New(rand.NewSource(8))
	var jobs []form.Form
	for range 40 {
		f := form.Form{}
		for range 1 + rnd.Intn(60) {
			field := form.Job.Fields()[rnd.Intn(len(form.Job.Fields()))]
			keys := []string{}
			for range 4 {
				keys = append(keys, strconv.FormatInt(rnd.Int63n(36*36), 36))
			}
			f[form.Fill(field.Pattern, keys)] = typed(rnd, &field)
		}
		jobs = append(jobs, f)
	}
	sent, err := json.Marshal(jobs)
	require.NoError(t, err)
	text := Eval[string](p, `(async () => {
		const { written, read } = await import('./file.js');
		const { startCore } = await import('./bridge.js');
		const call = await startCore();
		const jobs = `+string(sent)+`;
		const file = new File(written(jobs.map((form, i) => ({ id: 'job' + i, rev: 1 + i, form }))), 'jobs.json');
		const { records, dropped } = await read(file, (form) => Object.keys(call('unfit', form)));
		if (dropped) throw new Error(dropped + ' fields were dropped');
		const linked = records.map(({ form }) => {
			const { link, problem } = call('encode', form);
			return problem ? { problem } : call('decode', {}, { link });
		});
		return JSON.stringify([records.map(({ form }) => form), linked]);
	})()`)
	var got [2][]form.Form
	require.NoError(t, json.Unmarshal([]byte(text), &got))
	for i, f := range jobs {
		assert.Equal(t, f, got[0][i], "by file")
		assert.Equal(t, f, got[1][i], "by file and link")
		text, err := link.Encode(f)
		require.NoError(t, err)
		back, err := link.Decode(text)
		require.NoError(t, err)
		assert.Equal(t, f, back)
	}
}

// typed is a text that a field's control could hold.
func typed(rnd *rand.Rand, f *form.Field) string {
	switch f.Kind {
	case form.Choice:
		for {
			if word := f.Choices[rnd.Intn(len(f.Choices))]; word != "" {
				return word
			}
		}
	case form.Tick:
		return "yes"
	case form.Order:
		return strconv.Itoa(rnd.Intn(1000))
	case form.Words:
		texts := []string{"é", "<b>&amp;\"'", "two\nlines\tand a tab", "12:30", "日本"}
		if text := texts[rnd.Intn(len(texts))]; len(text) <= f.Long {
			return text
		}
		return "x"
	default:
		texts := []string{"1.5", "-3", "2 thou", "1 5/8 in", "4 bananas", "0.05 mm", "12:15"}
		return texts[rnd.Intn(len(texts))]
	}
}
