package site

import (
	"encoding/binary"
	"errors"

	"pintwelve/tools/module"
)

// What stands at places in what Go keeps of a program's parts (runtime.moduledata),
// which begins with where the table of functions is.
const (
	moduleNames     = 8   // the table's names
	moduleNearby    = 152 // findfunctab
	moduleFirst     = 160 // where in the code the first function is
	moduleLast      = 168 // where the code ends
	moduleData      = 320 // what FuncData's places count from (go:func.*)
	moduleTypes     = 296
	moduleTypesEnd  = 304
	moduleTypeLinks = 360 // and how many, twice
	nearbySize      = 20  // runtime.findfuncbucket: the number of a function, and 16 bytes to add
	nearbyStretch   = 4096
	stretchesLog    = 4 // of 16 that each function is long
	togetherLog     = 6 // of how many functions share one
	codeStart       = 0x1000 << 16
)

// goModule is where in a memory Go keeps where a program's parts are.
type goModule []byte

func (m goModule) word(at int) uint64 { return binary.LittleEndian.Uint64(m[at:]) }

// module finds it in the memory that the table stands in. An error says that it is none
// of the layout that is known here.
func (t functionTable) module(memory []byte) (goModule, error) {
	table := uint64(len(memory) - len(t.bytes))
	for at := 0; at+moduleData+8 <= len(memory); at += 8 {
		if m := goModule(memory[at:]); m.word(0) == table && m.word(moduleNames) == table+t.Names && m.word(moduleFirst) == codeStart {
			return m, nil
		}
	}
	return nil, errors.New("not where Go 1.26 keeps where its parts are")
}

// nearby says where in memory stands what the module writes as it starts: of each stretch
// of the code, where in the table its functions are to be looked for.
type nearby struct {
	from, to int
}

// nearTogether has many functions in a row share what says where in the table a
// function is to be looked for: the runtime looks from there on, one function after
// the other (runtime.findfunc). It does when it walks a stack alone. By the number of a
// stretch it is known then, and so nothing of it need stand in the memory, of whose bytes
// it was three in ten. An error says that it isn't, or that the memory holds none of the layout that is known
// here.
func nearTogether(memory []byte) (n nearby, err error) {
	t, err := functionsIn(memory)
	if err != nil {
		return n, err
	}
	m, err := t.module(memory)
	if err != nil {
		return n, err
	}
	stretches := int(m.word(moduleLast)-codeStart) / nearbyStretch
	n.from = int(m.word(moduleNearby))
	n.to = n.from + stretches*nearbySize
	for stretch := range stretches {
		at := memory[n.from+stretch*nearbySize:][:nearbySize]
		if int(binary.LittleEndian.Uint32(at)) != stretch>>stretchesLog {
			return n, errors.New("functions that aren’t in their order, so much of the code each")
		}
		clear(at)
	}
	return n, nil
}

// writing writes it.
func (n nearby) writing() (code []byte) {
	code = module.AppendSigned([]byte{0x41, 0, 0x21, localNumber, 0x41}, n.from)
	code = append(code, 0x21, localAt,
		0x03, 0x40, // loop
		0x20, localAt, // for the store
		0x20, localNumber, 0x41, stretchesLog+togetherLog, 0x76, // i32.shr_u
		0x41, togetherLog, 0x74) // i32.shl
	code = stored(code, 0)
	code = append(code, 0x20, localNumber, 0x41, 1, 0x6a, 0x21, localNumber)
	return next(code, localAt, nearbySize, n.to)
}
