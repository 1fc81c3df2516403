package truing

import (
	"math"
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/lsq"
	"pintwelve/core/unit"
)

// throws is a crank of several throws: its geometry, and what the readings on the
// bench say of it. Its joints are numbered from the left, the first pin's first.
type throws struct {
	crank.Assembly
	keys  []string // of each pin's row; the first pin has none
	stand *crank.Stand
	next  crank.ThrowsNext
	tried []int // the joint of each of the Tries of the pass's Next
}

// several tells whether the crank has more throws than one.
func (s *setUp) several() bool { return len(s.throws.Joints) > 1 }

// span is how far the last pin stands from the first, mm.
func (t *throws) span() float64 { return t.Joints[len(t.Joints)-1].At - t.Joints[0].At }

// pieceAt is the piece that a place along the crank lies on.
func (t *throws) pieceAt(x float64) (piece int) {
	for piece < len(t.Joints) && t.Joints[piece].At < x {
		piece++
	}
	return piece
}

// readPins reads where the pins stand, from left to right.
func (s *setUp) readPins(r *form.Reader, first float64) {
	t, wheel := &s.throws, r.Default(form.Rim)
	t.Rim = wheel / 2
	for _, pin := range bench.ReadPins(r, s.Seen, first, wheel) {
		t.Joints = append(t.Joints, crank.Joint{At: pin.AtMM, Phase: pin.Hour, Throw: pin.ThrowMM})
		t.keys = append(t.keys, pin.Key)
	}
}

// readMains reads where the crank runs in the cases: in a bearing on each shaft, and on
// each inner journal unless it is said to have none, half-way along where it isn't given.
func (s *setUp) readMains(r *form.Reader) {
	t := &s.throws
	last := len(t.Joints)
	add := func(piece int, at float64) { t.Mains = append(t.Mains, crank.Rest{Piece: piece, At: at}) }
	add(0, s.crank.Bearing[clock.Left])
	for j := 1; j < last; j++ {
		if r.Word(form.PinRuns, t.keys[j]) != "none" {
			add(j, r.Or(math.Round((t.Joints[j-1].At+t.Joints[j].At)/2), form.PinMain, t.keys[j]))
		}
	}
	add(last, s.crank.Bearing[clock.Right])
}

// unmeasuredError says that a place or angle is assumed that it hangs on which pin is
// at fault.
type unmeasuredError struct{}

func (*unmeasuredError) Error() string { return "unmeasured" }

// unmeasured tells whether where a pin stands, along the crank or round it, is assumed.
func (p *pass) unmeasured(r *form.Reader) bool {
	blank := r.Blank(form.ShaftPin, sideNames[0]) || r.Blank(form.ShaftPin, sideNames[1])
	for _, key := range p.throws.keys[1:] {
		blank = blank || r.Blank(form.PinAt, key) || r.Blank(form.PinAngle, key)
	}
	return blank
}

// stood finds how the pieces sat in a round.
func (p *pass) stood(d *round, r *form.Reader) (*crank.Stand, error) {
	if p.unmeasured(r) {
		return nil, &unmeasuredError{}
	}
	t := &p.throws
	t.Mount, t.CentresKnown = p.crank.Mount, p.crank.CentresKnown
	for i, x := range p.crank.Support {
		t.Rests[i] = crank.Rest{Piece: t.pieceAt(x), At: x}
	}
	dials := append([]crank.Station(nil), d.counted...)
	for i := range dials {
		dials[i].Piece = t.pieceAt(dials[i].At)
	}
	gaps := p.webGaps(r, d.key)
	if near := t.tooNear(dials); near != nil && len(gaps) == 0 {
		return nil, near
	}
	return t.Solve(dials, gaps)
}

// tooNear names an end piece whose dials are all but at its rest; nil for none.
func (t *throws) tooNear(dials []crank.Station) *crank.MissingError {
	last := len(t.Joints)
	for h, rest := range t.Rests {
		pin := t.Joints[h*(last-1)].At
		if rest.Piece == h*last && crank.TooNear(dials, rest.Piece, rest.At, pin, t.Mount) {
			return &crank.MissingError{Half: clock.End(h), Lack: crank.AtSupport, At: (rest.At + pin) / 2}
		}
	}
	return nil
}

// workOutThrows works out the round on the bench.
func (p *pass) workOutThrows(r *form.Reader) {
	t := &p.throws
	if t.stand, p.fault = p.past[p.bench].stand, p.past[p.bench].fault; p.fault != nil {
		p.complainOfThrows(r, p.fault)
		return
	}
	t.next = p.learned.PlanThrows(ofSeveral(p.past[:p.bench+1]), p.allowed)
	n := &t.next
	p.advice = crank.Advice{Verdict: n.Verdict, Plain: n.Plain, Worst: n.Worst, Station: n.Station, Floor: n.Floor, Weak: n.Weak}
	p.next = crank.Next{Advice: p.advice, Why: n.Why, Rounds: n.Rounds, Discrepancy: n.Discrepancy, Asks: n.Asks}
	p.ownLengths(r)
	n.Why, n.Verdict, n.Asks, p.advice.Verdict = p.next.Why, p.next.Verdict, p.next.Asks, p.next.Verdict
	p.next.Tries, t.tried = n.Tries()
	for _, c := range n.Causes {
		p.next.Causes = append(p.next.Causes, c.Cause)
	}
	for _, h := range [...]clock.End{clock.Left, clock.Right} {
		p.advice.Shaft[h] = t.stand.Shaft(h)
	}
	if !p.pressed {
		p.moves = p.jointMoves(n)
	}
}

// jointMoves are the advised steps, and which needle each brings down most.
func (p *pass) jointMoves(n *crank.ThrowsNext) (all []move) {
	if n.Stand == nil {
		return nil
	}
	before := n.Stand.RunOuts(make([]crank.Bend, len(n.Stand.Bends)))
	for i := range n.Steps {
		s := &n.Steps[i]
		m := move{PlannedMove: s.PlannedMove, joint: s.Joint, plus: s.HalfWidth95, predicted: s.Alone, then: s.Then}
		for k, now := range s.Then {
			if before[k]-now > before[m.watch]-s.Then[m.watch] {
				m.watch = k
			}
		}
		all, before = append(all, m), s.Then
	}
	return all
}

// webGaps reads the gaps across the webs at each pin: at all four hours, or at 12 and 6.
func (p *pass) webGaps(r *form.Reader, pass string) (all []crank.RimGap) {
	sigma := r.Default(form.Feeler) / math.Sqrt(12) * math.Sqrt2 / (2 * p.throws.Rim)
	for j, key := range p.throws.keys {
		at, keys := [...]form.ID{form.PassGap12, form.PassGap6, form.PassGap3, form.PassGap9}, []string{pass}
		if j > 0 {
			at, keys = [...]form.ID{form.PinGap12, form.PinGap6, form.PinGap3, form.PinGap9}, []string{pass, key}
		}
		var v [4]float64
		var given [4]bool
		for i, id := range at {
			v[i], given[i] = r.Number(id, keys...)
		}
		if !given[0] || !given[1] {
			continue
		}
		slope := clock.Vec{T: v[0] - v[1], N: v[2] - v[3]}.Scale(1 / (2 * p.throws.Rim)).From(p.Seen)
		all = append(all, crank.RimGap{Joint: j, Slope: slope, Cov: lsq.Round(sigma), OnlyT: !given[2] || !given[3]})
	}
	return all
}

// complainOfThrows puts what can't be beside its field.
func (p *pass) complainOfThrows(r *form.Reader, err error) {
	e, ok := err.(*crank.AssemblyError)
	if !ok {
		return
	}
	mm := func(v float64) string { return unit.Format(v, unit.MM, 0.1) }
	switch e.Part {
	case crank.JointCount:
		r.Complain(tooManyThrows(mm(e.Given)), form.PinAt, p.throws.keys[len(p.throws.keys)-1])
	case crank.JointAt:
		words := pinNotBeyond(mm(e.Given), mm(e.Above))
		r.Complain(words, form.PinAt, p.throws.keys[max(e.Index, 1)])
	case crank.JointThrow:
		words := throwOutsideWheel(mm(e.Given), mm(2*p.throws.Rim))
		if e.Index == 0 {
			r.Complain(words, form.Throw)
		} else {
			r.Complain(words, form.PinThrow, p.throws.keys[e.Index])
		}
	case crank.RestAt:
		id := form.ShaftPin
		if p.crank.Mount != crank.Centres {
			id = p.heldAt
		}
		r.Complain(cantBeHeldThere, id, p.SideOf[e.Index])
	case crank.MainAt:
		words := mainOffJournal(mm(e.Given))
		switch piece := p.throws.Mains[e.Index].Piece; piece {
		case 0:
			r.Complain(words, form.ShaftBearing, p.SideOf[clock.Left])
		case len(p.throws.Joints):
			r.Complain(words, form.ShaftBearing, p.SideOf[clock.Right])
		default:
			r.Complain(words, form.PinMain, p.throws.keys[piece])
		}
	case crank.PieceDialAt:
		st := &p.stations[p.used[e.Index]]
		words := dialOnPin(mm(e.Given))
		if key, further := strings.CutPrefix(st.name, "dial."); further {
			r.Complain(words, form.DialAt, key)
		} else {
			r.Complain(words, form.ShaftAt, st.name)
		}
	}
}

// jointDo is what to do at a joint: "Strike the timing wheel of pin 2 at 3".
func (p *pass) jointDo(m *move) string {
	if m.Kind == crank.Strike {
		return strikeWheelOfPin(p.SideOf[m.Wheel], pinName(m.joint), p.at(m.Hour))
	}
	way := closeWheelsOfPin(upperFirst(kindNames[m.Kind]), pinName(m.joint), p.at(m.Hour))
	if p.leverAssumed {
		return way
	}
	return untilStays(way, p.Amount(m.Aim))
}

// throwsWords say the verdict of a crank of several throws, and what to do first, and
// return that as it is to be read from two metres.
func (a answers) throwsWords(p *pass, far string) string {
	n := &p.throws.next
	switch {
	case n.Why == crank.Stop:
		a.throwsStop(p)
		return farStop
	case n.Why == crank.Work:
		a.throwsWork(p)
		return farAtPin(p.farWork(&p.moves[0].Move), strconv.Itoa(p.moves[0].joint+1))
	case n.Verdict == crank.Fit:
		a.Say("truing.headline", everyNeedleInside)
		a.Say("truing.then", worstAndMain(p.runOutWords(), upperFirst(p.worstMainWords())))
	case n.Verdict == crank.FitAsHung:
		a.Say("truing.headline", everyNeedleInsideAsHung)
		why := p.whyAsHung()
		if n.Open {
			why = leansUntold(p.settleWords())
		}
		a.Say("truing.then", worstAsHung(p.runOutWords(), why))
	case n.Verdict == crank.NotMendable || n.Why == crank.Unmendable:
		a.Say("truing.headline", bumpingCantMend(p.throwsLeft()))
		a.Say("truing.then", p.unmendable(throwsDontMatch))
	case n.Verdict == crank.TooClose:
		as := readsOutside
		if n.Plain == crank.Fit {
			as = readsInside
		}
		a.Say("truing.headline", tooClose(p.throwsStand()))
		a.Say("truing.then", as(p.tellers()))
	case len(n.Settles) > 0:
		a.Say("truing.headline", cantTellWhichPin)
		a.Say("truing.then", whatWouldTell(p.settleWords()))
	default:
		a.Say("truing.headline", cantTellWhich)
		a.Say("truing.then", whatWouldTell(p.tellers()))
	}
	return far
}

// throwsWork says the first move, and what comes after it.
func (a answers) throwsWork(p *pass) {
	m := p.moves[0]
	a.Say("truing.headline", doAndWatch(p.jointDo(&m), p.watchWords(m)))
	var rest []string
	for i := range p.moves[1:] {
		next := &p.moves[1+i]
		rest = append(rest, andHard(lowerFirst(p.jointDo(next)), p.hardness(doneAs(&next.PlannedMove))))
	}
	then := thenTheRest(rest)
	if p.needlesInside() && !p.leverAssumed {
		then = insideBut(p.worstMainWords(), then)
	}
	a.Say("truing.then", then)
	hard := p.howHard()
	if len(rest) > 0 { // the others have theirs beside them
		hard = theFirst(p.hardness(doneAs(&m.PlannedMove)))
	}
	a.Say("truing.hard", hard)
	a.Say("truing.caution", caution)
}

// throwsStop says why to hit it no more, pin by pin.
func (a answers) throwsStop(p *pass) {
	a.Say("truing.headline", stopFindOut)
	var causes []string
	at := -1
	for _, c := range p.throws.next.Causes {
		words := causeWords[c.Cause]
		if c.Joint != at && c.Joint >= 0 {
			words, at = ofPin(pinName(c.Joint), words), c.Joint
		}
		causes = append(causes, words)
	}
	a.Say("truing.then", likeliestFirst(strings.Join(causes, "; ")))
	a.Say("truing.hard", freshChalk)
	a.Say("truing.long", "yes")
}

// settleWords say which readings would settle what is open, the soonest first.
func (p *pass) settleWords() string {
	var ways []string
	for _, s := range p.throws.next.Settles {
		if len(ways) == 2 || s.Leaves > p.throws.next.Settles[0].Leaves {
			break
		}
		if s.Gap {
			ways = append(ways, gapAcrossPin(pinName(s.Joint)))
			continue
		}
		ways = append(ways, dialFromLeft(unit.Format(s.At, unit.MM, 1), p.pieceName(s.Piece)))
	}
	return orElse(ways)
}

// pieceName names a piece: a side's shaft, or the journal between two pins.
func (p *pass) pieceName(piece int) string {
	switch piece {
	case 0:
		return onTheShaft(p.SideOf[clock.Left])
	case len(p.throws.Joints):
		return onTheShaft(p.SideOf[clock.Right])
	}
	return onTheJournal(pinName(piece-1), pinName(piece))
}

// throwsSit says joint by joint how the pieces sit.
func (a answers) throwsSit(p *pass, more ...string) {
	var lines []string
	for j := range p.throws.Joints {
		lines = append(lines, p.jointSits(pinName(j), j))
	}
	lines = append(append(lines, p.mainLines()...), more...)
	a.Say("throws.sit", strings.Join(lines, "\n"))
}

// throwsTellMore says what would tell more, and draws how the pieces sit.
func (a answers) throwsTellMore(p *pass) {
	if len(p.throws.next.Settles) > 0 {
		a.Say("throws.more", whatWouldTellMore(p.settleWords()))
	}
	a.shafts(p, "")
	a.Text("picture.pieces", draw.ThrowsBend(p.throwsView("pieces", p.throws.stand)))
}

// jointSits says how the pieces sit to one another at a pin, by its name.
func (p *pass) jointSits(name string, j int) string {
	return pinSits(upperFirst(name), p.twistWords(j), p.gapWords(j))
}

// twistWords and gapWords say how the pieces sit at a joint, as far as it is told.
func (p *pass) twistWords(j int) string {
	s := p.throws.stand
	if !s.DTold(j) || p.leverAssumed {
		return cantTellTwist
	}
	d, sure := s.Bends[j].D, s.UncertaintyOfD(j)
	return twistAndMismatch(p.towards(clock.Vec{N: d.N}, sure.HalfWidth95(clock.Vec{N: 1})), p.towards(clock.Vec{T: d.T}, sure.HalfWidth95(clock.Vec{T: 1})))
}

func (p *pass) gapWords(j int) string {
	s := p.throws.stand
	if sure := s.UncertaintyOfG(j); !s.GTold(j) || !sure.Significant(s.Bends[j].G) {
		return cantTellGap
	}
	if p.leverAssumed {
		return ""
	}
	across, widest := s.GapAcross(j)
	return openAtBy(p.at(widest), p.Within(across, 2*p.throws.Rim*s.UncertaintyOfG(j).HalfWidth95(s.Bends[j].G)))
}

// throwsValues fills in the figures of a crank of several throws, joint by joint.
func (a answers) throwsValues(p *pass, r *form.Reader) {
	s, t := p.throws.stand, &p.throws.next
	a.ofOneThrow()
	a.Text("verdict", verdictNames[t.Verdict])
	a.Text("verdict_as_read", verdictNames[t.Plain])
	a.Text("advice", adviceNames[t.Why])
	a.Text("seen_from", p.SeenFrom())
	a.list("after_all_tir_mm", s.RunOuts(s.Mended()))
	for n, st := range p.counted {
		at, got := "dials/"+strconv.Itoa(n)+"/", &p.reading[p.used[n]]
		a.Text(at+"name", p.stations[p.used[n]].name)
		a.Number(at+"piece", float64(p.throws.pieceAt(st.At)+1))
		a.Number(at+"at_mm", st.At)
		a.Number(at+"tir_mm", got.RunOut)
		a.Number(at+"plus_mm", got.HalfWidth95())
		a.HourOrNull(at+"high_hour", got.Uncertainty().Significant(got.E), p.Hour(got.E.Hour()))
	}
	for j := range p.throws.Joints {
		a.jointValues(p, j)
	}
	a.moveValues(p)
	a.mainValues(p)
	a.indexValues(p.indexed(r))
	for i, ask := range t.Settles {
		at := "settles/" + strconv.Itoa(i) + "/"
		if ask.Gap {
			a.Text(at+"what", "gap")
			a.Number(at+"pin", float64(ask.Joint+1))
		} else {
			a.Text(at+"what", "dial")
			a.Number(at+"piece", float64(ask.Piece+1))
			a.Number(at+"at_mm", ask.At)
		}
	}
}

func (a answers) list(name string, values []float64) {
	for i, v := range values {
		a.Number(name+"/"+strconv.Itoa(i), v)
	}
}

// jointValues fills in one joint, its hours its own.
func (a answers) jointValues(p *pass, j int) {
	s, at := p.throws.stand, "joints/"+strconv.Itoa(j)+"/"
	told := func(name string, so bool, v float64) {
		if so {
			a.Number(at+name, v)
		} else {
			a.Null(at + name)
		}
	}
	d, sureD, sureG := s.Bends[j].D.From(p.Seen), s.UncertaintyOfD(j), s.UncertaintyOfG(j)
	across, widest := s.GapAcross(j)
	a.Number(at+"pin", float64(j+1))
	told("offset/towards12_mm", s.DTold(j), d.T)
	told("offset/towards3_mm", s.TwistTold(j), d.N)
	told("offset/plus_mm", s.DTold(j), sureD.HalfWidth95(s.Bends[j].D))
	told("gap/widest_hour", s.GTold(j) && sureG.Significant(s.Bends[j].G), p.Hour(widest))
	told("gap/across_rim_mm", s.GTold(j), across)
	told("gap/plus_mm", s.GTold(j), 2*p.throws.Rim*sureG.HalfWidth95(s.Bends[j].G))
	if s.TwistTold(j) {
		a.list(at+"after_strike_tir_mm", s.RunOuts(s.Without(j, crank.Strike)))
	}
	if s.GTold(j) {
		a.list(at+"after_gap_tir_mm", s.RunOuts(s.Without(j, crank.Squeeze)))
	}
}
