package site

import (
	"encoding/binary"
	"errors"

	"pintwelve/tools/module"
)

// order says where in memory the table of functions stands, which the module writes as it
// starts: each function has the number after the last one's, and its info begins where the
// last one's ends.
type order struct {
	from, to int // 8 bytes each: the number, then where the info is
	infos    int // where that is counted from
	number   int // the first function's
	info     int // where its info is
}

// inOrder clears the entries of the table of functions, and has each function's info no
// longer repeat its number. An error says that they aren't in their order, or that the
// memory holds no table of the layout that is known here.
func inOrder(memory []byte) (o order, err error) {
	t, err := functionsIn(memory)
	if err != nil {
		return o, err
	}
	o.infos = len(memory) - len(t.bytes) + int(t.ByPlaces)
	o.from, o.to = o.infos, o.infos+8*int(t.Functions)
	o.number = int(binary.LittleEndian.Uint32(memory[o.from:]))
	o.info = o.infos + int(binary.LittleEndian.Uint32(memory[o.from+4:]))
	number, info := o.number, o.info
	for at := o.from; at < o.to; at += 8 {
		inEntry, where := binary.LittleEndian.Uint32(memory[at:]), binary.LittleEndian.Uint32(memory[at+4:])
		itself := memory[info:]
		if int(inEntry) != number || binary.LittleEndian.Uint32(itself) != inEntry || o.infos+int(where) != info {
			return o, errors.New("a function that isn’t where the one before it ends")
		}
		info += (infoRest + 4*(int(binary.LittleEndian.Uint32(itself[infoPCData:]))+int(itself[infoData])) + 7) &^ 7
		number++
		clear(memory[at : at+8])
		clear(itself[:4])
	}
	return o, nil
}

// code is the function that writes them, and what stands in columns into the infos and what is
// nearby: its argument-less body, as a section of code has it (WebAssembly core specification
// 1.0, 5.4 and 5.5.13).
func (o order) code(c columns, n nearby) []byte {
	body := append([]byte{1, startLocals32, 0x7f}, c.adding()...)
	body = module.AppendSigned(append(body, 0x41), o.from)
	body = module.AppendSigned(append(body, 0x21, localAt, 0x41), o.info)
	body = append(body, 0x21, localInfo,
		0x03, 0x40, // loop
		0x20, localAt, 0x20, localInfo, 0x20, localNumber) // local.get, the first two for stores
	body = module.AppendSigned(append(body, 0x41), o.number)
	body = stored(append(body, 0x6a, 0x22, localValue), 0) // i32.add, local.tee
	body = stored(append(body, 0x20, localValue), 0)
	body = module.AppendSigned(append(body, 0x20, localAt, 0x20, localInfo, 0x41), o.infos)
	body = stored(append(body, 0x6b), 4) // i32.sub
	body = append(body, c.writing()...)
	body = append(body, 0x20, localInfo,
		0x20, localInfo, 0x28, 2, infoPCData, // i32.load
		0x20, localInfo, 0x2d, 0, infoData, // i32.load8_u
		0x6a, 0x41, 2, 0x74, // i32.shl
		0x41, infoRest+7, 0x6a, 0x41, 0x78, 0x71, // and i32.and with -8
		0x6a, 0x21, localInfo)
	body = next(body, localAt, 8, o.to)
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
