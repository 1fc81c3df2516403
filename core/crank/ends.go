package crank

import "pintwelve/core/clock"

// Shaft looks at the shaft of an end piece by its dials alone, as Pose.Shaft does of a
// crank of one throw.
func (s *Stand) Shaft(h clock.End) Shaft {
	rest := s.Assembly.Rests[h]
	return shaftBy(s.dials, rest.Piece, rest.At)
}

// unseen tells whether the shaft of an end piece was never read at more than one place.
func (s *Stand) unseen() bool {
	return s.Shaft(clock.Left).State == Unseen || s.Shaft(clock.Right).State == Unseen
}

// hung names centre and shaft, of a stop or of what no bumping mends, where nobody has
// looked or where they were found wanting.
func (n *ThrowsNext) hung() {
	if n.Why != Stop && n.Why != Unmendable || n.judge.looked() {
		return
	}
	n.blame(-1, CentreOrShaft)
}
