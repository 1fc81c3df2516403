// Package tryout is a made-up crank to try the truing on: it is struck,
// squeezed and spread, and the dials answer as real ones would. It teaches the
// job, and proves the advice on cranks whose truth is known.
//
// It is a rigid body turned by whole rotations, apart from the small angles of
// the truing itself (MODEL §1, §3 and §4 for the frame and the sense of
// the moves). The shafts are round, and straight and held on their axes unless
// Spoil says otherwise. Everything
// follows from the geometry, the temper, the seed, the start and the moves in
// their order: the same again gives the same readings.
//
// Lengths are mm, x from the left end, hours those seen from the left end,
// arrays indexed by clock.Left and clock.Right.
package tryout

import (
	"math"

	"pintwelve/core/clock"
)

// Crank is the geometry: how the crank is held and where the dials stand.
type Crank struct {
	Throw   float64    // shaft centre to pin centre
	Rim     float64    // rim radius of the wheels
	Pin     float64    // middle of the pin
	Support [2]float64 // where each half is held
	Dial    [2]float64 // where its dial stands
}

// Kind is a kind of move.
type Kind uint8

// The moves: a soft hammer on one rim, a clamp across both rims, a wedge
// between them.
const (
	Strike Kind = iota
	Squeeze
	Spread
)

// Blow is one move made: the wheel struck (a squeeze or spread takes both), the
// hour of the rim where it is worked, and how hard: blows times strength, 1 being
// a usual one.
type Blow struct {
	Kind  Kind
	Wheel clock.End
	Hour  float64
	Dose  float64
}

// Temper is how cranks of a sort answer to moves.
type Temper struct {
	// What a usual dose does to the middling crank of the sort: how far [mm] a
	// strike square to the pin brings the shaft over, and the slope [mm per mm]
	// that a squeeze or spread puts between the wheels.
	Strike, Bend float64
	// Gain is how differently cranks yield: the deviation of the logarithm of
	// what a dose does, drawn for each crank and kind of move.
	Gain float64
	// Hand is how unlike two blows of one dose fall: even within ± this part of
	// the dose, or, where Gaussian, with this deviation.
	Hand     float64
	Gaussian bool
	// Cross is how much of a move's effect on the dials goes, in a random
	// direction, into the other component: into the gap from a strike, into the
	// offset from a squeeze or spread. With Throws that takes the throws out of
	// match too; without, it is twist alone, one way or the other.
	Cross  float64
	Throws bool
	// Dead is the dose of which nothing stays: a move does what it is more.
	Dead float64
	// Hinge is how far [mm] to the right of the crankpin's middle it gives to a
	// squeeze or spread, as where one wheel's joint gives and the other's doesn't.
	Hinge float64
}

// Rough is a temper rougher than a practised hand's: strokes of a hammer that
// differ by two fifths either way on cranks that yield by half as much or half as
// much again, and a seventh of every move gone astray. By judgement, no source.
var Rough = Temper{Strike: 0.1, Bend: 0.001, Gain: 0.4, Hand: 0.4, Cross: 0.15}

// Start is how the right half sits from the left to begin with, at the middle of
// the pin: offset [mm] and gap slope [mm per mm] (MODEL §3).
type Start struct{ D, G clock.Vec }

// Made is a made-up crank on the lathe.
type Made struct {
	crank  Crank
	temper Temper
	seed   uint64
	body   body
	gain   [3]float64 // by Kind, of what the temper's usual dose does
	ratio  float64    // mm per mm of slope for each mm of offset that moves the dials alike
	moves  int        // made so far
	rounds [2]int     // of readings taken on each dial since the last move
}

// Fault says what can't be: Lengths, a Start or a Blow.
type Fault uint8

// The faults.
const (
	Lengths Fault = iota + 1 // of the crank: no such crank could be held and turned
	Sitting                  // the start is no number, or so far out that it is no crank
	Moving                   // no such move: its hour or dose is no number, or its dose more than MostDose or below 0
)

// Error names the fault, for a log.
func (f Fault) Error() string {
	return "tryout: impossible " + [...]string{Lengths: "lengths", Sitting: "start", Moving: "move"}[f]
}

const (
	// MostDose is more than anyone gives between two rounds of readings.
	MostDose = 100.0
	mostOut  = 5.0  // mm of offset
	mostBend = 0.05 // slope
	mostLong = 1e4  // mm
)

// New sets a made-up crank up. The error is a Fault.
func New(c Crank, t Temper, seed uint64, s Start) (*Made, error) {
	if !c.possible() {
		return nil, Lengths
	}
	if !s.possible() {
		return nil, Sitting
	}
	m := &Made{crank: c, temper: t, seed: seed, body: c.seated(s)}
	luck := chanceOf(seed, forTemper, 0)
	for k := range m.gain {
		m.gain[k] = math.Exp(t.Gain * luck.normal())
	}
	m.ratio = c.shows(clock.Vec{N: 0.01}, clock.Vec{}) / c.shows(clock.Vec{}, clock.Vec{N: 0.01})
	return m, nil
}

func (s *Start) possible() bool { return s.D.Len() <= mostOut && s.G.Len() <= mostBend }

func (c *Crank) possible() bool {
	l, r := clock.Left, clock.Right
	ordered := []float64{-mostLong, c.Support[l], c.Pin, c.Support[r], mostLong}
	for i := 1; i < len(ordered); i++ {
		if !(ordered[i]-ordered[i-1] >= 1) {
			return false
		}
	}
	return c.Throw >= 1 && c.Rim > c.Throw && c.Rim <= mostLong &&
		math.Abs(c.Dial[l]-c.Support[l]) >= 1 && c.Dial[l] < c.Pin && c.Dial[l] > -mostLong &&
		math.Abs(c.Dial[r]-c.Support[r]) >= 1 && c.Dial[r] > c.Pin && c.Dial[r] < mostLong
}

// seated is the body that sits so.
func (c *Crank) seated(s Start) body {
	b := straight()
	c.twist(&b, s.D.N)
	c.hinge(&b, s.G, 0)
	d, _ := c.sits(&b)
	b.shift(s.D.Sub(d))
	return b
}

// shows is the worst eccentricity at the dials [mm] of a crank that sits so.
func (c *Crank) shows(d, g clock.Vec) float64 {
	b := c.seated(Start{d, g})
	return c.worst(&b) / 2
}

// worst is the worse run-out at the dials [mm].
func (c *Crank) worst(b *body) float64 {
	return 2 * math.Max(c.eccentricity(b, clock.Left, c.Dial[clock.Left]).Len(),
		c.eccentricity(b, clock.Right, c.Dial[clock.Right]).Len())
}

// RunOut is the true run-out at a half's dial [mm].
func (m *Made) RunOut(h clock.End) float64 {
	return 2 * m.crank.eccentricity(m.pressed(), h, m.crank.Dial[h]).Len()
}

// Worst is the worse of the two true run-outs [mm].
func (m *Made) Worst() float64 { return math.Max(m.RunOut(clock.Left), m.RunOut(clock.Right)) }

// Sits is how the right half truly sits from the left.
func (m *Made) Sits() Start {
	d, g := m.crank.sits(&m.body)
	return Start{d, g}
}

// Floor is the worst true run-out [mm] with twist and gap taken out and only the
// throw mismatch left.
func (m *Made) Floor() float64 {
	d, _ := m.crank.sits(&m.body)
	return 2 * m.crank.shows(clock.Vec{T: d.T}, clock.Vec{})
}

// Gain is how many times the temper's usual dose this crank yields to a dose of
// a kind.
func (m *Made) Gain(k Kind) float64 { return m.gain[k] }
