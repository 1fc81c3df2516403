package crank_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/dial"
	"pintwelve/core/tryout"
)

// rig is a made-up crank of several throws with its dials.
type rig struct {
	crank.Assembly
	dials   []crank.Station // where they stand
	made    *tryout.Made
	fits    [][]*dial.Harmonics
	floored bool // no bumping could true it, from the start
}

// worst is the worst true run-out of a dial.
func (r *rig) worst() (worst float64) {
	for i := range r.dials {
		worst = math.Max(worst, r.made.RunOutAt(r.dials[i].At))
	}
	return worst
}

// true tells whether it is: every dial inside, and every journal in its main bearing.
func (r *rig) true() bool {
	if r.worst() > allowed {
		return false
	}
	runOut, lean := r.runs()
	for i := range lean {
		if runOut[i] > allowed || lean[i] > mayLean {
			return false
		}
	}
	return true
}

// reads takes a round: eight points a dial, to half a thou, a steady hand.
func (r *rig) reads(t *testing.T) *crank.Stand {
	dials := append([]crank.Station(nil), r.dials...)
	for i := range dials {
		hours := dial.Even(8, false)
		turn := dial.Turn{From: clock.Left, Hours: hours, Values: r.made.TurnAt(dials[i].At, tryout.HalfThou, hours...), Division: division}
		f, err := turn.Fit()
		require.NoError(t, err)
		r.fits[i] = append(r.fits[i], &f)
		got := f.Reading(dial.Pool(division, r.fits[i]...))
		dials[i] = crank.Station{
			Piece: dials[i].Piece, At: dials[i].At, E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: i, RunOut: got.RunOut, Sigma: got.Sigma, Unsure: got.Unsure,
		}
	}
	s, err := r.Solve(dials, nil)
	require.NoError(t, err)
	return s
}

// does makes a move as a hand makes it; one so hard that the crank would come apart isn't.
func (r *rig) does(d *crank.JointDone) {
	r.made.Do(tryout.Blow{Joint: d.Joint, Kind: tryout.Kind(d.Kind), Wheel: d.Wheel, Hour: d.Hour, Dose: d.Dose})
}

// newRig is a crank of pins at such hours, its worst true run-out even between 3 and
// 15 thou, that yields as the temper has it at each joint and kind by itself.
func newRig(seed int64, temper tryout.Temper, phases ...float64) *rig {
	r, c := drawn(phases)
	joint, by := throwOut(&c, seed, len(phases))
	out := make([]tryout.Start, len(phases))
	out[joint].D.T = by
	r.sit(c, temper, seed, out...)
	r.floored = r.worst() > allowed
	sits := c.ByChance(uint64(seed), 3*thou, 15*thou)
	sits[joint].D.T = by
	return r.sit(c, temper, seed, sits...)
}

// sit puts a crank on the lathe whose joints sit so.
func (r *rig) sit(c tryout.Crank, temper tryout.Temper, seed int64, sits ...tryout.Start) *rig {
	made, err := tryout.New(c, temper, uint64(seed), sits...)
	if err != nil {
		panic(err)
	}
	r.made = made
	return r
}

// drawn is a crank as drawn: a dial on each shaft, two on each inner journal.
func drawn(phases []float64) (*rig, tryout.Crank) {
	r := &rig{Assembly: crank.Assembly{Rim: 55, Mount: crank.Centres, CentresKnown: true}}
	x := 110.0
	c := tryout.Crank{Throw: 27, Rim: 55, Pin: x}
	place := func(piece int, at float64) {
		r.dials = append(r.dials, crank.Station{Piece: piece, At: at})
	}
	place(0, 65)
	for j, phase := range phases {
		if j > 0 {
			place(j, x+30)
			place(j, x+70)
			x += 100
			c.More = append(c.More, tryout.Pin{At: x, Throw: 27, Phase: phase})
		}
		r.Joints = append(r.Joints, crank.Joint{At: x, Throw: 27, Phase: phase})
	}
	place(len(phases), x+45)
	c.Support, c.Dial = [2]float64{0, x + 110}, [2]float64{65, x + 45}
	r.Rests = [2]crank.Rest{{Piece: 0, At: 0}, {Piece: len(phases), At: x + 110}}
	r.fits = make([][]*dial.Harmonics, len(r.dials))
	return r, c
}

// throwOut is by how much a throw of one crank in ten is out of match and which: as
// shows, all else true, by up to three thou.
func throwOut(c *tryout.Crank, seed int64, joints int) (joint int, by float64) {
	if seed%10 != 0 {
		return 0, 0
	}
	rng := rand.New(rand.NewSource(-seed))
	joint = rng.Intn(joints)
	runOut := 3 * thou * (2*rng.Float64() - 1)
	return joint, math.Copysign(c.Mismatch(joint, math.Abs(runOut)), runOut)
}

// throwsRule says what to do after the passes so far, how it ended unless it is to
// be read again.
type throwsRule func(passes []crank.ThrowsPass) (do []crank.JointDone, ended ending, again bool)

// throwsAdvice is the page's own.
func throwsAdvice(passes []crank.ThrowsPass) (do []crank.JointDone, ended ending, again bool) {
	n := crank.PlanThrows(passes, crank.Tolerance{RunOut: allowed, Tilt: mayLean})
	if n.Why == crank.Work {
		for i := range n.Steps {
			s := &n.Steps[i]
			do = append(do, crank.JointDone{Joint: s.Joint, Done: crank.Done{Kind: s.Kind, Wheel: s.Wheel, Hour: s.Hour, Dose: s.Dose}})
		}
	}
	for _, a := range n.Asks {
		again = again || a.What == crank.AskReadAgain
	}
	return do, [...]ending{crank.Work: givenUp, crank.Leave: left, crank.Unmendable: unmendable, crank.Unclear: unclear, crank.Stop: unclear}[n.Why], again
}

// worstNeedleFirst works as is done by feel: at the pin next to the dial that is
// furthest out, striking where the pieces' journals stand opposite and closing the gap
// where they don't, as hard as usual for that run-out, and nothing learned.
func worstNeedleFirst(passes []crank.ThrowsPass) (do []crank.JointDone, ended ending, again bool) {
	s := passes[len(passes)-1].Stand
	a := s.Advise(crank.Tolerance{RunOut: allowed})
	if a.Worst.Value <= allowed {
		return nil, left, false
	}
	dials := s.Dials()
	d := &dials[a.Station]
	joint := min(d.Piece, len(s.Bends)-1)
	if d.Piece > 0 && d.Piece < len(s.Bends) && d.At-s.Assembly.Joints[d.Piece-1].At < s.Assembly.Joints[d.Piece].At-d.At {
		joint = d.Piece - 1
	}
	strike, gap := s.Moves(joint)
	before := s.RunOuts(make([]crank.Bend, len(s.Bends)))[a.Station]
	byStrike := before - s.RunOuts(s.Without(joint, crank.Strike))[a.Station]
	byGap := before - s.RunOuts(s.Without(joint, crank.Squeeze))[a.Station]
	m, dose := strike, strike.Amount/crank.UsualStrike
	if byGap > byStrike {
		m, dose = gap, gap.Amount/gap.Arm/crank.UsualBend
	}
	return []crank.JointDone{{Joint: joint, Done: crank.Done{Kind: m.Kind, Wheel: m.Wheel, Hour: m.Hour, Dose: short * dose}}}, givenUp, false
}

// mayLean is how far journals may lean in their main bearings, where a crank has any:
// minutes of arc.
const mayLean = 4

// travel is more run-out than anyone works on at, mm.
const travel = 100 * thou

// work trues a crank by a rule.
func (r *rig) work(t *testing.T, rule throwsRule) (j job) {
	j.floored = r.floored
	began := r.worst()
	var passes []crank.ThrowsPass
	for more := true; more; {
		if j.rounds++; !j.reached && r.true() {
			j.reached, j.passes = true, j.rounds-1
		}
		passes = append(passes, crank.ThrowsPass{Stand: r.reads(t)})
		do, ended, again := rule(passes)
		j.ended = ended
		if more = (again || len(do) > 0) && j.rounds < longest; !more && ended != left && (again || len(do) > 0) {
			j.ended = givenUp
		}
		if more {
			passes[len(passes)-1].Done = do
			for i := range do {
				r.does(&do[i])
				j.moves++
			}
			if r.worst() > travel {
				j.ended, more = givenUp, false
			}
		}
	}
	j.inside = r.true()
	j.worse = r.worst() > began+division
	return j
}
