package site

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// tableStart is how Go's table of functions starts: the number of its layout,
// which Go changes with the layout (internal/abi.CurrentPCLnTabMagic), and what
// WebAssembly has for the sizes of an instruction and a pointer.
var tableStart = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// tableHeader is what follows tableStart (runtime.pcHeader). Places count from
// the table's start.
type tableHeader struct {
	Functions, Files, _                       uint64
	Names, Units, FileNames, Values, ByPlaces uint64
}

// functionInfo is what Go keeps of a function (runtime._func), with places in
// the tables of values, or 0 for none. So many places of PCData tables and
// FuncData follow.
type functionInfo struct {
	Entry             uint32
	Name              uint32
	Args              int32
	DeferReturn       uint32
	SP, File, Line    uint32
	PCData            uint32
	Unit              uint32
	StartLine         int32
	ID, Flag, _, Data uint8
}

// What only a trace asks for (internal/abi/symtab.go); wasm has no preemption
// but at a call, so that nothing asks where it would be safe either.
var (
	tracePCData   = map[uint32]bool{0: true, 2: true, 3: true} // safe to preempt, inlined, arguments alive
	traceFuncData = map[uint8]bool{3: true, 5: true, 6: true}  // inlined, arguments, arguments alive
)

// untraced takes out of a Go program's memory what only a trace tells: the names
// of functions, which line of which file each instruction came from, and what
// was inlined there. It is two fifths of what the data weigh packed, and nobody
// reads a trace on a phone at a lathe: a fault that the page tells of carries
// its own words. The runtime takes each part as none by its own rule: a place
// of 0, of FuncData all ones. An error says that the memory holds no table of
// the layout that is known here; a table that is cut short panics.
func untraced(memory []byte) error {
	at := bytes.Index(memory, tableStart)
	if at < 0 || bytes.Contains(memory[at+1:], tableStart) {
		return errors.New("not one table of functions as Go 1.20 to 1.26 write it")
	}
	table := memory[at:]
	var h tableHeader
	if _, err := binary.Decode(table[len(tableStart):], binary.LittleEndian, &h); err != nil {
		return err
	}
	kept := keeper{from: table[h.Values:h.ByPlaces], to: []byte{0}, moved: map[uint32]uint32{0: 0}}
	for i := range h.Functions {
		const entrySize = 8 // of a function: where it starts, where its info stands
		info := table[h.ByPlaces+binary.LittleEndian.Uint64(table[h.ByPlaces+i*entrySize:])>>32:]
		if err := kept.function(info, table[h.Names:h.Units]); err != nil {
			return err
		}
	}
	clear(table[h.Names:h.Values]) // and the units of compiling, and names of files
	clear(kept.from[copy(kept.from, kept.to):])
	return nil
}

// keeper moves tables of values that are kept to the front.
type keeper struct {
	from, to []byte
	moved    map[uint32]uint32 // the places in from and to
}

func (k *keeper) function(info, names []byte) error {
	var f functionInfo
	size, err := binary.Decode(info, binary.LittleEndian, &f)
	if err != nil {
		return err
	}
	if f.Name > 0 && names[f.Name-1] != 0 {
		return errors.New("a function whose name doesn’t start where it is said to")
	}
	f.Name, f.SP, f.File, f.Line, f.Unit, f.StartLine = 0, k.table(f.SP), 0, 0, 0, 0
	if _, err := binary.Encode(info, binary.LittleEndian, &f); err != nil {
		return err
	}
	rest := info[size:]
	for i := range f.PCData {
		place := uint32(0)
		if !tracePCData[i] {
			place = k.table(binary.LittleEndian.Uint32(rest))
		}
		binary.LittleEndian.PutUint32(rest, place)
		rest = rest[4:]
	}
	for i := range f.Data {
		if traceFuncData[i] {
			binary.LittleEndian.PutUint32(rest, ^uint32(0))
		}
		rest = rest[4:]
	}
	return nil
}

// table keeps the table of values at a place and returns its new place. A table
// is pairs of numbers in LEB128 up to a first of 0, which doesn't end it where
// it starts (runtime.step).
func (k *keeper) table(place uint32) uint32 {
	if to, done := k.moved[place]; done {
		return to
	}
	rest := k.from[place:]
	for start := true; start || rest[0] != 0; start = false {
		for range 2 {
			_, size := binary.Uvarint(rest)
			rest = rest[size:]
		}
	}
	to := uint32(len(k.to))
	k.to = append(k.to, k.from[place:len(k.from)-len(rest)+1]...)
	k.moved[place] = to
	return to
}
