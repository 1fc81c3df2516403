package tryout

import "pintwelve/core/clock"

// Flaw is what may be wrong with the shafts and how they are held, arrays by half,
// vectors on the half's own clock face as seen from the left end. The zero value is
// a sound crank.
type Flaw struct {
	Hole   [2]clock.Vec // mm, where the centre hole stands from the shaft's axis
	BentAt [2]float64   // mm, the place from which on outwards the shaft is bent
	Bent   [2]clock.Vec // mm per mm, how far it then goes off
	// Pressed is the slope that the pressing tailstock puts between the first wheels while
	// the crank is read.
	Pressed clock.Vec
}

// past is how far the place x lies outwards of where a half's shaft is bent, minus
// on the left; 0 where it doesn't.
func (f *Flaw) past(h clock.End, x float64) float64 {
	past := x - f.BentAt[h]
	if f.Bent[h] == (clock.Vec{}) || (h == clock.Left) != (past < 0) {
		return 0
	}
	return past
}

// Spoil gives the crank a flaw; a nil one mends it.
func (m *Made) Spoil(f Flaw) { m.body.flaw = f }

// Aligned is what the worse dial would show [mm] between good centres, the shafts
// straight and nothing pressing: how true the halves are.
func (m *Made) Aligned() float64 {
	b := m.body
	b.flaw = Flaw{}
	return m.crank.worst(&b)
}

// pressed is the body as it is while it is read.
func (m *Made) pressed() *body {
	b := m.body
	m.crank.hinge(&b, 0, b.flaw.Pressed, 0)
	return &b
}
