package truing

import (
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/unit"
)

// at writes an hour seen from the left as the job numbers it.
func (s *setUp) at(hour float64) string { return unit.FormatHour(s.Hour(hour), 10) }

// fromEnd writes a place as measured from its shaft's own end.
func (s *setUp) fromEnd(half clock.End, x float64) string {
	if half == clock.Right {
		x = s.length() - x
	}
	return unit.Format(x, unit.MM, 1)
}

// towards writes an offset along 12–6 or 3–9 with its hour.
func (p *pass) towards(v clock.Vec, plus float64) string {
	text := p.Within(v.Len(), plus)
	if v.Len() <= plus || p.Bare(v.Len()) == "0" {
		return text
	}
	return towardsHour(text, p.at(v.Hour()))
}

// needle writes a run-out with the hour of its high spot.
func (s *setUp) needle(e clock.Vec, plus float64) string {
	text := s.Within(2*e.Len(), plus)
	if s.Bare(2*e.Len()) == "0" {
		return text
	}
	return highAt(text, s.at(e.Hour()))
}

// roundWords are a round's run-outs: "D 3 thou, T 5.5 thou".
func (s *setUp) roundWords(d *round) string {
	var said []string
	for i := range d.reading {
		if d.reading[i].lack == nothing {
			said = append(said, dialShows(s.stations[i].letter, s.Amount(d.reading[i].RunOut)))
		}
	}
	if said == nil {
		return notReadYet
	}
	return strings.Join(said, ", ")
}

// hopeWords are run-outs [mm] of the stations used: "D 0.6 thou, T 0.6 thou".
func (s *setUp) hopeWords(hope []float64, used []int) string {
	said := make([]string, len(s.stations))
	for n, mm := range hope {
		said[used[n]] = ", " + dialShows(s.stations[used[n]].letter, s.Amount(mm))
	}
	return strings.Trim(strings.Join(said, ""), ", ")
}

// inFine turns mm into the dials' own unit, for a chart's scale.
func (s *setUp) inFine(mm float64) float64 {
	if s.Unit == unit.Thou {
		return mm / 0.0254
	}
	return mm
}

// runOutWords are the worst run-out beside what is allowed.
func (p *pass) runOutWords() string {
	return besideAllowed(p.besideRunOut(p.advice.Worst), p.limit())
}

// limit is the run-out that is allowed, as it was given.
func (p *pass) limit() string { return unit.Format(p.allowed.RunOut, p.Unit, 0) }

// besideRunOut writes a run-out to stand beside what is allowed.
func (p *pass) besideRunOut(f crank.Figure) string {
	value, plus := p.dialScale().beside(f, p.allowed.RunOut)
	if plus != "0" {
		value = bench.PlusMinus(value, plus)
	}
	return inUnit(value, p.Unit.Name())
}

// besideTilt writes a lean [minutes of arc] to stand beside what is allowed.
func (p *pass) besideTilt(f crank.Figure) string {
	value, plus := tiltScale.beside(crank.Figure{Value: f.Value / 60, HalfWidth95: f.HalfWidth95 / 60}, p.allowed.Tilt/60)
	if plus == "0" {
		return value + "′"
	}
	return arcMinutes(value, plus)
}

// scale is a unit, and how finely figures are shown in it.
type scale struct {
	unit unit.Unit
	step float64 // in the base unit
}

func (s *setUp) dialScale() scale { return scale{s.Unit, s.StepMM} }

// tiltScale is for minutes of arc.
var tiltScale = scale{unit.ArcMinute, 0.1 / 60}

// beside writes a figure, and how far it may be out, to stand beside a limit:
// so much finer than the scale as it takes for them to say as rounded what they
// say of the limit, and where nothing sensible does, which side it lies on.
func (c scale) beside(f crank.Figure, limit float64) (value, plus string) {
	for fine := c; fine.step > c.step/1000; fine.step /= 10 {
		v, p := fine.shown(f.Value), fine.shown(f.HalfWidth95)
		if over(v, limit) == over(f.Value, limit) && over(v+p, limit) == over(f.Value+f.HalfWidth95, limit) && over(v-p, limit) == over(f.Value-f.HalfWidth95, limit) {
			return fine.figures(f.Value), fine.figures(f.HalfWidth95)
		}
	}
	words := justInside
	if f.Value > limit {
		words = justOver
	}
	return words(c.limit(limit)), c.figures(f.HalfWidth95)
}

func (c scale) figures(v float64) string { return unit.Figures(v, c.unit, c.step) }

// limit writes a limit as it was given.
func (c scale) limit(v float64) string { return unit.Figures(v, c.unit, 0) }

// shown is a value as it reads when it has been rounded.
func (c scale) shown(v float64) float64 {
	v, _ = unit.Parse(c.figures(v), c.unit)
	return v
}

// over tells whether a figure lies beyond a limit; what is equal but for the last
// bits of its reckoning does not.
func over(v, limit float64) bool { return v > limit*(1+1e-9) }
