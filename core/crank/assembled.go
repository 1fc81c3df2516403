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
	rows     *rowSpace
	pins     []Joint // the joints as the twists on their left have turned them
	dials    []PieceDial
	gaps     []RimGap
	at       []float64 // mm, of each joint
}

// Each piece has four unknowns: a and b of T, then of N, about the middle of the
// rests, b in units of half their distance, so that all are of one size.
const perPiece = 4

// Solve finds how the pieces sit by weighted least squares (MODEL §11). The
// error is an *AssemblyError or a *StationError.
//
// Each rest and dial is one equation of a vector, each set of rim gaps one of a gap
// slope. Rests are exact, except that between centres a piece with dials at two places
// or more goes by these alone. The sum of squares is taken over the row space of the
// equations, found by Gram and Schmidt with pivoting, so that what they leave open
// has no part in it.
func (a *Assembly) Solve(dials []PieceDial, gaps []RimGap) (*Stand, error) {
	if err := a.Check(dials, gaps); err != nil {
		return nil, err
	}
	s := &Stand{Assembly: *a, dials: dials, gaps: gaps}
	for _, j := range a.Joints {
		s.at = append(s.at, j.At)
	}
	e := equations{stand: s}
	for _, r := range a.Rests {
		if a.Mount != Centres || s.placesOn(r.Piece) < 2 {
			e.place(r.Piece, r.At, clock.Vec{}, lsq.Round(blur), -1)
		}
	}
	for i := range dials {
		e.place(dials[i].Piece, dials[i].At, dials[i].E, dials[i].Cov, i)
	}
	for i := range gaps {
		e.gap(&gaps[i])
	}
	s.rows = e.reduce()
	s.settle()
	return s, nil
}

// placesOn counts the places along a piece where dials stand.
func (s *Stand) placesOn(piece int) (n int) {
	for i := range s.dials {
		if s.dials[i].Piece == piece && s.first(i) {
			n++
		}
	}
	return n
}

func (s *Stand) first(i int) bool {
	for k := range i {
		if s.dials[k].Piece == s.dials[i].Piece && math.Abs(s.dials[k].At-s.dials[i].At) < least {
			return false
		}
	}
	return true
}

// settle reads the axes and bends from the solution. A twist turns all pins on its
// right with it, so that each joint's clock stands by the twists before it: a matter of
// the second order, a micron over four pins.
func (s *Stand) settle() {
	x := s.rows.solution()
	for k := range s.Assembly.Pieces() {
		u := x[perPiece*k:]
		b := clock.Vec{T: u[1], N: u[3]}.Scale(1 / s.scale())
		s.axes = append(s.axes, axis{clock.Vec{T: u[0], N: u[2]}.Sub(b.Scale(s.middle())), b})
	}
	turn := 0.0
	for j, pin := range s.Assembly.Joints {
		pin.Phase += turn
		s.pins = append(s.pins, pin)
		left, right := s.axes[j], s.axes[j+1]
		s.Bends = append(s.Bends, Bend{D: pin.own(right.at(pin.At).Sub(left.at(pin.At))), G: pin.own(left.b.Sub(right.b))})
		turn -= s.Bends[j].D.N / pin.Throw * 6 / math.Pi
	}
}

func (s *Stand) middle() float64 { return (s.Assembly.Rests[0].At + s.Assembly.Rests[1].At) / 2 }
func (s *Stand) scale() float64  { return (s.Assembly.Rests[1].At - s.Assembly.Rests[0].At) / 2 }

// offsetRow and slopeRow return the two rows, towards 12 and towards 3 of the
// joint's own clock, that make its D and its G out of the unknowns.
func (s *Stand) offsetRow(joint int) [2][]float64 {
	z := (s.Assembly.Joints[joint].At - s.middle()) / s.scale()
	return s.acrossRow(joint, [2]float64{-1, -z}, [2]float64{1, z})
}

func (s *Stand) slopeRow(joint int) [2][]float64 {
	k := 1 / s.scale()
	return s.acrossRow(joint, [2]float64{0, k}, [2]float64{0, -k})
}

// acrossRow is what a vector has of a and b of the pieces left and right of a joint.
func (s *Stand) acrossRow(joint int, left, right [2]float64) (rows [2][]float64) {
	sin, cos := math.Sincos(clock.Radians(s.Assembly.Joints[joint].Phase))
	for i, turn := range [2][2]float64{{cos, sin}, {-sin, cos}} {
		rows[i] = s.blank()
		for k, part := range [2][2]float64{left, right} {
			u := rows[i][perPiece*(joint+k):]
			u[0], u[1], u[2], u[3] = turn[0]*part[0], turn[0]*part[1], turn[1]*part[0], turn[1]*part[1]
		}
	}
	return rows
}

// placeRow is what the eccentricity of a piece at x has of the unknowns.
func (s *Stand) placeRow(piece int, x float64) [2][]float64 { return s.rowsOf(s.place(piece, x)) }

func (s *Stand) blank() []float64 { return make([]float64, perPiece*s.Assembly.Pieces()) }

// DTold and GTold tell whether every way of sitting that agrees with the readings
// has the same twist or offset, or the same gap slope, at a joint.
func (s *Stand) DTold(joint int) bool { return s.told(s.offsetRow(joint)) }

// TwistTold is DTold of the twist alone.
func (s *Stand) TwistTold(joint int) bool { return s.rows.spans(s.offsetRow(joint)[1]) }

// GTold is said under DTold.
func (s *Stand) GTold(joint int) bool { return s.told(s.slopeRow(joint)) }

func (s *Stand) told(rows [2][]float64) bool { return s.rows.spans(rows[0]) && s.rows.spans(rows[1]) }

// UncertaintyOfD returns that of a joint's D in its own clock, mm.
func (s *Stand) UncertaintyOfD(joint int) lsq.Uncertainty {
	return s.uncertaintyOf(s.offsetRow(joint))
}

// UncertaintyOfG returns that of a joint's G in its own clock, mm per mm.
func (s *Stand) UncertaintyOfG(joint int) lsq.Uncertainty {
	return s.uncertaintyOf(s.slopeRow(joint))
}

// uncertaintyOf propagates what each dial puts into a vector, and the degrees of
// freedom behind it by Welch and Satterthwaite: scatter found with one dial is one.
func (s *Stand) uncertaintyOf(rows [2][]float64) lsq.Uncertainty {
	cov, from := s.rows.propagate(rows)
	out := lsq.Uncertainty{Cov: cov}
	all, spread := 0.0, 0.0
	byDial := map[int][2]float64{} // variance, ν
	for i, v := range from {
		all += v
		if i >= len(s.dials) || s.dials[i].Nu == 0 {
			continue
		}
		d := byDial[s.dials[i].Dial]
		if d[0] += v; d[1] == 0 || s.dials[i].Nu < d[1] {
			d[1] = s.dials[i].Nu
		}
		byDial[s.dials[i].Dial] = d
	}
	for _, d := range byDial {
		spread += d[0] * d[0] / d[1]
	}
	if spread > 0 {
		out.Nu = all * all / spread
	}
	return out
}

// Dials returns the dials that it was solved by.
func (s *Stand) Dials() []PieceDial { return s.dials }

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
