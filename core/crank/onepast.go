package crank

import "slices"

// onePast are the passes of a crank of one throw that were gathered last, and by which limits.
type onePast struct {
	passes []Pass
	rounds []*pooled
	tol    Tolerance
}

// by is what is still known by other limits: nothing where places in the cases are judged.
func (p *onePast) by(tol *Tolerance) *onePast {
	was := &p.tol
	if was.RunOut != tol.RunOut || was.Running != tol.Running || was.Tilt != tol.Tilt || len(tol.Places) > 0 {
		p.passes, p.rounds, p.tol = nil, nil, *tol
	}
	return p
}

// pool gathers passes; of those that are alike what was gathered before is taken as it is.
func (p *onePast) pool(passes []Pass) []*pooled {
	alike := 0
	for alike < min(len(passes), len(p.passes)) && passes[alike].same(&p.passes[alike]) {
		alike++
	}
	stay, from := settled(len(p.rounds), alike, func(i int) int { return p.rounds[i].began })
	now := onePast{passes, p.rounds[:stay:stay], p.tol}
	gather(&now, from, len(passes))
	for i := stay; i < len(now.rounds); i++ {
		g := now.rounds[i]
		if len(g.Stations) > 0 {
			g.judged = g.worst()
		}
		if i > 0 {
			g.came = changed(now.rounds[i-1], g)
		}
	}
	if alike < len(passes) { // else more is known already
		*p = now
	}
	return now.rounds
}

// same tells whether a pass is another, which its pose follows from.
func (p *Pass) same(q *Pass) bool {
	return p.Since == q.Since && p.Pose.Crank == q.Pose.Crank && slices.Equal(p.Stations, q.Stations) && slices.Equal(p.Done, q.Done)
}

func (p *onePast) latest() (*pooling, bool) {
	if len(p.rounds) == 0 {
		return nil, false
	}
	last := p.rounds[len(p.rounds)-1]
	return &last.pooling, len(last.Done) > 0 && !last.assumed
}

func (p *onePast) since(pass int) Since { return p.passes[pass].Since }

func (p *onePast) differs(pass int) (bool, Figure) {
	return p.rounds[len(p.rounds)-1].differs(&p.passes[pass])
}

func (p *onePast) begin(pass int, with pooling) {
	p.rounds = append(p.rounds, &pooled{Pass: p.passes[pass], pooling: with})
}

func (p *onePast) join(pass int) {
	last := p.rounds[len(p.rounds)-1]
	last.join(&p.passes[pass])
	last.Since = p.passes[pass].Since
}

func (p *onePast) stand(pass int, with pooling) {
	p.rounds = p.rounds[:len(p.rounds)-1]
	p.begin(pass, with)
}
