package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Station is a dial on a shaft: the half, its place x [mm], the eccentricity it
// found [mm] and how sure that is. With Half, At and E alone it is exact.
type Station struct {
	Half clock.End
	At   float64
	E    clock.Vec
	Cov  lsq.Cov // mm², of E
	// Nu is the degrees of freedom that the scatter in Cov was found from; 0
	// where it is known. Stations read with one dial share its scatter, and have
	// the same Dial.
	Nu   float64
	Dial int
	// RunOut is the full movement that the dial showed [mm] and Sigma its standard
	// error, where they are better known than by E and Cov; both 0 otherwise.
	RunOut, Sigma float64
	Unsure        bool // an oval shaft may pass into E unseen
}

// Pose is how the halves sit, with the set-up it was found in.
type Pose struct {
	Axes    // about the axis the crank turned on
	Crank   Crank
	D       clock.Vec    // mm, offset of the right half from the left at the middle of the pin
	G       clock.Vec    // mm per mm, gap slope: the gap between the wheels grows along it
	Held    [2]clock.Vec // mm, where each half's axis stands at its support; zero where that was taken as exact
	Scatter [2]Scatter   // how sure each half's A and B are
}

// Scatter is the covariance of a half's A and B. AB is that of A with B, rows A.
type Scatter struct {
	AA, BB lsq.Cov
	AB     [2][2]float64
}

// StationError says that a station's reading can't be used: not a number, or a
// covariance that is none.
type StationError struct{ Station int }

func (e *StationError) Error() string { return "crank: unusable reading at a station" }

// Lack is why a half can't be found.
type Lack uint8

// NoDial: the half has a support alone. AtSupport: all its dials stand where it
// is held, and say nothing.
const (
	NoDial Lack = iota
	AtSupport
)

// MissingError names the half that lacks a reading, and a place on its shaft
// [mm] where a dial would do.
type MissingError struct {
	Half clock.End
	Lack Lack
	At   float64
}

func (e *MissingError) Error() string {
	return "crank: a dial is missing on the " + [...]string{"left", "right"}[e.Half] + " shaft"
}

// blur [mm] stands for the standard deviation of a reading given as exact, far
// below what any dial shows, so that it has a weight too.
const blur = 1e-6

// Solve finds how the halves sit by weighted least squares (MODEL §3).
// It allocates nothing unless it fails; the error is a *LengthError, a
// *StationError or a *MissingError.
//
// Each half needs two observations at different x. Its support is one, taken as
// exact, except that between centres a half with dials at two places or more
// goes by these alone, and Held then tells where its centre hole stands.
func (c *Crank) Solve(st []Station) (Pose, error) {
	if err := c.Check(); err != nil {
		return Pose{}, err
	}
	for i := range st {
		if err := c.checkStation(st, i); err != nil {
			return Pose{}, err
		}
	}
	s := Pose{Crank: *c, Axes: Axes{Pin: c.Pin}}
	for h := clock.Left; h <= clock.Right; h++ {
		if err := s.solveHalf(st, h); err != nil {
			return Pose{}, err
		}
	}
	s.D = s.A[clock.Right].Sub(s.A[clock.Left])
	s.G = s.B[clock.Left].Sub(s.B[clock.Right])
	return s, nil
}

func (c *Crank) checkStation(st []Station, i int) error {
	p := &st[i]
	if r := c.reach(p.Half); !r.holds(p.At) {
		return r.fault(DialAt, p.Half, i, p.At)
	}
	if !usable(p.E.T) || !usable(p.E.N) || !p.Cov.Proper() || p.Cov.TT > most*most || p.Cov.NN > most*most {
		return &StationError{Station: i}
	}
	if !usable(p.RunOut) || !usable(p.Sigma) || !(p.Nu >= 0) || p.RunOut < 0 || p.Sigma < 0 {
		return &StationError{Station: i}
	}
	return nil
}

// runOut returns the full movement the dial showed and how far it may be out
// at 95 % [mm].
func (p *Station) runOut() Figure {
	if p.RunOut == 0 && p.Sigma == 0 {
		return Figure{2 * p.E.Len(), 2 * lsq.Uncertainty{Cov: p.Cov, Nu: p.Nu}.HalfWidth95(p.E)}
	}
	return Figure{p.RunOut, lsq.Student95(p.Nu) * p.Sigma}
}

// weight returns the inverse covariance of a reading.
func (p *Station) weight() lsq.Cov {
	w, ok := p.Cov.Inverse()
	if !ok {
		w, ok = p.Cov.Add(lsq.Round(blur)).Inverse()
	}
	if !ok {
		// Far longer one way than the other: count it as wide as it is.
		w, _ = lsq.Round(p.Cov.Widest()).Inverse()
	}
	return w
}

// places counts a half's dials and tells whether two stand apart.
func places(st []Station, h clock.End) (dials int, apart bool) {
	first := 0.0
	for i := range st {
		if st[i].Half != h {
			continue
		}
		if dials == 0 {
			first = st[i].At
		}
		dials++
		apart = apart || math.Abs(st[i].At-first) >= least
	}
	return dials, apart
}

func (s *Pose) solveHalf(st []Station, h clock.End) error {
	dials, apart := places(st, h)
	switch {
	case dials == 0:
		return s.missing(h, NoDial)
	case apart && s.Crank.Mount == Centres:
		s.A[h], s.B[h], s.Scatter[h] = free(st, h, s.Crank.Pin)
		s.Held[h] = s.At(h, s.Crank.Support[h])
	default:
		if !s.held(st, h) {
			return s.missing(h, AtSupport)
		}
	}
	return nil
}

func (s *Pose) missing(h clock.End, lack Lack) error {
	return &MissingError{Half: h, Lack: lack, At: (s.Crank.Support[h] + s.Crank.Pin) / 2}
}

// held solves a half whose support is exact: y = B (x − support), one vector.
func (s *Pose) held(st []Station, h clock.End) bool {
	var m lsq.Cov
	var v clock.Vec
	x := s.Crank.Support[h]
	for i := range st {
		l := st[i].At - x
		if p := &st[i]; p.Half == h && math.Abs(l) >= least {
			w := p.weight()
			m = m.Add(w.Scale(l * l))
			v = v.Add(w.Apply(p.E).Scale(l))
		}
	}
	c, ok := m.Inverse()
	if !ok {
		return false
	}
	l := s.Crank.Pin - x
	s.B[h] = c.Apply(v)
	s.A[h] = s.B[h].Scale(l)
	s.Scatter[h] = Scatter{AA: c.Scale(l * l), AB: square(c.Scale(l)), BB: c}
	return true
}

// free solves a half from its dials alone: y = a + B (x − mid), two vectors, by
// blocks of the normal equations about the middle of its dials, then moved to
// the pin. Its dials stand at two places or more.
func free(st []Station, h clock.End, pin float64) (a, b clock.Vec, sp Scatter) {
	mid, n := 0.0, 0.0
	for i := range st {
		if st[i].Half == h {
			mid += st[i].At
			n++
		}
	}
	mid /= n
	var s0, s1, s2 lsq.Cov
	var v0, v1 clock.Vec
	for i := range st {
		if p := &st[i]; p.Half == h {
			z, w := p.At-mid, p.weight()
			s0, s1, s2 = s0.Add(w), s1.Add(w.Scale(z)), s2.Add(w.Scale(z*z))
			v0, v1 = v0.Add(w.Apply(p.E)), v1.Add(w.Apply(p.E).Scale(z))
		}
	}
	a, b, sp = line(s0, s1, s2, v0, v1)
	l := pin - mid
	return a.Add(b.Scale(l)), b, sp.shift(l)
}
