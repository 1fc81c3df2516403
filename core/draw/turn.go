package draw

import "math"

// TurnView is a moment of a turn: what both dials show and how the crank stands.
// Readings run from −Range to Range in the dials' own unit, 0 at the top; Range is
// taken up to a whole division, so that a dial's figure stands on it.
// Turned is in hours, clockwise as seen from SeenFrom.
//
// The page turns three groups by writing their transform attribute. Their
// classes are "needle-d", "needle-t" and "crank", their ids Prefix and "-" before
// the class. A needle's data-step is its degrees per unit of reading:
//
//	needle.setAttribute("transform", `rotate(${reading * needle.dataset.step})`)
//	crank.setAttribute("transform", `rotate(${30 * hours})`)
//
// Where Bend is given the crank stands below the dials, from the side, its bend
// drawn too big, and turns with them: its halves are groups with the classes
// "half-a", left, and "half-b", right, the pin one with the class "crankpin". Such a
// group's data-lie is "t n slopeT slopeN", how far it stands towards 12 and 3 as
// seen from SeenFrom and how it rises to the right, in units of the paper; the
// pin has its throw as well:
//
//	up = t*cos(30° hours) − n*sin(30° hours), rise likewise of the slopes
//	half.setAttribute("transform", `translate(0 ${-up}) rotate(${-atan(rise)})`)
//
// and so the needles and the shafts under them rise together.
//
// A dial of run-out 2e and high spot h reads e cos(30° (h + Turned)) + its mean
// when the plunger stands at 12 of the face.
type TurnView struct {
	Prefix        string
	SeenFrom      Side
	Turned        float64
	Drive, Timing float64 // readings; one that is absent leaves its dial out
	Range         float64
	DriveWords    string // under the dials, after the letter: "2 thou"
	TimingWords   string
	Bend          *BendView // nil leaves the crank from the side out
}

// TurnHeight is the height of the viewBox, and TurnBendHeight that with the crank
// from the side below.
const (
	TurnHeight     = 204
	TurnBendHeight = TurnHeight + 176
)

// Places of the three faces, and how far a needle swings either way.
const (
	turnDialR  = 54
	turnCrankR = 60
	turnY      = 84
	turnSwing  = 150
)

// Turn draws the two dials and the crank between them.
func Turn(v TurnView) string {
	p := pen{make([]byte, 0, 6144)}
	if !finite(v.Range) || v.Range <= 0 {
		v.Range = 1
	}
	v.Range = dialRange(v.Range)
	height := float64(TurnHeight)
	if v.Bend != nil {
		height = TurnBendHeight
	}
	p.open(v.Prefix, height, "Both dials as the crank turns")
	p.s("The crank stands with its pin at ")
	p.hour(v.Turned)
	p.s(", seen from the ")
	p.s(v.SeenFrom.Name())
	p.s(" side.")
	p.described()
	p.gauge(&v, 58, "d", v.Drive, joined("D", v.DriveWords))
	p.gauge(&v, Width-58, "t", v.Timing, joined("T", v.TimingWords))
	p.turnedCrank(&v)
	p.text("tx", middle, point{Width / 2, TurnHeight - 7}, "Seen from the "+v.SeenFrom.Name()+" side")
	if v.Bend != nil {
		p.turningBend(&v)
	}
	return p.close()
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
func (p *pen) gauge(v *TurnView, x float64, key string, reading float64, words string) {
	if !finite(reading) {
		return
	}
	c := point{x, turnY}
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
	p.turning(c, "needle-"+key, v.Prefix, clamp(reading, -v.Range, v.Range)*degrees, degrees)
	p.s(`<path class="fi" d="M-3.5 12L0 -45L3.5 12Z"/></g></g>`)
	p.circle("fi", c, 5)
	p.text("tx tb", middle, point{clamp(x, 4+textWidth(words, TextSize*boldWidth)/2, Width-4-textWidth(words, TextSize*boldWidth)/2), turnY + turnDialR + 26}, words)
}

func polar(c point, r, deg float64) point {
	at := onFace(r, deg/30)
	return point{c.x + at.x - FaceCentreX, c.y + at.y - FaceCentreY}
}

// turning opens the two groups of something that turns about a point: the outer
// stands, the inner is the page's to turn.
func (p *pen) turning(c point, class, prefix string, deg, step float64) {
	p.s(`<g transform="translate(`)
	p.xy(c)
	p.s(`)"><g class="`)
	p.s(class)
	p.s(`" id="`)
	p.id(prefix, class)
	if step > 0 {
		p.s(`" data-step="`)
		p.digits(step, 6)
	}
	p.s(`" transform="rotate(`)
	p.n(deg)
	p.s(`)">`)
}

// turnedCrank draws the crank from its end, with the plunger that stands at 12.
func (p *pen) turnedCrank(v *TurnView) {
	c := point{Width / 2, turnY}
	deg := 0.0
	if finite(v.Turned) {
		deg = v.Turned * 30
	}
	p.turning(c, "crank", v.Prefix, deg, 0)
	p.circle("op", point{}, turnCrankR)
	p.lines("ax", point{0, -turnCrankR}, point{0, turnCrankR}, point{-turnCrankR, 0}, point{turnCrankR, 0})
	p.circle("fi", point{0, -32}, 10)
	p.circle("op", point{}, 12)
	p.s("</g></g>")
	p.poly("fi", c.plus(0, -turnCrankR-2), c.plus(-6, -turnCrankR-13), c.plus(6, -turnCrankR-13))
}
