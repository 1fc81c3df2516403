package crank_test

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/tryout"
)

// rule says what to do after the passes so far: moves; or how it ended, unless it
// is to be read again.
type rule func(b *lathe, passes []crank.Pass) (do []crank.Done, ended ending, again bool)

// advice is the page's own.
func advice(m crank.Manner) rule {
	return func(_ *lathe, passes []crank.Pass) (do []crank.Done, ended ending, again bool) {
		n := m.Plan(passes, crank.Tolerance{RunOut: allowed})
		if n.Why == crank.Work {
			do = asAdvised(&n)
		}
		ended = [...]ending{crank.Work: givenUp, crank.Leave: left, crank.Unmendable: unmendable, crank.Unclear: unclear, crank.Stop: unclear}[n.Why]
		return do, ended, asks(&n, crank.AskReadAgain)
	}
}

// readsInside leaves a crank whose dials both read inside.
func readsInside(p *crank.Pass) bool {
	return p.Stations[clock.Left].RunOut <= allowed && p.Stations[clock.Right].RunOut <= allowed
}

// short is as far short of the whole as the advice aims, so that the rules
// differ by what they do and not by how boldly.
const short = 0.9

// trade is the trade's rule, common practice, no source: high spots opposite,
// strike the wheel of the worse one where it is high; on the same side, squeeze
// where they are high, or, that being near the pin, spread from across. As hard as
// usual for that run-out, and nothing learned.
func trade(b *lathe, passes []crank.Pass) (do []crank.Done, ended ending, again bool) {
	p := &passes[len(passes)-1]
	if readsInside(p) {
		return nil, left, false
	}
	l, r := p.Stations[clock.Left], p.Stations[clock.Right]
	worse := l
	if r.RunOut > l.RunOut {
		worse = r
	}
	perD, perG := b.shows()
	if clock.Apart(l.E.Hour(), r.E.Hour()) > 3 {
		d := crank.Done{Kind: crank.Strike, Wheel: worse.Half(), Hour: 3, Dose: short * worse.RunOut / perD / crank.UsualStrike}
		if worse.E.N < 0 {
			d.Hour = 9
		}
		return []crank.Done{d}, givenUp, false
	}
	high := l.E.Add(r.E)
	d := crank.Done{Kind: crank.Squeeze, Hour: high.Hour(), Dose: short * worse.RunOut / perG / crank.UsualBend}
	if high.T > 0 {
		d.Kind, d.Hour = crank.Spread, high.Scale(-1).Hour()
	}
	return []crank.Done{d}, givenUp, false
}

// shows is the run-out that offset and slope each show by themselves on the
// worse dial, for each mm and each mm per mm.
func (b *lathe) shows() (perD, perG float64) {
	s := crank.Pose{Crank: b.set, Axes: crank.Axes{Pin: b.set.Pin}}
	offset, slope := s.After(clock.Vec{N: 1}, clock.Vec{}), s.After(clock.Vec{}, clock.Vec{N: 1})
	for h := clock.Left; h <= clock.Right; h++ {
		perD = math.Max(perD, offset.RunOut(h, b.at[h]))
		perG = math.Max(perG, slope.RunOut(h, b.at[h]))
	}
	return perD, perG
}

// largest takes the component that shows most, as hard as usual, and learns
// nothing.
func largest(_ *lathe, passes []crank.Pass) (do []crank.Done, ended ending, again bool) {
	p := &passes[len(passes)-1]
	if readsInside(p) {
		return nil, left, false
	}
	a := p.Pose.Advise(p.Stations, crank.Tolerance{RunOut: allowed})
	m, _ := p.Pose.Strike()
	dose := m.Amount / crank.UsualStrike
	if a.CloseWorth > a.StrikeWorth {
		m, _ = p.Pose.Close()
		dose = m.Amount / m.Arm / crank.UsualBend
	}
	return []crank.Done{{Kind: m.Kind, Wheel: m.Wheel, Hour: m.Hour, Dose: short * dose}}, givenUp, false
}

// oracle sees how the halves truly sit and knows what this crank yields.
func oracle(b *lathe, passes []crank.Pass) (do []crank.Done, ended ending, again bool) {
	if b.made.Worst() <= allowed {
		return nil, left, false
	}
	s, at := passes[0].Pose, b.made.Sits(0)
	s.D, s.G = at.D, at.G
	strike, _ := s.Strike()
	gap, _ := s.Close()
	return []crank.Done{
		{Kind: strike.Kind, Wheel: strike.Wheel, Hour: strike.Hour, Dose: strike.Amount / crank.UsualStrike / b.made.Gain(0, tryout.Strike)},
		{Kind: gap.Kind, Hour: gap.Hour, Dose: gap.Amount / gap.Arm / crank.UsualBend / b.made.Gain(0, tryout.Kind(gap.Kind))},
	}, givenUp, false
}
