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
	a.say("block.seen", "seen from % side", p.seenFrom())
	a.say("block.tolerance", "% allowed", p.amount(p.allowed))
	a.text("unit.fine", p.fine.Name)
}

// invite says which reading to take next.
func (a *Answers) invite(p *pass) {
	first, second := p.end("drive"), p.end("timing")
	next := first
	if p.reading[first].lack == nothing {
		next = second
	}
	lack := p.reading[next].lack
	if lack == runOut && p.reading[second].lack == runOut && next == first {
		a.say("truing.headline", "Turn the crank once and read a dial.")
		a.say("truing.then", "Put in each shaft’s run-out, and the hour where its needle stands highest.")
		return
	}
	if lack == hour {
		a.say("truing.then", "Tap the clock face, or type it. 12 is the crankpin.")
	}
	a.say("truing.headline", invitations[lack], p.sideOf[next])
}

// invitations ask for what a reading lacks.
var invitations = [...]string{
	runOut:  "Now the % dial’s run-out.",
	hour:    "At which hour does the % needle stand highest?",
	halfway: "At which hours does the % needle rise and fall through half-way?",
	pinAt:   "Where does the pin point when the % needle stands highest?",
	mending: "Mend the % dial’s figure marked Wrong.",
}

// words says the verdict, what to do, and what the needles should then do.
func (a *Answers) words(p *pass) {
	switch p.advice.Plain {
	case crank.Fit:
		a.say("truing.headline", "True: leave it. It is fit to go in.")
		a.say("truing.then", "Worst run-out %, % allowed.", p.amount(p.advice.Worst.Value), p.amount(p.allowed))
	case crank.NotMendable:
		a.say("truing.headline", "Bumping can’t mend this: % would still be left.", p.amount(p.advice.Floor.Value))
		a.say("truing.then", "Throw mismatch. Look at the pin seats for dirt or fretting, for a bent pin, and whether the halves belong together.")
	case crank.OutOfTrue:
		a.say("truing.headline", "%; %.", p.do(p.moves[0].Move), p.watchWords(p.moves[0]))
		if len(p.moves) > 1 {
			a.say("truing.then", "Then %.", lowerFirst(p.do(p.moves[1].Move)))
		} else {
			a.say("truing.then", "Or %.", lowerFirst(p.do(p.moves[0].other)))
		}
		a.say("truing.caution", caution)
	default:
		a.say("truing.headline", "The dials can’t tell which way to work.")
		a.say("truing.then", "Read again: half-way hours are sharper than the high spot.")
	}
	a.sit(p)
	a.needles(p)
}

// do is what to do: "Strike the drive wheel at 3".
func (p *pass) do(m crank.Move) string {
	if m.Kind == crank.Strike {
		return fill("Strike the % wheel at %", p.sideOf[m.Wheel], p.at(m.Hour))
	}
	template := "Squeeze the wheels together at % by %"
	if m.Kind == crank.Spread {
		template = "Spread the wheels at % by %"
	}
	return fill(template, p.at(m.Hour), p.amount(m.Amount))
}

// watchWords say which needle to watch, and how far it should go.
func (p *pass) watchWords(m move) string {
	now, then := 2*p.forecast(m.watch).Now.Len(), m.predicted[m.watch]
	template, to := "watch the % needle come to %", then
	if fall := now - then; p.bare(fall) != "0" && fall > 0 {
		template, to = "watch the % needle fall %", fall
	}
	return fill(template, p.sideOf[m.watch], p.amount(to))
}

// sit says how the halves sit, between centres and in their own bearings.
func (a *Answers) sit(p *pass) {
	right, left := p.sideOf[clock.Right], p.sideOf[clock.Left]
	d := p.seat.D
	if p.bare(d.Len()) == "0" {
		a.say("sit.offset", "The shafts meet in line at the crankpin.")
	} else {
		a.say("sit.offset", "At the crankpin the % shaft stands % from the % shaft’s line, towards %: % of twist, % of throw mismatch.",
			right, p.amount(d.Len()), left, p.at(d.Hour()), p.amount(abs(d.N)), p.amount(abs(d.T)))
	}
	across, widest := p.seat.Gap()
	if p.bare(across) == "0" {
		a.say("sit.gap", "The wheels’ faces stand parallel.")
	} else {
		a.say("sit.gap", "The wheels stand open at %: % wider there than straight across.", p.at(widest), p.amount(across))
	}
	if p.bare(abs(d.T)) != "0" {
		a.say("sit.mismatch", "Striking can’t mend a throw mismatch; after a squeeze or spread read again before calling it one.")
	}
	axes := p.seat.Running(p.seat.D, p.seat.G)
	drive, timing := p.end("drive"), p.end("timing")
	a.say("sit.bearings", "Where the sprocket, pinion or rotor sits it would run out % on the drive side, % on the timing side.",
		p.amount(axes.RunOut(drive, p.tip[drive])), p.amount(axes.RunOut(timing, p.tip[timing])))
	a.say("sit.tilt", "Each journal leans in its bearing: drive %′, timing %′ (minutes of arc).", minutes(axes.Tilt(drive)), minutes(axes.Tilt(timing)))
}

func minutes(arc float64) string { return unit.Figures(arc/60, unit.ArcMinute, 0.1/60) }

// needles fills the table of what each dial should show.
func (a *Answers) needles(p *pass) {
	a.say("truing.needles", "With twist and gap both gone, % would be left: bumping gets no further than that.", p.amount(p.advice.Floor.Value))
	for half := range p.reading {
		side, f := p.sideOf[half], p.forecast(clock.End(half))
		a.say("now."+side, p.needle(f.Now))
		if p.advice.Strike {
			a.say("after.strike."+side, p.needle(f.Strike))
		}
		if p.advice.Close {
			a.say("after.gap."+side, p.needle(f.Gap))
		}
		a.say("after.both."+side, p.needle(f.Both))
	}
	if p.advice.Close {
		m, _ := p.seat.Close()
		a.say("after.gap.name", "After the % alone", kindNames[m.Kind])
	}
}

// needle writes a run-out with the hour of its high spot.
func (s *setUp) needle(e clock.Vec) string {
	text := s.amount(2 * e.Len())
	if s.bare(2*e.Len()) == "0" {
		return text
	}
	return fill("%, high at %", text, s.at(e.Hour()))
}

// assumedWords says whether lengths were stood in for.
func assumedWords(r *form.Reader) string {
	for _, s := range r.StandIns {
		if f, _, _ := form.Job.Lookup(s.Name); f.Unit == unit.MM {
			return "Distances in italics are assumed. Which way to work doesn’t hang on them much; how much does. Measure and type over them."
		}
	}
	return "All distances are yours."
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
