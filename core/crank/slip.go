package crank

// SlipKind is a slip of the pen that would explain readings which don't fit.
type SlipKind uint8

// The slips: a station's hours read from the wrong end, or two stations' readings
// exchanged.
const (
	WrongEnd SlipKind = iota
	Swapped
)

// Slip is one that would make the readings fit: of station A, and B if Swapped.
type Slip struct {
	Kind SlipKind
	A, B int
}

// Slips returns the single slips each of which would make readings fit that, as
// they stand, do not. It can only see one where a half has more observations
// than it needs: with one dial a shaft, or two between centres, any readings
// fit, and readings swapped or read from the wrong end are another crank.
func (c *Crank) Slips(st []Station) []Slip {
	s, err := c.Solve(st)
	if err != nil || s.consistent(st) {
		return nil
	}
	var out []Slip
	try := func(slip Slip, other []Station) {
		if s, err := c.Solve(other); err == nil && s.consistent(other) {
			out = append(out, slip)
		}
	}
	for i := range st {
		try(Slip{Kind: WrongEnd, A: i, B: i}, with(st, i, mirrored(st[i])))
	}
	for i := range st {
		for j := i + 1; j < len(st); j++ {
			a, b := moved(st[i], st[j]), moved(st[j], st[i])
			try(Slip{Kind: Swapped, A: i, B: j}, with(with(st, i, b), j, a))
		}
	}
	return out
}

// unknown is how many vectors a piece's dials have to find: one where its support
// is counted as exact, else two.
func (s *Pose) unknown(st []Station, piece int) int {
	if s.Crank.Mount == Centres && distinctPlaces(st, piece) > 1 {
		return 2
	}
	return 1
}

// consistent tells whether every half's dials, and its support where it is
// counted as one, lie on a line to within their doubt.
func (s *Pose) consistent(st []Station) bool {
	for h := range s.A {
		if !fits(st, h, axis{s.A[h], s.B[h]}, s.Pin, s.unknown(st, h)) {
			return false
		}
	}
	return true
}

func with(st []Station, i int, p Station) []Station {
	out := append([]Station(nil), st...)
	out[i] = p
	return out
}

// mirrored is a station as it reads with its hours from the other end.
func mirrored(p Station) Station {
	p.E.N, p.Cov.TN = -p.E.N, -p.Cov.TN
	return p
}

// moved is a station's reading at another's place.
func moved(p, to Station) Station {
	p.Piece, p.At = to.Piece, to.At
	return p
}
