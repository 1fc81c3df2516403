package lsq

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Random problems, seed 2, against gonum's QR.
func TestFitAgainstGonumQR(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for range 500 {
		n := 1 + rng.Intn(6)
		rows := n + rng.Intn(20)
		a, y := mat.NewDense(rows, n, nil), mat.NewDense(rows, 1, nil)
		f := New(n)
		for i := range rows {
			row := make([]float64, n)
			for j := range row {
				row[j] = rng.NormFloat64()
			}
			a.SetRow(i, row)
			y.Set(i, 0, rng.NormFloat64())
			f.Add(row, y.At(i, 0))
		}
		got, ok := f.Solve()
		require.True(t, ok)
		var qr mat.QR
		qr.Factorize(a)
		var x, res, ata, inv mat.Dense
		require.NoError(t, qr.SolveTo(&x, false, y))
		res.Mul(a, &x)
		res.Sub(y, &res)
		ata.Mul(a.T(), a)
		require.NoError(t, inv.Inverse(&ata))
		scale := mat.Norm(&inv, 2)
		for i := range n {
			assert.InDelta(t, x.At(i, 0), got.X[i], 1e-9*math.Max(1, scale))
			for j := range n {
				assert.InDelta(t, inv.At(i, j), got.Cov[i][j], 1e-9*math.Max(1, scale*scale))
			}
		}
		assert.InDelta(t, math.Pow(mat.Norm(&res, 2), 2), got.SSE, 1e-9)
		assert.Equal(t, rows-n, got.Nu)
	}
}

func TestRankIsTold(t *testing.T) {
	f := New(3)
	f.Add([]float64{1, 2, 3}, 1)
	f.Add([]float64{2, 4, 6}, 2)
	assert.Equal(t, 1, f.Rank())
	f.Add([]float64{0, 1, 1}, 0)
	assert.Equal(t, 2, f.Rank())
	_, ok := f.Solve()
	assert.False(t, ok)
	f.Add([]float64{0, 0, 1}, 5)
	assert.Equal(t, 3, f.Rank())
	r, ok := f.Solve()
	require.True(t, ok)
	assert.InDelta(t, 5, r.X[2], 1e-12)
	assert.Equal(t, 1, r.Nu)
}

func TestFitAllocatesNothing(t *testing.T) {
	row := []float64{1, 0.5, 0.25}
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		f := New(3)
		for i := range 6 {
			row[1], row[2] = float64(i), float64(i*i)
			f.Add(row, float64(i))
		}
		f.Solve()
	}))
}

// digits returns how many digits of want got has.
func digits(want, got float64) float64 { return -math.Log10(math.Abs(got-want)/math.Abs(want) + 1e-16) }

// NIST StRD, linear least squares, Norris: certified estimates, their standard
// deviations and the residual standard deviation. Values from memory.
func TestNorris(t *testing.T) {
	f := New(2)
	for _, yx := range norris {
		f.Add([]float64{1, yx[1]}, yx[0])
	}
	r, ok := f.Solve()
	require.True(t, ok)
	s := math.Sqrt(r.SSE / float64(r.Nu))
	for _, row := range []struct{ want, got float64 }{
		{-0.262323073774029, r.X[0]}, {1.00211681802045, r.X[1]},
		{0.232818234301152, s * math.Sqrt(r.Cov[0][0])}, {0.429796848199937e-3, s * math.Sqrt(r.Cov[1][1])},
		{0.884796396144373, s},
	} {
		assert.Greater(t, digits(row.want, row.got), 12.0, "certified %g, got %g", row.want, row.got)
	}
}

// NIST StRD, linear least squares, Longley: higher difficulty, columns nearly
// dependent. Values from memory.
func TestLongley(t *testing.T) {
	f := New(7)
	for _, v := range longley {
		f.Add([]float64{1, v[1], v[2], v[3], v[4], v[5], v[6]}, v[0])
	}
	r, ok := f.Solve()
	require.True(t, ok)
	s := math.Sqrt(r.SSE / float64(r.Nu))
	assert.Greater(t, digits(304.854073561965, s), 9.0)
	for i, row := range []struct{ b, sd float64 }{
		{-3482258.63459582, 890420.383607373}, {15.0618722713733, 84.9149257747669},
		{-0.358191792925910e-1, 0.334910077722432e-1}, {-2.02022980381683, 0.488399681651699},
		{-1.03322686717359, 0.214274163161675}, {-0.511041056535807e-1, 0.226073200069370},
		{1829.15146461355, 455.478499142212},
	} {
		assert.Greater(t, digits(row.b, r.X[i]), 9.0, "certified %g, got %g", row.b, r.X[i])
		assert.Greater(t, digits(row.sd, s*math.Sqrt(r.Cov[i][i])), 9.0)
	}
}

// Norris: y, x.
var norris = [][2]float64{
	{0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3}, {998.5, 996.3},
	{449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0},
	{448.9, 447.5}, {10.8, 11.6}, {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
	{0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2}, {998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3},
	{228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5},
}

// Longley: y, x1 … x6.
var longley = [][7]float64{
	{60323, 83.0, 234289, 2356, 1590, 107608, 1947}, {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
	{60171, 88.2, 258054, 3682, 1616, 109773, 1949}, {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
	{63221, 96.2, 328975, 2099, 3099, 112075, 1951}, {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
	{64989, 99.0, 365385, 1870, 3547, 115094, 1953}, {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
	{66019, 101.2, 397469, 2904, 3048, 117388, 1955}, {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
	{68169, 108.4, 442769, 2936, 2798, 120445, 1957}, {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
	{68655, 112.6, 482704, 3813, 2552, 123366, 1959}, {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
	{69331, 115.7, 518173, 4806, 2572, 127852, 1961}, {70551, 116.9, 554894, 4007, 2827, 130081, 1962},
}

func TestStudentAgainstGonum(t *testing.T) {
	for _, nu := range []float64{1, 1.25, 2, 2.5, 3, 4.7, 7, 10, 30, 121, 1000, 1e5} {
		want := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: nu}.Quantile(0.975)
		assert.InEpsilon(t, want, Student95(nu), 1e-8, "ν = %g", nu)
	}
	assert.InDelta(t, 12.706, Student95(1), 5e-4, "every table of t, value from memory")
	assert.InDelta(t, 1.96, Student95(0), 5e-5)
	assert.InDelta(t, 1.96, Student95(math.Inf(1)), 5e-5)
}

// k² = 2 F for 2 and ν degrees of freedom at 95 %.
func TestRadiusAgainstGonum(t *testing.T) {
	for _, nu := range []float64{1, 1.25, 2, 3, 5, 8, 20, 100, 1e4} {
		f := distuv.F{D1: 2, D2: nu}.Quantile(0.95)
		assert.InEpsilon(t, math.Sqrt(2*f), Radius95(nu), 1e-6, "ν = %g", nu)
	}
	assert.InDelta(t, 2.45, Radius95(0), 5e-3)
	assert.InDelta(t, Radius95(0), Radius95(1e5), 1e-3)
}

func TestBeyondAgainstGonum(t *testing.T) {
	for _, freedom := range []int{2, 4, 6, 10} {
		q := distuv.ChiSquared{K: float64(freedom)}.Quantile(0.95)
		assert.False(t, Beyond95(q*0.9999, freedom))
		assert.True(t, Beyond95(q*1.0001, freedom))
		assert.True(t, Beyond95(1e300, freedom))
	}
	assert.False(t, Beyond95(1e300, 0), "nothing to be beyond")
}
