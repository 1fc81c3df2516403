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

// run runs a function that takes and gives nothing, of the instructions that the one at the start
// has, on a memory (WebAssembly core specification 1.0, 4.4).
func run(t *testing.T, body module.Reader, memory []byte) {
	locals := map[byte]uint64{}
	code := module.Reader(body.Bytes())
	for range code.Number() {
		code.Number()
		code.Byte()
	}
	var stack []uint64
	pop := func() uint64 {
		top := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		return top
	}
	push := func(n uint64) { stack = append(stack, n) }
	var loops []module.Reader // what is open: what follows a loop's start, nil for an if
	place := func() (at uint64) { code.Number(); offset := uint64(code.Number()); return pop() + offset }
	for {
		switch op := code.Byte(); op {
		case 0x03:
			code.Byte()
			loops = append(loops, code)
		case 0x04:
			code.Byte()
			loops = append(loops, nil)
			if pop() == 0 {
				skipIf(&code)
				loops = loops[:len(loops)-1]
			}
		case 0x0b:
			if len(loops) == 0 {
				require.Empty(t, stack)
				require.Empty(t, code)
				return
			}
			loops = loops[:len(loops)-1]
		case 0x0d:
			require.Zero(t, code.Number())
			if pop() != 0 {
				code = loops[len(loops)-1]
			}
		case 0x1b:
			asked, second, first := pop(), pop(), pop()
			if asked == 0 {
				first = second
			}
			push(first)
		case 0x20:
			push(locals[code.Byte()])
		case 0x21, 0x22:
			locals[code.Byte()] = stack[len(stack)-1]
			if op == 0x21 {
				pop()
			}
		case 0x28:
			push(uint64(binary.LittleEndian.Uint32(memory[place():])))
		case 0x2c:
			push(uint64(uint32(int8(memory[place()]))))
		case 0x2d:
			push(uint64(memory[place()]))
		case 0x36:
			value := pop()
			binary.LittleEndian.PutUint32(memory[place():], uint32(value))
		case 0x41:
			push(uint64(code.Signed()))
		default:
			b, a := pop(), pop()
			push(worked(t, op, a, b))
		}
	}
}

// skipIf goes on behind an if's end, in which no block begins.
func skipIf(code *module.Reader) {
	for {
		switch op := code.Byte(); op {
		case 0x0b:
			return
		case 0x20, 0x21, 0x22:
			code.Number()
		case 0x28, 0x36:
			code.Number()
			code.Number()
		case 0x41:
			code.Signed()
		}
	}
}

// worked is what an instruction makes of two numbers (4.3.2).
func worked(t *testing.T, op byte, a, b uint64) uint64 {
	truth := map[bool]uint64{true: 1}
	switch op {
	case 0x46:
		return truth[uint32(a) == uint32(b)]
	case 0x47:
		return truth[uint32(a) != uint32(b)]
	case 0x6a:
		return uint64(uint32(a + b))
	case 0x6b:
		return uint64(uint32(a - b))
	case 0x74:
		return uint64(uint32(a) << (b & 31))
	case 0x71:
		return uint64(uint32(a & b))
	case 0x76:
		return uint64(uint32(a) >> (b & 31))
	}
	require.Fail(t, "an instruction that the start hasn't", "%#x", op)
	return 0
}

// What the module runs as it starts makes of columns the table as it was; where they stand nothing did.
func TestTheStartWritesTheTableAsItWas(t *testing.T) {
	_, full := tracedAndNot(t)
	packed := slices.Clone(full)
	c, err := columned(packed)
	require.NoError(t, err)
	o, err := inOrder(packed)
	require.NoError(t, err)
	table, err := functionsIn(full)
	require.NoError(t, err)
	require.False(t, bytes.Equal(full[len(full)-len(table.info(0)):], packed[len(full)-len(table.info(0)):]))
	n, err := nearTogether(packed)
	require.NoError(t, err)
	run(t, o.code(c, n), packed)
	from, to := c.all[0].from, c.out+4*c.count
	names := len(full) - len(table.bytes) + int(table.Names)
	assert.Greater(t, from, names)
	assert.Zero(t, packed[names], "the name of functions without one")
	assert.Equal(t, make([]byte, to-from), full[from:to])
	clear(packed[from:to])
	_, err = nearTogether(full)
	require.NoError(t, err)
	clear(packed[n.from:n.to])
	assert.True(t, bytes.Equal(full, packed))
}

func TestTheStartRefusesAnotherOrder(t *testing.T) {
	full, _ := tracedAndNot(t)
	table, err := functionsIn(full)
	require.NoError(t, err)
	table.info(7)[0]++
	_, err = inOrder(full)
	assert.Error(t, err)
	_, err = inOrder(nil)
	assert.Error(t, err)
	_, err = columned(nil)
	assert.Error(t, err)
}
