package crank_test

import (
	"cmp"
	"flag"
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/dial"
	"pintwelve/core/lsq"
)

// setups is how many random set-ups a row of the coverage table takes:
//
//	go test ./core/crank -run Coverage -v -setups 10000
var setups = flag.Int("setups", 600, "set-ups a row of the coverage table")

// coverageRow is one way of reading a crank.
type coverageRow struct {
	name     string
	read     func(*rand.Rand, *body, crank.Station) sample
	oval     float64 // divisions, greatest amplitude of the journals' ovality
	stations int     // on each shaft
	shared   bool    // one dial carried across
	scatter  float64 // divisions; −1: drawn for each set-up from 0 to 1
	least    float64 // %, the least share that is not too narrow; 0: 93
	most     float64 // %, the greatest that is not too wide; 0: 98
}

// sample is one dial's reading, with the fit behind it where there is one.
type sample struct {
	dial.Reading
	fit *dial.Harmonics
}

const half = thou / 2 // the dial's division, mm

// turns reads a full turn at n points.
func turns(n int, repeat bool) func(*rand.Rand, *body, crank.Station) sample {
	return func(rng *rand.Rand, b *body, s crank.Station) sample {
		turn := b.reads(rng, s.Half(), s.At, dial.Even(n, repeat), half, b.scatter*half)
		f, err := turn.Fit()
		if err != nil {
			panic(err)
		}
		return sample{fit: &f}
	}
}

// byTop watches the needle's top: anywhere within half a division of it, and
// reads the hour to a step.
func byTop(step float64) func(*rand.Rand, *body, crank.Station) sample {
	return func(rng *rand.Rand, b *body, s crank.Station) sample {
		runOut, e := b.sweep(rng, s)
		flat := math.Pi
		if e.Len() > half/4 {
			flat = math.Acos(1 - half/(2*e.Len()))
		}
		hour := toStep(e.Hour()+flat*(2*rng.Float64()-1)*6/math.Pi, step)
		r, err := dial.HighSpot(clock.Left, runOut, hour, dial.Scale{Division: half, HourStep: step})
		if err != nil {
			panic(err)
		}
		return sample{Reading: r}
	}
}

// byHalfWay reads the two hours where the needle passes half-way, each while it
// is within half a division of there, to a step.
func byHalfWay(step float64) func(*rand.Rand, *body, crank.Station) sample {
	return func(rng *rand.Rand, b *body, s crank.Station) sample {
		runOut, e := b.sweep(rng, s)
		off := func() float64 { return math.Asin(clip(half*(rng.Float64()-0.5)/e.Len())) * 6 / math.Pi }
		rising, falling := 0.0, 0.0
		for clock.Apart(rising, falling) == 0 {
			rising, falling = toStep(e.Hour()-3+off(), step), toStep(e.Hour()+3+off(), step)
		}
		r, err := dial.HalfWay(clock.Left, runOut, rising, falling, dial.Scale{Division: half, HourStep: step})
		if err != nil {
			panic(err)
		}
		return sample{Reading: r}
	}
}

func clip(x float64) float64 { return math.Max(-1, math.Min(1, x)) }

func toStep(hour, step float64) float64 { return step * math.Round(hour/step) }

// sweep turns the crank under a dial and returns the full movement between its
// highest and lowest, each read to a division, with where it is really high.
func (b *body) sweep(rng *rand.Rand, s crank.Station) (runOut float64, e clock.Vec) {
	e = b.centreOf(s.Half(), s.At, b.support(0), b.support(1))
	zero := rng.Float64()
	return half * (math.Round(zero+e.Len()/half) - math.Round(zero-e.Len()/half)), e
}

// hits counts how often each stated region held the truth, and of how many.
type hits struct {
	name   string
	in, of int
}

func (h *hits) count(in bool) {
	h.of++
	if in {
		h.in++
	}
}

// countAt counts whether the sector holds the truth's hour, where there is one.
func (h *hits) countAt(s lsq.Uncertainty, found, truth clock.Vec) {
	if s.Significant(found) {
		h.count(clock.Apart(found.Hour(), truth.Hour()) <= s.Sector(found))
	}
}

func (h *hits) share() float64 { return 100 * float64(h.in) / float64(h.of) }

// coverageOf simulates a row. The regions: the vectors of the offset, the gap
// slope and each dial's eccentricity; twist and pinch by themselves; each dial's
// run-out, and the journals' tilt; the sectors in which offset and gap slope point,
// where the dials can tell.
func coverageOf(t *testing.T, row coverageRow, seed int64, n int) []*hits {
	rng := rand.New(rand.NewSource(seed))
	out := []*hits{{name: "d"}, {name: "g"}, {name: "e"}, {name: "d_n"}, {name: "g_t"}, {name: "run-out"}, {name: "tilt"}, {name: "d at"}, {name: "g at"}}
	for range n {
		b, st := row.setUp(rng)
		read := row.stationsOf(rng, &b, st)
		pose, err := b.Solve(read)
		require.NoError(t, err)
		d, g := b.truth()
		sureD, sureG := pose.UncertaintyOfD(read), pose.UncertaintyOfG(read)
		out[0].count(holds(sureD, pose.D, d))
		out[1].count(holds(sureG, pose.G, g))
		out[3].count(math.Abs(pose.D.N-d.N) <= sureD.HalfWidth95(clock.Vec{N: 1}))
		out[4].count(math.Abs(pose.G.T-g.T) <= sureG.HalfWidth95(clock.Vec{T: 1}))
		out[7].countAt(sureD, pose.D, d)
		out[8].countAt(sureG, pose.G, g)
		for _, s := range read {
			e := b.centreOf(s.Half(), s.At, b.support(0), b.support(1))
			out[2].count(holds(lsq.Uncertainty{Cov: s.Cov, Nu: s.Nu}, s.E, e))
			out[5].count(math.Abs(s.RunOut-2*e.Len()) <= lsq.Student95(s.Nu)*s.Sigma)
		}
		a := pose.Advise(read, crank.Tolerance{RunOut: 2 * thou})
		for h, f := range a.Tilt {
			out[6].count(math.Abs(f.Value-b.tilt(clock.End(h))) <= f.HalfWidth95)
		}
	}
	return out
}

func holds(s lsq.Uncertainty, found, truth clock.Vec) bool { return !s.Significant(found.Sub(truth)) }

// setUp is a crank whose worst dial runs out 3 to 15 thou, with dials on it.
func (row *coverageRow) setUp(rng *rand.Rand) (body, []crank.Station) {
	b, st := someBody(rng)
	u := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	for i := range st {
		st[i].At = b.Pin + (b.Crank.Support[i]-b.Pin)*u(0.35, 0.6)
		if row.stations == 2 {
			more := st[i]
			more.At = b.Pin + (b.Crank.Support[i]-b.Pin)*u(0.7, 0.95)
			st = append(st, more)
		}
	}
	worst := 0.0
	for _, s := range st {
		worst = math.Max(worst, 2*b.centreOf(s.Half(), s.At, b.support(0), b.support(1)).Len())
	}
	k := u(3, 15) * thou / worst
	b.twist, b.gap, b.mismatch = k*b.twist, b.gap.Scale(k), k*b.mismatch
	if row.stations == 2 && b.Mount == crank.Centres {
		for h := range b.hole {
			b.hole[h] = clock.Polar(0.02*rng.NormFloat64(), u(0, 12))
		}
	}
	b.oval = clock.Polar(row.oval*half*rng.Float64(), u(0, 12))
	b.scatter = row.scatter
	if row.scatter < 0 {
		b.scatter = rng.Float64()
	}
	return b, st
}

// stationsOf reads the dials and pools their scatter.
func (row *coverageRow) stationsOf(rng *rand.Rand, b *body, st []crank.Station) []crank.Station {
	var samples []sample
	pool := map[int][]*dial.Harmonics{}
	dialOf := func(s crank.Station) int {
		if row.shared {
			return 0
		}
		return s.Piece
	}
	for _, s := range st {
		got := row.read(rng, b, s)
		samples = append(samples, got)
		if got.fit != nil {
			pool[dialOf(s)] = append(pool[dialOf(s)], got.fit)
		}
	}
	for i, got := range samples {
		s := st[i]
		if got.fit != nil {
			got.Reading = got.fit.Reading(dial.Pool(half, pool[dialOf(s)]...))
		}
		st[i] = crank.Station{
			Piece: s.Piece, At: s.At, E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: dialOf(s),
			RunOut: got.RunOut, Sigma: got.Sigma, Unsure: got.Unsure,
		}
	}
	return st
}

// coverageRows are the ways of reading that the band of 93 to 98 % is for, and
// after them some that lie a little outside it, each for a reason.
func coverageRows() []coverageRow {
	var rows []coverageRow
	for _, n := range []int{4, 8, 12} {
		for _, oval := range []float64{0, 0.5} {
			for _, stations := range []int{1, 2} {
				for _, shared := range []bool{false, true} {
					name := fmt.Sprintf("%2d points, %s, %d a shaft, %s", n, pick(oval > 0, "oval", "round"), stations, pick(shared, "one dial", "two dials"))
					rows = append(rows, coverageRow{name: name, read: turns(n, false), oval: oval, stations: stations, shared: shared, scatter: -1})
				}
			}
		}
	}
	// One dial's single turn of four points leaves one residual, in whole divisions.
	rows[0].most, rows[4].most = 99, 99
	rows = append(rows,
		coverageRow{name: " 8 points and 12 again, oval", read: turns(8, true), oval: 0.5, stations: 1, scatter: -1},
		coverageRow{name: "half-way hours, to the hour", read: byHalfWay(1), stations: 1},
		coverageRow{name: "half-way hours, to half an hour", read: byHalfWay(0.5), stations: 1},
		coverageRow{name: "half-way hours, to a quarter hour, 2 a shaft", read: byHalfWay(0.25), stations: 2},
		// An hour far out shortens an arm but not a run-out, and a tilt is mostly that
		// of one dial: too wide. A top watched where the needle hardly moves, near a
		// centre, is a poor second station: the sectors are a little too narrow.
		coverageRow{name: "top, to the hour", read: byTop(1), stations: 1, most: 99.5},
		coverageRow{name: "top, to half an hour", read: byTop(0.5), stations: 1, most: 99.5},
		coverageRow{name: "top, to a quarter hour, 2 a shaft", read: byTop(0.25), stations: 2, least: 90, most: 99.5},
	)
	// The ends of the scatter by themselves, where the readings leave little to
	// find it from.
	for _, n := range []int{4, 8, 12} {
		for _, scatter := range []float64{0, 1} {
			rows = append(rows, coverageRow{
				name: fmt.Sprintf("%2d points, round, scatter of %g divisions", n, scatter),
				read: turns(n, false), stations: 1, shared: true, scatter: scatter, least: 91, most: 99,
			})
		}
	}
	// Not separable from scatter at four points, so taken for it.
	return append(rows, coverageRow{name: " 4 points, oval by two divisions", read: turns(4, false), oval: 2, stations: 1, shared: true, scatter: -1, most: 99.5})
}

func pick(b bool, yes, no string) string {
	if b {
		return yes
	}
	return no
}

// The stated 95 % regions hold the truth in 93 to 98 % of random set-ups:
// half-thou dial, scatter of a hand drawn for each set-up from 0 to 1
// division on top of the rounding, hours out as MODEL §6 says. What fewer
// set-ups than 10,000 scatter by is allowed for.
func TestCoverage(t *testing.T) {
	for i, row := range coverageRows() {
		line := fmt.Sprintf("%-46s", row.name)
		least, most := cmp.Or(row.least, 93), cmp.Or(row.most, 98)
		slack := 0.0
		if *setups < 10000 {
			slack = 300 * math.Sqrt(0.95*0.05/float64(*setups))
		}
		for _, h := range coverageOf(t, row, int64(100+i), *setups) {
			line += fmt.Sprintf("  %s %4.1f", h.name, h.share())
			assert.GreaterOrEqual(t, h.share(), least-slack, "%s: %s", row.name, h.name)
			assert.LessOrEqual(t, h.share(), most+slack, "%s: %s", row.name, h.name)
		}
		t.Log(line)
	}
}
