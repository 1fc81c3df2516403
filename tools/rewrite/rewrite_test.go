package rewrite

import (
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/module"
)

// compiled returns the code of an empty Go program, which is its runtime, and what
// it is rewritten by: each function could be called.
func compiled(t *testing.T) (section module.Reader, about Module) {
	if !Knows(runtime.Version()) {
		t.Skipf("%s writes other code than %s, by which this goes", runtime.Version(), Go)
	}
	out := filepath.Join(t.TempDir(), "empty.wasm")
	cmd := exec.Command("go", "build", "-o", out, "../empty")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	program, err := os.ReadFile(out)
	require.NoError(t, err)
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		kind, content := rest.Byte(), module.Reader(rest.Bytes())
		switch kind {
		case module.Import:
			about.Imports = content.Number()
		case module.Code:
			section = content
			for n := range content.Number() {
				about.Data = binary.LittleEndian.AppendUint64(about.Data, uint64(firstFunction+n)<<partBits)
			}
		case module.Custom:
			if name := content; string(name.Bytes()) == "name" {
				about.Names = module.FunctionNames(content)
			}
		}
	}
	return section, about
}

func functionsOf(section module.Reader) []function {
	all := make([]function, section.Number())
	for n := range all {
		all[n] = taken(section.Bytes())
	}
	return all
}

func TestParsedIsWrittenAsItWas(t *testing.T) {
	rest, _ := compiled(t)
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
	section, about := compiled(t)
	was := functionsOf(section)
	short, reached, err := about.Code(section)
	require.NoError(t, err)
	is := functionsOf(short)
	require.Equal(t, len(was), len(is))
	assert.Less(t, len(short), len(section)*8/10)
	none := func(int) bool { return false }
	pushes := func(f int) bool { return f >= about.Imports && was[f-about.Imports].ofGo() }
	events := 0
	for n := range was {
		name := about.Names[about.Imports+n]
		switch {
		case !reached[n]:
			require.True(t, named(never, name) || strings.HasPrefix(name, equals) || literal.MatchString(name), name)
			require.Equal(t, trap, is[n])
			continue
		case named(silent, name):
			continue
		case !was[n].ofGo():
			require.Equal(t, was[n], is[n])
			continue
		}
		for seed := range uint64(2) {
			for part := range partsOf(was[n].code) {
				before := run(was[n].code, part, seed, none)
				require.Equal(t, before, run(is[n].code, part, seed, pushes), "%s at part %d, seed %d", name, part, seed)
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

// A silent function does nothing but give back its place in the stack.
func TestQuietReturns(t *testing.T) {
	none := func(int) bool { return false }
	want := function{quiet.locals, slices.Concat(entry, returning)}
	assert.Equal(t, run(want.code, 0, 1, none), run(quiet.pushing().code, 0, 1, none))
}

// returning is how Go's compiler has a function without a frame return.
var returning = []instruction{
	plain(opLocalGet, localSP), plain(opI32Const, 8), plain(opI32Add), plain(opLocalTee, localSP), plain(opGlobalSet, globalSP),
	plain(opI32Const, 0), plain(opReturn), plain(opEnd),
}

func TestReachedIsWhatSomethingCalls(t *testing.T) {
	calls := func(to ...int) (f function) {
		for _, n := range to {
			f.code = append(f.code, plain(opCall, n))
		}
		f.code = append(f.code, plain(opEnd))
		return f
	}
	const imports = 2
	all := []function{
		calls(3, 4), // 2, exported
		calls(0),    // 3, called
		calls(5),    // 4, never called, though 2 has a call of it
		calls(),     // 5, called by 4 alone
		calls(2),    // 6, nobody knows of it
		calls(),     // 7, in the data as a place in the code
		calls(),     // 8, a method that an interface asks for
		calls(),     // 9, in the data; knows of 10 and 12, and of the word that holds 15
		calls(),     // 10
		calls(11),   // 11, calls itself alone
		calls(13),   // 12, silent, called by 9
		calls(),     // 13, called by 12 alone
		calls(),     // 14, written inside another, in a word of the data that nothing knows of
		calls(),     // 15, the same, in one that 9 knows of
		calls(),     // 16, the same, in one that another word of the data is the place of
	}
	all[7].code = []instruction{plain(opI64Const, (firstFunction+8)<<partBits), plain(opCall, 12), plain(opI64Const, 24), plain(opEnd)}
	var data []byte
	for _, word := range []uint64{(firstFunction + 5) << partBits, (firstFunction + 7) << partBits, (firstFunction + 12) << partBits,
		(firstFunction + 13) << partBits, (firstFunction + 14) << partBits, 32, (firstFunction + 6) << 32} {
		data = binary.LittleEndian.AppendUint64(data, word)
	}
	m := Module{Imports: imports, Exports: []int{2}, Methods: []int{firstFunction + 6}, Data: data, Names: map[int]string{
		4: "runtime.traceLocker.GoStart", 12: "runtime.traceback1", 14: "a.f.func1", 15: "a.f.func2", 16: "a.f.func3.func10"}}
	//                    2     3     4      5      6      7     8     9     10    11     12    13     14     15    16
	assert.Equal(t, []bool{true, true, false, false, false, true, true, true, true, false, true, false, false, true, true}, m.reached(all))
}

// A function that compares structs is reached by its call, and by the data once something
// compares interfaces, of which only those count that are known to compare no structs.
func TestStructsAreComparedOnlyWhereInterfacesAre(t *testing.T) {
	const structs, others, hash = "type_.eq.a.B", "type_.eq.a.C", "type_.hash.a.D"
	data := binary.LittleEndian.AppendUint64(nil, (firstFunction+1)<<partBits)
	data = binary.LittleEndian.AppendUint64(data, (firstFunction+4)<<partBits)
	for _, row := range []struct {
		what    string
		names   map[int]string
		reached []bool
	}{
		{"nothing compares", map[int]string{0: "a.f", 1: structs, 2: others, 3: "a.g", 4: "a.h"}, []bool{true, false, true, true, true}},
		{"something does", map[int]string{0: "a.f", 1: structs, 2: others, 3: "runtime.efaceeq", 4: "a.h"}, []bool{true, true, true, true, true}},
		{"a number is compared", map[int]string{0: "internal_strconv.ParseInt", 1: structs, 2: others, 3: "runtime.ifaceeq", 4: "a.h"}, []bool{true, false, true, true, true}},
		{"keys are", map[int]string{0: "a.f", 1: structs, 2: others, 3: "a.g", 4: hash}, []bool{true, true, true, true, true}},
	} {
		all := make([]function, 5)
		all[0].code = []instruction{plain(opCall, 2), plain(opCall, 3)}
		m := Module{Exports: []int{0}, Data: data, Names: row.names}
		assert.Equal(t, row.reached, m.reached(all), row.what)
	}
}

func TestNamesOfAnotherRuntimeAreRefused(t *testing.T) {
	section, about := compiled(t)
	_, _, err := Module{Imports: about.Imports}.Code(section)
	assert.ErrorContains(t, err, "runtime.traceAcquireEnabled")
	assert.True(t, named(never, "runtime.traceLocker.GoStart"))
	for _, live := range []string{"runtime.traceLocker.ok", "runtime.traceLocker", "runtime.traceback", "runtime.schedtrace.func1", ""} {
		assert.False(t, named(never, live), live)
		assert.False(t, named(silent, live), live)
	}
}

func TestCodeThatGoDoesntWritePanics(t *testing.T) {
	for _, code := range [][]byte{{1}, {2, 0, 0x12}, {3, 0, opEnd, opEnd}, {4, 0, opPrefix, 9, opEnd}} {
		assert.Panics(t, func() { taken(code[1:]) }, "%x", code)
	}
}

func TestKnowsOneRelease(t *testing.T) {
	for version, known := range map[string]bool{
		"go1.26": true, "go1.26.8": true, "go1.26-custom": true, "go1.25.9": false, "go1.27": false, "go1.260": false, "devel go1.26": false, "": false,
	} {
		assert.Equal(t, known, Knows(version), version)
	}
}

func TestConstantsAreThoseOfAllFunctions(t *testing.T) {
	body := func(all ...instruction) []byte { return append([]byte{0}, written(append(all, plain(opEnd)))...) }
	section := module.AppendNumber(nil, 2)
	section = module.AppendBytes(section, body(plain(opI32Const, -7), plain(opDrop)))
	section = module.AppendBytes(section, body(plain(opI64Const, 70144), plain(opFirstLoad, 3, 12), plain(opLocalSet, 5)))
	assert.Equal(t, map[int]bool{-7: true, 70144: true}, Constants(section))
}
