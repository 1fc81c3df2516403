package site

import (
	"fmt"
	"path/filepath"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/css"
	"github.com/tdewolff/minify/v2/html"
	"github.com/tdewolff/minify/v2/json"
	"github.com/tdewolff/minify/v2/svg"
)

// minifier keeps what the page's own script and styles may look for: html,
// head and body, and attributes written out though they are the default, such
// as type=text in a selector.
func minifier() *minify.M {
	m := minify.New()
	m.Add("text/html", &html.Minifier{KeepDocumentTags: true, KeepDefaultAttrVals: true, KeepEndTags: true})
	m.Add("text/css", &css.Minifier{})
	m.Add("application/json", &json.Minifier{KeepNumbers: true})
	m.Add("application/manifest+json", &json.Minifier{KeepNumbers: true})
	m.Add("image/svg+xml", &svg.Minifier{})
	return m
}

func minified(files Files) (Files, error) {
	m := minifier()
	small := Files{}
	for path, content := range files {
		if filepath.Ext(path) == ".js" {
			var err error
			if small[path], err = script(path, content); err != nil {
				return nil, err
			}
			continue
		}
		out, err := m.Bytes(MediaType(path), content)
		switch err {
		case nil:
			small[path] = out
		case minify.ErrNotExist:
			small[path] = content
		default:
			return nil, fmt.Errorf("minify %s: %w", path, err)
		}
	}
	return small, nil
}
