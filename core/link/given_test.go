package link

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/testdata/links"
)

func TestGivenLinksOpen(t *testing.T) {
	for _, g := range links.All(t) {
		given := form.Form(g.Job)
		again, err := Encode(given)
		require.NoError(t, err, g.Name)
		require.NotEmpty(t, g.Link, "%s: put this on the first line:\n%s", g.Name, again)
		job, err := Decode(g.Link)
		require.NoError(t, err, g.Name)
		assert.Equal(t, given, job, g.Name)
		job, err = Decode(again)
		require.NoError(t, err, g.Name)
		assert.Equal(t, given, job, g.Name)
	}
}

// Six passes without notes are promised to fit.
func TestGivenSixPassesFit(t *testing.T) {
	found := false
	for _, g := range links.All(t) {
		if strings.HasPrefix(g.Name, "six-passes-no-notes") {
			found = true
			text, err := Encode(g.Job)
			require.NoError(t, err)
			assert.LessOrEqual(t, len(text), 700, g.Name)
		}
	}
	assert.True(t, found)
}

// Every letter of both codes stands in a given link, so that none can change.
func TestGivenLinksHoldTheLetters(t *testing.T) {
	var held [256][2]bool
	for _, g := range links.All(t) {
		for _, text := range g.Job {
			manner := mannerOf(text)
			for i := range len(text) {
				held[text[i]][0] = held[text[i]][0] || manner == inFigures
				held[text[i]][1] = held[text[i]][1] || manner == inWords
			}
		}
	}
	for b := range 255 {
		if b != end {
			assert.True(t, held[b][0] || figures.width[b] == 0, "figure %q", b)
			assert.True(t, held[b][1] || words.width[b] == 0, "letter %q", b)
		}
	}
}

// A field or a choice that stands in no given link could change its number or
// its place unseen. Where one does this fails, and prints the files that would
// mend it.
func TestGivenLinksHoldTheTable(t *testing.T) {
	held := map[string]bool{}
	for _, g := range links.All(t) {
		for name, text := range g.Job {
			field, _, _ := form.Job.Lookup(name)
			held[mark(field, text)] = true
		}
	}
	for {
		lacking := jobOf(held)
		if len(lacking) == 0 {
			return
		}
		link, err := Encode(lacking)
		require.NoError(t, err)
		job, err := json.MarshalIndent(lacking, "", " ")
		require.NoError(t, err)
		t.Errorf("add a file to testdata/links:\n%s\n%s\n", link, job)
	}
}

// mark is a field, or one of its choices.
func mark(f *form.Field, text string) string {
	if slices.Contains(choices(f), text) {
		return f.Pattern + " " + text
	}
	return f.Pattern
}

// jobOf is a job of what isn't held yet, as far as it goes in one; it is then.
func jobOf(held map[string]bool) form.Form {
	job := form.Form{}
	fields := form.Job.Fields()
	for i := range fields {
		texts := choices(&fields[i])
		if len(texts) == 0 {
			texts = []string{"1"}
		}
		for _, text := range texts {
			if m := mark(&fields[i], text); !held[m] {
				held[m] = true
				job[form.Fill(fields[i].Pattern, []string{"a1", "b2", "c3", "d4"})] = text
				break
			}
		}
	}
	return job
}
