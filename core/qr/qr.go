// Package qr lays out QR codes as ISO/IEC 18004 has them: a text in byte mode,
// at error correction level L, which makes the coarsest code of a long link.
// Clauses and tables are those of the 2015 edition, values from memory. Every
// version, up to 8 under every mask, is compared with rsc.io/qr/coding, and a
// decoder that shares no code with it reads the codes back:
// TestEveryVersionIsAsTheReferenceHasIt, TestAnIndependentDecoderReadsTheCode.
//
// The check bytes are by rsc.io/qr/gf256; that library's own layout is left out
// for its weight, which fmt brings, and serves as the reference of the tests.
package qr

import "rsc.io/qr/gf256"

// Versions, which set a code's size: 4 × version + 17 modules a side.
const (
	least = 1
	most  = 40
)

// Table 9 for level L, by version: check bytes in a block, and blocks.
const (
	checkBytes = "\x07\x0a\x0f\x14\x1a\x12\x14\x18\x1e\x12\x14\x18\x1a\x1e\x16\x18\x1c\x1e\x1c\x1c\x1c\x1c\x1e\x1e\x1a\x1c\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e"
	blocks     = "\x01\x01\x01\x01\x01\x02\x02\x02\x02\x04\x04\x04\x04\x04\x06\x06\x06\x06\x07\x08\x08\x09\x09\x0a\x0c\x0c\x0c\x0d\x0e\x0f\x10\x11\x12\x13\x13\x14\x15\x16\x18\x19"
)

// Code returns the modules of a text's code, true where dark, row by row; nil
// where no version holds the text, which is longer than 2953 bytes then.
func Code(text string) [][]bool {
	for version := least; version <= most; version++ {
		if 8*dataBytes(version) >= 4+lengthBits(version)+8*len(text) {
			return best(version, withChecks(version, written(version, text)))
		}
	}
	return nil
}

// best lays the bytes out under each mask and returns the code of the smallest
// penalty (7.8.3).
func best(version int, bytes []byte) [][]bool {
	var code [][]bool
	smallest := 0
	for mask := range 8 {
		c := laid(version, mask, bytes)
		if p := penalty(c); code == nil || p < smallest {
			code, smallest = c, p
		}
	}
	return code
}

// allBytes is how many bytes, data and checks, a version holds: its modules
// less those of the function patterns.
func allBytes(version int) int {
	modules := (16*version+128)*version + 64
	if version >= 2 {
		n := version/7 + 2
		modules -= (25*n-10)*n - 55
	}
	if version >= 7 {
		modules -= 36
	}
	return modules / 8
}

func dataBytes(version int) int {
	return allBytes(version) - int(checkBytes[version-1])*int(blocks[version-1])
}

// lengthBits is the width of the count of characters (table 3, byte mode).
func lengthBits(version int) int {
	if version < 10 {
		return 8
	}
	return 16
}

// written writes the text's data bytes with their padding (7.4).
func written(version int, text string) []byte {
	var out []byte
	held, n := 0, 0
	put := func(v, bits int) {
		for held, n = held<<bits|v, n+bits; n >= 8; n -= 8 {
			out = append(out, byte(held>>(n-8)))
		}
		held &= 1<<n - 1
	}
	put(0b0100, 4)
	put(len(text), lengthBits(version))
	for i := range len(text) {
		put(int(text[i]), 8)
	}
	put(0, 4) // the terminator, which fills the last byte, since all before it are 4 bits more than whole ones
	for pad := 0xec; len(out) < dataBytes(version); pad ^= 0xec ^ 0x11 {
		put(pad, 8)
	}
	return out
}

// withChecks adds the check bytes and deals the blocks out in turn (7.5, 7.6).
func withChecks(version int, data []byte) []byte {
	n, checks := int(blocks[version-1]), int(checkBytes[version-1])
	encoder := gf256.NewRSEncoder(gf256.NewField(0x11d, 2), checks)
	short := len(data) / n
	longer := len(data) % n // the last of the blocks hold one byte more
	out := make([]byte, len(data)+n*checks)
	check := make([]byte, checks)
	for b := range n {
		length := short
		if b >= n-longer {
			length++
		}
		block := data[:length]
		data = data[length:]
		for i, v := range block {
			at := i*n + b
			if i == short {
				at -= n - longer
			}
			out[at] = v
		}
		encoder.ECC(block, check)
		for i, v := range check {
			out[len(out)-n*checks+i*n+b] = v
		}
	}
	return out
}
