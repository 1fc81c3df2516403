package crank

import (
	"math"
	"slices"
)

// What a usual dose is taken to do before there is any pass to learn from: a
// strike brings the shaft over by so many mm, a squeeze or spread puts so much
// slope between the wheels. By judgement, no source; they count guessVotes.
const (
	UsualStrike = 0.1
	UsualBend   = 0.001
)

// priorWeight is what the starting value of a gain counts among the passes' weights
// (MODEL §7): cranks that yield three times or a third of it are learned
// sooner by a quarter than by a whole one.
const priorWeight = 0.25

// Gain is what a kind of move does: PerDose for each dose beyond Dead, of which
// nothing stays; mm of offset for a strike square to the pin, mm per mm of gap
// slope for a squeeze or spread.
type Gain struct {
	PerDose float64
	Dead    float64
	Weight  float64 // of this crank's passes; the starting value has priorWeight more
}

// effect is what a dose does.
func (g *Gain) effect(dose float64) float64 {
	if dose <= g.Dead {
		return 0
	}
	return g.PerDose * (dose - g.Dead)
}

// dose is what it takes for an effect.
func (g *Gain) dose(effect float64) float64 { return g.Dead + effect/g.PerDose }

// Lesson is what the passes teach: gains by Kind, what a squeeze or spread does to
// the offset beside the gap, and what came of each thing done.
type Lesson struct {
	Gain  [3]Gain
	Hinge Hinge
	Tries []Try
	past  *taught
}

// newLesson is what is taken of a joint before anything is done at it.
func newLesson(past *taught) Lesson {
	l := Lesson{Hinge: newHinge(), past: past}
	l.fitAll()
	return l
}

// usual is what a dose of a kind is taken to do at first.
func usual(k Kind) float64 {
	if k == Strike {
		return UsualStrike
	}
	return UsualBend
}

// fitAll learns the gains of every kind.
func (l *Lesson) fitAll() {
	for _, kinds := range fitted {
		l.fit(kinds)
	}
}

// fitAfter learns the gains anew where further tries bear on them.
func (l *Lesson) fitAfter(tries []Try) {
	for _, kinds := range fitted {
		for i := range tries {
			if slices.Contains(kinds, tries[i].Kind) {
				l.fit(kinds)
				break
			}
		}
	}
}

// fitted are the kinds that have one dead dose: both ways of bending.
var fitted = [...][]Kind{{Strike}, {Squeeze, Spread}}

// fit learns the gains of kinds of one dead dose anew from all the tries (MODEL §7): it
// is the one that explains them best.
func (l *Lesson) fit(kinds []Kind) {
	best := math.Inf(1)
	most := l.mostDead(kinds)
	for dead := 0.0; dead <= most && surprise(dead) < best; dead += deadStep {
		cost := surprise(dead)
		var gains [3]Gain
		for _, k := range kinds {
			gains[k] = l.gain(k, dead)
			cost += l.cost(k, &gains[k])
		}
		if cost < best {
			best = cost
			for _, k := range kinds {
				l.Gain[k] = gains[k]
			}
		}
	}
}

const (
	deadStep = 0.05 // of a usual blow, as finely as a dead dose is told
	// hand is the part of a dose by which a practised hand's blows differ, and most
	// the greatest surprise that one try is allowed: it may not have been done.
	hand       = 0.25
	oddest     = 12.0
	deadOdds   = 4.0 // surprise of there being a dead dose at all
	gainSpread = 0.8 // deviation of the logarithm of what cranks yield
)

// surprise is that of a dead dose, as minus twice the logarithm of a chance.
func surprise(dead float64) float64 {
	if dead == 0 {
		return 0
	}
	return deadOdds + dead*dead
}

// mostDead is the greatest dose of the kinds that the tries could have been dead at.
func (l *Lesson) mostDead(kinds []Kind) (most float64) {
	for i := range l.Tries {
		if t := &l.Tries[i]; t.teaches() {
			for _, k := range kinds {
				if t.Kind == k {
					most = math.Max(most, t.Dose)
				}
			}
		}
	}
	return math.Min(most, deadest)
}

// deadest is more than any fit swallows: the question comes first.
const deadest = 4.0

// teaches tells whether a try says how much a dose does. One that did nothing beside
// another that told may not have been done.
func (t *Try) teaches() bool {
	return t.Outcome == AsMeant || t.Outcome == Unshown || t.Outcome == NoEffect && !t.Beside
}

// gain is κ = (κ₀/4 + Σ w κᵢ)/(1/4 + Σ w) (MODEL §7), of the tries beyond
// the dead dose.
func (l *Lesson) gain(k Kind, dead float64) Gain {
	g := Gain{Dead: dead}
	sum := priorWeight * usual(k)
	for i := range l.Tries {
		if t := &l.Tries[i]; t.Kind == k && t.Weight > 0 && t.Dose > dead+deadStep/2 {
			g.Weight += t.Weight
			sum += t.Weight * t.Got / (t.Dose - dead)
		}
	}
	g.PerDose = sum / (priorWeight + g.Weight)
	return g
}

// cost is how badly a gain explains the tries of a kind, and how far it stands
// from the usual.
func (l *Lesson) cost(k Kind, g *Gain) (cost float64) {
	far := math.Log(g.PerDose/usual(k)) / gainSpread
	cost = far * far
	for i := range l.Tries {
		if t := &l.Tries[i]; t.Kind == k && t.teaches() {
			e := g.effect(t.Dose)
			v := t.noise2() + hand*hand*e*e + blur*blur*usual(k)*usual(k)
			odd := (t.Got - e) * (t.Got - e) / v
			if odd > oddest {
				odd = oddest
			}
			cost += odd
		}
	}
	return cost
}
