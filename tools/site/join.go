package site

import (
	"errors"
	"slices"

	"pintwelve/tools/module"
	"pintwelve/tools/rewrite"
)

// shortened returns a module, as Go's linker writes it with the names of its
// functions, with its code and its data written shorter: the code as package
// rewrite has it, the data without what only a trace would tell (see untraced) and
// with its segments joined where so few zeros lie between them that writing the
// zeros out is shorter once it is packed: memory is zero to begin with. The linker
// cuts its data at every few zeros, 50,000 times, and each cut costs a place and a
// length.
func shortened(program []byte) (out []byte, err error) {
	defer func() {
		if recover() != nil { // or a slice out of range, where the file is cut short
			out, err = nil, errors.New("not a module as Go’s linker writes it")
		}
	}()
	about, data, err := readModule(program)
	if err != nil {
		return nil, err
	}
	out = append(out, program[:module.HeaderSize]...)
	kindOfStart, functions := 0, 0
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		kind, section := rest.Byte(), rest.Bytes()
		switch kind {
		case module.Custom:
			if isNames(section) {
				continue
			}
		case module.Type:
			kindOfStart = noArguments(section)
		case module.Function:
			list := module.Reader(section)
			functions = about.Imports + list.Number()
			section = withOne(section, module.AppendNumber(nil, kindOfStart))
		case module.Element:
			out = module.AppendBytes(append(out, module.Start), module.AppendNumber(nil, functions))
		case module.Code:
			code, reached, err := about.Code(section)
			if err != nil {
				return nil, err
			}
			start, err := shortenedData(data, reached)
			if err != nil {
				return nil, err
			}
			section = withOne(code, start)
		case module.Data:
			section = written(cut(data))
		}
		out = module.AppendBytes(append(out, kind), section)
	}
	return out, nil
}

// shortenedData writes shorter in place what a memory begins with, and returns the
// function that writes the rest as the module starts.
func shortenedData(data []byte, reached []bool) (start []byte, err error) {
	if err := untraced(data, reached); err != nil {
		return nil, err
	}
	n, err := nearTogether(data)
	if err != nil {
		return nil, err
	}
	c, err := columned(data)
	if err != nil {
		return nil, err
	}
	o, err := inOrder(data)
	return o.code(c, n), err
}

// readModule returns what the code is rewritten by, and the memory that the data
// make, with what nothing asks of types cleared.
func readModule(program []byte) (about rewrite.Module, data []byte, err error) {
	var constants map[int]bool
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		kind, section := rest.Byte(), rest.Bytes()
		content := module.Reader(section)
		switch kind {
		case module.Import:
			about.Imports = content.Number() // nothing but functions
		case module.Export:
			about.Exports = module.Exported(content)
		case module.Code:
			constants = rewrite.Constants(section)
		case module.Data:
			data = memory(segments(section))
		case module.Custom:
			if isNames(section) {
				about.Names = module.FunctionNames(content)
			}
		}
	}
	if about.Methods, err = unnamed(data, constants, about.Names); err != nil {
		return about, nil, err
	}
	about.Data, err = withoutTable(data)
	return about, data, err
}

// isNames says whether a custom section is that of names.
func isNames(section module.Reader) bool { return string(section.Bytes()) == "name" }

// segment is bytes that a module puts into its memory as it starts.
type segment struct {
	at    int
	bytes []byte
}

// An active segment of memory 0 is 0, i32.const and where, end, and its bytes
// (WebAssembly core specification 1.0, 5.5.14 and 5.4.5).
const (
	active   = 0
	i32Const = 0x41
	end      = 0x0b
)

func segments(section module.Reader) []segment {
	all := make([]segment, section.Number())
	for i := range all {
		if section.Byte() != active || section.Byte() != i32Const {
			panic("a segment that isn't put at a place that is known")
		}
		all[i].at = section.Signed()
		if section.Byte() != end {
			panic("a place that is worked out")
		}
		all[i].bytes = section.Bytes()
	}
	return all
}

func written(all []segment) []byte {
	out := module.AppendNumber(nil, len(all))
	for _, s := range all {
		out = module.AppendSigned(append(out, active, i32Const), s.at)
		out = module.AppendBytes(append(out, end), s.bytes)
	}
	return out
}

// memory is what segments make of a memory of zeros, up to the last's end.
func memory(all []segment) []byte {
	var m []byte
	for _, s := range all {
		m = append(m, make([]byte, max(0, s.at+len(s.bytes)-len(m)))...)
		copy(m[s.at:], s.bytes)
	}
	return m
}

// cut returns the segments that make memory m, parted where more than
// mostZeros zeros stand in a row.
func cut(m []byte) []segment {
	const mostZeros = 256
	var all []segment
	for at := 0; ; {
		first := slices.IndexFunc(m[at:], func(b byte) bool { return b != 0 })
		if first < 0 {
			return all
		}
		at += first
		last := at // the last byte so far that is none of the zeros
		for next := at; next < len(m) && next-last <= mostZeros+1; next++ {
			if m[next] != 0 {
				last = next
			}
		}
		all = append(all, segment{at, m[at : last+1]})
		at = last + 1
	}
}
