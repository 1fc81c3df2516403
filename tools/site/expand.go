package site

import (
	"bytes"
	"fmt"
	"strings"

	"golang.org/x/net/html"
)

// What the page's source says for short, and what it becomes:
//
//	<step src="lighten.html"></step>   that file of web/steps, in its place
//	<field name="throw">Throw</field>  a field of the job: see field.go
//	<each side="drive timing">…</each> its content once for each: {side} is "drive", {Side} "Drive",
//	                                   {S} "D", and {checked} "checked" in the first
//
// Everything else passes through to the letter.
const (
	pageFile   = "index.html"
	stepFolder = "steps/"
)

// expanded returns the site with its page written out; the folder of steps has
// gone into it.
func expanded(files Files) (Files, error) {
	out := Files{}
	for path, content := range files {
		if !strings.HasPrefix(path, stepFolder) {
			out[path] = content
		}
	}
	source, ok := files[pageFile]
	if !ok {
		return out, nil
	}
	e := expander{files: files}
	if err := e.expand(pageFile, source); err != nil {
		return nil, err
	}
	out[pageFile] = e.out.Bytes()
	return out, nil
}

// expander writes a page out, file by file.
type expander struct {
	files Files
	out   bytes.Buffer
	rows  int // templates that are open: what stands in one is made many times
}

func (e *expander) expand(path string, source []byte) error {
	z := html.NewTokenizer(bytes.NewReader(source))
	for {
		kind := z.Next()
		raw := string(z.Raw())
		name, _ := z.TagName()
		switch {
		case kind == html.ErrorToken:
			return nil
		case kind == html.StartTagToken && string(name) == "step":
			if err := e.step(path, z); err != nil {
				return err
			}
		case kind == html.StartTagToken && string(name) == "field":
			if err := e.field(path, z); err != nil {
				return err
			}
		case kind == html.StartTagToken && string(name) == "each":
			if err := e.each(path, z); err != nil {
				return err
			}
		default:
			e.count(kind, string(name))
			e.out.WriteString(raw)
		}
	}
}

func (e *expander) count(kind html.TokenType, name string) {
	switch {
	case name != "template":
	case kind == html.StartTagToken:
		e.rows++
	case kind == html.EndTagToken:
		e.rows--
	}
}

// step puts a step's file in its place.
func (e *expander) step(path string, z *html.Tokenizer) error {
	given := attributes(z)
	if _, err := content(z, "step"); err != nil {
		return fmt.Errorf("web/%s: %w", path, err)
	}
	step := stepFolder + given["src"]
	source, ok := e.files[step]
	if !ok {
		return fmt.Errorf("web/%s: no file web/%s for a <step>", path, step)
	}
	return e.expand(step, source)
}

// field writes a field of the job out.
func (e *expander) field(path string, z *html.Tokenizer) error {
	given := attributes(z)
	name := given["name"]
	inside, err := content(z, "field")
	if err == nil {
		err = writeField(&e.out, given, inside, e.rows > 0)
	}
	if err != nil {
		return fmt.Errorf("web/%s: <field name=%q>: %w", path, name, err)
	}
	return nil
}

// each writes what differs by the side alone once for each side.
func (e *expander) each(path string, z *html.Tokenizer) error {
	given := attributes(z)
	inside, err := content(z, "each")
	if err != nil {
		return fmt.Errorf("web/%s: %w", path, err)
	}
	for i, side := range strings.Fields(given["side"]) {
		checked := ""
		if i == 0 {
			checked = " checked"
		}
		filled := strings.NewReplacer("{side}", side, "{Side}", strings.ToUpper(side[:1])+side[1:], "{S}", strings.ToUpper(side[:1]), " {checked}", checked).Replace(inside)
		if err := e.expand(path, []byte(filled)); err != nil {
			return err
		}
	}
	return nil
}

// attributes returns those of the tag that the tokenizer stands at.
func attributes(z *html.Tokenizer) map[string]string {
	all := map[string]string{}
	for more := true; more; {
		var key, value []byte
		key, value, more = z.TagAttr()
		if len(key) > 0 {
			all[string(key)] = string(value)
		}
	}
	return all
}

// content returns what stands up to an element's end tag, to the letter.
func content(z *html.Tokenizer, element string) (string, error) {
	var inside strings.Builder
	for {
		switch kind := z.Next(); kind {
		case html.ErrorToken:
			return "", fmt.Errorf("no </%s>", element)
		case html.EndTagToken:
			raw := string(z.Raw())
			if name, _ := z.TagName(); string(name) == element {
				return inside.String(), nil
			}
			inside.WriteString(raw)
		default:
			inside.Write(z.Raw())
		}
	}
}
