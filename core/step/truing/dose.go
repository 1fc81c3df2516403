package truing

import (
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// dose reads how hard a thing was done, 1 being a usual blow, or a turn of the
// screw of a clamp or wedge.
func (s *setUp) dose(r *form.Reader, pass, row string, hour float64) float64 {
	dose := r.Default(form.PassDoneBlows, pass, row) * r.Default(form.PassDoneStrength, pass, row)
	if r.Word(form.PassDoneKind, pass, row) == kindNames[crank.Strike] {
		return dose
	}
	if dose = r.Or(dose, form.PassDoneTurns, pass, row); !s.closing && r.Blank(form.PassDoneClosing, pass, row) {
		return dose
	}
	one := s.closingOf(s.Hour(hour))
	return r.Or(dose*one, form.PassDoneClosing, pass, row) / one
}

// closingOf is how far a dose of 1 closes or opens the gap [mm] at a rim point
// while the clamp or wedge holds, its hour seen from the left: as far as a usual
// one is taken to leave it. What stays of it is learned.
func (s *setUp) closingOf(hour float64) float64 {
	const leastArm = 1 // mm, where the lengths can't be those of a crank
	return crank.UsualBend * max(leastArm, clock.Polar(s.crank.Rim, hour).Sub(clock.Vec{T: s.crank.Throw}).Len())
}

// tenth is how finely a dose is said and logged.
const tenth = 0.1

// doneAs is a step as it stands in the passes once it is done.
func doneAs(m *crank.PlannedMove) crank.Done {
	return crank.Done{Kind: m.Kind, Wheel: m.Wheel, Hour: m.Hour, Dose: m.Dose}
}

// logged is how hard a thing is done, in the field that the job logs it in and as
// that takes it.
func (s *setUp) logged(d crank.Done) (field form.ID, text string) {
	switch {
	case d.Kind == crank.Strike:
		return form.PassDoneStrength, unit.Figures(form.PassDoneStrength.Within(max(d.Dose, tenth)), unit.Plain, tenth)
	case s.closing:
		return form.PassDoneClosing, s.Amount(max(form.PassDoneClosing.Within(d.Dose*s.closingOf(d.Hour)), s.StepMM))
	}
	return form.PassDoneTurns, unit.Figures(form.PassDoneTurns.Within(max(d.Dose, tenth)), unit.Plain, tenth)
}

// hardness says how hard a thing is done in the trade's words, with the figure
// that is logged: "a hard blow (1.4)", "1.4 turns", "6 thou under the clamp".
func (s *setUp) hardness(d crank.Done) string {
	switch field, figure := s.logged(d); {
	case field == form.PassDoneStrength:
		return blowOf(blows(d.Dose), figure)
	case field == form.PassDoneClosing && d.Kind == crank.Spread:
		return overTheWedge(figure)
	case field == form.PassDoneClosing:
		return underTheClamp(figure)
	case figure == "1":
		return oneTurn
	default:
		return turnsOf(figure)
	}
}

// howHard says how hard to work, by what earlier passes taught: in few words,
// since it stands on the first screen.
func (p *pass) howHard() string {
	first := &p.moves[0].PlannedMove
	hard := p.hardness(doneAs(first))
	switch {
	case first.Trial && p.wentWrong():
		return wrongWayTrial(hard)
	case len(p.moves) > 1:
		second := &p.moves[1].PlannedMove
		then := p.hardness(doneAs(second))
		if first.Trial && second.Trial {
			return twoTrials(hard, then)
		}
		return twoMoves(upperFirst(hard), then)
	case first.Trial:
		return oneTrial(hard)
	case first.Pass == 0:
		return timesTheFirst(upperFirst(hard), timesWords(first.Times))
	default:
		return timesThePass(upperFirst(hard), timesWords(first.Times), afterName(first.Pass))
	}
}

// wentWrong tells whether anything done before the latest readings went the other way.
func (p *pass) wentWrong() bool {
	tries := p.next.Tries
	for i := range tries {
		if tries[i].Pass == tries[len(tries)-1].Pass && tries[i].Outcome == crank.Opposite {
			return true
		}
	}
	return false
}
