// Package site turns the repository into the folder of static files that a
// host serves: the Go core compiled to WebAssembly, the page written out from
// its steps and minified, and in the service worker the list of every file with
// its sum.
//
// Paths use slashes and are relative to the site's folder, so that the site
// runs from any folder of any host. Nothing depends on the clock, on the
// folder that is built in, or on the order in which files are found.
package site

import (
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

// Files is a site in memory: path to content.
type Files map[string][]byte

// Paths returns the paths of all files, sorted.
func (f Files) Paths() []string {
	return slices.Sorted(maps.Keys(f))
}

// Build compiles program (a package path such as ./wasm) of the module in root
// and returns the finished site with it as core.wasm, and its first screen painted
// into its page.
func Build(root, program string, paint func(page []byte) ([]byte, error)) (Files, error) {
	files, err := Source(filepath.Join(root, "web"))
	if err != nil {
		return nil, err
	}
	if files[pageFile], err = paint(files[pageFile]); err != nil {
		return nil, err
	}
	if files["core.wasm"], err = core(root, program, runtime.Version()); err != nil {
		return nil, err
	}
	if files["wasm_exec.js"], err = wasmExec(root); err != nil {
		return nil, err
	}
	if files, err = bundled(files); err != nil {
		return nil, err
	}
	return Finish(files)
}

// Finish minifies the files and lists them in the service worker.
func Finish(files Files) (Files, error) {
	small, err := minified(files)
	if err != nil {
		return nil, err
	}
	return withPrecache(small)
}

// Write puts the site in dir, from which everything older is removed first.
// It refuses a folder with content that has no core.wasm, which no build wrote.
func (f Files) Write(dir string) error {
	if err := empty(dir); err != nil {
		return err
	}
	for _, path := range f.Paths() {
		name := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(name, f[path], 0o644); err != nil {
			return err
		}
	}
	return nil
}

func empty(dir string) error {
	entries, err := os.ReadDir(dir)
	if os.IsNotExist(err) || err == nil && len(entries) == 0 {
		return nil
	}
	if err != nil {
		return err
	}
	if _, err := os.Stat(filepath.Join(dir, "core.wasm")); err != nil {
		return fmt.Errorf("%s holds files that no build wrote: empty it or name another folder", dir)
	}
	return os.RemoveAll(dir)
}

// Read returns the site that Write put in dir.
func Read(dir string) (Files, error) {
	files := Files{}
	err := filepath.WalkDir(dir, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		path, err := filepath.Rel(dir, name)
		if err != nil {
			return err
		}
		files[filepath.ToSlash(path)], err = os.ReadFile(name)
		return err
	})
	return files, err
}

// Source returns what of a web folder is shipped as it is shipped but for being
// made smaller: its page written out, its modules to the letter.
func Source(dir string) (Files, error) {
	files, err := readWeb(dir)
	if err != nil {
		return nil, err
	}
	return expanded(files)
}

// readWeb returns what of the web folder is shipped: all but its browser tests.
func readWeb(dir string) (Files, error) {
	files, err := Read(dir)
	if err != nil {
		return nil, err
	}
	maps.DeleteFunc(files, func(path string, _ []byte) bool {
		return strings.HasPrefix(path, "browser/")
	})
	for path := range files {
		if MediaType(path) == "" {
			return nil, fmt.Errorf("web/%s: no media type is known for such a file; add one in tools/site/media.go", path)
		}
	}
	return files, nil
}
