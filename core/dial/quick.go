package dial

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Scale is what is known of how finely a quick reading was taken. The zero
// value is an exact dial with exact hours.
type Scale struct {
	Division float64 // mm, one division of the dial
	HourStep float64 // hours between the clock marks an hour was read to
}

// QuarterStep is the hour step where only up, front, down and back are told
// apart.
const QuarterStep = 3.0

// HighSpot returns the reading given as run-out [mm] and the hour at which the
// needle stood highest, as seen from an end.
func HighSpot(from clock.End, runOut, hour float64, s Scale) (Reading, error) {
	if err := check(runOut, s); err != nil {
		return Reading{}, err
	}
	if !usable(hour) {
		return Reading{}, &Error{Field: Hour, Given: hour}
	}
	r := quick(runOut, clock.SeenFrom(from, hour), s, topError)
	r.Better = Better{HalfWay: true, MorePoints: true}
	return r, nil
}

// HalfWay returns the reading given as run-out [mm] and the two hours at which
// the needle passes half-way between its lowest and its highest. Rising is the
// one where it climbs as the hour under the plunger counts up, as seen from
// the same end; the high spot is midway, going clockwise from rising to falling.
func HalfWay(from clock.End, runOut, rising, falling float64, s Scale) (Reading, error) {
	if err := check(runOut, s); err != nil {
		return Reading{}, err
	}
	if !usable(rising) {
		return Reading{}, &Error{Field: Rising, Given: rising}
	}
	if !usable(falling) || clock.Apart(rising, falling) == 0 {
		return Reading{}, &Error{Field: Falling, Given: falling}
	}
	misread := misreadBy(clock.Wrap(falling-rising), runOut/2, s)
	r := quick(runOut, clock.SeenFrom(from, clock.Midway(rising, falling)), s, func(e float64, s Scale) spread {
		return halfWayError(e, s).and(either(clock.Radians(misread) / 2))
	})
	r.Better = Better{MorePoints: true}
	return r, nil
}

// Side is a direction across the lathe.
type Side uint8

// The sides, clockwise as seen from the left end. A dial stands Up (above),
// Front, Down (below) or Back (behind); the pin points up, front, down or back.
const (
	Up Side = iota
	Front
	Down
	Back
)

// Seen returns the hour of the high spot, seen from the left end, from where
// the dial stands and where the pin points when the needle is highest
// (MODEL §1). Its hour step is QuarterStep.
func Seen(dialStands, pinPoints Side) float64 {
	return clock.Wrap(3 * (float64(dialStands) - float64(pinPoints)))
}

// quick builds a reading from run-out and hour (MODEL §6, "run-out +
// hour"). Along e the run-out's rounding counts, across it the hour's. The hour
// may be far out, so that the arc it may lie on is not straight: the end of an
// arm |e| that is δ out falls short by |e| (1 − cos δ), which counts along e.
// It always falls short, so that what two dials lose adds up: the mean of it
// counts twice. To first order in δ this is the model's formula.
func quick(runOut, hour float64, s Scale, hourError func(e float64, s Scale) spread) Reading {
	e := runOut / 2
	r := Reading{RunOut: runOut, Sigma: s.Division / math.Sqrt(6)}
	along := s.Division / math.Sqrt(24)
	if e < s.Division/4 || e == 0 {
		// The direction may be any, so each component has half of e².
		r.Blind, r.Cov = true, lsq.Round(math.Hypot(along, e/math.Sqrt2))
		return r
	}
	d := hourError(e, s)
	across := e * math.Sqrt(math.Max(1-d.cos2, 0)/2) // E[sin² δ]
	scatter := (1+d.cos2)/2 - d.cos*d.cos            // that of cos δ
	short := e * math.Sqrt(math.Max(scatter, 0)+2*(1-d.cos)*(1-d.cos))
	r.E = clock.Polar(e, hour)
	r.Cov = lsq.Oriented(math.Hypot(along, short), across, hour)
	return r
}

// spread is an angle's error δ, even about 0, by its means of cos δ and cos 2δ.
type spread struct{ cos, cos2 float64 }

// even is an error that may be anything up to a either way, all alike.
func even(a float64) spread { return spread{sinc(a), sinc(2 * a)} }

// and is the sum of two errors that know nothing of each other.
func (s spread) and(t spread) spread { return spread{s.cos * t.cos, s.cos2 * t.cos2} }

// either is an error of a, one way or the other.
func either(a float64) spread { return spread{math.Cos(a), math.Cos(2 * a)} }

func sinc(x float64) float64 {
	if math.Abs(x) < 1e-4 {
		return 1 - x*x/6
	}
	return math.Sin(x) / x
}

// topError is that of an hour found by watching the top, which is flat:
// anywhere within half a division of it looks the same; and read to a step.
func topError(e float64, s Scale) spread {
	return even(math.Acos(1 - s.Division/(2*e))).and(even(clock.Radians(s.HourStep) / 2))
}

// halfWayError is that of the middle of two hours, each found to within half a
// division of the needle where that moves |e| a radian, and read to a step.
// Half-way hours lie 6 hours apart and so fall alike between the marks, which
// makes two no better than one, unless each is found less finely than the marks
// stand. Errors of rounding that lie D apart go together by
// (6/π²) Σ cos(2πk D/step)/k².
func halfWayError(e float64, s Scale) spread {
	found := s.Division / (2 * e)
	one := even(found / 2)
	step := clock.Radians(s.HourStep)
	if step == 0 {
		return one.and(one)
	}
	alike, all := 0.0, 0.0
	for k := 1.0; k <= 12; k++ {
		c := sinc(2 * math.Pi * k * found / step)
		alike += c * c / (k * k)
		all += 1 / (k * k)
	}
	return one.and(one).and(even(step / 2 * math.Sqrt((1+alike/all)/2)))
}

// misreadBy is by how many hours one of two half-way hours is misread that lie so far apart, of an
// eccentricity e: all that they lack of half a turn, so that the middle is out by half of it; 0 while a mark
// and a few times half a division of the needle at each make as much: hands scatter. By judgement.
func misreadBy(apart, e float64, s Scale) float64 {
	const halfTurn, hands = 6, 3
	off := math.Abs(apart - halfTurn)
	if open := 2*s.HourStep + hands*s.Division/(2*e)*6/math.Pi; e == 0 || off <= open {
		return 0
	}
	return off
}

func check(runOut float64, s Scale) error {
	for _, f := range [...]struct {
		field Field
		given float64
	}{{RunOut, runOut}, {Division, s.Division}, {HourStep, s.HourStep}} {
		if !usable(f.given) || f.given < 0 {
			return &Error{Field: f.field, Given: f.given, HasLeast: true}
		}
	}
	return nil
}
