package sheet

import (
	"strconv"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// truingValues fills in what the answers carry as figures, in mm and in hours of
// the end that the job is seen from. It is a part of its own, since the page,
// which shows words, is answered at each keystroke.
func truingValues(a *Answers, r *form.Reader) {
	p := workOut(r)
	a.askValues(p)
	a.stopValue(p)
	if p.wants >= 0 || p.fault != nil || p.pressed {
		a.unanswered()
		return
	}
	d := p.pose.D.From(p.seen)
	a.text("verdict", verdictNames[p.advice.Verdict])
	a.text("verdict_as_read", verdictNames[p.advice.Plain])
	a.text("seen_from", p.seenFrom())
	a.number("offset.towards12_mm", d.T)
	a.number("offset.towards3_mm", d.N)
	sureD, sureG := p.pose.UncertaintyOfD(p.counted), p.pose.UncertaintyOfG(p.counted)
	a.number("offset.plus_mm", sureD.HalfWidth95(p.pose.D))
	across, widest := p.pose.Gap()
	a.hourOrNull("gap.widest_hour", sureG.Significant(p.pose.G), p.hour(widest))
	a.number("gap.across_rim_mm", across)
	a.number("gap.plus_mm", 2*p.crank.Rim*sureG.HalfWidth95(p.pose.G))
	a.number("floor_tir_mm", p.advice.Floor.Value)
	a.dialValues(p)
	a.moveValues(p)
	a.bearingValues(p)
}

// unanswered fills in the figures that can't be given yet.
func (a *Answers) unanswered() {
	a.text("verdict", "needs a reading")
	for _, name := range [...]string{"offset.towards12_mm", "offset.towards3_mm", "gap.widest_hour", "gap.across_rim_mm", "floor_tir_mm", "bearings"} {
		a.null(name)
	}
	a.emptyList("moves")
}

// dialValues tells each dial, left to right, and what it should show after
// each move alone and after both.
func (a *Answers) dialValues(p *pass) {
	for n, st := range p.counted {
		i := strconv.Itoa(n)
		f := p.pose.Forecast(st.Half, st.At)
		got := &p.reading[p.used[n]]
		a.text("dials/"+i+"/half", p.sideOf[st.Half])
		a.number("dials/"+i+"/tir_mm", got.RunOut)
		a.number("dials/"+i+"/plus_mm", got.HalfWidth95())
		a.hourOrNull("dials/"+i+"/high_hour", got.Uncertainty().Significant(got.E), p.hour(got.E.Hour()))
		if got.turn != nil {
			a.number("dials/"+i+"/full_movement_mm", got.turn.Full)
			a.number("dials/"+i+"/ovality_mm", got.turn.Oval.Size)
			a.number("dials/"+i+"/drift_mm", got.turn.Drift)
		}
		a.number("after_strike_tir_mm/"+i, 2*f.Strike.Len())
		a.number("after_gap_tir_mm/"+i, 2*f.Gap.Len())
		a.number("after_both_tir_mm/"+i, 2*f.Both.Len())
	}
}

func (a *Answers) moveValues(p *pass) {
	if len(p.moves) == 0 {
		a.emptyList("moves")
	}
	for i, m := range p.moves {
		at := "moves/" + strconv.Itoa(i) + "/"
		wheel := "both"
		if m.Kind == crank.Strike {
			wheel = p.sideOf[m.Wheel]
		}
		a.text(at+"kind", kindNames[m.Kind])
		a.text(at+"wheel", wheel)
		a.number(at+"hour", p.hour(m.Hour))
		a.text(at+"seen_from", p.seenFrom())
		if p.leverAssumed {
			a.null(at + "amount_mm")
			a.null(at + "strength")
			continue
		}
		a.number(at+"amount_mm", m.Amount)
		a.number(at+"aim_mm", m.Aim)
		a.number(at+"plus_mm", m.plus)
		a.number(at+"strength", m.Dose)
		if m.Kind != crank.Strike {
			a.number(at+"closing_mm", m.Dose*p.closingOf(m.Hour))
		}
		for n, v := range m.predicted {
			a.number(at+"predicted_tir_mm/"+strconv.Itoa(n), v)
			a.number(at+"then_tir_mm/"+strconv.Itoa(n), m.then[n])
		}
	}
}

// bearingValues tells the run-out where the sprocket, pinion or rotor sits, and
// each journal's tilt, the crank in its own bearings.
func (a *Answers) bearingValues(p *pass) {
	axes := p.pose.Running(p.pose.D, p.pose.G)
	for half, x := range p.tip {
		a.number("bearings/tir_mm/"+strconv.Itoa(half), axes.RunOut(clock.End(half), x))
	}
	for half, tilt := range p.advice.Tilt {
		a.number("bearings/tilt_arcmin/"+strconv.Itoa(half), tilt.Value)
	}
}
