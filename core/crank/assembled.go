package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Stand is how the pieces of an assembly sit, as far as the readings tell. Where
// they leave something open it is the smallest that agrees with them; Told and Open
// say what that concerns.
type Stand struct {
	Assembly Assembly
	Bends    []Bend // of each joint, in its own clock
	axes     []axis
	scatter  []Scatter // of the axes, about x = 0
	rows     *rowSpace // nil where its own readings tell each piece
	pins     []Joint   // the joints as the twists on their left have turned them
	dials    []Station
	gaps     []RimGap
	at       []float64 // mm, of each joint
}

// Solve finds how the pieces sit by weighted least squares (MODEL §11). The
// error is an *AssemblyError or a *StationError.
//
// Each rest and dial is one equation of a vector, each set of rim gaps one of a gap
// slope. Rests are exact, except that between centres a piece with dials at two places
// or more goes by these alone. Where its own readings tell each piece, each is solved by
// itself, as the halves of one throw are; what only gaps tell, or nothing, is found over
// the row space of all equations, so that what they leave open has no part in it.
func (a *Assembly) Solve(dials []Station, gaps []RimGap) (*Stand, error) {
	if err := a.Check(dials, gaps); err != nil {
		return nil, err
	}
	s := &Stand{Assembly: *a, dials: dials, gaps: gaps}
	for _, j := range a.Joints {
		s.at = append(s.at, j.At)
	}
	if !s.byPieces() || len(gaps) > 0 {
		s.byRows()
	}
	s.settle()
	return s, nil
}

// byPieces solves each piece by its own readings, as far as these tell all of them.
func (s *Stand) byPieces() bool {
	s.axes, s.scatter = make([]axis, s.Assembly.Pieces()), make([]Scatter, s.Assembly.Pieces())
	for k := range s.axes {
		var held []float64
		for _, r := range s.Assembly.Rests {
			if r.Piece == k {
				held = append(held, r.At)
			}
		}
		var told bool
		if s.axes[k], s.scatter[k], _, told = byItself(s.dials, k, held, s.Assembly.Mount, 0); !told {
			return false
		}
	}
	return true
}

// byRows solves all pieces together, of what is open the smallest.
func (s *Stand) byRows() {
	e := equations{stand: s}
	for _, r := range s.Assembly.Rests {
		if s.Assembly.Mount != Centres || distinctPlaces(s.dials, r.Piece) < 2 {
			e.add(s.placeRow(r.Piece, r.At), clock.Vec{}, lsq.Cov{}, -1)
		}
	}
	for i := range s.dials {
		d := &s.dials[i]
		e.add(s.placeRow(d.Piece, d.At), d.E, d.Cov, i)
	}
	for i := range s.gaps {
		e.gap(&s.gaps[i])
	}
	s.rows = e.reduce()
	x := s.rows.solution()
	for k := range s.axes {
		u := x[perPiece*k:]
		b := clock.Vec{T: u[1], N: u[3]}.Scale(1 / s.scale())
		s.axes[k] = axis{clock.Vec{T: u[0], N: u[2]}.Sub(b.Scale(s.middle())), b}
	}
}

// settle reads the bends from the axes. A twist turns all pins on its
// right with it, so that each joint's clock stands by the twists before it: a matter of
// the second order, a micron over four pins.
func (s *Stand) settle() {
	turn := 0.0
	for j, pin := range s.Assembly.Joints {
		pin.Phase += turn
		s.pins = append(s.pins, pin)
		left, right := s.axes[j], s.axes[j+1]
		s.Bends = append(s.Bends, Bend{D: pin.own(right.at(pin.At).Sub(left.at(pin.At))), G: pin.own(left.b.Sub(right.b))})
		turn -= s.Bends[j].D.N / pin.Throw * 6 / math.Pi
	}
}

// offset and slope are the components, towards 12 and towards 3 of the joint's own
// clock, that make its D and its G.
func (s *Stand) offset(joint int) [2][]along {
	x := s.Assembly.Joints[joint].At
	return s.across(joint, part{-1, -x}, part{1, x})
}

func (s *Stand) slope(joint int) [2][]along { return s.across(joint, part{b: 1}, part{b: -1}) }

// across is what a vector in a joint's own clock has of the pieces left and right of it.
func (s *Stand) across(joint int, left, right part) (c [2][]along) {
	sin, cos := math.Sincos(clock.Radians(s.Assembly.Joints[joint].Phase))
	for i, turn := range [2]clock.Vec{{T: cos, N: sin}, {T: -sin, N: cos}} {
		c[i] = make([]along, s.Assembly.Pieces())
		c[i][joint] = along{turn.Scale(left.a), turn.Scale(left.b)}
		c[i][joint+1] = along{turn.Scale(right.a), turn.Scale(right.b)}
	}
	return c
}

// DTold and GTold tell whether every way of sitting that agrees with the readings
// has the same twist or offset, or the same gap slope, at a joint.
func (s *Stand) DTold(joint int) bool { return s.told(s.offset(joint)) }

// TwistTold is DTold of the twist alone.
func (s *Stand) TwistTold(joint int) bool { return s.spans(s.offset(joint)[1]) }

// GTold is said under DTold.
func (s *Stand) GTold(joint int) bool { return s.told(s.slope(joint)) }

func (s *Stand) told(c [2][]along) bool { return s.spans(c[0]) && s.spans(c[1]) }

func (s *Stand) spans(c []along) bool { return s.rows == nil || s.rows.spans(s.row(c)) }

// UncertaintyOfD returns that of a joint's D in its own clock, mm.
func (s *Stand) UncertaintyOfD(joint int) lsq.Uncertainty { return s.uncertaintyOf(s.offset(joint)) }

// UncertaintyOfG returns that of a joint's G in its own clock, mm per mm.
func (s *Stand) UncertaintyOfG(joint int) lsq.Uncertainty { return s.uncertaintyOf(s.slope(joint)) }

func (s *Stand) uncertaintyOf(c [2][]along) lsq.Uncertainty {
	if s.rows == nil {
		return propagated(s.dials, s.scatter, 0, c)
	}
	cov, put := s.rows.propagate(s.rowsOf(c))
	return lsq.Uncertainty{Cov: cov, Nu: freedomBehind(s.dials, put)}
}

// Dials returns the dials that it was solved by.
func (s *Stand) Dials() []Station { return s.dials }

// At returns the eccentricity [mm] of a piece at x [mm], pin 1 at 12.
func (s *Stand) At(piece int, x float64) clock.Vec { return s.axes[piece].at(x) }

// After returns the eccentricity [mm] of a piece at x [mm] with the bends changed, each in
// its joint's own clock, the crank hung again: its rests keep the place found for
// them. It holds however much the readings leave open of what isn't changed.
func (s *Stand) After(changed []Bend, piece int, x float64) clock.Vec {
	return s.axisAfter(s.moved(changed), piece).at(x)
}

// axesAfter are After of all pieces.
func (s *Stand) axesAfter(changed []Bend) []axis {
	moved, out := s.moved(changed), make([]axis, len(s.axes))
	for k := range out {
		out[k] = s.axisAfter(moved, k)
	}
	return out
}

func (s *Stand) axisAfter(moved []Bend, piece int) axis {
	by, now := lay(s.at, moved, s.Assembly.Rests, [2]clock.Vec{}, piece), s.axes[piece]
	return axis{now.a.Add(by.a), now.b.Add(by.b)}
}

// moved turns changes of the bends into the clock of the first pin. What lies to the
// right of a joint turns with a blow there, and its bends with it: of the second
// order, but a dial far beyond the rests shows it.
func (s *Stand) moved(changed []Bend) []Bend {
	out := make([]Bend, len(changed))
	turn := 0.0 // hours
	for j, c := range changed {
		pin, now := &s.pins[j], s.Bends[j]
		after := Bend{pin.world(now.D.Add(c.D)), pin.world(now.G.Add(c.G))}
		out[j] = Bend{spun(after.D, turn).Sub(pin.world(now.D)), spun(after.G, turn).Sub(pin.world(now.G))}
		turn -= c.D.N / pin.Throw * 6 / math.Pi
	}
	return out
}
