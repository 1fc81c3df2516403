package site

import (
	"encoding/binary"
	"errors"
)

// What stands at places in what Go keeps of a program's parts (runtime.moduledata),
// which begins with where the table of functions is.
const (
	moduleNames   = 8   // the table's names
	moduleNearby  = 152 // findfunctab
	moduleFirst   = 160 // where in the code the first function is
	moduleLast    = 168 // where the code ends
	nearbySize    = 20  // runtime.findfuncbucket: the number of a function, and 16 bytes to add
	nearbyStretch = 4096
	codeStart     = 0x1000 << 16
)

// nearTogether has many functions in a row share what says where in the table a
// function is to be looked for: the runtime looks from there on, one function after
// the other (runtime.findfunc). It does when it walks a stack alone.
func nearTogether(memory []byte) error {
	const together = 64
	t, err := functionsIn(memory)
	if err != nil {
		return err
	}
	word := func(at uint64) uint64 { return binary.LittleEndian.Uint64(memory[at:]) }
	table := uint64(len(memory) - len(t.bytes))
	for at := uint64(0); at+moduleLast+8 <= uint64(len(memory)); at += 8 {
		if word(at) != table || word(at+moduleNames) != table+t.Names || word(at+moduleFirst) != codeStart {
			continue
		}
		last := uint32(0)
		for nearby := memory[word(at+moduleNearby):][:(word(at+moduleLast)-codeStart)/nearbyStretch*nearbySize]; len(nearby) > 0; nearby = nearby[nearbySize:] {
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
	return errors.New("not where Go 1.26 keeps where its parts are")
}
