package truing

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// setUp is the crank at the lathe: its geometry, and where the dials stand.
type setUp struct {
	bench.Ends
	bench.Gauge // what is read off a dial is shown by the coarser dial's division
	crank       crank.Crank
	stations    []station
	tip         [2]float64 // where each half's sprocket, pinion or rotor sits, mm from the left end
	oneDial     bool       // carried across, the left shaft being read first

	heldAt       form.ID    // the length that says where a shaft is held; meaningless between centres
	leverAssumed bool       // what the dials show is blown up by a guess: no amounts
	closing      bool       // clamps and wedges are worked by how far they close or open the gap, not by turns
	ownPin       [2]float64 // mm, from each shaft's own end to the middle of its pin
	throws       throws
}

func (s *setUp) length() float64 {
	return s.ownPin[clock.Left] + s.throws.span() + s.ownPin[clock.Right]
}

// station is a place where a dial stands: "drive" and "timing" always, and as
// many more on either shaft as the job has rows of "dial".
type station struct {
	name     string // as names carry it: "drive", "dial.k3y"
	letter   string // "D", "T", "D2"
	half     clock.End
	at       float64 // mm from the left end
	dial     int     // which dial gauge: stations read with one share its scatter
	division float64 // mm
	sweep    float64 // mm, one turn of the needle

	sweepAssumed bool
}

// places are the lengths of one half, mm from its own shaft's end.
type places struct{ pin, dial, bearing, tip, held float64 }

// setUpWrong tells of a figure of the set-up, just read, that is wrong: what stands in for it was
// not meant. The wheels' own are mended where they are asked for.
func setUpWrong(r *form.Reader) error {
	for _, each := range r.Problems {
		if !strings.HasPrefix(each.Name, "wheel.") {
			return errors.New(each.Text)
		}
	}
	return nil
}

func readSetUp(r *form.Reader) setUp {
	s := setUp{Ends: bench.ReadEnds(r), Gauge: bench.Gauge{Unit: bench.FineUnit(r)}}
	left, right := s.SideOf[clock.Left], s.SideOf[clock.Right]
	half := [2]places{readPlaces(r, left, right), readPlaces(r, right, left)}
	s.ownPin = [2]float64{half[clock.Left].pin, half[clock.Right].pin}
	s.readPins(r, half[clock.Left].pin)
	length := s.length()
	s.crank = crank.Crank{
		Throw: r.Default(form.Throw), Rim: r.Or(bench.WheelMM(r), form.Rim) / 2, Pin: half[clock.Left].pin,
		Support: [2]float64{half[clock.Left].held, length - half[clock.Right].held},
		Bearing: [2]float64{half[clock.Left].bearing, length - half[clock.Right].bearing},
		Mount:   mountNamed(r.Word(form.Mount)),
	}
	if s.several() {
		s.readMains(r)
	}
	s.crank.CentresKnown = r.Word(form.Centres) == "good"
	for _, key := range r.Rows("pass") {
		s.crank.Steady = s.crank.Steady || r.Word(form.PassTailstock, key) != ""
	}
	s.tip = [2]float64{half[clock.Left].tip, length - half[clock.Right].tip}
	s.StepMM = math.Max(r.Division("drive"), r.Division("timing"))
	s.oneDial = r.Word(form.Dials) == "one"
	s.leverAssumed = leverAssumed(r)
	s.heldAt, _ = heldBy(r)
	s.closing = r.Word(form.Clamp) == "closing"
	s.addStation(r, "drive", "drive", half[s.End("drive")].dial)
	s.addStation(r, "timing", "timing", half[s.End("timing")].dial)
	for n, key := range r.Rows("dial") {
		side := r.Word(form.DialHalf, key)
		s.addStation(r, "dial."+key, side, r.Or(s.usualPlace(n, side, half[s.End(side)].dial), form.DialAt, key))
	}
	return s
}

// usualPlace is where the nth further dial stands until that is measured, mm from a shaft's
// own end: half-way to the shaft's first dial, and of several throws two on each inner
// journal from the left, a third of the way from pin to pin and two.
func (s *setUp) usualPlace(nth int, side string, firstMM float64) float64 {
	pins, before := s.throws.Joints, nth/2
	if before+1 >= len(pins) {
		return firstMM / 2
	}
	third := (pins[before+1].At - pins[before].At) / 3
	at := math.Round(pins[before].At + third*float64(1+nth%2))
	if s.End(side) == clock.Right {
		at = s.length() - at
	}
	return at
}

// addStation adds a station so far from its own shaft's end.
func (s *setUp) addStation(r *form.Reader, name, side string, own float64) {
	st := station{name: name, letter: bench.Drawn(side).Letter(), half: s.End(side), at: own, division: r.Division(side)}
	if st.half == clock.Right {
		st.at = s.length() - own
	}
	if side == "timing" && !s.oneDial {
		st.dial = 1
	}
	st.sweep = r.Or(100*st.division, form.ShaftSweep, side)
	st.sweepAssumed = r.Blank(form.ShaftSweep, side)
	nth := 1
	for _, other := range s.stations {
		if other.half == st.half {
			nth++
		}
	}
	if nth > 1 {
		st.letter += strconv.Itoa(nth)
	}
	s.stations = append(s.stations, st)
}

// readPlaces reads one half's lengths. What isn't given is taken to be as on
// the other half, or else in the proportion of the table's defaults.
func readPlaces(r *form.Reader, side, mate string) places {
	p := places{pin: math.Inf(1)}
	given := func(length form.ID, standIn float64) (float64, bool) {
		for _, half := range [...]string{side, mate} {
			if v, ok := r.Number(length, half); ok && (half == side || v < p.pin) {
				return v, true
			}
		}
		return standIn, false
	}
	or := func(length form.ID, standIn float64) float64 {
		standIn, _ = given(length, standIn)
		return r.Or(standIn, length, side)
	}
	p.pin = or(form.ShaftPin, math.NaN())
	p.tip = or(form.ShaftTip, p.pin*10/120)
	dialGiven := false
	p.dial, dialGiven = given(form.ShaftAt, p.pin*75/120)
	bearing := p.pin * 70 / 120
	held, ok := heldBy(r)
	if ok {
		standIn := p.pin * 60 / 120
		if held == form.ShaftBearing {
			standIn = bearing
		}
		heldGiven := false
		p.held, heldGiven = given(held, standIn)
		p.lever(dialGiven, heldGiven)
		p.held = r.Or(p.held, held, side)
	}
	p.dial = r.Or(p.dial, form.ShaftAt, side)
	if p.bearing = p.held; !ok || held != form.ShaftBearing {
		p.bearing = or(form.ShaftBearing, bearing)
	}
	return p
}

// complain puts what the crank room says of a length beside the field that the
// length stands in.
func (p *pass) complain(r *form.Reader, err error) {
	l, ok := err.(*crank.LengthError)
	if !ok {
		return
	}
	s, id, keys := p.setUp, form.ShaftPin, []string{p.SideOf[l.Half]}
	switch l.Length {
	case crank.Throw, crank.Rim:
		if id, keys = form.Rim, nil; r.Blank(id) {
			id = form.Throw
		}
	case crank.Bearing:
		id = form.ShaftBearing
	case crank.Support:
		id = [...]form.ID{crank.Centres: form.ShaftPin, crank.VBlocks: form.ShaftHeld, crank.OwnBearings: form.ShaftBearing}[s.crank.Mount]
	case crank.DialAt:
		st := &s.stations[p.used[l.Station]]
		id, keys = form.ShaftAt, []string{st.name}
		if key, further := strings.CutPrefix(st.name, "dial."); further {
			id, keys = form.DialAt, []string{key}
		}
	}
	r.Complain(s.lengthWords(l), id, keys...)
}

// lengthWords says what would do in the place of an impossible length.
func (s *setUp) lengthWords(l *crank.LengthError) string {
	mm := func(v float64) string { return unit.Format(v, unit.MM, 0.1) }
	if l.Length == crank.Throw || l.Length == crank.Rim {
		return pinOutsideWheel(mm(s.crank.Throw), mm(2*s.crank.Rim))
	}
	given, pin := l.Given, s.ownPin[l.Half]
	if l.Half == clock.Right {
		given = s.length() - given
	}
	return beyondThePin(mm(given), mm(pin))
}
