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

// solid is how a piece stands: a point p of it as drawn is at origin + p turned.
type solid struct{ origin, x, y, z vec3 }

func (s *solid) point(p vec3) vec3 {
	return s.origin.add(s.x.times(p[0])).add(s.y.times(p[1])).add(s.z.times(p[2]))
}

func (s *solid) turn(through, axis vec3, angle float64) {
	s.origin = s.origin.sub(through).turned(axis, angle).add(through)
	s.x, s.y, s.z = s.x.turned(axis, angle).unit(), s.y.turned(axis, angle).unit(), s.z.turned(axis, angle).unit()
}

// rig is a crank of several throws as it is, its pieces rigid bodies turned by whole
// rotations, and how it answers to moves; apart from the solver's small angles.
type rig struct {
	crank.Assembly
	dials   []crank.PieceDial // where they stand
	pieces  []solid
	temper  tryout.Temper
	gain    [][3]float64 // by joint and kind, times the usual
	ratio   []float64    // by joint: slope for each mm of offset that moves the dials alike
	rng     *rand.Rand
	fits    [][]*dial.Harmonics
	floored bool // no bumping could true it, from the start
}

// pin is the middle of a joint's pin, which sits in the piece on its left, and twelve
// and three of its own clock.
func (r *rig) pin(j int) (at, twelve, three vec3) {
	s, pin := &r.pieces[j], r.Joints[j]
	sin, cos := math.Sincos(clock.Radians(pin.Phase))
	twelve = s.y.times(cos).add(s.z.times(sin))
	three = s.x.cross(twelve)
	return s.point(vec3{pin.At, pin.Throw * cos, pin.Throw * sin}), twelve, three
}

func (r *rig) turnRight(j int, through, axis vec3, angle float64) {
	for k := j + 1; k < len(r.pieces); k++ {
		r.pieces[k].turn(through, axis, angle)
	}
}

// twist brings the piece on the right of a joint over by mm towards 3 of its clock.
func (r *rig) twist(j int, by float64) {
	at, _, _ := r.pin(j)
	r.turnRight(j, at, r.pieces[j].x, -by/r.Joints[j].Throw)
}

// hinge opens the gap at a joint along a slope of its own clock.
func (r *rig) hinge(j int, slope clock.Vec) {
	if n := slope.Len(); n > 0 {
		at, twelve, three := r.pin(j)
		u := twelve.times(slope.T / n).add(three.times(slope.N / n))
		r.turnRight(j, at, r.pieces[j].x.cross(u), -math.Atan(n))
	}
}

// mismatch moves what is right of a joint towards its 12.
func (r *rig) mismatch(j int, by float64) {
	_, twelve, _ := r.pin(j)
	for k := j + 1; k < len(r.pieces); k++ {
		r.pieces[k].origin = r.pieces[k].origin.add(twelve.times(by))
	}
}

// spindle is the line the crank turns on, and 12 and 3 by its first pin.
func (r *rig) spindle() (at, axis, twelve, three vec3) {
	from := r.pieces[r.Rests[0].Piece].point(vec3{r.Rests[0].At})
	to := r.pieces[r.Rests[1].Piece].point(vec3{r.Rests[1].At})
	axis = to.sub(from).unit()
	pin, _, _ := r.pin(0)
	twelve = pin.sub(from).without(axis).unit()
	return from, axis, twelve, axis.cross(twelve)
}

// shows is how far a round journal's surface stands out under a dial at an hour.
func (r *rig) shows(d *crank.PieceDial, hour float64) float64 {
	at, axis, twelve, three := r.spindle()
	s, c := math.Sincos(clock.Radians(hour))
	out := twelve.times(c).add(three.times(s))
	from := at.add(axis.times((d.At - at[0]) / axis[0]))
	piece := &r.pieces[d.Piece]
	o, v := from.sub(piece.point(vec3{d.At})).without(piece.x), out.without(piece.x)
	half := o.dot(v) / v.dot(v)
	return math.Sqrt(half*half-(o.dot(o)-12.5*12.5)/v.dot(v)) - half
}

// runOut is a dial's true one.
func (r *rig) runOut(d *crank.PieceDial) float64 {
	at, axis, _, _ := r.spindle()
	piece := &r.pieces[d.Piece]
	p := piece.point(vec3{d.At})
	p = p.add(piece.x.times((d.At - p[0]) / piece.x[0])).sub(at)
	off := p.without(axis)
	return 2 * math.Sqrt(off.dot(off))
}

func (r *rig) worst() (worst float64) {
	for i := range r.dials {
		worst = math.Max(worst, r.runOut(&r.dials[i]))
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
	dials := append([]crank.PieceDial(nil), r.dials...)
	for i := range dials {
		turn := dial.Turn{From: clock.Left, Hours: dial.Even(8, false), Division: division}
		zero := r.rng.Float64() * division
		for _, hour := range turn.Hours {
			v := r.shows(&dials[i], hour) - 12.5 + zero + tryout.HalfThou.Scatter*r.rng.NormFloat64()
			turn.Values = append(turn.Values, math.Round(v/division)*division)
		}
		f, err := turn.Fit()
		require.NoError(t, err)
		r.fits[i] = append(r.fits[i], &f)
		got := f.Reading(dial.Pool(division, r.fits[i]...))
		dials[i].Station = crank.Station{
			At: dials[i].At, E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: i, RunOut: got.RunOut, Sigma: got.Sigma, Unsure: got.Unsure,
		}
	}
	s, err := r.Solve(dials, nil)
	require.NoError(t, err)
	return s
}

// does makes a move as a hand makes it.
func (r *rig) does(d *crank.JointDone) {
	j := d.Joint
	effect := d.Dose * r.gain[j][d.Kind] * (1 + r.temper.Hand*(2*r.rng.Float64()-1))
	astray := clock.Polar(r.temper.Cross, 12*r.rng.Float64())
	if d.Kind == crank.Strike {
		by := -effect * r.temper.Strike * math.Sin(clock.Radians(d.Hour))
		if d.Wheel == clock.Left {
			by = -by
		}
		r.twist(j, by)
		r.hinge(j, astray.Scale(math.Abs(by)*r.ratio[j]))
		return
	}
	to := clock.Polar(r.Rim, d.Hour).Sub(clock.Vec{T: r.Joints[j].Throw})
	slope := effect * r.temper.Bend
	if d.Kind == crank.Squeeze {
		slope = -slope
	}
	r.hinge(j, to.Scale(slope/to.Len()))
	lost := math.Abs(slope) / r.ratio[j] * r.temper.Cross
	r.twist(j, math.Copysign(lost, astray.N))
}

// straighten puts the pieces as drawn.
func (r *rig) straighten() {
	r.pieces = nil
	for range r.Pieces() {
		r.pieces = append(r.pieces, solid{vec3{}, vec3{1}, vec3{0, 1}, vec3{0, 0, 1}})
	}
}

// newRig is a crank of pins at such hours, its worst true run-out even between 3 and
// 15 thou, that yields as the temper has it at each joint and kind by itself.
func newRig(seed int64, temper tryout.Temper, phases ...float64) *rig {
	rng := rand.New(rand.NewSource(seed))
	r := &rig{rng: rng, temper: temper, Assembly: crank.Assembly{Rim: 55, Mount: crank.Centres, CentresKnown: true}}
	x := 110.0
	place := func(piece int, at float64) {
		r.dials = append(r.dials, crank.PieceDial{Piece: piece, Station: crank.Station{At: at}})
	}
	place(0, 65)
	for j, phase := range phases {
		r.Joints = append(r.Joints, crank.Joint{At: x, Throw: 27, Phase: phase})
		if j < len(phases)-1 {
			place(j+1, x+30)
			place(j+1, x+70)
			x += 100
		}
	}
	place(len(phases), x+45)
	r.Rests = [2]crank.Rest{{Piece: 0, At: 0}, {Piece: len(phases), At: x + 110}}
	r.fits = make([][]*dial.Harmonics, len(r.dials))
	type fault struct {
		twist float64
		gap   clock.Vec
	}
	var faults []fault
	for j := range r.Joints {
		r.straighten()
		r.twist(j, 0.01)
		perD := r.worst() / 0.01
		r.straighten()
		r.hinge(j, clock.Vec{N: 0.01})
		perG := r.worst() / 0.01
		r.ratio = append(r.ratio, perD/perG)
		faults = append(faults, fault{rng.NormFloat64() / perD, clock.Vec{T: rng.NormFloat64() / perG, N: rng.NormFloat64() / perG}})
		var gain [3]float64
		for k := range gain {
			gain[k] = math.Exp(temper.Gain * rng.NormFloat64())
		}
		r.gain = append(r.gain, gain)
	}
	joint, by := r.mismatched(seed)
	worst, k := (3+12*rng.Float64())*thou, 0.01
	for range 5 {
		r.straighten()
		for j, f := range faults {
			r.twist(j, k*f.twist)
			r.hinge(j, f.gap.Scale(k))
		}
		k *= worst / r.worst()
	}
	r.mismatch(joint, by)
	return r
}

// mismatched is by how much a throw of one crank in ten is out of match and which: as
// shows, all else true, by up to three thou. It notes whether that is beyond mending.
func (r *rig) mismatched(seed int64) (joint int, by float64) {
	if seed%10 != 0 {
		return 0, 0
	}
	rng := rand.New(rand.NewSource(-seed))
	joint = rng.Intn(len(r.Joints))
	r.straighten()
	r.mismatch(joint, 0.01)
	by = 0.01 * 3 * thou * (2*rng.Float64() - 1) / r.worst()
	r.straighten()
	r.mismatch(joint, by)
	r.floored = r.worst() > allowed
	return joint, by
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
