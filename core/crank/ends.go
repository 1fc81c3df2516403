package crank

import "pintwelve/core/clock"

// Shaft looks at the shaft of an end piece by its dials alone, as Pose.Shaft does of a
// crank of one throw.
func (s *Stand) Shaft(h clock.End) Shaft {
	rests := &s.Assembly.Rests
	p := Pose{Crank: Crank{Support: [2]float64{rests[clock.Left].At, rests[clock.Right].At}}}
	p.Pin = s.middle()
	return p.Shaft(s.onEnd(h), h)
}

// onEnd are the dials on the piece that a rest holds.
func (s *Stand) onEnd(h clock.End) (all []Station) {
	for i := range s.dials {
		if s.dials[i].Piece == s.Assembly.Rests[h].Piece {
			st := s.dials[i].Station
			st.Half = h
			all = append(all, st)
		}
	}
	return all
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
