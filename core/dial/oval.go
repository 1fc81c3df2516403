package dial

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// OvalState is what the points of a turn can say of an oval shaft.
type OvalState uint8

// The states. With three even points ovality passes whole into E as (p, −q);
// with four the one residual is oval or scatter.
const (
	OvalHidden  OvalState = iota // passes into E, or can't show at all
	OvalOrNoise                  // what is left over is one or the other
	OvalFitted                   // told apart from both
)

// Oval is a shaft's ovality as p cos 2φ + q sin 2φ, in mm. P and Q are
// 0 unless OvalFitted. Size is its amplitude √(p² + q²), half of what the
// needle moves for it; where OvalOrNoise, the most it may be if none of what is
// left over is scatter.
type Oval struct {
	State OvalState
	P, Q  float64
	Size  float64
	unit  lsq.Cov // of (P, Q) where the variance of a reading is one
	leaks float64 // how much of an ovality's amplitude may pass into E
}

// design is a fit's columns, 1, cos φ, sin φ, and cos 2φ, sin 2φ where there are
// five, with the fit of the readings to them.
type design struct {
	columns int
	rows    [][5]float64
	lsq.Result
}

// clear is how many times less sure E may become by fitting ovality too, for
// the points to be said to tell it apart.
const maxInflation = 2

// fitDesign fits the columns that the points can carry: ovality only where they
// tell it apart, from E and, with a point left over, from scatter. False where
// the points can't even carry E.
func fitDesign(hours, values []float64, points int) (design, bool) {
	rows := make([][5]float64, len(hours))
	for i, h := range hours {
		s, c := math.Sincos(clock.Radians(h))
		rows[i] = [5]float64{1, c, s, c*c - s*s, 2 * s * c}
	}
	round, ok := fitColumns(3, rows, values)
	if !ok || points < 6 {
		return round, ok
	}
	oval, told := fitColumns(5, rows, values)
	if !told || oval.covOf(1, 2).Widest() > maxInflation*round.covOf(1, 2).Widest() {
		return round, true
	}
	return oval, true
}

func fitColumns(columns int, rows [][5]float64, values []float64) (design, bool) {
	f := lsq.New(columns)
	for i := range rows {
		f.Add(rows[i][:columns], values[i])
	}
	r, ok := f.Solve()
	return design{columns: columns, rows: rows, Result: r}, ok
}

// covOf returns the covariance of two unknowns where the variance of a reading is one.
func (d *design) covOf(i, j int) lsq.Cov {
	return lsq.Cov{TT: d.Cov[i][i], TN: d.Cov[i][j], NN: d.Cov[j][j]}
}

// project returns what the fit makes of other values at the same points:
// (AᵀA)⁻¹ Aᵀ values.
func (d *design) project(values func(i int) float64) (x [5]float64) {
	for i := range d.rows {
		v := values(i)
		for j := range d.columns {
			for k := range d.columns {
				x[j] += d.Cov[j][k] * d.rows[i][k] * v
			}
		}
	}
	return x
}

// at returns the value at point i that the unknowns x make.
func (d *design) at(i int, x []float64) float64 {
	sum := 0.0
	for j := range d.columns {
		sum += d.rows[i][j] * x[j]
	}
	return sum
}

// oval says what the fit tells of ovality.
func (d *design) oval() Oval {
	if d.columns == 5 {
		return Oval{State: OvalFitted, P: d.X[3], Q: d.X[4], Size: math.Hypot(d.X[3], d.X[4]), unit: d.covOf(3, 4)}
	}
	o := Oval{leaks: d.leak()}
	if d.Nu > 0 {
		o.State, o.Size = OvalOrNoise, math.Sqrt(d.SSE/float64(len(d.rows)))
	}
	return o
}

// leak returns the greatest part of an ovality's amplitude that a round fit
// takes for E: 1 for three even points, 0 for four or more.
func (d *design) leak() float64 {
	p := d.project(func(i int) float64 { return d.rows[i][3] })
	q := d.project(func(i int) float64 { return d.rows[i][4] })
	through := lsq.Cov{TT: p[1]*p[1] + q[1]*q[1], TN: p[1]*p[2] + q[1]*q[2], NN: p[2]*p[2] + q[2]*q[2]}
	return through.Widest()
}

// slight is the part of an ovality that may pass into E without a word.
const slight = 0.1

func (o *Oval) unsure() bool { return o.leaks > slight }
