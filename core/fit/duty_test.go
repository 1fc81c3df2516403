package fit

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// The balance of forces and moments of each wheel, the pin and the rod, all
// unknowns at once: whatever the rod's force f and the inertia J, each end of the
// pin carries half of what is delivered.
func TestPinCarriesHalfTheTorqueDelivered(t *testing.T) {
	rng := rand.New(rand.NewSource(19))
	for range 100 {
		f, r, j, delivered := 3000*rng.NormFloat64(), 0.03+0.02*rng.Float64(), 0.005+0.02*rng.Float64(), 200*rng.NormFloat64()
		// Unknowns: pin's force on the left and the right wheel, its couple on each, angular acceleration.
		a := mat.NewDense(5, 5, []float64{
			1, 1, 0, 0, 0, // the pin's forces add up to the rod's
			1, -1, 0, 0, 0, // the rod stands midway
			0, 0, 1, 1, 0, // the pin's own couple is 0
			r, 0, 1, 0, -j / 2, // left wheel drives
			0, r, 0, 1, -j / 2,
		})
		var x mat.VecDense
		require.NoError(t, x.SolveVec(a, mat.NewVecDense(5, []float64{f, 0, 0, delivered, 0})))
		d, err := MustHold(10, 5000, 1)
		require.NoError(t, err)
		assert.InDelta(t, math.Abs(delivered)*d.PinNm/d.ShaftNm, math.Abs(x.AtVec(3)), 1e-9)
	}
}

// Power is torque times speed: one watt at one radian a second is one newton metre.
func TestMeanTorque(t *testing.T) {
	d, err := MustHold(0.001, 60/(2*math.Pi), 1)
	require.NoError(t, err)
	assert.InEpsilon(t, 1, d.MeanNm, 1e-12)
	d, err = MustHold(20, 6000, 4)
	require.NoError(t, err)
	assert.InEpsilon(t, 20e3/(200*math.Pi), d.MeanNm, 1e-12)
	assert.InEpsilon(t, 4*d.MeanNm, d.ShaftNm, 1e-12)
	_, err = MustHold(0, 6000, 4)
	assertFault(t, err, Fault{Field: Power, Got: 0, Least: 1e-3, Most: 1e5})
	_, err = MustHold(20, 6000, 0.5)
	assertFault(t, err, Fault{Field: Factor, Got: 0.5, Least: 1, Most: 1e3})
}

func TestMarginIsHoldOverNeed(t *testing.T) {
	m, err := Margin(300, 200)
	require.NoError(t, err)
	assert.Equal(t, 1.5, m)
	_, err = Margin(300, 0)
	assertFault(t, err, Fault{Field: Torque, Got: 0, Least: 1e-6, Most: 1e12})
}
