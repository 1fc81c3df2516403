package fit

import (
	"math"
	"slices"
	"sort"

	"pintwelve/core/bound"
)

// Shim is a thickness he has. Have is how many; 0 is as many as needed.
type Shim struct {
	MM   float64
	Have int
}

// How many sizes of shim and how many shims on one side are considered.
const (
	MostShimSizes  = 16
	MostShimsASide = 3
)

// Shimming is the question which shims to fit.
type Shimming struct {
	FacesMM, CrankMM        float64 // between the case faces, over the crank
	LeastMM, WantMM, MostMM float64 // end float
	GrowthMM                float64 // added to the float before it is judged: 0 judges it cold
	Shims                   []Shim
	ASide                   int // most shims on one side, up to MostShimsASide
	// With Centred, the rod is brought to the cylinder's line.
	Centred     bool
	CaseLeftMM  float64 // left case face to the cylinder's line
	CrankLeftMM float64 // left shoulder of the crank to the middle of the mouth
	OffMM       float64 // how far the rod may stand off that line
}

// Shimmed is the answer.
type Shimmed struct {
	Left, Right []float64 // thicknesses, mm, thinnest first
	ColdMM      float64   // end float as the crank is put together
	JudgedMM    float64   // with the growth
	OffMM       float64   // mouth's middle off the cylinder's line, float shared evenly; positive to the right
	Findings    []Finding
}

// Choose picks the shims. In this order it keeps the float within its limits, or
// as near them as can be; the rod within OffMM of the cylinder's line, or as near;
// then takes the fewest shims, the float nearest WantMM, the rod nearest the line,
// and the less on the left. A set that binds cold is never taken; where even no
// shims at all bind, that is a Fault of kind NoRoom.
func (s Shimming) Choose() (Shimmed, error) {
	if err := s.check(); err != nil {
		return Shimmed{}, err
	}
	q := s.question()
	if q.room < 0 {
		return Shimmed{}, &Fault{Detail: Detail{NoRoom}, Field: OverCrank, Got: s.CrankMM, Least: LeastMM, Most: s.FacesMM}
	}
	left, right := q.best()
	return s.answer(q, left, right), nil
}

// Wanted returns the shims, in all, that bring the float within its limits without
// binding cold, mm: the least, what WantMM takes, and the most. False where none do:
// the crank is then too wide by −mostMM, or, where that is no more than 0, what is
// right hot binds cold.
func (s Shimming) Wanted() (leastMM, wantMM, mostMM float64, ok bool) {
	q := s.question()
	least, most := max(q.room+q.growth-q.most, 0), min(q.room+q.growth-q.least, q.room)
	want := min(max(q.room+q.growth-q.want, least), most)
	return mm(least), mm(want), mm(most), least <= most
}

func (s Shimming) check() error {
	if err := bound.First(
		length(CaseFaces, s.FacesMM), length(OverCrank, s.CrankMM),
		within(Float, s.LeastMM, 0, MostMM), within(Float, s.WantMM, s.LeastMM, s.MostMM), within(Float, s.MostMM, s.LeastMM, MostMM),
		within(Float, s.GrowthMM, -MostMM, MostMM),
		within(ShimStock, float64(len(s.Shims)), 0, MostShimSizes),
		within(ShimsASide, float64(s.ASide), 0, MostShimsASide),
	); err != nil {
		return err
	}
	for i, shim := range s.Shims {
		if err := bound.First(withinItem(ShimSize, i, shim.MM, LeastMM, MostMM), withinItem(ShimStock, i, float64(shim.Have), 0, 1e6)); err != nil {
			return err
		}
	}
	if !s.Centred {
		return nil
	}
	return bound.First(
		within(Middle, s.CaseLeftMM, -MostMM, MostMM), within(Middle, s.CrankLeftMM, -MostMM, MostMM),
		within(OffCentre, s.OffMM, 0, MostMM),
	)
}

// nm counts in whole nanometres, so that equal floats are equal whatever sum they
// come from.
func nm(mm float64) int64 { return int64(math.Round(mm * 1e6)) }

func mm(nm int64) float64 { return float64(nm) / 1e6 }

// question is Shimming in nanometres.
type question struct {
	room              int64 // float without shims
	growth            int64
	least, want, most int64
	centred           bool
	off2, allowed2    int64 // twice the rod's place off the line without shims, and what is allowed
	shims             []Shim
	aSide             int
}

func (s Shimming) question() question {
	q := question{
		room: nm(s.FacesMM) - nm(s.CrankMM), growth: nm(s.GrowthMM),
		least: nm(s.LeastMM), want: nm(s.WantMM), most: nm(s.MostMM),
		centred: s.Centred, shims: slices.Clone(s.Shims), aSide: s.ASide,
	}
	sort.SliceStable(q.shims, func(i, j int) bool { return q.shims[i].MM < q.shims[j].MM })
	if s.Centred {
		q.off2 = 2*nm(s.CrankLeftMM) - 2*nm(s.CaseLeftMM) + q.room
		q.allowed2 = 2 * nm(s.OffMM)
	}
	return q
}

// pile is the shims of one side.
type pile struct {
	thick int64
	n     int
	of    [MostShimSizes]uint8 // how many of each size
}

// piles returns every pile that the stock allows.
func (q question) piles() []pile {
	all := []pile{{}}
	for i, shim := range q.shims {
		for _, p := range all { // the piles without this size, each with one more and one more
			for used := 1; p.n < q.aSide && (shim.Have == 0 || used <= shim.Have); used++ {
				p.n++
				p.thick += nm(shim.MM)
				p.of[i]++
				all = append(all, p)
			}
		}
	}
	return all
}

// best returns the best two piles.
func (q question) best() (left, right pile) {
	piles := q.piles()
	least := q.cost(left, right)
	for _, l := range piles {
		for _, r := range piles {
			if l.thick+r.thick > q.room {
				continue
			}
			if c := q.cost(l, r); slices.Compare(c[:], least[:]) < 0 && q.inStock(l, r) {
				least, left, right = c, l, r
			}
		}
	}
	return left, right
}

// cost is what Choose looks at, in its order.
func (q question) cost(l, r pile) [6]int64 {
	float := q.judged(l, r)
	off := int64(0)
	if q.centred {
		off = abs(q.offset2(l, r))
	}
	return [6]int64{
		max(q.least-float, float-q.most, 0),
		max(off-q.allowed2, 0),
		int64(l.n + r.n),
		abs(float - q.want),
		off,
		l.thick,
	}
}

func (q question) judged(l, r pile) int64 { return q.room - l.thick - r.thick + q.growth }

// offset2 is twice the place of the mouth's middle to the right of the cylinder's
// line: from the left face it stands at left shims + half the float + the crank's
// own half.
func (q question) offset2(l, r pile) int64 { return q.off2 + l.thick - r.thick }

func (q question) inStock(l, r pile) bool {
	for i, shim := range q.shims {
		if shim.Have > 0 && int(l.of[i])+int(r.of[i]) > shim.Have {
			return false
		}
	}
	return true
}

func abs(x int64) int64 { return max(x, -x) }

func (s Shimming) answer(q question, l, r pile) Shimmed {
	out := Shimmed{
		Left: q.list(l), Right: q.list(r),
		ColdMM:   mm(q.room - l.thick - r.thick),
		JudgedMM: mm(q.judged(l, r)),
	}
	switch judged := q.judged(l, r); {
	case judged < q.least:
		out.Findings = append(out.Findings, Finding{FloatOutside, out.JudgedMM, s.LeastMM})
	case judged > q.most:
		out.Findings = append(out.Findings, Finding{FloatOutside, out.JudgedMM, s.MostMM})
	}
	if !q.centred {
		return out
	}
	off2 := q.offset2(l, r)
	out.OffMM = mm(off2) / 2
	if abs(off2) > q.allowed2 {
		out.Findings = append(out.Findings, Finding{RodOffCentre, out.OffMM, s.OffMM})
	}
	return out
}

func (q question) list(p pile) []float64 {
	var out []float64
	for i, n := range p.of[:len(q.shims)] {
		for range n {
			out = append(out, q.shims[i].MM)
		}
	}
	return out
}
