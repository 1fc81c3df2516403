package truing

import (
	"math"

	"pintwelve/core/bench"
	"pintwelve/core/draw"
)

// spin draws the dials and the crank, as found above and as on the bench below, their
// bend alike too big; the page turns them by what the drawings carry.
func (a answers) spin(p *pass, found, left int) {
	full := 0.0
	for _, i := range [...]int{found, left} {
		for n := range p.rounds[i].reading {
			full = math.Max(full, p.rounds[i].reading[n].E.Len())
		}
	}
	if full == 0 {
		return
	}
	views := []draw.TurnView{p.turnView("found", found, full)}
	a.Say("spin.found", "yes")
	a.Say("spin.of", p.passName(found))
	if found != left {
		a.Say("spin.left", "yes")
		views = append(views, p.turnView("left", left, full))
	}
	p.bendTurns(views, found, left)
	for i := range views {
		a.Text("picture."+views[i].Prefix, draw.Turn(views[i]))
	}
}

// turnView is a round with its dials, the needles' swing and high spots in them.
func (p *pass) turnView(prefix string, round int, full float64) draw.TurnView {
	d := &p.rounds[round]
	v := draw.TurnView{Prefix: prefix, SeenFrom: bench.Drawn(p.SeenFrom()), Range: p.inFine(full)}
	shown := []int{0, 1} // beside the crank
	if p.several() && p.past[round].stations != nil {
		shown = p.alongCrank() // in rows above the crank from the side
	}
	for _, i := range shown {
		got := &d.reading[i]
		dial := draw.TurnDial{Letter: p.stations[i].letter, Swing: math.NaN()}
		if got.lack == nothing {
			e := got.E.From(p.Seen)
			dial.Words, dial.Swing, dial.High = p.Amount(got.RunOut), p.inFine(e.Len()), e.Hour()
			if len(dial.Letter) > 2 { // "D10" leaves no room for the unit
				dial.Words = p.Bare(got.RunOut)
			}
		}
		v.Dials = append(v.Dials, dial)
	}
	return v
}

// bendTurns puts the crank from the side below the dials where the readings tell how it
// sits, drawn alike too big.
func (p *pass) bendTurns(views []draw.TurnView, rounds ...int) {
	factor := 0.0
	least := func(own float64) {
		if own > 0 && (factor == 0 || own < factor) {
			factor = own
		}
	}
	for i := range views {
		v, as := &views[i], &p.past[rounds[i]]
		switch {
		case as.stations == nil:
		case p.several():
			throws := p.throwsView("", as.stand)
			v.Throws = &throws
			least(throws.RoundFactor())
		default:
			bend := p.bendView("", &as.pose, as.stations)
			v.Bend = &bend
			least(bend.RoundFactor())
		}
	}
	for _, v := range views {
		if v.Bend != nil {
			v.Bend.Factor = factor
		}
		if v.Throws != nil {
			v.Throws.Factor = factor
		}
	}
}
