package sheet

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// setUp is the crank at the lathe: its geometry, and where the dials stand.
type setUp struct {
	ends
	crank crank.Crank
	dial  [2]float64 // where each half's dial stands, mm from the left end
	tip   [2]float64 // where each half's sprocket, pinion or rotor sits, likewise
	fine  unit.Unit  // what is read off a dial is shown in this
	step  float64    // mm, the coarser dial's division: figures are shown no finer
}

// places are the lengths of one half, mm from its own shaft's end.
type places struct{ pin, dial, bearing, tip, held float64 }

func readSetUp(r *form.Reader) setUp {
	s := setUp{ends: readEnds(r), fine: unit.Thou}
	if r.Word("units") == "metric" {
		s.fine = unit.MM
	}
	left, right := s.sideOf[clock.Left], s.sideOf[clock.Right]
	half := [2]places{readPlaces(r, left, right), readPlaces(r, right, left)}
	length := half[clock.Left].pin + half[clock.Right].pin
	s.crank = crank.Crank{
		Throw: r.Default("throw"), Rim: r.Default("rim") / 2, Pin: half[clock.Left].pin,
		Support: [2]float64{half[clock.Left].held, length - half[clock.Right].held},
		Bearing: [2]float64{half[clock.Left].bearing, length - half[clock.Right].bearing},
		Mount:   mounts[r.Word("mount")],
	}
	s.dial = [2]float64{half[clock.Left].dial, length - half[clock.Right].dial}
	s.tip = [2]float64{half[clock.Left].tip, length - half[clock.Right].tip}
	s.step = math.Max(r.Division("drive"), r.Division("timing"))
	return s
}

// readPlaces reads one half's lengths. What isn't given is taken to be as on
// the other half, or else in the proportion of the table's defaults.
func readPlaces(r *form.Reader, side, mate string) places {
	p := places{pin: math.Inf(1)}
	or := func(length string, standIn float64) float64 {
		if v, ok := r.Number(mate + length); ok && v < p.pin {
			standIn = v
		}
		return r.Or(side+length, standIn)
	}
	p.pin = or(".pin", math.NaN())
	p.dial = or(".at", p.pin*75/120)
	p.bearing = or(".bearing", p.pin*70/120)
	p.tip = or(".tip", p.pin*10/120)
	switch r.Word("mount") {
	case "vblocks":
		p.held = or(".held", p.pin*60/120)
	case "bearings":
		p.held = p.bearing
	}
	return p
}

var mounts = map[string]crank.Mount{"centres": crank.Centres, "vblocks": crank.VBlocks, "bearings": crank.OwnBearings}

// complain puts what the crank room says of a length beside the field that the
// length stands in.
func (s *setUp) complain(r *form.Reader, err error) {
	l, ok := err.(*crank.LengthError)
	if !ok {
		return
	}
	name := s.sideOf[l.Half]
	switch l.Length {
	case crank.Throw, crank.Rim:
		if name = "rim"; r.Blank(name) {
			name = "throw"
		}
	case crank.Bearing:
		name += ".bearing"
	case crank.Support:
		name += map[crank.Mount]string{crank.Centres: ".pin", crank.VBlocks: ".held", crank.OwnBearings: ".bearing"}[s.crank.Mount]
	case crank.DialAt:
		name += ".at"
	default:
		name += ".pin"
	}
	r.Complain(name, s.lengthWords(l))
}

// lengthWords says what would do in the place of an impossible length.
func (s *setUp) lengthWords(l *crank.LengthError) string {
	mm := func(v float64) string { return unit.Format(v, unit.MM, 0.1) }
	if l.Length == crank.Throw || l.Length == crank.Rim {
		return fill("a throw of % in a wheel of % puts the crankpin outside the wheel: the throw must be less than half the wheel",
			mm(s.crank.Throw), mm(2*s.crank.Rim))
	}
	given, pin := l.Given, s.crank.Pin
	if l.Half == clock.Right {
		given, pin = s.crank.Support[clock.Right]-given, s.crank.Support[clock.Right]-pin
	}
	return fill("% from the shaft’s end is not short of the crankpin’s middle, which stands at %: "+
		"measure from this shaft’s own end, or give the distance to the crankpin", mm(given), mm(pin))
}
