package crank

import (
	"math"
	"slices"
	"sort"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// mistake is a cause told by what it would have made of what was done: of the
// doses, and of what the dials were said to show.
type mistake struct {
	cause   Cause
	blow    float64   // times the strikes' doses
	bend    clock.Vec // times the bends' doses, towards 12 and towards 3
	seen    clock.Vec // times what the dials showed, towards 12 and towards 3
	swapped bool      // each dial's readings are the other's
	first   bool      // only the first of a pass's moves was done
}

// right is as logged.
var right = mistake{blow: 1, bend: clock.Vec{T: 1, N: 1}, seen: clock.Vec{T: 1, N: 1}}

// mistakes are the ones that every pass may have been made with, the commonest
// first. Common practice, no source.
func mistakes() []mistake {
	with := func(c Cause, change func(m *mistake)) mistake {
		m := right
		m.cause = c
		change(&m)
		return m
	}
	return []mistake{
		with(HoursFromWrongEnd, func(m *mistake) { m.seen.N = -1 }),
		with(DialsExchanged, func(m *mistake) { m.swapped = true }),
		with(WrongWheel, func(m *mistake) { m.blow = -1 }),
		with(HourMirrored, func(m *mistake) { m.blow, m.bend.N = -1, -1 }),
		with(WrongMove, func(m *mistake) { m.bend = clock.Vec{T: -1, N: -1} }),
		with(LowForHigh, func(m *mistake) { m.seen = clock.Vec{T: -1, N: -1} }),
		with(FirstOnly, func(m *mistake) { m.first = true }),
		with(NotDone, func(m *mistake) { m.blow, m.bend = 0, clock.Vec{} }),
	}
}

const (
	// excused is how much better than what was logged a mistake must explain what
	// came of it to be named when something is known to be wrong, certain when
	// nothing is, and behind how much worse than the likeliest, to be named; both as
	// twice the logarithm of a chance.
	excused = 4.0
	certain = 12.0
	behind  = 9.0
)

// amissBy tells whether a move that was made otherwise than logged, or readings put
// down wrong, explain a change far better than what was logged does.
func (c *change) amissBy() bool {
	one := tell([]*change{c})
	as := right.cost(one)
	if as < certain {
		return false
	}
	for _, m := range mistakes() {
		if m.cause != FirstOnly && m.cause != NotDone && m.cost(one) < as-certain {
			return true
		}
	}
	return false
}

// doubts counts the latest changes in a row that a mistake explains far better.
func (n *Next) doubts(g []*pooled) (doubts int) {
	return doubted(n.changes(g))
}

func doubted(all []*change) (doubts int) {
	for i := len(all) - 1; i >= 0 && all[i].amissBy(); i-- {
		doubts++
	}
	return doubts
}

// likely ranks the mistakes by how well each explains all the changes, those that
// explain it alike by how common they are.
func likely(changes []*change, excused float64) (causes []Cause) {
	type guess struct {
		cause Cause
		cost  float64
	}
	var all []guess
	t := tell(changes)
	as, best := right.cost(t), math.Inf(1)
	for _, m := range mistakes() {
		g := guess{m.cause, m.cost(t)}
		if g.cost < as-excused {
			all = append(all, g)
			best = math.Min(best, g.cost)
		}
	}
	const alike = 0.5
	sort.SliceStable(all, func(i, k int) bool {
		return math.Floor((all[i].cost-best)/alike) < math.Floor((all[k].cost-best)/alike)
	})
	for _, g := range all {
		if g.cost <= best+behind {
			causes = append(causes, g.cause)
		}
	}
	return causes
}

// told is a change with what was done for it in sum: every mistake is tried on the same.
type told struct {
	*change
	dose       float64
	slope      clock.Vec
	struck     bool
	bent       sorts
	perD, perG float64
}

func tell(changes []*change) []told {
	all := make([]told, len(changes))
	for i, c := range changes {
		all[i] = c.tell()
	}
	return all
}

func (c *change) tell() told {
	t := told{change: c}
	t.dose, t.struck = c.struck()
	t.slope, t.bent = c.bent()
	t.perD, t.perG = c.shows()
	return t
}

// cost is how badly a mistake explains the changes, the gains free within reason.
func (m *mistake) cost(all []told) float64 {
	blow, bend := make(trend, 0, len(all)), make(trend, 0, 2*len(all))
	for i := range all {
		c, ok := m.remade(&all[i])
		if !ok {
			return math.Inf(1)
		}
		d, g := c.d, c.g
		strayD, strayG := 0.0, stray*g.Len()
		if c.bent != none {
			strayD = stray * g.Len() * c.perG / c.perD
		}
		if c.struck {
			strayG += stray * math.Abs(d.N) * c.perD / c.perG
			blow = append(blow, outcome{m.blow * c.dose, m.seen.N * d.N, c.covD.NN + strayD*strayD})
		}
		if c.bent == squeezed || c.bent == spread {
			cov := c.covG.Add(lsq.Round(strayG))
			bend = append(bend, outcome{m.bend.T * c.slope.T, m.seen.T * g.T, cov.TT}, outcome{m.bend.N * c.slope.N, m.seen.N * g.N, cov.NN})
		}
	}
	return blow.cost(UsualStrike) + bend.cost(UsualBend)
}

// remade is the change as it would have been logged without the mistake; false where
// it can't be worked out.
func (m *mistake) remade(t *told) (*told, bool) {
	switch {
	case m.swapped:
		other := t.swapped()
		if other == nil {
			return nil, false
		}
		out := *t
		out.change = other
		out.perD, out.perG = other.shows()
		return &out, true
	case m.first && len(t.done) > 1:
		out := change{shift: t.shift}
		out.done = append([]Done(nil), t.done...)
		// What else was meant did nothing: it counts as done with no dose.
		for i := range out.done[1:] {
			out.done[i+1].Dose = slight
		}
		of := out.tell()
		return &of, true
	}
	return t, true
}

// swapped is the change by each dial's readings being the other's; nil where it can't be
// worked out.
func (c *change) swapped() *change {
	if c.other == nil && c.from != nil {
		c.other = &change{}
		if from, to := c.from.swapped(), c.to.swapped(); from != nil && to != nil {
			c.other.shift = shiftBetween(from, to)
		}
	}
	if c.other == nil || c.other.crank == nil {
		return nil
	}
	return c.other
}

// swapped has given each shaft the other's readings, nearest the centre to nearest; nil where
// that can't be solved.
func (g *pooled) swapped() *pooled {
	var at [2][]int
	for i := range g.Stations {
		at[g.Stations[i].Piece] = append(at[g.Stations[i].Piece], i)
	}
	if len(at[0]) != len(at[1]) {
		return nil
	}
	for h := range at {
		pin := g.Pose.Pin
		sort.SliceStable(at[h], func(i, k int) bool {
			return math.Abs(g.Stations[at[h][i]].At-pin) > math.Abs(g.Stations[at[h][k]].At-pin)
		})
	}
	st := append([]Station(nil), g.Stations...)
	for i := range at[0] {
		l, r := at[0][i], at[1][i]
		st[l], st[r] = moved(g.Stations[r], g.Stations[l]), moved(g.Stations[l], g.Stations[r])
	}
	pose, err := g.Pose.Crank.Solve(st)
	if err != nil {
		return nil
	}
	out := *g
	out.Pose, out.Stations = pose, st
	return &out
}

// stray is the deviation of what a practised hand's move does astray, as a part of
// what it does. By judgement, no source.
const stray = 0.15

// trend is what doses did, along one line through 0.
type trend []outcome

// outcome is what came of a dose, and the variance of that.
type outcome struct{ dose, got, noise float64 }

// cost is the surprise of the best gain between a twentieth and twenty times the usual.
func (t trend) cost(usual float64) (cost float64) {
	xy, xx := 0.0, 0.0
	for i := range t {
		o := &t[i]
		v := o.noise + hand*hand*o.got*o.got
		xy, xx = xy+o.dose*o.got/v, xx+o.dose*o.dose/v
	}
	gain := usual
	if xx > 0 {
		gain = math.Max(usual/20, math.Min(20*usual, xy/xx))
	}
	for i := range t {
		o := &t[i]
		off := o.got - gain*o.dose
		v := o.noise + hand*hand*(gain*o.dose)*(gain*o.dose) + blur*blur*usual*usual
		cost += math.Min(off*off/v, 2*oddest)
	}
	return cost
}

// changes are what was done, and what came of it, since the user last said that
// something else was changed.
func (n *Next) changes(g []*pooled) (all []*change) {
	for i := 1; i < len(g); i++ {
		if c := g[i].came; c != nil && c.from.last >= n.since && len(c.from.Done) > 0 {
			all = append(all, c)
		}
	}
	return all
}

// name gives the causes of a stop, or of what can't be mended, the likeliest first.
func (n *Next) name(j *judge, g []*pooled) {
	switch n.Why {
	case Stop:
		n.Causes = likely(n.changes(g), excused)
		strike, bend := n.record(Strike), n.record(Squeeze)
		switch {
		case strike.opposite+bend.opposite+n.doubted > 0:
			n.add(HoursFromWrongEnd, DialsExchanged, WrongWheel, HourMirrored)
			n.hung(g)
			n.Witness = g[len(g)-1].witness()
		case strike.dead() || bend.dead():
			n.add(TooLight, NotDone, NotSupported)
		default:
			if n.silent(g) || n.mute(g) {
				n.add(Unlogged)
			}
			n.hung(g)
			n.hinged()
			n.add(NotSupported, DialMoved, PinSlipped)
		}
	case Leave:
		if n.Shaft[clock.Left].State != Unseen || n.Shaft[clock.Right].State != Unseen {
			n.hung(g)
		}
	case Work:
		n.Causes = likely(n.changes(g), certain)
	case Unmendable:
		if len(g) == 1 && n.Rounds < 2 && j.lowForHigh() {
			n.add(LowForHigh)
		}
		n.hinged()
		n.hung(g)
		n.add(PinSlipped)
	}
}

// lowForHigh tells whether bumping would mend the crank were one shaft's low spots taken for
// its high ones: a pinch so read looks just like throws that don't match.
func (j *judge) lowForHigh() bool {
	st := slices.Clone(j.st)
	for i := range st {
		if st[i].Piece == 0 {
			st[i].E = st[i].E.Scale(-1)
		}
	}
	s, err := j.Crank.Solve(st)
	return err == nil && s.Advise(st, j.tol).Plain != NotMendable
}

// add appends causes that aren't named yet, of the likelier ones at most those that
// fit.
func (n *Next) add(causes ...Cause) {
	for _, c := range causes {
		known := false
		for _, k := range n.Causes {
			known = known || k == c
		}
		if !known {
			n.Causes = append(n.Causes, c)
		}
	}
}

// hung names centre and shaft where nobody has looked, or where they were found
// wanting.
func (n *Next) hung(g []*pooled) {
	last := &g[len(g)-1].Pose.Crank
	if last.Mount != Centres || last.CentresKnown {
		return
	}
	for h := range n.Shaft {
		if !n.Shaft[h].known() && !(n.Shaft[h].State == Unseen && seenSound(g, clock.End(h))) {
			n.add(CentreOrShaft)
			return
		}
	}
}

func (n *Next) hinged() {
	if n.Hinge.shown() {
		n.add(Hinged)
	}
}

// silent tells whether something was done that nobody has said.
func (n *Next) silent(g []*pooled) bool {
	for i := range g {
		if g[i].unlogged && !g[i].said && g[i].first > n.since {
			return true
		}
	}
	return false
}

// witness finds the clock point of a dial where what it shows tells best whose
// readings it has and from which end.
func (g *pooled) witness() (w Witness) {
	best := 0.0
	for i := range g.Stations {
		p := &g.Stations[i]
		other := clock.Vec{}
		for k := range g.Stations {
			if q := &g.Stations[k]; q.Piece != p.Piece {
				other = q.E
			}
		}
		for hour := range 12 {
			u := clock.Polar(1, float64(hour))
			v := Witness{
				Half: p.Half(), Station: i, Hour: float64(hour),
				Shows: p.E.Dot(u), Mirrored: p.E.From(clock.Right).Dot(u), Exchanged: other.Dot(u),
			}
			if tells := v.tells(); tells > best {
				best, w = tells, v
			}
		}
	}
	return w
}

// tells is how far apart the three stand.
func (w *Witness) tells() float64 {
	a, b, c := w.Shows, w.Mirrored, w.Exchanged
	return math.Min(math.Abs(a-b), math.Min(math.Abs(a-c), math.Abs(b-c)+math.Abs(a-b)/4))
}

// ask says what to ask of the user, what settles most first.
func (n *Next) ask(j *judge, g []*pooled) {
	last := g[len(g)-1]
	add := func(w What, pass int) { n.Asks = append(n.Asks, Ask{What: w, Pass: pass}) }
	for i := len(g) - 1; i > 0; i-- {
		if g[i].unlogged && !g[i].said {
			add(AskSince, g[i].first)
			break
		}
	}
	if n.Rounds > enough && len(n.Steps) > 0 && last.Since == Unsaid {
		add(AskSince, last.last) // more rounds alike than are asked for: was it done, and shows nothing?
	}
	if n.Witness != (Witness{}) {
		add(AskWitness, last.last)
	}
	if n.Why == Unmendable && n.Rounds < 2 { // a slip of one reading must not have it pressed apart
		add(AskReadAgain, last.last)
	}
	c := &last.Pose.Crank
	if (n.Why == Leave || n.Why == Unmendable || n.Why == Stop) && c.Mount == Centres && !c.CentresKnown && n.unseen(g) {
		add(AskCentres, last.last)
	}
	if n.Close && c.Mount == Centres && !c.Steady && len(g) == 1 {
		add(AskPressure, last.last)
	}
	if n.Rounds < enough && (n.Why == Unclear || n.Why == Leave && (!j.inside(Surely) || n.strayed(g))) {
		add(AskReadAgain, last.last)
	}
}

// strayed tells whether what was done last moved a needle as it should not have: the dial may
// have slipped, or stick.
func (n *Next) strayed(g []*pooled) bool {
	return slices.ContainsFunc(n.Tries, func(t Try) bool { return t.Astray > 0 && len(g) > 1 && t.Pass == g[len(g)-2].last })
}
