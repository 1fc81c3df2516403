package tryout

import "math"

// chance is a row of random numbers that a seed and what they are for fix, so
// that the same moves always do the same to the same crank: Steele, Lea and
// Flood's SplitMix64 (2014; constants from memory).
type chance uint64

// chanceOf starts the row that belongs to a seed, a purpose and a count.
func chanceOf(seed uint64, purpose purpose, count int) chance {
	c := chance(seed)
	c += chance(c.next() ^ uint64(purpose)<<32)
	c += chance(c.next() ^ uint64(count))
	c.next()
	return c
}

// purpose keeps the rows of one seed apart.
type purpose uint64

const (
	forStart purpose = iota + 1
	forTemper
	forMove
	forReading
)

func (c *chance) next() uint64 {
	*c += 0x9e3779b97f4a7c15
	z := uint64(*c)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// unit is even in [0, 1).
func (c *chance) unit() float64 { return float64(c.next()>>11) / (1 << 53) }

// between is even between two bounds.
func (c *chance) between(lo, hi float64) float64 { return lo + (hi-lo)*c.unit() }

// normal is Gaussian, mean 0 and deviation 1 (Box and Muller).
func (c *chance) normal() float64 {
	r := math.Sqrt(-2 * math.Log(1-c.unit()))
	return r * math.Cos(2*math.Pi*c.unit())
}
