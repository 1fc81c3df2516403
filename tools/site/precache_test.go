package site

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// source is the worker as it is written.
func source(t *testing.T) []byte {
	content, err := os.ReadFile(filepath.Join("..", "..", "web", worker))
	require.NoError(t, err)
	return content
}

func listIn(t *testing.T, script []byte) precache {
	text := regexp.MustCompile(`\{"version".*?\}\}`).Find(script)
	require.NotNil(t, text, "%s", script)
	var list precache
	require.NoError(t, json.Unmarshal(text, &list))
	return list
}

func TestWorkerListsEveryFileButItself(t *testing.T) {
	files, err := Finish(Files{worker: source(t), "index.html": []byte("<p>"), "icons/a.png": []byte("abc")})
	require.NoError(t, err)
	list := listIn(t, files[worker])
	assert.Len(t, list.Files, 2)
	// the hash of "abc": FIPS 180-2, appendix B.1
	assert.Equal(t, "ba7816bf8f01cfea414140de5dae2223", list.Files["icons/a.png"])
	assert.Equal(t, sum(files["index.html"]), list.Files["index.html"], "of the file as it is served")
	assert.Regexp(t, "^[0-9a-f]{16}$", list.Version)
}

func TestVersionCoversNamesContentAndWorker(t *testing.T) {
	of := func(files Files) string {
		files, err := withPrecache(files)
		require.NoError(t, err)
		return listIn(t, files[worker]).Version
	}
	seen := map[string]bool{
		of(Files{worker: placeholder, "a": {1}}):                          true,
		of(Files{worker: placeholder, "b": {1}}):                          true,
		of(Files{worker: placeholder, "a": {2}}):                          true,
		of(Files{worker: append([]byte("1;"), placeholder...), "a": {1}}): true,
		of(Files{worker: placeholder, "a": {1}, "b": {1}}):                true,
	}
	assert.Len(t, seen, 5)
	assert.True(t, seen[of(Files{worker: placeholder, "a": {1}})], "the same again is the same version")
}

func TestWorkerWithoutItsPlaceholderEndsTheBuild(t *testing.T) {
	_, err := Finish(Files{worker: []byte("self.x = {}")})
	assert.ErrorContains(t, err, "placeholder")
}
