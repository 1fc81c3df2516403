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

// What the page does to a field by a button names the field; and a reply to what is
// asked is a word that the field it goes into has.
func TestButtonsNameTheTablesFields(t *testing.T) {
	page := wholePage(t)
	named := regexp.MustCompile(`data-(?:clear|tap|for)="([^"]+)"`).FindAllSubmatch(page, -1)
	assert.NotEmpty(t, named)
	for _, m := range named {
		_, ok := rowNamed(string(m[1]))
		assert.True(t, ok, "%s", m[0])
	}
	asked := map[string]form.ID{"ask.since": form.PassSince, "ask.pressure": form.PassTailstock, "ask.centres": form.Centres}
	replies := regexp.MustCompile(`data-reply="([^"=]+)=([^"]+)"`).FindAllSubmatch(page, -1)
	assert.NotEmpty(t, replies)
	for _, m := range replies {
		id, ok := asked[string(m[1])]
		require.True(t, ok, "%s", m[0])
		for _, f := range form.Job.Fields() {
			if f.ID == id {
				assert.Contains(t, f.Choices, string(m[2]), "%s", m[0])
			}
		}
	}
}

// A label, a description and a link within the page lead to an element that is there,
// and so does what a module looks for by its id.
func TestWhatIsPointedAtIsThere(t *testing.T) {
	files, err := Source("../../web")
	require.NoError(t, err)
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(`\sid="([^"]+)"`).FindAllSubmatch(files[pageFile], -1) {
		ids[string(m[1])] = true
	}
	pointed := 0
	there := func(pointing string, in []byte, where string) {
		for _, m := range regexp.MustCompile(pointing).FindAllSubmatch(in, -1) {
			for _, id := range strings.Fields(string(m[1])) {
				pointed++
				assert.True(t, ids[id], "%s: %s", where, m[0])
			}
		}
	}
	there(`\s(?:for|list|aria-describedby|aria-labelledby|aria-controls)="([^"]+)"`, files[pageFile], pageFile)
	there(`\shref="#([^"]+)"`, files[pageFile], pageFile)
	for path, text := range files {
		if strings.HasSuffix(path, ".js") {
			there(`getElementById\('([^'$]+)'\)`, text, path)
			there(`querySelector(?:All)?\('#([\w-]+)`, text, path)
		}
	}
	assert.Greater(t, pointed, 300)
}

// What a sent job carries is told before it is sent: the first word of every field is
// told of, and no other is.
func TestTheSheetTellsOfEveryField(t *testing.T) {
	files, err := Source("../../web")
	require.NoError(t, err)
	table := regexp.MustCompile(`(?s)const TELLS = \{(.*?)\n\};`).FindSubmatch(files["jobsheet.js"])
	require.NotNil(t, table)
	told := map[string]bool{
		"number": true, "engine": true, "owner": true, "date": true, "notes": true, "pass": true, // with their texts, or counted
		"bench": true, "look": true, "archived": true, // of the page's own
	}
	for _, m := range regexp.MustCompile(`': '([^']+)'`).FindAllSubmatch(table[1], -1) {
		for _, word := range strings.Fields(string(m[1])) {
			assert.False(t, told[word], "%s is told of twice", word)
			told[word] = true
		}
	}
	for _, f := range form.Job.Fields() {
		first, _, _ := strings.Cut(f.Pattern, ".")
		_, ok := told[first]
		assert.True(t, ok, "nothing tells of %s", f.Pattern)
		told[first] = false
	}
	for word, unused := range told {
		assert.False(t, unused, "no field begins with %s", word)
	}
}

// What the page hands to its modules by an attribute some module reads, and a button
// that has a name of its own some module hears.
func TestEveryAttributeIsReadAndEveryButtonHeard(t *testing.T) {
	files, err := Source("../../web")
	require.NoError(t, err)
	var modules strings.Builder
	for path, text := range files {
		if strings.HasSuffix(path, ".js") {
			modules.Write(text)
		}
	}
	js := modules.String()
	attributes := map[string]bool{}
	for _, m := range regexp.MustCompile(`\sdata-([a-z-]+)`).FindAllSubmatch(files[pageFile], -1) {
		attributes[string(m[1])] = true
	}
	assert.Greater(t, len(attributes), 15)
	for name := range attributes {
		camel := regexp.MustCompile(`-[a-z]`).ReplaceAllStringFunc(name, func(s string) string { return strings.ToUpper(s[1:]) })
		read := regexp.MustCompile(`data-` + name + `\b|dataset\.` + camel + `\b|'` + camel + `' in [a-z.]*dataset\b|\b` + camel + `\b[^;]*\} = [^;]*dataset`)
		assert.True(t, read.MatchString(js), "nothing reads data-%s", name)
	}
	named := regexp.MustCompile(`<button[^>]*\s(?:id|data-job|data-lathe)="([^"]+)"`).FindAllSubmatch(files[pageFile], -1)
	assert.Greater(t, len(named), 15)
	for _, m := range named {
		heard := regexp.MustCompile(`['#]` + string(m[1]) + `\b|[\s{]` + string(m[1]) + `[:,(]`)
		assert.True(t, heard.MatchString(js), "nothing hears %s", m[0])
	}
}
