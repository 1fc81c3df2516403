package truing

import (
	"errors"
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
	keys   []string // of each pin's row; the first pin has none
	stand  *crank.Stand
	advice crank.JointAdvice
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

// readPins reads where the pins stand, from left to right; one not given stands
// three tenths of a wheel from the one before it.
func (s *setUp) readPins(r *form.Reader, first float64) {
	throw, wheel := r.Default(form.Throw), r.Default(form.Rim)
	t := &s.throws
	t.Rim, t.Joints, t.keys = wheel/2, []crank.Joint{{At: first, Throw: throw}}, []string{""}
	for _, key := range r.Rows("pin") {
		j := crank.Joint{Phase: clock.SeenFrom(s.Seen, r.Default(form.PinAngle, key)/degreesPerHour), Throw: r.Or(throw, form.PinThrow, key)}
		j.At = r.Or(math.Round(t.Joints[len(t.Joints)-1].At+0.3*wheel), form.PinAt, key)
		t.Joints, t.keys = append(t.Joints, j), append(t.keys, key)
		for i := len(t.Joints) - 1; i > 1 && t.Joints[i].At < t.Joints[i-1].At; i-- {
			t.Joints[i], t.Joints[i-1] = t.Joints[i-1], t.Joints[i]
			t.keys[i], t.keys[i-1] = t.keys[i-1], t.keys[i]
		}
	}
}

const degreesPerHour = 30

// errSeveral says that a crank of several throws is none of one.
var errSeveral = errors.New("truing: several throws")

// solveOne finds how the halves of a crank of one throw sit.
func (s *setUp) solveOne(st []crank.Station) (crank.Pose, error) {
	if s.several() {
		return crank.Pose{}, errSeveral
	}
	return s.crank.Solve(st)
}

// errUnmeasured says that a place or angle is assumed that it hangs on which pin is
// at fault.
var errUnmeasured = errors.New("truing: pins not measured")

// unmeasured tells whether where a pin stands, along the crank or round it, is assumed.
func (p *pass) unmeasured(r *form.Reader) bool {
	blank := r.Blank(form.ShaftPin, sideNames[0]) || r.Blank(form.ShaftPin, sideNames[1])
	for _, key := range p.throws.keys[1:] {
		blank = blank || r.Blank(form.PinAt, key) || r.Blank(form.PinAngle, key)
	}
	return blank
}

// workOutThrows works out the round on the bench.
func (p *pass) workOutThrows(r *form.Reader) {
	t := &p.throws
	if p.unmeasured(r) {
		p.fault = errUnmeasured
		return
	}
	t.Mount, t.CentresKnown = p.crank.Mount, p.crank.CentresKnown
	for i, x := range p.crank.Support {
		t.Rests[i] = crank.Rest{Piece: t.pieceAt(x), At: x}
	}
	dials := make([]crank.PieceDial, len(p.counted))
	for i, st := range p.counted {
		dials[i] = crank.PieceDial{Piece: t.pieceAt(st.At), Station: st}
	}
	if t.stand, p.fault = t.Solve(dials, p.webGaps(r)); p.fault != nil {
		p.complainOfThrows(r, p.fault)
		return
	}
	t.advice = t.stand.Advise(p.allowed.RunOut)
	a := &t.advice
	p.advice = crank.Advice{Verdict: a.Verdict, Plain: a.Plain, Worst: a.Worst, Station: a.Station, Floor: a.Floor, Weak: a.Weak}
	p.pressed = r.Word(form.PassTailstock, p.key) == "moved"
}

// webGaps reads the gaps across the webs at each pin: at all four hours, or at 12 and 6.
func (p *pass) webGaps(r *form.Reader) (all []crank.RimGap) {
	sigma := r.Default(form.Feeler) / math.Sqrt(12) * math.Sqrt2 / (2 * p.throws.Rim)
	for j, key := range p.throws.keys {
		at, keys := [...]form.ID{form.PassGap12, form.PassGap6, form.PassGap3, form.PassGap9}, []string{p.key}
		if j > 0 {
			at, keys = [...]form.ID{form.PinGap12, form.PinGap6, form.PinGap3, form.PinGap9}, []string{p.key, key}
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
		r.Complain(bench.Fill("% throws: a crank of six at most can be worked out", mm(e.Given)), form.PinAt, p.throws.keys[len(p.throws.keys)-1])
	case crank.JointAt:
		words := bench.Fill("% from the left end is not beyond the pin before it, which stands at %: measure from the end at your left hand", mm(e.Given), mm(e.Above))
		r.Complain(words, form.PinAt, p.throws.keys[max(e.Index, 1)])
	case crank.JointThrow:
		words := bench.Fill("a throw of % puts the crankpin outside a wheel of %: the throw must be less than half the wheel", mm(e.Given), mm(2*p.throws.Rim))
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
		r.Complain("the crank can’t be held there: it must lie clear of every pin, the drive and the timing side’s apart", id, p.SideOf[e.Index])
	case crank.PieceDialAt:
		st := &p.stations[p.used[e.Index]]
		words := bench.Fill("a dial at % from the left end stands on a pin or past the end: give a place on a shaft or an inner journal", mm(e.Given))
		if key, further := strings.CutPrefix(st.name, "dial."); further {
			r.Complain(words, form.DialAt, key)
		} else {
			r.Complain(words, form.ShaftAt, st.name)
		}
	}
}

// pinName names a joint by its pin.
func pinName(joint int) string { return bench.Fill("pin %", strconv.Itoa(joint+1)) }

// jointWay is what to do at a joint: "strike the timing wheel of pin 2 at 3".
func (p *pass) jointWay(m *crank.JointMove) string {
	if m.Move.Kind == crank.Strike {
		return bench.Fill("strike the % wheel of % at %", p.SideOf[m.Move.Wheel], pinName(m.Joint), p.at(m.Move.Hour))
	}
	way := bench.Fill("% the wheels of % at %", kindNames[m.Move.Kind], pinName(m.Joint), p.at(m.Move.Hour))
	if p.leverAssumed {
		return way
	}
	return bench.Fill("% until % stays", way, p.Amount(m.Aim))
}

// jointWatch is the needle that such a move brings down most, and to what.
func (p *pass) jointWatch(m *crank.JointMove, before []float64) string {
	watch := 0
	for i := range m.Then {
		if before[i]-m.Then[i] > before[watch]-m.Then[watch] {
			watch = i
		}
	}
	return bench.Fill("% needle to %", p.dialName(p.used[watch]), p.Amount(m.Then[watch]))
}

// throwsWords say the verdict of a crank of several throws, and what to do first.
func (a answers) throwsWords(p *pass) {
	t := &p.throws.advice
	switch {
	case p.pressed:
		a.Say("truing.headline", "It was pressure: leave the tailstock just snug, and read again.")
		a.Say("truing.then", "What these readings show is partly the tailstock’s doing.")
		a.Say("lathe.do", "READ AGAIN")
		return
	case len(t.Steps) > 0:
		a.throwsWork(p)
		return
	case t.Verdict == crank.Fit:
		a.Say("truing.headline", "Every needle is inside: leave it.")
		a.Say("truing.then", "Worst run-out %. How far the journals lean in their bearings is not judged.", p.runOutWords())
	case t.Verdict == crank.FitAsHung:
		a.Say("truing.headline", "Every needle is inside as it hangs: leave it.")
		a.Say("truing.then", "Worst run-out %. One dial a shaft can’t see a bad centre or a bent shaft.", p.runOutWords())
	case t.Verdict == crank.NotMendable:
		a.Say("truing.headline", "Bumping can’t mend this: %.", p.leftWords())
		a.Say("truing.then", "The throws don’t match: look to the pins and their seats.")
	case t.Verdict == crank.TooClose:
		a.Say("truing.headline", "Too close to call: %.", p.runOutWords())
		a.Say("truing.then", "What would tell: %.", p.tellers())
	case len(t.Settles) > 0:
		a.Say("truing.headline", "Out of true, but these readings can’t tell at which pin.")
		a.Say("truing.then", "What would tell: %.", p.settleWords())
	default:
		a.Say("truing.headline", "Out of true, but the dials can’t tell which way to work.")
		a.Say("truing.then", "What would tell: %.", p.tellers())
	}
	a.Say("lathe.do", verdictNames[t.Verdict])
}

// throwsWork says the first move, and what comes after it.
func (a answers) throwsWork(p *pass) {
	t := &p.throws.advice
	m := &t.Steps[0]
	now := p.throws.stand.RunOuts(make([]crank.Bend, len(p.throws.Joints)))
	a.Say("truing.headline", "%; %.", upperFirst(p.jointWay(m)), p.jointWatch(m, now))
	then := "Hours are that pin’s own: it is 12. "
	if len(t.Steps) > 1 {
		then += bench.Fill("Read again; next would be: %. ", p.jointWay(&t.Steps[1]))
	}
	a.Say("truing.then", "%", strings.TrimSpace(then))
	a.Say("truing.hard", "A light blow or turn first: what it does to this crank isn’t learned.")
	a.Say("truing.caution", caution)
	a.Say("lathe.do", "% PIN % at %", loudWords[m.Move.Kind], strconv.Itoa(m.Joint+1), p.at(m.Move.Hour))
}

// settleWords say which readings would settle what is open, the soonest first.
func (p *pass) settleWords() string {
	var ways []string
	for _, s := range p.throws.advice.Settles {
		if len(ways) == 2 || s.Leaves > p.throws.advice.Settles[0].Leaves {
			break
		}
		if s.Gap {
			ways = append(ways, bench.Fill("the gap across the wheels of % at 12, 3, 6 and 9", pinName(s.Joint)))
			continue
		}
		ways = append(ways, bench.Fill("a dial % from the left end, %", unit.Format(s.At, unit.MM, 1), p.pieceName(s.Piece)))
	}
	return strings.Join(ways, ", or ")
}

// pieceName names a piece: a side's shaft, or the journal between two pins.
func (p *pass) pieceName(piece int) string {
	switch piece {
	case 0:
		return bench.Fill("on the % shaft", p.SideOf[clock.Left])
	case len(p.throws.Joints):
		return bench.Fill("on the % shaft", p.SideOf[clock.Right])
	}
	return bench.Fill("on the journal between % and %", pinName(piece-1), pinName(piece))
}

// throwsSit says joint by joint how the pieces sit, and what each needle should do.
func (a answers) throwsSit(p *pass) {
	var lines []string
	s := p.throws.stand
	for j := range p.throws.Joints {
		line := bench.Fill("%: ", upperFirst(pinName(j)))
		if d, sure := s.Bends[j].D, s.UncertaintyOfD(j); s.DTold(j) && !p.leverAssumed {
			line += bench.Fill("% of twist, % of throw mismatch", p.towards(clock.Vec{N: d.N}, sure.HalfWidth95(clock.Vec{N: 1})),
				p.towards(clock.Vec{T: d.T}, sure.HalfWidth95(clock.Vec{T: 1})))
		} else {
			line += "the readings can’t tell twist"
		}
		switch sure := s.UncertaintyOfG(j); {
		case !s.GTold(j) || !sure.Significant(s.Bends[j].G):
			line += "; the readings can’t tell the gap"
		case !p.leverAssumed:
			across, widest := s.GapAcross(j)
			line += bench.Fill("; open at % by %", p.at(widest), p.Within(across, 2*p.throws.Rim*sure.HalfWidth95(s.Bends[j].G)))
		}
		lines = append(lines, line+".")
	}
	for i, m := range p.throws.advice.Steps {
		var shows []string
		for n, v := range m.Then {
			shows = append(shows, bench.Fill("% %", p.stations[p.used[n]].letter, p.Amount(v)))
		}
		lines = append(lines, bench.Fill("%. %: then %.", strconv.Itoa(i+1), upperFirst(p.jointWay(&m)), strings.Join(shows, ", ")))
	}
	if len(p.throws.advice.Settles) > 0 {
		lines = append(lines, bench.Fill("What would tell more: %.", p.settleWords()))
	}
	a.Say("throws.sit", "%", strings.Join(lines, "\n"))
}

// jointFace draws the clock face of the pin to work at, in its own clock.
func (a answers) jointFace(p *pass) {
	if len(p.throws.advice.Steps) == 0 {
		return
	}
	m := &p.throws.advice.Steps[0]
	v := p.highSpots("joint")
	for i := range v.High {
		v.High[i].Hour = clock.Wrap(v.High[i].Hour - p.Hour(p.throws.Joints[m.Joint].Phase))
	}
	mark := draw.Mark{Kind: draw.MarkKind(m.Move.Kind), Wheel: bench.Drawn(p.SideOf[m.Move.Wheel]), Hour: p.Hour(m.Move.Hour)}
	if m.Move.Kind != crank.Strike && !p.leverAssumed {
		mark.Amount = p.Amount(m.Aim)
	}
	v.Moves = []draw.Mark{mark}
	a.Say("throws.face", "The clock face of %, which is its 12.", pinName(m.Joint))
	a.Text("picture.joint", draw.Face(v))
}

// throwsValues fills in the figures of a crank of several throws, joint by joint.
func (a answers) throwsValues(p *pass) {
	s, t := p.throws.stand, &p.throws.advice
	a.ofOneThrow()
	a.Text("verdict", verdictNames[t.Verdict])
	a.Text("verdict_as_read", verdictNames[t.Plain])
	a.Text("advice", adviceNames[throwsWhy[t.Verdict]])
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
	if len(t.Steps) == 0 {
		a.EmptyList("moves")
	}
	for i, m := range t.Steps {
		a.jointMove(p, "moves/"+strconv.Itoa(i)+"/", &m)
	}
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

// throwsWhy is what a verdict on a crank of several throws comes to.
var throwsWhy = [...]crank.Why{
	crank.Fit: crank.Leave, crank.FitAsHung: crank.Leave, crank.OutOfTrue: crank.Work,
	crank.NotMendable: crank.Unmendable, crank.TooClose: crank.Unclear, crank.CantTell: crank.Unclear,
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

func (a answers) jointMove(p *pass, at string, m *crank.JointMove) {
	a.Text(at+"kind", kindNames[m.Move.Kind])
	a.Number(at+"pin", float64(m.Joint+1))
	if a.Text(at+"wheel", "both"); m.Move.Kind == crank.Strike {
		a.Entries[len(a.Entries)-1].Text = p.SideOf[m.Move.Wheel]
	}
	a.Number(at+"hour", p.Hour(m.Move.Hour))
	a.Text(at+"seen_from", p.SeenFrom())
	if p.leverAssumed {
		a.Null(at + "amount_mm")
		return
	}
	a.Number(at+"amount_mm", m.Move.Amount)
	a.Number(at+"aim_mm", m.Aim)
	a.Number(at+"plus_mm", m.HalfWidth95)
	a.list(at+"then_tir_mm", m.Then)
	a.list(at+"predicted_tir_mm", m.Alone)
}
