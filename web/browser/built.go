package browser

import (
	"maps"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/tools/screen"
	"pintwelve/tools/site"
)

// repository is where this package's tests run, seen from its folder.
var repository = filepath.Join("..", "..")

var (
	built = sync.OnceValues(func() (site.Files, error) { return site.Build(repository, "./wasm", screen.Paint) })
	empty = sync.OnceValues(func() (site.Files, error) { return site.Build(repository, "./tools/empty/answering", screen.Paint) })
)

// Built returns the site, freshly built once for all tests.
func Built(t testing.TB) site.Files {
	return must(t, built)
}

// Empty returns the same site with a Go program that does nothing but answer
// in the place of the core, to measure against.
func Empty(t testing.TB) site.Files {
	return must(t, empty)
}

// WithModules returns the site with the page's modules beside the one script that
// is made of them, for tests of a module by itself.
func WithModules(t testing.TB) site.Files {
	files := maps.Clone(Built(t))
	modules, err := filepath.Glob(filepath.Join("..", "*.js"))
	require.NoError(t, err)
	for _, name := range modules {
		if path := filepath.Base(name); files[path] == nil {
			files[path], err = os.ReadFile(name)
			require.NoError(t, err)
		}
	}
	return files
}

func must(t testing.TB, build func() (site.Files, error)) site.Files {
	files, err := build()
	require.NoError(t, err)
	return files
}
