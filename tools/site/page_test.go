package site

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
)

// wholePage is the page as it is written out.
func wholePage(t *testing.T) []byte {
	files, err := Source("../../web")
	require.NoError(t, err)
	return files[pageFile]
}

func TestEveryFieldHasItsControlAndEveryControlItsField(t *testing.T) {
	page := wholePage(t)
	controls := map[string]bool{}
	for _, m := range regexp.MustCompile(`<(?:input|select|textarea)[^>]* name="([^"]+)"`).FindAllSubmatch(page, -1) {
		if name := string(m[1]); name != "aim" {
			controls[name] = true
		}
	}
	for _, f := range form.Job.Fields() {
		if f.Kind != form.Order {
			assert.True(t, controls[f.Pattern], "index.html has no control for %s", f.Pattern)
			delete(controls, f.Pattern)
		}
	}
	assert.Empty(t, controls, "the table has no such fields")
}

// A select's first option is the table's default, and its options the table's
// words.
func TestEverySelectOffersTheTablesWords(t *testing.T) {
	page := wholePage(t)
	selects := regexp.MustCompile(`(?s)<select[^>]* name="([^"]+)".*?</select>`).FindAllSubmatch(page, -1)
	assert.NotEmpty(t, selects)
	for _, m := range selects {
		f, ok := rowNamed(string(m[1]))
		require.True(t, ok, "%s", m[1])
		var words []string
		for _, o := range regexp.MustCompile(`<option value="([^"]*)"`).FindAllSubmatch(m[0], -1) {
			words = append(words, string(o[1]))
		}
		assert.Equal(t, f.Choices, words, f.Pattern)
	}
}

// What is shown only while a choice stands at a word asks a choice that is there
// for words that it has; and rows are shown, and added, of groups that repeat.
func TestConditionsAndRowsAreTheTables(t *testing.T) {
	page := wholePage(t)
	whens := regexp.MustCompile(`data-when="([^"=]+)=([^"]+)"`).FindAllSubmatch(page, -1)
	assert.NotEmpty(t, whens)
	for _, m := range whens {
		f, ok := rowNamed(string(m[1]))
		require.True(t, ok, "%s", m[1])
		for _, word := range strings.Split(string(m[2]), "|") {
			assert.Contains(t, f.Choices, word, f.Pattern)
		}
	}
	groups := regexp.MustCompile(`data-(?:rows|add)="([^"]+)"`).FindAllSubmatch(page, -1)
	assert.NotEmpty(t, groups)
	for _, m := range groups {
		_, ok := rowNamed(string(m[1]) + ".*.order")
		assert.True(t, ok, "%s", m[1])
	}
}
