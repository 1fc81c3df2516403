package main

import (
	"errors"
	"strings"

	"pintwelve/tools/module"
)

// errModule is returned for what isn't a module with named functions.
var errModule = errors.New("not a WebAssembly module with the names of its functions")

// codeByPackage returns the code of a module's functions, put together by the
// Go package that a function's name starts with.
func codeByPackage(program []byte) (code map[string][]byte, err error) {
	defer func() {
		if recover() != nil { // a slice out of range: the file is cut short or no module
			code, err = nil, errModule
		}
	}()
	var bodies [][]byte
	var names map[int]string
	imports := 0
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		kind := rest.Byte()
		section := module.Reader(rest.Bytes())
		switch kind {
		case module.Import:
			imports = section.Number()
		case module.Code:
			for range section.Number() {
				bodies = append(bodies, section.Bytes())
			}
		case module.Custom:
			if name := section; string(name.Bytes()) == "name" {
				names = module.FunctionNames(section)
			}
		}
	}
	if len(names) == 0 {
		return nil, errModule
	}
	code = map[string][]byte{}
	for i, body := range bodies {
		// Go imports nothing but functions, which are numbered first
		name := packageOf(names[imports+i])
		code[name] = append(code[name], body...)
	}
	return code, nil
}

// packageOf returns the package of a function that the linker has named, which
// writes a path's slashes as underscores.
func packageOf(function string) string {
	name, _, _ := strings.Cut(function, ".")
	return name
}
