package truing

import (
	"math"
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/draw"
	"pintwelve/core/unit"
)

// passes lists the passes, charts them, and says what came of what was done.
func (a answers) passes(p *pass) {
	a.Say("pass.name", passName(p.bench))
	a.Text("bench", p.key)
	chart := draw.ChartView{Prefix: "chart", Unit: p.fine.Name(), Limit: p.inFine(p.allowed.RunOut)}
	for i, d := range p.rounds {
		a.Say("pass."+d.key+".said", "%: %%", passName(i), p.roundWords(&d), p.doneWords(i))
		chart.Passes = append(chart.Passes, p.figures(&d))
	}
	if len(p.rounds) > 1 {
		a.Text("picture.chart", draw.Chart(chart))
	}
	a.spin(p, &p.rounds[0], &p.round)
	a.lessons(p)
	if p.bench > 0 {
		a.Say("since.any", "yes")
	}
}

// lessons say what came of everything that was done, each beside its pass, and
// of what was done last on the bench too.
func (a answers) lessons(p *pass) {
	tries := p.next.Tries
	for i := 0; i < len(tries); {
		said, of := "", tries[i].Pass
		for ; i < len(tries) && tries[i].Pass == of; i++ {
			if words := p.tryWords(&tries[i]); words != "" {
				said += words + " "
			}
		}
		said = strings.TrimSpace(said)
		a.Say("pass."+p.rounds[of].key+".came", "%", said)
		if i == len(tries) {
			a.Say("truing.lesson", "%", said)
		}
	}
}

func passName(i int) string {
	if i == 0 {
		return "As found"
	}
	return bench.Fill("Pass %", strconv.Itoa(i+1))
}

// afterName names a pass within a sentence.
func afterName(i int) string {
	if i == 0 {
		return "the first readings"
	}
	return lowerFirst(passName(i))
}

// roundWords are a round's run-outs: "D 3 thou, T 5.5 thou".
func (s *setUp) roundWords(d *round) string {
	var said []string
	for i := range d.reading {
		if d.reading[i].lack == nothing {
			said = append(said, bench.Fill("% %", s.stations[i].letter, s.amount(d.reading[i].RunOut)))
		}
	}
	if said == nil {
		return "not read yet"
	}
	return strings.Join(said, ", ")
}

// inFine turns mm into the dials' own unit, for a chart's scale.
func (s *setUp) inFine(mm float64) float64 {
	if s.fine == unit.Thou {
		return mm / 0.0254
	}
	return mm
}

// figures are a round's for the chart: what isn't known is left out.
func (p *pass) figures(d *round) draw.PassFigures {
	gap := math.NaN()
	f := draw.PassFigures{Drive: gap, Timing: gap, Twist: gap, Gap: gap, Mismatch: gap}
	for i := range sideNames {
		if got := &d.reading[i]; got.lack == nothing {
			*[...]*float64{&f.Drive, &f.Timing}[i] = p.inFine(got.RunOut)
		}
	}
	if pose, err := p.solveOne(d.counted); err == nil {
		off := pose.D.From(p.Seen)
		across, _ := pose.Gap()
		f.Twist, f.Mismatch, f.Gap = p.inFine(off.N), p.inFine(off.T), p.inFine(across)
	}
	return f
}

// tryWords say what came of what was done last, where it wasn't as meant.
func (p *pass) tryWords(t *crank.Try) string {
	words := ""
	switch {
	case t.Outcome == crank.Opposite:
		words = "The % after % went the other way; it is left out of the reckoning."
	case t.Outcome == crank.NoEffect:
		words = "The % after % should have shown, and didn’t; it is left out of the reckoning."
	case t.Outcome == crank.Unshown && len(t.Likely) > 0:
		words = "The % after % hardly shows."
	case t.Astray > 0:
		words = "The % after % also moved what it should not have, by " + p.amount(t.Astray) + " on a needle."
	default:
		return ""
	}
	words = bench.Fill(words, kindNames[t.Kind], afterName(t.Pass))
	for i, cause := range t.Likely {
		if i == 0 {
			words += " Look whether "
		} else {
			words += ", or "
		}
		words += causeWords[cause]
	}
	if len(t.Likely) > 0 {
		words += "."
	}
	return words
}

var causeWords = [...]string{
	crank.HoursFromWrongEnd: "the hour was read from the other end",
	crank.WrongWheel:        "the other wheel was struck",
	crank.WrongMove:         "it was squeezed where it should have been spread, or at the opposite hour",
	crank.TooLight:          "it was too light for this fit and sprang back",
	crank.NotSupported:      "the other wheel was not held, or the clamp stood askew",
	crank.DialMoved:         "a dial or its foot slipped",
	crank.PinSlipped:        "the pin has shifted in its seat",
	crank.DialsExchanged:    "the two dials’ readings were exchanged",
	crank.HourMirrored:      "the work was done at the hour as seen from the other end",
	crank.LowForHigh:        "the low spot was taken for the high one",
	crank.FirstOnly:         "only the first of the two moves was done",
	crank.NotDone:           "it was not done at all",
	crank.CentreOrShaft:     "a centre is bad or a shaft is bent",
	crank.Hinged:            "the squeeze closed the gap about one end of the pin",
	crank.Unlogged:          "something was done that isn’t logged",
	crank.Pressure:          "the tailstock presses on the crank",
}

// spin draws both dials and the crank, as found above and as on the bench
// below, their bend alike too big, and says how the page turns them: each dial's
// swing and high hour.
func (a answers) spin(p *pass, found, left *round) {
	full := 0.0
	for _, d := range [...]*round{found, left} {
		for i := range sideNames {
			full = math.Max(full, d.reading[i].E.Len())
		}
	}
	if full == 0 {
		return
	}
	a.Say("spin.found", "yes")
	bends := p.turningBends(found, left)
	a.spinOne(p, "found", found, full, bends[0])
	if found.key != left.key {
		a.Say("spin.left", "yes")
		a.spinOne(p, "left", left, full, bends[1])
	}
}

// turningBends are the crank as it sits by two rounds, drawn alike too big; nil
// where its readings don't tell.
func (s *setUp) turningBends(rounds ...*round) (all [2]*draw.BendView) {
	factor := 0.0
	for i, d := range rounds {
		pose, err := s.solveOne(d.counted)
		if err != nil {
			continue
		}
		v := s.bendView("", &pose, d.counted)
		all[i] = &v
		if own := v.RoundFactor(); own > 0 && (factor == 0 || own < factor) {
			factor = own
		}
	}
	for _, v := range all {
		if v != nil {
			v.Factor = factor
		}
	}
	return all
}

func (a answers) spinOne(p *pass, which string, d *round, full float64, bend *draw.BendView) {
	v := draw.TurnView{Prefix: which, SeenFrom: bench.Drawn(p.SeenFrom()), Range: p.inFine(full), Bend: bend}
	for i, side := range sideNames {
		got := &d.reading[i]
		e := got.E.From(p.Seen)
		words, reading := p.amount(got.RunOut), p.inFine(e.T)
		if got.lack != nothing {
			words, reading = "", math.NaN()
		}
		if i == 0 {
			v.Drive, v.DriveWords = reading, words
		} else {
			v.Timing, v.TimingWords = reading, words
		}
		a.Text("spin."+which+"."+side, strconv.FormatFloat(p.inFine(e.Len()), 'f', 6, 64)+" "+strconv.FormatFloat(e.Hour(), 'f', 4, 64))
	}
	a.Text("picture."+which, draw.Turn(v))
}
