package site

import (
	"encoding/binary"
	"errors"
	"slices"
	"strings"
)

// readsTypes are functions that read more of types than the runtime does by itself.
var readsTypes = []string{"reflect.", "internal_reflectlite.haveIdenticalUnderlyingType"}

// unnamed takes out of a Go program's memory what of its types nothing asks for: their
// names, and those of fields and packages, which only a panic's own words and package
// reflect would tell; methods that no interface asks for, since those that one does are
// looked up by name and type when a value's type first meets it (runtime.itabInit); a type's number
// for switches that no switch in the code has; fields that nothing goes
// through. Each part is taken as none by the runtime's own rule: a place of 0, a list of 0.
// It returns the functions of the methods that are asked for. An error says that it isn't
// laid out as is known here, or that package reflect is there.
func unnamed(memory []byte, constants map[int]bool, functions map[int]string) (methods []int, err error) {
	for _, name := range functions {
		if slices.ContainsFunc(readsTypes, func(prefix string) bool { return strings.HasPrefix(name, prefix) }) {
			return nil, errors.New("a function that reads the names of types: " + name)
		}
	}
	table, err := functionsIn(memory)
	if err != nil {
		return nil, err
	}
	m, err := table.module(memory)
	if err != nil {
		return nil, err
	}
	g, err := typesIn(memory, m, constants)
	if err != nil {
		return nil, err
	}
	u := unnamer{goTypes: g, switched: map[uint32]bool{}, asked: map[asked]bool{}, kept: map[int]bool{}, gone: map[int]bool{}, walked: map[int]bool{}}
	u.look(constants)
	u.clearTables()
	for at, t := range g.all {
		u.clear(at, t)
	}
	for name := range u.gone {
		if _, end := g.name(name); !u.kept[name] {
			clear(memory[name:end])
		}
	}
	clear(memory[m.word(moduleTypeLinks):][:4*m.word(moduleTypeLinks+8)]) // what package reflect looks through
	clear(m[moduleTypeLinks:][:24])
	return u.methods, nil
}

// unnamer knows what of types must stay.
type unnamer struct {
	*goTypes
	switched map[uint32]bool // hashes that stand in the code
	asked    map[asked]bool  // what interfaces ask for
	kept     map[int]bool    // names
	gone     map[int]bool    // and those that nothing asks for, but for what is kept
	walked   map[int]bool    // types whose fields are gone through
	methods  []int           // places in the table of functions
}

// asked is a method as it is looked up.
type asked struct {
	name string
	of   int
}

func (u *unnamer) asks(m method) asked {
	name, _ := u.name(m.name)
	return asked{name, m.of}
}

// look sees what the code and the types themselves ask for.
func (u *unnamer) look(constants map[int]bool) {
	for c := range constants {
		u.switched[uint32(c)] = true
	}
	for at, t := range u.all {
		if t.kind == kindInterface {
			u.keep(u.word(at + ofPackage))
			for _, m := range t.methods {
				u.asked[u.asks(m)] = true
				u.keep(m.name)
			}
		}
		if t.flags&flagOnDemand != 0 {
			u.walk(at)
		}
	}
}

// keep has a name stay, and that of its package.
func (u *unnamer) keep(name int) {
	if name == 0 {
		return
	}
	u.kept[name] = true
	if _, end := u.name(name); u.memory[name]&nameOfPackage != 0 {
		u.keep(u.offset(end - 4))
	}
}

// walk keeps the fields of a type, and of those that it holds: where its pointers are is
// worked out by them when that is first asked (runtime.buildGCMask).
func (u *unnamer) walk(at int) {
	u.walked[at] = true
	switch t := u.all[at]; t.kind {
	case kindArray:
		u.walk(u.word(at + typeSize))
	case kindStruct:
		for _, field := range t.fields {
			u.walk(u.word(field + fieldType))
		}
	}
}

// clearTables clears the copies of types' hashes in tables of methods
// (internal/abi.ITab), which only switches read.
func (u *unnamer) clearTables() {
	const typed, hash = 8, 16
	for at := u.from; at+hash+8 <= len(u.memory); at += 8 {
		if u.all[u.word(at)].kind != kindInterface {
			continue
		}
		of := u.word(at + typed)
		if _, ok := u.all[of]; ok && u.hash(of+typeHash) == u.hash(at+hash) {
			u.clearHash(at + hash)
		}
	}
}

func (u *unnamer) hash(at int) uint32 { return binary.LittleEndian.Uint32(u.memory[at:]) }

func (u *unnamer) clearHash(at int) {
	if !u.switched[u.hash(at)] {
		clear(u.memory[at:][:4])
	}
}

// clear clears what nothing asks for of a type.
func (u *unnamer) clear(at int, t goType) {
	u.gone[u.offset(at+typeName)] = true
	clear(u.memory[at+typeName:][:8]) // and where the pointer's type is
	u.memory[at+typeFlags] &^= flagStar
	u.clearHash(at + typeHash)
	if t.flags&flagMethods != 0 {
		u.clearMethods(t)
	}
	if t.kind == kindStruct {
		u.clearFields(at, t)
	}
}

// clearMethods clears those that nothing asks for, in their places, and the package, which
// only a method that isn't exported is looked up by.
func (u *unnamer) clearMethods(t goType) {
	const function, ofValue = 8, 12 // which takes a pointer to the value, or the value: package reflect's
	ofPackage := false
	for _, m := range t.methods {
		switch {
		case u.asked[u.asks(m)]:
			u.keep(m.name)
			ofPackage = ofPackage || u.memory[m.name]&nameExported == 0
			if t.kind != kindInterface {
				u.methods = append(u.methods, int(u.hash(m.at+function)))
				clear(u.memory[m.at+ofValue:][:4])
			}
		default:
			u.gone[m.name] = true
			clear(u.memory[m.at:][:ownSize])
		}
	}
	if name := u.offset(t.end); name != 0 && ofPackage {
		u.keep(name)
	} else if name != 0 {
		u.gone[name] = true
		clear(u.memory[t.end:][:4])
	}
}

// clearFields clears a struct's, or their names where something may go through them: to make
// a number of a value that is a key in an interface (runtime.typehash), which leaves out those
// named _.
func (u *unnamer) clearFields(at int, t goType) {
	if name := u.word(at + ofPackage); name != 0 {
		u.gone[name] = true
		clear(u.memory[at+ofPackage:][:8])
	}
	gone := !u.walked[at] && (u.word(at+typeEqual) == 0 || t.flags&flagRegular != 0)
	if gone {
		clear(u.memory[at+listAt:][:24])
	}
	for _, field := range t.fields {
		switch text, _ := u.name(u.word(field)); {
		case gone:
			u.gone[u.word(field)] = true
			clear(u.memory[field:][:fieldSize])
		case text == "_":
			u.keep(u.word(field))
		default:
			u.gone[u.word(field)] = true
			clear(u.memory[field:][:8])
		}
	}
}
