package fit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The contact of a cone cut into rings: its normal pressure and its friction, taken
// as vectors, add up to what the nut pulls, what the joint holds and what takes it
// off.
func TestTaperForcesAreTheSumOverTheCone(t *testing.T) {
	p := Press{DiameterMM: 24, InterferenceMM: 0.03, LengthMM: 30, HubMM: 60, Friction: 0.12, Pressing: 0.1, Hub: Steel(), Pin: Steel()}
	const taper = 0.125
	j, err := p.Tapered(taper)
	require.NoError(t, err)
	a := math.Atan(taper / 2)
	const n = 1000
	var pull, off, hold float64
	for i := range n {
		x := (float64(i)+0.5)/n - 0.5
		r := (p.DiameterMM + x*p.LengthMM*taper) / 2
		press := j.PressureMPa * 2 * math.Pi * r * p.LengthMM / n / math.Cos(a)
		pull += press * (math.Sin(a) + p.Pressing*math.Cos(a))
		off += press * (p.Friction*math.Cos(a) - math.Sin(a))
		hold += p.Friction * press * r / 1000
	}
	assert.InEpsilon(t, pull, j.PressInN, 1e-9)
	assert.InEpsilon(t, off, j.PushOutN, 1e-9)
	assert.InEpsilon(t, hold, j.HoldNm, 3e-3) // the mean diameter squared for the mean of the squares
	assert.InEpsilon(t, 0.03/taper, j.DrawMM, 1e-15)
	assert.InEpsilon(t, j.YieldInterferenceMM/taper, j.YieldDrawMM, 1e-15)
	assert.Empty(t, j.Findings)
}

func TestSteepTaperDoesNotHoldItself(t *testing.T) {
	p := Press{DiameterMM: 24, InterferenceMM: 0.02, LengthMM: 30, HubMM: 60, Friction: 0.12, Hub: Steel(), Pin: Steel()}
	j, err := p.Tapered(0.26)
	require.NoError(t, err)
	assert.Less(t, j.PushOutN, 0.0)
	assert.Equal(t, []Finding{{NotSelfHolding, 0.13, 0.12}}, j.Findings)
}

func TestTapersThatWontDo(t *testing.T) {
	_, err := Press{}.Tapered(0.1)
	assertFault(t, err, Fault{Field: Diameter, Got: 0, Least: LeastMM, Most: MostMM})
	_, err = Press{}.Tapered(2)
	assertFault(t, err, Fault{Field: Taper, Got: 2, Least: 1e-5, Most: 1})
}
