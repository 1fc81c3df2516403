package crank_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/dial"
	"pintwelve/core/tryout"
)

// Made-up cranks, a rigid body turned by whole rotations apart from the solver,
// read as a person reads them, and worked as some rule says until they read
// inside a thou. Success is judged on the truth.

const (
	allowed  = 1 * thou
	division = thou / 2
	longest  = 30 // rounds, after which a job is given up
)

// lathe is a crank on the lathe, and how its dials are read.
type lathe struct {
	set    crank.Crank
	at     [2]float64
	made   *tryout.Made
	points int // of a full turn, or 0 for run-out and half-way hours
	fits   [2][]*dial.Harmonics
}

// usualSize is a middling single, its dials rather more than half-way out from
// the supports.
func usualSize() (crank.Crank, [2]float64) {
	c := crank.Crank{Throw: 40, Rim: 80, Pin: 120, Support: [2]float64{0, 240}, Bearing: [2]float64{70, 170}}
	return c, [2]float64{75, 165}
}

// anySize is a crank of some size with a dial somewhere on each shaft.
func anySize(seed int64) (crank.Crank, [2]float64) {
	rng := rand.New(rand.NewSource(seed))
	u := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	c := crank.Crank{Throw: u(25, 55), Pin: u(90, 140)}
	c.Rim = c.Throw * u(1.7, 2.4)
	end := c.Pin + u(90, 140)
	c.Support = [2]float64{0, end}
	c.Bearing = [2]float64{0.6 * c.Pin, end - 0.6*(end-c.Pin)}
	return c, [2]float64{c.Pin * u(0.4, 0.7), end - (end-c.Pin)*u(0.4, 0.7)}
}

// mismatched is by how much the throws of one crank in ten don't match: as shows,
// all else true, by up to three thou.
func mismatched(seed int64) float64 {
	if seed%10 != 0 {
		return 0
	}
	return 3 * thou * (2*rand.New(rand.NewSource(-seed)).Float64() - 1)
}

// setUp puts a crank on the lathe whose worst run-out is even between two bounds.
func setUp(t *testing.T, r *row, seed int64, least, most float64) *lathe {
	c, at := usualSize()
	if r.anySize {
		c, at = anySize(seed)
	}
	m := tryout.Crank{Throw: c.Throw, Rim: c.Rim, Pin: c.Pin, Support: c.Support, Dial: at}
	temper := r.temper
	temper.Strike, temper.Bend = crank.UsualStrike*r.yields, crank.UsualBend*r.yields
	put := func(s tryout.Start) *tryout.Made {
		made, err := tryout.New(m, temper, uint64(seed), s)
		require.NoError(t, err)
		return made
	}
	start := m.ByChance(uint64(seed), least, most)[0]
	made := put(start)
	if runOut := mismatched(seed); runOut != 0 && least > 0 {
		start.D.T = math.Copysign(m.Mismatch(0, math.Abs(runOut)), runOut)
		made = put(asMuch(start, func(s tryout.Start) float64 { return put(s).Worst() - made.Worst() }))
	}
	return &lathe{set: c, at: at, made: made, points: r.points}
}

// asMuch takes less of twist and gap until there is no more of something.
func asMuch(s tryout.Start, more func(tryout.Start) float64) tryout.Start {
	part := func(k float64) tryout.Start {
		return tryout.Start{D: clock.Vec{T: s.D.T, N: k * s.D.N}, G: s.G.Scale(k)}
	}
	lo, hi := 0.0, 2.0
	for range 30 {
		if mid := (lo + hi) / 2; more(part(mid)) > 0 {
			hi = mid
		} else {
			lo = mid
		}
	}
	return part(lo)
}

// reads takes a round of readings.
func (b *lathe) reads(t *testing.T) crank.Pass {
	var p crank.Pass
	for h := clock.Left; h <= clock.Right; h++ {
		got, err := b.reading(h)
		require.NoError(t, err)
		p.Stations = append(p.Stations, crank.Station{
			Piece: int(h), At: b.at[h], E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: int(h),
			RunOut: got.RunOut, Sigma: got.Sigma, Unsure: got.Unsure,
		})
	}
	var err error
	p.Pose, err = b.set.Solve(p.Stations)
	require.NoError(t, err)
	return p
}

func (b *lathe) reading(h clock.End) (dial.Reading, error) { return b.readingAt(h, b.at[h]) }

func (b *lathe) readingAt(h clock.End, x float64) (dial.Reading, error) {
	d := tryout.HalfThou
	if b.points < 2 {
		scale := dial.Scale{Division: d.Division, HourStep: d.Mark}
		runOut, rising, falling := b.made.WatchAt(x, d)
		if b.points == 1 {
			top := math.Round(clock.Midway(rising, falling)/d.Mark) * d.Mark
			return dial.HighSpot(clock.Left, runOut, top, scale)
		}
		if runOut < division/2 {
			return dial.HighSpot(clock.Left, runOut, 0, scale)
		}
		return dial.HalfWay(clock.Left, runOut, rising, falling, scale)
	}
	hours := dial.Even(b.points, false)
	turn := dial.Turn{From: clock.Left, Hours: hours, Values: b.made.TurnAt(x, d, hours...), Division: d.Division}
	f, err := turn.Fit()
	if err != nil {
		return dial.Reading{}, err
	}
	b.fits[h] = append(b.fits[h], &f)
	return f.Reading(dial.Pool(d.Division, b.fits[h]...)), nil
}

// ending is how a job ended.
type ending uint8

const (
	left       ending = iota // it read inside
	unmendable               // told that no bumping trues it
	unclear                  // told that the dials can't tell, or to look for a cause
	givenUp                  // after the most rounds, or wrecked
)

// job is how a crank's truing went. The passes to true are the rounds of readings
// after which something was done, until both true run-outs are inside a thou; the
// round that then shows it is one more, and counts among the rounds. One that
// never got there has no passes.
type job struct {
	passes, rounds, moves int
	ended                 ending
	reached, inside       bool // truly inside at some round; at the end
	worse                 bool // by more than a division than it began
	floored               bool // no bumping could true it, from the start
	passesLog             []crank.Pass
}

// work trues a crank by a rule.
func (b *lathe) work(t *testing.T, r rule) job {
	j := job{floored: b.made.Floor() > allowed}
	began := b.made.Worst()
	for more := true; more; {
		if j.rounds++; !j.reached && b.made.Worst() <= allowed {
			j.reached, j.passes = true, j.rounds-1
		}
		j.passesLog = append(j.passesLog, b.reads(t))
		do, ended, again := r(b, j.passesLog)
		j.ended = ended
		if more = (again || len(do) > 0) && j.rounds < longest; !more && ended != left && (again || len(do) > 0) {
			j.ended = givenUp
		}
		if more && !b.does(&j, do) {
			j.ended, more = givenUp, false
		}
	}
	j.inside = b.made.Worst() <= allowed
	j.worse = b.made.Worst() > began+division || j.ended == givenUp && j.rounds < longest
	return j
}

// does makes the moves; false where the crank would come apart.
func (b *lathe) does(j *job, do []crank.Done) bool {
	j.passesLog[len(j.passesLog)-1].Done = do
	for _, d := range do {
		j.moves++
		if b.made.Do(tryout.Blow{Kind: tryout.Kind(d.Kind), Wheel: d.Wheel, Hour: d.Hour, Dose: d.Dose}) != nil {
			return false
		}
	}
	return true
}
