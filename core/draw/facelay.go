package draw

import "math"

// lineStep is the distance between the baselines of a label's lines.
const lineStep = 21

// boldWidth is how much wider the heavier text runs.
const boldWidth = 1.09

// block is a label of up to three lines, centred in its box.
type block struct {
	lines [3]string
	n     int
	box   box
}

// size returns the least box the label needs, as width and height.
func (k *block) size() (w, h float64) {
	for _, s := range k.lines[:k.n] {
		w = max(w, textWidth(s, TextSize*boldWidth))
	}
	return w, lineStep * float64(k.n)
}

func (p *pen) block(class string, k *block) {
	x := k.box.centre().x
	for i, s := range k.lines[:k.n] {
		p.text(class, middle, point{x, k.box.y0 + 16 + lineStep*float64(i)}, s)
	}
}

// Size of a high spot's triangle.
const (
	spotHalf = 10.5
	spotTall = 18
	spotStep = spotTall + 5
)

type faceSpot struct {
	HighSpot
	unknown bool
	base    float64 // radius of the triangle's foot: the shaft, or further out where spots would lie on one another
	label   block
}

// body is the disc that the triangle covers.
func (s *faceSpot) body() disc {
	if s.unknown {
		return disc{point{FaceCentreX, FaceCentreY}, faceShaft}
	}
	return disc{onFace(s.base+7, s.Hour), 11.4}
}

type faceMark struct {
	Mark
	shift  float64 // hours the glyph stands off its point, where another is in the way
	tilt   float64 // degrees a strike leans over about its point, for the same reason
	tail   point   // outer end of the glyph, where its leader starts
	leads  bool
	placed bool // label has its place
	body   [3]disc
	label  block
}

type faceLayout struct {
	spots  [maxMarks]faceSpot
	nSpots int
	marks  [maxMarks]faceMark
	nMarks int
}

func layFace(v FaceView) (l faceLayout) {
	for _, s := range v.High {
		unknown := !(s.HalfSector < 6)
		if l.nSpots < maxMarks && (unknown || finite(s.Hour)) {
			l.spots[l.nSpots] = faceSpot{HighSpot: s, unknown: unknown, base: faceShaft}
			l.nSpots++
		}
	}
	for _, m := range v.Moves {
		if l.nMarks < maxMarks && finite(m.Hour) && m.Kind <= Spread {
			l.marks[l.nMarks] = faceMark{Mark: m}
			l.nMarks++
		}
	}
	for i := range l.spots[:l.nSpots] {
		l.stack(i)
	}
	for i := range l.spots[:l.nSpots] {
		l.labelSpot(i)
	}
	for i := range l.marks[:l.nMarks] {
		l.stand(i)
	}
	l.labelMarks()
	return l
}

// stack sets spot i on the shaft, or on the spots that are there already.
func (l *faceLayout) stack(i int) {
	s := &l.spots[i]
	for level := 0; level < 3; level++ {
		s.base = faceShaft + spotStep*float64(level)
		free := true
		for j := range l.spots[:i] {
			free = free && (s.unknown || l.spots[j].unknown || !s.body().hits(l.spots[j].body()))
		}
		if free {
			return
		}
	}
}

// labelSpot puts the letter of spot i, with its run-out where there is room,
// beside its triangle and clear of everything else inside the numerals.
func (l *faceLayout) labelSpot(i int) {
	s := &l.spots[i]
	forms := [...]block{
		{lines: [3]string{s.Letter + " " + s.RunOut}, n: 1},
		{lines: [3]string{s.Letter, s.RunOut}, n: 2},
		{lines: [3]string{s.Letter}, n: 1},
	}
	tries := forms[:]
	if s.RunOut == "" {
		tries = forms[2:]
	}
	for _, form := range tries {
		if l.besideSpot(i, &form) {
			s.label = form
			return
		}
	}
}

// besideSpot looks for the place nearest to the triangle that holds a label,
// beyond its point rather than beside it.
func (l *faceLayout) besideSpot(i int, k *block) bool {
	w, h := k.size()
	body := l.spots[i].body()
	best := math.Inf(1)
	near, far := disc{body.c, body.r + 1}, disc{body.c, body.r + 9}
	for turn := 0; turn < 24; turn++ {
		// 0, 1, −1, 2, −2 … twenty-fourths of a turn from outwards.
		off := float64((turn+1)/2) * float64(1-turn%2*2)
		s, c := math.Sincos(l.spots[i].Hour*math.Pi/6 + off*math.Pi/12)
		worse := math.Abs(off)
		for d := body.r + h/2; d+worse < best; d += 3 {
			b := around(body.c.plus(d*s, -d*c), w, h)
			if b.clear(far) {
				break
			}
			if b.clear(near) && l.freeInside(b, i) {
				k.box, best = b, d+worse
			}
		}
	}
	return !math.IsInf(best, 1)
}

func (l *faceLayout) freeInside(b box, of int) bool {
	c := point{FaceCentreX, FaceCentreY}
	if !b.within(disc{c, faceFree}) || !b.clear(disc{c, faceShaft + 2}) || !b.clear(disc{onFace(faceThrow, 0), facePin + 2}) {
		return false
	}
	for j := range l.spots[:l.nSpots] {
		if !b.clear(l.spots[j].body()) || j < of && b.hits(l.spots[j].label.box) {
			return false
		}
	}
	return true
}

// stand places glyph i so that it covers no earlier one. The point of a strike
// stays on its hour and the wedge leans over; a squeeze or spread moves along
// the rim, and a leader shows its hour.
func (l *faceLayout) stand(i int) {
	m := &l.marks[i]
	for step := 0; step < 30; step++ {
		for _, sign := range [2]float64{1, -1} {
			if m.Kind == Strike {
				m.tilt = sign * 4 * float64(min(step, 16))
			} else {
				m.shift = sign * 0.1 * float64(step)
			}
			m.cover()
			if l.freeRim(i) {
				return
			}
		}
	}
}

// cover works out the discs that the glyph covers and the end of its leader.
func (m *faceMark) cover() {
	foot := onFace(FaceRim, m.Hour+m.shift)
	s, c := math.Sincos(m.Hour*math.Pi/6 + m.shift*math.Pi/6 + m.tilt*math.Pi/180)
	out := func(along, across float64) point { return foot.plus(along*s+across*c, -along*c+across*s) }
	if m.Kind == Strike {
		m.body = [3]disc{{out(9, 0), 5}, {out(20, 0), 10}, {out(30, 0), 12}}
		m.tail = out(38, 0)
		return
	}
	m.body = [3]disc{{out(6, -13), 15}, {out(6, 0), 14}, {out(6, 13), 15}}
	m.tail = out(24, 0)
}

func (l *faceLayout) freeRim(i int) bool {
	m := &l.marks[i]
	for j := range l.marks[:i] {
		for _, a := range m.body {
			for _, b := range l.marks[j].body {
				if a.r > 5 && b.r > 5 && a.hits(b) {
					return false
				}
			}
		}
	}
	return true
}

// faceFrame is where the labels of moves may stand; faceKeep is the wheel, which
// they keep off.
var (
	faceFrame = box{2, 2, Width - 2, FaceHeight - 24}
	faceKeep  = disc{point{FaceCentreX, FaceCentreY}, FaceRim + 3}
)

// labelMarks puts the words of all moves outside the rim, each as near to its
// glyph as the others leave room for, starting with whichever end of the list
// serves them better.
func (l *faceLayout) labelMarks() {
	forwards := *l
	cost := 0.0
	for i := 0; i < l.nMarks; i++ {
		cost += forwards.labelMark(i)
	}
	if l.nMarks < 2 {
		*l = forwards
		return
	}
	for i := l.nMarks - 1; i >= 0; i-- {
		cost -= l.labelMark(i)
	}
	if !(cost > 0) {
		*l = forwards
	}
}

// labelMark puts the words of move i beside its glyph and returns the cost of
// the place.
func (l *faceLayout) labelMark(i int) float64 {
	m := &l.marks[i]
	best := math.Inf(1)
	for _, form := range m.forms() {
		if form.n == 0 {
			continue
		}
		if b, cost := l.besideMark(i, &form); cost < best {
			best, m.label = cost, form
			m.label.box = b
		}
	}
	m.placed = true
	m.leads = m.label.box.gap(m.tail) > 8*8
	return min(best, 1e6)
}

// forms returns the words of a move set in three, two and one lines.
func (m *faceMark) forms() [3]block {
	name := m.Kind.word()
	forms := [3]block{
		{lines: [3]string{name, m.Amount}, n: 2},
		{lines: [3]string{name + " " + m.Amount}, n: 1},
	}
	if m.Kind == Strike {
		side := m.Wheel.Name()
		forms = [3]block{
			{lines: [3]string{name, side, m.Amount}, n: 3},
			{lines: [3]string{name + " " + side, m.Amount}, n: 2},
			{lines: [3]string{name + " " + side + " " + m.Amount}, n: 1},
		}
	}
	if m.Amount == "" {
		for i := range forms {
			forms[i].n = min(forms[i].n, max(1, forms[i].n-1))
		}
	}
	return forms
}

// besideMark looks for the place nearest to glyph i that holds a label, narrow
// rather than wide: round the wheel as near as it may go, then along the frame.
func (l *faceLayout) besideMark(i int, k *block) (at box, cost float64) {
	w, h := k.size()
	m := &l.marks[i]
	cost = math.Inf(1)
	try := func(b box) {
		if c := b.gap(m.tail) + 2*w; c < cost && b.clear(faceKeep) && l.freeOutside(b, i) {
			at, cost = b, c
		}
	}
	for turn := -90.0; turn <= 90; turn += 6 {
		s, c := math.Sincos(m.Hour*math.Pi/6 + turn*math.Pi/180)
		d := touching(math.Abs(s), math.Abs(c), w/2, h/2, faceKeep.r+1)
		try(around(point{FaceCentreX + d*s, FaceCentreY - d*c}, w, h).inside(faceFrame))
	}
	f := faceFrame
	for x := f.x0; x+w <= f.x1; x += 9 {
		try(box{x, f.y0, x + w, f.y0 + h})
		try(box{x, f.y1 - h, x + w, f.y1})
	}
	for y := f.y0; y+h <= f.y1; y += 9 {
		try(box{f.x0, y, f.x0 + w, y + h})
		try(box{f.x1 - w, y, f.x1, y + h})
	}
	return at, cost
}

// touching returns how far along (s, c), both positive, a box of the given half
// sizes stands when it just touches the outside of a circle of radius r.
func touching(s, c, halfW, halfH, r float64) float64 {
	if d := (r + halfH) / c; d*s <= halfW {
		return d
	}
	if d := (r + halfW) / s; d*c <= halfH {
		return d
	}
	b := halfW*s + halfH*c
	return b + math.Sqrt(max(0, b*b-halfW*halfW-halfH*halfH+r*r))
}

func (l *faceLayout) freeOutside(b box, of int) bool {
	tail := l.marks[of].tail
	end := b.nearest(tail)
	for j := range l.marks[:l.nMarks] {
		m := &l.marks[j]
		for _, d := range m.body {
			if !b.clear(d) || j != of && d.cut(tail, end) {
				return false
			}
		}
		if m.placed && j != of && (b.hits(m.label.box) || m.label.box.cut(tail, end) || m.leads && b.cut(m.tail, m.label.box.nearest(m.tail))) {
			return false
		}
	}
	return true
}
