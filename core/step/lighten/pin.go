package lighten

import (
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// clearOfPin says whether the rings of holes on a wheel miss the crankpin, which
// the wheel's section takes for solid metal: its hole is filled.
func (l *lightening) clearOfPin(i int) bool {
	for _, rows := range [...][]*cutRow{l.made, l.cuts} {
		for _, row := range rows {
			if left, hour := l.toPin(row, i); left <= 0 {
				l.r.Complain(holeIntoPin(unit.FormatHour(l.Hour(hour), 1)),
					form.CutFirst, row.group, row.key)
				return false
			}
		}
	}
	return true
}

// farFromPin is returned for a cut that has no hole, mm.
const farFromPin = 1e9

// toPin is the least metal from the holes of a cut to the crankpin, mm, and the hour
// of that hole.
func (l *lightening) toPin(row *cutRow, i int) (leftMM, hour float64) {
	leftMM = farFromPin
	size := row.cut
	if w := &l.wheels[i]; row == w.found && w.planned {
		size = w.size
	} else if !row.ready() || row.finding {
		return leftMM, 0
	}
	if !row.on[i] || size.Kind != flywheel.HoleRing {
		return leftMM, 0
	}
	return l.ringToPin(&size)
}

// ringToPin is the least metal from a ring's holes to the crankpin, mm, and the hour
// of that hole.
func (l *lightening) ringToPin(ring *flywheel.Cut) (leftMM, hour float64) {
	leftMM = farFromPin
	pin := clock.Vec{T: l.throw}
	for n := range ring.Number {
		at := clock.Polar(ring.PitchMM, ring.FirstHour+12*float64(n)/float64(ring.Number))
		if left := at.Sub(pin).Len() - (ring.DiameterMM+l.pinMM)/2; left < leftMM {
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
		if left, _ := l.toPin(row, i); left < l.least.HoleMM-1e-9 {
			words = append(words, thinByPin(l.which(w), mm(left), mm(2*row.cut.PitchMM), mm(l.least.HoleMM)))
		}
	}
	return words
}
