package link

import (
	"strings"
	"testing"
)

// sixPassesGiven is the given link of six passes.
func sixPassesGiven(b *testing.B) given {
	for _, g := range givenLinks(b) {
		if strings.HasPrefix(g.name, "six-passes-no-notes") {
			return g
		}
	}
	b.Fatal("testdata/links has no six-passes-no-notes")
	return given{}
}

func BenchmarkEncodeSixPasses(b *testing.B) {
	job := sixPassesGiven(b).job
	for b.Loop() {
		Encode(job)
	}
}

func BenchmarkDecodeSixPasses(b *testing.B) {
	link := sixPassesGiven(b).link
	for b.Loop() {
		Decode(link)
	}
}
