package draw

import (
	"math"
	"sort"
)

// MeasureView is what to measure on the crank between centres. Each half's
// distances are from its own shaft end: to the dial, to the bearing, to the
// middle of the pin. A figure without words is left out of the drawing.
type MeasureView struct {
	Prefix      string
	LeftEnd     Side
	Left, Right HalfDims
	Throw, Rim  Dim // Rim is the wheel's diameter
}

// HalfDims are the distances of one half.
type HalfDims struct{ Dial, Bearing, Pin Dim }

// MeasureHeight is the height of the viewBox.
const MeasureHeight = 394

const (
	measureLeft, measureRight = 56, 304 // the shaft ends
	measureAxis               = 197
	measureRow, measureStep   = 90, 30 // first dimension line from the axis, and the next
)

// Measure draws the crank with the distances to measure. It follows the
// figures as far as its words stay apart.
func Measure(v MeasureView) string {
	p := pen{make([]byte, 0, 8192)}
	p.open(v.Prefix, MeasureHeight, "What to measure")
	p.describeMeasure(v)
	p.described()
	m := measureSheet{v: v}
	m.fit()
	p.measureCrank(&m)
	p.measureHalf(&m, &v.Left, false)
	p.measureHalf(&m, &v.Right, true)
	p.measureWheel(&m)
	p.text("tx tb", starts, point{4, 18}, v.LeftEnd.Name()+" shaft, from its end")
	p.text("tx tb", ends, point{Width - 4, MeasureHeight - 7}, (v.LeftEnd^1).Name()+" shaft, from its end")
	return p.close()
}

func (p *pen) describeMeasure(v MeasureView) {
	half := func(side Side, h *HalfDims) {
		for i, d := range [3]*Dim{&h.Dial, &h.Bearing, &h.Pin} {
			p.sayDim([3]string{"dial", "bearing", "middle of the pin"}[i], d)
		}
		p.s("all from the end of the ")
		p.s(side.Name())
		p.s(" shaft. ")
	}
	half(v.LeftEnd, &v.Left)
	half(v.LeftEnd^1, &v.Right)
	p.sayDim("throw", &v.Throw)
	p.sayDim("rim diameter", &v.Rim)
}

func (p *pen) sayDim(name string, d *Dim) {
	if d.Words == "" {
		return
	}
	p.s(name)
	p.s(" ")
	p.esc(d.Words)
	if d.Assumed {
		p.s(" assumed")
	}
	p.s("; ")
}

// measureSheet is where things come to stand on the paper.
type measureSheet struct {
	v                 MeasureView
	pin, rim, throw   float64 // units
	dial, bearing     [2]float64
	wheelOut, wheelIn float64 // from the pin
	shaft             float64
}

// fit works out the places from the figures, each kept where it can be drawn.
func (m *measureSheet) fit() {
	const span = measureRight - measureLeft
	left, right := usable(m.v.Left.Pin, 120), usable(m.v.Right.Pin, 120)
	scale := span / (left + right)
	m.pin = measureLeft + clamp(scale*left, 0.42*span, 0.58*span)
	m.rim = clamp(scale*usable(m.v.Rim, 0.66*(left+right))/2, 58, 74)
	m.throw = clamp(m.rim*usable(m.v.Throw, 1)/(usable(m.v.Rim, 4)/2), 0.4*m.rim, 0.6*m.rim)
	m.wheelIn, m.wheelOut, m.shaft = 0.17*m.rim, 0.45*m.rim, 0.16*m.rim
	for i, h := range [2]*HalfDims{&m.v.Left, &m.v.Right} {
		pin := usable(h.Pin, 120)
		room := math.Abs([2]float64{measureLeft, measureRight}[i]-m.pin) - m.wheelOut
		dial := clamp(room/pin*1.25*usable(h.Dial, 0.5*pin), 16, room-10)
		bearing := clamp(room/pin*1.25*usable(h.Bearing, 0.25*pin), 16, room-10)
		if near := 24 - math.Abs(dial-bearing); near > 0 {
			lower, upper := &dial, &bearing
			if bearing < dial {
				lower, upper = upper, lower
			}
			*lower = max(16, *lower-near/2)
			*upper = *lower + 24
		}
		m.dial[i], m.bearing[i] = m.x(i == 1, dial), m.x(i == 1, bearing)
	}
}

// x returns the paper's x of a distance in units from a shaft end.
func (m *measureSheet) x(right bool, d float64) float64 {
	if right {
		return measureRight - d
	}
	return measureLeft + d
}

func usable(d Dim, standIn float64) float64 {
	if finite(d.MM) && d.MM > 0 {
		return d.MM
	}
	return standIn
}

func (p *pen) measureCrank(m *measureSheet) {
	y := float64(measureAxis)
	for i, sign := range [2]float64{-1, 1} {
		end := [2]float64{measureLeft, measureRight}[i]
		in, out := m.pin+sign*m.wheelIn, m.pin+sign*m.wheelOut
		p.poly("op", point{out, y - m.shaft}, point{end, y - m.shaft}, point{end, y + m.shaft}, point{out, y + m.shaft})
		wheel := []point{{in, y - m.rim}, {out, y - m.rim}, {out, y + m.rim}, {in, y + m.rim}}
		p.poly("op", wheel...)
		p.hatch(wheel, sign*8)
	}
	p.poly("op", point{m.pin - m.wheelIn, y - m.throw - m.shaft}, point{m.pin + m.wheelIn, y - m.throw - m.shaft},
		point{m.pin + m.wheelIn, y - m.throw + m.shaft}, point{m.pin - m.wheelIn, y - m.throw + m.shaft})
	p.lines("ax", point{measureLeft - 12, y}, point{measureRight + 12, y}, point{m.pin, y - m.rim - 8}, point{m.pin, y + m.rim + 8})
}

// measureHalf draws the stations of one half and their dimensions, the shortest
// nearest to the crank: those of the left half above it, of the right below.
func (p *pen) measureHalf(m *measureSheet, h *HalfDims, right bool) {
	i, end, side, away := 0, float64(measureLeft), m.v.LeftEnd, -1.0
	if right {
		i, end, side, away = 1, measureRight, side^1, 1
	}
	y := float64(measureAxis)
	p.line("th", point{m.dial[i], y - m.shaft}, point{m.dial[i], y - m.throw - 4})
	p.circle("op", point{m.dial[i], y - m.throw - 17}, 13)
	p.text("tx tb", middle, point{m.dial[i], y - m.throw - 10}, side.Letter())
	for _, dy := range [2]float64{-m.shaft - 12, m.shaft} {
		p.bearing(point{m.bearing[i] - 6, y + dy}, 12)
	}
	dialEdge := y - m.throw - 33
	if right {
		dialEdge = y + m.shaft + 3
	}
	rows := []measureLine{
		{h.Dial, "dial ", point{m.dial[i], dialEdge}},
		{h.Bearing, "bearing ", point{m.bearing[i], y + away*(m.shaft+15)}},
		{h.Pin, "pin ", point{m.pin, y + away*(m.rim+8)}},
	}
	sort.SliceStable(rows, func(i, j int) bool { return math.Abs(rows[i].at.x-end) < math.Abs(rows[j].at.x-end) })
	line := y + away*(measureRow-measureStep)
	for _, r := range rows {
		if r.dim.Words == "" {
			continue
		}
		line += away * measureStep
		p.line("th", r.at, point{r.at.x, line + 4*away})
		p.dimension(point{end, line}, point{r.at.x, line})
	}
	if away*(line-y) >= measureRow {
		p.line("th", point{end, y + away*(m.shaft+3)}, point{end, line + 4*away})
	}
	p.measureWords(rows, right)
}

// measureWords sets the words of each dimension on the outside of its line, over
// whatever runs to the longer ones.
func (p *pen) measureWords(rows []measureLine, right bool) {
	at, anchor, step := point{measureLeft + 5, measureAxis - measureRow - 7}, starts, -float64(measureStep)
	if right {
		at, anchor, step = point{measureRight - 5, measureAxis + measureRow + 19}, ends, measureStep
	}
	for _, r := range rows {
		if r.dim.Words == "" {
			continue
		}
		p.text(wordsClass(r.dim.Assumed), anchor, at, assumedWords(r.name+r.dim.Words, r.dim.Assumed))
		at.y += step
	}
}

// measureLine is one distance: its figure, what it goes to and where that is.
type measureLine struct {
	dim  Dim
	name string
	at   point
}

// bearing draws the simplified bearing of ISO 8826: a square with a cross.
func (p *pen) bearing(corner point, size float64) {
	p.path("th")
	p.move(corner)
	p.to(corner.plus(size, 0))
	p.to(corner.plus(size, size))
	p.to(corner.plus(0, size))
	p.shut()
	p.to(corner.plus(size, size))
	p.stroke(corner.plus(0, size), corner.plus(size, 0))
	p.pathEnd()
}

// measureWheel draws the upright dimensions: rim and throw.
func (p *pen) measureWheel(m *measureSheet) {
	y := float64(measureAxis)
	if m.v.Rim.Words != "" {
		x := 27.0
		p.path("th")
		for _, edge := range [2]float64{y - m.rim, y + m.rim} {
			p.stroke(point{m.pin - m.wheelOut - 3, edge}, point{x - 4, edge})
		}
		p.pathEnd()
		p.dimension(point{x, y - m.rim}, point{x, y + m.rim})
		words := "rim ⌀ " + m.v.Rim.Words
		p.upright(point{x, min(y, y+measureRow-6-textWidth(words, TextSize)/2)}, words, m.v.Rim.Assumed)
	}
	if m.v.Throw.Words != "" {
		x := 336.0
		p.line("th", point{m.pin, y - m.throw}, point{x + 4, y - m.throw})
		p.line("th", point{measureRight + 12, y}, point{x + 4, y})
		p.dimension(point{x, y}, point{x, y - m.throw})
		words := "throw " + m.v.Throw.Words
		p.upright(point{x, max(y-m.throw/2, y-measureRow+6+textWidth(words, TextSize)/2)}, words, m.v.Throw.Assumed)
	}
}
