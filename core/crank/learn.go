package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Done is one thing done to the crank after a round of readings.
type Done struct {
	Kind  Kind
	Wheel clock.End // the wheel struck; a squeeze or spread takes both
	Hour  float64   // of the rim point worked at, seen from the left end
	Dose  float64   // blows times strength, 1 being a usual one
}

// slight is less than anyone would call a blow.
const slight = 1e-3

// counts tells whether it can be reckoned with: nothing done, or figures that
// are none, teach nothing.
func (d *Done) counts() bool { return usable(d.Hour) && d.Dose >= slight && usable(d.Dose) }

// Pass is a round of readings and what was done after it, if anything yet. Where
// the readings can't be solved, Stations is nil and the pass teaches nothing.
// Passes with nothing done between them are taken together.
type Pass struct {
	Pose     Pose
	Stations []Station
	Done     []Done
	Since    Since // what came before it, where the pass before has nothing done
}

// Outcome is what came of something done.
type Outcome uint8

// The outcomes. Opposite, NoEffect and Mixed are left out of the gains.
const (
	AsMeant  Outcome = iota // it went the way it was meant to
	Opposite                // it went the other way
	NoEffect                // it should have shown, and didn't
	Unshown                 // too little was done for the dials to show it
	Mixed                   // done with others of its sort that can't be told apart
)

// Try is what came of the strikes, or of the squeezes and spreads, done in a pass.
type Try struct {
	Pass    int // it was done after this pass's readings
	Kind    Kind
	Dose    float64 // what counted of it: with its arm, and all of a kind together
	Meant   float64 // what was expected of it by the passes before: mm, or slope
	Got     float64 // what came of it along the way it was meant
	Sigma   float64 // standard error of Got
	Weight  float64 // how much it counts among the passes
	Outcome Outcome
	// Beside tells that another move of the pass did what it was meant to: where this
	// one did nothing, it may not have been done.
	Beside bool
	stray  float64 // deviation of what the pass's other move may have brought of Got
	// Assumed tells that nobody said what was done: what was advised fits.
	Assumed bool
	// Astray is how much of a needle's movement it brought that it should not
	// have [mm], on the dial that shows it most; 0 where that is within the noise
	// or small beside what it was meant to bring. Of a strike and a squeeze done
	// together it is told with the squeeze.
	Astray float64
	Likely []Cause // for an outcome that was not meant, or one that hardly shows, the likeliest first
}

// learn goes through the pooled readings. Where nothing is logged between two, advised may
// say what to take as done, after so many of them and by what they taught.
func learn(g []*pooled, past *taught, advised func(before int, l *Lesson) []Done) Lesson {
	l := newLesson(past)
	for i := 1; i < len(g); i++ {
		switch c := g[i].came; {
		case c == nil:
		case g[i].unlogged && !g[i].said && advised != nil:
			l.assume(c, advised(i, &l))
		default:
			l.take(&c.shift, c.tries(&l))
		}
	}
	return l
}

// take keeps tries and learns from them.
func (l *Lesson) take(c *shift, tries []Try) {
	struck, bent := false, false
	for i := range tries {
		t := &tries[i]
		t.Pass, t.Assumed = c.after, c.assumed
		struck = struck || t.Kind == Strike
		bent = bent || t.Kind != Strike && t.Outcome == AsMeant
	}
	l.Tries = append(l.Tries, tries...)
	l.past.fit(l, tries)
	if bent {
		l.Hinge.learn(c, struck)
	}
}

// assume takes what was advised as done, where what came of it fits: nobody said.
func (l *Lesson) assume(c *change, done []Done) {
	c.say(nil, false)
	as := c.shift
	as.done = done
	tries := as.tries(l)
	for i := range tries {
		t := &tries[i]
		if t.Outcome != AsMeant || t.Astray > 0 || t.Got > 4*t.Meant || 4*t.Got < t.Meant {
			tries = nil
			break
		}
	}
	if len(tries) == 0 {
		return
	}
	c.say(done, true)
	l.take(&c.shift, tries)
}

// say puts down as done, before a change of which nobody says it, what is taken for it.
func (c *change) say(done []Done, assumed bool) {
	c.done, c.assumed = done, assumed
	for _, g := range [...]*pooled{c.from, c.was} {
		g.Done, g.assumed = done, assumed
	}
}

// change is what came about between two rounds of readings of a crank of one throw.
type change struct {
	shift
	from, to *pooled // by the places that were read in both
	was      *pooled // from, with all its places
	other    *change // by each dial's readings being the other's, once that was asked for
	advised  []Done  // before it, once that was asked for
	asked    bool
}

// shift is how the piece on the right of a joint has moved on that on its left, and
// what was done there meanwhile, in the joint's own clock. Strikes show in d_n,
// squeezes and spreads in g, so that the two can be done together.
type shift struct {
	crank      *Crank // Throw and Rim
	done       []Done
	d, g       clock.Vec // mm; mm per mm
	covD, covG lsq.Cov
	dials      []leverage
	after      int  // the pass that it was done after
	assumed    bool // nobody said what was done
}

// leverage is what a dial shows [mm] of each mm of offset, and of each mm per mm of
// slope.
type leverage struct{ d, g float64 }

// changed returns the change between two pooled readings; nil where it can't be worked
// out. Places read in one alone are left out: a centre that they show to be bad would
// pass for something done.
func changed(from, to *pooled) *change {
	if len(from.Stations) == 0 || len(to.Stations) == 0 {
		return nil
	}
	a, b := from.only(to), to.only(from)
	if a == nil || b == nil {
		return nil
	}
	return &change{shift: shiftBetween(a, b), from: a, to: b, was: from}
}

func shiftBetween(from, to *pooled) shift {
	a, b := &from.Pose, &to.Pose
	s := shift{
		crank: &a.Crank, done: from.Done, after: from.last, assumed: from.assumed,
		d: b.D.Sub(a.D), g: b.G.Sub(a.G),
		covD: a.UncertaintyOfD(from.Stations).Cov.Add(b.UncertaintyOfD(to.Stations).Cov),
		covG: a.UncertaintyOfG(from.Stations).Cov.Add(b.UncertaintyOfG(to.Stations).Cov),
	}
	for i := range from.Stations {
		p := &from.Stations[i]
		k := a.throughSupports(p.Half(), p.At)
		s.dials = append(s.dials, leverage(k))
	}
	return s
}

// only is the readings by the places that another was read at too, nil where these
// aren't enough.
func (g *pooled) only(other *pooled) *pooled {
	var st []Station
	for i := range g.Stations {
		if p := &g.Stations[i]; p.among(other.Stations) >= 0 {
			st = append(st, *p)
		}
	}
	if len(st) == len(g.Stations) {
		return g
	}
	out := *g
	pose, err := g.Pose.Crank.Solve(st)
	out.Pose, out.Stations = pose, st
	if err != nil {
		return nil
	}
	return &out
}

// tries weighs what was done, and finds where to look when it went wrong.
func (c *shift) tries(l *Lesson) []Try {
	var out []Try
	blow, struck := c.struck()
	bend, bent := c.bent()
	perD, perG := c.shows()
	if struck {
		t := c.try(Strike, math.Abs(blow), &l.Gain[Strike])
		t.Got, t.Sigma = math.Copysign(1, blow)*c.d.N, math.Sqrt(c.covD.NN)
		out = append(out, t.judged(wander*c.along(bend)*perG/perD))
	}
	if bent != none {
		t := c.try(bent.kind(), bend.Len(), &l.Gain[bent.kind()])
		t.Got, t.Sigma = c.along(bend), math.Sqrt(c.covG.Var(bend))
		from := 0.0
		if struck {
			from = wander * c.d.N * perD / perG
		}
		if t = t.judged(from); bent == both {
			t.Outcome, t.Weight = Mixed, 0
		}
		out = append(out, t)
	}
	if len(out) == 2 {
		out[0].Beside, out[1].Beside = out[1].Outcome == AsMeant, out[0].Outcome == AsMeant
	}
	c.causes(out, blow, bend)
	return out
}

const (
	// A bend or strike beside another that told is asked after where it shows less
	// than faint of what was meant, and that should have stood so many times clear of
	// the doubt: then of people who do only the first of two 98 of 100 hear of it by
	// their third pass or are done, and of moves that were made 4 in 1000 are asked after.
	faint   = 0.25
	clearOf = 1.5
)

// unseen tells whether a try, beside another that told, shows so little that it is
// worth asking whether it was done.
func (t *Try) unseen() bool {
	return t.Beside && t.Outcome == Unshown && t.Got < faint*t.Meant && t.Meant > clearOf*t.plus()
}

// plus is how far Got may be out, at 95 %, what another move may have brought
// counted in full.
func (t *Try) plus() float64 { return lsq.Student95(0)*t.Sigma + 2*t.stray }

// wander is the part of a move's effect on the dials that may come of a
// practised hand's other move, into the component that this one did not mean. By
// judgement, no source.
const wander = 0.2

// along is how far g went along the way of a bend.
func (c *shift) along(bend clock.Vec) float64 {
	n := bend.Len()
	if n == 0 {
		return 0
	}
	return c.g.Dot(bend) / n
}

// shows is how much of offset and of slope the dial shows that shows it most.
func (c *shift) shows() (perD, perG float64) {
	for _, k := range c.dials {
		perD, perG = math.Max(perD, math.Abs(k.d)), math.Max(perG, math.Abs(k.g))
	}
	return math.Max(perD, least), math.Max(perG, least)
}

func (c *shift) try(k Kind, dose float64, g *Gain) Try {
	return Try{Kind: k, Dose: dose, Meant: g.effect(dose)}
}

// struck is the doses of the strikes together, plus where they bring d_n up.
func (c *shift) struck() (dose float64, any bool) {
	for i := range c.done {
		if d := &c.done[i]; d.Kind == Strike && d.counts() {
			dose, any = dose+d.turns()*d.Dose, true
		}
	}
	return dose, any
}

// turns is how squarely a strike turns the wheels about the pin: the arm of a
// rim blow is R |sin φ| (MODEL §4). Plus where it brings d_n up.
func (d *Done) turns() float64 {
	s := -math.Sin(clock.Radians(d.Hour))
	if d.Wheel == clock.Left {
		return -s
	}
	return s
}

// sorts are the ways the gap was worked in.
type sorts uint8

const (
	none     sorts = 0
	squeezed sorts = 1
	spread   sorts = 2
	both           = squeezed | spread
)

func (s sorts) kind() Kind {
	if s == spread {
		return Spread
	}
	return Squeeze
}

// bent is the doses of the squeezes and spreads together, along the way they
// change the gap slope.
func (c *shift) bent() (dose clock.Vec, did sorts) {
	for i := range c.done {
		d := &c.done[i]
		if d.Kind == Strike || !d.counts() {
			continue
		}
		dose = dose.Add(c.crank.opens(d).Scale(d.Dose))
		if d.Kind == Spread {
			did |= spread
		} else {
			did |= squeezed
		}
	}
	return dose, did
}

// opens is the way, of length one, along which a squeeze or spread changes the
// gap slope: the line from the pin to where it is worked (MODEL §4).
func (c *Crank) opens(d *Done) clock.Vec {
	v := clock.Polar(c.Rim, d.Hour).Sub(clock.Vec{T: c.Throw})
	if d.Kind == Squeeze {
		v = v.Scale(-1)
	}
	return v.Scale(1 / v.Len())
}

// noise2 is the variance of Got.
func (t *Try) noise2() float64 { return t.Sigma*t.Sigma + 4*t.stray*t.stray }

// judged says what came of a try, and how much it counts: w = p²/(p² + 4σ²), σ²
// the mean of both rounds' variances (MODEL §7). What another move may
// have brought is no outcome of this one.
func (t Try) judged(brought float64) Try {
	plus := lsq.Student95(0)*t.Sigma + math.Abs(brought)
	t.stray = math.Abs(brought) / 2
	switch {
	case t.Got < -plus:
		t.Outcome = Opposite
	case t.Got > plus:
		t.Outcome = AsMeant
	case t.Meant > 3*plus:
		t.Outcome = NoEffect
	default:
		t.Outcome = Unshown
	}
	if (t.Outcome == AsMeant || t.Outcome == Unshown) && t.Got > 0 && t.Dose > 0 {
		meant := t.Meant
		if meant == 0 {
			meant = t.Got // the dose was taken to be dead, and was not
		}
		t.Weight = meant * meant / (meant*meant + 2*t.noise2())
	}
	return t
}
