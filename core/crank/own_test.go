package crank_test

import (
	"encoding/json"
	"flag"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/dial"
)

// update writes testdata/cases/own.json anew from the generator.
var update = flag.Bool("update", false, "write testdata/cases/own.json anew")

const (
	ownFile  = "../../testdata/cases/own.json"
	ownAbout = "Readings of an exact rigid-body crank (core/crank/body_test.go: full rotations, the dial's ray met with the journal's " +
		"cylinder), written by go test ./core/crank -run Own -update. Lengths mm; clock hours seen from the left, 12 = crankpin; " +
		"readings in the order taken, a last hour of 12 being the first point read again."
)

// ownCase is one case of testdata/cases/own.json.
type ownCase struct {
	Name     string     `json:"name"`
	Throw    float64    `json:"throw_mm"`
	Pin      float64    `json:"pin_middle_mm"`
	Rim      float64    `json:"rim_radius_mm"`
	Mount    string     `json:"mount"`
	Supports [2]float64 `json:"supports_at_mm"`
	Bearings [2]float64 `json:"bearings_at_mm"`
	Dials    []ownDial  `json:"dials"`
	Truth    ownTruth   `json:"truth"`
}

// ownDial is a dial: a turn, or run-out with the high spot's hour, or with the
// half-way hours.
type ownDial struct {
	Half     string    `json:"half"`
	At       float64   `json:"at_mm"`
	Division float64   `json:"division_mm"`
	Hours    []float64 `json:"hours,omitempty"`
	Readings []float64 `json:"readings_mm,omitempty"`
	RunOut   *float64  `json:"tir_mm,omitempty"`
	High     *float64  `json:"high_spot_clock,omitempty"`
	Rising   *float64  `json:"rising_clock,omitempty"`
	Falling  *float64  `json:"falling_clock,omitempty"`
	TrueTIR  float64   `json:"true_tir_mm"` // of the round shaft
	TrueHigh float64   `json:"true_high_spot_clock"`
	OvalP    float64   `json:"oval_p_mm"`
	OvalQ    float64   `json:"oval_q_mm"`
	Drift    float64   `json:"drift_mm"`
}

type ownTruth struct {
	Towards12 float64    `json:"offset_towards_12_mm"`
	Towards3  float64    `json:"offset_towards_3_mm"`
	Widest    float64    `json:"gap_widest_clock"`
	Across    float64    `json:"gap_across_rim_mm"`
	Tilt      [2]float64 `json:"tilt_arcmin"`
	Shaft     [2]string  `json:"shaft"` // what the dials can tell of each
	Hole12    [2]float64 `json:"centre_hole_towards_12_mm"`
	Hole3     [2]float64 `json:"centre_hole_towards_3_mm"`
	// Rigid is false where the shafts are not: the offset and gap are then those
	// of the wheels and the dials don't find them.
	Rigid bool `json:"rigid"`
}

var shaftNames = [...]string{
	crank.Unseen: "unseen", crank.Sound: "sound", crank.SupportOrBent: "bad support or bent",
	crank.BadSupport: "bad support", crank.Bent: "bent",
}

// ownBody is the crank of the cases, between centres.
func ownBody() body {
	return body{
		Crank: crank.Crank{
			Throw: 41.5, Rim: 88, Pin: 112, Support: [2]float64{0, 231}, Bearing: [2]float64{62, 170},
		},
		round: 12.5, twist: 0.0011, gap: clock.Polar(0.0005, 4.5), mismatch: 0.006,
	}
}

// ownMake is how a case is made.
type ownMake struct {
	name   string
	spoil  func(*body)
	places [2][]float64
	take   func(*body, clock.End, float64) ownDial
	shaft  [2]crank.ShaftState
}

func ownMakes() []ownMake {
	one, two := [2][]float64{{55}, {180}}, [2][]float64{{25, 80}, {146, 205}}
	three := [2][]float64{{15, 50, 85}, {146, 175, 210}}
	unseen := [2]crank.ShaftState{}
	sound := [2]crank.ShaftState{crank.Sound, crank.Sound}
	none := func(*body) {}
	hole := func(b *body) { b.hole = [2]clock.Vec{clock.Polar(0.03, 2), clock.Polar(0.018, 8)} }
	bent := func(b *body) { b.bendAt, b.bend = 60, clock.Polar(0.0012, 10) }
	bad := crank.BadSupport
	return []ownMake{
		{"oval journals, eight points", func(b *body) { b.oval = clock.Vec{T: 0.004, N: -0.003} }, one, turnOf(8, 0), unseen},
		{"oval journals, four points", func(b *body) { b.oval = clock.Vec{T: 0.004} }, one, turnOf(4, 0), unseen},
		{"drift, eight points and 12 again", none, one, turnOf(8, 0.009), unseen},
		{"drift, four points and 12 again", none, one, turnOf(4, -0.005), unseen},
		{"two stations, true centres", none, two, turnOf(8, 0), sound},
		{"two stations, bad centres", hole, two, turnOf(8, 0), [2]crank.ShaftState{crank.SupportOrBent, crank.SupportOrBent}},
		{"three stations, bad centres", hole, three, turnOf(8, 0), [2]crank.ShaftState{bad, bad}},
		{"two stations, bent left shaft", bent, two, turnOf(8, 0), [2]crank.ShaftState{crank.SupportOrBent, crank.Sound}},
		{"three stations, bent left shaft", bent, three, turnOf(12, 0), [2]crank.ShaftState{crank.Bent, crank.Sound}},
		{"run-out and high spot", none, one, highSpotOf, unseen},
		{"run-out and half-way hours", none, one, halfWayOf, unseen},
	}
}

func micrometres(x float64) float64 { return math.Round(x*1e6) / 1e6 }

// turnOf reads n points, the dial creeping evenly by drift [mm] until the first is read again.
func turnOf(n int, drift float64) func(*body, clock.End, float64) ownDial {
	return func(b *body, h clock.End, x float64) ownDial {
		d := ownDial{Hours: dial.Even(n, drift != 0), Drift: drift, OvalP: b.oval.T, OvalQ: b.oval.N}
		for k, hour := range d.Hours {
			d.Readings = append(d.Readings, micrometres(b.shows(h, x, hour)-b.round+0.1+drift*float64(k)/float64(n)))
		}
		return d
	}
}

func highSpotOf(b *body, h clock.End, x float64) ownDial {
	e := b.centreOf(h, x, b.support(0), b.support(1))
	runOut, hour := micrometres(2*e.Len()), math.Round(e.Hour()*1e4)/1e4
	return ownDial{RunOut: &runOut, High: &hour}
}

func halfWayOf(b *body, h clock.End, x float64) ownDial {
	d := highSpotOf(b, h, x)
	rising, falling := clock.Wrap(*d.High-3), clock.Wrap(*d.High+3)
	d.High, d.Rising, d.Falling = nil, &rising, &falling
	return d
}

func (m *ownMake) make() ownCase {
	b := ownBody()
	m.spoil(&b)
	out := ownCase{
		Name: m.name, Throw: b.Throw, Pin: b.Pin, Rim: b.Rim, Mount: "centres", Supports: b.Support, Bearings: b.Bearing,
	}
	for h, places := range m.places {
		for _, x := range places {
			d := m.take(&b, clock.End(h), x)
			e := b.centreOf(clock.End(h), x, b.support(0), b.support(1))
			d.Half, d.At = [2]string{"left", "right"}[h], x
			d.TrueTIR, d.TrueHigh = micrometres(2*e.Len()), micrometres(e.Hour())
			out.Dials = append(out.Dials, d)
		}
		out.Truth.Shaft[h] = shaftNames[m.shaft[h]]
		out.Truth.Tilt[h] = micrometres(b.tilt(clock.End(h)))
		out.Truth.Hole12[h], out.Truth.Hole3[h] = b.hole[h].T, b.hole[h].N
	}
	d, g := b.truth()
	out.Truth.Towards12, out.Truth.Towards3 = micrometres(d.T), micrometres(d.N)
	out.Truth.Widest, out.Truth.Across = micrometres(g.Hour()), micrometres(2*b.Rim*g.Len())
	out.Truth.Rigid = b.bend == clock.Vec{}
	return out
}

func TestOwnCases(t *testing.T) {
	if *update {
		writeOwn(t)
	}
	raw, err := os.ReadFile(ownFile)
	require.NoError(t, err)
	var file struct {
		About string
		Cases []ownCase
	}
	require.NoError(t, json.Unmarshal(raw, &file))
	require.Len(t, file.Cases, len(ownMakes()))
	for i, c := range file.Cases {
		t.Run(c.Name, func(t *testing.T) {
			assert.Equal(t, ownMakes()[i].make(), c, "the file is the generator's")
			c.check(t)
		})
	}
}

func writeOwn(t *testing.T) {
	file := struct {
		About string    `json:"about"`
		Cases []ownCase `json:"cases"`
	}{About: ownAbout}
	for _, m := range ownMakes() {
		file.Cases = append(file.Cases, m.make())
	}
	raw, err := json.MarshalIndent(file, "", " ")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(ownFile, append(raw, '\n'), 0o644))
}

// read turns a dial of a case into a station.
func (d *ownDial) read(t *testing.T) crank.Station {
	s := crank.Station{Piece: int(end(t, d.Half)), At: d.At}
	var r dial.Reading
	var err error
	switch {
	case d.High != nil:
		r, err = dial.HighSpot(clock.Left, *d.RunOut, *d.High, dial.Scale{})
	case d.Rising != nil:
		r, err = dial.HalfWay(clock.Left, *d.RunOut, *d.Rising, *d.Falling, dial.Scale{})
	default:
		turn := dial.Turn{Hours: d.Hours, Values: d.Readings, Division: d.Division}
		var f dial.Harmonics
		f, err = turn.Fit()
		assert.InDelta(t, d.Drift, f.Drift, 1e-5)
		if f.Oval.State == dial.OvalFitted {
			assert.InDelta(t, d.OvalP, f.Oval.P, 2e-4) // a leaning cylinder is a little oval too
			assert.InDelta(t, d.OvalQ, f.Oval.Q, 2e-4)
		}
		r = dial.Reading{E: f.E, RunOut: f.RunOut}
	}
	require.NoError(t, err)
	s.E = r.E
	assert.InDelta(t, d.TrueTIR, r.RunOut, 0.5*micron)
	assert.Less(t, clock.Apart(d.TrueHigh, r.E.Hour()), 0.05)
	return s
}

func (c *ownCase) check(t *testing.T) {
	k := crank.Crank{Throw: c.Throw, Rim: c.Rim, Pin: c.Pin, Support: c.Supports, Bearing: c.Bearings}
	var st []crank.Station
	for _, d := range c.Dials {
		st = append(st, d.read(t))
	}
	pose := solved(t, k, st)
	for h := clock.Left; h <= clock.Right; h++ {
		shaft := pose.Shaft(st, h)
		assert.Equal(t, c.Truth.Shaft[h], shaftNames[shaft.State])
		if shaft.State != crank.Unseen && c.Truth.Rigid {
			assert.InDelta(t, c.Truth.Hole12[h], shaft.Hole.T, 0.5*micron)
			assert.InDelta(t, c.Truth.Hole3[h], shaft.Hole.N, 0.5*micron)
		}
	}
	if !c.Truth.Rigid {
		return
	}
	assert.InDelta(t, c.Truth.Towards12, pose.D.T, 0.5*micron)
	assert.InDelta(t, c.Truth.Towards3, pose.D.N, 0.5*micron)
	across, widest := pose.Gap()
	assert.InDelta(t, c.Truth.Across, across, 0.5*micron)
	assert.Less(t, clock.Apart(c.Truth.Widest, widest), 0.05)
	run := pose.Running(pose.D, pose.G)
	for h, tilt := range c.Truth.Tilt {
		assert.InDelta(t, tilt, run.Tilt(clock.End(h)), 0.02)
	}
}
