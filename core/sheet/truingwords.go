package sheet

import (
	"strings"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

const caution = "Eye protection. Tailstock backed off. Wheel supported. Soft hammer."

// amount writes a length as the dials can show it.
func (s *setUp) amount(mm float64) string { return unit.Format(mm, s.fine, s.step) }

// bare writes a length without its unit.
func (s *setUp) bare(mm float64) string { return unit.Figures(mm, s.fine, s.step) }

// at writes an hour seen from the left as the job numbers it.
func (s *setUp) at(hour float64) string { return unit.FormatHour(s.hour(hour), 10) }

// blocks fills the title block and the units in the fields.
func (a *Answers) blocks(p *pass) {
	a.say("block.seen", "seen from "+p.seenFrom()+" side")
	a.say("block.tolerance", p.amount(p.allowed)+" allowed")
	a.text("unit.fine", p.fine.Name)
}

// invite says which reading to take next.
func (a *Answers) invite(p *pass) {
	first, second := p.end("drive"), p.end("timing")
	next, lack := first, p.reading[first].lack
	if lack == nothing {
		next, lack = second, p.reading[second].lack
	}
	side := p.sideOf[next]
	switch lack {
	case runOut:
		if next == first && p.reading[second].lack == runOut {
			a.say("truing.headline", "Turn the crank once and read a dial.")
			a.say("truing.then", "Put in each shaft’s run-out, and the hour where its needle stands highest.")
			return
		}
		a.say("truing.headline", "Now the "+side+" dial’s run-out.")
	case hour:
		a.say("truing.headline", "At which hour does the "+side+" needle stand highest?")
		a.say("truing.then", "Tap the clock face, or type it. 12 is the crankpin.")
	case halfway:
		a.say("truing.headline", "At which hours does the "+side+" needle rise and fall through half-way?")
	case pinAt:
		a.say("truing.headline", "Where does the pin point when the "+side+" needle stands highest?")
	case mending:
		a.say("truing.headline", "Mend the "+side+" dial’s figure marked Wrong.")
	}
}

// words says the verdict, what to do, and what the needles should then do.
func (a *Answers) words(p *pass) {
	switch p.advice.Plain {
	case crank.Fit:
		a.say("truing.headline", "True: leave it. It is fit to go in.")
		a.say("truing.then", "Worst run-out "+p.amount(p.advice.Worst.Value)+", "+p.amount(p.allowed)+" allowed.")
	case crank.NotMendable:
		a.say("truing.headline", "Bumping can’t mend this: "+p.amount(p.advice.Floor.Value)+" would still be left.")
		a.say("truing.then", "Throw mismatch. Look at the pin seats for dirt or fretting, for a bent pin, and whether the halves belong together.")
	case crank.OutOfTrue:
		a.say("truing.headline", p.order(p.moves[0]))
		if len(p.moves) > 1 {
			a.say("truing.then", "Then "+lowerFirst(p.do(p.moves[1]))+".")
		} else {
			a.say("truing.then", p.otherWay(p.moves[0]))
		}
		a.say("truing.caution", caution)
	default:
		a.say("truing.headline", "The dials can’t tell which way to work.")
		a.say("truing.then", "Read again: half-way hours are sharper than the high spot.")
	}
	a.sit(p)
	a.needles(p)
}

// order is the sentence that says what to do: "Strike the drive wheel at 3;
// watch the drive needle fall 2 thou."
func (p *pass) order(m move) string { return p.do(m) + "; " + p.watchWords(m) + "." }

func (p *pass) do(m move) string {
	switch m.Kind {
	case crank.Strike:
		return "Strike the " + p.sideOf[m.Wheel] + " wheel at " + p.at(m.Hour)
	case crank.Squeeze:
		return "Squeeze the wheels together at " + p.at(m.Hour) + " by " + p.amount(m.Amount)
	default:
		return "Spread the wheels at " + p.at(m.Hour) + " by " + p.amount(m.Amount)
	}
}

func (p *pass) watchWords(m move) string {
	now, then := 2*p.forecast(m.watch).Now.Len(), m.predicted[m.watch]
	needle := "watch the " + p.sideOf[m.watch] + " needle "
	if fall := p.amount(now - then); then < now && fall != p.amount(0) {
		return needle + "fall " + fall
	}
	return needle + "come to " + p.amount(then)
}

// otherWay names the move that does the same from elsewhere.
func (p *pass) otherWay(m move) string {
	o := m.other
	switch o.Kind {
	case crank.Strike:
		return "The " + p.sideOf[o.Wheel] + " wheel at " + p.at(o.Hour) + " does the same."
	case crank.Squeeze:
		return "A squeeze at " + p.at(o.Hour) + " by " + p.amount(o.Amount) + " does the same."
	default:
		return "A spread at " + p.at(o.Hour) + " by " + p.amount(o.Amount) + " does the same."
	}
}

// sit says how the halves sit, between centres and in their own bearings.
func (a *Answers) sit(p *pass) {
	right, left := p.sideOf[clock.Right], p.sideOf[clock.Left]
	d := p.seat.D
	if p.bare(d.Len()) == "0" {
		a.say("sit.offset", "The shafts meet in line at the crankpin.")
	} else {
		a.say("sit.offset", "At the crankpin the "+right+" shaft stands "+p.amount(d.Len())+" from the "+left+" shaft’s line, towards "+
			p.at(d.Hour())+": "+p.amount(abs(d.N))+" of twist, "+p.amount(abs(d.T))+" of throw mismatch.")
	}
	across, widest := p.seat.Gap()
	if p.bare(across) == "0" {
		a.say("sit.gap", "The wheels’ faces stand parallel.")
	} else {
		a.say("sit.gap", "The wheels stand open at "+p.at(widest)+": "+p.amount(across)+" wider there than straight across.")
	}
	if p.bare(abs(d.T)) != "0" {
		a.say("sit.mismatch", "Striking can’t mend a throw mismatch; after a squeeze or spread read again before calling it one.")
	}
	axes := p.seat.Running(p.seat.D, p.seat.G)
	tip := func(h clock.End) string {
		return p.amount(axes.RunOut(h, p.tip[h])) + " on the " + p.sideOf[h] + " side"
	}
	a.say("sit.bearings", "Where the sprocket, pinion or rotor sits it would run out "+tip(p.end("drive"))+", "+tip(p.end("timing"))+".")
	tilt := func(h clock.End) string { return unit.Format(axes.Tilt(h), unit.Plain, 0.1) + "′" }
	a.say("sit.tilt", "Each journal leans in its bearing: drive "+tilt(p.end("drive"))+", timing "+tilt(p.end("timing"))+" (minutes of arc).")
}

// needles fills the table of what each dial should show.
func (a *Answers) needles(p *pass) {
	a.say("truing.needles", p.floorWords())
	strike, gap := p.advice.Strike, p.advice.Close
	for half := range p.reading {
		side, f := p.sideOf[half], p.forecast(clock.End(half))
		a.say("now."+side, p.needle(f.Now))
		if strike {
			a.say("after.strike."+side, p.needle(f.Strike))
		}
		if gap {
			a.say("after.gap."+side, p.needle(f.Gap))
		}
		a.say("after.both."+side, p.needle(f.Both))
	}
	if gap {
		m, _ := p.seat.Close()
		a.say("after.gap.name", "After the "+kindNames[m.Kind]+" alone")
	}
}

// floorWords says what no bumping can pass.
func (p *pass) floorWords() string {
	return "With twist and gap both gone, " + p.amount(p.advice.Floor.Value) + " would be left: bumping gets no further than that."
}

// needle writes a run-out with the hour of its high spot.
func (s *setUp) needle(e clock.Vec) string {
	text := s.amount(2 * e.Len())
	if s.bare(2*e.Len()) == "0" {
		return text
	}
	return text + ", high at " + s.at(e.Hour())
}

// assumedWords says which lengths were stood in for.
func assumedWords(r *form.Reader) string {
	n := 0
	for _, s := range r.StandIns {
		if f, _, _ := form.Job.Lookup(s.Name); f.Unit == unit.MM {
			n++
		}
	}
	if n == 0 {
		return "All distances are yours."
	}
	return "Distances in italics are assumed. Which way to work doesn’t hang on them much; how much does. Measure and type over them."
}

// picture draws the clock face.
func (a *Answers) picture(p *pass) {
	v := draw.FaceView{Prefix: "face", SeenFrom: drawn(p.seenFrom())}
	for half, got := range p.reading {
		if got.lack == nothing && got.E != (clock.Vec{}) {
			v.High = append(v.High, draw.HighSpot{
				Letter: drawn(p.sideOf[half]).Letter(), Hour: p.hour(got.E.Hour()), RunOut: p.bare(2 * got.E.Len()),
			})
		}
	}
	for _, m := range p.moves {
		mark := draw.Mark{Kind: draw.MarkKind(m.Kind), Wheel: drawn(p.sideOf[m.Wheel]), Hour: p.hour(m.Hour)}
		if m.Kind != crank.Strike {
			mark.Amount = p.amount(m.Amount)
		}
		v.Moves = append(v.Moves, mark)
	}
	a.text("picture.face", draw.Face(v))
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

func abs(x float64) float64 { return max(x, -x) }
