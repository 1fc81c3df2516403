package draw

import "math"

// point is a place on the paper: x to the right, y down.
type point struct{ x, y float64 }

func (a point) plus(dx, dy float64) point { return point{a.x + dx, a.y + dy} }

// gap returns the square of the distance between two points: squares, since the
// search for free places asks for it thousands of times a picture.
func (a point) gap(b point) float64 {
	dx, dy := a.x-b.x, a.y-b.y
	return dx*dx + dy*dy
}

// box is an upright rectangle on the paper.
type box struct{ x0, y0, x1, y1 float64 }

func around(c point, w, h float64) box { return box{c.x - w/2, c.y - h/2, c.x + w/2, c.y + h/2} }

func (b box) centre() point { return point{(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2} }

func (b box) hits(c box) bool { return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1 }

// nearest returns the point of b that is nearest to a.
func (b box) nearest(a point) point {
	return point{clamp(a.x, b.x0, b.x1), clamp(a.y, b.y0, b.y1)}
}

// gap returns the square of the distance from a to b, 0 inside.
func (b box) gap(a point) float64 {
	dx, dy := beyond(a.x, b.x0, b.x1), beyond(a.y, b.y0, b.y1)
	return dx*dx + dy*dy
}

// beyond returns how far x lies outside of low to high. It is asked thousands of
// times a picture, and the built-in max of two floats is a slow call in WebAssembly.
func beyond(x, low, high float64) float64 {
	if x < low {
		return low - x
	}
	if x > high {
		return x - high
	}
	return 0
}

// clamp returns what of low to high is nearest to x.
func clamp(x, low, high float64) float64 {
	if x < low {
		return low
	}
	if x > high {
		return high
	}
	return x
}

func (b box) clear(d disc) bool { return b.gap(d.c) >= d.r*d.r }

// within tells whether the whole of b lies inside d.
func (b box) within(d disc) bool {
	dx, dy := max(d.c.x-b.x0, b.x1-d.c.x), max(d.c.y-b.y0, b.y1-d.c.y)
	return dx*dx+dy*dy <= d.r*d.r
}

// inside moves b by the least that brings it into a frame.
func (b box) inside(f box) box {
	dx := max(f.x0-b.x0, 0) + min(f.x1-b.x1, 0)
	dy := max(f.y0-b.y0, 0) + min(f.y1-b.y1, 0)
	return box{b.x0 + dx, b.y0 + dy, b.x1 + dx, b.y1 + dy}
}

// cut tells whether a straight line from p to q runs through b.
func (b box) cut(p, q point) bool {
	t0, t1 := 0.0, 1.0
	for _, s := range [4][2]float64{{p.x - q.x, p.x - b.x0}, {q.x - p.x, b.x1 - p.x}, {p.y - q.y, p.y - b.y0}, {q.y - p.y, b.y1 - p.y}} {
		switch {
		case s[0] == 0 && s[1] < 0:
			return false
		case s[0] < 0:
			t0 = max(t0, s[1]/s[0])
		case s[0] > 0:
			t1 = min(t1, s[1]/s[0])
		}
	}
	return t0 < t1
}

// disc is a round obstacle.
type disc struct {
	c point
	r float64
}

func (d disc) hits(e disc) bool {
	r := d.r + e.r
	return d.c.gap(e.c) < r*r
}

// cut tells whether a straight line from p to q runs through d.
func (d disc) cut(p, q point) bool {
	dx, dy := q.x-p.x, q.y-p.y
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = max(0, min(1, ((d.c.x-p.x)*dx+(d.c.y-p.y)*dy)/l))
	}
	return d.hits(disc{c: p.plus(t*dx, t*dy)})
}

// nearby returns the free box of the given size that lies nearest to a disc,
// looked for from a direction outwards (radians clockwise from up the paper).
func nearby(d disc, w, h, out float64, free func(box) bool) (box, bool) {
	for far := d.r; far < d.r+60; far += 6 {
		for turn := 0; turn < 16; turn++ {
			s, c := math.Sincos(out + float64((turn+1)/2)*float64(1-turn%2*2)*math.Pi/8)
			t := touching(math.Abs(s), math.Abs(c), w/2, h/2, far)
			if b := around(d.c.plus(t*s, -t*c), w, h); free(b) {
				return b, true
			}
		}
	}
	return box{}, false
}

// touching returns how far along (s, c), both positive, a box of the given half
// sizes stands when it just touches the outside of a circle of radius r.
func touching(s, c, halfW, halfH, r float64) float64 {
	if d := (r + halfH) / c; d*s <= halfW {
		return d
	}
	if d := (r + halfW) / s; d*c <= halfH {
		return d
	}
	b := halfW*s + halfH*c
	return b + math.Sqrt(max(0, b*b-halfW*halfW-halfH*halfH+r*r))
}
