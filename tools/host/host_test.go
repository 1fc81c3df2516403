package host

import (
	"bytes"
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/site"
)

var page = strings.Repeat("<p>Strike the drive wheel at 3</p>", 50)

var pages = site.Files{
	"index.html":        []byte(page),
	"main.js":           []byte("import './a.js'"),
	"core.wasm":         []byte("\x00asm"),
	"app.webmanifest":   []byte("{}"),
	"icons/icon.svg":    []byte("<svg/>"),
	"icons/icon-10.png": []byte("\x89PNG"),
}

func ask(method, path string, header ...string) *http.Response {
	r := httptest.NewRequest(method, path, nil)
	for i := 0; i+1 < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	w := httptest.NewRecorder()
	Handler(pages, "/shop/crank/").ServeHTTP(w, r)
	return w.Result()
}

func TestAddresses(t *testing.T) {
	for _, test := range []struct {
		method, path string
		status       int
		mediaType    string
	}{
		{"GET", "/shop/crank/", 200, "text/html; charset=utf-8"},
		{"GET", "/shop/crank/?from=home", 200, "text/html; charset=utf-8"},
		{"GET", "/shop/crank/index.html", 200, "text/html; charset=utf-8"},
		{"GET", "/shop/crank/main.js", 200, "text/javascript; charset=utf-8"},
		{"HEAD", "/shop/crank/core.wasm", 200, "application/wasm"},
		{"GET", "/shop/crank/app.webmanifest", 200, "application/manifest+json"},
		{"GET", "/shop/crank/icons/icon.svg", 200, "image/svg+xml"},
		{"GET", "/shop/crank/icons/icon-10.png", 200, "image/png"},
		{"GET", "/shop/crank", 301, "text/html; charset=utf-8"},
		{"GET", "/shop/crank/icons/", 404, "text/plain; charset=utf-8"},
		{"GET", "/shop/crank/../crank/main.js", 404, "text/plain; charset=utf-8"},
		{"GET", "/", 404, "text/plain; charset=utf-8"},
		{"GET", "/main.js", 404, "text/plain; charset=utf-8"},
		{"POST", "/shop/crank/main.js", 405, "text/plain; charset=utf-8"},
	} {
		got := ask(test.method, test.path)
		assert.Equal(t, test.status, got.StatusCode, "%s %s", test.method, test.path)
		assert.Equal(t, test.mediaType, got.Header.Get("Content-Type"), "%s %s", test.method, test.path)
	}
}

func TestCodings(t *testing.T) {
	for _, test := range []struct{ accepted, coding string }{
		{"", ""},
		{"identity", ""},
		{"gzip", "gzip"},
		{"gzip, deflate, br, zstd", "br"},
		{"br;q=0, gzip;q=0.5", "gzip"},
		{"BR;q=1.0", "br"},
	} {
		got := ask("GET", "/shop/crank/", "Accept-Encoding", test.accepted)
		require.Equal(t, test.coding, got.Header.Get("Content-Encoding"), test.accepted)
		assert.Equal(t, "Accept-Encoding", got.Header.Get("Vary"))
		assert.Equal(t, page, unpack(t, got.Body, test.coding), test.accepted)
	}
	assert.Empty(t, ask("GET", "/shop/crank/main.js", "Accept-Encoding", "br").Header.Get("Content-Encoding"), "too short to shrink")
}

func unpack(t *testing.T, body io.Reader, coding string) string {
	switch coding {
	case "br":
		body = brotli.NewReader(body)
	case "gzip":
		reader, err := gzip.NewReader(body)
		require.NoError(t, err)
		body = reader
	}
	var plain bytes.Buffer
	_, err := plain.ReadFrom(body)
	require.NoError(t, err)
	return plain.String()
}

func TestRevalidation(t *testing.T) {
	first := ask("GET", "/shop/crank/", "Accept-Encoding", "br")
	assert.Equal(t, "no-cache", first.Header.Get("Cache-Control"))
	tag := first.Header.Get("ETag")
	for _, asked := range []string{tag, "W/" + tag, `"other", ` + tag, "*"} {
		again := ask("GET", "/shop/crank/", "Accept-Encoding", "br", "If-None-Match", asked)
		assert.Equal(t, http.StatusNotModified, again.StatusCode, asked)
	}
	other := ask("GET", "/shop/crank/", "Accept-Encoding", "gzip", "If-None-Match", tag)
	assert.Equal(t, http.StatusOK, other.StatusCode, "another coding is another representation")
}

// What README.md tells other hosts to set, this one sends.
func TestSendsTheHeadersThatTheReadmeNames(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	named := regexp.MustCompile("(?m)^    ([A-Z][A-Za-z-]+): (.+)$").FindAllStringSubmatch(string(readme), -1)
	require.Len(t, named, 5)
	got := ask("GET", "/shop/crank/")
	for _, line := range named {
		assert.Equal(t, line[2], got.Header.Get(line[1]), line[1])
	}
}
