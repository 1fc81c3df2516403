package crank

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Each read to σ = 0.01 mm every way, two readings of one place differ by √2 σ, and at 95 % by
// no more than 2.448 times that, 0.0346 mm: 2.448 is √5.991, χ² of two (tables).
func TestReadingsOfOnePlaceDifferBeyondTheirDoubt(t *testing.T) {
	for _, row := range []struct {
		name          string
		at, off       float64
		piece         int
		unlike, exact bool
	}{
		{"within", 75, 0.0345, 0, false, false},
		{"beyond", 75, 0.0347, 0, true, false},
		{"elsewhere", 76, 1, 0, false, false},
		{"on the other half", 75, 1, 1, false, false},
		{"exact, and alike to a micron", 75, 0.0009, 0, false, true},
	} {
		st := []Station{{At: 40}, {At: 75, Cov: lsq.Round(0.01)}, {Piece: row.piece, At: row.at, E: clock.Vec{N: row.off}, Cov: lsq.Round(0.01)}}
		if row.exact {
			st[1].Cov, st[2].Cov = lsq.Cov{}, lsq.Cov{}
		}
		a, b, unlike := Unlike(st)
		assert.Equal(t, row.unlike, unlike, row.name)
		if unlike {
			assert.Equal(t, [2]int{1, 2}, [2]int{a, b})
		}
	}
}
