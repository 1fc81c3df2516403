package truing

import (
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/dial"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// reading is what the dial at one station of a pass says, and what it still
// lacks.
type reading struct {
	dial.Reading
	turn  *dial.Harmonics // where a full turn was read
	lack  lack
	blank string // the first field that is to be filled yet
	noise dial.Noise
	taken int // points of a turn that were read so far
	of    int // points of the turn, the first point again not counted
	hours []float64
	apart float64 // hours from rising to falling through half-way; 0: not read so
	sweep float64 // mm, what one turn of the needle was taken as; 0: it counts them
}

// lack is what has to be read or mended before a reading counts.
type lack uint8

const (
	nothing lack = iota
	runOut       // no run-out yet
	hour         // no hour of the high spot yet
	halfway      // not both half-way hours yet
	pinAt        // where the pin points isn't said yet
	points       // the turn isn't read to its end
	mending      // a figure is wrong
)

// How finely an hour is told: off chalk marks at 12, 3, 6 and 9 a high spot
// can be placed to about half an hour by eye. Common practice, no source.
const hourMarks = 0.5

// readPass reads all stations of a pass; full turns still want their scatter.
func (s *setUp) readPass(r *form.Reader, pass string) []reading {
	all := make([]reading, len(s.stations))
	for i := range s.stations {
		all[i] = s.readStation(r, pass, &s.stations[i])
	}
	return all
}

func (s *setUp) readStation(r *form.Reader, pass string, st *station) reading {
	how := r.Word(form.ReadingHow, pass, st.name)
	if how == "turn" {
		return s.readTurn(r, pass, st)
	}
	scale := dial.Scale{Division: st.division, HourStep: hourMarks}
	runOutMM, ok := r.Number(form.ReadingTIR, pass, st.name)
	if !ok {
		return lacking(r, runOut, pass, st, form.ReadingTIR)
	}
	if runOutMM < scale.Division/2 {
		// A needle that stands still has no high spot to name.
		return s.taken(r, pass, st)(dial.HighSpot(s.Seen, runOutMM, 0, scale))
	}
	switch how {
	case "halfway":
		rise, ok := r.Number(form.ReadingRise, pass, st.name)
		fall, ok2 := r.Number(form.ReadingFall, pass, st.name)
		if !ok || !ok2 {
			return lacking(r, halfway, pass, st, form.ReadingRise, form.ReadingFall)
		}
		got := s.taken(r, pass, st)(dial.HalfWay(s.Seen, runOutMM, rise, fall, scale))
		got.apart = clock.Wrap(fall - rise)
		return got
	case "pin":
		pin := sideNamed(r.Word(form.ReadingPinAt, pass, st.name))
		if pin == noSide {
			return lacking(r, pinAt, pass, st, form.ReadingPinAt)
		}
		scale.HourStep = dial.QuarterStep
		return s.taken(r, pass, st)(dial.HighSpot(clock.Left, runOutMM, dial.Seen(sideNamed(r.Word(form.ReadingStands, pass, st.name)), pin), scale))
	}
	high, ok := r.Number(form.ReadingHigh, pass, st.name)
	if !ok {
		return lacking(r, hour, pass, st, form.ReadingHigh)
	}
	return s.taken(r, pass, st)(dial.HighSpot(s.Seen, runOutMM, high, scale))
}

const noSide = dial.Side(255)

// sideNamed reads where a dial stands or the pin points.
func sideNamed(word string) dial.Side {
	switch word {
	case "above", "up":
		return dial.Up
	case "front":
		return dial.Front
	case "below", "down":
		return dial.Down
	case "behind", "back":
		return dial.Back
	}
	return noSide
}

// readTurn reads a full turn: evenly from 12 in the way the hours count, or at
// hours that are given. One reading more than there are points is the first
// point read again.
func (s *setUp) readTurn(r *form.Reader, pass string, st *station) reading {
	values := r.Numbers(mostPoints, form.ReadingTurn, pass, st.name)
	var hours []float64
	got := reading{taken: len(values)}
	if word := r.Word(form.ReadingPoints, pass, st.name); word == "given" {
		hours = r.Numbers(mostPoints, form.ReadingHours, pass, st.name)
		got.of = max(len(hours), 3)
	} else {
		got.of = form.Whole(word)
		hours = dial.Even(got.of, true)
	}
	got.hours = hours
	switch {
	case r.Wrong(form.ReadingTurn, pass, st.name) || r.Wrong(form.ReadingHours, pass, st.name):
		got.lack = mending
	case len(values) > len(hours):
		r.Complain(unevenLists(bench.Counted(len(values), "reading", "readings"), bench.Counted(len(hours), "hour", "hours")), form.ReadingTurn, pass, st.name)
		got.lack = mending
	case len(values) < got.of:
		got.lack = points
	default:
		turn := dial.Turn{From: s.Seen, Hours: hours[:len(values)], Values: values, Division: st.division, Range: sweepOf(values, st)}
		fit, err := turn.Fit()
		if err != nil {
			r.Complain(turnNeedsThree, form.ReadingTurn, pass, st.name)
			got.lack = mending
			break
		}
		got.turn, got.sweep = &fit, turn.Range
		got.E = fit.E
	}
	return got
}

// sweepOf returns one turn of the needle for a dial that begins again at zero,
// or 0 where the readings show that this one counts its turns: less than
// nothing, or more than a turn. One not given may be twice what is assumed.
func sweepOf(values []float64, st *station) float64 {
	least, most := values[0], values[0]
	for _, v := range values {
		least, most = min(least, v), max(most, v)
	}
	switch {
	case least < 0:
		return 0
	case most <= st.sweep:
		return st.sweep
	case st.sweepAssumed && most <= 2*st.sweep:
		return 2 * st.sweep
	}
	return 0
}

// mostPoints is one turn read a degree at a time, and the first point again.
const mostPoints = 361

// pool finds the scatter of each dial over all turns that were read with it,
// and says by it how sure each turn is.
func (s *setUp) pool(passes [][]reading) {
	for d := range 2 {
		var fits []*dial.Harmonics
		division := 0.0
		for _, pass := range passes {
			for i := range pass {
				if s.stations[i].dial == d && pass[i].turn != nil {
					fits = append(fits, pass[i].turn)
					division = s.stations[i].division
				}
			}
		}
		noise := dial.Pool(division, fits...)
		for _, pass := range passes {
			for i := range pass {
				if s.stations[i].dial == d && pass[i].turn != nil {
					pass[i].Reading = pass[i].turn.Reading(noise)
					pass[i].noise = noise
				}
			}
		}
	}
}

// lacking says what a reading lacks, or that a figure of it is wrong.
func lacking(r *form.Reader, l lack, pass string, st *station, of ...form.ID) reading {
	blank := ""
	for _, id := range of {
		if r.Wrong(id, pass, st.name) {
			l = mending
		}
		if blank == "" && r.Blank(id, pass, st.name) {
			blank = id.Name(pass, st.name)
		}
	}
	return reading{lack: l, blank: blank}
}

// taken takes the dial room's reading, or puts what it says beside the field.
func (s *setUp) taken(r *form.Reader, pass string, st *station) func(dial.Reading, error) reading {
	return func(got dial.Reading, err error) reading {
		e, wrong := err.(*dial.Error)
		if !wrong {
			return reading{Reading: got}
		}
		switch e.Field {
		case dial.Rising, dial.Falling:
			r.Complain(sameHourTwice, form.ReadingFall, pass, st.name)
		default:
			r.Complain(noRunOut(unit.Format(e.Given, s.Unit, 0)), form.ReadingTIR, pass, st.name)
		}
		return reading{lack: mending}
	}
}
