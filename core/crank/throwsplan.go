package crank

import (
	"math"

	"pintwelve/core/clock"
)

// JointDone is one thing done at a joint, its Hour the joint's own.
type JointDone struct {
	Joint int
	Done
}

// ThrowsPass is a round of readings of an assembly and what was done after it, if
// anything yet. Where the readings can't be solved, Stand is nil.
type ThrowsPass struct {
	Stand *Stand
	Done  []JointDone
	Since Since
}

// ThrowsNext is what to do after the latest readings of an assembly: Next of every
// joint, in one.
type ThrowsNext struct {
	JointAdvice
	Stand       *Stand // of all rounds taken together
	Why         Why
	Rounds      int         // of readings taken together since the last move
	Discrepancy Figure      // mm of a needle, by which this round differs from the one before with nothing done between
	Steps       []JointMove // all before the next readings, their hours the joints' own
	Asks        []Ask
	Causes      []JointCause // with Stop and Unmendable, the likeliest first
	judge       throwsJudge
	hands       []Next // how each joint has answered
	elsewhere   []int  // latest rounds in a row that tell of another pin, by joint
}

// JointCause is what may lie behind a stop, and at which joint; Joint is −1 where it
// is none's.
type JointCause struct {
	Joint int
	Cause Cause
}

// PlanThrows says what to do after the latest of the passes of an assembly, by what
// each kind of move has done at each joint (MODEL §7, §11).
func PlanThrows(passes []ThrowsPass, tol Tolerance) ThrowsNext {
	return (&Past{}).PlanThrows(passes, tol)
}

// PlanThrows says what to do after the latest of the passes of an assembly, by what
// each kind of move has done at each joint (MODEL §7, §11).
func (p *Past) PlanThrows(passes []ThrowsPass, tol Tolerance) ThrowsNext {
	g := p.throws.pool(passes)
	if len(g) == 0 || g[len(g)-1].Stand == nil {
		return ThrowsNext{}
	}
	last := g[len(g)-1]
	n := ThrowsNext{Stand: last.Stand, Rounds: last.rounds, Discrepancy: last.discrepancy, judge: last.Stand.judge(tol)}
	n.JointAdvice = n.judge.advise()
	n.learn(g, p)
	n.beside()
	n.Why = n.why(g)
	if n.Why == Work {
		n.work()
	}
	n.name()
	n.hung()
	n.ask(g)
	return n
}

// learn goes through what was done at each joint and came of it.
func (n *ThrowsNext) learn(g []*pooledThrows, past *Past) {
	since := 0
	for i := range g {
		if g[i].said {
			since = g[i].first
		}
	}
	rounds := make([][]jointShift, len(g)-1)
	for i := range rounds {
		rounds[i] = g[i+1].came
	}
	for j := range n.Stand.Bends {
		l := newLesson(past.at(j))
		var changes []*change
		for i := range rounds {
			s := &rounds[i][j]
			if !s.told || len(s.done) == 0 {
				continue
			}
			l.take(&s.shift, s.tries(&l))
			if s.after >= since {
				changes = append(changes, &change{shift: s.shift})
			}
		}
		n.elsewhere = append(n.elsewhere, elsewhere(rounds, j, since))
		n.hands = append(n.hands, Next{Lesson: l, since: since, doubted: max(doubted(changes), n.elsewhere[j])})
	}
}

// beside notes of each thing that did nothing whether another of the same pass did what
// it was meant to, at whichever joint: then it may not have been done.
func (n *ThrowsNext) beside() {
	for j := range n.hands {
		l := &n.hands[j].Lesson
		for i := range l.Tries {
			t := &l.Tries[i]
			if t.Outcome != NoEffect || t.Beside || !n.told(t.Pass) {
				continue
			}
			t.Beside, t.Likely = true, append([]Cause{FirstOnly}, t.Likely...)
		}
		l.fitAll()
	}
}

// Tries are what came of all that was done, pass by pass, and at which joint.
func (n *ThrowsNext) Tries() (all []Try, joints []int) {
	for pass, left := 0, true; left; pass++ {
		left = false
		for j := range n.hands {
			for _, t := range n.hands[j].Tries {
				if t.Pass == pass {
					all, joints = append(all, t), append(joints, j)
				}
				left = left || t.Pass > pass
			}
		}
	}
	return all, joints
}

// told tells whether anything done in a pass did what it was meant to.
func (n *ThrowsNext) told(pass int) bool {
	for j := range n.hands {
		for i := range n.hands[j].Tries {
			if t := &n.hands[j].Tries[i]; t.Pass == pass && t.Outcome == AsMeant {
				return true
			}
		}
	}
	return false
}

// single keeps to one move where a mistake explains the last ones better, the one that
// shows most; or where a move did nothing beside others that told, that one: what it
// does must show by itself.
func (n *ThrowsNext) single(all []JointMove) []JointMove {
	most, one := 0.0, -1
	for i := range all {
		h, m := &n.hands[all[i].Joint], &all[i]
		if r := h.record(m.Kind); r.beside {
			return all[i : i+1]
		}
		if v := n.Stand.worth(m); h.doubted > 0 && v > most {
			most, one = v, i
		}
	}
	if one < 0 {
		return all
	}
	return all[one : one+1]
}

// why judges whether to work on, as for a crank of one throw.
func (n *ThrowsNext) why(g []*pooledThrows) Why {
	w, limit := throwsWorsts(g), n.judge.tol.RunOut
	back := n.Worst.Value > w[0] && n.Worst.Value >= n.Floor.Value+limit
	first := len(g) == 1
	return whether(n.inside(Manner{}.margin(n.Rounds, first)), func() bool { return n.stops(w, limit) }, n.Verdict, back, first)
}

// inside tells whether every dial stands inside, and every journal in its bearing as far
// as that is told, k times its doubt counted; at half the limit whatever the doubt.
func (n *ThrowsNext) inside(k float64) bool {
	for i := range n.Stand.dials {
		r := n.Stand.dials[i].runOut()
		if limit := n.judge.tol.RunOut; !(r.Value+math.Min(k*r.HalfWidth95, limit/2) <= limit) {
			return false
		}
	}
	level, _, _ := n.judge.lean(k)
	return level && len(n.Stand.dials) > 0
}

// stops tells whether to look for a cause before going on (MODEL §7).
func (n *ThrowsNext) stops(w []float64, limit float64) bool {
	for i := range n.hands {
		h := &n.hands[i]
		strike, bend := h.record(Strike), h.record(Squeeze)
		if strike.opposite >= 2 || bend.opposite >= 2 || h.doubted >= 2 || strike.dead() || bend.dead() {
			return true
		}
	}
	const clearly = 3
	last := len(w) - 1
	if last > 0 && n.Worst.Value-n.Worst.HalfWidth95 > clearly*math.Max(w[0], limit) && w[last] >= w[last-1] {
		return true
	}
	return len(w) > longest*len(n.hands) || noNearer(w, patience+len(n.hands)-1)
}

// work adds the moves that stand clear of the noise and bring the crank nearer.
func (n *ThrowsNext) work() {
	if all := n.judge.better(n.judge.clear(1)); len(all) > 0 {
		n.pick(n.single(all))
		return
	}
	m, left := n.judge.level()
	if gained := n.judge.burden(n.Stand.none()) - left; gained > n.Worst.HalfWidth95 || n.Rounds >= enough && gained > 0 {
		n.pick([]JointMove{m})
		return
	}
	n.Why = undecided(n.Rounds, n.Plain)
}

// better leaves out, one after the other, the moves without which the worst run-out
// is foreseen smaller, or no greater than what they may bring astray themselves.
func (j *throwsJudge) better(all []JointMove) []JointMove {
	for {
		with, drop, least := j.without(all, -1), -1, math.Inf(1)
		for i := range all {
			if v := j.without(all, i) - wander*j.worth(&all[i]); v < least {
				drop, least = i, v
			}
		}
		if drop < 0 || least > with {
			return all
		}
		all = append(all[:drop], all[drop+1:]...)
	}
}

// without is the worst run-out with all moves but one done.
func (j *throwsJudge) without(all []JointMove, one int) float64 {
	change := j.none()
	for i := range all {
		if i != one {
			j.add(change, &all[i], 1)
		}
	}
	return j.burden(change)
}

// pick orders the moves, each next the one that leaves the smallest worst run-out
// after those before it as far as they go for.
func (n *ThrowsNext) pick(all []JointMove) {
	s := n.Stand
	done := s.none()
	for len(all) > 0 {
		best, least := -1, math.Inf(1)
		for i := range all {
			then := append([]Bend(nil), done...)
			s.add(then, &all[i], 1)
			if v := n.judge.burden(then); v < least {
				best, least = i, v
			}
		}
		m := all[best]
		all = append(all[:best], all[best+1:]...)
		s.add(done, &m, n.goes(&m))
		m.Then, m.Alone = s.RunOuts(done), s.RunOuts(s.part(&m, 1))
		n.Steps = append(n.Steps, m)
	}
}

// goes finds how hard a move is to be made, and which part of it that goes for.
func (n *ThrowsNext) goes(m *JointMove) float64 {
	h := &n.hands[m.Joint]
	amount, plus := m.Amount, m.HalfWidth95
	if m.Kind != Strike {
		amount, plus = amount/m.Arm, plus/m.Arm
	}
	h.step(m.Move, m.Other, amount, plus)
	m.PlannedMove = h.Steps[len(h.Steps)-1]
	return m.Aim / m.Amount
}

// name gives the causes of a stop, joint by joint, the likeliest first.
func (n *ThrowsNext) name() {
	if n.Why != Stop {
		return
	}
	for j := range n.hands {
		h := &n.hands[j]
		strike, bend := h.record(Strike), h.record(Squeeze)
		switch {
		case n.elsewhere[j] > 0:
			n.blame(j, OtherPin, HoursFromWrongEnd, WrongWheel, HourMirrored)
		case strike.opposite+bend.opposite+h.doubted > 0:
			n.blame(j, HoursFromWrongEnd, WrongWheel, HourMirrored)
		case strike.dead() || bend.dead():
			n.blame(j, TooLight, NotDone, NotSupported)
		}
	}
	if len(n.Causes) == 0 {
		n.blame(-1, NotSupported, DialMoved, PinSlipped)
	}
}

func (n *ThrowsNext) blame(joint int, causes ...Cause) {
	for _, c := range causes {
		n.Causes = append(n.Causes, JointCause{joint, c})
	}
}

// ask says what to ask of the user, what settles most first.
func (n *ThrowsNext) ask(g []*pooledThrows) {
	last := g[len(g)-1]
	for i := len(g) - 1; i > 0; i-- {
		if g[i].unlogged && !g[i].said {
			n.Asks = append(n.Asks, Ask{AskSince, g[i].first})
			break
		}
	}
	if n.Rounds > enough && len(n.Steps) > 0 && last.Since == Unsaid {
		n.Asks = append(n.Asks, Ask{AskSince, last.last})
	}
	if n.Why == Leave && !n.judge.looked() && n.Stand.unseen() {
		n.Asks = append(n.Asks, Ask{AskCentres, last.last})
	}
	if n.Rounds < enough && (n.Why == Unclear || n.Why == Leave && !n.inside(Surely)) {
		n.Asks = append(n.Asks, Ask{AskReadAgain, last.last})
	}
}

// leverages are what each dial shows of a joint's offset and slope, minus where it
// goes the other way.
func (s *Stand) leverages(joint int) (all []leverage) {
	offset, slope := s.shownOf(joint, Bend{D: clock.Vec{T: 1}}), s.shownOf(joint, Bend{G: clock.Vec{T: 1}})
	for i := range s.dials {
		d := &s.dials[i]
		all = append(all, leverage{offset[d.Piece].at(d.At).T, slope[d.Piece].at(d.At).T})
	}
	return all
}

// shownOf is how the pieces lie by one change at a joint alone.
func (s *Stand) shownOf(joint int, change Bend) []axis {
	bends, out := s.none(), make([]axis, len(s.axes))
	bends[joint] = change
	for k := range out {
		out[k] = lay(s.at, bends, s.Assembly.Rests, [2]clock.Vec{}, k)
	}
	return out
}

// none is no change of the bends.
func (s *Stand) none() []Bend { return make([]Bend, len(s.Bends)) }
