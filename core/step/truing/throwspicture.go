package truing

import (
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/draw"
	"pintwelve/core/form"
)

// elevation draws a crank of several throws from the side, and names its pins for the
// buttons that show their clock faces.
func (a answers) elevation(p *pass, r *form.Reader) {
	t := &p.throws
	v := p.throwsView("throws", nil)
	v.Chosen = p.looked(r)
	for i := range p.stations[len(sideNames):] { // their readings stand among the others'
		st := &p.stations[len(sideNames)+i]
		a.Text("say."+st.name+".letter", st.letter)
	}
	if p.solved() {
		v.Lies = p.lies(t.stand)
		if len(p.moves) > 0 {
			v.Work = p.moves[0].joint
		}
		for j := range t.Joints {
			a.Say("throws."+strconv.Itoa(j+1), upperFirst(pinName(j)))
		}
		a.Text("say.throws.look", p.jointSits(pinOnFace(pinName(v.Chosen)), v.Chosen))
		a.Text("looked", strconv.Itoa(v.Chosen+1))
	}
	a.Text("picture.throws", draw.Throws(v))
}

// throwsView is a crank of several throws with its dials, as the pieces of a stand lie;
// nil draws it straight.
func (s *setUp) throwsView(prefix string, stand *crank.Stand) draw.ThrowsView {
	v := draw.ThrowsView{
		Prefix: prefix, LeftEnd: bench.Drawn(s.SideOf[clock.Left]), Length: s.length(), Rim: s.throws.Rim,
		Supports: s.supports(), Chosen: -1, Work: -1,
	}
	for _, j := range s.throws.Joints {
		v.Pins = append(v.Pins, draw.ThrowsPin{At: j.At, Throw: j.Throw, Hour: j.Phase})
	}
	for _, i := range s.alongCrank() {
		v.Dials = append(v.Dials, draw.ThrowsDial{Letter: s.stations[i].letter, At: s.stations[i].at})
	}
	if stand != nil {
		v.Lies = s.lies(stand)
	}
	return v
}

// alongCrank are the stations from left to right.
func (s *setUp) alongCrank() (all []int) {
	for i := range s.stations {
		all = append(all, i)
		for k := i; k > 0 && s.stations[all[k]].at < s.stations[all[k-1]].at; k-- {
			all[k], all[k-1] = all[k-1], all[k]
		}
	}
	return all
}

// lies are how the pieces lie, each from its left end.
func (s *setUp) lies(stand *crank.Stand) (all []draw.Lie) {
	for k := range s.throws.Pieces() {
		from, to := s.throws.reach(k, s.length())
		at := stand.At(k, from)
		slope := stand.At(k, to).Sub(at).Scale(1 / (to - from))
		all = append(all, draw.Lie{OffsetT: at.T, OffsetN: at.N, SlopeT: slope.T, SlopeN: slope.N})
	}
	return all
}

// solved tells whether the readings of a crank of several throws are worked out.
func (p *pass) solved() bool { return p.several() && p.wants < 0 && p.fault == nil }

// looked is the pin whose clock face is shown: the one that was touched, else the one
// to work at first, else the first. While readings are wanted it is that whose hours they have.
func (p *pass) looked(r *form.Reader) int {
	if !p.solved() {
		return 0
	}
	if pin := form.Whole(r.Form[form.Look.Name()]); pin > 0 && pin <= len(p.throws.Joints) {
		return pin - 1
	}
	if len(p.moves) > 0 {
		return p.moves[0].joint
	}
	return 0
}

// reach is where a piece reaches: from the pin on its left, or the end, to that on its right.
func (t *throws) reach(piece int, length float64) (from, to float64) {
	to = length
	if piece > 0 {
		from = t.Joints[piece-1].At
	}
	if piece < len(t.Joints) {
		to = t.Joints[piece].At
	}
	return from, to
}

// jointFace draws the clock face of a pin with what is to be done there; that of the
// first, which the readings' hours have, with where the needles stand highest.
func (a answers) jointFace(p *pass, joint int) {
	v := p.highSpots("face")
	if v.Bare = true; joint > 0 {
		v.High = nil
	}
	for _, m := range p.moves {
		if m.joint == joint {
			v.Moves = append(v.Moves, p.mark(m))
		}
	}
	a.Text("picture.face", draw.Face(v))
}
