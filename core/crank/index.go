package crank

import "math"

// Levels are how high the middles of the shafts and of two pins stand above a flat
// at one setting of the crank, mm, its first pin out near 3, and the pins' throws.
type Levels struct {
	Axis, First, Pin     float64
	FirstThrow, PinThrow float64
	Step                 float64 // mm, what the gauge tells apart
}

// LevelError says that a height can't be the pin's: Above is how far it stands above the
// middle of the shafts, and Throw how far it can [mm]. Where Dull, it stands so near 12 or
// 6 that its height says next to nothing of its angle.
type LevelError struct {
	First        bool
	Above, Throw float64
	Dull         bool
}

func (e *LevelError) Error() string { return "crank: a pin can't stand so high" }

// dull is the least part of a pin's throw that lies level with it where its height still
// tells its angle: within some 20 degrees of 12 and 6 it doesn't.
const dull = 0.35

// Index returns the angle from the first pin to another, clockwise as seen from where the
// first stands at 3, and how far it may be out at 95 % [rad]; of the two angles at which the
// pin would stand so high, the one nearer to nominal. The error is a *LevelError. A small
// error δ of index shows as R δ of height (MODEL §11).
//
//	h = R sin(−α), α clockwise from 3      TestIndexOfTurnedPins, TestIndexByHand
func (l *Levels) Index(nominal float64) (Figure, error) {
	first, fault := turnedBy(l.First-l.Axis, l.FirstThrow, 0)
	if fault != nil {
		fault.First = true
		return Figure{}, fault
	}
	pin, fault := turnedBy(l.Pin-l.Axis, l.PinThrow, first+nominal)
	if fault != nil {
		return Figure{}, fault
	}
	ofFirst, ofPin := 1/(l.FirstThrow*math.Cos(first)), 1/(l.PinThrow*math.Cos(pin))
	sigma := l.Step / math.Sqrt(12) * math.Sqrt(ofFirst*ofFirst+ofPin*ofPin+(ofPin-ofFirst)*(ofPin-ofFirst))
	return Figure{nominal + wrapped(pin-first-nominal), 1.96 * sigma}, nil
}

// turnedBy is how far clockwise from 3 a pin stands that is so high above the axis, the
// nearer to expected of the two.
func turnedBy(above, throw, expected float64) (float64, *LevelError) {
	s := -above / throw
	if !(math.Abs(s) <= 1) {
		return 0, &LevelError{Above: above, Throw: throw}
	}
	a := math.Asin(s)
	if math.Cos(a) < dull {
		return 0, &LevelError{Above: above, Throw: throw, Dull: true}
	}
	if b := math.Pi - a; math.Abs(wrapped(b-expected)) < math.Abs(wrapped(a-expected)) {
		a = b
	}
	return a, nil
}

// wrapped is an angle brought to within half a turn of 0 [rad].
func wrapped(angle float64) float64 { return math.Remainder(angle, 2*math.Pi) }
