package module

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Bytes as the specification's 5.2.2 gives them, and both ways.
func TestNumbers(t *testing.T) {
	for n, want := range map[int][]byte{
		0: {0}, 3: {3}, 63: {63}, 64: {0xc0, 0}, -1: {0x7f}, -2: {0x7e}, -64: {0x40}, -65: {0xbf, 0x7f}, 128: {0x80, 1},
	} {
		assert.Equal(t, want, AppendSigned(nil, n), n)
	}
	assert.Equal(t, []byte{0xe5, 0x8e, 0x26}, AppendNumber(nil, 624485))
	for _, n := range []int{0, 1, 63, 64, 127, 128, 8191, 8192, math.MaxInt32, math.MinInt32, -1, -64, -65, -8193} {
		r := Reader(AppendSigned(nil, n))
		assert.Equal(t, n, r.Signed())
		assert.Empty(t, r)
	}
	r := Reader(AppendBytes(AppendNumber(nil, 300), []byte("abc")))
	assert.Equal(t, 300, r.Number())
	assert.Equal(t, []byte("abc"), r.Bytes())
	assert.Empty(t, r)
}
