package truing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/crank"
)

func TestWhatCameOfATry(t *testing.T) {
	likely := []crank.Cause{crank.TooLight}
	for _, row := range []struct {
		try   crank.Try
		came  came
		amiss bool
	}{
		{crank.Try{Outcome: crank.AsMeant, Likely: likely}, astray, false},
		{crank.Try{Outcome: crank.AsMeant, Astray: 0.01}, astray, true},
		{crank.Try{Outcome: crank.Opposite, Astray: 0.01}, otherWay, true},
		{crank.Try{Outcome: crank.NoEffect}, noEffect, true},
		{crank.Try{Outcome: crank.Unshown}, astray, false},
		{crank.Try{Outcome: crank.Unshown, Likely: likely}, hardlyShows, true},
		{crank.Try{Outcome: crank.Mixed}, astray, false},
	} {
		came, amiss := cameOf(&row.try)
		assert.Equal(t, row.came, came, "%+v", row.try)
		assert.Equal(t, row.amiss, amiss, "%+v", row.try)
	}
}
