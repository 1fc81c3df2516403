package link

import "math/bits"

// bitWriter gathers numbers of any width, highest bit first.
type bitWriter struct {
	bytes []byte
	at    int // in bits
}

// put writes the low n bits of v. In line it would stand thirty times in what a
// phone loads.
//
//go:noinline
func (w *bitWriter) put(v uint64, n int) {
	for n > 0 {
		n--
		if w.at%8 == 0 {
			w.bytes = append(w.bytes, 0)
		}
		w.bytes[w.at/8] |= byte(v>>n&1) << (7 - w.at%8)
		w.at++
	}
}

// gamma writes a number from 1 up in Elias's γ code: 1 takes 1 bit, 2 and 3
// take 3, 4 to 7 take 5.
func (w *bitWriter) gamma(v uint64) {
	n := bits.Len64(v)
	w.put(0, n-1)
	w.put(v, n)
}

// wide writes a number from 1 up whose size may be anything: 6 bits for its
// length, then all but its first bit.
func (w *bitWriter) wide(v uint64) {
	n := bits.Len64(v) - 1
	w.put(uint64(n), 6)
	w.put(v, n)
}

// bitReader reads what a bitWriter wrote. Past the end every bit is 0 and short
// is true.
type bitReader struct {
	bytes []byte
	at    int // in bits
	short bool
}

func (r *bitReader) bit() uint64 {
	if r.at >= 8*len(r.bytes) {
		r.short = true
		return 0
	}
	b := r.bytes[r.at/8] >> (7 - r.at%8) & 1
	r.at++
	return uint64(b)
}

func (r *bitReader) get(n int) (v uint64) {
	for range n {
		v = v<<1 | r.bit()
	}
	return v
}

// maxGamma bounds the bits of a number in γ code.
const maxGamma = 32

// gamma returns 1 and is short where the number is longer than any that is
// written.
func (r *bitReader) gamma() uint64 {
	n := 0
	for r.bit() == 0 {
		n++
		if r.short || n == maxGamma {
			r.short = true
			return 1
		}
	}
	return 1<<n | r.get(n)
}

func (r *bitReader) wide() uint64 {
	n := int(r.get(6))
	return 1<<n | r.get(n)
}

// ended says whether all was read but the noughts that fill the last byte.
func (r *bitReader) ended() bool {
	left := 8*len(r.bytes) - r.at
	return !r.short && left < 8 && r.get(left) == 0
}
