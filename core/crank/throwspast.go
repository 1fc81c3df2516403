package crank

import "slices"

// throwsPast are the passes of an assembly that were gathered last.
type throwsPast struct {
	passes []ThrowsPass
	rounds []*pooledThrows
}

// pool gathers passes; of those that are alike what was gathered before is taken as it is.
func (p *throwsPast) pool(passes []ThrowsPass) []*pooledThrows {
	alike := 0
	for alike < min(len(passes), len(p.passes)) && passes[alike].same(&p.passes[alike]) {
		alike++
	}
	stay, from := settled(len(p.rounds), alike, func(i int) int { return p.rounds[i].began })
	now := throwsPast{passes, p.rounds[:stay:stay]}
	gather(&now, from, len(passes))
	for i := max(stay, 1); i < len(now.rounds); i++ {
		now.rounds[i].came = now.rounds[i-1].shifts(now.rounds[i])
	}
	if alike < len(passes) { // else more is known already
		*p = now
	}
	return now.rounds
}

// same tells whether a pass is another.
func (p *ThrowsPass) same(q *ThrowsPass) bool {
	return p.Since == q.Since && slices.Equal(p.Done, q.Done) && p.Stand.same(q.Stand)
}

// same tells whether an assembly stands as another by the same readings.
func (s *Stand) same(t *Stand) bool {
	if s == nil || t == nil {
		return s == t
	}
	return s == t || s.Assembly.same(&t.Assembly) && slices.Equal(s.dials, t.dials) && slices.Equal(s.gaps, t.gaps)
}

func (a *Assembly) same(b *Assembly) bool {
	return a.Rim == b.Rim && a.Rests == b.Rests && a.Mount == b.Mount && a.CentresKnown == b.CentresKnown &&
		slices.Equal(a.Joints, b.Joints) && slices.Equal(a.Mains, b.Mains)
}

func (p *throwsPast) latest() (*pooling, bool) {
	if len(p.rounds) == 0 {
		return nil, false
	}
	last := p.rounds[len(p.rounds)-1]
	return &last.pooling, len(last.Done) > 0
}

func (p *throwsPast) since(pass int) Since { return p.passes[pass].Since }

func (p *throwsPast) differs(pass int) (bool, Figure) {
	return p.rounds[len(p.rounds)-1].differs(&p.passes[pass])
}

func (p *throwsPast) begin(pass int, with pooling) {
	p.rounds = append(p.rounds, &pooledThrows{ThrowsPass: p.passes[pass], pooling: with})
}

func (p *throwsPast) join(pass int) {
	last := p.rounds[len(p.rounds)-1]
	last.join(&p.passes[pass])
	last.Since = p.passes[pass].Since
}

func (p *throwsPast) stand(pass int, with pooling) {
	p.rounds = p.rounds[:len(p.rounds)-1]
	p.begin(pass, with)
}
