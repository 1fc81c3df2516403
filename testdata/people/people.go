// Package people holds, for tests, made-up people who true made-up cranks, each with
// his ways and mistakes, and the table of what becomes of their cranks.
package people

import (
	"math"
	"slices"

	"pintwelve/core/clock"
	"pintwelve/core/tryout"
)

const (
	thou = 0.0254 // mm
	// Allowed is the run-out that all of them work to, mm.
	Allowed = 1 * thou
	// MostPasses is how often one works on a crank before the job counts as endless.
	MostPasses = 8
)

// Person does what he is told, but for what his hands and eyes make of it.
type Person struct {
	Name string
	How  string // he reads: "turn 8", "turn 4", "halfway", "hour"
	// Hands are what he does of what is advised, n counting the passes in which there
	// was something to make the mistake with; nil does all of it.
	Hands func(n int, advised []tryout.Blow) []tryout.Blow
	// Eyes spoil his readings of round n; nil reads them right.
	Eyes     func(n int) (mirrored, exchanged bool)
	Unlogged bool // writes down nothing of what he did, and says so when asked
	Mute     bool // that, and answers nothing
	Once     bool // is mistaken in the first pass in which he can be
	Always   bool // is mistaken in every pass
	Sort     Build
}

// Build is a sort of crank: how it yields and what is wrong with it.
type Build struct {
	Gain, Dead, Hinge float64 // Gain 0 is the usual one
	Hole, Bent        float64 // mm of run-out at a centre, or at the dial by the bend
	Pressed           float64 // mm of run-out that the tailstock brings until it is backed off
	Match             bool    // the throws match in all of them
	AnySize           bool    // else all are of one size
}

// Everyone returns all of them.
func Everyone() []Person {
	return slices.Concat(careful(), mistaken(), cranks())
}

// Does returns what a person really does of what is advised, tried passes having been
// gone wrong at before, and how many are now.
func (p *Person) Does(tried int, advised []tryout.Blow) ([]tryout.Blow, int) {
	if p.Hands == nil {
		return advised, tried
	}
	really := p.Hands(tried, advised)
	if !p.Once || !slices.Equal(really, advised) {
		tried++
	}
	return really, tried
}

// Spoils tells how a person reads round n.
func (p *Person) Spoils(n int) (mirrored, exchanged bool) {
	if p.Eyes == nil {
		return false, false
	}
	return p.Eyes(n)
}

func careful() []Person {
	hands := func(name string, by func(n int) float64) Person {
		return Person{Name: name, How: "turn 8", Hands: func(n int, advised []tryout.Blow) []tryout.Blow {
			return changed(advised, func(b *tryout.Blow) { b.Dose *= by(n) })
		}}
	}
	return []Person{
		{Name: "follows, 8 points", How: "turn 8"},
		{Name: "follows, 4 points", How: "turn 4"},
		{Name: "follows, half-way hours", How: "halfway"},
		{Name: "follows, run-out and hour", How: "hour"},
		{Name: "follows, cranks of any size", How: "turn 8", Sort: Build{AnySize: true}},
		hands("strikes at half", func(int) float64 { return 0.5 }),
		hands("tires", func(n int) float64 { return math.Pow(0.8, float64(n)) }),
		{Name: "logs nothing, says it when asked", How: "turn 8", Unlogged: true},
		{Name: "logs nothing, says nothing", How: "turn 8", Mute: true},
	}
}

func mistaken() []Person {
	once := func(name string, wrong func(*tryout.Blow)) Person {
		return Person{Name: name, How: "turn 8", Once: true, Hands: func(n int, advised []tryout.Blow) []tryout.Blow {
			if n > 0 {
				return advised
			}
			return changed(advised, wrong)
		}}
	}
	always := func(name string, hands func([]tryout.Blow) []tryout.Blow) Person {
		return Person{Name: name, How: "turn 8", Always: true, Hands: func(_ int, advised []tryout.Blow) []tryout.Blow { return hands(advised) }}
	}
	each := func(wrong func(*tryout.Blow)) func([]tryout.Blow) []tryout.Blow {
		return func(advised []tryout.Blow) []tryout.Blow { return changed(advised, wrong) }
	}
	eyes := func(name string, always bool, of func(n int) (mirrored, exchanged bool)) Person {
		return Person{Name: name, How: "turn 8", Once: !always, Always: always, Eyes: of}
	}
	return []Person{
		once("wrong wheel once", func(b *tryout.Blow) {
			if b.Kind == tryout.Strike {
				b.Wheel = b.Wheel.Other()
			}
		}),
		once("squeezes for spread once", otherWay),
		eyes("hours mirrored once", false, func(n int) (bool, bool) { return n == 0, false }),
		eyes("dials exchanged once", false, func(n int) (bool, bool) { return false, n == 0 }),
		always("blows mirrored always", each(func(b *tryout.Blow) { b.Hour = clock.Mirror(b.Hour) })),
		always("wrong wheel always", each(func(b *tryout.Blow) { b.Wheel = b.Wheel.Other() })),
		always("squeezes for spread always", each(otherWay)),
		always("first move only", func(advised []tryout.Blow) []tryout.Blow { return advised[:min(1, len(advised))] }),
		eyes("hours mirrored always", true, func(int) (bool, bool) { return true, false }),
		eyes("dials exchanged always", true, func(int) (bool, bool) { return false, true }),
		always("does nothing, logs it", func([]tryout.Blow) []tryout.Blow { return nil }),
	}
}

func cranks() (all []Person) {
	for _, c := range []struct {
		name string
		sort Build
	}{
		{"crank yields a third", Build{Gain: 1. / 3}},
		{"crank yields three times", Build{Gain: 3}},
		{"crank yields five times", Build{Gain: 5}},
		{"dead zone 0.5", Build{Dead: 0.5}},
		{"dead zone 1", Build{Dead: 1}},
		{"hinge 15 mm off", Build{Hinge: 15}},
		{"hinge 30 mm off", Build{Hinge: 30}},
		{"bad centre, 2 thou", Build{Hole: 2 * thou}},
		{"bad centre, 4 thou", Build{Hole: 4 * thou}},
		{"bent, 2 thou", Build{Bent: 2 * thou}},
		{"bent, 4 thou", Build{Bent: 4 * thou}},
		{"tailstock presses, 3 thou", Build{Pressed: 3 * thou}},
		{"tailstock presses, 3 thou, else true", Build{Pressed: 3 * thou, Match: true}},
	} {
		all = append(all, Person{Name: c.name, How: "turn 8", Sort: c.sort})
	}
	return all
}

// changed is what is advised, each blow changed.
func changed(advised []tryout.Blow, by func(*tryout.Blow)) []tryout.Blow {
	out := slices.Clone(advised)
	for i := range out {
		by(&out[i])
	}
	return out
}

// otherWay spreads what is to be squeezed, and the other way round.
func otherWay(b *tryout.Blow) {
	if b.Kind != tryout.Strike {
		b.Kind = tryout.Squeeze + tryout.Spread - b.Kind
	}
}

// Flaw is what is wrong with a crank of the sort by itself, by its seed: a bad left
// centre, a left shaft bent near its end, or a tailstock that presses. The crank is as
// long as said, its left pin and dial so far from the left end, mm.
func (b *Build) Flaw(seed uint64, length, pin, dial float64) (f tryout.Flaw) {
	hour := math.Mod(float64(seed)*5.1, 12)
	const bentAt = 30
	f.Hole[clock.Left] = clock.Polar(b.Hole/2, hour)
	f.BentAt = [2]float64{bentAt, length}
	f.Bent[clock.Left] = clock.Polar(b.Bent/2/(bentAt*(1-dial/length)), hour)
	if b.Pressed > 0 {
		// A slope of one shows so many mm of eccentricity at the left dial.
		f.Pressed = clock.Polar(b.Pressed/2/(dial*(length-pin)/length), hour)
	}
	return f
}
