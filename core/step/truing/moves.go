package truing

import (
	"math"
	"pintwelve/core/crank"
)

// move is one advised move, with what the needles should do.
type move struct {
	crank.PlannedMove
	joint     int
	plus      float64   // mm, how far the amount may be out
	predicted []float64 // run-out of each dial with what this move could take out gone, that alone, mm
	then      []float64 // run-out of each dial after this move and those before it, each as far as it goes for, mm
	watch     int       // which of these to watch
}

// asDone is a move as it stands in the passes once it is done.
func (m *move) asDone() crank.JointDone {
	return crank.JointDone{Joint: m.joint, Done: doneAs(&m.PlannedMove)}
}

// moves are the advised steps of a round, and what each should do to its needles.
func (s *setUp) moves(d *round, pose *crank.Pose, next *crank.Next) (all []move) {
	before := pose.Axes
	for _, step := range next.Steps {
		m := move{PlannedMove: step, plus: pose.StrikeHalfWidth95(d.counted)}
		if step.Kind != crank.Strike {
			m.plus, _, _ = pose.CloseHalfWidth95(d.counted)
		}
		after := pose.After(step.D, step.G)
		all = append(all, s.foretell(m, d, pose, [2]*crank.Axes{&before, &after}))
		before = after
	}
	return all
}

// foretell works out what a move does to the needles, how the shafts lie before
// it and after it.
func (s *setUp) foretell(out move, d *round, pose *crank.Pose, axes [2]*crank.Axes) move {
	most := math.Inf(-1)
	for i, st := range d.counted {
		f := pose.Forecast(st.Half(), st.At)
		then := 2 * f.Strike.Len()
		if out.Kind != crank.Strike {
			then = 2 * f.Gap.Len()
		}
		out.predicted = append(out.predicted, then)
		out.then = append(out.then, axes[1].RunOut(st.Half(), st.At))
		fall := axes[0].RunOut(st.Half(), st.At) - out.then[i]
		// Of needles that fall alike the drive side's is named.
		if fall > most+s.StepMM/100 || fall > most-s.StepMM/100 && d.used[i] == 0 {
			most, out.watch = fall, i
		}
	}
	// Either wheel does; the one whose needle is watched is the easier to follow.
	if out.Kind == crank.Strike && out.Other.Wheel == d.counted[out.watch].Half() {
		out.Move, out.Other = out.Other, out.Move
	}
	return out
}
