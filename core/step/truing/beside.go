package truing

import (
	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/unit"
)

// scale is a unit, and how finely figures are shown in it.
type scale struct {
	unit unit.Unit
	step float64 // in the base unit
}

func (s *setUp) dialScale() scale { return scale{s.fine, s.step} }

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
	template := "just inside %"
	if f.Value > limit {
		template = "just over %"
	}
	return bench.Fill(template, c.limit(limit)), c.figures(f.HalfWidth95)
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
