package unit

import (
	"math/big"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
)

// math/big is the reference; seed 7. Factors have 1 to 62 bits, so that
// both products stay below 2^127.
func TestOverRoundsToNearest(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	draw := func() uint64 { return 1 + rng.Uint64()>>uint(2+rng.Intn(61)) }
	for range 20000 {
		a, b, c, d := draw(), draw(), draw(), draw()
		want, _ := new(big.Rat).SetFrac(product(a, b), product(c, d)).Float64()
		assert.Equal(t, want, times(a, b).over(times(c, d)), "%d %d / %d %d", a, b, c, d)
	}
	assert.Zero(t, times(0, 5).over(times(3, 3)))
}

// Ties: between 1 and the next float64 half-way goes to the even one, and one
// more half-way goes up.
func TestOverTiesToEven(t *testing.T) {
	const last = 1 << 53
	assert.Equal(t, 1.0, times(last+1, 1).over(times(last, 1)))
	assert.Equal(t, 1+4.0/last, times(last+3, 1).over(times(last, 1)))
}

func product(a, b uint64) *big.Int {
	return new(big.Int).Mul(new(big.Int).SetUint64(a), new(big.Int).SetUint64(b))
}
