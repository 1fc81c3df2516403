package crank

import (
	"math"

	"pintwelve/core/clock"
)

// Verdict is what the readings say of the crank.
type Verdict uint8

// The verdicts.
const (
	Fit         Verdict = iota // inside the tolerance, for sure
	OutOfTrue                  // outside for sure, and moves are advised
	NotMendable                // outside for sure even with twist and gap gone: no bumping mends it
	TooClose                   // too close to the limit to call
	CantTell                   // outside, but the dials can't tell which way to work: advise nothing
	FitAsHung                  // inside as it hangs: nobody has looked whether the centres are good and the shafts straight
)

// Place is a place on a half's shaft, mm.
type Place struct {
	Half clock.End
	At   float64
}

// Tolerance is what the user allows. A limit of 0, RunOut's excepted, is not
// judged.
type Tolerance struct {
	RunOut  float64 // mm, full movement of each dial
	Running float64 // mm, run-out at each of Places in the crank's own bearings
	Places  []Place
	Tilt    float64 // minutes of arc, each journal in its own bearings
}

// Advice is the verdict and which moves to make.
type Advice struct {
	Verdict Verdict
	Plain   Verdict // by the bare figures, how sure they are left out

	Worst   Figure    // mm, the worst run-out over the dials
	Station int       // where that stands
	Floor   Figure    // mm, the worst run-out over the dials with twist and gap gone
	Tilt    [2]Figure // minutes of arc, each journal's in its own bearings
	Shaft   [2]Shaft  // what the dials say of each shaft and its support

	// The moves to make where the verdict gone by is OutOfTrue: those that stand
	// above the noise, or by the bare figures where Plain alone says so.
	Strike, Close bool
	// How much of a needle's movement each move would take or bring, on the dial
	// that shows it most [mm].
	StrikeWorth, CloseWorth float64

	// With TooClose and CantTell: the dial whose doubt weighs most, and whether a
	// second station on its shaft would add to it.
	Weak          int
	SecondStation bool
}

// Advise judges the crank by the decision rule of ISO 14253-1 and picks the
// moves (MODEL §4 to §7). Stations are those Solve was given.
//
// Where a support is not to be trusted, the dials' own run-out is partly the
// support's: what the same places would show between good ones is judged instead.
// Between centres nobody has looked at, Fit is but FitAsHung.
func (s *Pose) Advise(st []Station, tol Tolerance) Advice {
	a := Advice{}
	for h := range a.Shaft {
		a.Shaft[h] = s.Shaft(st, clock.End(h))
		a.Tilt[h] = s.tiltFigure(st, clock.End(h))
	}
	j := s.judge(st, tol, &a)
	for i := range st {
		g := j.gauge(i)
		if g.Value > a.Worst.Value || i == 0 {
			a.Worst, a.Station = g.Figure, i
		}
		if f := j.floorOf(&g); f.Value > a.Floor.Value || i == 0 {
			a.Floor = f
		}
	}
	a.StrikeWorth, a.CloseWorth = j.worth()
	a.Plain, a.Strike, a.Close = j.decide(&a, 0)
	v, strike, gap := j.decide(&a, 1)
	if a.Verdict = v; v == Fit && !s.looked(&a, tol) {
		a.Verdict = FitAsHung
	}
	if v == OutOfTrue {
		a.Strike, a.Close = strike, gap
	}
	a.Weak = j.weakest()
	a.SecondStation = len(st) > 0 && distinctPlaces(st, st[a.Weak].Piece) < 2
	return a
}

// judge returns the judging of an advice whose shafts have been looked at.
func (s *Pose) judge(st []Station, tol Tolerance, a *Advice) judge {
	return judge{
		Pose: s, st: st, tol: tol,
		trusted: a.Shaft[clock.Left].Trusted() && a.Shaft[clock.Right].Trusted(),
		sureT:   s.UncertaintyOfD(st).HalfWidth95(clock.Vec{T: 1}),
	}
}

func (s *Pose) tiltFigure(st []Station, h clock.End) Figure {
	run := s.Running(s.D, s.G)
	return Figure{run.Tilt(h), s.UncertaintyOfTilt(st, h).HalfWidth95(run.B[h])}
}

// floorOf is what a gauge shows with twist and gap gone.
func (j *judge) floorOf(g *gauge) Figure {
	return Figure{g.after(clock.Vec{T: j.D.T}, clock.Vec{}), g.scale * g.ofD95}
}

// worth returns how much of a needle's movement [mm] the strike and the closing
// of the gap each take away or bring, on the dial that shows them most.
func (j *judge) worth() (strike, gap float64) {
	for i := range j.st {
		f := j.Forecast(j.st[i].Half(), j.st[i].At)
		strike = math.Max(strike, 2*f.Strike.Sub(f.Now).Len())
		gap = math.Max(gap, 2*f.Gap.Sub(f.Now).Len())
	}
	return strike, gap
}

// decide gives the verdict with every figure's doubt counted k times, and the
// moves to make.
func (j *judge) decide(a *Advice, k float64) (v Verdict, strike, gap bool) {
	inside, outside, stuck := true, false, false
	for i := range j.gauges() {
		g := j.gauge(i)
		if i >= len(j.st) && g.limit == 0 {
			continue
		}
		inside = inside && g.Value+k*g.HalfWidth95 <= g.limit && !(k > 0 && g.doubt)
		outside = outside || g.Value-k*g.HalfWidth95 > g.limit
		f := j.floorOf(&g)
		stuck = stuck || f.Value-k*f.HalfWidth95 > g.limit
	}
	switch {
	case inside:
		return Fit, false, false
	case !outside:
		return TooClose, false, false
	case stuck:
		return NotMendable, false, false
	}
	if strike, gap = j.pick(a, k); strike || gap {
		return OutOfTrue, strike, gap
	}
	return CantTell, false, false
}

// pick chooses the moves (MODEL §7): both when each is worth more than
// half the tolerance on a dial and stands above the noise; else the one that
// leaves the crank best. Where that one alone would leave it no better than it
// is, only both together mend it.
func (j *judge) pick(a *Advice, k float64) (strike, gap bool) {
	d, g := j.UncertaintyOfD(j.st), j.UncertaintyOfG(j.st)
	strike = j.D.N != 0 && math.Abs(j.D.N) >= k*d.HalfWidth95(clock.Vec{N: 1})
	gap = j.G != (clock.Vec{}) && (k == 0 || g.Significant(j.G))
	if !strike || !gap || (a.StrikeWorth > j.tol.RunOut/2 && a.CloseWorth > j.tol.RunOut/2) {
		return strike, gap
	}
	level := clock.Vec{T: j.D.T}
	now, struck, closed := j.utilisation(j.D, j.G), j.utilisation(level, j.G), j.utilisation(j.D, clock.Vec{})
	if math.Min(struck, closed) >= now {
		return true, true
	}
	return struck <= closed, struck > closed
}

// utilisation is how many times its limit the worst gauge stands at with the halves
// at d and g; a run-out limit of 0 counts as a micron.
func (j *judge) utilisation(d, g clock.Vec) float64 {
	worst := 0.0
	for i := range j.gauges() {
		c := j.gauge(i)
		if i >= len(j.st) && c.limit == 0 {
			continue
		}
		worst = math.Max(worst, c.after(d, g)/math.Max(c.limit, least))
	}
	return worst
}

// weakest returns the station that puts the most doubt into the gap slope,
// which reaches every gauge.
func (j *judge) weakest() int {
	weak, most := 0, -1.0
	for i := range j.st {
		p := &j.st[i]
		sure := &j.Scatter[p.Piece]
		t, n := sure.of(along{b: clock.Vec{T: 1}}), sure.of(along{b: clock.Vec{N: 1}})
		if v := p.enters(j.Pin, t, n); v > most {
			weak, most = i, v
		}
	}
	return weak
}
