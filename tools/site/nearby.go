package site

import (
	"encoding/binary"
	"errors"
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

// nearTogether has many functions in a row share what says where in the table a
// function is to be looked for: the runtime looks from there on, one function after
// the other (runtime.findfunc). It does when it walks a stack alone.
func nearTogether(memory []byte) error {
	const together = 64
	t, err := functionsIn(memory)
	if err != nil {
		return err
	}
	m, err := t.module(memory)
	if err != nil {
		return err
	}
	last := uint32(0)
	for nearby := memory[m.word(moduleNearby):][:(m.word(moduleLast)-codeStart)/nearbyStretch*nearbySize]; len(nearby) > 0; nearby = nearby[nearbySize:] {
		number := binary.LittleEndian.Uint32(nearby)
		if number < last || uint64(number) >= t.Functions {
			return errors.New("functions that aren’t in their order")
		}
		last = number
		clear(nearby[:nearbySize])
		binary.LittleEndian.PutUint32(nearby, number/together*together)
	}
	return nil
}
