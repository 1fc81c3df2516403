package draw

import (
	"math"
	"strings"
)

// lineStep is the distance between the baselines of a label's lines.
const lineStep = 21

// labelsApart is what labels side by side need so as not to read as one.
const labelsApart = 8

// boldWidth is how much wider the heavier text runs.
const boldWidth = 1.09

// block is a label of up to three lines, centred in its box.
type block struct {
	lines [3]string
	n     int
	poor  float64 // how much longer a leader would be as bad as these words
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
	former  bool    // of the round before
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
	stands bool
	shift  float64  // hours the glyph stands off its point, where another is in the way
	tilt   float64  // degrees a strike leans over about its point, for the same reason
	tails  [3]point // of the glyph, where a leader may start
	body   [3]disc
	forms  [5]block
	ways   [31]point    // out of the face, of length 1, on which a label may stand: every 6° about its hour
	places [4 * 5]place // the best of each quarter of the picture and form, cheapest first
	n      int          // of places
	at     place
	label  block // none where n is 0
}

// place is one where the label of a move may stand.
type place struct {
	box  box
	form int
	tail point // where the leader starts and ends
	end  point
	cost float64
}

func (a *place) leads() bool { return a.tail.gap(a.end) > 8*8 }

type faceLayout struct {
	spots   [maxSpots]faceSpot
	nSpots  int
	marks   [maxMoves]faceMark
	longest float64 // that a leader may be
	nMarks  int
}

func (l *faceLayout) lay(v FaceView) {
	for _, s := range v.High {
		l.take(faceSpot{HighSpot: s, unknown: !(s.HalfSector < 6), base: faceShaft})
	}
	for _, s := range v.Before {
		if s.HalfSector < 6 {
			s.HalfSector = 0
			l.take(faceSpot{HighSpot: s, former: true, base: faceShaft})
		}
	}
	for _, m := range v.Moves {
		if l.nMarks < maxMoves && finite(m.Hour) && m.Kind <= Spread {
			l.marks[l.nMarks].Mark = m
			l.nMarks++
		}
	}
	for i := range l.spots[:l.nSpots] {
		l.stack(i)
	}
	for i := range l.spots[:l.nSpots] {
		l.labelSpot(i)
	}
	// Strikes first: a squeeze or spread can stand off its hour, a strike can't.
	for i := range l.marks[:l.nMarks] {
		if l.marks[i].Kind == Strike {
			l.placeGlyph(i)
		}
	}
	for i := range l.marks[:l.nMarks] {
		if l.marks[i].Kind != Strike {
			l.placeGlyph(i)
		}
	}
	// Shorter words and long leaders only where others find no good places.
	if l.longest = 130; l.labelMarks(false) > 90*90*float64(l.nMarks) {
		l.longest = Width
		l.labelMarks(true)
	}
}

// take adds a high spot where there is room for one more.
func (l *faceLayout) take(s faceSpot) {
	if l.nSpots < maxSpots && (s.unknown || finite(s.Hour)) {
		l.spots[l.nSpots] = s
		l.nSpots++
	}
}

// labelMarks puts the words of the moves, shorter ones too or not, where they
// cost least together, and returns the cost.
func (l *faceLayout) labelMarks(shorter bool) float64 {
	for i := range l.marks[:l.nMarks] {
		l.findPlaces(&l.marks[i], shorter)
	}
	c := chooser{l: l, best: math.Inf(1), left: 4000}
	c.choose(0, 0)
	return c.best
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
		other := l.spots[j].label.box
		other.x0, other.x1 = other.x0-labelsApart, other.x1+labelsApart
		if !b.clear(l.spots[j].body()) || j < of && b.hits(other) {
			return false
		}
	}
	return true
}

// stand places glyph i so that it covers none that stands already. The point of a strike
// stays on its hour and the wedge leans over; a squeeze or spread moves along
// the rim, and a leader shows its hour.
func (l *faceLayout) placeGlyph(i int) {
	m := &l.marks[i]
	for step := 0; step < 30; step++ {
		for _, sign := range [2]float64{1, -1} {
			if m.Kind == Strike {
				m.tilt = sign * 4 * float64(min(step, 18))
			} else {
				m.shift = sign * 0.1 * float64(step)
			}
			m.cover()
			if l.freeRim(i) {
				m.stands = true
				return
			}
		}
	}
	m.stands = true
}

// cover works out the discs that the glyph covers and where its leader starts.
func (m *faceMark) cover() {
	foot := onFace(FaceRim, m.Hour+m.shift)
	s, c := math.Sincos(m.Hour*math.Pi/6 + m.shift*math.Pi/6 + m.tilt*math.Pi/180)
	out := func(along, across float64) point { return foot.plus(along*s+across*c, -along*c+across*s) }
	if m.Kind == Strike {
		m.body = [3]disc{{out(9, 0), 6}, {out(21, 0), 12}, {out(30, 0), 12.5}}
		m.tails = [3]point{out(40, 0), out(24, -14), out(24, 14)}
		return
	}
	m.body = [3]disc{{out(6, -13), 15}, {out(6, 0), 14}, {out(6, 13), 15}}
	m.tails = [3]point{out(24, 0), out(14, -25), out(14, 25)}
}

func (l *faceLayout) freeRim(i int) bool {
	m := &l.marks[i]
	for j := range l.marks[:l.nMarks] {
		if j == i || !l.marks[j].stands {
			continue
		}
		for k, a := range m.body {
			for n, b := range l.marks[j].body {
				// The points of two strikes may share their place.
				if k+n > 0 && a.hits(b) {
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
	faceFrame = box{2, 2, Width - 2, FaceHeight - faceCaption}
	faceKeep  = disc{point{FaceCentreX, FaceCentreY}, FaceRim + 3}
)

// wordings returns the words of a move set in three, two and one lines, and last
// without the kind of move, which its glyph says too.
func (m *faceMark) wordings() [5]block {
	name := m.Kind.word()
	figure, unit := m.Amount, ""
	if i := strings.LastIndexByte(figure, ' '); i > 0 {
		figure, unit = figure[:i], figure[i+1:]
	}
	if m.Kind != Strike {
		return [5]block{
			{lines: [3]string{name, m.Amount}, n: lines(2, m.Amount)},
			{lines: [3]string{name + " " + m.Amount}, n: 1},
			{lines: [3]string{name, figure, unit}, n: lines(3, unit), poor: 20},
			{lines: [3]string{m.Amount}, n: lines(1, m.Amount), poor: 40},
			{lines: [3]string{figure, unit}, n: lines(2, unit), poor: 60},
		}
	}
	side := m.Wheel.Name()
	return [5]block{
		{lines: [3]string{name, side, m.Amount}, n: lines(3, m.Amount)},
		{lines: [3]string{name + " " + side, m.Amount}, n: lines(2, m.Amount)},
		{lines: [3]string{name + " " + side + " " + m.Amount}, n: 1},
		{lines: [3]string{side, m.Amount}, n: lines(2, m.Amount), poor: 40},
		{lines: [3]string{side, figure, unit}, n: lines(3, unit), poor: 60},
	}
}

// lines returns n, less one where the last line is empty.
func lines(n int, last string) int {
	if last == "" {
		return n - 1
	}
	return n
}

// findPlaces lists where the label of a move may stand outside the rim, near its
// glyph rather than far and narrow rather than wide: round the wheel as close as
// it may go, and along the frame.
func (l *faceLayout) findPlaces(m *faceMark, shorter bool) {
	m.forms, m.n = m.wordings(), 0
	for i := range m.ways {
		s, c := math.Sincos(m.Hour*math.Pi/6 + float64(6*i-90)*math.Pi/180)
		m.ways[i] = point{s, -c}
	}
	for k := range m.places {
		m.places[k].cost = math.Inf(1)
	}
	for k := range m.forms {
		if f := &m.forms[k]; f.n > 0 && (shorter || f.poor == 0) {
			l.findPlacesOf(m, k)
		}
	}
	for _, c := range m.places {
		if math.IsInf(c.cost, 1) {
			continue
		}
		at := m.n
		for ; at > 0 && m.places[at-1].cost > c.cost; at-- {
			m.places[at] = m.places[at-1]
		}
		m.places[at] = c
		m.n++
	}
}

func (l *faceLayout) findPlacesOf(m *faceMark, form int) {
	w, h := m.forms[form].size()
	for _, way := range m.ways {
		d := touching(math.Abs(way.x), math.Abs(way.y), w/2, h/2, faceKeep.r+1)
		l.offer(m, form, around(point{FaceCentreX + d*way.x, FaceCentreY + d*way.y}, w, h).inside(faceFrame))
	}
	f := faceFrame
	for x := f.x0; x+w <= f.x1; x += 12 {
		l.offer(m, form, box{x, f.y0, x + w, f.y0 + h})
		l.offer(m, form, box{x, f.y1 - h, x + w, f.y1})
	}
	for y := f.y0; y+h <= f.y1; y += 12 {
		l.offer(m, form, box{f.x0, y, f.x0 + w, y + h})
		l.offer(m, form, box{f.x1 - w, y, f.x1, y + h})
	}
}

// offer keeps a box if it is the best yet of its quarter of the picture.
func (l *faceLayout) offer(m *faceMark, form int, b box) {
	near := b.gap(m.tails[0])
	if near > l.longest*l.longest || !b.clear(faceKeep) {
		return
	}
	quarter := 0
	if b.x0+b.x1 > 2*FaceCentreX {
		quarter = 1
	}
	if b.y0+b.y1 > 2*FaceCentreY {
		quarter += 2
	}
	kept := &m.places[4*form+quarter]
	wide, poor := b.x1-b.x0, m.forms[form].poor
	worse := 2*wide + poor*poor
	if near+worse-40*40 >= kept.cost {
		return
	}
	for j := range l.marks[:l.nMarks] {
		for _, d := range l.marks[j].body {
			if !b.clear(d) {
				return
			}
		}
	}
	for _, tail := range m.tails {
		end := b.nearest(tail)
		if tail.gap(end)+worse >= kept.cost {
			continue
		}
		if l.leaderFree(m, tail, end) {
			*kept = place{b, form, tail, end, tail.gap(end) + worse}
			continue
		}
		for _, end := range [...]point{{b.x0 + 4, b.y0}, {b.x1 - 4, b.y0}, {b.x0 + 4, b.y1}, {b.x1 - 4, b.y1}} {
			if cost := tail.gap(end) + worse; cost < kept.cost && l.leaderFree(m, tail, end) {
				*kept = place{b, form, tail, end, cost}
			}
		}
	}
}

// leaderFree tells whether a leader of m keeps off the wheel and other glyphs.
func (l *faceLayout) leaderFree(m *faceMark, from, to point) bool {
	if faceKeep.cut(from, to) {
		return false
	}
	for j := range l.marks[:l.nMarks] {
		for _, d := range l.marks[j].body {
			if &l.marks[j] != m && d.cut(from, to) {
				return false
			}
		}
	}
	return true
}

// chooser looks for the set of places that costs least and in which no label or
// leader is in another's way.
type chooser struct {
	l      *faceLayout
	best   float64
	left   int           // tries left: many marks must not take for ever
	chosen [maxMoves]int // which of each mark's places, or nowhere
}

const nowhere = -1

// place is the place chosen for a mark; nil for nowhere.
func (c *chooser) place(i int) *place {
	if c.chosen[i] == nowhere {
		return nil
	}
	return &c.l.marks[i].places[c.chosen[i]]
}

// noLabel is the cost of leaving a label out; the description has it still.
const noLabel = 1e6

func (c *chooser) choose(i int, cost float64) {
	if cost >= c.best || c.left == 0 {
		return
	}
	if i == c.l.nMarks {
		c.best = cost
		c.keep()
		return
	}
	c.left--
	m := &c.l.marks[i]
	for k := range m.places[:m.n] {
		if a := &m.places[k]; c.fits(a, i) {
			c.chosen[i] = k
			c.choose(i+1, cost+a.cost)
		}
	}
	c.chosen[i] = nowhere
	c.choose(i+1, cost+noLabel)
}

func (c *chooser) fits(a *place, i int) bool {
	for j := range i {
		b := c.place(j)
		if b == nil {
			continue
		}
		if a.box.hits(b.box) || a.leads() && b.box.cut(a.tail, a.end) || b.leads() && a.box.cut(b.tail, b.end) {
			return false
		}
	}
	return true
}

func (c *chooser) keep() {
	for i := range c.l.marks[:c.l.nMarks] {
		m := &c.l.marks[i]
		m.label.n = 0
		if a := c.place(i); a != nil {
			m.at, m.label = *a, m.forms[a.form]
			m.label.box = a.box
		}
	}
}
