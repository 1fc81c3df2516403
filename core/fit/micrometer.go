package fit

import (
	"math"
	"sort"

	"pintwelve/core/bound"
	"pintwelve/core/lsq"
)

// Plane is where along a pin or an eye a reading is taken, at right angles to its axis.
type Plane uint8

// The planes.
const (
	NearEnd Plane = iota
	MidLength
	FarEnd
	planes
)

// Spot is one place of measuring: a plane, in the first direction or across it
// at right angles.
type Spot struct {
	At     Plane
	Across bool
}

// Micrometer is one reading.
type Micrometer struct {
	Spot
	MM float64
}

// Instrument is what a size is measured with: the least it shows, and by how much it
// may be out all along, as its certificate or a setting ring says.
type Instrument struct{ StepMM, ErrorMM float64 }

// Measure works a size out of one reading or more. Every spot counts alike, so
// that a spot read twice doesn't pull the mean. The scatter comes from spots read
// more than once: form is told as form and is no scatter.
func Measure(readings []Micrometer, with Instrument) (Size, error) {
	var spots spots
	if err := bound.First(within(Step, with.StepMM, 1e-6, 1), within(Step, with.ErrorMM, 0, 1)); err != nil {
		return Size{}, err
	}
	if len(readings) == 0 {
		return Size{}, &Fault{Field: Reading, Least: LeastMM, Most: MostMM}
	}
	for i, r := range readings {
		if err := bound.First(
			withinItem(Reading, i, r.MM, LeastMM, MostMM),
			withinItem(Reading, i, float64(r.At), 0, float64(planes-1)),
		); err != nil {
			return Size{}, err
		}
		spots.add(r)
	}
	s := spots.size()
	s.Form = spots.form()
	s.PlusMinusMM, s.SpotPlusMinusMM = spots.plusMinus(with)
	return s, nil
}

// Readings of one part lie no further from their median than this, as a part of it
// or in mm: more is no wear, but a figure left out (common practice, no source).
const (
	astrayPart = 0.02
	astrayMM   = 0.2
)

// Together returns a Fault of kind Astray, Item being its place, for the first reading
// that can't be of the plain cylinder that the others are of. A taper's may differ more.
func Together(readings []Micrometer) error {
	all := make([]float64, len(readings))
	for i, r := range readings {
		all[i] = r.MM
	}
	if len(all) < 2 {
		return nil
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i] < all[j] }) // as everywhere: another sort is 3 kB more
	middle := all[len(all)/2]
	off := math.Max(astrayMM, astrayPart*middle)
	for i, r := range readings {
		if math.Abs(r.MM-middle) > off {
			return &Fault{Detail: Detail{Astray}, Field: Reading, Item: i, Got: r.MM, Least: middle - off, Most: middle + off}
		}
	}
	return nil
}

// spots gathers the readings by plane and direction.
type spots [planes][2]struct {
	n    int
	mean float64
	sse  float64 // squared departures from the mean
}

func (s *spots) add(r Micrometer) {
	across := 0
	if r.Across {
		across = 1
	}
	c := &s[r.At][across]
	c.n++
	off := r.MM - c.mean
	c.mean += off / float64(c.n)
	c.sse += off * (r.MM - c.mean)
}

func (s *spots) size() Size {
	out := Size{LeastMM: math.MaxFloat64}
	n := 0.0
	for _, plane := range s {
		for _, c := range plane {
			if c.n == 0 {
				continue
			}
			n++
			out.MeanMM += (c.mean - out.MeanMM) / n
			out.LeastMM = math.Min(out.LeastMM, c.mean)
			out.MostMM = math.Max(out.MostMM, c.mean)
			out.Readings += c.n
		}
	}
	return out
}

func (s *spots) form() (f Form) {
	ends, mids := 0.0, 0.0
	for dir := range 2 {
		near, mid, far := s[NearEnd][dir], s[MidLength][dir], s[FarEnd][dir]
		if near.n == 0 || far.n == 0 {
			continue
		}
		ends++
		f.TaperMM += (far.mean - near.mean - f.TaperMM) / ends
		if mid.n > 0 {
			mids++
			f.BarrelMM += (mid.mean - (near.mean+far.mean)/2 - f.BarrelMM) / mids
		}
	}
	f.TaperKnown, f.BarrelKnown = ends > 0, mids > 0
	for _, plane := range s {
		if plane[0].n == 0 || plane[1].n == 0 {
			continue
		}
		f.OvalKnown = true
		if oval := plane[0].mean - plane[1].mean; math.Abs(oval) > math.Abs(f.OvalMM) {
			f.OvalMM = oval
		}
	}
	return f
}

// plusMinus returns the ± of the mean and of one spot. Rounding to the step is off
// by the same for readings that agree, and the zero is set once, to the same step:
// neither averages out, nor does the instrument's own error. The scatter of repeats
// does; it counts where it is larger.
func (s *spots) plusMinus(with Instrument) (mean, spot float64) {
	nu, sse := 0, 0.0
	variance, n, fewest := 0.0, 0.0, math.MaxInt
	for _, plane := range s {
		for _, c := range plane {
			if c.n > 0 {
				nu += c.n - 1
				sse += c.sse
				variance += 1 / float64(c.n)
				n++
				fewest = min(fewest, c.n)
			}
		}
	}
	rounding := lsq.Normal95 * with.StepMM / math.Sqrt(12)
	scatter := 0.0
	if nu > 0 {
		scatter = lsq.Student95(float64(nu)) * math.Sqrt(sse/float64(nu))
	}
	mean = math.Max(rounding, scatter*math.Sqrt(variance)/n)
	spot = math.Max(rounding, scatter/math.Sqrt(float64(fewest)))
	all := quadrature(rounding, with.ErrorMM)
	return quadrature(mean, all), quadrature(spot, all)
}
