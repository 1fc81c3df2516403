package site

import (
	"bytes"
	"encoding/binary"
	"errors"
	"maps"
	"slices"
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

// functionTable is Go's table of functions, where it stands in a program's memory.
type functionTable struct {
	tableHeader
	bytes []byte // to the memory's end
}

// functionsIn finds the table. An error says that the memory holds none of the
// layout that is known here; one that is cut short panics.
func functionsIn(memory []byte) (t functionTable, err error) {
	at := bytes.Index(memory, tableStart)
	if at < 0 || bytes.Contains(memory[at+1:], tableStart) {
		return t, errors.New("not one table of functions as Go 1.20 to 1.26 write it")
	}
	t.bytes = memory[at:]
	_, err = binary.Decode(t.bytes[len(tableStart):], binary.LittleEndian, &t.tableHeader)
	return t, err
}

// info returns what the table tells of its i-th function, to the memory's end.
func (t functionTable) info(i uint64) []byte {
	const entrySize = 8 // of a function: where it starts, where its info stands
	return t.bytes[t.ByPlaces+binary.LittleEndian.Uint64(t.bytes[t.ByPlaces+i*entrySize:])>>32:]
}

// withoutTable returns a memory with zeros where its table of functions stood.
func withoutTable(memory []byte) ([]byte, error) {
	memory = slices.Clone(memory)
	t, err := functionsIn(memory)
	if err != nil {
		return nil, err
	}
	last := t.info(t.Functions - 1)
	var f functionInfo
	size, err := binary.Decode(last, binary.LittleEndian, &f)
	if err != nil {
		return nil, err
	}
	clear(t.bytes[:len(t.bytes)-len(last)+size+4*(int(f.PCData)+int(f.Data))])
	return memory, nil
}

// untraced takes out of a Go program's memory what only a trace tells: the names
// of functions, which line of which file each instruction came from, and what
// was inlined there. It is two fifths of what the data weigh packed, and nobody
// reads a trace on a phone at a lathe: a fault that the page tells of carries
// its own words. With it goes all that is told of functions that nothing reaches.
// The runtime takes each part as none by its own rule: a place of 0, of FuncData
// all ones, and what stood there is cleared. An error says that the memory holds no table of the layout that is
// known here; a table that is cut short panics.
func untraced(memory []byte, reached []bool) error {
	t, err := functionsIn(memory)
	if err != nil {
		return err
	}
	m, err := t.module(memory)
	if err != nil {
		return err
	}
	kept := keeper{from: t.bytes[t.Values:t.ByPlaces], to: []byte{0}, moved: map[uint32]uint32{0: 0}, known: map[string]uint32{}, data: map[uint32]bool{}}
	for i := range t.Functions { // the stack's sizes first: one after the other, their places pack to less
		if reached[i] {
			kept.table(binary.LittleEndian.Uint32(t.info(i)[infoSP:]))
		}
	}
	for i := range t.Functions {
		if err := kept.function(t.info(i), t.bytes[t.Names:t.Units], reached[i]); err != nil {
			return err
		}
	}
	clear(t.bytes[t.Names:t.Values]) // and the units of compiling, and names of files
	clear(kept.from[copy(kept.from, kept.to):])
	kept.clearData(memory[m.word(moduleData):])
	return nil
}

// keeper moves tables of values that are kept to the front.
type keeper struct {
	from, to []byte
	moved    map[uint32]uint32 // the places in from and to
	known    map[string]uint32 // the tables in to, and their places
	data     map[uint32]bool   // the places of FuncData, and which are kept
}

func (k *keeper) function(info, names []byte, reached bool) error {
	var f functionInfo
	size, err := binary.Decode(info, binary.LittleEndian, &f)
	if err != nil {
		return err
	}
	if f.Name > 0 && names[f.Name-1] != 0 {
		return errors.New("a function whose name doesn’t start where it is said to")
	}
	if !reached {
		f.SP = 0
	}
	f.Name, f.SP, f.File, f.Line, f.Unit, f.StartLine = 0, k.table(f.SP), 0, 0, 0, 0
	if _, err := binary.Encode(info, binary.LittleEndian, &f); err != nil {
		return err
	}
	rest := info[size:]
	for i := range f.PCData {
		place := uint32(0)
		if reached && !tracePCData[i] {
			place = k.table(binary.LittleEndian.Uint32(rest))
		}
		binary.LittleEndian.PutUint32(rest, place)
		rest = rest[4:]
	}
	for i := range f.Data {
		keep := reached && !traceFuncData[i]
		if place := binary.LittleEndian.Uint32(rest); place != ^uint32(0) {
			k.data[place] = k.data[place] || keep
		}
		if !keep {
			binary.LittleEndian.PutUint32(rest, ^uint32(0))
		}
		rest = rest[4:]
	}
	return nil
}

// clearData writes zeros where FuncData stood that nothing keeps, from its place to the
// next; the last, whose end nothing tells, stays.
func (k *keeper) clearData(data []byte) {
	places := slices.Sorted(maps.Keys(k.data))
	for i, place := range places[:max(0, len(places)-1)] {
		if !k.data[place] {
			clear(data[place:places[i+1]])
		}
	}
}

// table keeps the table of values at a place and returns its new place. A table
// is pairs of numbers in LEB128 up to a first of 0, which doesn't end it where
// it starts (runtime.step). How far its last value goes nobody asks, who asks for places in the
// function alone: it goes on for as far as fits, so that more functions have the same table.
func (k *keeper) table(place uint32) uint32 {
	if to, done := k.moved[place]; done {
		return to
	}
	var kept []byte
	last := 0 // where its last length stands
	rest := k.from[place:]
	for start := true; start || rest[0] != 0; start = false {
		for range 2 {
			_, size := binary.Uvarint(rest)
			last = len(kept)
			kept = append(kept, rest[:size]...)
			rest = rest[size:]
		}
	}
	for i := range kept[last:] {
		kept[last+i] |= 0x7f
	}
	kept = append(kept, 0)
	to, known := k.known[string(kept)]
	if !known {
		to = uint32(len(k.to))
		k.to = append(k.to, kept...)
		k.known[string(kept)] = to
	}
	k.moved[place] = to
	return to
}
