package crank_test

import (
	"math"
	"slices"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/crank"
	"pintwelve/core/tryout"
)

// The check that the advice trues cranks of several throws, made up as exact bodies and
// read by 8 points a dial, each joint yielding by itself as it will; and that the worst
// needle first does worse on the same ones. The bounds stand for 120 cranks a row.
func TestAdviceTruesThrows(t *testing.T) {
	n := cranks(t)
	t.Log("\n" + heading)
	for _, row := range []struct {
		name        string
		phases      []float64
		runs        bool // in main bearings, where its journals may lean but so much
		median, p95 int
	}{
		{"twin 180", []float64{0, 6}, false, 5, 8},
		{"twin 360", []float64{0, 0}, false, 5, 8},
		{"twin 270", []float64{0, 9}, false, 5, 8},
		{"triple 120", []float64{0, 4, 8}, false, 7, 11},
		{"four", []float64{0, 6, 6, 0}, false, 9, 14},
		{"twin 180, leans too", []float64{0, 6}, true, 5, 8},
		{"triple 120, leans too", []float64{0, 4, 8}, true, 7, 11},
	} {
		y, f := trueThrows(t, n, throwsAdvice, row.runs, row.phases)
		byFeel, _ := trueThrows(t, n, worstNeedleFirst, row.runs, row.phases)
		t.Logf("\n%s\n%s\n  throws beyond mending: %d of %d told, %d left, worse %d", y.line(row.name), byFeel.line("  worst needle first"),
			f.ended[unmendable], f.cranks, f.ended[left], f.worse)
		assert.LessOrEqual(t, y.at(50), row.median)
		assert.LessOrEqual(t, y.at(95), row.p95)
		assert.GreaterOrEqual(t, y.insidePercent(), 97.0)
		assert.LessOrEqual(t, y.neverPercent(), 5.0)
		assert.LessOrEqual(t, y.worse, n/500)
		assert.Greater(t, byFeel.mean(), y.mean())
		assert.Greater(t, byFeel.neverPercent(), y.neverPercent())
	}
}

// trueThrows trues made-up cranks by a rule: those that bumping can true, and those
// whose throws by themselves show more than is allowed.
func trueThrows(t *testing.T, n int, rule throwsRule, runs bool, phases []float64) (y, floored tally) {
	for seed := range int64(n) {
		r := newRig(seed+1, even, phases...)
		if runs {
			r.in()
		}
		j := r.work(t, rule)
		if j.floored {
			floored.add(&j)
		} else {
			y.add(&j)
		}
	}
	sort.Ints(y.passes)
	return y, floored
}

// One throw is the case of two pieces: as a crank of several throws it is told the same, and
// each move that one throw is told of is among the moves, at the same hour and as hard, over
// whole jobs. (Of two faults the rules of one throw may leave the smaller for the next pass.)
func TestOneThrowIsPlannedAsSeveralAre(t *testing.T) {
	compared := 0
	for seed := range int64(60) {
		b := setUp(t, &row{yields: 1, points: 8}, seed, 3*thou, 15*thou)
		a := crank.Assembly{
			Joints: []crank.Joint{{At: b.set.Pin, Throw: b.set.Throw}}, Rim: b.set.Rim, Mount: b.set.Mount,
			Rests: [2]crank.Rest{{Piece: 0, At: b.set.Support[0]}, {Piece: 1, At: b.set.Support[1]}},
		}
		var passes []crank.Pass
		var several []crank.ThrowsPass
		for range 6 {
			p := b.reads(t)
			s, err := a.Solve(p.Stations, nil)
			require.NoError(t, err)
			passes, several = append(passes, p), append(several, crank.ThrowsPass{Stand: s})
			one, all := crank.Plan(passes, crank.Tolerance{RunOut: allowed}), crank.PlanThrows(several, crank.Tolerance{RunOut: allowed})
			require.Equal(t, one.Why, all.Why, "seed %d, pass %d", seed, len(passes))
			if one.Why != crank.Work {
				break
			}
			for _, step := range one.Steps {
				compared++
				assert.True(t, slices.ContainsFunc(all.Steps, func(other crank.JointMove) bool {
					return other.Kind == step.Kind && other.Wheel == step.Wheel && math.Abs(other.Hour-step.Hour) < 0.1 && math.Abs(other.Dose/step.Dose-1) < 0.02
				}), "seed %d, pass %d: %v, not among %v", seed, len(passes), step, all.Steps)
				done := crank.Done{Kind: step.Kind, Wheel: step.Wheel, Hour: step.Hour, Dose: step.Dose}
				several[len(several)-1].Done = append(several[len(several)-1].Done, crank.JointDone{Done: done})
				passes[len(passes)-1].Done = append(passes[len(passes)-1].Done, done)
				require.NoError(t, b.made.Do(tryout.Blow{Kind: tryout.Kind(done.Kind), Wheel: done.Wheel, Hour: done.Hour, Dose: done.Dose}))
			}
		}
	}
	assert.Greater(t, compared, 100)
}
