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

// piece is how a shaft or journal with its webs stands: what was drawn at x = 0 of its
// axis is at origin, its axis runs along shaft, a unit vector, and twelve is where its own
// 12, the first pin's, points.
type piece struct{ origin, shaft, twelve vec3 }

// across is a vector of the piece's own clock face.
func (p *piece) across(v clock.Vec) vec3 {
	return p.twelve.times(v.T).add(p.shaft.cross(p.twelve).times(v.N))
}

// point is where the point of the piece is that was drawn at x and v.
func (p *piece) point(x float64, v clock.Vec) vec3 {
	return p.origin.add(p.shaft.times(x)).add(p.across(v))
}

// mostPieces is one more than the most pins.
const mostPieces = 7

// body is the crank as it is. The first piece is true to the frame; joint j joins pieces
// j and j + 1, its pin sitting in the former.
type body struct {
	pieces [mostPieces]piece
	flaw   Flaw
}

// straight is a crank dead true.
func straight() (b body) {
	for k := range b.pieces {
		b.pieces[k] = piece{shaft: vec3{x: 1}, twelve: vec3{y: 1}}
	}
	return b
}

// turn turns all that lies to the right of a joint about a line.
func (b *body) turn(joint int, through, axis vec3, angle float64) {
	for k := joint + 1; k < len(b.pieces); k++ {
		p := &b.pieces[k]
		p.origin = p.origin.sub(through).turned(axis, angle).add(through)
		p.shaft = p.shaft.turned(axis, angle).unit()
		p.twelve = p.twelve.turned(axis, angle).unit()
	}
}

// crankpin is the middle of a joint's pin, and facing, of the piece that it sits in, what
// is a vector of the pin's own clock.
func (c *Crank) crankpin(b *body, joint int) (at vec3, facing func(clock.Vec) vec3) {
	pin, left := c.pin(joint), &b.pieces[joint]
	facing = func(v clock.Vec) vec3 { return left.across(around(v, pin.Phase)) }
	return left.point(pin.At, clock.Polar(pin.Throw, pin.Phase)), facing
}

// around is a vector of one clock face in another's whose 12 stands so many hours before.
func around(v clock.Vec, hours float64) clock.Vec {
	sin, cos := math.Sincos(clock.Radians(hours))
	return clock.Vec{T: v.T*cos - v.N*sin, N: v.T*sin + v.N*cos}
}

// twist turns what is right of a joint about its pin until its shaft has gone by mm towards
// 3 of the pin's clock, or towards 9 if by is below 0.
func (c *Crank) twist(b *body, joint int, by float64) {
	at, _ := c.crankpin(b, joint)
	b.turn(joint, at, b.pieces[joint].shaft, -by/c.pin(joint).Throw)
}

// hinge tilts what is right of a joint about its pin, off [mm] to the right of its
// middle, so that the gap between the wheels grows along slope, mm per mm.
func (c *Crank) hinge(b *body, joint int, slope clock.Vec, off float64) {
	n := slope.Len()
	if n == 0 {
		return
	}
	at, facing := c.crankpin(b, joint)
	shaft := b.pieces[joint].shaft
	b.turn(joint, at.add(shaft.times(off)), shaft.cross(facing(slope.Scale(1/n))), -math.Atan(n))
}

// shift moves what is right of a joint bodily.
func (c *Crank) shift(b *body, joint int, mm clock.Vec) {
	_, facing := c.crankpin(b, joint)
	by := facing(mm)
	for k := joint + 1; k < len(b.pieces); k++ {
		b.pieces[k].origin = b.pieces[k].origin.add(by)
	}
}

// end is which half's shaft a piece is; inner says that it is neither's.
func (c *Crank) end(piece int) (h clock.End, inner bool) {
	switch piece {
	case 0:
		return clock.Left, false
	case c.joints():
		return clock.Right, false
	}
	return clock.Left, true
}

// past is how far the place x of a piece lies outwards of where its shaft is bent, and how
// the shaft goes off there, as it is across the piece.
func (c *Crank) past(b *body, piece int, x float64) (past float64, off vec3) {
	h, inner := c.end(piece)
	if inner {
		return 0, vec3{}
	}
	if past = b.flaw.past(h, x); past == 0 {
		return 0, vec3{}
	}
	return past, b.pieces[piece].across(b.flaw.Bent[h].Scale(math.Copysign(1, past)))
}

// axisAt is the point of a piece's axis that was drawn at x, and its direction there.
func (c *Crank) axisAt(b *body, piece int, x float64) (at, along vec3) {
	p := &b.pieces[piece]
	past, off := c.past(b, piece, x)
	if past == 0 {
		return p.origin.add(p.shaft.times(x)), p.shaft
	}
	along = p.shaft.add(off).unit()
	return p.origin.add(p.shaft.times(x - past)).add(along.times(past)), along
}

// held is where a support stands.
func (c *Crank) held(b *body, h clock.End) vec3 {
	piece := c.pieceAt(c.Support[h])
	at, _ := c.axisAt(b, piece, c.Support[h])
	return at.add(b.pieces[piece].across(b.flaw.Hole[h]))
}

// spindle is the line the crank turns on: a point, its direction, and the first pin's 12
// and 3 at right angles to it.
type spindle struct{ at, axis, twelve, three vec3 }

func (c *Crank) spindle(b *body) spindle {
	from, to := c.held(b, clock.Left), c.held(b, clock.Right)
	s := spindle{at: from, axis: to.sub(from).unit()}
	pin, _ := c.crankpin(b, 0)
	s.twelve = pin.sub(from).without(s.axis).unit()
	s.three = s.axis.cross(s.twelve)
	return s
}

// eccentricity is how far a piece's axis stands from the spindle at the place x
// of the lathe [mm].
func (c *Crank) eccentricity(b *body, piece int, x float64) clock.Vec {
	s := c.spindle(b)
	p, u := c.axisAt(b, piece, x)
	at := s.at.add(s.axis.times((x - s.at.x) / s.axis.x))
	// The axis meets the plane across the spindle there.
	p = p.add(u.times(at.sub(p).dot(s.axis) / u.dot(s.axis))).sub(at)
	return clock.Vec{T: p.dot(s.twelve), N: p.dot(s.three)}
}

// surface is how far a piece stands out from the spindle under a plunger at
// x, the clock point of an hour beneath it [mm]: where a line out from the
// spindle leaves a round shaft.
func (c *Crank) surface(b *body, piece int, x, hour float64) float64 {
	s := c.spindle(b)
	sin, cos := math.Sincos(clock.Radians(hour))
	out := s.twelve.times(cos).add(s.three.times(sin))
	at := s.at.add(s.axis.times((x - s.at.x) / s.axis.x))
	from, u := c.axisAt(b, piece, x)
	o, v := at.sub(from).without(u), out.without(u)
	half := o.dot(v) / v.dot(v)
	return math.Sqrt(half*half-(o.dot(o)-journal*journal)/v.dot(v)) - half
}

// journal [mm] is the radius of the shafts under the dials; it hardly matters.
const journal = 12.5

// sits is how the piece right of a joint sits from that on its left at the middle of its
// pin: offset [mm] and gap slope [mm per mm], in the pin's own clock (MODEL §3, §11).
func (c *Crank) sits(b *body, joint int) Start {
	left, right := &b.pieces[joint], &b.pieces[joint+1]
	_, facing := c.crankpin(b, joint)
	twelve, three := facing(clock.Vec{T: 1}), facing(clock.Vec{N: 1})
	from, cos := right.origin.sub(left.origin), right.shaft.dot(left.shaft)
	at := from.add(right.shaft.times((c.pin(joint).At - from.dot(left.shaft)) / cos))
	return Start{
		D: clock.Vec{T: at.dot(twelve), N: at.dot(three)},
		G: clock.Vec{T: right.shaft.dot(twelve), N: right.shaft.dot(three)}.Scale(-1 / cos),
	}
}
