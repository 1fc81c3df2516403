package flywheel

import (
	"math"

	"pintwelve/core/bound"
	"pintwelve/core/wheel"
)

// Vary is the figure of a cut that a plan finds.
type Vary uint8

// The figures a plan can find.
const (
	VaryDepth    Vary = iota // of a face, recess, bevel or blind holes
	VaryDiameter             // that the rim is turned down to, or of the drill
	VaryNumber               // of holes
)

// Least is the least wall to leave of each kind, mm; 0 asks for no more than
// some metal.
type Least struct {
	WebMM      float64
	RimDepthMM float64
	RimWidthMM float64
	HoleMM     float64 // hole to hole, bore and edge, and under a blind hole
}

func (l Least) check() error {
	return bound.First(within(LeastWall, l.WebMM, 0, wheel.MostMM), within(LeastWall, l.RimDepthMM, 0, wheel.MostMM),
		within(LeastWall, l.RimWidthMM, 0, wheel.MostMM), within(LeastWall, l.HoleMM, 0, wheel.MostMM))
}

func (l Least) of(k wheel.WallKind) float64 {
	switch k {
	case wheel.Web:
		return l.WebMM
	case wheel.RimDepth:
		return l.RimDepthMM
	case wheel.RimWidth:
		return l.RimWidthMM
	case wheel.HoleToBoss:
		return 0
	}
	return l.HoleMM
}

// Thin returns the walls thinner than asked.
func (l Least) Thin(walls []wheel.Wall) []wheel.Wall {
	const slack = 1e-9 // mm, of arithmetic
	var thin []wheel.Wall
	for _, w := range walls {
		if !(w.MM >= l.of(w.Kind)-slack) {
			thin = append(thin, w)
		}
	}
	return thin
}

// Found is the cut a plan found.
type Found struct {
	Cut   Cut
	Off   wheel.Metal
	Walls []wheel.Wall // left with it made
}

// Plan finds the size of a cut that takes offG more, in g, off a wheel that has
// had its other cuts (Account.Cut), leaving the least walls. A number of holes
// is the one that comes nearest. When no size will do the error is a *Cannot.
func Plan(w wheel.Wheel, rho float64, cut Cut, vary Vary, offG float64, least Least) (Found, error) {
	_, before, err := work(w, rho)
	if err != nil {
		return Found{}, err
	}
	if err := bound.First(within(WantedOff, offG, 0, before.MassG), least.check()); err != nil {
		return Found{}, err
	}
	s := search{wheel: w, rho: rho, cut: cut, vary: vary, least: least, before: before, wanted: offG}
	lo, hi, err := s.span()
	if err != nil {
		return Found{}, err
	}
	if vary == VaryNumber {
		return s.count(int(hi))
	}
	return s.size(lo, hi)
}

type search struct {
	wheel  wheel.Wheel
	rho    float64
	cut    Cut
	vary   Vary
	least  Least
	before wheel.Metal
	wanted float64
}

// span returns the smallest and the largest size worth trying; a larger size
// always takes more off.
func (s search) span() (lo, hi float64, err error) {
	k := s.cut.Kind
	outside := s.wheel.DiameterMM
	if s.wheel.TurnedToMM > 0 {
		outside = s.wheel.TurnedToMM
	}
	switch {
	case s.vary == VaryDepth && (k == FaceSide || k == Recess || k == Bevel || k == HoleRing && !s.cut.Through):
		return 0, s.wheel.WidthMM, nil
	case s.vary == VaryDiameter && k == TurnRim:
		return 0, outside - s.wheel.BoreMM - wheel.LeastMM, nil
	case s.vary == VaryDiameter && k == HoleRing:
		return wheel.LeastMM, outside, nil
	case s.vary == VaryNumber && k == HoleRing:
		return 1, MostHoles, nil
	}
	return 0, 0, &Fault{Field: Varied, Got: float64(s.vary), Least: float64(VaryDepth), Most: float64(VaryNumber)}
}

// sized returns the cut at a size: mm taken off the rim's diameter, mm of
// depth, mm of drill, or holes.
func (s search) sized(x float64) Cut {
	c := s.cut
	switch {
	case s.vary == VaryDepth:
		c.DepthMM = x
	case s.vary == VaryNumber:
		c.Number = int(x)
	case c.Kind == HoleRing:
		c.DiameterMM = x
	default:
		outside := s.wheel.DiameterMM
		if s.wheel.TurnedToMM > 0 {
			outside = s.wheel.TurnedToMM
		}
		c.ToDiameterMM = outside - x
	}
	return c
}

// at makes the cut at a size. It returns a wall that is then too thin, or what
// else is wrong.
func (s search) at(x float64) (Found, *wheel.Wall, error) {
	f := Found{Cut: s.sized(x)}
	_, section, after, err := made(s.wheel, s.rho, f.Cut)
	if err != nil {
		return Found{}, nil, err
	}
	f.Off, f.Walls = s.before.Sub(after), section.Walls()
	if thin := s.least.Thin(f.Walls); len(thin) > 0 {
		return f, &thin[0], nil
	}
	return f, nil, nil
}

func (s search) will(x float64) bool {
	_, wall, err := s.at(x)
	return wall == nil && err == nil
}

// size seeks the weight first, which takes few trials. Only where a wall is in
// the way does it halve the span between a size that will do and that one, to
// tell what the most is: beyond it a wall may be no more, as when a rim is
// turned down to its web, but no one means that.
func (s search) size(lo, hi float64) (Found, error) {
	least, wall, err := s.at(lo)
	if wall != nil || err != nil {
		return Found{}, s.cannot(0, 0, lo, lo)
	}
	const slack = 1e-9 // g, of arithmetic
	most := hi
	if s.wanted >= least.Off.MassG-slack {
		most = s.weigh(lo, hi, least.Off.MassG)
		found, wall, err := s.at(most)
		if wall == nil && err == nil && found.Off.MassG >= s.wanted-slack {
			return found, nil
		}
	}
	if !s.will(most) {
		most = halve(lo, most, s.will)
	}
	greatest, _, _ := s.at(most)
	return Found{}, s.cannot(least.Off.MassG, greatest.Off.MassG, most, math.Min(hi, most+1e-6*(hi-lo)))
}

// weigh returns the size that takes off the weight wanted, or as near below it
// as metal allows, by false position with Illinois's halving (Dowell and
// Jarratt 1971, from memory); a size that can't be made counts as too much.
func (s search) weigh(lo, hi, least float64) float64 {
	const close = 1e-10 // g
	under, over := least-s.wanted, s.over(hi)
	switch {
	case under >= -close:
		return lo
	case over <= 0:
		return hi
	}
	last := 0.0
	for i := 0; i < 100 && hi-lo > 1e-14*hi; i++ {
		x := lo + (hi-lo)/2
		if over <= math.MaxFloat64 && i%8 != 7 {
			x = lo - under*(hi-lo)/(over-under)
		}
		miss := s.over(x)
		switch {
		case math.Abs(miss) <= close:
			return x
		case miss < 0:
			lo, under = x, miss
			if last < 0 {
				over /= 2
			}
		default:
			hi, over = x, miss
			if last > 0 {
				under /= 2
			}
		}
		last = miss
	}
	return lo
}

// over is by how much a size takes off too much, g.
func (s search) over(x float64) float64 {
	f, _, err := s.at(x)
	if err != nil {
		return math.Inf(1)
	}
	return f.Off.MassG - s.wanted
}

// halve returns the largest x, to working accuracy, for which ok holds, given
// that it holds at lo and not much above some x.
func halve(lo, hi float64, ok func(x float64) bool) float64 {
	for range 44 {
		mid := lo + (hi-lo)/2
		if ok(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// count tries one hole more until they will not go, and takes the number whose
// weight is nearest.
func (s search) count(most int) (Found, error) {
	var best Found
	miss, first, last, n := math.Inf(1), 0.0, 0.0, 0
	for n < most && s.will(float64(n+1)) {
		n++
		f, _, _ := s.at(float64(n))
		last = f.Off.MassG
		if n == 1 {
			first = last
		}
		if d := math.Abs(last - s.wanted); d < miss {
			best, miss = f, d
		}
	}
	if n == 0 || s.wanted > last || s.wanted < first/2 {
		return Found{}, s.cannot(first, last, float64(max(n, 1)), float64(n+1))
	}
	return best, nil
}

// cannot tells what the most gives, and what stands in the way beyond it.
func (s search) cannot(least, most, at, beyond float64) error {
	_, wall, err := s.at(beyond)
	return &Cannot{WantedG: s.wanted, LeastG: least, MostG: most, Most: s.sized(at), Wall: wall, Err: err}
}
