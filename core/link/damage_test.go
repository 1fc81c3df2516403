package link

import (
	"flag"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/testdata/links"
)

// edits is how many random multi-edits are tried: go test ./core/link -edits 1000000
var edits = flag.Int("edits", 20000, "random multi-edits of the given links to try")

// refused checks that a text in which a link no longer stands whole opens no job,
// and that a damaged link is not taken for a newer one.
func refused(t *testing.T, link, text string) {
	t.Helper()
	found := digitsIn(text)
	if strings.HasPrefix(found, link) {
		return // with more behind it: see TestMangledLinksOpen
	}
	_, err := Decode(text)
	want := Damaged
	if !strings.HasPrefix(found, "A") {
		want = NotLink
	}
	if err == nil || kindOf(t, err) != want {
		require.Failf(t, "opened or mistaken", "%v from\n%s for\n%s", err, text, link)
	}
}

func TestEveryPrefixIsRefused(t *testing.T) {
	for _, g := range links.All(t) {
		for n := range len(g.Link) {
			refused(t, g.Link, g.Link[:n])
		}
	}
}

func TestEveryDeletionIsRefused(t *testing.T) {
	for _, g := range links.All(t) {
		for i := range len(g.Link) {
			refused(t, g.Link, g.Link[:i]+g.Link[i+1:])
		}
	}
}

func TestEverySubstitutionIsRefused(t *testing.T) {
	for _, g := range links.All(t) {
		for i := range len(g.Link) {
			for _, c := range digits {
				refused(t, g.Link, g.Link[:i]+string(c)+g.Link[i+1:])
			}
		}
	}
}

func TestEverySwapIsRefused(t *testing.T) {
	for _, g := range links.All(t) {
		for i := range len(g.Link) - 1 {
			refused(t, g.Link, g.Link[:i]+g.Link[i+1:i+2]+g.Link[i:i+1]+g.Link[i+2:])
		}
	}
}

// Digits that were never the link's, in it or before it.
func TestEveryAddedDigitIsRefused(t *testing.T) {
	for _, g := range links.All(t) {
		for _, sign := range []string{"A", "AA", "AAAA", "%41", "_", "-"} {
			for _, i := range []int{1, len(g.Link) / 2, len(g.Link) - 1} {
				refused(t, g.Link, g.Link[:i]+sign+g.Link[i:])
			}
		}
	}
}

// Seed 3.
func TestRandomEditsAreRefused(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	links := links.All(t)
	for range *edits {
		g := links[rnd.Intn(len(links))]
		text := []byte(g.Link)
		for range 2 + rnd.Intn(7) {
			text = edit(rnd, text)
		}
		refused(t, g.Link, string(text))
	}
}

// edit makes one edit: a sign altered, added or taken out, two swapped, a run
// taken out, doubled or turned about.
func edit(rnd *rand.Rand, text []byte) []byte {
	if len(text) < 2 {
		return text
	}
	c := digits[rnd.Intn(len(digits))]
	i, j := rnd.Intn(len(text)), rnd.Intn(len(text))
	i, j = min(i, j), max(i, j)
	before, run, after := string(text[:i]), text[i:j], string(text[j:])
	switch rnd.Intn(7) {
	case 0:
		text[i] = c
	case 1:
		return []byte(before + string(c) + string(text[i:]))
	case 2:
		return []byte(before + string(text[i+1:]))
	case 3:
		text[i], text[j] = text[j], text[i]
	case 4:
		return []byte(before + after)
	case 5:
		return []byte(before + string(run) + string(run) + after)
	case 6:
		for a, b := 0, len(run)-1; a < b; a, b = a+1, b-1 {
			run[a], run[b] = run[b], run[a]
		}
	}
	return text
}
