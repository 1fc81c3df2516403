package draw

import (
	"slices"
	"sort"
)

// Across is a point of a wheel's section: its radius and how far along the shaft
// it lies, mm.
type Across struct{ R, X float64 }

// Cut is metal taken off, or to be taken off, as an outline of the section.
// Hole is set for one of a ring of holes, drawn with its axis. Field names the
// field of the job that its words lead to, "" for none.
type Cut struct {
	Outline []Across
	Words   string // short: "1", "0.4 kg"
	Hole    bool
	Field   string
}

// SectionView is half the section of a flywheel through its shaft. Outline is the
// metal that is left; cuts lie outside it. Bosses stand in recesses, and Holes
// are there already. The view follows the figures.
type SectionView struct {
	Prefix  string
	Outline []Across
	Bosses  [][]Across
	Holes   [][]Across
	Cuts    []Cut
	// Diameters are dimensioned below the section, Width beside it. Lines is how
	// many diameters there is room for: the smallest are drawn. It goes by what is
	// asked and not by what is given, so that no figure moves what stands below.
	Diameters []Dim
	Width     Dim
	Lines     int
}

// SectionHeight is the height of the viewBox with room for so many diameters.
func SectionHeight(lines int) float64 { return sectionFoot + 8 + float64(lines)*tapSize }

const (
	sectionAxis  = 22 // x of the shaft's axis on the paper
	sectionRight = 306
	sectionFoot  = 136 // y of the lower face
	sectionTall  = 96  // most of the width
)

// sectionSheet lays the section on the paper: the radius runs to the right, the
// width down.
type sectionSheet struct{ scale, foot float64 }

func (s *sectionSheet) at(a Across) point {
	return point{sectionAxis + s.scale*a.R, sectionFoot + s.scale*(a.X-s.foot)}
}

// FlywheelSection draws the half section: metal hatched, cuts dashed and hatched
// both ways, diameters and width dimensioned.
func FlywheelSection(v SectionView) string {
	p := pen{make([]byte, 0, 12288)}
	height := SectionHeight(v.Lines)
	p.openAs("group", v.Prefix, height, "Section of the flywheel")
	p.s("Half the section, the shaft's axis at the left. ")
	for i := range v.Diameters {
		p.sayDim("diameter", &v.Diameters[i])
	}
	p.sayDim("width", &v.Width)
	for i := range v.Cuts {
		p.s("cut ")
		p.esc(v.Cuts[i].Words)
		p.s("; ")
	}
	p.described()
	s, edge, ok := layOutSection(&v)
	if ok {
		p.sectionMetal(&v, &s)
		p.sectionMade(&v, &s)
		p.sectionCuts(&v, &s)
		p.sectionDims(&v, &s, edge)
	}
	p.line("ax", point{sectionAxis, 8}, point{sectionAxis, height - 6})
	return p.close()
}

// layOutSection scales the section to the paper and returns its edges there.
func layOutSection(v *SectionView) (s sectionSheet, edge box, ok bool) {
	v.Outline, v.Cuts = sound(v.Outline), slices.Clone(v.Cuts)
	all := box{0, 1e9, 0, -1e9}
	take := func(outline []Across) {
		for _, a := range outline {
			all = box{0, min(all.y0, a.X), max(all.x1, a.R), max(all.y1, a.X)}
		}
	}
	take(v.Outline)
	for i := range v.Cuts {
		v.Cuts[i].Outline = sound(v.Cuts[i].Outline)
		take(v.Cuts[i].Outline)
	}
	if all.x1 <= 0 || all.y1 <= all.y0 {
		return s, edge, false
	}
	s = sectionSheet{scale: min((sectionRight-sectionAxis)/all.x1, sectionTall/(all.y1-all.y0)), foot: all.y1}
	from, to := s.at(Across{0, all.y0}), s.at(Across{all.x1, all.y1})
	return s, box{from.x, from.y, to.x, to.y}, true
}

// sound returns an outline that can be drawn, or none.
func sound(outline []Across) []Across {
	for _, a := range outline {
		if !finite(a.R, a.X) || a.R < 0 || a.R > 1e5 || a.X < -1e5 || a.X > 1e5 {
			return nil
		}
	}
	if len(outline) < 3 {
		return nil
	}
	return outline
}

func (s *sectionSheet) points(outline []Across) []point {
	pts := make([]point, len(outline))
	for i, a := range outline {
		pts[i] = s.at(a)
	}
	return pts
}

func (p *pen) sectionMetal(v *SectionView, s *sectionSheet) {
	if v.Outline == nil {
		return
	}
	metal := s.points(v.Outline)
	p.hatch(metal, 9)
	p.poly("ol", metal...)
}

// sectionMade draws the bosses and holes as they are, turned into the section.
func (p *pen) sectionMade(v *SectionView, s *sectionSheet) {
	for _, outline := range v.Bosses {
		if outline = sound(outline); outline != nil {
			boss := s.points(outline)
			p.hatch(boss, 9)
			p.poly("ol", boss...)
		}
	}
	for _, outline := range v.Holes {
		if outline = sound(outline); outline != nil {
			hole := s.points(outline)
			p.poly("op", hole...)
			p.axisOf(bounds(hole))
		}
	}
}

// axisOf draws the axis of a hole past both its ends.
func (p *pen) axisOf(b box) {
	x := b.centre().x
	p.line("ax", point{x, b.y0 - 9}, point{x, b.y1 + 9})
}

func (p *pen) sectionCuts(v *SectionView, s *sectionSheet) {
	for i := range v.Cuts {
		c := &v.Cuts[i]
		if c.Outline == nil {
			continue
		}
		cut := s.points(c.Outline)
		p.poly("pa", cut...)
		p.hatch(cut, 6)
		p.hatch(cut, -6)
		p.poly("cu", cut...)
	}
	p.cutWords(v, s)
}

// cutWords sets what the cuts are in a row above the section, each on a leader
// that ends in a dot in its cut.
func (p *pen) cutWords(v *SectionView, s *sectionSheet) {
	type word struct {
		cut  *Cut
		at   point
		x, w float64
	}
	var words []word
	for i := range v.Cuts {
		c := &v.Cuts[i]
		if c.Outline == nil {
			continue
		}
		b := bounds(s.points(c.Outline))
		at := b.centre()
		if c.Hole {
			p.axisOf(b)
		}
		if c.Words != "" {
			words = append(words, word{c, at, at.x, max(textWidth(c.Words, TextSize*boldWidth), tapSize-6)})
		}
	}
	sort.SliceStable(words, func(i, j int) bool { return words[i].at.x < words[j].at.x })
	right := float64(sectionAxis)
	for i := range words {
		words[i].x = max(words[i].x, right+6+words[i].w/2)
		right = words[i].x + words[i].w/2
	}
	right = Width - 2
	for i := len(words) - 1; i >= 0; i-- {
		words[i].x = min(words[i].x, right-words[i].w/2)
		right = words[i].x - words[i].w/2 - 6
	}
	for _, k := range words {
		p.line("th", k.at, point{k.x, 26})
		p.circle("fi", k.at, 3)
		p.text("tx tb", middle, point{k.x, 20}, k.cut.Words)
	}
	for _, k := range words {
		p.tap(k.cut.Field, "change cut "+k.cut.Words, box{k.x - k.w/2 - 3, 0, k.x + k.w/2 + 3, tapSize})
	}
}

func bounds(pts []point) box {
	b := box{pts[0].x, pts[0].y, pts[0].x, pts[0].y}
	for _, q := range pts {
		b = box{min(b.x0, q.x), min(b.y0, q.y), max(b.x1, q.x), max(b.y1, q.y)}
	}
	return b
}

// sectionDims draws the diameters as half dimension lines that run past the
// axis, the smallest nearest to the section, and the width beside it.
func (p *pen) sectionDims(v *SectionView, s *sectionSheet, edge box) {
	dims := slices.DeleteFunc(slices.Clone(v.Diameters), func(d Dim) bool {
		return d.Words == "" || !finite(d.MM) || d.MM <= 0 || d.MM/2*s.scale > edge.x1-edge.x0+0.5
	})
	sort.SliceStable(dims, func(i, j int) bool { return dims[i].MM < dims[j].MM })
	line := edge.y1 + 38
	for _, d := range dims[:min(len(dims), v.Lines)] {
		tip := point{sectionAxis + s.scale*d.MM/2, line}
		p.line("th", point{tip.x, edge.y1 + 3}, tip.plus(0, 4))
		p.line("th", point{sectionAxis - 14, line}, tip)
		p.arrow(tip, point{-1, 0})
		words := assumedWords("⌀ "+d.Words, d.Assumed)
		if w := textWidth(words, TextSize); w < tip.x-sectionAxis-8 {
			p.text(wordsClass(d.Assumed), ends, tip.plus(-6, -6), words)
		} else {
			p.text(wordsClass(d.Assumed), starts, tip.plus(8, 0), words)
		}
		p.tap(d.Field, changeDim("diameter ", &d), box{8, line - 36, sectionRight, line - 36 + tapSize})
		line += tapSize
	}
	if v.Width.Words == "" {
		return
	}
	x := edge.x1 + 24
	p.line("th", point{edge.x1 + 3, edge.y0}, point{x + 4, edge.y0})
	p.line("th", point{edge.x1 + 3, edge.y1}, point{x + 4, edge.y1})
	p.dimension(point{x, edge.y0}, point{x, edge.y1})
	half := textWidth(v.Width.Words, TextSize) / 2
	at := point{x, max(edge.centre().y, half+34)}
	p.upright(at, v.Width.Words, v.Width.Assumed)
	p.tap(v.Width.Field, changeDim("width ", &v.Width), around(point{edge.x1 + 1 + tapSize/2, at.y}, tapSize, max(tapSize, 2*half)))
}

// changeDim names what a tap on a dimension is for.
func changeDim(name string, d *Dim) string {
	return "change " + name + assumedWords(d.Words, d.Assumed)
}
