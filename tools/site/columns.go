package site

import (
	"encoding/binary"
	"errors"

	"pintwelve/tools/module"
)

// columns says where in memory stands, column by column, which places each function's info
// holds, for the module to write them there as it starts: in the info they differ from
// function to function, and one that was there before packs as one that is new. They stand
// where the names of functions did.
type columns struct {
	functions int
	all       []column
	places    int // of all columns: three bytes of how much each is more than the one before it, the lowest of all first
	count     int // of them
	out       int // where they are added up to
}

// column is one of the infos' places. A function has in it two bytes, the lower of all, then
// the higher: 0 for none, 1 for the next place that none had before, else 1 more than the number of a
// place, from 1.
type column struct {
	at    int // where it stands in an info, after its PCData if it is FuncData
	data  bool
	first int // of the places
	from  int // where the bytes stand
}

// toldOfEach is how many columns there are.
const toldOfEach = 6

// told is what of an info is told in a column: where it stands, and which of its PCData or
// FuncData it is.
type told struct {
	at, number int
	data       bool
}

// The arguments' size, the tables of the stack's size and of which map of the stack holds, the maps of arguments
// and of variables, and what else is on the stack.
var inColumns = [toldOfEach]told{
	{infoArgs, -1, false}, {infoSP, -1, false}, {infoRest + 4, 1, false}, {infoRest, 0, true}, {infoRest + 4, 1, true}, {infoRest + 8, 2, true},
}

// mostTold is more than any place or size, whose differences fit into three bytes then. What is above it stays where it
// is, as of arguments that nobody knows (internal/abi.ArgsSizeUnknown).
const mostTold = 1<<22 - 1

// What stands where in a function's info (functionInfo).
const (
	infoArgs   = 8
	infoSP     = 16
	infoPCData = 28
	infoData   = 43
	infoRest   = 44
)

// columned writes the places of each function's info into columns. An error says that they
// can't be, or that the memory holds no table of the layout that is known here.
func columned(memory []byte) (c columns, err error) {
	t, err := functionsIn(memory)
	if err != nil {
		return c, err
	}
	table := len(memory) - len(t.bytes)
	c.functions = int(t.Functions)
	to := table + int(t.Names) + 8 // the first name is that of functions without one
	var places []int
	for _, each := range inColumns {
		c.all = append(c.all, column{each.at, each.data, len(places), to})
		more, err := t.column(each, memory[to:])
		if err != nil {
			return c, err
		}
		places = append(places, more...)
		to += 2 * c.functions
	}
	c.places, c.count, c.out = to, len(places), (to+3*len(places)+3)&^3
	if c.out+4*c.count > table+int(t.Values) {
		return c, errors.New("no room where the names of functions were")
	}
	last := 0
	for i, place := range places {
		for plane := range 3 {
			memory[c.places+plane*c.count+i] = byte((place - last) >> (8 * plane))
		}
		last = place
	}
	return c, nil
}

// column takes what is told in one out of all infos, writes the column, and returns the
// places that its numbers stand for.
func (t functionTable) column(each told, to []byte) (places []int, err error) {
	known := map[uint32]int{}
	for i := range int(t.Functions) {
		place, none := each.in(t.info(uint64(i)))
		if place == nil {
			continue
		}
		value := binary.LittleEndian.Uint32(place)
		if value == none || value > mostTold {
			continue
		}
		number, ok := known[value]
		if !ok {
			known[value] = len(known) + 1
			places = append(places, int(value))
		}
		if number >= 1<<16-1 {
			return nil, errors.New("more places than two bytes number")
		}
		to[i], to[int(t.Functions)+i] = byte(number+1), byte((number+1)>>8)
		binary.LittleEndian.PutUint32(place, none) // as where there is none, which the column tells
	}
	return places, nil
}

// in returns where in an info it stands, nil if the info ends before it, and what stands there for
// none: of FuncData all ones, else 0.
func (w told) in(info []byte) (place []byte, none uint32) {
	at, count := w.at, int(binary.LittleEndian.Uint32(info[infoPCData:]))
	if w.data {
		at += 4 * count
		count, none = int(info[infoData]), ^uint32(0)
	}
	if w.number >= count {
		return nil, none
	}
	return info[at:][:4], none
}

// The locals of the function that runs at the start.
const (
	localAt       = iota // in the table of functions
	localInfo            // the function's
	localNumber          // of the function, or of a place
	localValue           // what a column has for it, or a place
	localCounts          // how many of its places each column has had
	startLocals32 = localCounts + toldOfEach
)

// adding adds the places up.
func (c columns) adding() (code []byte) {
	code = append(code, 0x03, 0x40, // loop
		0x20, localNumber, 0x41, 2, 0x74, // where it goes: i32.shl
		0x20, localValue)
	for plane, op := range []byte{0x2d, 0x2d, 0x2c} { // the highest with its sign
		code = loaded(code, op, c.places+plane*c.count, 8*plane)
		code = append(code, 0x6a) // i32.add
	}
	code = append(code, 0x22, localValue) // local.tee
	code = stored(code, c.out)
	code = next(code, localNumber, 1, c.count)
	return append(code, 0x41, 0, 0x21, localNumber) // the functions' now
}

// writing writes one function's places into its info.
func (c columns) writing() (code []byte) {
	for n, col := range c.all {
		count := byte(localCounts + n)
		code = loaded(code, 0x2d, col.from, 0)
		code = loaded(code, 0x2d, col.from+c.functions, 8)
		code = append(code, 0x6a, 0x22, localValue, 0x04, 0x40, // i32.add, local.tee, if
			0x20, localInfo)
		if col.data {
			code = append(code, 0x20, localInfo, 0x28, 2, infoPCData, 0x41, 2, 0x74, 0x6a) // behind its PCData: i32.load, i32.shl, i32.add
		}
		code = append(code, 0x20, count, 0x20, localValue, 0x41, 1, 0x46, 0x6a, 0x22, count, // i32.eq, i32.add, local.tee
			0x20, localValue, 0x41, 1, 0x6b, // i32.sub
			0x20, localValue, 0x41, 1, 0x46, 0x1b, // i32.eq, select
			0x41, 2, 0x74) // i32.shl
		code = append(code, 0x28, 2) // i32.load
		code = module.AppendNumber(code, c.out+4*(col.first-1))
		code = stored(code, col.at)
		code = append(code, 0x0b)
	}
	return append(code, 0x20, localNumber, 0x41, 1, 0x6a, 0x21, localNumber)
}

// loaded is one byte more, shifted, from where localNumber is counted from.
func loaded(code []byte, op byte, from, shift int) []byte {
	code = module.AppendNumber(append(code, 0x20, localNumber, op, 0), from)
	if shift > 0 {
		code = append(code, 0x41, byte(shift), 0x74) // i32.shl
	}
	return code
}

// stored is an i32.store.
func stored(code []byte, at int) []byte {
	return module.AppendNumber(append(code, 0x36, 2), at)
}

// next ends a loop that goes on until a local, so much more, is at its last.
func next(code []byte, local, more byte, last int) []byte {
	code = append(code, 0x20, local, 0x41, more, 0x6a, 0x22, local)
	code = module.AppendSigned(append(code, 0x41), last)
	return append(code, 0x47, 0x0d, 0, 0x0b) // i32.ne, br_if, end
}
