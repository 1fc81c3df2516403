package draw

import (
	"math"
	"strconv"
)

// TurnView is a moment of a turn: what the dials show and how the crank stands.
// Readings run from −Range to Range in the dials' own unit, 0 at the top; Range is
// taken up to a whole division, so that a dial's figure stands on it.
// Turned is in hours, clockwise as seen from SeenFrom.
//
// The page turns groups by writing their transform attribute, h hours being turned:
//
//	crank: class "crank", rotate(30 h)
//	needle: data-swing "e high step", step its degrees per unit of reading,
//	rotate(step * e * cos(30° (high + h)))
//
// Where the crank stands below the dials, from the side, its bend drawn too big, it
// turns with them: each of its parts is a group with data-lie "t n slopeT slopeN", how
// far it stands towards 12 and 3 as seen from SeenFrom and how it rises to the right,
// in units of the paper:
//
//	up = t*cos(30° h) − n*sin(30° h), rise likewise of the slopes
//	part: translate(0 −up) rotate(−atan(rise))
//
// and so the needles and the shafts under them rise together.
type TurnView struct {
	Prefix   string
	SeenFrom Side
	Turned   float64
	Dials    []TurnDial // the drive and the timing side's, the crank between them; with Throws all, in rows
	Range    float64
	Bend     *BendView   // the crank of one throw from the side; nil leaves it out
	Throws   *ThrowsView // one of several
}

// TurnDial is a dial of run-out 2 Swing with its high spot at High: it reads
// Swing cos(30° (High + Turned)) when the plunger stands at 12 of the face. One whose
// figures are absent is left out.
type TurnDial struct {
	Letter, Words string // under it: "D2", "4 thou"
	Swing, High   float64
}

// TurnHeight is the height of the viewBox, and TurnBendHeight that with the crank
// from the side below.
const (
	TurnHeight     = 204
	TurnBendHeight = TurnHeight + 176
)

// turnRow is from one row of dials to the next, three in each.
const turnRow = 150

// Places of the three faces, and how far a needle swings either way.
const (
	turnDialR  = 54
	turnCrankR = 60
	turnY      = 84
	turnSwing  = 150
)

// Turn draws the dials and the crank.
func Turn(v TurnView) string {
	p := pen{make([]byte, 0, 6144)}
	if !finite(v.Range) || v.Range <= 0 {
		v.Range = 1
	}
	v.Range = dialRange(v.Range)
	if !finite(v.Turned) {
		v.Turned = 0
	}
	p.open(v.Prefix, v.height(), "The dials as the crank turns")
	p.s("The crank stands with its pin at ")
	p.hour(v.Turned)
	p.s(", seen from the ")
	p.s(v.SeenFrom.Name())
	p.s(" side.")
	p.described()
	for i := range v.Dials {
		p.gauge(&v, i)
	}
	if v.Throws != nil {
		p.turningThrows(&v)
		return p.close()
	}
	p.turnedCrank(&v)
	p.text("tx", middle, point{Width / 2, TurnHeight - 7}, "Seen from the "+v.SeenFrom.Name()+" side")
	if v.Bend != nil {
		p.turningBend(&v)
	}
	return p.close()
}

// height is that of the viewBox.
func (v *TurnView) height() float64 {
	switch {
	case v.Throws != nil:
		return v.rows() + turnThrows
	case v.Bend != nil:
		return TurnBendHeight
	}
	return TurnHeight
}

// rows is how far the rows of dials of a crank of several throws reach down.
func (v *TurnView) rows() float64 { return float64((len(v.Dials)+2)/3) * turnRow }

// centre is where a dial stands.
func (v *TurnView) centre(dial int) point {
	if v.Throws == nil {
		return point{58 + float64(dial)*(Width-2*58), turnY}
	}
	return point{float64(60 + 120*(dial%3)), float64(dial/3)*turnRow + turnDialR + 6}
}

// A dial is divided into about so many divisions either side of 0.
const turnDivisions = 5

// dialRange is the least whole number of divisions that holds a swing, and so a
// figure that a dial would have: 2.06 gives 2.5.
func dialRange(swing float64) float64 {
	step := roundStep(swing / turnDivisions)
	return step * math.Ceil(swing/step*(1-1e-9))
}

func joined(letter, words string) string {
	if words == "" {
		return letter
	}
	return letter + " " + words
}

// gauge draws one dial: its face, divided in round steps, and its needle.
func (p *pen) gauge(v *TurnView, dial int) {
	d, c := &v.Dials[dial], v.centre(dial)
	if !finite(d.Swing, d.High) {
		return
	}
	p.circle("op", c, turnDialR)
	step := roundStep(v.Range / turnDivisions)
	p.path("th")
	for k := 0.0; k*step <= v.Range*(1+1e-9); k++ {
		for _, sign := range [2]float64{-1, 1} {
			deg := sign * k * step / v.Range * turnSwing
			if k > 0 || sign > 0 {
				p.stroke(polar(c, turnDialR-1, deg), polar(c, turnDialR-9, deg))
			}
		}
	}
	p.pathEnd()
	p.text("tx", middle, c.plus(0, -turnDialR+26), "0")
	p.text("tx", middle, c.plus(0, 32), "±"+tick(v.Range))
	degrees := turnSwing / v.Range
	reading := d.Swing * math.Cos((d.High+v.Turned)*math.Pi/6)
	p.part(c, v.Prefix, "needle-"+strconv.Itoa(dial+1), "swing", d.Swing, d.High, degrees)
	p.s("rotate(")
	p.n(clamp(reading, -v.Range, v.Range) * degrees)
	p.s(`)"><path class="fi" d="M-3.5 12L0 -45L3.5 12Z"/></g></g>`)
	p.circle("fi", c, 5)
	words := joined(d.Letter, d.Words)
	half := textWidth(words, TextSize*boldWidth) / 2
	p.text("tx tb", middle, point{clamp(c.x, 4+half, Width-4-half), c.y + turnDialR + 26}, words)
}

func polar(c point, r, deg float64) point {
	at := onFace(r, deg/30)
	return point{c.x + at.x - FaceCentreX, c.y + at.y - FaceCentreY}
}

// part opens the two groups of something that moves about a point: the outer stands, the
// inner is the page's to move by the figures that it carries; its transform is begun.
func (p *pen) part(at point, prefix, name, figures string, values ...float64) {
	p.s(`<g transform="translate(`)
	p.xy(at)
	p.s(`)"><g class="turns" id="`)
	p.id(prefix, name)
	if len(values) > 0 {
		p.s(`" data-`)
		p.s(figures)
		p.s(`="`)
		for i, x := range values {
			if i > 0 {
				p.s(" ")
			}
			p.deg(x)
		}
	}
	p.s(`" transform="`)
}

// turnedCrank draws the crank from its end, with the plunger that stands at 12.
func (p *pen) turnedCrank(v *TurnView) {
	c := point{Width / 2, turnY}
	p.part(c, v.Prefix, "crank", "")
	p.s("rotate(")
	p.n(v.Turned * 30)
	p.s(`)">`)
	p.circle("op", point{}, turnCrankR)
	p.lines("ax", point{0, -turnCrankR}, point{0, turnCrankR}, point{-turnCrankR, 0}, point{turnCrankR, 0})
	p.circle("fi", point{0, -32}, 10)
	p.circle("op", point{}, 12)
	p.s("</g></g>")
	p.poly("fi", c.plus(0, -turnCrankR-2), c.plus(-6, -turnCrankR-13), c.plus(6, -turnCrankR-13))
}
