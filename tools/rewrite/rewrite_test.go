package rewrite

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/module"
)

// compiled returns the code of an empty Go program, which is its runtime, and how
// many functions it imports.
func compiled(t *testing.T) (section []byte, imports int) {
	out := filepath.Join(t.TempDir(), "empty.wasm")
	cmd := exec.Command("go", "build", "-o", out, "../empty")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	program, err := os.ReadFile(out)
	require.NoError(t, err)
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		kind, content := rest.Byte(), rest.Bytes()
		switch kind {
		case module.Import:
			r := module.Reader(content)
			imports = r.Number()
		case module.Code:
			return content, imports
		}
	}
	require.Fail(t, "no code")
	return nil, 0
}

func functionsOf(section module.Reader) []function {
	all := make([]function, section.Number())
	for n := range all {
		all[n] = taken(section.Bytes())
	}
	return all
}

func TestParsedIsWrittenAsItWas(t *testing.T) {
	section, _ := compiled(t)
	rest := module.Reader(section)
	for range rest.Number() {
		body := rest.Bytes()
		f := taken(body)
		again := append(slices.Clone(f.locals), written(f.code)...)
		require.Equal(t, f, taken(again))
		require.LessOrEqual(t, len(again), len(body))
	}
}

// What each function of Go's runtime does is the same, from each part that it can
// be entered at, whichever way its conditions go.
func TestRewrittenFunctionsDoTheSame(t *testing.T) {
	section, imports := compiled(t)
	was := functionsOf(section)
	short := Code(section, imports)
	is := functionsOf(short)
	require.Equal(t, len(was), len(is))
	assert.Less(t, len(short), len(section)*8/10)
	none := func(int) bool { return false }
	pushes := func(f int) bool { return f >= imports && was[f-imports].ofGo() }
	events := 0
	for n := range was {
		if !was[n].ofGo() {
			assert.Equal(t, was[n], is[n])
			continue
		}
		for seed := range uint64(2) {
			for part := range partsOf(was[n].code) {
				before := run(was[n].code, part, seed, none)
				require.Equal(t, before, run(is[n].code, part, seed, pushes), "function %d at part %d, seed %d", n, part, seed)
				events += len(before)
			}
		}
	}
	assert.Greater(t, events, 100000)
}

// partsOf returns how many parts a function can be entered at.
func partsOf(all []instruction) int {
	for _, i := range all {
		if i.op == opBrTable {
			return len(i.table)
		}
	}
	return 1
}

// A function that is handed where to go on begins as one whose caller wrote that.
func TestPushingWritesWhereToGoOn(t *testing.T) {
	const back = 4711<<partBits | 12
	f := function{locals: []byte{1, 1, typeI32}, code: slices.Concat(entry, []instruction{plain(opI32Const, 0), plain(opReturn), plain(opEnd)})}
	none := func(int) bool { return false }
	told := run(f.pushing().code, -back, 1, none)
	require.Len(t, told, 2)
	assert.Contains(t, told[0], "store")
	assert.Contains(t, told[0], "-8")
	assert.Contains(t, told[0], "308740108") // back
	assert.Equal(t, run(f.code, 0, 1, none), run(f.pushing().code, 0, 1, none))
}

func TestCodeThatGoDoesntWritePanics(t *testing.T) {
	for _, section := range [][]byte{{1}, {1, 2, 0, 0x12}, {1, 3, 0, opEnd, opEnd}, {1, 4, 0, opPrefix, 9, opEnd}} {
		assert.Panics(t, func() { Code(section, 0) })
	}
}
