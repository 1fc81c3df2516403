package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// MostThrows is how many throws an assembly has at most.
const MostThrows = 6

// Joint is one pin of an assembly, which joins the piece on its left to that on
// its right. Its own clock has this pin at 12.
type Joint struct {
	At    float64 // mm from the left end, the middle of the pin
	Throw float64 // mm
	Phase float64 // hour of the pin with the first pin at 12, seen from the left end
}

// Rest is a place on a piece, the pieces numbered from 0 at the left: x [mm].
type Rest struct {
	Piece int
	At    float64
}

// Assembly is the geometry of a crank of one throw or several (MODEL §11): its
// joints from left to right, the pieces being one more, and the two rests that it
// is turned on.
type Assembly struct {
	Joints       []Joint
	Rim          float64 // mm, rim radius of the webs
	Rests        [2]Rest // from left to right
	Mains        []Rest  // where it runs in the cases, from left to right: none, or two at least
	Mount        Mount
	CentresKnown bool
}

// Pieces returns how many there are.
func (a *Assembly) Pieces() int { return len(a.Joints) + 1 }

// RimGap is the gap slope at a joint as feelers found it, in the joint's own
// clock, mm per mm. OnlyT is said where it was gauged at 12 and 6 alone.
type RimGap struct {
	Joint int
	Slope clock.Vec
	Cov   lsq.Cov
	OnlyT bool
}

// AssemblyPart names what of an assembly can't be.
type AssemblyPart uint8

// The parts an AssemblyError may name.
const (
	JointCount AssemblyPart = iota
	JointAt
	JointThrow
	RestAt
	MainAt
	PieceDialAt
	RimGapAt
)

// AssemblyError says that a part of an assembly can't be: which, by its index,
// and between which two figures it must lie (both infinite: it is no figure).
type AssemblyError struct {
	Part                AssemblyPart
	Index               int
	Given, Above, Below float64
}

func (e *AssemblyError) Error() string {
	return "crank: impossible " + [...]string{
		"number of throws", "place of a pin", "throw", "rest", "main bearing", "dial place", "rim gap",
	}[e.Part]
}

// span returns between which places a piece lies: its pins', or no end.
func (a *Assembly) span(piece int) (from, to float64) {
	from, to = math.Inf(-1), math.Inf(1)
	if piece > 0 {
		from = a.Joints[piece-1].At
	}
	if piece < len(a.Joints) {
		to = a.Joints[piece].At
	}
	return from, to
}

// Check tells whether the figures can be those of a crank; the error is an
// *AssemblyError.
func (a *Assembly) Check(dials []Station, gaps []RimGap) error {
	if n := len(a.Joints); n < 1 || n > MostThrows {
		return &AssemblyError{JointCount, 0, float64(n), 0, MostThrows + 1}
	}
	last := math.Inf(-1)
	for i, j := range a.Joints {
		if !usable(j.At) || !usable(j.Phase) || j.At < last+least {
			return &AssemblyError{JointAt, i, j.At, last, math.Inf(1)}
		}
		if s := between(0, a.Rim); !s.holds(j.Throw) || !usable(a.Rim) {
			return &AssemblyError{JointThrow, i, j.Throw, 0, a.Rim}
		}
		last = j.At
	}
	for i, r := range a.Rests {
		if err := a.checkPlace(RestAt, i, r.Piece, r.At); err != nil {
			return err
		}
	}
	if a.Rests[0].At > a.Rests[1].At-least {
		return &AssemblyError{RestAt, 1, a.Rests[1].At, a.Rests[0].At, math.Inf(1)}
	}
	if err := a.checkMains(); err != nil {
		return err
	}
	for i := range dials {
		if err := a.checkDial(&dials[i], i); err != nil {
			return err
		}
	}
	for i := range gaps {
		g := &gaps[i]
		if g.Joint < 0 || g.Joint >= len(a.Joints) || !usable(g.Slope.T) || !usable(g.Slope.N) || !g.Cov.Proper() {
			return &AssemblyError{RimGapAt, i, g.Slope.T, math.Inf(-1), math.Inf(1)}
		}
	}
	return nil
}

func (a *Assembly) checkMains() error {
	last := math.Inf(-1)
	for i, m := range a.Mains {
		if err := a.checkPlace(MainAt, i, m.Piece, m.At); err != nil {
			return err
		}
		if m.At < last+least || len(a.Mains) == 1 {
			return &AssemblyError{MainAt, i, m.At, last, math.Inf(1)}
		}
		last = m.At
	}
	return nil
}

func (a *Assembly) checkDial(p *Station, i int) error {
	if err := a.checkPlace(PieceDialAt, i, p.Piece, p.At); err != nil {
		return err
	}
	if !p.usable() {
		return &StationError{Station: i}
	}
	return nil
}

// checkPlace tells whether a place can lie on a piece: clear of its pins, and
// between centres not outside them.
func (a *Assembly) checkPlace(part AssemblyPart, index, piece int, x float64) error {
	if piece < 0 || piece >= a.Pieces() {
		return &AssemblyError{part, index, x, math.Inf(-1), math.Inf(1)}
	}
	from, to := a.span(piece)
	if a.Mount == Centres && part == PieceDialAt {
		from, to = math.Max(from, a.Rests[0].At), math.Min(to, a.Rests[1].At)
	}
	if !usable(x) || x < from+least || x > to-least {
		return &AssemblyError{part, index, x, from, to}
	}
	return nil
}

// own turns a vector into the clock of a joint, world the other way.
func (j *Joint) own(v clock.Vec) clock.Vec { return spun(v, -j.Phase) }

func (j *Joint) world(v clock.Vec) clock.Vec { return spun(v, j.Phase) }

func spun(v clock.Vec, hours float64) clock.Vec {
	s, c := math.Sincos(clock.Radians(hours))
	return clock.Vec{T: v.T*c - v.N*s, N: v.T*s + v.N*c}
}

// Bend is how the piece on the right of a joint sits from that on its left: D at
// the middle of the pin [mm] and gap slope G [mm per mm].
type Bend struct{ D, G clock.Vec }

// axis is that of a piece, y(x) = a + b x.
type axis struct{ a, b clock.Vec }

func (l axis) at(x float64) clock.Vec { return l.a.Add(l.b.Scale(x)) }

// lay returns the axis of a piece of a crank held at two rests where its axes
// stand at y, the bends in one clock: y_k = y_1 + Σ (d_j − g_j (x − x_j)) over the
// joints on its left (MODEL §11). Two pieces are the case of one joint.
func lay(at []float64, bends []Bend, rests [2]Rest, y [2]clock.Vec, piece int) axis {
	p, q := carried(at, bends, rests[0].Piece), carried(at, bends, rests[1].Piece)
	v, w := y[0].Sub(p.at(rests[0].At)), y[1].Sub(q.at(rests[1].At))
	b := w.Sub(v).Scale(1 / (rests[1].At - rests[0].At))
	first := axis{v.Sub(b.Scale(rests[0].At)), b}
	k := carried(at, bends, piece)
	return axis{first.a.Add(k.a), first.b.Add(k.b)}
}

// carried is how a piece lies from the first.
func carried(at []float64, bends []Bend, piece int) (k axis) {
	for j := range piece {
		k.a = k.a.Add(bends[j].D).Add(bends[j].G.Scale(at[j]))
		k.b = k.b.Sub(bends[j].G)
	}
	return k
}
