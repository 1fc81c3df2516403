package truing

import (
	"errors"

	"pintwelve/core/form"
)

// errDoubt keeps an answer from figures whose unit is in doubt.
var errDoubt = errors.New("the unit of a figure is in doubt")

// doubtOf returns the first figure that was read for the truing whose unit is in doubt,
// or nil.
func doubtOf(r *form.Reader) *form.Doubt {
	for i := range r.Doubts {
		if d := &r.Doubts[i]; d.Unit {
			return d
		}
	}
	return nil
}

// askUnit asks what a figure was read in: until that is said nothing is built on it.
func (a answers) askUnit(p *pass) {
	var labels []string
	for _, m := range p.doubt.Meanings {
		labels = append(labels, m.Label)
	}
	a.Say("truing.headline", whichUnit(oneOf(labels)))
	a.Say("truing.then", sayTheUnit(p.doubtedWords()))
}

func fieldOf(d *form.Doubt) form.ID {
	field, _, _ := form.Job.Lookup(d.Name)
	return field.ID
}

// doubtedWords name the figure in doubt: its dial, and its pass where that isn't on
// the bench.
func (p *pass) doubtedWords() string {
	switch field := fieldOf(p.doubt); field {
	case form.ReadingTIR, form.ReadingTurn:
		return p.doubtedReading(field)
	case form.ShaftDivision, form.ShaftSweep:
		for _, side := range sideNames {
			if p.doubt.Name == field.Name(side) {
				return dialsFigure(side, doubtWords[field])
			}
		}
	}
	return doubtWords[form.Tolerance]
}

func (p *pass) doubtedReading(field form.ID) string {
	words := doubtWords[field]
	for i, d := range p.rounds {
		for n := range p.stations {
			if p.doubt.Name != field.Name(d.key, p.stations[n].name) {
				continue
			}
			words = dialsFigure(p.dialName(n), words)
			if i != p.bench {
				words = figureOfPass(words, afterName(i))
			}
		}
	}
	return words
}

// askMeanings asks for what the texts in doubt mean, and for the distances that
// the amounts wait for.
func (p *pass) askMeanings(ask func(what, field string, choices ...string) string) {
	for _, d := range p.doubts {
		what := "hour"
		if d.Unit {
			what = "unit"
		}
		var texts []string
		for _, m := range d.Meanings {
			texts = append(texts, m.Text)
		}
		ask(what, d.Name, texts...)
	}
	for _, name := range p.hangsOn {
		ask("distance", name)
	}
	if p.leverAssumed && p.hangsOn == nil && p.pin == 0 {
		ask("distance", form.ShaftAt.Name(sideNames[0]))
		ask("distance", p.heldAt.Name(sideNames[0]))
	}
}
