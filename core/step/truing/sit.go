package truing

import "pintwelve/core/clock"

// sit says how the halves sit, between centres and in their own bearings.
func (a answers) sit(p *pass) {
	if p.leverAssumed {
		return
	}
	right, left := p.SideOf[clock.Right], p.SideOf[clock.Left]
	d, sure := p.pose.D, p.pose.UncertaintyOfD(p.counted)
	a.Say("sit.offset", offsetOf(right, left,
		p.towards(clock.Vec{N: d.N}, sure.HalfWidth95(clock.Vec{N: 1})), p.towards(clock.Vec{T: d.T}, sure.HalfWidth95(clock.Vec{T: 1}))))
	a.gapWords(p)
	if abs(d.T) > sure.HalfWidth95(clock.Vec{T: 1}) && p.Bare(d.T) != "0" {
		a.Say("sit.mismatch", mismatchStays)
	}
	axes := p.pose.Running(p.pose.D, p.pose.G)
	drive, timing := p.End("drive"), p.End("timing")
	a.Say("sit.bearings", inBearings(p.Amount(axes.RunOut(drive, p.tip[drive])), p.Amount(axes.RunOut(timing, p.tip[timing]))))
	lean := func(end clock.End) string { return p.besideTilt(p.advice.Tilt[end]) }
	a.Say("sit.tilt", leansInBearings(lean(drive), lean(timing), p.tiltLimit()))
}

func (a answers) gapWords(p *pass) {
	across, widest := p.pose.Gap()
	sure := p.pose.UncertaintyOfG(p.counted)
	if !sure.Significant(p.pose.G) {
		a.Say("sit.gap", facesParallel(p.Amount(across+2*p.crank.Rim*sure.HalfWidth95(clock.Vec{}))))
		return
	}
	a.Say("sit.gap", standOpen(p.at(widest),
		p.Within(across, 2*p.crank.Rim*sure.HalfWidth95(p.pose.G))))
}
