package site

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// repository is a small one: a program of two packages and a page.
func repository(t *testing.T, dir string) {
	worker, err := os.ReadFile(filepath.Join("..", "..", "web", "sw.js"))
	require.NoError(t, err)
	for path, content := range map[string]string{
		"go.mod":                "module small\n\ngo 1.26.0\n",
		"wasm/main.go":          "package main\n\nimport \"small/core\"\n\nfunc main() { println(core.Hour) }\n",
		"core/core.go":          "package core\n\nvar Hour = 12\n",
		"web/index.html":        "<!doctype html>\n<title>Small</title>\n",
		"web/icons/a.svg":       "<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>\n",
		"web/sw.js":             string(worker),
		"web/main.js":           "import './wasm_exec.js'; import { one } from './one.js'; one();",
		"web/one.js":            "export const one = () => new Go();",
		"web/browser/x_test.go": "not shipped",
	} {
		name := filepath.Join(dir, path)
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, []byte(content), 0o644))
	}
}

func TestBuildsInDifferentFoldersAreEqual(t *testing.T) {
	here, there := t.TempDir(), filepath.Join(t.TempDir(), "a longer", "path")
	repository(t, here)
	repository(t, there)
	t.Setenv("GOFLAGS", "-ldflags=-X=main.who=me") // the user's own must not count
	first, err := Build(here, "./wasm", asItIs)
	require.NoError(t, err)
	second, err := Build(there, "./wasm", asItIs)
	require.NoError(t, err)

	assert.Equal(t, []string{"core.wasm", "icons/a.svg", "index.html", "main.js", "sw.js"}, first.Paths())
	for _, path := range first.Paths() {
		assert.True(t, string(first[path]) == string(second[path]), path) // true-or-false: a diff of a program says nothing
	}
	assert.NotContains(t, string(first["core.wasm"]), here)
}

func TestOtherContentIsAnotherBuild(t *testing.T) {
	one, err := Finish(Files{"sw.js": source(t), "a.js": []byte("let a = 1")})
	require.NoError(t, err)
	two, err := Finish(Files{"sw.js": source(t), "a.js": []byte("let a = 2")})
	require.NoError(t, err)
	assert.NotEqual(t, string(one["sw.js"]), string(two["sw.js"]))
}

func TestWriteAndReadBack(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "dist")
	files := Files{"core.wasm": {0}, "icons/a.svg": []byte("<svg/>")}
	require.NoError(t, Files{"core.wasm": {1}, "old.js": []byte("1")}.Write(dir))
	require.NoError(t, files.Write(dir))
	got, err := Read(dir)
	require.NoError(t, err)
	assert.Equal(t, files, got)
}

func TestWriteSparesAFolderThatNoBuildWrote(t *testing.T) {
	dir := t.TempDir()
	letter := filepath.Join(dir, "letter.txt")
	require.NoError(t, os.WriteFile(letter, []byte("dear"), 0o644))
	assert.ErrorContains(t, Files{"core.wasm": {0}}.Write(dir), "no build wrote")
	assert.FileExists(t, letter)
}

func TestUnknownFilesAreNotShipped(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "notes.txt"), []byte("x"), 0o644))
	_, err := readWeb(dir)
	assert.ErrorContains(t, err, "web/notes.txt")
}

func asItIs(page []byte) ([]byte, error) { return page, nil }
