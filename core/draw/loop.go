package draw

import "math"

// Push is a force across the shafts, in any one unit: Up the page and to the
// Right of it, turned by the caller to how the cylinder stands.
type Push struct{ Up, Right float64 }

// LoopView is the shaking force over one turn, as found and as it should be.
// Cylinders are drawn as axes, in degrees clockwise from upright.
type LoopView struct {
	Prefix     string
	Unit       string // of the scale: "N"
	Found      []Push
	Target     []Push
	FoundPeak  string // words at the greatest force: "2.4 kN"
	TargetPeak string
	Cylinders  []float64
	UpWord     string // what is up on the paper: "up"
	RightWord  string // "front"
}

// LoopHeight is the height of the viewBox.
const LoopHeight = 372

const loopRadius = 140

var loopCentre = point{Width / 2, 172}

// Loop draws the force loops: found dashed, target solid.
func Loop(v LoopView) string {
	p := pen{make([]byte, 0, 8192)}
	p.open(v.Prefix, LoopHeight, "Shaking force over one turn")
	p.s("As found: greatest force ")
	p.esc(orAbsent(v.FoundPeak))
	p.s(". Target: greatest force ")
	p.esc(orAbsent(v.TargetPeak))
	p.s(".")
	p.described()
	found, far := peak(v.Found)
	target, near := peak(v.Target)
	step, scale := loopScale(max(far, near))
	p.loopPaper(&v, step, scale)
	p.loopLine("ln hd", v.Found, scale)
	p.loopLine("ol", v.Target, scale)
	var l loopLabels
	if far > 0 {
		l.add(loopAt(found, scale), "found "+v.FoundPeak)
	}
	if near > 0 {
		l.add(loopAt(target, scale), "target "+v.TargetPeak)
	}
	p.loopPeaks(&l)
	return p.close()
}

func orAbsent(words string) string {
	if words == "" {
		return "not known"
	}
	return words
}

// loopScale returns the step of the rings and the units of paper per unit of
// force.
func loopScale(most float64) (step, scale float64) {
	if most == 0 {
		return 0, 0
	}
	step = roundStep(most / 4)
	return step, loopRadius / (step * math.Ceil(most/step-1e-9))
}

// peak returns the greatest force of a loop and its size.
func peak(loop []Push) (at Push, size float64) {
	for _, f := range loop {
		if s := math.Hypot(f.Up, f.Right); finite(s) && s > size && s < 1e12 {
			at, size = f, s
		}
	}
	return at, size
}

func loopAt(f Push, scale float64) point {
	return loopCentre.plus(scale*f.Right, -scale*f.Up)
}

func (p *pen) loopLine(class string, loop []Push, scale float64) {
	p.path(class)
	begun := false
	for _, f := range loop {
		s := math.Hypot(f.Up, f.Right)
		if !finite(s) || s >= 1e12 {
			continue
		}
		if at := loopAt(f, scale); begun {
			p.to(at)
		} else {
			p.move(at)
		}
		begun = true
	}
	if begun {
		p.shut()
	}
	p.pathEnd()
}

// loopPaper draws rings, axes and the cylinders' axes.
func (p *pen) loopPaper(v *LoopView, step, scale float64) {
	c := loopCentre
	for k := 1.0; step > 0 && k*step*scale <= loopRadius+0.5; k++ {
		p.circle("gr", c, k*step*scale)
	}
	p.lines("th", c.plus(0, -loopRadius-8), c.plus(0, loopRadius+8), c.plus(-loopRadius-8, 0), c.plus(loopRadius+8, 0))
	for _, deg := range v.Cylinders {
		if finite(deg) {
			p.line("ax", polar(c, loopRadius+8, deg+180), polar(c, loopRadius+16, deg))
			at := polar(c, loopRadius+8, deg)
			side := polar(point{}, 1, deg+90)
			p.line("ol", at.plus(13*side.x, 13*side.y), at.plus(-13*side.x, -13*side.y))
		}
	}
	p.text("tx", ends, point{Width - 4, LoopHeight - 30}, joined("↑", v.UpWord))
	p.text("tx", ends, point{Width - 4, LoopHeight - 8}, joined("→", v.RightWord))
	if step > 0 {
		p.text("tx", starts, point{4, LoopHeight - 30}, "rings")
		p.text("tx", starts, point{4, LoopHeight - 8}, tick(step)+" "+v.Unit+" apart")
	}
}

// loopLabels are the peaks and what is written at them.
type loopLabels struct {
	at    [2]point
	words [2]string
	n     int
}

func (l *loopLabels) add(at point, words string) {
	l.at[l.n], l.words[l.n] = at, words
	l.n++
}

// loopPeaks marks the peaks and writes their words beside them, outwards where
// that is free.
func (p *pen) loopPeaks(l *loopLabels) {
	frame := box{2, 22, Width - 2, LoopHeight - 52}
	var taken [2]box
	for i := range l.n {
		at := l.at[i]
		out := math.Atan2(at.x-loopCentre.x, loopCentre.y-at.y)
		w := textWidth(l.words[i], TextSize*boldWidth)
		b, ok := nearby(disc{at, 9}, w, lineStep, out, func(b box) bool {
			for j := range l.n {
				if j < i && b.hits(taken[j]) || !b.clear(disc{l.at[j], 8}) {
					return false
				}
			}
			return b == b.inside(frame)
		})
		p.circle("fi", at, 5)
		if ok {
			taken[i] = b
			p.text("tx tb", middle, point{b.centre().x, b.y0 + 16}, l.words[i])
		}
	}
}
