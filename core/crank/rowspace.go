package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Each piece has four unknowns: a and b of T, then of N, about the middle of the
// rests, b in units of half their distance, so that all are of one size.
const perPiece = 4

func (s *Stand) middle() float64 { return (s.Assembly.Rests[0].At + s.Assembly.Rests[1].At) / 2 }
func (s *Stand) scale() float64  { return (s.Assembly.Rests[1].At - s.Assembly.Rests[0].At) / 2 }

// row is what a component has of the unknowns.
func (s *Stand) row(c []along) []float64 {
	row := make([]float64, 0, perPiece*len(c))
	for _, k := range c {
		b := k.b.Sub(k.a.Scale(s.middle())).Scale(1 / s.scale())
		row = append(row, k.a.T, b.T, k.a.N, b.N)
	}
	return row
}

func (s *Stand) rowsOf(c [2][]along) [2][]float64 { return [2][]float64{s.row(c[0]), s.row(c[1])} }

// placeRow is what the eccentricity of a piece at x has of the unknowns.
func (s *Stand) placeRow(piece int, x float64) [2][]float64 {
	return s.rowsOf(s.place(piece, x).components())
}

// equation is a row of the problem over its standard deviation; from is the dial
// that it comes from, or −1.
type equation struct {
	row  []float64
	y    float64
	from int
}

// equations gathers a problem row by row.
type equations struct {
	stand *Stand
	all   []equation
	plain [][]float64 // the rows as they are, for the rank
}

// gap takes in a gap slope; what feelers say comes from no dial.
func (e *equations) gap(g *RimGap) {
	rows := e.stand.rowsOf(e.stand.slope(g.Joint))
	if g.OnlyT {
		k := 1 / math.Sqrt(math.Max(g.Cov.TT, slopeBlur*slopeBlur))
		e.plain = append(e.plain, rows[0])
		e.all = append(e.all, equation{scaled(rows[0], k), k * g.Slope.T, -1})
		return
	}
	e.add(rows, g.Slope, g.Cov.Floor(slopeBlur*slopeBlur), -1)
}

// slopeBlur [mm per mm] is blur for gap slopes, over a web.
const slopeBlur = blur / 100

// add takes in two rows that vary together, parted by the Cholesky factor of their
// covariance.
func (e *equations) add(rows [2][]float64, y clock.Vec, cov lsq.Cov, from int) {
	cov = cov.Floor(blur * blur)
	e.plain = append(e.plain, rows[0], rows[1])
	l11 := math.Sqrt(cov.TT)
	l21 := cov.TN / l11
	l22 := math.Sqrt(math.Max(cov.NN-l21*l21, cov.NN*1e-14))
	first := scaled(rows[0], 1/l11)
	second := scaled(rows[1], 1/l22)
	for i := range second {
		second[i] -= l21 / l22 * first[i]
	}
	e.all = append(e.all, equation{first, y.T / l11, from}, equation{second, (y.N - l21*y.T/l11) / l22, from})
}

func scaled(row []float64, k float64) []float64 {
	out := make([]float64, len(row))
	for i := range row {
		out[i] = k * row[i]
	}
	return out
}

// rowSpace is a problem over the space that its rows span: an orthonormal basis
// of that, and the problem in it as an upper triangle r z = y.
type rowSpace struct {
	basis [][]float64
	r     [][]float64
	y     []float64
	all   []equation // their rows in the basis
}

// sliver is how small a row is, against its length, that another row's multiple is
// taken from; two places that a micron parts stand far above it.
const sliver = 1e-8

// reduce finds the row space and brings the problem to its triangle by Givens
// rotations, the heaviest rows first.
func (e *equations) reduce() *rowSpace {
	s := &rowSpace{basis: basisOf(e.plain)}
	n := len(s.basis)
	s.r, s.y = make([][]float64, n), make([]float64, n)
	for i := range s.r {
		s.r[i] = make([]float64, n)
	}
	for _, q := range e.all {
		s.all = append(s.all, equation{s.within(q.row), q.y, q.from})
	}
	for _, q := range s.all {
		s.rotate(append([]float64(nil), q.row...), q.y)
	}
	return s
}

// basisOf returns an orthonormal basis of what rows span, by Gram and Schmidt: of
// what is left of them the longest next, made orthogonal twice.
func basisOf(rows [][]float64) (basis [][]float64) {
	left := make([][]float64, len(rows))
	longest := 0.0
	for i := range rows {
		k := norm(rows[i])
		left[i] = scaled(rows[i], 1/k)
		longest = 1
	}
	for longest > 0 {
		best := -1
		longest = sliver
		for i := range left {
			if n := norm(left[i]); n > longest {
				best, longest = i, n
			}
		}
		if best < 0 {
			return basis
		}
		q := scaled(left[best], 1/longest)
		for _, b := range basis {
			subtract(q, b)
		}
		q = scaled(q, 1/norm(q))
		basis = append(basis, q)
		for i := range left {
			subtract(left[i], q)
		}
	}
	return basis
}

// subtract takes from v what it has of a unit vector.
func subtract(v, unit []float64) {
	k := dot(v, unit)
	for i := range v {
		v[i] -= k * unit[i]
	}
}

func dot(v, w []float64) (sum float64) {
	for i := range v {
		sum += v[i] * w[i]
	}
	return sum
}

func norm(v []float64) float64 { return math.Sqrt(dot(v, v)) }

// within writes a row in the basis.
func (s *rowSpace) within(row []float64) []float64 {
	out := make([]float64, len(s.basis))
	for i, b := range s.basis {
		out[i] = dot(row, b)
	}
	return out
}

// spans tells whether a row lies in the space: whether every solution agrees on it.
func (s *rowSpace) spans(row []float64) bool {
	rest := append([]float64(nil), row...)
	for range 2 {
		for _, b := range s.basis {
			subtract(rest, b)
		}
	}
	return norm(rest) <= 10*sliver*norm(row)
}

func (s *rowSpace) rotate(row []float64, y float64) {
	for j := range row {
		if row[j] == 0 {
			continue
		}
		h := math.Hypot(s.r[j][j], row[j])
		c, t := s.r[j][j]/h, row[j]/h
		for k := j; k < len(row); k++ {
			s.r[j][k], row[k] = c*s.r[j][k]+t*row[k], c*row[k]-t*s.r[j][k]
		}
		s.y[j], y = c*s.y[j]+t*y, c*y-t*s.y[j]
	}
}

// back solves r z = y, forth rᵀ z = y.
func (s *rowSpace) back(y []float64) []float64 {
	z := append([]float64(nil), y...)
	for j := len(z) - 1; j >= 0; j-- {
		for k := j + 1; k < len(z); k++ {
			z[j] -= s.r[j][k] * z[k]
		}
		z[j] /= s.r[j][j]
	}
	return z
}

func (s *rowSpace) forth(y []float64) []float64 {
	z := append([]float64(nil), y...)
	for j := range z {
		for k := range j {
			z[j] -= s.r[k][j] * z[k]
		}
		z[j] /= s.r[j][j]
	}
	return z
}

// solution is the smallest that minimises the sum of squares.
func (s *rowSpace) solution() []float64 {
	z := s.back(s.y)
	x := make([]float64, len(s.basis[0]))
	for i, b := range s.basis {
		for j := range x {
			x[j] += z[i] * b[j]
		}
	}
	return x
}

// propagate returns the covariance of the vector that two rows make of the
// solution, and what each dial puts into its trace, by the dial's index; after
// them, in the last, all else.
func (s *rowSpace) propagate(rows [2][]float64) (cov lsq.Cov, from []float64) {
	u, v := s.forth(s.within(rows[0])), s.forth(s.within(rows[1]))
	cov = lsq.Cov{TT: dot(u, u), TN: dot(u, v), NN: dot(v, v)}
	u, v = s.back(u), s.back(v)
	dials := 0
	for _, q := range s.all {
		dials = max(dials, q.from+1)
	}
	from = make([]float64, dials+1)
	for _, q := range s.all {
		i := q.from
		if i < 0 {
			i = dials
		}
		g, h := dot(q.row, u), dot(q.row, v)
		from[i] += g*g + h*h
	}
	return cov, from
}
