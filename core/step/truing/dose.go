package truing

import (
	"math"

	"pintwelve/core/bench"
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
		return form.PassDoneClosing, s.amount(max(form.PassDoneClosing.Within(d.Dose*s.closingOf(d.Hour)), s.step))
	}
	return form.PassDoneTurns, unit.Figures(form.PassDoneTurns.Within(max(d.Dose, tenth)), unit.Plain, tenth)
}

// hardness says how hard a thing is done in the trade's words, with the figure
// that is logged: "a hard blow (1.4)", "1.4 turns", "6 thou under the clamp".
func (s *setUp) hardness(d crank.Done) string {
	switch field, figure := s.logged(d); {
	case field == form.PassDoneStrength:
		return bench.Fill("% (%)", blows(d.Dose), figure)
	case field == form.PassDoneClosing && d.Kind == crank.Spread:
		return figure + " over the wedge"
	case field == form.PassDoneClosing:
		return figure + " under the clamp"
	case figure == "1":
		return "1 turn"
	default:
		return figure + " turns"
	}
}

// blows likens a strike's dose to blows.
func blows(dose float64) string {
	for _, row := range [...]struct {
		to    float64
		words string
	}{{0.35, "a tap"}, {0.75, "a light blow"}, {1.25, "a usual blow"}, {1.75, "a hard blow"}, {2.5, "two usual blows"}, {3.5, "three usual blows"}} {
		if dose <= row.to {
			return row.words
		}
	}
	return "many blows"
}

// howHard says how hard to work, by what earlier passes taught: in few words,
// since it stands on the first screen.
func (p *pass) howHard() string {
	first := &p.moves[0].PlannedMove
	hard := p.hardness(doneAs(first))
	switch {
	case first.Trial && p.wentWrong():
		return bench.Fill("It went the other way: now % as a trial, then read.", hard)
	case len(p.moves) > 1:
		second := &p.moves[1].PlannedMove
		then := p.hardness(doneAs(second))
		if first.Trial && second.Trial {
			return bench.Fill("A trial: %, then %.", hard, then)
		}
		if first.Pass < 0 && second.Pass < 0 {
			return bench.Fill("By guess: %, then %.", hard, then)
		}
		return bench.Fill("%, then %.", upperFirst(hard), then)
	case first.Trial:
		return bench.Fill("A trial: %; then read.", hard)
	case first.Pass < 0:
		return bench.Fill("By guess: %; work up to it.", hard)
	case first.Pass == 0:
		return bench.Fill("%: % the first.", upperFirst(hard), timesWords(first.Times))
	default:
		return bench.Fill("%: % %’s.", upperFirst(hard), timesWords(first.Times), afterName(first.Pass))
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

// timesWords liken a dose to an earlier one.
func timesWords(times float64) string {
	for _, row := range [...]struct {
		to    float64
		words string
	}{
		{0.18, "a small part of"}, {0.29, "about ¼ of"}, {0.42, "about ⅓ of"}, {0.6, "about ½ of"}, {0.85, "about ¾ of"},
		{1.2, "as hard as"}, {1.75, "about 1½ ×"}, {2.5, "about 2 ×"}, {math.Inf(1), "many times"},
	} {
		if times <= row.to {
			return row.words
		}
	}
	return ""
}
