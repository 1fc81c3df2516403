package truing_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/truing"
	"pintwelve/core/tryout"
	"pintwelve/testdata/jobs"
)

// A made-up crank, only pinched, its dials at 100 and at 40 of 120 mm: by assumed levers,
// alike, its throws didn't match, to ± 0.5 thou. Throws that truly don't are told by any.
func TestNoCrankIsGivenUpByAssumedDistances(t *testing.T) {
	read := func(sits tryout.Start) form.Form {
		c := tryout.Crank{Throw: 42, Rim: 95, Pin: 120, Support: [2]float64{0, 240}, Dial: [2]float64{100, 200}}
		made, err := tryout.New(c, tryout.Rough, 1, sits)
		require.NoError(t, err)
		figures := func(h clock.End) (tir, high string) {
			runOut, rising, falling := made.Watch(h, tryout.HalfThou)
			return jobs.Figure(math.Round(runOut/jobs.Thou*2) / 2), jobs.Figure(clock.Midway(rising, falling))
		}
		drive, driveHigh := figures(clock.Left)
		timing, timingHigh := figures(clock.Right)
		return jobs.Typed(drive, driveHigh, timing, timingHigh).With(form.Form{"tolerance": "1"})
	}
	told := func(f form.Form, name string) string { return jobs.Text(sheet.Answer(f, truing.Values.Name), name) }

	pinched := read(tryout.Start{G: clock.Vec{T: -0.003}})
	assert.Equal(t, "read again", told(pinched, "advice"))
	assert.Equal(t, "distance", told(pinched, "asks/0/what"))
	for _, some := range []form.Form{{"drive.pin": "120"}, {"drive.pin": "120", "timing.pin": "120", "drive.at": "100"}} {
		assert.NotEqual(t, "look elsewhere", told(pinched.With(some), "advice"), "%v", some)
	}
	pinched = pinched.With(form.Form{"drive.pin": "120", "timing.pin": "120", "drive.at": "100", "timing.at": "40"})
	assert.Equal(t, "work", told(pinched, "advice"))
	assert.Equal(t, "squeeze", told(pinched, "moves/0/kind"))

	assert.Equal(t, "look elsewhere", told(read(tryout.Start{D: clock.Vec{T: 0.2}}), "advice"))
}
