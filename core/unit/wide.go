package unit

import (
	"math"
	"math/bits"
)

// wide is an unsigned number of 128 bits.
type wide struct{ hi, lo uint64 }

func times(a, b uint64) wide {
	hi, lo := bits.Mul64(a, b)
	return wide{hi, lo}
}

// over returns p/q, rounded to the nearest float64, ties to even. Both must be
// below 2^127, and q above 0.
func (p wide) over(q wide) float64 {
	if p == (wide{}) {
		return 0
	}
	exp := p.bits() - q.bits()
	if exp < 0 {
		p = p.shift(-exp)
	} else {
		q = q.shift(exp)
	}
	if p.less(q) {
		p = p.shift(1)
		exp--
	}
	var m uint64 // the 53 leading bits of p/q
	for range 53 {
		m <<= 1
		if !p.less(q) {
			p = p.minus(q)
			m |= 1
		}
		p = p.shift(1)
	}
	if q.less(p) || p == q && m&1 == 1 {
		m++
	}
	return math.Ldexp(float64(m), exp-52)
}

func (p wide) bits() int {
	if p.hi != 0 {
		return 64 + bits.Len64(p.hi)
	}
	return bits.Len64(p.lo)
}

func (p wide) shift(k int) wide {
	if k >= 64 {
		return wide{p.lo << (k - 64), 0}
	}
	return wide{p.hi<<k | p.lo>>(64-k), p.lo << k}
}

func (p wide) less(q wide) bool { return p.hi < q.hi || p.hi == q.hi && p.lo < q.lo }

func (p wide) plus(q wide) wide {
	lo, carry := bits.Add64(p.lo, q.lo, 0)
	hi, _ := bits.Add64(p.hi, q.hi, carry)
	return wide{hi, lo}
}

func (p wide) minus(q wide) wide {
	lo, borrow := bits.Sub64(p.lo, q.lo, 0)
	hi, _ := bits.Sub64(p.hi, q.hi, borrow)
	return wide{hi, lo}
}
