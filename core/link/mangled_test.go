package link

import (
	"math/rand"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/testdata/links"
)

// manglings are what chats, mails and browsers do to an address that loses none
// of it. Common practice, no source, but for soft line breaks (RFC 2045 section
// 6.7), quoted lines (RFC 3676 section 4.5) and percent-encoding (RFC 3986
// section 2.1).
var manglings = []struct {
	name   string
	mangle func(link string) string
}{
	{"the full stop of a sentence", func(s string) string { return s + "." }},
	{"a bracket closed", func(s string) string { return s + ")" }},
	{"an address in angle brackets", func(s string) string { return s + ">" }},
	{"a comma", func(s string) string { return s + "," }},
	{"a quotation mark", func(s string) string { return s + `"` }},
	{"all of these", func(s string) string { return s + `".),>` }},
	{"a no-break space", func(s string) string { return s + "\u00a0" }},
	{"a no-break space, as an address has it", func(s string) string { return s + "%C2%A0" }},
	{"bold", func(s string) string { return "*" + s + "*" }},
	{"italics", func(s string) string { return s + "_" }},
	{"an ellipsis", func(s string) string { return s + "…" }},
	{"a click's mark", func(s string) string { return s + "&fbclid=IwAR0aZ-_9x" }},
	{"a campaign's mark", func(s string) string { return s + "?utm_source=mail&utm_medium=A_b" }},
	{"the words after it", func(s string) string { return s + "%20and%20this%20is%20mine" }},
	{"padding", func(s string) string { return s + "==" }},
	{"line breaks", func(s string) string { return wrap(s, "\r\n") }},
	{"line breaks, as an address has them", func(s string) string { return wrap(s, "%0D%0A") }},
	{"soft line breaks", func(s string) string { return wrap(s, "=\r\n") }},
	{"soft line breaks, the breaks taken out", func(s string) string { return wrap(s, "=") }},
	{"quoted lines", func(s string) string { return wrap(s, "\r\n> ") }},
	{"indented lines", func(s string) string { return wrap(s, "\n\t ") }},
	{"places to break, unseen", func(s string) string { return wrap(s, "\u200b") }},
	{"every sign percent-encoded", encoded},
	{"percent-encoded twice", func(s string) string { return url.QueryEscape(encoded(s)) }},
}

// wrap breaks a text every 40 signs.
func wrap(text, mark string) string {
	var lines []string
	for ; len(text) > 40; text = text[40:] {
		lines = append(lines, text[:40])
	}
	return strings.Join(append(lines, text), mark)
}

func encoded(text string) string {
	const hex = "0123456789ABCDEFabcdef"
	var out strings.Builder
	for i := range len(text) {
		out.WriteString("%" + hex[text[i]>>4:text[i]>>4+1] + hex[text[i]&15:text[i]&15+1])
	}
	return out.String()
}

func TestMangledLinksOpen(t *testing.T) {
	for _, g := range links.All(t) {
		for _, m := range manglings {
			job, err := Decode(m.mangle(g.Link))
			require.NoError(t, err, "%s: %s", g.Name, m.name)
			assert.Equal(t, form.Form(g.Job), job, "%s: %s", g.Name, m.name)
		}
	}
}

// So do those that went through two hands.
func TestTwiceMangledLinksOpen(t *testing.T) {
	g := links.Named(t, "two-dials.txt")
	for _, first := range manglings {
		for _, second := range manglings {
			job, err := Decode(second.mangle(first.mangle(g.Link)))
			require.NoError(t, err, "%s, then %s", first.name, second.name)
			assert.Equal(t, form.Form(g.Job), job, "%s, then %s", first.name, second.name)
		}
	}
}

// A longest link stays one with a mark behind it.
func TestMarkBehindALongLink(t *testing.T) {
	f := form.Form{"notes": strings.Repeat("曲", 1900)}
	text, err := Encode(f)
	require.NoError(t, err)
	job, err := Decode(text + "&fbclid=" + strings.Repeat("A", 2*MaxText))
	require.NoError(t, err)
	assert.Equal(t, f, job)
}

// What loses a part of the link is told however the rest was mangled: two
// manglings over each other and a sign lost. Seed 5.
func TestMangledAndCutIsDamaged(t *testing.T) {
	rnd := rand.New(rand.NewSource(5))
	for _, g := range links.All(t) {
		for _, m := range manglings {
			i := 1 + rnd.Intn(len(g.Link)-1)
			cut := g.Link[:i] + g.Link[i+1:]
			if strings.HasPrefix(digitsIn(m.mangle(cut)), g.Link) {
				continue // the mangling put back what was cut
			}
			_, err := Decode(m.mangle(cut))
			require.Error(t, err, "%s: %s, sign %d", g.Name, m.name, i)
			assert.Equal(t, Damaged, kindOf(t, err), "%s: %s, sign %d", g.Name, m.name, i)
		}
	}
}

// Any manglings one over the other open the job; any text between opens it or
// is refused.
func FuzzMangled(f *testing.F) {
	given := links.All(f)
	for i := range manglings {
		f.Add(uint8(i), uint8(i), uint8(i/2), "\n")
	}
	f.Fuzz(func(t *testing.T, which, first, second uint8, between string) {
		g := given[int(which)%len(given)]
		text := manglings[int(second)%len(manglings)].mangle(manglings[int(first)%len(manglings)].mangle(g.Link))
		job, err := Decode(text)
		require.NoError(t, err)
		require.Equal(t, form.Form(g.Job), job)
		half := len(g.Link) / 2
		job, err = Decode(g.Link[:half] + between + g.Link[half:])
		if err == nil {
			require.Equal(t, form.Form(g.Job), job)
		}
	})
}
