package sheet

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	drilling "pintwelve/core/step/balance"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/links"
)

// hostile is what no field asks for.
var hostile = []string{
	"", " ", "0", "-0", "1", "-1", "1e-300", "1e300", "9e999", "-9e999", "NaN", "Infinity", "-inf", "0x1p4", "1_000", "1,000.5", "1.2.3",
	"99999999999999999999", "0 0 0 0", "1 1 1 1 1 1 1 1", "0 5 10 5", "12", "12:60", "-3:30", "1/0", "1 5/0", "½", "1 thou mm", "5 lb 99 oz",
	"١٢٣", "１２", "\u202e12", "\u200b3", "\u0000", "a\u0000b", "\ufffd", "\xff", "<script>alert(1)</script>", "<svg onload=alert(1)>", `"><img src=x onerror=alert(1)>`,
	"%", "% % %", "&amp;&lt;", "]]>", "__proto__", strings.Repeat("9", 4000), strings.Repeat("1 ", 2000), strings.Repeat("ш", 2000),
}

// givenJobs are the jobs of testdata/links.
func givenJobs(t testing.TB) (all []form.Form) {
	for _, g := range links.All(t) {
		all = append(all, form.Form(g.Job))
	}
	return all
}

// checkAnswers asserts what holds of the answers to any form at all: nothing but
// the field's own error speaks of what is no number, pictures are XML without a
// script or a frame, and no template's sign is left.
func checkAnswers(t *testing.T, f form.Form, told bool) {
	t.Helper()
	for _, part := range steps {
		for _, e := range Answer(f, part.Name).Entries {
			if e.Kind == bench.Number {
				require.False(t, math.IsNaN(e.Number) || math.IsInf(e.Number, 0) || e.Number == 0 && math.Signbit(e.Number), "%s: %s", part.Name, e.Name)
			}
			if picture := strings.HasPrefix(e.Name, "picture."); picture && e.Text != "" {
				checkXML(t, e)
				if e.Name != "picture.shop" { // whose letters are as typed
					require.NotRegexp(t, `\de[-+]?\d`, e.Text, "%s: %s", part.Name, e.Name)
				}
			}
			if told && !strings.HasPrefix(e.Name, "error.") {
				for _, word := range []string{"NaN", "Inf", "%!", "undefined"} {
					require.NotContains(t, e.Text, word, "%s: %s", part.Name, e.Name)
				}
			}
		}
	}
}

func checkXML(t *testing.T, e bench.Entry) {
	t.Helper()
	decoder := xml.NewDecoder(strings.NewReader(e.Text))
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err, e.Name)
		if start, ok := token.(xml.StartElement); ok {
			require.NotContains(t, []string{"script", "foreignObject", "image", "a", "use", "animate", "set"}, start.Name.Local, e.Name)
			for _, a := range start.Attr {
				require.False(t, strings.HasPrefix(a.Name.Local, "on"), e.Name)
			}
		}
	}
}

// tells says whether a text may stand in an answer as it is: a note does.
func tells(text string) bool {
	return !strings.Contains(text, "NaN") && !strings.Contains(text, "Inf") && !strings.Contains(text, "%!")
}

func TestAnyTextInEveryFieldIsAnswered(t *testing.T) {
	fields := form.Job.Fields()
	for i, text := range hostile {
		f := form.Form{}
		for n := range fields {
			given := text
			if fields[n].Kind == form.Choice { // each choice in turn, and now and then what is none
				if choices := fields[n].Choices; (i+n)%5 > 0 {
					given = choices[(i+n)%len(choices)]
				}
			}
			f[form.Fill(fields[n].Pattern, []string{"a1", "b2", "c3", "d4"})] = given
		}
		checkAnswers(t, f, tells(text))
	}
}

// One field after another, in jobs that are otherwise whole.
func TestAnyTextInAFieldOfAWholeJobIsAnswered(t *testing.T) {
	jobs := givenJobs(t)
	random := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		spoil(t, jobs[random.IntN(len(jobs))], random, hostile[random.IntN(len(hostile))])
	}
}

// FuzzAnswer puts any text into some fields of a whole job.
func FuzzAnswer(f *testing.F) {
	jobs := givenJobs(f)
	for i, text := range hostile {
		f.Add(text, uint64(i))
	}
	f.Fuzz(func(t *testing.T, text string, seed uint64) {
		random := rand.New(rand.NewPCG(seed, 3))
		spoil(t, jobs[random.IntN(len(jobs))], random, text)
	})
}

// spoil puts a text into one to four fields of a job, which are there or not.
func spoil(t *testing.T, job form.Form, random *rand.Rand, text string) {
	t.Helper()
	f, names := job.With(nil), job.Names()
	for range 1 + random.IntN(4) {
		if random.IntN(2) == 0 {
			f[names[random.IntN(len(names))]] = text
			continue
		}
		fields := form.Job.Fields()
		f[form.Fill(fields[random.IntN(len(fields))].Pattern, []string{"a1", "b2", "c3", "d4"})] = text
	}
	checkAnswers(t, f, tells(text) && !strings.ContainsAny(text, "NI%"))
	require.NotPanics(t, func() {
		truing.Done(f, []string{"x1", "x2"}, "x3")
		truing.Again(f, "x4")
		drilling.Drilled(f, "x5")
	}, strconv.Quote(text))
}
