// Package clock holds the clock face of a crank: hours, vectors across the
// shafts, and the end they are seen from (core/MODEL.md §1).
//
// 12 o'clock is the crankpin. T runs from the shafts towards 12, N towards 3 as
// seen from the left end, and x, which needs no name here, along the shafts from
// the left end: N = x × T. Hours run clockwise as seen from a named end, so that
// hour h seen from one end reads 12 − h from the other, while wheels and shafts
// keep their names.
//
//	(T, N) = r (cos φ, sin φ), φ = 30° × hour    TestHourPointsWherePolarSays
//	seen from the right: N changes sign          TestOtherEndReadsTwelveLessTheHour
package clock

import "math"

// End is an end of the crank as it hangs, and also the half (shaft and wheel)
// that belongs to it.
type End uint8

// The two ends, left and right as the lathe is faced.
const (
	Left End = iota
	Right
)

// Other returns the opposite end.
func (e End) Other() End { return e ^ 1 }

// Vec is a vector across the shafts, its unit given where it is used:
// T towards 12, N towards 3 seen from the left end.
type Vec struct{ T, N float64 }

// Polar returns the vector of length r that points at an hour seen from the
// left end.
func Polar(r, hour float64) Vec {
	s, c := math.Sincos(Radians(hour))
	return Vec{T: r * c, N: r * s}
}

// Add returns v + w.
func (v Vec) Add(w Vec) Vec { return Vec{v.T + w.T, v.N + w.N} }

// Sub returns v − w.
func (v Vec) Sub(w Vec) Vec { return Vec{v.T - w.T, v.N - w.N} }

// Scale returns k v.
func (v Vec) Scale(k float64) Vec { return Vec{k * v.T, k * v.N} }

// Dot returns v · w.
func (v Vec) Dot(w Vec) float64 { return v.T*w.T + v.N*w.N }

// Len returns the length of v.
func (v Vec) Len() float64 { return math.Hypot(v.T, v.N) }

// From returns v as it is seen from an end: from the right, N changes sign.
func (v Vec) From(e End) Vec {
	if e == Right {
		v.N = -v.N
	}
	return v
}

// Hour returns where v points, in [0, 12), seen from the left end. The zero
// vector points nowhere; its hour is 0 and means nothing.
func (v Vec) Hour() float64 { return Wrap(math.Atan2(v.N, v.T) * 6 / math.Pi) }

// Radians turns an hour into the angle clockwise from 12.
func Radians(hour float64) float64 { return hour * math.Pi / 6 }

// Wrap brings an hour into [0, 12).
func Wrap(hour float64) float64 {
	h := math.Mod(hour, 12)
	if h < 0 {
		h += 12
	}
	if h == 12 {
		return 0
	}
	return h
}

// Mirror returns the hour that the other end reads for the same point.
func Mirror(hour float64) float64 { return Wrap(12 - hour) }

// SeenFrom returns an hour read from one end as the left end reads it, and the
// other way round: the mirroring is its own inverse.
func SeenFrom(e End, hour float64) float64 {
	if e == Right {
		return Mirror(hour)
	}
	return Wrap(hour)
}

// Apart returns the shorter way round from one hour to another, in [0, 6].
func Apart(a, b float64) float64 {
	d := Wrap(a - b)
	return math.Min(d, 12-d)
}

// Midway returns the hour half-way from one hour clockwise to another.
func Midway(from, to float64) float64 { return Wrap(from + Wrap(to-from)/2) }
