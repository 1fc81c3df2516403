package draw

import "math"

// Dim is a figure on a drawing: what it measures in mm, and the words that
// stand for it ("54.5 mm"). An assumed one is set in italics and says so. Field
// names the field of the job that it is typed in, "" for none: a picture that
// says so leads there from it.
type Dim struct {
	MM      float64
	Words   string
	Assumed bool
	Field   string
}

// tapSize is a side of what a thumb taps, at the least: 44 px where the picture is
// drawn 304 px wide (WCAG 2.2, 2.5.5).
const tapSize = 52.2

// tap lays a target over a place that leads to a field, named for who doesn't see
// the picture.
func (p *pen) tap(field, name string, b box) {
	if field == "" {
		return
	}
	p.tag("rect", "ht")
	p.s(` role="button" tabindex="0" data-field="`)
	p.xml(field)
	p.s(`" aria-label="`)
	p.esc(name)
	p.s(`"`)
	p.a("x", b.x0)
	p.a("y", b.y0)
	p.a("width", b.x1-b.x0)
	p.a("height", b.y1-b.y0)
	p.s("/>")
}

// arrowLong and arrowHalf are the size of an arrowhead.
const (
	arrowLong = 10
	arrowHalf = 2.8
)

// dimension draws a dimension line between two points with its arrows, from
// outside where there is no room for them between.
func (p *pen) dimension(a, b point) {
	length := math.Sqrt(a.gap(b))
	if length == 0 {
		return
	}
	u := point{(b.x - a.x) / length, (b.y - a.y) / length}
	from, to, way := a, b, 1.0
	if length < 2*arrowLong+6 {
		way = -1
		from, to = a.plus(-16*u.x, -16*u.y), b.plus(16*u.x, 16*u.y)
	}
	p.line("th", from, to)
	p.arrow(a, point{way * u.x, way * u.y})
	p.arrow(b, point{-way * u.x, -way * u.y})
}

// arrow draws an arrowhead with its tip at a point; u runs from the tip into it.
func (p *pen) arrow(tip, u point) {
	back := tip.plus(arrowLong*u.x, arrowLong*u.y)
	p.poly("fi", tip, back.plus(-arrowHalf*u.y, arrowHalf*u.x), back.plus(arrowHalf*u.y, -arrowHalf*u.x))
}

// upright writes a dimension's words along an upright line, to be read from the
// right, and on its other side that they are assumed.
func (p *pen) upright(at point, words string, assumed bool) {
	p.turnedText(wordsClass(assumed), at.plus(-5, 0), words)
	if assumed {
		p.turnedText("tx as", at.plus(18, 0), "assumed")
	}
}

func wordsClass(assumed bool) string {
	if assumed {
		return "tx as"
	}
	return "tx"
}

func (p *pen) turnedText(class string, at point, s string) {
	p.tag("text", class)
	p.s(middle)
	p.a("x", at.x)
	p.a("y", at.y)
	p.s(` transform="rotate(-90 `)
	p.xy(at)
	p.s(`)">`)
	p.esc(s)
	p.s("</text>")
}

// assumedWords adds to a figure that it is assumed.
func assumedWords(words string, assumed bool) string {
	if assumed {
		return words + " assumed"
	}
	return words
}
