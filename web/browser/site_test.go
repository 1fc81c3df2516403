package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFirstVisitAsksForEachFileOfTheSiteAndNoOther(t *testing.T) {
	b := Launch(t)
	files := Built(t)
	s := Serve(t, "/crank/", files)
	b.Open(s.URL("/crank/")).Until(`navigator.serviceWorker.controller`)
	want := map[string]bool{"/crank/": true}
	for _, path := range files.Paths() {
		want["/crank/"+path] = true
	}
	asked := map[string]bool{"/crank/": true}
	for _, path := range s.Asked() {
		asked[path] = true
	}
	assert.Equal(t, want, asked)
}

// The measurements below stand on this: nothing but the program differs.
func TestEmptySiteStarts(t *testing.T) {
	b := Launch(t)
	s := Serve(t, "/", Empty(t))
	b.Open(s.URL("/"))
	for _, path := range Built(t).Paths() {
		if path != "core.wasm" && path != "sw.js" {
			assert.Equal(t, string(Built(t)[path]), string(Empty(t)[path]), path)
		}
	}
}
