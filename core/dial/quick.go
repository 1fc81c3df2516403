package dial

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// HighSpot returns the reading given as run-out [mm] and the hour at which the
// needle stood highest, as seen from an end.
func HighSpot(from clock.End, runOut, hour float64, s Scale) (Reading, error) {
	if err := check(runOut, s); err != nil {
		return Reading{}, err
	}
	if !finite(hour) {
		return Reading{}, &Error{Field: Hour, Given: hour}
	}
	return quick(runOut, clock.SeenFrom(from, hour), s, topSigma), nil
}

// HalfWay returns the reading given as run-out [mm] and the two hours at which
// the needle passes half-way between its lowest and its highest. Rising is the
// one where it climbs as the hour under the plunger counts up, as seen from
// the same end; the high spot is midway, going clockwise from rising to falling.
func HalfWay(from clock.End, runOut, rising, falling float64, s Scale) (Reading, error) {
	if err := check(runOut, s); err != nil {
		return Reading{}, err
	}
	if !finite(rising) {
		return Reading{}, &Error{Field: Rising, Given: rising}
	}
	if !finite(falling) || clock.Apart(rising, falling) == 0 {
		return Reading{}, &Error{Field: Falling, Given: falling}
	}
	return quick(runOut, clock.SeenFrom(from, clock.Midway(rising, falling)), s, halfWaySigma), nil
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
// (model, section 1). Its hour step is QuarterStep.
func Seen(dialStands, pinPoints Side) float64 {
	return clock.Wrap(3 * (float64(dialStands) - float64(pinPoints)))
}

// quick builds a reading from run-out and hour (model, section 6, "run-out +
// hour"): along e the run-out's rounding counts, across it the hour's.
func quick(runOut, hour float64, s Scale, sigma func(e, division float64) float64) Reading {
	e := runOut / 2
	along := s.Division / math.Sqrt(24)
	if e < s.Division/4 || e == 0 {
		// The direction may be any, so each component has half of e².
		return Reading{Cov: lsq.Round(math.Hypot(along, e/math.Sqrt2)), RunOut: runOut, Blind: true}
	}
	step := clock.Radians(s.HourStep) / math.Sqrt(12)
	across := e * math.Hypot(step, sigma(e, s.Division))
	return Reading{E: clock.Polar(e, hour), Cov: lsq.Oriented(along, across, hour), RunOut: runOut}
}

// topSigma is the standard error [rad] of an hour found by watching the top,
// which is flat: anywhere within half a division of it looks the same.
func topSigma(e, division float64) float64 {
	return math.Acos(1-division/(2*e)) / math.Sqrt(3)
}

// halfWaySigma is the standard error [rad] of the middle of two half-way hours.
func halfWaySigma(e, division float64) float64 {
	return division / (math.Sqrt(24) * e)
}

func check(runOut float64, s Scale) error {
	for _, f := range [...]struct {
		field Field
		given float64
	}{{RunOut, runOut}, {Division, s.Division}, {HourStep, s.HourStep}} {
		if !finite(f.given) || f.given < 0 {
			return &Error{Field: f.field, Given: f.given, HasLeast: true}
		}
	}
	return nil
}

func finite(x float64) bool { return math.Abs(x) <= math.MaxFloat64 }
