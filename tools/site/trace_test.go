package site

import (
	"bytes"
	"debug/gosym"
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/module"
)

// data returns the memory that a module's data make.
func data(t *testing.T, program []byte) []byte {
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		if kind, section := rest.Byte(), rest.Bytes(); kind == module.Data {
			return memory(segments(section))
		}
	}
	require.Fail(t, "a module without data")
	return nil
}

// tracedAndNot returns the memory of an empty program before and after untraced.
func tracedAndNot(t *testing.T) (full, short []byte) {
	onKnownGo(t)
	program, err := Compile("../..", "./tools/empty")
	require.NoError(t, err)
	full = data(t, program)
	short = slices.Clone(full)
	require.NoError(t, untraced(short, all(short)))
	return full, short
}

// all has every function of a memory be reached.
func all(memory []byte) []bool {
	table, err := functionsIn(memory)
	if err != nil {
		return nil
	}
	return slices.Repeat([]bool{true}, int(table.Functions))
}

// trace reads the table of functions in memory by the standard library's
// reader of it.
func trace(t *testing.T, memory []byte) *gosym.Table {
	at := bytes.Index(memory, tableStart)
	require.GreaterOrEqual(t, at, 0)
	table, err := gosym.NewTable(nil, gosym.NewLineTable(memory[at:], 0))
	require.NoError(t, err)
	return table
}

func TestUntracedLeavesNoNameAndNoLine(t *testing.T) {
	full, short := tracedAndNot(t)
	was, is := trace(t, full), trace(t, short)
	require.Greater(t, len(was.Funcs), 500)
	require.Equal(t, len(was.Funcs), len(is.Funcs))
	for i, f := range was.Funcs {
		assert.Equal(t, f.Entry, is.Funcs[i].Entry)
		file, line, _ := was.PCToLine(f.Entry)
		assert.NotEmpty(t, f.Name)
		assert.NotEmpty(t, file)
		assert.Positive(t, line)
		_, line, _ = is.PCToLine(f.Entry)
		assert.Empty(t, is.Funcs[i].Name)
		assert.LessOrEqual(t, line, 0)
	}
}

// The stack's size at each place and which of its words are pointers must stay:
// without them the collector can't walk it.
func TestUntracedLeavesWhatTheRuntimeNeeds(t *testing.T) {
	full, short := tracedAndNot(t)
	was, is := needed(t, full), needed(t, short)
	require.Greater(t, len(was), 500)
	assert.Equal(t, was, is)
}

// needed returns of each function what isn't for traces alone, its tables of
// values spelt out.
func needed(t *testing.T, memory []byte) (all [][]byte) {
	table := memory[bytes.Index(memory, tableStart):]
	number := func(at uint64) uint64 { return uint64(binary.LittleEndian.Uint32(table[at:])) }
	functions, values, infos := number(8), number(56), number(64)
	data := binary.LittleEndian.Uint64(memory[parts(t, memory)+320:])
	values32 := func(place uint64) []byte {
		if place == 0 {
			return nil
		}
		return untilTheLast(table[values+place:])
	}
	for i := range functions {
		at := infos + number(infos+8*i+4)
		pcData, ofData := number(at+28), uint64(table[at+43])
		kept := slices.Concat(table[at:at+4], table[at+8:at+16], table[at+40:at+42], values32(number(at+16)))
		for n := range pcData {
			if n == 1 || n > 3 {
				kept = append(kept, values32(number(at+44+4*n))...)
			}
		}
		for n := range ofData {
			if n < 3 || n == 4 || n > 6 {
				place := uint32(number(at + 44 + 4*pcData + 4*n))
				kept = append(binary.LittleEndian.AppendUint32(kept, place), funcData(memory[data:], n, place)...)
			}
		}
		all = append(all, kept)
	}
	return all
}

// untilTheLast returns a table of values but for how far its last value goes.
func untilTheLast(table []byte) []byte {
	for rest := table; ; {
		_, value := binary.Uvarint(rest)
		_, far := binary.Uvarint(rest[value:])
		if rest[value+far] == 0 {
			return table[:len(table)-len(rest)+value]
		}
		rest = rest[value+far:]
	}
}

// A table's last value goes at least as far as it did, and tables that are alike then are one.
func TestTablesAreOneWhereTheirLastLengthAloneIsOther(t *testing.T) {
	from := []byte{0, 2, 1, 32, 5, 0, 2, 1, 32, 9, 0, 2, 1, 32, 0x80, 1, 0, 1, 4, 0}
	k := keeper{from: from, to: []byte{0}, moved: map[uint32]uint32{}, known: map[string]uint32{}}
	first, far := k.table(1), k.table(11)
	assert.Equal(t, first, k.table(6))
	assert.NotEqual(t, first, far)
	assert.NotEqual(t, first, k.table(17))
	assert.Equal(t, []byte{2, 1, 32, 127, 0}, k.to[first:far])
	length, _ := binary.Uvarint(k.to[far+3:])
	assert.GreaterOrEqual(t, length, uint64(128))
	assert.Less(t, len(k.to), len(from))
}

// funcData returns what stands at a place of FuncData, as the runtime reads its kind:
// maps of so many words as bits, records of objects on the stack, where the deferred calls
// stand, or a place in the code (runtime/symtab.go, stackobject.go, panic.go).
func funcData(data []byte, kind uint64, place uint32) []byte {
	if place == ^uint32(0) {
		return nil
	}
	data = data[place:]
	size := 4
	switch kind {
	case 0, 1:
		size = 8 + int(binary.LittleEndian.Uint32(data))*((int(binary.LittleEndian.Uint32(data[4:]))+7)/8)
	case 2:
		size = 8 + 16*int(binary.LittleEndian.Uint64(data))
	case 4:
		_, first := binary.Uvarint(data)
		_, second := binary.Uvarint(data[first:])
		size = first + second
	}
	return data[:size]
}

// What FuncData only a trace asks for is gone, from each place to the next.
func TestUntracedClearsWhatNothingAsksFor(t *testing.T) {
	full, short := tracedAndNot(t)
	from := binary.LittleEndian.Uint64(full[parts(t, full)+320:])
	to := binary.LittleEndian.Uint64(full[parts(t, full)+152:]) // the table that follows
	gone := 0
	for at := from; at < to; at++ {
		if full[at] != short[at] {
			require.Zero(t, short[at])
			gone++
		}
	}
	assert.Greater(t, gone, int(to-from)/5)
}

func TestUntracedRefusesAnotherLayout(t *testing.T) {
	for _, memory := range [][]byte{nil, make([]byte, 1000), {0xfb, 0xff, 0xff, 0xff, 0, 0, 1, 8}, slices.Concat(tableStart, tableStart)} {
		assert.Error(t, untraced(memory, nil))
	}
	assert.Error(t, untraced(slices.Concat(tableStart, bytes.Repeat([]byte{9}, 64)), nil), "a table, and nowhere told of")
}

// What is told of functions that nothing reaches goes, and of the others nothing else.
func TestUntracedForgetsWhatIsNeverReached(t *testing.T) {
	full, short := tracedAndNot(t)
	again := slices.Clone(full)
	reached := all(full)
	for n := range reached {
		reached[n] = n%3 > 0
	}
	require.NoError(t, untraced(again, reached))
	is, want := needed(t, again), needed(t, short)
	for n := range reached {
		if reached[n] {
			assert.Equal(t, want[n], is[n])
		} else {
			assert.Equal(t, bytes.Repeat([]byte{0xff}, len(is[n])-14), is[n][14:], "only where it starts, its arguments and its kind")
		}
	}
}

func TestWithoutTableClearsTheTableAlone(t *testing.T) {
	full, _ := tracedAndNot(t)
	cleared, err := withoutTable(full)
	require.NoError(t, err)
	require.Equal(t, len(full), len(cleared))
	at := bytes.Index(full, tableStart)
	assert.Equal(t, full[:at], cleared[:at])
	first := at + slices.IndexFunc(cleared[at:], func(b byte) bool { return b != 0 })
	assert.Equal(t, full[first:], cleared[first:])
	table, err := functionsIn(full)
	require.NoError(t, err)
	last := at + len(table.bytes) - len(table.info(table.Functions-1))
	assert.Greater(t, first, last)
	assert.Less(t, first, last+1000)
}
