package sheet

import (
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
	e := ends{sideOf: [2]string{"drive", "timing"}}
	if r.Word("left") == "timing" {
		e.sideOf = [2]string{"timing", "drive"}
	}
	e.seen = e.end(r.Word("seen"))
	return e
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

func drawn(side string) draw.Side {
	if side == "timing" {
		return draw.Timing
	}
	return draw.Drive
}
