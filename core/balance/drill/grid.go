package drill

import (
	"math"
	"math/bits"
	"slices"

	"pintwelve/core/clock"
)

// row is one drill at one radius. Angles count in steps from the axis; bit j of
// a word is the place j steps off.
type row struct {
	bore  *bore
	rMM   float64
	one   span   // what one hole of it pulls, g·mm
	gap   int    // steps apart that two holes of the row must stand
	cw    uint64 // places free clockwise of the axis, the axis bit 0
	acw   uint64 // places free anticlockwise of it
	pairs uint64 // places where a pair fits; bit 0 the axis
}

// space is a task made ready to search.
type space struct {
	t        Task
	targetG  float64 // g·mm along the axis
	hour     float64 // of the axis
	bores    []bore
	rows     []row // outermost radius first, smallest drill first
	cos, sin []float64
	to       [2][]clock.Vec // where every step points, clockwise and anticlockwise
	inZone   [2][]bool
	reaches  []float64 // g·mm, the most of a symmetric plan of so many holes, as far as asked
}

// newSpace returns the grid of a task, or a *Fault.
func newSpace(t Task) (*space, error) {
	t = t.withDefaults()
	if err := t.check(); err != nil {
		return nil, err
	}
	t.ToleranceGMM = math.Max(t.ToleranceGMM, leastOfTheWhole*t.Remove.Len())
	s := &space{t: t, targetG: t.Remove.Len(), hour: t.Remove.Hour()}
	if t.heavyPlug() {
		s.hour = clock.Wrap(s.hour + 6)
	}
	if s.targetG <= t.ToleranceGMM {
		return s, nil
	}
	off := clock.Radians(clock.Apart(s.hour, t.Hour))
	if err := within(Direction, off, 0, t.HalfRad); err != nil {
		return nil, err
	}
	var needMM float64
	if s.bores, needMM = t.bores(); len(s.bores) == 0 {
		return nil, &Fault{Field: Depth, Got: needMM, Most: t.ThickMM - t.WallMM}
	}
	return s, s.layRows()
}

// reach returns the most of a symmetric plan of k holes, g·mm, or nothing.
func (s *space) reach(k int) float64 {
	for n := len(s.reaches); n <= k; n++ {
		most := 0.0
		for i := range s.rows {
			w := &s.rows[i]
			if pull := s.packed(w, n) * w.one.most; pull > most {
				most = pull
			}
		}
		s.reaches = append(s.reaches, most)
	}
	return s.reaches[k]
}

// mostGMM returns the most of any symmetric plan.
func (s *space) mostGMM() float64 {
	s.reach(s.t.MostHoles)
	return slices.Max(s.reaches[:s.t.MostHoles+1])
}

// layRows lays every drill on every radius.
func (s *space) layRows() error {
	s.layAngles()
	widest := 0.0
	clear := [2][]float64{make([]float64, len(s.cos)), make([]float64, len(s.cos))}
	s.rows = make([]row, 0, len(s.bores)*int((s.t.OutMM-s.t.InMM)/s.t.RadiusStepMM+1))
	for i := math.Floor(s.t.OutMM / s.t.RadiusStepMM); i*s.t.RadiusStepMM > s.t.InMM; i-- {
		r := i * s.t.RadiusStepMM
		most := math.Max(s.clearance(r, 0, clear[0]), s.clearance(r, 1, clear[1]))
		widest = math.Max(widest, 2*most)
		for b := range s.bores {
			if s.bores[b].dMM/2 > most+snugMM {
				continue
			}
			if at := s.bores[b].at(&s.t, r); at != nil {
				s.rows = append(s.rows, s.row(at, r, clear))
			}
		}
	}
	if len(s.rows) == 0 {
		return &Fault{Field: ZoneRoom, Got: widest, Least: s.bores[0].dMM, Most: MostMM}
	}
	return nil
}

// layAngles tables every step from the axis.
func (s *space) layAngles() {
	for j := 0; float64(j)*s.t.AngleStepDeg <= MostOffDeg; j++ {
		sin, cos := math.Sincos(float64(j) * s.t.AngleStepDeg * math.Pi / 180)
		s.cos, s.sin = append(s.cos, cos), append(s.sin, sin)
		for side := range 2 {
			hour := s.hourAt(j, side)
			s.to[side] = append(s.to[side], clock.Polar(1, hour))
			s.inZone[side] = append(s.inZone[side], clock.Radians(clock.Apart(hour, s.t.Hour)) <= s.t.HalfRad+snugMM)
		}
	}
}

// snugMM forgives rounding where metal is just thick enough.
const snugMM = 1e-9

// clearance lays out the radius of the largest hole for every place of one
// radius to one side of the axis, nothing or less where there is no room, and
// returns the largest of them.
func (s *space) clearance(r float64, side int, clear []float64) float64 {
	edge := math.Min(r-s.t.InMM, s.t.OutMM-r) - s.t.WallMM
	most := 0.0
	for j, to := range s.to[side] {
		room := 0.0
		if s.inZone[side][j] {
			room = edge
		}
		for i := range s.t.Keep {
			k := &s.t.Keep[i]
			t, n := r*to.T-k.At.T, r*to.N-k.At.N
			if away := math.Sqrt(t*t+n*n) - k.DiameterMM/2 - s.t.WallMM; away < room {
				room = away
			}
		}
		if clear[j] = room; room > most {
			most = room
		}
	}
	return most
}

// hourAt is where a place j steps off the axis is; side 1 is anticlockwise.
func (s *space) hourAt(j, side int) float64 {
	off := float64(j*(1-2*side)) * s.t.AngleStepDeg / 30
	return clock.Wrap(s.hour + off)
}

func (s *space) row(b *bore, r float64, clear [2][]float64) row {
	w := row{bore: b, rMM: r, one: span{b.least() * r, b.most() * r}, gap: s.steps(r, b.dMM+s.t.WallMM)}
	w.cw, w.acw = fitting(clear[0], b.dMM/2), fitting(clear[1], b.dMM/2)
	// The holes of a pair are twice their steps apart.
	tooNear := uint64(1)<<((w.gap+1)/2) - 1
	w.pairs = w.cw & w.acw &^ (tooNear &^ 1)
	return w
}

// fitting returns the places with room for a hole of some radius.
func fitting(clear []float64, radius float64) uint64 {
	word := uint64(0)
	for j, room := range clear {
		if room+snugMM >= radius {
			word |= 1 << j
		}
	}
	return word
}

// steps returns the fewest steps that put places of radius r so far apart. Past
// a half turn there is no such number, and more steps than there are will do.
func (s *space) steps(r, apart float64) int {
	half := s.t.AngleStepDeg * math.Pi / 360
	if sin := (apart - snugMM) / (2 * r); sin < 1 {
		return max(1, int(math.Ceil(math.Asin(sin)/half)))
	}
	return 2 * len(s.cos)
}

// nextBit returns the first place from j on that is free, or false.
func nextBit(word uint64, j int) (int, bool) {
	if word >>= j; j > 63 || word == 0 {
		return 0, false
	}
	return j + bits.TrailingZeros64(word), true
}

// packed returns the sum of cosines of k holes of a row as near the axis as
// they go, paired, the most they can have; less than nothing when they don't fit.
func (s *space) packed(w *row, k int) float64 {
	sum, from := 0.0, 1
	if k%2 == 1 {
		if w.pairs&1 == 0 {
			return -1
		}
		sum, from = 1, w.gap
	}
	for range k / 2 {
		j, ok := nextBit(w.pairs, from)
		if !ok {
			return -1
		}
		sum += 2 * s.cos[j]
		from = j + w.gap
	}
	return sum
}
