package bench

import (
	"math"
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

// Turned is one wheel as the job has it: as it was measured and came, with the cuts
// whose figures are given.
type Turned struct {
	DiameterMM float64 // after cuts
	WidthMM    float64 // 0 where it isn't measured
	Holes      []Round
	bands      []band
}

// Round is a hole that is there, or will be once the cuts are made.
type Round struct {
	At         clock.Vec // from the shaft, mm
	DiameterMM float64
}

// band is what is turned off one face between two radii; a bevel counts at its deepest.
type band struct {
	outer                 bool
	fromMM, toMM, depthMM float64
}

// ReadTurned reads a side's wheel. What is wrong with a figure is the lightening's to
// say.
func ReadTurned(r *form.Reader, side string) Turned {
	q := form.Read(r.Form)
	w := Turned{DiameterMM: WheelMM(q)}
	for _, of := range [...]string{Sides[0], Sides[1], side} { // its own last
		if v, ok := q.Number(form.WheelWidth, of); ok {
			w.WidthMM = v
		}
	}
	if v, ok := q.Number(form.WheelDiameter, side); ok {
		w.DiameterMM = v
	}
	ends := ReadEnds(q)
	for _, group := range [...]string{"made", "cut"} {
		for _, key := range q.Form.Rows(group) {
			if on := q.Word(form.CutWheel, group, key); on == "both" || on == side {
				w.cut(q, ends, group, key)
			}
		}
	}
	return w
}

func (w *Turned) cut(r *form.Reader, ends Ends, group, key string) {
	kind := r.Word(form.MadeKind, key)
	if group == "cut" {
		kind = r.Word(form.CutKind, key)
	}
	depth, _ := r.Number(form.CutDepth, group, key)
	outer := r.Word(form.CutSide, group, key) == "outer"
	switch kind {
	case "rim":
		if v, ok := r.Number(form.CutRim, key); ok {
			w.DiameterMM = math.Min(w.DiameterMM, v)
		}
	case "face":
		w.bands = append(w.bands, band{outer, 0, w.DiameterMM, depth})
	case "holes", "blind":
		w.ring(r, ends, group, key)
	default:
		from, _ := r.Number(form.CutFrom, group, key)
		to, _ := r.Number(form.CutTo, group, key)
		w.bands = append(w.bands, band{outer, from / 2, to / 2, depth})
	}
}

func (w *Turned) ring(r *form.Reader, ends Ends, group, key string) {
	number, ok := r.Number(form.CutHoles, group, key)
	circle, ok2 := r.Number(form.CutCircle, group, key)
	drill, ok3 := r.Number(form.CutDrill, group, key)
	if !ok || !ok2 || !ok3 {
		return
	}
	standIn := FirstHour(int(number), circle/2, drill, r.Default(form.Throw), CrankpinMM(r))
	first := ends.Hour(r.Or(ends.Hour(standIn), form.CutFirst, group, key))
	for n := range int(number) {
		w.Holes = append(w.Holes, Round{clock.Polar(circle/2, first+12*float64(n)/math.Floor(number)), drill})
	}
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
	edges := []float64{fromMM, toMM}
	for _, b := range w.bands {
		for _, r := range [...]float64{b.fromMM, b.toMM} {
			if r > fromMM && r < toMM {
				edges = append(edges, r)
			}
		}
	}
	sort.SliceStable(edges, func(i, j int) bool { return edges[i] < edges[j] })
	least, most = math.Inf(1), math.Inf(-1)
	for i := 1; i < len(edges); i++ {
		t := w.thickAt((edges[i-1] + edges[i]) / 2)
		least, most = math.Min(least, t), math.Max(most, t)
	}
	return least, most
}

func (w *Turned) thickAt(radiusMM float64) float64 {
	var off [2]float64
	for _, b := range w.bands {
		side := 0
		if b.outer {
			side = 1
		}
		if b.fromMM <= radiusMM && radiusMM <= b.toMM {
			off[side] = math.Max(off[side], b.depthMM)
		}
	}
	return math.Max(0, w.WidthMM-off[0]-off[1])
}
