package wheel

import "math"

// WallKind says where a wall stands.
type WallKind uint8

// The walls that can be too thin.
const (
	Web        WallKind = iota // between the faces, bosses apart
	RimDepth                   // from the rim's edge in to where the section steps or slopes down
	RimWidth                   // across the rim at its edge
	HoleFloor                  // under a blind hole
	HoleToBore                 // between a hole and the bore
	HoleToEdge                 // between a hole and the rim's edge
	HoleToHole                 // between two holes
	HoleToBoss                 // between a hole and the edge of a boss, from either side
)

// Wall is the thinnest wall of its kind.
type Wall struct {
	Kind  WallKind
	MM    float64
	AtMM  float64 // radius, for a web, a rim or a hole
	Holes [2]int  // which holes; both the same unless it is between two
}

// Walls returns the thinnest wall of every kind that the wheel has.
func (s *Section) Walls() []Wall {
	thick := s.thickness()
	edge := thick[len(thick)-1].DepthToMM
	walls := []Wall{leastWeb(thick), {Kind: RimWidth, MM: edge, AtMM: s.OutMM}}
	if at, ok := rimFoot(thick); ok {
		walls = append(walls, Wall{Kind: RimDepth, MM: s.OutMM - at, AtMM: at})
	} else if s.rimless {
		walls = append(walls, Wall{Kind: RimDepth, AtMM: s.OutMM})
	}
	var least [HoleToBoss + 1]*Wall
	for i := range s.Holes {
		for _, w := range s.around(i) {
			if l := least[w.Kind]; l == nil || w.MM < l.MM {
				least[w.Kind] = &w
			}
		}
	}
	for _, w := range least {
		if w != nil {
			walls = append(walls, *w)
		}
	}
	return walls
}

func leastWeb(thick profile) Wall {
	w := Wall{Kind: Web, MM: math.Inf(1)}
	for _, t := range thick {
		if t.DepthFromMM < w.MM {
			w.MM, w.AtMM = t.DepthFromMM, t.FromMM
		}
		if t.DepthToMM < w.MM {
			w.MM, w.AtMM = t.DepthToMM, t.ToMM
		}
	}
	return w
}

// rimFoot returns the radius where, coming in from the edge, the section first
// grows thinner.
func rimFoot(thick profile) (float64, bool) {
	const flush = 1e-9 // mm
	for i := len(thick) - 1; i >= 0; i-- {
		t := thick[i]
		if i < len(thick)-1 && t.DepthToMM < thick[i+1].DepthFromMM-flush {
			return t.ToMM, true
		}
		if t.DepthFromMM < t.DepthToMM-flush {
			return t.ToMM, true
		}
	}
	return 0, false
}

// around returns the walls about hole i, those to holes before it included.
func (s *Section) around(i int) []Wall {
	d := s.Holes[i]
	r := d.At.Len()
	wall := func(k WallKind, mm float64) Wall { return Wall{k, mm, r, [2]int{i, i}} }
	walls := []Wall{wall(HoleToEdge, s.OutMM-d.outer())}
	if s.InMM > 0 {
		walls = append(walls, wall(HoleToBore, r-d.DiameterMM/2-s.InMM))
	}
	if !d.Through {
		_, far := s.standing(d)
		floor, _ := extent(far, d.inner(), d.outer())
		walls = append(walls, wall(HoleFloor, math.Max(0, floor-d.StartMM-d.ReachMM())))
	}
	for _, b := range s.bosses {
		walls = append(walls, wall(HoleToBoss, s.toBoss(d, b)))
	}
	for j := range s.Holes[:i] {
		walls = append(walls, Wall{HoleToHole, s.between(i, j), r, [2]int{j, i}})
	}
	return walls
}

// toBoss is nothing where the hole crosses the boss's edge.
func (s *Section) toBoss(d Drilling, b Boss) float64 {
	apart := b.At.Sub(d.At).Len()
	out := apart - d.DiameterMM/2 - b.DiameterMM/2
	in := b.DiameterMM/2 - apart - d.DiameterMM/2
	return math.Max(0, math.Max(in, out))
}

// between returns the wall between two holes, less than nothing where they run
// into each other. Holes from opposite faces may pass above one another.
func (s *Section) between(i, j int) float64 {
	a, b := s.Holes[i], s.Holes[j]
	across := a.At.Sub(b.At).Len() - (a.DiameterMM+b.DiameterMM)/2
	aTop, aEnd := s.along(a)
	bTop, bEnd := s.along(b)
	along := math.Max(aTop-bEnd, bTop-aEnd)
	if across > 0 && along > 0 {
		return math.Hypot(across, along)
	}
	return math.Max(across, along)
}

// along returns where a hole begins and ends, from the outer face.
func (s *Section) along(d Drilling) (top, end float64) {
	top, end = d.StartMM, d.StartMM+d.ReachMM()
	if d.Through {
		top, end = 0, s.WidthMM
	}
	if d.Side == Inner {
		return s.WidthMM - end, s.WidthMM - top
	}
	return top, end
}

// checkWeb returns a Fault where the faces meet, or as good as.
func (s *Section) checkWeb() error {
	if w := leastWeb(s.thickness()); !(w.MM >= LeastMM) {
		return &Fault{Field: WebLeft, Got: w.MM, Least: LeastMM, Most: s.WidthMM, Detail: Detail{AtMM: w.AtMM}}
	}
	return nil
}

// checkHoles returns a Fault for a hole that runs out of the metal sideways.
func (s *Section) checkHoles() error {
	field := [...]Field{HoleToBore: HoleToBoreLeft, HoleToEdge: HoleToEdgeLeft, HoleToHole: HoleToHoleLeft, HoleToBoss: 0}
	for i := range s.Holes {
		for _, w := range s.around(i) {
			if f := field[w.Kind]; f != 0 && !(w.MM > 0) {
				return &Fault{Field: f, Item: i, Got: w.MM, Most: s.OutMM, Detail: Detail{AtMM: w.AtMM}}
			}
		}
	}
	return nil
}
