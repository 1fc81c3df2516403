package bench

import (
	"math"
	"slices"
	"sort"

	"pintwelve/core/clock"
	"pintwelve/core/form"
)

// WheelMM is the wheels' diameter, as far as the job knows it, for every step: as
// measured for truing or for lightening, else what stands in for both.
func WheelMM(r *form.Reader) float64 {
	if v, ok := r.Number(form.Rim); ok {
		return v
	}
	for _, side := range Sides {
		if v, ok := r.Number(form.WheelDiameter, side); ok {
			return v
		}
	}
	return math.Max(190, 4.5*r.Default(form.Throw))
}

// OfWheel is a figure of a side's wheel as far as the job knows it: as measured, as the
// other wheel measures, or as another step has it. False where it isn't known.
func OfWheel(r *form.Reader, id form.ID, side string) (mm float64, ok bool) {
	either := [...]string{side, Sides[0], Sides[1]}
	for _, of := range either {
		if mm, ok = r.Number(id, of); ok {
			return mm, true
		}
	}
	switch id {
	case form.WheelDiameter:
		return WheelMM(r), true
	case form.WheelBoss:
		return r.Number(form.ZoneBoss)
	case form.WheelBore:
		for _, of := range either {
			if mm = seatMM(r, of+"shaft", form.JointEye); mm > 0 {
				break
			}
		}
	}
	return mm, mm > 0
}

// Turned is one wheel as the job has it: as it was measured and came, with the cuts
// whose figures are given.
type Turned struct {
	DiameterMM float64 // after cuts
	WidthMM    float64 // 0 where it isn't measured
	BoreMM     float64 // for the shaft, or what stands in
	Bored      bool    // that is measured
	Holes      []Round
	Lacking    int // the first of its cuts to make that lacks a figure, counted from 1; 0 for none
	bands      []band
}

// Round is a hole that is there, or will be once the cuts are made.
type Round struct {
	At         clock.Vec // from the shaft, mm
	DiameterMM float64
}

// band is what is turned off one face between two radii, a bevel up to its depth.
type band struct {
	outer, bevel          bool
	fromMM, toMM, depthMM float64
}

// ReadTurned reads a side's wheel. What is wrong with a figure is the lightening's to
// say.
func ReadTurned(r *form.Reader, side string) Turned {
	q := r.Apart()
	w := Turned{}
	w.DiameterMM, _ = OfWheel(q, form.WheelDiameter, side)
	w.WidthMM, _ = OfWheel(q, form.WheelWidth, side)
	if w.BoreMM, w.Bored = OfWheel(q, form.WheelBore, side); !w.Bored {
		w.BoreMM = q.Default(form.WheelBore, side)
	}
	ends := ReadEnds(q)
	for _, group := range [...]string{"made", "cut"} {
		for n, key := range q.Rows(group) {
			if on := q.Word(form.CutWheel, group, key); on != "both" && on != side {
				continue
			}
			if whole := w.cut(q, ends, group, key); !whole && group == "cut" && w.Lacking == 0 {
				w.Lacking = n + 1
			}
		}
	}
	return w
}

// cut counts a cut, as far as its figures are given; false where one is wanting.
func (w *Turned) cut(r *form.Reader, ends Ends, group, key string) (whole bool) {
	kind := r.Word(form.MadeKind, key)
	if group == "cut" {
		kind = r.Word(form.CutKind, key)
	}
	depth, deep := r.Number(form.CutDepth, group, key)
	outer := r.Word(form.CutSide, group, key) == "outer"
	switch kind {
	case "rim":
		v, ok := r.Number(form.CutRim, key)
		if ok {
			w.DiameterMM = math.Min(w.DiameterMM, v)
		}
		return ok
	case "face":
		w.bands = append(w.bands, band{outer, false, 0, w.DiameterMM, depth})
		return deep
	case "holes", "blind":
		return w.ring(r, ends, group, key)
	}
	from, ok := r.Number(form.CutFrom, group, key)
	to, ok2 := r.Number(form.CutTo, group, key)
	w.bands = append(w.bands, band{outer, kind == "bevel", from / 2, to / 2, depth})
	return deep && ok && ok2
}

func (w *Turned) ring(r *form.Reader, ends Ends, group, key string) (whole bool) {
	number, ok := r.Number(form.CutHoles, group, key)
	circle, ok2 := r.Number(form.CutCircle, group, key)
	drill, ok3 := r.Number(form.CutDrill, group, key)
	if !ok || !ok2 || !ok3 {
		return false
	}
	standIn := FirstHour(int(number), circle/2, drill, r.Default(form.Throw), CrankpinMM(r))
	first := ends.Hour(r.Or(ends.Hour(standIn), form.CutFirst, group, key))
	for n := range int(number) {
		w.Holes = append(w.Holes, Round{clock.Polar(circle/2, first+12*float64(n)/math.Floor(number)), drill})
	}
	return true
}

// FirstHour stands in for the first hour of a ring of holes, seen from the left: 12, or
// where one there would run into the crankpin, half a pitch on, so that the pin stands
// between two.
func FirstHour(number int, pitchMM, drillMM, throwMM, pinMM float64) float64 {
	if number < 1 || math.Abs(pitchMM-throwMM) > (drillMM+pinMM)/2 {
		return 0
	}
	return 6 / float64(number)
}

// ThickMM is the least and the most metal between the faces from one radius to
// another; bosses don't count.
func (w *Turned) ThickMM(fromMM, toMM float64) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, radius := range w.stretches(fromMM, toMM) {
		l, m := w.thickAt(radius)
		least, most = math.Min(least, l), math.Max(most, m)
	}
	return least, most
}

// OuterFace is a wheel of which only the outer face is turned.
func (w *Turned) OuterFace() *Turned {
	face := &Turned{WidthMM: w.WidthMM}
	for _, b := range w.bands {
		if b.outer {
			face.bands = append(face.bands, b)
		}
	}
	return face
}

// HasEdge tells whether there is an edge of what is turned off, or of a bevel, between two radii.
func (w *Turned) HasEdge(fromMM, toMM float64) bool {
	wide := Turned{WidthMM: 1e6, bands: w.bands} // so that nothing goes through
	stretches := wide.stretches(fromMM, toMM)
	least, most := wide.thickAt(stretches[0])
	for _, radius := range stretches[1:] {
		if l, m := wide.thickAt(radius); l != least || m != most {
			return true
		}
	}
	return false
}

// stretches are the middles of what no band begins or ends in, from one radius to another.
func (w *Turned) stretches(fromMM, toMM float64) []float64 {
	edges := []float64{fromMM, toMM}
	for _, b := range w.bands {
		for _, r := range [...]float64{b.fromMM, b.toMM} {
			if r > fromMM && r < toMM {
				edges = append(edges, r)
			}
		}
	}
	sort.SliceStable(edges, func(i, j int) bool { return edges[i] < edges[j] })
	for i := 1; i < len(edges); i++ {
		edges[i-1] = (edges[i-1] + edges[i]) / 2
	}
	return edges[:len(edges)-1]
}

// thickAt is the least and the most at a radius: a bevel takes all its depth there, or none.
func (w *Turned) thickAt(radiusMM float64) (least, most float64) {
	var deepest, sure [2]float64
	for _, b := range w.bands {
		side := 0
		if b.outer {
			side = 1
		}
		if b.fromMM <= radiusMM && radiusMM <= b.toMM {
			deepest[side] = math.Max(deepest[side], b.depthMM)
			if !b.bevel {
				sure[side] = math.Max(sure[side], b.depthMM)
			}
		}
	}
	return math.Max(0, w.WidthMM-deepest[0]-deepest[1]), math.Max(0, w.WidthMM-sure[0]-sure[1])
}

// AsThick tells whether another wheel is as thick at every radius.
func (w *Turned) AsThick(as *Turned) bool {
	return w.WidthMM == as.WidthMM && slices.Equal(w.bands, as.bands)
}

// Place reads a place to keep off, a hole that is there among them; on the shaft it has
// no hour. False while it isn't whole.
func (e Ends) Place(r *form.Reader, key string) (Round, bool) {
	radius, ok := r.Number(form.KeepRadius, key)
	hour, ok2 := r.Number(form.KeepHour, key)
	across, ok3 := r.Number(form.KeepAcross, key)
	return Round{clock.Polar(radius, e.Hour(hour)), across}, ok && (ok2 || radius == 0) && ok3
}
