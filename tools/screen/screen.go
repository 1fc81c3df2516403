// Package screen paints a visitor's first screen into the page: the core's answers
// to an empty job, as web/paint.js puts them there, so that the page stands, whole
// and still, before the core has come.
package screen

import (
	"bytes"
	"slices"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
)

// firstStep is what a new visitor sees, answered in two parts: what stands under
// data-later has the second.
const (
	firstStep  = "true"
	laterPart  = "true.more"
	laterAttr  = "data-later"
	hiddenAttr = "hidden"
)

// Paint returns a page, as it is written out, with its first screen.
func Paint(source []byte) ([]byte, error) {
	page, err := html.Parse(bytes.NewReader(source))
	if err != nil {
		return nil, err
	}
	empty := form.Form{"bench": "1"}
	s := screen{form: empty, now: sheet.Answer(empty, firstStep), later: sheet.Answer(empty, laterPart)}
	for node := range page.Descendants() {
		if hasWord(node, "class", "step") && attr(node, "id") != firstStep {
			set(node, hiddenAttr, "")
			if err := waits(node); err != nil {
				return nil, err
			}
		}
		if node.Data == "header" || attr(node, "id") == firstStep {
			s.paint(node)
		}
	}
	var out bytes.Buffer
	err = html.Render(&out, page)
	return out.Bytes(), err
}

// waits has a step's content wait as text, as web/steps.js finds it: a browser reads
// over a block of data, while a template would have all its elements made.
func waits(step *html.Node) error {
	var content bytes.Buffer
	for step.FirstChild != nil {
		child := step.FirstChild
		step.RemoveChild(child)
		if err := html.Render(&content, child); err != nil {
			return err
		}
	}
	text := &html.Node{Type: html.ElementNode, Data: "script", DataAtom: atom.Script, Attr: []html.Attribute{{Key: "type", Val: "text/html"}}}
	text.AppendChild(&html.Node{Type: html.TextNode, Data: content.String()})
	step.AppendChild(text)
	return nil
}

// screen is a form with both parts of its answers.
type screen struct {
	form       form.Form
	now, later *bench.Answers
}

func (s *screen) paint(root *html.Node) {
	for node := range root.Descendants() {
		if node.Type == html.ElementNode && !within(node, root, "template") {
			s.element(node, root)
		}
	}
}

func (s *screen) element(node, root *html.Node) {
	said := func(name string) string { return s.text(node, "say."+name) }
	if name := attr(node, "data-say"); name != "" {
		say(node, said(keyed(name, node)))
	}
	if name := attr(node, "data-if"); name != "" {
		hide(node, said(keyed(name, node)) == "")
	}
	if name := attr(node, "data-picture"); name != "" {
		s.picture(node, s.text(node, "picture."+keyed(name, node)))
	}
	if name := attr(node, "data-unit"); name != "" {
		say(node, s.text(node, "unit."+name))
	}
	if when := attr(node, "data-when"); when != "" {
		hide(node, !s.stands(when, node, root))
	}
	if hasWord(node, "class", "error") {
		hide(node, true) // an empty job has no error
	}
	if name := attr(node, "name"); name != "" && node.Data == "input" {
		s.standIn(node, keyed(name, node))
	}
}

// text is an answer's, of the part that an element's are of.
func (s *screen) text(node *html.Node, name string) string {
	of := s.now
	for at := node; at != nil; at = at.Parent {
		if hasAttr(at, laterAttr) {
			of = s.later
		}
	}
	entry, _ := of.Get(name)
	return entry.Text
}

// stands tells whether a field is at one of the choices of "name=one|two"; a blank
// one is at the first of its list.
func (s *screen) stands(when string, node, root *html.Node) bool {
	pattern, values, _ := strings.Cut(when, "=")
	text := s.form[keyed(pattern, node)]
	if text == "" {
		text = firstChoice(root, pattern)
	}
	return slices.Contains(strings.Split(values, "|"), text)
}

func firstChoice(root *html.Node, pattern string) string {
	for node := range root.Descendants() {
		if node.Data == "select" && attr(node, "name") == pattern {
			for option := range node.Descendants() {
				if option.Data == "option" {
					return attr(option, "value")
				}
			}
		}
	}
	return ""
}

// standIn shows what stands in for a blank; the page keeps the hint that was there.
func (s *screen) standIn(node *html.Node, name string) {
	if assumed := s.text(node, "assumed."+name); assumed != "" {
		set(node, "data-hint", attr(node, "placeholder"))
		set(node, "placeholder", assumed+" assumed")
	}
}

func (s *screen) picture(node *html.Node, svg string) {
	empties(node)
	drawn, err := html.ParseFragment(strings.NewReader(svg), node)
	if err == nil {
		for _, each := range drawn {
			node.AppendChild(each)
		}
	}
	hide(node, svg == "")
}

// keyed fills a pattern's stars with the data-keys around an element, the last star
// with the innermost.
func keyed(pattern string, node *html.Node) string {
	var keys []string
	for at := node; at != nil; at = at.Parent {
		if key := attr(at, "data-key"); key != "" {
			keys = append(keys, key)
		}
	}
	stars := strings.Count(pattern, "*")
	for i := stars - 1; i >= 0; i-- {
		key := ""
		if i < len(keys) {
			key = keys[i]
		}
		pattern = strings.Replace(pattern, "*", key, 1)
	}
	return pattern
}

func say(node *html.Node, text string) {
	empties(node)
	if text != "" {
		node.AppendChild(&html.Node{Type: html.TextNode, Data: text})
	}
	hide(node, text == "")
}

func empties(node *html.Node) {
	for node.FirstChild != nil {
		node.RemoveChild(node.FirstChild)
	}
}

func hide(node *html.Node, hidden bool) {
	node.Attr = slices.DeleteFunc(node.Attr, func(a html.Attribute) bool { return a.Key == hiddenAttr })
	if hidden {
		set(node, hiddenAttr, "")
	}
}

func attr(node *html.Node, name string) string {
	for _, a := range node.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func hasAttr(node *html.Node, name string) bool {
	return slices.ContainsFunc(node.Attr, func(a html.Attribute) bool { return a.Key == name })
}

// hasWord tells whether an attribute has a word.
func hasWord(node *html.Node, name, word string) bool {
	return node.Type == html.ElementNode && slices.Contains(strings.Fields(attr(node, name)), word)
}

func set(node *html.Node, name, value string) {
	node.Attr = slices.DeleteFunc(node.Attr, func(a html.Attribute) bool { return a.Key == name })
	node.Attr = append(node.Attr, html.Attribute{Key: name, Val: value})
}

func within(node, root *html.Node, element string) bool {
	for at := node.Parent; at != nil && at != root; at = at.Parent {
		if at.Data == element {
			return true
		}
	}
	return false
}
