package truing

import (
	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// past is a pass as the crank room takes it.
type past struct {
	done     []crank.JointDone
	since    crank.Since
	stations []crank.Station // nil where they can't be solved
	pose     crank.Pose      // of a crank of one throw
	stand    *crank.Stand    // of one of several
	fault    error           // why they can't be solved
}

// history are the passes as the crank room takes them. What was done after each is
// what is logged, or else what the pass after it says was done of what had been
// advised; each round of the bench is told what counts.
func (p *pass) history(r *form.Reader, kept *bench.Kept) []past {
	all := make([]past, len(p.rounds))
	for i := range p.rounds {
		d := &p.rounds[i]
		d.did = bench.OfRow(kept, r, "pass", d.key, "done", func(r *form.Reader) []crank.JointDone { return p.done(r, d.key) })
		all[i].done = d.did
		p.solve(&all[i], d, r)
		if i > 0 {
			p.since(r, all[:i+1], i)
		}
	}
	return all
}

// solve finds how the halves or pieces sat in a round, as far as its readings tell.
func (p *pass) solve(as *past, d *round, r *form.Reader) {
	switch {
	case p.several():
		as.stand, as.fault = p.stood(d, r)
	case p.lacks != nil:
		as.fault = &unmeasuredError{}
	default:
		as.pose, as.fault = p.crank.Solve(d.counted)
	}
	if as.fault == nil {
		as.stations = d.counted
	}
}

// since reads what came before a pass.
func (p *pass) since(r *form.Reader, passes []past, i int) {
	d, before := &p.rounds[i], &p.rounds[i-1]
	from, to := &passes[i-1], &passes[i]
	d.since = r.Word(form.PassSince, d.key)
	if len(before.did) == 0 && (d.since == "said" || d.since == "first") {
		before.did, before.unlogged = p.advisedAt(passes[:i], before), true
	}
	switch logged := len(before.did) > 0; {
	case d.since == "first" && logged:
		before.did = before.did[:1]
	case d.since == "nuts", d.since == "apart", d.since == "else" && !logged, r.Word(form.PassTailstock, before.key) == "moved":
		to.since, from.done = crank.Changed, nil
		return
	case d.since != "" && !logged:
		to.since = crank.Nothing
	}
	from.done = before.did
}

// advisedAt is what was advised at the last of the passes, as it was told: nothing
// where its readings can't be solved, whatever those before it came to.
func (p *pass) advisedAt(passes []past, d *round) (done []crank.JointDone) {
	last := &passes[len(passes)-1]
	if last.stations == nil {
		return nil
	}
	var moves []move
	if p.several() {
		next := p.learned.PlanThrows(ofSeveral(passes), p.allowed)
		moves = p.jointMoves(&next)
	} else {
		next := p.learned.Plan(ofOne(passes), p.allowed)
		moves = p.setUp.moves(d, &last.pose, &next)
	}
	for i := range moves {
		done = append(done, moves[i].asDone())
	}
	return done
}

// ofOne are the passes of a crank of one throw, ofSeveral of one of several.
func ofOne(passes []past) []crank.Pass {
	all := make([]crank.Pass, len(passes))
	for i := range passes {
		as := &passes[i]
		all[i] = crank.Pass{Pose: as.pose, Stations: as.stations, Since: as.since}
		for _, d := range as.done {
			all[i].Done = append(all[i].Done, d.Done)
		}
	}
	return all
}

func ofSeveral(passes []past) []crank.ThrowsPass {
	all := make([]crank.ThrowsPass, len(passes))
	for i := range passes {
		as := &passes[i]
		all[i] = crank.ThrowsPass{Stand: as.stand, Done: as.done, Since: as.since}
	}
	return all
}

// done reads what is logged as done after a pass.
func (s *setUp) done(r *form.Reader, key string) []crank.JointDone {
	var all []crank.JointDone
	for _, row := range r.Rows("pass." + key + ".done") {
		hour, ok := r.Number(form.PassDoneHour, key, row)
		if !ok {
			continue
		}
		d := crank.JointDone{Done: crank.Done{
			Kind: kindNamed(r.Word(form.PassDoneKind, key, row)), Wheel: s.End(r.Word(form.PassDoneWheel, key, row)), Hour: s.Hour(hour),
			Dose: s.dose(r, key, row, hour),
		}}
		if s.several() {
			d.Joint = form.Whole(r.Word(form.PassDonePin, key, row)) - 1
		}
		all = append(all, d)
	}
	return all
}

// doneWords say what was done after a pass, and what came before the next.
func (p *pass) doneWords(i int) string {
	words := ""
	for _, d := range p.rounds[i].did {
		if d.Kind == crank.Strike {
			words += struckAt(p.SideOf[d.Wheel], p.at(d.Hour), p.hardness(d.Done))
		} else {
			words += closedAt(d.Kind, p.at(d.Hour), p.hardness(d.Done))
		}
		if p.several() {
			words += atPin(pinName(d.Joint))
		}
	}
	if p.rounds[i].unlogged && words != "" {
		words += asWasAdvised
	}
	if i+1 < len(p.rounds) {
		switch since := p.rounds[i+1].since; {
		case since == "nuts":
			words += nutsDrawnUp
		case since == "apart":
			words += pressedAnew
		case since == "else" && words == "":
			words = somethingDone
		}
	}
	return words + "."
}
