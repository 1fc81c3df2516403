package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// JointMove is one thing to do at a joint. Hours are the joint's own, its pin at 12,
// seen from the left end; Wheel is the piece on that side of the joint.
type JointMove struct {
	Joint       int
	Move, Other Move
	HalfWidth95 float64   // mm, how far Amount may be out
	Aim         float64   // mm to go for now, short of the whole
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

// JointAdvice is what the readings of an assembly say, and what to do about it.
type JointAdvice struct {
	Verdict, Plain Verdict
	Worst          Figure // mm, the worst run-out over the dials
	Station        int    // where that stands
	Floor          Figure // mm, the worst run-out over the dials with every twist and gap gone
	Steps          []JointMove
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
	change := make([]Bend, len(s.Bends))
	if kind == Strike {
		change[j].D = s.untwist(j, 1)
	} else {
		change[j].G = s.Bends[j].G.Scale(-1)
	}
	return change
}

// untwist is the change of a joint's D that takes out part of its twist: the right
// piece turns about the pin, and its axis goes round that in an arc.
func (s *Stand) untwist(j int, part float64) clock.Vec {
	d, r := s.Bends[j].D, s.Assembly.Joints[j].Throw
	n := (1 - part) * d.N
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

// Advise judges an assembly by the decision rule of ISO 14253-1, limit the run-out
// that is allowed [mm], and orders the moves: of those that every solution agrees on
// and that stand clear of their doubt, the one first that leaves the smallest worst
// run-out (MODEL §11).
func (s *Stand) Advise(limit float64) JointAdvice {
	a := JointAdvice{Settles: s.settles()}
	inside, outside, plain := true, false, true
	for i := range s.dials {
		r := s.dials[i].runOut()
		if r.Value > a.Worst.Value || i == 0 {
			a.Worst, a.Station = r, i
		}
		if r.HalfWidth95 > s.dials[a.Weak].runOut().HalfWidth95 {
			a.Weak = i
		}
		inside = inside && r.Value+r.HalfWidth95 <= limit && !s.dials[i].Unsure
		outside = outside || r.Value-r.HalfWidth95 > limit
		plain = plain && r.Value <= limit
	}
	a.Floor = s.floor()
	steps := s.order(limit, 1)
	a.Verdict = s.verdict(inside, outside, &a, limit, len(steps))
	a.Plain = Fit
	bare := s.order(limit, 0)
	if !plain {
		a.Plain = s.verdict(false, true, &JointAdvice{Floor: Figure{Value: a.Floor.Value}}, limit, len(bare))
	}
	if a.Verdict == OutOfTrue {
		a.Steps = steps
	}
	return a
}

func (s *Stand) verdict(inside, outside bool, a *JointAdvice, limit float64, steps int) Verdict {
	switch {
	case inside && len(s.dials) > 0 && !s.looked():
		return FitAsHung
	case inside && len(s.dials) > 0:
		return Fit
	case !outside:
		return TooClose
	case s.allTold() && a.Floor.Value-a.Floor.HalfWidth95 > limit:
		return NotMendable
	case steps > 0:
		return OutOfTrue
	}
	return CantTell
}

// looked tells whether the centres are known to be good: by the user's word, or by
// dials at two places of each piece that a centre holds.
func (s *Stand) looked() bool {
	if s.Assembly.Mount != Centres || s.Assembly.CentresKnown {
		return true
	}
	for _, r := range s.Assembly.Rests {
		if s.placesOn(r.Piece) < 2 {
			return false
		}
	}
	return true
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
		change[j] = Bend{D: s.untwist(j, 1), G: b.G.Scale(-1)}
	}
	return change
}

// floor is the worst run-out over the dials with every twist and gap gone: what
// throws that don't match leave.
func (s *Stand) floor() (worst Figure) {
	change := s.Mended()
	for i, v := range s.RunOuts(change) {
		if v >= worst.Value {
			worst = Figure{v, 2 * s.leftBy(i).HalfWidth95(s.After(change, s.dials[i].Piece, s.dials[i].At))}
		}
	}
	return worst
}

// leftBy is how sure it is what the mismatches alone make a dial show.
func (s *Stand) leftBy(dial int) lsq.Uncertainty {
	rows := [2][]float64{s.blank(), s.blank()}
	for j := range s.Bends {
		pin := &s.pins[j]
		towards := make([]Bend, len(s.Bends))
		towards[j].D = pin.world(clock.Vec{T: 1})
		shows := lay(s.at, towards, s.Assembly.Rests, [2]clock.Vec{}, s.dials[dial].Piece).at(s.dials[dial].At)
		mismatch := s.offsetRow(j)[0]
		for i := range mismatch {
			rows[0][i] += shows.T * mismatch[i]
			rows[1][i] += shows.N * mismatch[i]
		}
	}
	return s.uncertaintyOf(rows)
}

// order picks move after move, each the one that leaves the smallest worst run-out
// with those before it done as far as they go for, until none makes it smaller or
// all is inside. With nothing of it making it smaller the greatest is taken, since
// only moves together mend such a crank.
func (s *Stand) order(limit, k float64) (steps []JointMove) {
	left := s.clear(k)
	done := make([]Bend, len(s.Bends))
	worst := greatest(s.RunOuts(done))
	for len(left) > 0 && worst > limit {
		best, least := -1, math.Inf(1)
		for i := range left {
			if v := greatest(s.RunOuts(s.with(done, &left[i], 1))); v < least {
				best, least = i, v
			}
		}
		if least >= worst && len(steps) > 0 {
			return steps
		}
		m := left[best]
		left = append(left[:best], left[best+1:]...)
		done = s.with(done, &m, aimed)
		m.Then = s.RunOuts(done)
		worst = greatest(m.Then)
		steps = append(steps, m)
	}
	return steps
}

// with returns the bends changed by part of a move as well.
func (s *Stand) with(done []Bend, m *JointMove, part float64) []Bend {
	out := append([]Bend(nil), done...)
	if m.Move.Kind == Strike {
		out[m.Joint].D = s.untwist(m.Joint, part)
	} else {
		out[m.Joint].G = s.Bends[m.Joint].G.Scale(-part)
	}
	return out
}

// clear returns the moves that every solution agrees on and that stand clear of k
// times their doubt.
func (s *Stand) clear(k float64) (all []JointMove) {
	for j, b := range s.Bends {
		pose := s.joint(j)
		if s.TwistTold(j) {
			m := JointMove{Joint: j, HalfWidth95: s.UncertaintyOfD(j).HalfWidth95(clock.Vec{N: 1})}
			m.Move, m.Other = pose.Strike()
			if m.Move.Amount > k*m.HalfWidth95 && m.Move.Amount > least {
				all = append(all, s.going(m))
			}
		}
		if sure := s.UncertaintyOfG(j); s.GTold(j) && b.G.Len()*s.Assembly.Rim > least && (k == 0 || sure.Significant(b.G)) {
			m := JointMove{Joint: j}
			m.Move, m.Other = pose.Close()
			m.HalfWidth95 = m.Move.Arm * sure.HalfWidth95(b.G)
			all = append(all, s.going(m))
		}
	}
	return all
}

func (s *Stand) going(m JointMove) JointMove {
	m.Aim = aimed * m.Move.Amount
	m.Alone = s.RunOuts(s.Without(m.Joint, m.Move.Kind))
	return m
}

func greatest(all []float64) (most float64) {
	for _, v := range all {
		most = math.Max(most, v)
	}
	return most
}

// settles returns the readings that would settle what is open, the one that leaves
// least open first: a dial on a journal before the gap across the webs.
func (s *Stand) settles() (all []Settle) {
	n := len(s.blank())
	open := n - len(s.rows.basis)
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
		rows := s.slopeRow(j)
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
