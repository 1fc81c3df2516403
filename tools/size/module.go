package main

import (
	"encoding/binary"
	"errors"
	"strings"
)

// Sections of a module, and of its names: WebAssembly core specification 1.0,
// sections 5.5.2 and 7.4.1.
const (
	customSection = 0
	importSection = 2
	codeSection   = 10
	functionNames = 1
)

// errModule is returned for what isn't a module with named functions.
var errModule = errors.New("not a WebAssembly module with the names of its functions")

// codeByPackage returns the code of a module's functions, put together by the
// Go package that a function's name starts with.
func codeByPackage(module []byte) (code map[string][]byte, err error) {
	defer func() {
		if recover() != nil { // a slice out of range: the file is cut short or no module
			code, err = nil, errModule
		}
	}()
	var bodies [][]byte
	names := map[int]string{}
	imports := 0
	for rest := reader(module[8:]); len(rest) > 0; {
		kind := rest.byte()
		section := reader(rest.bytes())
		switch kind {
		case importSection:
			imports = section.number()
		case codeSection:
			for range section.number() {
				bodies = append(bodies, section.bytes())
			}
		case customSection:
			if string(section.bytes()) == "name" {
				section.functionNames(names)
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

// reader takes a module apart from its front; it panics at the end of it.
type reader []byte

func (r *reader) byte() byte {
	b := (*r)[0]
	*r = (*r)[1:]
	return b
}

func (r *reader) number() int {
	n, length := binary.Uvarint(*r) // LEB128, section 5.2.2
	*r = (*r)[length:]
	return int(n)
}

// bytes takes a vector of bytes, a name or a section: a length and so many bytes.
func (r *reader) bytes() []byte {
	n := r.number()
	taken := (*r)[:n]
	*r = (*r)[n:]
	return taken
}

func (r *reader) functionNames(names map[int]string) {
	for len(*r) > 0 {
		kind := r.byte()
		part := reader(r.bytes())
		if kind != functionNames {
			continue
		}
		for range part.number() {
			index := part.number()
			names[index] = string(part.bytes())
		}
	}
}
