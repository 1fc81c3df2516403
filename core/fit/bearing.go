package fit

import "pintwelve/core/bound"

// Bearing is a ball or roller bearing as fits see it.
type Bearing struct {
	BoreMM, OutsideMM float64
	PlayMM            float64 // radial play inside it, on diameter, before it is fitted
	// Diameters of the inner and the outer track; 0 is a stand-in.
	InnerTrackMM, OuterTrackMM float64
	Rollers                    bool // for the stand-in alone
	Ring                       Material
}

// Seat is what a ring of a bearing sits on or in.
type Seat struct {
	InterferenceMM float64 // 0 or negative where the ring is loose
	WallMM         float64 // shaft: hole through it, 0 is solid; housing: outside diameter
	Material       Material
}

// Fitted is the play left in a fitted bearing, on diameter.
type Fitted struct {
	LeftMM   float64
	InnerMM  float64 // by which the inner track grows
	OuterMM  float64 // by which the outer track closes in
	Findings []Finding
}

// Tracks returns the diameters of the tracks, stand-ins where none is given: a
// fifth of the section from either face for balls, a quarter for rollers, as
// bearing makers' handbooks reckon (value from memory).
func (b Bearing) Tracks() (innerMM, outerMM float64) {
	part := 0.20
	if b.Rollers {
		part = 0.25
	}
	innerMM, outerMM = b.InnerTrackMM, b.OuterTrackMM
	if innerMM == 0 {
		innerMM = b.BoreMM + part*(b.OutsideMM-b.BoreMM)
	}
	if outerMM == 0 {
		outerMM = b.OutsideMM - part*(b.OutsideMM-b.BoreMM)
	}
	return innerMM, outerMM
}

func (b Bearing) check() error {
	in, out := b.Tracks()
	return bound.First(
		length(BearingBore, b.BoreMM),
		within(BearingOut, b.OutsideMM, b.BoreMM+10*LeastMM, MostMM),
		within(Play, b.PlayMM, 0, b.BoreMM),
		within(Track, in, b.BoreMM+LeastMM, out),
		within(Track, out, in, b.OutsideMM-LeastMM),
		b.Ring.check(),
	)
}

// PlayLeft returns the play left when both rings are fitted. Each ring is taken
// as a plain thick cylinder between its seat and its track (Lamé); the shoulders
// beside the track stiffen a real ring, so that it moves a little less.
func (b Bearing) PlayLeft(shaft, housing Seat) (Fitted, error) {
	if err := b.check(); err != nil {
		return Fitted{}, err
	}
	inner, err := b.innerGrowth(shaft)
	if err != nil {
		return Fitted{}, err
	}
	outer, err := b.outerClosing(housing)
	if err != nil {
		return Fitted{}, err
	}
	p := Fitted{LeftMM: b.PlayMM - inner - outer, InnerMM: inner, OuterMM: outer}
	if p.LeftMM <= 0 {
		p.Findings = append(p.Findings, Finding{NoPlayLeft, p.LeftMM, 0})
	}
	return p, nil
}

// innerGrowth is 2 p d² d_t/(E (d_t² − d²)), d_t the inner track: a thick cylinder
// under pressure from inside.
func (b Bearing) innerGrowth(s Seat) (float64, error) {
	track, _ := b.Tracks()
	p := Press{DiameterMM: b.BoreMM, InterferenceMM: s.InterferenceMM, LengthMM: 1, HubMM: track, HollowMM: s.WallMM, Friction: 1, Hub: b.Ring, Pin: s.Material}
	pressure, err := p.seatPressure()
	q := b.BoreMM / track
	return 2 * pressure * track * q * q / (b.Ring.EMPa * (1 - q) * (1 + q)), err
}

// outerClosing is 2 p D² D_t/(E (D² − D_t²)), D_t the outer track: a thick cylinder
// under pressure from outside.
func (b Bearing) outerClosing(s Seat) (float64, error) {
	_, track := b.Tracks()
	p := Press{DiameterMM: b.OutsideMM, InterferenceMM: s.InterferenceMM, LengthMM: 1, HubMM: s.WallMM, HollowMM: track, Friction: 1, Hub: s.Material, Pin: b.Ring}
	pressure, err := p.seatPressure()
	q := track / b.OutsideMM
	return 2 * pressure * track / (b.Ring.EMPa * (1 - q) * (1 + q)), err
}

// seatPressure returns the pressure under a ring, 0 where it sits loose.
func (p Press) seatPressure() (float64, error) {
	if err := bound.First(p.check(), within(Interference, p.InterferenceMM, -p.DiameterMM/20, p.DiameterMM/20)); err != nil || p.InterferenceMM <= 0 {
		return 0, err
	}
	return p.perInterference() * p.InterferenceMM, nil
}
