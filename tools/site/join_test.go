package site

import (
	"bytes"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/module"
)

// Seed 4712.
func TestCutSegmentsMakeTheSameMemory(t *testing.T) {
	rng := rand.New(rand.NewSource(4712))
	for range 200 {
		var all []segment
		at := rng.Intn(100)
		for range 1 + rng.Intn(30) {
			s := segment{at, make([]byte, 1+rng.Intn(20))}
			rng.Read(s.bytes)
			s.bytes[len(s.bytes)-1] = 1
			all = append(all, s)
			at += len(s.bytes) + rng.Intn([...]int{1, 20, 256, 257, 1000}[rng.Intn(5)]+1)
		}
		want := memory(all)
		long := segments(written(cut(want)))
		assert.True(t, bytes.Equal(want, memory(long)))
		assert.LessOrEqual(t, len(long), len(all))
	}
	assert.Empty(t, cut(make([]byte, 1000)))
}

func TestShortenedProgramDiffersInItsCodeAndDataAlone(t *testing.T) {
	onKnownGo(t)
	program, err := CompileCore("../..", "./tools/empty")
	require.NoError(t, err)
	short, err := shortened(program)
	require.NoError(t, err)
	was, is := module.Reader(program[module.HeaderSize:]), module.Reader(short[module.HeaderSize:])
	for len(was) > 0 {
		kind, before := was.Byte(), was.Bytes()
		if kind == module.Custom && isNames(before) {
			continue
		}
		if kind == module.Element {
			require.Equal(t, byte(module.Start), is.Byte())
			is.Bytes()
		}
		require.Equal(t, kind, is.Byte())
		after := is.Bytes()
		switch kind {
		case module.Function:
			assert.Equal(t, len(before)+1, len(after))
		case module.Code:
			assert.Less(t, len(after), len(before)*7/10)
		case module.Data:
			assert.Less(t, len(segments(after)), len(segments(before))/100)
		default:
			require.True(t, bytes.Equal(before, after))
		}
	}
	assert.Empty(t, is)
}

func TestShortenedRefusesWhatIsNoModule(t *testing.T) {
	for _, program := range [][]byte{nil, []byte("no module at all"), {0, 'a', 's', 'm', 1, 0, 0, 0, module.Data, 3, 1, 1, 0}} {
		_, err := shortened(program)
		assert.Error(t, err)
	}
}

// What a type's method table alone leads to is reached where an interface asks for it: of all that
// isn't, nothing is such a method, by which a pointer to the value is taken, or the core's but
// for what would compare structs, as nothing does.
func TestUnreachedIsTheLibrarysAlone(t *testing.T) {
	onKnownGo(t)
	program, err := CompileCore("../..", "./wasm")
	require.NoError(t, err)
	about, _, err := readModule(program)
	require.NoError(t, err)
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		kind, section := rest.Byte(), rest.Bytes()
		if kind != module.Code {
			continue
		}
		_, reached, err := about.Code(section)
		require.NoError(t, err)
		unreached, compare := 0, 0
		for n, is := range reached {
			if is {
				continue
			}
			name := about.Names[about.Imports+n]
			if strings.HasPrefix(name, "type_.eq.") {
				compare++
				continue
			}
			unreached++
			assert.Regexp(t, `^(runtime\.|_rt0_wasm_js$|internal_|syscall_js\.)`, name)
			assert.NotRegexp(t, `\.__\w+_\.(Error|String|RuntimeError)$`, name)
		}
		assert.Greater(t, unreached, 50)
		assert.Less(t, unreached, 300)
		assert.Greater(t, compare, 100, "core code compares values in interfaces: tell them by their types")
	}
}
