package truing

import (
	"math"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// HourAt returns the text of the hour at a point of the clock face, its x and y
// in the picture's own units; "" for no point, or one too near the centre to
// point anywhere.
func HourAt(x, y string) string {
	px, err := unit.Parse(x, unit.Plain)
	py, err2 := unit.Parse(y, unit.Plain)
	dx, dy := px-draw.FaceCentreX, draw.FaceCentreY-py
	if err != nil || err2 != nil || !(math.Hypot(dx, dy) > draw.FaceRim/8) {
		return ""
	}
	return form.HourText(math.Atan2(dx, dy) * 6 / math.Pi)
}

// face draws the clock face.
func (a answers) face(p *pass) {
	v := p.highSpots("face")
	v.Bare = true // the title block says from where it is seen
	if p.wants >= 0 && p.bench > 0 {
		v.Before = p.spots(p.rounds[p.bench-1].reading)
	}
	for _, m := range p.moves {
		v.Moves = append(v.Moves, p.mark(m))
	}
	a.Text("picture.face", draw.Face(v))
}

// highSpots is the clock face with where each needle stands highest.
func (p *pass) highSpots(prefix string) draw.FaceView {
	return draw.FaceView{Prefix: prefix, SeenFrom: bench.Drawn(p.SeenFrom()), High: p.spots(p.reading)}
}

// spots are where the needles of a round stand highest.
func (s *setUp) spots(readings []reading) (spots []draw.HighSpot) {
	for i := range readings {
		got := &readings[i]
		if got.lack != nothing || got.E == (clock.Vec{}) {
			continue
		}
		sector := 6.0
		if sure := got.Uncertainty(); sure.Significant(got.E) {
			sector = sure.Sector(got.E)
		}
		spots = append(spots, draw.HighSpot{
			Letter: s.stations[i].letter, Hour: s.Hour(got.E.Hour()), RunOut: s.Bare(got.RunOut), HalfSector: sector,
		})
	}
	return spots
}

func (p *pass) mark(m move) draw.Mark {
	mark := draw.Mark{Kind: draw.MarkKind(m.Kind), Wheel: bench.Drawn(p.SideOf[m.Wheel]), Hour: p.Hour(m.Hour)}
	if m.Kind != crank.Strike && !p.leverAssumed {
		mark.Amount = p.Amount(m.Aim)
	}
	return mark
}

// bend draws the crank from the side and from above, its bend exaggerated.
func (a answers) bend(p *pass) {
	a.Text("picture.bend", draw.Bend(p.bendView("bend", &p.pose, p.counted)))
}

// bendView is the crank as it sits by a round of readings.
func (s *setUp) bendView(prefix string, pose *crank.Pose, counted []crank.Station) draw.BendView {
	axes := pose.After(pose.D, pose.G)
	v := draw.BendView{
		Prefix: prefix, LeftEnd: bench.Drawn(s.SideOf[clock.Left]),
		Length: s.length(), PinMiddle: s.crank.Pin, Rim: s.crank.Rim, Throw: s.crank.Throw,
		Left: lie(&axes, clock.Left), Right: lie(&axes, clock.Right),
		Stations: s.supports(),
	}
	for _, st := range counted {
		v.Stations = append(v.Stations, draw.Fixture{Kind: draw.DialAt, At: st.At})
	}
	return v
}

// supports are where the crank is held.
func (s *setUp) supports() []draw.Fixture {
	kind := [...]draw.FixtureKind{crank.Centres: draw.CentreAt, crank.VBlocks: draw.VBlockAt, crank.OwnBearings: draw.BearingAt}[s.crank.Mount]
	return []draw.Fixture{{Kind: kind, At: s.crank.Support[0]}, {Kind: kind, At: s.crank.Support[1]}}
}

func lie(axes *crank.Axes, half clock.End) draw.Lie {
	a, b := axes.A[half], axes.B[half]
	return draw.Lie{OffsetT: a.T, OffsetN: a.N, SlopeT: b.T, SlopeN: b.N}
}

// measure draws what to measure, to the figures.
func (a answers) measure(s *setUp, r *form.Reader) {
	v := draw.MeasureView{Prefix: "measure", LeftEnd: bench.Drawn(s.SideOf[clock.Left]), Throw: dim(r, s.crank.Throw, form.Throw), Rim: dim(r, 2*s.crank.Rim, form.Rim)}
	for half, dims := range [...]*draw.HalfDims{&v.Left, &v.Right} {
		side := s.SideOf[half]
		own := func(x float64) float64 { return abs(x - float64(half)*s.length()) }
		dims.Dial = dim(r, own(s.dialOf(clock.End(half))), form.ShaftAt, side)
		dims.Bearing = dim(r, own(s.crank.Bearing[half]), form.ShaftBearing, side)
		dims.Pin = dim(r, s.ownPin[half], form.ShaftPin, side)
	}
	a.Text("picture.measure", draw.Measure(v))
}

// dialOf is where a half's own dial stands, mm from the left end.
func (s *setUp) dialOf(half clock.End) float64 {
	for i := range sideNames {
		if s.stations[i].half == half {
			return s.stations[i].at
		}
	}
	return 0
}

func dim(r *form.Reader, mm float64, id form.ID, keys ...string) draw.Dim {
	return draw.Dim{MM: mm, Words: unit.Format(mm, unit.MM, 0.1), Assumed: r.Blank(id, keys...)}
}
