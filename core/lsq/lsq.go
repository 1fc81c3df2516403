// Package lsq holds the small least squares that the readings need, the 2 × 2
// covariances that say how uncertain a vector is, and the quantiles that turn
// these into 95 % regions (core/MODEL.md §2 and §6).
//
//	Aᵀ A x = Aᵀ b by Givens rotations, cov x = s² (Aᵀ A)⁻¹, s² = SSE/ν
//	    against gonum's QR, and NIST StRD Norris and Longley (values from
//	    memory): TestFitAgainstGonumQR, TestNorris, TestLongley
//	t: P(|T| ≤ t) = 0.95, Student's t with ν degrees of freedom
//	    Abramowitz and Stegun 26.5.8 (from memory): TestStudentAgainstGonum
//	k = √(2 F) = √(ν (20^(2/ν) − 1)), F the 95 % quantile of F(2, ν): the radius,
//	    in standard deviations, of a vector's 95 % region, its covariance known
//	    but for one variance found with ν degrees of freedom; √(2 ln 20) = 2.45
//	    where that is known too: TestRadiusAgainstGonum
//	P(χ² > x) = e^(−x/2) Σ (x/2)^j/j!, an even number of degrees of freedom
//	    TestBeyondAgainstGonum
//	ν of a sum = (Σ vᵢ)²/Σ (vᵢ²/νᵢ), Welch and Satterthwaite (JCGM 100, G.4.1),
//	    on the traces: TestPooledFreedom
//
// Everything works on values of fixed size and allocates nothing. Units are
// the caller's: a covariance of vectors in mm is in mm².
package lsq

import "math"

// Most is the greatest number of unknowns.
const Most = 8

// Fit is a linear least squares problem that is fed row by row; New makes one. The
// rows are turned into an upper triangle by Givens rotations as they come, which
// is as accurate as a QR of them all and needs no room for them.
type Fit struct {
	unknowns, rows int
	r              [Most][Most]float64
	z              [Most]float64
	norm           [Most]float64 // of each column, squared
	sse            float64
}

// New returns an empty problem in 1 to Most unknowns; a number outside that is
// brought inside.
func New(unknowns int) Fit { return Fit{unknowns: min(max(unknowns, 1), Most)} }

// Add takes in the row Σ row[j] x[j] = y. Rows must have as many terms as there
// are unknowns; the caller scales a row to weigh it. What is missing counts as
// 0, what is too much is left out.
func (f *Fit) Add(row []float64, y float64) {
	var a [Most]float64
	copy(a[:f.unknowns], row)
	f.rows++
	for j := range f.unknowns {
		f.norm[j] += a[j] * a[j]
	}
	for j := range f.unknowns {
		if a[j] == 0 {
			continue
		}
		h := math.Hypot(f.r[j][j], a[j])
		c, s := f.r[j][j]/h, a[j]/h
		f.r[j][j] = h
		for k := j + 1; k < f.unknowns; k++ {
			f.r[j][k], a[k] = c*f.r[j][k]+s*a[k], c*a[k]-s*f.r[j][k]
		}
		f.z[j], y = c*f.z[j]+s*y, c*y-s*f.z[j]
	}
	f.sse += y * y
}

// Result is a solved problem. Cov is (AᵀA)⁻¹: times the variance of a row it is
// the covariance of X. Nu is the degrees of freedom, rows less unknowns, and SSE
// the residual sum of squares.
type Result struct {
	X   [Most]float64
	Cov [Most][Most]float64
	SSE float64
	Nu  int
}

// Rank returns the rank of the rows: how many columns are not, to ten digits, a
// linear combination of the ones before them.
func (f *Fit) Rank() int {
	n := 0
	for j := range f.unknowns {
		if f.tells(j) {
			n++
		}
	}
	return n
}

func (f *Fit) tells(j int) bool { return math.Abs(f.r[j][j]) > 1e-10*math.Sqrt(f.norm[j]) }

// Solve returns the least squares solution, and false where the rows are
// rank-deficient.
func (f *Fit) Solve() (Result, bool) {
	if f.Rank() < f.unknowns {
		return Result{}, false
	}
	out := Result{SSE: f.sse, Nu: f.rows - f.unknowns}
	inv := f.inverse()
	for i := range f.unknowns {
		for k := i; k < f.unknowns; k++ {
			out.X[i] += inv[i][k] * f.z[k]
		}
		for j := range f.unknowns {
			for k := max(i, j); k < f.unknowns; k++ {
				out.Cov[i][j] += inv[i][k] * inv[j][k]
			}
		}
	}
	return out, true
}

// inverse returns R⁻¹, upper triangular as R is.
func (f *Fit) inverse() (inv [Most][Most]float64) {
	for j := f.unknowns - 1; j >= 0; j-- {
		inv[j][j] = 1 / f.r[j][j]
		for i := j - 1; i >= 0; i-- {
			sum := 0.0
			for k := i + 1; k <= j; k++ {
				sum += f.r[i][k] * inv[k][j]
			}
			inv[i][j] = -sum / f.r[i][i]
		}
	}
	return inv
}
