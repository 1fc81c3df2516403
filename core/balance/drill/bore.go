package drill

import (
	"math"

	"pintwelve/core/wheel"
)

// bore is one drill with the depths it may go to. Its pulls are what one hole
// counts for towards the axis, g, shallowest first, through last: the mass
// taken off, or, with a heavy plug, added.
type bore struct {
	dMM     float64
	depths  []float64 // mm to the shoulder
	pulls   []float64
	step    float64 // between one blind pull and the next
	through bool    // the last one goes right through
}

// bores returns a bore for every drill that has a depth, and the least depth
// with its point that any of them needs.
func (t Task) bores() (all []bore, needMM float64) {
	needMM = math.Inf(1)
	for _, d := range t.DrillsMM {
		b := t.bore(d)
		if len(b.pulls) > 0 {
			all = append(all, b)
		}
		needMM = math.Min(needMM, wheel.Hole{DiameterMM: d, DepthMM: t.DepthStepMM, PointDeg: t.PointDeg}.ReachMM())
	}
	return all, needMM
}

// bore lays out the depths. What a hole takes off is a straight line over its
// depth.
func (t Task) bore(d float64) bore {
	h := wheel.Hole{DiameterMM: d, PointDeg: t.PointDeg}
	deepest := math.Min(t.ThickMM-t.WallMM-h.PointMM(), t.mostDepthMM())
	atNone := t.netG(h)
	h.DepthMM = 1
	perMM := t.netG(h) - atNone
	room := int(math.Max(0, deepest/t.DepthStepMM)) + 2
	b := bore{
		dMM: d, step: math.Abs(perMM) * t.DepthStepMM,
		depths: make([]float64, 0, room), pulls: make([]float64, 0, room),
	}
	add := func(depth, net float64) bool {
		if t.heavyPlug() {
			net = -net
		}
		if net > 0 {
			b.depths, b.pulls = append(b.depths, depth), append(b.pulls, net)
		}
		return net > 0
	}
	for i := 1; t.Bottom != ThroughOnly && float64(i)*t.DepthStepMM <= deepest+snugMM; i++ {
		depth := float64(i) * t.DepthStepMM
		add(depth, atNone+perMM*depth)
	}
	if t.Bottom != BlindOnly && t.mostDepthMM() >= t.ThickMM {
		b.through = add(t.ThickMM, perMM*t.ThickMM)
	}
	return b
}

// at returns the bore at a radius, where right through may be more metal than it is at
// the least in the zone, or none that can be counted on; nil where no depth is left, or the
// drill stands over an edge.
func (b *bore) at(t *Task, radiusMM float64) *bore {
	if t.Under == nil {
		return b
	}
	thick, clear := t.Under(radiusMM, b.dMM)
	switch {
	case !clear:
		return nil
	case !b.through:
		return b
	}
	last := len(b.pulls) - 1
	at := *b
	at.depths, at.pulls = b.depths[:last:last], b.pulls[:last:last]
	if at.through = thick > 0 && (t.MostDepthMM == 0 || thick <= t.MostDepthMM); at.through {
		at.depths, at.pulls = append(at.depths, thick), append(at.pulls, b.pulls[last]*thick/t.ThickMM)
	}
	if len(at.pulls) == 0 {
		return nil
	}
	return &at
}

func (t Task) mostDepthMM() float64 { return or(t.MostDepthMM, t.ThickMM) }

func (t Task) heavyPlug() bool { return t.PlugKGM3 > t.DensityKGM3 }

// netG is what a hole takes off, g: metal drilled out less the plug, which fills
// it to the shoulder; plugs count ρ_plug − ρ_wheel, MODEL §8, and the cone under
// them stays empty.
func (t Task) netG(h wheel.Hole) float64 { return t.swarfG(h) - t.plugG(h) }

func (t Task) swarfG(h wheel.Hole) float64 {
	m, err := h.Metal(t.DensityKGM3)
	if err != nil {
		return 0
	}
	return m.MassG
}

func (t Task) plugG(h wheel.Hole) float64 {
	h.PointDeg = 0
	if t.PlugKGM3 == 0 {
		return 0
	}
	m, err := h.Metal(t.PlugKGM3)
	if err != nil {
		return 0
	}
	return m.MassG
}

func (b *bore) most() float64  { return b.pulls[len(b.pulls)-1] }
func (b *bore) least() float64 { return b.pulls[0] }

// nearest returns the depth whose pull is nearest to one wanted. Blind pulls
// rise by even steps; through stands apart.
func (b *bore) nearest(pull float64) int {
	last := len(b.pulls) - 1
	blind := last
	if b.through {
		blind--
	}
	if blind < 0 {
		return last
	}
	i := 0
	if over := (pull-b.pulls[0])/b.step + 0.5; over >= float64(blind) {
		i = blind
	} else if over > 0 {
		i = int(over)
	}
	if b.through && math.Abs(b.pulls[last]-pull) < math.Abs(b.pulls[i]-pull) {
		return last
	}
	return i
}
