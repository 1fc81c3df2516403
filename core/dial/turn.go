package dial

import (
	"math"
	"slices"
	"sort"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Turn is one turn of a dial read at points round the clock, in the order they
// were read. Where the last hour is the first one again, the two tell the drift.
type Turn struct {
	From     clock.End // the end that the hours are seen from
	Hours    []float64 // clock point under the plunger
	Values   []float64 // mm, as many as Hours
	Division float64   // mm, 0 if not known
	Range    float64   // mm, one turn of the needle; 0 for a dial that can't pass zero
}

// Even returns n hours evenly round the clock from 12, with 12 once more at
// the end where the first point is to be repeated.
func Even(n int, repeat bool) []float64 {
	var hours []float64
	for i := range n {
		hours = append(hours, 12*float64(i)/float64(n))
	}
	if repeat && n > 0 {
		hours = append(hours, 12)
	}
	return hours
}

// Harmonics are what a turn shows: reading(φ) = C + E·(cos φ, sin φ) + p cos 2φ + q sin 2φ
// + scatter (MODEL §2), lengths in mm, left-end frame.
type Harmonics struct {
	E      clock.Vec
	C      float64
	RunOut float64 // fitted run-out, 2|E|
	Full   float64 // full movement of the needle (TIR), form error and scatter in it
	Oval   Oval

	Repeated  bool    // the first point was read again
	Drift     float64 // how much more it then read; taken out of the rest
	Unwrapped bool    // the needle passed zero

	Residuals []float64 // of each point, the repeated one left out
	SSE       float64   // their squares, corrected for what the drift adds
	Nu        int       // points less what was fitted to them

	division float64
	points   int
	unit     lsq.Cov // of E where the variance of a reading is one
}

// Fit fits the turn by least squares; the error is an *Error.
func (t *Turn) Fit() (Harmonics, error) {
	if err := t.check(); err != nil {
		return Harmonics{}, err
	}
	f := Harmonics{division: t.Division}
	values := slices.Clone(t.Values)
	f.Unwrapped = unwrap(values, t.Range)
	hours := slices.Clone(t.Hours)
	for i, h := range hours {
		hours[i] = clock.SeenFrom(t.From, h)
	}
	n := len(hours) - 1
	ramp := make([]float64, len(hours))
	if clock.Apart(hours[0], hours[n]) < sameHour {
		f.Repeated, f.Drift = true, values[n]-values[0]
		for k := range values {
			ramp[k] = float64(k) / float64(n)
			values[k] -= f.Drift * ramp[k]
		}
		hours, values, ramp = hours[:n], values[:n], ramp[:n]
	}
	f.points = distinct(hours)
	if f.points < 3 {
		return Harmonics{}, &Error{Field: Points, Given: float64(f.points), Least: 3, HasLeast: true}
	}
	f.Full = slices.Max(values) - slices.Min(values)
	return f, f.solve(hours, values, ramp)
}

// sameHour is nearer than two points can be told apart on a rim.
const sameHour = 1e-6

func (t *Turn) check() error {
	if !usable(t.Division) || t.Division < 0 {
		return &Error{Field: Division, Given: t.Division, HasLeast: true}
	}
	if !usable(t.Range) || t.Range < 0 {
		return &Error{Field: Range, Given: t.Range, HasLeast: true}
	}
	if n := min(len(t.Hours), len(t.Values)); n < 3 || len(t.Hours) != len(t.Values) {
		return &Error{Field: Points, Given: float64(n), Least: math.Max(3, float64(len(t.Hours))), HasLeast: true}
	}
	for i := range t.Hours {
		if !usable(t.Hours[i]) {
			return &Error{Field: Hour, Index: i, Given: t.Hours[i]}
		}
		if !usable(t.Values[i]) {
			return &Error{Field: Value, Index: i, Given: t.Values[i]}
		}
	}
	return nil
}

// unwrap takes out the jumps of a needle that passes zero and tells whether
// there were any: between two points a needle is taken to move less than half
// of its range.
func unwrap(values []float64, full float64) (any bool) {
	if full == 0 {
		return false
	}
	shift := 0.0
	for i := 1; i < len(values); i++ {
		if off := values[i] + shift - values[i-1]; math.Abs(off) > full/2 {
			shift -= full * math.Round(off/full)
			any = true
		}
		values[i] += shift
	}
	return any
}

// distinct counts the hours that stand apart, each from the one before it on the
// round.
func distinct(hours []float64) int {
	round := make([]float64, len(hours))
	for i, h := range hours {
		round[i] = clock.Wrap(h)
	}
	sort.SliceStable(round, func(i, j int) bool { return round[i] < round[j] })
	n := 0
	for i, h := range round {
		if before := round[(i+len(round)-1)%len(round)]; clock.Apart(before, h) >= sameHour {
			n++
		}
	}
	return n
}

// solve fits what the points can carry and works out how sure it is.
func (f *Harmonics) solve(hours, values, ramp []float64) error {
	d, ok := fitDesign(hours, values, f.points)
	if !ok {
		return &Error{Field: Points, Given: float64(f.points), Least: float64(f.points + 1), HasLeast: true}
	}
	f.C, f.E = d.X[0], clock.Vec{T: d.X[1], N: d.X[2]}
	f.RunOut = 2 * f.E.Len()
	f.Nu, f.SSE = d.Nu, d.SSE
	f.unit = d.covOf(1, 2)
	f.Residuals = make([]float64, len(values))
	for i := range values {
		f.Residuals[i] = values[i] - d.at(i, d.X[:])
	}
	f.Oval = d.oval()
	if f.Repeated {
		f.countDrift(&d, ramp)
	}
	return nil
}

// countDrift adds what the drift's own scatter does. A reading becomes
// r_k − (r_N − r_0) k/N, so that the first and the repeated one enter all:
// with l the fit's weight on r_0 and m = its fit of k/N, the unknowns have the
// weight l + m on r_0 and −m on r_N.
func (f *Harmonics) countDrift(d *design, ramp []float64) {
	m := d.project(func(i int) float64 { return ramp[i] })
	l := d.project(func(i int) float64 {
		if i == 0 {
			return 1
		}
		return 0
	})
	add := func(i, j int) float64 { return l[i]*m[j] + m[i]*l[j] + 2*m[i]*m[j] }
	f.unit = f.unit.Add(lsq.Cov{TT: add(1, 1), TN: add(1, 2), NN: add(2, 2)})
	f.Oval.unit = f.Oval.unit.Add(lsq.Cov{TT: add(3, 3), TN: add(3, 4), NN: add(4, 4)})
	if f.Nu == 0 {
		return
	}
	// The squares left over are expected to be this much more than ν.
	extra := 2 * (ramp[0] - d.at(0, m[:]))
	for i := range ramp {
		left := ramp[i] - d.at(i, m[:])
		extra += 2 * left * left
	}
	f.SSE *= float64(f.Nu) / (float64(f.Nu) + extra)
}
