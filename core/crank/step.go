package crank

import (
	"math"

	"pintwelve/core/clock"
)

// PlannedMove is one move to make now.
type PlannedMove struct {
	Move            // Amount is the whole of what it could take out
	Other   Move    // the move that does the same from elsewhere
	Aim     float64 // mm, as Amount: what to go for now
	Dose    float64 // how hard, 1 being a usual one
	Learned bool    // this crank has shown what a dose of the kind does
	Trial   bool    // a light one, to be followed by reading: the first of its kind, or after one that went the other way
	// The latest earlier thing of the kind done, to liken this to: the pass it was
	// done after, and how many times its dose this is. Pass is −1 where there is none,
	// and the step is a cautious first one.
	Pass  int
	Times float64
	D, G  clock.Vec // how the halves should sit after it and the steps before it
}

// work adds the moves that stand clear of the noise, the strike first, since it
// can be made without a clamp or wedge in the way. Common practice, no source.
func (n *Next) work(j *judge) {
	n.Strike, n.Close = j.pick(&n.Advice, 1)
	n.single(j)
	if !n.Strike && !n.Close {
		n.Why = n.undecided(j)
	}
	if n.Strike {
		move, other := j.Pose.Strike()
		aim := n.step(move, other, move.Amount, j.UncertaintyOfD(j.st).HalfWidth95(clock.Vec{N: 1}))
		n.D.N -= math.Copysign(aim, n.D.N)
		n.sit()
	}
	if n.Close {
		move, other := j.Pose.Close()
		aim := n.step(move, other, move.Amount/move.Arm, j.UncertaintyOfG(j.st).HalfWidth95(n.G))
		by := n.G.Scale(-aim / n.G.Len())
		n.G, n.D = n.G.Add(by), n.D.Add(n.Hinge.brings(by))
		n.sit()
	}
	if len(n.Steps) > 0 {
		n.Axes = j.After(n.D, n.G)
	}
}

// undecided says what to do where no component stands clear of the noise. What has
// been read often enough goes by its bare figures.
func (n *Next) undecided(j *judge) Why {
	why := undecided(n.Rounds, n.Plain)
	if why == Unclear && n.Rounds >= enough {
		n.Strike, n.Close = j.pick(&n.Advice, 0)
	}
	return why
}

func undecided(rounds int, plain Verdict) Why {
	switch {
	case rounds < enough:
		return Unclear
	case plain == Fit:
		return Leave
	case plain == NotMendable:
		return Unmendable
	}
	return Unclear
}

// enough is how many rounds of readings are taken together before they stand as
// they read.
const enough = 3

// single keeps to one move where a move went the other way last, or did nothing
// beside another that told: what it does must show by itself.
func (n *Next) single(j *judge) {
	strike, bend := n.record(Strike), n.record(Squeeze)
	switch {
	case strike.opposite > 0 && math.Abs(j.D.N) >= j.UncertaintyOfD(j.st).HalfWidth95(clock.Vec{N: 1}):
		n.Strike, n.Close = true, false
	case bend.opposite > 0 && j.UncertaintyOfG(j.st).Significant(j.G):
		n.Strike, n.Close = false, true
	case n.Strike && n.Close && n.doubted > 0:
		n.Strike, n.Close = n.StrikeWorth >= n.CloseWorth, n.StrikeWorth < n.CloseWorth
	case n.Strike && n.Close && strike.beside:
		n.Close = false
	case n.Strike && n.Close && bend.beside:
		n.Strike = false
	}
}

const (
	// aimed is the part of a component that a step goes for, short of the whole
	// since a blow that takes it past 0 is no better than one that falls short
	// (MODEL §7).
	aimed = 0.9
	// tried is that part of a first blow.
	tried = 0.65
	// trial is the most of a first blow, and rise how many times the most that has
	// shown what it does a dose may be (MODEL §7).
	trial = 2.0
	rise  = 2.0
	// harder is how many times harder than the last to work where that showed no
	// effect: a press fit gives only above some blow. Common practice, no source.
	harder = 1.5
	// shows is how many times its doubt a light trial goes for, so that it shows
	// which way it went; lightest the least that anyone can be told to do.
	shows    = 3.6
	lightest = 0.1
)

// step adds a move against a component of an amount [mm, or slope], which may be
// out by plus, and returns how much of that it goes for.
func (n *Next) step(move, other Move, amount, plus float64) (aim float64) {
	g := n.Gain[move.Kind]
	if g.Weight == 0 && move.Kind != Strike {
		// A crank that gave more than usual one way may give more the other way too.
		g.PerDose = math.Max(g.PerDose, n.Gain[Squeeze+Spread-move.Kind].PerDose)
	}
	r := n.record(move.Kind)
	s := PlannedMove{Move: move, Other: other, Pass: -1, Learned: g.Weight > 0, Trial: r.most == 0}
	goal := aimed * amount
	if s.Trial {
		goal = tried * amount
	}
	if r.opposite > 0 || n.doubted > 0 {
		s.Trial = true
		goal = math.Min(goal, shows*plus*math.Exp2(float64(r.quiet)))
		if r.gave > 0 {
			// What gave the other way gives by its dose: none of it is taken for dead.
			g.PerDose, g.Dead = math.Max(g.PerDose, r.gave), 0
		}
	}
	s.Dose = math.Max(math.Min(g.dose(goal), r.bound()), lightest)
	if r.idle > 0 && r.opposite == 0 && n.doubted == 0 {
		s.Dose = math.Max(s.Dose, math.Min(harder*r.idleDose, r.bound()))
	}
	aim = math.Min(g.effect(s.Dose), goal)
	s.Aim = move.Amount * aim / amount
	if t := r.latest; t != nil {
		s.Pass, s.Times = t.Pass, s.Dose/t.Dose
	}
	n.Steps = append(n.Steps, s)
	return aim
}

// sit notes in the latest step how the halves should sit after it.
func (n *Next) sit() { s := &n.Steps[len(n.Steps)-1]; s.D, s.G = n.D, n.G }
