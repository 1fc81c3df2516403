package crank_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/lsq"
)

// reference solves the same set-up by gonum's QR, everything held between
// calls: the independent check on the solve, and what its speed is measured
// against. Unknowns a_L, b_L, a_R, b_R; columns T and N.
type reference struct {
	a, y, x  *mat.Dense // dials and supports
	h, d, z  *mat.Dense // the crank hung: strike, gap, both
	b, e, w  *mat.Dense // in its own bearings
	qr       mat.QR
	strike   crank.Move
	gap      crank.Move
	forecast [2]crank.Forecast
	run      [2]clock.Vec
	tilt     [2]float64
}

func newReference() *reference {
	m := func(r, c int) *mat.Dense { return mat.NewDense(r, c, nil) }
	return &reference{
		a: m(4, 4), y: m(4, 2), x: m(4, 2),
		h: m(4, 4), d: m(4, 6), z: m(4, 6),
		b: m(4, 4), e: m(4, 2), w: m(4, 2),
	}
}

// hung fills in the rows of supports at x, offset and gap.
func hung(a *mat.Dense, m float64, x [2]float64) {
	a.SetRow(0, []float64{1, x[0] - m, 0, 0})
	a.SetRow(1, []float64{0, 0, 1, x[1] - m})
	a.SetRow(2, []float64{-1, 0, 1, 0})
	a.SetRow(3, []float64{0, 1, 0, -1})
}

// at reads a half's axis at x from columns col, col+1 of a solution.
func at(x *mat.Dense, half clock.End, l float64, col int) clock.Vec {
	r := 2 * int(half)
	return clock.Vec{T: x.At(r, col) + l*x.At(r+1, col), N: x.At(r, col+1) + l*x.At(r+1, col+1)}
}

func (r *reference) solve(c *crank.Crank, st []crank.Station) error {
	for i, s := range st {
		row := 2 * s.Piece
		r.a.Set(i, row, 1)
		r.a.Set(i, row+1, s.At-c.Pin)
		r.y.Set(i, 0, s.E.T)
		r.y.Set(i, 1, s.E.N)
	}
	for h := range 2 {
		r.a.Set(2+h, 2*h, 1)
		r.a.Set(2+h, 2*h+1, c.Support[h]-c.Pin)
	}
	r.qr.Factorize(r.a)
	if err := r.qr.SolveTo(r.x, false, r.y); err != nil {
		return err
	}
	d := at(r.x, clock.Right, 0, 0).Sub(at(r.x, clock.Left, 0, 0))
	g := clock.Vec{T: r.x.At(1, 0) - r.x.At(3, 0), N: r.x.At(1, 1) - r.x.At(3, 1)}
	r.moves(c, d, g)
	return r.predict(c, st, d, g)
}

// moves are written anew from MODEL §4.
func (r *reference) moves(c *crank.Crank, d, g clock.Vec) {
	r.strike = crank.Move{Kind: crank.Strike, Wheel: clock.Right, Hour: 3, Amount: math.Abs(d.N), Arm: c.Throw}
	if d.N < 0 {
		r.strike.Hour = 9
	}
	theta := math.Atan2(g.N, g.T)
	r.gap = crank.Move{Kind: crank.Squeeze}
	if g.T > 0 {
		r.gap.Kind = crank.Spread
		theta += math.Pi
	}
	sin, cos := math.Sincos(theta)
	s := -c.Throw*cos + math.Sqrt(c.Rim*c.Rim-c.Throw*c.Throw*sin*sin)
	r.gap.Hour = clock.Wrap(math.Atan2(s*sin, c.Throw+s*cos) * 6 / math.Pi)
	r.gap.Arm, r.gap.Amount = s, s*math.Hypot(g.T, g.N)
}

func (r *reference) predict(c *crank.Crank, st []crank.Station, d, g clock.Vec) error {
	hung(r.h, c.Pin, c.Support)
	for k, v := range [3][2]clock.Vec{{{T: d.T}, g}, {d, {}}, {{T: d.T}, {}}} {
		r.d.Set(2, 2*k, v[0].T)
		r.d.Set(2, 2*k+1, v[0].N)
		r.d.Set(3, 2*k, v[1].T)
		r.d.Set(3, 2*k+1, v[1].N)
	}
	r.qr.Factorize(r.h)
	if err := r.qr.SolveTo(r.z, false, r.d); err != nil {
		return err
	}
	for i, s := range st {
		l := s.At - c.Pin
		r.forecast[i] = crank.Forecast{
			Now: at(r.x, s.Half(), l, 0), Strike: at(r.z, s.Half(), l, 0), Gap: at(r.z, s.Half(), l, 2), Both: at(r.z, s.Half(), l, 4),
		}
	}
	hung(r.b, c.Pin, c.Bearing)
	r.e.SetRow(2, []float64{d.T, d.N})
	r.e.SetRow(3, []float64{g.T, g.N})
	r.qr.Factorize(r.b)
	if err := r.qr.SolveTo(r.w, false, r.e); err != nil {
		return err
	}
	for h := range 2 {
		r.run[h] = at(r.w, clock.End(h), st[h].At-c.Pin, 0)
		r.tilt[h] = math.Hypot(r.w.At(2*h+1, 0), r.w.At(2*h+1, 1)) * 180 * 60 / math.Pi
	}
	return nil
}

// answers are ours to the same questions.
type answers struct {
	strike, gap crank.Move
	forecast    [2]crank.Forecast
	run         [2]clock.Vec
	tilt        [2]float64
}

func (a *answers) solve(c *crank.Crank, st []crank.Station) error {
	pose, err := c.Solve(st)
	if err != nil {
		return err
	}
	a.strike, _ = pose.Strike()
	a.gap, _ = pose.Close()
	run := pose.Running(pose.D, pose.G)
	for i := range st {
		a.forecast[i] = pose.Forecast(st[i].Half(), st[i].At)
		a.run[i] = run.At(st[i].Half(), st[i].At)
		a.tilt[i] = run.Tilt(st[i].Half())
	}
	return nil
}

// someCrank returns a set-up that a lathe could hold, a dial on each shaft.
func someCrank(rng *rand.Rand) (crank.Crank, []crank.Station) {
	u := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	length := u(180, 280)
	c := crank.Crank{Throw: u(25, 55), Pin: length * u(0.45, 0.55), Support: [2]float64{0, length}}
	c.Rim = c.Throw * u(1.7, 2.4)
	c.Bearing = [2]float64{c.Pin * u(0.4, 0.7), length - (length-c.Pin)*u(0.4, 0.7)}
	if rng.Intn(2) == 1 {
		c.Mount, c.Support = crank.VBlocks, c.Bearing
	}
	st := []crank.Station{
		{Piece: 0, At: c.Pin * u(0.1, 0.35)},
		{Piece: 1, At: length - (length-c.Pin)*u(0.1, 0.35)},
	}
	for i := range st {
		st[i].E = clock.Vec{T: 0.05 * rng.NormFloat64(), N: 0.05 * rng.NormFloat64()}
		st[i].Cov = lsq.Oriented(u(0.5e-3, 3e-3), u(0.5e-3, 3e-3), u(0, 12))
	}
	return c, st
}

func nearVec(t *testing.T, want, got clock.Vec, what string) {
	t.Helper()
	assert.InDelta(t, want.T, got.T, 1e-9, what)
	assert.InDelta(t, want.N, got.N, 1e-9, what)
}

// Random set-ups, seed 1, against gonum.
func TestSolveAgreesWithGonumQR(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	ref, own := newReference(), &answers{}
	for range 2000 {
		c, st := someCrank(rng)
		require.NoError(t, own.solve(&c, st))
		require.NoError(t, ref.solve(&c, st))
		for i := range st {
			nearVec(t, ref.forecast[i].Now, own.forecast[i].Now, "now")
			nearVec(t, ref.forecast[i].Strike, own.forecast[i].Strike, "strike")
			nearVec(t, ref.forecast[i].Gap, own.forecast[i].Gap, "gap")
			nearVec(t, ref.forecast[i].Both, own.forecast[i].Both, "both")
			nearVec(t, ref.run[i], own.run[i], "in its own bearings")
			assert.InDelta(t, ref.tilt[i], own.tilt[i], 1e-9)
		}
		for _, m := range [2][2]crank.Move{{ref.strike, own.strike}, {ref.gap, own.gap}} {
			assert.Equal(t, m[0].Kind, m[1].Kind)
			assert.Equal(t, m[0].Wheel, m[1].Wheel)
			assert.InDelta(t, 0, clock.Apart(m[0].Hour, m[1].Hour), 1e-9)
			assert.InDelta(t, m[0].Amount, m[1].Amount, 1e-9)
			assert.InDelta(t, m[0].Arm, m[1].Arm, 1e-9)
		}
		if t.Failed() {
			return
		}
	}
}

// weighted solves one half by gonum's QR on whitened rows. Unknowns a_t, a_n,
// b_t, b_n, or only b where the support holds y = b (x − support). It returns
// a, b at the pin and the covariance (AᵀA)⁻¹ of the unknowns at the pin.
func weighted(t *testing.T, c *crank.Crank, st []crank.Station, h clock.End, held bool) (a, b clock.Vec, cov *mat.Dense) {
	var rows, rhs []float64
	n := 4
	if held {
		n = 2
	}
	for _, s := range st {
		if s.Half() != h {
			continue
		}
		var ch mat.Cholesky
		require.True(t, ch.Factorize(mat.NewSymDense(2, []float64{s.Cov.TT, s.Cov.TN, s.Cov.TN, s.Cov.NN})))
		var l mat.TriDense
		ch.LTo(&l)
		var inv mat.Dense
		require.NoError(t, inv.Inverse(&l))
		for i := range 2 {
			wt, wn := inv.At(i, 0), inv.At(i, 1)
			if held {
				x := s.At - c.Support[h]
				rows = append(rows, wt*x, wn*x)
			} else {
				x := s.At - c.Pin
				rows = append(rows, wt, wn, wt*x, wn*x)
			}
			rhs = append(rhs, wt*s.E.T+wn*s.E.N)
		}
	}
	m := mat.NewDense(len(rhs), n, rows)
	var qr mat.QR
	qr.Factorize(m)
	var x, ata mat.Dense
	require.NoError(t, qr.SolveTo(&x, false, mat.NewDense(len(rhs), 1, rhs)))
	ata.Mul(m.T(), m)
	cov = new(mat.Dense)
	require.NoError(t, cov.Inverse(&ata))
	if held {
		b = clock.Vec{T: x.At(0, 0), N: x.At(1, 0)}
		return b.Scale(c.Pin - c.Support[h]), b, cov
	}
	return clock.Vec{T: x.At(0, 0), N: x.At(1, 0)}, clock.Vec{T: x.At(2, 0), N: x.At(3, 0)}, cov
}

// Any number of stations with covariances of any shape, seed 2, against gonum.
func TestWeightedStationsAgreeWithGonumQR(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for range 1000 {
		c, st := someCrank(rng)
		for range rng.Intn(5) {
			more := st[rng.Intn(2)]
			room := c.Pin - 5 - more.At
			if more.Half() == clock.Right {
				room = c.Pin + 5 - more.At
			}
			more.At += room * (0.1 + 0.9*rng.Float64())
			more.E = more.E.Add(clock.Vec{T: 0.01 * rng.NormFloat64(), N: 0.01 * rng.NormFloat64()})
			more.Cov = lsq.Oriented(1e-3*(1+rng.Float64()), 1e-3*(1+rng.Float64()), 12*rng.Float64())
			st = append(st, more)
		}
		pose, err := c.Solve(st)
		require.NoError(t, err)
		count := [2]int{}
		for _, s := range st {
			count[s.Piece]++
		}
		for h := clock.Left; h <= clock.Right; h++ {
			held := c.Mount != crank.Centres || count[h] == 1
			a, b, cov := weighted(t, &c, st, h, held)
			nearVec(t, a, pose.A[h], "A")
			nearVec(t, b, pose.B[h], "B")
			nearVec(t, clock.Vec{}, clock.Vec{T: boolTo(held) * pose.Held[h].T, N: boolTo(held) * pose.Held[h].N}, "held exactly")
			got := covOfAPlusB(&pose.Scatter[h])
			want := covAtPlusOne(cov, c.Pin-c.Support[h], held)
			assert.InEpsilon(t, want.TT, got.TT, 1e-4)
			assert.InEpsilon(t, want.NN, got.NN, 1e-4)
			assert.InDelta(t, want.TN, got.TN, 1e-4*want.TT)
		}
		if t.Failed() {
			return
		}
	}
}

func boolTo(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// covOfAPlusB is the covariance of a half's A + B, its axis 1 mm from the pin.
func covOfAPlusB(s *crank.Scatter) lsq.Cov {
	return lsq.Cov{
		TT: s.AA.TT + 2*s.AB[0][0] + s.BB.TT,
		TN: s.AA.TN + s.AB[0][1] + s.AB[1][0] + s.BB.TN,
		NN: s.AA.NN + 2*s.AB[1][1] + s.BB.NN,
	}
}

// covAtPlusOne is the covariance of a + b from that of the unknowns.
func covAtPlusOne(cov *mat.Dense, l float64, held bool) lsq.Cov {
	if held {
		k := (l + 1) * (l + 1)
		return lsq.Cov{TT: k * cov.At(0, 0), TN: k * cov.At(0, 1), NN: k * cov.At(1, 1)}
	}
	j := mat.NewDense(2, 4, []float64{1, 0, 1, 0, 0, 1, 0, 1})
	var p, q mat.Dense
	p.Mul(j, cov)
	q.Mul(&p, j.T())
	return lsq.Cov{TT: q.At(0, 0), TN: q.At(0, 1), NN: q.At(1, 1)}
}

func TestSolveAllocatesNothing(t *testing.T) {
	c, st := someCrank(rand.New(rand.NewSource(3)))
	st = append(st, st[0])
	st[2].At += 20
	tol := crank.Tolerance{RunOut: 0.05, Tilt: 2}
	var pose crank.Pose
	assert.Zero(t, testing.AllocsPerRun(100, func() { pose, _ = c.Solve(st) }))
	assert.Zero(t, testing.AllocsPerRun(100, func() { pose.Advise(st, tol) }))
	own := &answers{}
	assert.Zero(t, testing.AllocsPerRun(100, func() { _ = own.solve(&c, st[:2]) }))
}

// The two benchmarks answer the same questions on the same inputs: how the
// halves sit, the moves, each needle after each of them, and the crank in its
// own bearings.
func BenchmarkSolveMovesPredict(b *testing.B) {
	c, st := someCrank(rand.New(rand.NewSource(4)))
	own := &answers{}
	b.ReportAllocs()
	for b.Loop() {
		_ = own.solve(&c, st)
	}
}

func BenchmarkGonumSolveMovesPredict(b *testing.B) {
	c, st := someCrank(rand.New(rand.NewSource(4)))
	ref := newReference()
	b.ReportAllocs()
	for b.Loop() {
		_ = ref.solve(&c, st)
	}
}
