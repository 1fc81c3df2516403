package balance

import (
	"math"

	"pintwelve/core/bound"
	"pintwelve/core/clock"
)

// Job is a crank on the knife-edges and what it is to become.
type Job struct {
	Before, After Parts // as weighed, and as it will run; alike unless parts are changed
	StepG         float64
	ThrowMM       float64
	Weighed       []Weighing // the whole, one wheel, or each wheel
	Stated        float64    // factor taken as found where nothing was weighed
	HasStated     bool
	Target        float64
	Keep          bool // aim at the factor found, not at Target
}

// Standing is where a crank stands.
type Standing struct {
	What     What
	Factor   Figure // β; of one wheel, what it would be were both alike
	CounterG Figure // what the wheels carry, as a weight at the pin
	SideGMM  Figure // heavy towards 3 seen from the left end
}

// Correction is the moment to take off the crank or a wheel, g·mm.
type Correction struct {
	What   What
	Factor Figure     // aimed at
	GMM    clock.Vec  // points to where metal comes off; opposite is where a heavy plug goes
	PMGMM  [2]float64 // its ± at 95 %, along 12 and along 3
}

// Check returns a *Fault for the first figure that can't be.
func (j Job) Check() error {
	if err := j.Before.Check(j.StepG); err != nil {
		return err
	}
	if err := j.After.Check(j.StepG); err != nil {
		err.(*Fault).Detail.After = true
		return err
	}
	if err := bound.First(above(Throw, j.ThrowMM, 0, MostMM), checkWeighings(j.Weighed)); err != nil {
		return err
	}
	if len(j.Weighed) == 0 {
		if !j.HasStated {
			return &Fault{Field: NothingWeighed, Got: 0, Least: 1, Most: 2}
		}
		return within(StatedFactor, j.Stated, 0, MostFactor)
	}
	return within(FoundFactor, j.factor(), LeastFound, MostFactor)
}

// counterG is what the wheels carry as found; one wheel counts for two alike.
func (j Job) counterG() float64 {
	if len(j.Weighed) == 0 {
		return j.Before.CounterG(j.Stated)
	}
	sum := 0.0
	for _, w := range j.Weighed {
		sum += w.counterG(j.Before, j.ThrowMM)
	}
	if len(j.Weighed) == 1 && j.Weighed[0].What != Whole {
		sum *= 2
	}
	return sum
}

// factor is β = (weight carried at the pin − m_rot)/m_rec, MODEL §8.
func (j Job) factor() float64 {
	if len(j.Weighed) == 0 {
		return j.Stated
	}
	return (j.counterG() - j.Before.RotG()) / j.Before.RecG()
}

func (j Job) aim() float64 {
	if j.Keep {
		return j.factor()
	}
	return j.Target
}

func (j Job) side() float64 {
	sum := 0.0
	for _, w := range j.Weighed {
		sum += w.Heavy.GMM().N
	}
	return sum
}

// Standing returns where the crank stands as found, or a *Fault.
func (j Job) Standing() (Standing, error) {
	if err := j.Check(); err != nil {
		return Standing{}, err
	}
	return j.standing(j.what()), nil
}

// Wheels returns where each wheel that was weighed alone stands, or a *Fault.
func (j Job) Wheels() ([]Standing, error) {
	if err := j.Check(); err != nil {
		return nil, err
	}
	var all []Standing
	for i, w := range j.Weighed {
		if w.What != Whole {
			alone := j
			alone.Weighed = j.Weighed[i : i+1]
			s := alone.standing(w.What)
			s.CounterG = s.CounterG.scale(0.5)
			all = append(all, s)
		}
	}
	return all, nil
}

func (j Job) what() What {
	if len(j.Weighed) == 1 {
		return j.Weighed[0].What
	}
	return Whole
}

func (j Job) standing(what What) Standing {
	return Standing{
		What:     what,
		Factor:   j.figure(Job.factor),
		CounterG: j.figure(Job.counterG),
		SideGMM:  j.figure(Job.side),
	}
}

// Correct returns the moment to take off: one correction for the whole crank,
// or one for each wheel that was weighed alone, or a *Fault.
func (j Job) Correct() ([]Correction, error) {
	if err := j.Check(); err != nil {
		return nil, err
	}
	if err := within(TargetFactor, j.aim(), 0, MostFactor); err != nil {
		return nil, err
	}
	if len(j.Weighed) == 0 {
		return []Correction{j.correction(Whole, func(j Job) (counterG, side float64) { return j.counterG(), 0 })}, nil
	}
	var all []Correction
	for i := range j.Weighed {
		all = append(all, j.correction(j.Weighed[i].What, func(j Job) (counterG, side float64) {
			w := j.Weighed[i]
			return w.counterG(j.Before, j.ThrowMM), w.Heavy.GMM().N
		}))
	}
	return all, nil
}

// correction is ΔU = [(m_rot′ + β′ m_rec′) − (m_rot + β m_rec)] R towards 12,
// MODEL §8, or a wheel's half of it, and the side imbalance towards 3.
func (j Job) correction(what What, found func(Job) (counterG, side float64)) Correction {
	along := j.figure(func(j Job) float64 {
		counter, _ := found(j)
		return (j.After.shareG(what, j.aim()) - counter) * j.ThrowMM
	})
	across := j.figure(func(j Job) float64 { _, side := found(j); return side })
	return Correction{
		What:   what,
		Factor: j.figure(Job.aim),
		GMM:    clock.Vec{T: along.X, N: across.X},
		PMGMM:  [2]float64{along.PM(), across.PM()},
	}
}

// Left returns where the crank stands with the parts to be fitted once a moment
// is off all of it together, g·mm, or a *Fault. Removing what Correct returns
// leaves the target factor and no side imbalance.
func (j Job) Left(removed clock.Vec) (Standing, error) {
	if err := j.Check(); err != nil {
		return Standing{}, err
	}
	if err := within(Removed, removed.Len(), 0, MostG*MostMM); err != nil {
		return Standing{}, err
	}
	counter := func(j Job) float64 { return j.counterG() + removed.T/j.ThrowMM }
	return Standing{
		What:     j.what(),
		Factor:   j.figure(func(j Job) float64 { return (counter(j) - j.After.RotG()) / j.After.RecG() }),
		CounterG: j.figure(counter),
		SideGMM:  j.figure(func(j Job) float64 { return j.side() - removed.N }),
	}, nil
}

// figure returns f of the job and its spread: every reading of the scale in
// turn is put one step higher, each step standing for step/√12, MODEL §6.
func (j Job) figure(f func(Job) float64) Figure {
	x, sum := f(j), 0.0
	k := j.clone()
	for _, group := range k.readings() {
		was := *group[0]
		for _, reading := range group {
			*reading = was + j.StepG
		}
		sum += math.Pow(f(k)-x, 2)
		for _, reading := range group {
			*reading = was
		}
	}
	return Figure{x, math.Sqrt(sum / 12)}
}
