package balance

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ISO 21940-11, e_per = G/ω; the figures follow from the formula, values of the
// standard's own chart from memory.
func TestPermissibleUnbalance(t *testing.T) {
	for _, row := range []struct{ grade, rpm, kg, want, tolerance float64 }{
		{6.3, 3000, 1, 20, 0.1},
		{6.3, 3000, 8, 160, 0.5},
		{2.5, 3000, 1, 8, 0.1},
		{16, 1500, 1, 101.9, 0.1},
	} {
		u, err := Permissible(row.grade, row.rpm, row.kg)
		require.NoError(t, err)
		assert.InDelta(t, row.want, u, row.tolerance)
		g, err := GradeOf(u, row.rpm, row.kg)
		require.NoError(t, err)
		assert.InEpsilon(t, row.grade, g, 1e-12)
	}
}

func TestKnifeEdgesBesideTheStandard(t *testing.T) {
	shows, err := RollsGMM(1, 80)
	require.NoError(t, err)
	r, err := CompareResidual(6.3, 3000, 8, shows)
	require.NoError(t, err)
	assert.True(t, r.Enough)
	assert.InDelta(t, 80.0, r.ShowsGMM, 1e-12)
	assert.InDelta(t, 6.3*80/160.43, r.Grade, 1e-3)

	r, err = CompareResidual(6.3, 3000, 8, 200)
	require.NoError(t, err)
	assert.False(t, r.Enough)
}

func TestResidualsThatCannotBe(t *testing.T) {
	for _, row := range []struct {
		field                   Field
		grade, rpm, kg, unbalan float64
	}{
		{Speed, 6.3, 0, 1, 1}, {Speed, 6.3, math.NaN(), 1, 1},
		{Grade, 0, 3000, 1, 1}, {Grade, -6.3, 3000, 1, 1},
		{Mass, 6.3, 3000, 0, 1}, {Mass, 6.3, 3000, math.Inf(1), 1},
		{Unbalance, 6.3, 3000, 1, -1}, {Unbalance, 6.3, 3000, 1, math.NaN()},
	} {
		_, err := CompareResidual(row.grade, row.rpm, row.kg, row.unbalan)
		var fault *Fault
		require.ErrorAs(t, err, &fault)
		assert.Equal(t, row.field, fault.Field)
	}
	_, err := RollsGMM(1, 0)
	assert.Error(t, err)
}
