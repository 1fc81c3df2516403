// Package host serves a built site as a good static host does: the right media
// types, compressed once and kept in memory, revalidated by ETag (RFC 9110), no
// listing of folders. It serves from any folder of the host.
package host

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/andybalholm/brotli"

	"pintwelve/tools/site"
)

// Handler serves files under base, which starts and ends with a slash. It
// answers GET and HEAD; the folder itself is its index.html; all else is 404.
func Handler(files site.Files, base string) http.Handler {
	h := handler{base: base, files: map[string]*file{}}
	for path, content := range files {
		h.files[path] = newFile(path, content)
	}
	return h
}

// headers are what no page can set for itself; README.md names them for other hosts.
var headers = [...][2]string{
	{"Content-Security-Policy", "frame-ancestors 'none'"},
	{"X-Content-Type-Options", "nosniff"},
	{"Cross-Origin-Resource-Policy", "same-origin"},
	{"Permissions-Policy", "camera=(), microphone=(), geolocation=()"},
}

type handler struct {
	base  string
	files map[string]*file
}

func (h handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.URL.Path+"/" == h.base {
		http.Redirect(w, r, h.base, http.StatusMovedPermanently)
		return
	}
	path, ours := strings.CutPrefix(r.URL.Path, h.base)
	if path == "" {
		path = "index.html"
	}
	f, found := h.files[path]
	switch {
	case !ours || !found:
		http.NotFound(w, r)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		w.Header().Set("Allow", "GET, HEAD")
		http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
	default:
		f.serve(w, r)
	}
}

// file is one file with its packed forms, each made when first asked for.
type file struct {
	mediaType string
	tag       string // of the content, without quotes or coding
	plain     []byte
	brotli    func() []byte
	gzip      func() []byte
}

func newFile(path string, content []byte) *file {
	digest := sha256.Sum256(content)
	return &file{
		mediaType: site.MediaType(path),
		tag:       hex.EncodeToString(digest[:8]),
		plain:     content,
		brotli:    sync.OnceValue(func() []byte { return packBrotli(content) }),
		gzip:      sync.OnceValue(func() []byte { return packGzip(content) }),
	}
}

func (f *file) serve(w http.ResponseWriter, r *http.Request) {
	body, coding := f.coded(r.Header.Get("Accept-Encoding"))
	tag := `"` + strings.TrimSuffix(f.tag+"-"+coding, "-") + `"`
	header := w.Header()
	header.Set("Cache-Control", "no-cache") // kept, but asked about before each use
	header.Set("ETag", tag)
	header.Set("Vary", "Accept-Encoding")
	for _, h := range headers {
		header.Set(h[0], h[1])
	}
	if asksFor(r.Header.Get("If-None-Match"), tag) {
		w.WriteHeader(http.StatusNotModified)
		return
	}
	header.Set("Content-Type", f.mediaType)
	header.Set("Content-Length", strconv.Itoa(len(body)))
	if coding != "" {
		header.Set("Content-Encoding", coding)
	}
	if r.Method == http.MethodGet {
		w.Write(body)
	}
}

// coded returns the body in the best coding that the client accepts, and the
// coding's name; what doesn't shrink goes out as it is.
func (f *file) coded(accepted string) ([]byte, string) {
	if strings.HasPrefix(f.mediaType, "image/png") {
		return f.plain, ""
	}
	for _, c := range []struct {
		name string
		pack func() []byte
	}{{"br", f.brotli}, {"gzip", f.gzip}} {
		if !accepts(accepted, c.name) {
			continue
		}
		if body := c.pack(); len(body) < len(f.plain) {
			return body, c.name
		}
	}
	return f.plain, ""
}

// accepts reads an Accept-Encoding field, RFC 9110 section 12.5.3, without its
// preferences: any weight but nought will do.
func accepts(field, coding string) bool {
	for item := range strings.SplitSeq(field, ",") {
		name, weight, _ := strings.Cut(item, ";")
		if !strings.EqualFold(strings.TrimSpace(name), coding) {
			continue
		}
		q, err := strconv.ParseFloat(strings.TrimPrefix(strings.TrimSpace(weight), "q="), 64)
		return err != nil || q > 0
	}
	return false
}

func asksFor(field, tag string) bool {
	return slices.ContainsFunc(strings.Split(field, ","), func(item string) bool {
		item = strings.TrimSpace(item)
		return item == "*" || strings.TrimPrefix(item, "W/") == tag
	})
}

// packBrotli stops short of the highest quality, which takes seconds on the
// core; tools/size tells what that would bring.
func packBrotli(content []byte) []byte {
	var packed bytes.Buffer
	w := brotli.NewWriterLevel(&packed, brotli.DefaultCompression)
	w.Write(content)
	w.Close()
	return packed.Bytes()
}

func packGzip(content []byte) []byte {
	var packed bytes.Buffer
	w := gzip.NewWriter(&packed)
	w.Write(content)
	w.Close()
	return packed.Bytes()
}
