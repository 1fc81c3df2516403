package qr

// times multiplies in GF(2⁸), the polynomial being x⁸ + x⁴ + x³ + x² + 1 (7.5.2).
func times(a, b byte) (product byte) {
	for ; b > 0; b >>= 1 {
		if b&1 == 1 {
			product ^= a
		}
		over := a >> 7
		a = a<<1 ^ over*0x1d
	}
	return product
}

// generator is the generator polynomial of so many check bytes, the product of
// all x − 2ⁱ (annex A), highest power first and without that one, which is 1.
func generator(checks int) []byte {
	g := make([]byte, checks+1)
	g[0] = 1
	root := byte(1)
	for n := range checks {
		for k := n + 1; k > 0; k-- {
			g[k] ^= times(g[k-1], root)
		}
		root = times(root, 2)
	}
	return g[1:]
}

// checksOf is the remainder of a block, with as many zeros behind it as there
// are checks, over the generator.
func checksOf(block, generator []byte) []byte {
	rest := make([]byte, len(block)+len(generator))
	copy(rest, block)
	for i := range block {
		for k, g := range generator {
			rest[i+1+k] ^= times(g, rest[i])
		}
	}
	return rest[len(block):]
}
