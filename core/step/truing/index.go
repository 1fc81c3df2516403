package truing

import (
	"math"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// indexed is how far on from the first pin another was measured to stand, and should, in
// degrees clockwise as the hours run.
type indexed struct {
	crank.Figure
	nominal float64
	joint   int
}

// index says beside each pin's fields what the angles between the pins come to, as they
// were measured. They are the wheels' own: no bumping of a joint turns one against the other.
func (a answers) index(p *pass, r *form.Reader) {
	for _, x := range p.indexed(r) {
		a.Say("pin."+p.throws.keys[x.joint]+".index", p.indexJudged(&x, r))
	}
}

// indexLines are index for the sheet.
func (p *pass) indexLines(r *form.Reader) (lines []string) {
	for _, x := range p.indexed(r) {
		lines = append(lines, p.indexJudged(&x, r))
	}
	return lines
}

// indexed reads the angles between the pins as they were measured.
func (p *pass) indexed(r *form.Reader) (all []indexed) {
	for j, key := range p.throws.keys {
		if j == 0 || r.Blank(form.PinAngle, key) {
			continue
		}
		x := indexed{joint: j, nominal: r.Default(form.PinAngle, key)}
		if angle, ok := p.measuredAngle(r, &x, key); ok {
			x.Figure = angle
			all = append(all, x)
		}
	}
	return all
}

// indexJudged says where a pin stands, and what of that.
func (p *pass) indexJudged(x *indexed, r *form.Reader) string {
	allowed, judged := r.Number(form.IndexAllowed)
	if !judged {
		return indexAndWhat(p.indexWords(x), giveIndexAllowed)
	}
	return indexAndWhat(p.indexWords(x), judgedIndex(x, allowed, r.Word(form.PinJournal, p.throws.keys[x.joint])))
}

// measuredAngle is a pin's angle by the dividing head, else by heights, degrees.
func (p *pass) measuredAngle(r *form.Reader, x *indexed, key string) (crank.Figure, bool) {
	if v, ok := r.Number(form.PinMeasured, key); ok {
		// Two settings of the head, each to the nearest it tells apart.
		plus := 1.96 * r.Default(form.IndexHead) * math.Sqrt2 / math.Sqrt(12)
		return crank.Figure{Value: x.nominal + math.Remainder(v-x.nominal, turnDegrees), HalfWidth95: plus}, true
	}
	pin, given := r.Number(form.PinHeight, key)
	first, ok := r.Number(form.IndexFirst)
	axis, ok2 := r.Number(form.IndexAxis)
	if !given || !ok || !ok2 {
		return crank.Figure{}, false
	}
	joint := &p.throws.Joints[x.joint]
	l := crank.Levels{
		Axis: axis, First: first, Pin: pin, FirstThrow: p.throws.Joints[0].Throw, PinThrow: joint.Throw, Step: r.Default(form.IndexStep),
	}
	f, err := l.Index(x.nominal / degreesPerRadian)
	if e, fault := err.(*crank.LevelError); fault {
		id, keys := form.PinHeight, []string{key}
		if e.First {
			id, keys = form.IndexFirst, nil
		}
		r.Complain(levelWords(e), id, keys...)
		return crank.Figure{}, false
	}
	return crank.Figure{Value: f.Value * degreesPerRadian, HalfWidth95: f.HalfWidth95 * degreesPerRadian}, true
}

const degreesPerRadian = 180 / math.Pi

func levelWords(e *crank.LevelError) string {
	above, throw := unit.Format(math.Abs(e.Above), unit.MM, 0.01), unit.Format(e.Throw, unit.MM, 0.1)
	if e.Dull {
		return levelDull(above, throw)
	}
	return levelBeyond(above, throw)
}

// indexWords say where a pin stands, and how far that is out, as an angle and at the pin.
func (p *pass) indexWords(x *indexed) string {
	deg := func(v float64) string { return unit.Figures(v, unit.Degree, indexStep) }
	off := x.Value - x.nominal
	stands := bench.PlusMinus(deg(x.Value), unit.Format(x.HalfWidth95, unit.Degree, indexStep))
	name := upperFirst(pinName(x.joint))
	if math.Abs(off) <= x.HalfWidth95 {
		return indexAsMeant(name, stands, deg(x.nominal))
	}
	way := pastNominal
	if off < 0 {
		way = shortOfNominal
	}
	at := math.Abs(off) / degreesPerRadian * p.throws.Joints[x.joint].Throw
	return way(name, stands, unit.Format(math.Abs(off), unit.Degree, indexStep), deg(x.nominal), p.Amount(at))
}

const indexStep = 0.01 // degrees

// judgedIndex holds an error of index against what is allowed, by the decision rule of ISO
// 14253-1; what mends it hangs on whether the journal is pressed.
func judgedIndex(x *indexed, allowed float64, journal string) string {
	off, limit := math.Abs(x.Value-x.nominal), unit.Format(allowed, unit.Degree, 0)
	switch {
	case off+x.HalfWidth95 <= allowed:
		return indexInside(limit)
	case off-x.HalfWidth95 <= allowed:
		return indexTooClose(limit)
	case journal == "pressed":
		return indexPressed(limit)
	case journal == "solid":
		return indexSolid(limit)
	}
	return indexWhich(limit)
}

// indexValues fills in the angles between pins as measured.
func (a answers) indexValues(all []indexed) {
	for i, x := range all {
		at := "index/" + strconv.Itoa(i) + "/"
		a.Number(at+"pin", float64(x.joint+1))
		a.Number(at+"angle_deg", x.Value)
		a.Number(at+"plus_deg", x.HalfWidth95)
		a.Number(at+"error_deg", x.Value-x.nominal)
	}
}
