package truing

import (
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

const caution = "Eye protection. Tailstock backed off. Wheel supported. Soft hammer."

// amount writes a length as the dials can show it.
func (s *setUp) amount(mm float64) string { return unit.Format(mm, s.fine, s.step) }

// bare writes a length without its unit.
func (s *setUp) bare(mm float64) string { return unit.Figures(mm, s.fine, s.step) }

// within writes a length with how far it may be out: "2.1 ± 0.3 thou".
func (s *setUp) within(mm, plus float64) string {
	if s.bare(plus) == "0" {
		return s.amount(mm)
	}
	return bench.Fill("% ± %", s.bare(mm), s.amount(plus))
}

// at writes an hour seen from the left as the job numbers it.
func (s *setUp) at(hour float64) string { return unit.FormatHour(s.Hour(hour), 10) }

// fromEnd writes a place as measured from its shaft's own end.
func (s *setUp) fromEnd(half clock.End, x float64) string {
	if half == clock.Right {
		x = s.length() - x
	}
	return unit.Format(x, unit.MM, 1)
}

// invite says which reading to take next.
func (a answers) invite(p *pass) {
	next := p.wants
	got := &p.reading[next]
	a.Say("truing.reading", "yes")
	if got.lack == runOut && next < len(sideNames) {
		switch other := p.reading[1-next].lack; {
		case other == runOut && p.bench > 0:
			a.Say("truing.headline", "%: read again.", passName(p.bench))
			return
		case other == runOut:
			a.Say("truing.headline", "Turn the crank once and read a dial.")
			a.Say("truing.then", "Type each shaft’s run-out, and the hour where its needle stands highest.")
			return
		case other == nothing && p.oneDial:
			a.Say("truing.headline", "Carry the dial across to the % shaft and turn again.", p.dialName(next))
			return
		}
	}
	switch got.lack {
	case hour:
		if p.bench > 0 {
			break // he has done it before
		}
		a.Say("truing.then", "Tap the clock face, or type it. 12 is the crankpin.")
	case points:
		a.Say("truing.then", "% of % read.", strconv.Itoa(got.taken), strconv.Itoa(got.of))
	}
	if got.lack == hour || got.lack == halfway {
		a.Text("tap", got.blank)
	}
	a.Say("truing.headline", invitations[got.lack], p.dialName(next))
}

// invitations ask for what a reading lacks.
var invitations = [...]string{
	runOut:  "Now the % dial’s run-out.",
	hour:    "At which hour does the % needle stand highest?",
	halfway: "At which hours does the % needle rise and fall through half-way?",
	pinAt:   "Where does the pin point when the % needle stands highest?",
	points:  "Go on round with the % dial.",
	mending: "Mend the % dial’s figure marked Wrong.",
}

// dialName names a station's dial: "drive", "D2, drive".
func (s *setUp) dialName(station int) string {
	st := &s.stations[station]
	if len(st.letter) > 1 {
		return st.letter + ", " + s.SideOf[st.half]
	}
	return s.SideOf[st.half]
}

// words says the verdict, what to do, and what the needles should then do.
func (a answers) words(p *pass) {
	since, asked := p.asksSince()
	switch {
	case p.pressed:
		a.Say("truing.headline", "It was pressure: leave the tailstock just snug, and read again.")
		a.Say("truing.then", "What these readings show is partly the tailstock’s doing.")
	case asked:
		a.askSince(p, since)
	case p.next.Why == crank.Stop:
		a.stopWords(p)
	case p.next.Why == crank.Work && p.leverAssumed:
		a.directionWords(p)
	case p.next.Why == crank.Work:
		a.workWords(p)
	case p.advice.Verdict == crank.Fit:
		a.Say("truing.headline", "True: leave it. It is fit to go in.")
		a.Say("truing.then", "Worst run-out %.", p.runOutWords())
	case p.advice.Verdict == crank.FitAsHung:
		a.Say("truing.headline", "True as it hangs: leave it.")
		why := "One dial a shaft can’t see a bad centre or a bent shaft."
		if _, asked := p.asks(crank.AskCentres); !asked {
			why = "What was read close to the centres doesn’t vouch for them."
		}
		a.Say("truing.then", "Worst run-out %. %", p.runOutWords(), why)
	case p.advice.Verdict == crank.NotMendable || p.next.Why == crank.Unmendable:
		headline := "Bumping can’t mend this: %."
		if p.advice.Verdict != crank.NotMendable {
			headline = "As read, bumping gets it no further: %." // the floor isn't clear of its doubt
		}
		a.Say("truing.headline", headline, p.leftWords())
		a.Say("truing.then", "%", p.unmendable())
		a.Say("truing.long", "yes") // the clock face makes room for it
	case p.advice.Verdict == crank.TooClose:
		a.Say("truing.headline", "Too close to call: %.", p.standsWords())
		as := "outside"
		if p.advice.Plain == crank.Fit {
			as = "inside"
		}
		a.Say("truing.then", "As read it is %. What would tell: %.", as, p.tellers())
	default:
		a.Say("truing.headline", "Out of true, but the dials can’t tell which way to work.")
		a.Say("truing.then", "What would tell: %.", p.tellers())
	}
	if _, asked := p.asks(crank.AskCentres); asked && p.next.Why != crank.Stop {
		a.Say("ask.centres", "yes")
		a.Text("ask.centres", "centres")
	}
	a.far(p)
}

// workWords say what to do, and what the needles should then do.
func (a answers) workWords(p *pass) {
	m := p.moves[0]
	a.Say("truing.headline", "%; %.", p.do(m.Move, m.Aim), p.watchWords(m))
	if len(p.moves) > 1 {
		next := p.moves[1]
		a.Say("truing.then", "Then %; %.", p.doNext(next.Move, next.Aim), p.watchWords(next))
	} else if stays := m.Aim * m.Other.Amount / m.Amount; m.Kind == crank.Strike || stays >= p.step {
		// On the pin's side the same bend may hardly open the wheels: less than a division nobody can gauge.
		a.Say("truing.then", "Or %.", p.doNext(m.Other, stays))
	}
	a.Say("truing.hard", "%", p.howHard())
	a.Say("truing.caution", caution)
}

// cantSolve says why readings that are all there can't be worked out.
func (a answers) cantSolve(p *pass) {
	if p.doubt != nil {
		a.askUnit(p)
		return
	}
	if p.fault == errUnmeasured {
		a.Say("truing.headline", "Measure where each crankpin stands.")
		a.Say("truing.then", "Which pin is at fault hangs on it: type both ends’ distances to their crankpin, and each further pin’s place and angle, under Distances.")
		return
	}
	if e, ok := p.fault.(*crank.MissingError); ok {
		a.Say("truing.headline", "One more dial is wanted on the % shaft.", p.SideOf[e.Half])
		a.Say("truing.then", "Away from where it is held: about % from that shaft’s end.", p.fromEnd(e.Half, e.At))
		return
	}
	a.Say("truing.headline", "Mend the figure marked Wrong below.")
}

// far says the same in few words, to be read from two metres.
func (a answers) far(p *pass) {
	_, asked := p.asksSince()
	switch {
	case p.pressed:
		a.Say("lathe.do", "READ AGAIN")
	case asked:
		a.Say("lathe.do", "WHAT WAS DONE?")
	case p.next.Why == crank.Stop:
		a.Say("lathe.do", "STOP")
	case p.next.Why == crank.Work:
		m := p.moves[0]
		wheel := ""
		if m.Kind == crank.Strike {
			wheel = p.SideOf[m.Wheel] + " "
		}
		a.Say("lathe.do", "% %at %", loudNames[m.Kind], wheel, p.at(m.Hour))
	case p.advice.Verdict == crank.Fit:
		a.Say("lathe.do", "TRUE")
	default:
		a.Say("lathe.do", verdictNames[p.advice.Verdict])
	}
}

// elseWords say what else holds where the verdict and the advice differ: of a
// crank not begun on what working on it would be, of one begun on what is in doubt.
func (a answers) elseWords(p *pass) {
	switch works := p.next.Why == crank.Work; {
	case p.pressed || p.next.Why == crank.Stop:
	case !works && len(p.moves) > 0 && p.leverAssumed:
		a.Say("truing.else", "If you work on it all the same: %.", lowerFirst(p.way(p.moves[0].Move)))
		a.Say("truing.else.caution", caution)
	case !works && len(p.moves) > 0:
		a.Say("truing.else", "If you work on it all the same: %. %", lowerFirst(p.do(p.moves[0].Move, p.moves[0].Aim)), p.howHard())
		a.Say("truing.else.caution", caution)
	case works && p.advice.Verdict == crank.TooClose:
		a.Say("truing.else", "It is too close to call: %. What would tell: %.", p.standsWords(), p.tellers())
	case works && p.advice.Verdict == crank.NotMendable:
		a.Say("truing.else", "This only brings it back to where it was: %.", p.leftWords())
	}
}

// runOutWords are the worst run-out beside what is allowed.
func (p *pass) runOutWords() string {
	return bench.Fill("%, % allowed", p.besideRunOut(p.advice.Worst), p.limit())
}

// limit is the run-out that is allowed, as it was given.
func (p *pass) limit() string { return unit.Format(p.allowed.RunOut, p.fine, 0) }

// besideRunOut writes a run-out to stand beside what is allowed.
func (p *pass) besideRunOut(f crank.Figure) string {
	value, plus := p.dialScale().beside(f, p.allowed.RunOut)
	if plus != "0" {
		value = bench.Fill("% ± %", value, plus)
	}
	return bench.Fill("% %", value, p.fine.Name())
}

// besideTilt writes a lean [minutes of arc] to stand beside what is allowed.
func (p *pass) besideTilt(f crank.Figure) string {
	value, plus := tiltScale.beside(crank.Figure{Value: f.Value / 60, HalfWidth95: f.HalfWidth95 / 60}, p.allowed.Tilt/60)
	if plus == "0" {
		return value + "′"
	}
	return bench.Fill("%′ ± %′", value, plus)
}

// standsWords say what stands nearest to its limit or beyond: run-out, or where
// that is inside for sure, the lean of a journal.
func (p *pass) standsWords() string {
	half, inside := p.leans()
	if !inside {
		return p.runOutWords()
	}
	return bench.Fill("the % journal leans %, %′ allowed", p.SideOf[half], p.besideTilt(p.advice.Tilt[half]), tiltScale.limit(p.allowed.Tilt/60))
}

// leans tells whether the run-out is inside for sure and a journal's lean is not,
// and which leans more.
func (p *pass) leans() (half clock.End, governs bool) {
	tilt := &p.advice.Tilt
	if tilt[clock.Right].Value > tilt[clock.Left].Value {
		half = clock.Right
	}
	worst := p.advice.Worst
	return half, worst.Value+worst.HalfWidth95 <= p.allowed.RunOut && tilt[half].Value+tilt[half].HalfWidth95 > p.allowed.Tilt
}

// leftWords say what no bumping passes: run-out, or where that would be inside,
// the lean that a throw mismatch gives both journals alike.
func (p *pass) leftWords() string {
	floor, doubt := p.advice.Floor, 0.0
	if p.advice.Verdict == crank.NotMendable {
		doubt = floor.HalfWidth95
	}
	if floor.Value-doubt > p.allowed.RunOut {
		return bench.Fill("% would still be left, % allowed", p.besideRunOut(floor), p.limit())
	}
	axes := p.pose.Running(clock.Vec{T: p.pose.D.T}, clock.Vec{})
	return bench.Fill("the journals would still lean %, %′ allowed", p.besideTilt(crank.Figure{Value: axes.Tilt(clock.Left)}), tiltScale.limit(p.allowed.Tilt/60))
}

// tiltVerdict says so where it is a journal's lean that counts against a crank
// whose dials are inside.
func (a answers) tiltVerdict(p *pass) {
	for half, tilt := range p.advice.Tilt {
		if tilt.Value > p.allowed.Tilt && p.advice.Worst.Value <= p.allowed.RunOut {
			a.Say("truing.lean", "Run-out is inside, but the % journal leans % in its bearing, %′ allowed.",
				p.SideOf[half], p.besideTilt(crank.Figure{Value: tilt.Value}), tiltScale.limit(p.allowed.Tilt/60))
			return
		}
	}
}

// tellers says what would make the dial that weighs most surer.
func (p *pass) tellers() string {
	weak := p.used[p.advice.Weak]
	better := p.reading[weak].Better
	var ways []string
	add := func(helps bool, way string) {
		if helps {
			ways = append(ways, way)
		}
	}
	add(better.HalfWay, "the half-way hours")
	add(better.MorePoints, "a full turn, more points round it")
	add(better.FinerDial, "a finer dial")
	add(p.advice.SecondStation, "a second place on that shaft")
	if len(ways) == 0 {
		return "read it once more"
	}
	return bench.Fill("% dial: ", p.dialName(weak)) + strings.Join(ways, ", or ")
}

// do is what to do, and of a squeeze or spread how much of it [mm] must stay when
// the clamp or wedge is out: "Squeeze the wheels at 6 until 2 thou stays".
func (p *pass) do(m crank.Move, stays float64) string {
	if m.Kind == crank.Strike || p.leverAssumed {
		return p.way(m)
	}
	return bench.Fill("% until % stays", p.way(m), p.amount(stays))
}

// doNext is the same after another move, so that it fits one line.
func (p *pass) doNext(m crank.Move, stays float64) string {
	if m.Kind == crank.Strike || p.leverAssumed {
		return lowerFirst(p.do(m, stays))
	}
	return bench.Fill("% at % until % stays", kindNames[m.Kind], p.at(m.Hour), p.amount(stays))
}

// watchWords say which needle to watch, and what it should come to.
func (p *pass) watchWords(m move) string {
	return bench.Fill("% needle to %", p.dialName(p.used[m.watch]), p.amount(m.then[m.watch]))
}

// sit says how the halves sit, between centres and in their own bearings.
func (a answers) sit(p *pass) {
	if p.leverAssumed {
		return
	}
	right, left := p.SideOf[clock.Right], p.SideOf[clock.Left]
	d, sure := p.pose.D, p.pose.UncertaintyOfD(p.counted)
	a.Say("sit.offset", "At the crankpin the % shaft stands off the % shaft’s line by % of twist and % of throw mismatch.", right, left,
		p.towards(clock.Vec{N: d.N}, sure.HalfWidth95(clock.Vec{N: 1})), p.towards(clock.Vec{T: d.T}, sure.HalfWidth95(clock.Vec{T: 1})))
	a.gapWords(p)
	if abs(d.T) > sure.HalfWidth95(clock.Vec{T: 1}) && p.bare(d.T) != "0" {
		a.Say("sit.mismatch", "Striking can’t mend a throw mismatch; after a squeeze or spread read again before calling it one.")
	}
	axes := p.pose.Running(p.pose.D, p.pose.G)
	drive, timing := p.End("drive"), p.End("timing")
	a.Say("sit.bearings", "Where the sprocket, pinion or rotor sits it would run out % on the drive side, % on the timing side.",
		p.amount(axes.RunOut(drive, p.tip[drive])), p.amount(axes.RunOut(timing, p.tip[timing])))
	lean := func(end clock.End) string { return p.besideTilt(p.advice.Tilt[end]) }
	a.Say("sit.tilt", "Each journal leans in its bearing, in minutes of arc: drive %, timing %; %′ allowed.", lean(drive), lean(timing), tiltScale.limit(p.allowed.Tilt/60))
}

// towards writes an offset along 12–6 or 3–9 with its hour.
func (p *pass) towards(v clock.Vec, plus float64) string {
	text := p.within(v.Len(), plus)
	if v.Len() <= plus || p.bare(v.Len()) == "0" {
		return text
	}
	return bench.Fill("% towards %", text, p.at(v.Hour()))
}

func (a answers) gapWords(p *pass) {
	across, widest := p.pose.Gap()
	sure := p.pose.UncertaintyOfG(p.counted)
	if !sure.Significant(p.pose.G) {
		a.Say("sit.gap", "The wheels’ faces stand parallel as far as the dials can tell: no more than % across the rim.",
			p.amount(across+2*p.crank.Rim*sure.HalfWidth95(clock.Vec{})))
		return
	}
	a.Say("sit.gap", "The wheels stand open at %: % wider there than straight across.", p.at(widest),
		p.within(across, 2*p.crank.Rim*sure.HalfWidth95(p.pose.G)))
}

// needles fills the table of what each dial should show.
func (a answers) needles(p *pass) {
	if p.leverAssumed {
		return
	}
	a.Say("truing.needles", "With twist and gap both gone, % would be left: bumping gets no further than that.",
		p.within(p.advice.Floor.Value, p.advice.Floor.HalfWidth95))
	for n, st := range p.counted {
		if p.used[n] >= len(sideNames) {
			continue
		}
		side, f := sideNames[p.used[n]], p.pose.Forecast(st.Half, st.At)
		got := &p.reading[p.used[n]]
		a.Say("now."+side, p.needle(got.E, got.HalfWidth95()))
		if p.advice.Strike {
			a.Say("after.strike."+side, p.needle(f.Strike, 0))
		}
		if p.advice.Close {
			a.Say("after.gap."+side, p.needle(f.Gap, 0))
		}
		a.Say("after.both."+side, p.needle(f.Both, 0))
	}
	if p.advice.Close {
		m, _ := p.pose.Close()
		a.Say("after.gap.name", "After the % alone", kindNames[m.Kind])
	}
}

// needle writes a run-out with the hour of its high spot.
func (s *setUp) needle(e clock.Vec, plus float64) string {
	text := s.within(2*e.Len(), plus)
	if s.bare(2*e.Len()) == "0" {
		return text
	}
	return bench.Fill("%, high at %", text, s.at(e.Hour()))
}

// foldedLines say in a line each what holds of the set-up and of the distances.
func (a answers) foldedLines(s *setUp, r *form.Reader) {
	mount := [...]string{crank.Centres: "between centres", crank.VBlocks: "on V-blocks", crank.OwnBearings: "in its own bearings"}[s.crank.Mount]
	a.Say("setup.line", "% · % dials", mount, unit.Format(s.step, s.fine, 0))
	for _, standIn := range r.StandIns {
		if f, _, _ := form.Job.Lookup(standIn.Name); f.Unit == unit.MM {
			a.Say("distances.line", "assumed")
			a.Say("truing.assumed", "Distances in italics are assumed. Which way to work doesn’t hang on them much; how much does. Measure and type over them.")
			return
		}
	}
	a.Say("distances.line", "measured")
	a.Say("truing.assumed", "All distances are yours.")
}

func lowerFirst(s string) string { return string(s[0]-'A'+'a') + s[1:] }

// upperFirst leaves figures as they are.
func upperFirst(s string) string {
	if s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}

func abs(x float64) float64 { return max(x, -x) }
