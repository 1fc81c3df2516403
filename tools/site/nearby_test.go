package site

import (
	"bytes"
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/module"
)

// parts returns where a memory has what Go keeps of a program's parts.
func parts(t *testing.T, memory []byte) uint64 {
	table, err := functionsIn(memory)
	require.NoError(t, err)
	from := binary.LittleEndian.AppendUint64(nil, uint64(len(memory)-len(table.bytes)))
	at := bytes.LastIndex(memory, binary.LittleEndian.AppendUint64(from, uint64(len(memory)-len(table.bytes))+table.Names))
	require.Positive(t, at)
	return uint64(at)
}

// found looks a place in the code up as runtime.findfunc does, and says how many
// functions it went by.
func found(t *testing.T, memory []byte, place uint64) (info uint64, passed int) {
	table, err := functionsIn(memory)
	require.NoError(t, err)
	at := parts(t, memory)
	x := place - binary.LittleEndian.Uint64(memory[at+160:])
	bucket := memory[binary.LittleEndian.Uint64(memory[at+152:])+x/4096*20:]
	n := uint64(binary.LittleEndian.Uint32(bucket)) + uint64(bucket[4+x%4096/256])
	entry := func(n uint64) (entry, info uint64) {
		both := binary.LittleEndian.Uint64(table.bytes[table.ByPlaces+8*n:])
		return both & 0xffffffff, both >> 32
	}
	for {
		if next, _ := entry(n + 1); next > place>>16 {
			_, info := entry(n)
			return info, passed
		}
		n++
		passed++
	}
}

func TestNearTogetherFindsTheSameFunctions(t *testing.T) {
	full, _ := tracedAndNot(t)
	near := slices.Clone(full)
	n, err := nearTogether(near)
	require.NoError(t, err)
	require.Equal(t, make([]byte, n.to-n.from), near[n.from:n.to])
	body := append([]byte{1, startLocals32, 0x7f}, n.writing()...)
	run(t, module.AppendBytes(nil, append(body, 0x0b)), near)
	table, err := functionsIn(full)
	require.NoError(t, err)
	for n := range table.Functions - 1 { // the last has no places but those that it needs
		for _, part := range []uint64{0, 1, 300, 5000, 65535} {
			place := (0x1000+n)<<16 + part
			want, _ := found(t, full, place)
			is, passed := found(t, near, place)
			require.Equal(t, want, is, "function %d, part %d", n, part)
			require.Less(t, passed, 64)
		}
	}
}

func TestNearTogetherRefusesAnotherLayout(t *testing.T) {
	full, _ := tracedAndNot(t)
	_, err := nearTogether(nil)
	assert.Error(t, err)
	moved := slices.Clone(full)
	binary.LittleEndian.PutUint32(moved[binary.LittleEndian.Uint64(moved[parts(t, full)+moduleNearby:])+20*20:], 0)
	_, err = nearTogether(moved)
	assert.Error(t, err)
	full[parts(t, full)+moduleFirst]++
	_, err = nearTogether(full)
	assert.Error(t, err)
}
