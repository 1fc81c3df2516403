package truing

import (
	"math"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/draw"
	"pintwelve/core/form"
)

// passes lists the passes, charts them, and says what came of what was done.
func (a answers) passes(p *pass) {
	a.Say("pass.name", p.passName(p.bench))
	a.Text("bench", p.key)
	chart := draw.ChartView{Prefix: "chart", Unit: p.Unit.Name(), Limit: p.inFine(p.allowed.RunOut)}
	for i, of := range a.stages(p) {
		a.listed(of)
		a.lessons(of, i == 0)
	}
	for i := range p.rounds {
		chart.Passes = append(chart.Passes, p.figures(&p.rounds[i], &p.past[i]))
	}
	if len(p.rounds) > 1 {
		a.Text("picture.chart", draw.Chart(chart))
	}
	a.spin(p, 0, p.bench)
	if p.several() {
		a.Say("throws.any", "yes")
	}
	if p.bench > 0 {
		a.Say("since.any", "yes")
	}
}

// listed says of each pass of a stage what was read and done.
func (a answers) listed(p *pass) {
	for i := range p.rounds {
		d := &p.rounds[i]
		read := bench.OfRow(a.Kept, p.read, "pass", d.key, "words", func(*form.Reader) string { return p.roundWords(d) })
		a.Say("pass."+d.key+".said", passSaid(p.passName(i), read, p.doneWords(i)))
	}
}

// lessons say what came of everything that was done, each beside its pass, and
// of what was done last on the bench too.
func (a answers) lessons(p *pass, bench bool) {
	tries := p.next.Tries
	for i := 0; i < len(tries); {
		said, of := "", tries[i].Pass
		for ; i < len(tries) && tries[i].Pass == of; i++ {
			words := p.tryWords(&tries[i])
			if words != "" && p.several() {
				words = ofPin(pinName(p.throws.tried[i]), words)
			}
			if words != "" {
				said += words + " "
			}
		}
		said = strings.Trim(said, " ")
		a.Say("pass."+p.rounds[of].key+".came", said)
		if bench && i == len(tries) {
			a.Say("truing.lesson", said)
		}
	}
}

// figures are a round's for the chart: what isn't known is left out.
func (p *pass) figures(d *round, as *past) draw.PassFigures {
	gap := math.NaN()
	f := draw.PassFigures{Drive: gap, Timing: gap, Twist: gap, Gap: gap, Mismatch: gap}
	for i := range sideNames {
		if got := &d.reading[i]; got.lack == nothing {
			*[...]*float64{&f.Drive, &f.Timing}[i] = p.inFine(got.RunOut)
		}
	}
	if as.stations != nil && !p.several() {
		off := as.pose.D.From(p.Seen)
		across, _ := as.pose.Gap()
		f.Twist, f.Mismatch, f.Gap = p.inFine(off.N), p.inFine(off.T), p.inFine(across)
	}
	return f
}

// tryWords say what came of what was done, where it wasn't as meant.
func (p *pass) tryWords(t *crank.Try) string {
	came, amiss := cameOf(t)
	if !amiss {
		return ""
	}
	words := cameWords(came, t.Kind, afterName(t.Pass), p.Amount(t.Astray))
	if len(t.Likely) == 0 {
		return words
	}
	var whether []string
	for _, cause := range t.Likely {
		whether = append(whether, causeSentences[cause])
	}
	return lookWhether(words, oneOf(whether))
}
