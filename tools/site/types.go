package site

import (
	"encoding/binary"
	"errors"
	"strings"
	"unicode/utf8"
)

// goTypes are the types that Go keeps in a program's memory for its collector, its
// interfaces and package reflect, by where each stands (internal/abi.Type and what
// follows it for its kind).
type goTypes struct {
	memory   []byte
	from, to int // what their places are counted from, and can't reach
	all      map[int]goType
}

// goType is one of them by where its parts stand.
type goType struct {
	kind, flags byte
	end         int // of what each of its kind has, and its methods' own part begins
	methods     []method
	fields      []int
	uses        []int // types
}

// method is one of a type, or one that an interface asks for, by where it stands, its
// name and its type, which are 0 or -1 where the linker has left it out.
type method struct{ at, name, of int }

// The kinds that are told of by more than every type is, and flags.
const (
	kindArray     = 17
	kindChan      = 18
	kindFunc      = 19
	kindInterface = 20
	kindMap       = 21
	kindPointer   = 22
	kindSlice     = 23
	kindStruct    = 25
	kindLast      = 26

	flagMethods  = 1  // TFlagUncommon
	flagStar     = 2  // TFlagExtraStar
	flagRegular  = 8  // TFlagRegularMemory
	flagOnDemand = 16 // TFlagGCMaskOnDemand
	flagsAll     = 63

	nameExported  = 1
	nameTagged    = 2
	nameOfPackage = 4
	nameFlagsAll  = 15
)

// Where a type's parts are, and those of a kind's, from its start; and sizes.
const (
	typePointers = 8
	typeHash     = 16
	typeFlags    = 20
	typeAlign    = 21
	typeKind     = 23
	typeEqual    = 24
	typeName     = 40
	typePointer  = 44 // the type of a pointer to it
	typeSize     = 48

	ownSize   = 16 // UncommonType, and each method
	askedSize = 8
	fieldSize = 24
	fieldType = 8
	ofPackage = 48 // of an interface or a struct: the name of its package
	listAt    = 56 // an interface's methods, a struct's fields: where they are and how many
	listCount = 64
)

// kindSizes are the sizes of the kinds that have more, and where in each types stand
// that it is made of.
var kindSizes = map[byte]struct {
	size int
	uses []int
}{
	kindArray: {72, []int{48, 56}}, kindChan: {64, []int{48}}, kindFunc: {56, nil}, kindInterface: {80, nil},
	kindMap: {112, []int{48, 56, 64}}, kindPointer: {56, []int{48}}, kindSlice: {56, []int{48}}, kindStruct: {80, nil},
}

// typesIn finds the types that constants of the code, words of the memory or the linker's
// list lead to, and those that they are made of. An error says that they aren't laid out as is known here; what is
// cut short panics.
func typesIn(memory []byte, m goModule, constants map[int]bool) (*goTypes, error) {
	g := &goTypes{memory, int(m.word(moduleTypes)), int(m.word(moduleTypesEnd)), map[int]goType{}}
	next := g.roots(constants)
	for links := m.word(moduleTypeLinks); links < m.word(moduleTypeLinks)+4*m.word(moduleTypeLinks+8); links += 4 {
		next = append(next, g.offset(int(links)))
	}
	for len(next) > 0 {
		at := next[0]
		next = next[1:]
		if _, done := g.all[at]; done {
			continue
		}
		if !g.looksLikeOne(at) {
			return nil, errors.New("not types as Go 1.26 writes them")
		}
		g.all[at] = g.read(at)
		next = append(next, g.all[at].uses...)
	}
	return g, nil
}

// roots returns where types are that constants or words of the memory are the places of.
func (g *goTypes) roots(constants map[int]bool) (all []int) {
	for c := range constants {
		if g.looksLikeOne(c) {
			all = append(all, c)
		}
	}
	for at := g.from; at+8 <= len(g.memory); at += 8 {
		if w := g.word(at); g.looksLikeOne(w) {
			all = append(all, w)
		}
	}
	return all
}

func (g *goTypes) word(at int) int { return int(binary.LittleEndian.Uint64(g.memory[at:])) }

// offset returns the place that stands at another as counted from the first type's, or 0.
func (g *goTypes) offset(at int) int {
	if n := int(int32(binary.LittleEndian.Uint32(g.memory[at:]))); n > 0 {
		return g.from + n
	}
	return 0
}

func (g *goTypes) short(at int) int { return int(binary.LittleEndian.Uint16(g.memory[at:])) }

// looksLikeOne says whether what stands at a place can be a type: sizes, alignment, flags, a kind
// and a name that go together.
func (g *goTypes) looksLikeOne(at int) bool {
	if at%8 != 0 || at < g.from || at+typeSize > g.to {
		return false
	}
	size, pointers := g.word(at), g.word(at+typePointers)
	flags, align, kind := g.memory[at+typeFlags], g.memory[at+typeAlign], g.memory[at+typeKind]
	name, end := g.name(g.offset(at + typeName))
	return size >= pointers && pointers >= 0 && pointers%8 == 0 && flags <= flagsAll && kind > 0 && kind <= kindLast &&
		align > 0 && align <= 8 && align&(align-1) == 0 && g.memory[at+typeAlign+1] == align &&
		end > 0 && name != "" && (flags&flagStar == 0 || name[0] == '*')
}

// name returns the name at a place (internal/abi.Name) and where what belongs to it ends, 0
// if none stands there.
func (g *goTypes) name(at int) (text string, end int) {
	if at < g.from || at >= g.to || g.memory[at] > nameFlagsAll {
		return "", 0
	}
	text, end = g.text(at + 1)
	if end > 0 && g.memory[at]&nameTagged != 0 {
		_, end = g.text(end)
	}
	if end > 0 && g.memory[at]&nameOfPackage != 0 {
		end += 4
	}
	return text, end
}

// text returns what stands at a place, its length before it, and its end, 0 if it can't be words.
func (g *goTypes) text(at int) (text string, end int) {
	size, n := binary.Uvarint(g.memory[at:g.to])
	if n <= 0 || size > uint64(g.to-at-n) {
		return "", 0
	}
	text = string(g.memory[at+n:][:size])
	if strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r == utf8.RuneError }) {
		return "", 0
	}
	return text, at + n + int(size)
}

// read takes the type at a place apart.
func (g *goTypes) read(at int) goType {
	t := goType{kind: g.memory[at+typeKind], flags: g.memory[at+typeFlags], end: at + typeSize}
	if more, ok := kindSizes[t.kind]; ok {
		t.end = at + more.size
		for _, place := range more.uses {
			t.uses = append(t.uses, g.word(at+place))
		}
	}
	if t.flags&flagMethods != 0 {
		own := t.end + int(binary.LittleEndian.Uint32(g.memory[t.end+8:]))
		t.methods = g.methods(own, g.short(t.end+4), ownSize)
	}
	switch t.kind {
	case kindFunc:
		from := t.end + ownSize*int(t.flags&flagMethods)
		for n := range g.short(at+typeSize) + g.short(at+typeSize+2)&0x7fff { // the top bit is another thing's
			t.uses = append(t.uses, g.word(from+8*n))
		}
	case kindInterface:
		t.methods = g.methods(g.word(at+listAt), g.word(at+listCount), askedSize)
	case kindStruct:
		for n := range g.word(at + listCount) {
			field := g.word(at+listAt) + n*fieldSize
			t.fields = append(t.fields, field)
			t.uses = append(t.uses, g.word(field+fieldType))
		}
	}
	for _, m := range t.methods {
		t.use(m.of)
	}
	t.use(g.offset(at + typePointer))
	return t
}

func (t *goType) use(at int) {
	if at != 0 {
		t.uses = append(t.uses, at)
	}
}

func (g *goTypes) methods(at, count, size int) (all []method) {
	for ; count > 0; count-- {
		all = append(all, method{at, g.offset(at), g.offset(at + 4)})
		at += size
	}
	return all
}
