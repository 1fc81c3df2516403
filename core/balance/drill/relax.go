package drill

import (
	"math"
	"slices"
	"sort"

	"pintwelve/core/clock"
)

// Limit is what may keep a plan from its target.
type Limit uint8

// The limits, with what the Need of a Relaxation counts.
const (
	MoreHoles   Limit = iota // how many in all
	SecondPlan               // how many holes more, on a plan for what is left beside this one
	BiggerDrill              // mm
	DeeperHoles              // mm to the shoulder, the thickness for right through
	WiderZone                // half-angle, rad
	ThinnerWall              // mm
	NoKeepOuts               // nothing: were the keep-outs away
	FinerSteps               // g·mm: the tolerance that the closest plan would pass
)

// Relaxation is a limit that alone, eased to Need, would bring the target within
// reach.
type Relaxation struct {
	Limit Limit
	Need  float64
}

// Relaxations returns the limits that each alone, eased, would let a plan reach,
// for a task whose plan does not; none when no one limit alone would do. The
// reach counted is that of symmetric plans. A *Fault for figures that can't be.
func (t Task) Relaxations() ([]Relaxation, error) {
	s, err := newSpace(t)
	if err != nil {
		return nil, err
	}
	best, reached := s.search()
	if reached {
		return nil, nil
	}
	p := s.plan(best)
	if s.mostGMM() >= s.targetG-s.t.ToleranceGMM {
		return []Relaxation{{FinerSteps, p.LeftGMM.Len()}}, nil
	}
	return append(s.moreHoles(p), s.easier()...), nil
}

// moreHoles tries more holes of one plan, and a second plan beside the first.
func (s *space) moreHoles(p Plan) []Relaxation {
	var found []Relaxation
	for k := s.t.MostHoles + 1; k <= MostHoles; k++ {
		if s.reach(k) >= s.targetG-s.t.ToleranceGMM {
			found = append(found, Relaxation{MoreHoles, float64(k)})
			break
		}
	}
	t := s.t
	t.Keep, t.Remove = slices.Concat(t.Keep, p.KeepOuts()), p.LeftGMM
	if beside, err := newSpace(t); err == nil {
		if best, reached := beside.search(); reached {
			found = append(found, Relaxation{SecondPlan, float64(best.holes)})
		}
	}
	return found
}

// easier tries every other limit.
func (s *space) easier() []Relaxation {
	var found []Relaxation
	for _, e := range s.eases() {
		if need, ok := s.ease(e); ok {
			found = append(found, Relaxation{e.limit, need})
		}
	}
	return found
}

// ease is a limit and the settings it could have, mildest first; each reaches as
// far as those before it.
type ease struct {
	limit Limit
	needs []float64
	set   func(t *Task, need float64)
}

// ease returns the mildest setting of a limit with which a symmetric plan reaches.
func (s *space) ease(e ease) (float64, bool) {
	i := sort.Search(len(e.needs), func(i int) bool {
		t := s.t
		e.set(&t, e.needs[i])
		eased, err := newSpace(t)
		return err == nil && eased.mostGMM() >= s.targetG-s.t.ToleranceGMM
	})
	if i == len(e.needs) {
		return 0, false
	}
	return e.needs[i], true
}

func (s *space) eases() []ease {
	t := s.t
	off := clock.Radians(clock.Apart(s.hour, t.Hour))
	const five = math.Pi / 36 // degrees
	all := []ease{
		{BiggerDrill, s.biggerDrills(), func(t *Task, d float64) { t.DrillsMM = steps(d, s.bores[0].dMM, -1) }},
		{WiderZone, steps(t.HalfRad+five, math.Min(MostOffDeg*math.Pi/180+off, math.Pi), five), func(t *Task, a float64) { t.HalfRad = a }},
		{ThinnerWall, steps(t.WallMM-0.5, 0, -0.5), func(t *Task, w float64) { t.WallMM = w }},
		{DeeperHoles, s.deeper(), func(t *Task, z float64) {
			t.MostDepthMM = z
			if z >= t.ThickMM {
				t.Bottom = Either
			}
		}},
	}
	if len(t.Keep) > 0 {
		all = append(all, ease{NoKeepOuts, []float64{0}, func(t *Task, _ float64) { t.Keep = nil }})
	}
	return all
}

// biggerDrills are the whole millimetres over the biggest drill, as far as the
// zone is wide and a drilling machine takes them.
func (s *space) biggerDrills() []float64 {
	const chuck = 60
	return steps(math.Floor(slices.Max(s.t.DrillsMM))+1, math.Min(chuck, s.t.OutMM-s.t.InMM-2*s.t.WallMM), 1)
}

// deeper is the depths that the task keeps from, right through last.
func (s *space) deeper() []float64 {
	t := s.t
	if t.mostDepthMM() >= t.ThickMM && t.Bottom != BlindOnly {
		return nil
	}
	all := []float64{t.ThickMM}
	if t.mostDepthMM() < t.ThickMM {
		all = append(steps(t.MostDepthMM+t.DepthStepMM, t.ThickMM-snugMM, t.DepthStepMM), t.ThickMM)
	}
	return all
}

// steps returns from, from + by, ... as far as to.
func steps(from, to, by float64) []float64 {
	var all []float64
	for x := from; (to-x)*math.Copysign(1, by) >= -snugMM; x += by {
		all = append(all, x)
	}
	return all
}
