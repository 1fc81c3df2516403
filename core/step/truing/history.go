package truing

import (
	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// history are the passes as the crank room takes them. What was done after each is
// what is logged, or else what the pass after it says was done of what had been
// advised; each round of the bench is told what counts.
func (p *pass) history(r *form.Reader, kept *bench.Kept) []crank.Pass {
	all := make([]crank.Pass, len(p.rounds))
	for i := range p.rounds {
		d := &p.rounds[i]
		d.did = bench.OfRow(kept, r, "pass", d.key, "done", func(r *form.Reader) []crank.Done { return p.done(r, d.key) })
		all[i].Done = d.did
		if pose, err := p.solveOne(d.counted); err == nil {
			all[i].Pose, all[i].Stations = pose, d.counted
		}
		if i > 0 {
			p.since(r, all[:i+1], i)
		}
	}
	return all
}

// since reads what came before a pass.
func (p *pass) since(r *form.Reader, passes []crank.Pass, i int) {
	d, before := &p.rounds[i], &p.rounds[i-1]
	from, to := &passes[i-1], &passes[i]
	d.since = r.Word(form.PassSince, d.key)
	if len(before.did) == 0 && (d.since == "said" || d.since == "first") {
		before.did, before.unlogged = p.advisedAt(passes[:i], before), true
	}
	switch logged := len(before.did) > 0; {
	case d.since == "first" && logged:
		before.did = before.did[:1]
	case d.since == "nuts", d.since == "else" && !logged, r.Word(form.PassTailstock, before.key) == "moved":
		to.Since, from.Done = crank.Changed, nil
		return
	case d.since != "" && !logged:
		to.Since = crank.Nothing
	}
	from.Done = before.did
}

// advisedAt is what was advised at the last of the passes, as it was told: nothing
// where its readings can't be solved, whatever those before it came to.
func (p *pass) advisedAt(passes []crank.Pass, d *round) (done []crank.Done) {
	last := &passes[len(passes)-1]
	if last.Stations == nil || p.several() {
		return nil
	}
	next := crank.Plan(passes, p.allowed)
	for _, m := range p.setUp.moves(d, &last.Pose, &next) {
		done = append(done, doneAs(&m.PlannedMove))
	}
	return done
}

// done reads what is logged as done after a pass.
func (s *setUp) done(r *form.Reader, key string) []crank.Done {
	var all []crank.Done
	for _, row := range r.Rows("pass." + key + ".done") {
		hour, ok := r.Number(form.PassDoneHour, key, row)
		if !ok {
			continue
		}
		all = append(all, crank.Done{
			Kind: kindNamed(r.Word(form.PassDoneKind, key, row)), Wheel: s.End(r.Word(form.PassDoneWheel, key, row)), Hour: s.Hour(hour),
			Dose: s.dose(r, key, row, hour),
		})
	}
	return all
}

// doneWords say what was done after a pass, and what came before the next.
func (p *pass) doneWords(i int) string {
	words := ""
	for _, d := range p.rounds[i].did {
		if d.Kind == crank.Strike {
			words += struckAt(p.SideOf[d.Wheel], p.at(d.Hour), p.hardness(d))
		} else {
			words += closedAt(d.Kind, p.at(d.Hour), p.hardness(d))
		}
	}
	if p.rounds[i].unlogged && words != "" {
		words += asWasAdvised
	}
	if i+1 < len(p.rounds) {
		switch since := p.rounds[i+1].since; {
		case since == "nuts":
			words += nutsDrawnUp
		case since == "else" && words == "":
			words = somethingDone
		}
	}
	return words + "."
}
