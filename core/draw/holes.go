package draw

import (
	"math"
	"strconv"
)

// Hole is a hole of a drilling plan; lengths mm, the hour for the end that the
// wheel is seen from. A plug is filled with heavy metal; an old hole was there
// before and has no number.
type Hole struct {
	Radius, Hour, Diameter float64
	Plug, Old              bool
}

// Zone is where drilling is allowed: between two radii, so many hours either way
// of one.
type Zone struct{ Inner, Outer, Hour, HalfHours float64 }

// HolesView is the drilling plan of one wheel, to scale. Holes are numbered as
// they stand in the list, old ones not counted. At full size the picture is as
// large on paper as the wheel, and carries a rule to check the printer by.
type HolesView struct {
	Prefix                  string
	SeenFrom, Wheel         Side
	Rim, Throw, Boss, Shaft float64 // radii of the rim, the pin's circle, what is kept round the pin, the shaft
	Holes                   []Hole
	Zone                    Zone
	FullSize                bool
}

// plan lays the wheel on the paper.
type plan struct {
	v      *HolesView
	c      point
	rim    float64 // units
	scale  float64 // units per mm
	height float64
	discs  []disc // what labels keep off
}

// Holes draws the drilling plan. A wheel without a rim has none: only the words
// are drawn.
func Holes(v HolesView) string {
	p := pen{make([]byte, 0, 8192)}
	l := plan{v: &v, c: point{Width / 2, 176}, rim: 144, height: 398}
	if v.FullSize {
		l.c.y, l.rim, l.height = Width/2, Width/2-3, 460
	}
	if l.scale = l.rim / v.Rim; !finite(l.scale) || v.Rim <= 0 {
		l.scale = 0
	}
	title := "Drilling plan of the " + v.Wheel.Name() + " wheel"
	if v.FullSize && l.scale > 0 {
		p.openFull(v.Prefix, l.height, title, 1/l.scale)
	} else {
		p.open(v.Prefix, l.height, title)
	}
	p.describeHoles(&v)
	p.described()
	if l.scale > 0 {
		p.planWheel(&l)
		p.planHoles(&l)
		if v.FullSize {
			p.rule(&l)
		}
	}
	p.text("tx tb", middle, point{Width / 2, l.height - 30}, v.Wheel.Name()+" wheel")
	p.text("tx", middle, point{Width / 2, l.height - 8}, "seen from the "+v.SeenFrom.Name()+" side")
	return p.close()
}

func (p *pen) describeHoles(v *HolesView) {
	n := 0
	for _, h := range v.Holes {
		if !h.sound() || h.Old {
			continue
		}
		n++
		p.n(float64(n))
		p.s(": ")
		p.figure(h.Diameter)
		p.s(" mm across at ")
		p.hour(h.Hour)
		p.s(", ")
		p.figure(h.Radius)
		p.s(" mm from the shaft's centre. ")
	}
}

func (h *Hole) sound() bool {
	return finite(h.Radius, h.Hour, h.Diameter) && h.Radius >= 0 && h.Radius < 1e5 && h.Diameter > 0 && h.Diameter < 1e5
}

func (l *plan) at(mm, hour float64) point { return polar(l.c, mm*l.scale, hour*30) }

func (p *pen) planWheel(l *plan) {
	v := l.v
	p.planZone(l)
	p.circle("ol", l.c, l.rim)
	p.path("ax")
	for h := 0.0; h < 6; h += 3 {
		p.stroke(polar(l.c, l.rim, h*30+180), polar(l.c, l.rim, h*30))
	}
	p.pathEnd()
	p.planHours(l)
	pin := l.at(v.Throw, 0)
	if finite(v.Throw, v.Boss) && v.Throw > 0 && v.Throw < v.Rim {
		p.circle("fi", pin, 10)
		l.discs = append(l.discs, disc{pin, 11})
		if v.Boss > 0 && v.Boss < v.Rim {
			p.circle("hd", pin, max(13, v.Boss*l.scale))
		}
	}
	shaft := 12.0
	if finite(v.Shaft) && v.Shaft > 0 && v.Shaft < v.Rim {
		shaft = v.Shaft * l.scale
	}
	p.circle("op", l.c, shaft)
	p.lines("th", l.c.plus(-6, 0), l.c.plus(6, 0), l.c.plus(0, -6), l.c.plus(0, 6))
	l.discs = append(l.discs, disc{l.c, shaft + 2})
}

// planHours draws the ticks of the hours, with numerals outside the rim where
// the paper reaches further than the wheel.
func (p *pen) planHours(l *plan) {
	p.path("th")
	for h := 0.0; h < 12; h++ {
		p.stroke(polar(l.c, l.rim, h*30), polar(l.c, l.rim-9, h*30))
	}
	p.pathEnd()
	for h := 1; h <= 12; h++ {
		at := polar(l.c, l.rim+17, float64(h)*30)
		if l.v.FullSize {
			at = polar(l.c, l.rim-22, float64(h)*30)
			if h%3 != 0 || l.drilled(disc{at, 14}) {
				continue
			}
			l.discs = append(l.discs, disc{at, 14})
		}
		p.text("tx", middle, at.plus(0, 7), strconv.Itoa(h))
	}
}

// drilled tells whether a hole comes into a disc of the paper.
func (l *plan) drilled(d disc) bool {
	for _, h := range l.v.Holes {
		if h.sound() && d.hits(disc{l.at(h.Radius, h.Hour), h.Diameter / 2 * l.scale}) {
			return true
		}
	}
	return false
}

func (p *pen) planZone(l *plan) {
	z := l.v.Zone
	if !finite(z.Inner, z.Outer, z.Hour, z.HalfHours) || z.Outer <= z.Inner || z.Inner < 0 || z.Outer > l.v.Rim || z.HalfHours <= 0 {
		return
	}
	half := min(z.HalfHours, 5.99)
	p.path("se")
	p.move(l.at(z.Outer, z.Hour-half))
	p.arc(z.Outer*l.scale, half > 3, l.at(z.Outer, z.Hour+half))
	p.to(l.at(z.Inner, z.Hour+half))
	p.arcBack(z.Inner*l.scale, half > 3, l.at(z.Inner, z.Hour-half))
	p.shut()
	p.pathEnd()
}

func (p *pen) planHoles(l *plan) {
	for i := range l.v.Holes {
		if h := &l.v.Holes[i]; h.sound() {
			p.planHole(l, h)
			l.discs = append(l.discs, disc{l.at(h.Radius, h.Hour), h.Diameter/2*l.scale + 1})
		}
	}
	n := 0
	var taken []box
	for i := range l.v.Holes {
		h := &l.v.Holes[i]
		if !h.sound() || h.Old {
			continue
		}
		n++
		words := strconv.Itoa(n)
		b, ok := l.besideHole(h, textWidth(words, TextSize*boldWidth), taken)
		if ok {
			taken = append(taken, b)
			p.text("tx tb", middle, point{b.centre().x, b.y0 + 16}, words)
		}
	}
}

// besideHole looks for a place for a hole's number beside it, inwards first: in
// it, the number would hide the centre to punch.
func (l *plan) besideHole(h *Hole, w float64, taken []box) (box, bool) {
	d := disc{l.at(h.Radius, h.Hour), h.Diameter/2*l.scale + 3}
	return nearby(d, w, lineStep, (h.Hour+6)*math.Pi/6, func(b box) bool {
		if !b.within(disc{l.c, l.rim - 4}) {
			return false
		}
		for _, d := range l.discs {
			if !b.clear(d) {
				return false
			}
		}
		for _, t := range taken {
			if b.hits(t) {
				return false
			}
		}
		return true
	})
}

// planHole draws a hole with its centre lines: along the radius and across.
func (p *pen) planHole(l *plan, h *Hole) {
	at, r := l.at(h.Radius, h.Hour), h.Diameter/2*l.scale
	if h.Old {
		p.circle("hd", at, r)
		return
	}
	p.circle("op", at, r)
	if h.Plug {
		ring := make([]point, 24)
		for i := range ring {
			ring[i] = polar(at, r, float64(i)*15)
		}
		p.hatch(ring, 5)
		p.hatch(ring, -5)
	}
	u := polar(point{}, r+5, h.Hour*30)
	p.lines("th", at.plus(-u.x, -u.y), at.plus(u.x, u.y), at.plus(-u.y, u.x), at.plus(u.y, -u.x))
}

// rule draws the rule that shows whether the printer kept the size.
func (p *pen) rule(l *plan) {
	long := 100.0
	if 100*l.scale > Width-30 {
		long = 50
	}
	from := point{(Width - long*l.scale) / 2, l.height - 64}
	p.path("th")
	p.stroke(from, from.plus(long*l.scale, 0))
	for mm := 0.0; mm <= long; mm += 10 {
		tall := 8.0
		if math.Mod(mm, 50) == 0 {
			tall = 14
		}
		p.stroke(from.plus(mm*l.scale, 0), from.plus(mm*l.scale, -tall))
	}
	p.pathEnd()
	p.text("tx", middle, point{Width / 2, from.y - 18}, tick(long)+" mm by a rule?")
}
