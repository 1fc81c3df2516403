package core

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
)

// leaves may be used by any room, and use leaves alone.
var leaves = []string{"unit", "clock", "bound", "lsq", "wheel", "qr"}

// rooms are what each room but a leaf may import of the core besides the leaves.
var rooms = map[string][]string{
	"dial": {}, "crank": {}, "tryout": {}, "flywheel": {}, "balance": {}, "balance/drill": {}, "fit": {}, "limits": {},
	"draw":  {},
	"form":  {},
	"link":  {"form"},
	"bench": {"draw", "form"},
	// A step uses its own trade rooms.
	"step/fitting":  {"bench", "draw", "form", "fit", "limits"},
	"step/balance":  {"bench", "draw", "form", "balance", "balance/drill", "flywheel"},
	"step/lighten":  {"bench", "draw", "form", "flywheel"},
	"step/truing":   {"bench", "draw", "form", "dial", "crank", "tryout"},
	"step/jobsheet": {"bench", "draw", "form"},
	"sheet":         {"bench", "form", "step/truing", "step/fitting", "step/balance", "step/lighten", "step/jobsheet"},
}

// heavy packages cost the phone more bytes than they are worth.
var heavy = []string{"fmt", "encoding/json", "regexp", "reflect"}

// No trade room knows another, the form, words or pictures; no step another step,
// or the list of them; and the core that goes to the phone imports nothing heavy.
func TestRoomsImportWhatTheyMay(t *testing.T) {
	require.NoError(t, filepath.WalkDir(".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		room := filepath.ToSlash(filepath.Dir(path))
		may, isRoom := rooms[room]
		require.True(t, isRoom || slices.Contains(leaves, room), "%s is no room of the house", room)
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		for _, spec := range file.Imports {
			name := strings.Trim(spec.Path.Value, `"`)
			assert.NotContains(t, heavy, name, path)
			if other, ours := strings.CutPrefix(name, "pintwelve/core/"); ours {
				assert.True(t, slices.Contains(leaves, other) || slices.Contains(may, other), "%s imports %s", path, other)
			}
		}
		return err
	}))
}

// maySpeak are the files of a step's folder that hold words, and names that look like
// them.
var maySpeak = []string{"words.go", "throwswords.go", "names.go"}

// A step, or the sheet, that has its words in words.go has none elsewhere: no literal but
// a fault's that nobody is told reads like a sentence or has a place for a figure.
func TestWordsStandInTheirFile(t *testing.T) {
	sentence := regexp.MustCompile(`[\pL,.:;’%] [\pL%]|%`)
	folders, err := filepath.Glob("step/*/words.go")
	require.NoError(t, err)
	require.NotEmpty(t, folders)
	folders = append(folders, "sheet/words.go")
	for _, words := range folders {
		files, err := filepath.Glob(filepath.Join(filepath.Dir(words), "*.go"))
		require.NoError(t, err)
		for _, path := range files {
			if name := filepath.Base(path); slices.Contains(maySpeak, name) || strings.HasSuffix(name, "_test.go") {
				continue
			}
			set := token.NewFileSet()
			file, err := parser.ParseFile(set, path, nil, 0)
			require.NoError(t, err)
			ast.Inspect(file, func(n ast.Node) bool {
				if pair, ok := n.(*ast.KeyValueExpr); ok { // how fields' names begin
					key, ok := pair.Key.(*ast.Ident)
					return !ok || key.Name != "Fields"
				}
				if call, ok := n.(*ast.CallExpr); ok {
					of, ok := call.Fun.(*ast.SelectorExpr)
					return !ok || of.Sel.Name != "New"
				}
				if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING {
					assert.NotRegexp(t, sentence, text.Value, "%s", set.Position(text.Pos()))
				}
				return true
			})
		}
	}
}

// Fields are read by their typed names; the one thing that is named by a literal, a
// group of rows, is one of the table's.
func TestRowsAreThoseOfTheTable(t *testing.T) {
	groups := map[string]bool{}
	for _, f := range form.Job.Fields() {
		segments := strings.Split(f.Pattern, ".")
		for i := 1; i < len(segments); i++ {
			groups[segments[i-1]] = groups[segments[i-1]] || segments[i] == "*"
		}
	}
	asked := 0
	require.NoError(t, filepath.WalkDir(".", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") {
			return err
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, 0)
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			of, ok := call.Fun.(*ast.SelectorExpr)
			if !ok || of.Sel.Name != "Rows" || len(call.Args) != 1 {
				return true
			}
			if text, ok := call.Args[0].(*ast.BasicLit); ok {
				asked++
				group := strings.Trim(text.Value, `"`)
				assert.True(t, groups[group[strings.LastIndexByte(group, '.')+1:]], "%s: no rows are called %s", set.Position(call.Pos()), group)
			}
			return true
		})
		return err
	}))
	assert.Greater(t, asked, 15)
}

// written is a call that writes a figure, with its verb.
var written = regexp.MustCompile(`(?:Format|Append)Float\(.*, (.*?), [^,]*, (?:32|64)\)`)

// Figures are written by plain decimals: core.wasm goes without what writes others
// (tools/rewrite).
func TestFiguresAreWrittenByDecimals(t *testing.T) {
	found := 0
	for _, dir := range []string{".", "../wasm"} {
		require.NoError(t, filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			calls := written.FindAllStringSubmatch(string(text), -1)
			assert.Len(t, calls, strings.Count(string(text), "FormatFloat(")+strings.Count(string(text), "AppendFloat("), path)
			for _, call := range calls {
				assert.Equal(t, "'f'", call[1], path)
				found++
			}
			return nil
		}))
	}
	assert.Positive(t, found)
}
