package unit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Horsepower by definition: 550 ft lbf/s, and 75 m kgf/s; NIST SP 811 has 745.6999 W
// and 735.4988 W (values from memory).
func TestPowerAsItIsWritten(t *testing.T) {
	for text, kilowatts := range map[string]float64{"21.6": 21.6, "29 bhp": 29 * 0.7456999, "29hp": 29 * 0.7456999, "29 PS": 29 * 0.7354988, "22 kW": 22} {
		got, err := Parse(text, Kilowatt)
		require.NoError(t, err, text)
		assert.InDelta(t, kilowatts, got, 1e-5*kilowatts/0.7, text)
	}
	assert.InDelta(t, 550*0.3048*4.4482216152605/1000, 1/BrakeHorsepower.span(1), 1e-15)
	_, err := Parse("29 Nm", Kilowatt)
	assert.ErrorContains(t, err, "22 kW or 29 bhp")
}

func TestATaperAsItIsWritten(t *testing.T) {
	for _, text := range []string{"8", "1:8", "1 : 8", "1 in 8", "1in8", "1/8", "0.125", ".125", "0,125"} {
		got, err := Parse(text, OneIn)
		require.NoError(t, err, text)
		assert.Equal(t, 8.0, got, text)
	}
	got, err := Parse("1:7.5", OneIn)
	require.NoError(t, err)
	assert.Equal(t, 7.5, got)
	for _, text := range []string{"", "0", "1:0", "2:8", "1:", "eight", "1:8:2", "8 mm"} {
		_, err := Parse(text, OneIn)
		assert.ErrorContains(t, err, "1:8, 1 in 8 or 0.125", text)
	}
}
