package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"maps"
)

// worker is the service worker's file. It can't list itself.
const worker = "sw.js"

// placeholder stands, once, in the minified worker where the list goes.
var placeholder = []byte(`{version:"",files:{}}`)

// precache is what the worker checks an installation against.
type precache struct {
	Version string            `json:"version"`
	Files   map[string]string `json:"files"` // path to sum
}

// withPrecache returns the site with the list of its files in the worker. A
// site without a worker comes back as it is.
func withPrecache(files Files) (Files, error) {
	source, ok := files[worker]
	if !ok {
		return files, nil
	}
	list := precache{Files: map[string]string{}}
	for path, content := range files {
		if path != worker {
			list.Files[path] = sum(content)
		}
	}
	list.Version = version(list.Files, source)
	text, err := json.Marshal(list) // sorts the paths
	if err != nil {
		return nil, err
	}
	listed := maps.Clone(files)
	listed[worker], err = inject(source, text)
	return listed, err
}

// version covers the worker's own source too: a worker that differs in its
// code alone still gets a cache of its own and can't spoil the one in use.
func version(hashes map[string]string, source []byte) string {
	all := Files{worker: source}
	for path, hash := range hashes {
		all[path] = []byte(hash)
	}
	h := sha256.New()
	for _, path := range all.Paths() {
		h.Write([]byte(path + "\x00" + sum(all[path]) + "\n"))
	}
	return hex.EncodeToString(h.Sum(nil))[:16]
}

// sum is the first half of a SHA-256, in hexadecimal: 128 bits are enough to
// tell that a file came whole, and random figures don't pack.
func sum(content []byte) string {
	digest := sha256.Sum256(content)
	return hex.EncodeToString(digest[:16])
}

func inject(source, list []byte) ([]byte, error) {
	if bytes.Count(source, placeholder) != 1 {
		return nil, errors.New(worker + ": want the placeholder " + string(placeholder) + " exactly once, after minifying")
	}
	return bytes.Replace(source, placeholder, list, 1), nil
}
