package link

import "testing"

func BenchmarkEncodeSixPasses(b *testing.B) {
	job := givenLinks(b)[0].job
	for b.Loop() {
		Encode(job)
	}
}

func BenchmarkDecodeSixPasses(b *testing.B) {
	link := givenLinks(b)[0].link
	for b.Loop() {
		Decode(link)
	}
}
