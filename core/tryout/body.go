package tryout

import (
	"math"

	"pintwelve/core/clock"
)

// vec3 is a place or direction at the lathe: X along it from the left end, Y
// towards 12 and Z towards 3 seen from the left end.
type vec3 struct{ x, y, z float64 }

func (a vec3) add(b vec3) vec3      { return vec3{a.x + b.x, a.y + b.y, a.z + b.z} }
func (a vec3) sub(b vec3) vec3      { return vec3{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vec3) times(k float64) vec3 { return vec3{k * a.x, k * a.y, k * a.z} }
func (a vec3) dot(b vec3) float64   { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vec3) unit() vec3           { return a.times(1 / math.Sqrt(a.dot(a))) }
func (a vec3) cross(b vec3) vec3 {
	return vec3{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x}
}

// without is what a has at right angles to a unit axis.
func (a vec3) without(axis vec3) vec3 { return a.sub(axis.times(a.dot(axis))) }

// turned is a turned by an angle about a unit axis through the origin, by
// Rodrigues' formula: a whole rotation, not a small one.
func (a vec3) turned(axis vec3, angle float64) vec3 {
	s, c := math.Sincos(angle)
	return a.times(c).add(axis.cross(a).times(s)).add(axis.times(axis.dot(a) * (1 - c)))
}

// body is the crank as it is. The left half is true to the frame; the right
// half's shaft runs from origin along shaft, a unit vector, origin being what
// was drawn at x = 0, and twelve is where its own 12 points.
type body struct {
	origin, shaft, twelve vec3
	flaw                  Flaw
}

// straight is a crank dead true.
func straight() body { return body{shaft: vec3{x: 1}, twelve: vec3{y: 1}} }

// turn turns the right half about a line.
func (b *body) turn(through, axis vec3, angle float64) {
	b.origin = b.origin.sub(through).turned(axis, angle).add(through)
	b.shaft = b.shaft.turned(axis, angle).unit()
	b.twelve = b.twelve.turned(axis, angle).unit()
}

// crankpin is its middle, which sits in the left wheel.
func (c *Crank) crankpin() vec3 { return vec3{c.Pin, c.Throw, 0} }

// twist turns the right half about the crankpin until its shaft has gone by
// mm towards 3, or towards 9 if by is below 0.
func (c *Crank) twist(b *body, by float64) {
	b.turn(c.crankpin(), vec3{x: 1}, -by/c.Throw)
}

// hinge tilts the right half about the crankpin, off [mm] to the right of its
// middle, so that the gap between the wheels grows along slope, mm per mm.
func (c *Crank) hinge(b *body, slope clock.Vec, off float64) {
	n := slope.Len()
	if n == 0 {
		return
	}
	axis := vec3{x: 1}.cross(vec3{0, slope.T / n, slope.N / n})
	b.turn(c.crankpin().add(vec3{x: off}), axis, -math.Atan(n))
}

// shift moves the right half bodily.
func (b *body) shift(mm clock.Vec) { b.origin = b.origin.add(vec3{0, mm.T, mm.N}) }

// shaftAt is the point of a half's axis that was drawn at x.
func (b *body) shaftAt(h clock.End, x float64) vec3 {
	from, u := b.bare(h)
	if past := b.flaw.past(h, x); past != 0 {
		return from.add(u.times(x - past)).add(b.along(h, x).times(past))
	}
	return from.add(u.times(x))
}

// bare is a half's axis as if its shaft were straight: the point drawn at x = 0 and
// its direction.
func (b *body) bare(h clock.End) (from, along vec3) {
	if h == clock.Left {
		return vec3{}, vec3{x: 1}
	}
	return b.origin, b.shaft
}

// along is the direction of a half's axis at x.
func (b *body) along(h clock.End, x float64) vec3 {
	_, u := b.bare(h)
	if past := b.flaw.past(h, x); past != 0 {
		return u.add(b.across(h, b.flaw.Bent[h].Scale(math.Copysign(1, past)))).unit()
	}
	return u
}

// across is a vector of a half's own clock face.
func (b *body) across(h clock.End, v clock.Vec) vec3 {
	_, u := b.bare(h)
	twelve := vec3{y: 1}
	if h == clock.Right {
		twelve = b.twelve
	}
	return twelve.times(v.T).add(u.cross(twelve).times(v.N))
}

// held is where a half's centre stands.
func (c *Crank) held(b *body, h clock.End) vec3 {
	return b.shaftAt(h, c.Support[h]).add(b.across(h, b.flaw.Hole[h]))
}

// spindle is the line the crank turns on: a point, its direction, and 12 and 3
// at right angles to it.
type spindle struct{ at, axis, twelve, three vec3 }

func (c *Crank) spindle(b *body) spindle {
	from, to := c.held(b, clock.Left), c.held(b, clock.Right)
	s := spindle{at: from, axis: to.sub(from).unit()}
	s.twelve = c.crankpin().sub(from).without(s.axis).unit()
	s.three = s.axis.cross(s.twelve)
	return s
}

// eccentricity is how far a half's axis stands from the spindle at the place x
// of the lathe [mm].
func (c *Crank) eccentricity(b *body, h clock.End, x float64) clock.Vec {
	s := c.spindle(b)
	p, u := b.shaftAt(h, x), b.along(h, x)
	at := s.at.add(s.axis.times((x - s.at.x) / s.axis.x))
	// The axis meets the plane across the spindle there.
	p = p.add(u.times(at.sub(p).dot(s.axis) / u.dot(s.axis))).sub(at)
	return clock.Vec{T: p.dot(s.twelve), N: p.dot(s.three)}
}

// surface is how far the shaft stands out from the spindle under a plunger at
// x, the clock point of an hour beneath it [mm]: where a line out from the
// spindle leaves a round shaft.
func (c *Crank) surface(b *body, h clock.End, x, hour float64) float64 {
	s := c.spindle(b)
	sin, cos := math.Sincos(clock.Radians(hour))
	out := s.twelve.times(cos).add(s.three.times(sin))
	at := s.at.add(s.axis.times((x - s.at.x) / s.axis.x))
	u := b.along(h, x)
	o, v := at.sub(b.shaftAt(h, x)).without(u), out.without(u)
	half := o.dot(v) / v.dot(v)
	return math.Sqrt(half*half-(o.dot(o)-journal*journal)/v.dot(v)) - half
}

// journal [mm] is the radius of the shafts under the dials; it hardly matters.
const journal = 12.5

// sits is how the right half sits from the left at the middle of the pin:
// offset [mm] and gap slope [mm per mm] (MODEL §3).
func (c *Crank) sits(b *body) (d, g clock.Vec) {
	k := (c.Pin - b.origin.x) / b.shaft.x
	p := b.origin.add(b.shaft.times(k))
	return clock.Vec{T: p.y, N: p.z}, clock.Vec{T: -b.shaft.y / b.shaft.x, N: -b.shaft.z / b.shaft.x}
}
