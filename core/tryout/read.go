package tryout

import (
	"math"

	"pintwelve/core/clock"
)

// Dial is how a dial is read.
type Dial struct {
	Division float64 // mm, readings are to the nearest
	Scatter  float64 // mm, deviation of a reading before that
	Mark     float64 // hours, between the marks that an hour is told to the nearest of
}

// HalfThou is a half-thou dial in a steady hand, hours told to the half.
var HalfThou = Dial{Division: 0.0127, Scatter: 0.00254, Mark: 0.5}

// Turn returns what a half's dial shows [mm] with each of the hours in turn under the
// plunger. Another turn with no move between scatters anew.
func (m *Made) Turn(h clock.End, d Dial, hours ...float64) []float64 {
	return m.TurnAt(m.crank.Dial[h], d, hours...)
}

// TurnAt is Turn with a dial set at any place x along the crank [mm].
func (m *Made) TurnAt(x float64, d Dial, hours ...float64) []float64 {
	piece := m.crank.pieceAt(x)
	luck, b := m.reading(piece), m.pressed()
	zero := luck.unit() * d.Division
	out := make([]float64, len(hours))
	for i, hour := range hours {
		out[i] = d.read(&luck, zero+m.crank.surface(b, piece, x, hour)-journal)
	}
	return out
}

// Watch returns what is seen of a half's dial by turning the crank right round:
// the full movement [mm], and the hours where the needle passes half-way, rising
// and falling as the hours count up.
func (m *Made) Watch(h clock.End, d Dial) (runOut, rising, falling float64) {
	return m.WatchAt(m.crank.Dial[h], d)
}

// WatchAt is Watch with a dial set at any place x along the crank [mm].
func (m *Made) WatchAt(x float64, d Dial) (runOut, rising, falling float64) {
	piece := m.crank.pieceAt(x)
	luck := m.reading(piece)
	zero := luck.unit() * d.Division
	e := m.crank.eccentricity(m.pressed(), piece, x)
	high, low := d.read(&luck, zero+e.Len()), d.read(&luck, zero-e.Len())
	half := func(side float64) float64 {
		// The needle is half-way where it seems so: within half a division, though
		// never near the top or the bottom that it was told from.
		level := (high+low)/2 - zero + d.Division*luck.between(-0.5, 0.5) + d.Scatter*luck.normal()
		cos := math.Max(-0.7, math.Min(0.7, level/math.Max(e.Len(), 1e-9)))
		return d.hour(e.Hour() + side*math.Acos(cos)*6/math.Pi)
	}
	return math.Max(high-low, 0), half(-1), half(1)
}

// aRound is more turns than are read on one piece in one round.
const aRound = 64

// Taken notes that a round of readings was taken, whatever was read on each piece, for a
// crank whose passes are gone through anew.
func (m *Made) Taken() {
	for piece := range m.turns {
		m.turns[piece] += aRound
	}
}

func (m *Made) reading(piece int) chance {
	luck := chanceOf(m.seed, forReading, (m.moves*len(m.turns)+piece)<<16+m.turns[piece])
	m.turns[piece]++
	return luck
}

// read is a reading as it is called out.
func (d Dial) read(luck *chance, mm float64) float64 {
	mm += d.Scatter * luck.normal()
	if d.Division > 0 {
		mm = math.Round(mm/d.Division) * d.Division
	}
	return mm
}

func (d Dial) hour(hour float64) float64 {
	if d.Mark > 0 {
		hour = math.Round(hour/d.Mark) * d.Mark
	}
	return clock.Wrap(hour)
}
