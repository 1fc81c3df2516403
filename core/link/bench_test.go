package link

import (
	"testing"

	"pintwelve/testdata/links"
)

const promised = "six-passes-no-notes-run-out.txt"

func BenchmarkEncodeSixPasses(b *testing.B) {
	job := links.Named(b, promised).Job
	for b.Loop() {
		Encode(job)
	}
}

func BenchmarkDecodeSixPasses(b *testing.B) {
	link := links.Named(b, promised).Link
	for b.Loop() {
		Decode(link)
	}
}
