package truing

import (
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/draw"
	"pintwelve/core/form"
)

// elevation draws a crank of several throws from the side, and names its pins for the
// buttons that show their clock faces.
func (a answers) elevation(p *pass, r *form.Reader) {
	t := &p.throws
	looked := p.looked(r)
	v := draw.ThrowsView{
		Prefix: "throws", LeftEnd: bench.Drawn(p.SideOf[clock.Left]), Length: p.length(), Rim: t.Rim,
		Supports: p.supports(), Chosen: looked, Work: -1,
	}
	for _, j := range t.Joints {
		v.Pins = append(v.Pins, draw.ThrowsPin{At: j.At, Throw: j.Throw, Hour: j.Phase})
	}
	for i := range p.stations {
		if i >= len(sideNames) { // its readings stand among the others'
			a.Text("say."+p.stations[i].name+".letter", p.stations[i].letter)
		}
		v.Dials = append(v.Dials, draw.ThrowsDial{Letter: p.stations[i].letter, At: p.stations[i].at})
		for k := len(v.Dials) - 1; k > 0 && v.Dials[k].At < v.Dials[k-1].At; k-- {
			v.Dials[k], v.Dials[k-1] = v.Dials[k-1], v.Dials[k]
		}
	}
	if p.solved() {
		for k := range t.Pieces() {
			from, to := t.reach(k, v.Length)
			v.Rise = append(v.Rise, [2]float64{t.stand.At(k, from).T, t.stand.At(k, to).T})
		}
		if len(p.moves) > 0 {
			v.Work = p.moves[0].joint
		}
		for j := range t.Joints {
			a.Say("throws."+strconv.Itoa(j+1), upperFirst(pinName(j)))
		}
		a.Text("say.throws.look", p.jointSits(pinOnFace(pinName(looked)), looked))
		a.Text("looked", strconv.Itoa(looked+1))
	}
	a.Text("picture.throws", draw.Throws(v))
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
