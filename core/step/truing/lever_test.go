package truing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/clock"
	"pintwelve/core/form"
)

func TestNoStandInMakesAShortLever(t *testing.T) {
	for _, mount := range []string{"vblocks", "bearings"} {
		held := map[string]string{"vblocks": "held", "bearings": "bearing"}[mount]
		for _, lengths := range []form.Form{
			{}, {"drive.at": "75"}, {"drive.at": "60"}, {"drive.at": "20"}, {"drive.at": "5"}, {"drive.at": "115"}, {"drive." + held: "70"}, {"drive." + held: "75"},
			{"drive." + held: "2"}, {"drive." + held: "110"}, {"drive.pin": "60"}, {"drive.pin": "300", "timing.at": "180"}, {"timing." + held: "40", "drive.at": "41"},
		} {
			_, heldOwn := lengths["drive."+held]
			_, dialOwn := lengths["drive.at"]
			s := readSetUp(form.Read(lengths.With(form.Form{"mount": mount})))
			for half := range [2]clock.End{} {
				x, end := s.crank.Support[half], float64(half)*s.length()
				own := func(v float64) float64 { return abs(v - end) }
				lever, span := abs(own(s.dialOf(clock.End(half)))-own(x)), s.ownPin[half]-own(x)
				if _, both := lengths["timing."+held]; both || heldOwn && dialOwn {
					continue // both given: theirs to say
				}
				assert.GreaterOrEqual(t, lever, span/5-1e-9, "%s %v", mount, lengths)
				assert.Greater(t, own(x), 0.0, "%s %v", mount, lengths)
				assert.GreaterOrEqual(t, own(s.dialOf(clock.End(half))), 1.0, "%s %v", mount, lengths)
			}
		}
	}
}

// What stands in moves as far as makes the lever a fifth of the way to the pin, or the
// dial outboard, half-way to the shaft's end, where that is more.
func TestAStandInMovesJustAsFarAsItMust(t *testing.T) {
	for _, row := range []struct {
		dial, held             float64
		dialGiven, heldGiven   bool
		wantedDial, wantedHeld float64
	}{
		{60, 60, true, false, 60, 45},
		{20, 20, true, false, 20, 44 / 1.2},
		{75, 70, false, true, 35, 70},
		{12, 10, false, true, 32, 10},
		{75, 74, true, true, 75, 74},
		{75, 60, true, false, 75, 60},
		{72, 60, true, false, 72, 60}, // just a fifth of 60
	} {
		p := places{pin: 120, dial: row.dial, held: row.held}
		p.lever(row.dialGiven, row.heldGiven)
		assert.InDelta(t, row.wantedDial, p.dial, 1e-9, "%v", row)
		assert.InDelta(t, row.wantedHeld, p.held, 1e-9, "%v", row)
	}
}
