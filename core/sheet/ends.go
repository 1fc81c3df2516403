package sheet

import (
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/draw"
	"pintwelve/core/form"
)

// ends knows which side is at the left hand, and from which the clock is seen.
type ends struct {
	sideOf [2]string // by clock.End
	seen   clock.End
}

func readEnds(r *form.Reader) ends {
	e := bench.ReadEnds(r)
	return ends{e.SideOf, e.Seen}
}

func (e ends) end(side string) clock.End {
	if e.sideOf[clock.Right] == side {
		return clock.Right
	}
	return clock.Left
}

// seenFrom is the side from which hours are numbered.
func (e ends) seenFrom() string { return e.sideOf[e.seen] }

// hour turns an hour seen from the left into one as the job numbers them.
func (e ends) hour(h float64) float64 { return clock.SeenFrom(e.seen, h) }

func drawn(side string) draw.Side { return bench.Drawn(side) }
