package crank_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/tryout"
)

// in puts main bearings on both shafts and half-way along each inner journal.
func (r *rig) in() *rig {
	n := len(r.Joints)
	r.Mains = []crank.Rest{{Piece: 0, At: r.Joints[0].At - 25}}
	for j := 1; j < n; j++ {
		r.Mains = append(r.Mains, crank.Rest{Piece: j, At: (r.Joints[j-1].At + r.Joints[j].At) / 2})
	}
	r.Mains = append(r.Mains, crank.Rest{Piece: n, At: r.Joints[n-1].At + 25})
	return r
}

// runs is how each journal truly runs in the main bearings: run-out [mm] and lean
// [minutes of arc] from the line through all, gonum's regression of each co-ordinate.
func (r *rig) runs() (runOut, lean []float64) {
	var at, towards12, towards3 []float64
	for _, m := range r.Mains {
		e := r.made.Eccentricity(m.At)
		at, towards12, towards3 = append(at, m.At), append(towards12, e.T), append(towards3, e.N)
	}
	var from, slope clock.Vec
	from.T, slope.T = stat.LinearRegression(at, towards12, nil, false)
	from.N, slope.N = stat.LinearRegression(at, towards3, nil, false)
	const along = 5
	for _, m := range r.Mains {
		runOut = append(runOut, 2*r.made.Eccentricity(m.At).Sub(from.Add(slope.Scale(m.At))).Len())
		own := r.made.Eccentricity(m.At + along).Sub(r.made.Eccentricity(m.At - along)).Scale(1. / (2 * along))
		lean = append(lean, math.Atan(own.Sub(slope).Len())*180*60/math.Pi)
	}
	return runOut, lean
}

// exact are the dials' places with what they would show of a perfect shaft.
func (r *rig) exact() []crank.Station {
	dials := append([]crank.Station(nil), r.dials...)
	for i := range dials {
		dials[i].E = r.made.Eccentricity(dials[i].At)
	}
	return dials
}

// Exact bodies of one to four throws: run-out and lean in the main bearings as the
// bodies have them.
func TestMainBearingsOfExactBodies(t *testing.T) {
	most := [2]float64{}
	for _, phases := range [][]float64{{0}, {0, 6}, {0, 0}, {0, 9}, {0, 4, 8}, {0, 6, 6, 0}} {
		for seed := range int64(20) {
			r := newRig(seed+1, even, phases...).in()
			s, err := r.Solve(r.exact(), nil)
			require.NoError(t, err)
			runOut, lean := r.runs()
			for i, m := range s.Advise(crank.Tolerance{RunOut: allowed, Tilt: 4}).Mains {
				require.True(t, m.Told)
				assert.InDelta(t, runOut[i], m.RunOut.Value, micron)
				assert.InDelta(t, lean[i], m.Lean.Value, 0.1)
				most[0] = math.Max(most[0], math.Abs(runOut[i]-m.RunOut.Value))
				most[1] = math.Max(most[1], math.Abs(lean[i]-m.Lean.Value))
			}
		}
	}
	t.Logf("worst run-out %.2f µm, lean %.3f′", most[0]/micron, most[1])
}

// The stated 95 % of what main bearings would show, of readings of 8 points to half a thou.
func TestMainBearingsAreAsSureAsStated(t *testing.T) {
	all, runOuts, leans := 0, 0, 0
	for seed := range int64(150) {
		r := newRig(seed+1, even, 0, 4, 8).in()
		runOut, lean := r.runs()
		for i, m := range r.reads(t).Advise(crank.Tolerance{RunOut: allowed, Tilt: 4}).Mains {
			all++
			if math.Abs(m.RunOut.Value-runOut[i]) <= m.RunOut.HalfWidth95 {
				runOuts++
			}
			if math.Abs(m.Lean.Value-lean[i]) <= m.Lean.HalfWidth95 {
				leans++
			}
		}
	}
	t.Logf("run-out within ± %.1f %%, lean %.1f %% of %d", 100*float64(runOuts)/float64(all), 100*float64(leans)/float64(all), all)
	assert.GreaterOrEqual(t, float64(runOuts), 0.95*float64(all))
	assert.GreaterOrEqual(t, float64(leans), 0.95*float64(all))
}

// One throw in its own bearings: as crank.Running has it.
func TestMainBearingsOfOneThrow(t *testing.T) {
	r := newRig(1, even, 0).in()
	s, err := r.Solve(r.exact(), nil)
	require.NoError(t, err)
	j := r.Joints[0]
	one := crank.Crank{Throw: j.Throw, Rim: r.Rim, Pin: j.At, Support: [2]float64{r.Rests[0].At, r.Rests[1].At}, Bearing: [2]float64{r.Mains[0].At, r.Mains[1].At}}
	var st []crank.Station
	for i, d := range r.exact() {
		d.Piece = i
		st = append(st, d)
	}
	pose, err := one.Solve(st)
	require.NoError(t, err)
	axes := pose.Running(pose.D, pose.G)
	for i, m := range s.Advise(crank.Tolerance{RunOut: allowed, Tilt: 4}).Mains {
		assert.InDelta(t, axes.Tilt(clock.End(i)), m.Lean.Value, 1e-3)
		assert.InDelta(t, 0, m.RunOut.Value, 1e-9, "two bearings make the line")
	}
}

// An inner journal with one dial has no known lean: nothing is called true by it.
func TestALeanThatIsNotToldIsNotCalledTrue(t *testing.T) {
	r, c := drawn([]float64{0, 6})
	r.sit(c, even, 1).in()
	dials := r.exact()
	for i := range dials {
		dials[i].Cov.TT, dials[i].Cov.NN = 1e-8, 1e-8
	}
	s, err := r.Solve(dials, nil)
	require.NoError(t, err)
	tol := crank.Tolerance{RunOut: allowed, Tilt: 4}
	assert.Equal(t, crank.Fit, s.Advise(tol).Verdict)
	s, err = r.Solve(append(dials[:1:1], dials[2:]...), nil)
	require.NoError(t, err)
	got := s.Advise(tol)
	assert.Equal(t, crank.FitAsHung, got.Verdict)
	assert.False(t, got.Mains[1].Told)
	assert.NotEmpty(t, got.Settles)
}

// A journal that leans counts against a crank whose every needle stands inside.
func TestALeaningJournalIsOutOfTrue(t *testing.T) {
	r, c := drawn([]float64{0, 6})
	leans := tryout.Start{G: clock.Vec{T: 6e-4}}
	r.sit(c, even, 1, leans, leans).in()
	dials := r.exact()
	for i := range dials {
		dials[i].Cov.TT, dials[i].Cov.NN = 1e-8, 1e-8
	}
	s, err := r.Solve(dials, nil)
	require.NoError(t, err)
	worst := 0.0
	for _, v := range s.RunOuts(make([]crank.Bend, 2)) {
		worst = math.Max(worst, v)
	}
	tol := crank.Tolerance{RunOut: worst + 0.01}
	assert.Equal(t, crank.Fit, s.Advise(tol).Verdict)
	_, lean := r.runs()
	tol.Tilt = lean[0] - 0.5
	n := crank.PlanThrows([]crank.ThrowsPass{{Stand: s}}, tol)
	assert.Equal(t, crank.OutOfTrue, n.Verdict)
	require.Equal(t, crank.Work, n.Why)
	require.NotEmpty(t, n.Steps)
	assert.NotEqual(t, crank.Strike, n.Steps[0].Kind, "there is no twist")
}
