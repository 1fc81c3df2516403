package crank_test

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
)

// The generator of readings: an exact rigid body with full rotations, apart from
// the solver, which knows only small angles. World frame x along the lathe,
// y towards 12, z towards 3 seen from the left end.

type vec3 [3]float64

func (a vec3) add(b vec3) vec3      { return vec3{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func (a vec3) sub(b vec3) vec3      { return vec3{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a vec3) times(k float64) vec3 { return vec3{k * a[0], k * a[1], k * a[2]} }
func (a vec3) dot(b vec3) float64   { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a vec3) unit() vec3           { return a.times(1 / math.Sqrt(a.dot(a))) }
func (a vec3) cross(b vec3) vec3 {
	return vec3{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}
func (a vec3) without(axis vec3) vec3 { return a.sub(axis.times(a.dot(axis))) }

// turned is a turned by an angle about a unit axis through the origin (Rodrigues).
func (a vec3) turned(axis vec3, angle float64) vec3 {
	s, c := math.Sincos(angle)
	return a.times(c).add(axis.cross(a).times(s)).add(axis.times(axis.dot(a) * (1 - c)))
}

// body is a crank as it is: the left half true to the frame, the right half
// moved by a twist about the pin, a hinge about the middle of the pin and a
// mismatch of the throws.
type body struct {
	crank.Crank
	twist    float64      // rad, of the right wheel about the pin, clockwise seen from the left
	gap      clock.Vec    // rad, hinge: the gap opens along it
	mismatch float64      // mm, of the right shaft towards 12
	hole     [2]clock.Vec // mm, where each support stands from its shaft's axis
	bendAt   float64      // mm, left shaft: outside this place it is bent
	bend     clock.Vec    // rad
	round    float64      // mm, journal radius
	oval     clock.Vec    // mm, ovality p, q of the journals
	scatter  float64      // divisions, of a hand reading the dial
}

// place is a point of the right half, drawn as if true, where it really is.
func (b *body) place(p vec3) vec3 {
	pin := vec3{b.Pin, b.Throw, 0}
	p = p.sub(pin).turned(vec3{1, 0, 0}, b.twist).add(pin)
	p[1] += b.mismatch
	if angle := b.gap.Len(); angle > 0 {
		// The gap grows along u: the right half turns about x × u.
		u := vec3{0, b.gap.T, b.gap.N}.unit()
		mid := vec3{b.Pin, b.mismatch, 0}
		mid = mid.add(b.drop())
		p = p.sub(mid).turned(vec3{1, 0, 0}.cross(u), -angle).add(mid)
	}
	return p
}

// drop is where the twist takes the right shaft.
func (b *body) drop() vec3 {
	pin := vec3{0, b.Throw, 0}
	return vec3{}.sub(pin).turned(vec3{1, 0, 0}, b.twist).add(pin)
}

// shaftPoint is a point of a half's own axis at x.
func (b *body) shaftPoint(h clock.End, x float64) vec3 {
	if h == clock.Right {
		return b.place(vec3{x, 0, 0})
	}
	p := vec3{x, 0, 0}
	if x < b.bendAt {
		p[1], p[2] = b.bend.T*(b.bendAt-x), b.bend.N*(b.bendAt-x)
	}
	return p
}

// support is where a half is held.
func (b *body) support(h clock.End) vec3 {
	p := b.shaftPoint(h, b.Support[h])
	off := vec3{0, b.hole[h].T, b.hole[h].N}
	return p.add(off)
}

// spindle is the line the crank turns on: a point and a unit vector, and the
// direction of 12 at right angles to it.
func (b *body) spindle(from, to vec3) (at, axis, twelve vec3) {
	axis = to.sub(from).unit()
	pin := vec3{b.Pin, b.Throw, 0}
	return from, axis, pin.sub(from).without(axis).unit()
}

// shows is what a dial on a half at x shows, the clock point at hour under the
// plunger: how far the journal's surface stands from the spindle there.
func (b *body) shows(h clock.End, x, hour float64) float64 {
	at, axis, twelve := b.spindle(b.support(clock.Left), b.support(clock.Right))
	three := axis.cross(twelve)
	s, c := math.Sincos(clock.Radians(hour))
	out := twelve.times(c).add(three.times(s))
	from := at.add(axis.times((x - at[0]) / axis[0]))
	p, q := b.shaftPoint(h, x-0.01), b.shaftPoint(h, x+0.01)
	along := q.sub(p).unit()
	// |from + s out − the journal's axis| = its radius there.
	o, v := from.sub(p).without(along), out.without(along)
	s2, c2 := math.Sincos(2 * clock.Radians(hour))
	r := b.round + b.oval.T*c2 + b.oval.N*s2
	half := o.dot(v) / v.dot(v)
	return -half + math.Sqrt(half*half-(o.dot(o)-r*r)/v.dot(v))
}

// centreOf is the eccentricity [mm] of a half's axis at x from the spindle.
func (b *body) centreOf(h clock.End, x float64, from, to vec3) clock.Vec {
	at, axis, twelve := b.spindle(from, to)
	p := b.shaftPoint(h, x).sub(at)
	return clock.Vec{T: p.dot(twelve), N: p.dot(axis.cross(twelve))}
}

// truth is how the halves sit by the model's definitions, from the body itself.
func (b *body) truth() (d, g clock.Vec) {
	p, q := b.shaftPoint(clock.Right, b.Pin), b.shaftPoint(clock.Right, b.Pin+1)
	return clock.Vec{T: p[1], N: p[2]}, clock.Vec{T: p[1] - q[1], N: p[2] - q[2]}
}

// inBearings is the run-out [mm] of a half at x in the crank's own bearings.
func (b *body) inBearings(h clock.End, x float64) float64 {
	from, to := b.shaftPoint(clock.Left, b.Bearing[0]), b.shaftPoint(clock.Right, b.Bearing[1])
	return 2 * b.centreOf(h, x, from, to).Len()
}

// tilt is that of a journal in its own bearing, minutes of arc.
func (b *body) tilt(h clock.End) float64 {
	from, to := b.shaftPoint(clock.Left, b.Bearing[0]), b.shaftPoint(clock.Right, b.Bearing[1])
	axis := to.sub(from).unit()
	x := b.Bearing[h]
	along := b.shaftPoint(h, x+1).sub(b.shaftPoint(h, x-1)).unit()
	lean := along.without(axis)
	return math.Asin(math.Sqrt(lean.dot(lean))) * 180 * 60 / math.Pi
}
