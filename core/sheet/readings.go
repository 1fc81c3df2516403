package sheet

import (
	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/dial"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// reading is what one dial of a pass says, and what it still lacks.
type reading struct {
	dial.Reading
	lack lack
}

// lack is what has to be read or mended before a reading counts.
type lack uint8

const (
	nothing lack = iota
	runOut       // no run-out yet
	hour         // no hour of the high spot yet
	halfway      // not both half-way hours yet
	pinAt        // where the pin points isn't said yet
	mending      // a figure is wrong
)

// How finely an hour is told: off chalk marks at 12, 3, 6 and 9 a high spot
// can be placed to about half an hour by eye. Common practice, no source.
const hourMarks = 0.5

// readDial reads one dial of a pass from the form.
func (s *setUp) readDial(r *form.Reader, pass, side string) reading {
	at := "pass." + pass + "." + side + "."
	scale := dial.Scale{Division: r.Division(side), HourStep: hourMarks}
	how := r.Word(at + "how")
	runOutMM, ok := r.Number(at + "tir")
	if !ok {
		return lacking(r, runOut, at+"tir")
	}
	if runOutMM < scale.Division/2 {
		how = "none" // a needle that stands still has no high spot to name
	}
	switch how {
	case "hour":
		return s.atHour(r, at, runOutMM, scale)
	case "halfway":
		return s.atHalfWay(r, at, runOutMM, scale)
	case "pin":
		return s.atPin(r, at, runOutMM, scale)
	default:
		return s.taken(r, at)(dial.HighSpot(s.seen, runOutMM, 0, scale))
	}
}

func (s *setUp) atHour(r *form.Reader, at string, runOutMM float64, scale dial.Scale) reading {
	high, ok := r.Number(at + "high")
	if !ok {
		return lacking(r, hour, at+"high")
	}
	return s.taken(r, at)(dial.HighSpot(s.seen, runOutMM, high, scale))
}

func (s *setUp) atHalfWay(r *form.Reader, at string, runOutMM float64, scale dial.Scale) reading {
	rise, ok := r.Number(at + "rise")
	fall, ok2 := r.Number(at + "fall")
	if !ok || !ok2 {
		return lacking(r, halfway, at+"rise", at+"fall")
	}
	return s.taken(r, at)(dial.HalfWay(s.seen, runOutMM, rise, fall, scale))
}

func (s *setUp) atPin(r *form.Reader, at string, runOutMM float64, scale dial.Scale) reading {
	pin := r.Word(at + "pinat")
	if pin == "" {
		return lacking(r, pinAt, at+"pinat")
	}
	scale.HourStep = dial.QuarterStep
	high := dial.Seen(dialSides[r.Word(at+"stands")], pinSides[pin])
	return s.taken(r, at)(dial.HighSpot(clock.Left, runOutMM, high, scale))
}

var (
	dialSides = map[string]dial.Side{"above": dial.Up, "front": dial.Front, "below": dial.Down, "behind": dial.Back}
	pinSides  = map[string]dial.Side{"up": dial.Up, "front": dial.Front, "down": dial.Down, "back": dial.Back}
)

// lacking says what a reading lacks, or that a figure of it is wrong.
func lacking(r *form.Reader, l lack, names ...string) reading {
	for _, name := range names {
		if r.Wrong(name) {
			l = mending
		}
	}
	return reading{lack: l}
}

// taken takes the dial room's reading, or puts what it says beside the field.
func (s *setUp) taken(r *form.Reader, at string) func(dial.Reading, error) reading {
	return func(got dial.Reading, err error) reading {
		e, wrong := err.(*dial.Error)
		if !wrong {
			return reading{Reading: got}
		}
		switch e.Field {
		case dial.Rising, dial.Falling:
			r.Complain(at+"fall", "the needle can’t rise and fall through half-way at the same hour: "+
				"give the hour where it falls, as 9 for one that rises at 3")
		default:
			r.Complain(at+"tir", unit.Format(e.Given, s.fine, 0)+" can’t be a run-out: write 0 or more, as 1.5")
		}
		return reading{lack: mending}
	}
}

// station stands a reading at its dial.
func (s *setUp) station(half clock.End, got dial.Reading) crank.Station {
	return crank.Station{Half: half, At: s.dial[half], E: got.E, Cov: got.Cov}
}
