// Package tryout is a made-up crank to try the truing on: it is struck,
// squeezed and spread, and the dials answer as real ones would. It teaches the
// job, and proves the advice on cranks whose truth is known.
//
// It is rigid pieces turned by whole rotations, apart from the small angles of
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
	Pin     float64    // middle of the pin, of several the first from the left
	More    []Pin      // the others, from left to right
	Support [2]float64 // where it is held, on two pieces
	Dial    [2]float64 // where its dial stands
}

// Pin is a further crankpin: its middle, its throw, and its hour, the first being at 12.
type Pin struct{ At, Throw, Phase float64 }

// joints is how many pins there are; piece j lies left of pin j, counted from 0.
func (c *Crank) joints() int { return 1 + len(c.More) }

// pin is one of all of them.
func (c *Crank) pin(joint int) Pin {
	if joint == 0 {
		return Pin{At: c.Pin, Throw: c.Throw}
	}
	return c.More[joint-1]
}

// pieceAt is the piece that a place lies on.
func (c *Crank) pieceAt(x float64) (piece int) {
	for piece < c.joints() && c.pin(piece).At < x {
		piece++
	}
	return piece
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

// Blow is one move made at a joint, the first pin's being 0, in its pin's own clock: the wheel struck (a squeeze or spread takes both), the
// hour of the rim where it is worked, and how hard: blows times strength, 1 being
// a usual one.
type Blow struct {
	Joint int
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

// Start is how what is right of a joint sits from what is left of it, at the middle of
// its pin and in its clock: offset [mm] and gap slope [mm per mm] (MODEL §3, §11).
type Start struct{ D, G clock.Vec }

// Made is a made-up crank on the lathe.
type Made struct {
	crank  Crank
	temper Temper
	seed   uint64
	body   body
	gain   [][3]float64 // by joint and Kind, of what the temper's usual dose does
	ratio  []float64    // by joint: mm per mm of slope for each mm of offset that moves the dials alike
	moves  int          // made so far
	turns  []int        // read on each piece since the last move
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

// New sets a made-up crank up, as its joints sit from the left; those not given are true.
// The error is a Fault.
func New(c Crank, t Temper, seed uint64, sits ...Start) (*Made, error) {
	if !c.possible() {
		return nil, Lengths
	}
	for i := range sits {
		if !sits[i].possible() {
			return nil, Sitting
		}
	}
	m := &Made{crank: c, temper: t, seed: seed, body: c.seated(sits...), turns: make([]int, c.joints()+1)}
	luck := chanceOf(seed, forTemper, 0)
	for j := range c.joints() {
		var gain [3]float64
		for k := range gain {
			gain[k] = math.Exp(t.Gain * luck.normal())
		}
		m.gain = append(m.gain, gain)
		perD, perG := c.perUnit(j)
		m.ratio = append(m.ratio, perD/perG)
	}
	return m, nil
}

func (s *Start) possible() bool { return s.D.Len() <= mostOut && s.G.Len() <= mostBend }

func (c *Crank) possible() bool {
	l, r := clock.Left, clock.Right
	ordered := []float64{math.Max(-mostLong, c.Dial[l])}
	for j := range c.joints() {
		pin := c.pin(j)
		if !(pin.Throw >= 1 && pin.Throw < c.Rim && math.Abs(pin.Phase) <= mostLong) {
			return false
		}
		ordered = append(ordered, pin.At)
	}
	ordered = append(ordered, math.Min(c.Dial[r], mostLong))
	for i := 1; i < len(ordered); i++ {
		if !(ordered[i]-ordered[i-1] >= 1) {
			return false
		}
	}
	return c.Rim <= mostLong && c.joints() < mostPieces && c.pieceAt(c.Support[l]) < c.pieceAt(c.Support[r]) &&
		c.clear(c.Support[l]) && c.clear(c.Support[r]) && math.Abs(c.Dial[l]-c.Support[l]) >= 1 && math.Abs(c.Dial[r]-c.Support[r]) >= 1
}

// clear tells whether a place is on the crank and a little from every pin.
func (c *Crank) clear(x float64) bool {
	for j := range c.joints() {
		if !(math.Abs(x-c.pin(j).At) >= 1) {
			return false
		}
	}
	return math.Abs(x) <= mostLong
}

// seated is the body whose joints sit so.
func (c *Crank) seated(sits ...Start) body {
	b := straight()
	for j, s := range sits {
		c.twist(&b, j, s.D.N)
		c.hinge(&b, j, s.G, 0)
		c.shift(&b, j, s.D.Sub(c.sits(&b, j).D))
	}
	return b
}

// shows is the worst eccentricity [mm] of a crank whose joints sit so.
func (c *Crank) shows(sits ...Start) float64 {
	b := c.seated(sits...)
	return c.worst(&b) / 2
}

// perUnit is what a joint's offset [per mm] and gap slope show across its pin's plane,
// all else true.
func (c *Crank) perUnit(joint int) (perD, perG float64) {
	sits := make([]Start, joint+1)
	sits[joint] = Start{D: clock.Vec{N: 0.01}}
	perD = c.shows(sits...)
	sits[joint] = Start{G: clock.Vec{N: 0.01}}
	return perD, c.shows(sits...)
}

// worst is the worst run-out [mm] at the dials of both ends and in the middle of each
// inner journal.
func (c *Crank) worst(b *body) (worst float64) {
	for piece := range c.joints() + 1 {
		worst = math.Max(worst, 2*c.eccentricity(b, piece, c.dialOn(piece)).Len())
	}
	return worst
}

// dialOn is where the dial of a piece stands.
func (c *Crank) dialOn(piece int) float64 {
	h, inner := c.end(piece)
	if inner {
		return (c.pin(piece-1).At + c.pin(piece).At) / 2
	}
	return c.Dial[h]
}

// RunOut is the true run-out at a half's dial [mm].
func (m *Made) RunOut(h clock.End) float64 { return m.RunOutAt(m.crank.Dial[h]) }

// RunOutAt is the true run-out at a place along the crank [mm].
func (m *Made) RunOutAt(x float64) float64 { return 2 * m.Eccentricity(x).Len() }

// Eccentricity is how far the axis truly stands from the line that the crank turns on at a
// place along it [mm], in the first pin's clock.
func (m *Made) Eccentricity(x float64) clock.Vec {
	return m.crank.eccentricity(m.pressed(), m.crank.pieceAt(x), x)
}

// Worst is the worst of the true run-outs at the dials of both ends and in the middle of
// each inner journal [mm].
func (m *Made) Worst() float64 { return m.crank.worst(m.pressed()) }

// Sits is how what is right of a joint truly sits from what is left of it.
func (m *Made) Sits(joint int) Start { return m.crank.sits(&m.body, joint) }

// Floor is the worst true run-out [mm] with twist and gap taken out of each joint and
// only the throw mismatch left.
func (m *Made) Floor() float64 {
	var sits []Start
	for j := range m.crank.joints() {
		sits = append(sits, Start{D: clock.Vec{T: m.Sits(j).D.T}})
	}
	return 2 * m.crank.shows(sits...)
}

// Gain is how many times the temper's usual dose a joint yields to a dose of a kind.
func (m *Made) Gain(joint int, k Kind) float64 { return m.gain[joint][k] }
