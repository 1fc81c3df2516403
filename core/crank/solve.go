package crank

import (
	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Station is a dial on a piece, the pieces numbered from 0 at the left, so that of one
// throw each is a half: its place x [mm], the eccentricity it found [mm] and how sure
// that is. With Piece, At and E alone it is exact.
type Station struct {
	Piece int
	At    float64
	E     clock.Vec
	Cov   lsq.Cov // mm², of E
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

// Half is the one that it stands on, of a crank of one throw.
func (p *Station) Half() clock.End { return clock.End(p.Piece) }

// StationError says that a station's reading can't be used: not a number, or a
// covariance that is none.
type StationError struct{ Station int }

func (e *StationError) Error() string { return "crank: unusable reading at a station" }

// Lack is why a half can't be found.
type Lack uint8

// NoDial: the half has a support alone. AtSupport: all its dials stand where it
// is held, or so near that they say next to nothing.
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
	if p.Piece < 0 || p.Piece > 1 || !p.usable() {
		return &StationError{Station: i}
	}
	if r := c.reach(p.Half()); !r.holds(p.At) {
		return r.fault(DialAt, p.Half(), i, p.At)
	}
	return nil
}

// usable tells whether it holds figures of a dial.
func (p *Station) usable() bool {
	return usable(p.E.T) && usable(p.E.N) && p.Cov.Proper() && p.Cov.TT <= most*most && p.Cov.NN <= most*most &&
		usable(p.RunOut) && usable(p.Sigma) && p.Nu >= 0 && p.RunOut >= 0 && p.Sigma >= 0
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

func (s *Pose) solveHalf(st []Station, h clock.End) error {
	y, scatter, lack, told := byItself(st, int(h), []float64{s.Crank.Support[h]}, s.Crank.Mount, s.Crank.Pin)
	if told && TooNear(st, int(h), s.Crank.Support[h], s.Crank.Pin, s.Crank.Mount) {
		lack, told = AtSupport, false
	}
	if !told {
		return &MissingError{Half: h, Lack: lack, At: (s.Crank.Support[h] + s.Crank.Pin) / 2}
	}
	s.A[h], s.B[h], s.Scatter[h] = y.a, y.b, scatter
	s.Held[h] = s.At(h, s.Crank.Support[h])
	return nil
}
