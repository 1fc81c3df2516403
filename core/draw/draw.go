// Package draw holds the pictures of the tool as SVG text, each a function of
// numbers alone. It draws what it is told, wherever it is told: it mirrors no
// hour, converts no unit and decides nothing about the crank.
//
// Conventions. Lines are those of a drawing office (ISO 128): thick outline,
// thin dimension and leader lines, chain-dot axes, dashed hidden edges,
// hatching for cut metal; dimensions stand along their line (ISO 129). Hours
// run clockwise from 12, the crankpin, as seen from the end that the view
// names; the caller gives them for that end.
//
// Every picture is Width units wide and its text stands at TextSize or more,
// which is 16 px where the picture is drawn 304 px wide. A number that is not
// finite is treated as absent. Labels are escaped, and cut when they are far
// too long for a picture.
//
// No picture carries a style attribute. Geometry is in attributes, looks are in
// these classes, all under the class "dw" of the root:
//
//	ol  thick outline            op  the same, filled with paper
//	th  thin line: dimension, leader, tick
//	ax  chain-dot axis           hd  dashed hidden edge
//	hx  hatching                 cu  metal taken off: dashed outline
//	fi  filled with ink          pa  filled with paper, to clear a place
//	se  pale sector or zone with a thin outline
//	ln  line of a chart          gr  its pale grid
//	li  limit: heavy and dashed
//	mf  a move, filled           mo  a move, drawn as a line
//	ml  leader of a move         tm  text of a move
//	tx  text with a halo of paper
//	tb  heavier text             as  an assumed figure, in grey italics
//	ht  a target to be tapped, unseen
//	fs  beside dw: printed at its true size
//
// Golden pictures are in testdata; go test -update writes them anew, to be
// looked at before they are kept.
package draw

import (
	"math"
	"strconv"
	"unicode/utf8"

	"pintwelve/core/unit"
)

// Width is the width of every picture's viewBox in its own units.
const Width = 360

// TextSize is the height of ordinary text in the same units.
const TextSize = 19

// Side is an end of the crank, by the name the job gives it.
type Side uint8

// The two sides.
const (
	Drive Side = iota
	Timing
)

// Name returns "drive" or "timing".
func (s Side) Name() string {
	if s == Timing {
		return "timing"
	}
	return "drive"
}

// Letter returns "D" or "T".
func (s Side) Letter() string {
	if s == Timing {
		return "T"
	}
	return "D"
}

// maxLabel is the most characters of a label that are drawn.
const maxLabel = 40

// pen writes one picture.
type pen struct{ b []byte }

// open starts a picture: the root, its name and its description for a screen
// reader. The text of the description is written by the caller up to described.
func (p *pen) open(prefix string, height float64, title string) {
	p.openAs("img", prefix, height, title)
}

// openAs starts one of a role of its own: within an image nothing can be tapped by
// who only hears it.
func (p *pen) openAs(role, prefix string, height float64, title string) {
	p.s(`<svg xmlns="http://www.w3.org/2000/svg" class="dw" viewBox="0 0 `)
	p.opened(role, prefix, height, title)
}

// openFull starts a picture that is printed at its true size, so many mm a unit.
func (p *pen) openFull(prefix string, height float64, title string, mm float64) {
	p.s(`<svg xmlns="http://www.w3.org/2000/svg" class="dw fs" width="`)
	p.deg(Width * mm)
	p.s(`mm" height="`)
	p.deg(height * mm)
	p.s(`mm" viewBox="0 0 `)
	p.opened("img", prefix, height, title)
}

func (p *pen) opened(role, prefix string, height float64, title string) {
	p.n(Width)
	p.s(" ")
	p.n(height)
	p.s(`" font-size="`)
	p.n(TextSize)
	p.s(`" role="`)
	p.s(role)
	p.s(`" aria-labelledby="`)
	p.id(prefix, "t")
	p.s(" ")
	p.id(prefix, "d")
	p.s(`"><title id="`)
	p.id(prefix, "t")
	p.s(`">`)
	p.esc(title)
	p.s(`</title><desc id="`)
	p.id(prefix, "d")
	p.s(`">`)
}

func (p *pen) described() { p.s("</desc>") }

func (p *pen) close() string {
	p.s("</svg>")
	return string(p.b)
}

func (p *pen) s(s string) { p.b = append(p.b, s...) }

// n writes a number to a hundredth of a unit, which no eye tells from the
// number itself, in as few bytes as it takes.
func (p *pen) n(x float64) { p.b = appendFixed(p.b, x, 2) }

// deg writes an angle, or a true size, finely enough to hold a point of the rim within 1e-6.
func (p *pen) deg(x float64) { p.b = appendFixed(p.b, x, 7) }

// digits writes a number with so many digits that count, and never an exponent,
// which a person doesn't read.
func (p *pen) digits(x float64, n int) {
	last := 0.0
	if x != 0 {
		last = math.Pow10(int(math.Floor(math.Log10(math.Abs(x)))) - n + 1)
	}
	p.s(unit.Figures(x, unit.Plain, last))
}

func appendFixed(b []byte, x float64, places int) []byte {
	scale := [...]float64{2: 1e2, 7: 1e7}[places]
	if !(math.Abs(x) < 1e9) {
		return append(b, '0')
	}
	n := int64(math.Round(x * scale))
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	whole, part := n/int64(scale), n%int64(scale)
	b = strconv.AppendInt(b, whole, 10)
	if part == 0 {
		return b
	}
	b = append(b, '.')
	for unit := int64(scale) / 10; part > 0; unit /= 10 {
		b = append(b, byte('0'+part/unit))
		part %= unit
	}
	return b
}

// id writes an id, keeping only what an id may hold.
func (p *pen) id(prefix, name string) {
	for i := 0; i < len(prefix); i++ {
		c := prefix[i]
		if c|0x20 >= 'a' && c|0x20 <= 'z' || i > 0 && (c >= '0' && c <= '9' || c == '-' || c == '_') {
			p.b = append(p.b, c)
		}
	}
	p.b = append(p.b, '-')
	p.s(name)
}

// esc writes a label as XML text, without what XML can't hold, and cut where it is far too long.
func (p *pen) esc(s string) { p.xml(short(s)) }

// xml writes a text whole.
func (p *pen) xml(s string) {
	for _, r := range s {
		switch {
		case r == '&':
			p.s("&amp;")
		case r == '<':
			p.s("&lt;")
		case r == '>':
			p.s("&gt;")
		case r == '"':
			p.s("&quot;")
		case r < ' ' || r == utf8.RuneError || r == 0xFFFE || r == 0xFFFF:
			p.s(" ")
		default:
			p.b = utf8.AppendRune(p.b, r)
		}
	}
}

// short cuts a label that no picture has room for.
func short(s string) string {
	if len(s) <= maxLabel {
		return s
	}
	n := 0
	for i := range s {
		if n == maxLabel {
			return s[:i] + "…"
		}
		n++
	}
	return s
}

// a writes one numeric attribute.
func (p *pen) a(name string, x float64) {
	p.s(" ")
	p.s(name)
	p.s(`="`)
	p.n(x)
	p.s(`"`)
}

func (p *pen) tag(name, class string) {
	p.s("<")
	p.s(name)
	if class != "" {
		p.s(` class="`)
		p.s(class)
		p.s(`"`)
	}
}

func (p *pen) circle(class string, at point, r float64) {
	p.tag("circle", class)
	p.a("cx", at.x)
	p.a("cy", at.y)
	p.a("r", r)
	p.s("/>")
}

func (p *pen) line(class string, from, to point) {
	p.path(class)
	p.stroke(from, to)
	p.pathEnd()
}

// lines draws a straight line between every two points, all as one path.
func (p *pen) lines(class string, pts ...point) {
	p.path(class)
	for i := 1; i < len(pts); i += 2 {
		p.stroke(pts[i-1], pts[i])
	}
	p.pathEnd()
}

// stroke adds a straight line to a path.
func (p *pen) stroke(from, to point) {
	p.move(from)
	p.to(to)
}

func (p *pen) path(class string) {
	p.tag("path", class)
	p.s(` d="`)
}

func (p *pen) move(at point) { p.b = append(p.b, 'M'); p.xy(at) }
func (p *pen) to(at point)   { p.b = append(p.b, 'L'); p.xy(at) }
func (p *pen) shut()         { p.b = append(p.b, 'Z') }
func (p *pen) pathEnd()      { p.s(`"/>`) }

func (p *pen) xy(at point) {
	p.n(at.x)
	p.b = append(p.b, ' ')
	p.n(at.y)
}

// arc writes an arc of radius r to a point, clockwise on the paper.
func (p *pen) arc(r float64, long bool, at point) { p.bow(r, long, " 1 ", at) }

// arcBack writes one anticlockwise.
func (p *pen) arcBack(r float64, long bool, at point) { p.bow(r, long, " 0 ", at) }

func (p *pen) bow(r float64, long bool, way string, at point) {
	p.b = append(p.b, 'A')
	p.n(r)
	p.b = append(p.b, ' ')
	p.n(r)
	if long {
		p.s(" 0 1")
	} else {
		p.s(" 0 0")
	}
	p.s(way)
	p.xy(at)
}

// The three ways a text hangs on its point.
const (
	starts = ""
	middle = ` text-anchor="middle"`
	ends   = ` text-anchor="end"`
)

// text writes a label whose baseline runs through a point.
func (p *pen) text(class, anchor string, at point, s string) {
	p.tag("text", class)
	p.s(anchor)
	p.a("x", at.x)
	p.a("y", at.y)
	p.s(">")
	p.esc(s)
	p.s("</text>")
}

// hour writes an hour for reading aloud.
func (p *pen) hour(h float64) { p.s(unit.FormatHour(h, 1)) }

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// textWidth returns at least the width of a label of the given size in the
// widest of the common system faces, so that what is kept apart by it stays
// apart on any phone.
func textWidth(s string, size float64) float64 {
	w := 0.0
	for _, r := range short(s) {
		switch r {
		case 'i', 'j', 'l', 'I', '.', ',', ':', ';', '\'', '|', ' ', '(', ')':
			w += 0.4
		case 'f', 'r', 't', '-', '/':
			w += 0.42
		case 'm', 'w', 'M', 'W', '%', '½', '¼', '¾', '±', '−', '+', '=', '×', '@', '&', '—', '…':
			w++
		default:
			switch {
			case r > 0x2000:
				w += 1.4
			case r >= 'A' && r <= 'Z':
				w += 0.79
			default:
				w += 0.64
			}
		}
	}
	return w * size
}
