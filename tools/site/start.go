package site

import (
	"encoding/binary"
	"errors"

	"pintwelve/tools/module"
)

// sums says where in memory numbers stand that the module adds up as it starts,
// each onto the one before it: they are alike as differences, and pack to little.
type sums struct {
	from, to int // the entries of the table of functions, 8 bytes each
	infos    int // what an entry's upper half is counted from
}

// differences writes the entries of the table of functions as what each is more
// than the one before it, and has each function's info no longer repeat where the
// function starts, which its entry says.
func differences(memory []byte) (s sums, err error) {
	t, err := functionsIn(memory)
	if err != nil {
		return s, err
	}
	s.infos = len(memory) - len(t.bytes) + int(t.ByPlaces)
	s.from, s.to = s.infos, s.infos+8*int(t.Functions)
	last := uint64(0)
	for at := s.from; at < s.to; at += 8 {
		entry := binary.LittleEndian.Uint64(memory[at:])
		start := memory[s.infos+int(entry>>32):][:4]
		if binary.LittleEndian.Uint32(start) != uint32(entry) {
			return s, errors.New("a function that starts elsewhere than its entry says")
		}
		clear(start)
		binary.LittleEndian.PutUint64(memory[at:], entry-last)
		last = entry
	}
	return s, nil
}

// code is the function that adds them up, and writes what stands in columns into the infos and what
// is nearby: its argument-less body, as a section of code has it (WebAssembly core specification 1.0, 5.4 and
// 5.5.13).
func (s sums) code(c columns, n nearby) []byte {
	body := []byte{2, startLocals32, 0x7f, 1, 0x7e} // numbers of 32 and of 64 bits
	body = append(body, c.adding()...)
	body = module.AppendSigned(append(body, 0x41), s.from)
	body = append(body, 0x21, localAt, // local.set
		0x03, 0x40, // loop
		0x20, localAt, // local.get, for the store
		0x20, localAt, 0x29, 3, 0, // i64.load
		0x20, localSum, 0x7c, // i64.add
		0x22, localSum, // local.tee
		0x37, 3, 0, // i64.store
		0x20, localSum, 0x42, 32, 0x88, 0xa7) // i64.shr_u, i32.wrap_i64
	body = module.AppendSigned(append(body, 0x41), s.infos)
	body = append(body, 0x6a, 0x22, localInfo, // i32.add, local.tee
		0x20, localSum, 0xa7) // i32.wrap_i64
	body = stored(body, 0)
	body = append(body, c.writing()...)
	body = next(body, localAt, 8, s.to)
	body = append(body, n.writing()...)
	return module.AppendBytes(nil, append(body, 0x0b))
}

// withOne returns a section that is a list with one more at its end.
func withOne(section module.Reader, more []byte) []byte {
	n := section.Number()
	return append(append(module.AppendNumber(nil, n+1), section...), more...)
}

// noArguments returns the number of the type of functions that take and give
// nothing (5.5.4).
func noArguments(types module.Reader) int {
	for n := range types.Number() {
		types.Byte()
		if takes, gives := types.Bytes(), types.Bytes(); len(takes)+len(gives) == 0 {
			return n
		}
	}
	panic("no function takes and gives nothing")
}
