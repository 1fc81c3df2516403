package crank

import (
	"math"

	"pintwelve/core/clock"
)

// Done is one thing done to the crank after a round of readings.
type Done struct {
	Kind  Kind
	Wheel clock.End // the wheel struck; a squeeze or spread takes both
	Hour  float64   // of the rim point worked at, seen from the left end
	Dose  float64   // blows times strength, 1 being a usual one
}

// Pass is a round of readings and what was done after it, if anything yet. Where
// the readings can't be solved, Stations is nil and the pass teaches nothing.
type Pass struct {
	Seat     Seat
	Stations []Station
	Done     []Done
}

// What a usual dose is taken to do before there is any pass to learn from: a
// strike brings the shaft over by so many mm, a squeeze or spread puts so much
// slope between the wheels. By judgement, no source; they count one vote.
const (
	UsualStrike = 0.1
	UsualBend   = 0.001
)

// Gain is what a usual dose of a kind of move does: mm of offset for a strike,
// mm per mm of gap slope for a squeeze or spread.
type Gain struct {
	PerDose float64
	Votes   float64 // of this crank's passes; the starting value has one more
}

// Outcome is what came of something done.
type Outcome uint8

// The outcomes. Opposite and NoEffect are left out of the gains.
const (
	AsMeant  Outcome = iota // it went the way it was meant to
	Opposite                // it went the other way
	NoEffect                // it should have shown, and didn't
	Unshown                 // too little was done for the dials to show it
	Mixed                   // done with others of its sort that can't be told apart
)

// Cause is what may lie behind an outcome that was not meant.
type Cause uint8

// The causes.
const (
	HoursFromWrongEnd Cause = iota // the place was read from the other end
	WrongWheel                     // the other wheel was struck
	WrongMove                      // squeezed where it should have been spread, or at the opposite hour
	TooLight                       // the work gave and sprang back: too little for this fit
	NotSupported                   // the other wheel was not held, or the clamp stood askew
	DialMoved                      // a dial or its foot slipped while it was read
	PinSlipped                     // the pin has shifted in its seat, or the seat is worn
)

// Try is what came of one kind of thing done in a pass.
type Try struct {
	Pass    int // it was done after this pass's readings
	Kind    Kind
	Dose    float64 // what counted of it: with its arm, and all of a kind together
	Meant   float64 // what was expected of it by the passes before: mm, or slope
	Got     float64 // what came of it along the way it was meant
	Sigma   float64 // standard error of Got
	Weight  float64 // how much of a vote it has
	Outcome Outcome
	// Astray is how much of a needle's movement it brought that it should not
	// have [mm], on the dial that shows it most; nil where that is within the noise
	// or small beside what was meant.
	Astray float64
	Likely []Cause // for an outcome that was not meant, the likeliest first
}

// Lesson is what the passes teach: gains by Kind, and what came of each thing done.
type Lesson struct {
	Gain  [3]Gain
	Tries []Try
}

// Learn goes through the passes in their order (model, section 7).
func Learn(passes []Pass) Lesson {
	l := Lesson{Gain: [3]Gain{{PerDose: UsualStrike}, {PerDose: UsualBend}, {PerDose: UsualBend}}}
	for i := 0; i+1 < len(passes); i++ {
		l.learn(passes, i)
	}
	return l
}

func (l *Lesson) learn(passes []Pass, i int) {
	from, to := &passes[i], &passes[i+1]
	if len(from.Stations) == 0 || len(to.Stations) == 0 {
		return
	}
	for _, t := range l.tries(from, to) {
		t.Pass = i
		l.Tries = append(l.Tries, t)
		l.Gain[t.Kind].take(&t)
	}
}

// take lets a try vote: κ = (κ₀ + Σ w κᵢ)/(1 + Σ w) (model, section 7).
func (g *Gain) take(t *Try) {
	if t.Weight > 0 {
		g.PerDose = (g.PerDose*(1+g.Votes) + t.Weight*t.Got/t.Dose) / (1 + g.Votes + t.Weight)
		g.Votes += t.Weight
	}
}

// tries weighs what was done between two rounds of readings, strikes together and
// squeezes and spreads together: the one shows in d_n, the others in g.
func (l *Lesson) tries(from, to *Pass) []Try {
	var out []Try
	if t, ok := l.struck(from, to); ok {
		out = append(out, t)
	}
	if t, ok := l.bent(from, to); ok {
		out = append(out, t)
	}
	return out
}

// struck is what came of the strikes.
func (l *Lesson) struck(from, to *Pass) (Try, bool) {
	dose, any := 0.0, false
	for _, d := range from.Done {
		if d.Kind == Strike {
			any = true
			dose += d.turns() * d.Dose
		}
	}
	t := Try{Kind: Strike, Dose: math.Abs(dose), Got: math.Copysign(1, dose) * (to.Seat.D.N - from.Seat.D.N)}
	u := clock.Vec{N: 1}
	t.Sigma = math.Sqrt(from.Seat.SureOfD(from.Stations).Cov.Var(u) + to.Seat.SureOfD(to.Stations).Cov.Var(u))
	t.judge(&l.Gain[Strike])
	return t, any
}

// turns is how squarely a strike turns the wheels about the pin: the arm of a
// rim blow is R sin φ (model, section 4). Plus where it brings d_n up.
func (d *Done) turns() float64 {
	s := -math.Sin(clock.Radians(d.Hour))
	if d.Wheel == clock.Left {
		return -s
	}
	return s
}

// bent is what came of the squeezes and spreads.
func (l *Lesson) bent(from, to *Pass) (Try, bool) {
	var dose clock.Vec
	kinds := [3]bool{}
	for _, d := range from.Done {
		if d.Kind != Strike {
			kinds[d.Kind] = true
			dose = dose.Add(from.Seat.Crank.opens(&d).Scale(d.Dose))
		}
	}
	t := Try{Kind: Squeeze, Dose: dose.Len()}
	if kinds[Spread] {
		t.Kind = Spread
	}
	if t.Dose > 0 {
		t.Got = to.Seat.G.Sub(from.Seat.G).Dot(dose) / t.Dose
	}
	t.Sigma = math.Sqrt(from.Seat.SureOfG(from.Stations).Cov.Var(dose) + to.Seat.SureOfG(to.Stations).Cov.Var(dose))
	t.judge(&l.Gain[t.Kind])
	if kinds[Squeeze] && kinds[Spread] {
		t.Outcome, t.Weight = Mixed, 0
	}
	return t, kinds[Squeeze] || kinds[Spread]
}

// opens is the way, of length one, along which a squeeze or spread changes the
// gap slope: the line from the pin to where it is worked (model, section 4).
func (c *Crank) opens(d *Done) clock.Vec {
	v := clock.Polar(c.Rim, d.Hour).Sub(clock.Vec{T: c.Throw})
	if d.Kind == Squeeze {
		v = v.Scale(-1)
	}
	return v.Scale(1 / v.Len())
}

// judge says what came of a try, given what is known of its kind, and how much it
// counts: w = p²/(p² + 4σ²), σ that of one round of readings (model, section 7).
func (t *Try) judge(g *Gain) {
	t.Meant = g.PerDose * t.Dose
	plus := 1.96 * t.Sigma
	switch {
	case t.Got < -plus:
		t.Outcome = Opposite
	case t.Meant < 2*plus && t.Got <= plus:
		t.Outcome = Unshown
	case t.Got <= plus:
		t.Outcome = NoEffect
	}
	if t.Got > 0 && t.Dose > 0 && (t.Outcome == AsMeant || t.Outcome == Unshown) {
		t.Weight = t.Meant * t.Meant / (t.Meant*t.Meant + 2*t.Sigma*t.Sigma)
	}
}
