package site

import "path"

// mediaTypes are the RFC 9239 and IANA names that browsers insist on: a module
// script and a streamed WebAssembly file are refused under any other.
var mediaTypes = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

// MediaType returns the type to serve a file as, or "" for one that the site
// doesn't ship.
func MediaType(file string) string {
	return mediaTypes[path.Ext(file)]
}
