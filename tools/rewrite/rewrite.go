// Package rewrite writes the code of a Go program's module shorter once packed,
// its behaviour the same.
//
// Go's compiler writes each part of a function by itself (cmd/internal/obj/wasm),
// and much that it writes differs from call to call and from jump to jump only
// by what follows from where it stands: how many blocks are left, which function
// this is. That is what packing can't see, and what is taken out here. Each
// function in which the compiler's own pattern isn't found to the letter stays as
// it is.
//
// A panic says that the bytes are none that Go writes.
package rewrite

import (
	"strings"

	"pintwelve/tools/module"
)

// Go is the release of Go by whose compiler, linker and runtime all this goes and is
// tested.
const Go = "go1.26"

// Knows says whether a version, as runtime.Version has it, is of that release.
func Knows(version string) bool {
	rest, ok := strings.CutPrefix(version, Go)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '-')
}

// Module is what of a module is asked about beside its code. Functions are numbered
// from those imported on.
type Module struct {
	Imports int            // how many functions are imported
	Exports []int          // the functions that are exported
	Names   map[int]string // what the linker calls the functions
	Methods []int          // those of types that interfaces ask for, by their places in the table (internal/abi.Method: Ifn)
	Data    []byte         // all else in its memory that can lead to a function
}

// Code returns a module's section of code, rewritten, and of each of its functions
// whether anything can reach it. Those that nothing does trap. An error says that
// the names are none of the Go that is known here.
func (m Module) Code(section module.Reader) (out []byte, reached []bool, err error) {
	if err := missing(m.Names); err != nil {
		return nil, nil, err
	}
	all := make([]function, section.Number())
	for n := range all {
		all[n] = taken(section.Bytes())
	}
	pushes := func(f int) bool { return f >= m.Imports && all[f-m.Imports].ofGo() }
	reached = m.reached(all)
	out = module.AppendNumber(nil, len(all))
	for n, f := range all {
		switch {
		case !reached[n]:
			f = trap
		case named(silent, m.Names[m.Imports+n]):
			f = quiet.pushing()
		default:
			f = f.shorter().calling(pushes).pushing()
		}
		out = module.AppendBytes(out, append(f.locals, written(f.code)...))
	}
	return out, reached, nil
}

// function is a function taken apart.
type function struct {
	locals []byte // what its locals are, as it stands
	code   []instruction
}

func taken(body module.Reader) function {
	rest := body
	for range rest.Number() {
		rest.Number()
		rest.Byte()
	}
	size := len(body) - len(rest)
	return function{locals: body[:size:size], code: parse(rest)}
}

// What every function of Go's own kind starts with: the stack's end is a global,
// of which it has a copy.
var entry = []instruction{plain(opGlobalGet, globalSP), plain(opLocalSet, localSP)}

// The first locals of such a function: its argument, which is the part to go on
// at, and the stack's end.
const (
	localPart = 0
	localSP   = 1
	globalSP  = 0
)

// ofGo says whether a function takes part in Go's way of calling.
func (f function) ofGo() bool {
	return startsWith(f.code, entry) && len(f.locals) > 2 && f.locals[0] < 0x80 && f.locals[1] < 0x7f && f.locals[2] == typeI32
}

// shorter is the function but for how it calls and is called.
func (f function) shorter() function {
	f.code = truths(places(returns(unwound(loops(ifs(straight(f.code)))))))
	return f
}
