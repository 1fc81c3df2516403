package site

import (
	"bytes"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/module"
)

// memory is what segments make of a memory of zeros.
func memory(all []segment, size int) []byte {
	m := make([]byte, size)
	for _, s := range all {
		copy(m[s.at:], s.bytes)
	}
	return m
}

// Seed 4712.
func TestJoinedSegmentsMakeTheSameMemory(t *testing.T) {
	rng := rand.New(rand.NewSource(4712))
	for range 200 {
		var all []segment
		at := rng.Intn(100)
		for range rng.Intn(30) {
			s := segment{at, make([]byte, 1+rng.Intn(20))}
			rng.Read(s.bytes)
			all = append(all, s)
			at += len(s.bytes) + rng.Intn([...]int{1, 20, 256, 257, 1000}[rng.Intn(5)]+1)
		}
		want := memory(all, at+1)
		long := segments(written(join(segments(written(all)))))
		assert.True(t, bytes.Equal(want, memory(long, at+1)))
		assert.LessOrEqual(t, len(long), len(all))
	}
}

func TestJoinedProgramDiffersInItsDataAlone(t *testing.T) {
	program, err := Compile("../..", "./tools/empty")
	require.NoError(t, err)
	short, err := joined(program)
	require.NoError(t, err)
	was, is := module.Reader(program[module.HeaderSize:]), module.Reader(short[module.HeaderSize:])
	for len(was) > 0 {
		kind := was.Byte()
		require.Equal(t, kind, is.Byte())
		before, after := was.Bytes(), is.Bytes()
		if kind != module.Data {
			require.True(t, bytes.Equal(before, after))
			continue
		}
		cut, long := segments(before), segments(after)
		assert.Less(t, len(long), len(cut)/100)
		last := cut[len(cut)-1]
		size := last.at + len(last.bytes)
		assert.True(t, bytes.Equal(memory(cut, size), memory(long, size)))
	}
	assert.Empty(t, is)
}

func TestJoinedRefusesWhatIsNoModule(t *testing.T) {
	for _, program := range [][]byte{nil, []byte("no module at all"), {0, 'a', 's', 'm', 1, 0, 0, 0, module.Data, 3, 1, 1, 0}} {
		_, err := joined(program)
		assert.Error(t, err)
	}
}
