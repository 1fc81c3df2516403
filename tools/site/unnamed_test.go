package site

import (
	"bytes"
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/module"
	"pintwelve/tools/rewrite"
)

// typed is a memory with types, read as Go's runtime does.
type typed []byte

func (m typed) word(at int) int  { return int(binary.LittleEndian.Uint64(m[at:])) }
func (m typed) half(at int) int  { return int(int32(binary.LittleEndian.Uint32(m[at:]))) }
func (m typed) short(at int) int { return int(binary.LittleEndian.Uint16(m[at:])) }

// named reads a name (internal/abi.Name): whether it is exported, its words, and its package.
func (m typed) named(from, at int) (exported bool, text, of string) {
	if at == 0 {
		return false, "", ""
	}
	size, n := binary.Uvarint(m[at+1:])
	text = string(m[at+1+n:][:size])
	if m[at]&4 != 0 {
		_, of, _ = m.named(from, from+m.half(at+1+n+int(size)))
	}
	return m[at]&1 != 0, text, of
}

// own is where what is told of a type's methods stands (abi.Type.Uncommon).
func (m typed) own(at int) int {
	sizes := map[byte]int{17: 72, 18: 64, 19: 56, 20: 80, 21: 112, 22: 56, 23: 56, 25: 80}
	return at + max(48, sizes[m[at+23]])
}

// table is what runtime.itabInit makes of an interface and a type: the places of methods
// in the code, nil if one is missing.
func (m typed) table(from, inter, of int) (methods []int) {
	if m[of+20]&1 == 0 {
		return nil
	}
	own := m.own(of)
	j, count := 0, m.short(own+4)
	for k := range m.word(inter + 64) {
		asked := m.word(inter+56) + 8*k
		_, name, pkg := m.named(from, from+m.half(asked))
		if pkg == "" && m.word(inter+48) != 0 {
			_, pkg, _ = m.named(from, m.word(inter+48))
		}
		found := false
		for ; j < count && !found; j++ {
			at := own + m.half(own+8) + 16*j
			if m.half(at+4) != m.half(asked+4) || m.half(at) == 0 {
				continue
			}
			exported, its, itsPkg := m.named(from, from+m.half(at))
			if itsPkg == "" && m.half(own) != 0 {
				_, itsPkg, _ = m.named(from, from+m.half(own))
			}
			if its == name && (exported || itsPkg == pkg) {
				methods = append(methods, m.half(at+8))
				found = true
			}
		}
		if !found {
			return nil
		}
	}
	return methods
}

// fields is how runtime.typehash goes through a value that is a key in an interface, or
// runtime.buildGCMask where its pointers are: kinds and where they stand.
func (m typed) fields(at, offset int, mask bool) (all []int) {
	if !mask && m[at+20]&8 != 0 {
		return []int{offset, m.word(at)}
	}
	switch m[at+23] {
	case 17:
		return append(m.fields(m.word(at+48), offset, mask), m.word(at+64))
	case 25:
		for n := range m.word(at + 64) {
			field := m.word(at+56) + 24*n
			if _, name, _ := m.named(0, m.word(field)); mask || name != "_" {
				all = append(all, m.fields(m.word(field+8), offset+m.word(field+16), mask)...)
			}
		}
		return all
	}
	return []int{offset, int(m[at+23]), m.word(at), m.word(at + 8)}
}

// typedCore returns the core's memory before and after unnamed, its types before, and what the code
// has for constants.
func typedCore(t *testing.T) (was, is typed, g *goTypes, constants map[int]bool) {
	onKnownGo(t)
	program, err := CompileCore("../..", "./wasm")
	require.NoError(t, err)
	about, _, err := readModule(program)
	require.NoError(t, err)
	memory := data(t, program)
	for rest := module.Reader(program[module.HeaderSize:]); len(rest) > 0; {
		if kind, section := rest.Byte(), rest.Bytes(); kind == module.Code {
			constants = rewrite.Constants(section)
		}
	}
	is = slices.Clone(memory)
	methods, err := unnamed(is, constants, about.Names)
	require.NoError(t, err)
	require.ElementsMatch(t, about.Methods, methods)
	table, err := functionsIn(memory)
	require.NoError(t, err)
	m, err := table.module(memory)
	require.NoError(t, err)
	g, err = typesIn(memory, m, constants)
	require.NoError(t, err)
	for n := range m.word(368) {
		link := int(m.word(296)) + typed(memory).half(int(m.word(360))+4*int(n))
		require.Positive(t, g.all[link].end, "a type that the linker lists")
	}
	return memory, is, g, constants
}

func TestUnnamedTypesAreReadAsBefore(t *testing.T) {
	was, is, g, constants := typedCore(t)
	require.Greater(t, len(g.all), 1000)
	switched := map[uint32]bool{}
	for c := range constants {
		switched[uint32(c)] = true
	}
	tables, walks, hashes := 0, 0, 0
	for at := range g.all {
		require.Equal(t, was[at:at+16], is[at:at+16], "sizes")
		require.Equal(t, was[at+20]&^2, is[at+20], "flags")
		require.Equal(t, was[at+21:at+40], is[at+21:at+40], "alignment, kind, what compares it, where its pointers are")
		if hash := was[at+16 : at+20]; switched[binary.LittleEndian.Uint32(hash)] {
			hashes++
			require.Equal(t, hash, is[at+16:at+20])
		}
		if comparable, kind := was.word(at+24) != 0, was[at+23]; kind == 17 || kind == 25 {
			if mask := was[at+20]&16 != 0; mask || comparable {
				walks++
				require.Equal(t, was.fields(at, 0, mask), is.fields(at, 0, mask))
			}
		}
		switch was[at+23] {
		case 17, 18, 19, 21, 22, 23:
			require.Equal(t, was[at+48:was.own(at)], is[at+48:was.own(at)], "what it is made of")
		case 20:
			for of := range g.all {
				want := was.table(g.from, at, of)
				tables += len(want)
				require.Equal(t, want, is.table(g.from, at, of))
			}
		}
	}
	assert.Greater(t, tables, 50)
	assert.Greater(t, walks, 50)
	assert.Greater(t, hashes, 10)
}

// Nothing but types, names, what is told of them to package reflect, and types' hashes in
// tables of methods is touched.
func TestUnnamedTouchesTypesAlone(t *testing.T) {
	was, is, g, _ := typedCore(t)
	may := slices.Repeat([]bool{false}, len(was))
	allow := func(from, size int) {
		for at := from; at < from+size; at++ {
			may[at] = true
		}
	}
	name := func(at int) {
		if _, end := g.name(at); end > 0 {
			allow(at, end-at)
		}
	}
	for at, ty := range g.all {
		allow(at, was.own(at)-at+16*int(was[at+20]&1))
		name(g.from + was.half(at+40))
		for _, m := range ty.methods {
			allow(m.at, 8)
			name(m.name)
			if was[at+23] != 20 {
				allow(m.at, 16)
			}
		}
		if was[at+20]&1 != 0 {
			name(g.from + was.half(was.own(at)))
		}
		if was[at+23] == 25 {
			name(was.word(at + 48))
			allow(was.word(at+56), 24*was.word(at+64))
			for n := range was.word(at + 64) {
				name(was.word(was.word(at+56) + 24*n))
			}
		}
	}
	list := int(parts(t, was)) + 360
	allow(was.word(list), 4*was.word(list+8))
	allow(list, 24)
	changed := 0
	for at := range was {
		if was[at] == is[at] {
			continue
		}
		changed++
		table := at&^7 - 16
		require.True(t, may[at] || at&7 < 4 && g.all[was.word(table)].kind == 20 && g.all[was.word(table+8)].end > 0, at)
	}
	assert.Greater(t, changed, 80000)
	assert.True(t, bytes.Contains(was, []byte("*truing.")))
	assert.False(t, bytes.Contains(is, []byte("*truing.")))
}

func TestUnnamedRefuses(t *testing.T) {
	full, _ := tracedAndNot(t)
	_, err := unnamed(nil, nil, nil)
	assert.Error(t, err)
	_, err = unnamed(full, nil, map[int]string{1: "reflect.Value.Call"})
	assert.ErrorContains(t, err, "reflect")
	_, err = unnamed(full, nil, map[int]string{1: "reflective.Call"})
	assert.NoError(t, err)
}
