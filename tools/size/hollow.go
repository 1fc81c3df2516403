package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path"
	"slices"
	"strings"
)

// hollow returns the source of a file of a step with nothing to be reached by: the
// functions that it exports do nothing but panic, and its steps have a name and
// fields alone. The linker then leaves out all behind them; the rest of the core
// still finds every name that it asks for.
func hollow(source []byte) ([]byte, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, "", source, 0)
	if err != nil {
		return nil, err
	}
	var cuts []cut
	replace := func(node ast.Node, by string) {
		cuts = append(cuts, cut{files.Position(node.Pos()).Offset, files.Position(node.End()).Offset, by})
	}
	for _, decl := range file.Decls {
		switch d := decl.(type) {
		case *ast.FuncDecl:
			if d.Name.IsExported() && d.Body != nil {
				replace(d.Body, "{ panic(0) }")
			}
		case *ast.GenDecl:
			for _, value := range answering(d) {
				replace(value, "nil")
			}
		}
	}
	return withoutIdleImports(applied(source, cuts))
}

// answering are what the steps that a declaration makes answer by: all but what
// they are called and which fields are theirs.
func answering(d *ast.GenDecl) (values []ast.Expr) {
	ast.Inspect(d, func(node ast.Node) bool {
		made, ok := node.(*ast.CompositeLit)
		if !ok {
			return true
		}
		if of, ok := made.Type.(*ast.SelectorExpr); !ok || of.Sel.Name != "Step" {
			return true
		}
		for _, element := range made.Elts {
			if e, ok := element.(*ast.KeyValueExpr); ok && !slices.Contains([]string{"Name", "Fields"}, e.Key.(*ast.Ident).Name) {
				values = append(values, e.Value)
			}
		}
		return false
	})
	return values
}

// withoutIdleImports returns a source without the imports that nothing in it uses any
// more, which the compiler would refuse.
func withoutIdleImports(source []byte) ([]byte, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, "", source, 0)
	if err != nil {
		return nil, err
	}
	used := map[string]bool{}
	ast.Inspect(file, func(node ast.Node) bool {
		if s, ok := node.(*ast.SelectorExpr); ok {
			if of, ok := s.X.(*ast.Ident); ok {
				used[of.Name] = true
			}
		}
		return true
	})
	var cuts []cut
	for _, spec := range file.Imports {
		name := path.Base(strings.Trim(spec.Path.Value, `"`))
		if spec.Name != nil {
			name = spec.Name.Name
		}
		if !used[name] {
			cuts = append(cuts, cut{files.Position(spec.Pos()).Offset, files.Position(spec.End()).Offset, ""})
		}
	}
	// an import without brackets that is cut leaves its keyword
	return []byte(strings.ReplaceAll(string(applied(source, cuts)), "import \n", "\n")), nil
}

// cut is a stretch of a source with what takes its place.
type cut struct {
	from, to int
	by       string
}

// applied returns a source with its cuts, which stand in their order, made.
func applied(source []byte, cuts []cut) []byte {
	var out []byte
	at := 0
	for _, c := range cuts {
		out = append(append(out, source[at:c.from]...), c.by...)
		at = c.to
	}
	return append(out, source[at:]...)
}
