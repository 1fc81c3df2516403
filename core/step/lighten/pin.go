package lighten

import (
	"slices"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/unit"
	"pintwelve/core/wheel"
)

// isClear says whether the rings of holes on a wheel miss the crankpin, which the
// wheel's section takes for solid metal, its hole being filled, and whether those to be
// drilled miss the places that are kept off in balancing.
func (l *lightening) isClear(i int) bool {
	for _, row := range append(l.made[:len(l.made):len(l.made)], l.cuts...) {
		if l.runsInto(row, i, l.pin(), theCrankpin) {
			return false
		}
	}
	for n, key := range l.r.Rows("keep") {
		at, whole := l.Place(l.r, key)
		if on := l.r.Word(form.KeepWheel, key); !whole || !l.alike && on != "both" && on != bench.Sides[i] {
			continue
		}
		for _, row := range l.cuts {
			if l.runsInto(row, i, at, placeKeptOff(strconv.Itoa(n+1))) {
				return false
			}
		}
	}
	return true
}

func (l *lightening) pin() bench.Round {
	return bench.Round{At: clock.Vec{T: l.throw}, DiameterMM: l.pinMM}
}

// withPin is a wheel as cut, with the hole for its crankpin where nobody measured that:
// every wheel has one.
func (l *lightening) withPin(w *lightened) *wheel.Section {
	s := *w.account.AfterSection
	if pin := l.pin(); w.dims.pinHole == 0 {
		s.Holes = append(s.Holes[:len(s.Holes):len(s.Holes)], wheel.Drilling{Hole: wheel.Hole{At: pin.At, DiameterMM: pin.DiameterMM, Through: true}})
	}
	return &s
}

// runsInto says, beside its first hour, where a cut's hole runs into something.
func (l *lightening) runsInto(row *cutRow, i int, what bench.Round, words string) bool {
	left, hour := l.toRound(row, i, what)
	if left <= 0 {
		l.r.Complain(holeInto(unit.FormatHour(l.Hour(hour), 1), words), form.CutFirst, row.group, row.key)
	}
	return left <= 0
}

// turnedOver is the first place to keep off in balancing, a hole that is there as a rule, that
// something is turned off, counted from 1; 0 for none.
func (l *lightening) turnedOver() (nth int) {
	for n, key := range l.r.Rows("keep") {
		place, whole := l.Place(l.r, key)
		on := l.r.Word(form.KeepWheel, key)
		for i := range l.wheels {
			if whole && (on == "both" || on == bench.Sides[i]) && l.wheels[i].turnedOver(place) {
				return n + 1
			}
		}
	}
	return 0
}

// turnedOver tells whether something is turned off a wheel where a place is.
func (w *lightened) turnedOver(place bench.Round) bool {
	at, half := place.At.Len(), place.DiameterMM/2
	return slices.ContainsFunc(w.rows, func(row *cutRow) bool {
		from, to := w.reach(row)
		return from < at+half && at-half < to
	})
}

// reach is from which radius to which a cut is turned, mm; a ring of holes is not.
func (w *lightened) reach(row *cutRow) (fromMM, toMM float64) {
	c := row.cut
	if row == w.found {
		c = w.size
	}
	switch c.Kind {
	case flywheel.HoleRing:
		return farAway, farAway
	case flywheel.TurnRim:
		return c.ToDiameterMM / 2, w.dims.diameter / 2
	case flywheel.FaceSide:
		return 0, w.dims.diameter / 2
	}
	return c.FromMM, c.ToMM
}

// farAway is returned where there is no hole, or nothing turned, mm.
const farAway = 1e9

// toRound is the least metal from the holes of a cut to something round, mm, and the
// hour of that hole.
func (l *lightening) toRound(row *cutRow, i int, what bench.Round) (leftMM, hour float64) {
	leftMM = farAway
	size := row.cut
	if w := &l.wheels[i]; row == w.found && w.planned {
		size = w.size
	} else if !row.ready() || row.finding {
		return leftMM, 0
	}
	if !row.on[i] || size.Kind != flywheel.HoleRing {
		return leftMM, 0
	}
	for n := range size.Number {
		at := clock.Polar(size.PitchMM, size.FirstHour+12*float64(n)/float64(size.Number))
		if left := at.Sub(what.At).Len() - (size.DiameterMM+what.DiameterMM)/2; left < leftMM {
			leftMM, hour = left, at.Hour()
		}
	}
	return leftMM, hour
}

// setFirst reads the hour that a ring of so many holes starts at.
func (l *lightening) setFirst(row *cutRow, ring *flywheel.Cut) {
	ring.FirstHour = l.Hour(l.r.Or(l.Hour(bench.FirstHour(ring.Number, ring.PitchMM, ring.DiameterMM, l.throw, l.pinMM)), form.CutFirst, row.keys(form.CutFirst)...))
}

// thinToPin says where the cuts on a wheel leave less to the crankpin than is asked
// of round holes.
func (l *lightening) thinToPin(w *lightened, i int) (words []string) {
	for _, row := range l.cuts {
		if left, _ := l.toRound(row, i, l.pin()); left < l.least.HoleMM-1e-9 {
			words = append(words, thinByPin(l.which(w), mm(left), mm(2*row.cut.PitchMM), mm(l.least.HoleMM)))
		}
	}
	return words
}
