package draw

import "math"

// The clock face stands at one place of its viewBox whatever is drawn on it, so
// that a page can turn a tap into an hour: with (x, y) in viewBox units, the
// hour is atan2(x − FaceCentreX, FaceCentreY − y) / 30°.
const (
	FaceCentreX = 180
	FaceCentreY = 166
	FaceRim     = 120 // radius of the wheel's outline
	FaceHeight  = 354 // of the viewBox, which is Width wide
	faceCaption = 24  // of that, for the words below
)

// Radii of what stands inside the rim.
const (
	faceNumerals = 101
	faceFree     = 86 // free of numerals from here inwards
	faceThrow    = 74
	facePin      = 12
	faceShaft    = 20
)

// MarkKind is a kind of move.
type MarkKind uint8

// The three moves.
const (
	Strike MarkKind = iota
	Squeeze
	Spread
)

// word returns what the move is called on the picture.
func (k MarkKind) word() string {
	switch k {
	case Squeeze:
		return "Squeeze"
	case Spread:
		return "Spread"
	}
	return "Strike"
}

// HighSpot is where one dial stands highest. Hour is for the end that the face
// is seen from. RunOut is drawn beside the letter where there is room, so give
// it short: "1.5". HalfSector is how far the hour may be out either way, in
// hours: 0 draws no sector, 6 or more means that the direction is unknown, and
// then no high spot is drawn.
type HighSpot struct {
	Letter     string // "D", "T"; "D2" for a second station
	Hour       float64
	RunOut     string
	HalfSector float64
}

// Mark is a move to make: on the rim of one wheel for a strike, across both
// rims for a squeeze or a spread, where Wheel is not used.
type Mark struct {
	Kind   MarkKind
	Wheel  Side
	Hour   float64 // for the end that the face is seen from
	Amount string  // "2 thou"
}

// FaceView is what the clock face shows. Hours are those read from SeenFrom;
// its wheel is the nearest. Prefix begins the ids in the picture. Before are the
// high spots of the round before, drawn faint and without sectors. Bare leaves
// out the words below that say from where it is seen.
type FaceView struct {
	Prefix   string
	SeenFrom Side
	High     []HighSpot
	Before   []HighSpot
	Moves    []Mark
	Bare     bool
}

// The most high spots and moves that one face shows; more are left out.
const (
	maxSpots = 6
	maxMoves = 4
)

// Face draws the clock face: the wheel's outline with the hours, the crankpin
// at 12, the high spots on the shaft and the moves on the rim.
func Face(v FaceView) string {
	p := pen{make([]byte, 0, 6144)}
	var l faceLayout
	l.lay(v)
	height := float64(FaceHeight)
	if v.Bare {
		height -= faceCaption
	}
	p.open(v.Prefix, height, "Clock face seen from the "+v.SeenFrom.Name()+" side")
	p.describeFace(v, &l)
	p.described()
	p.sectors(&l)
	p.dial()
	p.highSpots(&l)
	p.moves(&l)
	if !v.Bare {
		p.text("tx", middle, point{FaceCentreX, FaceHeight - 6}, "Seen from the "+v.SeenFrom.Name()+" side")
	}
	return p.close()
}

func (p *pen) describeFace(v FaceView, l *faceLayout) {
	p.s("The crankpin is at 12; the ")
	p.s(v.SeenFrom.Name())
	p.s(" wheel is nearest.")
	for i := range l.spots[:l.nSpots] {
		s := &l.spots[i]
		p.s(" ")
		if s.former {
			p.s("Before, ")
		}
		p.esc(s.Letter)
		if s.unknown {
			p.s(": the dial can't tell where the high spot is")
		} else {
			p.s(": high spot at ")
			p.hour(s.Hour)
			if m := math.Round(s.HalfSector * 60); m > 0 {
				p.s(", give or take ")
				p.n(m)
				p.s(" minutes of the clock")
			}
		}
		if s.RunOut != "" {
			p.s(", run-out ")
			p.esc(s.RunOut)
		}
		p.s(".")
	}
	for i := range l.marks[:l.nMarks] {
		m := &l.marks[i]
		p.s(" ")
		p.s(m.Kind.word())
		if m.Kind == Strike {
			p.s(" the ")
			p.s(m.Wheel.Name())
			p.s(" wheel")
		}
		p.s(" at ")
		p.hour(m.Hour)
		if m.Amount != "" {
			p.s(", ")
			p.esc(m.Amount)
		}
		p.s(".")
	}
}

// onFace returns the point of the face at a radius and an hour.
func onFace(r, hour float64) point {
	s, c := math.Sincos(hour * math.Pi / 6)
	return point{FaceCentreX + r*s, FaceCentreY - r*c}
}

// dial draws what never changes: outline, axes, hours, shaft and pin.
func (p *pen) dial() {
	c := point{FaceCentreX, FaceCentreY}
	p.circle("ol", c, FaceRim)
	p.path("ax")
	for h := 0.0; h < 12; h += 3 {
		p.stroke(c, onFace(faceFree+1, h))
		p.stroke(onFace(FaceRim, h), onFace(FaceRim+8, h))
	}
	p.pathEnd()
	p.path("th")
	for h := 0.0; h < 12; h += 0.5 {
		in := 11.0
		if h != math.Trunc(h) {
			in = 6
		}
		p.stroke(onFace(FaceRim, h), onFace(FaceRim-in, h))
	}
	p.pathEnd()
	p.s(`<g class="tx" text-anchor="middle">`)
	for h := 1; h <= 12; h++ {
		at := onFace(faceNumerals, float64(h))
		p.text("", starts, at.plus(0, 7), [...]string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"}[h-1])
	}
	p.s("</g>")
	p.circle("fi", onFace(faceThrow, 0), facePin)
	p.circle("op", c, faceShaft)
	p.lines("th", c.plus(-5, 0), c.plus(5, 0), c.plus(0, -5), c.plus(0, 5))
}

func (p *pen) sectors(l *faceLayout) {
	for i := range l.spots[:l.nSpots] {
		s := &l.spots[i]
		switch {
		case s.unknown:
			p.circle("se", point{FaceCentreX, FaceCentreY}, faceFree-1)
		case s.HalfSector > 0:
			p.path("se")
			p.move(point{FaceCentreX, FaceCentreY})
			p.to(onFace(faceFree-1, s.Hour-s.HalfSector))
			p.arc(faceFree-1, s.HalfSector > 3, onFace(faceFree-1, s.Hour+s.HalfSector))
			p.shut()
			p.pathEnd()
		}
	}
}

// turned opens a group in which 12 stands at an hour of the face.
func (p *pen) turned(class string, hour float64) {
	p.tag("g", class)
	p.s(` transform="rotate(`)
	p.deg(hour * 30)
	p.s(" ")
	p.n(FaceCentreX)
	p.s(" ")
	p.n(FaceCentreY)
	p.s(`)">`)
}

func (p *pen) highSpots(l *faceLayout) {
	for i := range l.spots[:l.nSpots] {
		s := &l.spots[i]
		glyph, words := "op", "tx tb"
		if s.former {
			glyph, words = "hd", "tx as"
		}
		if !s.unknown {
			p.turned("", s.Hour)
			y := FaceCentreY - s.base
			p.path(glyph)
			p.move(point{FaceCentreX - spotHalf, y})
			p.to(point{FaceCentreX + spotHalf, y})
			p.to(point{FaceCentreX, y - spotTall})
			p.shut()
			p.s(`"/></g>`)
		}
		p.block(words, &s.label)
	}
}

// The moves' glyphs, drawn at 12 about the point (0, 0) of the rim.
const (
	strikeGlyph  = `<path class="mf" d="M0 0L11 -26L-11 -26Z"/><path class="mo" d="M0 -30V-37M-8.5 -30L-10 -36.5M8.5 -30L10 -36.5"/>`
	squeezeGlyph = `<path class="pa" d="M-23 -22H23V9H-23Z"/><path class="mf" d="M-10 -21H-3V9H-10ZM3 -21H10V9H3Z"/><path class="mo" d="M-22 -6H-9M9 -6H22"/>`
	spreadGlyph  = `<path class="pa" d="M-25 -20H25V8H-25Z"/><path class="mo" d="M-11 -18L-22 -6L-11 6M11 -18L22 -6L11 6"/>`
)

func (p *pen) moves(l *faceLayout) {
	for i := range l.marks[:l.nMarks] {
		m := &l.marks[i]
		if m.shift != 0 {
			p.line("ml", onFace(FaceRim, m.Hour), onFace(FaceRim+6, m.Hour+m.shift))
			p.circle("mf", onFace(FaceRim, m.Hour), 4)
		}
		if m.label.n > 0 && m.at.leads() {
			p.line("ml", m.at.tail, m.at.end)
		}
		p.turned("", m.Hour+m.shift)
		p.s(`<g transform="translate(`)
		p.n(FaceCentreX)
		p.s(" ")
		p.n(FaceCentreY - FaceRim)
		p.s(")")
		if m.tilt != 0 {
			p.s(" rotate(")
			p.n(m.tilt)
			p.s(")")
		}
		p.s(`">`)
		p.s([...]string{Strike: strikeGlyph, Squeeze: squeezeGlyph, Spread: spreadGlyph}[m.Kind])
		p.s("</g></g>")
		p.block("tx tm", &m.label)
	}
}
