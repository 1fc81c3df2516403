package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
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
)

// Tolerance is what the user allows; nil in Tilt means it isn't judged.
type Tolerance struct {
	RunOut float64 // mm, full movement of each dial
	Tilt   float64 // minutes of arc, each journal in its own bearings
}

// Figure is a run-out or tilt with how far it may be out, both ways, at 95 %.
type Figure struct{ Value, Plus float64 }

// Advice is the verdict and which moves to make.
type Advice struct {
	Verdict Verdict
	Plain   Verdict // by the bare figures, how sure they are left out

	Worst   Figure    // mm, the worst run-out over the dials
	Station int       // where that stands
	Floor   Figure    // mm, the worst run-out that is left with twist and gap gone
	Tilt    [2]Figure // minutes of arc, each journal's in its own bearings

	// The moves to make where the verdict gone by is OutOfTrue: those that stand
	// above the noise, or by the bare figures where Plain alone says so.
	Strike, Close bool
	// How much of a needle's movement each move would take or bring, on the dial
	// that shows it most [mm].
	StrikeWorth, CloseWorth float64
}

// sure95 is how many standard deviations hold one component at 95 %.
const sure95 = 1.96

// radius95 is how many hold a vector.
const radius95 = 2.45

// Advise judges the crank by the decision rule of ISO 14253-1 and picks the
// moves (model, sections 4, 6 and 7). Stations are those Solve was given.
func (s *Seat) Advise(st []Station, tol Tolerance) Advice {
	j := judge{Seat: s, st: st, tol: tol}
	a := Advice{}
	for i := range st {
		if f := runOut(st[i].E, st[i].Cov); f.Value > a.Worst.Value || i == 0 {
			a.Worst, a.Station = f, i
		}
	}
	a.Floor = j.floor()
	a.Tilt = j.tilts()
	a.StrikeWorth, a.CloseWorth = j.worth()
	a.Plain, a.Strike, a.Close = j.decide(&a, 0)
	v, strike, gap := j.decide(&a, 1)
	a.Verdict = v
	if v == OutOfTrue {
		a.Strike, a.Close = strike, gap
	}
	return a
}

// judge is one judging of a seat.
type judge struct {
	*Seat
	st  []Station
	tol Tolerance
}

// runOut returns 2|e| and how far it may be out.
func runOut(e clock.Vec, c lsq.Cov) Figure {
	v := c.Var(e)
	if e == (clock.Vec{}) {
		v = c.Widest() * c.Widest()
	}
	return Figure{2 * e.Len(), sure95 * 2 * math.Sqrt(math.Max(v, 0))}
}

func (j *judge) floor() Figure {
	if len(j.st) == 0 {
		return Figure{}
	}
	floor, i := j.Floor(j.st)
	k := j.throughSupports(j.st[i].Half, j.st[i].At)
	return Figure{floor, sure95 * 2 * math.Abs(k.d) * math.Sqrt(j.CovD().TT)}
}

func (j *judge) tilts() (f [2]Figure) {
	run := j.Running(j.D, j.G)
	for h := range f {
		c := j.covOf(tiltShare(&j.Crank, clock.End(h)))
		f[h] = Figure{run.B[h].Len() * arcmin, sure95 * arcmin * math.Sqrt(c.Var(run.B[h]))}
	}
	return f
}

// tiltShare is what a journal's tilt in its own bearings has of d and of g.
func tiltShare(c *Crank, half clock.End) share {
	l := 1 / (c.Bearing[clock.Right] - c.Bearing[clock.Left])
	k := share{d: -l, g: l * (c.Bearing[clock.Right] - c.Pin)}
	if half == clock.Right {
		k.g--
	}
	return k
}

// worth returns how much of a needle's movement [mm] the strike and the closing
// of the gap each take away or bring, on the dial that shows them most.
func (j *judge) worth() (strike, gap float64) {
	for i := range j.st {
		f := j.Forecast(j.st[i].Half, j.st[i].At)
		strike = math.Max(strike, 2*f.Strike.Sub(f.Now).Len())
		gap = math.Max(gap, 2*f.Gap.Sub(f.Now).Len())
	}
	return strike, gap
}

// decide gives the verdict with every figure's doubt counted k times, and the
// moves to make.
func (j *judge) decide(a *Advice, k float64) (v Verdict, strike, gap bool) {
	inside, outside := true, false
	count := func(f Figure, limit float64) {
		inside = inside && f.Value+k*f.Plus <= limit
		outside = outside || f.Value-k*f.Plus > limit
	}
	for i := range j.st {
		count(runOut(j.st[i].E, j.st[i].Cov), j.tol.RunOut)
	}
	if j.tol.Tilt > 0 {
		count(a.Tilt[clock.Left], j.tol.Tilt)
		count(a.Tilt[clock.Right], j.tol.Tilt)
	}
	switch {
	case inside:
		return Fit, false, false
	case !outside:
		return TooClose, false, false
	case a.Floor.Value-k*a.Floor.Plus > j.tol.RunOut:
		return NotMendable, false, false
	}
	if strike, gap = j.pick(a, k); strike || gap {
		return OutOfTrue, strike, gap
	}
	return CantTell, false, false
}

// pick chooses the moves (model, section 7): both when each is worth more than
// half the tolerance on a dial and stands above the noise; else the one that
// leaves the crank best. Where that one alone would leave it no better than it
// is, only both together mend it.
func (j *judge) pick(a *Advice, k float64) (strike, gap bool) {
	strike = math.Abs(j.D.N) > k*sure95*math.Sqrt(j.CovD().NN)
	gap = j.G != (clock.Vec{}) && j.CovG().Distance2(j.G) >= k*radius95*radius95
	if !strike || !gap || (a.StrikeWorth > j.tol.RunOut/2 && a.CloseWorth > j.tol.RunOut/2) {
		return strike, gap
	}
	level := clock.Vec{T: j.D.T}
	now, struck, closed := j.badness(j.D, j.G), j.badness(level, j.G), j.badness(j.D, clock.Vec{})
	if math.Min(struck, closed) >= now {
		return true, true
	}
	return struck <= closed, struck > closed
}

// badness is how the worst dial stands [mm] with the halves at d and g, a tilt
// counted as the run-out that is as many times its limit.
func (j *judge) badness(d, g clock.Vec) float64 {
	worst := 0.0
	axes := j.After(d, g)
	for i := range j.st {
		worst = math.Max(worst, axes.RunOut(j.st[i].Half, j.st[i].At))
	}
	if j.tol.Tilt > 0 {
		run := j.Running(d, g)
		tilt := math.Max(run.Tilt(clock.Left), run.Tilt(clock.Right))
		worst = math.Max(worst, tilt/j.tol.Tilt*j.tol.RunOut)
	}
	return worst
}
