package fit

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// everyWay puts every single shim of the stock on the left, on the right or back in
// the box, and calls try with what is on each side.
func everyWay(stock []float64, left, right []float64, try func(left, right []float64)) {
	if len(stock) == 0 {
		try(left, right)
		return
	}
	s, rest := stock[0], stock[1:]
	everyWay(rest, left, right, try)
	everyWay(rest, append(slices.Clone(left), s), right, try)
	everyWay(rest, left, append(slices.Clone(right), s), try)
}

func sum(x []float64) (total float64) {
	for _, v := range x {
		total += v
	}
	return total
}

// merit is the order in which Choose looks, worked from where the crank comes to
// lie against either face; rounded, so that sums in another order are equal.
func merit(s Shimming, left, right []float64) []float64 {
	toLeft := sum(left) + s.CrankLeftMM                             // middle of the mouth, crank hard left
	toRight := s.FacesMM - sum(right) - (s.CrankMM - s.CrankLeftMM) // and hard right
	float := toRight - toLeft
	judged := float + s.GrowthMM
	off := 0.0
	if s.Centred {
		off = math.Abs((toLeft+toRight)/2 - s.CaseLeftMM)
	}
	m := []float64{
		max(s.LeastMM-judged, judged-s.MostMM, 0), max(off-s.OffMM, 0), float64(len(left) + len(right)),
		math.Abs(judged - s.WantMM), off, sum(left),
	}
	for i := range m {
		m[i] = math.Round(m[i]*1e6) / 1e6
	}
	return m
}

func bruteForce(s Shimming) (best []float64) {
	var stock []float64
	for _, shim := range s.Shims {
		for range shim.Have {
			stock = append(stock, shim.MM)
		}
	}
	everyWay(stock, nil, nil, func(left, right []float64) {
		if len(left) > s.ASide || len(right) > s.ASide || s.FacesMM-s.CrankMM-sum(left)-sum(right) < -1e-9 {
			return
		}
		if m := merit(s, left, right); best == nil || slices.Compare(m, best) < 0 {
			best = m
		}
	})
	return best
}

func randomShimming(rng *rand.Rand) Shimming {
	hundredths := func(from, to int) float64 { return float64(from+rng.Intn(to-from+1)) / 100 }
	s := Shimming{
		FacesMM: hundredths(11000, 11200), CrankMM: 110,
		LeastMM: 0.1, WantMM: 0.2, MostMM: 0.3, ASide: rng.Intn(MostShimsASide + 1),
		Centred: rng.Intn(3) > 0, CaseLeftMM: hundredths(5480, 5600), CrankLeftMM: 55, OffMM: hundredths(0, 20),
	}
	s.GrowthMM = []float64{0, 0.08, 0.2, 0.35}[rng.Intn(4)]
	for left := 9; left > 0; { // nine shims at most: 3⁹ ways
		n := 1 + rng.Intn(min(left, 3))
		s.Shims = append(s.Shims, Shim{hundredths(5, 60), n})
		left -= n
		if rng.Intn(5) == 0 {
			break
		}
	}
	return s
}

func TestShimsAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewSource(20))
	for range 150 {
		s := randomShimming(rng)
		got, err := s.Choose()
		require.NoError(t, err)
		m := merit(s, got.Left, got.Right)
		require.Equal(t, bruteForce(s), m, "%+v chose %+v", s, got)
		assert.InDelta(t, s.FacesMM-s.CrankMM-sum(got.Left)-sum(got.Right), got.ColdMM, 1e-9)
		assert.InDelta(t, got.ColdMM+s.GrowthMM, got.JudgedMM, 1e-9)
		if s.Centred {
			assert.InDelta(t, m[4], math.Abs(got.OffMM), 1e-6)
		}
		troubles := map[Trouble]bool{}
		for _, f := range got.Findings {
			troubles[f.Trouble] = true
		}
		assert.Equal(t, [2]bool{m[0] > 0, m[1] > 0}, [2]bool{troubles[FloatOutside], troubles[RodOffCentre]})
		assertInStock(t, s, got)
	}
}

func assertInStock(t *testing.T, s Shimming, got Shimmed) {
	t.Helper()
	left := map[float64]int{}
	for _, shim := range s.Shims {
		left[shim.MM] += shim.Have
	}
	for _, mm := range slices.Concat(got.Left, got.Right) {
		left[mm]--
		assert.GreaterOrEqual(t, left[mm], 0, "%g mm", mm)
	}
}

func TestShimsPutTheRodCentral(t *testing.T) {
	s := Shimming{
		FacesMM: 110, CrankMM: 108.8, LeastMM: 0.1, WantMM: 0.2, MostMM: 0.3,
		Shims: []Shim{{MM: 0.2}, {MM: 0.3}, {MM: 0.5}, {MM: 0.8}}, ASide: 2,
		Centred: true, CaseLeftMM: 55.3, CrankLeftMM: 54.4, OffMM: 0.05,
	}
	got, err := s.Choose()
	require.NoError(t, err)
	// 1.2 of room, 1.0 of shims; hard left 54.4 + 0.8, float 0.2 shared: 55.3.
	assert.Equal(t, Shimmed{Left: []float64{0.8}, Right: []float64{0.2}, ColdMM: 0.2, JudgedMM: 0.2}, got)

	s.CaseLeftMM = 55.7 // out of reach
	got, err = s.Choose()
	require.NoError(t, err)
	require.Len(t, got.Findings, 1)
	assert.Equal(t, RodOffCentre, got.Findings[0].Trouble)
	assert.Equal(t, 0.05, got.Findings[0].Limit)
	assert.Less(t, got.OffMM, 0.0) // the rod stands left of the line
}

func TestShimsThatCantReachTheFloat(t *testing.T) {
	s := Shimming{FacesMM: 110, CrankMM: 108, LeastMM: 0.1, WantMM: 0.2, MostMM: 0.3, Shims: []Shim{{0.5, 1}}, ASide: 3}
	got, err := s.Choose()
	require.NoError(t, err)
	assert.Equal(t, Shimmed{Right: []float64{0.5}, ColdMM: 1.5, JudgedMM: 1.5, Findings: []Finding{{FloatOutside, 1.5, 0.3}}}, got)
	s.Shims, s.CrankMM = nil, 109.95
	got, err = s.Choose()
	require.NoError(t, err)
	assert.Equal(t, Shimmed{ColdMM: 0.05, JudgedMM: 0.05, Findings: []Finding{{FloatOutside, 0.05, 0.1}}}, got)
}

func TestShimmingThatWontDo(t *testing.T) {
	good := Shimming{FacesMM: 110, CrankMM: 109, LeastMM: 0.1, WantMM: 0.2, MostMM: 0.3, Shims: []Shim{{0.5, 0}}, ASide: 2}
	for _, row := range []struct {
		spoil func(*Shimming)
		want  Fault
	}{
		{func(s *Shimming) { s.CrankMM = 110.1 }, Fault{Field: OverCrank, Got: 110.1, Least: LeastMM, Most: 110, Detail: Detail{NoRoom}}},
		{func(s *Shimming) { s.FacesMM = 0 }, Fault{Field: CaseFaces, Got: 0, Least: LeastMM, Most: MostMM}},
		{func(s *Shimming) { s.WantMM = 0.4 }, Fault{Field: Float, Got: 0.4, Least: 0.1, Most: 0.3}},
		{func(s *Shimming) { s.LeastMM = -0.1 }, Fault{Field: Float, Got: -0.1, Most: MostMM}},
		{func(s *Shimming) { s.ASide = 4 }, Fault{Field: ShimsASide, Got: 4, Most: 3}},
		{func(s *Shimming) { s.Shims = []Shim{{0.5, 1}, {0, 1}} }, Fault{Field: ShimSize, Item: 1, Got: 0, Least: LeastMM, Most: MostMM}},
		{func(s *Shimming) { s.Shims = []Shim{{0.5, -1}} }, Fault{Field: ShimStock, Got: -1, Most: 1e6}},
		{func(s *Shimming) { s.Shims = make([]Shim, 17) }, Fault{Field: ShimStock, Got: 17, Most: 16}},
		{func(s *Shimming) { s.Centred, s.OffMM = true, -1 }, Fault{Field: OffCentre, Got: -1, Most: MostMM}},
	} {
		s := good
		row.spoil(&s)
		_, err := s.Choose()
		assertFault(t, err, row.want)
	}
}

func BenchmarkChooseFromTheMostShims(b *testing.B) {
	s := Shimming{FacesMM: 112, CrankMM: 108, LeastMM: 0.1, WantMM: 0.2, MostMM: 0.3, ASide: MostShimsASide, Centred: true, CaseLeftMM: 56, CrankLeftMM: 54, OffMM: 0.05}
	for i := range MostShimSizes {
		s.Shims = append(s.Shims, Shim{MM: 0.1 + 0.05*float64(i)})
	}
	for b.Loop() {
		if _, err := s.Choose(); err != nil {
			b.Fatal(err)
		}
	}
}
