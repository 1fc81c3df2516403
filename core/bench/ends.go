package bench

import (
	"pintwelve/core/clock"
	"pintwelve/core/draw"
	"pintwelve/core/form"
)

// Sides are the fixed words for the two ends, as names carry them.
var Sides = [...]string{"drive", "timing"}

// Ends knows which side is at the left hand, and from which the clock is seen.
type Ends struct {
	SideOf [2]string // by clock.End
	Seen   clock.End
}

// ReadEnds reads which end is left, and from which the hours are numbered.
func ReadEnds(r *form.Reader) Ends {
	e := Ends{SideOf: Sides}
	if r.Word(form.Left) == "timing" {
		e.SideOf = [2]string{"timing", "drive"}
	}
	e.Seen = e.End(r.Word(form.Seen))
	return e
}

// End returns the end that a side is at.
func (e Ends) End(side string) clock.End {
	if e.SideOf[clock.Right] == side {
		return clock.Right
	}
	return clock.Left
}

// SeenFrom is the side from which hours are numbered.
func (e Ends) SeenFrom() string { return e.SideOf[e.Seen] }

// Hour turns an hour seen from the left into one as the job numbers them.
func (e Ends) Hour(h float64) float64 { return clock.SeenFrom(e.Seen, h) }

// Drawn is a side as pictures name it.
func Drawn(side string) draw.Side {
	if side == "timing" {
		return draw.Timing
	}
	return draw.Drive
}
