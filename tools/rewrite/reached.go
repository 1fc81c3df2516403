package rewrite

import (
	"encoding/binary"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// never are the functions of Go's runtime that are called only if something is
// that nothing in a page can bring about; each call of them stands behind an if.
// A name that ends in a dot is that of a type, whose exported methods are meant.
// What is called by these alone goes with them. They trap.
var never = []string{
	// trace.enabled is set by runtime.StartTrace, which nothing calls
	"runtime.traceAcquireEnabled", "runtime.traceLocker.", "runtime.traceRelease", "runtime.traceAdvance", "runtime.traceReader",
	// goroutineProfile.active is set by runtime/pprof, which nothing imports
	"runtime.tryRecordGoroutineProfile", "runtime.tryRecordGoroutineProfileWB",
	// variables of GODEBUG that are 0 unless the environment says else, which the page leaves empty
	"runtime.checkFinalizersAndCleanups", "runtime.printScavTrace", "runtime.runCheckmark", "runtime.schedtrace", "runtime.setCheckmark",
	// the rates of profiles of blocks and mutexes are 0 until they are asked for
	"runtime.blockevent", "runtime.saveblockevent",
	// WebAssembly has one thread, to which nothing is locked (runtime.dolockOSThread), and one processor, which is never idle
	"runtime.handoffp", "runtime.mexit", "runtime.newm", "runtime.startlockedm", "runtime.startm", "runtime.stoplockedm",
	// the heap is broken: what it tells goes before a throw
	"runtime.__mspan_.reportZombies",
	// cleanups are made by runtime.AddCleanup, which nothing calls
	"runtime.__cleanupQueue_.enqueue",
	// no figure is written in hexadecimals (core/house_test.go)
	"internal_strconv.fmtX",
}

// silent are the functions that do nothing here but look, and return at once: those that write a
// trace into the browser's log when the program has failed and said how, for
// which there are no names left; that take down for a profile, which nothing reads, what was allocated as the program starts; that match the types of several modules, of which there is
// one; and that make sure of what the linker and the machine do as the program starts.
var silent = []string{
	"runtime.typelinksinit", "runtime.moduledataverify1", "runtime.check", "runtime.dumpgstatus",
	"runtime.mProf_Malloc",
	"runtime.goroutineheader", "runtime.traceback1", "runtime.tracebackHexdump", "runtime.tracebacksomeothers", "runtime.hexdumpWords", "runtime.gcDumpObject",
	// what a panic was called with, of a kind of one's own that is no error
	"runtime.printanycustomtype",
	// options of the processor by GODEBUG
	"internal_cpu.processOptions",
}

// named says whether a function's name is in a list.
func named(list []string, name string) bool {
	for _, each := range list {
		rest, ok := strings.CutPrefix(name, each)
		if ok && (rest == "" || strings.HasSuffix(each, ".") && rest[0] >= 'A' && rest[0] <= 'Z') {
			return true
		}
	}
	return false
}

// missing returns an error if a name in the lists is no function's: another Go's
// runtime, of which it must be looked at anew what is never called.
func missing(names map[int]string) error {
	for _, list := range [][]string{never, silent} {
		for _, name := range list {
			found := false
			for _, each := range names {
				found = found || named([]string{name}, each)
			}
			if !found {
				return fmt.Errorf("no %s in Go’s runtime: see which of its functions are never called", name)
			}
		}
	}
	return nil
}

// firstFunction is the place in the table of a program's first function
// (cmd/link/internal/wasm.funcValueOffset).
const firstFunction = 0x1000

// reached says of each function whether something calls it, or could: what is
// exported, what a word of the data or a constant may stand for as a place in the
// code, and the methods that a value in an interface may be asked for.
func (m Module) reached(all []function) []bool {
	if reached := m.reachedBut(equals, all); !m.compares(all, reached) {
		return reached
	}
	return m.reachedBut("-", all)
}

// equals begins the names of the functions that compare two structs. Go makes one of
// every struct that it allocates, for its type to name: of 6 kB of brotli, that is called
// only as values in interfaces are compared, or the keys of a map.
const equals = "type_.eq."

// compares says whether something reached does so: it compares two interfaces, or
// hashes a key that holds other than plain words.
func (m Module) compares(all []function, reached []bool) bool {
	for n, f := range all {
		name := m.Names[m.Imports+n]
		if !reached[n] || slices.Contains(harmless, name) {
			continue
		}
		if strings.HasPrefix(name, "type_.hash.") || name == "runtime.interhash" || name == "runtime.nilinterhash" {
			return true
		}
		for _, i := range f.code {
			if to := m.Names[i.n]; i.op == opCall && (to == "runtime.efaceeq" || to == "runtime.ifaceeq") {
				return true
			}
		}
	}
	return false
}

// harmless are the functions that compare interfaces and need no function of a struct for
// it: what a map with interfaces as keys would call, after a hash, and what
// compares an error with one of its own that is a number.
var harmless = []string{"runtime.interequal", "runtime.nilinterequal", "internal_strconv.ParseInt"}

// reachedBut takes functions whose name begins so for reached only where they are called
// by name.
func (m Module) reachedBut(prefix string, all []function) []bool {
	reached := make([]bool, len(all))
	var next []int
	visit := func(n int) {
		if n >= 0 && n < len(all) && !reached[n] && !named(never, m.Names[m.Imports+n]) {
			reached[n] = true
			next = append(next, n)
		}
	}
	known := func(n int) {
		if !strings.HasPrefix(m.Names[m.Imports+n], prefix) {
			visit(n)
		}
	}
	literals := m.literals()
	place := func(at uint64) {
		if n, ok := functionAt(at); ok {
			known(n)
		}
		if n, ok := literals[at]; ok {
			visit(n)
		}
	}
	for _, f := range m.Exports {
		visit(f - m.Imports)
	}
	for _, n := range m.Methods {
		known(n - firstFunction)
	}
	for at := 0; at+8 <= len(m.Data); at += 4 {
		if _, ok := literals[uint64(at)]; !ok {
			place(binary.LittleEndian.Uint64(m.Data[at:]))
		}
	}
	for len(next) > 0 {
		n := next[0]
		next = next[1:]
		if named(silent, m.Names[m.Imports+n]) {
			continue
		}
		for _, i := range all[n].code {
			switch i.op {
			case opCall:
				visit(i.n - m.Imports)
			case opI32Const, opI64Const:
				place(uint64(i.n))
			}
		}
	}
	return reached
}

// functionAt returns the number of the function that a place in the code is the start of.
func functionAt(at uint64) (n int, ok bool) {
	return int(at>>partBits) - firstFunction, at%(1<<partBits) == 0 && at>>partBits >= firstFunction
}

// literals returns the words of the data that hold functions written inside another,
// which nothing of theirs but a word's own place leads to: what would make a
// value of one has that, and no interface's table holds one.
func (m Module) literals() map[uint64]int {
	literals := map[uint64]int{}
	for at := 0; at+8 <= len(m.Data); at += 8 {
		if n, ok := functionAt(binary.LittleEndian.Uint64(m.Data[at:])); ok && literal.MatchString(m.Names[m.Imports+n]) {
			literals[uint64(at)] = n
		}
	}
	return literals
}

// literal is how the compiler names such a function: by that which it is in, and a number.
var literal = regexp.MustCompile(`\.func[0-9]+$`)

// trap is in the place of a function that is never called, quiet of one that
// returns at once.
var (
	trap  = function{[]byte{0}, []instruction{plain(opUnreachable), plain(opEnd)}}
	quiet = function{[]byte{1, 1, typeI32}, append(entry[:len(entry):len(entry)],
		plain(opLocalGet, localSP), plain(opI32Const, 8), plain(opI32Add), plain(opLocalTee, localSP), plain(opGlobalSet, globalSP),
		plain(opI32Const, 0), plain(opReturn), plain(opEnd))}
)
