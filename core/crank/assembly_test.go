package crank_test

import (
	"math"
	"math/rand"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/lsq"
	"pintwelve/testdata/cases"
)

// throwsCase is one exact crank of several throws.
type throwsCase struct{ cases.Throws }

func throwsCases(t testing.TB) (all []throwsCase) {
	t.Helper()
	for _, c := range cases.OfSeveral(t) {
		all = append(all, throwsCase{c})
	}
	return all
}

func (c *throwsCase) assembly() (a crank.Assembly, dials []crank.Station, gaps []crank.RimGap) {
	a.Rim = c.Rim
	if c.Mount != "centres" {
		a.Mount = crank.VBlocks
	}
	for _, p := range c.Pins {
		a.Joints = append(a.Joints, crank.Joint{At: p.At, Throw: p.Throw, Phase: p.Phase})
	}
	for i, s := range c.Supports {
		a.Rests[i] = crank.Rest{Piece: s.Piece - 1, At: s.At}
	}
	for _, d := range c.Dials {
		dials = append(dials, crank.Station{Piece: d.Piece - 1, At: d.At, E: clock.Vec{T: d.T, N: d.N}})
	}
	for _, g := range c.Gaps {
		gaps = append(gaps, crank.RimGap{Joint: g.Joint - 1, Slope: clock.Vec{T: (g.G12 - g.G6) / (2 * c.Rim), N: (g.G3 - g.G9) / (2 * c.Rim)}})
	}
	return a, dials, gaps
}

// Exact bodies of two to four throws by full rotations: testdata/cases/throws.json.
func TestThrowsAreFound(t *testing.T) {
	worst := [3]float64{}
	for _, c := range throwsCases(t) {
		a, dials, gaps := c.assembly()
		s, err := a.Solve(dials, gaps)
		require.NoError(t, err, c.Name)
		for j, want := range c.Truth.Joints {
			require.True(t, s.DTold(j) && s.GTold(j), c.Name)
			off := s.Bends[j].D.Sub(clock.Vec{T: want.T, N: want.N}).Len()
			assert.Less(t, off, micron, "%s: offset at joint %d", c.Name, j+1)
			across, widest := s.GapAcross(j)
			gap := clock.Polar(across, widest).Sub(clock.Polar(want.Across, want.Widest)).Len()
			assert.Less(t, gap, 1.5*micron, "%s: gap at joint %d", c.Name, j+1)
			fore := 0.0
			for i, v := range s.RunOuts(s.Without(j, crank.Strike)) {
				fore = math.Max(fore, math.Abs(v-want.Untwist[i]))
			}
			for i, v := range s.RunOuts(s.Without(j, crank.Squeeze)) {
				fore = math.Max(fore, math.Abs(v-want.CloseGap[i]))
			}
			assert.Less(t, fore, micron, "%s: forecasts at joint %d", c.Name, j+1)
			worst = [3]float64{math.Max(worst[0], off), math.Max(worst[1], gap), math.Max(worst[2], fore)}
		}
		for i, v := range s.RunOuts(s.Mended()) {
			assert.InDelta(t, c.Truth.All[i], v, micron, "%s: dial %d with all gone", c.Name, i)
			worst[2] = math.Max(worst[2], math.Abs(v-c.Truth.All[i]))
		}
	}
	t.Logf("worst offset %.2f µm, gap across the rim %.2f µm, forecast %.2f µm", worst[0]/micron, worst[1]/micron, worst[2]/micron)
}

// randomAssembly makes a set-up at random, with dials enough for all of it or, in
// thin, too few by chance.
func randomAssembly(rng *rand.Rand, thin bool) (a crank.Assembly, dials []crank.Station, gaps []crank.RimGap) {
	n := 1 + rng.Intn(crank.MostThrows)
	x := 60 + 30*rng.Float64()
	for range n {
		a.Joints = append(a.Joints, crank.Joint{At: x, Throw: 20 + 20*rng.Float64(), Phase: 12 * rng.Float64()})
		x += 50 + 30*rng.Float64()
	}
	a.Rim, a.Mount = 60, crank.VBlocks
	a.Rests = [2]crank.Rest{{Piece: 0, At: 10}, {Piece: n, At: x}}
	for k := range n + 1 {
		from, to := 12.0, x-2
		if k > 0 {
			from = a.Joints[k-1].At + 1
		}
		if k < n {
			to = a.Joints[k].At - 1
		}
		places := 2
		if thin {
			places = rng.Intn(3)
		}
		for i := range places {
			at := from + (to-from)*(float64(i)+0.1+0.8*rng.Float64())/2
			e := clock.Vec{T: 0.1 * rng.NormFloat64(), N: 0.1 * rng.NormFloat64()}
			cov := lsq.Oriented(1e-3*(1+rng.Float64()), 2e-3*(1+rng.Float64()), 12*rng.Float64())
			dials = append(dials, crank.Station{Piece: k, At: at, E: e, Cov: cov})
		}
	}
	for j := range n {
		if rng.Intn(2) == 0 {
			gaps = append(gaps, crank.RimGap{Joint: j, Slope: clock.Vec{T: 1e-3 * rng.NormFloat64(), N: 1e-3 * rng.NormFloat64()},
				Cov: lsq.Round(5e-5), OnlyT: rng.Intn(2) == 0})
		}
	}
	return a, dials, gaps
}

// design writes the same problem anew, by MODEL §11, for gonum: four unknowns a
// piece, aT, bT, aN, bN about x 0 in units of 100 mm.
func design(a *crank.Assembly, dials []crank.Station, gaps []crank.RimGap) (m *mat.Dense, y *mat.Dense) {
	var rows [][]float64
	var out []float64
	n := 4 * a.Pieces()
	put := func(row []float64, v, sigma float64) {
		for i := range row {
			row[i] /= sigma
		}
		rows, out = append(rows, row), append(out, v/sigma)
	}
	place := func(piece int, x float64, e clock.Vec, cov lsq.Cov) {
		// Along and across the covariance's own axes.
		turn := 0.5 * math.Atan2(2*cov.TN, cov.TT-cov.NN)
		for _, by := range []float64{0, math.Pi / 2} {
			u := clock.Vec{T: math.Cos(turn + by), N: math.Sin(turn + by)}
			row := make([]float64, n)
			row[4*piece], row[4*piece+1], row[4*piece+2], row[4*piece+3] = u.T, u.T*x/100, u.N, u.N*x/100
			put(row, u.Dot(e), math.Sqrt(cov.Var(u)))
		}
	}
	for _, r := range a.Rests {
		place(r.Piece, r.At, clock.Vec{}, lsq.Round(1e-6))
	}
	for _, d := range dials {
		place(d.Piece, d.At, d.E, d.Cov)
	}
	for _, g := range gaps {
		phi := a.Joints[g.Joint].Phase * math.Pi / 6
		for i, v := range []float64{g.Slope.T, g.Slope.N} {
			if i == 1 && g.OnlyT {
				continue
			}
			row := make([]float64, n)
			ct, cn := math.Cos(phi), math.Sin(phi)
			if i == 1 {
				ct, cn = -math.Sin(phi), math.Cos(phi)
			}
			k := 4 * g.Joint
			row[k+1], row[k+3], row[k+5], row[k+7] = ct/100, cn/100, -ct/100, -cn/100
			put(row, v, math.Sqrt(g.Cov.TT))
		}
	}
	m, y = mat.NewDense(len(rows), n, nil), mat.NewDense(len(rows), 1, out)
	for i, row := range rows {
		m.SetRow(i, row)
	}
	return m, y
}

// Against gonum's QR on set-ups at random, seed 19, to 2 nm: there rests are known to one.
func TestAssemblyAgreesWithGonumQR(t *testing.T) {
	rng := rand.New(rand.NewSource(19))
	for range 200 {
		a, dials, gaps := randomAssembly(rng, false)
		s, err := a.Solve(dials, gaps)
		require.NoError(t, err)
		m, y := design(&a, dials, gaps)
		var qr mat.QR
		qr.Factorize(m)
		var x, inv, ata mat.Dense
		require.NoError(t, qr.SolveTo(&x, false, y))
		for k := range a.Pieces() {
			at := a.Rests[0].At + 7*float64(k)
			got := s.At(k, at)
			assert.InDelta(t, x.At(4*k, 0)+at/100*x.At(4*k+1, 0), got.T, 2e-6)
			assert.InDelta(t, x.At(4*k+2, 0)+at/100*x.At(4*k+3, 0), got.N, 2e-6)
		}
		ata.Mul(m.T(), m)
		if inv.Inverse(&ata) != nil {
			continue // gonum calls it ill-conditioned: normal equations of micron weights
		}
		for j, pin := range a.Joints {
			sin, cos := math.Sincos(pin.Phase * math.Pi / 6)
			c := mat.NewDense(1, 4*a.Pieces(), nil)
			for k, sign := range []float64{-1, 1} {
				for i, v := range []float64{-sin, -sin * pin.At / 100, cos, cos * pin.At / 100} {
					c.Set(0, 4*(j+k)+i, sign*v)
				}
			}
			var v mat.Dense
			v.Product(c, &inv, c.T())
			assert.InEpsilon(t, v.At(0, 0), s.UncertaintyOfD(j).Cov.NN, 1e-4)
		}
	}
}

// What its own readings tell each piece is found piece by piece, as for one throw, and is
// the same as all pieces together give, to which a gap that says nothing leads: set-ups at
// random, seed 21.
func TestPiecesAloneAreAsTheyAreTogether(t *testing.T) {
	rng := rand.New(rand.NewSource(21))
	for range 200 {
		a, dials, _ := randomAssembly(rng, false)
		for i := range dials {
			dials[i].Nu, dials[i].Dial = float64(i%3*4), i/3
		}
		alone, err := a.Solve(dials, nil)
		require.NoError(t, err)
		together, err := a.Solve(dials, []crank.RimGap{{Cov: lsq.Round(1e3)}})
		require.NoError(t, err)
		for j := range a.Joints {
			require.True(t, alone.DTold(j) && alone.GTold(j) && together.DTold(j) && together.GTold(j))
			assert.InDelta(t, 0, alone.Bends[j].D.Sub(together.Bends[j].D).Len(), 2e-6)
			assert.InDelta(t, 0, alone.Bends[j].G.Sub(together.Bends[j].G).Len(), 1e-7)
			sameDoubt(t, together.UncertaintyOfD(j), alone.UncertaintyOfD(j))
			sameDoubt(t, together.UncertaintyOfG(j), alone.UncertaintyOfG(j))
		}
	}
}

func sameDoubt(t *testing.T, want, got lsq.Uncertainty) {
	t.Helper()
	small := 1e-4 * (want.Cov.TT + want.Cov.NN)
	assert.InDelta(t, want.Cov.TT, got.Cov.TT, small)
	assert.InDelta(t, want.Cov.TN, got.Cov.TN, small)
	assert.InDelta(t, want.Cov.NN, got.Cov.NN, small)
	assert.InDelta(t, want.Nu, got.Nu, 1e-3*(1+want.Nu))
}

// Where the rank is short, what is told is what gonum's singular values say every
// solution agrees on; seed 20.
func TestAssemblyRankAgreesWithGonumSVD(t *testing.T) {
	rng := rand.New(rand.NewSource(20))
	short := 0
	for range 300 {
		a, dials, gaps := randomAssembly(rng, true)
		s, err := a.Solve(dials, gaps)
		require.NoError(t, err)
		m, _ := design(&a, dials, gaps)
		rank := func(m *mat.Dense) (n int) {
			r, c := m.Dims()
			unit := mat.NewDense(r, c, nil)
			for i := range r {
				row := mat.Row(nil, i, m)
				k := mat.Norm(mat.NewVecDense(c, row), 2)
				for j := range row {
					unit.Set(i, j, row[j]/k)
				}
			}
			var svd mat.SVD
			require.True(t, svd.Factorize(unit, mat.SVDNone))
			for _, v := range svd.Values(nil) {
				if v > 1e-9 {
					n++
				}
			}
			return n
		}
		full := rank(m)
		if full < 4*a.Pieces() {
			short++
			assert.NotEmpty(t, s.Advise(crank.Tolerance{RunOut: 0.02}).Settles)
		} else {
			assert.Empty(t, s.Advise(crank.Tolerance{RunOut: 0.02}).Settles)
		}
		for j, pin := range a.Joints {
			sin, cos := math.Sincos(pin.Phase * math.Pi / 6)
			twist := make([]float64, 4*a.Pieces())
			for k, sign := range []float64{-1, 1} {
				for i, v := range []float64{-sin, -sin * pin.At / 100, cos, cos * pin.At / 100} {
					twist[4*(j+k)+i] = sign * v
				}
			}
			var more mat.Dense
			more.Stack(m, mat.NewDense(1, len(twist), twist))
			assert.Equal(t, rank(&more) == full, s.TwistTold(j))
		}
		for _, step := range crank.PlanThrows([]crank.ThrowsPass{{Stand: s}}, crank.Tolerance{RunOut: 0.02}).Steps {
			if step.Move.Kind == crank.Strike {
				assert.True(t, s.TwistTold(step.Joint))
			} else {
				assert.True(t, s.GTold(step.Joint))
			}
		}
	}
	assert.Greater(t, short, 100, "set-ups with too few readings")
}

// One throw is the case of two pieces: the same figures as Crank.Solve, seed 21.
func TestTwoPiecesAreACrankOfOneThrow(t *testing.T) {
	rng := rand.New(rand.NewSource(21))
	for range 100 {
		c := crank.Crank{Throw: 40, Rim: 90, Pin: 115 + 10*rng.Float64(), Support: [2]float64{0, 240}, Bearing: [2]float64{60, 180}}
		c.Mount = crank.Mount(rng.Intn(2))
		var st []crank.Station
		for h := clock.Left; h <= clock.Right; h++ {
			for i := range 1 + rng.Intn(3) {
				st = append(st, crank.Station{Piece: int(h), At: 30 + 25*float64(i) + 130*float64(h), E: clock.Vec{T: 0.01 * rng.NormFloat64(), N: 0.01 * rng.NormFloat64()},
					Cov: lsq.Round(2e-3), Nu: 4 + float64(h), Dial: int(h)})
			}
		}
		pose, err := c.Solve(st)
		require.NoError(t, err)
		a := crank.Assembly{Joints: []crank.Joint{{At: c.Pin, Throw: c.Throw}}, Rim: c.Rim, Mount: c.Mount,
			Rests: [2]crank.Rest{{Piece: 0, At: 0}, {Piece: 1, At: 240}}}
		s, err := a.Solve(st, nil)
		require.NoError(t, err)
		assert.InDelta(t, 0, pose.D.Sub(s.Bends[0].D).Len(), 1e-7)
		assert.InDelta(t, 0, pose.G.Sub(s.Bends[0].G).Len(), 1e-9)
		assert.InEpsilon(t, pose.UncertaintyOfD(st).Cov.NN, s.UncertaintyOfD(0).Cov.NN, 1e-4)
		assert.InEpsilon(t, pose.UncertaintyOfG(st).Cov.TT, s.UncertaintyOfG(0).Cov.TT, 1e-4)
		assert.InEpsilon(t, pose.UncertaintyOfD(st).Nu, s.UncertaintyOfD(0).Nu, 1e-3)
		strike, gap := s.Moves(0)
		one, _ := pose.Strike()
		two, _ := pose.Close()
		assert.Equal(t, one.Wheel, strike.Wheel)
		assert.Equal(t, one.Hour, strike.Hour)
		assert.Equal(t, two.Kind, gap.Kind)
		assert.InDelta(t, two.Hour, gap.Hour, 1e-4)
		for i, p := range st {
			f := pose.Forecast(p.Half(), p.At)
			assert.InDelta(t, 2*f.Strike.Len(), s.RunOuts(s.Without(0, crank.Strike))[i], 2e-4, "an arc about the pin, where one throw takes its tangent")
			assert.InDelta(t, 2*f.Gap.Len(), s.RunOuts(s.Without(0, crank.Squeeze))[i], 1e-7)
		}
	}
}

// An inner journal with one dial has no known lean: both joints' gaps are open, no
// move is advised that not every solution agrees on, and a second place on the
// journal is asked for first (MODEL §11).
func TestAnInnerJournalReadOnceIsLeftOpen(t *testing.T) {
	a := crank.Assembly{Rim: 50, Mount: crank.VBlocks, Rests: [2]crank.Rest{{Piece: 0, At: 0}, {Piece: 2, At: 240}},
		Joints: []crank.Joint{{At: 90, Throw: 25}, {At: 150, Throw: 25, Phase: 6}}}
	dial := func(piece int, at, n float64) crank.Station {
		return crank.Station{Piece: piece, At: at, E: clock.Vec{N: n}, Cov: lsq.Round(1e-3)}
	}
	s, err := a.Solve([]crank.Station{dial(0, 30, 0.05), dial(1, 120, 0.1), dial(2, 210, -0.05)}, nil)
	require.NoError(t, err)
	for j := range 2 {
		assert.False(t, s.TwistTold(j))
		assert.False(t, s.GTold(j))
	}
	got := s.Advise(crank.Tolerance{RunOut: 0.025})
	assert.Equal(t, crank.CantTell, got.Verdict)
	assert.Empty(t, crank.PlanThrows([]crank.ThrowsPass{{Stand: s}}, crank.Tolerance{RunOut: 0.025}).Steps)
	require.NotEmpty(t, got.Settles)
	assert.Equal(t, 1, got.Settles[0].Piece)
	assert.False(t, got.Settles[0].Gap)
	assert.Zero(t, got.Settles[0].Leaves)
	assert.True(t, got.Settles[1].Gap)
}

// Mirrored, in other units and turned end for end it is the same crank.
func TestThrowsMirroredTurnedAndScaled(t *testing.T) {
	for _, c := range throwsCases(t) {
		a, dials, gaps := c.assembly()
		s, err := a.Solve(dials, gaps)
		require.NoError(t, err)
		n := len(a.Joints)

		const k = 1 / 25.4
		inch := a
		inch.Joints, inch.Rim = append([]crank.Joint(nil), a.Joints...), a.Rim*k
		for i := range inch.Joints {
			inch.Joints[i].At, inch.Joints[i].Throw = a.Joints[i].At*k, a.Joints[i].Throw*k
		}
		for i := range inch.Rests {
			inch.Rests[i].At *= k
		}
		small := append([]crank.Station(nil), dials...)
		for i := range small {
			small[i].At, small[i].E = dials[i].At*k, dials[i].E.Scale(k)
		}
		in, err := inch.Solve(small, gaps)
		require.NoError(t, err)

		// End for end: places from the other end, hours mirrored, pin 1 still at 12.
		end := 1000.0
		round := crank.Assembly{Rim: a.Rim, Mount: a.Mount}
		for i := range a.Joints {
			j := a.Joints[n-1-i]
			round.Joints = append(round.Joints, crank.Joint{At: end - j.At, Throw: j.Throw, Phase: -j.Phase})
		}
		for i, r := range a.Rests {
			round.Rests[1-i] = crank.Rest{Piece: n - r.Piece, At: end - r.At}
		}
		var back []crank.Station
		for _, d := range dials {
			d.Piece, d.At, d.E.N = n-d.Piece, end-d.At, -d.E.N
			back = append(back, d)
		}
		var gapsBack []crank.RimGap
		for _, g := range gaps {
			gapsBack = append(gapsBack, crank.RimGap{Joint: n - 1 - g.Joint, Slope: clock.Vec{T: g.Slope.T, N: -g.Slope.N}})
		}
		turned, err := round.Solve(back, gapsBack)
		require.NoError(t, err)
		for j := range n {
			want, got, small := s.Bends[j], turned.Bends[n-1-j], in.Bends[j]
			assert.InDelta(t, 0, small.D.Scale(1/k).Sub(want.D).Len(), 3e-4, c.Name)
			assert.InDelta(t, 0, small.G.Sub(want.G).Len(), 1e-5, c.Name)
			// From the other side left and right change, and so does the sign of d_t; d_n changes
			// twice. The twists are reckoned from the pin at the left, so that the second
			// order differs: by less than the micron that is asked.
			assert.InDelta(t, -want.D.T, got.D.T, micron, c.Name)
			assert.InDelta(t, want.D.N, got.D.N, micron, c.Name)
			assert.InDelta(t, want.G.T, got.G.T, 2e-5, c.Name)
			assert.InDelta(t, -want.G.N, got.G.N, 2e-5, c.Name)
		}
	}
}

// An answer's time against the number of throws, two dials on each piece.
func BenchmarkThrows(b *testing.B) {
	for n := 1; n <= crank.MostThrows; n++ {
		a, dials := twisted(n)
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			for range b.N {
				s, err := a.Solve(dials, nil)
				if err != nil {
					b.Fatal(err)
				}
				if p := crank.PlanThrows([]crank.ThrowsPass{{Stand: s}}, crank.Tolerance{RunOut: 0.02}); p.Why != crank.Work {
					b.Fatal("nothing to do")
				}
			}
		})
	}
}

// twisted is a crank of so many throws with a twist and a gap at every joint and throws
// that match, on V-blocks, read at two places of each piece.
func twisted(n int) (a crank.Assembly, dials []crank.Station) {
	rng := rand.New(rand.NewSource(int64(n)))
	a = crank.Assembly{Rim: 60, Mount: crank.VBlocks, Rests: [2]crank.Rest{{Piece: 0, At: 10}, {Piece: n, At: 70*float64(n) + 60}}}
	var y, slope clock.Vec // of the piece at its left end
	stands := func(at, from float64) clock.Vec { return y.Add(slope.Scale(at - from)) }
	for k := range n + 1 {
		from := 70 * float64(k)
		for i := range 2 {
			at := from + 20 + 30*float64(i)
			dials = append(dials, crank.Station{Piece: k, At: at, E: stands(at, from), Cov: lsq.Round(1e-3), Nu: 3})
		}
		if k == n {
			break
		}
		pin := crank.Joint{At: from + 70, Throw: 25, Phase: 6 * float64(k%2)}
		a.Joints = append(a.Joints, pin)
		y = stands(pin.At, from).Add(clock.Polar(0.03+0.05*rng.Float64(), pin.Phase+3+6*float64(rng.Intn(2))))
		slope = slope.Sub(clock.Polar(5e-4*rng.NormFloat64(), 12*rng.Float64()))
	}
	// hung so that it stands true at both rests
	last := stands(a.Rests[1].At, 70*float64(n))
	for i := range dials {
		part := (dials[i].At - a.Rests[0].At) / (a.Rests[1].At - a.Rests[0].At)
		dials[i].E = dials[i].E.Sub(last.Scale(part))
	}
	return a, dials
}
