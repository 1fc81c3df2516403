package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// JointMove is one thing to do at a joint. Hours are the joint's own, its pin at 12,
// seen from the left end; Wheel is the piece on that side of the joint.
type JointMove struct {
	Joint int
	PlannedMove
	HalfWidth95 float64   // mm, how far Amount may be out
	takes       clock.Vec // the offset or slope that the whole of it takes out
	Then        []float64 // mm, run-out of each dial after this and the moves before it, each as far as it goes for
	Alone       []float64 // mm, run-out of each dial with the whole of this fault gone, that alone
}

// Settle is a reading that would settle what the readings leave open: a dial on a
// piece at At [mm], or the gap across the webs at 12 and 6 of a joint.
type Settle struct {
	Gap   bool
	Joint int
	Piece int
	At    float64
	// Leaves is how many vectors of the whole, of two for each piece, it leaves open.
	Leaves float64
}

// JointAdvice is what the readings of an assembly say.
type JointAdvice struct {
	Verdict, Plain Verdict
	Worst          Figure   // mm, the worst run-out over the dials
	Station        int      // where that stands
	Floor          Figure   // mm, the worst run-out over the dials with every twist and gap gone
	Mains          []Main   // how it would run in its main bearings, from left to right
	FloorLean      Figure   // minutes of arc, the worst lean there with every twist and gap gone
	Open           bool     // how it would run in some of them isn't told
	Settles        []Settle // what would settle what is open, the soonest first
	Weak           int      // the dial whose doubt weighs most, where it is too close or can't be told
}

// joint is one joint of a stand as a crank of one throw, by which its moves are
// those of section 4.
func (s *Stand) joint(j int) Pose {
	return Pose{Crank: Crank{Throw: s.Assembly.Joints[j].Throw, Rim: s.Assembly.Rim}, D: s.Bends[j].D, G: s.Bends[j].G}
}

// Moves returns the strike and the squeeze or spread of a joint, in its own clock.
func (s *Stand) Moves(j int) (strike, gap Move) {
	p := s.joint(j)
	strike, _ = p.Strike()
	gap, _ = p.Close()
	return strike, gap
}

// GapAcross returns how much wider the gap at a joint is on one side of the rim than
// across it [mm], 2 r |g|, and the hour of its own clock where it is widest.
func (s *Stand) GapAcross(j int) (across, widest float64) { p := s.joint(j); return p.Gap() }

// Without returns the change of the bends that takes out the twist of a joint, or
// its gap.
func (s *Stand) Without(j int, kind Kind) []Bend {
	p := s.joint(j)
	m := p.strikes(j)
	if kind != Strike {
		m = p.closes(j)
	}
	return s.part(&m, 1)
}

// untwist is the change of a joint's D that takes out so much of its twist: the right
// piece turns about the pin, and its axis goes round that in an arc.
func (s *Stand) untwist(j int, by float64) clock.Vec {
	d, r := s.Bends[j].D, s.Assembly.Joints[j].Throw
	n := d.N - by
	far := math.Hypot(r-d.T, d.N)
	return clock.Vec{T: r - math.Sqrt(far*far-n*n) - d.T, N: n - d.N}
}

// RunOuts returns the run-out [mm] of each dial with the bends so changed.
func (s *Stand) RunOuts(change []Bend) []float64 {
	out := make([]float64, len(s.dials))
	for i := range s.dials {
		out[i] = 2 * s.After(change, s.dials[i].Piece, s.dials[i].At).Len()
	}
	return out
}

// Advise judges an assembly by the decision rule of ISO 14253-1; of what is allowed
// RunOut and Tilt count. It picks no moves: see PlanThrows.
func (s *Stand) Advise(tol Tolerance) JointAdvice {
	j := s.judge(tol)
	return j.advise()
}

func (j *throwsJudge) advise() JointAdvice {
	a := JointAdvice{Settles: j.settles(), Mains: j.mains}
	inside, outside, plain := true, false, true
	for i := range j.dials {
		r := j.dials[i].runOut()
		if r.Value > a.Worst.Value || i == 0 {
			a.Worst, a.Station = r, i
		}
		if r.HalfWidth95 > j.dials[a.Weak].runOut().HalfWidth95 {
			a.Weak = i
		}
		inside = inside && r.Value+r.HalfWidth95 <= j.tol.RunOut && !j.dials[i].Unsure
		outside = outside || r.Value-r.HalfWidth95 > j.tol.RunOut
		plain = plain && r.Value <= j.tol.RunOut
	}
	level, leans, open := j.lean(1)
	a.Open = open
	var stuck, plainly bool
	a.Floor, a.FloorLean, stuck, plainly = j.floors()
	a.Verdict = j.verdict(inside && level, outside || leans, open, stuck, 1)
	a.Plain = Fit
	if level, _, _ = j.lean(0); !plain || !level {
		a.Plain = j.verdict(false, true, open, plainly, 0)
	}
	return a
}

func (j *throwsJudge) verdict(inside, outside, open, stuck bool, k float64) Verdict {
	switch {
	case inside && len(j.dials) > 0 && (open || !j.looked()):
		return FitAsHung
	case inside && len(j.dials) > 0:
		return Fit
	case !outside:
		return TooClose
	case j.allTold() && stuck:
		return NotMendable
	case len(j.clear(k)) > 0:
		return OutOfTrue
	}
	return CantTell
}

// looked tells whether nothing of the centres is in doubt: by the user's word, or by
// dials at two places of each piece that a centre holds, which tell a bad one apart.
func (j *throwsJudge) looked() bool {
	if s := j.Stand; s.Assembly.Mount != Centres || s.Assembly.CentresKnown {
		return true
	}
	return j.Shaft(clock.Left).vouched(j.tol) && j.Shaft(clock.Right).vouched(j.tol)
}

func (s *Stand) allTold() bool {
	for j := range s.Bends {
		if !s.DTold(j) || !s.GTold(j) {
			return false
		}
	}
	return true
}

// Mended returns the change of the bends that takes out every twist and gap.
func (s *Stand) Mended() []Bend {
	change := make([]Bend, len(s.Bends))
	for j, b := range s.Bends {
		change[j] = Bend{D: s.untwist(j, b.D.N), G: b.G.Scale(-1)}
	}
	return change
}

// floors are what throws that don't match leave, every twist and gap gone: the worst
// run-out over the dials, and the worst lean. Stuck tells whether any of what is judged
// then stands outside for sure, plainly by its bare figure.
func (j *throwsJudge) floors() (runOut, lean Figure, stuck, plainly bool) {
	axes := j.axesAfter(j.Mended())
	for i := range j.gauges {
		g := &j.gauges[i]
		v := g.of.of(axes)
		f := Figure{g.scale * v.Len(), g.scale * j.leftBy(g.of).HalfWidth95(v)}
		stuck = stuck || f.Value-f.HalfWidth95 > j.tol.RunOut
		plainly = plainly || f.Value > j.tol.RunOut
		if i < len(j.dials) && f.Value >= runOut.Value {
			runOut = f
		}
		if by := g.scale / arcmin; g.leans && f.Value/by >= lean.Value { // of what is allowed
			lean = Figure{f.Value / by, f.HalfWidth95 / by}
		}
	}
	return runOut, lean, stuck, plainly
}

// leftBy is how sure it is what the mismatches alone make a gauge show.
func (s *Stand) leftBy(of combination) lsq.Uncertainty {
	left := combination(make([]part, s.Assembly.Pieces())).components()
	for j := range s.Bends {
		pin := &s.pins[j]
		shows := of.of(s.shownOf(j, Bend{D: pin.world(clock.Vec{T: 1})}))
		mismatch := s.offset(j)[0]
		for i, by := range [2]float64{shows.T, shows.N} {
			for k, m := range mismatch {
				left[i][k].a = left[i][k].a.Add(m.a.Scale(by))
				left[i][k].b = left[i][k].b.Add(m.b.Scale(by))
			}
		}
	}
	return s.uncertaintyOf(left)
}

// clear returns the moves that every solution agrees on and that stand clear of k
// times their doubt.
func (s *Stand) clear(k float64) (all []JointMove) {
	for j, b := range s.Bends {
		pose := s.joint(j)
		if s.TwistTold(j) {
			m := pose.strikes(j)
			m.HalfWidth95 = s.UncertaintyOfD(j).HalfWidth95(clock.Vec{N: 1})
			if m.Amount > k*m.HalfWidth95 && m.Amount > least {
				all = append(all, m)
			}
		}
		if sure := s.UncertaintyOfG(j); s.GTold(j) && b.G.Len()*s.Assembly.Rim > least && (k == 0 || sure.Significant(b.G)) {
			m := pose.closes(j)
			m.HalfWidth95 = m.Arm * sure.HalfWidth95(b.G)
			all = append(all, m)
		}
	}
	return all
}

// strikes is the strike of a joint, closes the closing of its gap.
func (s *Pose) strikes(joint int) (m JointMove) {
	m.Joint, m.takes = joint, clock.Vec{N: s.D.N}
	m.Move, m.Other = s.Strike()
	return m
}

func (s *Pose) closes(joint int) (m JointMove) {
	m.Joint, m.takes = joint, s.G
	m.Move, m.Other = s.Close()
	return m
}

// part returns the change of the bends that part of a move makes.
func (s *Stand) part(m *JointMove, part float64) []Bend {
	change := make([]Bend, len(s.Bends))
	s.add(change, m, part)
	return change
}

func (s *Stand) add(to []Bend, m *JointMove, part float64) {
	if m.Kind == Strike {
		to[m.Joint].D = to[m.Joint].D.Add(s.untwist(m.Joint, part*m.takes.N))
	} else {
		to[m.Joint].G = to[m.Joint].G.Add(m.takes.Scale(-part))
	}
}

// worth is how much of a needle's movement [mm] a move takes or brings, on the dial
// that shows it most.
func (s *Stand) worth(m *JointMove) (most float64) {
	change := s.part(m, 1)
	for i := range s.dials {
		d := &s.dials[i]
		most = math.Max(most, 2*s.After(change, d.Piece, d.At).Sub(s.At(d.Piece, d.At)).Len())
	}
	return most
}

// settles returns the readings that would settle what is open, the one that leaves
// least open first: a dial on a journal before the gap across the webs.
func (s *Stand) settles() (all []Settle) {
	if s.rows == nil {
		return nil
	}
	open := perPiece*s.Assembly.Pieces() - len(s.rows.basis)
	if open == 0 {
		return nil
	}
	add := func(t Settle, rows ...[]float64) {
		gained := len(basisOf(append(rows, s.rows.basis...))) - len(s.rows.basis)
		t.Leaves = float64(open-gained) / 2
		if gained == 0 {
			return
		}
		i := len(all)
		for ; i > 0 && all[i-1].Leaves > t.Leaves; i-- {
		}
		all = append(all, Settle{})
		copy(all[i+1:], all[i:])
		all[i] = t
	}
	for k := range s.axes {
		x := s.further(k)
		rows := s.placeRow(k, x)
		add(Settle{Piece: k, At: x}, rows[0], rows[1])
	}
	for j := range s.Bends {
		rows := s.rowsOf(s.slope(j))
		add(Settle{Gap: true, Joint: j}, rows[0], rows[1])
	}
	return all
}

// further returns a place on a piece for one more dial: as far from those that
// stand there as a fifth of its length from its ends lets it.
func (s *Stand) further(piece int) float64 {
	from, to := s.Assembly.span(piece)
	from, to = math.Max(from, s.Assembly.Rests[0].At), math.Min(to, s.Assembly.Rests[1].At)
	a, b := from+(to-from)/5, to-(to-from)/5
	nearest := func(x float64) float64 {
		d := math.Inf(1)
		for i := range s.dials {
			if s.dials[i].Piece == piece {
				d = math.Min(d, math.Abs(s.dials[i].At-x))
			}
		}
		return d
	}
	if nearest(b) > nearest(a) {
		return b
	}
	return a
}
