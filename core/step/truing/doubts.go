package truing

import (
	"errors"
	"strings"

	"pintwelve/core/form"
)

// errDoubt keeps an answer from figures whose unit is in doubt.
var errDoubt = errors.New("the unit of a figure is in doubt")

// doubtOf returns the first figure of the truing whose unit is in doubt, or nil.
func doubtOf(r *form.Reader) *form.Doubt {
	for i := range r.Doubts {
		if d := &r.Doubts[i]; d.Unit && !strings.HasPrefix(d.Name, "found.") && !strings.HasPrefix(d.Name, "cases.") {
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

// doubtedWords name the figure in doubt.
func (p *pass) doubtedWords() string {
	names := strings.Split(p.doubt.Name, ".")
	field, at, pass := names[len(names)-1], "", ""
	if names[0] == "pass" {
		for i := range p.stations {
			if strings.HasPrefix(p.doubt.Name, "pass."+names[1]+"."+p.stations[i].name+".") {
				at = p.dialName(i)
			}
		}
		for i, d := range p.rounds {
			if d.key == names[1] && i != p.bench {
				pass = afterName(i)
			}
		}
	} else if names[0] != "tolerance" {
		at = names[0]
	}
	return doubted(field, at, pass)
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
	if p.leverAssumed {
		ask("distance", form.ShaftAt.Name(sideNames[0]))
		ask("distance", p.heldAt.Name(sideNames[0]))
	}
}
