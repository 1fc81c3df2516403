// Package module takes WebAssembly modules apart and puts them together again.
// Clauses are those of the WebAssembly core specification 1.0.
package module

import "encoding/binary"

// Sections of a module (5.5.2).
const (
	Custom   = 0
	Type     = 1
	Import   = 2
	Function = 3
	Export   = 7
	Start    = 8
	Element  = 9
	Code     = 10
	Data     = 11
)

// HeaderSize is how many bytes stand before the sections.
const HeaderSize = 8

// Reader takes bytes apart from their front; it panics at their end.
type Reader []byte

// Byte takes one byte.
func (r *Reader) Byte() byte {
	b := (*r)[0]
	*r = (*r)[1:]
	return b
}

// Number takes an unsigned number: LEB128 (5.2.2).
func (r *Reader) Number() int {
	n, length := binary.Uvarint(*r)
	*r = (*r)[length:]
	return int(n)
}

// Signed takes a signed number (5.2.2).
func (r *Reader) Signed() int {
	n, shift := 0, 0
	for {
		b := r.Byte()
		n |= int(b&0x7f) << shift
		shift += 7
		if b < 0x80 {
			unused := max(0, 64-shift)
			return n << unused >> unused
		}
	}
}

// Bytes takes a vector of bytes, a name or a section: a length and so many bytes.
func (r *Reader) Bytes() []byte {
	n := r.Number()
	taken := (*r)[:n:n]
	*r = (*r)[n:]
	return taken
}

// AppendNumber writes what Number takes.
func AppendNumber(to []byte, n int) []byte { return binary.AppendUvarint(to, uint64(n)) }

// AppendSigned writes what Signed takes.
func AppendSigned(to []byte, n int) []byte {
	for n < -64 || n > 63 {
		to = append(to, byte(n)|0x80)
		n >>= 7
	}
	return append(to, byte(n)&0x7f)
}

// AppendBytes writes what Bytes takes.
func AppendBytes(to, content []byte) []byte {
	return append(AppendNumber(to, len(content)), content...)
}

// Exported returns the functions that a section of exports lists (5.5.10).
func Exported(section Reader) (functions []int) {
	const function = 0
	for range section.Number() {
		section.Bytes()
		kind, number := section.Byte(), section.Number()
		if kind == function {
			functions = append(functions, number)
		}
	}
	return functions
}

// FunctionNames returns what a custom section of names calls the functions, by
// their numbers (7.4.1).
func FunctionNames(section Reader) map[int]string {
	const functions = 1
	names := map[int]string{}
	section.Bytes() // "name"
	for len(section) > 0 {
		kind := section.Byte()
		part := Reader(section.Bytes())
		if kind != functions {
			continue
		}
		for range part.Number() {
			number := part.Number()
			names[number] = string(part.Bytes())
		}
	}
	return names
}
