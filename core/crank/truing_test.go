package crank_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/dial"
	"pintwelve/testdata/cases"
)

// truingCase is one exact crank of one throw, and the truth beside it.
type truingCase struct{ cases.Crank }

func end(t testing.TB, name string) clock.End {
	t.Helper()
	require.Contains(t, []string{"left", "right"}, name)
	if name == "right" {
		return clock.Right
	}
	return clock.Left
}

func truingCases(t testing.TB) (all []truingCase) {
	t.Helper()
	for _, c := range cases.OfOne(t) {
		all = append(all, truingCase{c})
	}
	return all
}

func (c *truingCase) crank(t testing.TB) crank.Crank {
	out := crank.Crank{Throw: c.Throw, Rim: c.Rim, Pin: c.Pin}
	for i := range c.Supports {
		out.Support[end(t, c.Supports[i].Half)] = c.Supports[i].At
		out.Bearing[end(t, c.Bearings[i].Half)] = c.Bearings[i].At
	}
	switch c.Mount {
	case "centres":
		out.Mount = crank.Centres
	case "journals":
		out.Mount = crank.VBlocks
	default:
		require.Fail(t, "unknown mount", c.Mount)
	}
	return out
}

// trueStations are the dials' true run-outs and high spots.
func (c *truingCase) trueStations(t testing.TB) []crank.Station {
	var out []crank.Station
	from := end(t, c.SeenFrom)
	for _, d := range c.Dials {
		e := clock.Polar(d.TIR/2, clock.SeenFrom(from, d.HighSpot))
		out = append(out, crank.Station{Piece: int(end(t, d.Half)), At: d.At, E: e})
	}
	return out
}

// readStations are the dials as read, with how sure that is.
func (c *truingCase) readStations(t testing.TB) []crank.Station {
	var out []crank.Station
	for i, d := range c.Dials {
		turn := dial.Turn{From: end(t, c.SeenFrom), Division: c.Division}
		for _, r := range d.Readings {
			turn.Hours = append(turn.Hours, r.Clock)
			turn.Values = append(turn.Values, r.MM)
		}
		f, err := turn.Fit()
		require.NoError(t, err)
		r := f.Reading(dial.Pool(c.Division, &f))
		out = append(out, crank.Station{
			Piece: int(end(t, d.Half)), At: d.At, E: r.E, Cov: r.Cov, Nu: r.Nu, Dial: i, RunOut: r.RunOut, Sigma: r.Sigma, Unsure: r.Unsure,
		})
	}
	return out
}

// half a micron, the accuracy asked of every length.
const micron = 1e-3

func (c *truingCase) check(t *testing.T, pose *crank.Pose) {
	from := end(t, c.SeenFrom)
	d := pose.D.From(from)
	assert.InDelta(t, c.Truth.Offset.T, d.T, 0.5*micron, "offset towards 12")
	assert.InDelta(t, c.Truth.Offset.N, d.N, 0.5*micron, "offset towards 3")

	across, widest := pose.Gap()
	assert.InDelta(t, c.Truth.Gap.Across, across, 0.5*micron, "gap across the rim")
	if c.Truth.Gap.Across > 5*micron {
		require.NotNil(t, c.Truth.Gap.Widest)
		assert.Less(t, clock.Apart(*c.Truth.Gap.Widest, clock.SeenFrom(from, widest)), 0.05, "hour where the gap is widest")
	}
	run := pose.Running(pose.D, pose.G)
	for i, p := range c.Dials {
		h := end(t, p.Half)
		f := pose.Forecast(h, p.At)
		assert.InDelta(t, c.Truth.Untwist[i], 2*f.Strike.Len(), 0.5*micron, "dial %d after the strike", i)
		assert.InDelta(t, c.Truth.Closed[i], 2*f.Gap.Len(), 0.5*micron, "dial %d after closing the gap", i)
		assert.InDelta(t, c.Truth.Both[i], 2*f.Both.Len(), 0.5*micron, "dial %d after both", i)
		at := c.Truth.At[i]
		assert.InDelta(t, c.Truth.Bearings[i], run.RunOut(clock.End(i), at), 0.5*micron, "in its own bearings at %g", at)
	}
}

func TestTrueReadingsGiveTheTruth(t *testing.T) {
	hours := 0
	for _, c := range truingCases(t) {
		t.Run(c.Name, func(t *testing.T) {
			k := c.crank(t)
			pose, err := k.Solve(c.trueStations(t))
			require.NoError(t, err)
			c.check(t, &pose)
		})
		if c.Truth.Gap.Across > 5*micron {
			hours++
		}
	}
	assert.GreaterOrEqual(t, hours, 8, "cases whose hour was checked")
}

// All the cases from their full readings. Where these were rounded, each turn's e
// is out by no more than 0.71, 0.65 or 0.64 of a division at 4, 8 or 12 points;
// that is carried through the solve by absolute values, and no direction is
// tested where it reaches the vector.
func TestFullReadingsGiveTheTruth(t *testing.T) {
	exact, hours := 0, 0
	for _, c := range truingCases(t) {
		t.Run(c.Name, func(t *testing.T) {
			k := c.crank(t)
			st := c.readStations(t)
			pose, err := k.Solve(st)
			require.NoError(t, err)
			if c.Division == 0 {
				c.check(t, &pose)
				exact++
				return
			}
			hours += c.checkRounded(t, &pose, st)
		})
	}
	assert.Equal(t, 8, exact)
	assert.GreaterOrEqual(t, hours, 3, "rounded cases whose hour was checked")
}

// worstOf is the most that rounding can put into a dial's e, mm.
func (c *truingCase) worstOf(t testing.TB) (e [2]float64) {
	bound := map[int]float64{4: 0.71, 8: 0.65, 12: 0.64}
	for _, d := range c.Dials {
		require.Contains(t, bound, len(d.Readings))
		e[end(t, d.Half)] = bound[len(d.Readings)] * c.Division
	}
	return e
}

// carried is how far a vector that answer works out of the dials may be out:
// every answer here is linear in each dial's e, so what one micron on one dial
// does, times that dial's bound, summed over the dials.
func (c *truingCase) carried(t testing.TB, st []crank.Station, answer func(*crank.Pose) clock.Vec) float64 {
	k := c.crank(t)
	at := func(st []crank.Station) clock.Vec {
		pose, err := k.Solve(st)
		require.NoError(t, err)
		return answer(&pose)
	}
	worst, sum := c.worstOf(t), 0.0
	for i := range st {
		moved := append([]crank.Station{}, st...)
		moved[i].E = moved[i].E.Add(clock.Vec{T: micron, N: micron})
		by := at(moved).Sub(at(st))
		// T and N don't mix, so that the larger of the two is the gain; what a move
		// takes out may stop one of them.
		sum += math.Max(math.Abs(by.T), math.Abs(by.N)) / micron * worst[st[i].Piece]
	}
	return sum
}

// checkRounded returns 1 where it checked the hour too.
func (c *truingCase) checkRounded(t *testing.T, pose *crank.Pose, st []crank.Station) (hours int) {
	from := end(t, c.SeenFrom)
	d := clock.Vec{T: c.Truth.Offset.T, N: c.Truth.Offset.N}.From(from)
	const own = 0.5 * micron // of the model's small angles
	limit := c.carried(t, st, func(s *crank.Pose) clock.Vec { return s.D }) + own
	assert.LessOrEqual(t, pose.D.Sub(d).Len(), limit, "offset")

	limit = 2 * c.Rim * c.carried(t, st, func(s *crank.Pose) clock.Vec { return s.G })
	across, widest := pose.Gap()
	assert.InDelta(t, c.Truth.Gap.Across, across, limit+own, "gap across the rim")
	if limit < c.Truth.Gap.Across && c.Truth.Gap.Across > 5*micron {
		truth := clock.SeenFrom(from, *c.Truth.Gap.Widest)
		assert.LessOrEqual(t, clock.Radians(clock.Apart(truth, widest)), math.Asin(limit/c.Truth.Gap.Across)+clock.Radians(0.05))
		hours = 1
	}
	for i, p := range c.Dials {
		h, at := end(t, p.Half), c.Truth.At[i]
		for _, row := range []struct {
			name  string
			truth float64
			of    func(*crank.Pose) clock.Vec
		}{
			{"after the strike", c.Truth.Untwist[i], func(s *crank.Pose) clock.Vec { return s.Forecast(h, p.At).Strike }},
			{"after closing the gap", c.Truth.Closed[i], func(s *crank.Pose) clock.Vec { return s.Forecast(h, p.At).Gap }},
			{"after both", c.Truth.Both[i], func(s *crank.Pose) clock.Vec { return s.Forecast(h, p.At).Both }},
			{"in its own bearings", c.Truth.Bearings[i], func(s *crank.Pose) clock.Vec {
				run := s.Running(s.D, s.G)
				return run.At(clock.End(i), at)
			}},
		} {
			assert.InDelta(t, row.truth, 2*row.of(pose).Len(), 2*c.carried(t, st, row.of)+own, row.name)
		}
	}
	return hours
}
