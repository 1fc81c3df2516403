package draw

import (
	"math"
	"sort"
	"strconv"
)

// ChartView is the run-out of both dials and how the halves sat, pass by pass,
// the first as found. All numbers are in Unit; one that is not finite leaves a
// gap in its line.
type ChartView struct {
	Prefix string
	Unit   string // "thou"
	Passes []PassFigures
	Limit  float64 // allowed run-out; drawn where it is above 0
}

// PassFigures are the figures of one pass: run-out at the worse station of each
// side, and the three components, signed.
type PassFigures struct {
	Drive, Timing        float64
	Twist, Gap, Mismatch float64
}

// ChartHeight is the height of the viewBox.
const ChartHeight = 370

const chartRight = 266

// series is one line of a chart: its name, its marker and its figures.
type series struct {
	name   string
	class  string
	marker func(p *pen, at point)
	of     func(f *PassFigures) float64
}

// The lines of the two panels. Filled markers come first, so that an open one on
// the same figure leaves both to be seen.
var (
	runOutSeries = []series{
		{"T", "ln hd", markSquare, func(f *PassFigures) float64 { return f.Timing }},
		{"D", "ln", markCircle, func(f *PassFigures) float64 { return f.Drive }},
	}
	sitSeries = []series{
		{"gap", "ln hd", markTriangle, func(f *PassFigures) float64 { return f.Gap }},
		{"twist", "ln", markDiamond, func(f *PassFigures) float64 { return f.Twist }},
		{"throw", "ln ax", markCross, func(f *PassFigures) float64 { return f.Mismatch }},
	}
)

func markCircle(p *pen, at point) { p.circle("op", at, 5) }
func markSquare(p *pen, at point) {
	p.poly("fi", at.plus(-6.5, -6.5), at.plus(6.5, -6.5), at.plus(6.5, 6.5), at.plus(-6.5, 6.5))
}
func markDiamond(p *pen, at point) {
	p.poly("op", at.plus(0, -7), at.plus(7, 0), at.plus(0, 7), at.plus(-7, 0))
}
func markTriangle(p *pen, at point) {
	p.poly("fi", at.plus(-6.5, 5), at.plus(0, -7), at.plus(6.5, 5))
}
func markCross(p *pen, at point) {
	p.lines("ol", at.plus(-5, -5), at.plus(5, 5), at.plus(-5, 5), at.plus(5, -5))
}

// Chart draws the passes: run-out against its limit above, the components below.
func Chart(v ChartView) string {
	p := pen{make([]byte, 0, 8192)}
	p.open(v.Prefix, ChartHeight, "Run-out over the passes")
	p.describeChart(&v)
	p.described()
	top := chartPanel{v: &v, top: 30, bottom: 184, series: runOutSeries, limit: v.Limit}
	if !finite(v.Limit) || v.Limit <= 0 {
		top.limit = 0
	}
	top.fit()
	low := chartPanel{v: &v, top: 230, bottom: 330, series: sitSeries}
	low.fit()
	top.left = max(top.room(), low.room())
	low.left = top.left
	p.text("tx", starts, point{4, 17}, "Run-out, "+v.Unit)
	p.panel(&top)
	p.text("tx", starts, point{4, 217}, "Twist, gap, throw, "+v.Unit)
	p.panel(&low)
	p.passNames(&low)
	return p.close()
}

func (p *pen) describeChart(v *ChartView) {
	say := func(x float64) {
		if finite(x) {
			p.figure(x)
		} else {
			p.s("not read")
		}
	}
	for i := range v.Passes {
		if i == 0 {
			p.s("As found")
		} else {
			p.s(". Pass ")
			p.n(float64(i + 1))
		}
		p.s(": D ")
		say(v.Passes[i].Drive)
		p.s(", T ")
		say(v.Passes[i].Timing)
	}
	if finite(v.Limit) && v.Limit > 0 {
		p.s(". Limit ")
		p.figure(v.Limit)
	}
	p.s(" ")
	p.esc(v.Unit)
}

// figure writes a number as it would be read out: three digits that count.
func (p *pen) figure(x float64) { p.digits(x, 3) }

// chartPanel is one frame of the chart, with the range that it shows.
type chartPanel struct {
	v           *ChartView
	series      []series
	top, bottom float64
	left        float64 // of the axis
	low, high   float64
	step        float64
	limit       float64 // 0 where none is drawn
}

// fit sets a round range that holds all figures, zero and the limit.
func (c *chartPanel) fit() {
	take := func(x float64) {
		if finite(x) && math.Abs(x) < 1e9 {
			c.low, c.high = min(c.low, x), max(c.high, x)
		}
	}
	// Room for the word above the line.
	take(1.15 * c.limit)
	for i := range c.v.Passes {
		for _, s := range c.series {
			take(s.of(&c.v.Passes[i]))
		}
	}
	if c.high == c.low {
		c.high = 1
	}
	lines := (c.bottom - c.top) / 30
	c.step = roundStep((c.high - c.low) / lines)
	c.low = c.step * math.Floor(c.low/c.step+1e-9)
	c.high = c.step * math.Ceil(c.high/c.step-1e-9)
}

// room returns what the widest number of the axis takes.
func (c *chartPanel) room() float64 {
	w := 36.0
	for k := 0.0; c.low+k*c.step <= c.high+c.step/2; k++ {
		w = max(w, textWidth(tick(c.low+k*c.step), TextSize))
	}
	return w + 8
}

// roundStep returns the least of 1, 2 and 5 times a power of ten that is no less
// than x.
func roundStep(x float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, k := range [3]float64{1, 2, 5} {
		if k*power >= x*(1-1e-9) {
			return k * power
		}
	}
	return 10 * power
}

func (c *chartPanel) y(x float64) float64 {
	return c.bottom - (x-c.low)/(c.high-c.low)*(c.bottom-c.top)
}

func (c *chartPanel) x(pass int) float64 {
	if n := len(c.v.Passes); n > 1 {
		return c.left + 16 + float64(pass)*(chartRight-c.left-26)/float64(n-1)
	}
	return c.left + 16
}

func (p *pen) panel(c *chartPanel) {
	p.path("gr")
	for k := 0.0; c.low+k*c.step <= c.high+c.step/2; k++ {
		y := c.y(c.low + k*c.step)
		p.stroke(point{c.left, y}, point{chartRight, y})
	}
	p.pathEnd()
	for k := 0.0; c.low+k*c.step <= c.high+c.step/2; k++ {
		x := c.low + k*c.step
		p.text("tx", ends, point{c.left - 5, c.y(x) + 7}, tick(x))
	}
	p.lines("ol", point{c.left, c.top}, point{c.left, c.bottom}, point{c.left, c.y(0)}, point{chartRight, c.y(0)})
	if c.limit > 0 {
		p.line("li", point{c.left, c.y(c.limit)}, point{chartRight, c.y(c.limit)})
		p.text("tx", ends, point{chartRight, c.y(c.limit) - 6}, "limit")
	}
	for i := range c.series {
		p.seriesLine(c, &c.series[i])
	}
	for i := range c.series {
		p.seriesMarks(c, &c.series[i])
	}
	p.seriesNames(c)
}

// tick writes a round number of an axis.
func tick(x float64) string {
	s := strconv.FormatFloat(math.Round(math.Abs(x)*1e6)/1e6, 'f', -1, 64)
	if x < 0 && s != "0" {
		return "−" + s
	}
	return s
}

func (p *pen) seriesLine(c *chartPanel, s *series) {
	p.path(s.class)
	pen := false
	for i := range c.v.Passes {
		x := s.of(&c.v.Passes[i])
		if !finite(x) {
			pen = false
			continue
		}
		if at := (point{c.x(i), c.y(x)}); pen {
			p.to(at)
		} else {
			p.move(at)
		}
		pen = true
	}
	p.pathEnd()
}

// seriesMarks marks the figures of a line, from its latest back, leaving out those without
// room between others that the line leads to.
func (p *pen) seriesMarks(c *chartPanel, s *series) {
	const wide = 14
	last := len(c.v.Passes) - 1
	every := int(math.Ceil(wide / max(c.x(1)-c.x(0), 1)))
	for i := range c.v.Passes {
		if x := s.of(&c.v.Passes[i]); finite(x) && ((last-i)%every == 0 || !c.leads(s, i-1) && !c.leads(s, i+1)) {
			s.marker(p, point{c.x(i), c.y(x)})
		}
	}
}

// leads tells whether a line has a figure at a pass.
func (c *chartPanel) leads(s *series, pass int) bool {
	return pass >= 0 && pass < len(c.v.Passes) && finite(s.of(&c.v.Passes[pass]))
}

// seriesNames writes the marker and name of each line at its end, moved apart where lines
// end together.
func (p *pen) seriesNames(c *chartPanel) {
	type name struct {
		s *series
		y float64
	}
	var names []name
	for k := range c.series {
		s := &c.series[k]
		for i := len(c.v.Passes) - 1; i >= 0; i-- {
			if x := s.of(&c.v.Passes[i]); finite(x) {
				names = append(names, name{s, c.y(x)})
				break
			}
		}
	}
	sort.SliceStable(names, func(i, j int) bool { return names[i].y < names[j].y })
	for i := 1; i < len(names); i++ {
		names[i].y = max(names[i].y, names[i-1].y+lineStep)
	}
	for i := len(names) - 1; i >= 0; i-- {
		limit := c.bottom + 6 - lineStep*float64(len(names)-1-i)
		names[i].y = min(names[i].y, limit)
	}
	for _, n := range names {
		n.s.marker(p, point{chartRight + 14, n.y})
		p.text("tx tb", starts, point{chartRight + 25, n.y + 7}, n.s.name)
	}
}

// passNames writes what the passes are called, leaving out those without room.
func (p *pen) passNames(c *chartPanel) {
	free := 0.0
	for i := range c.v.Passes {
		s := strconv.Itoa(i + 1)
		if i == 0 {
			s = "found"
		}
		half := textWidth(s, TextSize) / 2
		x := max(c.x(i), half+2)
		if x-half < free {
			continue
		}
		p.text("tx", middle, point{x, ChartHeight - 7}, s)
		free = x + half + 6
	}
}
