package truing

import (
	"math"
	"pintwelve/core/bench"
	"pintwelve/core/draw"
	"strconv"
)

// spin draws both dials and the crank, as found above and as on the bench
// below, their bend alike too big, and says how the page turns them: each dial's
// swing and high hour.
func (a answers) spin(p *pass, found, left *round) {
	full := 0.0
	for _, d := range [...]*round{found, left} {
		for i := range sideNames {
			full = math.Max(full, d.reading[i].E.Len())
		}
	}
	if full == 0 {
		return
	}
	a.Say("spin.found", "yes")
	bends := p.turningBends(found, left)
	a.spinOne(p, "found", found, full, bends[0])
	if found.key != left.key {
		a.Say("spin.left", "yes")
		a.spinOne(p, "left", left, full, bends[1])
	}
}

// turningBends are the crank as it sits by two rounds, drawn alike too big; nil
// where its readings don't tell.
func (s *setUp) turningBends(rounds ...*round) (all [2]*draw.BendView) {
	factor := 0.0
	for i, d := range rounds {
		pose, err := s.solveOne(d.counted)
		if err != nil {
			continue
		}
		v := s.bendView("", &pose, d.counted)
		all[i] = &v
		if own := v.RoundFactor(); own > 0 && (factor == 0 || own < factor) {
			factor = own
		}
	}
	for _, v := range all {
		if v != nil {
			v.Factor = factor
		}
	}
	return all
}

func (a answers) spinOne(p *pass, which string, d *round, full float64, bend *draw.BendView) {
	v := draw.TurnView{Prefix: which, SeenFrom: bench.Drawn(p.SeenFrom()), Range: p.inFine(full), Bend: bend}
	for i, side := range sideNames {
		got := &d.reading[i]
		e := got.E.From(p.Seen)
		words, reading := p.Amount(got.RunOut), p.inFine(e.T)
		if got.lack != nothing {
			words, reading = "", math.NaN()
		}
		if i == 0 {
			v.Drive, v.DriveWords = reading, words
		} else {
			v.Timing, v.TimingWords = reading, words
		}
		a.Text("spin."+which+"."+side, strconv.FormatFloat(p.inFine(e.Len()), 'f', 6, 64)+" "+strconv.FormatFloat(e.Hour(), 'f', 4, 64))
	}
	a.Text("picture."+which, draw.Turn(v))
}
