package unit

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Two figures after a point are minutes that people tell, may be, or can't be.
// Common practice, no source.
func TestFiguresAfterAPointAsMinutes(t *testing.T) {
	for figures, want := range map[string]int{
		"00": minutesNever, "01": minutesMaybe, "05": minutesSure, "25": minutesMaybe, "30": minutesSure, "37": minutesMaybe,
		"50": minutesMaybe, "55": minutesSure, "59": minutesMaybe, "60": minutesNever, "75": minutesNever,
	} {
		assert.Equal(t, want, asMinutes(figures), figures)
	}
}
