package crank

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/lsq"
)

// Figure is a run-out or tilt with how far it may be out, either way, at 95 %.
type Figure struct{ Value, HalfWidth95 float64 }

// gauge is one thing the verdict looks at: a needle, a place in the crank's own
// bearings, or a journal's tilt.
type gauge struct {
	Figure
	limit float64
	scale float64   // from an eccentricity to run-out, or from a slope to minutes of arc
	base  clock.Vec // what it shows with d and g 0
	k     share     // what it shows of them
	ofD95 float64   // HalfWidth95 of what it shows of d towards 12, by itself
	doubt bool      // an oval shaft may hide in it
}

// after returns what it shows with the halves at d and g.
func (g *gauge) after(d, slope clock.Vec) float64 {
	return g.scale * g.base.Add(d.Scale(g.k.d)).Add(slope.Scale(g.k.g)).Len()
}

// judge is one judging of a pose.
type judge struct {
	*Pose
	st      []Station
	tol     Tolerance
	trusted bool
	sureT   float64 // mm, how far d_t may be out
}

// gauges returns how many there are: the dials, the places in the crank's own
// bearings, the two tilts.
func (j *judge) gauges() int { return len(j.st) + len(j.places()) + len(j.Crank.Bearing) }

func (j *judge) places() []Place {
	if j.tol.Running > 0 {
		return j.tol.Places
	}
	return nil
}

func (j *judge) gauge(i int) gauge {
	if i < len(j.st) {
		if !j.trusted {
			return j.derived(j.throughSupports(j.st[i].Half(), j.st[i].At), 2, j.tol.RunOut)
		}
		return j.needle(&j.st[i])
	}
	i -= len(j.st)
	if p := j.places(); i < len(p) {
		return j.running(p[i].Half, p[i].At, j.tol.Running)
	}
	return j.tilt(clock.End(i - len(j.places())))
}

// needle is a dial as it was read, the crank on its supports.
func (j *judge) needle(p *Station) gauge {
	k := j.throughSupports(p.Half(), p.At)
	base := j.At(p.Half(), p.At).Sub(j.D.Scale(k.d)).Sub(j.G.Scale(k.g))
	return gauge{Figure: p.runOut(), limit: j.tol.RunOut, scale: 2, base: base, k: k, ofD95: j.ofMismatch(k), doubt: p.Unsure}
}

// running is a place in the crank's own bearings.
func (j *judge) running(half clock.End, x, limit float64) gauge {
	k := shareOf(j.Pin, j.Crank.Bearing, half, x)
	return j.derived(k, 2, limit)
}

// tilt is a journal's lean in its own bearing.
func (j *judge) tilt(half clock.End) gauge {
	return j.derived(tiltShare(&j.Crank, half), arcmin, j.tol.Tilt)
}

// derived is a gauge that nobody read, its figure from d and g.
func (j *judge) derived(k share, scale, limit float64) gauge {
	v := j.D.Scale(k.d).Add(j.G.Scale(k.g))
	sure := lsq.Uncertainty{}
	if limit > 0 {
		sure = j.uncertaintyOf(j.st, k)
	}
	g := gauge{limit: limit, scale: scale, k: k, ofD95: j.ofMismatch(k)}
	g.Figure = Figure{scale * v.Len(), scale * sure.HalfWidth95(v)}
	return g
}

// ofMismatch returns how far what shows of the throw mismatch may be out.
func (j *judge) ofMismatch(k share) float64 { return math.Abs(k.d) * j.sureT }

// tiltShare is what a journal's tilt in its own bearings has of d and of g.
func tiltShare(c *Crank, half clock.End) share {
	l := 1 / (c.Bearing[clock.Right] - c.Bearing[clock.Left])
	k := share{d: -l, g: l * (c.Bearing[clock.Right] - c.Pin)}
	if half == clock.Right {
		k.g--
	}
	return k
}
