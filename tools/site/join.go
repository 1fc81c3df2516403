package site

import (
	"errors"

	"pintwelve/tools/module"
)

// segment is bytes that a module puts into its memory as it starts.
type segment struct {
	at    int
	bytes []byte
}

// joined returns a module whose data segments are joined where so few zeros lie
// between them that writing the zeros out is shorter once it is packed: memory
// is zero to begin with. Go's linker cuts its data at every few zeros, 50,000
// times, and each cut costs a place and a length.
func joined(program []byte) (out []byte, err error) {
	defer func() {
		if recover() != nil { // or a slice out of range, where the file is cut short
			out, err = nil, errors.New("not a module as Go’s linker writes it")
		}
	}()
	out = append(out, program[:module.HeaderSize]...)
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		kind, section := rest.Byte(), rest.Bytes()
		if kind == module.Data {
			section = written(join(segments(section)))
		}
		out = module.AppendBytes(append(out, kind), section)
	}
	return out, nil
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

func join(all []segment) []segment {
	const mostZeros = 256
	var long []segment
	for _, s := range all {
		if last := len(long) - 1; last >= 0 {
			before := &long[last]
			gap := s.at - before.at - len(before.bytes)
			if gap >= 0 && gap <= mostZeros {
				before.bytes = append(append(before.bytes, make([]byte, gap)...), s.bytes...)
				continue
			}
		}
		long = append(long, s)
	}
	return long
}
