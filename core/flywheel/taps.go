package flywheel

import (
	"math"
	"sort"

	"pintwelve/core/bound"
)

// Timing is a swing's period from taps at the passes of a mark.
type Timing struct {
	PeriodS  float64 // there and back, at the amplitude swung
	SDS      float64 // its standard deviation
	Freedom  float64 // degrees of freedom of SDS
	ScatterS float64 // standard deviation of one tap
	UnevenS  float64 // passes one way are this much late on passes the other way; 0 where one way only is tapped
	Used     int     // taps in the fit
	Swings   float64 // from the first to the last of them
	Missed   []Missed
	Doubled  []int // taps left out, each too soon after the one before
}

// Missed tells of passes that were not tapped.
type Missed struct {
	After int // the tap before the gap
	Count int
}

// PM returns the period's ±, 95 %.
func (t Timing) PM() float64 { return student95(t.Freedom) * t.SDS }

// LeastTaps is the fewest passes that are timed.
const LeastTaps = 6

// mostTaps and mostPasses bound the work, an hour of tapping.
const (
	mostTaps   = 1000
	mostPasses = 5000
)

// mostScatter is the most that a tap may scatter, in gaps between passes. Taps
// at random scatter by 1/√12 = 0.29; with much less than that already, missed
// and double taps can't be told from bad ones.
const mostScatter = 0.22

// Time fits the period to taps, times in s at each pass of the mark, by least
// squares over the number of the pass. There are passes of them in one swing
// there and back: 2 where the mark is tapped both ways, when its standing off
// the middle is fitted too, 1 where one way only is. The clock counts in steps
// of stepS, in s; 0 for none. Taps out of order, too few, or too uneven to
// number are a *Fault.
func Time(taps []float64, passes int, stepS float64) (Timing, error) {
	if err := checkTaps(taps, passes, stepS); err != nil {
		return Timing{}, err
	}
	gap := middleGap(taps, passes)
	if err := within(TapsUneven, (taps[len(taps)-1]-taps[0])/gap, 1, mostPasses); err != nil {
		return Timing{}, err
	}
	var t Timing
	numbers, times := t.number(taps, comb(taps, gap))
	if err := within(TapCount, float64(len(times)), LeastTaps, mostTaps); err != nil {
		return Timing{}, err
	}
	line := fitPasses(numbers, times, passes == 2)
	if !line.ok {
		return Timing{}, &Fault{Field: TapsUneven, Got: line.scatter, Most: mostScatter}
	}
	n := float64(passes)
	t.Used, t.Freedom = len(times), line.freedom
	t.ScatterS = math.Max(line.scatter, stepS/math.Sqrt(12))
	t.PeriodS, t.SDS = n*line.gap, n*t.ScatterS*line.unit
	t.UnevenS = 2 * line.alternation
	t.Swings = (numbers[len(numbers)-1] - numbers[0]) / n
	if err := within(TapsUneven, t.ScatterS/line.gap, 0, mostScatter); err != nil {
		return Timing{}, err
	}
	return t, nil
}

func checkTaps(taps []float64, passes int, stepS float64) error {
	if err := bound.First(within(Passes, float64(passes), 1, 2), within(ClockStep, stepS, 0, 1),
		within(TapCount, float64(len(taps)), LeastTaps, mostTaps)); err != nil {
		return err
	}
	const day = 86400
	least := -math.MaxFloat64
	for i, x := range taps {
		if err := withinItem(TapTime, i, x, least, math.MaxFloat64); err != nil {
			return err
		}
		if err := withinItem(TapTime, i, x-taps[0], 0, day); err != nil {
			return err
		}
		least = x
	}
	return within(TapTime, taps[len(taps)-1]-taps[0], 0.1, day)
}

// middleGap is the middle one of all gaps between taps; with the mark tapped
// both ways half the middle of every two, which a mark off the middle does not
// change.
func middleGap(taps []float64, passes int) float64 {
	var gaps []float64
	for i := passes; i < len(taps); i++ {
		gaps = append(gaps, (taps[i]-taps[i-passes])/float64(passes))
	}
	sort.SliceStable(gaps, func(i, j int) bool { return gaps[i] < gaps[j] })
	return gaps[len(gaps)/2]
}

// teeth is an even comb: pass k is at start + gap k.
type teeth struct{ start, gap float64 }

// comb finds the even comb that all taps together fit best, within a fifth of
// a gap: the one for which the sum of exp(2πi t/gap) is longest. Missed and
// double taps do not put it out of step, as counting from tap to tap would.
func comb(taps []float64, gap float64) teeth {
	const around = 0.2
	span := (taps[len(taps)-1] - taps[0]) / gap
	tries := math.Ceil(4 * around * span)
	var best teeth
	longest := -1.0
	for i := -tries; i <= tries; i++ {
		g := gap / (1 + around*i/tries)
		var re, im float64
		for _, x := range taps {
			s, c := math.Sincos(2 * math.Pi * (x - taps[0]) / g)
			re, im = re+c, im+s
		}
		if l := math.Hypot(re, im); l > longest {
			longest, best = l, teeth{taps[0] + g*math.Atan2(im, re)/(2*math.Pi), g}
		}
	}
	return best
}

// number gives each tap the pass it is nearest to. Of two taps at one pass the
// nearer counts.
func (t *Timing) number(taps []float64, c teeth) (numbers, times []float64) {
	var kept []int
	for i, x := range taps {
		k := math.Round((x - c.start) / c.gap)
		last := len(kept) - 1
		if last < 0 || k > numbers[last] {
			kept, numbers, times = append(kept, i), append(numbers, k), append(times, x)
			continue
		}
		drop, pass := i, c.start+c.gap*k
		if math.Abs(x-pass) < math.Abs(times[last]-pass) {
			drop, kept[last], times[last] = kept[last], i, x
		}
		t.Doubled = append(t.Doubled, drop)
	}
	for j := 1; j < len(kept); j++ {
		if n := int(numbers[j] - numbers[j-1]); n > 1 {
			t.Missed = append(t.Missed, Missed{After: kept[j-1], Count: n - 1})
		}
	}
	return numbers, times
}

// line is time = start + gap k, and ± uneven with odd and even k.
type line struct {
	gap, alternation, scatter float64
	unit                      float64 // standard deviation of the gap for a scatter of 1
	freedom                   float64
	ok                        bool
}

// fitPasses takes the mean out of time, number and parity, and solves what is
// left for the gap and the unevenness.
func fitPasses(numbers, times []float64, alternating bool) line {
	n := float64(len(times))
	parity := make([]float64, len(times))
	if alternating {
		for i, k := range numbers {
			parity[i] = 1 - 2*math.Abs(math.Mod(k, 2))
		}
	}
	mk, mp, mt := mean(numbers), mean(parity), mean(times)
	var kk, kp, pp, kt, pt float64
	for i := range times {
		k, p, t := numbers[i]-mk, parity[i]-mp, times[i]-mt
		kk, kp, pp, kt, pt = kk+k*k, kp+k*p, pp+p*p, kt+k*t, pt+p*t
	}
	l := line{freedom: n - 2}
	det := kk
	if pp > 0 {
		l.freedom, det = n-3, kk-kp*kp/pp
		l.gap = (kt - kp*pt/pp) / det
		l.alternation = (pt - kp*l.gap) / pp
	} else {
		l.gap = kt / kk
	}
	var sse float64
	for i := range times {
		r := times[i] - mt - l.gap*(numbers[i]-mk) - l.alternation*(parity[i]-mp)
		sse += r * r
	}
	l.scatter, l.unit = math.Sqrt(sse/l.freedom), 1/math.Sqrt(det)
	l.ok = l.gap > 0 && det > 0 && l.scatter <= math.MaxFloat64
	return l
}

func mean(xs []float64) float64 {
	var sum float64
	for _, x := range xs {
		sum += x
	}
	return sum / float64(len(xs))
}
