package truing

import (
	"strconv"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// values fills in what the answers carry as figures, in mm and in hours of
// the end that the job is seen from. It is a part of its own, since the page,
// which shows words, is answered at each keystroke.
func (a answers) values(r *form.Reader) {
	p := a.workOut(r)
	a.askValues(p)
	a.stopValue(p)
	a.tryValues(p)
	if p.wants >= 0 || p.fault != nil || p.pressed {
		a.unanswered()
		return
	}
	if p.several() {
		a.throwsValues(p, r)
		return
	}
	d := p.pose.D.From(p.Seen)
	a.Text("verdict", verdictNames[p.advice.Verdict])
	a.Text("verdict_as_read", verdictNames[p.advice.Plain])
	a.Text("advice", adviceNames[p.next.Why])
	a.Text("seen_from", p.SeenFrom())
	a.Number("offset.towards12_mm", d.T)
	a.Number("offset.towards3_mm", d.N)
	sureD, sureG := p.pose.UncertaintyOfD(p.counted), p.pose.UncertaintyOfG(p.counted)
	a.Number("offset.plus_mm", sureD.HalfWidth95(p.pose.D))
	across, widest := p.pose.Gap()
	a.HourOrNull("gap.widest_hour", sureG.Significant(p.pose.G), p.Hour(widest))
	a.Number("gap.across_rim_mm", across)
	a.Number("gap.plus_mm", 2*p.crank.Rim*sureG.HalfWidth95(p.pose.G))
	a.Number("floor_tir_mm", p.advice.Floor.Value)
	a.dialValues(p)
	a.moveValues(p)
	a.bearingValues(p)
}

// unanswered fills in the figures that can't be given yet.
func (a answers) unanswered() {
	a.Text("verdict", noVerdict)
	a.Null("advice")
	a.ofOneThrow()
	a.EmptyList("moves")
}

// ofOneThrow fills in nothing for the figures that a crank of one throw has.
func (a answers) ofOneThrow() {
	for _, name := range [...]string{"offset.towards12_mm", "offset.towards3_mm", "gap.widest_hour", "gap.across_rim_mm", "floor_tir_mm", "bearings"} {
		a.Null(name)
	}
}

// tryValues tell what was done and was not as meant, and why that may be.
func (a answers) tryValues(p *pass) {
	n := 0
	for i := range p.next.Tries {
		t := &p.next.Tries[i]
		came, amiss := cameOf(t)
		if !amiss {
			continue
		}
		at := "amiss/" + strconv.Itoa(n) + "/"
		n++
		a.Text(at+"pass", p.rounds[t.Pass].key)
		a.Text(at+"kind", kindNames[t.Kind])
		if p.several() {
			a.Number(at+"pin", float64(p.throws.tried[i]+1))
		}
		a.Text(at+"came", cameNames[came])
		for k, c := range t.Likely {
			a.Text(at+"causes/"+strconv.Itoa(k), causeNames[c])
		}
	}
	if n == 0 {
		a.EmptyList("amiss")
	}
}

// dialValues tells each dial, left to right, and what it should show after
// each move alone and after both.
func (a answers) dialValues(p *pass) {
	for n, st := range p.counted {
		i := strconv.Itoa(n)
		f := p.pose.Forecast(st.Half(), st.At)
		got := &p.reading[p.used[n]]
		a.Text("dials/"+i+"/half", p.SideOf[st.Half()])
		a.Number("dials/"+i+"/tir_mm", got.RunOut)
		a.Number("dials/"+i+"/plus_mm", got.HalfWidth95())
		a.HourOrNull("dials/"+i+"/high_hour", got.Uncertainty().Significant(got.E), p.Hour(got.E.Hour()))
		if got.turn != nil {
			a.Number("dials/"+i+"/full_movement_mm", got.turn.Full)
			a.Number("dials/"+i+"/ovality_mm", got.turn.Oval.Size)
			a.Number("dials/"+i+"/drift_mm", got.turn.Drift)
		}
		a.Number("after_strike_tir_mm/"+i, 2*f.Strike.Len())
		a.Number("after_gap_tir_mm/"+i, 2*f.Gap.Len())
		a.Number("after_both_tir_mm/"+i, 2*f.Both.Len())
	}
}

func (a answers) moveValues(p *pass) {
	if len(p.moves) == 0 {
		a.EmptyList("moves")
	}
	for i, m := range p.moves {
		at := "moves/" + strconv.Itoa(i) + "/"
		if p.several() {
			a.Number(at+"pin", float64(m.joint+1))
		}
		wheel := "both"
		if m.Kind == crank.Strike {
			wheel = p.SideOf[m.Wheel]
		}
		a.Text(at+"kind", kindNames[m.Kind])
		a.Text(at+"wheel", wheel)
		a.Number(at+"hour", p.Hour(m.Hour))
		a.Text(at+"seen_from", p.SeenFrom())
		if p.leverAssumed {
			a.Null(at + "amount_mm")
			a.Null(at + "strength")
			continue
		}
		a.Number(at+"amount_mm", m.Amount)
		a.Number(at+"aim_mm", m.Aim)
		a.Number(at+"plus_mm", m.plus)
		a.Number(at+"strength", m.Dose)
		if m.Kind != crank.Strike {
			a.Number(at+"closing_mm", m.Dose*p.closingOf(m.Hour))
		}
		for n, v := range m.predicted {
			a.Number(at+"predicted_tir_mm/"+strconv.Itoa(n), v)
			a.Number(at+"then_tir_mm/"+strconv.Itoa(n), m.then[n])
		}
	}
}

// bearingValues tells the run-out where the sprocket, pinion or rotor sits, and
// each journal's tilt, the crank in its own bearings.
func (a answers) bearingValues(p *pass) {
	axes := p.pose.Running(p.pose.D, p.pose.G)
	for half, x := range p.tip {
		a.Number("bearings/tir_mm/"+strconv.Itoa(half), axes.RunOut(clock.End(half), x))
	}
	for half, tilt := range p.advice.Tilt {
		a.Number("bearings/tilt_arcmin/"+strconv.Itoa(half), tilt.Value)
	}
}
