package site

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/tdewolff/parse/v2"
	"github.com/tdewolff/parse/v2/html"
	"github.com/tdewolff/parse/v2/js"
)

// What no reader of the trade would say, and what stands for it.
var notOurs = map[*regexp.Regexp]string{
	regexp.MustCompile(`(?i)\bput in\b`):                                 "type",
	regexp.MustCompile(`(?i)\bnot a length\b`):                           "not a figure in thou, mm or inches",
	regexp.MustCompile(`(?i)\ba length$`):                                "a figure in thou, mm or inches", // a noun that a sentence takes in
	regexp.MustCompile(`(?i)\bfigures? or choices?`):                     "what it is",
	regexp.MustCompile(`(?i)\bother figures?\b`):                         "what it is",
	regexp.MustCompile(`(?i)\bbites?\b`):                                 "interference",
	regexp.MustCompile(`(?i)\bhand(ed)? (it |a link )?on\b|\bhand on\b`): "send",
	regexp.MustCompile(`(?i)\btitle block\b`):                            "the top of the page",
}

// name is a literal that names something and is never shown.
var name = regexp.MustCompile(`^[a-z0-9_.*-]+$`)

// All that the page and the core can say, over and above names of fields.
func TestTheWordsAreTheTradesOwn(t *testing.T) {
	said := 0
	look := func(place, words string) {
		said++
		for not, instead := range notOurs {
			assert.NotRegexp(t, not, words, "%s: say %s", place, instead)
		}
	}
	for _, root := range []string{"../../web", "../../core", "../../wasm"} {
		require.NoError(t, filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "/browser/") {
				return err
			}
			text, err := os.ReadFile(path)
			switch filepath.Ext(path) {
			case ".html":
				htmlWords(t, text, func(words string) { look(path, words) })
			case ".js":
				jsWords(t, text, func(words string) { look(path, words) })
			case ".go":
				goWords(t, path, text, func(words string) { look(path, words) })
			}
			return err
		}))
	}
	require.Greater(t, said, 2000)
}

// spoken are the attributes that someone reads or hears.
var spoken = map[string]bool{"aria-label": true, "placeholder": true, "content": true, "label": true, "alt": true, "title": true, "data-label": true}

func htmlWords(t *testing.T, text []byte, look func(string)) {
	lexer := html.NewLexer(parse.NewInputBytes(text))
	for {
		kind, data := lexer.Next()
		switch {
		case kind == html.ErrorToken:
			require.ErrorIs(t, lexer.Err(), io.EOF)
			return
		case kind == html.TextToken:
			look(strings.Join(strings.Fields(string(data)), " "))
		case kind == html.AttributeToken && spoken[string(lexer.AttrKey())]:
			look(string(lexer.AttrVal()))
		}
	}
}

func jsWords(t *testing.T, text []byte, look func(string)) {
	module, err := js.Parse(parse.NewInputBytes(text), js.Options{})
	require.NoError(t, err)
	js.Walk(jsVisitor{look}, module)
}

type jsVisitor struct{ look func(string) }

func (v jsVisitor) Enter(node js.INode) js.IVisitor {
	switch n := node.(type) {
	case *js.LiteralExpr:
		if n.TokenType == js.StringToken {
			v.words(n.Data)
		}
	case *js.TemplateExpr:
		for _, part := range n.List {
			v.words(part.Value)
		}
		v.words(n.Tail)
	}
	return v
}

func (v jsVisitor) Exit(js.INode) {}

func (v jsVisitor) words(quoted []byte) {
	if text := strings.Trim(string(quoted), "'`{}$"); !name.MatchString(text) {
		v.look(text)
	}
}

func goWords(t *testing.T, path string, text []byte, look func(string)) {
	file, err := parser.ParseFile(token.NewFileSet(), path, text, 0)
	require.NoError(t, err)
	ast.Inspect(file, func(node ast.Node) bool {
		if literal, ok := node.(*ast.BasicLit); ok && literal.Kind == token.STRING {
			words, err := strconv.Unquote(literal.Value)
			require.NoError(t, err)
			if !name.MatchString(words) {
				look(words)
			}
		}
		return true
	})
}
